"""What is out of step with the rest of its job is doubted; what is as odd and right beside it is not.

Each pair is worked out by hand from what people do; the limits are those of checks/doubts, our own.
"""

import pytest

from templates_gen.base.record import replace
from templates_gen.checks.doubts.twins import twin_doubts
from tests.doubting import INCHES, ROOM, doubted, meant, prints
from tests.jobs import frame, job

BUFFET = {"kind": "furniture", "name": "buffet", "left": 14, "bottom": 0}
SMALL = {"width": "11 1/4", "height": "14 1/4"}


def test_tenths_of_an_inch_among_fractions_are_centimetres():
    """17.8 cm is 7 in, 7.6 cm 3 in; no tape in inches has tenths."""
    frames = prints("2 1/8", "2 1/4", "2 1/8", **SMALL)
    assert doubted("in", INCHES, frames, gap="2 1/2", height={"centre": 58}) == set()
    assert meant("in", INCHES, frames, gap=7.6, height={"centre": 58}) == {"group, gap": "7.6 cm"}
    couch = {"kind": "furniture", "name": "couch", "left": 40, "bottom": 0, "width": 80, "height": 32}
    above = {"above": "couch", "by": 17.8}
    assert doubted("in", INCHES, frames, [couch], gap=3, height=above, centre_on="couch") == {"group, height, by"}
    rings = {"kind": "rings", "left": 4.8, "right": 4.8, "drop_left": "2 1/8", "drop_right": "2 1/8"}
    found = doubted("in", INCHES, [*frames[:2], {**SMALL, "hanger": rings}])
    assert found == {"frame C, hanger, left", "frame C, hanger, right"}


def test_who_types_in_tenths_throughout_has_worked_them_out():
    frames = [{"width": 15.7, "height": 19.7, "drop": drop} for drop in (2.4, 2.6)]
    assert doubted("in", INCHES, frames, gap=2.4) == set()
    assert doubted("in", INCHES, [each | {"drop": "2 3/8"} for each in frames], gap=2) >= {"frame A, width"}


def test_sides_in_tenths_beside_drops_in_fractions_are_centimetres():
    """20.6 × 15.6 cm is 8 1/8 × 6 1/8 in."""
    assert "all frames, width and height" in doubted("in", INCHES, prints("1", "1 1/8", width=15.6, height=20.6))
    assert doubted("in", INCHES, prints("1", "1 1/8", width="6 1/8", height="8 1/8")) == set()


def test_one_frame_in_centimetres_of_another_size_than_the_rest():
    frames = [*prints("2 1/8", "2 1/4", width="13 5/8", height="10 5/8")]
    large = {"width": 44.8, "height": 54.9, "drop": "3 3/4"}
    assert "frame C, width" in doubted("in", INCHES, [*frames, large])
    assert doubted("in", INCHES, [*frames, large | {"width": "17 5/8", "height": "21 5/8"}]) == set()


@pytest.mark.parametrize(
    ("width", "height", "odd"),
    [("35 1/2", 56, True), (56, "35 1/2", False), (36, 44, False), (42, 52, False)],  # the last two: a tall chest
)
def test_furniture_higher_than_wide_for_its_kind_was_turned(width, height, odd):
    feature = BUFFET | {"width": width, "height": height}
    assert doubted("in", INCHES, prints(2, "2 1/8", **SMALL), [feature]) == (
        {"feature 1 (buffet), height"} if odd else set()
    )


def test_a_work_bench_stands_on_the_floor():
    bench = BUFFET | {"name": "work bench", "width": 80, "height": 36}
    frames = prints(2, "2 1/8", **SMALL)
    assert doubted("in", INCHES, frames, [bench | {"bottom": 36}]) == {"feature 1 (work bench), bottom"}
    assert doubted("in", INCHES, frames, [bench]) == set()


