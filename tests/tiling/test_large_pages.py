"""The size of pages made to measure, by itself: worked out by hand here, the pages that are needed given by a function.

A point is 1/72 in (ISO 32000-1, 8.3.2.3).  A page of a roll or in one piece has sides of 5 m at most, our own limit.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.tiling.large_pages import fitted
from tests.jobs import paper

POINT = 25.4 / 72
ONE = replace(paper("a4", overlap=12.0, margin=(1.0, 2.0, 3.0, 4.0)), kind="one piece", width=5000.0, height=5000.0)
ROLL = replace(ONE, kind="roll", width=610.0)


def points(mm: float) -> int:
    return round(mm / POINT)


def needs(width: float, height: float, pages: int = 1):
    """What says that a picture goes on one page from this size on, and on `pages` more from half its height on."""

    def count(on, enough) -> int:
        if on.width >= width and on.height >= height:
            return 1
        if on.width >= width and on.height >= height / 2:
            return 1 + pages
        raise InputError("paper", "too small", "larger paper")

    return count


def test_a_page_in_one_piece_is_what_it_shows_with_its_margins_and_an_overlap_in_whole_points():
    """700 mm and 4 and 2 of margin and 12 of overlap, 400 mm and 1 and 3 and 12."""
    page = fitted(ONE, needs(718.0, 416.0), Rect(100.0, 50.0, 800.0, 450.0))
    assert (points(page.width), points(page.height)) == (math.ceil(718.0 / POINT), math.ceil(416.0 / POINT))
    assert page.width == points(page.width) * POINT and page.height == points(page.height) * POINT


def test_a_page_in_one_piece_is_no_larger_than_it_has_to_be_where_another_size_is_likely():
    page = fitted(ONE, needs(500.0, 300.0), Rect(0.0, 0.0, 4990.0, 100.0))  # 5008 mm: longer than any page
    assert (points(page.width), points(page.height)) == (math.ceil(500.0 / POINT), math.ceil(300.0 / POINT))


def test_of_a_roll_only_the_length_is_fitted_and_sheets_stay_as_they_are():
    page = fitted(ROLL, needs(600.0, 850.0), Rect(0.0, 0.0, 580.0, 834.0))
    assert page.width == 610.0 and points(page.height) == math.ceil(850.0 / POINT)
    sheets = paper("a4")
    assert fitted(sheets, needs(1.0, 1.0), Rect(0.0, 0.0, 50.0, 50.0)) is sheets


def test_a_page_is_never_smaller_for_more_pages():
    page = fitted(ROLL, needs(600.0, 900.0), Rect(0.0, 0.0, 580.0, 434.0))  # half of it is likely, on two pages
    assert points(page.height) == math.ceil(900.0 / POINT)
    high = fitted(ROLL, needs(600.0, 6000.0), Rect(0.0, 0.0, 580.0, 5000.0))  # longer than a roll is: on two
    assert points(high.height) == math.ceil(3000.0 / POINT)


def test_what_fits_no_page_is_refused():
    with pytest.raises(InputError, match="too small"):
        fitted(ROLL, needs(611.0, 500.0), Rect(0.0, 0.0, 600.0, 484.0))


@given(st.floats(150.0, 4900.0), st.floats(150.0, 4900.0), st.floats(20.0, 4950.0), st.floats(20.0, 4950.0))
def test_both_sides_are_the_least_points_that_are_enough_whatever_is_likely(width, height, wide, high):
    page = fitted(ONE, needs(width, height), Rect(0.0, 0.0, wide, high))
    shown = wide + 18.0, high + 16.0
    if all(
        needed <= math.ceil(side / POINT) * POINT <= 5000.0 for needed, side in zip((width, height), shown, strict=True)
    ):
        assert (points(page.width), points(page.height)) == tuple(math.ceil(side / POINT - 1e-6) for side in shown)
    else:
        assert (points(page.width), points(page.height)) == (math.ceil(width / POINT), math.ceil(height / POINT))
