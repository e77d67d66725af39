"""A frame that is the twin of others but for one slip is doubted, and the right one of them; sound ones are in peace.

Each pair is worked out by hand from what people do; the limits are those of checks/doubts, our own.
"""

from templates_gen.base.record import replace
from templates_gen.checks.doubts.fellows import fellow_doubts
from tests.doubting import INCHES, ROOM, doubted, meant, prints
from tests.jobs import frame, job


def test_the_twin_that_was_turned_by_its_figures_alone_is_doubted():
    """A wire is put on anew for a frame that is turned: its drop is then another."""
    lying = {"width": 83, "height": 63, "drop": 14.6}
    pair = prints(14, 14.6, width=63, height=83)
    assert doubted("cm", ROOM, pair) == set()
    assert meant("cm", ROOM, [pair[0], lying]) == {"frame B, width": "63 cm", "frame B, height": "83 cm"}
    assert meant("cm", ROOM, [lying, pair[0]]) == {"frame A, width": "63 cm", "frame A, height": "83 cm"}
    assert doubted("cm", ROOM, [pair[0], lying | {"drop": 11}]) == set()


def test_the_one_that_stands_among_twins_that_lie_is_doubted():
    """6 of 46 cm is 13 %, most of what wires have; 6 of 61 is little."""
    lying = prints(6, 6.1, width=61, height=46)
    assert doubted("cm", ROOM, [*lying, {"width": 46, "height": 61, "drop": 6}]) == {"frame C, width"}
    assert doubted("cm", ROOM, [*lying, {"width": 46, "height": 61, "drop": 8}]) == set()


def test_a_frame_turned_among_many_sizes_is_no_slip():
    mixed = [*prints(6, width=46, height=61), *prints(6, width=61, height=46), *prints(4, 3, width=30, height=24)]
    assert doubted("cm", {"width": 520, "height": 250}, mixed) == set()


def test_teeth_sit_alike_on_a_frame_that_lies_and_on_one_that_stands():
    both = [
        {"width": 30, "height": 40, "drop": 1.2, "hanger": "sawtooth"},
        {"width": 40, "height": 30, "drop": 1.2, "hanger": "sawtooth"},
    ]
    assert doubted("cm", ROOM, both) == set()


def test_two_figures_of_a_side_that_changed_places_are_seen_by_one_twin():
    west, east = {"width": "52.25", "height": "31.25", "drop": "6"}, {"width": "25.25", "height": "31.25", "drop": "6"}
    assert meant("in", INCHES, [east, west]) == {"frame B, width": "25.25 in"}
    assert meant("in", INCHES, [west, east]) == {"frame A, width": "25.25 in"}
    assert doubted("in", INCHES, [east, west | {"drop": "8"}]) == set()  # another wire: another frame
    assert doubted("in", INCHES, [east, west | {"width": "52.5"}]) == set()  # its figures are others


def test_figures_of_a_side_that_make_it_one_of_several_are_seen_though_it_is_hardly_another_size():
    """29.7 and 27.9 cm differ by 6 %: an A4 side among A4 sides."""
    sheets = prints(4, 4.1, 4, width=21, height=29.7)
    assert meant("cm", ROOM, [*sheets, {"width": 21, "height": 27.9, "drop": 4}]) == {"frame D, height": "29.7 cm"}
    assert doubted("cm", ROOM, [*sheets, {"width": 21, "height": 28.9, "drop": 4}]) == set()


def test_the_one_of_its_type_that_has_its_sides_the_other_way_round_is_doubted():
    frames = [frame(name, width=400.0, height=500.0, type="oak") for name in "ABC"]
    lying = frame("D", width=500.0, height=400.0, type="oak", drop=65.0)
    assert [(each.place, each.meant[0]) for each in fellow_doubts(job(*frames, lying))] == [
        ("frame D, width", ("frame D, width", "400 mm"))
    ]
    assert not list(fellow_doubts(job(*frames, replace(lying, type="ash"))))  # another type: framed that way
    assert not list(fellow_doubts(job(*frames, lying, replace(lying, id="E"))))  # two: they are meant to
    assert not list(fellow_doubts(job(frames[0], lying)))  # of two, neither is the odd one


def pair(left, right):
    hanger = {"kind": "rings", "left": left, "right": right, "drop_left": 15, "drop_right": 15, "seen_from": "back"}
    return {"width": 64, "height": 80, "hanger": hanger}


def test_a_ring_unlike_all_others_of_its_twins_is_doubted():
    assert doubted("cm", ROOM, [pair(6.5, 6.4), pair(6.4, 6.5)]) == set()
    assert doubted("cm", ROOM, [pair(6.5, 6.4), pair(6.4, 18.4)]) == {"frame B, hanger, right"}
    assert doubted("cm", ROOM, [pair(18.4, 6.4), pair(6.4, 6.5)]) == {"frame A, hanger, left"}
    assert doubted("cm", ROOM, [pair(6.4, 8.4), pair(6.4, 6.5)]) == set()  # beside an old hole


