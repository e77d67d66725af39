"""How far something has to move to lie clear of all else: exact, along one axis, and on the marks of a tape measure."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from templates_gen.base.geometry import Rect, exceeds, same

Span = tuple[float, float]
"""Moves (mm) that are barred: those between the two, and not the two themselves."""

MOST_JUMPS = 1000
"""Barred spans that are jumped over before a way is given up: more than a wall has things on it.  Our own design, no
source."""


def turned(rect: Rect) -> Rect:
    """The rectangle with its axes changed, so that what is said of moves across holds for moves upward."""
    return Rect(rect.y0, rect.x0, rect.y1, rect.x1)


def barred_by(rects: Iterable[Rect], obstacles: Sequence[Rect]) -> list[Span]:
    """The moves across (mm, right positive) after which one of the rectangles shares area with an obstacle."""
    return [
        (other.x0 - rect.x1, other.x1 - rect.x0)
        for rect in rects
        for other in obstacles
        if exceeds(other.y1, rect.y0) and exceeds(rect.y1, other.y0)
    ]


def barred_by_lines(rects: Iterable[Rect], lines: Sequence[tuple[float, float, float, float]]) -> list[Span]:
    """Likewise for straight lines (x0, y0, x1, y1), such as the edge of a wall with a sloping ceiling."""
    spans = []
    for rect in rects:
        for x0, y0, x1, y1 in lines:
            low, high = max(min(y0, y1), rect.y0), min(max(y0, y1), rect.y1)
            if exceeds(high, low):
                ends = [x0 + (x1 - x0) * (y - y0) / (y1 - y0) for y in (low, high)]
                spans.append((min(ends) - rect.x1, max(ends) - rect.x0))
    return spans


def barred_outside(rects: Iterable[Rect], within: Rect) -> list[Span]:
    """The moves across after which one of the rectangles reaches beyond the sides of another."""
    spans = []
    for rect in rects:
        spans += [(-math.inf, within.x0 - rect.x0), (within.x1 - rect.x1, math.inf)]
    return spans


def nearest_clear(spans: Sequence[Span], onward: bool, start: float, step: float) -> float | None:
    """The least move (mm) to the right (`onward`) or left that no span bars; None where there is none.

    `start` is where a tape measure shows the thing now: it comes to stand on a mark of the tape, `step` (mm) apart.
    """
    move = 0.0
    for _ in range(MOST_JUMPS):
        marks = (start + move) / step
        mark = math.ceil(marks - 1e-9) if onward else math.floor(marks + 1e-9)
        move = mark * step - start
        hit = next((span for span in spans if exceeds(move, span[0]) and exceeds(span[1], move)), None)
        if hit is None:
            return None if same(move, 0.0) else move
        move = hit[1] if onward else hit[0]
        if math.isinf(move):
            return None
    return None
