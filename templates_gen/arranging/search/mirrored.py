"""Groups whose halves mirror each other: frames of one size go up in pairs, those without a twin in the middle."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from random import Random
from typing import NamedTuple

from templates_gen.arranging.search.boxes import Box, Gaps, around
from templates_gen.arranging.search.growing import (
    CHANCE,
    IN_LINE,
    MOST_LINES,
    NEIGHBOURS,
    ORDERS,
    SHORTER,
    Manner,
    any_manner,
    beside,
    kept_clear,
    meets,
    worth,
)
from templates_gen.arranging.search.improving import Found, Judge, neighbours
from templates_gen.base.adding import added
from templates_gen.base.geometry import TOLERANCE, Size

MOST_SINGLES, SINGLES = 2, 5
"""So many frames may have no twin, or one in so many of all; each of them hangs in the middle.  Our own design."""

MOST_IN_THE_MIDDLE = 4
"""Frames that are stacked in the middle at most: more make a tower.  Our own design, no source."""

HOT, COLD = 0.008, 0.0008
"""By how much of the cost a change may be worse, at the start and at the end.  Our own design, no source."""

GROWN = 0.4
"""Share of the steps that grow new groups; the rest takes out and sets again.  Our own design, no source."""

ALONE = 1.5
"""What the area of a frame without a twin counts for in the order of frames.  Our own design, no source."""

MOST_OUT, AGAIN_ORDER, AGAIN_CHANCE = 4, 0.4, 0.08
"""Neighbours that are taken out at once, and how much chance there is in their order and places.  Our own design."""


class Twins(NamedTuple):
    """Pairs of frames of one size, and the frames without a twin."""

    pairs: tuple[tuple[int, int], ...]
    singles: tuple[int, ...]


def twins(sizes: Sequence[Size], middle: int) -> Twins | None:
    """The pairs among frames of these sizes, the frame `middle` (-1 for none) in no pair; None with few pairs."""
    same: dict[Size, list[int]] = {}
    for at, size in enumerate(sizes):
        if at != middle:
            same.setdefault(size, []).append(at)
    pairs = [(many[at], many[at + 1]) for many in same.values() for at in range(0, len(many) - 1, 2)]
    singles = [many[-1] for many in same.values() if len(many) % 2]
    singles += [middle] if middle >= 0 else []
    few = len(singles) <= min(MOST_IN_THE_MIDDLE, max(MOST_SINGLES, len(sizes) // SINGLES))
    return Twins(tuple(pairs), tuple(singles)) if pairs and few else None


class Mirrored:
    """Halves of groups: the frames on the right of the upright at 0, and those in the middle."""

    def __init__(self, sizes: Sequence[Size], gaps: Gaps, found: Twins) -> None:
        self.sizes, self.gaps, self.twins = sizes, gaps, found
        self.items = [*(one for one, _ in found.pairs), *found.singles]
        self.singles = frozenset(found.singles)

    def whole(self, half: Mapping[int, Box]) -> list[Box]:
        """All frames of a group, one after the other."""
        boxes = dict(half)
        for one, two in self.twins.pairs:
            x0, y0, x1, y1 = half[one]
            boxes[two] = (-x1, y0, -x0, y1)
        return [boxes[at] for at in range(len(self.sizes))]

    def grown(self, random: Random) -> dict[int, Box] | None:
        """Half of a group that grew by chance; None where a frame found no place."""
        more, sizes = random.uniform(*ORDERS), self.sizes
        weight = {at: sizes[at][0] * sizes[at][1] * (ALONE if at in self.singles else 1.0) for at in self.items}
        order = sorted(self.items, key=lambda at: -weight[at] * math.exp(more * random.gauss(0.0, 1.0)))
        half: dict[int, Box] = {}
        return half if self._set(half, order, any_manner(random, CHANCE), random) else None

    def changed(self, half: Mapping[int, Box], random: Random) -> dict[int, Box] | None:
        """The half with a few neighbours taken out and set again; None where that found no place."""
        out = neighbours(half[random.choice(self.items)], half, MOST_OUT, random)
        kept = {at: box for at, box in half.items() if at not in out}
        out.sort(key=lambda at: -self.sizes[at][0] * self.sizes[at][1] * math.exp(AGAIN_ORDER * random.gauss(0.0, 1.0)))
        return kept if self._set(kept, out, any_manner(random, AGAIN_CHANCE), random) else None

    def _set(self, half: dict[int, Box], order: Sequence[int], manner: Manner, random: Random) -> bool:
        for at in order:
            place = self._best_place(half, at, manner, random)
            if place is None:
                return False
            half[at] = place
        return True

    def _best_place(self, half: Mapping[int, Box], at: int, manner: Manner, random: Random) -> Box | None:
        width, height = self.sizes[at]
        alone = at in self.singles
        if not half:
            left = -width / 2 if alone else self.gaps.across / 2
            return left, -height / 2, left + width, height / 2
        boxes = list(half.values())
        found, low, reach = None, math.inf, NEIGHBOURS * manner.touch + MOST_LINES * manner.line
        kept = kept_clear(boxes, *self.gaps)
        for away, x, y in self._by_distance(boxes, width, height, alone, manner):
            if away - reach > low:
                break
            box = (x, y, x + width, y + height)
            if meets(box, kept):
                continue
            value = away - self._worth(box, boxes, alone, manner) + manner.chance * random.random()
            if value < low:
                found, low = box, value
        return found

    def _by_distance(
        self, boxes: Sequence[Box], width: float, height: float, alone: bool, manner: Manner
    ) -> list[tuple[float, float, float]]:
        across, down = self.gaps
        whole = around(boxes)
        level = (whole[1] + whole[3]) / 2
        size = math.sqrt(
            2 * added([(b[2] - b[0] + across) * (b[3] - b[1] + down) for b in boxes]) + width * height
        )  # fmt: skip
        levels = {y for b in boxes for y in (b[3] + down, b[1] - down - height)}
        if alone:
            spots = {(-width / 2, y) for y in levels | {y for b in boxes for y in (b[1], b[3] - height)}}
        else:
            inner = across / 2
            spots = {spot for spot in beside(boxes, width, height, across, down) if spot[0] >= inner - TOLERANCE}
            spots |= {(inner, y) for y in levels}
        places = []
        for x, y in spots:
            dx = (width / 2 if alone else abs(x) + width) / manner.aspect / size
            dy = (abs(y + height / 2 - level) + height / 2) * manner.aspect / size
            places.append((dx + SHORTER * dy if dx > dy else dy + SHORTER * dx, x, y))
        places.sort()
        return places

    def _worth(self, box: Box, boxes: Sequence[Box], alone: bool, manner: Manner) -> float:
        """What lying along others, its twin with them, and edges in line are worth."""
        beside_twin = not alone and box[0] < self.gaps.across / 2 + IN_LINE
        more = manner.touch * (box[3] - box[1]) / (box[2] - box[0] + box[3] - box[1]) if beside_twin else 0.0
        return more + worth(box, boxes, self.gaps, manner)


def mirrored(half: Mirrored, judge: Judge, steps: int, random: Random) -> Iterator[Found | None]:
    """One run: at every step the best group so far if the step found it, else None.  `judge` moves nothing: the groups
    are about the upright at 0."""
    now, cost, least = None, math.inf, math.inf
    for step in range(steps):
        warmth = HOT * (COLD / HOT) ** (step / steps) if step > GROWN * steps else 0.0
        trial = half.changed(now, random) if now and step > GROWN * steps else half.grown(random)
        most = cost - warmth * math.log(1 - random.random())
        boxes = half.whole(trial) if trial else []
        found = judge(boxes, most) if trial else math.inf
        if found < most:
            now, cost = trial, found
        better = found < most and found < least
        least = min(least, found)
        yield Found(found, boxes) if better else None
