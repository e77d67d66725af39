"""The numbers of the sheets on the map, each in its house."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from templates_gen.base.geometry import Rect
from templates_gen.drawing.houses import house, house_size
from templates_gen.drawing.items import Item, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room, placed_near
from templates_gen.drawing.sizes import MEDIUM
from templates_gen.tiling.sheet import SheetPlan

NAME_SHARE = 0.9, 0.45
"""Of a sheet's width and height, what its number with the house around it takes at most.  Our own design."""

EDGE, TIGHT = 0.6, 0.1
"""mm: a name stays this far inside its sheet or frame; a number that has no room for a house.  Our own design."""


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
    """The number of every sheet in its house, in the sheet's upper left corner."""
    for sheet in sheets.sheets:
        cell: Rect = at(sheet.cell)
        fitting = (size for size in sizes if _fits(house_size(sheet.name, size, lettering), cell))
        size = next(fitting, sizes[-1])
        if box := room.nearest(*house_size(sheet.name, size, lettering), cell.x0, cell.y1, cell.grown(-EDGE)):
            room.take(box)
            yield from house(sheet.name, size, box.x0, box.y0, lettering)
        elif name := placed_near(
            Text(0, 0, sheet.name, size, bold=True), cell.x0, cell.y1, cell.grown(-TIGHT), room, lettering
        ):
            yield name


def _fits(size: tuple[float, float], cell: Rect) -> bool:
    return size[0] < NAME_SHARE[0] * cell.width and size[1] < NAME_SHARE[1] * cell.height
