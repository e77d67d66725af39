"""A stair along the wall, as it is seen: its treads and risers, or its slope where only that is known."""

from __future__ import annotations

import math
from collections.abc import Iterator

from templates_gen.documents.proof.features import FILL, LINE
from templates_gen.documents.proof.view import View
from templates_gen.drawing.items import Item, Polygon
from templates_gen.drawing.shapes import Points
from templates_gen.drawing.sizes import NARROW
from templates_gen.job.model import Wall
from templates_gen.job.stairs import Stairs


def stair_items(wall: Wall, view: View) -> Iterator[Item]:
    """The stair down to the floor, in the greys of furniture; nothing where there is none."""
    if wall.stairs is not None:
        points = tuple(view.point(*point) for point in outline_of(wall.stairs, wall.rect.x1, wall.rect.x0))
        yield Polygon(points, grey=FILL)
        yield Polygon(points, NARROW, False, LINE)


def outline_of(stairs: Stairs, right: float, left: float = 0.0) -> Points:
    """The corners of a stair along a wall between two x, from the foot of its lowest riser up and back along the
    floor."""
    way = math.copysign(1.0, stairs.slope)
    end = right if way > 0 else left
    upper = list(_steps(stairs, way, end)) if stairs.run and stairs.rise else _slope(stairs, end)
    return ((stairs.x, 0.0), *upper, (end, 0.0))


def _steps(stairs: Stairs, way: float, end: float) -> Iterator[tuple[float, float]]:
    """Both ends of every tread; the landing, or the last tread, goes on to the wall's end."""
    run, rise = stairs.run or 0.0, stairs.rise or 0.0
    count = max(0, math.floor((end - stairs.x) * way / run))
    if stairs.top is not None:
        count = min(count, round((stairs.top - stairs.y) / rise))
    for number in range(count + 1):
        x, y = stairs.x + way * number * run, stairs.y + number * rise
        yield x, y
        yield end if number == count else x + way * run, y


def _slope(stairs: Stairs, end: float) -> list[tuple[float, float]]:
    if stairs.top is None:
        return [(stairs.x, stairs.y), (end, stairs.line_at(end))]
    return [(stairs.x, stairs.y), (stairs.x + (stairs.top - stairs.y) / stairs.slope, stairs.top), (end, stairs.top)]
