"""A spine of sheets along the level line, and upright branches from it to the nails that it does not hold.

Found from left to right by dynamic programming.  The state is where the spine was cut last and how high its last sheet
lies; the next sheet is upright or on its side, ends at the farthest cut or beside a nail, and lies so that it holds
the line.  The nails between its ends that it does not hold are reached by branches, columns of sheets up or down from
its own edge.  Cost is in seconds of a person's time.  Rectangles only, in wall mm: nothing of frames.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterator, Sequence
from math import inf
from typing import NamedTuple

from templates_gen.base.geometry import TOLERANCE, Rect, Size
from templates_gen.base.record import Record
from templates_gen.tiling.branches import NEAR, Branch, branches_of, crosses, near_misses, overlapping
from templates_gen.tiling.minutes import EACH, shaky

STEP = 10.0
"""mm between the places where a spine may be cut, those beside nails not counted.  Our own design, no source."""

LEAST_LAP = 60.0
"""mm along which two sheets of the spine meet at the least: room for two registration marks that hold a turn, and half
a sheet's width of them by a longer join where there is one.  Our own design, no source."""


class Asked(Record, frozen=True):
    """What linked paper has to hold (wall mm): whole `boxes` with what sheets' own marks take around them, the first
    of them the target's, and a line from `left` to `right`.

    `line_at` is the line's height at an x, with room for its ticks from `below` to `above` it.  `upright` and `level`
    are thin boxes that no cut may run along.
    """

    boxes: tuple[Rect, ...]
    left: float
    right: float
    line_at: Callable[[float], float]
    below: float
    above: float
    upright: tuple[Rect, ...] = ()
    level: tuple[Rect, ...] = ()


class Stretch(NamedTuple):
    """One sheet of the spine, with the branches that leave it."""

    cell: Rect
    branches: tuple[Branch, ...]


class _State(NamedTuple):
    """The best way to a cut with the last sheet so high: what it took (s), and the sheets before."""

    cost: float
    before: _State | None
    stretch: Stretch | None


_START: tuple[float, float] = (-inf, inf)


def spine(asked: Asked, sizes: Sequence[Size]) -> list[Stretch] | None:
    """The spine of the least cost, from the left; None where no spine reaches everything.

    `sizes` are the width and height (mm) of a cell on an upright page and on one that lies on its side.
    """
    boxes = sorted(asked.boxes, key=lambda box: (box.cx, box.cy))
    middles = [box.cx for box in boxes]
    low, high = min(asked.left, middles[0] - 1.0), max(asked.right, middles[-1] + 1.0)
    cuts = _cuts(boxes, low - max(width for width, _ in sizes), high + max(width for width, _ in sizes))
    longest = max(width for width, _ in sizes)
    table: list[dict[tuple[float, float], _State]] = [{} for _ in cuts]
    best: _State | None = None
    for at, x in enumerate(cuts):
        if x <= low:
            table[at][_START] = _State(0.0, None, None)
        if not table[at]:
            continue
        states = sorted(table[at].items(), key=lambda held: (held[1].cost, held[0]))
        for end, cell in _next_cells(asked, boxes, cuts, at, sizes):
            held = (cell.y0, cell.y1)
            least = table[end][held].cost if held in table[end] else inf
            if states[0][1].cost + EACH.sheet >= least:  # it is no better than another with any branches
                continue
            mine = boxes[bisect_left(middles, x) : bisect_left(middles, cell.x1)]
            branches = branches_of(cell, mine, _near(boxes, cell, longest), sizes, _near(asked.level, cell, longest))
            reached = _reached(asked, states, Stretch(cell, branches), least) if branches is not None else None
            if reached is None:
                continue
            table[end][held] = reached
            if cell.x1 >= high and (best is None or reached.cost < best.cost):
                best = reached
    return _told(best) if best else None


def _near(boxes: Sequence[Rect], cell: Rect, reach: float) -> list[Rect]:
    """Those of the boxes that a branch from a cell can come near to."""
    return [box for box in boxes if box.x0 < cell.x1 + reach and cell.x0 - reach < box.x1]


def _reached(
    asked: Asked, states: Sequence[tuple[tuple[float, float], _State]], stretch: Stretch, least: float
) -> _State | None:
    """The best of the ways to a cut, the cheapest first, with one more sheet; None where none costs less than that."""
    best: _State | None = None
    takes = EACH.sheet + EACH.chained * sum(len(branch.cells) for branch in stretch.branches)
    for lap, state in states:
        if state.cost + takes >= least:
            break
        way = _lengthened(asked, state, lap, stretch)
        if way and way.cost < least:
            best, least = way, way.cost
    return best


