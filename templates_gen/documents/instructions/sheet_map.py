"""The map of the sheets on the first page: where every sheet goes, with frames, nails and both lines, to scale."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect, bounds
from templates_gen.documents.instructions.tape_marks import arrow_head, tape_marks
from templates_gen.drawing.grounds import over_lines
from templates_gen.drawing.items import Circle, Item, Line, Polygon, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room, placed_near
from templates_gen.drawing.sizes import H18, H25, H35, HAIR, NARROW
from templates_gen.drawing.strokes import CENTRE_DASH, PITCH_DASH
from templates_gen.tiling.long_lines import centre_spans, level_spans, pieces, pitch_line
from templates_gen.tiling.sheet import SheetPlan

KEY = 5.5
"""mm at the foot of the map for its key.  Our own design, no source."""

KEY_WORDS = "points from the sheet on top to the one under it; the numbers beside it are the order of taping"

SIZES = (H35, H25, H18)
"""Heights of the sheets' names, largest first.  Our own design, no source."""

MOST_TRIED = 60
"""Sheets on a map for whose steps' numbers room is made by smaller names: with more, the names are small as it is, and
trying again would take long.  Our own design, no source."""

EDGE = 0.6
"""mm: a name stays this far inside its sheet or frame.  Our own design, no source."""

LEAST_HEIGHT, CELL = 68.0, 11.0
"""mm that the map is high, and that a sheet on it should be, both ways.  Our own design, no source."""

MOST_OF_PAGE = 0.7
"""Of the page's height that is free: what the map takes at most.  Our own design, no source."""

FRAME, NAIL, NAIL_ROOM, BEYOND, OFF_LINE = 0.88, 0.7, 2.0, 2.0, 0.3
"""A frame's grey; mm: a nail's radius and the side of what it takes, how far long lines go beyond the group, and what
names keep from them.  Our own design, no source."""

HEAD_AT, WORDS_AT = 2.4, 4.5
"""mm from the left; the key's arrow head and its words.  Our own design, no source."""

NAME_ROOM, NAME_SHARE = 1.5, 3.5
"""mm of a sheet's width that its name leaves free, and how many times as high as the name it is.  Our own design, no
source."""


def map_height(plan: Plan, sheets: SheetPlan, place: Rect) -> float:
    """How high the map has to be so that names and numbers can be told apart, within most of the place (mm)."""
    area = map_area(plan, sheets)
    least = min(min(sheet.cell.width, sheet.cell.height) for sheet in sheets.sheets)
    wanted = max(LEAST_HEIGHT, CELL / least * area.height + KEY)
    return min(wanted, max(LEAST_HEIGHT, MOST_OF_PAGE * place.height), place.width / area.width * area.height + 2 * KEY)


def map_area(plan: Plan, sheets: SheetPlan) -> Rect:
    """The part of the wall that the map shows (mm)."""
    return bounds([plan.group, *(sheet.cell for sheet in sheets.sheets)])


def sheet_map(
    plan: Plan, sheets: SheetPlan, steps: Mapping[tuple[str, str], int], lettering: Lettering, place: Rect
) -> Iterator[Item]:
    """The map as large as the place (page mm) allows, in its middle, with a line of key at its foot.

    `steps` are the numbers that the joins are taped in (by the names of upper and lower sheet).
    """
    keyed = [*_key(sheets, place)]
    yield from keyed
    place = Rect(place.x0, place.y0 + (KEY if keyed else 0.0), place.x1, place.y1)
    area = map_area(plan, sheets)
    scale, at = to_map(area, place)
    nails = (at(Rect(nail.x, nail.y, nail.x, nail.y)) for nail in plan.nails)
    items = (
        *frames_on_map(plan, at),
        *(Polygon(at(sheet.cell).corners, NARROW, False) for sheet in sheets.sheets),
        *_lines(plan, area, at),
        *(Circle(spot.x0, spot.y0, NAIL, 0.0, True) for spot in nails),
        *_names(plan, sheets, steps, at, scale, lettering),
    )
    yield from over_lines(items, (), (), (), lettering)


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


def _key(sheets: SheetPlan, place: Rect) -> Iterator[Item]:
    """What numbers and arrow heads on the joins mean."""
    if sheets.joins:
        yield from arrow_head(place.x0 + HEAD_AT, place.y0 + H25 / 2, True)
        yield Text(place.x0 + WORDS_AT, place.y0, KEY_WORDS, H25)


def _names(
    plan: Plan,
    sheets: SheetPlan,
    steps: Mapping[tuple[str, str], int],
    at: Callable[[Rect], Rect],
    scale: float,
    lettering: Lettering,
) -> Iterator[Item]:
    """The names of the sheets in their upper left corners, the marks of taping, and the names of frames with room.

    The sheets' names are as large as leaves room for the number of every step of taping.
    """
    wanted = len({steps[join.over, join.under] for join in sheets.joins})
    for largest in range(len(SIZES) if len(sheets.sheets) <= MOST_TRIED else 1):
        room = _taken(plan, at, scale)
        items = list(_sheet_names(sheets, SIZES[largest:], at, room, lettering))
        marks = list(tape_marks(sheets, steps, at, room, lettering))
        if len({item.text for item in marks if isinstance(item, Text)}) == wanted:
            break
    yield from (*items, *marks)
    for hung in plan.frames:
        rect: Rect = at(hung.rect)
        text = Text(0.0, 0.0, hung.frame.id, H25)
        if name := placed_near(text, rect.cx, rect.cy, rect.grown(-EDGE), room, lettering):
            yield name


def _taken(plan: Plan, at: Callable[[Rect], Rect], scale: float) -> Room:
    """The map with the nails taken; names are better not written over the long lines."""
    room = Room(Rect(-math.inf, -math.inf, math.inf, math.inf))
    level = at(Rect(plan.group.x0, plan.level_line, plan.group.x1, plan.level_line))
    centre = at(Rect(plan.centre_line, plan.group.y0, plan.centre_line, plan.group.y1))
    room.lines += [level.grown(OFF_LINE), centre.grown(OFF_LINE)]
    if ends := pitch_line(plan):
        room.lines += [at(box) for box in pieces(ends, 1.0 / scale)]
    for nail in plan.nails:
        room.take(at(Rect.about(nail.x, nail.y, NAIL_ROOM / scale, NAIL_ROOM / scale)))
    return room


def _sheet_names(
    sheets: SheetPlan, sizes: Sequence[float], at: Callable[[Rect], Rect], room: Room, lettering: Lettering
) -> Iterator[Item]:
    for sheet in sheets.sheets:
        cell: Rect = at(sheet.cell)
        fitting = (size for size in sizes if lettering.width(sheet.name, size, True) < cell.width - NAME_ROOM)
        height = next((size for size in fitting if NAME_SHARE * size < cell.height), sizes[-1])
        text = Text(0.0, 0.0, sheet.name, height, bold=True)
        if name := placed_near(text, cell.x0, cell.y1, cell.grown(-EDGE), room, lettering):
            yield name
