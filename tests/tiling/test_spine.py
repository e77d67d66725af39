"""The spine of linked paper and what is left of a plan of every mark: worked out by hand here or by trying all."""

from __future__ import annotations

from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen.base.geometry import Rect
from templates_gen.tiling.branches import crosses
from templates_gen.tiling.cells import Cell, CellPlan, Printable
from templates_gen.tiling.joins import JOIN_MIN, pieces
from templates_gen.tiling.linked import pruned
from templates_gen.tiling.spine import LEAST_LAP, Asked, _near, spine

UPRIGHT, SIZES = [(190.0, 270.0)], [(190.0, 270.0), (280.0, 180.0)]
TARGET = Rect(-20.0, -20.0, 20.0, 20.0)
BELOW, ABOVE = 20.0, 22.0  # of the line, mm


def asked(*nails: Rect, reach: float = 80.0, **more: tuple[Rect, ...]) -> Asked:
    return Asked((TARGET, *nails), -reach, reach, lambda x: 0.0, BELOW, ABOVE, **more)


def cells_of(found) -> list[Rect]:
    return [cell for stretch in found for cell in (stretch.cell, *(c for b in stretch.branches for c in b.cells))]


def test_a_target_alone_takes_one_sheet_that_holds_it_and_the_line_from_end_to_end():
    (stretch,) = spine(asked(), SIZES) or []
    assert stretch.branches == ()
    assert stretch.cell.holds(TARGET) and stretch.cell.x0 <= -80.0 and stretch.cell.x1 >= 80.0
    assert (stretch.cell.width, stretch.cell.height) in SIZES
    assert stretch.cell.y0 <= -BELOW and stretch.cell.y1 >= ABOVE


@pytest.mark.parametrize(("reach", "count"), [(95.0, 1), (140.0, 1), (150.0, 2), (250.0, 2), (270.0, 3)])
def test_the_spine_takes_as_few_sheets_as_the_line_is_long(reach, count):
    """On their sides they are 280 mm wide; cuts stand at steps of 10 mm, and 20 mm off the target's middle."""
    found = spine(asked(reach=reach), SIZES) or []
    assert len(cells_of(found)) == count
    assert found[0].cell.x0 <= -reach and found[-1].cell.x1 >= reach


def test_a_nail_over_the_line_is_on_the_spine_where_a_sheet_can_hold_both():
    """An upright sheet is 270 high: a box that ends 240 over the line's lower side just goes on it."""
    near = Rect(-20.0, 180.0, 20.0, 270.0 - BELOW)
    assert [cell.holds(near) for cell in cells_of(spine(asked(near), UPRIGHT))] == [True]
    far = near.shifted(0.0, 1.0)
    cells = cells_of(spine(asked(far), UPRIGHT))
    assert len(cells) == 2 and sum(cell.holds(far) for cell in cells) == 1
    low = Rect(-20.0, ABOVE - 270.0, 20.0, -200.0)
    assert [cell.holds(low) for cell in cells_of(spine(asked(low), UPRIGHT))] == [True]
    assert len(cells_of(spine(asked(low.shifted(0.0, -1.0)), UPRIGHT))) == 2


def test_no_cut_of_the_spine_runs_along_an_edge():
    """Edges as thin boxes side by side but for 20 mm: there is the one place for the cut."""
    thin = tuple(Rect(x, -300.0, x + 40.0, 300.0) for x in range(-500, 500, 40) if x not in (-20, 20))
    found = spine(asked(reach=250.0, upright=thin), SIZES) or []
    assert not found or all(not any(e.x0 < s.cell.x0 < e.x1 for e in thin) for s in found[1:])
    gap = (Rect(-500.0, -300.0, 40.0, 300.0), Rect(60.0, -300.0, 500.0, 300.0))
    found = spine(asked(reach=140.0 + 50.0, upright=gap), SIZES) or []
    assert [40.0 <= stretch.cell.x0 <= 60.0 for stretch in found[1:]] == [True]


def test_neither_foot_nor_head_of_the_spine_lies_along_a_level_edge():
    for y in (-140.0, -100.0, -60.0, 90.0, 120.0):
        edge = Rect(-300.0, y - 12.0, 300.0, y + 12.0)
        for stretch in spine(asked(reach=100.0, level=(edge,)), UPRIGHT) or ():
            for side in (stretch.cell.y0, stretch.cell.y1):
                assert not edge.y0 < side < edge.y1


def test_a_line_that_climbs_is_held_from_end_to_end():
    climbing = Asked((TARGET,), -250.0, 250.0, lambda x: 0.4 * x, BELOW, ABOVE)
    found = spine(climbing, SIZES) or []
    assert found
    for stretch in found:
        cell = stretch.cell
        for x in (cell.x0, cell.x1):
            assert cell.y0 - 1e-6 <= 0.4 * x - BELOW and 0.4 * x + ABOVE <= cell.y1 + 1e-6
    for one, two in pairwise(found):
        assert one.cell.x1 == two.cell.x0
        assert min(one.cell.y1, two.cell.y1) - max(one.cell.y0, two.cell.y0) >= LEAST_LAP
    steep = Asked((TARGET,), -250.0, 250.0, lambda x: 9.0 * x, BELOW, ABOVE)
    assert spine(steep, UPRIGHT) is None


spots = st.builds(lambda x, y: Rect.sized(x * 10.0, y * 10.0, 30.0, 60.0), st.integers(-40, 40), st.integers(-40, 40))


