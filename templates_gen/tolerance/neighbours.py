"""Which frames are neighbours: those that face each other across hardly more than the group's gap, or the nearest."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import TOLERANCE, exceeds
from templates_gen.base.grid_index import SIDE, Near
from templates_gen.base.record import Record

SLACK = 1.5
"""Gaps that two neighbours may be apart: one placed by hand is rarely just one gap off.  Our own design, no source."""

FARTHEST = 8 * SIDE
"""mm.  Frames farther apart than this are nobody's neighbours.  Our own design, no source."""


class Neighbours(Record, frozen=True):
    """Two frames; `beside` each other with `gap` mm between their sides, or else one above the other."""

    one: Hung
    two: Hung
    beside: bool
    gap: float


def neighbours(plan: Plan) -> tuple[Neighbours, ...]:
    """Every pair of neighbours once, in the order of the frames."""
    near = Near((hung.rect, number) for number, hung in enumerate(plan.frames))
    reach = max(_reach(plan, True), _reach(plan, False))
    pairs: dict[tuple[int, int], Neighbours] = {}
    for number in range(len(plan.frames)):
        for pair in _within(plan, number, reach, near) or _nearest(plan, number, reach, near):
            pairs.setdefault((min(number, pair[0]), max(number, pair[0])), pair[1])
    return tuple(pairs[key] for key in sorted(pairs))


def _within(plan: Plan, number: int, reach: float, near: Near[int]) -> list[tuple[int, Neighbours]]:
    """The frames that face this one, no farther off than `reach`."""
    own = plan.frames[number]
    found = []
    for other in near.about(own.rect.grown(reach)):
        pair = _facing(own, plan.frames[other]) if other != number else None
        if pair is not None and pair.gap <= _reach(plan, pair.beside):
            found.append((other, pair))
    return found


def _reach(plan: Plan, beside: bool) -> float:
    """How far apart neighbours beside or above each other may be (mm)."""
    group = plan.job.group
    return SLACK * (group.gap_across if beside else group.gap_down) + TOLERANCE


def _nearest(plan: Plan, number: int, reach: float, near: Near[int]) -> Iterator[tuple[int, Neighbours]]:
    """The nearest frame, facing or not, found by looking ever farther."""
    own = plan.frames[number]
    while reach < FARTHEST:
        reach = max(SIDE, 2 * reach)
        others = [other for other in near.about(own.rect.grown(reach)) if other != number]
        if others:
            best = min(others, key=lambda other: (own.rect.gap_to(plan.frames[other].rect), other))
            pair = _facing(own, plan.frames[best]) or _apart(own, plan.frames[best])
            yield best, pair
            return


def _facing(one: Hung, two: Hung) -> Neighbours | None:
    """The pair, when the frames lie beside or above each other; None when they meet at corners only, or overlap."""
    across, up = one.rect.gaps_to(two.rect)
    if exceeds(0.0, across) == exceeds(0.0, up):
        return None
    return _apart(one, two)


def _apart(one: Hung, two: Hung) -> Neighbours:
    across, up = one.rect.gaps_to(two.rect)
    return Neighbours(one, two, across >= up, max(across, up, 0.0))
