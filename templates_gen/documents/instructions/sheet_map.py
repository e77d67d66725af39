"""The map of the sheets on the first page: where every sheet goes, with frames, nails and both lines, to scale."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect, bounds
from templates_gen.base.record import replace
from templates_gen.documents.instructions.map_numbers import EDGE, sheet_numbers, sides, tape_marks
from templates_gen.drawing.blocks import shortened
from templates_gen.drawing.grounds import over_lines
from templates_gen.drawing.houses import house, house_size
from templates_gen.drawing.items import Circle, Item, Line, Polygon, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Boxes, Room, placed_near
from templates_gen.drawing.shapes import corner_triangle, ground
from templates_gen.drawing.sizes import H18, H25, H35, HAIR, NARROW
from templates_gen.drawing.strokes import CENTRE_DASH, PITCH_DASH
from templates_gen.tiling.long_lines import centre_spans, level_spans, pieces, pitch_line
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.diagonals import corners_to_measure

KEY = 5.5
"""mm at the foot of the map for its key.  Our own design, no source."""

KEY_WORDS = "a sheet, by the order of taping", "on a join: the step in which it is taped"

CHANGED_WORDS = "thick: printed anew; crossed out: no longer needed; the others are on the paper you have"

THICK = 0.9
"""mm: the outline of a sheet that is printed anew, on the map of older paper.  Our own design, no source."""

SIZES = (H35, H25, H18)
"""Heights of the sheets' names, largest first.  Our own design, no source."""

MOST_TRIED = 60
"""Sheets on a map for whose steps' numbers room is made by smaller names: with more, the names are small as it is, and
trying again would take long.  Our own design, no source."""

LEAST_HEIGHT, CELL = 68.0, 9.0
"""mm that the map is high, and that a sheet on it should be, both ways.  Our own design, no source."""

MOST_OF_PAGE, FOR_STEPS, STEP = 0.5, 0.7, 3.5
"""Of the page's height that is free: what the map takes at most, or where joins are short for the numbers of their
steps; mm that a join should be long on the map for that.  Our own design, no source."""

FRAME, NAIL, NAIL_ROOM, BEYOND, OFF_LINE = 0.88, 0.7, 2.0, 2.0, 0.3
"""A frame's grey; mm: a nail's radius and the side of what it takes, how far long lines go beyond the group, and what
names keep from them.  Our own design, no source."""

KEY_AIR, KEY_LINE, HOUSE_DOWN = (1.5, 6.0), 5.0, 0.4
"""mm in the key: between a sign and its words, and to the next sign; the line that stands for a join; and how far a
house reaches beneath the foot of the words.  Our own design, no source."""

CORNER = 2.2
"""mm: a side of the black corner of a frame to measure from.  Our own design, no source."""


def map_height(plan: Plan, sheets: SheetPlan, place: Rect) -> float:
    """How high the map has to be so that names and numbers can be told apart, within most of the place (mm)."""
    area = map_area(plan, sheets)
    least = min(min(sheet.cell.width, sheet.cell.height) for sheet in sheets.sheets)
    wanted = max(LEAST_HEIGHT, CELL / least * area.height + KEY)
    shortest = min((join.length for join in sheets.joins), default=area.height)
    for_steps = min(FOR_STEPS * place.height, STEP / shortest * area.height + KEY)
    most = max(LEAST_HEIGHT, MOST_OF_PAGE * place.height, for_steps)
    return min(wanted, most, place.width / area.width * area.height + 2 * KEY)


def map_area(plan: Plan, sheets: SheetPlan) -> Rect:
    """The part of the wall that the map shows (mm)."""
    return bounds([plan.group, *(sheet.cell for sheet in sheets.sheets)])


