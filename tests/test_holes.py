"""A new hole that would break into the old one: hooks wider apart, a longer hook, another way; by search and geometry.

10 mm between two holes is the least (common practice, no source): more than 5 diameters of these fixings.
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.correcting.holes import Cure, Cured, cured
from templates_gen.correcting.moves import Limits, correction
from templates_gen.correcting.poses import Pose
from templates_gen.findings.hanging import HOOK_MARGIN
from templates_gen.findings.wire import RING_ROOM
from templates_gen.model import Fixing, Hanger
from templates_gen.planning import plan_wall
from tests.jobs import frame, job

LEAST = 10.0
OFF = st.floats(min_value=-12.0, max_value=12.0)


def done(hanger: Hanger, up: float, right: float, fixing: Fixing | None = None, unit: str = "mm") -> Cured:
    """What is to be done about a level frame of 400 x 500 found so far off its place."""
    of = plan_wall(job(frame("A", drop=80.0, hanger=hanger, fixing=fixing or Fixing()))).frames[0]
    return cured(correction(Pose(of, 0.0, up, right), Limits(0.01, 0.0), 0.0), unit)


def rise(separation: float, length: float, apart: float) -> float:
    """Of a wire so long over fixings so far apart: h = ½ √((L − s)² − (D − s)²), plane statics."""
    return math.sqrt((length - apart) ** 2 - (separation - apart) ** 2) / 2


@given(st.integers(20, 90), st.sampled_from([0, 8, 16]), OFF, OFF, st.sampled_from([("mm", 1.0), ("in", 25.4 / 16)]))
def test_a_wire_is_hung_on_hooks_as_little_wider_as_keeps_all_holes_apart(separation, apart, up, right, tape):
    unit, step = tape
    wire = Hanger(kind="wire", ring_separation=float(separation), ring_depth=150.0, apart=apart or None,
                  drop_at_two=80.0 if apart else None)  # fmt: skip
    length = apart + math.hypot(separation - apart, 2 * 70.0)  # it rises 150 − 80
    ways = {}
    for number in range(1, 90):
        wide = apart + 2 * number * step
        if wide <= separation - 2 * RING_ROOM + 1e-9:
            lower = 70.0 - rise(separation, length, wide)
            ways[wide] = [complex(-right - number * step, -up - lower), complex(-right + number * step, -up - lower)]
    enough = [(wide, moves) for wide, moves in ways.items() if min(map(abs, moves)) >= LEAST]
    found = done(wire, up, right, unit=unit)
    moves = [complex(move.right, move.up) for move in found.correction.moves]
    if not moves or abs(complex(right, up)) >= LEAST or not enough:
        assert found.apart is None
        assert moves == [complex(-right, -up)] * (len(moves) and (2 if apart else 1))
    else:
        assert found.apart == pytest.approx(enough[0][0])
        assert moves == pytest.approx(enough[0][1])
        assert [(move.old, move.nail) for move in found.correction.moves] == (
            [("A left", "A left"), ("A right", "A right")] if apart else [("A", "A left"), ("A", "A right")]
        )
        assert found.cures == (Cure(""), Cure(""))


@given(OFF, OFF, st.sampled_from([Fixing(), Fixing(kind="hook", below=22.0)]), st.floats(8.0, 60.0))
def test_a_longer_hook_has_its_nail_just_clear_of_the_old_hole_as_long_as_the_frame_hides_it(up, right, fixing, drop):
    pair = Hanger(kind="rings", left=60.0, right=60.0, drop_left=drop, drop_right=60.0)
    found = done(pair, up, right, fixing)
    assert len(set(found.cures)) <= 1  # both alike: they move alike
    for cure in found.cures:
        seat = complex(-right, -up - fixing.rise)  # of the new hook, from the old nail
        below = math.sqrt(max(0.0, LEAST**2 - right**2)) - seat.imag
        if abs(complex(right, up)) >= LEAST:
            assert cure == Cure("")
        elif drop - below >= HOOK_MARGIN:
            assert cure.way == "hook" and abs(seat + 1j * cure.at_least) == pytest.approx(LEAST)
            assert (seat + 1j * cure.at_least).imag >= 0.0
        else:
            assert cure == Cure("fill")


@pytest.mark.parametrize(
    ("hanger", "fixing", "cure"),
    [
        (Hanger(kind="keyholes", left=60.0, right=60.0), Fixing(), Cure("fill")),
        (Hanger(kind="rings", left=60.0, right=60.0), Fixing(kind="screw"), Cure("fill")),
        (Hanger(kind="cleat", left=60.0, right=60.0), Fixing(kind="screw"), Cure("rail", LEAST)),
        # a screw of 4 mm: 5 x 4 = 20, our own design
        (Hanger(kind="cleat", left=60.0, right=60.0), Fixing(kind="screw", diameter=4.0), Cure("rail", 20.0)),
    ],
)
def test_where_no_hook_holds_the_old_hole_is_filled_or_the_rail_gets_others(hanger, fixing, cure):
    assert done(hanger, 3.0, 0.0, fixing).cures == (cure, cure)
