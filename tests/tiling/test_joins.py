"""What is taped to what, and bridges between pieces: held against looking at every pair, or worked out by hand."""

from __future__ import annotations

from itertools import combinations, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.base.geometry import Rect
from templates_gen.tiling.joins import JOIN_MIN, bridged, grouped, joined, pieces, shared_sides

WIDE, HIGH = 200.0, 100.0  # of a cell, mm


def rows_of(*strips: list[tuple[float, float]]) -> tuple[list[list[Rect]], list[Rect]]:
    """Rows of cells from the bottom, each between its left and right sides, and the strips themselves."""
    rows = [[Rect(a, at * HIGH, b, (at + 1) * HIGH) for a, b in spans] for at, spans in enumerate(strips)]
    every = [cell for row in rows for cell in row]
    left, right = min(cell.x0 for cell in every), max(cell.x1 for cell in every)
    return rows, [Rect(left, at * HIGH, right, (at + 1) * HIGH) for at in range(len(strips))]


def spans_of(asked: list[tuple[int, int]]) -> list[tuple[float, float]]:
    """The left and right sides of cells by the gap before each and its width, in steps of 20 mm."""
    at, spans = 0.0, []
    for gap, length in asked:
        spans.append((at + gap * 20.0, at + (gap + length) * 20.0))
        at = spans[-1][1]
    return spans


def added(*strips: list[tuple[float, float]], limit: int = 99, wide: float = WIDE) -> list[Rect] | None:
    """The bridges that are built between these cells."""
    rows, spans = rows_of(*strips)
    found = bridged(rows, spans, wide, limit)
    there = [cell for row in rows for cell in row]
    assert found is None or set(there) <= {cell for row in found for cell in row}
    return None if found is None else sorted({cell for row in found for cell in row} - set(there))


grid = st.lists(st.tuples(st.integers(0, 8), st.integers(0, 5), st.integers(1, 4), st.integers(1, 3)), max_size=14)


@given(grid)
def test_shared_sides_are_those_that_looking_at_every_pair_finds(asked):
    cells: list[Rect] = []
    for x, y, wide, high in asked:
        cell = Rect.sized(x * 20.0, y * 20.0, wide * 20.0, high * 20.0)
        if not any(cell.overlaps(other) for other in cells):
            cells.append(cell)
    wanted = set()
    for (i, one), (j, two) in combinations(enumerate(cells), 2):
        both = one.meet(two)
        if both is not None and max(both.width, both.height) > 0.0:
            first = (i, j) if (one.x1 == two.x0 or one.y1 == two.y0) else (j, i)
            wanted.add((*first, max(both.width, both.height)))
    assert set(shared_sides(cells)) == wanted
    assert set(joined(cells)) == {(i, j) for i, j, length in wanted if length >= 40.0}


@given(st.integers(1, 9), st.lists(st.tuples(st.integers(0, 8), st.integers(0, 8)), max_size=12))
def test_groups_are_those_that_spreading_from_one_to_the_next_finds(count, pairs):
    pairs = [(i % count, j % count) for i, j in pairs]
    reach = [{at} for at in range(count)]
    for _ in range(count):
        for i, j in pairs:
            reach[i] = reach[j] = reach[i] | reach[j]
            for at in reach[i]:
                reach[at] = reach[i]
    names = grouped(count, pairs)
    assert all((names[i] == names[j]) == (j in reach[i]) for i in range(count) for j in range(count))
    assert [name for at, name in enumerate(names) if name not in names[:at]] == list(range(max(names) + 1))


@pytest.mark.parametrize(("shared", "count"), [(JOIN_MIN, 1), (JOIN_MIN - 0.001, 2), (JOIN_MIN + 1, 1), (0.0, 2)])
def test_less_than_40_mm_of_a_side_is_no_join(shared, count):
    cells = [Rect(0.0, 0.0, 200.0, 100.0), Rect(200.0 - shared, 100.0, 400.0, 200.0)]
    assert len(set(pieces(cells))) == count
    beside = [Rect(cell.y0, cell.x0, cell.y1, cell.x1) for cell in cells]
    assert len(set(pieces(beside))) == count


