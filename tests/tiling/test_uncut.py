"""Sheets that are taped without being cut: what is hidden, and by what they are brought to their place."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator

import pytest

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.documents.instructions.taping_steps import day_before
from templates_gen.documents.sheets.join_marks import LEVEL_CUT, UPRIGHT_CUT
from templates_gen.drawing.items import Use
from templates_gen.tiling.demand import nail_box, scale_length
from templates_gen.tiling.kept import unserved
from templates_gen.tiling.planning import tiled
from templates_gen.tiling.sheet import Sheet, SheetPlan, given
from templates_gen.tolerance.effort import effort
from templates_gen.tolerance.expected import worst_error
from templates_gen.tolerance.holding import plan_sheets
from templates_gen.tolerance.neighbours import neighbours
from tests.crowded import crowded
from tests.documents import test_lettering_apart as lettering
from tests.documents import test_read_back as marks
from tests.documents import test_read_back_lines as lines
from tests.jobs import paper
from tests.made import UNCUT, made
from tests.page_texts import sheet_pages, to_page_mm
from tests.pdf_reading import Segment
from tests.wall_reading import CLOSE, STRONG, Shown, is_level, is_upright, shown, wide

POINT = 25.4 / 72  # mm; ISO 32000-1, 8.3.2.3, and the international inch of 1959
EDGE_OFF = 2.0  # mm that paper may be off: ISO 216, sides of 150 to 600 mm, from memory
RULER = 8.0  # mm of a slanting line that a ruler can be laid along; our own design, no source

uncut = pytest.mark.parametrize("name", UNCUT)

UNFIT = (
    "test_rules_are_as_long_as_an_a4_page_allows",  # of one job
    "test_the_cross_is_where_it_should_be_in_pixels",  # of the samples
    "test_registration_marks_of_all_their_sheets_are_one_wall_point",  # other marks here, below
    "test_every_join_names_the_neighbour_beside_it",  # elsewhere here, below
    "test_the_centre_line_breaks_off_on_a_scale_to_mark_a_nail_on",  # of one job
)
EVERYWHERE = [
    getattr(module, test)
    for module in (lettering, marks, lines)
    for test in dir(module)
    if test.startswith("test_") and test not in UNFIT
]


@uncut
@pytest.mark.parametrize("holds", EVERYWHERE, ids=lambda test: test.__name__)
def test_what_holds_for_every_page_holds_uncut(holds: object, name: str) -> None:
    assert callable(holds)
    holds(name)


def paper_of(sheets: SheetPlan, sheet: Sheet) -> Rect:
    """The whole sheet of paper on the wall (mm), its margins too."""
    page = sheet.page
    x, y = sheet.window.x0 - page.printable.x0, sheet.window.y0 - page.printable.y0
    return Rect.sized(x, y, page.width * POINT, page.height * POINT)


def above(sheets: SheetPlan, sheet: Sheet) -> list[Rect]:
    """The papers of the sheets that are laid on this one, as large as they may be."""
    over = [sheets.sheet(join.over) for join in sheets.joins if join.under == sheet.name]
    return [paper_of(sheets, other).grown(EDGE_OFF) for other in over]


@uncut
def test_no_nail_mark_target_or_label_is_hidden(name: str) -> None:
    done = made(name)
    by_name = {sheet.name: sheet for sheet in shown(name)}
    for sheet in done.sheets.sheets:
        hiding = above(done.sheets, sheet)
        nails = [nail_box(n.x, n.y) for n in done.plan.nails if sheet.inner.holds(nail_box(n.x, n.y))]
        texts = [
            Rect(t.x, t.y, t.x, t.y)
            for t in by_name[sheet.name].texts
            if t.text.startswith(("sheet ", "floor ", "level line", "drop "))
        ]
        assert [item for item in (*nails, *texts) if any(over.overlaps(item.grown(0.01)) for over in hiding)] == []


DEEP = 18
"""mm: 13 of margin, 2 either way (ISO 216, from memory) and 1 more."""


def longest_hidden(sheets: SheetPlan, level: bool, start: float, end: float, at: float) -> int:
    """The longest piece of a level or upright line that no sheet shows (mm).

    Of a sparing template, where edges are drawn as paper happens to lie, between two pieces that are shown: of its
    corners see below.
    """
    windows = [(sheet.window, above(sheets, sheet)) for sheet in sheets.sheets]
    sparing, states = sheets.paper.cover != "all", ""
    for step in range(int(end - start)):
        x, y = (start + step, at) if level else (at, start + step)
        seen = any(w.has_point(x, y) and not any(o.has_point(x, y) for o in over) for w, over in windows)
        off = sparing and not any(window.has_point(x, y) for window, _ in windows)
        states += "s" if seen else "o" if off else "h"
    return max(map(len, re.findall("(?<=s)h+(?=s)" if sparing else "h+", states)), default=0)


@uncut
def test_no_edge_is_hidden_along_its_length(name: str) -> None:
    """Every edge crosses what is hidden, at most: no point of it is hidden on a run longer than that is deep; or twice
    that, where three sheets meet of a template whose edges are drawn as paper happens to lie."""
    done = made(name)
    deep = DEEP if done.sheets.paper.cover == "all" else 2 * DEEP
    for r in (hung.rect for hung in done.plan.frames):
        assert all(longest_hidden(done.sheets, True, r.x0, r.x1, at) <= deep for at in (r.y0, r.y1))
        assert all(longest_hidden(done.sheets, False, r.y0, r.y1, at) <= deep for at in (r.x0, r.x1))


ARM = 15
"""mm of either edge at a frame's corner that are asked for: our own design."""


