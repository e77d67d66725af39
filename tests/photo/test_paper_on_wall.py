"""Photographs of taped paper are compared with what was printed, whatever has become of the job since."""

from __future__ import annotations

import dataclasses
import json
from pathlib import Path
from typing import Any

import cv2
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pypdf import PdfReader

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import bounds
from templates_gen.base.record import replace
from templates_gen.documents.making import on_paper
from templates_gen.documents.old_paper import inside, old_paper, sheets_file
from templates_gen.documents.on_wall import by_template
from templates_gen.documents.photographed import Papers, drawn_tags, papers
from templates_gen.documents.report import template_report
from templates_gen.documents.template import draw_template
from templates_gen.documents.updating import updated
from templates_gen.drawing.pdf.writing import write_pdf
from templates_gen.job.model import Job
from templates_gen.photo.picture import Photo, read_photo
from templates_gen.photo.taped import read_taped
from templates_gen.printer.profile import Readings, measured
from tests.crowded import crowded
from tests.documents.test_since import LETTERING, four, placed
from tests.jobs import job as one_frame
from tests.jobs import paper
from tests.made import Everything, make, twelve
from tests.photo.made.cameras import standing
from tests.photo.made.examples import write_examples
from tests.photo.made.photograph import Look, photograph
from tests.photo.made.runs import Outcome, compared, rms
from tests.photo.made.taped import taped
from tests.photo.made.truth import truth
from tests.running import begun, run

STUDY = measured(
    "study", "a4", Readings(asked_across=190.0, asked_along=277.0, across=190.6, along=276.4), "2026-03-01"
)
FAMILY = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_APRILTAG_36h11)


def printed(job: Job, place: Path, printer: Any = None) -> tuple[Everything, Papers]:
    """A template as it is made, and what its file says of its paper."""
    done = make(replace(job, sources=(("job.toml", b"whatever it says"),)), printer=printer)
    place.write_bytes(done.pdf)
    return done, by_template(place).papers


def from_lines(known: Papers) -> Papers:
    """The same paper with its two lines at 0."""
    x, y = known.centre_line, known.level_line
    return replace(
        known,
        cells=tuple((name, cell.shifted(-x, -y)) for name, cell in known.cells),
        tags=tuple(replace(tag, box=tag.box.shifted(-x, -y)) for tag in known.tags),
        joins=tuple(
            replace(join, line=tuple(a - b for a, b in zip(join.line, (x, y, x, y), strict=True)))
            for join in known.joins
        ),
        nails=tuple(replace(nail, x=nail.x - x, y=nail.y - y) for nail in known.nails),
        centre_line=0.0, level_line=0.0,
    )  # fmt: skip


@settings(max_examples=6)
@given(
    seed=st.integers(0, 10_000), size=st.sampled_from(["a4", "letter", "a3"]),
    cover=st.sampled_from(["marks", "linked", "all", "nails"]), trim=st.sampled_from(["cut", "cut", "none"]),
    known=st.booleans(),
)  # fmt: skip
def test_a_template_says_what_a_photograph_of_its_paper_is_compared_with(
    seed: int, size: str, cover: str, trim: str, known: bool, tmp_path_factory: pytest.TempPathFactory
) -> None:
    """To the last digit what is drawn: so a photograph is read as exactly by the file as by the very plan."""
    job = crowded(seed, paper(size, cover=cover, trim=trim, photo=True), "in" if size == "letter" else "mm")
    done, told = printed(job, tmp_path_factory.mktemp("on") / "job.pdf", STUDY if known else None)
    drawn = papers(done.plan, done.sheets, drawn_tags(done.plan, done.sheets, done.template))
    assert told == from_lines(drawn)
    assert told.scaled == known and told.tags and (cover == "nails" or told.joins)


def test_tags_that_a_finder_sees_on_the_pages_are_where_the_file_says(tmp_path: Path) -> None:
    """By another program's finder, on the pages as they are printed."""
    done, told = printed(twelve(paper("letter", cover="linked", photo=True), "in"), tmp_path / "job.pdf", STUDY)
    x, y = done.plan.centre_line, done.plan.level_line
    said, off = {tag.number: tag for tag in told.tags}, []
    parameters = cv2.aruco.DetectorParameters()
    parameters.cornerRefinementMethod = cv2.aruco.CORNER_REFINE_SUBPIX
    for sheet in taped(done, np.random.default_rng(1), aside=0.0, turn=0.0, dots=300.0):
        corners, numbers, _ = cv2.aruco.ArucoDetector(FAMILY, parameters).detectMarkers(sheet.page)
        for number, corner in zip(numbers.ravel() if numbers is not None else (), corners, strict=True):
            at = np.linalg.solve(sheet.to_pixels, np.array([*corner[0].mean(0), 1.0]))
            tag = said.pop(int(number))
            assert tag.sheet == sheet.name
            off.append(np.hypot(at[0] - x - tag.box.cx, at[1] - y - tag.box.cy))
    assert len(off) > 40 and not said and max(off) < 0.1  # mm, of pixels of a sixth


