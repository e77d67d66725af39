"""What the job itself explains is left in peace: two figures that agree, a high room, a door in between.

Each pair is worked out by hand from what people do; the limits are those of checks/doubts, our own.
"""

import pytest

from tests.doubting import INCHES, ROOM, doubted, prints

HALL = {"width": 840, "height": 360}
CHEST = {"kind": "furniture", "name": "sideboard", "left": 120, "bottom": 0, "width": 170, "height": 78}


def test_frames_spread_out_evenly_along_a_long_wall_have_wide_gaps():
    heads = prints(15, 15.2, 15.1, width=62, height=82)
    assert doubted("cm", HALL, heads, gap=165, height={"centre": 152}) == set()  # 162 cm at either end
    assert doubted("cm", HALL, heads[:2], gap=165, height={"centre": 152}) == {"group, gap"}  # 275 cm


def test_two_frames_hang_over_the_ends_of_what_is_below():
    above = {"height": {"above": "sideboard", "by": 30}, "centre_on": "sideboard"}
    pair = prints(8, 8.2, width=46, height=56)
    assert doubted("cm", ROOM, pair, [CHEST], gap=55, **above) == set()  # 147 of 170 cm
    assert doubted("cm", ROOM, pair, [CHEST | {"width": 200}], gap=58, **above) == {"group, gap"}


def test_two_small_gaps_that_differ_were_thought_of():
    small = [{"width": 10.5, "height": 13.5, "hanger": "sawtooth", "drop": 0.7}] * 4
    grid = {"arrangement": "grid", "across": 2, "height": {"centre": 150}}
    assert doubted("cm", ROOM, small, gap_across=0.8, gap_down=1.5, **grid) == set()
    assert doubted("cm", ROOM, small, gap=0.7, **grid) == {"group, gap"}


@pytest.mark.parametrize(("height", "centre", "found"), [(42, 25, set()), (69, 40, set()), (69, 64, {"wall, height"})])
def test_a_half_wall_has_its_group_halfway_up(height, centre, found):
    """69 in with a group right under its top is 96 in with its figures the other way round."""
    small = prints("1 1/4", "1 3/8", "1 1/4", width=11, height=9)
    assert doubted("in", INCHES | {"height": height}, small, height={"centre": centre}) == found


def test_a_wall_far_higher_than_rooms_has_two_figures_that_changed_places():
    assert doubted("cm", ROOM | {"height": 725}, prints(6)) == {"wall, height"}  # 275 cm
    assert doubted("cm", ROOM | {"height": "5.2 m"}, prints(6)) == set()  # a hall; 2.5 m is a room


def test_a_column_hangs_on_a_pier():
    column = prints(3.5, 3.6, 3.4, width=20, height=25)
    assert doubted("cm", {"width": 38, "height": 250}, column, arrangement="column", gap=3) == set()
    assert doubted("cm", {"width": 28, "height": 250}, column, arrangement="column", gap=3) == {"wall, width"}


def test_a_group_hangs_higher_in_a_high_room():
    six = prints(6, 6.1, 5.9, 6, width=32.7, height=32.7)
    assert doubted("cm", {"width": 446, "height": 305}, six, height={"top": 195}) == set()
    assert doubted("cm", {"width": 446, "height": 260}, six, height={"top": 195}) == {"group, height, top"}


def test_a_group_hangs_halfway_from_a_low_settee_to_a_high_ceiling():
    settee = {"kind": "furniture", "name": "settee", "left": 42, "bottom": 0, "width": 84, "height": 27}
    pair = prints("5 1/4", "5 1/16", width="25 1/2", height="31 1/2")
    above = {"height": {"above": "settee", "by": 34}, "centre_on": "settee"}
    assert doubted("in", INCHES | {"height": 132}, pair, [settee], **above) == set()
    assert doubted("in", INCHES | {"height": 110}, pair, [settee], **above) == {"group, height, by"}


def test_right_above_a_mantelpiece_is_near():
    tall = CHEST | {"name": "mantelpiece", "height": 110}
    above = {"height": {"above": "mantelpiece", "by": 3}, "centre_on": "mantelpiece"}
    assert doubted("cm", ROOM, prints(6), [tall], **above) == set()
    above["height"]["by"] = 2
    assert doubted("cm", ROOM, prints(6), [tall], **above) == {"group, height, by"}


@pytest.mark.parametrize(("weight", "found"), [("1.2 kg", set()), ("0.9 kg", {"frame A, weight"})])
def test_a_large_frame_without_glass_is_light(weight, found):
    """1.42 m²."""
    assert doubted("cm", ROOM, [{"width": 101, "height": 141, "drop": 11, "weight": weight}]) == found


