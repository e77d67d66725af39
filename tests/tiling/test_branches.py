"""Branches of linked paper: where their sheets lie on the wall, worked out by hand here or held against plain rules.

A sheet of the spine is 200 mm wide and 270 high; the paper's cells are 190 x 270 mm upright and 280 x 180 on the side.
"""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.base.geometry import Rect
from templates_gen.tiling.branches import APART, branches_of, crosses, near_misses, overlapping
from templates_gen.tiling.joins import JOIN_MIN
from templates_gen.tiling.minutes import FIRM

SPINE = Rect(0.0, 0.0, 200.0, 270.0)
UPRIGHT = [(190.0, 270.0)]
SIZES = [*UPRIGHT, (280.0, 180.0)]


def found(*boxes: Rect, cell: Rect = SPINE, level: tuple[Rect, ...] = (), more: tuple[Rect, ...] = (), sizes=SIZES):
    """The cells of every branch to these boxes, from the spine outwards; a failed search is an empty list."""
    branches = branches_of(cell, sorted(boxes), [*boxes, *more], sizes, level)
    return [list(branch.cells) for branch in branches or ()]


def test_a_nail_above_is_reached_by_one_sheet_with_it_in_the_middle_and_no_higher_than_it():
    assert found(Rect(80.0, 400.0, 120.0, 460.0)) == [[Rect(5.0, 270.0, 195.0, 460.0)]]


def test_a_nail_below_is_reached_as_one_above_is():
    (branch,) = branches_of(SPINE, [Rect(80.0, -190.0, 120.0, -130.0)], [Rect(80.0, -190.0, 120.0, -130.0)], SIZES, ())
    assert branch.cells == (Rect(5.0, -190.0, 195.0, 0.0),) and not branch.upward


def test_a_cut_of_a_branch_stops_at_the_nail_that_it_would_cross():
    """270 mm up from 270 would be at 540, inside the nail's box, which begins at 480."""
    assert found(Rect(80.0, 480.0, 120.0, 541.0), sizes=UPRIGHT) == [
        [Rect(5.0, 270.0, 195.0, 480.0), Rect(5.0, 480.0, 195.0, 541.0)]
    ]


def test_a_cut_of_a_branch_stops_at_the_edge_that_it_would_run_along():
    edge = Rect(0.0, 470.0, 400.0, 490.0)
    nail = Rect(80.0, 480.0, 120.0, 541.0)
    cut = [Rect(5.0, 270.0, 195.0, 470.0), Rect(5.0, 470.0, 195.0, 541.0)]
    assert found(nail, level=(edge,), sizes=UPRIGHT) == [cut]
    for beside in (edge.shifted(195.0, 0.0), edge.shifted(-395.0, 0.0)):  # begins or ends where the branch does
        assert found(nail, level=(beside,), sizes=UPRIGHT) == found(nail, sizes=UPRIGHT)
    for just in (edge.shifted(194.0, 0.0), edge.shifted(-394.0, 0.0)):
        assert found(nail, level=(just,), sizes=UPRIGHT) == [cut]


def test_a_sheet_on_its_side_is_taken_for_its_longer_join_where_it_costs_no_sheet():
    """200 mm of the spine's head instead of 190; it takes the nail in its middle as well."""
    assert found(Rect(80.0, 300.0, 120.0, 340.0)) == [[Rect(-40.0, 270.0, 240.0, 340.0)]]
    assert found(Rect(80.0, 300.0, 120.0, 450.0)) == [[Rect(-40.0, 270.0, 240.0, 450.0)]]
    assert found(Rect(80.0, 300.0, 120.0, 451.0)) == [[Rect(5.0, 270.0, 195.0, 451.0)]]


def test_no_branch_leaves_a_sheet_along_an_edge():
    nail = Rect(80.0, 400.0, 120.0, 460.0)
    assert found(nail, level=(Rect(0.0, 265.0, 400.0, 275.0),)) == []
    assert found(nail, level=(Rect(0.0, 270.0, 400.0, 280.0),)) == found(nail)  # begins on the cut: none runs in it


@pytest.mark.parametrize(("up", "works"), [(JOIN_MIN - 1.0, False), (JOIN_MIN, True), (JOIN_MIN + 1.0, True)])
def test_no_sheet_of_a_branch_but_the_last_is_lower_than_a_join_is_long(up, works):
    """An edge over the spine that is as high as a sheet: the cut has to be where it begins."""
    low = 270.0 + up
    reached = [Rect(5.0, 270.0, 195.0, low), Rect(5.0, low, 195.0, low + 260.0)]
    nail = Rect(80.0, low + 220.0, 120.0, low + 260.0)
    assert found(nail, level=(Rect(0.0, low, 400.0, low + 250.0),), sizes=UPRIGHT) == ([reached] if works else [])


