"""Which cells are taped to which, and the fewest extra cells found that make one piece of all of them."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from math import ceil, inf
from typing import NamedTuple

from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.tiling.strips import evenly

JOIN_MIN = 40.0
"""Two cells are joined when they share at least this much of a side (mm): room for two registration marks far
enough apart to show a turned sheet.  Common practice, no source."""

LEAST_JOIN = 20.0
"""mm.  Sheets that meet along less than this are not taped to each other there: a registration mark would not fit.
Our own design, no source."""


Rows = list[list[Rect]]


class Gap(NamedTuple):
    """Free space in a strip between two cells, or beyond the last one up to the side of the group."""

    strip: int
    left: float
    right: float
    before: Rect | None
    after: Rect | None


Offer = tuple[int, float, Gap, float, float, set[int]]
"""A possible bridge: minus the pieces it joins, minus its length, its gap, its ends, and the pieces."""


def shared_sides(cells: Sequence[Rect]) -> Iterator[tuple[int, int, float]]:
    """Every pair of disjoint cells that share part of a side, with the length they share (mm).

    The second of a pair is the one to the right or above.
    """
    upright = ((c.x0, c.x1, c.y0, c.y1) for c in cells)
    level = ((c.y0, c.y1, c.x0, c.x1) for c in cells)
    for sides in (upright, level):
        after: dict[float, list[tuple[float, float, int]]] = defaultdict(list)
        before: dict[float, list[tuple[float, float, int]]] = defaultdict(list)
        for i, (begin, end, low, high) in enumerate(sides):
            after[begin].append((low, high, i))
            before[end].append((low, high, i))
        for at in before.keys() & after.keys():
            yield from _facing(sorted(before[at]), sorted(after[at]))


def _facing(
    one: list[tuple[float, float, int]], two: list[tuple[float, float, int]]
) -> Iterator[tuple[int, int, float]]:
    i = j = 0
    while i < len(one) and j < len(two):
        length = min(one[i][1], two[j][1]) - max(one[i][0], two[j][0])
        if length > TOLERANCE:
            yield one[i][2], two[j][2], length
        if one[i][1] < two[j][1]:
            i += 1
        else:
            j += 1


def pieces(cells: Sequence[Rect]) -> list[int]:
    """For each cell the number of the taped piece it is part of; pieces are counted from 0."""
    return grouped(len(cells), joined(cells))


def joined(cells: Sequence[Rect]) -> Iterator[tuple[int, int]]:
    """Every pair of cells that are taped to each other."""
    return ((i, j) for i, j, length in shared_sides(cells) if length >= JOIN_MIN - TOLERANCE)


def grouped(count: int, pairs: Iterable[tuple[int, int]]) -> list[int]:
    """For each of the first `count` numbers which group it is in once pairs are put together, groups counted from 0."""
    parent = list(range(count))

    def root(i: int) -> int:
        while parent[i] != i:
            parent[i] = parent[parent[i]]
            i = parent[i]
        return i

    for i, j in pairs:
        parent[root(i)] = root(j)
    names: dict[int, int] = {}
    return [names.setdefault(root(i), len(names)) for i in range(count)]


def bridged(rows: Rows, spans: Sequence[Rect], width: float, limit: int) -> Rows | None:
    """The rows with bridges added until all are one piece; None beyond `limit` cells or when there is no way.

    `rows` are the cells strip by strip, `spans` the strips themselves.  The shortest bridge that joins most
    pieces is built first, again and again; at the end every bridge that is not needed after all is taken out.
    """
    work = [sorted(row) for row in rows]
    added: list[Rect] = []
    before = inf
    while True:
        cells = [c for row in work for c in row]
        names = pieces(cells)
        if not cells or max(names) == 0:
            needed = _without_spares(work, added) if added else work
            return needed if sum(map(len, needed)) <= limit else None
        if len(cells) + 1 > limit or max(names) >= before:
            return None
        before = max(names)
        for strip, cell in _best_bridges(work, dict(zip(cells, names, strict=True)), spans, width):
            work[strip] = sorted([*work[strip], cell])
            added.append(cell)


def _without_spares(work: Rows, added: list[Rect]) -> Rows:
    """The rows without the added cells that are not needed after all."""
    cells = [c for row in work for c in row]
    ties = list(joined(cells))
    gone: set[int] = set()
    for spare in added:
        trial = gone | {cells.index(spare)}
        names = grouped(len(cells), (pair for pair in ties if trial.isdisjoint(pair)))
        if max(names) == len(trial):  # one piece, and those that are gone
            gone = trial
    spares = {cells[number] for number in gone}
    return [[c for c in row if c not in spares] for row in work]


def _best_bridges(work: Rows, names: dict[Rect, int], spans: Sequence[Rect], width: float) -> list[tuple[int, Rect]]:
    """The cells of the shortest bridges that join two pieces or more, those that join most first.

    No two of the bridges touch the same piece or stand in the same gap, so each of them keeps its worth.
    """
    gaps = [g for i in range(len(work)) for g in _gaps(work[i], i, spans[i])]
    longest = max((g.right - g.left for g in gaps), default=0.0)
    for size in range(1, ceil(longest / width) + 1):
        offers = []
        for gap in gaps:
            for left, right in _places(gap, work, size * width):
                touched = _touched(gap, left, right, work, names)
                if len(touched) > 1:
                    offers.append((-len(touched), left - right, gap, left, right, touched))
        if offers:
            return _chosen(offers, spans, size)
    return []


def _chosen(offers: list[Offer], spans: Sequence[Rect], size: int) -> list[tuple[int, Rect]]:
    """The best offers that do not get in one another's way, as cells."""
    found: list[tuple[int, Rect]] = []
    used: set[Gap | int] = set()
    for _, _, gap, left, right, touched in sorted(offers, key=lambda offer: offer[:4]):
        if used.isdisjoint({gap, *touched}):
            used |= {gap, *touched}
            found += _bridge(gap, spans, left, right, size)
    return found


