"""Where lettering stands on the wall, how high it is and how far from what it belongs to: worked out by hand here.

Heights are of the ISO 3098-1 series (1.8 2.5 3.5 5 7 10 14 20 mm, from memory).  Distances are our own design, no
source.
"""

from __future__ import annotations

from itertools import pairwise

import pytest

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.base.units import show_both
from templates_gen.documents.sheets import sheet_marks
from templates_gen.documents.sheets.frame_labels import label_region, size_words, up_arrow
from templates_gen.documents.sheets.layers import lay
from templates_gen.documents.sheets.line_names import line_names
from templates_gen.documents.sheets.nail_marks import Sides, _lead, nail_lines, place_label
from templates_gen.documents.sheets.references import references
from templates_gen.documents.sheets.scales import DropScale, apart, drop_scale
from templates_gen.drawing.items import Item, Line, Polygon, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room
from templates_gen.hanging.bearings import Nail
from templates_gen.job.model import Hanger, Wall
from templates_gen.tolerance.holding import plan_sheets
from tests.jobs import Fixing, frame, group, job, paper

LETTERING = Lettering()
HEIGHTS = (1.8, 2.5, 3.5, 5.0, 7.0, 10.0, 14.0, 20.0)
PLAN = plan_wall(job(frame("A", 400.0, 500.0, 80.0, title="Hart's-tongue")))
NAIL = PLAN.nails[0]
WALL = Rect(1500.0, 1000.0, 2500.0, 2000.0)
AIR = 1.0  # mm around lettering


def box(*texts: Item) -> Rect:
    boxes = [LETTERING.box(text) for text in texts if isinstance(text, Text)]
    return Rect(min(b.x0 for b in boxes), min(b.y0 for b in boxes), max(b.x1 for b in boxes), max(b.y1 for b in boxes))


def labelled(*taken: Rect, lines: tuple[Rect, ...] = (), region: Rect = WALL, nail: Nail = NAIL, plan: Plan = PLAN):
    """The sides and the label of the first frame's nail where this is taken."""
    room = Room(region, AIR)
    room.take(*taken)
    room.lines.extend(lines)
    return place_label(nail, plan.frames[0], plan, room, LETTERING)


def strip(side: int, far: float = 400.0) -> Rect:
    """All beside a nail to one side, from where its mark ends."""
    near, out = sorted((NAIL.x + side * 9.0, NAIL.x + side * far))
    return Rect(near, 1000.0, out, 2000.0)


def test_a_nails_label_stands_level_with_it_on_its_left_10_and_a_half_mm_away_and_its_scale_on_its_right():
    sides, label = labelled()
    assert sides == Sides(-1, 1)
    assert [text.height for text in label] == [7.0, 3.5, 3.5] and [text.bold for text in label] == [True, False, False]
    assert box(*label).x1 == pytest.approx(NAIL.x - 9.0 - 1.5, abs=0.5)  # a letter's own side is not ink
    assert {text.x for text in label} == {NAIL.x - 10.5} and {text.anchor for text in label} == {"right"}
    assert box(*label).cy == pytest.approx(NAIL.y, abs=0.2)


def test_where_its_left_is_taken_the_label_stands_on_its_right_and_the_scale_on_its_left():
    sides, label = labelled(strip(-1))
    assert sides == Sides(1, -1)
    assert {text.x for text in label} == {NAIL.x + 10.5} and {text.anchor for text in label} == {"left"}


def test_the_right_one_of_a_pair_has_its_label_outside_the_pair():
    rings = Hanger(kind="rings", left=100.0, right=100.0)
    plan = plan_wall(job(frame("A", hanger=rings)))
    left, right = plan.nails
    for nail, way in ((left, -1), (right, 1)):
        sides, label = labelled(nail=nail, plan=plan)
        assert sides == Sides(way, -way)
        assert {text.x for text in label} == {nail.x + way * 10.5}


