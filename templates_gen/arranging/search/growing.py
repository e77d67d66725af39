"""A group that grows from its middle: frame after frame goes to the best place beside those that hang already.

A place touches one frame at the gap and is in line with it, or touches two.  Nearest to the middle is best, and better
still what lies close along others and ends where they end.  Large frames go first.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from random import Random
from typing import NamedTuple

from templates_gen.arranging.search.boxes import Box, Gaps, around
from templates_gen.arranging.search.ground import Ground
from templates_gen.base.adding import added
from templates_gen.base.geometry import TOLERANCE, Size

ASPECTS = (1.2, 1.5, 1.8)
"""Widths over heights that groups grow to.  Our own design, by looking, no source."""

TOUCH, LINE = (0.1, 0.4), (0.01, 0.05)
"""From least to most, what lying along others counts for, and every edge in line with another's, beside the distance
from the middle: each group grows by its own.  Our own design, by looking, no source."""

SHORTER = 0.35
"""What the shorter of the two distances from the middle, across and up, counts for.  Our own design, no source."""

NEIGHBOURS, IN_LINE = 1.5, 0.5
"""Gaps from a frame to another that it lies along, and mm between edges that are in line.  Our own design."""

MOST_LINES = 3
"""Edges in line that a place is worth at most, where the search for one is cut short.  Our own design, no source."""

CHANCE = 0.03
"""What chance counts for beside the distance from the middle, for a group that grows.  Our own design, no source."""

ORDERS = (0.15, 0.65)
"""From least to most, how much chance there is in the order of frames by size.  Our own design, no source."""

Pull = Callable[[int, Box, Mapping[int, Box]], float]
"""What a place of a frame costs beside those that hang, for what is wished of them."""


class Manner(NamedTuple):
    """How places are chosen: the root of the aspect, what touching and edges in line count for, and chance."""

    aspect: float
    touch: float
    line: float
    chance: float


def any_manner(random: Random, chance: float) -> Manner:
    """A manner taken by chance."""
    return Manner(math.sqrt(random.choice(ASPECTS)), random.uniform(*TOUCH), random.uniform(*LINE), chance)


def grown(ground: Ground, pull: Pull | None, random: Random) -> dict[int, Box] | None:
    """A whole group that grew by chance; None where a frame found no place."""
    more, sizes = random.uniform(*ORDERS), ground.sizes
    order = sorted(
        range(len(sizes)), key=lambda at: -sizes[at][0] * sizes[at][1] * math.exp(more * random.gauss(0.0, 1.0))
    )
    firsts = [at for at in dict.fromkeys((ground.across, ground.up, ground.first)) if at >= 0]
    order = [*firsts, *(at for at in order if at not in firsts)]
    boxes: dict[int, Box] = {}
    if not ground.fixed:
        first = _first(ground, order[0])
        if first is None:
            return None
        boxes[order.pop(0)] = first
    return boxes if set_again(ground, boxes, order, any_manner(random, CHANCE), pull, random) else None


def set_again(
    ground: Ground, boxes: dict[int, Box], order: Sequence[int], manner: Manner, pull: Pull | None, random: Random
) -> bool:
    """Puts frames among those that hang, in this order; False where one found no place."""
    for at in order:
        place = best_place(ground, boxes, at, manner, pull, random)
        if place is None:
            return False
        boxes[at] = place
    return True


def _first(ground: Ground, at: int) -> Box | None:
    """The place of the first frame: where the group's middle will be, or the nearest to it that is free."""
    width, height = ground.sizes[at]
    area = added((w + ground.gaps.across) * (h + ground.gaps.down) for w, h in ground.sizes)
    rise = math.sqrt(area / ASPECTS[1]) * (0.5 - ground.share) if ground.up < 0 else height * (0.5 - ground.share)
    x, y = ground.axis - width / 2, ground.height + rise - height / 2
    left, low, right, high = ground.within
    xs, ys = [x, left, right - width], [y, low, high - height]
    for a0, b0, a1, b1 in ground.taken:
        xs += [a0 - width, a1]
        ys += [b0 - height, b1]
    for _, x0, y0 in sorted((abs(x0 - x) + abs(y0 - y), x0, y0) for x0 in xs for y0 in ys):
        if ground.free(box := (x0, y0, x0 + width, y0 + height)):
            return box
    return None


def best_place(
    ground: Ground, boxes: Mapping[int, Box], at: int, manner: Manner, pull: Pull | None, random: Random
) -> Box | None:
    """The best free place for a frame beside those that hang; None where there is none."""
    hung = [*boxes.values(), *ground.fixed]
    width, height = ground.sizes[at]
    spots = {*beside(hung, width, height, *ground.gaps), *_by_things(ground, hung, width, height)}
    spots.update(_level(ground, boxes, at))
    found, low = None, math.inf
    reach = NEIGHBOURS * manner.touch + MOST_LINES * manner.line  # as much as touching and lines can be worth
    kept = kept_clear(hung, *ground.gaps)
    for away, x, y in _by_distance(ground, hung, ground.sizes[at], spots, manner.aspect):
        if away - reach > low:
            break
        box = (x, y, x + width, y + height)
        if meets(box, kept):
            continue
        value = (
            away
            - worth(box, hung, ground.gaps, manner)
            + manner.chance * random.random()
            + (pull(at, box, boxes) if pull else 0.0)
        )
        if value < low and ground.free(box):
            found, low = box, value
    return found


