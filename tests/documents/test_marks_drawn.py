"""Marks by themselves, as they are drawn: where every line, tick, figure and tooth is.  Worked out by hand here.

Sizes are our own design, no source, where no other is named; divisions are those of a steel rule.
"""

from __future__ import annotations

import math
from itertools import pairwise

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.documents.sheets import wall_marks
from templates_gen.documents.sheets.join_marks import bars_form, cut_form
from templates_gen.documents.sheets.layers import lay, sheet_forms
from templates_gen.documents.sheets.nail_marks import nail_form, ring_items
from templates_gen.documents.sheets.rulers import rulers_form, rulers_zones
from templates_gen.documents.sheets.wall_marks import frame_form, frame_lines, has_window, long_lines, target
from templates_gen.drawing.items import Circle, Line, Polygon, Text, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.job.model import Hanger
from templates_gen.tiling.page import Page
from templates_gen.tiling.rulers import rulers
from templates_gen.tolerance.holding import plan_sheets
from tests.jobs import frame, group, job, many, paper
from tests.made import made

LETTERING = Lettering()
PLAN = plan_wall(job(frame("A", 400.0, 500.0, 80.0)))
SHEETS = plan_sheets(PLAN, PLAN.job.paper, quick=True)
PAGE: Page = SHEETS.page
TICKS = {"mm": (5.0, {10: 3.5, 2: 2.5, 1: 1.5}), "in": (3.175, {8: 3.5, 4: 2.8, 2: 2.0, 1: 1.3})}  # every so many steps
TICKS["cm"] = TICKS["mm"]
FIGURED = {"mm": (50.0, 50), "cm": (50.0, 5), "in": (25.4, 1)}  # mm from one figure to the next, and what it counts


def tick(number: int, lengths: dict[int, float]) -> float:
    return next(length for every, length in lengths.items() if number % every == 0)


@pytest.mark.parametrize("unit", TICKS)
def test_both_rulers_have_every_tick_under_or_left_of_their_lines_and_ends_that_are_bold(unit):
    level, plumb = rulers(PAGE, 12.0, unit)
    form = rulers_form(PAGE, 12.0, unit, LETTERING)
    first, second, *ticks = [item for item in form.items if isinstance(item, Line)]
    assert (first.x0, first.y0, first.x1, first.y1) == (level.x0, level.y0, level.x1, level.y1)
    assert (second.x0, second.y0, second.x1, second.y1) == (plumb.x0, plumb.y0, plumb.x1, plumb.y1)
    step, lengths = TICKS[unit]
    below = [(line.x0, line.y1, line.width) for line in ticks if line.x0 == line.x1]
    left = [(line.y0, line.x1, line.width) for line in ticks if line.y0 == line.y1]
    for found, ruler, start, at in ((below, level, level.x0, level.y0), (left, plumb, plumb.y0, plumb.x0)):
        count = round(ruler.length / step)
        wide = [0.35 if number in (0, count) else 0.13 for number in range(count + 1)]  # the ends are measured between
        assert [place for place, _, _ in found] == pytest.approx([start + n * step for n in range(count + 1)])
        assert [at - end for _, end, _ in found] == pytest.approx([tick(n, lengths) for n in range(count + 1)])
        assert [width for _, _, width in found] == wide
    assert len(below) + len(left) == len(ticks)


