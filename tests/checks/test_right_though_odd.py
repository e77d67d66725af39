"""What looks like a slip and is right is left in peace; the slip beside it is not.

Each pair is worked out by hand from what people do; the limits are those of checks/doubts, our own.
"""

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.units import parse_length
from templates_gen.checks import find
from templates_gen.checks.doubts.other_tape import on_tape
from templates_gen.checks.doubts.readings import other_readings, swapped_figures
from templates_gen.job.reading.building import build_job
from tests.doubting import INCHES, ROOM, doubted, prints
from tests.jobs import SAMPLES

DOOR = {"kind": "door", "left": 165, "bottom": 0, "width": 90, "height": 205}
SETTLE = {"kind": "furniture", "name": "settle", "left": 110, "bottom": 0, "width": 200, "height": 80}


def test_a_pair_hangs_on_either_side_of_a_door_but_not_of_nothing():
    pair = {"frames": prints(6, 6.2), "gap": 120, "height": {"centre": 150}}
    assert doubted("cm", ROOM, features=[DOOR], **pair) == set()
    assert doubted("cm", ROOM, **pair) == {"group, gap"}
    assert doubted("cm", ROOM, features=[DOOR | {"left": 40}], **pair) == {"group, gap"}  # beside it, not in its middle
    assert doubted("cm", {"width": 480, "height": 250}, prints(6, 6.2, 6.1), [DOOR | {"left": 195}], gap=120) == {
        "group, gap"
    }  # of three none is on either side


def test_frames_over_a_wide_bench_are_not_on_either_side_of_it():
    bench = SETTLE | {"left": 60, "width": 300}
    assert doubted("cm", ROOM, prints(6, 6.2), [bench], gap=60, height={"centre": 150}) == {"group, gap"}


def test_a_pair_above_a_seat_is_not_on_either_side_of_it():
    above = {"gap": 60, "height": {"above": "settle", "by": 20}, "centre_on": "settle"}
    assert doubted("cm", ROOM, prints(6, 6.2), [SETTLE], **above) == {"group, gap"}


@pytest.mark.parametrize("gap", [1, 1.3])
def test_the_parts_of_one_picture_hang_close(gap):
    panels = [{"width": 40, "height": 100, "drop": 6}] * 3
    assert doubted("cm", ROOM, panels, gap=gap) == set()
    assert doubted("cm", ROOM, panels, gap=0.6) == {"group, gap"}


def test_large_panels_close_together_are_no_centimetres():
    panels = [{"width": "20", "height": "40", "drop": "2 1/2"}] * 3
    assert doubted("in", INCHES, panels, gap="1/2") == set()
    assert doubted("in", INCHES, panels, gap="1 1/2") == {"all frames, width and height"}
    quarters = [panel | {"width": "20 1/4"} for panel in panels]  # nobody reads quarters off a metric tape
    assert doubted("in", INCHES, quarters, gap="1 1/2") == set()


def test_a_long_row_tells_that_its_wall_is_no_shorter():
    """The wall is wider than usual (8 m); in centimetres it would have no room for the row, of 6 m, whatever it is
    called."""
    row = {"frames": prints("6", "6 1/8", "6 1/4", width="76", height="20"), "gap": "4"}
    for arrangement in ({"arrangement": "row"}, {"arrangement": "rows", "rows": [["A", "B", "C"]]}):
        assert doubted("in", {"width": "330", "height": "96"}, **row, **arrangement) == set()


@pytest.mark.parametrize(
    ("name", "by", "right"),
    [("cooker", 95, True), ("settle", 95, False), ("Schreibtisch", 65, True), ("settle", 80, False),
     ("settle", 5, True), ("settle", 2, False)],
)  # fmt: skip
def test_the_room_above_something_goes_by_what_it_is(name, by, right):
    feature = SETTLE | {"name": name}
    found = doubted(
        "cm", ROOM, prints(6, width=30, height=24), [feature], height={"above": name, "by": by}, centre_on=name
    )
    assert found == (set() if right else {"group, height, by"})


def test_frames_that_touch_are_meant_to():
    assert doubted("cm", ROOM, prints(6, 6.2, 6.1), gap=0) == set()


def test_many_frames_along_a_wall_are_spread_out_on_purpose():
    six = prints(6, 6, 6, 6, 6, 6.1, width=25, height=30)
    assert doubted("cm", {"width": 420, "height": 250}, six, gap=50) == set()
    assert doubted("cm", {"width": 420, "height": 250}, six[:3], gap=50) == {"group, gap"}


def test_two_columns_on_either_side_of_a_door():
    four = {"frames": prints(5, 5, 5, 5.1, width=30, height=40), "arrangement": "rows", "gap_down": 5}
    rows = {"rows": [["A", "B"], ["C", "D"]], "gap_across": 130}
    assert doubted("cm", ROOM, features=[DOOR], **four, **rows) == set()
    assert doubted("cm", ROOM, **four, **rows) == {"group, gap_across"}


