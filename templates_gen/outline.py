"""Walls that are not plain rectangles.  The only file that imports shapely."""

from __future__ import annotations

from collections.abc import Sequence

import shapely

from templates_gen.errors import InputError
from templates_gen.geometry import TOLERANCE, Rect


def outline_holds(outline: Sequence[tuple[float, float]], rect: Rect) -> bool:
    """True when the rectangle lies inside the outline (corner points in mm), its edge included.

    Raises InputError when the outline crosses itself or holds no area.
    """
    shape = shapely.Polygon(outline)
    if not shape.is_valid or shape.area <= 0:
        raise InputError(
            "wall, outline", "crosses itself or holds no area, expected the corners in order around the wall"
        )
    return bool(shape.buffer(TOLERANCE, join_style="mitre").covers(shapely.box(rect.x0, rect.y0, rect.x1, rect.y1)))
