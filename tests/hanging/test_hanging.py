"""Where the nail goes: worked examples for every hanger and fixing, in both units."""

from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.documents.sheets.nail_marks import nail_lines
from templates_gen.hanging.bearings import bearings, nail_rise, nails
from templates_gen.job.model import Fixing, Frame, Hanger
from templates_gen.job.reading.building import build_job
from templates_gen.job.reading.framing import build_frame
from templates_gen.job.reading.typed import read_table
from templates_gen.job.tables.frame import FrameTable
from tests.jobs import Height, frame, group, job

INCH = 25.4  # mm exactly (international yard and pound agreement, 1959)

ON_WALL = Rect.sized(1000.0, 1200.0, 400.0, 500.0)  # its top edge at 1700, its middle at 1200


def points(item: Frame) -> list[tuple[str, float, float]]:
    return [(nail.name, nail.x, nail.y) for nail in nails(item, ON_WALL)]


def as_read(unit: str = "mm", **fields: object) -> Frame:
    """A frame as the job file gives it."""
    table = read_table({"id": "A", "width": 400, "height": 500} | fields, FrameTable, unit, "frame")
    return build_frame(table, None, Fixing(), unit, "frame", Path())


def test_a_wire_bears_at_the_centre_line_plus_half_the_height_less_the_drop():
    # 1450 + 500 / 2 - 50 = 1650: worked out by hand here
    plan = plan_wall(job(frame(drop=50.0)))
    assert plan.nails[0].bears_y == pytest.approx(1650.0)


# Nail points, worked out by hand here: top edge 1700, drop 80, so the hanger bears at 1620


def test_a_bare_nail_sits_half_its_diameter_below_the_bearing():
    assert points(frame(fixing=Fixing(kind="nail", diameter=3.0))) == [("A", 1200.0, 1618.5)]


def test_a_screw_sits_half_its_diameter_below_the_bearing():
    assert points(frame(fixing=Fixing(kind="screw", diameter=5.0))) == [("A", 1200.0, 1617.5)]


def test_the_nail_of_a_hook_sits_above_its_seat():
    assert points(frame(fixing=Fixing(kind="hook", below=22.0))) == [("A", 1200.0, 1642.0)]


def test_the_nail_of_a_hook_in_inches():
    # 57 + 20 / 2 - 2 = 65 in, and 65 + 7/8 = 65 7/8 in: worked out by hand here
    hook = Fixing(kind="hook", below=0.875 * INCH)
    twenty = frame(width=16 * INCH, height=20 * INCH, drop=2 * INCH, fixing=hook)
    plan = plan_wall(job(twenty, group=group((("A",),), height=Height(by="centre", at=57 * INCH))))
    assert plan.nails[0].y / INCH == pytest.approx(65.875)
    assert plan.nails[0].bears_y / INCH == pytest.approx(65.0)


def test_a_hook_of_several_nails_has_one_nail_point_and_is_called_so():
    # its nails go through its own holes, their middle where a hook of one nail has its nail
    pair = Fixing(kind="hook", below=22.0, nails=2)
    assert points(frame(fixing=pair)) == [("A", 1200.0, 1642.0)]
    assert nail_lines(nails(frame(fixing=pair), ON_WALL)[0], pair, plan_wall(job()))[2] == "hook with 2 nails"
    assert (pair.called, Fixing(kind="hook", below=22.0).called) == ("hook with 2 nails", "hook")


def test_a_nails_label_says_how_high_it_is_and_how_far_to_which_side_of_the_centre_line():
    # the centre line is at 2000, so 60 in from 1800 is 140 left of it, 70 in from 2200 is 130 right: by hand here;
    # 1609 mm are 63 3/8 in, 140 are 5 1/2, 130 are 5 1/8, each to the nearest 1/16
    pair = frame(hanger=Hanger(kind="rings", left=60.0, right=70.0, drop_left=90.0), fixing=Fixing(diameter=2.0))
    centred, plan = Rect.sized(1800.0, 1200.0, 400.0, 500.0), plan_wall(job())
    assert [nail_lines(nail, pair.fixing, plan) for nail in nails(pair, centred)] == [
        ("A left", "floor 1609 mm · 63 3/8 in", "140 mm · 5 1/2 in left"),
        ("A right", "floor 1619 mm · 63 3/4 in", "130 mm · 5 1/8 in right"),
    ]
    (middle,) = nails(frame(), centred)
    assert nail_lines(middle, Fixing(), plan)[2:] == ("on the centre line",)


