"""How a wire carries a frame, by another route to the same numbers.

Forces as vectors that have to balance, and the potential energy of the frame, whose rings may be anywhere that the
wire lets them.  Neither uses a formula of the program.
"""

import math

import numpy as np
import pytest

from templates_gen.hanging import statics
from tests.hanging.test_statics import hung, wire_rise


def random_wires(number: int) -> list[tuple[statics.HungWire, float]]:
    """Wires with a depth of the centre of mass, from nearly none to more than any wire needs."""
    rng = np.random.default_rng(20260314)
    wires = [
        hung(rng.uniform(100, 1500), rng.uniform(0.05, 1.5), rng.choice([0.0, rng.uniform(0.02, 0.95)]))
        for _ in range(number)
    ]
    return [(wire, float(rng.uniform(0.1, 2.0) * statics.least_mass_depth(wire))) for wire in wires]


def sunk(wire: statics.HungWire, shift: np.ndarray, turn: np.ndarray) -> np.ndarray:
    """How far under the fixings the middle between the rings lies when the wire is taut, by halving.

    The frame is shifted to the right and turned; the rings are then at ∓ D / 2 along its line.
    """
    across, along = wire.separation / 2 * np.cos(turn), wire.separation / 2 * np.sin(turn)
    low, high = np.zeros_like(shift), np.full_like(shift, wire.length)
    for _ in range(60):
        middle = (low + high) / 2
        left = np.hypot(shift - across + wire.apart / 2, middle + along)
        right = np.hypot(shift + across - wire.apart / 2, middle - along)
        taut = left + wire.apart + right <= wire.length
        low, high = np.where(taut, middle, low), np.where(taut, high, middle)
    return low


def energy_bends(wire: statics.HungWire) -> np.ndarray:
    """The second derivatives of the energy of a frame whose mass lies on the line of its rings, by differences.

    Rows and columns: shift in mm, turn in radians.  The energy is minus the depth, for a weight of 1.
    """
    steps = np.array([1e-3 * wire.rise, 1e-3 * min(1.0, 2 * wire.rise / wire.separation)])
    offsets = np.array([(a, b) for a in (-1, 0, 1) for b in (-1, 0, 1)]) * steps
    values = -sunk(wire, offsets[:, 0], offsets[:, 1]).reshape(3, 3)
    both = (values[2, 2] - values[2, 0] - values[0, 2] + values[0, 0]) / 4
    bends = np.array(
        [[values[2, 1] - 2 * values[1, 1] + values[0, 1], both], [both, values[1, 2] - 2 * values[1, 1] + values[1, 0]]]
    )
    return bends / np.outer(steps, steps)


def test_the_wire_rises_to_where_the_energy_is_least():
    for wire, _ in random_wires(200):
        shifts = np.linspace(-0.4, 0.4, 9) * (wire.length - wire.apart) / 2
        depths = sunk(wire, shifts, np.zeros(9))
        assert depths.argmax() == 4  # in the middle
        assert depths[4] == pytest.approx(wire.rise, abs=1e-9)


def test_the_level_position_is_steady_where_the_energy_is_least_there():
    """The two freedoms of a frame on a taut wire, the shift and the turn, and no friction."""
    seen = {True: 0, False: 0}
    for wire, depth in random_wires(400):
        bends = energy_bends(wire) + np.diag([0.0, depth])  # the mass is `depth` · cos(turn) lower than the rings
        limit = -np.linalg.det(energy_bends(wire)) / bends[0, 0]  # the depth at which the determinant is nought
        assert statics.least_mass_depth(wire) == pytest.approx(limit, rel=2e-3)
        steady = depth > statics.least_mass_depth(wire)
        if abs(depth / limit - 1) > 5e-3:
            assert bool(np.linalg.eigvalsh(bends).min() > 0) == steady
            assert (wire.angle > statics.steady_angle(wire.separation, depth)) == steady
            seen[steady] += 1
    assert min(seen.values()) > 100


def test_all_forces_balance():
    """Rings and fixings as points, forces as vectors: what each needs, solved for and not looked up."""
    for wire, _ in random_wires(200):
        ring, fixing = np.array([-wire.separation / 2, 0.0]), np.array([-wire.apart / 2, wire.rise])
        left = (fixing - ring) / np.linalg.norm(fixing - ring)
        right = left * [-1, 1]
        pulls = np.linalg.solve(np.column_stack([left, right]), [0.0, 1.0])  # both carry the weight 1
        assert pulls == pytest.approx([wire.tension] * 2, rel=1e-9)
        on_left = -pulls[0] * left + (pulls[1] * np.array([1.0, 0.0]) if wire.apart else -pulls[1] * right)
        assert on_left == pytest.approx([wire.fixing_load[1], -wire.fixing_load[0]], abs=1e-9)


def tilt_after(wire: statics.HungWire, depth: float, slip: float) -> float:
    """How far (radians) a frame turns when its wire is held after a slip, by halving: where its mass lies lowest.

    The left ring may then only be on a circle about the left fixing, the right one on one about the right.
    """
    half = (wire.length - wire.apart) / 2
    turns = np.linspace(-0.05, 0.05, 20001)
    across, along = wire.separation / 2 * np.cos(turns), wire.separation / 2 * np.sin(turns)
    # the middle's place is that of a point at distance `half - slip` from one centre and `half + slip` from the other
    one = np.stack([across - wire.apart / 2, -along])
    gap = 2 * np.hypot(*one)
    near = (gap**2 + (half - slip) ** 2 - (half + slip) ** 2) / (2 * gap)
    off = np.sqrt((half - slip) ** 2 - near**2)
    down = one[1] - near * one[1] / (gap / 2) + off * np.abs(one[0]) / (gap / 2)
    low = np.argmax(down + depth * np.cos(turns))
    return float(turns[low])


@pytest.mark.parametrize("apart", [0.0, 100.0, 250.0])
@pytest.mark.parametrize("depth", [60.0, 200.0])
def test_a_slip_turns_the_frame_as_far_as_its_energy_says(apart, depth):
    wire = statics.HungWire(400.0, wire_rise(400.0, 430.0, apart), apart)
    slip = statics.slip_to_tilt(wire, depth, 0.6)
    assert abs(math.degrees(tilt_after(wire, depth, slip))) == pytest.approx(0.6, rel=0.02)
