"""Whether what a sheet says can be read: no line through it, nothing laid over it, no name cut short, none mistaken."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from itertools import pairwise

import pytest

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.checks import find
from templates_gen.documents.sheets.layer import shown_on
from templates_gen.documents.sheets.layers import lay
from templates_gen.documents.sheets.titles import ruler_places
from templates_gen.documents.template import draw_template
from templates_gen.drawing.items import POINT
from templates_gen.drawing.lettering import Lettering
from templates_gen.job.model import Job
from templates_gen.job.reading.building import read_job
from templates_gen.tiling.sheet import Sheet, SheetPlan
from templates_gen.tolerance.holding import plan_sheets
from tests.crowded import crowded
from tests.jobs import SAMPLES, frame, group, job, paper
from tests.made import GENERATED, SAMPLE_NAMES, made
from tests.page_texts import Lettered, OnPage, crossed, on_page, overlapping, pages, sheet_pages

TITLE = ("sheet ", "level ruler ", "rulers ")
"""How a sheet's two title lines begin."""

samples = pytest.mark.parametrize("name", SAMPLE_NAMES)


@dataclass(frozen=True)
class Drawn:
    """A job, and every sheet with its page."""

    plan: Plan
    sheets: SheetPlan
    pages: tuple[tuple[Sheet, OnPage], ...]


def drawn(job: Job) -> Drawn:
    plan, lettering = plan_wall(job), Lettering()
    sheets = plan_sheets(plan, job.paper)
    template = draw_template(plan, find(plan), sheets, None, lettering)
    before = len(template.pages) - len(sheets.sheets)
    numbered = enumerate(sheets.sheets, before + 1)
    return Drawn(plan, sheets, tuple((sheet, on_page(template, lettering, at)) for at, sheet in numbered))


@cache
def sample(name: str, /, **asked: str | float) -> Drawn:
    """A sample with this paper."""
    job = read_job(SAMPLES / f"{name}.toml")
    return drawn(replace(job, paper=replace(job.paper, **asked)))


def titles(page: OnPage) -> list[Lettered]:
    return [text for text in page.texts if text.text.startswith(TITLE)]


def struck(page: OnPage) -> Iterator[Lettered]:
    """Texts with a line through them or along them."""
    yield from dict.fromkeys(text for text, _ in crossed(page))


def _places_fit(done: Drawn, sheet: Sheet) -> bool:
    """True where the shortest words for where a sheet's rulers are, 1.8 mm high, have room beside its upright ruler."""
    part = next(part for part in shown_on(done.plan, done.sheets) if part.sheet.name == sheet.name)
    words = ruler_places(done.plan, done.sheets, part)[-1]
    return Lettering().width(words, 1.8) <= sheet.inner.x1 - 0.5 - (sheet.cell.x0 + 16.0)


@pytest.mark.parametrize("trim", ["cut", "none"])
@samples
def test_no_line_goes_through_a_sheets_title(name: str, trim: str) -> None:
    """A sheet that is too narrow for the second line has the first alone."""
    done = sample(name, trim=trim)
    for sheet, page in done.pages:
        assert len(titles(page)) == 2 or (len(titles(page)) == 1 and not _places_fit(done, sheet)), page.label
        assert [text.text for text in struck(page) if text.text.startswith(TITLE)] == [], page.label


@pytest.mark.parametrize("trim", ["cut", "none"])
@samples
def test_no_line_goes_through_or_along_the_figures_of_a_sheets_rulers(name: str, trim: str) -> None:
    for _, page in sample(name, trim=trim).pages:
        assert [text.text for text in page.texts if text.form.startswith("rulers")]
        assert [text.text for text in struck(page) if text.form.startswith("rulers")] == [], page.label


def _paper(done: Drawn, sheet: Sheet) -> Rect:
    """The sheet of paper on the wall; where it is cut, what is left of it at the left and at the foot."""
    page = sheet.page
    x, y = sheet.window.x0 - page.printable.x0, sheet.window.y0 - page.printable.y0
    whole = Rect.sized(x, y, page.width * POINT, page.height * POINT)
    return whole if done.sheets.hides else replace(whole, x0=sheet.cell.x0, y0=sheet.cell.y0)


