"""The order of taping: which sheets are taped into one block, and which marks each block is laid on.

The sheets of a strip that hang together are taped first, one after the other, and make a block; then every block is
laid on what is there already, by the two registration marks farthest apart.  A block waits for a longer join if those
are too near to each other to hold it firmly (`SheetPlan.firm`).  A block that meets nothing of it begins a new piece.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from heapq import heappop, heappush
from itertools import combinations, pairwise

from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.base.remembering import remembered
from templates_gen.tiling.registering import Ends, Point, ends_held
from templates_gen.tiling.sheet import SheetPlan

Meeting = tuple[float, float, int, int]
"""A registration mark (x, y) on the wall, the sheet there already that carries it, and the one laid on that."""

Links = dict[int, dict[int, Ends]]
"""For every sheet the sheets it is joined to, each with the two marks that they share."""

Run = tuple[int, ...]
"""The sheets of a block, by their numbers in the plan."""

Rank = tuple[int, float, int]

ALIKE = 6
"""Decimals (mm) by which distances are told apart, so that the order is the same wherever a group hangs.  Our own
design."""

PAIR = 2
"""Marks of one join."""

FEW = 12
"""Marks of which every two are compared; of more only those on the outline about them.  Our own design."""


class Fit(Record, frozen=True):
    """Two registration marks that are brought to meet; sheets by their number in the plan."""

    first: Meeting
    last: Meeting


class Block(Record, frozen=True):
    """Sheets taped one after the other: `inner` has a fit for each but the first.

    `laid` is how the block lies on earlier ones, None when it begins a piece.
    """

    sheets: tuple[int, ...]
    inner: tuple[Fit, ...]
    laid: Fit | None
    piece: int


class Laying(Record, frozen=True):
    """What the order of taping is found from: the sheets' cells with the numbers of their strips, how they are joined,
    whether strips are rows, None where neither, whether the strips are laid as they are numbered, and how far apart two
    marks are (mm) that hold firmly."""

    cells: Sequence[Rect]
    strips: Sequence[int]
    links: Links
    rows: bool | None
    numbered: bool
    firm: float


@remembered
def laying(sheets: SheetPlan) -> Laying:
    """A sheet plan as its order of taping sees it."""
    of_linked = sheets.spine or (sheets.linked and bool(sheets.hides))
    return Laying(
        [sheet.cell for sheet in sheets.sheets], [sheet.strip for sheet in sheets.sheets], _links(sheets),
        None if sheets.spine else sheets.rows, of_linked, sheets.firm,
    )  # fmt: skip


def blocks(sheets: SheetPlan) -> tuple[Block, ...]:
    """Every block in the order in which it is laid: from the bottom row up, or from the left column on.

    Of linked paper the strip along the level line comes first, and then the others as they are numbered.
    """
    return blocks_of(laying(sheets))


@remembered
def blocks_of(lie: Laying) -> tuple[Block, ...]:
    """The same of sheets as they lie."""
    runs = _runs(lie)
    corners = {run: (lie.cells[run[0]].x0, lie.cells[run[0]].y0) for run in runs}
    if not lie.numbered:  # else the strip of the target comes first
        runs.sort(key=lambda run: corners[run][::-1] if lie.rows else corners[run])
    return tuple(_laid(runs, lie.links, lie.rows, lie.firm))


def _runs(lie: Laying) -> list[Run]:
    """The sheets of every strip that hang together."""
    runs: list[Run] = []
    for number, strip in enumerate(lie.strips):
        if number - 1 in lie.links.get(number, ()) and lie.strips[number - 1] == strip:
            runs[-1] += (number,)
        else:
            runs.append((number,))
    return runs


def _links(sheets: SheetPlan) -> Links:
    """For every sheet its neighbours, and the two marks farthest apart that both carry, or what stands for them."""
    number = {sheet.name: at for at, sheet in enumerate(sheets.sheets)}
    shared: dict[frozenset[str], list[Point]] = defaultdict(list)
    for mark in sheets.marks:
        for pair in combinations(mark.sheets, 2):
            shared[frozenset(pair)].append((mark.x, mark.y))
    return linked(
        (number[join.under], number[join.over], ends_held(join.line, found, sheets.hides))
        for join in sheets.joins
        for found in [shared[frozenset((join.under, join.over))]]
    )


def linked(joins: Iterable[tuple[int, int, Ends]]) -> Links:
    """For every sheet those that it is joined to, with the two points by which they are brought to meet."""
    links: Links = defaultdict(dict)
    for one, two, ends in joins:
        links[one][two] = links[two][one] = ends
    return links


def _laid(runs: Sequence[Run], links: Links, rows: bool | None, firm: float) -> Iterator[Block]:
    """The blocks, each laid when it meets enough of what is there; the marks of a row count by x, of a column by y, of
    neither by what is more."""
    run_of = {sheet: run for run in runs for sheet in run}
    waiting = {run: at for at, run in enumerate(runs)}
    met: dict[Run, list[Meeting]] = {}
    ready: list[tuple[Rank, Run]] = []  # a heap of what could be laid now; a block ranks ever higher as it meets more
    since: dict[Run, int] = {}
    pieces = 0
    while waiting:
        while ready and ready[0][1] not in waiting:
            heappop(ready)
        run = ready[0][1] if ready else next(iter(waiting))
        del waiting[run]
        laid = _outermost(met.pop(run, ()))
        pieces += laid is None
        yield Block(run, tuple(_fit(links, one, two) for one, two in pairwise(run)), laid, pieces)
        for other in _meet(run, links, run_of, waiting, met):
            rank = _rank(waiting[other], since.setdefault(other, len(since)), met[other], rows, firm)
            heappush(ready, (rank, other))


def _meet(
    run: Run, links: Links, run_of: Mapping[int, Run], waiting: Mapping[Run, int], met: dict[Run, list[Meeting]]
) -> Iterable[Run]:
    """The blocks that wait and meet this one, which is there now; their marks are added to those `met`."""
    found: dict[Run, None] = {}
    for under in run:
        for over, ends in links[under].items():
            if (other := run_of[over]) in waiting:
                found[other] = None
                met.setdefault(other, []).extend((x, y, under, over) for x, y in ends)
    return found


def _rank(place: int, since: int, met: Sequence[Meeting], rows: bool | None, firm: float) -> Rank:
    """Least for the block to be laid first: those held firmly in their order, then the one with its marks farthest
    apart, of equals the one that has met something for longest."""
    axes = (0, 1) if rows is None else (0 if rows else 1,)
    places = [[mark[axis] for mark in met] for axis in axes]
    apart = max([max(along) - min(along) for along in places])
    return (0, place, 0) if apart >= firm else (1, -round(apart, ALIKE), since)


def _fit(links: Links, under: int, over: int) -> Fit:
    first, last = links[under][over]
    return Fit((*first, under, over), (*last, under, over))


def _outermost(met: Sequence[Meeting]) -> Fit | None:
    """The two marks farthest apart, whichever way; None where there are none."""
    if not met:
        return None
    if len(met) == PAIR:
        return Fit(*met)
    if len(met) > FEW:
        outer = _hull({mark[:2] for mark in met})
        met = [mark for mark in met if mark[:2] in outer]
    return Fit(*max(combinations(met, 2), key=lambda pair: round(math.dist(pair[0][:2], pair[1][:2]), ALIKE)))


def _hull(points: Iterable[Point]) -> set[Point]:
    """The corners of the outline about all points, between which are the two farthest apart (A. M. Andrew, 1979, from
    memory)."""
    found: set[Point] = set()
    for way in (1, -1):
        chain: list[Point] = []
        for x, y in sorted(points)[::way]:
            while len(chain) > 1:
                (ax, ay), (bx, by) = chain[-2:]
                if (bx - ax) * (y - ay) - (by - ay) * (x - ax) > 0.0:
                    break
                chain.pop()
            chain.append((x, y))
        found.update(chain)
    return found
