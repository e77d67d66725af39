"""Rectangles and smooth outlines as marks."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from templates_gen.base.geometry import Rect
from templates_gen.drawing.items import Item, Line, Polygon

AROUND = 0.3
"""mm of white around lettering that lines break off at.  Our own design, no source."""

Points = tuple[tuple[float, float], ...]


def box(rect: Rect, width: float, fill: float | None = 1.0, grey: float = 0.0) -> Iterator[Item]:
    """A rectangle filled with a grey (None for nothing) within a line of this width and grey."""
    if fill is not None:
        yield Polygon(rect.corners, grey=fill)
    yield Polygon(rect.corners, width, False, grey)


def ground(rect: Rect) -> Polygon:
    """White under lettering and a little around it."""
    return Polygon(rect.grown(AROUND).corners, grey=1.0)


def corner_triangle(x: float, y: float, across: float, up: float) -> Polygon:
    """A black triangle in the corner at (x, y), with sides so long across and up."""
    return Polygon(((x, y), (x + across, y), (x, y + up)))


TEETH, SLIT_TEETH = (3.0, 2.8, 6.0), (1.6, 1.3, 3.0)
"""mm: how wide a tooth is at a line to cut, how deep, and from where to where the next one is; the same of a slit.  Our
own design, no source: nothing else on paper has teeth, and two of them never go on one division of a level line."""


def teeth(
    start: tuple[float, float], end: tuple[float, float], sizes: tuple[float, float, float] = TEETH, both: bool = False
) -> Iterator[Polygon]:
    """Teeth along a line to cut, to the right of it as one goes from start to end, or on `both` sides in turn.

    As many as go on it, with as much of the line free before the first as after the last.
    """
    (x0, y0), (x1, y1), (wide, deep, every) = start, end, sizes
    length = math.dist(start, end)
    dx, dy = (x1 - x0) / length, (y1 - y0) / length
    count = max(0, math.floor((length - wide) / every) + 1)
    first = (length - (count - 1) * every) / 2
    for number in range(count):
        out = -deep if both and number % 2 else deep
        along = (first + number * every + step for step in (-wide / 2, wide / 2, 0.0))
        one, two, tip = ((x0 + dx * at, y0 + dy * at) for at in along)
        yield Polygon((one, two, (tip[0] + dy * out, tip[1] - dx * out)))


def wedge(x: float, y: float, across: float, up: float, half: float) -> Polygon:
    """A black wedge with its tip at (x, y) and the middle of its base, `half` to either side, so far across and up."""
    aside = (half, 0.0) if up else (0.0, half)
    base = x + across, y + up
    return Polygon(((x, y), (base[0] + aside[0], base[1] + aside[1]), (base[0] - aside[0], base[1] - aside[1])))


def thick_arrow(x: float, top: float, foot: float, width: float, head: float) -> Polygon:
    """An arrow that points up, its tip at (x, top): `width` across its head, a third of that across its shaft."""
    half, shaft, neck = width / 2, width / 2 / 3, top - head
    right = ((x + half, neck), (x + shaft, neck), (x + shaft, foot))
    return Polygon(((x, top), *right, *((2 * x - at, y) for at, y in reversed(right))))


def level(rect: Rect, share: float, width: float, grey: float = 0.0) -> Line:
    """A level line across a rectangle, at this share of its height."""
    y = rect.y0 + share * rect.height
    return Line(rect.x0, y, rect.x1, y, width, grey=grey)


def upright(rect: Rect, share: float, width: float, grey: float = 0.0) -> Line:
    """An upright line through a rectangle, at this share of its width."""
    x = rect.x0 + share * rect.width
    return Line(x, rect.y0, x, rect.y1, width, grey=grey)


def rounded(points: Sequence[tuple[float, float]], times: int = 3) -> Points:
    """A closed outline with its corners cut off again and again, each side at a quarter and at three quarters.

    Corner cutting of Chaikin, 1974 (from memory).
    """
    found = tuple(points)
    for _ in range(times):
        ends = zip(found, (*found[1:], found[0]), strict=True)
        found = tuple(
            (ax + share * (bx - ax), ay + share * (by - ay)) for (ax, ay), (bx, by) in ends for share in (1 / 4, 3 / 4)
        )
    return found
