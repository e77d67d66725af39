"""A wire on two fixings: worked examples, and the drop found again by letting the frame sink as far as it can."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from templates_gen.hanging.wire import drop_at_two, drop_at_two_limits
from templates_gen.job.model import Hanger
from tests.jobs import frame

INCH = 25.4  # mm exactly (international yard and pound agreement, 1959)


def wire(apart: float, separation: float, depth: float) -> Hanger:
    return Hanger(kind="wire", apart=apart, ring_separation=separation, ring_depth=depth)


# Rings D apart, wire L long, fixings s apart: it rises h1 = sqrt(L^2 - D^2) / 2 above the rings on one fixing and
# h2 = sqrt((L - s)^2 - (D - s)^2) / 2 on two.  Plane geometry, worked out by hand here.
EXAMPLES = [  # scale in mm, D, s, h1, h2, h1 - h2
    (1.0, 400.0, 100.0, 78.899, 68.739, 10.160),  # L = 430 mm
    (1.0, 400.0, 200.0, 78.899, 56.789, 22.110),  # L = 430 mm
    (INCH, 16.0, 6.0, 3.544, 2.839, 0.705),  # L = 17.5 in
]


@pytest.mark.parametrize(("scale", "separation", "apart", "one", "two", "rise"), EXAMPLES)
def test_the_frame_hangs_higher_on_two_fixings(scale, separation, apart, one, two, rise):
    depth = 150.0 * scale
    drop_at_one = depth - one * scale
    found = drop_at_two(wire(apart * scale, separation * scale, depth), drop_at_one)
    assert (depth - found) / scale == pytest.approx(two, abs=1.5e-3)
    assert (found - drop_at_one) / scale == pytest.approx(rise, abs=1.5e-3)


def test_fixings_in_one_place_are_one_fixing():
    assert drop_at_two(wire(0.0, 400.0, 150.0), 71.0) == pytest.approx(71.0)


def test_a_measured_drop_goes_before_one_worked_out():
    measured = Hanger(kind="wire", apart=100.0, ring_separation=400.0, ring_depth=150.0, drop_at_two=90.0)
    assert drop_at_two(measured, 71.0) == 90.0


@pytest.mark.parametrize("missing", ["apart", "ring_separation", "ring_depth", "the drop on one"])
def test_it_is_not_known_when_a_size_is_missing(missing):
    sizes = {"apart": 100.0, "ring_separation": 400.0, "ring_depth": 150.0}
    hanger = Hanger(kind="wire", **{name: value for name, value in sizes.items() if name != missing})
    assert drop_at_two(hanger, None if missing == "the drop on one" else 71.0) is None


def wire_needed(shift: float, under: float, separation: float, apart: float) -> float:
    """How long a wire has to be for rings so far under the fixings, the frame level and shifted sideways."""
    half_rings, half = separation / 2, apart / 2
    left = math.hypot(half_rings - half - shift, under)
    right = math.hypot(half_rings - half + shift, under)
    return left + apart + right


def lowest(wire_length: float, separation: float, apart: float, shift: float) -> float:
    """How far under the fixings the rings come to lie before the wire is taut, by halving."""
    low, high = 0.0, wire_length
    for _ in range(100):
        middle = (low + high) / 2
        if wire_needed(shift, middle, separation, apart) <= wire_length:
            low = middle
        else:
            high = middle
    return low


@given(
    st.floats(min_value=100.0, max_value=1500.0),
    st.floats(min_value=0.02, max_value=0.8),
    st.floats(min_value=0.05, max_value=0.95),
)
def test_the_drop_is_where_the_frames_weight_has_sunk_as_far_as_the_wire_lets_it(separation, rise, share):
    """The potential energy of a level frame is least where its rings are lowest: no formula of ours is used."""
    apart, one = share * separation, rise * separation
    depth = one + 30.0
    wire_length = 2 * math.dist((0.0, one), (separation / 2, 0.0))  # on one fixing: two straight halves
    shifts = [step / 20 * (separation - apart) / 2 for step in range(-10, 11)]
    reached = {
        shift: lowest(wire_length, separation, apart, shift)
        for shift in shifts
        if wire_needed(shift, 0.0, separation, apart) <= wire_length
    }
    best = max(reached.values())
    assert reached[0.0] == pytest.approx(best, abs=1e-9)  # it hangs in the middle
    found = drop_at_two(wire(apart, separation, depth), 30.0)
    assert depth - found == pytest.approx(best, abs=1e-9)


@given(
    st.floats(min_value=100.0, max_value=1500.0),
    st.floats(min_value=0.02, max_value=0.8),
    st.floats(min_value=0.0, max_value=1.0),
    st.floats(min_value=0.0, max_value=1.0),
)
def test_fixings_farther_apart_lift_the_frame_but_never_above_its_rings(separation, rise, one, two):
    assume(one < two)
    depth = rise * separation + 30.0
    drops = [drop_at_two(wire(share * separation, separation, depth), 30.0) for share in (one, two)]
    assert 30.0 - 1e-9 <= drops[0] <= drops[1] + 1e-9
    assert drops[1] <= depth + 1e-9


@given(
    st.floats(min_value=100.0, max_value=1500.0),
    st.floats(min_value=0.001, max_value=5.0),
    st.floats(min_value=0.01, max_value=1.0),
)
def test_two_fixings_lift_a_frame_and_never_by_more_than_half_their_distance(separation, rise, share):
    """Where the frame's weight has sunk to, by no formula of ours, is within what two measured drops are held to."""
    apart, one = share * separation, rise * separation
    wire_length = 2 * math.dist((0.0, one), (separation / 2, 0.0))
    two = lowest(wire_length, separation, apart, 0.0)
    hung = frame(height=2 * one + 500.0, drop=30.0, hanger=Hanger(kind="wire", apart=apart))
    limits = drop_at_two_limits(hung)
    assert limits == (30.0, 30.0 + apart / 2)
    assert limits[0] - 1e-9 <= 30.0 + one - two <= limits[1] + 1e-9


def test_with_the_rings_known_there_is_one_drop_on_two():
    # the first of the examples: 150 - 68.739, whatever was measured on two
    measured = Hanger(kind="wire", apart=100.0, ring_separation=400.0, ring_depth=150.0, drop_at_two=90.0)
    limits = drop_at_two_limits(frame(drop=150.0 - 78.899, hanger=measured))
    assert limits == pytest.approx((81.261, 81.261), abs=1.5e-3)


def test_without_a_drop_on_one_or_a_distance_there_is_nothing_to_hold_to():
    assert drop_at_two_limits(frame(drop=None, hanger=Hanger(kind="wire", apart=100.0))) is None
    assert drop_at_two_limits(frame(hanger=Hanger(kind="wire"))) is None