def test_a_scale_hides_no_other_nail_of_its_frame():
    """The scale takes 9.5 to 25 mm beside a nail, and a nail keeps 9 mm free: another 30 mm away is in the way."""
    for apart_, inward in ((30.0, False), (34.0 - 0.1, False), (34.0 + 0.1, True)):
        rings = Hanger(kind="rings", left=200.0 - apart_ / 2, right=200.0 - apart_ / 2)
        plan = replace(plan_wall(job(frame("A", hanger=rings))), centre_line=0.0)
        sides, _ = labelled(nail=plan.nails[0], plan=plan)
        assert (sides.scale == 1) == inward


def test_a_scale_stays_in_its_sheet():
    for right, scale in ((NAIL.x + 25.0, 1), (NAIL.x + 24.9, -1)):
        sides, _ = labelled(region=Rect(1500.0, 1000.0, right, 2000.0))
        assert sides.scale == scale
    for left, scale in ((NAIL.x - 25.0, -1), (NAIL.x - 24.9, 1)):
        right_one = replace(NAIL, side="right")
        sides, _ = labelled(nail=right_one, region=Rect(left, 1000.0, 2500.0, 2000.0))
        assert sides.scale == scale


def test_a_scale_is_off_the_centre_line_where_it_can_be():
    """From 6.5 to 25 mm beside a nail: a line 10 mm to its right is in the way, one 6 or 26 mm to it is not."""
    for away, scale in ((10.0, -1), (6.6, -1), (24.9, -1), (6.4, 1), (25.1, 1), (-10.0, 1)):
        sides, _ = labelled(plan=replace(PLAN, centre_line=NAIL.x + away))
        assert sides.scale == scale, away


def test_a_label_goes_half_its_height_up_or_down_before_the_scale_changes_sides():
    _, usual = labelled()
    high = box(*usual).height
    sides, label = labelled(Rect(NAIL.x - 200.0, NAIL.y - 3.0, NAIL.x - 10.0, NAIL.y - high / 2 + 1.0))
    assert sides == Sides(-1, 1)
    up = box(*label).cy - box(*usual).cy
    assert up == pytest.approx((high + 4.0) / 2, abs=0.3)
    _, label = labelled(Rect(NAIL.x - 200.0, NAIL.y + high / 2 - 1.0, NAIL.x - 10.0, NAIL.y + 30.0))
    assert box(*label).cy - box(*usual).cy == pytest.approx(-(high + 4.0) / 2, abs=0.3)


def test_smaller_lettering_is_taken_before_a_line_goes_through_the_label():
    """The widest line is 46 mm wide at 3.5 mm: 40 mm are room for it at 2.5, or at 3.5 in two lines each."""
    wide = box(*labelled()[1]).width
    ends = (Rect(NAIL.x - 10.5 - wide + 3.0, 1000.0, NAIL.x - 10.5 - wide + 3.2, 2000.0), strip(1))
    _, label = labelled(ends[1], lines=ends[:1])
    assert [text.height for text in label] == [7.0, *[3.5] * (len(label) - 1)] and len(label) > 3
    assert not box(*label).overlaps(ends[0])
    assert all(one.y > two.y for one, two in pairwise(label))


def test_where_there_is_no_room_beside_a_nail_a_line_leads_to_its_label():
    """All is taken 60 mm around but for a path straight to the left: the label is the smallest and beyond."""
    around = Rect.about(NAIL.x, NAIL.y, 120.0, 120.0)
    walls = [
        Rect(around.x0, NAIL.y + 1.5, NAIL.x - 9.1, around.y1), Rect(around.x0, around.y0, NAIL.x - 9.1, NAIL.y - 1.5),
        Rect(NAIL.x + 9.1, around.y0, around.x1, around.y1), Rect(NAIL.x - 9.1, NAIL.y + 9.1, NAIL.x + 9.1, around.y1),
        Rect(NAIL.x - 9.1, around.y0, NAIL.x + 9.1, NAIL.y - 1.5),
    ]  # fmt: skip
    _, label = labelled(*walls)
    (lead,) = [item for item in label if isinstance(item, Line)]
    texts = [item for item in label if isinstance(item, Text)]
    assert {text.height for text in texts} <= {1.8, 3.5} and len(texts) >= 3
    assert lead.y0 == lead.y1 == pytest.approx(NAIL.y)
    assert sorted((lead.x0, lead.x1))[1] == pytest.approx(NAIL.x - 9.0)  # where its hairline ends
    assert sorted((lead.x0, lead.x1))[0] == pytest.approx(box(*texts).x1, abs=0.6)


