"""Measured values from a spreadsheet: what is written to be filled in is read, and nails go where it says."""

from __future__ import annotations

import csv
import io
import os
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.checks import find
from templates_gen.documents.measuring.fields import to_fill_in
from templates_gen.job.model import Frame, Hanger, Job
from templates_gen.job.reading.building import read_job
from tests.jobs import SAMPLES
from tests.made import SAMPLE_NAMES
from tests.running import MINIMAL, run

INCH = 25.4  # mm exactly (international yard and pound agreement, 1959)
NAIL = 0.9  # mm; half of the 1.8 mm of a bare nail, which lies under what bears on it.  Common practice, no source

Fill = Callable[[dict[str, str]], None]


def filled(text: str, fill: Fill) -> str:
    """A spreadsheet with every row changed in place."""
    reader = csv.DictReader(io.StringIO(text))
    out = io.StringIO()
    writer = csv.DictWriter(out, reader.fieldnames or (), delimiter=";", lineterminator="\r\n")
    writer.writeheader()
    for row in reader:
        fill(row)
        writer.writerow(row)
    return out.getvalue()


def copied(name: str, folder: Path, *changes: tuple[str, str]) -> Path:
    """A sample in a folder of its own, with these changes to its text."""
    for path in SAMPLES.glob("*.[tc][os][mv]*"):
        shutil.copy(path, folder)
    path = folder / f"{name}.toml"
    text = path.read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    path.write_text(text, encoding="utf-8")
    return path


def same(one: Frame, two: Frame) -> bool:
    """The same hanger, where each of a pair's drops may be the one that both share."""
    pair = one.hanger.kind in ("rings", "keyholes")
    a, b = ([getattr(f.hanger, name) for name in f.hanger.__struct_fields__ if "drop_" not in name] for f in (one, two))
    drops = [
        [f.hanger.drop_left or f.drop, f.hanger.drop_right or f.drop] if pair else [f.drop, f.hanger.drop_at_two]
        for f in (one, two)
    ]
    return all(x == pytest.approx(y) for x, y in zip(a + drops[0], b + drops[1], strict=True))


@pytest.mark.parametrize("name", SAMPLE_NAMES)
def test_a_sheet_that_nobody_changed_changes_nothing(name: str, tmp_path: Path) -> None:
    before = read_job(SAMPLES / f"{name}.toml")
    path = copied(name, tmp_path, ("[job]\n", '[job]\nmeasured = "measured.csv"\n'))
    (tmp_path / "measured.csv").write_text(to_fill_in(before), encoding="utf-8-sig")
    after = read_job(path)
    for one, two in zip(before.frames, after.frames, strict=True):
        assert same(one, two)
        assert (two.width, two.height) == pytest.approx((one.width, one.height))
        assert two.weight == pytest.approx(one.weight)
        assert (two.id, two.title, two.fixing, two.depth) == (one.id, one.title, one.fixing, one.depth)
    points = [[(nail.name, nail.x, nail.y) for nail in plan_wall(job).nails] for job in (before, after)]
    assert [n for n, _, _ in points[0]] == [n for n, _, _ in points[1]]
    assert [c for p in points[0] for c in p[1:]] == pytest.approx([c for p in points[1] for c in p[1:]])
    found = [
        [(one.level, one.rule, one.about) for one in find(plan_wall(job)) if one.rule != "image-missing"]
        for job in (before, after)  # the pictures are not copied
    ]
    assert found[0] == found[1]
    assert [name for name, _ in after.sources][-1] == "measured.csv"  # it travels inside the template


