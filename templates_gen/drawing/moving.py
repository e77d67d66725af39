"""Items moved to another place."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.drawing.items import Circle, Item, Line, Picture, Polygon, Text, Use


def moved_by(items: Iterable[Item], dx: float, dy: float, scale: float = 1.0) -> Iterator[Item]:
    """The same items at this scale, so much farther right and up (mm); lettering and pictures keep their size."""
    for item in items:
        match item:
            case Line():
                ends = scale * item.x0 + dx, scale * item.y0 + dy, scale * item.x1 + dx, scale * item.y1 + dy
                yield replace(item, x0=ends[0], y0=ends[1], x1=ends[2], y1=ends[3], width=scale * item.width)
            case Polygon():
                yield replace(item, points=tuple((scale * x + dx, scale * y + dy) for x, y in item.points))
            case Circle():
                x, y, radius, width = (scale * value for value in (item.x, item.y, item.radius, item.width))
                yield replace(item, x=x + dx, y=y + dy, radius=radius, width=width)
            case Text() | Use():
                yield replace(item, x=scale * item.x + dx, y=scale * item.y + dy)
            case Picture():
                x, y = scale * item.box.x0 + dx, scale * item.box.y0 + dy
                yield replace(item, box=Rect.sized(x, y, item.box.width, item.box.height))