def test_a_sawtooth_bears_in_the_middle():
    item = frame(hanger=Hanger(kind="sawtooth"), fixing=Fixing(diameter=2.0))
    assert points(item) == [("A", 1200.0, 1619.0)]


@pytest.mark.parametrize("kind", ["rings", "keyholes"])
def test_a_pair_has_two_bearings_each_with_its_own_drop(kind):
    pair = Hanger(kind=kind, left=60.0, right=70.0, drop_left=90.0, drop_right=100.0)
    item = frame(hanger=pair, fixing=Fixing(diameter=2.0))
    assert points(item) == [("A left", 1060.0, 1609.0), ("A right", 1330.0, 1599.0)]


def test_a_pair_without_drops_of_its_own_takes_the_frames_drop():
    item = frame(hanger=Hanger(kind="rings", left=60.0, right=60.0), fixing=Fixing(diameter=2.0))
    assert points(item) == [("A left", 1060.0, 1619.0), ("A right", 1340.0, 1619.0)]


def test_a_pair_with_one_drop_missing_has_one_nail():
    pair = Hanger(kind="rings", left=60.0, right=60.0, drop_right=100.0)
    item = frame(drop=None, hanger=pair, fixing=Fixing(diameter=2.0))
    assert points(item) == [("A right", 1340.0, 1599.0)]
    assert [bearing.drop for bearing in bearings(item, ON_WALL)] == [None, 100.0]


def test_a_pair_seen_from_the_back_is_mirrored():
    hanger = {"kind": "rings", "left": 60, "right": 70, "drop_left": 90, "drop_right": 100}
    front = as_read(hanger=hanger | {"seen_from": "front"}, fixing={"diameter": 2})
    back = as_read(hanger=hanger | {"seen_from": "back"}, fixing={"diameter": 2})
    assert points(front) == [("A left", 1060.0, 1609.0), ("A right", 1330.0, 1599.0)]
    # what is on the left from behind, 60 in and 90 down, is on the right from the front: 1400 - 60
    assert points(back) == [("A left", 1070.0, 1599.0), ("A right", 1340.0, 1609.0)]


def test_what_a_frame_completes_was_seen_from_where_its_type_says():
    """The type says from where, the frame only its two drops: 50 mm left as seen from behind, which is the right."""
    kind = {"kind": "rings", "left": 30, "right": 30, "seen_from": "back"}
    own = {"drop_left": 50, "drop_right": 52}
    hanger = completed(kind, own).hanger
    assert (hanger.drop_left, hanger.drop_right) == (52, 50)
    assert dict(completed(kind, own, whole=True).written)["frame A, hanger, seen_from"] == "back"
    front = completed(kind, own | {"seen_from": "front"}).hanger
    assert (front.drop_left, front.drop_right) == (50, 52)
    with pytest.raises(InputError, match="drop_left and drop_right differ"):
        completed({"kind": "rings", "left": 30, "right": 30}, own)


def completed(shared: dict[str, object], own: dict[str, object], whole: bool = False) -> Any:
    """A frame of 400 mm with this hanger over that of its type; or its job."""
    raw = {
        "job": {"title": "Tiles", "unit": "mm"}, "wall": {"width": 3000, "height": 2500},
        "group": {"arrangement": "row", "order": ["A"], "gap": 50, "height": {"centre": 1500}},
        "frame_type": {"tile": {"width": 400, "height": 500, "hanger": shared}},
        "frame": [{"id": "A", "type": "tile", "hanger": own}], "paper": {"size": "a4"},
    }  # fmt: skip
    read = build_job(raw, Path("job.toml"))
    return read if whole else read.frames[0]


