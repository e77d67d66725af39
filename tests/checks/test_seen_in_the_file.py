"""What a careful person sees in the job file alone is doubted; the sound neighbour of each slip is not.

Each pair is worked out by hand from what people do; the limits are those of checks/doubts, our own.
"""

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.checks import find
from templates_gen.checks.doubts.readings import doubled_figure
from templates_gen.job.reading.building import build_job
from tests.doubting import INCHES, ROOM, doubted, meant, prints
from tests.jobs import SAMPLES

LONG = {"width": 560, "height": 250}
SOFA = {"kind": "furniture", "name": "sofa", "left": 100, "bottom": 0, "width": 210, "height": 82}


def rings(left, right, drop=12.0):
    hanger = {"kind": "rings", "left": left, "right": right, "drop_left": drop, "drop_right": drop}
    return {"width": 44, "height": 54, "hanger": hanger | {"seen_from": "back"}}


def test_sizes_that_all_are_inches_make_drops_deep_and_gaps_wide():
    """16 1/2 × 21 in is 41.9 × 53.3 cm, whose drops of 8.2 cm are 15 %."""
    assert doubted("cm", ROOM, prints(8.2, 8.4, 7.9, width=16.5, height=21)) == {"all frames, width and height"}
    assert doubted("cm", ROOM, prints(8.2, 8.4, 7.9, width=42, height=53)) == set()
    assert doubted("cm", ROOM, prints(4.2, 4.4, 4.1, width=16.5, height=21), gap=6) == set()


def test_sizes_that_all_are_inches_make_frames_heavy():
    """19.5 × 27.5 in is 49.5 × 69.9 cm, where 2.8 kg is 8 kg/m² and not 52."""
    teeth = [each | {"hanger": "sawtooth", "weight": "2.8 kg"} for each in prints(1, 1.1, width=19.5, height=27.5)]
    assert doubted("cm", ROOM, teeth, gap=5) == {"all frames, width and height"}
    assert doubted("cm", ROOM, [each | {"width": 49.5, "height": 70} for each in teeth], gap=5) == set()
    assert doubted("cm", ROOM, [each | {"weight": "1.7 kg"} for each in teeth], gap=5) == set()
    tiles = [each | {"width": 15, "height": 15, "weight": "1.1 kg"} for each in teeth]
    assert doubted("cm", ROOM, tiles, gap=4) == set()  # 49 kg/m², but small


def test_miniatures_of_a_size_sold_in_inches_hang_on_wires_of_their_own():
    assert doubted("cm", ROOM, prints(1.8, 1.9, width=9, height=12), gap=4) == set()


@pytest.mark.parametrize(("at", "found"), [(0, True), (1, True), (2, False), (4, True)])
def test_one_that_lies_in_a_row_on_teeth_is_turned_but_not_in_its_middle(at, found):
    frames = [frame | {"hanger": "sawtooth"} for frame in prints(16, 17, 16, 17, 16, width=330, height=430)]
    frames[at] |= {"width": 430, "height": 330}
    wall = {"width": 3800, "height": 2480}
    assert doubted("mm", wall, frames, gap=70) == ({f"frame {'ABCDE'[at]}, width"} if found else set())


def test_nearly_square_frames_are_not_turned():
    frames = [{"width": 27.5, "height": 27.4, "hanger": "sawtooth", "drop": 1.2}] * 4
    assert doubted("cm", ROOM, frames, arrangement="grid", across=2) == set()


def test_rings_that_mirror_those_of_all_twins_were_seen_from_the_other_side():
    others = [rings(5.1, 6.6), rings(5.2, 6.6, 12.2)]
    assert doubted("cm", ROOM, [*others, rings(5, 6.5)]) == set()
    assert meant("cm", ROOM, [*others, rings(6.5, 5.1)]) == {
        "frame C, hanger, left": "5.1 cm",
        "frame C, hanger, right": "6.5 cm",
    }
    assert doubted("cm", ROOM, [rings(6, 6.1), rings(6.1, 6), rings(6.2, 6)]) == set()  # put on by eye
    assert doubted("cm", ROOM, [rings(5.1, 6.6), rings(6.6, 5.1)]) == {"frame B, hanger, right"}


