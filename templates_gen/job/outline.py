"""Walls that are not plain rectangles.  The only file that imports shapely."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import cache
from itertools import pairwise

import shapely

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import TOLERANCE, Rect

Segment = tuple[float, float, float, float]
"""A straight line from (x0, y0) to (x1, y1) in mm."""


def check_outline(outline: Sequence[tuple[float, float]]) -> None:
    """Raises InputError when the outline (corner points in mm) crosses itself or holds no area."""
    shape = shapely.Polygon(outline)
    if not shape.is_valid or shape.area <= 0:
        raise InputError("wall, outline", "crosses itself or holds no area, expected its corners in order")


def outline_holds(outline: tuple[tuple[float, float], ...], rect: Rect, clear: float = 0.0) -> bool:
    """True when the rectangle lies inside the outline (corner points in mm), `clear` from its edge or more."""
    return bool(_grown(outline, TOLERANCE - clear).covers(shapely.box(rect.x0, rect.y0, rect.x1, rect.y1)))


def ceiling_over(outline: tuple[tuple[float, float], ...], rect: Rect, clear: float = 0.0) -> float:
    """How high a rectangle inside the outline can go straight up and stay `clear` of its edge: its upper side (mm)."""
    heights = (_lowest(side, rect.x0, rect.x1) for side in _sides(outline, TOLERANCE - clear))
    return min(height for height in heights if height is not None and height >= rect.y1)


@cache
def _sides(outline: tuple[tuple[float, float], ...], by: float) -> list[Segment]:
    """The sides of the outline with its edge moved outward by this much, each from its left end; no upright ones."""
    corners = map(tuple, shapely.get_coordinates(_grown(outline, by)).tolist())
    ends = (sorted(ends) for ends in pairwise(corners))
    return [(*left, *right) for left, right in ends if left[0] < right[0]]


def _lowest(side: Segment, x0: float, x1: float) -> float | None:
    """How low a side comes between two uprights; None where it is not between them."""
    left, start, right, end = side
    if left >= x1 or right <= x0:
        return None
    return min(start + (end - start) * (min(max(x, left), right) - left) / (right - left) for x in (x0, x1))


@cache
def _grown(outline: tuple[tuple[float, float], ...], by: float) -> shapely.Polygon:
    """The outline with its edge moved outward by this much; made once, for many rectangles are asked about."""
    grown = shapely.Polygon(outline).buffer(by, join_style="mitre")
    shapely.prepare(grown)
    return grown


def room_inside(outline: Sequence[tuple[float, float]], rect: Rect) -> float:
    """How far the rectangle, which lies inside the outline, is from its nearest edge (mm)."""
    return float(shapely.Polygon(outline).exterior.distance(shapely.box(rect.x0, rect.y0, rect.x1, rect.y1)))


def hatched(
    rects: Sequence[Rect], outline: Sequence[tuple[float, float]], step: float, smooth: float
) -> tuple[list[Segment], list[Segment]]:
    """Hatching of what the rectangles cover of an outline, and its edges: straight lines (x0, y0, x1, y1) in mm.

    The lines rise to the right at 45° and are `step` apart; where rectangles overlap they are drawn once.  Corners
    that stand out by less than `smooth` (mm) are left out: rectangles that follow a slope make stairs of it.
    """
    covered = shapely.union_all([shapely.box(rect.x0, rect.y0, rect.x1, rect.y1) for rect in rects])
    area = (covered & shapely.Polygon(outline)).simplify(smooth)
    x0, y0, x1, y1 = area.bounds
    count, apart = math.ceil((x1 - x0 + y1 - y0) / (step * math.sqrt(2))), step * math.sqrt(2)
    rising = [((x0, y1 - at), (x0 + at, y1)) for at in (apart * (number + 0.5) for number in range(count))]
    return _segments(area & shapely.MultiLineString(rising)), _segments(shapely.boundary(area))


def _segments(shape: shapely.Geometry) -> list[Segment]:
    """The straight pieces of lines, sorted: the order that shapely gives them in is nobody's promise."""
    parts = [shapely.get_coordinates(part).tolist() for part in shapely.get_parts(shape)]
    return sorted((*start, *end) for points in parts for start, end in pairwise(points))
