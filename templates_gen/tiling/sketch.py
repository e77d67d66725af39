"""Sheets as a search has them, without pages, names or marks, and what is asked about their error.

Here everything is seen from the group's corner, as patches are, so that a wall has the same sheets wherever it hangs.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from typing import NamedTuple

from templates_gen.base.geometry import TOLERANCE, Rect, Size
from templates_gen.base.record import Record, replace
from templates_gen.tiling.cells import Cell, CellPlan
from templates_gen.tiling.covered import cross_points
from templates_gen.tiling.joins import LEAST_JOIN
from templates_gen.tiling.laid import TAPED, Laid
from templates_gen.tiling.patches import DIGITS, Patch, rounded, snapped
from templates_gen.tiling.registering import Ends, end_marks, ends_held
from templates_gen.tiling.searching import Judged
from templates_gen.tiling.sheet import Given, SheetPlan
from templates_gen.tiling.spine import Asked
from templates_gen.tiling.weaving import Meet, woven

HALFWAY = 1e-9
"""mm that sides are moved before they are rounded: one halfway between two roundings, as the middle of two rounded
sides is, then goes the same way wherever the group hangs.  Our own design."""


class Sketch(NamedTuple):
    """Sheets strip by strip: their cells with their strips; and which is joined to which, with the two points by which
    they are brought to meet.  `rows` and `spine` as a plan of cells has them."""

    cells: Sequence[Cell]
    joins: Sequence[tuple[int, int, Ends]]
    rows: bool
    spine: bool


Judge = Callable[[Sketch, float], Judged]
"""By how much all neighbours of a wall together err above their limit (mm); 0 where none does.  Above a second number
it need not be exact."""


class Held(Record, frozen=True):
    """How the error of sheets is known: that of the worst neighbours (mm), who judges sketches of sheets that lie on
    pages as these do by a limit (mm), and how many times the error of strips with whole edges the limit is."""

    error: Callable[[SheetPlan], float]
    judge: Callable[[SheetPlan, float], Judge]
    times: float


class Weaver:
    """Patches of one paper made into sheets and asked for their error; what was asked is kept.

    With `strips` the patches are some of these, and keep their strips; else they are put into new ones, in rows or in
    columns, whichever errs less.
    """

    def __init__(self, given: Given, judge: Judge, asked: Asked, rows: bool, strips: CellPlan | None = None) -> None:
        self.given, self.judge, self.asked, self.rows = given, judge, asked, rows
        self._strips = {seen(given, cell.rect): cell for cell in strips.cells} if strips else None
        self._upright = sizes(given)[0]
        self._target = seen(given, asked.boxes[0])
        self._known: dict[frozenset[Patch], tuple[Judged, bool]] = {}
        self._lines: dict[Rect, bool] = {}
        self._joins: dict[tuple[Patch, Patch], Ends] = {}

    def cells(self, laid: Laid) -> CellPlan:
        """The patches as cells with their strips, as they are taped (wall mm)."""
        self.excess(laid)
        rows = self._known[frozenset(laid.meets)][1]
        cells = self._sketch(laid, rows).cells
        x, y = self.given.plan.group.x0, self.given.plan.group.y0
        whole = snapped([rounded(cell.rect) for cell in cells])
        placed = (replace(cell, rect=rect.shifted(x, y)) for cell, rect in zip(cells, whole, strict=True))
        are_rows = self.rows if self._strips else not rows
        return CellPlan(tuple(placed), are_rows, self.given.printables[0], self._strips is None)

    def excess(self, laid: Laid, enough: float = math.inf) -> Judged:
        """By how much they err above the limit (mm), or more than `enough`, and where most."""
        key = frozenset(laid.meets)
        if key in self._known:
            return self._known[key][0]
        best = self.judge(self._sketch(laid, self.rows), enough), self.rows
        if best[0].over and self._strips is None:
            more = min(best[0].over, enough)
            best = min(best, (self.judge(self._sketch(laid, not self.rows), more), not self.rows))
        if best[0].over <= enough:
            self._known[key] = best
        return best[0]

    def _sketch(self, laid: Laid, rows: bool) -> Sketch:
        patches = sorted(laid.meets)
        number = {patch: at for at, patch in enumerate(patches)}
        meets = [
            Meet(number[other], at, met.upright, met.length)
            for at, patch in enumerate(patches)
            for other, met in laid.meets[patch].items()
            if met.over and met.length >= LEAST_JOIN
        ]
        cells = self._placed(patches, meets, rows)
        place = {cell.rect: at for at, cell in enumerate(cells)}
        in_order = [place[Rect(*patch)] for patch in patches]
        joins = sorted(
            (in_order[one], in_order[two], self._ends(patches[one], patches[two], upright))
            for one, two, upright, _ in meets
        )
        return Sketch(cells, joins, self.rows if self._strips else not rows, self._strips is None)

    def _placed(self, patches: Sequence[Patch], meets: Sequence[Meet], rows: bool) -> Sequence[Cell]:
        """The patches as cells, strip by strip."""
        if self._strips is not None:
            kept = [replace(self._strip(patch), rect=Rect(*patch)) for patch in patches]
            return sorted(kept, key=lambda cell: (cell.strip, cell.place))
        x0, y0, x1, y1 = self._target
        start = next(
            at for at, (a0, b0, a1, b1) in enumerate(patches)
            if a0 <= x0 + TOLERANCE and b0 <= y0 + TOLERANCE and x1 <= a1 + TOLERANCE and y1 <= b1 + TOLERANCE
        )  # fmt: skip
        taped = [meet for meet in meets if meet.length >= TAPED]
        return woven([Rect(*patch) for patch in patches], start, self._on_line, rows, self._upright, taped)

    def _strip(self, patch: Patch) -> Cell:
        """The cell of the strips that a patch is, or was cut from."""
        assert self._strips is not None
        x, y = patch[0] + patch[2], patch[1] + patch[3]
        inside = (c for (x0, y0, x1, y1), c in self._strips.items() if 2 * x0 < x < 2 * x1 and 2 * y0 < y < 2 * y1)
        return self._strips.get(patch) or next(inside)

    def _on_line(self, cell: Rect) -> bool:
        """Whether a cell holds the level line, or the pitch line, from side to side."""
        known = self._lines.get(cell)
        if known is None:
            corner = self.given.plan.group
            ends = [self.asked.line_at(x + corner.x0) - corner.y0 for x in (cell.x0, cell.x1)]
            known = self._lines[cell] = cell.y0 <= min(ends) and max(ends) <= cell.y1
        return known

    def _ends(self, one: Patch, two: Patch, upright: bool) -> Ends:
        """The two points by which a sheet is brought to meet another, which lies to its right or above it."""
        key = one, two
        known = self._joins.get(key)
        if known is None:
            if upright:
                line = two[0], max(one[1], two[1]), two[0], min(one[3], two[3])
            else:
                line = max(one[0], two[0]), two[1], min(one[2], two[2]), two[1]
            hides = self.given.hides
            marks = cross_points(line, hides, self.given.clear) if hides else end_marks(line)
            known = self._joins[key] = ends_held(line, marks, hides)
        return known


def sizes(given: Given) -> list[Size]:
    """The largest cells, rounded down as patches are rounded, so that none is larger than its page."""
    overlap, part = given.paper.overlap, 10.0**DIGITS
    return [
        (math.floor((area.width - overlap) * part) / part, math.floor((area.height - overlap) * part) / part)
        for area in given.printables
    ]


def seen(given: Given, rect: Rect) -> Patch:
    """The rectangle as it is seen from the group's corner, so that a plan moves along with its group."""
    return rounded(rect.shifted(HALFWAY - given.plan.group.x0, HALFWAY - given.plan.group.y0))