def test_a_pair_seen_from_the_back_is_mirrored_in_inches():
    # frame 16 1/4 x 20 1/4 in, rings 1 1/2 in from the sides, 4 1/4 and 4 3/16 in down, from behind:
    # from the front the left one is 4 3/16 down: worked out by hand here
    hanger = {"kind": "rings", "left": "1 1/2", "right": "1 1/2", "drop_left": "4 1/4",
              "drop_right": "4 3/16", "seen_from": "back"}  # fmt: skip
    item = as_read("in", width="16 1/4", height="20 1/4", hanger=hanger)
    at = bearings(item, Rect.sized(0.0, 0.0, 16.25 * INCH, 20.25 * INCH))
    assert [bearing.x / INCH for bearing in at] == pytest.approx([1.5, 14.75])
    assert [bearing.drop / INCH for bearing in at] == pytest.approx([4.1875, 4.25])


length = st.floats(min_value=1.0, max_value=190.0)


@given(length, length, length, length)
def test_mirroring_twice_is_seeing_it_from_the_front(left, right, drop_left, drop_right):
    given_front = {"kind": "rings", "left": left, "right": right, "drop_left": drop_left,
                   "drop_right": drop_right, "seen_from": "front"}  # fmt: skip
    given_back = {"kind": "rings", "left": right, "right": left, "drop_left": drop_right,
                  "drop_right": drop_left, "seen_from": "back"}  # fmt: skip
    assert as_read(hanger=given_front) == as_read(hanger=given_back)


def test_a_cleat_has_its_screws_under_the_edge_it_bears_on():
    cleat = Hanger(kind="cleat", left=90.0, right=80.0, screw_below=22.0)
    item = frame(hanger=cleat, fixing=Fixing(kind="screw", diameter=4.5))
    # the rail's edge at 1620, its screws 22 lower, whatever their diameter
    assert points(item) == [("A left", 1090.0, 1598.0), ("A right", 1320.0, 1598.0)]
    assert {nail.bears_y for nail in nails(item, ON_WALL)} == {1620.0}


def test_a_cleat_without_screw_below_has_its_screws_on_the_edge():
    assert nail_rise(frame(hanger=Hanger(kind="cleat", left=90.0, right=90.0))) == 0.0


def test_a_wire_on_two_fixings_bears_on_either_side_of_the_middle():
    wire = Hanger(kind="wire", apart=100.0, drop_at_two=85.0)
    item = frame(hanger=wire, fixing=Fixing(diameter=2.0))
    assert points(item) == [("A left", 1150.0, 1614.0), ("A right", 1250.0, 1614.0)]


def test_a_wire_on_two_fixings_whose_drop_cannot_be_known_has_no_nails():
    assert points(frame(hanger=Hanger(kind="wire", apart=100.0))) == []
    assert len(bearings(frame(hanger=Hanger(kind="wire", apart=100.0)), ON_WALL)) == 2


@pytest.mark.parametrize(
    ("hanger", "words"),
    [
        (Hanger(kind="wire", apart=300.0, ring_separation=250.0, ring_depth=120.0), "fixings 300 mm"),
        (Hanger(kind="wire", apart=100.0, ring_separation=250.0, ring_depth=80.0), "drop of 80 mm"),
    ],
)
def test_a_wire_that_cannot_be_so_is_refused_with_the_frame_and_the_sizes(hanger, words):
    with pytest.raises(InputError, match=words) as raised:
        nails(frame(hanger=hanger), ON_WALL)
    assert raised.value.where == "frame A, hanger"


def test_fixings_as_far_apart_as_the_rings_have_the_wire_straight_up_at_both():
    # rings 250 apart, 40 under the one fixing: the wire is 2 hypot(125, 40) = 262.488 long; straight up at both
    # sides it leaves (262.488 - 250) / 2 = 6.244, so the drop is 120 - 6.244: worked out by hand here
    wire = Hanger(kind="wire", apart=250.0, ring_separation=250.0, ring_depth=120.0)
    drops = [bearing.drop for bearing in bearings(frame(hanger=wire), ON_WALL)]
    assert drops == pytest.approx([113.756, 113.756], abs=1e-3)