def test_a_label_that_a_line_leads_to_stands_rather_further_away_than_where_the_drop_scale_will_be():
    """Two places over the nail: 30 mm up, to the right, where the scale will stand; and 65 mm up, to the left."""
    x, y = NAIL.x, NAIL.y
    walls = [
        Rect(x - 100.0, y - 100.0, x - 2.5, y + 65.0), Rect(x - 100.0, y + 90.0, x - 2.5, y + 150.0),
        Rect(x - 100.0, y + 65.0, x - 50.0, y + 90.0), Rect(x + 2.5, y - 100.0, x + 100.0, y + 30.0),
        Rect(x + 2.5, y + 55.0, x + 100.0, y + 150.0), Rect(x + 60.0, y + 30.0, x + 100.0, y + 55.0),
        Rect(x - 2.5, y - 100.0, x + 2.5, y - 1.5), Rect(x - 2.5, y + 92.0, x + 2.5, y + 150.0),
    ]  # fmt: skip
    sides, label = labelled(*walls)
    assert sides == Sides(-1, 1)
    stands = box(*label)
    assert stands.y0 >= y + 65.0 and stands.x1 <= x + 9.5
    (lead,) = [item for item in label if isinstance(item, Line)]
    assert lead.x0 == lead.x1 == x and min(lead.y0, lead.y1) == pytest.approx(y + 9.0)


@pytest.mark.parametrize(
    ("to", "lead"),
    [
        (Rect(-60.0, -5.0, -30.0, 5.0), (-30.0, 0.0, -9.0, 0.0)),
        (Rect(30.0, -5.0, 60.0, 5.0), (9.0, 0.0, 30.0, 0.0)),
        (Rect(-5.0, 30.0, 5.0, 60.0), (0.0, 9.0, 0.0, 30.0)),
        (Rect(-60.0, 5.0, -30.0, 15.0), (-30.0, 9.0, 0.0, 9.0)),  # level with the end of the upright one
        (Rect(-60.0, 12.0, -30.0, 15.0), None),  # neither level with an end nor over or under one
        (Rect(12.0, -60.0, 40.0, -30.0), None),
        (Rect(-9.0, 20.0, 9.0, 30.0), (0.0, 9.0, 0.0, 20.0)),  # over it, and over the ends of its level hairline
    ],
)  # fmt: skip
def test_a_lead_is_the_shortest_level_or_upright_line_from_the_end_of_a_hairline(to, lead):
    at = replace(NAIL, x=0.0, y=0.0)
    found = _lead(at, to, Room(Rect(-99.0, -99.0, 99.0, 99.0)))
    assert (found and (found.x0, found.y0, found.x1, found.y1)) == lead


def test_a_lead_crosses_nothing_and_of_two_the_shorter_is_taken():
    at, room = replace(NAIL, x=0.0, y=0.0), Room(Rect(-99.0, -99.0, 99.0, 99.0))
    room.take(Rect(-20.0, -2.0, -15.0, 2.0))
    assert _lead(at, Rect(-60.0, -5.0, -30.0, 5.0), room) is None
    over = Rect(-60.0, 0.0, 5.0, 50.0)  # reaches over all three ends
    assert _lead(at, over, room) in (Rect(0.0, 9.0, 0.0, 9.0), Rect(-9.0, 0.0, -9.0, 0.0))
    # level with the left end 11 mm on, and over the nail 31 mm on: the corner of one box of an L is nearer
    assert _lead(at, Rect(-60.0, 0.0, -0.0, 40.0), Room(Rect(-99.0, -99.0, 99.0, 99.0))).width == 0.0


