"""How a group of frames looks on the wall, in numbers: what is blank, what has no mirror image, where large ones are.

Our own design, by looking: pictures of groups were judged "would you hang it so" without knowing how they came about,
and these are the measures, and weights, that agreed with the judging.  Frames are boxes in mm, y up; the middle of the
group is the upright that it hangs about, and the middle of its height.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from templates_gen.arranging.search.boxes import AS_LARGE, Box, Gaps, around, hull_area
from templates_gen.base.adding import added

WEIGHTS = {
    "blank": 1.0, "void": 1.1, "gape": 3.0, "unlike": 0.65, "central": 0.20, "big": 0.05, "drift": 0.09, "rise": 0.08,
    "sink": 0.10, "wrong": 0.25, "crown": 0.25, "lean": 1.0,
}  # fmt: skip
"""What each measure costs.  Our own design, by looking, no source."""

WIDEST, NARROWEST = 2.6, 1 / 1.05
"""A group's width over its height; outside of these the logarithm of how far is what is `wrong`.  Our own design."""

AWAY = 0.75
"""Gaps from the nearest frame, beyond which blank wall within the group is a void.  Our own design."""

CELL, CELLS_A_GAP = 8.0, 6
"""mm between two uprights that the voids are looked for at, and so many of them a gap at least.  Our own design."""

GAPE, SUNK, CROWN, LEANING = 0.01, 0.3, 0.4, 0.02
"""So much void over the frames' area, of the large ones below, of the width at the top or the foot, and of the weight
on one side, is as it should be.  Our own design."""

SPREAD = 10.0
"""mm; sizes or places that differ less are alike, and have no tendency.  Our own design."""


class Looks(NamedTuple):
    """The measures of a group, each 0 where nothing is to be said against it (but `central`, which is 1 where large and
    small ones are mixed).

    `blank`: of the convex shape around all, what is neither frame nor the gap around one.  `void`: the area surrounded
    on four sides, and half of that surrounded on three, over that of the frames; `gape`: what of it is more than hardly
    seen.  `unlike`: what has no frame where its mirror image is.  `central`: how much nearer to the middle the large
    ones are than all; `big`: how far the largest is.  `drift`: how much the sizes grow to one side, `rise` upward,
    `sink` downward beyond what is usual.  `wrong`: far too wide or too high.  `crown`: how narrow the top or the foot
    is.  `lean`: how far the weight is aside.
    """

    blank: float
    void: float
    gape: float
    unlike: float
    central: float
    big: float
    drift: float
    rise: float
    sink: float
    wrong: float
    crown: float
    lean: float

    @property
    def cost(self) -> float:
        """All by their weights: the less the better."""
        return added([WEIGHTS[name] * value for name, value in zip(self._fields, self, strict=True)])


class _Middle(NamedTuple):
    """The middle of a group, its height, and its width about the middle."""

    x: float
    y: float
    width: float
    height: float


def looks(boxes: Sequence[Box], gaps: Gaps, axis: float | None = None) -> Looks:
    """The looks of frames (mm) with these gaps wanted, about an upright line at x = `axis`, or about their middle."""
    middle = _middle(boxes, axis)
    areas = [(box[2] - box[0]) * (box[3] - box[1]) for box in boxes]
    return _seen(_plain(boxes, areas, gaps, middle), boxes, areas, gaps, middle)


def cost(boxes: Sequence[Box], gaps: Gaps, axis: float | None, most: float = math.inf) -> float:
    """What the looks of frames cost; where that is more than `most`, some number above it, which is sooner known."""
    middle = _middle(boxes, axis)
    areas = [(box[2] - box[0]) * (box[3] - box[1]) for box in boxes]
    plain = _plain(boxes, areas, gaps, middle)
    least = plain.cost
    return least if least > most else _seen(plain, boxes, areas, gaps, middle).cost


def _middle(boxes: Sequence[Box], axis: float | None) -> _Middle:
    x0, y0, x1, y1 = around(boxes)
    x = (x0 + x1) / 2 if axis is None else axis
    return _Middle(x, (y0 + y1) / 2, 2 * max(x1 - x, x - x0), y1 - y0)


def _plain(boxes: Sequence[Box], areas: Sequence[float], gaps: Gaps, middle: _Middle) -> Looks:
    """The measures that need no raster, the others 0."""
    x0, y0, x1, y1 = around(boxes)
    band = added([(box[2] - box[0] + gaps.across) * (box[3] - box[1] + gaps.down) for box in boxes])
    central, big, lean = _middling(boxes, areas, middle)
    drift, climb = _tendency(boxes, areas)
    aspect = (x1 - x0) / (y1 - y0)
    return Looks(
        blank=max(0.0, 1 - band / hull_area(boxes, gaps.across / 2, gaps.down / 2)), void=0.0, gape=0.0, unlike=0.0,
        central=central, big=big, drift=abs(drift), rise=max(0.0, climb), sink=max(0.0, -climb - SUNK),
        wrong=max(0.0, math.log(aspect / WIDEST), math.log(NARROWEST / aspect)),
        crown=max(0.0, CROWN - _crown(boxes, y1, y0, x1 - x0)), lean=max(0.0, lean - LEANING),
    )  # fmt: skip