def test_a_frame_without_a_drop_has_no_nail_but_keeps_its_bearing():
    assert points(frame(drop=None)) == []
    assert [(bearing.x, bearing.drop) for bearing in bearings(frame(drop=None), ON_WALL)] == [(1200.0, None)]


def test_fixings_share_the_load():
    # 2 kg x 9.80665 N/kg (standard acceleration of free fall, 3rd CGPM, 1901) = 19.6133 N: worked out by hand here
    pair = Hanger(kind="rings", left=60.0, right=60.0)
    one, two = (nails(frame(weight=2.0, **more), ON_WALL) for more in ({}, {"hanger": pair}))
    assert [nail.load for nail in one] == pytest.approx([19.6133])
    assert [nail.load for nail in two] == pytest.approx([9.80665, 9.80665])
    assert nails(frame(), ON_WALL)[0].load is None


def test_the_fixing_nearer_to_the_middle_bears_more():
    # statics: the frame is 400 wide, its middle 200 from either side.  Rings 50 from the left and 100 from the right
    # are 150 and 100 from the middle: of 2 kg, 100 / 250 and 150 / 250; 19.6133 N x 0.4 and x 0.6, worked out by hand
    aside = Hanger(kind="rings", left=50.0, right=100.0)
    assert [nail.load for nail in nails(frame(weight=2.0, hanger=aside), ON_WALL)] == pytest.approx([7.84532, 11.76798])
    # rings 50 from the left and 250 from the right are both left of the middle: the second bears all
    one_side = Hanger(kind="rings", left=50.0, right=250.0)
    assert [nail.load for nail in nails(frame(weight=2.0, hanger=one_side), ON_WALL)] == pytest.approx([0, 19.6133])


def test_a_load_in_pounds():
    # 4.2 lb x 0.45359237 kg (international yard and pound agreement, 1959) x 9.80665 = 18.682 N
    item = as_read("in", weight="4.2 lb", drop="3 1/8")
    assert nails(item, ON_WALL)[0].load == pytest.approx(18.682, abs=1e-3)


def test_a_fixing_goes_straight_in_or_slants_but_not_along_the_wall():
    assert [as_read(fixing={"angle": angle}).fixing.angle for angle in (0, 89.9)] == [0, 89.9]
    for angle in (-1, 90):
        with pytest.raises(InputError, match="expected degrees from straight in: 0, and less than 90"):
            as_read(fixing={"angle": angle})


moves = st.floats(min_value=-500.0, max_value=500.0)


@given(moves, moves, st.floats(min_value=1.0, max_value=490.0))
def test_moving_the_group_moves_every_nail_by_the_same_amount(across, up, drop):
    pair = Hanger(kind="rings", left=60.0, right=70.0, drop_left=drop, drop_right=drop / 2)
    frames = (frame("A", drop=drop), frame("B", hanger=pair), frame("C", drop=None))
    rows = (("A", "B"), ("C",))

    def at(x: float, y: float) -> list[tuple[str, float, float]]:
        asked = group(rows, centre_on=x, height=Height(by="centre", at=y))
        return [(nail.name, nail.x, nail.y) for nail in plan_wall(job(*frames, group=asked)).nails]

    before, after = at(2000.0, 1400.0), at(2000.0 + across, 1400.0 + up)
    assert [name for name, _, _ in before] == ["A", "B left", "B right"]
    for (_, x0, y0), (_, x1, y1) in zip(before, after, strict=True):
        assert (x1 - x0, y1 - y0) == pytest.approx((across, up), abs=1e-6)


@given(st.floats(min_value=0.0, max_value=500.0), st.floats(min_value=0.0, max_value=500.0))
def test_a_longer_drop_lowers_the_nail_by_as_much(one, two):
    (_, _, first), (_, _, second) = points(frame(drop=one))[0], points(frame(drop=two))[0]
    assert first - second == pytest.approx(two - one, abs=1e-9)
