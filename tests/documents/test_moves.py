"""The way from an old hole to a new one, exactly, by a model of its own: a rigid frame, its points complex numbers.

A frame was found turned by φ with the middle of its top edge at m.  A point p of it (from that middle) is then on the
wall at m + p e^(iφ), and should be at p from the middle's place on the plan.
"""

import cmath
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.plan import Hung, plan_wall
from templates_gen.documents.correcting.moves import Correction, Limits, correction
from templates_gen.documents.correcting.poses import Pose
from templates_gen.job.model import Fixing, Hanger
from tests.jobs import frame, group, job

EVERY = Limits(0.0, 0.0)
TURN = st.floats(min_value=-0.1, max_value=0.1).filter(lambda turn: abs(turn) > 1e-6)
OFF = st.floats(min_value=-30.0, max_value=30.0).filter(lambda off: abs(off) > 1e-3)


def hung(hanger: Hanger, fixing: Fixing | None = None, drop: float = 80.0) -> Hung:
    item = frame("A", 500.0, 400.0, drop, hanger=hanger, fixing=fixing or Fixing())
    return plan_wall(job(item, frame("B"), group=group((("A", "B"),)))).frames[0]


def ways(done: Correction) -> list[complex]:
    return [complex(move.right, move.up) for move in done.moves]


@given(TURN, OFF, OFF, st.sampled_from(["rings", "keyholes", "plates"]))
def test_fixings_that_turn_with_their_frame_each_go_to_their_own_place(turn, up, right, kind):
    pair = Hanger(kind=kind, left=60.0, right=90.0, drop_left=70.0, drop_right=74.0)
    of = hung(pair, Fixing(kind="hook", below=22.0))
    points = [complex(-190.0, -70.0), complex(160.0, -74.0)]  # 60 and 90 from the sides of 500: worked out by hand here
    done = correction(Pose(of, turn, up, right), EVERY, 0.0)
    old = [complex(right, up) + point * cmath.exp(1j * turn) for point in points]
    assert [start + way for start, way in zip(old, ways(done), strict=True)] == pytest.approx(points)
    assert (done.by_hand, done.aside) == ("", 0.0)
    unknown = correction(Pose(of, turn, up, None), EVERY, 0.0)  # across it is taken to be right
    assert [way.real for way in ways(unknown)] == [0.0, 0.0]
    assert [way.imag for way in ways(unknown)] == [way.imag for way in ways(done)]


@given(TURN, OFF, OFF)
def test_the_screws_of_a_cleat_move_up_or_down_and_its_frame_along_it(turn, up, right):
    of = hung(Hanger(kind="cleat", left=60.0, right=90.0, screw_below=20.0), Fixing(kind="screw"))
    points = [complex(-190.0, -100.0), complex(160.0, -100.0)]  # 80 + 20 down: worked out by hand here
    done = correction(Pose(of, turn, up, right), EVERY, 0.0)
    whole = [point - complex(right, up) - point * cmath.exp(1j * turn) for point in points]
    assert ways(done) == pytest.approx([1j * way.imag for way in whole])
    assert done.by_hand == "along" and done.aside == pytest.approx((whole[0].real + whole[1].real) / 2)


@given(TURN, OFF, OFF, st.sampled_from([("wire", "slide"), ("sawtooth", "teeth")]))
def test_under_one_hook_a_frame_swings_until_its_middle_is_below_it(turn, up, right, way):
    kind, by_hand = way
    of = hung(Hanger(kind=kind))
    done = correction(Pose(of, turn, up, right), EVERY, 0.0)
    aside = 120.0 * math.tan(turn)  # where it bears: its middle is 200 − 80 lower, straight below on the wall
    old = complex(right, up) + complex(aside, -80.0) * cmath.exp(1j * turn)
    middle = complex(right, up) + complex(0.0, -200.0) * cmath.exp(1j * turn)
    assert old.real == pytest.approx(middle.real)
    assert [old + move for move in ways(done)] == pytest.approx([-80j])
    assert (done.by_hand, done.aside) == (by_hand, pytest.approx(aside) if kind == "sawtooth" else 0.0)


@pytest.mark.parametrize("turn", [0.0, 0.01])
def test_two_hooks_under_a_wire_go_alike(turn):
    of = hung(Hanger(kind="wire", apart=100.0, drop_at_two=85.0))
    done = correction(Pose(of, turn, 4.0, 7.0), EVERY, 0.0)
    assert ways(done) == [complex(-7.0, -4.0)] * 2
    assert [move.nail for move in done.moves] == ["A left", "A right"]


@pytest.mark.parametrize("hanger", [Hanger(kind="wire"), Hanger(kind="rings", left=60.0, right=60.0)])
def test_what_is_not_seen_is_left_alone(hanger):
    of, seen = hung(hanger), Limits(math.radians(0.6), 1.0)
    small = Pose(of, 0.004, 0.4, -0.4)  # the hook of a wire is 200 · 0.004 − 0.4 = 0.4 off: worked out by hand here
    assert correction(small, seen, 0.5) == Correction(small, seen, "", 0.0, ())
    for turn, up, right in ((-0.011, 0.0, 2.2), (0.0, 1.1, 0.0), (0.0, 0.0, -1.1)):
        assert not correction(Pose(of, turn, up, right), seen, 0.5).left_alone
    # the hook under a frame that shows its turn is in its place: the wire is slid, and no nail moves
    assert (correction(Pose(of, -0.011, 0.0, 2.2), seen, 0.5).moves == ()) == (hanger.kind == "wire")