def test_a_nails_label_says_its_name_height_and_side_and_that_it_is_on_the_line_within_a_twentieth():
    for away, said in ((0.0, "on the centre line"), (0.05, "on the centre line"), (-0.04, "on the centre line")):
        at = replace(NAIL, x=PLAN.centre_line + away)
        assert nail_lines(at, Fixing(), PLAN) == ("A", f"floor {show_both(NAIL.y, 'mm')}", said)
    for away, side in ((0.06, "right"), (-0.06, "left"), (-200.0, "left"), (200.0, "right")):
        at = replace(NAIL, x=PLAN.centre_line + away)
        assert nail_lines(at, Fixing(), PLAN)[2:] == (f"{show_both(abs(away), 'mm')} {side}",)
    at_most = nail_lines(replace(NAIL, x=0.05), Fixing(), replace(PLAN, centre_line=0.0))  # a twentieth, exactly
    assert at_most[2] == "on the centre line"
    hook = replace(Fixing(kind="hook"), nails=3)
    plain = nail_lines(NAIL, Fixing(), PLAN)
    assert nail_lines(NAIL, hook, PLAN) == (*plain[:2], hook.called, *plain[2:])


def names(*taken: Rect, lines: tuple[Rect, ...] = (), inner: Rect = WALL, plan: Plan = PLAN) -> dict[str, Text]:
    room = Room(inner, AIR)
    room.take(*taken)
    room.lines.extend(lines)
    return {text.text: text for text in line_names(plan, inner, room, LETTERING) if isinstance(text, Text)}


def test_the_level_lines_name_hangs_2_mm_under_its_longest_tick_or_stands_2_and_a_half_over_its_figures():
    """Ticks of 6 mm under it, figures of 3.5 mm from 1.5 mm over it; at the first place inside the group and sheet."""
    whole = f"level line, {show_both(PLAN.level_line, 'mm')} above the floor; figures: millimetres from the centre line"
    level = names()[whole]
    assert level.height == 2.5 and level.y == pytest.approx(PLAN.level_line - 6.0 - 2.0 - 2.5)
    assert level.x == PLAN.group.x0 and level.angle == 0
    above = names(Rect(1500.0, PLAN.level_line - 20.0, 2500.0, PLAN.level_line - 3.0))[whole]
    assert above.y == pytest.approx(PLAN.level_line + 1.5 + 3.5 + 2.5) and above.height == 2.5
    moved = names(Rect(1700.0, 1400.0, 1812.0, 1500.0))[whole]
    assert moved.x == 1815.0 and moved.y == level.y  # in steps of 5 mm
    assert names(inner=Rect(1850.0, 1000.0, 2500.0, 2000.0))[whole].x == 1850.0


def test_no_name_begins_beyond_the_end_of_its_line():
    """Both lines end with the group; beside it and over it there is room enough."""
    full = PLAN.group.grown(20.0)
    assert [text for text in names(full) if text.startswith(("level", "centre"))] == []
    end = Rect(full.x0, full.y0, PLAN.group.x1 - 1.0, full.y1)  # the last place is a millimetre before the end
    (level,) = [text for said, text in names(end).items() if said.startswith("level")]
    assert PLAN.group.x1 - 5.0 <= level.x <= PLAN.group.x1


def test_a_shorter_name_is_taken_where_the_whole_has_no_room():
    high = show_both(PLAN.level_line, "mm")
    words = (f"level line, {high} above the floor", f"level line {high}", "level line")
    for word in words:  # steps of 5 mm, and a millimetre of air on both sides
        end = 1900.0 + LETTERING.width(word, 2.5) + 7.0
        gap = (Rect(1500.0, 1400.0, 1900.0, 1500.0), Rect(end, 1400.0, 2500.0, 1500.0))
        assert [text for text in names(*gap) if text.startswith("level")] == [word]


