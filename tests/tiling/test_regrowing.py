"""Sheets taken out and grown anew, braces, and the search from there: worked out by hand here."""

from __future__ import annotations

from itertools import combinations
from math import inf
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen.base.geometry import Rect
from templates_gen.tiling.joins import LEAST_JOIN
from templates_gen.tiling.laid import Laid
from templates_gen.tiling.minutes import EACH, FIRM
from templates_gen.tiling.parting import lighter
from templates_gen.tiling.patches import Ground, Patch
from templates_gen.tiling.regrowing import Growing
from templates_gen.tiling.searching import Found, Judged, quicker
from tests.tiling.test_patches import SIZES, ground, laid_on

spots = st.lists(st.tuples(st.integers(-30, 30), st.integers(-30, 30)), min_size=1, max_size=5)


def grown_from(on: Ground, kept: list[Patch], seed: int, most: float = inf) -> list[Patch] | None:
    """What is grown beside the kept patches where one far away was taken out."""
    far = (kept[0][0], kept[0][1] - 1000.0, kept[0][2], kept[0][3] - 1000.0)
    start = Laid.of(on, [*kept, far])
    assert start is not None
    grown = Growing(on, Random(seed)).regrown(start, [far], most)
    return list(grown.patches) if grown else None


@settings(deadline=None, max_examples=30, derandomize=True)
@given(spots, st.integers(0, 5))
def test_what_is_grown_holds_everything_in_one_piece_of_no_larger_sheets(asked, seed):
    wanted = [(x * 20.0, y * 20.0, x * 20.0 + 30.0, y * 20.0 + 40.0) for x, y in asked]
    on, start = ground((-20.0, -20.0, 20.0, 20.0), *wanted), (-90.0, -90.0, 90.0, 90.0)
    if on.crosses(start):
        assert Laid.of(on, [start]) is None
        return
    grown = grown_from(on, [start], seed)
    if grown is None:  # it took more sheets than may be: another growth will do
        return
    laid = Laid.of(on, grown)
    assert laid is not None and laid.all_held and laid.one_piece
    assert start in grown
    for one, two in combinations(grown, 2):
        assert not Rect(*one).overlaps(Rect(*two))
    for patch in grown[1:]:
        wide, high = patch[2] - patch[0], patch[3] - patch[1]
        assert any(wide <= w + 1e-6 and high <= h + 1e-6 for w, h in SIZES) and min(wide, high) >= 40.0
    assert grown_from(on, [start], seed) == grown  # the same chance grows the same
    assert not any(map(laid.spare, grown))
    assert len(grown) == 1 or grown_from(on, [start], seed, 20.0) is None  # a second sheet takes 45 s at least


