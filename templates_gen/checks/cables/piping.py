"""Where pipes may run behind a wall: near what shows of them, and beside rooms that have water."""

from __future__ import annotations

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.checks.cables.entries import Entry, entries

PIPE_KINDS = ("pipe", "radiator")
"""The features that a pipe leads to."""

BESIDE = 150.0
"""mm to either side of a pipe or a radiator that are asked about, as well as all above and below it.  Common practice,
no source."""

WET_ROOMS = ("bathroom", "kitchen", "laundry", "toilet")
"""Rooms with water: pipes may run in the walls next to them.  Common practice, no source."""


def pipes_near(plan: Plan) -> dict[str, list[Entry]]:
    """The nails above, below or beside each pipe and radiator, by what it is called."""
    found: dict[str, list[Entry]] = {}
    places = entries(plan)
    for feature in plan.job.wall.features:
        if feature.kind in PIPE_KINDS:
            rect, wall = feature.rect, plan.job.wall.rect
            place = Rect(rect.x0 - BESIDE, wall.y0, rect.x1 + BESIDE, wall.y1)
            near = [nail for nail in places if place.meet(Rect(nail.x, nail.low, nail.x, nail.high))]
            if near:
                found.setdefault(feature.called, []).extend(near)
    return found