def test_the_centre_lines_name_reads_upward_2_and_a_half_mm_to_its_left_or_2_to_its_right():
    line = PLAN.centre_line
    left = names()["centre line"]
    assert (left.height, left.angle, left.x, left.y) == (3.5, 90, line - 2.5, PLAN.group.y0)
    assert LETTERING.box(left).x1 <= line - 1.5
    right = names(Rect(1500.0, 1000.0, line - 3.0, 2000.0))["centre line"]
    assert right.height == 3.5 and right.x == pytest.approx(line + 2.0 + 3.5)
    assert LETTERING.box(right).x0 >= line + 1.5
    half = names(Rect(1500.0, 1000.0, line - 1.0, 2000.0), Rect(line + 6.4, 1000.0, 2500.0, 2000.0))
    assert "centre line" not in half or half["centre line"].height == 2.5


def test_lines_that_do_not_cross_a_sheet_have_no_name_there():
    line, level = PLAN.centre_line, PLAN.level_line
    assert set(names(inner=Rect(line + 1.0, level + 1.0, 2500.0, 2000.0))) == set()
    assert "centre line" in names(inner=Rect(line - 20.0, level + 1.0, line, 2000.0))
    assert any(text.startswith("level") for text in names(inner=Rect(line + 1.0, level - 20.0, 2500.0, level)))


OUTLINE = ((0.0, 0.0), (4000.0, 0.0), (4000.0, 1700.0), (3000.0, 2700.0), (0.0, 2700.0))


def edges_named(inner: Rect, *taken: Rect) -> list[Text]:
    """The names of the edges of a wall under a roof, where this is taken."""
    plan = plan_wall(job(frame("A"), wall=Wall(name="", width=4000.0, height=2700.0, outline=OUTLINE)))
    return [text for text in names(*taken, inner=inner, plan=plan).values() if text.text.startswith("edge of the wall")]


def test_the_name_of_an_upright_edge_stands_two_millimetres_and_a_half_to_its_left_or_right():
    around = Rect(3900.0, 200.0, 4100.0, 700.0)
    (left,) = edges_named(around)
    assert (left.angle, left.x) == (90, 4000.0 - 2.5) and LETTERING.box(left).x1 < 4000.0  # tails reach nearer
    (right,) = edges_named(around, Rect(3900.0, 200.0, 4000.0, 700.0))
    assert (right.angle, right.x) == (90, 4000.0 + 2.5 + 2.5) and LETTERING.box(right).x0 > 4001.0


def test_the_name_of_a_slanting_edge_is_level_and_its_nearest_corner_two_millimetres_and_a_half_off():
    around = Rect(3300.0, 2000.0, 3700.0, 2400.0)
    for taken in ((), (Rect(3300.0, 2000.0, 3450.0, 2400.0),)):
        (text,) = edges_named(around, *taken)
        ink = LETTERING.box(text)
        off = [x + y - 5700.0 for x, y in ink.corners]  # the roof is where x + y is 5700
        assert text.angle == 0 and (min(off) > 0 or max(off) < 0)
        assert 2.5 <= min(map(abs, off)) <= 2.5 * 2 + 2.5


def test_a_name_crosses_a_line_only_where_it_must():
    whole = f"level line, {show_both(PLAN.level_line, 'mm')} above the floor; figures: millimetres from the centre line"
    free = names()[whole]
    crossing = Rect(free.x + 3.0, 1000.0, free.x + 3.5, 2000.0)
    assert names(lines=(crossing,))[whole].x > crossing.x1
    all_over = tuple(Rect(x, 1000.0, x + 0.5, 2000.0) for x in range(1500, 2500, 10))
    assert names(lines=all_over)[whole].x == free.x


