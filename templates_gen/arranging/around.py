"""Frames around a feature: columns on both sides of it, rows above and below it, as one group."""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.arranging.along import length, starts
from templates_gen.base.geometry import Rect, Size
from templates_gen.job.model import Group

FRACTION = {"top": 1.0, "centre": 0.5, "bottom": 0.0}
"""How much of the room that a side column leaves beside the feature lies under the column."""


def around(sides: Sequence[Sequence[Size]], group: Group) -> list[list[Rect]]:
    """The rectangles of the frames on the four sides, in the order of `SIDES`, about the feature's middle (mm).

    All stand on the line that is `gap_around` away from the feature.  A row that reaches over a column that is higher
    than the feature keeps the gap down from the column instead, and so is further away from the feature.
    """
    assert group.around is not None
    feature, away = group.around.rect, group.gap_around
    left, above, right, below = sides
    inner, outer = feature.width / 2 + away, feature.height / 2 + away
    at_left = [rect.shifted(-inner - rect.x1, 0.0) for rect in _column(left, feature.height, group)]
    at_right = [rect.shifted(inner, 0.0) for rect in _column(right, feature.height, group)]
    columns = [*at_left, *at_right]
    under = [_flipped(rect) for rect in _row(below, outer, [_flipped(rect) for rect in columns], group)]
    return [at_left, _row(above, outer, columns, group), at_right, under]


def _column(sizes: Sequence[Size], beside: float, group: Group) -> list[Rect]:
    """A column from the top with its left sides at 0, aligned to a feature of this height about 0."""
    heights = [height for _, height in sizes]
    whole = length(heights, group.gap_down)
    top = whole - beside / 2 + FRACTION[group.align] * (beside - whole)
    return [
        Rect.sized(0.0, top - down - height, width, height)
        for (width, height), down in zip(sizes, starts(heights, group.gap_down), strict=True)
    ]


def _row(sizes: Sequence[Size], bottom: float, columns: Sequence[Rect], group: Group) -> list[Rect]:
    """A row about the upright at 0, its lower edges at this height or, over a column, the gap down above that."""
    widths, gap = [width for width, _ in sizes], group.gap_across
    half = length(widths, gap) / 2
    over = [frame.y1 + group.gap_down for frame in columns if frame.x0 < half + gap and frame.x1 > -half - gap]
    bottom = max([bottom, *over])
    return [
        Rect.sized(left - half, bottom, width, height)
        for (width, height), left in zip(sizes, starts(widths, gap), strict=True)
    ]


def _flipped(rect: Rect) -> Rect:
    """The rectangle upside down about the level through 0."""
    return Rect(rect.x0, -rect.y1, rect.x1, -rect.y0)
