"""From the print to the outside of its frame, and back."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.job.frame_sizes import (
    Mat,
    Moulding,
    contents_size,
    contents_within,
    mat_shown,
    outside_size,
    window_size,
)

INCH = 25.4  # mm exactly (international yard and pound agreement, 1959)
STICK = Moulding(face=1.25 * INCH, rabbet=0.25 * INCH, allowance=0.125 * INCH)
SIXTEEN_TWENTY = (16 * INCH, 20 * INCH)


def in_inches(size: tuple[float, float]) -> tuple[float, float]:
    return size[0] / INCH, size[1] / INCH


def test_a_sixteen_by_twenty():
    # allowance 1/8, moulding 1 1/4, rabbet 1/4: G + a + 2 (m - r), common practice of framers, worked out by hand here
    assert in_inches(outside_size(SIXTEEN_TWENTY, STICK)) == pytest.approx((18.125, 22.125))


def test_without_an_allowance_the_outside_is_the_contents_and_two_faces_less_the_lips():
    tight = Moulding(face=1.25 * INCH, rabbet=0.25 * INCH, allowance=0.0)
    assert in_inches(outside_size(SIXTEEN_TWENTY, tight)) == pytest.approx((18.0, 22.0))  # 16 + 2 (1 1/4 - 1/4)


def test_a_mat_covers_a_quarter_inch_of_the_print_and_adds_its_sides():
    # a window of 15.5 x 19.5 for a 16 x 20 print (common practice of framers: 1/4 in an edge); 2, 2 1/4, 3, 2 1/2 from
    # the top one round by the right: 15 1/2 + 4 3/4 and 19 1/2 + 5
    mat = Mat(sides=(2 * INCH, 2.25 * INCH, 3 * INCH, 2.5 * INCH))
    contents = contents_size(SIXTEEN_TWENTY, mat)
    assert in_inches(contents) == pytest.approx((20.25, 24.5))
    assert in_inches(window_size(contents, mat)) == pytest.approx((15.5, 19.5))


def test_without_a_mat_the_print_is_what_lies_in_the_rabbet():
    assert contents_size(SIXTEEN_TWENTY, None) == SIXTEEN_TWENTY


lengths = st.floats(min_value=1.0, max_value=2000.0)


@given(lengths, lengths, lengths, st.floats(min_value=0.0, max_value=20.0), st.floats(min_value=0.0, max_value=10.0))
def test_from_contents_to_outside_and_back_is_where_it_began(width, height, face, rabbet, allowance):
    stick = Moulding(face=face, rabbet=rabbet, allowance=allowance)
    back = contents_within(outside_size((width, height), stick), stick)
    assert back == pytest.approx((width, height), abs=1e-9)


def test_what_the_lip_leaves_to_see_of_a_mat():
    """Worked out by hand here: of each side, as of 2 1/2 in, the lip hides 1/4 in, less half of 1/8 in of play."""
    mat = Mat(sides=(2.5 * INCH, 2.25 * INCH, 3 * INCH, 2 * INCH))
    shown = (2.3125 * INCH, 2.0625 * INCH, 2.8125 * INCH, 1.8125 * INCH)
    assert mat_shown(mat, STICK) == pytest.approx(shown)
    assert mat_shown(mat, None) == pytest.approx(shown)  # the usual rabbet and play, which that stick has


@given(st.floats(10, 100), st.floats(20, 200))
def test_moulding_shown_mat_and_window_make_up_the_outside(face, side):
    stick, mat = Moulding(face=face + 10), Mat(sides=(side,) * 4)
    contents = contents_size((300.0, 200.0), mat)
    window = window_size(contents, mat)
    shown = mat_shown(mat, stick)[0]
    assert window[0] + 2 * (shown + stick.face) == pytest.approx(outside_size(contents, stick)[0])