@pytest.mark.parametrize("unit", TICKS)
def test_figures_of_rulers_count_from_their_starts_and_stand_on_white_beside_their_ticks(unit):
    level, plumb = rulers(PAGE, 12.0, unit)
    form = rulers_form(PAGE, 12.0, unit, LETTERING)
    away, counts = FIGURED[unit]
    figures = [item for item in form.items if isinstance(item, Text)]
    lying = [text for text in figures if text.angle == 90]
    for texts, ruler in (([text for text in figures if text.angle == 0], level), (lying, plumb)):
        numbers = range(math.floor(ruler.length / away + 1e-6) + 1)
        assert [text.text for text in texts] == [f"{n * counts} {unit}" if n else "0" for n in numbers]
        assert {(text.anchor, text.height) for text in texts} == {("middle", 2.5)}
    for number, text in enumerate(text for text in figures if text.angle == 0):
        assert (text.x, text.y) == (pytest.approx(level.x0 + number * away), pytest.approx(level.y0 + 1.2))
    for number, text in enumerate(lying):  # their feet are to the right
        assert (text.x, text.y) == (pytest.approx(plumb.x0 + 3.9), pytest.approx(plumb.y0 + number * away))
    grounds = [item for item in form.items if isinstance(item, Polygon)]
    assert [ground.grey for ground in grounds] == [1.0] * len(figures)
    for ground, text in zip(grounds, figures, strict=True):
        ink, xs, ys = LETTERING.box(text), *zip(*ground.points, strict=True)
        assert (min(xs), min(ys)) == (pytest.approx(ink.x0 - 0.3), pytest.approx(ink.y0 - 0.3))
        assert (max(xs), max(ys)) == (pytest.approx(ink.x1 + 0.3), pytest.approx(ink.y1 + 0.3))
    order = [isinstance(item, Text) for item in form.items]
    assert order == sorted(order)  # the figures last, over all white


@pytest.mark.parametrize("unit", TICKS)
def test_what_rulers_take_of_a_sheet_holds_all_their_ticks_and_figures(unit):
    sheet = SHEETS.sheets[0]
    area = sheet.page.printable
    dx, dy = sheet.window.x0 - area.x0, sheet.window.y0 - area.y0
    zones = rulers_zones(SHEETS, sheet, unit)
    for item in rulers_form(sheet.page, SHEETS.paper.overlap, unit, LETTERING).items:
        if isinstance(item, Line):
            low, high = sorted(((item.x0 + dx, item.y0 + dy), (item.x1 + dx, item.y1 + dy)))
            box = Rect(low[0], min(low[1], high[1]), high[0], max(low[1], high[1]))
        elif isinstance(item, Text):
            box = LETTERING.box(item).shifted(dx, dy)
        else:
            continue
        assert any(zone.grown(1e-6).holds(box) for zone in zones)
    assert {(round(zone.width, 6) < 20.0) or (round(zone.height, 6) < 20.0) for zone in zones} == {True}


def test_the_smallest_page_has_rulers_of_one_step():
    """4 mm of a page are left between a ruler's start and where it has to end: it is a step long all the same."""
    small = replace(PAGE, printable=Rect(7.0, 13.0, 7.0 + 6.0 + 16.0 + 4.0 + 5.0 + 6.0, 300.0))
    level, _ = rulers(small, 12.0, "mm")
    assert level.length == 10.0 and rulers(small, 12.0, "in")[0].length == pytest.approx(12.7)


@pytest.mark.parametrize("unit", TICKS)
@pytest.mark.parametrize("kind", ["marks", "corners"])
def test_nothing_of_rulers_lies_on_marks_and_corners_and_all_else_of_them_is_there(unit, kind):
    """A black corner of 10 mm on the level ruler's line, and one on the figures of the upright one."""
    level, plumb = rulers(PAGE, 12.0, unit)
    boxes = [
        Rect(level.x0 + 60.0, level.y0 - 6.0, level.x0 + 70.0, level.y0 + 4.0),
        Rect(plumb.x0 + 1.0, plumb.y0 + 48.0, plumb.x0 + 11.0, plumb.y0 + 58.0),
    ]
    whole = rulers_form(PAGE, 12.0, unit, LETTERING)
    form = rulers_form(PAGE, 12.0, unit, LETTERING, "rulers", **{kind: boxes})
    if kind == "corners":  # marks may move a ruler's end, too
        off = [box.grown(1.0) for box in boxes]
        lost = [item for item in whole.items if item not in form.items]
        assert lost and all(any(reach(item).overlaps(box) for box in off) for item in lost)
    for item in form.items:
        assert not any(reach(item).overlaps(box) for box in boxes), item


def reach(item) -> Rect:
    """What an item takes (mm), a line without its width."""
    if isinstance(item, Text):
        return LETTERING.box(item)
    xs, ys = zip(*(item.points if isinstance(item, Polygon) else ((item.x0, item.y0), (item.x1, item.y1))), strict=True)
    return Rect(min(xs), min(ys), max(xs), max(ys)).grown(1e-6)


def polygons(form) -> list[list[tuple[float, float]]]:
    return [list(item.points) for item in form.items if isinstance(item, Polygon)]


