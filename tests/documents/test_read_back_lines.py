"""The written pages taken apart again: frame outlines, centre line and level line."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import pytest

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.documents.sheets.scales import scales_to_mark
from templates_gen.documents.sheets.wall_marks import long_lines
from templates_gen.drawing.items import Line
from templates_gen.tiling.demand import nail_box
from templates_gen.tiling.long_lines import centre_spans, level_spans
from tests.jobs import frame, job
from tests.made import NAMES, SPARING, made
from tests.wall_reading import (
    BROAD,
    CLOSE,
    HEAVY,
    STRONG,
    WIDE,
    Shown,
    covered,
    every,
    in_hole,
    is_level,
    is_upright,
    shown,
    tick_length,
    wide,
)

POINT = 25.4 / 72  # mm; ISO 32000-1, 8.3.2.3, and the international inch of 1959
ARM = 15.0  # mm of either edge from a frame's corner that are on paper: our own design, no source
STEP = 20.0  # mm between the points that are looked at; no source

# mm between ticks, and the length of tick n, as on a tape measure: common practice, no source
ALONG_LEVEL = {"in": (25.4, ((12, 6.0), (6, 4.5), (1, 2.5)))} | dict.fromkeys(
    ("mm", "cm"), (10.0, ((10, 6.0), (5, 4.5), (1, 2.5)))
)
UNIT = {"in": 25.4, "cm": 10.0, "mm": 1.0}

all_jobs = pytest.mark.parametrize("name", NAMES)


def nail_points(name: str) -> list[tuple[float, float]]:
    return [(nail.x, nail.y) for nail in made(name).plan.nails]


def outline(rect: Rect) -> Iterator[tuple[float, float, bool]]:
    """Points along all four edges, and whether the edge is level."""
    for x in every(rect.x0, rect.x1, STEP):
        yield from ((x, rect.y0, True), (x, rect.y1, True))
    for y in every(rect.y0, rect.y1, STEP):
        yield from ((rect.x0, y, False), (rect.x1, y, False))


def corners(rect: Rect) -> Iterator[tuple[float, float, bool]]:
    """Points along both arms of every corner, and whether the arm is level."""
    for x, way in ((rect.x0, 1.0), (rect.x1, -1.0)):
        for y, up in ((rect.y0, 1.0), (rect.y1, -1.0)):
            for part in every(0.0, ARM, ARM / 3):
                yield from ((x + way * part, y, True), (x, y + up * part, False))


def left_free(nails: list[tuple[float, float]], x: float, y: float, width: float) -> bool:
    """Whether a nail's mark is there, or its slit, which ends 36 mm under it, and the centre line runs along that."""
    slit = width == HEAVY and any(abs(x - nail) <= 2.5 and -38.5 <= y - over <= 0.0 for nail, over in nails)
    return slit or in_hole(nails, x, y)


def drawn_wherever_shown(
    name: str, points: list[tuple[float, float, bool]], width: float, somewhere: bool = True
) -> None:
    """Every point is on a line of this width on each sheet whose window shows it, and, where all is covered, on one."""
    nails, counts = nail_points(name), [0] * len(points)
    for sheet in shown(name):
        lines = wide(sheet.segments, width)
        sides = {True: [s for s in lines if is_level(s)], False: [s for s in lines if is_upright(s)]}
        inside = sheet.window.grown(-CLOSE)
        for number, (x, y, level) in enumerate(points):
            if inside.has_point(x, y):
                counts[number] += 1
                drawn = covered(sides[level], x, y) or left_free(nails, x, y, width)
                assert drawn, f"nothing at {x}, {y} on {sheet.name}"
    assert not somewhere or made(name).job.paper.cover in SPARING or min(counts) >= 1


@all_jobs
def test_every_point_of_a_frames_outline_is_drawn(name: str) -> None:
    """Of paper with every mark the corners are somewhere, of paper with the whole group the whole edges."""
    for hung in made(name).plan.frames:
        drawn_wherever_shown(name, list(outline(hung.rect)), STRONG, made(name).job.paper.cover == "all")
        drawn_wherever_shown(name, list(corners(hung.rect)), STRONG)


@all_jobs
def test_outlines_leave_gaps_for_nails_alone(name: str) -> None:
    """A gap is no wider than the 18 mm that a nail mark keeps free: most of each frame's edge is there."""
    nails = nail_points(name)
    for hung in made(name).plan.frames:
        points = list(outline(hung.rect))
        assert sum(in_hole(nails, x, y) for x, y, _ in points) <= len(points) / 4


@all_jobs
def test_level_line_is_drawn_right_across(name: str) -> None:
    plan = made(name).plan
    points = [(x, plan.level_line, True) for span in level_spans(plan) for x in every(*span, STEP)]
    drawn_wherever_shown(name, points, BROAD)


