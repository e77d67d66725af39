"""A sheet's number in the outline of a house, roof up: no frame's letter and no mark of the wall looks like that."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.drawing.items import Item, Polygon, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.sizes import H5, H10, H25, HEAVY, MEDIUM, NARROW, WIDE

BODY, ROOF, NARROWEST, ASIDE = 1.45, 0.3, 1.9, 0.9
"""A house's body and its least width, as shares of its digits' height, its roof, as a share of its width, and what is
free beside digits on both sides together.  Our own design, no source."""

LINES = ((H10, HEAVY), (H5, WIDE), (H25, MEDIUM), (0.0, NARROW))
"""How wide its line is, by the least height of its digits (mm).  Our own design, no source."""


def house_size(number: str, height: float, lettering: Lettering) -> tuple[float, float]:
    """Width and height (mm) of the house around a number with digits of this height."""
    width = max(NARROWEST * height, lettering.width(number, height, True) + ASIDE * height)
    return width, BODY * height + ROOF * width


def house(number: str, height: float, x: float, y: float, lettering: Lettering) -> Iterator[Item]:
    """The number in its house, the lower left corner of which is at (x, y); white where nothing is drawn."""
    width, top = house_size(number, height, lettering)
    walls, middle = y + BODY * height, x + width / 2
    outline = ((x, y), (x + width, y), (x + width, walls), (middle, y + top), (x, walls))
    line = next(line for least, line in LINES if height >= least)
    yield Polygon(outline, grey=1.0)
    yield Polygon(outline, line, False)
    yield Text(middle, y + (BODY - 1.0) / 2 * height + line / 2, number, height, "middle", bold=True)