@pytest.mark.parametrize("name", SAMPLE_NAMES)
def test_the_same_sheet_can_be_the_list_of_frames(name: str, tmp_path: Path) -> None:
    """What a frame has of its own and nobody measures, its fixing, is then lost: those frames are left out here."""
    before = read_job(SAMPLES / f"{name}.toml")
    text = (SAMPLES / f"{name}.toml").read_text(encoding="utf-8")
    head, *tables = text.replace('frames = "tile-rubbings.csv"\n', "").split("\n[")
    kept = ["job]" + tables[0].partition("]")[2]] + [t for t in tables[1:] if not t.startswith("[frame]")]
    job_text = head + "\n[" + "\n[".join([kept[0].replace("]", ']\nframes = "list.csv"', 1), *kept[1:]])
    (tmp_path / "job.toml").write_text(job_text, encoding="utf-8")
    (tmp_path / "list.csv").write_text(to_fill_in(before), encoding="utf-8")
    after = read_job(tmp_path / "job.toml")
    assert [frame.id for frame in after.frames] == [frame.id for frame in before.frames]
    for one, two in zip(before.frames, after.frames, strict=True):
        assert same(one, two)
    for one, two in zip(plan_wall(before).frames, plan_wall(after).frames, strict=True):
        if one.frame.fixing == two.frame.fixing:
            assert [c for n in one.nails for c in (n.x, n.y)] == pytest.approx(
                [c for n in two.nails for c in (n.x, n.y)]
            )


def hung(job: Job, frame_id: str) -> tuple[Rect, list[tuple[float, float]]]:
    found = next(one for one in plan_wall(job).frames if one.frame.id == frame_id)
    return found.rect, [(nail.x, nail.y) for nail in found.nails]


def test_what_is_filled_in_puts_the_nails_where_it_says(tmp_path: Path) -> None:
    """E had no drop: 2 3/4 in. B's rings anew, from the back: the left one 5 in down and 1 1/4 in, the right one
    4 1/2 in down and 2 in; from the front that is the other way round, and its hooks' nails are 7/8 in higher."""
    path = copied("fern-prints", tmp_path)

    def fill(row: dict[str, str]) -> None:
        if row["id"] == "E":
            row["drop"] = "2 3/4"
        if row["id"] == "B":
            row |= {"drop_left": "5", "drop_right": "4½", "left": "1.25 in", "right": "2"}

    (tmp_path / "m.csv").write_text(filled(to_fill_in(read_job(path)), fill), encoding="utf-8")
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("[job]\n", '[job]\nmeasured = "m.csv"\n'), encoding="utf-8")
    job = read_job(path)
    rect, ((x, y),) = hung(job, "E")
    assert (x, y) == pytest.approx((rect.cx, rect.y1 - 2.75 * INCH - NAIL))
    rect, nails = hung(job, "B")
    assert nails[0] == pytest.approx((rect.x0 + 2.0 * INCH, rect.y1 - 4.5 * INCH + 0.875 * INCH))
    assert nails[1] == pytest.approx((rect.x1 - 1.25 * INCH, rect.y1 - 5.0 * INCH + 0.875 * INCH))
    assert hung(job, "A")[1] == hung(read_job(SAMPLES / "fern-prints.toml"), "A")[1]


def test_the_commands_measure_check_and_template_work_hand_in_hand(tmp_path: Path, monkeypatch) -> None:
    path = copied("fern-prints", tmp_path)
    monkeypatch.chdir(tmp_path)
    ran = run("measure", path.name, "--csv", "fern-measured.csv")
    assert ran.code == 0
    one, two = ran.out.splitlines()
    assert one == "fern-prints-measuring.pdf: 5 frames on 2 pages of letter paper"
    told = 'measured = "fern-measured.csv"'
    assert two.startswith("fern-measured.csv: fill it in") and told in two
    sheet = tmp_path / "fern-measured.csv"
    text = sheet.read_text(encoding="utf-8-sig")
    sheet.write_text(filled(text, lambda row: row.update(drop="2 3/4" if row["id"] == "E" else row["drop"])))
    path.write_text(path.read_text(encoding="utf-8").replace("[job]\n", f"[job]\n{told}\n"), encoding="utf-8")
    assert "No nail yet" not in run("check", path.name).out
    assert run("template", path.name).code == 0
    # a sheet that is filled in is never written over
    assert run("measure", path.name, "--csv", "fern-measured.csv", "--force").code == 2
    assert "2 3/4" in sheet.read_text()