@settings(deadline=None, max_examples=12)
@given(st.lists(spots, max_size=4), st.booleans())
def test_everything_asked_for_is_held_in_one_piece_and_nothing_is_crossed(nails, upright):
    nails = [n for at, n in enumerate(nails) if not any(n.overlaps(o) for o in (TARGET, *nails[:at]))]
    sizes = UPRIGHT if upright else SIZES
    found = spine(asked(*nails, reach=120.0), sizes)
    if found is None:
        return
    cells = cells_of(found)
    boxes = [TARGET, *nails]
    assert all(sum(cell.holds(box) for cell in cells) == 1 for box in boxes)
    assert not any(crosses(cell, boxes) for cell in cells)
    assert not any(one.overlaps(two) for one, two in combinations(cells, 2))
    assert max(pieces(cells)) == 0
    assert found[0].cell.x0 <= -120.0 and found[-1].cell.x1 >= 120.0
    for one, two in pairwise(found):
        assert one.cell.x1 == two.cell.x0
        assert min(one.cell.y1, two.cell.y1) - max(one.cell.y0, two.cell.y0) >= LEAST_LAP
    for stretch in found:
        assert stretch.cell.y0 <= -BELOW + 1e-6 and stretch.cell.y1 >= ABOVE - 1e-6
    assert all(any(c.width <= w + 1e-6 and c.height <= h + 1e-6 for w, h in sizes) for c in cells)


def test_a_branch_is_told_of_all_that_it_can_come_near_to():
    """A branch 280 mm wide reaches 280 mm beyond either side of its sheet; what is higher or lower is all told of."""
    cell = Rect(0.0, 0.0, 200.0, 270.0)
    sides = [Rect(x, y, x + 30.0, y + 60.0) for x in (-309.0, -31.0, 100.0, 200.0, 479.0) for y in (-900.0, 0.0, 900.0)]
    far = [Rect(-311.0, 0.0, -281.0, 60.0), Rect(481.0, 0.0, 511.0, 60.0)]
    assert _near([*sides, *far], cell, 280.0) == sides


def block(across: int, up: int, gaps: set[tuple[int, int]], lap: float = 100.0) -> CellPlan:
    """Square cells of 100 mm in rows; every second row is shifted so that cells share this much of a side."""
    cells = [
        Cell(Rect.sized(x * 100.0 + (100.0 - lap) * (y % 2), y * 100.0, 100.0, 100.0), up - 1 - y, x)
        for y in range(up) for x in range(across) if (x, y) not in gaps
    ]  # fmt: skip
    return CellPlan(tuple(cells), True, Printable(112.0, 112.0, False))


def spot(x: float, y: float) -> Rect:
    return Rect.about(x * 100.0 + 50.0, y * 100.0 + 50.0, 20.0, 20.0)


def test_what_is_needed_stays_with_the_shortest_way_between_and_the_rest_goes():
    line = Rect(240.0, 249.0, 260.0, 251.0)
    plan = block(5, 5, set())
    found = pruned(plan, [spot(2, 2), spot(2, 4), spot(4, 2)], line)
    assert sorted((c.rect.cx, c.rect.cy) for c in found.cells) == [
        (250.0, 250.0), (250.0, 350.0), (250.0, 450.0), (350.0, 250.0), (450.0, 250.0),
    ]  # fmt: skip
    assert {c.strip for c in found.cells if c.rect.cy == 250.0} == {0}
    assert {(c.rect.cy, c.strip) for c in found.cells} == {(250.0, 0), (350.0, 2), (450.0, 4)}
    below = pruned(plan, [spot(2, 2), spot(2, 0)], line)
    assert {(c.rect.cy, c.strip) for c in below.cells} == {(250.0, 0), (150.0, 1), (50.0, 3)}


def test_the_line_is_needed_as_the_nails_are():
    found = pruned(block(5, 1, set()), [spot(2, 0)], Rect(150.0, 49.0, 350.0, 51.0))
    assert sorted(c.rect.x0 for c in found.cells) == [100.0, 200.0, 300.0]


def test_the_way_goes_around_what_is_not_there_and_over_no_short_join():
    gaps = {(1, 0), (1, 1)}
    found = pruned(block(3, 3, gaps), [spot(0, 0), spot(2, 0)], Rect(49.0, 49.0, 51.0, 51.0))
    assert len(found.cells) == 7 and max(pieces([c.rect for c in found.cells])) == 0
    # every second row shares 39 mm with the ones below and above: not enough to be taped
    apart = block(2, 2, set(), JOIN_MIN - 1.0)
    found = pruned(apart, [spot(0, 0)], Rect(49.0, 49.0, 51.0, 51.0))
    assert len(found.cells) == 1
    held = Rect.about(apart.cells[2].rect.cx, apart.cells[2].rect.cy, 10.0, 10.0)
    assert len(pruned(apart, [spot(0, 0), held], Rect(49.0, 49.0, 51.0, 51.0)).cells) in (3, 2)


@given(st.sets(st.tuples(st.integers(0, 3), st.integers(0, 2)), max_size=4), st.integers(0, 3), st.integers(0, 2))
def test_two_needed_cells_are_linked_by_as_few_as_trying_all_finds(gaps, x, y):
    gaps -= {(0, 0), (x, y)}
    plan = block(4, 3, gaps)
    found = pruned(plan, [spot(0, 0), spot(x, y)], Rect(49.0, 49.0, 51.0, 51.0))
    there = {(cx, cy) for cx in range(4) for cy in range(3)} - gaps
    reached, steps = {(0, 0)}, 0
    while (x, y) not in reached:
        more = {(cx + dx, cy + dy) for cx, cy in reached for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1))} & there
        if more <= reached:
            assert len(found.cells) == 1  # no way: what is by itself stays out
            return
        reached |= more
        steps += 1
    assert len(found.cells) == steps + 1
    assert max(pieces([c.rect for c in found.cells])) == 0