def _by_distance(
    ground: Ground, hung: Sequence[Box], own: Size, spots: Iterable[tuple[float, float]], aspect: float
) -> list[tuple[float, float, float]]:
    """The places for a frame of this size, not all free, with how far their ends are from the middle; nearest first."""
    (width, height), (across, down) = own, ground.gaps
    whole = around(hung)
    middle, level = ground.axis - width / 2, (whole[1] + whole[3]) / 2 - height / 2
    size = math.sqrt(added([(b[2] - b[0] + across) * (b[3] - b[1] + down) for b in hung]) + width * height)
    half, tall, wide, high = width / 2, height / 2, 1 / (aspect * size), aspect / size
    places = []
    for x, y in spots:
        dx, dy = (abs(x - middle) + half) * wide, (abs(y - level) + tall) * high
        places.append((dx + SHORTER * dy if dx > dy else dy + SHORTER * dx, x, y))
    places.sort()
    return places


def beside(
    hung: Sequence[Box], width: float, height: float, across: float, down: float
) -> Iterator[tuple[float, float]]:
    """The lower left corners of places at the gap from one frame and in line with it, or at the gap from two."""
    yield from _left_and_right(hung, width, height, across, down)
    turned = [(y0, x0, y1, x1) for x0, y0, x1, y1 in hung]
    yield from ((x, y) for y, x in _left_and_right(turned, height, width, down, across))


def _left_and_right(
    hung: Sequence[Box], width: float, height: float, across: float, down: float
) -> Iterator[tuple[float, float]]:
    """Of these places those to the left and to the right of a frame."""
    more = down + height
    for x0, y0, x1, y1 in hung:
        low, middle = y0 - height, (y0 + y1 - height) / 2
        for x in (x0 - across - width, x1 + across):
            yield x, y0
            yield x, y1 - height
            yield x, middle
            left, right = x - across, x + width + across
            for a0, b0, a1, b1 in hung:
                if a0 < right and a1 > left:
                    if low < b1 + down < y1:
                        yield x, b1 + down
                    if low < b0 - more < y1:
                        yield x, b0 - more


def _level(ground: Ground, boxes: Mapping[int, Box], at: int) -> Iterator[tuple[float, float]]:
    """The lower left corners of places at the height of frames that this one is to be level with."""
    width, height = ground.sizes[at]
    for other in ground.level_with.get(at, ()):
        if other in boxes:
            y = (boxes[other][1] + boxes[other][3] - height) / 2
            for x0, y0, x1, y1 in boxes.values():
                if y0 < y + height and y1 > y:
                    yield x1 + ground.gaps.across, y
                    yield x0 - ground.gaps.across - width, y


def _by_things(ground: Ground, hung: Sequence[Box], width: float, height: float) -> Iterator[tuple[float, float]]:
    """The lower left corners of places beside what is on the wall, in line with a frame or at the gap from it."""
    across, down = ground.gaps
    x0, y0, x1, y1 = around(hung)
    for a0, b0, a1, b1 in ground.taken:
        if a0 > x1 + width or a1 < x0 - width or b0 > y1 + height or b1 < y0 - height:
            continue
        for c0, d0, c1, d1 in hung:
            for x in (a0 - width, a1):
                yield from ((x, y) for y in (d0, d1 - height, d1 + down, d0 - down - height))
            for y in (b0 - height, b1):
                yield from ((x, y) for x in (c0, c1 - width, c1 + across, c0 - across - width))


def kept_clear(hung: Sequence[Box], across: float, down: float) -> list[Box]:
    """Every frame with the gaps around it."""
    across, down = across - TOLERANCE, down - TOLERANCE
    return [(x0 - across, y0 - down, x1 + across, y1 + down) for x0, y0, x1, y1 in hung]


def meets(box: Box, others: Sequence[Box]) -> bool:
    """True when a box shares area with any other."""
    x0, y0, x1, y1 = box
    for a0, b0, a1, b1 in others:  # a loop, for this is asked more often than anything else
        if a0 < x1 and a1 > x0 and b0 < y1 and b1 > y0:
            return True
    return False


def worth(box: Box, hung: Sequence[Box], gaps: Gaps, manner: Manner) -> float:
    """What lying along others and edges in line are worth."""
    x0, y0, x1, y1 = box
    near_x, near_y = NEIGHBOURS * gaps.across + IN_LINE, NEIGHBOURS * gaps.down + IN_LINE
    left, right, low, high = x0 - near_x, x1 + near_x, y0 - near_y, y1 + near_y
    along, lines = 0.0, 0
    for a0, b0, a1, b1 in hung:
        if a0 >= right or a1 <= left or b0 >= high or b1 <= low:
            continue
        if a0 < x1 and a1 > x0:
            along += min(x1, a1) - max(x0, a0)
            lines += (-IN_LINE < x0 - a0 < IN_LINE) + (-IN_LINE < x1 - a1 < IN_LINE)
        elif b0 < y1 and b1 > y0:
            along += min(y1, b1) - max(y0, b0)
            lines += (-IN_LINE < y0 - b0 < IN_LINE) + (-IN_LINE < y1 - b1 < IN_LINE)
    return manner.touch * along / (x1 - x0 + y1 - y0) + manner.line * lines
