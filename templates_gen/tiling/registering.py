"""Where registration marks go that two sheets share: near the two ends of every join."""

from __future__ import annotations

import math

from templates_gen.drawing.sizes import BARS_LONG

Point = tuple[float, float]

FROM_END = BARS_LONG + 2.8
"""mm from a join's end to the middle of its mark, so that the marks of joins that meet there stand clear of each other.
Our own design, no source."""

BETWEEN = 1.6
"""mm between two marks of one join, at least.  Our own design, no source."""


def end_marks(line: tuple[float, float, float, float]) -> list[Point]:
    """The middles of a join's marks on its line from (x0, y0) to (x1, y1) in wall mm: two, or one where it is short.

    They are as near to its ends as they can be, for a join's turn, not its gap, is what spoils a template.
    """
    x0, y0, x1, y1 = line
    length = math.hypot(x1 - x0, y1 - y0)
    if length < 2 * (FROM_END + BARS_LONG) + BETWEEN:
        return [((x0 + x1) / 2, (y0 + y1) / 2)]
    share = FROM_END / length
    return [(x0 + part * (x1 - x0), y0 + part * (y1 - y0)) for part in (share, 1.0 - share)]