def test_the_last_sheet_of_a_branch_may_be_as_low_as_what_it_shows():
    assert found(Rect(80.0, 270.0, 120.0, 280.0), sizes=UPRIGHT) == [[Rect(5.0, 270.0, 195.0, 280.0)]]


def test_a_nail_aside_is_reached_by_the_longer_join_where_that_costs_no_sheet():
    """Between a join of 106 mm with the nail nearer to the middle and one of 130 mm with it at the very side."""
    assert found(Rect(190.0, 400.0, 260.0, 460.0)) == [[Rect(70.0, 270.0, 260.0, 460.0)]]
    assert found(Rect(-60.0, 400.0, 10.0, 460.0)) == [[Rect(-60.0, 270.0, 130.0, 460.0)]]


def test_a_nail_too_far_aside_is_not_reached():
    """A sheet on its side, 280 mm wide, that is held firmly reaches 280 - 106 = 174 mm beyond the spine."""
    far = 200.0 + 280.0 - FIRM
    assert found(Rect(far - 40.0, 400.0, far, 440.0)) == [[Rect(far - 280.0, 270.0, far, 440.0)]]
    assert found(Rect(far - 39.0, 400.0, far + 1.0, 440.0)) == []
    assert found(Rect(-far + 200.0, 400.0, 240.0 - far, 440.0)) == [[Rect(200.0 - far, 270.0, 480.0 - far, 440.0)]]
    assert found(Rect(199.0 - far, 400.0, 239.0 - far, 440.0)) == []


def test_a_narrow_sheet_of_the_spine_is_met_along_all_of_it():
    narrow = Rect(0.0, 0.0, 80.0, 270.0)
    assert found(Rect(60.0, 400.0, 100.0, 460.0), cell=narrow) == [[Rect(-15.0, 270.0, 175.0, 460.0)]]
    assert found(Rect(250.0, 400.0, 290.0, 440.0), cell=narrow) == []


def test_nails_that_one_sheet_holds_share_a_branch_and_others_have_one_of_their_own():
    near = Rect(20.0, 400.0, 60.0, 440.0), Rect(150.0, 380.0, 190.0, 420.0)
    assert found(*near, sizes=UPRIGHT) == [[Rect(10.0, 270.0, 200.0, 440.0)]]
    wide = Rect(-40.0, 400.0, 0.0, 440.0), Rect(300.0, 400.0, 340.0, 440.0)  # 380 mm: more than any sheet is wide
    beside = [Rect(-40.0, 270.0, 150.0, 440.0)], [Rect(150.0, 270.0, 340.0, 440.0)]
    assert found(*wide, cell=Rect(0.0, 90.0, 280.0, 270.0), sizes=UPRIGHT) == [*beside]


def test_above_and_below_have_branches_each_and_what_the_sheet_holds_has_none():
    inside, up, down = (Rect(80.0, y, 120.0, y + 40.0) for y in (100.0, 300.0, -90.0))
    assert found(inside) == []
    assert branches_of(SPINE, [inside], [inside], SIZES, ()) == ()
    assert found(down, inside, up, sizes=UPRIGHT) == [[Rect(5.0, 270.0, 195.0, 340.0)], [Rect(5.0, -90.0, 195.0, 0.0)]]


def test_a_branch_crosses_no_nail_of_other_sheets():
    """The nail beside stands where the middle sheet's side would be: the branch goes to the side that holds it whole
    or leaves it out."""
    nail, beside = Rect(80.0, 400.0, 120.0, 460.0), Rect(180.0, 300.0, 210.0, 350.0)
    (branch,) = found(nail, more=(beside,))
    assert branch[0].holds(nail) and not crosses(branch[0], [beside])


nails = st.builds(
    lambda x, y, above: Rect.sized(x, 270.0 + y if above else -y - 60.0, 30.0, 60.0),
    st.integers(-100, 270), st.integers(0, 700), st.booleans(),
)  # fmt: skip
edges = st.builds(lambda x, y, wide: Rect.sized(x, y, wide, 12.0), st.integers(-300, 300), st.integers(-700, 900),
                  st.integers(50, 500))  # fmt: skip