@pytest.mark.parametrize("away", [250.0, 300.0, -300.0])
@pytest.mark.parametrize("level", [True, False])
def test_what_is_grown_goes_straight_to_what_is_missing(away, level):
    """Sheets 260 mm long from a start that reaches 90 mm to each side, to the far end of a nail of 30 mm."""
    at = (away - 15.0, -15.0, away + 15.0, 15.0)
    on = ground((-20.0, -20.0, 20.0, 20.0), at if level else (at[1], at[0], at[3], at[2]))
    least = -(-(abs(away) + 15.0 - 90.0) // 260.0)
    grown = [grown_from(on, [(-90.0, -90.0, 90.0, 90.0)], seed) for seed in range(8)]
    counts = [len(patches) - 1 for patches in grown if patches]
    assert len(counts) >= 3 and min(counts) <= least + 1 and max(counts) <= least + 4


def test_loose_pieces_are_grown_together():
    on = ground((0.0, 0.0, 30.0, 30.0), (700.0, 0.0, 730.0, 30.0))
    kept = [(-50.0, -100.0, 130.0, 160.0), (650.0, -100.0, 830.0, 160.0)]  # 520 mm apart: two sheets on their sides
    between = (200.0, -100.0, 380.0, 160.0)
    start = laid_on([*kept, between], *on.items)
    grown = [Growing(on, Random(seed)).regrown(start, [between]) for seed in range(12)]
    found = [laid for laid in grown if laid is not None]
    assert len(found) > 3 and all(laid.one_piece and len(laid.meets) <= 5 for laid in found)


def test_a_brace_joins_two_sheets_that_were_not_and_stays_though_nothing_asks_for_it():
    """Two columns on one sheet on its side, 40 mm of air between them: a sheet over both."""
    patches = [(0.0, 0.0, 260.0, 180.0), (-70.0, 180.0, 110.0, 440.0), (150.0, 180.0, 330.0, 440.0)]
    start = laid_on(patches, *patches)
    found = [Growing(start.ground, Random(seed)).braced(start, patches[1]) for seed in range(6)]
    braced = [laid for laid in found if laid is not None]
    assert braced
    for laid in braced:
        (brace,) = laid.braces
        lengths = [met.length for met in laid.meets[brace].values() if met.length >= LEAST_JOIN]
        assert len(lengths) > 1 and sorted(lengths)[-2] >= FIRM and laid.spare(brace)
        Growing(laid.ground, Random(0)).pruned(laid, laid.patches)
        assert brace in laid.meets
        laid.take(brace)
        assert not laid.braces and laid.meets == start.meets


def row(*lefts: float, high: float = 260.0) -> list[Patch]:
    return [(left, 0.0, left + 180.0, high) for left in lefts]


def missing(over: float) -> Judged:
    """So much too great an error, where a change could help anywhere."""
    return Judged(max(0.0, over), ((180.0, 130.0),))


def test_the_search_finds_fewer_sheets_and_never_gives_back_what_is_worse_than_its_start():
    """Two nails 200 mm apart on four sheets in a ring: two sheets or one on its side are enough."""
    nails = (20.0, 20.0, 50.0, 60.0), (210.0, 20.0, 240.0, 60.0)
    patches = [*row(0.0, 180.0), (0.0, 260.0, 180.0, 500.0), (180.0, 260.0, 360.0, 500.0)]
    start = Found(laid_on(patches, *nails))
    light = lighter(start, lambda *_: Judged(0.0))
    assert sorted(light.laid.patches) == row(0.0, 180.0)
    assert light.seconds == pytest.approx(laid_on(row(0.0, 180.0), *nails).seconds)
    held = lighter(start, lambda left, _: Judged(4.0 - len(left.meets)))  # every sheet less is a worse error
    assert len(held.laid.meets) == 4
    best = quicker(start, 200, lambda *_: Judged(0.0))
    assert len(best.laid.meets) <= 2 and best.laid.all_held
    assert best.seconds == pytest.approx(laid_on(best.laid.patches, *nails).seconds)
    assert quicker(start, 0, lambda *_: Judged(0.0)) == start
    assert quicker(start, 200, lambda *_: Judged(0.0)).laid.meets == best.laid.meets  # seeded
    judged = quicker(start, 200, lambda left, _: missing(4 - len(left.meets)))
    assert judged.excess == 0.0 and len(judged.laid.meets) >= 4 and judged.seconds <= start.seconds


def test_sheets_are_cut_apart_where_a_join_holds_nothing_and_nothing_is_lost():
    """Four sheets in a ring, a nail on each: one of the joins is needless, and stays where the error needs it."""
    nails = [(x, y, x + 30.0, y + 60.0) for x in (40.0, 260.0) for y in (60.0, 360.0)]
    ring = [*row(0.0, 180.0), (0.0, 260.0, 180.0, 520.0), (180.0, 260.0, 360.0, 520.0)]
    start = Found(laid_on(ring, *nails))
    light = lighter(start, lambda *_: Judged(0.0))
    met = [m.length for meets in light.laid.meets.values() for m in meets.values() if m.over and m.length > 0.0]
    assert len(light.laid.meets) == 4 and len(met) == 3 and min(met) > 150.0
    assert light.laid.all_held and light.laid.one_piece and light.seconds < start.seconds - EACH.join
    assert lighter(start, lambda left, _: Judged(4.0 - joins(left))).laid.meets == start.laid.meets


def test_no_sheet_is_put_where_a_nail_would_be_cut_though_nothing_holds_that_yet():
    """Nothing could hold it beside that sheet: a growth that put one there never came to an end."""
    nails = (20.0, 20.0, 50.0, 60.0), (170.0, 20.0, 200.0, 60.0)
    laid = laid_on([], *nails)
    assert not laid.put((0.0, 0.0, 180.0, 260.0)) and not laid.meets
    assert laid.put((-20.0, 0.0, 160.0, 260.0)) and laid.put((160.0, 0.0, 340.0, 260.0)) and laid.all_held


def joins(laid: Laid) -> int:
    return sum(m.over and m.length > 0.0 for meets in laid.meets.values() for m in meets.values())


def test_what_is_over_the_limit_is_left_for_what_is_not_though_that_takes_longer():
    nails = (20.0, 20.0, 50.0, 60.0), (600.0, 20.0, 630.0, 60.0)
    start = Found(laid_on(row(0.0, 180.0, 360.0, 540.0), *nails), missing(1))
    found = quicker(start, 300, lambda left, _: missing(any(p[1] < 0.0 for p in left.meets)))
    assert found.excess == 0.0 and found.laid.all_held


def test_a_sheet_that_would_touch_nothing_once_it_is_level_with_another_is_not_put_down():
    """It touches one at 180 mm but for a rounding, and is made level with one that lies 1.8e-6 mm farther: the search
    once stopped there with a traceback."""
    patches = [(180.0000018, 400.0, 360.0, 600.0), (0.0, 0.0, 180.0, 260.0)]
    work = laid_on(patches, (20.0, 20.0, 50.0, 60.0))
    assert Growing(work.ground, Random(0))._put(work, (180.0000009, 0.0, 360.0, 260.0)) is None
    assert work.patches == patches
    put = Growing(work.ground, Random(0))._put(work, (180.0000002, 0.0, 360.0, 260.0))
    assert put == (180.0, 0.0, 360.0, 260.0)
