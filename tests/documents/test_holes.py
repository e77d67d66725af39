"""A new hole that would break into the old one: the wire first, then other holes, a hook that is sold, another way.

10 mm between two holes is the least (common practice, no source): more than 5 diameters of these fixings.
"""

import math

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.checks.hanging import HOOK_MARGIN
from templates_gen.documents.correcting.changing import checked, passes
from templates_gen.documents.correcting.holes import Cure, Cured, cured, hung_wider
from templates_gen.documents.correcting.moves import Correction, Limits, correction
from templates_gen.documents.correcting.poses import Pose
from templates_gen.hanging.hooks import SOLD
from templates_gen.job.model import Fixing, Hanger, Studs, Wall
from tests.jobs import frame, job

LEAST = 10.0
OFF = st.floats(min_value=-12.0, max_value=12.0)


def hung(hanger: Hanger, fixing: Fixing | None = None, drop: float | None = 80.0, unit: str = "mm", **more) -> Plan:
    """One frame of 400 x 500."""
    return plan_wall(job(frame("A", drop=drop, hanger=hanger, fixing=fixing or Fixing()), unit=unit, **more))


def wanted(plan: Plan, up: float, right: float) -> Correction:
    """What its nails want, when the frame was found level and so far off its place."""
    return correction(Pose(plan.frames[0], 0.0, up, right), Limits(0.01, 0.5), 0.0)


def done(plan: Plan, up: float, right: float) -> Cured:
    return cured(wanted(plan, up, right), checked(plan))


def rise(separation: float, length: float, apart: float) -> float:
    """Of a wire so long over fixings so far apart: h = ½ √((L − s)² − (D − s)²), plane statics."""
    return math.sqrt((length - apart) ** 2 - (separation - apart) ** 2) / 2


@pytest.mark.parametrize("known", [True, False], ids=["rings known", "drop only"])
@pytest.mark.parametrize("apart", [None, 100.0], ids=["one", "two"])
@pytest.mark.parametrize("up", [-12.0, -4.0, 4.0, 12.0])
def test_a_frame_on_a_wire_that_is_only_too_high_or_low_keeps_its_nails(up, apart, known):
    """D = 320, and with 80 of 150 mm the wire rises 70 mm over its fixings: the frame goes down with a longer wire."""
    rings = {"ring_separation": 320.0, "ring_depth": 150.0} if known else {}
    two = {"apart": apart, "drop_at_two": 80.0} if apart else {}
    found = done(hung(Hanger(kind="wire", **rings, **two), drop=None if apart else 80.0), up, 0.0)
    assert found.correction.moves == () and not found.left_alone and found.correction.by_hand == "slide"
    assert found.wire.longer == pytest.approx(-up)
    s = apart or 0.0
    length = [s + math.hypot(320.0 - s, 2 * h) for h in (70.0, 70.0 + up)]
    assert found.wire.wire == (pytest.approx(length[1] - length[0]) if known else None)
    assert (found.frame.hanger.drop_at_two if apart else found.frame.drop) == pytest.approx(80.0 - up)


@given(OFF, OFF, st.booleans(), st.sampled_from([("mm", 1.0), ("in", 25.4 / 16)]))
@example(5.6875, 4.0, False, ("in", 25.4 / 16))  # the new drop is 3.3007 in: nobody typed it in tenths
def test_to_the_side_a_wire_gets_a_hole_clear_of_the_old_one_and_takes_up_the_difference(up, right, known, tape):
    unit, step = tape
    rings = {"ring_separation": 320.0, "ring_depth": 150.0} if known else {}
    found = done(hung(Hanger(kind="wire", **rings), unit=unit), up, right)
    if max(abs(up), abs(right)) <= 0.5:
        assert found.left_alone
    elif abs(right) > 0.5:
        (move,) = found.correction.moves
        assert move.right == -right and move.distance >= LEAST - 1e-9 and found.cures == (Cure(""),)
        longer = found.wire.longer if found.wire else 0.0
        assert move.up + longer == pytest.approx(-up)  # hole and wire together bring the frame to its height
        if math.hypot(up, right) >= LEAST:
            assert found.wire is None
        else:  # no farther than a step of the tape beyond the least
            assert abs(move.up) - step <= math.sqrt(LEAST**2 - right**2) <= abs(move.up) + 1e-9
            assert abs(longer) <= abs(up + abs(move.up)) + 1e-9 and abs(longer) <= abs(up - abs(move.up)) + 1e-9


