"""Strokes: what is left of lines around holes, and dashes counted from the wall's origin."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.base.geometry import Rect
from templates_gen.drawing.items import Line
from templates_gen.drawing.sizes import NAIL_CLEAR
from templates_gen.drawing.strokes import inside, nail_holes, phased, unbroken

PLACE = st.floats(-500.0, 500.0)


def test_a_nail_keeps_lines_as_far_away_as_its_mark_needs_on_every_side():
    assert nail_holes([(100.0, 200.0)]) == [
        Rect(100.0 - NAIL_CLEAR, 200.0 - NAIL_CLEAR, 100.0 + NAIL_CLEAR, 200.0 + NAIL_CLEAR)
    ]


def test_a_line_is_left_out_in_holes_and_nowhere_else():
    line = Line(0.0, 0.0, 100.0, 0.0, 0.5)
    left = list(
        unbroken([line], [Rect(20.0, -5.0, 30.0, 5.0), Rect(25.0, -5.0, 40.0, 5.0), Rect(60.0, 1.0, 70.0, 5.0)])
    )
    assert [(part.x0, part.x1) for part in left] == [(0.0, 20.0), (40.0, 100.0)]
    assert [(part.x0, part.x1) for part in inside(line, Rect(20.0, -5.0, 30.0, 5.0))] == [pytest.approx((20.0, 30.0))]
    assert list(inside(line, Rect(20.0, 0.0, 30.0, 5.0))) == []  # along the rectangle's side is outside


@given(PLACE, PLACE, st.floats(10.0, 300.0), st.sampled_from([0.0, 30.0, 60.0, 90.0]), st.floats(0.1, 0.9))
def test_dashes_of_a_line_cut_anywhere_meet(x, y, length, angle, share):
    """The second part begins where the first part's pattern has come to."""
    dx, dy = length * math.cos(math.radians(angle)), length * math.sin(math.radians(angle))
    dash, whole = (6.0, 2.0), 8.0
    cut = x + share * dx, y + share * dy
    one = phased(Line(x, y, *cut, 0.5, dash))
    two = phased(Line(*cut, x + dx, y + dy, 0.5, dash))
    off = (one.phase + share * length - two.phase) / whole
    assert off == pytest.approx(round(off), abs=1e-6)