@pytest.mark.parametrize("upright", [False, True])
def test_bars_of_a_registration_mark_lean_apart_at_45_degrees_and_no_two_are_alike(upright):
    """From 0.6 mm beside the middle out: a bar of 0.6 mm, 0.8 mm of white, a bar of 1.1 mm; 5 mm high."""
    bars = polygons(bars_form(upright))
    across = [[(y, -x) if upright else (x, y) for x, y in bar] for bar in bars]
    right = [bar for bar in across if bar[0][0] > 0]
    assert len(bars) == 4 and len(right) == 2
    for inner, outer in (right, [[(-x, y) for x, y in bar] for bar in across if bar[0][0] < 0]):
        for bar in (inner, outer):
            (x0, y0), (x1, y1), (x2, y2), (x3, y3) = bar
            assert (y0, y1, y2, y3) == pytest.approx((-2.5, -2.5, 2.5, 2.5))
            assert (x3 - x0, x2 - x1) == pytest.approx((5.0, 5.0))  # as far aside as up
        assert inner[0][0] == pytest.approx(0.6)
        assert (inner[1][0] - inner[0][0]) / math.sqrt(2) == pytest.approx(0.6)
        assert (outer[0][0] - inner[1][0]) / math.sqrt(2) == pytest.approx(0.8)
        assert (outer[1][0] - outer[0][0]) / math.sqrt(2) == pytest.approx(1.1)
    box = bars_form(upright).box
    assert all(box.grown(1e-9).has_point(x, y) for bar in bars for x, y in bar)


@pytest.mark.parametrize("upright", [False, True])
@pytest.mark.parametrize("length", [180.0, 181.7, 12.0])
def test_teeth_of_a_line_to_cut_point_to_what_falls_off_evenly_along_all_of_it(upright, length):
    """Every 6 mm one of 3 mm, 2.8 mm deep: left of an upright line, under a level one, as much free at either end."""
    form = cut_form(upright, length)
    teeth = polygons(form)
    along = [[(y, x) if upright else (x, y) for x, y in tooth] for tooth in teeth]
    tips = sorted(tooth[2] for tooth in along)
    assert len(teeth) == math.floor((length - 3.0) / 6.0) + 1
    assert {round(y, 6) for _, y in tips} == {-2.8}
    assert [two[0] - one[0] for one, two in pairwise(tips)] == pytest.approx([6.0] * (len(tips) - 1))
    assert tips[0][0] == pytest.approx(length - tips[-1][0])
    for (x0, y0), (x1, y1), _ in along:
        assert abs(x1 - x0) == pytest.approx(3.0) and y0 == y1 == 0.0
        assert 0.0 <= min(x0, x1) and max(x0, x1) <= length
    assert all(form.box.has_point(x, y) for tooth in teeth for x, y in tooth)


def test_a_nails_mark_is_a_bold_ring_with_wedges_that_leave_the_dot_free_and_a_slit_straight_below():
    items = ring_items()
    ring, dot = [item for item in items if isinstance(item, Circle)]
    assert (ring.x, ring.y, ring.radius, ring.width) == (0, 0, 6.5, 1.0)
    assert (dot.x, dot.y, dot.radius) == (0, 0, 0.4) and dot.filled
    tips = [item.points for item in items if isinstance(item, Polygon)]
    assert sorted(points[0] for points in tips) == [(-1.3, 0), (0, 1.3), (1.3, 0)]
    for (x, y), one, two in tips:  # from 1.3 mm out to 8, 2.2 mm wide there
        far = ((one[0] + two[0]) / 2, (one[1] + two[1]) / 2)
        assert math.hypot(*far) == pytest.approx(8.0) and math.dist(one, two) == pytest.approx(2.2)
        assert math.hypot(x, y) + math.dist((x, y), far) == pytest.approx(8.0)
    slit = [item for item in nail_form().items if isinstance(item, Line) and item.x0 == item.x1 == 0]
    assert sorted((line.y0, line.y1) for line in slit) == [(-3.0, -36.0), (-2.5, 8.0)]
    (bar,) = (item for item in nail_form().items if isinstance(item, Line) and item.y0 == item.y1 == -36.0)
    assert (bar.x0, bar.x1) == (-1.5, 1.5)
    (words,) = (item for item in nail_form().items if isinstance(item, Text))
    assert (words.x, words.y, words.angle) == (-1.9, -34.0, 90)