@pytest.mark.parametrize(
    ("first", "second", "found"),
    [
        (180, 625, {"wall, studs, first"}),
        (180, 805, set()),
        (255, 625, {"wall, studs, first"}),
        (150, 600, set()),
        (263, 641, {"wall, studs, first"}),
        (263, 671, set()),
        (323.8, 628.6, set()),
    ],
)
def test_a_second_stud_measured_from_the_first_is_none_that_is_built(first, second, found):
    """445, 370 and 378 mm are built nowhere; 625, 450, 408 and 304.8 mm are."""
    wall = {"width": 4200, "height": 2500, "build": "drywall", "studs": {"first": first, "second": second}}
    frames = prints(60, 61, width=400, height=500)
    assert doubted("mm", wall, frames) == found
    # behind lath and plaster studs stand as the carpenter put them, but 625 is where one is that was set out evenly
    assert doubted("mm", wall | {"build": "plaster"}, frames) == (found if second == 625 else set())


def test_the_lowest_nosing_is_above_the_floor():
    wall = {"width": 420, "height": 480, "stairs": {"run": 26, "rise": 18, "up": "right", "nosing": [40, 18]}}
    group = {"arrangement": "stairs", "gap": 8, "height": {"above_nosings": 150}}
    assert doubted("cm", wall, prints(5, 5.1), **group) == set()
    on_floor = wall | {"stairs": wall["stairs"] | {"nosing": [40, 0]}}
    assert doubted("cm", on_floor, prints(5, 5.1), **group) == {"wall, stairs, nosing"}


@pytest.mark.parametrize(("gap", "found"), [(27.8, {"group, gap"}), (33, {"group, gap"}), (15, set())])
def test_a_gap_as_wide_as_a_frame_was_measured_from_middle_to_middle(gap, found):
    frames = prints(4, 4.1, 4, 4.2, width=27.8, height=34.8)
    assert doubted("cm", ROOM, frames, arrangement="grid", across=2, gap=gap) == found


def test_tall_frames_hang_further_apart_than_they_are_wide():
    banners = [{"width": 22, "height": 200, "drop": 20}] * 2
    assert doubted("cm", ROOM, banners, gap=30, height={"centre": 145}) == set()


def test_teeth_hang_alike_where_a_wire_does_not():
    """0.8 is 2.1 cm read in inches: teeth do not stretch, and a wire of this drop may be 1.5 cm shorter."""
    teeth = [frame | {"hanger": "sawtooth"} for frame in prints(2.1, 2.3, 2.6, 0.8)]
    assert doubted("cm", {"width": 500, "height": 250}, teeth) == {"frame D, drop"}
    assert doubted("cm", ROOM, [frame | {"hanger": "sawtooth"} for frame in prints(2.1, 1.2)]) == set()
    assert doubted("cm", ROOM, prints(8.4, 6.9)) == set()


def test_wires_that_all_differ_widely_are_their_own_make():
    stair = prints(8.6, 11.7, 9.8, 7.9, 11.1, 9.2, 9.8, 10.5, width=20, height=26)
    assert doubted("cm", {"width": 500, "height": 250}, stair) == set()
    assert doubted("cm", {"width": 500, "height": 250}, [*stair[:7], stair[7] | {"drop": 13.6}]) == {"frame H, drop"}


def test_a_relief_on_screws_is_heavy_and_paper_between_slats_is_light():
    relief = {"width": 32, "height": 38, "drop": 3.5, "weight": "17.5 kg", "fixing": {"kind": "screw"}}
    assert doubted("cm", ROOM, [relief]) == set()
    assert doubted("cm", ROOM, [relief | {"fixing": "nail"}]) == {"frame A, weight"}
    poster = {"width": 70, "height": 100, "drop": 2, "weight": "250 g", "hanger": "sawtooth"}
    assert doubted("cm", ROOM, [poster]) == set()
    assert doubted("cm", ROOM, [poster | {"weight": "100 g"}]) == {"frame A, weight"}
    assert doubted("cm", ROOM, [poster | {"glazing": "glass"}]) == {"frame A, weight"}


