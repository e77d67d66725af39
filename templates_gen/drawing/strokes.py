"""Straight strokes: lines that keep clear of nail marks, and dashes that meet across every join."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.drawing.items import Line
from templates_gen.drawing.sizes import MEDIUM, NAIL_CLEAR, NARROW, WIDE

DASHED_DOTTED = (24.0 * NARROW, 3.0 * NARROW, 0.5 * NARROW, 3.0 * NARROW)
"""ISO 128-2 line type 04, long dash, gap, dot, gap, in line widths (from memory)."""

DOUBLE_DOTTED = (*DASHED_DOTTED, 0.5 * NARROW, 3.0 * NARROW)
"""ISO 128-2 line type 05, the same with a second dot, in line widths (from memory)."""

CENTRE_DASH = tuple(part * WIDE / NARROW for part in DASHED_DOTTED)
"""The same for a line of the wide kind, so that it can be told from a metre away."""

EDGE_DASH = tuple(part * MEDIUM for part in (24.0, 3.0, 6.0, 3.0))
"""ISO 128-2 line type 08, long dash, gap, short dash, gap (from memory)."""

PITCH_DASH = tuple(part * WIDE / NARROW for part in DOUBLE_DOTTED)

DOTTED = (0.6, 1.2)
"""mm; a cut line.  Our own design."""


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


def nail_holes(points: Iterable[tuple[float, float]]) -> list[Rect]:
    """The squares around nail points that no other line enters."""
    return [Rect.about(x, y, 2 * NAIL_CLEAR, 2 * NAIL_CLEAR) for x, y in points]


def phased(line: Line) -> Line:
    """The line with its dashes counted from the wall's origin, so that they meet on the next sheet."""
    dx, dy = line.x1 - line.x0, line.y1 - line.y0
    start = line.y0 if abs(dx) < TOLERANCE else line.x0 * math.hypot(dx, dy) / dx
    return Line(line.x0, line.y0, line.x1, line.y1, line.width, line.dash, start % sum(line.dash))


def _share(line: Line, rect: Rect) -> tuple[float, float] | None:
    """From where to where the line lies in the rectangle, 0 being its start and 1 its end."""
    low, high = 0.0, 1.0
    for start, end, near, far in ((line.x0, line.x1, rect.x0, rect.x1), (line.y0, line.y1, rect.y0, rect.y1)):
        if start == end:
            if not near < start < far:
                return None
            continue
        enter, leave = sorted(((near - start) / (end - start), (far - start) / (end - start)))
        low, high = max(low, enter), min(high, leave)
    return (low, high) if low < high else None


def _part(line: Line, start: float, end: float) -> Line:
    dx, dy = line.x1 - line.x0, line.y1 - line.y0
    x1, y1 = (line.x1, line.y1) if end == 1.0 else (line.x0 + end * dx, line.y0 + end * dy)
    return Line(line.x0 + start * dx, line.y0 + start * dy, x1, y1, line.width, line.dash, line.phase)
