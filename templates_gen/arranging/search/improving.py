"""Some frames of a group are taken out and set again, again and again; what looks better is kept.

Simulated annealing over such changes (S. Kirkpatrick, C. D. Gelatt and M. P. Vecchi, Optimization by simulated
annealing, Science 220, 1983; taking out and setting again: G. Schrimpf and others, Record breaking optimization results
using the ruin and recreate principle, Journal of Computational Physics 159, 2000; both from memory).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from random import Random
from typing import NamedTuple

from templates_gen.arranging.search.boxes import Box
from templates_gen.arranging.search.ground import Ground
from templates_gen.arranging.search.growing import Manner, Pull, any_manner, best_place, set_again

HOT, COLD = 0.003, 0.0003
"""By how much of the cost a change may be worse, at the start and at the end.  Our own design, no source."""

MOST_OUT = 5
"""Neighbours that are taken out at once.  Our own design, no source."""

OUTERMOST = 3
"""Frames of one side that are taken out at once.  Our own design, no source."""

ORDER, CHANCE = 0.5, 0.1
"""How much chance there is in the order of frames that are set again, and in their places.  Our own design."""

PAIRS, SIDES, WISHED = 0.2, 0.35, 0.15
"""Shares of the changes: below the first, two frames by chance; below the second, the outermost of one side; the rest
takes neighbours.  Where something is wished, so many take out frames that it is about.  Our own design, no source."""

STRAY = 600.0
"""mm of chance in which neighbours are the nearest.  Our own design, no source."""

STEADY = Manner(math.sqrt(1.5), 0.25, 0.03, 0.0)
"""How frames are set that have to move out of the way of something: always alike.  Our own design, no source."""

ROUNDS = 3
"""Times that a group is moved to its place and mended.  Our own design, no source."""

Judge = Callable[[Sequence[Box], float], float]
"""What frames cost; where that is more than the number given, some number above it."""


class Found(NamedTuple):
    """Where the frames are, one after the other, and what that costs."""

    cost: float
    boxes: list[Box]


def hung(ground: Ground, boxes: Sequence[Box]) -> list[Box] | None:
    """The frames moved to where the group says, each that is in the way of something set again; None without room."""
    random = Random(0)  # which a steady manner does not ask
    now = list(boxes)
    for _ in range(ROUNDS):
        now = ground.moved(now)
        bad = ground.astray(now)
        if not bad:
            return now
        if len(bad) > max(MOST_OUT, len(now) // 2):
            return None
        kept = {at: box for at, box in enumerate(now) if at not in bad}
        if not kept and not ground.fixed:
            return None
        for at in sorted(bad, key=lambda at: -ground.sizes[at][0] * ground.sizes[at][1]):
            place = best_place(ground, kept, at, STEADY, None, random)
            if place is None:
                return None
            kept[at] = place
        now = [kept[at] for at in range(len(now))]
    return now


def improved(
    begin: Found, ground: Ground, judge: Judge, pull: Pull | None, wished: Sequence[Sequence[int]], steps: int,
    random: Random,
) -> Iterator[Found | None]:  # fmt: skip
    """One run: at every step the best so far if the step found it, else None."""
    best = now = begin
    for step in range(steps if len(begin.boxes) > 1 else 0):
        warmth = HOT * (COLD / HOT) ** (step / steps)
        most = now.cost - warmth * math.log(1 - random.random())
        trial = _changed(now.boxes, ground, pull, wished, random)
        found = Found(judge(trial, most), trial) if trial else None
        if found is None or found.cost >= most:
            yield None
            continue
        now = found
        better = now.cost < best.cost
        best = now if better else best
        yield now if better else None


def _changed(
    boxes: Sequence[Box], ground: Ground, pull: Pull | None, wished: Sequence[Sequence[int]], random: Random
) -> list[Box] | None:
    """The group with a few frames taken out and set again; None where that found no room."""
    out = _chosen(boxes, wished, random)
    kept = {at: box for at, box in enumerate(boxes) if at not in out}
    if not kept and not ground.fixed:
        return None
    sizes = ground.sizes
    order = sorted(out, key=lambda at: -sizes[at][0] * sizes[at][1] * math.exp(ORDER * random.gauss(0.0, 1.0)))
    if not set_again(ground, kept, order, any_manner(random, CHANCE), pull, random):
        return None
    return hung(ground, [kept[at] for at in range(len(boxes))])


def _chosen(boxes: Sequence[Box], wished: Sequence[Sequence[int]], random: Random) -> list[int]:
    """Which frames are taken out."""
    count, kind = len(boxes), random.random()
    if wished and random.random() < WISHED:
        return list(random.choice(wished))
    if kind < PAIRS and count > 2:
        return random.sample(range(count), 2)
    if kind < SIDES and count > 3:
        side, sign = random.choice(((0, 1), (2, -1), (1, 1), (3, -1)))
        return sorted(range(count), key=lambda at: sign * boxes[at][side])[: random.randint(1, OUTERMOST)]
    return neighbours(random.choice(boxes), dict(enumerate(boxes)), MOST_OUT, random)


def neighbours(one: Box, boxes: Mapping[int, Box], most: int, random: Random) -> list[int]:
    """The frames nearest to one, itself among them, so many at most and never all of several, with chance in both."""
    near = {
        at: abs(box[0] + box[2] - one[0] - one[2]) + abs(box[1] + box[3] - one[1] - one[3]) + STRAY * random.random()
        for at, box in boxes.items()
    }
    return sorted(near, key=near.__getitem__)[: random.randint(1, max(1, min(most, len(near) - 1)))]
