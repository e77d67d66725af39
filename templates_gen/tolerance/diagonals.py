"""What is measured on the taped paper: two diagonals and the width, each between two corners of frames."""

from __future__ import annotations

import math

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.record import Record

Corner = tuple[Hung, int, int]
"""A frame, and which of its corners: 1 for right and for upper, 0 for left and for lower."""


class Span(Record, frozen=True):
    """From one frame's corner to another's, both as they are called, and how far the second is right and up (mm)."""

    start: str
    end: str
    at: tuple[float, float]
    to: tuple[float, float]

    @property
    def length(self) -> float:
        return math.dist(self.at, self.to)

    @property
    def across(self) -> float:
        return self.to[0] - self.at[0]

    @property
    def up(self) -> float:
        return self.to[1] - self.at[1]


def corner_diagonals(plan: Plan) -> tuple[Span, Span]:
    """The diagonals a and b: from the upper left to the lower right corner of the group, and from right to left."""
    (a, b), (c, d) = (
        (_outermost(plan, right, top) for right, top in ends) for ends in (((0, 1), (1, 0)), ((1, 1), (0, 0)))
    )
    return _span(a, b), _span(c, d)


def overall_width(plan: Plan) -> Span:
    """From the upper corner of the frame farthest left to the upper corner of the one farthest right."""
    first, last = min(plan.frames, key=lambda hung: hung.rect.x0), max(plan.frames, key=lambda hung: hung.rect.x1)
    return _span((first, 0, 1), (last, 1, 1))


def _outermost(plan: Plan, right: int, top: int) -> Corner:
    def reach(hung: Hung) -> float:
        x, y = _at((hung, right, top))
        return x * (1 if right else -1) + y * (1 if top else -1)

    return max(plan.frames, key=reach), right, top


def _at(corner: Corner) -> tuple[float, float]:
    (hung, right, top) = corner
    return (hung.rect.x1 if right else hung.rect.x0), (hung.rect.y1 if top else hung.rect.y0)


def _span(one: Corner, two: Corner) -> Span:
    return Span(_called(one), _called(two), _at(one), _at(two))


def _called(corner: Corner) -> str:
    hung, right, top = corner
    return f"the {'upper' if top else 'lower'} {'right' if right else 'left'} corner of {hung.frame.id}"