@pytest.fixture
def rubbings(folder: Path) -> Path:
    """A small job with its template, and a photograph of that taped to the wall."""

    def made_there() -> None:
        write_examples(folder)
        assert run("template", "job.toml").code == 0

    begun(folder, "rubbings", made_there)
    return folder


def reading(*arguments: str) -> tuple[dict[str, Any], str]:
    ran = run("photo", "taped", *arguments, "taped.jpg", "--format", "json")
    assert ran.code == 0, ran.err
    return json.loads(ran.out), " ".join(ran.err.split())


def changed(folder: Path) -> None:
    text = (folder / "job.toml").read_text().replace("gap = 60", "gap = 240").replace('cover = "linked"', "")
    (folder / "job.toml").write_text(text)


def test_paper_is_read_alike_after_the_job_has_changed(rubbings: Path) -> None:
    before, said = reading("job.toml")
    assert "The sheets are those of job.pdf, beside job.toml." in said and "changed" not in said
    changed(rubbings)
    after, said = reading("job.toml")
    assert after == before and after["paper"] == "job.pdf"
    assert "job.toml has changed since: what is told is by that paper" in said
    (rubbings / "job.pdf").rename(rubbings / "elsewhere.pdf")
    named, said = reading("elsewhere.pdf")
    assert named == {**before, "paper": "elsewhere.pdf"} and said == ""


def test_paper_most_of_whose_sheets_would_lie_elsewhere_is_other_paper(rubbings: Path) -> None:
    """Else all of these sheets would be called misplaced, and taped anew."""
    known, photo = by_template(rubbings / "job.pdf").papers, read_photo(rubbings / "taped.jpg")
    off = {name: 150.0 * at for at, (name, _) in enumerate(known.cells)}
    tags = tuple(replace(tag, box=tag.box.shifted(0.0, off[tag.sheet])) for tag in known.tags)
    with pytest.raises(InputError, match=r"do not lie as on the sheets of job\.pdf"):
        read_taped([photo], replace(known, tags=tags), "job.pdf")


def test_sheets_laid_anew_are_said_and_refused_where_the_picture_shows_others(rubbings: Path) -> None:
    (rubbings / "job.pdf").unlink()
    found, said = reading("job.toml")
    assert found["paper"] == "job.toml"
    assert "warn The sheets were laid anew from job.toml: no job.pdf lies beside it." in said
    text = (rubbings / "job.toml").read_text()
    (rubbings / "job.toml").write_text(text.replace("gap = 60", "gap = 240"))
    said = " ".join(run("photo", "taped", "job.toml", "taped.jpg").out.split())
    assert "2 of 2 joins would be off by more than 3 mm" in said and "is this the paper of job.toml" in said
    (rubbings / "job.toml").write_text(text)
    changed(rubbings)
    ran = run("photo", "taped", "job.toml", "taped.jpg")
    words = " ".join(ran.err.split())
    assert (ran.code, ran.out) == (2, "")
    assert "photo tags, but they do not lie as on the sheets of job.toml other paper is on the wall" in words


@pytest.mark.parametrize(
    ("template", "options", "why"),
    [
        (["--anonymous", "--photo-marks"], [], "job.pdf has no job inside"),
        ([], ["--paper", "letter"], "job.pdf is on a4 paper, and --paper says letter."),
        ([], ["--cover", "marks"], "job.pdf has cover linked, and --cover says marks."),
        ([], ["--trim", "none"], "job.pdf has trim cut, and --trim says none."),
    ],
)
def test_a_template_of_other_paper_is_not_taken_for_that_on_the_wall(
    template: list[str], options: list[str], why: str, rubbings: Path
) -> None:
    assert run("template", "job.toml", *template, "--force").code == 0
    said = " ".join(run("photo", "taped", "job.toml", "taped.jpg", *options).err.split())
    assert f"warn The sheets were laid anew from job.toml: {why}" in said


