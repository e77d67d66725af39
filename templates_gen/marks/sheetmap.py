"""The map of the sheets on the first page: where every sheet goes, with frames, nails and both lines, to scale."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.geometry import Rect, bounds
from templates_gen.lettering import Lettering
from templates_gen.marks.items import Circle, Item, Line, Polygon, Text
from templates_gen.marks.placing import Room
from templates_gen.marks.strokes import CENTRE_DASH
from templates_gen.marksizes import H18, H25, H35, HAIR, MEDIUM, NARROW
from templates_gen.planning import Plan
from templates_gen.sheets.sheet import SheetPlan


def sheet_map(plan: Plan, sheets: SheetPlan, place: Rect, lettering: Lettering) -> Iterator[Item]:
    """The map as large as the place (page mm) allows, in its middle."""
    area = bounds([plan.group, *(sheet.cell for sheet in sheets.sheets)])
    scale = min(place.width / area.width, place.height / area.height)
    dx, dy = place.cx - area.cx * scale, place.cy - area.cy * scale

    def at(rect: Rect) -> Rect:
        return Rect(rect.x0 * scale + dx, rect.y0 * scale + dy, rect.x1 * scale + dx, rect.y1 * scale + dy)

    yield from (Polygon(_corners(at(hung.rect)), 0.0, True, 0.88) for hung in plan.frames)
    yield from (Polygon(_corners(at(sheet.cell)), NARROW, False) for sheet in sheets.sheets)
    group, x, y = at(plan.group), plan.centre_line * scale + dx, plan.level_line * scale + dy
    yield Line(x, group.y0 - 2, x, group.y1 + 2, HAIR, CENTRE_DASH)
    yield Line(group.x0 - 2, y, group.x1 + 2, y, HAIR)
    yield from (Circle(nail.x * scale + dx, nail.y * scale + dy, 0.7, 0.0, True) for nail in plan.nails)
    yield from _names(plan, sheets, at, scale, lettering)


def _corners(rect: Rect) -> tuple[tuple[float, float], ...]:
    return ((rect.x0, rect.y0), (rect.x1, rect.y0), (rect.x1, rect.y1), (rect.x0, rect.y1))


def _names(plan: Plan, sheets: SheetPlan, at: object, scale: float, lettering: Lettering) -> Iterator[Item]:
    """The names of the sheets in their upper left corners, and of the frames where there is room."""
    assert callable(at)
    room = Room(Rect(-1e6, -1e6, 1e6, 1e6))
    level = at(Rect(plan.group.x0, plan.level_line, plan.group.x1, plan.level_line))
    centre = at(Rect(plan.centre_line, plan.group.y0, plan.centre_line, plan.group.y1))
    room.lines = [level.grown(0.3), centre.grown(0.3)]
    for sheet in sheets.sheets:
        cell: Rect = at(sheet.cell)
        height = next((h for h in (H35, H25, H18) if lettering.width(sheet.name, h, True) < cell.width - 1.5), H18)
        yield from _name(sheet.name, height, True, cell, (cell.x0, cell.y1), room, lettering)
    for nail in plan.nails:
        room.take(at(Rect.about(nail.x, nail.y, 2.0 / scale, 2.0 / scale)))
    room.lines += [line for sheet in sheets.sheets for line in _sides(at(sheet.cell))]
    for hung in plan.frames:
        rect: Rect = at(hung.rect)
        yield from _name(hung.frame.id, H25, False, rect, (rect.cx, rect.cy), room, lettering)


def _name(
    name: str, height: float, bold: bool, inside: Rect, near: tuple[float, float], room: Room, lettering: Lettering
) -> Iterator[Item]:
    """A name inside a rectangle, as near to a point as there is room; nothing where there is none."""
    ink = lettering.box(Text(0, 0, name, height, bold=bold))
    box = room.nearest(ink.width, ink.height, *near, inside.grown(-0.6))
    if box is not None:
        room.take(box)
        yield Text(box.x0 - ink.x0, box.y0 - ink.y0, name, height, bold=bold)


def _sides(rect: Rect) -> tuple[Rect, ...]:
    half = MEDIUM
    return (
        Rect(rect.x0 - half, rect.y0, rect.x0 + half, rect.y1),
        Rect(rect.x1 - half, rect.y0, rect.x1 + half, rect.y1),
        Rect(rect.x0, rect.y0 - half, rect.x1, rect.y0 + half),
        Rect(rect.x0, rect.y1 - half, rect.x1, rect.y1 + half),
    )
