"""Frames that are unlike the others for a reason are left in peace, and those that only seem to be are asked about.

Each pair is worked out by hand from what people do; the limits are those of checks/doubts, our own.
"""

import pytest

from tests.doubting import doubted, prints

ROOM = {"width": 4200, "height": 2500}
STANDING = {"width": 265, "height": 315}
LYING = {"width": 315, "height": 265, "drop": 52}


@pytest.mark.parametrize(
    ("weight", "found"), [("760 g", {"frame D, width"}), ("990 g", set()), (None, {"frame D, width"})]
)
def test_a_frame_that_weighs_else_is_not_one_of_the_others_turned(weight, found):
    """990 g is 1.3 times the 760 g of the others: thicker, or of other glass."""
    frames = [each | {"weight": "760 g"} for each in prints(52, 50, 51, **STANDING)]
    assert doubted("mm", ROOM, [*frames, LYING | ({"weight": weight} if weight else {})]) == found


@pytest.mark.parametrize(("weight", "found"), [("3.1 kg", {"frame B, weight"}), ("1.5 kg", set())])
def test_two_twins_tell_what_a_frame_weighs_among_others_of_other_sizes(weight, found):
    """1.4 kg are 3.1 lb; by area the smaller ones weigh a third more than the twins: all together are not alike."""
    twins = [each | {"weight": "1.4 kg"} for each in prints(67, 65, 63, width=336, height=336)]
    twins[1]["weight"] = weight
    smaller = [each | {"weight": "1.2 kg"} for each in prints(29, 30, 29, width=317, height=230)]
    assert doubted("mm", ROOM, [*twins, *smaller]) == found


@pytest.mark.parametrize("inset", [5.2, 7])
def test_no_ring_is_nearer_to_the_side_than_its_strap_is_wide(inset):
    """52 mm written in centimetres is 5.2; rings on narrow mouldings are 7 mm from the side."""
    rings = {"kind": "rings", "left": inset, "right": inset}
    frames = [each | {"hanger": rings} for each in prints(60, 61, width=330, height=330)]
    sides = {f"frame {name}, hanger, {side}" for name in "AB" for side in ("left", "right")}
    assert doubted("mm", ROOM, frames) == (sides if inset == 5.2 else set())


@pytest.mark.parametrize(("nosing", "found"), [(1830, set()), (1500, {"wall, stairs, up"})])
def test_a_wall_along_a_third_of_its_flight_is_built(nosing, found):
    """3420 mm of wall are 19 rises of 170 mm, which run 4779 mm: 1830 of them, 0.38, are on the wall, or 1500, 0.31."""
    stairs = {"run": 250, "rise": 170, "up": "left", "nosing": [nosing, 170]}
    wall = {"width": 2460, "height": 3420, "stairs": stairs}
    group = {"arrangement": "stairs", "gap": 100, "centre_on": 900, "height": {"above_nosings": 1480}}
    assert doubted("mm", wall, prints(35, 37, width=190, height=240), **group) == found