@pytest.fixture
def read(tmp_path: Path) -> Callable[..., Job]:
    """Reads MINIMAL with a changed frame and what was measured of it."""

    def from_texts(measured: str, frame: str = "", more: str = "") -> Job:
        text = MINIMAL.replace('unit = "mm"', 'unit = "mm"\nmeasured = "m.csv"').replace("drop = 60\n", frame) + more
        (tmp_path / "job.toml").write_text(text, encoding="utf-8")
        (tmp_path / "m.csv").write_text(measured, encoding="utf-8")
        return read_job(tmp_path / "job.toml")

    return from_texts


FRONT = 'hanger = { kind = "rings", left = 40, right = 45, drop_left = 60, drop_right = 62, seen_from = "front" }\n'


def test_one_ring_measured_from_the_back_leaves_the_other_as_it_was(read) -> None:
    hanger = read("id,drop_left,seen_from\nA,71,back\n", FRONT).frames[0].hanger
    assert hanger == Hanger(kind="rings", left=40.0, right=45.0, drop_left=60.0, drop_right=71.0)


def test_a_hanger_of_another_kind_replaces_what_was_thought_of(read) -> None:
    assert read("id,hanger,drop\nA,sawtooth,12\n", FRONT).frames[0].hanger == Hanger(kind="sawtooth")
    rings = read("id,hanger,left,right\nA,rings,40,40\n").frames[0].hanger
    assert rings == Hanger(kind="rings", left=40.0, right=40.0)


def test_what_a_type_shares_is_completed_frame_by_frame(read) -> None:
    shared = '[frame_type.t]\nhanger = { kind = "wire", apart = 120 }\n'
    measured = "id,ring_separation,ring_depth,drop\nA,200,90,50\n"
    hanger = read(measured, 'type = "t"\n', shared).frames[0].hanger
    assert hanger == Hanger(kind="wire", apart=120.0, ring_separation=200.0, ring_depth=90.0)
    own = 'type = "t"\nhanger = { ring_depth = 80 }\n'
    assert read("id,drop\nA,50\n", own, shared).frames[0].hanger == Hanger(kind="wire", apart=120.0, ring_depth=80.0)


@pytest.mark.parametrize("blank", ["", "-", "–", "—", " "])
def test_a_blank_or_a_dash_is_not_given(read, blank: str) -> None:
    frame = read(f"id,drop,width,height\nA,{blank},{blank},205\n", "drop = 60\n").frames[0]
    assert (frame.drop, frame.width, frame.height, frame.listed) == (60.0, 300.0, 205.0, (300.0, 200.0))


def test_a_size_more_than_3_mm_off_is_said_and_the_measured_one_is_used(read) -> None:
    job = read("id,width,height\nA,303.1,203\n", "drop = 60\n")
    (found,) = [one for one in find(plan_wall(job)) if one.rule == "measured-otherwise"]
    assert (job.frames[0].width, found.about) == (303.1, ("A",))
    assert "303 mm" in found.text and "300 mm" in found.text


