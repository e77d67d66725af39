"""The fewest strips and cells that hold a set of boxes, exactly, by dynamic programming over critical cuts.

A *box* is what a strip is asked for: a box that is firm across and up must lie inside one cell (its clearances are
already part of it), one that is firm in one direction only must not be cut along its length, and any other box must
be covered, by as many cells as it takes.  Strips here are rows, filled from the bottom up; columns are the same
problem with the axes swapped.
"""

from __future__ import annotations

import heapq
from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import cached_property, partial
from itertools import count, pairwise
from math import inf
from typing import NamedTuple

from templates_gen.base.geometry import TOLERANCE, Rect, Span
from templates_gen.base.grid_index import Near

SLACK = TOLERANCE / 2
"""A cell may be this much (mm) larger than the paper allows, so that content which fits exactly is not split
by the rounding of a sum.  Common practice, no source."""

MOST_CELLS = 20_000
"""More sheets than anyone prints: 40 reams.  Common practice, no source."""

MANY = 200
"""From so many boxes on those of a strip are found without a look at all.  Our own choice, measured."""


class Box(NamedTuple):
    """A demand on the sheets: left, bottom, right, top in mm; no upright cut enters it when it is `firm_x`, no level
    one when it is `firm_y`."""

    x0: float
    y0: float
    x1: float
    y1: float
    firm_x: bool
    firm_y: bool

    def turned(self) -> Box:
        """The box with the axes swapped."""
        return Box(self.y0, self.x0, self.y1, self.x1, self.firm_y, self.firm_x)


class Line(NamedTuple):
    """What one strip has to hold, seen along the strip: firm stretches no cut may enter, and all content."""

    firm_lo: list[float]
    firm_hi: list[float]
    all_lo: list[float]
    all_hi: list[float]

    def cut_at_most(self, t: float) -> float:
        """The largest allowed cut that is not beyond `t`."""
        i = bisect_left(self.firm_lo, t) - 1
        return self.firm_lo[i] if i >= 0 and t < self.firm_hi[i] else t

    def content_end(self, t: float) -> float:
        """Where the last content that begins before `t` ends."""
        return self.all_hi[bisect_left(self.all_lo, t) - 1]


def within(boxes: Iterable[Box], y0: float, y1: float) -> list[Box]:
    """The boxes that a strip from `y0` to `y1` has to do with, in the order given.

    A box that only touches a cut is not in the strip on the other side; a line that lies on a cut belongs to
    the strip above it.
    """
    return [b for b in boxes if b.y0 < y1 and (b.y1 > y0 or b.y0 >= y0)]


class Boxes(tuple[Box, ...]):
    """Boxes in order of their left sides, which know what each strip has to do with."""

    _lines: dict[Span, Line]
    _counts: dict[tuple[float, bool, float, float], float]

    def __new__(cls, boxes: Iterable[Box]) -> Boxes:
        if isinstance(boxes, Boxes):
            return boxes
        every = super().__new__(cls, sorted(boxes))
        every._lines, every._counts = {}, {}
        return every

    @cached_property
    def covered(self) -> Boxes:
        """They, with one more that asks for all the wall between them."""
        left, bottom = min(b.x0 for b in self), min(b.y0 for b in self)
        right, top = max(b.x1 for b in self), max(b.y1 for b in self)
        return Boxes([*self, Box(left, bottom, right, top, False, False)])

    @cached_property
    def _near(self) -> Near[Box]:
        return Near((Rect(0.0, b.y0, 0.0, b.y1), b) for b in self)

    @cached_property
    def upright(self) -> Line:
        """All of them seen from the bottom up."""
        return line_of(sorted(b.turned() for b in self))

    def within(self, y0: float, y1: float) -> list[Box]:
        """Those that a strip from `y0` to `y1` has to do with, found without a look at all."""
        return within(self if len(self) < MANY else self._near.about(Rect(0.0, y0, 0.0, y1)), y0, y1)

    def line(self, y0: float, y1: float) -> Line:
        """What a strip from `y0` to `y1` has to hold: asked for the same strips again and again."""
        known = self._lines.get((y0, y1))
        if known is None:
            known = self._lines[y0, y1] = line_of(self.within(y0, y1))
        return known

    def cells(self, width: float, gaps: bool, bottom: float, top: float, before: int = 0) -> float:
        """The number of cells of a strip, and `before` it; infinite where no plan exists."""
        asked = width, gaps, bottom, top
        known = self._counts.get(asked)
        if known is None:
            found = cells_along(self.line(bottom, top), width, gaps)
            known = self._counts[asked] = inf if found is None else len(found)
        return before + known


def evenly(low: float, high: float, parts: int) -> list[Span]:
    """The stretch in equal parts; the last ends where it should and not a rounding beside it."""
    return list(pairwise([*(low + (high - low) * i / parts for i in range(parts)), high]))