def sheet_map(
    plan: Plan, sheets: SheetPlan, steps: Mapping[tuple[str, str], int], lettering: Lettering, place: Rect,
    whole: Plan | None = None,
) -> Iterator[Item]:  # fmt: skip
    """The map as large as the place (page mm) allows, in its middle, with a line of key at its foot.

    `steps` are the numbers that the joins are taped in (by the names of upper and lower sheet).  `whole` is the plan of
    all frames where this is a part of the map.
    """
    keyed = [*_key(sheets, place, lettering)]
    yield from keyed
    place = Rect(place.x0, place.y0 + (KEY if keyed else 0.0), place.x1, place.y1)
    area = map_area(plan, sheets)
    scale, at = to_map(area, place)
    nails = (at(Rect(nail.x, nail.y, nail.x, nail.y)) for nail in plan.nails)
    items = (
        *frames_on_map(plan, at),
        *(Polygon(at(sheet.cell).corners, NARROW, False) for sheet in sheets.sheets),
        *_changed(sheets, at),
        *_lines(plan, area, at),
        *_corners(whole or plan, area, at),
        *(Circle(spot.x0, spot.y0, NAIL, 0.0, True) for spot in nails),
        *_names(plan, sheets, steps, at, scale, lettering),
    )
    yield from over_lines(items, (), [*_edges(sheets, at)], (), lettering)


def _edges(sheets: SheetPlan, at: Callable[[Rect], Rect]) -> Iterator[Line]:
    """The sides of the sheets, which are drawn as outlines, as lines that break off at lettering."""
    for sheet in sheets.sheets:
        corners = at(sheet.cell).corners
        for (x0, y0), (x1, y1) in zip(corners, (*corners[1:], corners[0]), strict=True):
            yield Line(x0, y0, x1, y1, NARROW)


def _changed(sheets: SheetPlan, at: Callable[[Rect], Rect]) -> Iterator[Item]:
    """Sheets that go into older paper have a thick outline, those that come off it are crossed out."""
    if sheets.printed is None:
        return
    for sheet in sheets.sheets:
        box: Rect = at(sheet.cell)
        if sheet.name in sheets.printed:
            yield Polygon(box.corners, THICK, False)
        elif sheet.name in sheets.gone:
            yield Line(box.x0, box.y0, box.x1, box.y1, NARROW)
            yield Line(box.x0, box.y1, box.x1, box.y0, NARROW)


def to_map(area: Rect, place: Rect) -> tuple[float, Callable[[Rect], Rect]]:
    """The scale of a map that shows this area of the wall in the place, and what brings a rectangle there."""
    scale = min(place.width / area.width, place.height / area.height)
    dx, dy = place.cx - area.cx * scale, place.cy - area.cy * scale
    return scale, lambda rect: Rect(
        rect.x0 * scale + dx, rect.y0 * scale + dy, rect.x1 * scale + dx, rect.y1 * scale + dy
    )


def frames_on_map(plan: Plan, at: Callable[[Rect], Rect]) -> Iterator[Item]:
    """The frames as grey areas."""
    return (Polygon(at(hung.rect).corners, 0.0, True, FRAME) for hung in plan.frames)


def _lines(plan: Plan, area: Rect, at: Callable[[Rect], Rect]) -> Iterator[Item]:
    """The long lines where they cross the area; those that run across the group stand out a little from it."""
    x, y, out = plan.centre_line, plan.level_line, 0.0 if plan.slope or plan.job.group.around else BEYOND
    for low, high in centre_spans(plan) if area.x0 <= x <= area.x1 else ():
        line = at(Rect(x, low, x, high))
        yield Line(line.x0, line.y0 - out, line.x0, line.y1 + out, HAIR, CENTRE_DASH)
    for low, high in level_spans(plan) if area.y0 <= y <= area.y1 else ():
        line = at(Rect(low, y, high, y))
        yield Line(line.x0 - out, line.y0, line.x1 + out, line.y0, HAIR)
    if ends := pitch_line(plan):
        line = at(Rect(*ends))
        yield Line(line.x0, line.y0, line.x1, line.y1, HAIR, PITCH_DASH)


def _corners(plan: Plan, area: Rect, at: Callable[[Rect], Rect]) -> Iterator[Item]:
    """The frames' corners in this area that the taped paper is measured between, black."""
    for x, y, right, up in corners_to_measure(plan):
        spot = at(Rect(x, y, x, y))
        if area.has_point(x, y):
            yield corner_triangle(spot.x0, spot.y0, -CORNER if right else CORNER, -CORNER if up else CORNER)


