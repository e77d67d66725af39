"""Cuts of neighbouring strips that nearly meet are brought together: worked out by hand here."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.base.geometry import Rect
from templates_gen.tiling.align import NEAR, aligned
from templates_gen.tiling.joins import JOIN_MIN, pieces
from templates_gen.tiling.strips import Box

HIGH = 100.0


def moved(
    below: list[tuple[float, float]],
    above: list[tuple[float, float]],
    *content: tuple[float, float, bool],
    wide: float = 250.0,
) -> list[tuple[float, float]]:
    """The cells of the upper strip between its left and right sides; `content` says from where to where, and whether
    no cut may enter it."""
    rows = [[Rect(a, at * HIGH, b, (at + 1) * HIGH) for a, b in spans] for at, spans in enumerate((below, above))]
    boxes = [Box(a, HIGH + 10.0, b, HIGH + 90.0, firm, firm) for a, b, firm in content]
    found = aligned(rows, boxes, wide)
    assert found[0] == rows[0]
    assert all((cell.y0, cell.y1) == (HIGH, 2 * HIGH) for cell in found[1])
    return [(cell.x0, cell.x1) for cell in found[1]]


BELOW = [(0.0, 200.0), (200.0, 400.0)]


@pytest.mark.parametrize(
    ("cut", "to"),
    [
        (190.0, 200.0), (210.0, 200.0), (200.0 - NEAR, 185.0), (200.0 + NEAR, 215.0), (186.0, 200.0), (214.0, 200.0),
        (200.0, 200.0),
    ],
)  # fmt: skip
def test_a_cut_nearer_than_15_mm_to_one_below_is_moved_there(cut, to):
    assert moved(BELOW, [(0.0, cut), (cut, 400.0)], (0.0, 400.0, False)) == [(0.0, to), (to, 400.0)]


def test_the_nearest_of_the_sides_below_is_taken():
    below = [(0.0, 190.0), (190.0, 203.0), (203.0, 400.0)]
    assert moved(below, [(0.0, 198.0), (198.0, 400.0)]) == [(0.0, 203.0), (203.0, 400.0)]
    assert moved(below, [(0.0, 195.0), (195.0, 400.0)]) == [(0.0, 190.0), (190.0, 400.0)]


def test_a_cut_enters_nothing_that_must_stay_whole():
    cells = [(0.0, 190.0), (190.0, 400.0)]
    assert moved(BELOW, cells, (0.0, 400.0, False), (195.0, 230.0, True)) == cells
    assert moved(BELOW, cells, (0.0, 400.0, False), (200.0, 230.0, True)) == [(0.0, 200.0), (200.0, 400.0)]
    assert moved(BELOW, cells, (0.0, 400.0, False), (150.0, 200.0, True)) == [(0.0, 200.0), (200.0, 400.0)]


def test_no_cell_becomes_wider_than_the_paper_or_narrower_than_a_join():
    cells = [(0.0, 190.0), (190.0, 400.0)]
    assert moved(BELOW, cells, wide=199.0) == cells
    assert moved(BELOW, cells, wide=200.0) == [(0.0, 200.0), (200.0, 400.0)]
    for end, to in ((200.0 + JOIN_MIN - 1.0, 190.0), (200.0 + JOIN_MIN, 200.0)):
        assert moved([(0.0, 200.0), (200.0, 500.0)], [(0.0, 190.0), (190.0, end)]) == [(0.0, to), (to, end)]


def test_an_end_moves_only_past_what_is_blank():
    """To 380 from 390: what ends at 379 stays in, what ends at 385 would not; a line at 385 would not either."""
    below, cells = [(0.0, 380.0)], [(0.0, 200.0), (200.0, 390.0)]
    assert moved(below, cells, (0.0, 379.0, False)) == [(0.0, 200.0), (200.0, 380.0)]
    assert moved(below, cells, (0.0, 385.0, False)) == cells
    assert moved(below, cells, (0.0, 200.0, False), (385.0, 385.0, False)) == cells
    assert moved([(0.0, 400.0)], cells, (0.0, 385.0, False)) == [(0.0, 200.0), (200.0, 400.0)]


def test_both_ends_of_a_strip_move():
    assert moved([(0.0, 200.0), (200.0, 400.0)], [(10.0, 200.0), (200.0, 390.0)]) == BELOW
    assert moved([(20.0, 200.0), (200.0, 380.0)], [(10.0, 200.0), (200.0, 390.0)], (30.0, 370.0, False)) == [
        (20.0, 200.0), (200.0, 380.0),
    ]  # fmt: skip


def test_a_run_does_not_run_into_the_next_one():
    """A gap from 196 to 200; the one below ends at 203: only the right run's beginning goes there."""
    below = [(0.0, 203.0), (203.0, 400.0)]
    assert moved(below, [(0.0, 196.0), (200.0, 400.0)]) == [(0.0, 196.0), (203.0, 400.0)]
    assert moved([(0.0, 193.0)], [(0.0, 196.0), (200.0, 400.0)]) == [(0.0, 193.0), (200.0, 400.0)]
    assert moved([(0.0, 198.0)], [(0.0, 190.0), (210.0, 400.0)]) == [(0.0, 198.0), (210.0, 400.0)]


