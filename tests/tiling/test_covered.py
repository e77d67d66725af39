"""Sheets taped without being cut: what is hidden, and where the crossing lines stand.  Worked out by hand here.

A left margin of 7 mm, a lower one of 13 mm, 25 mm shown by both sheets; 2 mm that a paper's edge may be off, lines that
show 10 mm on either side, rules that end 13 mm inside and 3 mm of air.
"""

import math

import pytest

from templates_gen.base.geometry import Rect
from templates_gen.tiling.cells import Clearance
from templates_gen.tiling.covered import covered, cross_points, uncut_clearance

HIDES = covered([Rect(7.0, 6.0, 200.0, 290.0), Rect(5.0, 13.0, 200.0, 290.0)], 25.0)
CUT = Clearance(1.0, 2.0, 3.0, 4.0)


@pytest.mark.parametrize(("upright", "deep"), [(True, 7 + 2), (False, 13 + 2)])
def test_what_the_next_margin_hides_and_how_large_the_crossing_lines_are(upright, deep):
    assert HIDES.depth(upright) == deep
    assert HIDES.beyond(upright) == 12.5 + deep
    assert HIDES.reach(upright) == deep / 2 + 10
    assert HIDES.held(upright) == pytest.approx(math.sqrt(2) * math.hypot(10, deep + 10))


def test_whole_things_keep_off_what_is_hidden_and_the_lines_beside_it():
    assert uncut_clearance(CUT, HIDES) == Clearance(1.0, 2.0, 21.5 + 10, 27.5 + 10 + 4.0)


@pytest.mark.parametrize(
    ("length", "places"),
    [
        (300.0, [30.5, 300 - 14.5 - 2 - 37.5]),  # 13 + 3 + 14.5 from the foot, clear of the upper join at the top
        (116.0, [30.5, 62.0]),  # just apart: 2 · 14.5 + 2
        (115.5, [46.0]),  # no longer: one in the middle
        (82.6, [29.55]),
        (82.4, []),  # more than 2 mm too short
    ],
)
def test_the_lines_cross_near_both_ends_of_an_upright_join_or_once_or_not_at_all(length, places):
    found = cross_points((500.0, 0.0, 500.0, length), HIDES, CUT)
    assert found == [(500.0 - 12.5 - 4.5, pytest.approx(place)) for place in places]


def test_on_a_level_join_they_keep_what_is_clear_at_its_right():
    found = cross_points((0.0, 500.0, 300.0, 500.0), HIDES, CUT)
    assert found == [(13 + 3 + 17.5, 500 - 12.5 - 7.5), (300 - 17.5 - 2 - 3.0, 500 - 12.5 - 7.5)]
