"""Rectangles against a geometry library's, on a coarse grid, where edges and corners meet as often as not."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import box as shape
from shapely.geometry import Point

from templates_gen.base.geometry import TOLERANCE, Rect, bounds, exceeds, same
from tests.jobs import sides

RECTS = st.builds(Rect.sized, *[st.integers(0, 6)] * 2, *[st.integers(1, 4)] * 2)


@given(RECTS, RECTS)
def test_two_rectangles_are_to_each_other_as_a_library_has_them(one, two):
    a, b = shape(*sides(one)), shape(*sides(two))
    assert one.overlaps(two) == two.overlaps(one) == (a.intersection(b).area > 0)
    assert one.holds(two) == a.covers(b)
    met = one.meet(two)
    assert (met is None) == (not a.intersects(b))
    assert met is None or sides(met) == a.intersection(b).bounds
    across, up = one.gaps_to(two)
    assert math.hypot(max(0, across), max(0, up)) == pytest.approx(a.distance(b))
    assert one.gap_to(two) == max(across, up)
    assert (one.gap_to(two) < 0) == one.overlaps(two)
    assert sides(bounds([one, two])) == a.union(b).bounds


@given(RECTS, st.integers(-1, 11), st.integers(-1, 11))
def test_a_point_on_an_edge_is_in(rect, x, y):
    assert rect.has_point(x, y) == shape(*sides(rect)).covers(Point(x, y))


@given(RECTS, RECTS, st.sampled_from([-0.9, 0.9]))
def test_less_than_the_tolerance_makes_no_difference(one, two, share):
    off = two.grown(share * TOLERANCE)
    assert (one.overlaps(off), off.overlaps(one)) == (one.overlaps(two), two.overlaps(one))
    assert (one.holds(off), off.holds(one)) == (one.holds(two), two.holds(one))


@given(RECTS, st.integers(-5, 5), st.integers(-5, 5))
def test_a_rectangle_moved_or_grown_keeps_its_middle_or_its_size(rect, x, y):
    assert rect.shifted(x, y) == Rect.about(rect.cx + x, rect.cy + y, rect.width, rect.height)
    assert rect.grown(2) == Rect.about(rect.cx, rect.cy, rect.width + 4, rect.height + 4)


def test_the_corners_run_against_the_clock_from_the_lower_left():
    assert Rect(1, 2, 4, 6).corners == ((1, 2), (4, 2), (4, 6), (1, 6))


@pytest.mark.parametrize("most", [0.0, 1219.2, 50_000.0])
def test_rounding_makes_no_length_more_than_another(most):
    # 0.1 mm is more than any rounding; half of what counts as rounding, and none, are not
    assert exceeds(most + 0.1, most)
    assert not any(exceeds(most + off, most) for off in (TOLERANCE / 2, 0.0, -TOLERANCE / 2, -0.1))
    assert all(same(most + off, most) for off in (TOLERANCE / 2, 0.0, -TOLERANCE / 2))
    assert not any(same(most + off, most) for off in (0.1, -0.1))


def test_a_difference_of_just_the_tolerance_is_none():
    assert not exceeds(TOLERANCE, 0.0)
    assert same(TOLERANCE, 0.0)