def _key(sheets: SheetPlan, place: Rect, lettering: Lettering) -> Iterator[Item]:
    """What houses and the numbers on joins mean."""
    if sheets.printed is not None:
        yield Text(place.x0, place.y0, CHANGED_WORDS, H25)
    elif sheets.joins:
        x, after = place.x0, KEY_AIR
        yield from house("1", H18, x, place.y0 - HOUSE_DOWN, lettering)
        x += house_size("1", H18, lettering)[0] + after[0]
        yield Text(x, place.y0, KEY_WORDS[0], H25)
        x += lettering.width(KEY_WORDS[0], H25) + after[1]
        yield Line(x, place.y0 + H18 / 2, x + KEY_LINE, place.y0 + H18 / 2, NARROW)
        number = Text(x + KEY_LINE / 2, place.y0, "1", H18, "middle")
        yield ground(lettering.box(number))
        yield number
        yield Text(x + KEY_LINE + after[0], place.y0, KEY_WORDS[1], H25)


def _names(
    plan: Plan, sheets: SheetPlan, steps: Mapping[tuple[str, str], int], at: Callable[[Rect], Rect], scale: float,
    lettering: Lettering,
) -> Iterator[Item]:  # fmt: skip
    """The names of the sheets in their upper left corners, the marks of taping, and the names of frames with room.

    The numbers of the steps come first, and the sheets' are as large as leaves room for all of them.
    """
    sheets = replace(sheets, joins=()) if sheets.printed is not None else sheets  # older paper is taped already
    for largest in range(len(SIZES) if len(sheets.sheets) <= MOST_TRIED else 1):
        room = _taken(plan, at, scale)
        marks = list(tape_marks(sheets, steps, at, room, lettering))
        items = list(sheet_numbers(sheets, SIZES[largest:], at, room, lettering))
        houses = sum(isinstance(item, Polygon) and not item.filled for item in items)
        if houses == len(sheets.sheets) or len(sheets.sheets) == 1:
            break
    yield from (*items, *marks)
    edges = Boxes(side for sheet in sheets.sheets for side in sides(at(sheet.cell)))
    room.lines += edges
    for hung in plan.frames:
        rect: Rect = at(hung.rect)
        own = rect.grown(-EDGE)
        ways = (
            (hung.frame.id, H25),
            (hung.frame.id, H18),
            (shortened(hung.frame.id, H25, False, own.width, lettering), H25),
        )
        texts = (Text(0.0, 0.0, words, height) for words, height in ways if words)
        near = room.near(rect)
        if name := next(
            filter(None, (placed_near(text, rect.cx, rect.cy, own, near, lettering) for text in texts)), None
        ):
            box = lettering.box(name)
            if edges.any_at(box, 0.0):
                yield ground(box)
            yield name


def _taken(plan: Plan, at: Callable[[Rect], Rect], scale: float) -> Room:
    """The map with the nails taken; names are better not written over the long lines."""
    room = Room(Rect(-math.inf, -math.inf, math.inf, math.inf))
    level = at(Rect(plan.group.x0, plan.level_line, plan.group.x1, plan.level_line))
    centre = at(Rect(plan.centre_line, plan.group.y0, plan.centre_line, plan.group.y1))
    room.lines += [level.grown(OFF_LINE), centre.grown(OFF_LINE)]
    if ends := pitch_line(plan):
        room.lines += [at(box) for box in pieces(ends, 1.0 / scale)]
    for x, y, right, up in corners_to_measure(plan):
        spot = at(Rect(x, y, x, y))
        room.take(
            spot.grown(CORNER / 2).shifted(-CORNER / 2 if right else CORNER / 2, -CORNER / 2 if up else CORNER / 2)
        )
    for nail in plan.nails:
        room.take(at(Rect.about(nail.x, nail.y, NAIL_ROOM / scale, NAIL_ROOM / scale)))
    return room
