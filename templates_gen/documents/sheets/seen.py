"""What is seen of a sheet, so that two states of it can be compared: marks cut off at its window, to a thousandth of a
millimetre, about its lower left corner."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Mapping

from templates_gen.base.adding import added
from templates_gen.base.geometry import Rect, same
from templates_gen.base.record import replace
from templates_gen.drawing.items import Circle, Form, Item, Line, Page, Polygon, Text, Use
from templates_gen.drawing.moving import moved_by
from templates_gen.drawing.tags import number_of

NOWHERE = Rect(0.0, 0.0, 0.0, 0.0)

FINE, OFF = 1000.0, 0.382
"""Parts of a millimetre that places are compared in, and what is added so that no usual length is between two of them.
Our own design, no source."""

Seen = frozenset[tuple[object, ...]]
"""Marks as values, without their order."""

_NUMBERED = re.compile(r"page \d+ of \d+")
"""What only the title of a sheet says, which goes by the pages before it and by the day."""


def seen(page: Page, forms: Mapping[str, Form]) -> Seen:
    """What is seen of a sheet's page but for title and photo tags.  Raises ValueError for a page without a window."""
    if page.window is None:
        raise ValueError(f"page {page.label} shows nothing of the wall")
    shown = [mark for item in page.wall_items for mark in _marks(item, forms, page.window)]
    beside = (item for item in page.page_items if not _left_out(item))
    return frozenset((*shown, *(("page", *_place(item, NOWHERE)) for item in beside)))


def _left_out(item: Item) -> bool:
    """The title, and photo tags: where these are is known from the file of the paper that they are on."""
    if isinstance(item, Use):
        return number_of(item.form) is not None
    return isinstance(item, Text) and bool(_NUMBERED.search(item.text))


def _marks(item: Item, forms: Mapping[str, Form], window: Rect) -> Iterator[tuple[object, ...]]:
    """The marks of an item inside the window."""
    if isinstance(item, Use):
        for inner in moved_by(forms[item.form].items, item.x, item.y):
            yield from _marks(inner, forms, window)
    elif isinstance(item, Line):
        if clipped := _clipped(item, window):
            yield _place(clipped, window)
    elif _box(item).overlaps(window):
        yield _place(item, window)


def _box(item: Item) -> Rect:
    """What an item takes, at least; lettering is taken to be on the sheet that it is drawn on."""
    if isinstance(item, Circle):
        return Rect.about(item.x, item.y, 2 * item.radius, 2 * item.radius)
    if isinstance(item, Polygon):
        xs, ys = zip(*item.points, strict=True)
        return Rect(min(xs), min(ys), max(xs), max(ys))
    return Rect(-math.inf, -math.inf, math.inf, math.inf)


def _clipped(line: Line, window: Rect) -> Line | None:
    """The part of a line inside the window, its dashes where they were; None where there is none."""
    dx, dy, start, end = line.x1 - line.x0, line.y1 - line.y0, 0.0, 1.0
    across, along = (window.x0 - line.x0, window.x1 - line.x0), (window.y0 - line.y0, window.y1 - line.y0)
    for step, (low, high) in ((dx, across), (dy, along)):
        if same(step, 0.0):
            if low > 0.0 or high < 0.0:
                return None
            continue
        one, two = sorted((low / step, high / step))
        start, end = max(start, one), min(end, two)
    if start >= end:
        return None
    period = added(line.dash)
    phase = (line.phase + start * math.hypot(dx, dy)) % period if period else 0.0
    return replace(
        line,
        x0=line.x0 + start * dx,
        y0=line.y0 + start * dy,
        x1=line.x0 + end * dx,
        y1=line.y0 + end * dy,
        phase=phase,
    )


def _place(item: Item, window: Rect) -> tuple[object, ...]:
    """An item as a value, its places about the window's corner."""
    x, y = window.x0, window.y0
    if isinstance(item, Line):
        ends = (_fine(item.x0 - x), _fine(item.y0 - y)), (_fine(item.x1 - x), _fine(item.y1 - y))
        phase = _fine(item.phase) if item.dash else 0
        return ("line", *(ends if item.dash else sorted(ends)), item.width, item.dash, phase, item.grey)
    if isinstance(item, Circle):
        return ("circle", _fine(item.x - x), _fine(item.y - y), item.radius, item.width, item.filled, item.grey)
    if isinstance(item, Polygon):
        points = tuple((_fine(px - x), _fine(py - y)) for px, py in item.points)
        return ("area", points, item.width, item.filled, item.grey)
    if isinstance(item, Text):
        return (item.text, _fine(item.x - x), _fine(item.y - y), item.height, item.anchor, item.angle, item.bold)
    if isinstance(item, Use):
        return ("form", item.form, _fine(item.x - x), _fine(item.y - y))
    return ("picture", *map(_fine, (item.box.x0 - x, item.box.y0 - y, item.box.x1 - x, item.box.y1 - y)))


def _fine(mm: float) -> int:
    return math.floor(mm * FINE + OFF)