def test_lettering_of_a_frame_keeps_3_mm_from_its_edge_and_a_millimetre_and_a_half_from_the_sheets_own_marks():
    (hung,) = PLAN.frames
    inside = label_region(hung, WALL)
    r = hung.rect
    assert inside is not None
    assert r.x0 + 3.0 <= inside.x0 <= r.x0 + 5.0 and r.x1 - 5.0 <= inside.x1 <= r.x1 - 3.0
    cut = label_region(hung, Rect(1850.0, 1250.0, 2100.0, 1600.0))
    assert cut == Rect(1851.5, 1251.5, 2098.5, 1598.5)
    assert label_region(hung, Rect(0.0, 0.0, 100.0, 100.0)) is None
    small = replace(hung, rect=Rect(1800.0, 1200.0, 1806.0, 1700.0))
    assert label_region(small, WALL) is None
    assert label_region(replace(hung, rect=Rect(1800.0, 1200.0, 1900.0, 1206.0)), WALL) is None


def test_the_arrow_that_points_up_is_upright_as_high_as_asked_and_wider_for_larger_lettering():
    shaft, head = up_arrow(10.0, 20.0, 9.0)
    assert isinstance(shaft, Line) and isinstance(head, Polygon)
    assert (shaft.x0, shaft.y0, shaft.x1) == (10.0, 20.0, 10.0) and 26.0 <= shaft.y1 < 29.0
    assert max(head.points, key=lambda at: at[1]) == (10.0, 29.0)
    (low, right) = sorted(at for at in head.points if at[1] < 29.0)
    assert low[1] == right[1] == pytest.approx(26.0)
    assert right[0] - 10.0 == pytest.approx(10.0 - low[0]) and right[0] > 11.0
    widths = [next(iter(up_arrow(0.0, 0.0, height))).width for height in (5.0, 7.0, 10.0)]
    assert widths[0] == widths[1] < widths[2]


@pytest.fixture(scope="module")
def whole():
    """What every layer draws on the one sheet of a large paper, for two frames."""
    two = frame("A", 400.0, 500.0, 80.0, title="Hart's-tongue"), frame("B", 400.0, 500.0, 80.0)
    each = job(*two, group=group((("A", "B"),)), paper=paper("a0"))
    plan = plan_wall(each)
    (laid,) = lay(plan, plan_sheets(plan, each.paper), 2, LETTERING)
    return laid


def texts_of(laid) -> list[Text]:
    return [item for done in laid.drawn.values() for item in (*done.items, *done.over) if isinstance(item, Text)]


def test_a_frames_label_is_in_its_middle_under_the_level_line_with_an_arrow_before_it(whole):
    """Its id 20 mm high over title, size and drop; the arrow takes 0.7 of the id's height before the lines."""
    hung = whole.so_far.plan.frames[0]
    size = f"{size_words(hung, 'mm')} · 15 3/4 × 19 11/16 in"
    heights = {"A": 20.0, "Hart's-tongue": 7.0, size: 5.0, "drop 80 mm · 3 1/8 in": 5.0}
    inside = [text for text in texts_of(whole) if hung.rect.has_point(text.x, text.y)]
    said = [text for text in inside if heights.get(text.text) == text.height]
    assert [text.text for text in said] == list(heights)
    assert [text.bold for text in said] == [True, False, False, False]
    label = box(*said)
    assert (label.x0 - 0.7 * 20.0 + label.x1) / 2 == pytest.approx(hung.rect.cx, abs=8.0)  # beside the line's name
    level = whole.so_far.plan.level_line
    assert level == hung.rect.cy and level - 8.5 < label.y1 < level - 6.0
    (head,) = [
        item for done in whole.drawn.values() for item in done.items
        if isinstance(item, Polygon) and hung.rect.has_point(*item.points[1]) and abs(item.points[1][1] - label.y1) < 1
    ]  # fmt: skip
    assert head.points[1][0] == pytest.approx(label.x0 - 14.0 * 2 / 3, abs=0.7)  # a third of its room from its left
    assert label.x0 - 14.0 < head.points[0][0] and head.points[2][0] < label.x0


