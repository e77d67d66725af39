"""The search for fewer minutes: loose rectangles held against the cells of a plan, and worked out by hand here."""

from __future__ import annotations

from itertools import combinations
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen.base.geometry import Rect
from templates_gen.tiling import joins
from templates_gen.tiling.branches import near_misses
from templates_gen.tiling.joins import LEAST_JOIN
from templates_gen.tiling.minutes import EACH, FIRM, shaky
from templates_gen.tiling.patches import Ground, Patch, Wanted, broad, pieces, rounded
from templates_gen.tiling.regrowing import Growing, cut_back
from templates_gen.tiling.searching import Found, lighter, one_piece, quicker, without_spares
from templates_gen.tiling.weaving import HELD, woven

SIZES = ((180.0, 260.0), (260.0, 180.0))


def ground(*items: Patch, upright: tuple[Rect, ...] = (), level: tuple[Rect, ...] = (), cut: bool = True) -> Ground:
    return Ground(Wanted(items, upright, level, SIZES, cut))


squares = st.lists(
    st.tuples(st.integers(0, 8), st.integers(0, 8), st.integers(2, 5), st.integers(2, 5)), min_size=1, max_size=9
)


def apart(asked: list[tuple[int, int, int, int]]) -> list[Patch]:
    """Patches on a grid of 20 mm, those left out that would lie on others."""
    cells: list[Rect] = []
    for x, y, wide, high in asked:
        cell = Rect.sized(x * 20.0, y * 20.0, wide * 20.0, high * 20.0)
        if not any(cell.overlaps(other) for other in cells):
            cells.append(cell)
    return [rounded(cell) for cell in cells]


@given(squares)
def test_patches_meet_hang_together_and_lie_near_each_other_as_cells_do(asked):
    patches = apart(asked)
    cells = [Rect(*patch) for patch in patches]
    assert pieces(patches) == joins.pieces(cells)
    assert one_piece(patches) == (max(joins.pieces(cells)) == 0)
    found, near = ground().joins(patches) or ([], -1)
    wanted = {(under, over, length) for under, over, length in joins.shared_sides(cells) if length >= LEAST_JOIN}
    assert {(under, over, length) for under, over, _, length in found} == wanted
    for under, over, upright, _ in found:
        one, two = cells[under], cells[over]
        assert (one.x1 == two.x0) if upright else (one.y1 == two.y0)
    assert near == sum(near_misses([one], [two]) for one, two in combinations(cells, 2))


@given(squares)
def test_seconds_are_those_of_sheets_joins_and_cuts_with_a_little_for_what_is_short_or_near(asked):
    """10 s a sheet, 20 a join, 15 a cut side, 8 s for paper that lies near; a join of less than 106 mm 12 s more than
    its length counts: our own estimates."""
    patches = apart(asked)
    took, uncut = ground().seconds(patches), ground(cut=False).seconds(patches)
    if not one_piece(patches):
        assert took is None and uncut is None
        return
    found, near = ground().joins(patches) or ([], 0)
    cuts = {(meet.over, meet.upright) for meet in found}
    weak = sum(shaky(meet.length) + (12.0 if meet.length < FIRM else 0.0) for meet in found)
    assert uncut == pytest.approx(EACH.sheet * len(patches) + EACH.join * len(found) + weak + 8.0 * near)
    assert took == pytest.approx((uncut or 0.0) + EACH.cut * len(cuts))
    assert ground().short_joins(patches) == sum(meet.length < FIRM for meet in found)


def test_patches_on_each_other_have_no_joins_and_touching_at_a_corner_is_no_join():
    one, on, corner = (0.0, 0.0, 100.0, 100.0), (99.0, 0.0, 200.0, 100.0), (100.0, 100.0, 200.0, 200.0)
    assert ground().joins([one, on]) is None and ground().seconds([one, on]) is None
    assert ground().joins([one, corner]) == ([], 1)
    assert ground().joins([one, (100.0, 81.0, 200.0, 181.0)]) == ([], 1)  # 19 mm: not taped there
    assert len((ground().joins([one, (100.0, 80.0, 200.0, 180.0)]) or ([],))[0]) == 1


