"""Frames that climb with a stair: side by side, each with a point of it on a line parallel to the nosing line."""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.arranging.along import length, starts
from templates_gen.base.geometry import Rect
from templates_gen.job.model import Group

ON_LINE = {"bottom": 0.0, "centre": 0.5, "top": 1.0}
"""How much of a frame's height hangs below the line, by which point of its middle lies on it."""


def climbing(sizes: Sequence[tuple[float, float]], group: Group) -> list[Rect]:
    """A rectangle for each size (mm), from the left, about the point where the centre line crosses the pitch line.

    The gap is kept level, from side to side: neighbours are never nearer in any direction, and further apart only
    where one hangs wholly above the other.
    """
    widths = [width for width, _ in sizes]
    first, below = -length(widths, group.gap_across) / 2, ON_LINE[group.align]
    return [
        Rect.sized(left, group.slope * (left + width / 2) - below * height, width, height)
        for (width, height), left in zip(sizes, (first + x for x in starts(widths, group.gap_across)), strict=True)
    ]
