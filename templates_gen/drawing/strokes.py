"""Straight strokes: lines that keep clear of nail marks, and dashes that meet across every join."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from templates_gen.base.adding import added
from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.drawing.items import Line
from templates_gen.drawing.sizes import NAIL_CLEAR, SLIT_TO

CENTRE_DASH = (7.0, 2.8, 1.0, 2.8)
"""mm; ISO 128-2 has line type 10, dashed dotted, for this (from memory); the lengths are our own design."""

PITCH_DASH = (4.0, 2.0, 0.8, 2.0, 0.8, 2.0)
"""mm; as line type 12, dashed double-dotted; the lengths are our own design."""

EDGE_DASH = (6.0, 3.0)
"""mm; as line type 02, dashed; the lengths are our own design."""

NEXT_DASH = (1.5, 4.5)
"""mm; as line type 03, dashed spaced: where the next sheet's edge comes; the lengths are our own design, tried on
pages seen from two metres."""

SLIT_AIR = 2.5
"""mm around a release slit in which no line runs along it.  Our own design, no source."""


def unbroken(lines: Iterable[Line], holes: Sequence[Rect]) -> Iterator[Line]:
    """The parts of the lines that lie outside all the holes."""
    for line in lines:
        done = 0.0
        for start, end in sorted(part for hole in holes if (part := _share(line, hole))):
            if start > done:
                yield _part(line, done, start)
            done = max(done, end)
        if done < 1.0 - TOLERANCE:
            yield _part(line, done, 1.0)


def inside(line: Line, rect: Rect) -> Iterator[Line]:
    """The part of the line that lies in the rectangle, if any does."""
    if share := _share(line, rect):
        yield _part(line, *share)


def runs_into(line: Line, rect: Rect) -> bool:
    """True when a part of the line lies in the rectangle."""
    return _share(line, rect) is not None


def nail_holes(points: Iterable[tuple[float, float]]) -> list[Rect]:
    """The squares around nail points that no other line enters."""
    return [Rect.about(x, y, 2 * NAIL_CLEAR, 2 * NAIL_CLEAR) for x, y in points]


def slit_holes(points: Iterable[tuple[float, float]]) -> list[Rect]:
    """The strips around release slits, which start at nail points, that no line along a slit enters."""
    return [Rect(x - SLIT_AIR, y - SLIT_TO - SLIT_AIR, x + SLIT_AIR, y) for x, y in points]


def phased(line: Line) -> Line:
    """The line with its dashes counted from the wall's origin, so that they meet on the next sheet."""
    dx, dy = line.x1 - line.x0, line.y1 - line.y0
    start = line.y0 if abs(dx) < TOLERANCE else line.x0 * math.hypot(dx, dy) / dx
    return Line(line.x0, line.y0, line.x1, line.y1, line.width, line.dash, start % added(line.dash))


def _share(line: Line, rect: Rect) -> tuple[float, float] | None:
    """From where to where the line lies in the rectangle, 0 being its start and 1 its end."""
    x0, y0, x1, y1 = rect.x0, rect.y0, rect.x1, rect.y1
    if (line.x0 <= x0 and line.x1 <= x0) or (line.x0 >= x1 and line.x1 >= x1):
        return None  # most lines are beyond one side
    if (line.y0 <= y0 and line.y1 <= y0) or (line.y0 >= y1 and line.y1 >= y1):
        return None
    low, high = 0.0, 1.0
    for start, end, near, far in ((line.x0, line.x1, x0, x1), (line.y0, line.y1, y0, y1)):
        if start == end:
            continue
        enter, leave = (near - start) / (end - start), (far - start) / (end - start)
        if enter > leave:
            enter, leave = leave, enter
        # comparisons instead of max and min: asked for every line at a text, twice as quick
        low, high = enter if enter > low else low, leave if leave < high else high
    return (low, high) if low < high else None


def _part(line: Line, start: float, end: float) -> Line:
    dx, dy = line.x1 - line.x0, line.y1 - line.y0
    x1, y1 = (line.x1, line.y1) if end == 1.0 else (line.x0 + end * dx, line.y0 + end * dy)
    return Line(line.x0 + start * dx, line.y0 + start * dy, x1, y1, line.width, line.dash, line.phase)
