"""The search for fewer minutes: loose rectangles held against the cells of a plan, and worked out by hand here."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.base.geometry import Rect
from templates_gen.tiling import joins
from templates_gen.tiling.beside import cut_back
from templates_gen.tiling.branches import near_misses
from templates_gen.tiling.joins import JOIN_MIN, LEAST_JOIN
from templates_gen.tiling.laid import Laid
from templates_gen.tiling.minutes import EACH, FIRM, shaky
from templates_gen.tiling.patches import Ground, Meeting, Patch, Wanted, broad, rounded

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


def laid_on(patches: list[Patch], *items: Patch, cut: bool = True) -> Laid:
    found = Laid.of(ground(*items, cut=cut), patches)
    assert found is not None
    return found


def joins_of(laid: Laid) -> dict[tuple[Patch, Patch], Meeting]:
    """Every join by the patch under and the one over it."""
    return {
        (under, over): met
        for over, meets in laid.meets.items()
        for under, met in meets.items()
        if met.over and met.length >= LEAST_JOIN
    }


@given(squares, st.randoms(use_true_random=False))
def test_patches_meet_hang_together_and_lie_near_each_other_as_cells_do(asked, random):
    """Whether they are put down alone or with others that are taken away again."""
    patches = apart(asked)
    cells = [Rect(*patch) for patch in patches]
    laid = laid_on(patches)
    away = random.sample(patches, len(patches) // 2)
    changed = laid.copy()
    for patch in away:
        changed.take(patch)
    for patch in random.sample(away, len(away)):
        assert changed.put(patch)
    assert changed.meets == laid.meets and changed.seconds == pytest.approx(laid.seconds)
    assert [laid.names()[patch] for patch in patches] == joins.pieces(cells)
    assert laid.one_piece == (max(joins.pieces(cells)) == 0)
    wanted = {(under, over, length) for under, over, length in joins.shared_sides(cells) if length >= LEAST_JOIN}
    found = joins_of(laid)
    assert {(patches.index(one), patches.index(two), met.length) for (one, two), met in found.items()} == wanted
    for (under, over), met in found.items():
        assert (under[2] == over[0]) if met.upright else (under[3] == over[1])
    near = sum(near_misses([one], [two]) for one, two in combinations(cells, 2))
    assert sum(met.length < JOIN_MIN for meets in laid.meets.values() for met in meets.values()) == 2 * near
    for patch in patches if laid.one_piece and len(patches) > 1 else ():
        rest = [cell for cell in cells if rounded(cell) != patch]
        assert laid.spare(patch) == (max(joins.pieces(rest)) == 0)  # nothing is asked for


@given(squares)
def test_seconds_are_those_of_sheets_joins_and_cuts_with_a_little_for_what_is_short_or_near(asked):
    """10 s a sheet, 20 a join, 15 a cut side, 8 s for paper that lies near; a join of less than 106 mm 60 s more than
    its length counts: our own estimates."""
    patches = apart(asked)
    laid, uncut = laid_on(patches), laid_on(patches, cut=False)
    found = joins_of(laid)
    cuts = {(over, met.upright) for (_, over), met in found.items()}
    near = sum(met.length < JOIN_MIN for meets in laid.meets.values() for met in meets.values()) / 2
    weak = sum(shaky(met.length) + (60.0 if met.length < FIRM else 0.0) for met in found.values())
    assert uncut.seconds == pytest.approx(EACH.sheet * len(patches) + EACH.join * len(found) + weak + 8.0 * near)
    assert laid.seconds == pytest.approx(uncut.seconds + EACH.cut * len(cuts))
    assert len(laid.weak) == sum(met.length < FIRM for met in found.values())


def test_patches_on_each_other_are_no_plan_and_touching_at_a_corner_is_no_join():
    one, on, corner = (0.0, 0.0, 100.0, 100.0), (99.0, 0.0, 200.0, 100.0), (100.0, 100.0, 200.0, 200.0)
    assert Laid.of(ground(), [one, on]) is None
    left = laid_on([one])
    assert not left.put(on) and left.patches == [one] and left.meets == {one: {}}
    for other in (corner, (100.0, 81.0, 200.0, 181.0)):  # 19 mm: not taped there
        assert joins_of(laid_on([one, other])) == {} and not laid_on([one, other]).one_piece
    assert len(joins_of(laid_on([one, (100.0, 80.0, 200.0, 180.0)]))) == 1


def test_no_join_runs_along_an_edge_of_a_frame():
    left, right, over = (0.0, 0.0, 100.0, 100.0), (100.0, 0.0, 200.0, 100.0), (0.0, 100.0, 100.0, 200.0)
    thin = Rect(98.0, 90.0, 101.0, 400.0)
    assert Laid.of(ground(upright=(thin,)), [left, right]) is None
    assert Laid.of(ground(upright=(thin.shifted(0.0, 10.0),)), [left, right]) is not None  # begins where they end
    assert Laid.of(ground(upright=(thin.shifted(2.0, 0.0),)), [left, right]) is not None  # begins on the join itself
    flat = Rect(90.0, 98.0, 400.0, 101.0)
    assert Laid.of(ground(level=(flat,)), [left, over]) is None and Laid.of(ground(level=(flat,)), [over, left]) is None
    assert Laid.of(ground(level=(flat.shifted(10.0, 0.0),)), [left, over]) is not None
    assert (
        Laid.of(ground(upright=(Rect(20.0, 98.0, 80.0, 101.0),)), [left, over]) is not None
    )  # level, and said upright


def test_the_sheet_on_top_is_cut_right_along_its_side_and_no_edge_of_a_frame_is_there():
    """Beyond the join, too; the sheet under it is not cut there, and uncut paper nowhere."""
    left, right = (0.0, 0.0, 100.0, 100.0), (100.0, 0.0, 200.0, 300.0)
    thin = Rect(98.0, 150.0, 101.0, 400.0)
    assert Laid.of(ground(upright=(thin,)), [left, right]) is None
    assert Laid.of(ground(upright=(thin,)), [right, left]) is None
    assert Laid.of(ground(upright=(thin,), cut=False), [left, right]) is not None
    tall, low = (0.0, 0.0, 100.0, 300.0), (100.0, 0.0, 200.0, 100.0)
    assert Laid.of(ground(upright=(thin,)), [tall, low]) is not None
    wide, above = (0.0, 0.0, 100.0, 100.0), (0.0, 100.0, 300.0, 200.0)
    flat = Rect(150.0, 98.0, 400.0, 101.0)
    assert Laid.of(ground(level=(flat,)), [wide, above]) is None
    assert Laid.of(ground(level=(flat,), cut=False), [wide, above]) is not None


items = st.lists(st.tuples(st.integers(0, 40), st.integers(0, 40), st.integers(0, 4), st.integers(0, 4)), max_size=8)


@given(items, squares)
def test_what_a_patch_holds_is_what_lies_in_it(asked, cells):
    wanted = [(x * 5.0, y * 5.0, x * 5.0 + w * 5.0, y * 5.0 + h * 5.0) for x, y, w, h in asked]
    on = ground(*wanted)
    patches = apart(cells)
    for patch in patches:
        inside = {at for at, item in enumerate(sorted(wanted)) if Rect(*patch).holds(Rect(*item))}
        assert on.held(patch) == inside
    assert on.worth == [1.0 if broad(item) else 0.1 for item in sorted(wanted)]
    crossed = {
        patch for patch in patches for item in wanted
        if patch[0] < item[2] and item[0] < patch[2] and patch[1] < item[3] and item[1] < patch[3]
        and not Rect(*patch).holds(Rect(*item))
    }  # fmt: skip
    assert crossed == {patch for patch in patches if on.crosses(patch)}
    laid = Laid.of(on, patches)
    assert (laid is None) == bool(crossed)
    missing = [item for item in sorted(wanted) if not any(Rect(*patch).holds(Rect(*item)) for patch in patches)]
    if laid is None:
        return
    assert laid.all_held == (not missing)
    assert [on.items[number] for number in laid.missing()] == missing
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
