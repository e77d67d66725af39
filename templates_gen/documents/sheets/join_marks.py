"""What sheets are joined by: toothed lines to cut along, where the next sheet's edge comes, registration marks, names.

Nothing here refers to the paper's edge, which may lie 2 mm off (ISO 216 tolerances, from memory).
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.documents.sheets.layer import Drawn, Shown, SoFar
from templates_gen.documents.sheets.neighbours import NEXT_ROOM, neighbour_name
from templates_gen.documents.sheets.uncut import uncut_join_items
from templates_gen.drawing.items import Form, Item, Line, Polygon, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room
from templates_gen.drawing.shapes import teeth
from templates_gen.drawing.sizes import BARS_HIGH, BARS_LONG, HAIR, MEDIUM, STRONG
from templates_gen.drawing.strokes import NEXT_DASH, unbroken
from templates_gen.tiling.sheet import Join, Sheet, SheetPlan

LEVEL_BARS, UPRIGHT_BARS = "bars, level", "bars, upright"
LEVEL_CUT, UPRIGHT_CUT = "cut, level", "cut, upright"

BARS, BETWEEN_BARS, FIRST_BAR = (0.6, 1.1), 0.8, 0.6
"""mm: how wide the slanting bars of a registration mark are, from its middle out, what is white between them, and how
far from the middle the first one begins.  Our own design, no source: bars lean apart, so a shift along a join and one
across it both break them, and no two are alike, so none goes on in another's place."""

TOUCH = 0.1
"""mm of room about the teeth of a line to cut, in which rounding may put them.  Our own design, no source."""

BARS_AIR = 1.0
"""mm of white around the bars, in which no line of the wall runs on.  Our own design, no source."""

CUT_KEEPS = 1.0
"""mm beyond a line to cut on which the wall still is drawn; the rest of what falls off shows nothing of it."""


def joins(so_far: SoFar) -> Drawn:
    """Lines to cut along, registration marks, and what every join joins."""
    room = so_far.whole_page()
    items = tuple(join_items(so_far.part, so_far.sheets, room, so_far.lettering))
    return Drawn(items, tuple(room.taken), tuple(room.lines))


def join_forms(sheets: SheetPlan) -> Iterator[Form]:
    """The forms that joins place: the registration mark and the teeth of a cut, level and upright."""
    yield from map(_on_white, (bars_form(False), bars_form(True)))
    longest = max(max(sheet.window.width, sheet.window.height) for sheet in sheets.sheets)
    yield from (cut_form(False, longest), cut_form(True, longest))


def bars_form(upright: bool) -> Form:
    """A registration mark about its middle, on a level or an upright join: two bars and two that lean apart."""
    reach_x, reach_y = (BARS_HIGH, BARS_LONG) if upright else (BARS_LONG, BARS_HIGH)
    box = Rect(-reach_x, -reach_y, reach_x, reach_y)
    return Form(UPRIGHT_BARS if upright else LEVEL_BARS, box, tuple(_bars(upright)))


def _on_white(bars: Form) -> Form:
    """A registration mark with white around it."""
    white = bars.box.grown(BARS_AIR)
    return replace(bars, box=white, items=(Polygon(white.corners, grey=1.0), *bars.items))


def _bars(upright: bool) -> Iterator[Polygon]:
    lean, high = 2 * BARS_HIGH, BARS_HIGH
    for way in (1.0, -1.0):
        at = FIRST_BAR
        for width in BARS:
            end = at + width * math.sqrt(2)  # across a bar at 45° it is narrower than along the join
            bar = ((way * at, -high), (way * end, -high), (way * (end + lean), high), (way * (at + lean), high))
            yield Polygon(tuple((-y, x) for x, y in bar) if upright else bar)
            at = end + BETWEEN_BARS * math.sqrt(2)


def cut_form(upright: bool, length: float) -> Form:
    """The teeth of a line to cut that runs from the form's origin up or to the right, on the side that falls off."""
    start, end = (0.0, 0.0), (0.0, length) if upright else (length, 0.0)
    points = teeth(end, start) if upright else teeth(start, end)
    deep = 3.0
    box = Rect(-deep, 0.0, 0.0, length) if upright else Rect(0.0, -deep, length, 0.0)
    return Form(UPRIGHT_CUT if upright else LEVEL_CUT, box.grown(TOUCH), tuple(points))


def join_items(part: Shown, sheets: SheetPlan, room: Room, lettering: Lettering) -> Iterator[Item]:
    """All about the joins of a sheet (wall mm).

    `room` holds the whole page, without what rulers and title take; what is written is taken from it.
    """
    if sheets.hides is not None:
        yield from uncut_join_items(part.sheet, part.joins, part.marks, sheets.hides, room, lettering)
        return
    room.take(*part.bars)
    cuts = {join.upright: join for join in part.joins if join.over == part.sheet.name}
    lines = [_cut_line(join, part.sheet) for join in cuts.values()]
    room.lines += (Rect(line.x0, line.y0, line.x1, line.y1).grown(STRONG) for line in lines)
    for join, line in zip(cuts.values(), lines, strict=True):
        yield from _falling(join, line, part.sheet)
    for join in part.joins:
        if join.over != part.sheet.name:
            room.lines.append(Rect(join.x0, join.y0, join.x1, join.y1).grown(STRONG))
            yield Line(join.x0, join.y0, join.x1, join.y1, STRONG, NEXT_DASH)
    for mark in part.marks:
        yield Use(UPRIGHT_BARS if mark.upright else LEVEL_BARS, mark.x, mark.y)
    yield from (replace(line, width=HAIR) for line in lines)  # alone where it runs through bars
    yield from unbroken(lines, part.bars)
    for join in part.joins:
        yield from _name(join, part.sheet, sheets.paper.overlap / 2, room, lettering)


def _cut_line(join: Join, sheet: Sheet) -> Line:
    """A line to cut, right along a side of the sheet."""
    window = sheet.window
    if join.upright:
        return Line(join.x0, window.y0, join.x0, window.y1, MEDIUM)
    return Line(window.x0, join.y0, window.x1, join.y0, MEDIUM)


def _falling(join: Join, line: Line, sheet: Sheet) -> Iterator[Item]:
    """What falls off at a line to cut: white but for teeth."""
    window = sheet.window.grown(CUT_KEEPS)
    if join.upright:
        yield Polygon(Rect(window.x0, window.y0, join.x0 - CUT_KEEPS, window.y1).corners, grey=1.0)
    else:
        yield Polygon(Rect(window.x0, window.y0, window.x1, join.y0 - CUT_KEEPS).corners, grey=1.0)
    yield Use(UPRIGHT_CUT if join.upright else LEVEL_CUT, line.x0, line.y0)


def _name(join: Join, sheet: Sheet, half: float, room: Room, lettering: Lettering) -> Iterator[Item]:
    """Beside the join the sheet that this one is laid on, or that goes over it, in the strip that both show."""
    cut = join.over == sheet.name
    other, words = (join.under, ("lay on", "on", "")) if cut else (join.over, ("goes over this:", "over this:", ""))
    near, far = sorted((-half, -NEXT_ROOM) if cut else (NEXT_ROOM, half))
    strip = (
        Rect(join.x0 + near, join.y0, join.x0 + far, join.y1)
        if join.upright
        else Rect(join.x0, join.y0 + near, join.x1, join.y0 + far)
    )
    yield from neighbour_name(words, other, join.upright, strip, room, lettering)