def test_no_photograph_is_asked_of_one_sheet_and_none_is_read(rubbings: Path) -> None:
    """Its page told to photograph it, and the photograph was then to be taken again, from nearer."""
    assert run("template", "job.toml", "--one-piece", "--photo-marks", "--force").code == 0
    told = " ".join(page.extract_text() for page in PdfReader("job-first-pages.pdf").pages).split()
    assert "photograph" not in " ".join(told).lower()
    ran = run("photo", "taped", "job.pdf", "taped.jpg")
    assert ran.code == 2 and "says nothing of its sheets" in ran.err and "--since" not in ran.err
    job = Path("job.toml").read_text(encoding="utf-8")
    Path("shop.toml").write_text(job.replace('cover = "linked"', "print_shop = true"), encoding="utf-8")
    ran = run("photo", "taped", "shop.toml", "taped.jpg")
    assert ran.code == 2 and "error: shop.toml: is one sheet" in ran.err and "diagonals" in ran.err


def test_options_that_say_of_the_paper_what_its_file_says_are_taken(rubbings: Path) -> None:
    found, said = reading("job.toml", "--paper", "A4", "--cover", "linked", "--trim", "cut")
    assert found["paper"] == "job.pdf" and "laid anew" not in said


def test_the_newer_of_two_templates_is_taken_and_both_are_named(rubbings: Path) -> None:
    import os

    text = (rubbings / "job.toml").read_text()
    (rubbings / "job.toml").write_text(text.replace("drop = 62", "drop = 64"))
    assert run("template", "job.toml", "--since", "job.pdf").code == 0
    os.utime(rubbings / "job.pdf", (1e9, 1e9))
    found, said = reading("job.toml")
    assert found["paper"] == "job-update.pdf" and "job.pdf lies there, too, and is older." in said
    os.utime(rubbings / "job-update.pdf", (9e8, 9e8))
    assert reading("job.toml")[0]["paper"] == "job.pdf"


def test_the_file_of_an_update_tells_of_old_sheets_and_new_ones(tmp_path: Path) -> None:
    """Kept sheets with their tags as they were printed, the new nail, and nothing of what comes off."""
    old = placed(four(), paper=paper("a4", photo=True))
    done, before = printed(old, tmp_path / "old.pdf")
    a, _, *others = four()
    fewer = placed((replace(a, drop=62.0), *others), "ACD", paper=old.paper, sources=(("job.toml", b""),))
    plan = plan_wall(fewer)
    sheets = updated(done.plan, plan, inside(tmp_path / "old.pdf")[1], None, LETTERING)
    assert not isinstance(sheets, str) and sheets.gone and sheets.printed
    drawn = draw_template(plan, (), sheets, None, LETTERING, older=before)
    (tmp_path / "new.pdf").write_bytes(write_pdf(drawn, LETTERING))
    after = by_template(tmp_path / "new.pdf").papers
    names = {name for name, _ in after.cells}
    assert names == {name for name, _ in before.cells} - set(sheets.gone)
    assert not set(sheets.gone) & {end for join in after.joins for end in (join.over, join.under)}
    kept = names - set(sheets.printed)
    was, now = ({tag.number: tag for tag in one.tags if tag.sheet in kept} for one in (before, after))
    assert was.keys() == now.keys() and len(was) > 20
    for number, tag in was.items():
        assert tag.sheet == now[number].sheet and tag.box.sides == pytest.approx(now[number].box.sides, abs=1e-6)
    (a,) = (nail for nail in after.nails if nail.name == "A")
    (nail,) = (nail for nail in plan.nails if nail.name == "A")
    assert (a.x, a.y) == pytest.approx((nail.x - plan.centre_line, nail.y - plan.level_line))


def test_kept_sheets_have_their_tags_where_they_were_printed(tmp_path: Path) -> None:
    """Also where this version would draw them elsewhere: else what is read of them would be off by that."""
    old = placed(four(), paper=paper("a4", photo=True))
    done, known = printed(old, tmp_path / "old.pdf")
    shifted = replace(known, tags=tuple(replace(tag, box=tag.box.shifted(0.5, 0.0)) for tag in known.tags))
    a, *others = four()
    plan = plan_wall(placed((replace(a, drop=62.0), *others), paper=old.paper, sources=(("job.toml", b""),)))
    there = old_paper(sheets_file(done.plan, done.sheets, known)[1], "old.pdf")
    sheets = updated(done.plan, plan, there, None, LETTERING)
    assert not isinstance(sheets, str) and sheets.printed and not sheets.gone
    drawn = draw_template(plan, (), sheets, None, LETTERING, older=shifted)
    (tmp_path / "new.pdf").write_bytes(write_pdf(drawn, LETTERING))
    was = {tag.number: tag for tag in known.tags}
    for tag in by_template(tmp_path / "new.pdf").papers.tags:
        by = 0.0 if tag.sheet in sheets.printed else 0.5
        assert tag.box.x0 - was[tag.number].box.x0 == pytest.approx(by, abs=1e-6)
    silent = replace(there, photo=None)
    assert updated(done.plan, plan, silent, None, LETTERING) == "the file does not say where their photo tags are"