def test_a_canvas_is_not_weighed_against_glass():
    glass = [frame | {"weight": "5.7 kg", "glazing": "glass"} for frame in prints(9, 9.1, width=60, height=80)]
    canvas = {"width": 50, "height": 80, "drop": 9, "weight": "1.2 kg"}
    assert doubted("cm", ROOM, [*glass, canvas | {"glazing": "none"}]) == set()
    assert doubted("cm", ROOM, [*glass, canvas]) == {"frame C, weight"}


def test_pictures_stand_on_a_ledge():
    ledge = {"kind": "furniture", "name": "picture ledge", "left": 90, "bottom": 100, "width": 200, "height": 4}
    above = {"height": {"above": "picture ledge", "by": 3}, "centre_on": "picture ledge"}
    assert doubted("cm", ROOM, prints(6, 6.1), [ledge], **above) == set()
    assert doubted("cm", ROOM, prints(6, 6.1), [ledge | {"bottom": 0, "height": 80}], **above) == {"group, height, by"}


@pytest.mark.parametrize(("bottom", "width", "found"), [(80, 300, True), (300, 80, False), (300, 260, False)])
def test_a_socket_whose_width_is_its_height_above_the_floor(bottom, width, found):
    socket = {"kind": "outlet", "left": 300, "bottom": bottom, "width": width, "height": 86}
    wall = {"width": 4200, "height": 2500}
    told = doubted("mm", wall, prints(60, 61, width=400, height=500), [socket])
    assert told == ({"feature 1 (outlet), bottom"} if found else set())


def test_a_lowest_edge_above_all_eyes_was_the_top():
    frames = prints("2 1/8", "2 1/4", **SMALL)
    assert meant("in", INCHES, frames, height={"bottom": 69}) == {"group, height, bottom": "54.75 in"}  # 69 - 14 1/4
    assert doubted("in", INCHES, frames, height={"bottom": 51}) == set()


def test_deep_wires_differ_by_more():
    assert doubted("cm", ROOM, prints(20.8, 22.6, width=60, height=80)) == set()
    assert doubted("cm", ROOM, prints(10.8, 13.2, width=60, height=80)) == {"frame B, drop"}


def test_a_group_is_nearer_to_itself_than_to_what_it_hangs_above():
    frames = prints(6, 6.1, 6, 6.2)
    bench = {"kind": "furniture", "name": "counter", "left": 90, "bottom": 0, "width": 240, "height": 80}
    grid = {"arrangement": "grid", "across": 2, "centre_on": "counter"}
    wall = {"width": 420, "height": 280}
    told = doubted("cm", wall, frames, [bench], gap=16, height={"above": "counter", "by": 7}, **grid)
    assert told == {"group, height, by"}
    assert doubted("cm", wall, frames, [bench], gap=7, height={"above": "counter", "by": 16}, **grid) == set()


@pytest.mark.parametrize(("name", "odd"), [("desk", True), ("chest of drawers", False)])
def test_a_desk_as_high_as_a_chest_was_turned(name, odd):
    feature = {"kind": "furniture", "name": name, "left": 100, "bottom": 0, "width": 72, "height": 125}
    told = doubted("cm", ROOM, prints(6, 6.1), [feature])
    assert told == ({f"feature 1 ({name}), height"} if odd else set())


def test_a_drop_off_five_twins_that_agree_is_doubted_though_it_is_near():
    """A centimetre, as from the inside of a moulding; 4 and 8 mm are what wires differ by."""
    twins, wall = prints(3.2, 3, 3.3, 3.2, 3.1, width=15, height=20), {"width": 300, "height": 250}
    assert doubted("cm", wall, [*twins, *prints(2.2, width=15, height=20)]) == {"frame F, drop"}
    assert doubted("cm", wall, [*twins, *prints(2.6, width=15, height=20)]) == set()
    assert doubted("cm", wall, prints(3.2, 2.2, 2.7, 3.3, 3.2, 3.1, width=15, height=20)) == set()  # others differ, too
    assert doubted("cm", wall, [*twins[:4], *prints(2.2, width=15, height=20)]) == set()  # four tell less