@uncut
def test_of_every_corner_at_least_half_is_seen(name: str) -> None:
    """Of the arms of a corner that are on paper, by points a millimetre apart; of linked paper none is asked for."""
    done = made(name)
    windows = [(sheet.window, above(done.sheets, sheet)) for sheet in done.sheets.sheets]
    for r in (hung.rect for hung in done.plan.frames):
        for x, right in ((r.x0, 1), (r.x1, -1)):
            for y, up in ((r.y0, 1), (r.y1, -1)):
                arms = [at for step in range(ARM + 1) for at in ((x + right * step, y), (x, y + up * step))]
                seen = sum(
                    any(w.has_point(*at) and not any(o.has_point(*at) for o in over) for w, over in windows)
                    for at in arms
                )
                assert 2 * seen >= len(arms) or done.sheets.paper.cover == "linked"


@pytest.mark.parametrize("name", ["uncut a4", "uncut a4, linked"])
def test_uncut_sheets_take_less_than_strips_and_err_hardly_more(name: str) -> None:
    """A tenth more than strips with whole edges, with a string along the level line: our own design."""
    done = made(name)
    pairs = neighbours(done.plan)
    strips = tiled(done.plan, replace(done.sheets.paper, cover="marks"))
    assert effort(done.sheets).minutes < 0.75 * effort(strips).minutes
    assert worst_error(done.plan, done.sheets, pairs) <= 1.1 * worst_error(done.plan, strips, pairs)


def fullest(seed: int, cover: str = "all") -> tuple[Plan, SheetPlan]:
    asked = crowded(seed, paper("letter", trim="none", cover=cover))
    plan = plan_wall(asked)
    return plan, plan_sheets(plan, asked.paper)


@pytest.mark.parametrize("seed", [0, 16, 26])
def test_no_drop_scale_is_hidden_along_its_length(seed: int) -> None:
    """Without it a frame that is not measured yet could not be marked by hand."""
    plan, sheets = fullest(seed)
    for hung in plan.frames:
        for bearing in hung.bearings:
            low = hung.rect.y1 - scale_length(hung, bearing.drop)
            assert longest_hidden(sheets, False, low, hung.rect.y1, bearing.x) <= DEEP, hung.frame.id


def test_where_marks_stand_too_close_rules_of_known_drops_may_be_hidden() -> None:
    plan, sheets = fullest(23, "marks")
    for hung in plan.frames:
        for bearing in hung.bearings:
            if bearing.drop is None:
                low = hung.rect.y1 - scale_length(hung, None)
                assert longest_hidden(sheets, False, low, hung.rect.y1, bearing.x) <= DEEP, hung.frame.id


@pytest.mark.parametrize("seed", [4, 8, 10])
def test_the_paper_serves_the_job_that_it_was_made_for(seed: int) -> None:
    """Else `--since` would print all sheets anew of a job that has not changed."""
    plan, sheets = fullest(seed, "marks")
    assert unserved(given(plan, sheets.paper, None, mixed=True), sheets) == ""


def test_marks_too_close_for_any_cut_are_told_so_and_what_helps() -> None:
    with pytest.raises(InputError, match=r"(?s)stand so close together.*larger paper.*trim = \"cut\"") as refused:
        fullest(83)
    assert "20,000" not in str(refused.value)