LOW = {
    # found by trying seeds: uncut sheets 45, 46 and 48 mm high under others, and cut ones of 24 mm
    "uncut, 46 mm": lambda: crowded(38, paper("a4", trim="none", cover="all"), "mm"),
    "uncut, 45 mm": lambda: crowded(2, paper("letter", trim="none", cover="all"), "mm"),
    "uncut, 48 mm": lambda: crowded(22, paper("letter", trim="none", cover="all"), "mm"),
    "cut, 24 mm": lambda: crowded(53, paper("letter", cover="all"), "mm"),
}


def _title_is_seen(done: Drawn) -> None:
    by_name = {sheet.name: sheet for sheet, _ in done.pages}
    for sheet, page in done.pages:
        over = [_paper(done, by_name[join.over]) for join in done.sheets.joins if join.under == sheet.name]
        away = sheet.window.x0 - sheet.page.printable.x0, sheet.window.y0 - sheet.page.printable.y0
        assert not [t.text for t in titles(page) if any(t.box.shifted(*away).overlaps(o) for o in over)], sheet.name


@pytest.mark.parametrize("trim", ["cut", "none"])
@samples
def test_no_other_sheet_covers_a_sheets_title(name: str, trim: str) -> None:
    _title_is_seen(sample(name, trim=trim))


@pytest.mark.parametrize("name", LOW)
def test_no_other_sheet_covers_the_title_of_a_low_one(name: str) -> None:
    done = drawn(LOW[name]())
    low = [sheet for sheet, _ in done.pages if sheet.inner.height < 0.0]
    assert low and {join.under for join in done.sheets.joins if not join.upright} >= {sheet.name for sheet in low}
    _title_is_seen(done)
    assert [(page.label, pairs) for _, page in done.pages if (pairs := overlapping(page.texts, 0.01))] == []


def _along(text: Lettered, line: Rect) -> bool:
    upright = len(text.text) > 1 and text.box.width < text.box.height
    return (line.width < line.height) == upright


@pytest.mark.parametrize("name", [*SAMPLE_NAMES, *GENERATED])
def test_lines_break_off_at_all_lettering_that_they_run_across(name: str) -> None:
    """Only what one runs along behind is struck, for a line is not taken away as a whole.

    Figures of drop scales apart, and the level line's ticks, 6 mm at most, which are measured from.
    """
    for sheet, page in sheet_pages(name):
        met = [(text, line) for text, line in crossed(page) if not text.text.isdigit()]
        along = {text for text, line in met if _along(text, line)}
        across = [text.text for text, line in met if text not in along and line.width + line.height > 6.001]
        assert across + [text.text for text in along if text.text.startswith(TITLE)] == [], sheet.name


@samples
def test_lines_break_off_at_all_lettering_of_the_map(name: str) -> None:
    assert [text.text for text in struck(pages(name)[0])] == []


@pytest.mark.parametrize("name", [*SAMPLE_NAMES, *GENERATED])
def test_no_white_lies_on_a_nail_or_under_a_drop_scale_but_for_a_title(name: str) -> None:
    """Of a nail, all within the 5 mm of its circle; a title stands in the strip where a rule is shown twice."""
    done = made(name)
    scales = lay(done.plan, done.sheets, 0, done.lettering)[0].so_far.scales
    zones = [scale.zone for hung in done.plan.frames for scale in scales[hung.frame.id]]
    whole = [*zones, *(Rect.about(nail.x, nail.y, 10.0, 10.0) for nail in done.plan.nails)]
    for sheet in done.sheets.sheets:
        (items,) = (page.wall_items for page in done.template.pages if page.label == sheet.name)
        titled = Rect(sheet.cell.x0, sheet.inner.y1, sheet.cell.x1 + 100.0, sheet.cell.y1)
        white = [Rect(*item.points[0], *item.points[2]) for item in items if getattr(item, "grey", 0.0) == 1.0]
        under = [box for box in white if any(box.overlaps(rect) for rect in whole) and sheet.inner.overlaps(box)]
        assert [box for box in under if not titled.grown(1.0).holds(box)] == [], sheet.name