def test_no_join_runs_along_an_edge_of_a_frame():
    left, right, over = (0.0, 0.0, 100.0, 100.0), (100.0, 0.0, 200.0, 100.0), (0.0, 100.0, 100.0, 200.0)
    thin = Rect(98.0, 90.0, 101.0, 400.0)
    assert ground(upright=(thin,)).joins([left, right]) is None
    assert ground(upright=(thin.shifted(0.0, 10.0),)).joins([left, right]) is not None  # begins where they end
    assert ground(upright=(thin.shifted(2.0, 0.0),)).joins([left, right]) is not None  # begins on the join itself
    flat = Rect(90.0, 98.0, 400.0, 101.0)
    assert ground(level=(flat,)).joins([left, over]) is None and ground(level=(flat,)).joins([over, left]) is None
    assert ground(level=(flat.shifted(10.0, 0.0),)).joins([left, over]) is not None
    assert ground(upright=(Rect(20.0, 98.0, 80.0, 101.0),)).joins([left, over]) is not None  # level, and said upright


items = st.lists(st.tuples(st.integers(0, 40), st.integers(0, 40), st.integers(0, 4), st.integers(0, 4)), max_size=8)


@given(items, squares)
def test_what_a_patch_holds_is_what_lies_in_it(asked, cells):
    wanted = [(x * 5.0, y * 5.0, x * 5.0 + w * 5.0, y * 5.0 + h * 5.0) for x, y, w, h in asked]
    on = ground(*wanted)
    patches = apart(cells)
    for patch in patches:
        inside = {at for at, item in enumerate(sorted(wanted)) if Rect(*patch).holds(Rect(*item))}
        assert on.held(patch) == inside
        worth = sum(1.0 if broad(sorted(wanted)[at]) else 0.1 for at in inside)
        assert on.worth(patch, set(range(len(wanted)))) == pytest.approx(worth)
    every = all(any(Rect(*patch).holds(Rect(*item)) for patch in patches) for item in wanted)
    assert on.all_held(patches) == every
    rest = on.of_what_is_held(patches)
    kept = [i for i in sorted(wanted) if broad(i) or any(Rect(*p).holds(Rect(*i)) for p in patches)]
    assert rest.items == kept


def test_what_is_thin_is_a_bit_of_a_line():
    assert broad((0.0, 0.0, 2.0, 2.0)) and not broad((0.0, 0.0, 0.0, 30.0)) and not broad((0.0, 0.0, 30.0, 1.0))


@pytest.mark.parametrize(
    ("other", "left"),
    [
        ((150.0, -10.0, 400.0, 300.0), (0.0, 0.0, 150.0, 260.0)),
        ((-100.0, -10.0, 30.0, 300.0), (30.0, 0.0, 180.0, 260.0)),
        ((-10.0, 200.0, 300.0, 400.0), (0.0, 0.0, 180.0, 200.0)),
        ((-10.0, -300.0, 300.0, 60.0), (0.0, 60.0, 180.0, 260.0)),
        ((150.0, 240.0, 400.0, 400.0), (0.0, 0.0, 180.0, 240.0)),  # 20 mm of height are less than 30 of width
        ((180.0, 0.0, 300.0, 260.0), (0.0, 0.0, 180.0, 260.0)),  # beside it: nothing is lost
        ((40.0, -10.0, 400.0, 300.0), (0.0, 0.0, 40.0, 260.0)),
        ((39.0, -10.0, 400.0, 300.0), None),  # less than a join is long is left
    ],
)
def test_a_patch_is_cut_where_least_of_it_is_lost(other, left):
    assert cut_back((0.0, 0.0, 180.0, 260.0), [other]) == left


spots = st.lists(st.tuples(st.integers(-30, 30), st.integers(-30, 30)), min_size=1, max_size=5)


