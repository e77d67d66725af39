"""The edges of a wall, and bands along them: along its top, its floor, and where it meets the next wall."""

from __future__ import annotations

import math
from collections.abc import Iterator

from templates_gen.base.adding import added
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.job.model import Wall

TOP, FLOOR, LEFT, RIGHT = "top", "floor", "left", "right"

PIECE = 50.0
"""mm; a sloping edge is taken in pieces about so long, so that rectangles follow it.  Our own design, no source."""

MOST_PIECES = 100
"""Of one edge; the pieces of a longer edge are longer.  Our own design, no source."""


class Edge(Record, frozen=True):
    """A piece of the wall's edge: which `side` of the wall it is, and the smallest rectangle around it (mm).

    `stretch` is how much longer a distance is along the axis than square to a sloping edge, 1 for one that does not
    slope: a band along a slope reaches as far as either way of measuring does.
    """

    side: str
    rect: Rect
    stretch: float

    def band(self, near: float, far: float) -> Rect:
        """The part of the wall from `near` to `far` (mm) in from this edge."""
        rect, far = self.rect, far * self.stretch
        if self.side == TOP:
            return Rect(rect.x0, rect.y0 - far, rect.x1, rect.y1 - near)
        if self.side == FLOOR:
            return Rect(rect.x0, rect.y0 + near, rect.x1, rect.y1 + far)
        if self.side == LEFT:
            return Rect(rect.x0 + near, rect.y0, rect.x1 + far, rect.y1)
        return Rect(rect.x0 - far, rect.y0, rect.x1 - near, rect.y1)


def edge_pieces(wall: Wall) -> tuple[Edge, ...]:
    """Every edge of the wall, a sloping one in pieces; one steeper than 45° counts as upright."""
    corners = wall.corners
    if _area(corners) < 0:
        corners = corners[::-1]
    ends = zip(corners, (*corners[1:], corners[0]), strict=True)
    return tuple(edge for start, end in ends if start != end for edge in _pieces(start, end))


def _area(corners: tuple[tuple[float, float], ...]) -> float:
    """Twice the area, positive when the corners run counterclockwise."""
    following = (*corners[1:], corners[0])
    return added(x * next_y - next_x * y for (x, y), (next_x, next_y) in zip(corners, following, strict=True))


def _pieces(start: tuple[float, float], end: tuple[float, float]) -> Iterator[Edge]:
    (x0, y0), (x1, y1) = start, end
    dx, dy = x1 - x0, y1 - y0
    length, straight = math.hypot(dx, dy), dx == 0 or dy == 0
    count = 1 if straight else min(MOST_PIECES, math.ceil(length / PIECE))
    stretch = length / max(abs(dx), abs(dy))
    for number in range(count):
        ax, ay = x0 + dx * number / count, y0 + dy * number / count
        bx, by = x0 + dx * (number + 1) / count, y0 + dy * (number + 1) / count
        yield Edge(_side(dx, dy), Rect(min(ax, bx), min(ay, by), max(ax, bx), max(ay, by)), stretch)


def _side(dx: float, dy: float) -> str:
    """The corners run counterclockwise, so the wall lies to the left of the way from one to the next."""
    if abs(dx) >= abs(dy):
        return FLOOR if dx > 0 else TOP
    return RIGHT if dy > 0 else LEFT
