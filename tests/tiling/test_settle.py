"""Where spare paper goes, and strips by themselves: worked out by hand here or held against trying every place."""

from __future__ import annotations

from itertools import pairwise, product
from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.base.geometry import Rect
from templates_gen.tiling.settle import runs_of, settle_heights, settle_run, settle_strip
from templates_gen.tiling.strips import Box, Boxes, Line, best_strips, cells_along, evenly, line_of
from tests.sheet_baselines import fewest, fewest_along

WIDE = 100.0
EVERYWHERE = (-inf, inf)


def loose(*spans: tuple[float, float]) -> Line:
    return line_of([Box(a, 0.0, b, 10.0, False, False) for a, b in sorted(spans)])


def settled(line: Line, lean: int = 0, room: tuple[float, float] = EVERYWHERE) -> list[tuple[float, float]]:
    cells = cells_along(line, WIDE, gaps=False)
    assert cells is not None
    return [pytest.approx(span, abs=1e-5) for span in settle_run(line, cells, WIDE, room, lean)]


def test_spare_paper_lies_evenly_at_both_ends_or_where_a_run_leans():
    """Content of 70 mm in a cell of 100, and of 150 mm in two: 30 and 50 mm are spare."""
    assert settled(loose((0.0, 70.0))) == [(-15.0, 85.0)]
    assert settled(loose((0.0, 70.0)), -1) == [(-30.0, 70.0)]
    assert settled(loose((0.0, 70.0)), 1) == [(0.0, 100.0)]
    assert settled(loose((0.0, 150.0))) == [(-25.0, 75.0), (75.0, 175.0)]
    assert settled(loose((0.0, 150.0)), -1) == [(-50.0, 50.0), (50.0, 150.0)]
    assert settled(loose((0.0, 150.0)), 1) == [(0.0, 100.0), (100.0, 200.0)]
    assert settled(loose((0.0, 200.0))) == [(0.0, 100.0), (100.0, 200.0)]


def test_a_run_keeps_to_its_room():
    line = loose((0.0, 70.0))
    assert settled(line, 0, (-5.0, 300.0)) == [(-5.0, 95.0)]
    assert settled(line, 0, (-300.0, 80.0)) == [(-15.0, 80.0)]
    assert settled(line, -1, (-5.0, 300.0)) == [(-5.0, 95.0)]
    assert settled(line, 1, (-300.0, 80.0)) == [(0.0, 80.0)]


def test_what_must_stay_whole_moves_the_cuts_and_is_not_cut():
    """150 mm with 60 to 80 whole: from -20 the first cut is at 60 and the second cell ends at 160, 20 and 10 mm spare;
    the evenest start is where both ends have the same."""
    line = line_of([Box(0.0, 0.0, 150.0, 10.0, False, False), Box(60.0, 0.0, 80.0, 10.0, True, True)])
    (start, cut), (again, end) = settle_run(line, cells_along(line, WIDE, gaps=False) or [], WIDE, EVERYWHERE, 0)
    assert cut == again and not 60.0 < cut < 80.0
    assert start <= 0.0 and end >= 150.0 and cut - start <= WIDE and end - cut <= WIDE + 1e-9
    best = min(
        abs((0.0 - at) - (reach - 150.0))
        for at in (number / 10 for number in range(-500, 1))
        if (reach := (60.0 if 60.0 < at + WIDE < 80.0 else at + WIDE) + WIDE) >= 150.0
    )
    assert abs((0.0 - start) - (end - 150.0)) <= best + 0.2


def test_two_runs_share_the_gap_between_them_at_its_middle():
    line = loose((0.0, 70.0), (90.0, 160.0))
    left, right = settle_strip(line, [[(0.0, 70.0)], [(90.0, 160.0)]], WIDE, EVERYWHERE, [0, 0])
    assert left == [pytest.approx((-15.0, 80.0), abs=1e-5)] and right == [pytest.approx((80.0, 180.0), abs=1e-5)]
    left, right = settle_strip(line, [[(0.0, 70.0)], [(90.0, 160.0)]], WIDE, (-10.0, 165.0), [-1, 1])
    assert left == [pytest.approx((-10.0, 80.0), abs=1e-5)] and right == [pytest.approx((90.0, 165.0), abs=1e-5)]
    assert settle_strip(loose(), [], WIDE, EVERYWHERE, []) == []