@all_jobs
def test_centre_line_is_drawn_from_top_to_foot(name: str) -> None:
    plan = made(name).plan
    scales = [scale.zone for hung in plan.frames for scale in scales_to_mark(hung)]
    heights = [y for span in centre_spans(plan) for y in every(*span, STEP)]
    on_paper = [y for y in heights if not any(zone.has_point(plan.centre_line, y) for zone in scales)]
    everywhere = not plan.slope and len(centre_spans(plan)) == 1  # else it may end where no mark needs paper
    drawn_wherever_shown(name, [(plan.centre_line, y, False) for y in on_paper], HEAVY, everywhere)


def test_the_centre_line_breaks_off_on_a_scale_to_mark_a_nail_on() -> None:
    """Where a drop is not known the scale stands on the hanger's upright, 120 mm long and 25 mm wide (our own), here on
    the centre line: together they look like a line to cut along."""
    plan = plan_wall(job(frame("A", 300, 400, None)))
    window = plan.group.grown(10.0)
    lines = [one for one in long_lines(plan, window, []) if isinstance(one, Line) and one.width == HEAVY]
    assert [(line.x0, line.y0, line.y1) for line in lines] == [
        (plan.centre_line, plan.group.y0, plan.group.y1 - 400 / 3),  # a third of its height is longer than 120 mm
    ]


@all_jobs
def test_dashes_of_the_centre_line_meet_across_joins(name: str) -> None:
    """Dash, gap, dot, gap of 7, 2.8, 1 and 2.8 mm: our own design, after ISO 128-2 line type 10 (from memory)."""
    plan = made(name).plan
    strokes = [
        s
        for sheet in shown(name)
        for s in wide(sheet.segments, HEAVY)
        if is_upright(s) and abs(s.x0 - plan.centre_line) < CLOSE and s.dash[0]
    ]
    assert strokes
    starts = []
    for stroke in strokes:
        lengths, phase = stroke.dash
        assert lengths == pytest.approx((7.0, 2.8, 1.0, 2.8), abs=CLOSE)
        assert stroke.y1 > stroke.y0
        starts.append((stroke.y0 - phase) / sum(lengths))
    apart = [(start - starts[0] + 0.5) % 1 - 0.5 for start in starts]
    assert max(map(abs, apart)) * sum(strokes[0].dash[0]) < CLOSE


@all_jobs
def test_ticks_of_the_level_line_count_from_the_centre_line(name: str) -> None:
    plan, nails = made(name).plan, nail_points(name)
    step, lengths = ALONG_LEVEL[made(name).job.unit]
    seen = 0
    for sheet in shown(name):
        uprights = [s for s in wide(sheet.segments, WIDE) if is_upright(s)]
        ticks = {
            s.x0 - plan.centre_line: abs(s.y1 - s.y0)
            for s in uprights
            if abs(max(s.y0, s.y1) - plan.level_line) < CLOSE
            and sheet.window.has_point(s.x0, plan.level_line)
            and not s.dash[0]
        }
        for at, length in ticks.items():
            number = round(at / step)
            assert abs(at - number * step) < CLOSE
            assert abs(length - tick_length(abs(number), lengths)) < CLOSE or in_hole(
                nails, at + plan.centre_line, plan.level_line - 6
            )
        for number in numbers_shown(sheet, plan, step):
            x = plan.centre_line + number * step
            assert in_hole(nails, x, plan.level_line) or min(abs(number * step - at) for at in ticks) < CLOSE
            seen += 1
    assert seen


def numbers_shown(sheet: Shown, plan: Plan, step: float) -> Iterator[int]:
    """Which ticks of the level line the sheet shows."""
    for start, end in level_spans(plan) if sheet.window.y0 < plan.level_line < sheet.window.y1 else ():
        low, high = (max(start, sheet.window.x0), min(end, sheet.window.x1))
        ticks = (low - plan.centre_line + CLOSE) / step, (high - plan.centre_line - CLOSE) // step
        yield from range(int(np.ceil(ticks[0])), int(ticks[1]) + 1)


@all_jobs
def test_figures_of_the_level_line_stand_over_their_ticks(name: str) -> None:
    """Figures 3.5 mm high on a base line 1.5 mm over the level line.  Our own design, no source."""
    done = made(name)
    found = 0
    for sheet in shown(name):
        for text in sheet.texts:
            if text.text.isdigit() and abs(text.y - done.plan.level_line - 1.5) < CLOSE:
                middle = text.x + done.lettering.width(text.text, 3.5) / 2
                away = abs(middle - done.plan.centre_line)
                assert abs(away - int(text.text) * UNIT[done.job.unit]) < CLOSE
                found += 1
    assert found


@all_jobs
def test_every_nail_mark_lies_whole_in_one_sheet_off_its_joins(name: str) -> None:
    done = made(name)
    half = done.job.paper.overlap / 2
    for nail in done.plan.nails:
        box = nail_box(nail.x, nail.y)
        assert sum(sheet.window.grown(-2 * half).holds(box) for sheet in done.sheets.sheets) == 1