@settings(deadline=None, max_examples=20, derandomize=True)
@given(spots, st.integers(0, 5))
def test_what_is_grown_holds_everything_in_one_piece_of_no_larger_sheets(asked, seed):
    wanted = [(x * 20.0, y * 20.0, x * 20.0 + 30.0, y * 20.0 + 40.0) for x, y in asked]
    on, start = ground(*wanted), (-90.0, -90.0, 90.0, 90.0)
    grown = Growing(on, Random(seed)).grow([start], 30)
    if grown is None:  # a patch may have been laid so that none can hold what it crosses: another growth will do
        return
    assert grown[0] == start
    assert on.all_held(grown) and one_piece(grown)
    for one, two in combinations(grown, 2):
        assert not Rect(*one).overlaps(Rect(*two))
    for patch in grown[1:]:
        wide, high = patch[2] - patch[0], patch[3] - patch[1]
        assert any(wide <= w + 1e-6 and high <= h + 1e-6 for w, h in SIZES) and min(wide, high) >= 40.0
    assert Growing(on, Random(seed)).grow([start], 30) == grown  # the same chance grows the same
    assert Growing(on, Random(seed)).grow([start], len(grown) - 2) is None or len(grown) == 1
    lean = without_spares(on, grown)
    assert on.all_held(lean) and one_piece(lean)
    for patch in lean if len(lean) > 1 else ():
        rest = [other for other in lean if other != patch]
        assert not (on.all_held(rest) and one_piece(rest))