def test_frames_of_one_size_and_two_makes_have_two_drops():
    old = [frame(name, drop=drop, type="old") for name, drop in zip("ABC", (70.0, 70.0, 71.0), strict=True)]
    new = [frame(name, drop=drop, type="new") for name, drop in zip("DE", (95.0, 90.0), strict=True)]
    assert not list(twin_doubts(job(*old, *new)))
    alike = [replace(each, type="old") for each in new]
    assert [each.place for each in twin_doubts(job(*old, *alike))] == ["frame D, drop"]


@pytest.mark.parametrize(("name", "height", "odd"), [("shelf", 40, True), ("shelf", 4, False), ("cupboard", 40, False)])
def test_a_shelf_on_the_wall_is_thin(name, height, odd):
    feature = {"kind": "furniture", "name": name, "left": 110, "bottom": 85, "width": 160, "height": height}
    above = {"above": name, "by": 18}
    found = meant("cm", ROOM, prints(7, 7.2), [feature], height=above)
    assert found == ({f"feature 1 ({name}), height": "40 mm"} if odd else {})


def test_plates_at_the_sides_are_put_as_far_down_as_one_likes():
    def plates(across, down):
        hanger = {"kind": "plates", "left": across, "right": across, "drop_left": down, "drop_right": down}
        return {"width": 52, "height": 52, "hanger": hanger}

    top = [plates(7.4, -1.2), plates(7.7, -1)]
    assert doubted("cm", ROOM, [*top, plates(-1.3, 15.7)]) == set()
    assert doubted("cm", ROOM, [*top, plates(7.6, 1.2)]) >= {"frame C, hanger, drop_left"}


def test_a_few_small_frames_along_a_wall_hang_as_in_a_gallery():
    """25 cm between frames of 20 cm; two of them are a pair, and a short wall has no room for it."""
    three = prints(6, 6.1, 6, width=20, height=30)
    assert doubted("cm", {"width": 384, "height": 310}, three, gap=25) == set()
    assert doubted("cm", {"width": 384, "height": 310}, three[:2], gap=30) == {"group, gap"}
    assert doubted("cm", {"width": 280, "height": 250}, three, gap=30) == {"group, gap"}
    assert doubted("cm", {"width": 620, "height": 310}, three[:2], gap=25) == set()  # a pair on a long wall


def test_a_small_frame_with_its_point_lost_weighs_too_much():
    """5 kg on 29 × 29 cm is 59 kg/m²; a framed tile has 42, our own measure."""
    tile = {"width": 29, "height": 29, "drop": 5}
    assert doubted("cm", ROOM, [tile | {"weight": "5 kg"}]) == {"frame A, weight"}
    assert doubted("cm", ROOM, [tile | {"weight": "3.5 kg"}]) == set()


def test_a_weight_is_held_to_its_twins_the_closer_the_more_they_agree():
    """7 kg is 2.3 times 3: more than 2.15, less than 3.2."""

    def weighed(*masses: float) -> set[str]:
        twins = zip(prints(5, 5, 5, 5), masses, strict=True)
        return doubted("cm", ROOM, [each | {"weight": f"{kg} kg"} for each, kg in twins])

    assert weighed(2.8, 2.9, 3, 7) == {"frame D, weight"}
    assert weighed(2, 2, 3, 7) == set()  # theirs are 1.5 times apart


def test_many_of_one_title_and_size_were_not_copied_by_mistake():
    alike = [each | {"title": "Ticket"} for each in prints(5, 5, 5, 5)]
    assert doubted("cm", ROOM, alike) == set()
    named = [each | {"title": title} for each, title in zip(alike, ("Pier", "Slip", "Quay", "Quay"), strict=True)]
    assert doubted("cm", ROOM, named) == {"frame D, title"}