def test_an_id_that_is_too_wide_stands_upright_before_it_is_cut() -> None:
    """Frames 267 mm wide and 57 mm apart on letter paper leave strips that are narrower than their ids (by looking)."""
    ids = ("Spring", "Summer", "Midsummer", "Autumn", "Winter")
    frames = [frame(name, 267.0, 343.0) for name in ids]
    done = drawn(job(*frames, group=group((ids,), gap=57.0), paper=paper("letter")))
    texts = [text for _, page in done.pages for text in page.texts]
    assert [text.text for text in texts if text.text.endswith("…")] == []
    assert [text.text for text in texts if text.text in ids and text.box.height > text.box.width]


def test_a_narrow_sheet_says_its_name_and_cuts_no_distance_of_its_rules_short() -> None:
    """Jobs found by trying seeds: uncut sheets of theirs leave 13 and 38 mm to write a title in."""
    for seed, on in ((7, "a4"), (23, "a4")):
        for sheet, page in drawn(crowded(seed, paper(on, trim="none"))).pages:
            told = [text.text for text in page.texts]
            assert [text for text in told if " · page " in text and f" · page {page.number} of " not in text] == []
            assert [text for text in told if f"{text} ".startswith((f"sheet {sheet.name} ", f"{sheet.name} "))]
            assert [text for text in told if text.startswith(TITLE[1:]) and text.endswith("…")] == []


@samples
def test_no_line_goes_through_the_name_of_a_line(name: str) -> None:
    named = ("level line,", "centre line", "edge of the wall", "line of the nosings")
    for _, page in sample(name, trim="cut").pages:
        assert [text.text for text in struck(page) if text.text.startswith(named)] == [], page.label


@pytest.mark.parametrize("trim", ["cut", "none"])
@samples
def test_every_id_of_a_frame_is_whole(name: str, trim: str) -> None:
    done = sample(name, trim=trim)
    ids = tuple(hung.frame.id for hung in done.plan.frames)
    for _, page in done.pages:
        cut = [text.text for text in page.texts if text.text.endswith("…")]
        assert [text for text in cut if any(full.startswith(text[:-1]) for full in ids)] == [], page.label


@samples
def test_no_nails_label_seems_to_go_on_a_frames(name: str) -> None:
    """The last line of a frame's label keeps 3 mm from a nail's name and figures.  Our own design, no source."""
    done = sample(name, name="letter", width=215.9, height=279.4)
    nails = {nail.name for nail in done.plan.nails}
    for _, page in done.pages:
        labels = [text.box for text in page.texts if text.text.startswith("drop ")]
        named = [text for text, after in pairwise(page.texts) if text.text in nails and after.text.startswith("floor ")]
        assert [text.text for text in named if any(text.box.grown(2.9).overlaps(box) for box in labels)] == []


@samples
def test_no_id_of_a_frame_or_nail_is_read_for_part_of_a_distance(name: str) -> None:
    """Ids keep 5 mm from the figures that place a sheet.  Our own design, no source."""
    done = sample(name, cover="nails")
    ids = {hung.frame.id for hung in done.plan.frames} | {nail.name for nail in done.plan.nails}
    for _, page in done.pages:
        told = [
            at for at, text in enumerate(page.texts) if text.text.endswith((" the level ruler:", "the upright ruler:"))
        ]
        figures = [page.texts[at + line].box for at in told for line in (1, 2) if page.texts[at + line].height >= 5.0]
        near = [t.text for t in page.texts if t.text in ids and any(t.box.grown(4.99).overlaps(box) for box in figures)]
        assert near == [], page.label