def test_the_one_frame_seen_from_another_side_than_all_others_is_doubted():
    back = [rings(5, 5.5), rings(5.1, 5.1), rings(5.2, 5)]  # 5 mm aside
    assert doubted("cm", ROOM, back) == set()

    def from_front(frame):
        return frame | {"hanger": frame["hanger"] | {"seen_from": "front"}}

    assert doubted("cm", ROOM, [from_front(back[0]), *back[1:]]) == {"frame A, hanger, seen_from"}
    assert doubted("cm", ROOM, [back[0], from_front(back[1]), back[2]]) == set()  # both sides are alike
    assert doubted("cm", ROOM, [from_front(rings(5, 5.4)), *back[1:]]) == set()  # 4 mm to one side, which hardly shows
    tilts = rings(5.1, 5.1) | {"hanger": rings(5.1, 5.1)["hanger"] | {"drop_left": 12, "drop_right": 12.3}}
    assert doubted("cm", ROOM, [from_front(tilts), *back[1:]]) == {"frame A, hanger, seen_from"}
    assert doubted("cm", ROOM, [from_front(back[0]), from_front(back[1]), *back[:2]]) == set()


def test_small_frames_weigh_more_by_area_than_one_that_is_large():
    """1.9 lb on 6 1/4 × 8 1/4 in is 26 kg/m²; 5.4 lb on 17 3/8 × 21 3/8 in is 10."""
    small = [{"width": "6 1/4", "height": "8 1/4", "drop": "1 1/4", "weight": "1.9 lb"}] * 3
    large = {"width": "17 3/8", "height": "21 3/8", "drop": "3 1/4"}
    assert doubted("in", INCHES, [*small, large | {"weight": "5.4 lb"}]) == set()
    assert doubted("in", INCHES, [*small, large | {"weight": "1.9 lb"}]) == {"frame D, weight"}


def test_a_ring_read_a_whole_inch_too_far_is_unlike_its_other():
    def pair(right):
        hanger = {
            "kind": "rings",
            "left": "2 3/4",
            "right": right,
            "drop_left": 6,
            "drop_right": 6,
            "seen_from": "back",
        }
        return {"width": 24, "height": 30, "hanger": hanger}

    assert doubted("in", INCHES, [pair("3 3/4")]) >= {"frame A, hanger, right"}
    assert doubted("in", INCHES, [pair("3 1/4")]) == set()


SIDES = ("drop_left", "drop_right")


@pytest.mark.parametrize(
    ("left", "drops", "fields"),
    [
        (-1.2, (-1.2, -1.2), SIDES),
        (7.4, (1.2, 1.2), ("kind",)),  # measured without any sign: one question a frame, not one a hole
        (7.4, (1.2, -1.2), SIDES),  # one is behind; the other is unlike it
        (7.4, (-1.2, -1.2), ()),
        (-1.5, (15, 15), ()),
    ],
)
def test_the_hole_of_a_plate_is_beside_or_over_its_frame(left, drops, fields):
    hanger = {
        "kind": "plates",
        "seen_from": "front",
        "left": left,
        "right": left,
        **dict(zip(SIDES, drops, strict=True)),
    }
    told = doubted("cm", ROOM, [{"width": 52, "height": 52, "hanger": hanger}])
    assert told == {f"frame A, hanger, {field}" for field in fields}


def test_plates_are_seen_from_the_front():
    hanger = {"kind": "plates", "left": -1.4, "right": -1.4, "drop_left": 6.1, "drop_right": 5.7, "seen_from": "front"}
    assert doubted("cm", ROOM, [{"width": 41, "height": 31, "hanger": hanger}]) == set()
    assert doubted("cm", ROOM, [{"width": 41, "height": 31, "hanger": hanger | {"left": 5, "right": 5}}]) != set()


