"""A printer that does not print true, simulated from the scale page to the nails of a template drawn for it."""

from __future__ import annotations

import io
import math
from collections.abc import Callable, Iterator
from itertools import combinations
from pathlib import Path

import numpy as np
import pypdf
import pypdfium2
import pytest

from templates_gen.printer.profile import Printer
from templates_gen.printer.store import load, profile_folder
from tests.fits import fit_similarity
from tests.jobs import SAMPLES
from tests.made import Everything, made, make
from tests.pdf_reading import Marks, moved, page_marks
from tests.running import run
from tests.wall_reading import HAIR, NARROW, bars, brought_back, crosses

POINT = 25.4 / 72  # mm; ISO 32000-1, 8.3.2.3, and the international inch of 1959
TRUE = 0.01  # mm; a fifteenth of what can be seen; common practice, no source
NAIL_RING = 6.5  # mm; our own design, no source
ACROSS, ALONG, LEAN = 0.987, 1.004, math.radians(0.15)
PAGE = 210.0, 297.0  # mm, a4: ISO 216
DOTS = 150  # to an inch

UPRIGHT, LYING, TURNED = "tile-rubbings", "low and wide", "linked a4"
Point = tuple[float, float]
Way = Callable[[float, float], Point]


def printed(x: float, y: float) -> Point:
    """Where a point ends up on paper that is fed upright: stretched about a corner of the sheet, leaning to the right,
    and the whole sheet drawn in askew and off its place.  Asked mm and printed mm."""
    x, y = ACROSS * x + ALONG * math.sin(LEAN) * y, ALONG * math.cos(LEAN) * y
    turn = math.radians(0.4)
    return x * math.cos(turn) - y * math.sin(turn) + 1.7, x * math.sin(turn) + y * math.cos(turn) - 2.3


# a page that lies is turned by a quarter on its way to the printer, one way or the other
WAYS: dict[str, Way] = {
    "upright": printed,
    "turned left": lambda x, y: printed(PAGE[0] - y, x),
    "turned right": lambda x, y: printed(y, PAGE[1] - x),
}
CASES = [(UPRIGHT, "upright"), (LYING, "turned left"), (LYING, "turned right"), (TURNED, "upright")]


