"""Joins of sheets that nobody cuts: slanting lines that come out of the hidden strip on both sides, and edges."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from templates_gen.base.geometry import Rect
from templates_gen.drawing.items import Item, Line, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room, placed_near
from templates_gen.drawing.sizes import H25, STRONG
from templates_gen.drawing.strokes import NEXT_DASH
from templates_gen.tiling.covered import ARM, Covered
from templates_gen.tiling.sheet import Join, RegistrationMark, Sheet


def uncut_join_items(
    sheet: Sheet,
    joins: Sequence[Join],
    marks: Sequence[RegistrationMark],
    hides: Covered,
    room: Room,
    lettering: Lettering,
) -> Iterator[Item]:
    """The slanting lines of a sheet's joins, where the upper sheet's edge comes to lie, and the neighbours' names.

    The lines stop at what is hidden, so that nothing looks like a cross: a sheet shows the half of them outside it.
    """
    for mark in marks:
        upright = mark.upright
        reach = hides.reach(upright)
        room.take(Rect.about(mark.x, mark.y, 2 * reach, 2 * reach))
        hidden = hides.depth(upright) / 2
        for side, way in product((1, -1), (1, -1)):
            start, end = side * hidden, side * reach
            yield Line(mark.x + start, mark.y + way * start, mark.x + end, mark.y + way * end, STRONG)
    edges = [_edge(join, hides) for join in joins if join.under == sheet.name]
    room.lines += (Rect(edge.x0, edge.y0, edge.x1, edge.y1).grown(0.5) for edge in edges)
    yield from edges
    for join in joins:
        yield from _name(join, sheet, hides, room, lettering)


def _edge(join: Join, hides: Covered) -> Line:
    """A dotted line on the lower sheet where the upper one's edge will be, as near as paper is cut."""
    if join.upright:
        x = join.x0 - hides.half - hides.left
        return Line(x, join.y0, x, join.y1, STRONG, NEXT_DASH)
    y = join.y0 - hides.half - hides.foot
    return Line(join.x0, y, join.x1, y, STRONG, NEXT_DASH)


def _name(join: Join, sheet: Sheet, hides: Covered, room: Room, lettering: Lettering) -> Iterator[Item]:
    """Beside the join what comes over this sheet, clear of what is hidden, or what this one is laid on."""
    upper = join.over == sheet.name
    words = (f"lay on sheet {join.under}", f"on {join.under}", join.under) if upper else (
        f"edge of sheet {join.over} comes near the dotted line", f"under sheet {join.over}", join.over
    )  # fmt: skip
    high = -hides.half + ARM if upper else -hides.beyond(join.upright)
    low = -hides.half if upper else high - ARM
    strip = (
        Rect(join.x0 + low, join.y0, join.x0 + high, join.y1)
        if join.upright
        else Rect(join.x0, join.y0 + low, join.x1, join.y0 + high)
    )
    yield from along_join(words, join.upright, (strip.cx, strip.cy), strip, room, lettering)


def along_join(
    words: Sequence[str],
    upright: bool,
    near: tuple[float, float],
    strip: Rect,
    room: Room,
    lettering: Lettering,
) -> Iterator[Text]:
    """The first of the texts that fits into the strip along a join, as near as can be to a point (wall mm)."""
    for text in words:
        item = Text(0.0, 0.0, text, H25, angle=90 if upright else 0)
        if found := placed_near(item, *near, strip, room, lettering):
            yield found
            return