def test_an_outlet_behind_a_radiator_is_no_slip_and_a_radiator_at_eye_level_is():
    radiator = {"kind": "radiator", "left": 100, "bottom": 12, "width": 110, "height": 60}
    outlet = {"kind": "outlet", "left": 120, "bottom": 30, "width": 8, "height": 8}
    frames = prints(7, 7.1)
    assert doubted("cm", ROOM, frames, [radiator, outlet]) == set()
    assert doubted("cm", ROOM, frames, [radiator, outlet | {"kind": "switch"}]) != set()
    assert doubted("cm", ROOM, frames, [radiator | {"bottom": 95}]) == set()
    assert doubted("cm", ROOM, frames, [radiator | {"bottom": 114}]) == {"feature 1 (radiator), bottom"}


def test_a_depth_many_times_that_of_all_others_is_in_another_unit():
    two = [each | {"depth": 1.6} for each in prints(7, 7.1)]
    assert meant("cm", ROOM, [*two, two[0] | {"depth": 16}])["frame C, depth"] == "16 mm"
    assert doubted("cm", ROOM, [*two, two[0] | {"depth": 4.5}]) == set()
    box = {"width": 400, "height": 500, "drop": 60, "depth": 240}
    assert doubted("mm", {"width": 4000, "height": 2500}, [box]) == set()  # a model of a ship


def test_a_mirror_weighs_what_its_glass_does():
    """2.5 kg/m² for each mm (EN 572-1): 142 × 178 cm of 4 mm have 25 kg."""
    glass = {"width": 142, "height": 178, "drop": 12}
    assert doubted("cm", ROOM, [glass | {"title": "Mirror", "weight": "4.8 kg"}]) == {"frame A, weight"}
    assert doubted("cm", ROOM, [glass | {"title": "Mirror", "weight": "38 kg"}]) == set()
    assert doubted("cm", ROOM, [glass | {"title": "Sailcloth", "weight": "4.8 kg"}]) == set()


def test_a_slot_lies_as_far_down_on_a_large_frame_as_on_small_ones():
    def slots(width, height, drop):
        hanger = {"kind": "keyholes", "left": "2", "right": "2"}
        return {"width": width, "height": height, "drop": drop, "hanger": hanger}

    small = [slots("11 1/2", "14 1/2", "1 13/16")] * 2
    assert doubted("in", INCHES, [small[0], slots("25 1/2", "31 1/2", "2"), small[1]]) == set()
    wires = [{"width": "11 1/2", "height": "14 1/2", "drop": "2 1/4"}] * 2
    assert doubted("in", INCHES, [*wires, {"width": "25 1/2", "height": "31 1/2", "drop": "2"}]) != set()


def test_one_of_three_an_inch_higher_was_misread():
    three = [{"width": "24 1/8", "height": "18 1/8", "drop": "3"}] * 3
    assert meant("in", INCHES, [*three[:2], three[2] | {"height": "19 1/8"}]) == {"frame C, height": "18.125 in"}
    assert doubted("in", INCHES, [*three[:2], three[2] | {"height": "19 3/8"}]) == set()
    assert doubted("in", INCHES, [*three[:2], *([three[2] | {"height": "19 1/8"}] * 2)]) == set()


def test_a_screw_of_a_cleat_on_the_very_edge_is_seen_though_the_others_go_by_studs():
    cleat = {
        "width": 62,
        "height": 44,
        "drop": 7,
        "hanger": {"kind": "cleat", "left": 11, "right": 11, "screw_below": 2},
    }
    edge = cleat | {"hanger": cleat["hanger"] | {"left": 0.9, "right": 0.9}}
    assert doubted("cm", ROOM, [cleat, cleat]) == set()
    assert doubted("cm", ROOM, [cleat, edge]) >= {"frame B, hanger, left"}