def test_of_a_frame_too_narrow_for_its_id_as_much_is_written_as_there_is_room_for():
    narrow = frame("Rhododendron-2026", 40.0, 600.0, 30.0, title="Rhododendron ponticum")
    each = job(narrow, group=group((("Rhododendron-2026",),)), paper=paper("a0"))
    plan = plan_wall(each)
    (laid,) = lay(plan, plan_sheets(plan, each.paper), 2, LETTERING)
    (hung,) = plan.frames
    cut = [text for text in texts_of(laid) if text.text.startswith("Rh") and hung.rect.has_point(text.x, text.y)]
    assert len(cut) >= 2 and any(text.text.endswith("…") for text in cut)
    assert all(hung.rect.grown(-3.0).holds(LETTERING.box(text)) for text in cut)


def test_all_lettering_of_a_sheet_is_of_the_standard_heights_a_millimetre_apart_and_off_the_nail(whole):
    texts = texts_of(whole)
    assert {text.height for text in texts} - {40.0, 60.0} <= {*HEIGHTS, 28.0}
    boxes = [LETTERING.box(text) for text in texts]
    plan = whole.so_far.plan
    nails = [Rect.about(nail.x, nail.y, 18.0, 18.0) for nail in plan.nails]
    assert not any(one.overlaps(nail) for one in boxes for nail in nails)
    figures = [text for text in texts if text.text.isdigit() and text.height == 3.5]
    assert {int(text.text) for text in figures} >= {100, 200}
    for text in figures:
        assert abs(text.x - plan.centre_line) == pytest.approx(float(text.text))
        assert text.y == pytest.approx(plan.level_line + 1.5) and text.anchor == "middle"


@pytest.mark.parametrize(("side", "near", "far"), [(1, 9.5, 25.0), (-1, -25.0, -9.5), (0, -12.5, 12.5)])
def test_a_drop_scale_takes_what_lies_beside_its_hanger_or_about_it(side, near, far):
    scale = DropScale(1000.0, 1700.0, 120.0, side, None if side == 0 else 80.0)
    assert scale.zone == Rect(1000.0 + near, 1580.0, 1000.0 + far, 1700.0)


def test_a_scale_hangs_from_the_frames_top_on_the_hangers_upright_and_without_a_drop_on_it():
    (hung,) = PLAN.frames
    (bearing,) = hung.bearings
    scale = drop_scale(hung, bearing, 1)
    assert scale == DropScale(bearing.x, hung.rect.y1, pytest.approx(500.0 / 3), 1, 80.0)
    unknown = replace(bearing, drop=None)
    assert drop_scale(hung, unknown, 1).side == 0
    for wide, there in ((50.0, True), (49.0, False)):  # 25 mm to the right of its middle
        narrow = replace(hung, rect=Rect.about(bearing.x, hung.rect.cy, wide, 500.0))
        assert (drop_scale(narrow, bearing, 1) is not None) == there
        assert (drop_scale(narrow, bearing, -1) is not None) == there


def test_of_scales_that_run_into_each_other_the_first_is_kept():
    scales = [DropScale(at, 1700.0, 120.0, 1, 80.0) for at in (1000.0, 1010.0, 1015.5, 1020.0)]
    assert apart(scales) == [scales[0], scales[2]]
    assert apart([]) == []


def test_distances_of_a_loose_sheet_are_as_large_as_can_be_and_measured_from_its_rulers():
    """The rulers stand 14 mm inside the window with an overlap of 12 mm: level line and centre line from there."""
    each = replace(PLAN.job, paper=paper("a4", cover="nails"))
    sheet = plan_sheets(PLAN, each.paper).sheets[0]
    inner = sheet.inner
    told = list(references(PLAN, sheet, 12.0, (inner,), Room(inner, 5.0), LETTERING))
    down = abs(sheet.window.y0 + 14.0 - PLAN.level_line)
    left = abs(sheet.window.x0 + 14.0 - PLAN.centre_line)
    figures = [text for text in told if text.bold]
    assert {text.height for text in figures} <= {5.0, 7.0, 10.0} and figures[0].height == 10.0
    assert figures[0].text.startswith(show_both(down, "mm").split(" · ")[0])
    assert any(text.text.startswith(show_both(left, "mm").split(" · ")[0]) for text in figures[1:])
    words = [text for text in told if not text.bold]
    assert {text.height for text in words} <= {2.5, 3.5}
    assert all(inner.holds(LETTERING.box(text)) for text in told)
    for one, two in pairwise(told):
        assert not LETTERING.box(one).overlaps(LETTERING.box(two))