def _bridge(gap: Gap, spans: Sequence[Rect], left: float, right: float, size: int) -> list[tuple[int, Rect]]:
    """The cells of a bridge, all equally long."""
    span = spans[gap.strip]
    return [(gap.strip, Rect(a, span.y0, b, span.y1)) for a, b in evenly(left, right, size)]


def _gaps(row: list[Rect], strip: int, span: Rect) -> Iterator[Gap]:
    for before, after in zip([None, *row], [*row, None], strict=True):
        left, right = before.x1 if before else span.x0, after.x0 if after else span.x1
        if right - left > TOLERANCE:
            yield Gap(strip, left, right, before, after)


def _neighbours(work: Rows, strip: int, left: float, right: float) -> Iterator[Rect]:
    """The cells of the strips above and below that reach into this stretch."""
    for other in (strip - 1, strip + 1):
        if 0 <= other < len(work):
            row = work[other]
            begin = bisect_right(row, left, key=lambda c: c.x1)
            yield from row[begin : bisect_left(row, right, key=lambda c: c.x0)]


def _places(gap: Gap, work: Rows, length: float) -> set[tuple[float, float]]:
    """The stretches worth bridging: flush with an end of the gap, or just enough under or over a cell."""
    if gap.right - gap.left <= length:
        return {(gap.left, gap.right)}
    found = {(gap.left, gap.left + length), (gap.right - length, gap.right)}
    for cell in _neighbours(work, gap.strip, gap.left - length, gap.right + length):
        for left in (cell.x0 + JOIN_MIN - length, cell.x1 - JOIN_MIN):
            if gap.left < left < gap.right - length:
                found.add((left, left + length))
    return found


def _touched(gap: Gap, left: float, right: float, work: Rows, names: dict[Rect, int]) -> set[int]:
    """The pieces that a bridge over this stretch would be joined to."""
    found = {
        names[c]
        for c in _neighbours(work, gap.strip, left, right)
        if min(c.x1, right) - max(c.x0, left) >= JOIN_MIN - TOLERANCE
    }
    if gap.before and left == gap.left:
        found.add(names[gap.before])
    if gap.after and right == gap.right:
        found.add(names[gap.after])
    return found