def test_a_wire_that_would_show_its_hook_is_not_made_longer():
    """A drop of 30 and a hook's nail 22 above its seat: 8 under the edge, and 6 is the least (common practice)."""
    found = done(hung(Hanger(kind="wire"), Fixing(kind="hook", below=22.0), 30.0), 6.0, 0.0)
    (move,) = found.correction.moves
    # 6 lower by the wire leaves 2: so the hole goes down by 10, and the wire is made 4 shorter
    assert (move.up, found.wire.longer) == (pytest.approx(-10.0), pytest.approx(4.0))


def test_a_wire_that_would_get_too_flat_is_not_made_shorter():
    """Rings 320 apart: at 15°, of which `check` warns, it rises 160 tan 15° = 42.9 mm; it rises 150 − 105 = 45."""
    wire = Hanger(kind="wire", ring_separation=320.0, ring_depth=150.0)
    found = done(hung(wire, drop=105.0), -6.0, 0.0)
    (move,) = found.correction.moves
    assert (move.up, found.wire.longer) == (pytest.approx(10.0), pytest.approx(-4.0))


def test_a_wire_that_is_flat_already_is_not_made_flatter_still():
    """At 12° `check` warns before, and again after: with 320 of rings it rises 34 mm."""
    wire = Hanger(kind="wire", ring_separation=320.0, ring_depth=114.0)
    found = done(hung(wire), -6.0, 0.0)
    assert (found.correction.moves[0].up, found.wire.longer) == (pytest.approx(10.0), pytest.approx(-4.0))


@given(st.integers(20, 90), st.sampled_from([0, 8, 16]), OFF, OFF, st.integers(1, 30))
def test_two_fixings_farther_apart_go_down_by_what_the_wire_rises_less(separation, apart, up, right, out):
    separation += 100
    wire = Hanger(kind="wire", ring_separation=float(separation), ring_depth=150.0, apart=apart or None,
                  drop_at_two=80.0 if apart else None)  # fmt: skip
    length = apart + math.hypot(separation - apart, 2 * 70.0)  # it rises 150 − 80
    of = wanted(hung(wire), up, right)
    if not of.moves:
        return
    moves = hung_wider(of, float(out))
    lower = 70.0 - rise(separation, length, apart + 2 * out)
    assert [complex(move.right, move.up) for move in moves] == pytest.approx(
        [complex(-right - out, -up - lower), complex(-right + out, -up - lower)]
    )
    assert [(move.old, move.nail) for move in moves] == (
        [("A left", "A left"), ("A right", "A right")] if apart else [("A", "A left"), ("A", "A right")]
    )


def test_a_wire_that_can_be_neither_longer_nor_shorter_goes_on_two_hooks():
    """By 1 mm longer its nail shows (7 − 0.9 under the edge, 6 is the least), by 8 shorter it is too flat."""
    wire = Hanger(kind="wire", ring_separation=330.0, ring_depth=56.0)
    found = done(hung(wire, drop=7.0), 0.0, 5.0)
    assert found.apart is not None and found.wire is None
    left, right = found.correction.moves
    assert min(left.distance, right.distance) >= LEAST and left.right + right.right == pytest.approx(-10.0)
    assert 50.0 <= found.apart <= 52.0  # nearer, two fixings are in each other's way: our own design