def test_a_side_copied_from_the_other_or_from_the_next_frame_is_seen():
    row = prints(7.6, 7.9, 7.7, width=50, height=40)
    assert doubted("cm", ROOM, row) == set()
    assert meant("cm", ROOM, [*row[:2], row[2] | {"width": 40}]) == {"frame C, width": "50 cm"}
    assert doubted("cm", ROOM, [*row[:2], row[2] | {"width": 40, "drop": 6.5}]) == set()  # of another make
    small, large = prints(6.1, 6.4, 6.3, width=33, height=43), {"width": 53, "height": 73, "drop": 11.4}
    assert doubted("cm", ROOM, [*small, large], gap=6) == set()
    assert doubted("cm", ROOM, [*small[:2], small[2] | {"height": 73}, large], gap=6) >= {"frame C, height"}
    assert doubted("cm", ROOM, [*small[:2], small[2] | {"height": 63}, large], gap=6) == set()


@pytest.mark.parametrize(("gap", "by", "found"), [(15, 10, True), (15, 14, False), (10, 8, False), (21, 8, True)])
def test_the_gap_and_the_room_above_a_sofa_that_changed_places(gap, by, found):
    above = {"height": {"above": "sofa", "by": by}, "centre_on": "sofa"}
    told = doubted("cm", LONG, prints(7.6, 7.9, 7.7, width=42, height=52), [SOFA | {"width": 230}], gap=gap, **above)
    assert ("group, height, by" in told) == found


def test_a_window_ends_higher_than_people_look():
    """920 mm with its figures swapped is 290: the window would end at 1340."""
    window = {"kind": "window", "left": 3000, "width": 800, "height": 1050}
    wall, frames = {"width": 4000, "height": 2500}, prints(60, 62, width=300, height=400)
    assert meant("mm", wall, frames, [window | {"bottom": 290}]) == {"feature 1 (window), bottom": "920 mm"}
    assert doubted("mm", wall, frames, [window | {"bottom": 920}]) == set()
    assert doubted("mm", wall, frames, [window | {"bottom": 310}]) == set()  # 130 and 1300 fit no better


def test_a_top_at_eye_level_was_the_middle():
    assert meant("cm", ROOM, prints(7, 7.1, width=40, height=50), height={"top": 150}) == {
        "group, height, top": "175 cm"
    }
    assert doubted("cm", ROOM, prints(7, 7.1, width=40, height=50), height={"top": 165}) == set()


def test_studs_whose_figures_changed_places():
    wall = ROOM | {"build": "drywall", "studs": {"first": 38, "spacing": 26.5}}
    assert doubted("cm", wall, prints(7, 7.1)) == {"wall, studs, spacing"}
    assert doubted("cm", ROOM | {"build": "drywall", "studs": {"first": 38, "spacing": 30.5}}, prints(7, 7.1)) == set()


def test_of_two_twins_the_second_is_weighed_against_the_first():
    """6 kg is 3.3 times 1.8: more than 3.2, which two of one size and glazing hardly ever differ by."""
    two = prints(7, 7.1)
    assert doubted("cm", ROOM, [two[0] | {"weight": "1.8 kg"}, two[1] | {"weight": "2.1 kg"}]) == set()
    assert doubted("cm", ROOM, [two[0] | {"weight": "1.8 kg"}, two[1] | {"weight": "6 kg"}]) == {"frame B, weight"}
    large = {"width": 60, "height": 80, "drop": 11, "weight": "4.2 kg"}
    odd = [two[0] | {"weight": "1.8 kg"}, two[1] | {"weight": "6 kg"}, large]
    assert doubted("cm", ROOM, odd) == {"frame B, weight"}


def test_a_figure_that_was_typed_twice_is_seen():
    assert [reading.text for reading in doubled_figure(11.75 * 25.4, "in")] == ["1.75 in"]
    assert [reading.text for reading in doubled_figure(4.4, "mm")] == []
    assert meant("cm", ROOM, [*prints(6, 6.1), {"width": 40, "height": 550, "drop": 6}])["frame C, height"]


