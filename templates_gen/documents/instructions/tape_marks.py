"""The order of taping on the map of the sheets: a number at every join, and which of the two sheets lies on top."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from templates_gen.base.geometry import Rect
from templates_gen.drawing.items import Item, Polygon, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room, placed_near
from templates_gen.drawing.sizes import H18, MEDIUM
from templates_gen.tiling.sheet import SheetPlan

HEAD, HALF = 1.7, 1.0
"""Length of an arrow head and half its width, in mm.  Our own design, no source."""

CLOSER = 0.7
"""mm by which an arrow head may come nearer to lettering than other lettering does.  Our own design, no source."""

FAR = 1.6, 3.5
"""mm from an arrow head to its number, and where it is needed and there is no room.  Our own design, no source."""


def arrow_head(x: float, y: float, upright: bool) -> Iterator[Item]:
    """An arrow head on a join's line at (x, y): over an upright line it points left, over a level one down."""
    if upright:
        yield Polygon(((x + HEAD / 2, y - HALF), (x + HEAD / 2, y + HALF), (x - HEAD / 2, y)))
    else:
        yield Polygon(((x - HALF, y + HEAD / 2), (x + HALF, y + HEAD / 2), (x, y - HEAD / 2)))


def tape_marks(
    sheets: SheetPlan,
    steps: Mapping[tuple[str, str], int],
    at: Callable[[Rect], Rect],
    room: Room,
    lettering: Lettering,
) -> Iterator[Item]:
    """An arrow head and a number for every join that has room for them on the map; `at` brings the wall to the map.

    `steps` are the numbers of the joins, by the names of their upper and lower sheet.
    The longest joins come first, and the numbers of steps that have none yet.  They keep off the sheets' sides where
    they can.
    """
    heads = []
    for join in sorted(sheets.joins, key=lambda join: -abs(join.x1 - join.x0 + join.y1 - join.y0)):
        line = at(Rect(join.x0, join.y0, join.x1, join.y1))
        if head := _free(line, join.upright, room.near(line.grown(HEAD))):
            room.take(head)
            heads.append((join, head))
            yield from arrow_head(head.cx, head.cy, join.upright)
    room.lines += [side for sheet in sheets.sheets for side in sides(at(sheet.cell))]
    told = set[int]()
    marked = [(steps[join.over, join.under], head) for join, head in heads]
    firsts = {number: which for which, (number, _) in reversed(list(enumerate(marked)))}
    for which in sorted(range(len(marked)), key=lambda which: (firsts[marked[which][0]] != which, which)):
        number, head = marked[which]
        found = list(_number(f"{number}", head, number not in told, room, lettering))
        told |= {number} if found else set()
        yield from found


def sides(rect: Rect) -> tuple[Rect, ...]:
    """The four sides of a rectangle as thin ones that lettering keeps off."""
    half = MEDIUM
    return (
        Rect(rect.x0 - half, rect.y0, rect.x0 + half, rect.y1),
        Rect(rect.x1 - half, rect.y0, rect.x1 + half, rect.y1),
        Rect(rect.x0, rect.y0 - half, rect.x1, rect.y0 + half),
        Rect(rect.x0, rect.y1 - half, rect.x1, rect.y1 + half),
    )


def _free(line: Rect, join_upright: bool, room: Room) -> Rect | None:
    """The place for an arrow head along a join on the map, as near to its middle as it stands free, or None."""
    width, height = (HEAD, 2 * HALF) if join_upright else (2 * HALF, HEAD)
    length = max(line.width, line.height)
    spots = [0.5 + way * step * 0.5 / length for step in range(int(length - 2 * HALF) + 1) for way in (1, -1)]
    boxes = [
        Rect.about(line.x0 + part * line.width, line.y0 + part * line.height, width, height)
        for part in (spots if length >= 2 * HALF else ())
    ]
    near = (box for box in boxes if room.fits(box.grown(-CLOSER), uncrossed=False))
    return room.first(boxes, uncrossed=True) or room.first(boxes, uncrossed=False) or next(near, None)


def _number(number: str, head: Rect, needed: bool, room: Room, lettering: Lettering) -> Iterator[Item]:
    """The number close beside the arrow head, on either side of the join; a little farther off if it is `needed`."""
    text = Text(0.0, 0.0, number, H18, bold=True)
    ink = lettering.box(text)
    for far in FAR if needed else FAR[:1]:
        around = head.grown(max(ink.width, ink.height) + far)
        if found := placed_near(text, head.cx + 2.0, head.cy + 2.0, around, room, lettering):
            yield found
            return