@uncut
def test_slanting_lines_go_on_from_sheet_to_sheet_clear_of_what_is_hidden(name: str) -> None:
    """On both sheets of a mark, the same two lines at 45° through one point of the wall, and enough of each to see."""
    done = made(name)
    by_name = {sheet.name: sheet for sheet in shown(name)}
    assert done.sheets.marks
    for mark in done.sheets.marks:
        over, under = mark.sheets
        for sheet in (by_name[over], by_name[under]):
            through = list(_slanting(sheet, mark.x, mark.y))
            hiding, shown_of = above(done.sheets, done.sheets.sheet(sheet.name)), {1: 0.0, -1: 0.0}
            for s in through:
                shown_of[round((s.y1 - s.y0) / (s.x1 - s.x0))] += _seen(s, sheet.window, hiding)
            assert len(through) == 4 and min(shown_of.values()) > RULER


def _slanting(sheet: Shown, x: float, y: float) -> Iterator[Segment]:
    """The pieces of lines at 45° that go on through (x, y)."""
    for s in wide(sheet.segments, STRONG):
        (ax, ay), (bx, by) = (s.x0 - x, s.y0 - y), (s.x1 - x, s.y1 - y)
        near = max(map(abs, (ax, ay, bx, by))) < 18.0  # mm; more than a line reaches, less than to the next mark
        if near and not is_level(s) and not is_upright(s) and abs(abs(ax) - abs(ay)) + abs(abs(bx) - abs(by)) < CLOSE:
            yield s


def _seen(s: Segment, window: Rect, hiding: list[Rect]) -> float:
    """How long a piece of the line shows (mm), by points a tenth of a millimetre apart."""
    length = math.hypot(s.x1 - s.x0, s.y1 - s.y0)
    count = int(length * 10)
    shown_points = 0
    for number in range(count):
        x, y = s.x0 + (s.x1 - s.x0) * number / count, s.y0 + (s.y1 - s.y0) * number / count
        shown_points += window.has_point(x, y) and not any(over.has_point(x, y) for over in hiding)
    return shown_points / 10


@uncut
def test_the_edge_of_the_upper_sheet_is_drawn_where_its_paper_will_end(name: str) -> None:
    """Within the difference of the margins of paper that lies and stands: 13 and 7 mm (our defaults)."""
    done = made(name)
    by_name = {sheet.name: sheet for sheet in shown(name)}
    for join in done.sheets.joins:
        edge = paper_of(done.sheets, done.sheets.sheet(join.over))
        dashed = [s for s in wide(by_name[join.under].segments, STRONG) if s.dash[0]]
        if join.upright:
            near = [s for s in dashed if is_upright(s) and abs(s.x0 - edge.x0) < 6.0 + CLOSE]
        else:
            near = [s for s in dashed if is_level(s) and abs(s.y0 - edge.y0) < 6.0 + CLOSE]
        assert near, join


@uncut
def test_long_joins_have_two_pairs_of_lines_and_nobody_is_told_to_cut(name: str) -> None:
    done = made(name)
    for join in done.sheets.joins:
        if math.dist((join.x0, join.y0), (join.x1, join.y1)) > 170.0:  # mm; two squares of 35 and what they keep off
            assert sum(set(mark.sheets) == {join.over, join.under} for mark in done.sheets.marks) == 2
    words = " ".join(day_before(done.plan, done.sheets))
    assert "Cut nothing" in words and "toothed line" not in words and "cut edge" not in words
    placed = {item.form for page in done.template.pages for item in page.wall_items if isinstance(item, Use)}
    assert not placed & {LEVEL_CUT, UPRIGHT_CUT}
    cut = {
        item.form for page in made("fern-prints").template.pages for item in page.wall_items if isinstance(item, Use)
    }
    assert {LEVEL_CUT, UPRIGHT_CUT} <= cut  # or this could not fail


@uncut
def test_no_lettering_lies_on_slanting_lines(name: str) -> None:
    """Nor in the squares that they span, but for what is hidden with them."""
    done = made(name)
    hides = done.sheets.hides
    assert hides is not None
    for sheet, page in sheet_pages(name):
        for mark in (mark for mark in done.sheets.marks if sheet.name in mark.sheets):
            join = next(join for join in done.sheets.joins if {join.over, join.under} == set(mark.sheets))
            x, y = to_page_mm(sheet, mark.x, mark.y)
            square = Rect.about(x, y, 2 * hides.reach(join.upright), 2 * hides.reach(join.upright))
            on = [t.text for t in page.texts if t.seen.overlaps(square) and t.form not in ("rulers", "square")]
            assert on == [], f"{on} on {sheet.name}"
