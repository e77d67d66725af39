"""Whether older paper still shows all that is asked for: rectangles by themselves, held against squares of a grid."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.base.geometry import Rect
from templates_gen.tiling.kept import _along, _covered, _without

PLACE = st.integers(0, 6)
RECTS = st.builds(
    lambda x, y, wide, high: Rect.sized(x * 10.0, y * 10.0, wide * 10.0, high * 10.0),
    PLACE, PLACE, st.integers(1, 5), st.integers(1, 5),
)  # fmt: skip


def squares(rect: Rect) -> set[tuple[int, int]]:
    """The squares of 10 mm that a rectangle on their grid is made of."""
    return {(x, y) for x in range(12) for y in range(12) if rect.holds(Rect.sized(x * 10.0, y * 10.0, 10.0, 10.0))}


@given(RECTS, RECTS)
def test_what_is_outside_another_is_in_parts_that_share_nothing(box, other):
    parts = [squares(part) for part in _without(box, other)]
    assert set().union(*parts) == squares(box) - squares(other)
    assert sum(map(len, parts)) == len(set().union(*parts))


@given(RECTS, st.lists(RECTS, max_size=5))
def test_a_box_is_shown_where_every_square_of_it_is_in_some_window(box, windows):
    shown = set().union(*map(squares, windows))
    assert _covered(box, [SimpleNamespace(window=window) for window in windows]) == (squares(box) <= shown)


def test_a_line_without_width_is_shown_where_windows_meet_along_it():
    line = Rect(0.0, 10.0, 30.0, 10.0)
    below, beside = Rect(0.0, 0.0, 20.0, 10.0), Rect(20.0, 5.0, 40.0, 30.0)
    assert _covered(line, [SimpleNamespace(window=each) for each in (below, beside)])


EDGE = Rect(100.0, 0.0, 112.0, 500.0)  # of a frame, upright, with 6 mm kept off it on either side


@pytest.mark.parametrize(
    ("x", "low", "high", "along"),
    [
        (106.0, -100.0, 600.0, True), (101.0, 100.0, 200.0, True), (111.0, 100.0, 200.0, True),
        (100.0, 0.0, 500.0, False), (112.0, 0.0, 500.0, False), (99.0, 0.0, 500.0, False), (113.0, 0.0, 500.0, False),
        (106.0, 500.0, 600.0, False), (106.0, -100.0, 0.0, False), (106.0, 496.0, 600.0, True),
        (106.0, -100.0, 4.0, True), (106.0, -100.0, 2.0, False), (106.0, 498.0, 600.0, False),
    ],
)  # fmt: skip
def test_a_trim_line_runs_along_an_edge_inside_what_it_keeps_off_it_and_beside_some_of_it(x, low, high, along):
    assert _along((x, low, x, high), EDGE) == along
    lying = Rect(EDGE.y0, EDGE.x0, EDGE.y1, EDGE.x1)
    assert _along((low, x, high, x), lying) == along
    assert not _along((low, 250.0, high, 250.0), EDGE)  # crosses it, or lies beside it
    assert not _along((250.0, low, 250.0, high), lying)