@pytest.mark.parametrize("away", [250.0, 300.0, -300.0])
@pytest.mark.parametrize("level", [True, False])
def test_what_is_grown_goes_straight_to_what_is_missing(away, level):
    """Sheets 260 mm long from a start that reaches 90 mm to each side, to the far end of a nail of 30 mm."""
    at = (away - 15.0, -15.0, away + 15.0, 15.0)
    on = ground(at if level else (at[1], at[0], at[3], at[2]))
    least = -(-(abs(away) + 15.0 - 90.0) // 260.0)
    grown = [Growing(on, Random(seed)).grow([(-90.0, -90.0, 90.0, 90.0)], 12) for seed in range(8)]
    counts = [len(patches) - 1 for patches in grown if patches]
    assert len(counts) >= 3 and min(counts) <= least + 1 and max(counts) <= least + 4


def test_loose_pieces_are_grown_together():
    on = ground((0.0, 0.0, 30.0, 30.0), (700.0, 0.0, 730.0, 30.0))
    kept = [(-50.0, -100.0, 130.0, 160.0), (650.0, -100.0, 830.0, 160.0)]  # 520 mm apart: two sheets on their sides
    for seed in range(4):
        grown = Growing(on, Random(seed)).grow(kept, 4)
        assert grown is not None and one_piece(grown) and len(grown) <= 5


def row(*lefts: float, high: float = 260.0) -> list[Patch]:
    return [(left, 0.0, left + 180.0, high) for left in lefts]


def test_the_search_finds_fewer_sheets_and_never_gives_back_what_is_worse_than_its_start():
    """Two nails 200 mm apart on four sheets in a ring: two sheets or one on its side are enough."""
    on = ground((20.0, 20.0, 50.0, 60.0), (210.0, 20.0, 240.0, 60.0))
    patches = [*row(0.0, 180.0), (0.0, 260.0, 180.0, 500.0), (180.0, 260.0, 360.0, 500.0)]
    start = Found(patches, on.seconds(patches) or 0.0, 0.0)
    light = lighter(on, start, lambda _: 0.0)
    assert sorted(light.patches) == row(0.0, 180.0) and light.seconds == on.seconds(row(0.0, 180.0))
    held = lighter(on, start, lambda left: 4.0 - len(left))  # every sheet less is a worse error
    assert held == start
    best = quicker(on, start, 200, lambda _: 0.0)
    assert len(best.patches) <= 2 and on.all_held(best.patches) and best.seconds == on.seconds(best.patches)
    assert quicker(on, start, 0, lambda _: 0.0) == start
    assert quicker(on, start, 200, lambda _: 0.0) == best  # seeded
    judged = quicker(on, start, 200, lambda left: max(0.0, 4.0 - len(left)))
    assert judged.excess == 0.0 and len(judged.patches) >= 4 and judged.seconds <= start.seconds


def test_what_is_over_the_limit_is_left_for_what_is_not_though_that_takes_longer():
    on = ground((20.0, 20.0, 50.0, 60.0), (600.0, 20.0, 630.0, 60.0))
    patches = row(0.0, 180.0, 360.0, 540.0)
    took = on.seconds(patches) or 0.0
    found = quicker(on, Found(patches, took, 1.0), 300, lambda left: 0.0 if all(p[1] >= 0.0 for p in left) else 1.0)
    assert found.excess == 0.0 and on.all_held(found.patches)
    assert Found([], 100.0, 0.5).cost == 130.0  # a mm over the limit counts as 60 s: our own design


def test_sheets_in_no_strips_are_put_into_runs_from_the_targets_outwards():
    """A row of three at the line, a column of two over its middle, and one beside the upper of them."""
    cells = [
        Rect(0, 0, 200, 100), Rect(200, 0, 400, 100), Rect(400, 0, 600, 100),
        Rect(200, 100, 400, 200), Rect(200, 200, 400, 300), Rect(400, 200, 600, 300),
    ]  # fmt: skip
    found = woven(cells, 1, lambda cell: cell.y0 <= 50 <= cell.y1, False, (200.0, 300.0))
    placed = {(cell.strip, cell.place): cells.index(cell.rect) for cell in found}
    assert placed == {(0, 0): 0, (0, 1): 1, (0, 2): 2, (1, 0): 3, (1, 1): 4, (2, 0): 5}
    assert not any(cell.turned for cell in found)
    rows = woven(cells, 1, lambda cell: cell.y0 <= 50 <= cell.y1, True, (200.0, 99.0))
    placed = {(cell.strip, cell.place): cells.index(cell.rect) for cell in rows}
    assert placed == {(0, 0): 0, (0, 1): 1, (0, 2): 2, (1, 0): 3, (2, 0): 4, (2, 1): 5}
    assert all(cell.turned for cell in rows)
    assert all(cell.turned for cell in woven(cells, 1, lambda cell: True, True, (199.0, 300.0)))


def test_only_what_holds_the_line_is_in_the_first_run_and_a_run_is_no_longer_than_an_arms_span():
    cells = [Rect(200.0 * at, 0.0, 200.0 * at + 200.0, 100.0) for at in range(12)]
    every = woven(cells, 5, lambda cell: True, False, (200.0, 300.0))
    assert {cell.strip for cell in every} == {0} and [cell.place for cell in every] == list(range(12))
    some = woven(cells, 5, lambda cell: 800.0 <= cell.x0 <= 1400.0, True, (200.0, 300.0))
    first = sorted(cell.rect.x0 for cell in some if cell.strip == 0)
    assert first == [800.0, 1000.0, 1200.0, 1400.0]
    none = woven(cells, 0, lambda cell: False, True, (200.0, 300.0))
    runs = [[cell.rect for cell in none if cell.strip == strip] for strip in sorted({cell.strip for cell in none})]
    assert [len(run) for run in runs] == [1, 10, 1]  # 2 m
    assert all(max(c.x1 for c in run) - min(c.x0 for c in run) <= HELD for run in runs)
    tall = [Rect(0.0, 100.0 * at, 100.0, 100.0 * at + 100.0) for at in range(25)]
    columns = woven(tall, 0, lambda cell: cell.y0 == 0.0, False, (100.0, 100.0))
    assert [sum(cell.strip == strip for cell in columns) for strip in range(3)] == [1, 20, 4]


def test_a_sheet_goes_into_the_run_that_it_is_longer_joined_to():
    """The upper row meets the target's sheet at 150 and 50 mm, and a cell under it along 40."""
    cells = [
        Rect(0, 0, 200, 100), Rect(200, 0, 400, 60), Rect(200, 60, 400, 300), Rect(0, 100, 200, 300),
    ]  # fmt: skip
    found = woven(cells, 0, lambda cell: cell.y0 == 0.0, False, (400.0, 400.0))
    strips = {cells.index(cell.rect): cell.strip for cell in found}
    assert strips[0] == strips[1] == 0 and strips[2] != strips[3]
    right = woven(cells, 0, lambda cell: True, False, (400.0, 400.0))
    strips = {cells.index(cell.rect): cell.strip for cell in right}
    assert strips[0] == 0 and strips[1] == 0  # 60 mm of a side rather than 40