def test_the_figures_of_all_others_in_another_unit():
    prints_ = [{"width": "43 cm", "height": "53 cm", "drop": drop} for drop in ("7.6 cm", "7.9 cm", "7.7 cm")]
    assert doubted("in", INCHES, prints_) == set()
    assert meant("in", INCHES, [prints_[0] | {"width": "43 in"}, *prints_[1:]])["frame A, width"] == "43 cm"
    assert doubted("in", INCHES, [prints_[0] | {"width": "17 in"}, *prints_[1:]]) == set()  # 43 cm
    sizes = [(8, 10), (16, 20), (24, 36)]
    inches = [{"width": wide, "height": high, "drop": high / 8} for wide, high in sizes]
    metric = {"width": "20.3 cm", "height": "25.4 cm", "drop": "3.2 cm"}
    assert doubted("in", INCHES | {"width": 190}, [*inches, metric]) == set()  # 20.3 is no other's figure


def test_a_unit_that_was_written_where_the_number_is_usual_without_it():
    radiator = {"kind": "radiator", "left": 130, "bottom": 12, "width": 89, "height": 59}
    above = {"height": {"above": "radiator", "by": "30 mm"}, "centre_on": "radiator"}
    assert doubted("cm", ROOM, prints(6), [radiator], **above) == {"group, height, by"}
    assert doubted("cm", ROOM, prints(6), [radiator], **above | {"height": {"above": "radiator", "by": 30}}) == set()
    assert doubted("cm", ROOM | {"width": "12 m"}, prints(6)) == set()  # 12 cm is no wall


@pytest.mark.parametrize(("run", "rise", "found"), [(18, 26, True), (20, 23, False), (26, 18, False)])
def test_run_and_rise_that_changed_places(run, rise, found):
    stairs = {"run": run, "rise": rise, "up": "right", "nosing": [40, rise]}
    wall = {"width": 420, "height": 480, "stairs": stairs}
    told = doubted("cm", wall, prints(5, 5), arrangement="stairs", height={"above_nosings": 150})
    assert ("wall, stairs, run" in told) == found


@pytest.mark.parametrize(
    ("eave", "ridge", "found"), [(130, 340, set()), (13, 340, {3}), (90, 340, set()), (130, 3400, {4})]
)
def test_a_corner_of_an_outline_lost_a_figure_or_has_one_too_many(eave, ridge, found):
    wall = {"outline": [[0, 0], [420, 0], [420, eave], [210, ridge], [0, 130]]}
    told = doubted("cm", wall, prints(5.5, width=42, height=32), centre_on=210, height={"centre": 150})
    assert {at for at in range(1, 6) if f"wall, outline, corner {at}" in told} == found


def test_frames_around_something_that_begins_near_the_floor():
    cabinet = {"kind": "other", "name": "wall cabinet", "left": 145, "bottom": 130, "width": 80, "height": 60}
    frames = [{"width": 20, "height": 26, "hanger": "sawtooth", "drop": 1.2}] * 2
    around = {"arrangement": "around", "around": "wall cabinet", "left": ["A"], "right": ["B"], "gap_around": 9}
    assert doubted("cm", ROOM, frames, [cabinet], **around) == set()
    low = meant("cm", ROOM, frames, [cabinet | {"bottom": 13}], **around)
    assert low == {"feature 1 (wall cabinet), bottom": "130 cm"}


def test_a_slot_off_those_of_its_twins_by_less_than_a_wire():
    def slots(*drops):
        return [{"width": 26, "height": 20, "drop": drop, "hanger": SLOTS} for drop in drops]

    assert doubted("cm", LONG, slots(3.6, 3.7, 3.5, 4.9)) == {"frame D, drop"}
    assert doubted("cm", LONG, slots(3.6, 3.7, 3.5, 4.4)) == set()


SLOTS = {"kind": "keyholes", "left": 3, "right": 3}


def test_rings_of_a_wire_that_are_far_in_from_both_sides():
    """The frame stands: 29 wide and 41 high."""
    wire = {"kind": "wire", "apart": "12 1/2", "ring_separation": "27 1/8", "ring_depth": "11 1/8"}
    assert doubted("in", INCHES, [{"width": 29, "height": 41, "drop": "7", "hanger": wire}]) == set()
    lying = doubted("in", INCHES, [{"width": 41, "height": 29, "drop": "7", "hanger": wire}])
    assert lying == {"frame A, hanger, ring_separation"}