def test_cells_without_a_gap_are_one_run():
    assert runs_of([]) == []
    assert runs_of([(0, 10), (10, 20), (21, 30), (30, 40), (50, 60)]) == [
        [(0, 10), (10, 20)], [(21, 30), (30, 40)], [(50, 60)],
    ]  # fmt: skip


def high(*boxes: tuple[float, float, bool], strips: list[tuple[float, float]], sides=EVERYWHERE, tall: float = WIDE):
    """The strips once settled, for boxes 50 mm wide from so low to so high that are whole or not."""
    every = Boxes(Box(0.0, y0, 50.0, y1, firm, firm) for y0, y1, firm in boxes)
    return [pytest.approx(strip, abs=1e-6) for strip in settle_heights(every, strips, WIDE, tall, True, sides)]


def test_spare_height_lies_evenly_over_and_under_a_single_strip():
    assert high((0.0, 60.0, True), strips=[(0.0, 100.0)]) == [(-20.0, 80.0)]
    assert high((0.0, 60.0, True), strips=[(0.0, 60.0)], sides=(-5.0, 70.0)) == [(-5.0, 70.0)]
    assert high((0.0, 100.0, True), strips=[(0.0, 100.0)]) == [(0.0, 100.0)]


def test_spare_height_of_two_strips_goes_to_both_ends():
    """Content from 0 to 140 in strips of 100: 60 mm spare, 30 at each end, the cut moved down by them."""
    assert high((0.0, 140.0, False), strips=[(0.0, 100.0), (100.0, 140.0)]) == [(-30.0, 70.0), (70.0, 170.0)]


def test_a_cut_does_not_move_into_what_must_stay_whole_but_by_a_smaller_share():
    """30 mm down the cut would be at 70, inside 60 to 80; three quarters down it would, too; half down, at 85, not."""
    found = high((0.0, 140.0, False), (60.0, 80.0, True), strips=[(0.0, 100.0), (100.0, 140.0)])
    assert found == [(-15.0, 85.0), (85.0, 185.0)]


def test_a_cut_does_not_move_where_more_cells_would_be_needed_for_it():
    """What stands aside from 60 to 95 would be in both strips, and what stands aside at the top is in the upper one."""
    tall, low, top = Box(0.0, 0.0, 50.0, 140.0, False, False), (200.0, 250.0), (400.0, 450.0)
    every = Boxes(
        [tall, Box(low[0], 60.0, low[1], 95.0, False, False), Box(top[0], 110.0, top[1], 140.0, False, False)]
    )
    assert settle_heights(every, [(0.0, 100.0), (100.0, 140.0)], WIDE, WIDE, True, EVERYWHERE) == [
        (0.0, 100.0), (100.0, 200.0),
    ]  # fmt: skip
    free = Boxes([tall, Box(low[0], 10.0, low[1], 65.0, False, False), Box(top[0], 110.0, top[1], 140.0, False, False)])
    assert settle_heights(free, [(0.0, 100.0), (100.0, 140.0)], WIDE, WIDE, True, EVERYWHERE) == [
        (-30.0, 70.0), (70.0, 170.0),
    ]  # fmt: skip


def test_two_stacks_share_the_gap_between_them():
    found = high((0.0, 90.0, True), (100.0, 190.0, True), strips=[(0.0, 90.0), (100.0, 190.0)])
    assert found == [(-5.0, 95.0), (95.0, 195.0)]
    found = high((0.0, 60.0, True), (70.0, 130.0, True), strips=[(0.0, 60.0), (70.0, 130.0)])
    assert found == [(-20.0, 65.0), (65.0, 165.0)]  # what one cannot have below it has above


def test_strips_are_parted_evenly_and_end_where_they_should():
    assert evenly(1.0, 2.0, 4) == [(1.0, 1.25), (1.25, 1.5), (1.5, 1.75), (1.75, 2.0)]
    assert evenly(0.1, 0.7, 3)[-1][1] == 0.7 and evenly(5.0, 9.0, 1) == [(5.0, 9.0)]


units = st.tuples(st.integers(0, 12), st.integers(1, 3), st.booleans())