@pytest.mark.parametrize(
    ("measured", "words"),
    [
        ("id,drop\nAA,3\n", ("m.csv, line 2 (AA), id", "'AA'", "did you mean 'a'?")),
        ("id,drop\nQx,3\n", ("m.csv, line 2 (Qx), id", "'Qx'", "frames: A")),
        ("id,drop\nA,3\nA,4\n", ("m.csv, line 3 (A), id", "twice")),
        ("id,drop\n,3\n", ("m.csv, line 2, id",)),
        ("id,drop\nA,8-May\n", ("m.csv, line 2 (A), drop", "8-May")),
        ("id,dorp\nA,3\n", ("m.csv, line 1: ", "'dorp'", "did you mean 'drop'?")),
        ("id,drop_left\nA,3\n", ("hanger", "seen_from")),
        ("id,drop_left,drop_right\nA,3,3\n", ("m.csv, line 2 (A), hanger, drop_left", "'wire'")),
        ("id,width\nA,0\n", ("frame 1 (A), measured in m.csv, line 2 (A), width", "found 0")),
        ("id,type\nA,tall\n", ("m.csv, line 2 (A), type", "'tall'")),
    ],
)
def test_what_cannot_have_been_measured_is_refused(measured: str, words: tuple[str, ...], read, tmp_path) -> None:
    with pytest.raises(InputError) as raised:
        read(measured, "drop = 60\n")
    missing = [word for word in words if word.lower() not in str(raised.value).lower()]
    assert missing == [], raised.value
    assert str(raised.value).startswith("job.toml, ")


@pytest.mark.skipif(os.name == "nt", reason="Windows has no file of this name")
def test_the_line_to_put_into_the_job_is_toml_whatever_the_sheet_is_called(tmp_path: Path, monkeypatch) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "job.toml").write_text(MINIMAL)
    ran = run("measure", "job.toml", "--csv", 'the "big"\\one.csv')
    told = ran.out.splitlines()[-1].partition("put  ")[2].partition("  under")[0]
    (tmp_path / "job.toml").write_text(MINIMAL.replace("[job]", f"[job]\n{told}"))
    assert run("check", "job.toml").code == 0


def test_a_missing_sheet_is_named(tmp_path: Path, monkeypatch) -> None:
    (tmp_path / "job.toml").write_text(MINIMAL.replace('unit = "mm"', 'unit = "mm"\nmeasured = "m.csv"'))
    monkeypatch.chdir(tmp_path)
    ran = run("check", "job.toml")
    assert ran.code == 2 and "m.csv: there is no such file" in ran.err


def test_an_id_that_a_spreadsheet_would_run_comes_back_as_it_was(tmp_path: Path) -> None:
    text = MINIMAL.replace('id = "A"', 'id = "=1+1"')
    (tmp_path / "job.toml").write_text(text)
    sheet = filled(to_fill_in(read_job(tmp_path / "job.toml")), lambda row: row.update(drop="44"))
    assert "'=1+1" in sheet
    (tmp_path / "m.csv").write_text(sheet)
    (tmp_path / "job.toml").write_text(text.replace('unit = "mm"', 'unit = "mm"\nmeasured = "m.csv"'))
    (frame,) = read_job(tmp_path / "job.toml").frames
    assert (frame.id, frame.drop) == ("=1+1", 44.0)


def test_plates_that_stand_out_have_their_holes_beyond_the_frame_before_and_after_measuring(tmp_path: Path) -> None:
    plates = (
        'hanger = { kind = "plates", left = -14, right = -12, drop_left = 180, drop_right = -15, seen_from="front" }'
    )
    path = tmp_path / "job.toml"
    path.write_text(MINIMAL.replace("drop = 60", plates), encoding="utf-8")
    (hung,) = plan_wall(read_job(path)).frames
    places = [(nail.x - hung.rect.x0, hung.rect.y1 - nail.y) for nail in hung.nails]
    assert places == [
        (pytest.approx(-14), pytest.approx(180)),
        (pytest.approx(hung.rect.width + 12), pytest.approx(-15)),
    ]
    (tmp_path / "m.csv").write_text(to_fill_in(read_job(path)), encoding="utf-8")
    path.write_text(path.read_text(encoding="utf-8").replace("[job]", '[job]\nmeasured = "m.csv"'), encoding="utf-8")
    (again,) = plan_wall(read_job(path)).frames
    assert [(nail.x, nail.y) for nail in again.nails] == [(nail.x, nail.y) for nail in hung.nails]
