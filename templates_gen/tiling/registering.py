"""Where registration marks go that two sheets share: near the two ends of every join."""

from __future__ import annotations

import math
from collections.abc import Sequence

from templates_gen.drawing.sizes import BARS_LONG
from templates_gen.tiling.covered import Covered

Point = tuple[float, float]

Ends = tuple[Point, Point]
"""The two points by which a sheet is brought to meet another."""

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


def ends_held(line: tuple[float, float, float, float], marks: Sequence[Point], hides: Covered | None) -> Ends:
    """The two of a join's marks that are farthest apart; or what stands for two, where there are not two.

    Where it is cut these are its ends.  Where nothing is cut they are as far apart as makes up for the one pair of
    crossing lines; and half of that where there is none, for only lines of the wall cross such a join (our own guess,
    no source).
    """
    x0, y0, x1, y1 = line
    if len(marks) > 1:
        in_order = sorted(marks, key=lambda point: point[::-1] if x0 == x1 else point)
        return in_order[0], in_order[-1]
    if hides is None:
        return (x0, y0), (x1, y1)
    x, y = marks[0] if marks else ((x0 + x1) / 2, (y0 + y1) / 2)
    half = hides.held(x0 == x1) / (2 if marks else 4)
    return ((x, y - half), (x, y + half)) if x0 == x1 else ((x - half, y), (x + half, y))
