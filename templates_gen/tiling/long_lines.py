"""The long lines of a template: from where to where the centre line, the level line, a stair's lines and the wall's
edges run."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import TOLERANCE, Rect, Span
from templates_gen.job.model import Wall

Ends = tuple[float, float, float, float]
"""Where a line starts and ends: x, y, x, y in mm."""

REACH = 300.0
"""mm that both lines run to each side of the target on stairs, where most of the group's rectangle is blank: a spirit
level of 60 cm lies along them.  Our own design, no source."""


def level_spans(plan: Plan) -> list[Span]:
    """The stretches of the level line, from the left (mm): across the group, but not over a feature in its midst."""
    group, feature = plan.group, _feature_at(plan, plan.level_line, upright=False)
    return _spans((group.x0, group.x1), plan.centre_line, feature, plan.slope)


def centre_spans(plan: Plan) -> list[Span]:
    """The stretches of the centre line, from the foot up (mm)."""
    group, feature = plan.group, _feature_at(plan, plan.centre_line, upright=True)
    return _spans((group.y0, group.y1), plan.level_line, feature, plan.slope)


def pitch_line(plan: Plan) -> Ends | None:
    """The pitch line from the group's left side to its right; None where there is no stair.

    It crosses the target, where centre line and level line meet.
    """
    if not plan.slope:
        return None
    x0, x1 = plan.group.x0, plan.group.x1
    return x0, plan.pitch_at(x0), x1, plan.pitch_at(x1)


def nosing_line(wall: Wall) -> Ends | None:
    """The line of the nosings from the lowest to the highest, or to the wall's end; None where there is no stair."""
    stairs = wall.stairs
    if stairs is None:
        return None
    end = stairs.end(wall.rect)
    return stairs.x, stairs.y, end, stairs.line_at(end)


def wall_edges(wall: Wall) -> list[Ends]:
    """The sides of the wall, all around."""
    return [(*one, *two) for one, two in pairwise((*wall.corners, wall.corners[0]))]


def pieces(ends: Ends, step: float) -> Iterator[Rect]:
    """Rectangles that hold a line piece by piece, each at most so wide and high (mm)."""
    x0, y0, x1, y1 = ends
    count = max(1, math.ceil(max(abs(x1 - x0), abs(y1 - y0)) / step))
    points = [(x0 + (x1 - x0) * at / count, y0 + (y1 - y0) * at / count) for at in range(count + 1)]
    for one, two in pairwise(points):
        yield Rect(min(one[0], two[0]), min(one[1], two[1]), max(one[0], two[0]), max(one[1], two[1]))


def _feature_at(plan: Plan, at: float, upright: bool) -> Span | None:
    """What the feature that the frames hang around takes of a line across it."""
    if plan.job.group.around is None:
        return None
    rect = plan.job.group.around.rect
    across, along = ((rect.x0, rect.x1), (rect.y0, rect.y1)) if upright else ((rect.y0, rect.y1), (rect.x0, rect.x1))
    return along if across[0] - TOLERANCE < at < across[1] + TOLERANCE else None


def _spans(whole: Span, target: float, without: Span | None, slope: float) -> list[Span]:
    low, high = whole
    if slope:
        low, high = max(low, target - REACH), min(high, target + REACH)
    if without is None:
        return [(low, high)]
    parts = [(low, min(high, without[0])), (max(low, without[1]), high)]
    return [(start, end) for start, end in parts if end - start > TOLERANCE]
