"""The command `proof`: what it writes, what it refuses, and what it says."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest

from templates_gen import plan_wall, read_job
from tests.jobs import SAMPLES
from tests.running import MINIMAL, run

STARTS = {"pdf": b"%PDF-1.7", "svg": b"<?xml", "png": b"\x89PNG"}


def left(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir() if path.name != "job.toml")


def test_without_a_name_it_is_a_pdf_beside_the_job(small: Path) -> None:
    ran = run("proof", "job.toml")
    assert (ran.code, ran.out, ran.err) == (0, "job-proof.pdf: the wall at 1:20\n", "")
    assert left(small) == ["job-proof.pdf"]


@pytest.mark.parametrize("name", ["a.pdf", "a.svg", "a.png", "A.PNG"])
def test_the_ending_says_what_is_written_and_it_may_be_written_again(name: str, small: Path) -> None:
    for options in ([], ["--sign", "--zones"]):
        ran = run("proof", "job.toml", "-o", name, *options)
        assert (ran.code, ran.err) == (0, "")
        assert (small / name).read_bytes().startswith(STARTS[name[2:].lower()])


@pytest.mark.parametrize("name", ["a.jpg", "a", "a.pdf.txt"])
def test_another_ending_is_refused(name: str, small: Path) -> None:
    ran = run("proof", "job.toml", "-o", name)
    assert (ran.code, ran.out) == (2, "")
    assert re.fullmatch(rf"error: {name}: found the ending '[.a-z]*', expected \.pdf, \.svg or \.png\n", ran.err)
    assert left(small) == []


@pytest.mark.parametrize("name", ["mine.png", "mine.svg", "mine.pdf"])
def test_a_file_of_somebody_else_is_not_replaced_without_force(name: str, small: Path) -> None:
    (small / name).write_bytes(STARTS[name[5:]] + b" mine")
    ran = run("proof", "job.toml", "-o", name)
    assert (ran.code, ran.out) == (2, "") and "was not made by this program" in ran.err
    assert run("proof", "job.toml", "-o", name, "--force").code == 0


@pytest.mark.parametrize("there", [True, False])
def test_the_pictures_of_a_job_are_never_replaced(there: bool, small: Path) -> None:
    (small / "job.toml").write_text(MINIMAL + 'image = "a.png"\n')
    if there:
        (small / "a.png").write_bytes(b"a picture")
    for command in (["proof", "-o"], ["template", "--report"]):
        ran = run(*command, "a.png", "job.toml", "--force")
        assert (ran.code, ran.out) == (2, "") and "is the job's own file" in ran.err
    assert left(small) == (["a.png"] if there else [])


def test_it_is_drawn_even_if_something_stops_the_template(small: Path) -> None:
    (small / "job.toml").write_text(MINIMAL.replace("width = 300", "width = 4300"))
    ran = run("proof", "job.toml", "-o", "a.pdf")
    assert (ran.code, ran.out) == (1, "a.pdf: the wall at 1:20\n")
    assert ran.err.startswith("stop  Frame A reaches beyond the wall: 150 mm")
    assert "drawn for discussion" in ran.err.splitlines()[-1]
    assert left(small) == ["a.pdf"]


def test_a_missing_picture_is_a_note_to_check_and_a_blank_in_the_proof(small: Path) -> None:
    (small / "job.toml").write_text(MINIMAL + 'image = "gone.jpg"\n')
    ran = run("check", "job.toml")
    assert (ran.code, ran.err) == (0, "")
    assert ran.out.startswith("note  The image of frame A is not there (gone.jpg)")
    ran = run("proof", "job.toml", "-o", "a.svg")
    assert ran.code == 0 and ran.err.startswith("note  The image of frame A is not there")
    assert "no picture" in (small / "a.svg").read_text(encoding="utf-8")


def test_notes_that_change_nothing_in_the_drawing_are_counted(small: Path) -> None:
    """A client decides on stops and warns; how to stand on a ladder is for whoever hangs it."""
    (small / "job.toml").write_text(re.sub(r"drop = \d+\n", "", MINIMAL))  # "no nail yet"
    notes = run("check", "job.toml").out.count("note  ")
    ran = run("proof", "job.toml", "-o", "a.pdf")
    assert notes > 0 and "note  " not in ran.err
    assert ran.err.startswith(f"{notes} note") and ran.err.endswith("templates-gen check job.toml\n")


def test_a_broken_picture_is_one_message_and_leaves_nothing(small: Path) -> None:
    (small / "job.toml").write_text(MINIMAL + 'image = "pictures/a.jpg"\n')
    (small / "pictures").mkdir()
    (small / "pictures" / "a.jpg").write_bytes(b"no picture")
    ran = run("proof", "job.toml", "-o", "a.pdf")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.startswith("error: job.toml, frame A, image: pictures/a.jpg is not a picture that can be read")
    assert left(small) == ["pictures"]
    assert run("template", "job.toml", "-o", "t.pdf").code == 0  # which needs no pictures


@pytest.mark.parametrize("dots", ["0", "-3", "nan", "150.5", "2000", "many"])
def test_dots_that_cannot_be(dots: str, small: Path) -> None:
    ran = run("proof", "job.toml", "-o", "a.png", "--dpi", dots)
    assert (ran.code, ran.out) == (2, "") and "--dpi" in ran.err
    assert left(small) == []


def test_more_dots_on_larger_paper_than_memory_is_kept_for(small: Path) -> None:
    ran = run("proof", "job.toml", "-o", "a.png", "--dpi", "1200", "--paper", "a1")
    assert (ran.code, ran.out) == (2, "")
    assert "--dpi: found 1200" in ran.err and "expected at most 40 million pixels" in ran.err


def test_paper_too_small_for_any_scale_is_a_message(small: Path) -> None:
    (small / "job.toml").write_text(MINIMAL + "[paper]\nsize = [80, 80]\nmargin = 10\n")
    ran = run("proof", "job.toml", "--sign")
    assert (ran.code, ran.out) == (2, "") and "too small for a proof" in ran.err


def test_a_job_without_a_rule_for_its_cables_says_so_where_zones_are_asked_for(small: Path) -> None:
    (small / "job.toml").write_text(MINIMAL.replace('wiring = "uk"\n', ""))
    assert run("proof", "job.toml", "-o", "a.svg", "--zones").code == 0
    said = (small / "a.svg").read_text(encoding="utf-8")
    assert "hatching" not in said
    assert "wall.wiring" in said and "Look with a detector" in said and 'class="zones"' not in said


def test_the_images_of_a_sample_are_found_beside_it(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shutil.copytree(SAMPLES, tmp_path / "samples")
    monkeypatch.chdir(tmp_path)
    assert run("proof", "samples/fern-prints.toml", "-o", "a.svg").code == 0
    assert (tmp_path / "a.svg").read_text(encoding="utf-8").count("data:image/jpeg") == 5


def test_the_same_group_on_another_wall(small: Path) -> None:
    (small / "hall.toml").write_text("[wall]\nname = 'the hall'\nwidth = 2500\nheight = 2400\n")
    ran = run("proof", "job.toml", "--wall", "hall.toml")
    assert (ran.code, ran.out) == (0, "job-hall-proof.pdf: the wall at 1:20\n")
    assert run("proof", "job.toml", "--wall", "hall.toml", "-o", "a.svg").code == 0
    said = (small / "a.svg").read_text(encoding="utf-8")
    assert "the hall" in said and "2500 mm" in said and "4000 mm" not in said


@pytest.mark.parametrize("named", ["frames", "measured", "font"])
def test_no_result_takes_the_place_of_what_a_job_names_in_another_folder(named: str, tmp_path: Path) -> None:
    (tmp_path / "lists").mkdir()
    own = tmp_path / "lists" / "tiles.csv"
    shutil.copy(SAMPLES / "tile-rubbings.csv", own)
    text = (SAMPLES / "tile-rubbings.toml").read_text(encoding="utf-8")
    if named == "frames":
        text = text.replace('"tile-rubbings.csv"', '"lists/tiles.csv"')
    else:
        shutil.copy(SAMPLES / "tile-rubbings.csv", tmp_path)
    if named == "measured":
        own.write_text("id,drop\n1,20\n", encoding="utf-8")
        text = text.replace("[job]", '[job]\nmeasured = "lists/tiles.csv"')
    if named == "font":
        text = text.replace("[paper]", '[paper]\nfont = "lists/tiles.csv"')
    (tmp_path / "job.toml").write_text(text, encoding="utf-8")
    before = own.read_bytes()
    ran = run("schedule", tmp_path / "job.toml", "-o", own, "--force")
    assert ran.code == 2 and "is the job's own file" in ran.err
    assert own.read_bytes() == before


def test_places_that_were_found_stay_as_agreed_once_kept_even_if_a_frame_is_measured_anew(tmp_path: Path) -> None:
    job, kept, measured = (tmp_path / name for name in ("job.toml", "kept.toml", "measured.toml"))
    run("start", "--sample", "paste-papers", job)
    assert "options --pick 1" in " ".join(run("proof", job).err.split())
    assert run("options", job, "--pick", "1", "-o", kept).code == 0
    measured.write_text(kept.read_text().replace("width = 500", "width = 501"))  # mm, of frame leaf
    found, *others = (
        {hung.frame.id: (hung.rect.cx, hung.rect.cy) for hung in plan_wall(read_job(path)).frames}
        for path in (job, kept, measured)
    )
    for middles in others:
        assert middles == {name: pytest.approx(middle, abs=0.001) for name, middle in found.items()}  # mm