def test_what_hangs_together_still_does():
    """The right strip shares 40 mm with the one over it; five to the right it would share too little."""
    rows = [
        [Rect(0.0, 0.0, 200.0, 100.0)], [Rect(195.0, 100.0, 400.0, 200.0)], [Rect(100.0, 200.0, 235.0, 300.0)],
    ]  # fmt: skip
    assert aligned(rows, [], 250.0) == rows
    rows[2] = [Rect(100.0, 200.0, 240.0, 300.0)]
    assert aligned(rows, [], 250.0) == [rows[0], [Rect(200.0, 100.0, 400.0, 200.0)], rows[2]]


def test_an_empty_strip_or_none_is_left_alone():
    assert aligned([], [], 250.0) == []
    rows = [[], [Rect(0.0, 100.0, 190.0, 200.0)], [], [Rect(5.0, 300.0, 200.0, 400.0)]]
    assert aligned(rows, [], 250.0) == rows


sides = st.lists(st.integers(0, 60).map(lambda step: step * 8.0), min_size=2, max_size=6, unique=True).map(sorted)


@given(st.lists(sides, min_size=1, max_size=4), st.integers(0, 3))
def test_every_side_stays_or_goes_to_one_below_and_what_was_shown_still_is(cuts, gap):
    rows, boxes = [], []
    for at, strip in enumerate(cuts):
        spans = [span for n, span in enumerate(pairwise(strip)) if n != gap or len(strip) == 2]
        rows.append([Rect(a, at * HIGH, b, (at + 1) * HIGH) for a, b in spans])
        boxes += [Box(a + 1.0, at * HIGH + 1.0, b - 1.0, at * HIGH + 99.0, False, False) for a, b in spans]
    found = aligned(rows, boxes, 300.0)
    before, after = ([cell for row in some for cell in row] for some in (rows, found))
    assert [len(row) for row in found] == [len(row) for row in rows]
    assert max(pieces(after)) <= max(pieces(before))
    for at, (row, old) in enumerate(zip(found, rows, strict=True)):
        known = {side for cell in (found[at - 1] if at else ()) for side in (cell.x0, cell.x1)}
        for cell, was in zip(row, old, strict=True):
            for side, from_ in ((cell.x0, was.x0), (cell.x1, was.x1)):
                assert side == from_ or (side in known and abs(side - from_) < NEAR)
            assert cell == was or cell.width >= min(JOIN_MIN, was.width)
            assert cell == was or cell.width <= max(300.0, was.width)
        for box in boxes:
            if at * HIGH < box.y0 < (at + 1) * HIGH:
                shown = sorted(cell for cell in row if cell.x1 > box.x0 and cell.x0 < box.x1)
                assert shown[0].x0 <= box.x0 and shown[-1].x1 >= box.x1
                assert all(one.x1 == two.x0 for one, two in pairwise(shown))