def test_a_frames_edge_is_double_3_mm_apart_and_stronger_for_15_mm_at_its_corners():
    lines = list(frame_lines(Rect(0.0, 0.0, 100.0, 80.0)))
    assert [line.width for line in lines] == [0.5] * 4 + [0.35] * 4
    assert {(line.x0, line.y0) for line in lines[:4]} == {(0.0, 0.0), (100.0, 0.0), (100.0, 80.0), (0.0, 80.0)}
    assert {(line.x0, line.y0) for line in lines[4:]} == {(3.0, 3.0), (97.0, 3.0), (97.0, 77.0), (3.0, 77.0)}
    assert len(list(frame_lines(Rect(0.0, 0.0, 100.0, 6.0)))) == 4  # the second one would have no height
    (hung,) = PLAN.frames
    corners = [line for line in frame_form(hung).items if isinstance(line, Line) and line.width == 1.0]
    assert sorted(max(abs(line.x1 - line.x0), abs(line.y1 - line.y0)) for line in corners) == [15.0] * 4 + [15.5] * 4
    ends = {(round(line.x1), round(line.y1)) for line in corners}
    assert ends == {(x, y) for x in (0, 400) for y in (15, 485)} | {(x, y) for x in (15, 385) for y in (0, 500)}


def test_no_line_of_a_frame_comes_nearer_to_its_nail_than_9_mm_level_or_upright():
    (hung,) = plan_wall(job(frame("A", 400.0, 500.0, 5.0, hanger=Hanger(kind="sawtooth")))).frames
    (nail,) = hung.nails
    at = nail.x - hung.rect.x0, nail.y - hung.rect.y0
    assert 490.0 < at[1] < 500.0  # within both lines of the upper edge
    hole = Rect.about(*at, 18.0, 18.0)
    lines = [reach(item) for item in frame_form(hung).items]
    assert not any(line.overlaps(hole.grown(-0.01)) for line in lines)
    level = [line for line in lines if line.height < 0.1 and line.y0 > 496.0]
    assert any(line.x1 == pytest.approx(hole.x0, abs=0.01) for line in level)  # and they go on just beside it
    assert any(line.x0 == pytest.approx(hole.x1, abs=0.01) for line in level)


def test_corners_of_a_small_frame_take_a_third_of_its_sides():
    (hung,) = plan_wall(job(frame("A", 36.0, 42.0, 21.0))).frames
    corners = [line for line in frame_form(hung).items if isinstance(line, Line) and line.width == 1.0]
    assert {(round(line.x1, 6), round(line.y1, 6)) for line in corners} == {
        *((x, y) for x in (0.0, 36.0) for y in (14.0, 28.0)), *((x, y) for x in (12.0, 24.0) for y in (0.0, 42.0)),
    }  # fmt: skip


def with_nail(across: float, up: float):
    """A plan of one nail so far from where the lines cross."""
    plan = plan_wall(job(frame("N", 300.0, 200.0, 100.0)))
    (nail,) = plan.nails
    line, level = nail.x - across, nail.y - up
    return replace(plan, centre_line=line, level_line=level)


@pytest.mark.parametrize(("away", "window"), [(19.5, True), (18.5, False)])  # its window's half and the nail's mark
def test_the_target_has_a_window_where_no_nail_mark_reaches_into_it(away, window):
    for across, up in ((away, 0.0), (0.0, away), (-away, 0.0), (away * 0.6, -away * 0.8)):
        plan = with_nail(across, up)
        assert has_window(plan) == window
        white = [item for item in target(plan) if isinstance(item, Polygon) and item.grey == 1.0]
        assert len(white) == window
        x, y = plan.centre_line, plan.level_line
        for polygon in white:
            assert set(polygon.points) == {(x + 10, y), (x - 10, y), (x, y + 10), (x, y - 10)}


