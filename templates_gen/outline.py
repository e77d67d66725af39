"""Walls that are not plain rectangles.  The only file that imports shapely."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

import shapely

from templates_gen.errors import InputError
from templates_gen.geometry import TOLERANCE, Rect


def check_outline(outline: Sequence[tuple[float, float]]) -> None:
    """Raises InputError when the outline (corner points in mm) crosses itself or holds no area."""
    shape = shapely.Polygon(outline)
    if not shape.is_valid or shape.area <= 0:
        raise InputError("wall, outline", "crosses itself or holds no area, expected its corners in order")


def outline_holds(outline: tuple[tuple[float, float], ...], rect: Rect, clear: float = 0.0) -> bool:
    """True when the rectangle lies inside the outline (corner points in mm), `clear` from its edge or more."""
    return bool(_grown(outline, TOLERANCE - clear).covers(shapely.box(rect.x0, rect.y0, rect.x1, rect.y1)))


@cache
def _grown(outline: tuple[tuple[float, float], ...], by: float) -> shapely.Polygon:
    """The outline with its edge moved outward by this much; made once, for many rectangles are asked about."""
    grown = shapely.Polygon(outline).buffer(by, join_style="mitre")
    shapely.prepare(grown)
    return grown


def room_inside(outline: Sequence[tuple[float, float]], rect: Rect) -> float:
    """How far the rectangle, which lies inside the outline, is from its nearest edge (mm)."""
    return float(shapely.Polygon(outline).exterior.distance(shapely.box(rect.x0, rect.y0, rect.x1, rect.y1)))
