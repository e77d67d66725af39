"""Frames from a spreadsheet: every way a spreadsheet writes one."""

import subprocess

import pytest

from templates_gen.base.errors import InputError
from templates_gen.job.model import Job
from templates_gen.job.reading.building import read_job
from tests.running import MEASURED

WALL = (
    '[job]\nframes = "frames.csv"\n[wall]\nwidth = 4000\nheight = 2600\n[frame_type.tile]\nwidth = 320\nheight = 310\n'
)


@pytest.fixture
def read(tmp_path):
    """Reads the job of a spreadsheet with these bytes, or this text in UTF-8."""

    def from_content(content: bytes | str, more: str = "") -> Job:
        (tmp_path / "frames.csv").write_bytes(content.encode() if isinstance(content, str) else content)
        (tmp_path / "job.toml").write_text(WALL + more, encoding="utf-8")
        return read_job(tmp_path / "job.toml")

    return from_content


ROWS = [
    ["id", "title", "type", "drop", "weight"],
    ["1", "Salt star", "tile", "18.5", "1.2 kg"],
    ["2", "", "tile", "", ""],
]


def sheet(delimiter: str = ",", line_end: str = "\n") -> str:
    return "".join(delimiter.join(row) + line_end for row in ROWS)


def as_expected(job: Job) -> bool:
    one, two = job.frames
    return (
        (one.id, one.title, one.width, one.height, one.drop) == ("1", "Salt star", 320.0, 310.0, 18.5)
        and one.weight == pytest.approx(1.2)
        and (two.id, two.title, two.drop, two.weight) == ("2", "", None, None)
    )


@pytest.mark.parametrize("delimiter", [",", ";", "\t", "|"])
@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"])
def test_any_delimiter_and_any_line_end_is_read(read, delimiter, line_end):
    assert as_expected(read(sheet(delimiter, line_end)))


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be"])
def test_every_encoding_a_spreadsheet_saves_is_read(read, encoding):
    mark = {"utf-16-le": b"\xff\xfe", "utf-16-be": b"\xfe\xff"}.get(encoding, b"")
    assert as_expected(read(mark + sheet("\t").encode(encoding)))


@pytest.mark.parametrize("encoding", ["utf-16-le", "utf-16-be"])
def test_two_bytes_a_letter_are_read_without_their_mark(read, encoding):
    assert as_expected(read(sheet().encode(encoding)))


def test_blank_lines_blank_cells_at_the_end_and_spaces_about_names_are_nothing(read):
    text = " ID ; Title;type ;drop;weight;;\n\n1;Salt star;tile;18.5;1.2 kg;;\n;;;;;;\n2;;tile\n"
    assert as_expected(read(text))


def test_quoted_cells_keep_their_delimiters_and_quotes(read):
    job = read('id,title,type\n"1","Star, ""salt""",tile\n')
    assert job.frames[0].title == 'Star, "salt"'


@pytest.mark.parametrize(
    "text", ["id;type;drop\n1;tile;18,5\n", 'id,type,drop\n1,tile,"18,5"\n', "id\ttype\tdrop\n1\ttile\t18,5"]
)
def test_a_decimal_comma_is_read_whatever_the_delimiter(read, text):
    assert read(text).frames[0].drop == 18.5


def test_bare_numbers_are_in_the_unit_of_the_job(read, tmp_path):
    (tmp_path / "frames.csv").write_text("id,width,height,drop\nA,8,10 cm,2 1/2\n")
    (tmp_path / "job.toml").write_text('[job]\nframes = "frames.csv"\nunit = "in"\n[wall]\nwidth = 99\nheight = 96\n')
    frame = read_job(tmp_path / "job.toml").frames[0]
    # 1 in = 25.4 mm exactly (international yard and pound agreement, 1959)
    assert (frame.width, frame.height, frame.drop) == pytest.approx((203.2, 100.0, 63.5))


