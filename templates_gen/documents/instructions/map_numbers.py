"""The numbers on the map of the sheets: of every sheet in its house, and on every join the step that tapes it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import product

from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.drawing.houses import house, house_size
from templates_gen.drawing.items import Item, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room, placed_near
from templates_gen.drawing.shapes import ground
from templates_gen.drawing.sizes import H18, MEDIUM
from templates_gen.tiling.sheet import SheetPlan

NAME_SHARE = 0.9, 0.45
"""Of a sheet's width and height, what its number with the house around it takes at most.  Our own design."""

EDGE, TIGHT, OUT = 0.6, 0.1, 0.5
"""mm: a name stays this far inside its sheet or frame; a number that has no room for a house; how far a number may
reach out of a sheet that is lower than it.  Our own design."""


def sides(rect: Rect) -> tuple[Rect, ...]:
    """The four sides of a rectangle as thin ones that lettering keeps off."""
    return (
        Rect(rect.x0 - MEDIUM, rect.y0, rect.x0 + MEDIUM, rect.y1),
        Rect(rect.x1 - MEDIUM, rect.y0, rect.x1 + MEDIUM, rect.y1),
        Rect(rect.x0, rect.y0 - MEDIUM, rect.x1, rect.y0 + MEDIUM),
        Rect(rect.x0, rect.y1 - MEDIUM, rect.x1, rect.y1 + MEDIUM),
    )


def sheet_numbers(
    sheets: SheetPlan, sizes: Sequence[float], at: Callable[[Rect], Rect], room: Room, lettering: Lettering
) -> Iterator[Item]:
    """The number of every sheet in its house, in the sheet's upper left corner; none where there is but one sheet."""
    for sheet in sheets.sheets if len(sheets.sheets) > 1 else ():
        cell: Rect = at(sheet.cell)
        there = room.near(cell)
        fitting = (size for size in sizes if _fits(house_size(sheet.name, size, lettering), cell))
        size = next(fitting, sizes[-1])
        if box := there.nearest(*house_size(sheet.name, size, lettering), cell.x0, cell.y1, cell.grown(-EDGE)):
            there.take(box)
            yield from house(sheet.name, size, box.x0, box.y0, lettering)
            continue
        number = Text(0, 0, sheet.name, size, bold=True)
        if name := placed_near(number, cell.x0, cell.y1, cell.grown(-TIGHT), there, lettering):
            yield name
            continue
        there.air -= CLOSER
        if name := placed_near(number, cell.x0, cell.y1, cell.grown(OUT), there, lettering):
            yield name


def _fits(size: tuple[float, float], cell: Rect) -> bool:
    return size[0] < NAME_SHARE[0] * cell.width and size[1] < NAME_SHARE[1] * cell.height


ALONG = 0.5
"""mm along a join between the places that are tried for its number.  Our own design, no source."""

CLOSER = 0.7
"""mm by which a number may come nearer to what is there where it would find no place else.  Our own design."""


ASIDE = (0.2, -0.2)
"""Of its own size, how far beside the join's line a number may be that finds no place on it.  Our own design."""


def tape_marks(
    sheets: SheetPlan,
    steps: Mapping[tuple[str, str], int],
    at: Callable[[Rect], Rect],
    room: Room,
    lettering: Lettering,
) -> Iterator[Item]:
    """The number of its step on every join that has room for it on the map; `at` brings the wall to the map.

    `steps` are the numbers of the joins, by the names of their upper and lower sheet.  The longest joins come first.
    """
    for join in sorted(sheets.joins, key=lambda join: -join.length):
        line = at(Rect(join.x0, join.y0, join.x1, join.y1))
        text = Text(0.0, 0.0, f"{steps[join.over, join.under]}", H18, "middle")
        ink = lettering.box(text)
        there = room.near(line.grown(max(ink.width, ink.height)))
        if spot := _free(line, ink, there):
            there.take(spot)
            yield ground(spot)
            yield replace(text, x=spot.cx - ink.cx, y=spot.cy - ink.cy)


def _free(line: Rect, ink: Rect, room: Room) -> Rect | None:
    """The place for a number on a join's line on the map, as near to its middle as it stands free, or a little beside
    the line; or None."""
    length = max(line.width, line.height)
    least = ink.width if line.width > line.height else ink.height
    steps = int((length - least) / 2 / ALONG) + 1 if length >= least else 0

    def boxes(aside: float = 0.0) -> Iterator[Rect]:
        over, up = (0.0, aside * ink.height) if line.width > line.height else (aside * ink.width, 0.0)
        for step, way in product(range(steps), (1, -1)):
            part = 0.5 + way * step * ALONG / length
            x, y = line.x0 + part * line.width + over, line.y0 + part * line.height + up
            yield Rect.about(x, y, ink.width, ink.height)

    near = (box for off in (0.0, *ASIDE) for box in boxes(off) if room.fits(box.grown(-CLOSER), uncrossed=False))
    return room.first(boxes(), uncrossed=True) or room.first(boxes(), uncrossed=False) or next(near, None)
