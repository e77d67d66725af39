"""What is measured on the taped paper: two diagonals and the width, each between two corners of frames.

Where only the nails have to be on paper they are measured between nails.
"""

from __future__ import annotations

import math

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.record import Record
from templates_gen.hanging.bearings import Nail

Corner = tuple[Hung, int, int]
"""A frame, and which of its corners: 1 for right and for upper, 0 for left and for lower."""


LEAST_STEEP = 0.2
"""Height over width of a diagonal at least, for the two to tell how paper leans.  Our own design, no source."""


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


def measured(plan: Plan) -> tuple[Span, Span, Span]:
    """What is measured on the taped paper of a job: the diagonals a and b, and the width."""
    if plan.job.paper.cover == "linked":
        return _nail_spans(plan)
    return (*corner_diagonals(plan), overall_width(plan))


def corners_to_measure(plan: Plan) -> list[tuple[float, float, bool, bool]]:
    """The corners of frames that these are measured between: x, y, whether it is a right and whether an upper one.

    None where they are measured between nails, where frames' corners may not be on the paper, and in a part of a wall
    that has no frame.
    """
    if plan.job.paper.cover in ("linked", "nails") or not plan.frames:
        return []
    a, b = ((0, 1), (1, 0)), ((1, 1), (0, 0))
    corners = [_outermost(plan, right, top) for ends in (a, b) for right, top in ends] + list(_widest(plan))
    return list(dict.fromkeys((*_at(corner), bool(corner[1]), bool(corner[2])) for corner in corners))


def telling(spans: tuple[Span, Span, Span]) -> bool:
    """Whether the diagonals tell how paper leans: each is as steep as `LEAST_STEEP`, one up and one down."""
    one, two, _ = spans
    steep = all(abs(span.up) >= LEAST_STEEP * abs(span.across) > 0.0 for span in (one, two))
    return steep and one.across * one.up * two.across * two.up < 0.0


def _nail_spans(plan: Plan) -> tuple[Span, Span, Span]:
    """The same between the outermost nails: their marks are whole on every paper."""

    def outermost(right: int, up: int) -> Nail:
        return max(plan.nails, key=lambda nail: right * nail.x + up * nail.y)

    a, b = (outermost(-1, 1), outermost(1, -1)), (outermost(1, 1), outermost(-1, -1))
    return _between(*a), _between(*b), _between(outermost(-1, 0), outermost(1, 0))


def _between(one: Nail, two: Nail) -> Span:
    return Span(f"nail {one.name}", f"nail {two.name}", (one.x, one.y), (two.x, two.y))


def corner_diagonals(plan: Plan) -> tuple[Span, Span]:
    """The diagonals a and b: from the upper left to the lower right corner of the group, and from right to left."""
    (a, b), (c, d) = (
        (_outermost(plan, right, top) for right, top in ends) for ends in (((0, 1), (1, 0)), ((1, 1), (0, 0)))
    )
    return _span(a, b), _span(c, d)


def overall_width(plan: Plan) -> Span:
    """From the upper corner of the frame farthest left to the upper corner of the one farthest right."""
    return _span(*_widest(plan))


def _widest(plan: Plan) -> tuple[Corner, Corner]:
    first, last = min(plan.frames, key=lambda hung: hung.rect.x0), max(plan.frames, key=lambda hung: hung.rect.x1)
    return (first, 0, 1), (last, 1, 1)


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