@given(OFF, OFF, st.sampled_from([Fixing(), Fixing(kind="hook", below=22.0, rating=9.0)]), st.floats(29.0, 60.0))
def test_a_hook_is_one_that_is_sold_with_its_nail_clear_of_the_old_hole_and_behind_the_frame(up, right, fixing, drop):
    pair = Hanger(kind="rings", left=60.0, right=60.0, drop_left=drop, drop_right=60.0)
    found = done(hung(pair, fixing), up, right)
    assert len(set(found.cures)) <= 1  # both alike: they move alike
    for cure in found.cures:
        if abs(complex(right, up)) >= LEAST:
            assert cure == Cure("")
            continue
        # each new hook's nail, from the old one
        nails = {sold: complex(-right, -up - fixing.rise + sold.below) for sold in SOLD}
        will_do = [sold for sold, nail in nails.items() if abs(nail) >= LEAST
                   and sold.rating >= (fixing.rating or 0.0) and drop - sold.below >= HOOK_MARGIN]  # fmt: skip
        assert cure == (Cure("hook", will_do[0]) if will_do else Cure("fill"))


@pytest.mark.parametrize(
    ("hanger", "fixing", "drop"),
    [
        (Hanger(kind="keyholes", left=60.0, right=60.0), Fixing(), 80.0),
        (Hanger(kind="rings", left=60.0, right=60.0), Fixing(kind="screw"), 80.0),
        (Hanger(kind="rings", left=60.0, right=60.0), Fixing(kind="hook", below=22.0, nails=2), 80.0),
        (Hanger(kind="rings", left=60.0, right=60.0), Fixing(), None),  # no drop: nobody knows what a hook would show
        (Hanger(kind="sawtooth"), Fixing(), 9.0),  # a hook on which teeth 9 mm under the edge hang would show
    ],
)
def test_where_no_hook_will_do_the_old_hole_is_filled(hanger, fixing, drop):
    assert set(done(hung(hanger, fixing, drop), 3.0, 0.0).cures) == {Cure("fill")}


@pytest.mark.parametrize(("diameter", "aside"), [(1.8, 10.0), (4.0, 20.0)])  # 5 x 4 = 20: our own design
def test_a_rail_is_screwed_through_new_holes_nearer_to_its_middle(diameter, aside):
    cleat = Hanger(kind="cleat", left=60.0, right=80.0, screw_below=20.0)
    found = done(hung(cleat, Fixing(kind="screw", diameter=diameter)), 3.0, 0.0)
    assert found.cures == (Cure("rail"), Cure("rail"))
    left, right = found.correction.moves
    assert (left.right, right.right) == (-right.right, right.right) and left.up == right.up == -3.0
    assert aside - 1.0 <= left.right <= aside and left.distance >= aside  # √(d² − 3²), up to a whole mm
    assert (found.frame.hanger.left, found.frame.hanger.right) == (60.0 + left.right, 80.0 + left.right)


def test_a_rail_stays_in_its_studs_or_its_old_holes_are_filled():
    """Studs of 38 mm, the screws in their middles: 20 mm aside would be beside them."""
    wall = Wall(name="", width=4000.0, height=2600.0, build="drywall", board=12.5,
                studs=Studs(first=1860.0, spacing=280.0, width=38.0))  # fmt: skip
    cleat = Hanger(kind="cleat", left=60.0, right=60.0, screw_below=20.0)
    found = done(hung(cleat, Fixing(kind="screw", diameter=4.0), wall=wall), 3.0, 0.0)
    assert [nail.x for nail in plan_wall(job(frame("A", hanger=cleat), wall=wall)).nails] == [1860.0, 2140.0]
    assert found.cures == (Cure("fill"), Cure("fill"))


def test_what_passes_is_what_check_neither_stops_nor_newly_warns_of():
    plan = hung(Hanger(kind="wire"))
    assert passes(checked(plan), frame("A", drop=60.0))
    # a bare nail of 1.8 mm is 0.9 under where the wire bears: 5.9 mm under the edge, where 6 is the least
    assert not passes(checked(plan), frame("A", drop=5.0)) and not passes(checked(plan), frame("A", drop=501.0))
    shows = hung(Hanger(kind="wire"), drop=5.0)
    assert passes(checked(shows), frame("A", drop=4.0))  # stopped before: nothing new
