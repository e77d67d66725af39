"""Frames as plain numbers, for what is worked out many thousand times."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from templates_gen.base.adding import added

Box = tuple[float, float, float, float]
"""Left, bottom, right and top of a frame in mm, y up."""

AS_LARGE = 1 - 1e-3
"""Of the largest frame's area: from there on a frame is as large.  Our own design, no source."""


class Gaps(NamedTuple):
    """The gaps that are wanted between two frames (mm)."""

    across: float
    down: float


def around(boxes: Sequence[Box]) -> Box:
    """The smallest box around all."""
    return (
        min([box[0] for box in boxes]), min([box[1] for box in boxes]),
        max([box[2] for box in boxes]), max([box[3] for box in boxes]),
    )  # fmt: skip


def shifted(box: Box, dx: float, dy: float) -> Box:
    """The box moved by (dx, dy)."""
    return box[0] + dx, box[1] + dy, box[2] + dx, box[3] + dy


def hull_area(boxes: Sequence[Box], across: float, down: float) -> float:
    """The area (mm²) of the smallest convex shape around all boxes, each grown by `across` and `down` on its sides.

    Andrew's monotone chain (Information Processing Letters 9, 1979, from memory).
    """
    ends: dict[float, tuple[float, float]] = {}
    for x0, y0, x1, y1 in boxes:
        for y in (y0 - down, y1 + down):
            left, right = ends.get(y, (math.inf, -math.inf))
            ends[y] = (min(left, x0 - across), max(right, x1 + across))
    levels = sorted(ends)
    right_side = _chain([(ends[y][1], y) for y in levels])
    left_side = _chain([(-ends[y][0], y) for y in levels])
    return _under(right_side) + _under(left_side)


def _chain(points: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """The points, from the lowest, that bulge to the right."""
    chain: list[tuple[float, float]] = []
    for x, y in points:
        while len(chain) > 1:
            (x0, y0), (x1, y1) = chain[-2], chain[-1]
            if (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0) > 0:
                break
            chain.pop()
        chain.append((x, y))
    return chain


def _under(chain: Sequence[tuple[float, float]]) -> float:
    """The area between a chain and the upright at 0, negative to the left of that."""
    return added((x0 + x1) * (y1 - y0) / 2 for (x0, y0), (x1, y1) in pairwise(chain))