def test_wedges_of_the_target_point_at_the_cross_from_four_sides_but_for_where_a_nail_is():
    def wedges(plan):
        x, y = plan.centre_line, plan.level_line
        every = [item.points for item in target(plan) if isinstance(item, Polygon) and len(item.points) == 3]
        return {
            (round(at[0][0] - x), round(at[0][1] - y))
            for at in every
            if max(math.dist(a, b) for a in at for b in at) > 5.5
        }

    assert wedges(with_nail(300.0, 0.0)) == {(10, 0), (0, 10), (-10, 0), (0, -10)}
    assert wedges(with_nail(20.0, 0.0)) == {(0, 10), (-10, 0), (0, -10)}
    assert wedges(with_nail(0.0, -26.5)) == {(10, 0), (0, 10), (-10, 0)}  # 11.5 mm off the wedge's end: 12 are kept
    assert wedges(with_nail(5.0, 9.0)) == {(-10, 0), (0, -10)}  # 10.3 mm off one's tip, 13.5 off its end
    assert wedges(with_nail(0.0, -27.5)) == {(10, 0), (0, 10), (-10, 0), (0, -10)}


TENS = {10: 6.0, 5: 4.5, 1: 2.5}


@pytest.mark.parametrize(
    ("unit", "step", "lengths"), [("mm", 10.0, TENS), ("cm", 10.0, TENS), ("in", 25.4, {12: 6.0, 6: 4.5, 1: 2.5})]
)
def test_the_level_line_is_graduated_both_ways_from_the_centre_line_below_it(unit, step, lengths):
    plan = plan_wall(job(frame("A", 400.0, 500.0, 80.0), unit=unit))
    x, y = plan.centre_line, plan.level_line
    items = [item for item in long_lines(plan, Rect(x - 150.0, y - 50.0, x + 150.0, y + 50.0), ())]
    ticks = [item for item in items if item.x0 == item.x1 and item.width == 0.35]
    assert sorted(round((line.x0 - x) / step, 6) for line in ticks) == list(
        range(-int(150 / step), int(150 / step) + 1)
    )
    assert all(line.y0 - line.y1 == pytest.approx(tick(round((line.x0 - x) / step), lengths)) for line in ticks)
    (centre,) = [item for item in items if item.width == 0.7]
    assert centre.x0 == centre.x1 == x and (centre.y0, centre.y1) == (y - 50.0, y + 50.0)
    (level,) = [item for item in items if item.width == 1.0]
    assert (level.y0, level.y1, level.x0, level.x1) == (y, y, x - 150.0, x + 150.0)


@pytest.mark.parametrize("sparing", [(), (Rect(0.0, 0.0, 400.0, 400.0),)], ids=["alone", "beside a line"])
def test_beside_a_line_of_the_wall_rulers_have_ticks_at_their_figures_alone(sparing):
    """Or their ticks would make a line to cut of it; every centimetre has a tick otherwise, every fifth a figure."""
    level, _ = rulers(PAGE, 12.0, "cm")
    lines = [item for item in rulers_form(PAGE, 12.0, "cm", LETTERING, sparing=sparing).items if isinstance(item, Line)]
    at = {round(line.x0 - level.x0, 6) for line in lines if line.x0 == line.x1 and line.y0 == level.y0}
    assert at == {float(x) for x in range(0, round(level.length) + 1, 50 if sparing else 5)}
    long = [line for line in lines if max(abs(line.x1 - line.x0), abs(line.y1 - line.y0)) > 5.0]
    assert len(long) == 2 * (not sparing)


def test_the_upright_ruler_is_sparing_beside_a_drop_scale():
    """One beside the other was 0.2 mm away for 63 mm: two scales as one.  Figures stand every inch, and the last 6 mm
    of a ruler are whole."""
    done, beside = made("twelve, letter, all"), 0
    for laid in lay(done.plan, done.sheets, 0, done.lettering):
        sheet, (dx, dy) = laid.so_far.sheet, laid.so_far.to_page
        zones = [scale.zone.shifted(dx, dy) for some in laid.so_far.scales.values() for scale in some]
        (name,) = [use.form for drawn in laid.drawn.values() for use in drawn.page_items
                   if isinstance(use, Use) and use.form.startswith("rulers")]  # fmt: skip
        (form,) = [form for form in done.template.forms if form.name == name]
        _, plumb = rulers(sheet.page, done.sheets.paper.overlap, "in", ())
        ticks = [line for line in form.items if isinstance(line, Line) and line.x0 == plumb.x0 and line.y0 == line.y1]
        for zone in zones:
            if zone.x0 < plumb.x0 < zone.x1 and zone.overlaps(Rect(plumb.x0, plumb.y0 + 6, plumb.x0 + 1, plumb.y1 - 6)):
                beside += 1
                low, high = max(zone.y0, plumb.y0 + 6.0), min(zone.y1, plumb.y1 - 6.0)
                off = [(line.y0 - plumb.y0) / 25.4 for line in ticks if low < line.y0 < high]
                assert off == pytest.approx([round(inches) for inches in off])
    assert beside