def test_a_job_that_lost_a_frame_is_served_by_its_updated_paper(tmp_path: Path) -> None:
    """What came off is not there any more, and no sheet beside it is printed anew for that."""
    old = placed(four(), paper=paper("a4", photo=True, cover="linked"))
    done, before = printed(old, tmp_path / "old.pdf")
    a, _, *others = four()
    plan = plan_wall(placed((a, *others), "ACD", paper=old.paper))
    sheets = updated(done.plan, plan, inside(tmp_path / "old.pdf")[1], None, LETTERING)
    assert not isinstance(sheets, str) and sheets.gone
    kept = papers(plan, sheets, (replace(tag, box=tag.box) for tag in before.tags))
    left = old_paper(sheets_file(plan, sheets, replace(kept, tags=()))[1], "new.pdf")
    assert len(left.cells) == len(done.sheets.sheets) - len(sheets.gone)
    again = updated(plan, plan, left, None, LETTERING)
    assert not isinstance(again, str) and (again.printed, again.gone) == ((), ())


@pytest.mark.parametrize(
    "photo",
    [
        None, 5, [], {}, {"tags": [], "joins": []}, {"tags": [[0, "1", 0, 0, 10**400]], "joins": [], "nails": []},
        {"tags": [[0, "99", 0, 0, 12]], "joins": [], "nails": []},
        {"tags": [[0, "1", 9e9, 0, 12]], "joins": [], "nails": []},
        {"tags": [], "joins": [["1", "2", 0, 0, 0]], "nails": []},
        {"tags": [], "joins": [], "nails": [["A", "1", "NaN", 0]]},
    ],
)  # fmt: skip
def test_what_another_wrote_of_tags_is_refused(photo: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from templates_gen.documents import template

    def sheets(*given: Any) -> tuple[str, bytes]:
        name, content = sheets_file(*given)
        return name, json.dumps({**json.loads(content), "photo": photo}).encode()

    monkeypatch.setattr(template, "sheets_file", sheets)
    with pytest.raises(InputError, match=r"^job\.pdf: (says nothing|does not say)"):
        printed(on_paper(one_frame(paper=paper("a4")), photo=True), tmp_path / "job.pdf")


def test_a_template_without_tags_is_told_from_one_with_them(tmp_path: Path) -> None:
    with pytest.raises(InputError, match=r"^job\.pdf: has no photo tags on its sheets"):
        printed(one_frame(paper=paper("a4")), tmp_path / "job.pdf")


def test_old_sheets_and_new_ones_on_one_wall_are_read_as_exactly_as_any(tmp_path: Path) -> None:
    """As after an update: old pages with a new one between them, read by the update's file alone."""
    done, before = printed(twelve(paper("letter", cover="linked", photo=True), "in"), tmp_path / "old.pdf")
    first, *others = done.job.frames
    frames = (replace(first, title="Moonwort, pressed"), *others)
    plan = plan_wall(replace(done.job, frames=frames))
    sheets = updated(done.plan, plan, inside(tmp_path / "old.pdf")[1], None, LETTERING)
    assert not isinstance(sheets, str) and sheets.printed and not sheets.gone
    drawn = draw_template(plan, (), sheets, None, LETTERING, older=before)
    (tmp_path / "new.pdf").write_bytes(write_pdf(drawn, LETTERING))
    every = replace(sheets, printed=None)
    drawn = draw_template(plan, (), every, None, LETTERING)
    report = template_report(plan, (), every, None, len(drawn.pages))
    anew = dataclasses.replace(
        done, plan=plan, sheets=every, template=drawn, pdf=write_pdf(drawn, LETTERING), report=report
    )
    chance = np.random.default_rng(4)
    old, new = ({sheet.name: sheet for sheet in taped(one, chance, dots=300.0)} for one in (done, anew))
    laid = [new[name] if name in sheets.printed else sheet for name, sheet in old.items()]
    known = papers(plan, every, drawn_tags(plan, every, drawn))
    whole = bounds([cell for _, cell in known.cells])
    camera = standing(chance, (2400, 1800), (whole.cx, whole.cy), whole.width, whole.height)
    found = read_taped(
        [Photo("wall.jpg", b"", photograph(laid, camera, Look(), chance))], by_template(tmp_path / "new.pdf").papers
    )
    outcome = Outcome()
    compared(found, truth(laid, known), outcome)
    assert len(outcome.joins) == len(known.joins) and len(outcome.nails) == len(known.nails) and not found.unseen
    assert rms(outcome.joins) < 0.15 and rms(outcome.nails) < 0.3  # mm, as of paper that is all of one print
