"""Where registration marks go that two sheets share: at the two extreme ends of every join."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import permutations

from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.base.grid_index import Near

MARK_DISTANCE = 9.0
"""mm between two different registration marks, so that neither hides the other.  Our own design, no source."""

Point = tuple[float, float]


def end_marks(joins: Sequence[tuple[float, float, float, float]]) -> list[Point]:
    """The points of the marks of these joins, lines from (x0, y0) to (x1, y1) in wall mm: two for each, some shared.

    They are at the extreme ends, for a join's turn, not its gap, is what spoils a template.
    """
    taken: Near[Point] = Near()
    points: dict[Point, None] = {}
    for x0, y0, x1, y1 in joins:
        for end, other in permutations(((x0, y0), (x1, y1)), 2):
            point = _mark_point(end, other, taken)
            if point not in points:
                points[point] = None
                taken.add(Rect(*point, *point), point)
    return list(points)


def _mark_point(end: Point, other: Point, taken: Near[Point]) -> Point:
    """The end of a join, or the nearest point along it to the other end that keeps away from other marks."""
    length = math.dist(end, other)
    for step in range(int(length / 2)):
        x, y = (one + step / length * (two - one) for one, two in zip(end, other, strict=True))
        around = taken.about(Rect.about(x, y, 2 * MARK_DISTANCE, 2 * MARK_DISTANCE))
        near = [point for point in around if math.dist(point, (x, y)) < MARK_DISTANCE]
        same = [point for point in near if math.dist(point, (x, y)) < TOLERANCE]
        if same or not near:
            return same[0] if same else (x, y)
    return end