def _cuts(boxes: Sequence[Rect], low: float, high: float) -> list[float]:
    """Where a spine may be cut: at even steps, and beside the boxes."""
    even = (low + STEP * number for number in range(int((high - low) / STEP) + 2))
    return sorted({*even, *(side for box in boxes for side in (box.x0, box.x1))})


def _next_cells(
    asked: Asked, boxes: Sequence[Rect], cuts: Sequence[float], at: int, sizes: Sequence[Size]
) -> Iterator[tuple[int, Rect]]:
    """Every sheet that the spine may go on with from a cut, and the cut at which it ends."""
    x = cuts[at]
    beside = {side for box in boxes for side in (box.x0, box.x1)}
    for width, height in sizes:
        farthest = bisect_right(cuts, x + width + TOLERANCE) - 1
        first = bisect_left(cuts, x + LEAST_LAP)
        for end in range(first, farthest + 1):
            if end != farthest and cuts[end] not in beside:
                continue
            for low in _heights(asked, boxes, x, cuts[end], height):
                cell = Rect(x, low, cuts[end], low + height)
                if not crosses(cell, boxes):
                    yield end, cell


def _heights(asked: Asked, boxes: Sequence[Rect], x0: float, x1: float, height: float) -> list[float]:
    """How high the foot of a spine's sheet between two cuts may lie: the line in its middle or as low or as high as may
    be, and level with the nails there, but with no edge of a frame along its own."""
    ends = asked.line_at(x0), asked.line_at(x1)
    lowest, highest = max(ends) + asked.above - height, min(ends) - asked.below
    if lowest > highest:
        return []
    mine = [box for box in boxes if x0 <= box.cx < x1]
    places = {(lowest + highest) / 2, lowest, highest}
    places |= {place for box in mine for place in (box.y0, box.y1, box.y0 - height, box.y1 - height)}
    inside = {min(max(place, lowest), highest) for place in places}
    return sorted({_off_edges(place, height, x0, x1, asked, lowest, highest) for place in inside})


def _off_edges(place: float, height: float, x0: float, x1: float, asked: Asked, lowest: float, highest: float) -> float:
    """The place, or the next one below where neither the sheet's foot nor its head lies along an edge of a frame."""
    moved = place
    for _ in asked.level:
        near = (
            moved + side - edge.y0
            for edge in asked.level
            if edge.x0 < x1 and x0 < edge.x1
            for side in (0.0, height)
            if edge.y0 < moved + side < edge.y1
        )
        step = next(near, None)
        if step is None:
            break
        moved -= step
    return moved if lowest <= moved <= highest else place


def _lengthened(asked: Asked, state: _State, lap: tuple[float, float], stretch: Stretch) -> _State | None:
    """The spine with one more sheet; None where it would not hold together or lie on what is there."""
    cell = stretch.cell
    cost = state.cost + EACH.sheet + EACH.chained * sum(len(branch.cells) for branch in stretch.branches)
    if state.stretch is not None:
        meet = min(lap[1], cell.y1) - max(lap[0], cell.y0)
        if meet < LEAST_LAP or _along_edge(cell, asked.upright):
            return None
        cost += EACH.join + EACH.cut + shaky(meet)
        new = [cell, *(piece for branch in stretch.branches for piece in branch.cells)]
        there = _last_cells(state)
        if overlapping(new, there):
            return None
        cost += NEAR * near_misses(new, there)
    return _State(cost, state, stretch)


def _along_edge(cell: Rect, upright: Sequence[Rect]) -> bool:
    """Whether the left side of a sheet of the spine, which is cut, runs along an edge of a frame."""
    return any(edge.x0 < cell.x0 < edge.x1 and edge.y0 < cell.y1 and cell.y0 < edge.y1 for edge in upright)


def _last_cells(state: _State) -> list[Rect]:
    """The cells of the last two sheets of the spine and their branches: what a new sheet can come near to."""
    cells: list[Rect] = []
    one: _State | None = state
    for _ in range(2):
        if one is None or one.stretch is None:
            break
        cells += [one.stretch.cell, *(piece for branch in one.stretch.branches for piece in branch.cells)]
        one = one.before
    return cells


def _told(state: _State) -> list[Stretch]:
    """The sheets of the spine from the left."""
    found: list[Stretch] = []
    one: _State | None = state
    while one is not None and one.stretch is not None:
        found.append(one.stretch)
        one = one.before
    return found[::-1]