@given(st.lists(nails, min_size=1, max_size=4), st.lists(edges, max_size=3))
def test_branches_hold_every_nail_are_joined_and_cut_nothing(boxes, level):
    boxes = [box for at, box in enumerate(boxes) if not any(box.overlaps(other) for other in boxes[:at])]
    branches = branches_of(SPINE, sorted(boxes), boxes, SIZES, level)
    if branches is None:
        return
    every = [piece for branch in branches for piece in branch.cells]
    assert all(any(piece.holds(box) for piece in every) for box in boxes)
    assert not any(crosses(piece, boxes) for piece in every)
    assert not any(one.overlaps(two) for at, one in enumerate(every) for two in (SPINE, *every[:at]))
    for branch in branches:
        first = branch.cells[0]
        assert (first.y0 == SPINE.y1) if branch.upward else (first.y1 == SPINE.y0)
        assert min(first.x1, SPINE.x1) - max(first.x0, SPINE.x0) >= min(FIRM, SPINE.width) - 1e-6
        for one, two in pairwise(branch.cells):
            assert (one.x0, one.x1) == (two.x0, two.x1)
            assert (one.y1 == two.y0) if branch.upward else (one.y0 == two.y1)
            assert one.height >= JOIN_MIN
        for piece in branch.cells:
            assert any(piece.width <= wide + 1e-6 and piece.height <= high + 1e-6 for wide, high in SIZES)
            cut = piece.y0 if branch.upward else piece.y1
            upper = SPINE if piece == first and not branch.upward else piece  # it is cut right along its foot
            along = [edge for edge in level if edge.x0 < upper.x1 and upper.x0 < edge.x1]
            assert not any(edge.y0 < cut < edge.y1 for edge in along)
        end = max(box.y1 if branch.upward else -box.y0 for box in boxes if any(c.holds(box) for c in branch.cells))
        assert (branch.cells[-1].y1 if branch.upward else -branch.cells[-1].y0) == end


@given(st.lists(nails, min_size=1, max_size=3))
def test_a_wall_upside_down_has_as_many_sheets_in_its_branches(boxes):
    """Where no edge of a frame is in the way, for the upper sheet is cut, whichever way the branch goes."""

    def turned(rects):
        return [Rect(r.x0, 270.0 - r.y1, r.x1, 270.0 - r.y0) for r in rects]

    here = branches_of(SPINE, sorted(boxes), boxes, SIZES, ())
    there = branches_of(SPINE, sorted(turned(boxes)), turned(boxes), SIZES, ())
    assert (here is None) == (there is None)
    if here is not None and there is not None:
        assert sum(len(branch.cells) for branch in here) == sum(len(branch.cells) for branch in there)


@pytest.mark.parametrize(
    ("other", "whether"),
    [
        (Rect(100.0, 0.0, 200.0, 100.0), False),  # joined along all of it
        (Rect(100.0, 100.0 - JOIN_MIN, 200.0, 300.0), False),  # along just enough
        (Rect(100.0, 101.0 - JOIN_MIN, 200.0, 300.0), True),  # along too little
        (Rect(0.0, 100.0, 100.0, 200.0), False),
        (Rect(100.0 - JOIN_MIN, 100.0, 300.0, 200.0), False),
        (Rect(101.0 - JOIN_MIN, 100.0, 300.0, 200.0), True),
        (Rect(100.0, 100.0, 200.0, 200.0), True),  # at a corner
        (Rect(100.0 + APART, 0.0, 300.0, 100.0), False),
        (Rect(99.0 + APART, 0.0, 300.0, 100.0), True),
        (Rect(0.0, 100.0 + APART, 100.0, 300.0), False),
        (Rect(0.0, 99.0 + APART, 100.0, 300.0), True),
        (Rect(110.0, 100.0 + APART, 300.0, 300.0), False),  # near across but far up
    ],
)  # fmt: skip
def test_papers_nearer_than_20_mm_that_are_not_taped_are_counted(other, whether):
    cell = Rect(0.0, 0.0, 100.0, 100.0)
    assert near_misses([cell], [other]) == near_misses([other], [cell]) == whether
    assert near_misses([cell, cell], [other, other]) == 4 * whether


@pytest.mark.parametrize("by", [(60.0, 0.0), (-60.0, 0.0), (0.0, 60.0), (0.0, -60.0)])
def test_a_box_across_a_side_is_crossed_and_one_inside_or_beside_is_not(by):
    cell, box = Rect(0.0, 0.0, 100.0, 100.0), Rect(40.0, 40.0, 60.0, 60.0)
    assert not crosses(cell, [box]) and not crosses(cell, [box.shifted(by[0] * 2 / 3, by[1] * 2 / 3)])
    assert crosses(cell, [box.shifted(by[0] * 5 / 6, by[1] * 5 / 6)])
    assert not crosses(cell, [box.shifted(*by)]) and not crosses(cell, [box.shifted(2 * by[0], 2 * by[1])])
    assert crosses(cell, [box.shifted(300.0, 300.0), box.shifted(by[0] * 5 / 6, by[1] * 5 / 6)])


@pytest.mark.parametrize("by", [(100.0, 0.0), (-100.0, 0.0), (0.0, 100.0), (0.0, -100.0)])
def test_cells_overlap_where_they_share_area_not_a_side(by):
    cell = Rect(0.0, 0.0, 100.0, 100.0)
    other = cell.shifted(*by)
    assert not overlapping([cell], [other])
    assert overlapping([cell], [other.shifted(-by[0] / 50, -by[1] / 50)])
    assert overlapping([other, cell], [cell.shifted(500.0, 0.0), cell])
    assert not overlapping([cell], [])
