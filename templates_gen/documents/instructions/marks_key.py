"""What the marks on the sheets mean, each as it looks there, in a row on the first page."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from templates_gen.base.geometry import Rect
from templates_gen.documents.sheets.join_marks import bars_form
from templates_gen.documents.sheets.nail_marks import ring_items
from templates_gen.drawing.blocks import block
from templates_gen.drawing.items import Item, Line
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.moving import moved_by
from templates_gen.drawing.shapes import teeth
from templates_gen.drawing.sizes import BROAD, H18, HEAVY, INNER_EDGE, MEDIUM, STRONG, WIDE
from templates_gen.drawing.strokes import CENTRE_DASH, NEXT_DASH
from templates_gen.tiling.sheet import SheetPlan

HEIGHT, UNDER, PICTURE = 15.5, 1.0, 9.0
"""mm: how high the row is, what is free under the pictures, and how high these are.  Our own design, no source."""

SMALLER = 0.55
"""A nail mark's size in the row, as a share of its own.  Our own design, no source."""

HALF = 10.0
"""mm: half of how long the lines are drawn.  Our own design, no source."""

Drawing = Callable[[float, float], Iterator[Item]]


def marks_key(sheets: SheetPlan, lettering: Lettering, place: Rect) -> Iterator[Item]:
    """The row of marks, each over its words (page mm)."""
    signs = list(_signs(sheets))
    width = place.width / len(signs)
    for number, (draw, words) in enumerate(signs):
        x = place.x0 + (number + 0.5) * width
        yield from draw(x, place.y1 - PICTURE / 2)
        under = block([(line, H18, False) for line in words], lettering)
        yield from under.at(x - under.width / 2, place.y1 - PICTURE - UNDER - under.height, "middle")


def _signs(sheets: SheetPlan) -> Iterator[tuple[Drawing, Sequence[str]]]:
    yield _nail, ("nail here,", "nowhere else")
    if sheets.joins and sheets.hides is None:
        yield _cut, ("cut: the teeth", "fall off")
        yield _next, ("the next sheet's", "cut edge")
        yield _bars, ("joined right: the", "bars go on straight")
    yield _edge, ("a frame's edge:", "never cut")
    yield _lines, ("level line,", "centre line")


def _nail(x: float, y: float) -> Iterator[Item]:
    return moved_by(ring_items(), x, y, SMALLER)


def _bars(x: float, y: float) -> Iterator[Item]:
    yield from moved_by(bars_form(False).items, x, y)


def _cut(x: float, y: float) -> Iterator[Item]:
    yield Line(x - HALF, y, x + HALF, y, MEDIUM)
    yield from teeth((x - HALF, y), (x + HALF, y))


def _next(x: float, y: float) -> Iterator[Item]:
    yield Line(x - HALF, y, x + HALF, y, STRONG, NEXT_DASH)


def _edge(x: float, y: float) -> Iterator[Item]:
    yield Line(x - HALF, y + INNER_EDGE / 2, x + HALF, y + INNER_EDGE / 2, STRONG)
    yield Line(x - HALF, y - INNER_EDGE / 2, x + HALF, y - INNER_EDGE / 2, WIDE)


def _lines(x: float, y: float) -> Iterator[Item]:
    yield Line(x - HALF, y + 3.0, x + HALF, y + 3.0, BROAD)
    yield Line(x - HALF, y - 3.0, x + HALF, y - 3.0, HEAVY, CENTRE_DASH)