def line_of(boxes: Sequence[Box]) -> Line:
    """The content of a strip from its boxes, which must be in order of their left sides."""
    firm_lo, firm_hi, all_lo, all_hi = line = Line([], [], [], [])
    end = firm_end = -inf
    for x0, _, x1, _, firm, _ in boxes:
        if x0 > end:
            all_lo.append(x0)
            all_hi.append(x1)
            end = x1
        elif x1 > end:
            all_hi[-1] = end = x1
        if not firm:
            continue
        if x0 >= firm_end:
            firm_lo.append(x0)
            firm_hi.append(x1)
            firm_end = x1
        elif x1 > firm_end:  # the two share a stretch, so they share a cell
            firm_hi[-1] = firm_end = x1
    return line


def cells_along(line: Line, width: float, gaps: bool) -> list[Span] | None:
    """The fewest cells for one strip, from the left; None when a firm stretch does not fit a cell.

    Each cell ends at the furthest allowed cut, and with `gaps` the next begins at the next content.  This is
    optimal, for it stays ahead: if after i cells this plan has served everything left of p, and any other
    plan with i cells everything left of q <= p, then the furthest allowed cut within `width` of p is not
    left of the one within `width` of q, so the same holds after i + 1 cells.
    """
    firm_lo, firm_hi, all_lo, all_hi = line
    cells: list[Span] = []
    i, j, t, many = 0, 0, -inf, len(all_hi)
    while True:
        i = bisect_right(all_hi, t, i)
        if i == many:
            return cells
        start = all_lo[i] if all_lo[i] > t and (gaps or not cells) else t
        t = start + width
        j = bisect_left(firm_lo, t, j)
        if j and t < firm_hi[j - 1]:  # as `cut_at_most`, from where the one before was
            t = firm_lo[j - 1]
        if t <= start or len(cells) == MOST_CELLS:
            return None
        cells.append((start, t))


def best_strips(boxes: Boxes, width: float, height: float, gaps: bool, limit: int) -> tuple[int, list[Span]] | None:
    """The fewest cells for all boxes: their number and the strips, bottom up.

    None when cuts right across the wall cannot keep the firm boxes in one piece, or take more than `limit`
    cells.  Of two states with equally many cells only the one with the higher cut is kept.  That loses
    nothing: any way to go on from the lower cut, without its cuts up to the higher one, serves the rest from
    the higher cut too, as a part of a strip holds fewer boxes and needs no more cells.  The cost of a strip
    rises with its top only where content enters, so only the tops just below such a rise can be of use.
    """
    upright = boxes.upright
    entries = sorted({b.y0 for b in boxes if not b.firm_y} | set(upright.firm_lo))
    bottoms = sorted(b.y0 for b in boxes)
    order = count()
    lowest = bottoms[0] if bottoms else 0.0
    heap: list[tuple[int, float, int, object]] = [(0, -lowest, next(order), None)]
    highest = -inf
    reached: dict[float, float] = {}  # by so many cells, the highest cut so far
    while heap and heap[0][0] <= limit:
        cells, y, _, trail = heapq.heappop(heap)
        if -y <= highest:
            continue
        highest = -y
        bottom = _content_from(upright, bottoms, highest)
        if bottom is None:
            return cells, _unwind(trail)
        tops = _tops(upright, entries, bottom, bottom + height)
        cost = partial(boxes.cells, width, gaps, bottom, before=cells)
        for total, top in _stairs(tops, cost, reached):
            reached[total] = top
            heapq.heappush(heap, (total, -top, next(order), ((bottom, top), trail)))
    return None


def _content_from(upright: Line, bottoms: list[float], at: float) -> float | None:
    """Where the content that is not below `at` begins, `at` itself within content; None when there is no more."""
    i = bisect_right(upright.all_hi, at)
    if i < len(upright.all_lo) and upright.all_lo[i] < at:
        return at
    i = bisect_left(bottoms, at)
    return bottoms[i] if i < len(bottoms) else None


def _tops(upright: Line, entries: list[float], bottom: float, most: float) -> list[float]:
    """The tops worth trying for a strip with this bottom, from low to high."""
    inside = entries[bisect_right(entries, bottom) : bisect_left(entries, most)]
    return sorted({t for t in map(upright.cut_at_most, [*inside, most]) if t > bottom})


def _stairs(
    tops: list[float], cost: Callable[[float], float], reached: Mapping[float, float]
) -> Iterator[tuple[int, float]]:
    """The highest top of every cost, with that cost, where it is above what was `reached` at that.

    The cost never falls as the top rises, so all up to what was reached at the cost of the lowest are of no use.
    """
    end = len(tops)
    begin = bisect_right(tops, reached.get(cost(tops[0]), -inf)) if tops else 0
    while end > begin:
        most = cost(tops[end - 1])
        if most != inf and tops[end - 1] > reached.get(most, -inf):
            yield int(most), tops[end - 1]
        end = bisect_left(range(end), most, begin, key=lambda i: cost(tops[i]))


def _unwind(trail: object) -> list[Span]:
    strips: list[Span] = []
    while isinstance(trail, tuple):
        strip, trail = trail
        strips.append(strip)
    return strips[::-1]