def test_teeth_go_all_along_the_longest_line_to_cut():
    """Sheets are of many sizes: the first one's may be the shortest."""
    done = made("twelve, letter, linked")
    level, upright = (form for form in done.template.forms if form.name.startswith("cut, "))
    assert level.box.width >= max(sheet.window.width for sheet in done.sheets.sheets)
    assert upright.box.height >= max(sheet.window.height for sheet in done.sheets.sheets)


def test_the_centre_line_leaves_a_release_slit_free_and_goes_on_under_it():
    """The slit ends 36 mm under the nail point, its mark 9 mm over it; a line beside the slit goes on."""
    plan = plan_wall(job(frame("A", 400.0, 500.0, 80.0)))
    x, y = plan.centre_line, plan.level_line
    window = Rect(x - 20.0, y - 100.0, x + 20.0, y + 50.0)
    for aside, parts in ((0.0, [(-100.0, -38.5), (9.0, 50.0)]), (4.0, [(-100.0, -9.0), (9.0, 50.0)])):
        lines = [item for item in long_lines(plan, window, [(x + aside, y)]) if item.width == 0.7]
        assert [(line.y0 - y, line.y1 - y) for line in lines] == [pytest.approx(part) for part in parts]


@pytest.mark.parametrize(("cover", "width"), [("all", 150.0), ("marks", 420.0)], ids=["marks", "a corner"])
def test_rulers_of_every_sheet_keep_off_its_registration_marks_and_black_corners(cover, width):
    """Three frames on letter paper: marks are where rulers would be, or a black corner of a frame is."""
    three = (frame(name, width, 250.0, 80.0) for name in "ABC")
    every = job(*three, group=group((("A", "B", "C"),), gap=60.0), paper=paper("letter", cover=cover))
    plan = plan_wall(every)
    sheets = plan_sheets(plan, every.paper, None)
    laid = lay(plan, sheets, 0, LETTERING)
    forms = {form.name: form for form in sheet_forms(plan, sheets, laid, LETTERING)}
    met = 0
    for one in laid:
        sheet, (dx, dy) = one.so_far.sheet, one.so_far.to_page
        (used,) = [
            item for done in one.drawn.values() for item in done.page_items
            if isinstance(item, Use) and item.form.startswith("rulers")
        ]  # fmt: skip
        corners = next(iter(one.drawn.values())).taken
        off = [box.shifted(dx, dy) for box in (*corners, *(mark.box for mark in one.so_far.part.marks))]
        assert not any(reach(item).overlaps(box) for item in forms[used.form].items for box in off)
        plain = rulers_form(sheet.page, 12.0, "mm", LETTERING)
        met += any(reach(item).overlaps(box) for item in plain.items for box in off)
    assert met


def test_frames_far_from_an_upright_line_are_not_asked_for_their_scales(monkeypatch: pytest.MonkeyPatch) -> None:
    asked = []
    monkeypatch.setattr(wall_marks, "scales_to_mark", lambda hung: asked.append(hung) or ())
    plan = plan_wall(many(50))  # ten frames in each of five rows
    x, far = plan.centre_line, plan.group.x0
    list(long_lines(plan, Rect(far, plan.group.y0, far + 150.0, plan.group.y0 + 200.0), ()))
    assert not asked  # no upright line is on that sheet
    list(long_lines(plan, Rect(x - 75.0, plan.group.y0, x + 75.0, plan.group.y0 + 200.0), ()))
    assert 0 < len(asked) <= 5
    assert all(hung.rect.x0 <= x <= hung.rect.x1 for hung in asked)