def test_a_tall_frame_may_hang_low_and_a_low_one_right_under_the_ceiling():
    tall = [{"width": 100, "height": 140, "drop": 12}]
    assert doubted("cm", ROOM, tall, height={"bottom": 20}) == set()
    assert doubted("cm", ROOM, prints(6), height={"bottom": 12}) == set()  # in a shop's window
    assert doubted("cm", ROOM, prints(6), height={"bottom": 4}) == {"group, height, bottom"}
    high = {"width": 420, "height": 300}
    assert doubted("cm", high, prints(6, height=40), height={"bottom": 235}) == set()
    assert doubted("cm", high, prints(2.5, height=20), height={"bottom": 275}) == {"group, height, bottom"}


def test_an_anchor_bears_what_no_picture_hook_does():
    def rated(**fixing):
        return doubted("cm", ROOM, [{"width": 40, "height": 50, "drop": 6, "fixing": fixing}])

    assert rated(kind="screw", diameter="6 mm", rating="250 kg") == set()
    assert rated(kind="screw", diameter="6 mm", rating="600 kg") == {"frame A, fixing, rating"}
    assert rated(kind="hook", below=2, rating="250 kg") == {"frame A, fixing, rating"}


def rings(left, right, drop_left=9.0, drop_right=9.0):
    hanger = {"kind": "rings", "left": left, "right": right, "drop_left": drop_left, "drop_right": drop_right}
    return doubted("cm", ROOM, [{"width": 42, "height": 52, "hanger": hanger | {"seen_from": "back"}}])


@pytest.mark.parametrize(
    ("found", "sides"),
    [
        (set(), (4, 6.5)),  # put in beside an old hole
        ({"frame A, hanger, right"}, (4, 1.6)),  # 1.6 in are 4.1 cm
        ({"frame A, hanger, right"}, (4.2, 2.4)),  # the figures changed places
        ({"frame A, hanger, right"}, (4, 14)),  # more than 0.22 of 42 cm
        (set(), (4, 4, 9, 9.7)),
        ({"frame A, hanger, drop_right"}, (4, 4, 9, 10)),  # a centimetre was misread
        (set(), (4, 4, 9, 10.5)),
        ({"frame A, hanger, drop_right"}, (4, 4, 9, 11.2)),  # more than 2 cm
        ({"frame A, hanger, drop_right"}, (4, 4, 9.8, 8.9)),  # the figures changed places
    ],
)
def test_uneven_rings_are_doubted_where_a_slip_would_make_them_even(found, sides):
    assert rings(*sides) == found


def test_two_figures_of_a_side_that_changed_places_are_seen_by_its_fellows():
    frames = [{"width": 61, "height": 46, "drop": 5.8}, {"width": 61, "height": 46, "drop": 6}]
    assert doubted("cm", ROOM, frames) == set()
    frames[0]["width"] = 16
    assert doubted("cm", ROOM, frames) == {"frame A, width"}
    near = [{"width": width, "height": 80, "drop": 9} for width in (67.6, 66.5, 66.5)]
    assert doubted("cm", ROOM, near) == set()
    three = [{"width": width, "height": 30, "drop": 4} for width in (24, 42, 42)]
    assert doubted("cm", ROOM, three) == {"frame A, width"}


def test_two_figures_of_a_height_that_changed_places_are_seen():
    pair = prints("2 1/2", "2 3/8", width="13", height="19")
    assert doubted("in", INCHES, pair, height={"centre": "85 1/2"}) == {"group, height, centre"}
    assert doubted("in", INCHES, pair, height={"centre": "80"}) == set()  # 08 is no number


def test_a_panorama_among_plain_frames_is_one():
    plain = prints(5, 5.1, width=30, height=40)
    assert doubted("cm", ROOM, [{"width": 100, "height": 30, "drop": 4}, *plain]) == set()
    assert doubted("cm", ROOM, [{"width": 300, "height": 40, "drop": 5}, *plain]) == {"frame A, width"}


def test_a_deep_drop_in_tenths_of_an_inch_may_be_in_centimetres():
    assert doubted("in", INCHES, [{"width": "22", "height": "28", "drop": "8.9"}]) == {"frame A, drop"}
    assert doubted("in", INCHES, [{"width": "22", "height": "28", "drop": "8 7/8"}]) == set()
    assert doubted("in", INCHES, [{"width": "22", "height": "28", "drop": "3.9"}]) == {"frame A, drop"}
    assert doubted("in", INCHES, [{"width": "22", "height": "28", "drop": "8.917"}]) == set()  # reckoned, not read


def test_a_drop_in_tenths_is_shown_as_it_was_written():
    raw = {"job": {"title": "Ferry", "unit": "in"}, "wall": {**INCHES}, "group": {}}
    job = build_job(raw | {"frame": [{"id": "A", "width": 22, "height": 28, "drop": "8.9"}]}, SAMPLES / "job.toml")
    assert [each.confirm for each in find(plan_wall(job)) if each.confirm] == [("frame A, drop: 8.9 in",)]


