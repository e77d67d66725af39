"""How a wire carries a frame: worked numbers, and what has to be true of every wire."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from templates_gen.hanging import statics


def wire_rise(separation: float, length: float, apart: float = 0.0) -> float:
    """Of a wire so long, over its rings: h = ½ √((L − s)² − (D − s)²), plane statics."""
    return math.sqrt((length - apart) ** 2 - (separation - apart) ** 2) / 2


# Rings D apart, wire L long, fixings s apart; lengths in mm, forces in parts of the weight.  By h = ½ √((L − s)² −
# (D − s)²), sin θ = 2 h / (L − s), T = 1 / (2 sin θ) and T (1 − cos θ): plane statics, worked out by hand here.
HUNG = [  # D, L, s, rise, angle, tension, inward pull of a fixing, all of its pull
    (400.0, 430.0, 0.0, 78.899, 21.53, 1.363, 0.0, 1.0),
    (400.0, 430.0, 100.0, 68.739, 24.62, 1.200, 0.109, 0.512),
    (400.0, 430.0, 200.0, 56.789, 29.59, 1.013, 0.132, 0.517),
]


@pytest.mark.parametrize(("separation", "length", "apart", "rise", "angle", "tension", "inward", "pull"), HUNG)
def test_a_hung_wire(separation, length, apart, rise, angle, tension, inward, pull):
    wire = statics.HungWire(separation, wire_rise(separation, length, apart), apart)
    assert wire.length == pytest.approx(length)
    assert wire.rise == pytest.approx(rise, abs=6e-4)
    assert wire.angle == pytest.approx(angle, abs=6e-3)
    forces = wire.tension, wire.fixing_load[1], math.hypot(*wire.fixing_load)
    assert forces == pytest.approx((tension, inward, pull), abs=6e-4)


# T / W = 1 / (2 sin θ), worked out by hand here
@pytest.mark.parametrize(
    ("angle", "expected"),
    [(60, 0.577), (45, 0.707), (30, 1.0), (20, 1.462), (15, 1.932), (10, 2.879), (5, 5.737), (2, 14.33)],
)
def test_the_tension_of_a_wire_at_an_angle(angle, expected):
    wire = statics.HungWire(2.0, math.tan(math.radians(angle)))
    assert wire.tension == pytest.approx(expected, abs=6e-4 if angle > 2 else 5e-3)


def test_a_wire_that_rises_half_way_to_the_top_of_a_frame():
    # frame 600 high, rings a third down at 200 and 400 apart, the wire up to 100: L = 2 √(200² + 100²) = 447.2 and
    # θ = atan(100 / 200) = 26.6°: worked out by hand here
    assert statics.HungWire(400.0, 100.0).length == pytest.approx(447.2, abs=0.05)
    assert statics.HungWire(400.0, 100.0).angle == pytest.approx(26.6, abs=0.05)


def test_a_wire_at_sixty_degrees_over_thirds():
    # rings at the edges of a frame F wide, fixings F / 3 apart: L = F / 3 + (2 F / 3) / cos 60° = 5 F / 3, and it
    # rises F tan 60° / 3 = 0.577 F: worked out by hand here
    rise = wire_rise(300.0, 500.0, 100.0)
    assert rise / 300.0 == pytest.approx(0.577, abs=6e-4)
    assert statics.HungWire(300.0, rise, 100.0).angle == pytest.approx(60.0)


# c = D (D − s) / (4 h) for D = 400, L = 430: worked out by hand here
@pytest.mark.parametrize(("apart", "expected"), [(0.0, 507.0), (100.0, 436.4), (200.0, 352.2), (390.0, 51.6)])
def test_how_far_under_its_rings_the_centre_of_mass_has_to_lie(apart, expected):
    wire = statics.HungWire(400.0, wire_rise(400.0, 430.0, apart), apart)
    assert statics.least_mass_depth(wire) == pytest.approx(expected, abs=0.06)


def test_how_much_slip_shows():
    # one fixing, h = 78.899, c = 100: the frame turns by 0.6° about the fixing when that is off the middle by
    # e = 178.899 tan 0.6° = 1.873; on the ellipse its parts then differ by D e / (L / 2) = 2 · 1.743: by hand here
    wire = statics.HungWire(400.0, wire_rise(400.0, 430.0))
    assert statics.slip_to_tilt(wire, 100.0, 0.6) == pytest.approx(1.743, abs=2e-3)


# Wires of all kinds: rings 100 to 1500 apart, the wire from nearly flat to steep, fixings together or nearly as far
# apart as the rings.

SEPARATION = st.floats(min_value=100.0, max_value=1500.0)
SLOPE = st.floats(min_value=0.02, max_value=1.5)
SHARE = st.one_of(st.just(0.0), st.floats(min_value=0.02, max_value=0.95))
DEPTH = st.floats(min_value=0.02, max_value=3.0)


def hung(separation: float, slope: float, share: float) -> statics.HungWire:
    apart = share * separation
    return statics.HungWire(separation, slope * (separation - apart) / 2, apart)


@given(SEPARATION, SLOPE, SHARE, SHARE)
def test_the_same_wire_on_other_fixings_is_as_long(separation, slope, one, two):
    wire = hung(separation, slope, one)
    moved = statics.moved_apart(wire, two * separation)
    assert moved.length == pytest.approx(wire.length, rel=1e-9)
    assert moved.rise == pytest.approx(wire_rise(separation, wire.length, two * separation), rel=1e-6)


@given(SEPARATION, SLOPE, st.floats(min_value=5.0, max_value=85.0))
def test_fixings_just_far_enough_apart_make_the_wire_just_steep_enough(separation, slope, angle):
    wire = hung(separation, slope, 0.0)
    apart = statics.least_apart(separation, wire.length, angle)
    assert 0.0 <= apart < separation
    reached = statics.moved_apart(wire, apart).angle
    assert reached == pytest.approx(angle, abs=1e-5) if apart else reached >= angle - 1e-5


@given(SEPARATION, SLOPE, SHARE, DEPTH)
def test_the_two_forms_of_the_criterion_agree(separation, slope, share, depth):
    wire = hung(separation, slope, share)
    limit = statics.least_mass_depth(wire)
    assume(abs(depth - 1) > 1e-6)
    assert (wire.angle > statics.steady_angle(separation, depth * limit)) == (depth > 1)


@given(SEPARATION, SLOPE, SHARE, SHARE)
def test_fixings_farther_apart_are_steeper_steadier_and_pulled_less_by_the_wire(separation, slope, one, two):
    assume(two - one > 1e-3)
    near = hung(separation, slope, one)
    far = statics.moved_apart(near, two * separation)
    assert far.rise < near.rise and far.angle > near.angle and far.tension < near.tension
    assert statics.least_mass_depth(far) < statics.least_mass_depth(near)


def test_rings_straight_under_their_fixings_are_always_steady():
    wire = statics.HungWire(400.0, 15.0, 400.0)
    assert (wire.angle, wire.tension, wire.fixing_load[0]) == pytest.approx((90.0, 0.5, 0.5))
    assert statics.least_mass_depth(wire) == 0.0


def test_no_wire_steadies_a_frame_whose_mass_lies_at_its_rings_or_over_them():
    assert statics.steady_angle(400.0, 0.0) == pytest.approx(90.0)
    assert statics.steady_angle(400.0, -10.0) > 90.0