def test_a_scroll_hangs_right_under_its_nail():
    scroll = {"width": 38, "height": 182, "drop": 1.2}
    assert doubted("cm", {"width": 120, "height": 255}, [scroll], height={"top": 222}) == set()
    assert doubted("cm", {"width": 120, "height": 255}, [scroll | {"width": 90}], height={"top": 222}) != set()


def rings(drop_left, drop_right, kind="rings", inset="3 1/2", width=48):
    sides = {"left": inset, "right": inset, "drop_left": drop_left, "drop_right": drop_right, "seen_from": "back"}
    return {"width": width, "height": 40, "hanger": {"kind": kind, **sides}}


def test_two_rings_halfway_down_agree():
    """What is off the metric tape is no centimetres; 20.4 and 20.2 may be."""
    assert doubted("in", INCHES, [rings("19 3/4", "19 5/8")]) == set()
    assert doubted("in", INCHES, [rings("20.4", "20.2")]) != set()
    assert doubted("in", INCHES, [rings("23 3/4", "23 5/8")]) != set()


def test_the_keyholes_of_a_house_number_are_close_together():
    hanger = {"kind": "keyholes", "left": 7.5, "right": 7.5}
    tile = {"width": 18, "height": 24, "hanger": hanger, "drop": 2}
    assert doubted("cm", ROOM, [tile]) == set()
    assert doubted("cm", ROOM, [tile | {"width": 16.5}]) != set()  # 15 mm


@pytest.mark.parametrize(("inset", "found"), [("5 7/8", set()), ("7", set()), ("10 15/16", {"frame B, hanger, right"})])
def test_hangers_far_from_where_those_of_a_twin_are(inset, found):
    """0.09 of 29 in is 2.6 in."""
    assert doubted("in", INCHES, [rings("5", "5", "keyholes", each, 29) for each in ("5 7/8", inset)]) == found


def test_a_gap_of_its_own_is_no_wider_than_a_frame():
    six = prints(3.1, 3.3, 3.1, 3.2, 3, 3.3, width=62, height=31)
    grid = {"arrangement": "grid", "across": 3, "height": {"centre": 148}}
    assert doubted("cm", {"width": 520, "height": 270}, six, gap_across=42, gap_down=1.6, **grid) == set()
    assert doubted("cm", {"width": 520, "height": 270}, six, gap_across=66, gap_down=1.6, **grid) == {
        "group, gap_across"
    }


def test_a_weight_that_no_slip_explains_may_be_that_of_another_make():
    glazed = [{"width": 63, "height": 83, "drop": 14, "weight": weight} for weight in ("5.2 kg", "4.8 kg", "5.6 kg")]
    other = {"width": 84, "height": 64, "drop": 13, "weight": "2 kg"}
    assert doubted("cm", {"width": 856, "height": 320}, [other, *glazed], gap=33) == set()
    light = other | {"weight": "1.3 kg"}
    assert doubted("cm", {"width": 856, "height": 320}, [light, *glazed], gap=33) == {"frame A, weight"}


def test_what_leans_on_a_console_hangs_right_above_it():
    console = CHEST | {"name": "console", "height": 82}
    above = {"height": {"above": "console", "by": 3}, "centre_on": "console"}
    glass = {"width": 128, "height": 196, "drop": 12}
    assert doubted("cm", ROOM | {"height": 310}, [glass], [console], **above) == set()
    assert doubted("cm", ROOM, prints(6), [console], **above) == {"group, height, by"}


def test_the_first_stud_may_stand_at_the_end_of_the_wall():
    wall = ROOM | {"build": "drywall"}
    assert doubted("cm", wall | {"studs": {"first": 1.9, "second": 60.4}}, prints(6)) == set()
    assert doubted("cm", wall | {"studs": {"first": 9, "second": 67.5}}, prints(6)) == {"wall, studs, first"}


def test_a_wire_made_anew_is_off_its_twins_but_not_by_as_much_as_a_slack_one():
    assert doubted("cm", ROOM, prints(8.4, 6.3, 8.6, width=52, height=42)) == set()
    assert doubted("cm", ROOM, prints(8.4, 5.7, 8.6, width=52, height=42)) == {"frame B, drop"}
    assert doubted("cm", ROOM, prints(8.1, 11, 14.5, width=52, height=62)) == set()  # each by another maker


def test_pictures_on_a_ledge_stand_right_above_it():
    ledge = CHEST | {"name": "plate rail", "bottom": 120, "height": 3}
    above = {"height": {"above": "plate rail", "by": 4}, "centre_on": "plate rail", "gap": 10}
    assert doubted("cm", ROOM, prints(4, 4, width=20, height=24), [ledge], **above) == set()
    chest = ledge | {"bottom": 0, "height": 123}
    assert doubted("cm", ROOM, prints(4, 4, width=20, height=24), [chest], **above) == {"group, height, by"}