def test_a_header_with_a_point_reaches_into_a_hanger_and_a_fixing(read):
    hanger = "hanger.kind,hanger.left,hanger.right,hanger.drop_left,hanger.drop_right,hanger.seen_from"
    header = f"id,type,{hanger},fixing.kind,fixing.below"
    job = read(f"{header}\n1,tile,rings,40,45,60,62,front,hook,22\n2,tile,wire,,,,,,,\n")
    one, two = job.frames
    assert (one.hanger.kind, one.hanger.left, one.hanger.right) == ("rings", 40.0, 45.0)
    assert (one.hanger.drop_left, one.hanger.drop_right) == (60.0, 62.0)
    assert (one.fixing.kind, one.fixing.below) == ("hook", 22.0)
    assert (two.hanger.kind, two.fixing.kind) == ("wire", "nail")


def test_whole_numbers_of_a_fixing_are_read_from_a_cell(read):
    job = read("id,type,fixing.kind,fixing.below,fixing.nails,fixing.angle\n1,tile,hook,22,2,45\n")
    assert (job.frames[0].fixing.nails, job.frames[0].fixing.angle) == (2, 45)


def test_a_line_break_in_a_cell_keeps_its_words_apart(read):
    job = read('id,title,type\n1,"Salt\nstar",tile\n')
    assert job.frames[0].title.split() == ["Salt", "star"]


def test_frames_of_the_job_file_come_first_then_those_of_the_spreadsheet(read):
    job = read("id,type\nB,tile\nC,tile\n", '[[frame]]\nid = "A"\nwidth = 10\nheight = 10\n')
    assert [frame.id for frame in job.frames] == ["A", "B", "C"]
    assert job.group.rows == (("A", "B", "C"),)
    assert [name for name, _ in job.sources] == ["job.toml", "frames.csv"]


def test_no_more_rows_are_kept_than_a_job_may_have(read):
    with pytest.raises(InputError, match="found more than 10000 rows"):
        read("id,type\n" + "".join(f"{number},tile\n" for number in range(10_001)))


LARGE = {
    "rows": ("id,type\n", "1,tile\n", 2_700_000),
    "cells": ("id,type\n1,tile", ",", 19_000_000),
    "columns": ("id,type", ",x", 9_000_000),
    "cells of two lines": ("id,type\n", '"a\nb",tile\n', 1_500_000),
}


@pytest.mark.parametrize("name", LARGE)
def test_a_spreadsheet_of_19_mb_takes_no_memory_to_speak_of(name, tmp_path):
    start, part, times = LARGE[name]
    (tmp_path / "frames.csv").write_text(start + part * times)
    (tmp_path / "job.toml").write_text(WALL)
    ran = subprocess.run([*MEASURED, "check", "job.toml"], cwd=tmp_path, capture_output=True, text=True, check=False)
    assert ran.returncode == 2 and "frames.csv" in ran.stderr and "Traceback" not in ran.stderr
    assert int(ran.stderr.split()[-1]) < 200_000  # kilobytes: the bytes, the text, and the program


@pytest.mark.parametrize("count", [201, 30_000])
def test_so_many_columns_are_no_spreadsheet_of_frames(count, read):
    with pytest.raises(InputError, match=f"found {count + 2} columns, expected 200 at most"):
        read("id,type," + ",".join(f"c{number}" for number in range(count)) + "\n1,tile\n")


def test_columns_without_a_name_count_for_nothing(read):
    assert len(read(f"id,type{',' * 16_000}\n1,tile{',' * 16_000}\n").frames) == 1


def test_a_text_has_an_end(read):
    assert len(read(f"id,type,title\n1,tile,{'x' * 10_000}\n").frames[0].title) == 10_000
    with pytest.raises(InputError, match=r"frames\.csv, line 2, title: found a text of 10001 letters"):
        read(f"id,type,title\n1,tile,{'x' * 10_001}\n")


def test_a_control_character_in_a_cell_is_refused(read):
    with pytest.raises(InputError, match=r"control character U\+001B"):
        read("id,type,title\n1,tile,a\x1b[31m\n")
