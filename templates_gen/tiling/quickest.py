"""The quickest sheets that hold their frames nearly as exactly as strips of sheets with every edge do.

The error of a plan is worked out elsewhere and asked for here as a number (`Held`); what it may be is a little more
than that of the strips.  Where the search finds nothing that holds it, sheets are taken from the strips for as long as
what is left does.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence

from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record, replace
from templates_gen.tiling.cells import CellPlan
from templates_gen.tiling.demand import Demand
from templates_gen.tiling.laid import Laid
from templates_gen.tiling.linked import asked_of
from templates_gen.tiling.patches import DIGITS, Ground, Patch, Wanted, rounded, snapped
from templates_gen.tiling.searching import Found, lighter, quicker
from templates_gen.tiling.sheet import Given, SheetPlan, finished
from templates_gen.tiling.spine import Asked
from templates_gen.tiling.weaving import woven

STEPS, MOST_LOOKED_AT = 400, 36_000
"""Steps of a search, and how many sheets are looked at in all of them: so many steps less where there are many sheets.
A second for twelve frames.  Our own design."""

ROUNDS, STRICT = 3, 0.6
"""Searches one after the other while none has found what holds the limit, and the share of the first from which later
ones begin: half as long, and stricter with what errs too much.  Our own design, no source."""

BIT = 20.0
"""mm between the bits of a long line that are asked for: paper nearer to other paper than that is joined to it or
counts as in its way.  Our own design, no source."""

WORTH = 60.0
"""Seconds that searched sheets have to save, for a spine with branches reads at once.  Our own design, no source."""


class Held(Record, frozen=True):
    """How the error of sheets is known: that of the worst neighbours (mm), and how many times that of strips with whole
    edges it may be.  Above a number that is given with the sheets, it need not be the very worst."""

    error: Callable[[SheetPlan, float], float]
    times: float


class Weaver:
    """Patches of one paper made into sheets and asked for their error; what was asked is kept.

    With `strips` the patches are some of these, and keep their strips; else they are put into new ones, in rows or in
    columns, whichever errs less.
    """

    def __init__(
        self, given: Given, held: Held, limit: float, asked: Asked, rows: bool, strips: CellPlan | None = None
    ) -> None:
        self.given, self.held, self.limit, self.asked, self.rows = given, held, limit, asked, rows
        self._strips = {rounded(cell.rect): cell for cell in strips.cells} if strips else None
        self._known: dict[tuple[Patch, ...], tuple[float, bool]] = {}

    def cells(self, patches: Sequence[Patch]) -> CellPlan:
        """The patches as cells with their strips, as they are taped."""
        self.excess(patches)
        return self._woven(patches, self._known[tuple(sorted(patches))][1])

    def _woven(self, patches: Sequence[Patch], rows: bool) -> CellPlan:
        if self._strips is not None:
            kept = tuple(self._strips[patch] for patch in sorted(patches))
            return CellPlan(kept, self.rows, self.given.printables[0])
        cells = snapped(sorted(patches))
        start = next(at for at, cell in enumerate(cells) if cell.holds(self.asked.boxes[0]))
        placed = woven(cells, start, self._on_line, rows, _sizes(self.given)[0])
        return CellPlan(placed, not rows, self.given.printables[0], True)

    def excess(self, patches: Sequence[Patch], enough: float = math.inf) -> float:
        """How far their error is above the limit (mm), or above `enough`."""
        key = tuple(sorted(patches))
        if key in self._known:
            return self._known[key][0]
        first = self._excess(patches, self.rows, enough)
        ways = [(first, self.rows)]
        if first and self._strips is None:
            ways.append((self._excess(patches, not self.rows, min(first, enough)), not self.rows))
        best = min(ways)
        if best[0] <= enough:
            self._known[key] = best
        return best[0]

    def _excess(self, patches: Sequence[Patch], rows: bool, enough: float) -> float:
        error = self.held.error(finished(self.given, self._woven(patches, rows)), self.limit + enough)
        return max(0.0, error - self.limit)

    def _on_line(self, cell: Rect) -> bool:
        asked = self.asked
        ends = asked.line_at(cell.x0), asked.line_at(cell.x1)
        return cell.y0 <= min(ends) and max(ends) <= cell.y1


def quickest(
    given: Given, need: Demand, held: Held, limit: float, spine: CellPlan | None, strips: CellPlan
) -> CellPlan:
    """The quickest cells for what is asked of linked paper, with no error above `limit` (mm).

    `spine` is a plan to begin with, `strips` is the one that holds every mark; it is what is left where nothing else
    holds the limit.
    """
    asked = asked_of(given.plan, need, given.clear)
    ground = Ground(_wanted(asked, _sizes(given)))
    weaver = Weaver(given, held, limit, asked, rows=False)
    found = list(_from_spine(ground, weaver, spine)) if spine else []
    if not found:
        found = list(_from_strips(ground, given, held, limit, asked, strips))
    if not found:
        return _as_laid(strips, given)
    best, by = min(found, key=lambda one: one[0].seconds)
    return by.cells(best.laid.patches)


def _from_spine(ground: Ground, weaver: Weaver, spine: CellPlan) -> Iterator[tuple[Found, Weaver]]:
    """What the search finds from the spine, if it holds the limit; the spine, if that is hardly slower."""
    start = _found(ground, weaver, spine)
    if start is None:
        return
    best = quicker(start, _steps(start), weaver.excess)
    for seed in range(1, ROUNDS):
        if best.excess:
            best = quicker(best, _steps(best) // 2, weaver.excess, seed, STRICT)
    best = lighter(best, weaver.excess)
    if not start.excess and start.seconds - best.seconds < WORTH and start.laid.short_joins == 0:
        best = start
    if not best.excess:
        yield best, weaver


def _from_strips(
    ground: Ground, given: Given, held: Held, limit: float, asked: Asked, strips: CellPlan
) -> Iterator[tuple[Found, Weaver]]:
    """What is left of the strips without all that is not needed, and what the search finds from there."""
    ground = ground.of_what_is_held([rounded(cell.rect) for cell in strips.cells])
    weaver = Weaver(given, held, limit, asked, strips.rows)
    start = _found(ground, weaver, strips)
    if start is not None and not start.excess:
        light = lighter(start, weaver.excess)
        yield lighter(quicker(light, _steps(light), weaver.excess), weaver.excess), weaver
        return
    as_laid = _as_laid(strips, given)
    weaver = Weaver(given, held, limit, asked, strips.rows, as_laid)
    start = _found(ground, weaver, as_laid)
    if start is not None and not start.excess:
        yield lighter(start, weaver.excess), weaver


def _as_laid(strips: CellPlan, given: Given) -> CellPlan:
    """The strips numbered as they are laid: rows from the foot up; each cell turned if its page lies on its side."""
    last = max(cell.strip for cell in strips.cells)
    cells = (
        replace(cell, strip=last - cell.strip if strips.rows else cell.strip, turned=strips.printable.turned)
        for cell in strips.cells
    )
    return replace(strips, cells=tuple(cells), printable=given.printables[0])


def _found(ground: Ground, weaver: Weaver, cells: CellPlan) -> Found | None:
    laid = Laid.of(ground, [rounded(cell.rect) for cell in cells.cells])
    if laid is None or not laid.all_held or not laid.one_piece:
        return None
    return Found(laid, weaver.excess(laid.patches))


def _steps(start: Found) -> int:
    return min(STEPS, MOST_LOOKED_AT // len(start.laid.meets))


def _sizes(given: Given) -> list[tuple[float, float]]:
    """The largest cells, rounded down as patches are rounded, so that none is larger than its page."""
    overlap, part = given.paper.overlap, 10.0**DIGITS
    return [
        (math.floor((area.width - overlap) * part) / part, math.floor((area.height - overlap) * part) / part)
        for area in given.printables
    ]


def _wanted(asked: Asked, sizes: Sequence[tuple[float, float]]) -> Wanted:
    """The boxes, and the line bit by bit."""
    count = max(1, round((asked.right - asked.left) / BIT))
    places = (asked.left + (asked.right - asked.left) * at / count for at in range(count + 1))
    line = (Rect(x, asked.line_at(x) - asked.below, x, asked.line_at(x) + asked.above) for x in places)
    return Wanted(tuple(map(rounded, (*asked.boxes, *line))), asked.upright, asked.level, tuple(sizes))