def test_no_tape_in_centimetres_shows_sixteenths():
    assert on_tape(23.5, "cm") and not on_tape(23.8125, "cm")
    assert on_tape(12.5, "mm") and not on_tape(2.75, "mm")
    assert on_tape(3.9375, "in")
    assert "cm" not in [reading.ask.split()[3].rstrip("?") for reading in other_readings(23.8125 * 25.4, "in")]


@pytest.mark.parametrize(
    ("mm", "unit", "texts"),
    [(420.0, "mm", ["240 mm", "402 mm"]), (58.0, "cm", ["8.5 cm"]), (85.5 * 25.4, "in", ["58.5 in"]),
     (440.0, "mm", ["404 mm"]), (70.0, "mm", []), (-14.0, "mm", ["-41 mm"])],
)  # fmt: skip
def test_figures_change_places_with_their_neighbour(mm, unit, texts):
    assert [reading.text for reading in swapped_figures(mm, unit)] == texts


def test_of_metres_three_figures_behind_a_comma_are_millimetres():
    assert parse_length("3,455 m", "cm") == 3455.0
    with pytest.raises(ValueError, match="write it with a point"):
        parse_length("3,455", "mm")
    with pytest.raises(ValueError, match="write it with a point"):
        parse_length("3,455 mm", "cm")


def test_another_unit_of_the_same_tape_is_asked_about_plainly():
    (asked,) = [reading.ask for reading in other_readings(114 * 304.8, "ft") if "inches" in reading.ask]
    assert asked == "Is it in inches? Then it is 114 in."


SILL = {"kind": "window", "left": 60, "bottom": 95, "width": 300, "height": 120}


def test_a_group_right_under_a_sill_is_not_low():
    under = {"frames": prints(6, 6.2, width=30, height=40), "height": {"top": 85}}
    assert doubted("cm", ROOM, features=[SILL], **under) == set()
    assert doubted("cm", ROOM, **under) == {"group, height, top"}


def test_banners_reach_far_up_and_frames_do_not():
    banner = {"width": 90, "height": 240, "drop": 5}
    hall = {"width": 500, "height": 420}
    assert "group, height, top" not in doubted("cm", hall, [banner], height={"top": 400})
    assert "group, height, top" in doubted("cm", hall, [banner | {"height": 60}], height={"top": 400})


def test_children_look_lower_and_inches_are_not_centimetres():
    assert doubted("cm", ROOM, prints(6, 6.2), height={"centre": 70}) == set()
    assert doubted("cm", ROOM, prints(6, 6.2), height={"centre": 57}) == {"group, height, centre"}


def test_a_row_along_all_of_a_wall_may_hang_over_the_doors():
    many = prints(*([3] * 8), width=34, height=18)
    assert doubted("cm", {"width": 420, "height": 300}, many, gap=3, height={"centre": 210}) == set()
    assert doubted("cm", {"width": 420, "height": 300}, many[:2], gap=3, height={"centre": 210}) == {
        "group, height, centre"
    }


@pytest.mark.parametrize(("first", "sound"), [(15, True), (61, True), (385, False)])
def test_the_first_stud_is_near_the_wall_s_left_end(first, sound):
    wall = {"width": 400, "height": 250, "build": "drywall", "studs": {"first": first, "spacing": 60}}
    assert doubted("cm", wall, prints(6, 6.2)) == (set() if sound else {"wall, studs, first"})


@pytest.mark.parametrize(("second", "sound"), [("25 1/2", True), ("35 1/2", False)])
def test_no_studs_are_26_inches_apart(second, sound):
    wall = {"width": "134", "height": "108", "build": "drywall", "studs": {"first": "9 1/2", "second": second}}
    assert doubted("in", wall, prints("3", "3 1/8", width="14", height="18")) == (
        set() if sound else {"wall, studs, first"}
    )


@pytest.mark.parametrize(
    ("pitch", "nosing", "sound"),
    [(4.8, 2, True), (4.8, 18, False), (1.5, 2, False), (12, 2, False), (65, 20, True), (80, 20, False)],
)  # ramps rise 1 in 12 from the floor (ADA 2010, 405.2); a loft's ladder has 65 degrees; both from memory
def test_a_ramp_and_a_loft_s_ladder_are_right(pitch, nosing, sound):
    wall = {"width": 760, "height": 340, "stairs": {"pitch": pitch, "nosing": [30, nosing], "up": "right"}}
    group = {"arrangement": "stairs", "gap": 8, "height": {"above_nosings": 150}}
    found = {each for each in doubted("cm", wall, prints(6, 6.2, width=30), **group) if each.startswith("wall, stairs")}
    assert (not found) == sound


def test_frames_round_a_window_leave_its_trim_free():
    window = {"kind": "window", "left": 150, "bottom": 100, "width": 100, "height": 120}
    group = {"arrangement": "around", "around": "window", "left": ["A"], "right": ["B"], "gap": 5}
    assert "group, gap_around" not in doubted("cm", ROOM, prints(6, 6.2, width=30), [window], **group, gap_around=18)
    assert "group, gap_around" in doubted("cm", ROOM, prints(6, 6.2, width=30), [window], **group, gap_around=30)
