"""Straight strokes: lines that keep clear of nail marks, and dashes that meet across every join."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from templates_gen.geometry import TOLERANCE, Rect
from templates_gen.marks.items import Line
from templates_gen.marksizes import NAIL_CLEAR, NARROW, WIDE

DASHED_DOTTED = (24.0 * NARROW, 3.0 * NARROW, 0.5 * NARROW, 3.0 * NARROW)
"""ISO 128-2 line type 04, long dash, gap, dot, gap, in line widths (from memory)."""

CENTRE_DASH = tuple(part * WIDE / NARROW for part in DASHED_DOTTED)
"""The same for a line of the wide kind, so that it can be told from a metre away."""

DOTTED = (0.6, 1.2)
"""mm; a cut line.  Our own design."""


def unbroken(lines: Iterable[Line], holes: Sequence[Rect]) -> Iterator[Line]:
    """The parts of level or upright lines that lie outside all the holes."""
    for line in lines:
        yield from _outside(line, [hole for hole in holes if _crosses(line, hole)])


def nail_holes(points: Iterable[tuple[float, float]]) -> list[Rect]:
    """The squares around nail points that no other line enters."""
    return [Rect.about(x, y, 2 * NAIL_CLEAR, 2 * NAIL_CLEAR) for x, y in points]


def phased(line: Line) -> Line:
    """The line with its dashes counted from the wall's origin, so that they meet on the next sheet."""
    start = line.x0 if abs(line.y1 - line.y0) < TOLERANCE else line.y0
    return Line(line.x0, line.y0, line.x1, line.y1, line.width, line.dash, start % sum(line.dash))


def _crosses(line: Line, hole: Rect) -> bool:
    span = Rect(min(line.x0, line.x1), min(line.y0, line.y1), max(line.x0, line.x1), max(line.y0, line.y1))
    return span.x0 < hole.x1 and span.x1 > hole.x0 and span.y0 < hole.y1 and span.y1 > hole.y0


def _outside(line: Line, holes: Sequence[Rect]) -> Iterator[Line]:
    upright = abs(line.x1 - line.x0) < TOLERANCE
    low, high = sorted((line.y0, line.y1) if upright else (line.x0, line.x1))
    for hole in sorted(holes, key=lambda hole: hole.y0 if upright else hole.x0):
        start, end = (hole.y0, hole.y1) if upright else (hole.x0, hole.x1)
        if start > low:
            yield _part(line, upright, low, start)
        low = max(low, end)
    if low < high - TOLERANCE:
        yield _part(line, upright, low, high)


def _part(line: Line, upright: bool, low: float, high: float) -> Line:
    if upright:
        return Line(line.x0, low, line.x1, high, line.width, line.dash, line.phase)
    return Line(low, line.y0, high, line.y1, line.width, line.dash, line.phase)
