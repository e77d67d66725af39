"""Registration marks, rulers and pages of the sheet plan: where they stand, worked out by hand here."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.drawing.items import moved
from templates_gen.tiling.minutes import FIRM, minutes, shaky
from templates_gen.tiling.page import page_of, turned_page
from templates_gen.tiling.registering import end_marks
from templates_gen.tiling.rulers import from_lines, inset
from templates_gen.tiling.sheet import clearance, letters
from templates_gen.tolerance.holding import plan_sheets
from tests.jobs import frame, group, job, paper

POINT = 25.4 / 72  # mm; ISO 32000-1, 8.3.2.3


def test_a_join_has_a_mark_12_mm_from_either_end():
    """A mark takes 9.2 mm to both sides along its join, and 2.8 mm more are kept to the end: our own design."""
    assert end_marks((10.0, 20.0, 10.0, 220.0)) == [pytest.approx((10.0, 32.0)), pytest.approx((10.0, 208.0))]
    assert end_marks((20.0, 10.0, 220.0, 10.0)) == [pytest.approx((32.0, 10.0)), pytest.approx((208.0, 10.0))]


@pytest.mark.parametrize(("length", "count"), [(43.9, 1), (44.1, 2), (20.0, 1), (500.0, 2)])
def test_a_join_too_short_for_two_marks_has_one_in_its_middle(length, count):
    """Two marks of 18.4 mm, 2.8 mm to both ends and 1.6 mm between them are 44 mm: our own design, no source."""
    found = end_marks((5.0, 7.0, 5.0, 7.0 + length))
    assert len(found) == count
    assert sum(y for _, y in found) / count == pytest.approx(7.0 + length / 2)
    assert {x for x, _ in found} == {5.0}


@given(st.integers(-500, 500), st.integers(-500, 500), st.integers(44, 900))
def test_marks_of_joins_that_meet_at_a_corner_stand_clear_of_each_other(x, y, length):
    """Wherever four joins meet: no two of their marks, 18.4 mm along their joins and 5 mm across, share any place."""
    ends = [(x + dx * length, y + dy * length) for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1))]
    lines = [(min(x, ex), min(y, ey), max(x, ex), max(y, ey)) for ex, ey in ends]
    boxes = []
    for line in lines:
        upright = line[0] == line[2]
        wide, high = (5.0, 18.4) if upright else (18.4, 5.0)
        boxes += [Rect.about(*point, wide, high) for point in end_marks(line)]
    assert not any(one.overlaps(two) for one, two in combinations(boxes, 2))


def test_a_page_is_the_paper_in_whole_points_less_its_margins():
    """A4 is 595.28 by 841.89 points: 595 by 841; margins of 7, 7, 13 and 7 mm (top, right, bottom, left)."""
    page = page_of(paper("a4"), turned=False)
    assert (page.width, page.height) == (595, 841)
    assert page.printable == Rect(7.0, 13.0, 595 * POINT - 7.0, 841 * POINT - 7.0)
    assert moved(page.matrix, 25.4, 50.8) == pytest.approx((72.0, 144.0))
    exact = page_of(replace(paper("a4"), width=100 * POINT, height=200 * POINT), turned=False)
    assert (exact.width, exact.height) == (100, 200)  # and no rounding takes one away


def test_a_page_that_lies_keeps_the_wider_of_two_margins_on_both_short_sides():
    """It may be turned either way: left and right of 9 and 7 mm lie at its top and foot, 5 and 13 at its sides."""
    on = replace(paper("a4"), margin=(5.0, 7.0, 13.0, 9.0))
    page = page_of(on, turned=True)
    assert (page.width, page.height) == (841, 595)
    assert page.printable == Rect(13.0, 9.0, 841 * POINT - 13.0, 595 * POINT - 9.0)


@given(st.floats(0, 12), st.floats(0, 12), st.floats(0, 12), st.floats(0, 12))
def test_a_turned_page_reaches_what_the_upright_one_does(top, right, bottom, left):
    page = page_of(replace(paper("a5"), margin=(top, right, bottom, left)), turned=False)
    lying = turned_page(page)
    assert (lying.width, lying.height) == (page.height, page.width)
    corners = [moved(lying.matrix, *corner) for corner in lying.printable.corners]
    wanted = [moved(page.matrix, *corner) for corner in page.printable.corners]
    assert sorted(corners) == [pytest.approx(corner) for corner in sorted(wanted)]
    # what stands upright on it runs to the left on the paper
    (x, y), (x1, y1) = moved(lying.matrix, 20.0, 20.0), moved(lying.matrix, 20.0, 30.0)
    assert x1 < x and y1 == pytest.approx(y)


def test_rulers_stand_8_mm_inside_the_trim_lines_and_are_measured_from_the_two_lines():
    """Half an overlap of 12 mm and 8: 14 mm inside the window."""
    plan = plan_wall(job())
    window = Rect(plan.centre_line - 114.0, plan.level_line + 86.0, plan.centre_line + 80.0, plan.level_line + 300.0)
    assert inset(12.0) == 14.0
    assert from_lines(plan, window, 12.0) == pytest.approx((100.0, -100.0))


def test_minutes_are_those_of_sheets_joins_cuts_and_loose_pieces():
    """10 s a sheet, 20 a join, 15 a cut and 120 a loose piece: our own estimate.  Two pieces of three sheets."""
    assert minutes(3, 1, 1, 2) == pytest.approx((30 + 20 + 15 + 120) / 60)
    assert minutes(1, 0, 0, 1) == pytest.approx(1 / 6)
    assert shaky(FIRM) == 6.0 and shaky(FIRM / 2) == pytest.approx(24.0) and shaky(2 * FIRM) == pytest.approx(1.5)


def test_whole_things_keep_clear_of_rulers_title_and_half_the_overlap():
    """13 mm to the left and at the foot for rulers and at the top for the title, none but the overlap to the right:
    our own design, no source."""
    narrow, wide = clearance(12.0), clearance(40.0)
    assert (narrow.left, narrow.bottom, narrow.right, narrow.top) == (13.0, 13.0, 6.0, 13.0)
    assert (wide.left, wide.bottom, wide.right, wide.top) == (20.0, 20.0, 20.0, 20.0)


def test_letters_go_on_after_z():
    assert [letters(at) for at in (0, 1, 25, 26, 27, 51, 52, 701, 702)] == [
        "A", "B", "Z", "AA", "AB", "AZ", "BA", "ZZ", "AAA",
    ]  # fmt: skip
    assert len({letters(at) for at in range(2000)}) == 2000


@pytest.mark.parametrize("on", ["a4", "letter"])
def test_a_sheets_inner_part_is_its_cell_less_that_and_its_window_its_cell_and_half_the_overlap(on):
    each = job(*(frame(name) for name in "ABC"), group=group((("A", "B", "C"),)), paper=paper(on, overlap=16.0))
    sheets = plan_sheets(plan_wall(each), each.paper)
    assert len(sheets.sheets) > 1 and sheets.joins
    for sheet in sheets.sheets:
        cell = sheet.cell
        assert sheet.window == cell.grown(8.0)
        assert sheet.inner == Rect(cell.x0 + 13.0, cell.y0 + 13.0, cell.x1 - 8.0, cell.y1 - 13.0)
        area = sheet.page.printable
        corner = moved(sheet.to_page, sheet.window.x0, sheet.window.y0)
        if sheet.page is sheets.page:
            assert corner == pytest.approx((area.x0 / POINT, area.y0 / POINT))
        else:  # it lies: its left side is the foot of the upright page
            assert corner == pytest.approx((sheets.page.width - area.y0 / POINT, area.x0 / POINT))
    for join in sheets.joins:
        over, under = sheets.sheet(join.over).cell, sheets.sheet(join.under).cell
        line = over.meet(under)
        assert line is not None and join.line == (line.x0, line.y0, line.x1, line.y1)
        assert join.length == pytest.approx(max(line.width, line.height)) and join.length >= 20.0
        assert join.upright == (line.width == 0.0)
        assert (over.x0 == under.x1) if join.upright else (over.y0 == under.y1)
    pairs = {frozenset((join.over, join.under)) for join in sheets.joins}
    for one, two in combinations(sheets.sheets, 2):
        line = one.cell.meet(two.cell)
        meet = line is not None and max(line.width, line.height) >= 20.0
        assert (frozenset((one.name, two.name)) in pairs) == meet