@given(st.lists(units, max_size=6), st.integers(2, 4))
def test_a_line_knows_its_content_and_where_it_may_be_cut(asked, wide):
    spans = sorted((x, x + length, firm) for x, length, firm in asked)
    line = line_of([Box(x0, 0.0, x1, 1.0, firm, firm) for x0, x1, firm in spans])
    for at in (step / 2 for step in range(-2, 36)):
        blocked = [(a, b) for a, b, firm in spans if firm and a < at < b]
        cut = line.cut_at_most(at)
        assert (cut == at) == (not blocked)
        assert cut <= at and not any(firm and a < cut < b for a, b, firm in spans)
        assert not any(
            not any(firm and a < t / 2 < b for a, b, firm in spans) for t in range(int(cut * 2) + 1, int(at * 2))
        )
        shown = any(a < at < b for a, b, _ in spans)
        inside = any(a < at < b for a, b in zip(line.all_lo, line.all_hi, strict=True))
        assert shown == inside or at == int(at)  # what touches is one stretch
    assert all(one[1] < two[0] for one, two in pairwise(zip(line.all_lo, line.all_hi, strict=True)))
    firm, soft = ([(a, 0, b, 1) for a, b, f in spans if f is whole] for whole in (True, False))
    every = Boxes(Box(a, 0.0, b, 1.0, f, f) for a, b, f in spans)
    assert every.cells(wide, True, 0.0, 1.0) == fewest_along(firm, soft, wide)


@given(st.lists(units, min_size=1, max_size=5), st.integers(2, 4))
def test_a_strip_without_a_gap_goes_from_end_to_end_in_cells_that_touch(asked, wide):
    spans = sorted((x, x + length, firm) for x, length, firm in asked)
    line = line_of([Box(x0, 0.0, x1, 1.0, firm, firm) for x0, x1, firm in spans])
    cells = cells_along(line, wide, gaps=False)
    end = max(b for _, b, _ in spans)
    whole = fewest_along([(a, 0, b, 1) for a, b, firm in spans if firm], [(spans[0][0], 0, end, 1)], wide)
    assert (len(cells) if cells else inf) == whole
    assert not cells or (cells[0][0] == spans[0][0] and cells[-1][1] >= end)
    assert not cells or all(one[1] == two[0] for one, two in pairwise(cells))


boxes = st.lists(
    st.tuples(st.integers(0, 9), st.integers(0, 9), st.integers(1, 3), st.integers(1, 3), st.booleans()),
    min_size=1, max_size=5,
)  # fmt: skip


@given(boxes, st.integers(2, 3), st.integers(2, 3))
def test_strips_take_as_few_cells_as_trying_all_and_no_more_than_the_limit(asked, wide, tall):
    every = Boxes(Box(x, y, x + w, y + h, firm, firm) for x, y, w, h, firm in asked)
    firm, soft = ([(int(b.x0), int(b.y0), int(b.x1), int(b.y1)) for b in every if b.firm_x is f] for f in (True, False))
    best = fewest(firm, soft, wide, tall)
    if best == inf:
        assert best_strips(every, wide, tall, True, 99) is None
        return
    found = best_strips(every, wide, tall, True, int(best))
    assert found is not None and found[0] == best
    assert best_strips(every, wide, tall, True, int(best) - 1) is None
    assert sum(every.cells(wide, True, *strip) for strip in found[1]) == best
    assert all(0 < top - foot <= tall for foot, top in found[1])
    assert all(one[1] <= two[0] for one, two in pairwise(found[1]))
    settled = settle_heights(every, found[1], wide, tall, True, EVERYWHERE)
    assert sum(every.cells(wide, True, *strip) for strip in settled) <= best
    assert all(strip[1] - strip[0] <= tall + 1e-9 for strip in settled)
    for box in every:
        shown = [strip for strip in settled if strip[0] < box.y1 and strip[1] > box.y0]
        assert shown[0][0] <= box.y0 and shown[-1][1] >= box.y1
        assert len(shown) == 1 or not box.firm_y
        assert all(one[1] == two[0] for one, two in pairwise(shown))


def test_a_box_turned_twice_is_itself_and_once_has_its_axes_swapped():
    box = Box(1.0, 2.0, 3.0, 5.0, True, False)
    assert box.turned() == Box(2.0, 1.0, 5.0, 3.0, False, True) and box.turned().turned() == box


def test_a_line_on_a_cut_belongs_to_the_strip_over_it_and_a_box_that_touches_one_does_not():
    line, box = Box(0.0, 10.0, 5.0, 10.0, False, True), Box(0.0, 4.0, 5.0, 10.0, True, True)
    every = Boxes([line, box])
    assert every.within(10.0, 20.0) == [line] and every.within(0.0, 10.0) == [box]
    assert every.within(3.0, 5.0) == [box] and every.within(9.0, 11.0) == sorted([line, box])
    assert not Rect(0.0, 10.0, 5.0, 20.0).overlaps(Rect(*box[:4])) and list(product(every.within(11, 12), (1,))) == []