def test_what_is_one_piece_already_is_left_alone():
    assert added([(0, 200), (200, 400)], [(100, 300)]) == []
    assert added([(0, 200), (200, 400)], [(100, 300)], limit=3) == []


def test_a_gap_in_one_row_is_filled_whole_in_cells_of_one_length():
    assert added([(0, 200), (350, 550)]) == [Rect(200, 0, 350, 100)]
    assert added([(0, 200), (400, 600)]) == [Rect(200, 0, 400, 100)]
    assert added([(0, 200), (500, 700)]) == [Rect(200, 0, 350, 100), Rect(350, 0, 500, 100)]
    assert added([(0, 200), (601, 801)], limit=4) is None  # three cells: 401 mm
    thirds = added([(0, 200), (602, 802)])
    assert [cell.x1 - cell.x0 for cell in thirds] == pytest.approx([134.0] * 3) and thirds[-1].x1 == 602


def test_a_bridge_joins_as_many_pieces_as_it_can_and_is_as_short_as_it_can_be():
    """Three pieces about one gap of the middle row: one cell of 200 mm joins them all."""
    found = added([(0, 200), (320, 520)], [], [(60, 260)])
    assert len(found) == 1 and found[0].y0 == 100.0
    cells = [Rect(0, 0, 200, 100), Rect(320, 0, 520, 100), Rect(60, 200, 260, 300), *found]
    assert max(pieces(cells)) == 0
    assert min(200 - found[0].x0, found[0].x1 - 320) == 40.0  # just enough under one of the two


def test_a_bridge_is_as_many_cells_as_it_must_be_and_no_limit_is_passed():
    assert added([(0, 100)], [], [(0, 100)], limit=3) == [Rect(0, 100, 100, 200)]
    assert added([(0, 100)], [], [(0, 100)], limit=2) is None
    assert added([(0, 100)], [], [], [(0, 100)]) is None  # no cell of one row touches both
    # 300 mm apart, with 40 mm over and under the two ends 380 mm: two cells, each as wide as the paper allows
    assert added([(0, 200)], [], [(500, 700)]) == [Rect(140, 100, 340, 200), Rect(340, 100, 540, 200)]


@given(
    st.lists(st.lists(st.tuples(st.integers(0, 8), st.integers(3, 9)), min_size=1, max_size=3), min_size=1, max_size=3)
)
def test_bridges_make_one_piece_and_each_of_them_is_needed(asked):
    rows, spans = rows_of(*map(spans_of, asked))
    found = bridged(rows, spans, WIDE, 99)
    assert found is not None  # every row has something in it, so every row can be filled
    there = {cell for row in rows for cell in row}
    cells = [cell for row in found for cell in row]
    more = [cell for cell in cells if cell not in there]
    assert there <= set(cells) and max(pieces(cells)) == 0
    assert not any(one.overlaps(two) for one, two in combinations(cells, 2))
    assert all(row == sorted(row) and all(a.x1 <= b.x0 for a, b in pairwise(row)) for row in found)
    for cell in more:
        assert cell.width <= WIDE + 1e-6
        assert any(span.holds(cell) and span.height == cell.height for span in spans)
        assert max(pieces([other for other in cells if other != cell])) > 0


@given(
    st.lists(st.tuples(st.integers(0, 6), st.integers(3, 6)), min_size=2, max_size=3),
    st.lists(st.tuples(st.integers(0, 6), st.integers(3, 6)), max_size=2),
)
def test_one_bridge_is_found_wherever_one_cell_anywhere_makes_one_piece(below, above):
    """One more cell at every place in steps of 10 mm, up to the widest: where one will do, one is taken."""
    rows, spans = rows_of(spans_of(below), spans_of(above))
    there = [cell for row in rows for cell in row]
    if max(pieces(there)) != 1:
        return
    one = any(
        max(pieces([*there, cell])) == 0
        for span in spans
        for left in range(int(span.x0), int(span.x1), 10)
        for right in range(left + 10, min(int(span.x1), left + int(WIDE)) + 1, 10)
        if not any((cell := Rect(left, span.y0, right, span.y1)).overlaps(other) for other in there)
    )
    found = bridged(rows, spans, WIDE, 99)
    assert found is not None
    assert not one or sum(map(len, found)) == len(there) + 1