def test_wires_that_are_deep_alike_are_meant_to_be():
    """0.41 of the height, and both: they are to hide what they hang over.  One alone, deeper, is measured again."""
    deep = prints(30, 29.5, width=53, height=73)
    assert doubted("cm", ROOM, deep) == set()
    assert doubted("cm", ROOM, [deep[0] | {"drop": 33}]) == {"frame A, drop"}
    assert doubted("cm", ROOM, deep[:1]) == set()  # no slip explains it
    inches = prints("14", "13 3/4", width="25", height="33")
    assert doubted("in", INCHES, inches) == set()
    assert doubted("in", INCHES, prints("14", "13.9", width="25", height="33")) == {"frame A, drop", "frame B, drop"}


def test_small_frames_whose_wires_are_deep_and_that_are_heavy_may_be_in_inches():
    small = [frame | {"weight": "1.6 kg"} for frame in prints(5.2, 5, 5.4, width=13, height=17)]
    assert "all frames, width and height" in doubted("cm", ROOM, small)
    light = [frame | {"weight": "300 g"} for frame in small]
    assert doubted("cm", ROOM, light) == set()


def test_the_one_at_the_other_end_of_a_row_that_was_turned():
    cleat = {"kind": "cleat", "left": 10, "right": 10, "screw_below": 2}
    middle = {"width": 66, "height": 56, "drop": 5, "hanger": cleat}
    ends = prints(16.2, 16.1, width=49, height=64)
    lies = {"width": 64, "height": 49, "drop": 16.1}
    assert doubted("cm", ROOM, [ends[0], middle, middle, ends[1]]) == set()
    assert doubted("cm", ROOM, [ends[0], middle, middle, lies]) == {"frame D, width"}
    assert doubted("cm", ROOM, [ends[0], lies, middle, middle]) == set()  # nothing says that they are a pair


def test_a_drop_off_all_of_several_that_agree():
    nine = prints(4.5, 4.6, 4.7, 4.3, 4.5, width=21, height=26)
    assert doubted("cm", {"width": 500, "height": 250}, nine) == set()
    assert doubted("cm", {"width": 500, "height": 250}, [*nine[:3], nine[3] | {"drop": 6.3}, nine[4]]) == {
        "frame D, drop"
    }
    assert doubted("cm", ROOM, [*nine[:2], nine[3] | {"drop": 6.7}]) == {"frame C, drop"}  # two that agree will do
    assert doubted("cm", ROOM, [*nine[:2], nine[3] | {"drop": 6.2}]) == set()  # a wire made anew


def test_a_ring_as_far_down_as_the_other_on_its_frame_is_right():
    """97 is 79 with its figures the other way round; 98 on its other side says that it is right."""
    one = {"width": 34, "height": 40, "hanger": rings_down(7.4, 7.2)}
    assert doubted("cm", ROOM, [one, one | {"hanger": rings_down(9.8, 9.7)}]) == set()
    assert "frame B, hanger, drop_right" in doubted("cm", ROOM, [one, one | {"hanger": rings_down(7.4, 9.7)}])


def rings_down(left, right):
    return {"kind": "rings", "left": 4, "right": 4, "drop_left": left, "drop_right": right, "seen_from": "back"}


def test_weights_on_two_scales():
    oak = [frame | {"weight": "2.3 kg"} for frame in prints(6, 6.1, 6, width=46, height=36)]
    black = {"width": 51, "height": 41, "drop": 7, "weight": "1.9 kg"}
    assert doubted("cm", ROOM, [*oak, black]) == set()
    assert meant("cm", ROOM, [*oak, black | {"weight": "4.2 lb"}]) == {"frame D, weight": "4.2 kg"}
    assert doubted("cm", ROOM, [*oak, black | {"weight": "1900 g"}]) == set()
    assert doubted("cm", ROOM, [*oak, oak[0] | {"weight": "5.1 lb"}]) == set()  # 2.3 kg, as its fellows


def test_a_weight_on_the_other_scale_is_asked_about_only_where_it_would_be_nearer_there():
    """670 g on 9 1/8 in square is 12.5 kg/m².  3 lb on 13 1/8 × 17 1/8 in is 9.4, and 3 kg were 20.7; 1.8 lb is 5.6,
    and 1.8 kg were 12.4."""
    square = [{"width": "9 1/8", "height": "9 1/8", "drop": "1 3/8", "weight": "670 g"}] * 3
    large = {"width": "13 1/8", "height": "17 1/8", "drop": "2 1/2"}
    assert doubted("in", INCHES, [*square, large | {"weight": "3.0 lb"}]) == set()
    assert meant("in", INCHES, [*square, large | {"weight": "1.8 lb"}]) == {"frame D, weight": "1.8 kg"}


def test_the_screws_of_a_rail_are_not_at_its_very_ends():
    def railed(inset):
        hanger = {"kind": "cleat", "left": inset, "right": inset, "screw_below": 2}
        return doubted("cm", ROOM, [{"width": 70, "height": 50, "drop": 4, "hanger": hanger}])

    assert railed(9) == set() == railed(2)
    assert railed(0.9) == {"frame A, hanger, left", "frame A, hanger, right"}


def test_twins_of_which_one_hangs_by_a_slack_wire():
    """2.5 cm more than both: wires of one make are cut to one length."""
    assert doubted("cm", ROOM, prints(9.9, 10.1, 12.6)) == {"frame C, drop"}
    assert doubted("cm", ROOM, prints(9.9, 10.1, 11.2)) == set()