@pytest.fixture(scope="module")
def config(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """A config folder in which the simulated printer was recorded under the name study, by what its scale page says."""
    folder = tmp_path_factory.mktemp("printer")
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CONFIG_HOME", str(folder))
        assert run("printer", "page", "--paper", "a4", "-o", folder / "scale.pdf").code == 0
        (page,) = pypdf.PdfReader(folder / "scale.pdf").pages
        one, two, three, four = (printed(*corner) for corner in corners(page_marks(page)))
        told = [f"{math.dist(*ends):.3f}" for ends in ((one, two), (one, three), (one, four), (three, two))]
        ran = run("printer", "record", "study", "--paper", "a4", "--across", told[0], "--along", told[1],
                  "--diagonals", *told[2:])  # fmt: skip
        assert ran.code == 0
        assert "98.70%" in ran.out and "100.40%" in ran.out and "leans 0.15° to the right" in ran.out
        yield folder


@pytest.fixture(scope="module")
def study(config: Path) -> Printer:
    return load(profile_folder(config / "templates-gen"), "study")


@pytest.fixture(scope="module")
def templates(study: Printer) -> dict[str, Everything]:
    """Templates for the simulated printer: on pages that stand, on pages that lie, and with sheets turned on them."""
    return {name: make(made(name).job, name, study) for name in (UPRIGHT, LYING, TURNED)}


def corners(marks: Marks) -> list[Point]:
    """The middles of the scale page's crosses, from the lower left by rows (mm): lines of 12 mm that cross there."""
    lines = [
        [value * POINT for value in s[:4]] for s in marks.segments if s.width * POINT == pytest.approx(NARROW, abs=1e-3)
    ]
    upright = [(x0, (y0 + y1) / 2) for x0, y0, x1, y1 in lines if x0 == x1 and abs(y1 - y0) == pytest.approx(12.0)]
    level = [((x0 + x1) / 2, y0) for x0, y0, x1, y1 in lines if y0 == y1 and abs(x1 - x0) == pytest.approx(12.0)]
    found = sorted(upright, key=lambda at: (round(at[1]), at[0]))
    assert len(found) == len(level) == 4
    assert all(min(math.dist(at, other) for other in level) < 1e-6 for at in found)
    return found


def on_paper(done: Everything, way: Way) -> Iterator[tuple[list[Point], list[Point]]]:
    """By sheet the nail crosses and registration marks as printed (mm), and where they belong on the wall (mm)."""
    nails = [(nail.x, nail.y) for nail in done.plan.nails]
    marks = [(mark.x, mark.y) for mark in done.sheets.marks]
    for sheet, told in zip(brought_back(done), done.report["sheets"], strict=True):
        paper, wall = [], []
        for found, known in ((crosses(sheet, NAIL_RING, HAIR), nails), (bars(sheet), marks)):
            for cross in found:
                x, y = moved(tuple(told["to_page"]), cross.x, cross.y)  # back to where the file has it
                paper.append(way(x * POINT, y * POINT))
                wall.append(min(known, key=lambda at: math.dist(at, (cross.x, cross.y))))
        yield paper, wall


def worst(done: Everything, way: Way) -> float:
    """The worst distance between any two of the nails and registration marks of a sheet (mm)."""
    errors = [
        abs(math.dist(paper[i], paper[j]) - math.dist(wall[i], wall[j]))
        for paper, wall in on_paper(done, way)
        for i, j in combinations(range(len(paper)), 2)
    ]
    assert len(errors) > 20
    return max(errors)


@pytest.mark.parametrize(("name", "way"), CASES)
def test_nails_and_register_marks_of_a_sheet_are_as_far_apart_as_on_the_wall(name, way, templates):
    done = templates[name]
    assert (done.sheets.page.width > done.sheets.page.height) == (name == LYING)
    assert worst(done, WAYS[way]) < TRUE


@pytest.mark.parametrize(("name", "way"), CASES)
def test_without_the_profile_they_are_not(name, way):
    assert worst(made(name), WAYS[way]) > 1.0


@pytest.mark.parametrize(("name", "way"), CASES)
def test_a_printed_sheet_is_the_wall_turned_and_moved_and_nothing_else(name, way, templates):
    several = [(paper, wall) for paper, wall in on_paper(templates[name], WAYS[way]) if len(paper) > 2]
    assert several
    for paper, wall in several:
        fit = fit_similarity(wall, paper)
        assert fit.scale == pytest.approx(1.0, abs=1e-4)
        assert max(math.hypot(*residual) for residual in fit.residuals) < TRUE


@pytest.mark.parametrize(("name", "way"), CASES)
def test_every_rule_measures_what_it_says_once_printed(name, way, templates):
    """A ruler may be broken where a frame's corner lies on it: both its ends stand, and all of it is on one line."""
    done = templates[name]
    assert len(done.report["rules"]) == 2 * (1 + len(done.sheets.sheets))
    for ruler in done.report["rules"]:
        start, end = np.array(ruler["from"]), np.array(ruler["to"])
        drawn = [
            s
            for s in done.marks[ruler["page"] - 1].segments
            if along(s, start, end) and abs(s.width * POINT / NARROW - 1) < 0.03
        ]
        assert 1 <= len(drawn) <= 3
        points = [point for s in drawn for point in (s[:2], s[2:4])]
        first, last = (min(points, key=lambda at, to=to: math.dist(at, to)) for to in (start, end))
        assert math.dist(first, start) * POINT < 0.001 and math.dist(last, end) * POINT < 0.001
        ends = [WAYS[way](x * POINT, y * POINT) for x, y in (first, last)]
        assert math.dist(*ends) == pytest.approx(ruler["length"], abs=TRUE)


def along(segment, start, end):
    """Whether a line drawn is a piece of the one from `start` to `end` (points of the page)."""
    points = np.array([segment[:2], segment[2:4]]) - start
    way = (end - start) / math.dist(start, end)
    beside = np.abs(points @ [-way[1], way[0]]).max() * POINT
    reach = points @ way * POINT
    within = reach.min() > -0.001 and reach.max() < math.dist(start, end) * POINT + 0.001
    return beside < 0.001 and within and np.ptp(reach) > 1.0


@pytest.mark.parametrize("name", [UPRIGHT, LYING, TURNED])
def test_nothing_is_asked_for_where_the_printer_does_not_reach(name, templates):
    """The margins of a4 are 7 mm, and 13 at the foot, or at both short sides of a page that lies."""
    dot = 25.4 / DOTS
    left, top, right, bottom = (13.0, 7.0, 13.0, 7.0) if name == LYING else (7.0, 7.0, 7.0, 13.0)
    for page in pypdfium2.PdfDocument(templates[name].pdf):
        image = page.render(scale=DOTS / 72, grayscale=True).to_numpy()
        inked = np.argwhere(image.reshape(image.shape[:2]) < 250) * dot
        (up, across), (down, far) = inked.min(axis=0), inked.max(axis=0) + dot
        high, wide = image.shape[0] * dot, image.shape[1] * dot
        assert across > left - 2 * dot and far < wide - right + 2 * dot
        assert up > top - 2 * dot and down < high - bottom + 2 * dot


def test_the_command_draws_for_the_printer_and_says_so(config, templates, tmp_path):
    out, report = tmp_path / "out.pdf", tmp_path / "report.json"
    job = SAMPLES / f"{UPRIGHT}.toml"
    ran = run("template", job, "--printer", "Study", "-o", out, "--report", report)
    assert ran.code == 0 and "prints 98.70% across, more than 1% off" in " ".join(ran.err.split())
    done = templates[UPRIGHT]
    assert out.read_bytes() == done.pdf
    assert '"printer": {\n  "name": "study"' in report.read_text()
    first, *others = ["".join(text.text for text in marks.texts) for marks in done.marks]
    assert "“study”" in first and "98.70%" in first
    names = {sheet.name: at for at, sheet in enumerate(done.sheets.sheets, len(done.marks) - len(done.sheets.sheets))}
    assert names and all("for study" in others[at - 1] for at in names.values())
    assert "printer" not in made(UPRIGHT).report
    assert pypdf.PdfReader(io.BytesIO(done.pdf)).pages[0].mediabox == pypdf.PdfReader(out).pages[1].mediabox