def _seen(plain: Looks, boxes: Sequence[Box], areas: Sequence[float], gaps: Gaps, middle: _Middle) -> Looks:
    void, same = _rastered(boxes, gaps, middle)
    total = added(areas)
    share = void / total
    return plain._replace(void=share, gape=max(0.0, share - GAPE), unlike=max(0.0, 1 - same / total))


def _rastered(boxes: Sequence[Box], gaps: Gaps, middle: _Middle) -> tuple[float, float]:
    """The area (mm²) of the voids, and that of frames whose mirror image is on frames.

    The group is cut into level slabs at all edges; a slab is a row of bits, one for every few millimetres, in which
    whole numbers find what is frame, near a frame, below or above one, at once.
    """
    cell = max(1.0, min(CELL, gaps.across / CELLS_A_GAP, gaps.down / CELLS_A_GAP))
    aside, up = AWAY * gaps.across, AWAY * gaps.down
    half = math.ceil((middle.width / 2 + aside) / cell) + 1
    base, span = middle.x - half * cell, 2 * half
    edges: set[float] = set()
    for box in boxes:
        edges.update((box[1], box[3], box[1] - up, box[3] + up))
    levels = sorted(edges)
    at = {y: number for number, y in enumerate(levels)}
    taken, near, mirrored = ([0] * (len(levels) - 1) for _ in range(3))
    for x0, y0, x1, y1 in boxes:
        i, j = round((x0 - base) / cell), round((x1 - base) / cell)
        bits, flipped = (1 << j) - (1 << i), (1 << (span - i)) - (1 << (span - j))
        for number in range(at[y0], at[y1]):
            taken[number] |= bits
            mirrored[number] |= flipped
        bits = (1 << round((x1 + aside - base) / cell)) - (1 << round((x0 - aside - base) / cell))
        for number in range(at[y0 - up], at[y1 + up]):
            near[number] |= bits
    heights = [(high - low) * cell for low, high in pairwise(levels)]
    same = added([h * (one & two).bit_count() for h, one, two in zip(heights, taken, mirrored, strict=True)])
    return _voids(taken, near, heights), same


def _voids(taken: Sequence[int], near: Sequence[int], heights: Sequence[float]) -> float:
    """The area that frames surround on four sides, and half of that which they surround on three."""
    below, under = 0, []
    for bits in taken:
        under.append(below)
        below |= bits
    above, hole, notch = 0, 0.0, 0.0
    for bits, beneath, close, height in zip(taken[::-1], under[::-1], near[::-1], heights[::-1], strict=True):
        free = ~close
        both = above & beneath
        between = (1 << bits.bit_length()) - (bits & -bits) if bits else 0
        hole += height * (between & both & free).bit_count()
        notch += height * ((between & (above ^ beneath) | both & ~between) & free).bit_count()
        above |= bits
    return hole + notch / 2


def _middling(boxes: Sequence[Box], areas: Sequence[float], middle: _Middle) -> tuple[float, float, float]:
    """How much nearer to the middle the large ones are than all, how far the largest is, and how far the weight is."""
    far = [
        abs((box[0] + box[2]) / 2 - middle.x) / middle.width + abs((box[1] + box[3]) / 2 - middle.y) / middle.height
        for box in boxes
    ]
    mean, total = added(far) / len(far), added(areas)
    central = added([area * away for area, away in zip(areas, far, strict=True)]) / total / mean if mean > 1e-9 else 1.0
    largest = max(areas) * AS_LARGE
    big = min([away for area, away in zip(areas, far, strict=True) if area >= largest])
    lean = added([area * ((box[0] + box[2]) / 2 - middle.x) for area, box in zip(areas, boxes, strict=True)])
    return central, big, abs(lean) / (total * middle.width)


def _tendency(boxes: Sequence[Box], areas: Sequence[float]) -> tuple[float, float]:
    """The correlation of a frame's size with how far right it is, and with how high."""
    sizes = [math.sqrt(area) for area in areas]
    mean = added(sizes) / len(sizes)
    off = [size - mean for size in sizes]
    spread = math.sqrt(added([each * each for each in off]))
    if spread < SPREAD:
        return 0.0, 0.0
    across, up = [(box[0] + box[2]) / 2 for box in boxes], [(box[1] + box[3]) / 2 for box in boxes]
    return _correlation(off, spread, across), _correlation(off, spread, up)


def _correlation(off: Sequence[float], spread: float, values: Sequence[float]) -> float:
    mean = added(values) / len(values)
    other = math.sqrt(added([(value - mean) ** 2 for value in values]))
    if other < SPREAD:
        return 0.0
    return added([one * value for one, value in zip(off, values, strict=True)]) / (spread * other)


def _crown(boxes: Sequence[Box], top: float, foot: float, width: float) -> float:
    """The share of the group's width that is about as high as its highest frame, or as low as its lowest, whichever is
    less."""
    highest = min([box for box in boxes if box[3] > top - 1.0], key=lambda box: box[1])
    lowest = max([box for box in boxes if box[1] < foot + 1.0], key=lambda box: box[3])
    high = [box for box in boxes if box[3] > (highest[1] + highest[3]) / 2]
    low = [box for box in boxes if box[1] < (lowest[1] + lowest[3]) / 2]
    return min(_across(high), _across(low)) / width


def _across(boxes: Sequence[Box]) -> float:
    return max([box[2] for box in boxes]) - min([box[0] for box in boxes])