def test_one_of_two_of_a_type_that_has_its_sides_the_other_way_round():
    lying = {"width": 44.5, "height": 31.8, "type": "big", "weight": "1.65 kg", "drop": 5.2}
    standing, other = lying | {"width": 31.8, "height": 44.5}, {"width": 34.2, "height": 44.3, "drop": 9.6}
    assert _typed([lying, standing | {"drop": 5}, other]) == {"frame A, width"}
    assert _typed([lying, standing | {"drop": 7.4}, other]) == set()
    del standing["type"]
    assert _typed([lying, standing | {"drop": 5}, other]) == set()


def _typed(frames):
    """The fields that are doubted in a job of a type."""
    title = {"title": "Ferry tickets", "unit": "cm", "date": "2026-03-14"}
    named = [{"id": "ABC"[at], **frame} for at, frame in enumerate(frames)]
    kinds = {"big": {"width": 44.5, "height": 31.8}}
    raw = {"job": title, "wall": ROOM, "group": {"gap": 5}, "frame": named, "frame_type": kinds}
    found = find(plan_wall(build_job(raw, SAMPLES / "job.toml")))
    return {value.rpartition(": ")[0] for each in found for value in each.confirm}


def test_a_frame_twice_as_long_as_all_others_of_a_grid():
    six = prints(1.9, 1.7, 1.9, 1.7, width=11, height=11)
    grid = {"arrangement": "grid", "across": 2, "gap": 4}
    assert doubted("cm", ROOM, six, **grid) == set()
    assert doubted("cm", ROOM, [six[0] | {"width": 22}, *six[1:]], **grid) == {"frame A, width"}
    assert doubted("cm", ROOM, [six[0] | {"width": 14}, *six[1:]], **grid) == set()


@pytest.mark.parametrize(("bottom", "found"), [(115, False), (170, False), (185, True)])
def test_a_switch_higher_than_one_reaches(bottom, found):
    switch = {"kind": "switch", "left": 20, "bottom": bottom, "width": 8, "height": 8}
    assert (doubted("cm", ROOM, prints(6), [switch]) == {"feature 1 (switch), bottom"}) == found


def test_a_picture_with_the_side_of_the_one_beside_it():
    four = [
        {"width": 53, "height": 73},
        {"width": 16, "height": 21},
        {"width": 43, "height": 43},
        {"width": 16, "height": 21},
    ]
    four = [frame | {"hanger": "sawtooth", "drop": 1.2} for frame in four]
    assert doubted("cm", ROOM, four) == set()
    assert doubted("cm", ROOM, [four[0], four[1] | {"height": 73}, *four[2:]]) == {"frame B, height"}


def test_figures_change_places_in_a_number_whose_unit_is_written_too():
    squares = [{"width": "414 mm", "height": "414 mm", "drop": drop} for drop in ("59 mm", "56 mm", "57 mm")]
    assert doubted("mm", WALL, squares) == set()
    assert meant("mm", WALL, [*squares[:2], squares[2] | {"width": "144 mm"}])["frame C, width"] == "414 mm"
    assert doubted("mm", WALL, [*squares[:2], squares[2] | {"width": "250 mm"}]) == set()


WALL = {"width": 2998, "height": 2732}


def test_a_square_that_weighs_what_twins_do_that_are_longer():
    frames = [frame | {"weight": "1.7 lb"} for frame in prints("5/16", "5/16", "5/16", width="12 1/4", height="9 1/4")]
    other = {"width": "8 1/4", "height": "10 1/4", "drop": "3/8", "weight": "1.3 lb"}
    four = [frame | {"hanger": "sawtooth"} for frame in [*frames, other]]
    square = four[0] | {"height": "12 1/4"}
    assert doubted("in", INCHES, four) == set()
    assert doubted("in", INCHES, [square, *four[1:]]) == {"frame A, height"}
    assert doubted("in", INCHES, [square | {"weight": "2.2 lb"}, *four[1:]]) == set()