def test_figures_of_the_level_line_keep_to_the_part_of_it_that_a_sheet_shows():
    each = job(*(frame(name) for name in "ABC"), group=group((("A", "B", "C"),)), paper=paper("a4"))
    plan = plan_wall(each)
    seen = set()
    for laid in lay(plan, plan_sheets(plan, each.paper), 0, LETTERING):
        inner = laid.so_far.sheet.inner
        for text in texts_of(laid):
            if text.text.isdigit() and text.height == 3.5 and text.y == pytest.approx(plan.level_line + 1.5):
                assert inner.holds(LETTERING.box(text))
                assert abs(text.x - plan.centre_line) == pytest.approx(float(text.text))
                seen.add(text.x)
    assert len(seen) >= 6


def test_lettering_better_keeps_7_tenths_of_a_millimetre_off_both_lines_of_a_frames_edge(whole):
    """The two lines are 3 mm apart, the outer one on the frame's side."""
    done = sheet_marks.frames(whole.so_far)
    hung = whole.so_far.part.frames[0].rect
    edges = [
        Rect(hung.x0, hung.y0 - 0.7, hung.x1, hung.y0 + 3.7), Rect(hung.x0, hung.y1 - 3.7, hung.x1, hung.y1 + 0.7),
        Rect(hung.x0 - 0.7, hung.y0, hung.x0 + 3.7, hung.y1), Rect(hung.x1 - 3.7, hung.y0, hung.x1 + 0.7, hung.y1),
    ]  # fmt: skip
    assert len(done.lines) == 8
    assert [each for each in edges if not any(same(each, line) for line in done.lines)] == []
    assert [(use.x, use.y) for use in done.items] == [(f.rect.x0, f.rect.y0) for f in whole.so_far.part.frames]


def same(one: Rect, two: Rect) -> bool:
    return (one.x0, one.y0, one.x1, one.y1) == pytest.approx((two.x0, two.y0, two.x1, two.y1))


def test_the_two_lines_take_what_their_ticks_and_figures_need(whole):
    """A millimetre and a half on either side of the centre line; 7 mm under the level line and 6 over it."""
    so_far = whole.so_far
    x, y, window = so_far.plan.centre_line, so_far.plan.level_line, so_far.sheet.window
    centre, level = sheet_marks.long_lines(so_far).lines
    assert same(centre, Rect(x - 1.5, window.y0, x + 1.5, window.y1))
    assert same(level, Rect(window.x0, y - 7.0, window.x1, y + 6.0))


def test_the_target_takes_30_mm_about_the_cross_on_the_sheet_that_shows_it(whole):
    x, y = whole.so_far.plan.centre_line, whole.so_far.plan.level_line
    done = sheet_marks.target(whole.so_far)
    assert [same(each, Rect(x - 15.0, y - 15.0, x + 15.0, y + 15.0)) for each in done.taken] == [True]
    assert done.items


def test_no_figure_of_the_level_line_stands_beyond_its_ends(whole):
    """The sheet goes on to both sides of the line, which ends with the group; figures stand 100 mm apart."""
    so_far = whole.so_far
    group, inner = so_far.plan.group, so_far.sheet.inner
    assert inner.x0 < group.x0 - 100.0 and group.x1 + 100.0 < inner.x1
    found = [text.x for text in sheet_marks._level_figures(so_far.plan, inner)]
    centre = so_far.plan.centre_line
    assert found == [centre + 100.0 * at for at in range(-20, 21) if group.x0 <= centre + 100.0 * at <= group.x1]
