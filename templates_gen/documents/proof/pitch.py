"""The pitch line of a stair on the proof: what the frames climb along, and how high it is above a nosing."""

from __future__ import annotations

import math
from collections.abc import Iterator

from templates_gen.arranging.plan import Plan
from templates_gen.documents.proof.dimensions import BEYOND, EXTENSION, PAST, Chain
from templates_gen.documents.proof.view import View
from templates_gen.drawing.items import Line
from templates_gen.drawing.sizes import HAIR

CLEAR = 2.5
"""mm on paper between the group and the dimension beside it, for its figures.  Our own design, no source."""

STEP = 250.0
"""mm from one place to measure at to the next where nothing is known of the steps.  Our own design, no source."""


def pitch_height(plan: Plan, view: View) -> Chain | None:
    """From the nearest nosing beside the group, by its lower end if there is one, straight up to the pitch line; None
    without a stair, or where the group is over all of it."""
    stairs, group = plan.job.wall.stairs, plan.group
    if not plan.slope or stairs is None:
        return None
    low = group.x0 if plan.slope > 0 else group.x1
    beside = [x for x in _nosings(plan) if not group.x0 - CLEAR * view.scale < x < group.x1 + CLEAR * view.scale]
    if not beside:
        return None
    x = min(beside, key=lambda x: abs(x - low))
    return Chain(((stairs.line_at(x), None), (plan.pitch_at(x), None)), view.point(x, 0.0)[0], True)


def pitch_on_page(plan: Plan, view: View, height: Chain | None) -> tuple[Line, ...]:
    """The pitch line through the group and a little beyond, to its height (page mm); nothing without a stair."""
    if not plan.slope:
        return ()
    group = view.rect(plan.group)
    ends = [group.x0 - BEYOND, group.x1 + BEYOND, *((height.at - PAST, height.at + PAST) if height else ())]
    x, y = view.point(plan.centre_line, plan.level_line)
    low, high = min(ends), max(ends)
    return (Line(low, y + plan.slope * (low - x), high, y + plan.slope * (high - x), HAIR, grey=EXTENSION),)


def _nosings(plan: Plan) -> Iterator[float]:
    """How far right every nosing is (wall mm), from the lowest up to the landing or the wall's end."""
    stairs, wall = plan.job.wall.stairs, plan.job.wall.rect
    if stairs is None:
        return
    step = stairs.run or STEP
    for number in range(math.floor(abs(stairs.end(wall) - stairs.x) / step + 1e-6) + 1):
        x = stairs.x + math.copysign(number * step, stairs.slope)
        if wall.x0 <= x <= wall.x1:
            yield x
