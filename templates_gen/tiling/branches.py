"""Branches of linked paper: columns of sheets from a sheet of the spine up or down to nails that it does not hold."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from templates_gen.base.geometry import TOLERANCE, Rect, Size
from templates_gen.tiling.joins import JOIN_MIN
from templates_gen.tiling.minutes import EACH, FIRM, shaky

APART = 20.0
"""mm between papers that are not taped to each other: nearer, they lie on each other or look as if they belonged
together.  Our own design, no source."""

NEAR = 8.0
"""Seconds that two papers near to each other, but not taped, count as.  Our own design, no source."""

WORTH = 30.0
"""Seconds that a nail more on a branch is worth when branches are compared: what reaching it by another would cost is
not known yet.  Our own design, no source."""


class Branch(NamedTuple):
    """A column of cells from the spine on outwards, the first beside the spine."""

    cells: tuple[Rect, ...]
    upward: bool


def crosses(cell: Rect, boxes: Sequence[Rect]) -> bool:
    """Whether a side of the cell runs through one of the boxes."""
    x0, y0, x1, y1 = cell.x0 + TOLERANCE, cell.y0 + TOLERANCE, cell.x1 - TOLERANCE, cell.y1 - TOLERANCE
    for box in boxes:  # a plain loop, for it is asked very often
        if box.x0 < x1 and x0 < box.x1 and box.y0 < y1 and y0 < box.y1 and not cell.holds(box):
            return True
    return False


def overlapping(new: Sequence[Rect], there: Sequence[Rect]) -> bool:
    """Whether a new cell lies on one that is there."""
    for one in new:
        x0, y0, x1, y1 = one.x0 + TOLERANCE, one.y0 + TOLERANCE, one.x1 - TOLERANCE, one.y1 - TOLERANCE
        for two in there:
            if two.x0 < x1 and x0 < two.x1 and two.y0 < y1 and y0 < two.y1:
                return True
    return False


def near_misses(new: Sequence[Rect], there: Sequence[Rect]) -> int:
    """How many new cells come near one that is there without being joined to it."""
    found = 0
    for one in new:
        x0, y0, x1, y1 = one.x0 - APART, one.y0 - APART, one.x1 + APART, one.y1 + APART
        for two in there:
            if two.x0 < x1 and x0 < two.x1 and two.y0 < y1 and y0 < two.y1:
                found += not _joined(one, two)
    return found


def _joined(one: Rect, two: Rect) -> bool:
    """Whether two cells near each other are taped to each other."""
    across = max(one.x0, two.x0) - min(one.x1, two.x1)
    upward = max(one.y0, two.y0) - min(one.y1, two.y1)
    return (abs(across) < TOLERANCE and upward <= -JOIN_MIN) or (abs(upward) < TOLERANCE and across <= -JOIN_MIN)


def branches_of(
    cell: Rect, mine: Sequence[Rect], boxes: Sequence[Rect], sizes: Sequence[Size], level: Sequence[Rect]
) -> tuple[Branch, ...] | None:
    """The branches from a sheet of the spine to those of its own boxes that it does not hold; None where there is no
    way.

    `boxes` are all that sheets must not cut, `level` thin boxes that no level cut may run along.
    """
    found: list[Branch] = []
    for upward in (True, False):
        waiting = [box for box in mine if (box.y0 >= cell.y1 - TOLERANCE if upward else box.y1 <= cell.y0 + TOLERANCE)]
        while waiting:
            branch = _branch(cell, waiting, boxes, sizes, level, upward, found)
            if branch is None:
                return None
            found.append(branch)
            waiting = [box for box in waiting if not any(piece.holds(box) for piece in branch.cells)]
    return tuple(found)


def _branch(
    cell: Rect, waiting: Sequence[Rect], boxes: Sequence[Rect], sizes: Sequence[Size], level: Sequence[Rect],
    upward: bool, there: Sequence[Branch],
) -> Branch | None:  # fmt: skip
    """The best branch to the leftmost box that waits and to those that fit beside it."""
    best: tuple[tuple[float, float], Branch] | None = None
    lap = min(FIRM, cell.width)
    others = [piece for branch in there for piece in branch.cells]
    for width, height in sizes:
        reached = [box for box in waiting if box.x1 - waiting[0].x0 <= width + TOLERANCE]
        x0, x1 = min(box.x0 for box in reached), max(box.x1 for box in reached)
        for left in _lefts(x0, x1, width, cell.x0 - width + lap, cell.x1 - lap):
            pieces = _stack(cell, Rect(left, cell.y0, left + width, cell.y1), reached, height, level, upward)
            if pieces is None or overlapping(pieces, others) or any(crosses(piece, boxes) for piece in pieces):
                continue
            took = EACH.chained * len(pieces) - WORTH * len(reached) + NEAR * near_misses(pieces, others)
            took += shaky(min(left + width, cell.x1) - max(left, cell.x0))
            rank = took, abs(left + width / 2 - (x0 + x1) / 2)
            if best is None or rank < best[0]:
                best = rank, Branch(tuple(pieces), upward)
    return best[1] if best else None


def _lefts(x0: float, x1: float, width: float, lowest: float, highest: float) -> Iterator[float]:
    """Left sides of a branch that holds boxes from x0 to x1: in their middle, else as far to either side as may be."""
    low, high = max(lowest, x1 - width), min(highest, x0)
    if low > high + TOLERANCE:
        return
    yield min(max((x0 + x1 - width) / 2, low), high)
    yield low
    yield high


def _stack(
    cell: Rect, column: Rect, reached: Sequence[Rect], height: float, level: Sequence[Rect], upward: bool
) -> list[Rect] | None:
    """The cells of a branch, each as high as may be, the last no higher than it must be."""
    sign = 1.0 if upward else -1.0
    spans = sorted((sign * (box.y0 if upward else box.y1), sign * (box.y1 if upward else box.y0)) for box in reached)
    along = [(edge.y0, edge.y1) if upward else (-edge.y1, -edge.y0) for edge in level
             if edge.x0 < column.x1 and column.x0 < edge.x1]  # fmt: skip
    side, upper = (cell.y1, column) if upward else (cell.y0, cell)  # the upper sheet is cut right along its side
    if any(edge.y0 < side < edge.y1 and edge.x0 < upper.x1 and upper.x0 < edge.x1 for edge in level):
        return None
    at, end = sign * side, max(high for _, high in spans)
    found: list[Rect] = []
    while at < end - TOLERANCE:
        cut = _cut(at, min(at + height, end), end, [*spans, *along])
        if cut < at + JOIN_MIN and cut < end:
            return None
        low, high = sorted((sign * at, sign * cut))
        found.append(Rect(column.x0, low, column.x1, high))
        at = cut
    return found


def _cut(at: float, cut: float, end: float, kept: Sequence[tuple[float, float]]) -> float:
    """The highest cut up to this one that enters none of the spans that are kept whole."""
    while cut < end and cut > at:
        inside = next((low for low, high in kept if low < cut < high), None)
        if inside is None:
            break
        cut = inside
    return cut
