"""The sheet plan: which rectangles of the wall go on which sheets, with as few sheets as can be found.

Cuts divide the wall into cells, one a sheet; what a sheet shows is its cell grown by half the overlap on
every side.  The plan knows rectangles only, nothing of frames or of files.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import lru_cache
from math import inf

from templates_gen.base.adding import added
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect, bounds
from templates_gen.base.record import Record
from templates_gen.tiling.align import aligned
from templates_gen.tiling.joins import JOIN_MIN, Rows, shared_sides
from templates_gen.tiling.layouts import layouts, patchwork
from templates_gen.tiling.strips import MOST_CELLS, SLACK, Box, Boxes

_PLACES = 7
"""Decimals of a mm that places are rounded to where plans are compared.  Our own design, no source."""

LARGER = "choose larger paper or smaller margins"
CUT = 'let the sheets be cut, trim = "cut", which takes less room around every mark'


class Clearance(Record, frozen=True):
    """How far a whole item stays from the left, bottom, right and top side of its cell (mm)."""

    left: float
    bottom: float
    right: float
    top: float


class Printable(Record, frozen=True):
    """The part of a page that can carry ink (mm); `turned` when the page lies on its side."""

    width: float
    height: float
    turned: bool


class Cell(Record, frozen=True):
    """A sheet's share of the wall (mm), the number of its strip and its place in the strip, both from 0.

    Strips are counted from the top when they are rows and from the left when they are columns; places from
    the left in a row and from the top in a column.  `turned` where it is shown on its side on an upright page.
    """

    rect: Rect
    strip: int
    place: int
    turned: bool = False


class CellPlan(Record, frozen=True):
    """The cells in reading order, whether strips are rows, and the page they are meant for.

    `spine` where the first strip is one along the level line, and the others go on from it.
    """

    cells: tuple[Cell, ...]
    rows: bool
    printable: Printable
    spine: bool = False


_Both = tuple[Boxes, Boxes]
"""Boxes, and the same ones with the axes swapped."""


class _Way(Record, frozen=True):
    """One way to use the paper: a page and the direction of the strips, with the largest cell (mm)."""

    printable: Printable
    rows: bool
    width: float
    height: float


def plan_cells(
    whole: Sequence[Rect],
    divisible: Sequence[Rect],
    printables: Sequence[Printable],
    overlap: float,
    clear: Clearance,
    connected: bool,
    lines: Sequence[Rect] = (),
    helps: str = LARGER,
    most: int | None = None,
) -> CellPlan:
    """The plan with the fewest sheets that keeps whole items in one cell and covers divisible ones (mm).

    `lines` are long thin items that a cut may cross but never run along: it stays out of their thickness.  With
    `connected` the cells make one piece, joined along sides of at least `JOIN_MIN`.  Ties go to the upright page,
    then to fewer joins, to whole items far from cuts, and to symmetry.  Raises InputError when a whole item does not
    fit a page or marks stand too close for any cut, with what `helps`, or when too many sheets would be needed.

    With `most` any plan will do that has no more cells; where there is none, any at all.
    """
    if not whole and not divisible and not lines:
        return CellPlan((), True, printables[0])
    around, whole, boxes, both = _seen_from_corner(tuple(whole), tuple(divisible), tuple(lines), clear)
    # short strips first: they are quickly planned, and longer ones given up once they take more sheets
    ways = sorted(_ways(boxes, printables, overlap, helps), key=lambda way: way.rows == (around.width > around.height))
    for dense in (False, True):
        if most is None or dense:
            best = _best(both, ways, connected, dense, lambda rows: _merits(rows, whole, around.width / 2))
        else:
            best = next(_any(both, ways, connected, most), None)
        if best:
            way, rows = best
            rows = _aligned(rows, way, boxes)
            placed = [[c.shifted(around.x0, around.y0) for c in row] for row in rows]
            return CellPlan(_numbered(placed, way.rows), way.rows, way.printable)
    if around.width * around.height > MOST_CELLS * ways[0].width * ways[0].height:
        raise InputError("paper", f"more than {MOST_CELLS:,} sheets would be needed", LARGER)
    problem = "marks stand so close together that no straight cuts part them into sheets with each mark in one piece"
    raise InputError("paper", problem, f"{helps}, or move marks apart that almost touch")


def _best(
    boxes: _Both,
    ways: Sequence[_Way],
    connected: bool,
    dense: bool,
    merits: Callable[[Rows], tuple[float, ...]],
) -> tuple[_Way, Rows] | None:
    """The best of all plans: the fewest cells, then the fewest slivers too narrow to be taped well, then the upright
    page, then the merits, then rows."""
    best: list[tuple[_Way, Rows]] = []
    least: tuple[int, float, bool] = (MOST_CELLS, inf, True)
    for way in ways:
        # a turned page that saves no sheet is no better than an upright one without slivers
        most = least[0] - 1 if way.printable.turned and least[1:] == (0, False) else least[0]
        for rows in _tries(boxes, way, connected, most, dense):
            cells = [cell for row in rows for cell in row]
            slivers = sum(min(cell.width, cell.height) < JOIN_MIN for cell in cells)
            rank = (len(cells), slivers, way.printable.turned)
            if rank < least:
                best, least = [], rank
            if rank == least:
                best.append((way, rows))
    return min(best, key=lambda found: (*merits(found[1]), not found[0].rows), default=None)


def _any(boxes: _Both, ways: Sequence[_Way], connected: bool, most: int) -> Iterator[tuple[_Way, Rows]]:
    """Plans as they are found: those of no more than `most` cells, then all."""
    for limit in (most, MOST_CELLS):
        for way in ways:
            yield from ((way, rows) for rows in _tries(boxes, way, connected, limit, dense=False))


@lru_cache(maxsize=2)  # of a roll the same is asked for with one length of page after the other
def _seen_from_corner(
    whole: tuple[Rect, ...], divisible: tuple[Rect, ...], lines: tuple[Rect, ...], clear: Clearance
) -> tuple[Rect, list[Rect], list[Box], _Both]:
    """The rectangle about all items, the whole ones, and everything a cell has to hold, seen from its corner.

    A whole item comes with its clearances, which makes them part of its size.  All is rounded, so that a plan moves
    along with its items.
    """
    around = bounds([*whole, *divisible, *lines])
    x, y = around.x0, around.y0
    moved, some, thin = (
        [Rect(*[round(side, _PLACES) for side in (r.x0 - x, r.y0 - y, r.x1 - x, r.y1 - y)]) for r in items]
        for items in (whole, divisible, lines)
    )
    boxes = [
        *(Box(r.x0 - clear.left, r.y0 - clear.bottom, r.x1 + clear.right, r.y1 + clear.top, True, True) for r in moved),
        *(Box(r.x0, r.y0, r.x1, r.y1, False, False) for r in some),
        *(Box(r.x0, r.y0, r.x1, r.y1, r.height >= r.width, r.height < r.width) for r in thin),
    ]
    return around, moved, boxes, (Boxes(boxes), Boxes(b.turned() for b in boxes))


def _ways(boxes: Sequence[Box], printables: Sequence[Printable], overlap: float, helps: str) -> Iterator[_Way]:
    """Every page on which each whole item fits, with strips as rows and as columns."""
    wide = max((b.x1 - b.x0 for b in boxes if b.firm_x), default=0.0)
    high = max((b.y1 - b.y0 for b in boxes if b.firm_y), default=0.0)
    need = max(wide, JOIN_MIN), max(high, JOIN_MIN)
    step = overlap - SLACK
    fitting = [p for p in printables if p.width - step >= need[0] and p.height - step >= need[1]]
    if not fitting:
        offers = " or ".join(f"{p.width - overlap:.0f} × {p.height - overlap:.0f} mm" for p in printables)
        problem = f"a sheet must hold {need[0]:.0f} × {need[1]:.0f} mm in one piece, but gives {offers}"
        raise InputError("paper", problem, helps)
    for page in fitting:
        width, height = page.width - step, page.height - step
        yield _Way(page, True, width, height)
        yield _Way(page, False, height, width)


def _tries(both: _Both, way: _Way, connected: bool, most: int, dense: bool) -> Iterator[Rows]:
    """Plans for one way of using the paper; when strips are columns the boxes have their axes swapped."""
    boxes = both[0] if way.rows else both[1]
    if dense:
        section = patchwork(boxes, way.width, way.height, connected)
        found: Iterable[Rows] = [section] if section else ()
    else:
        found = layouts(boxes, way.width, way.height, connected, most)
    for rows in found:
        yield rows if way.rows else _swapped(rows)


def _aligned(rows: Rows, way: _Way, boxes: Sequence[Box]) -> Rows:
    """The rows (or columns) with cuts that nearly meet brought together."""
    if way.rows:
        return aligned(rows, boxes, way.width)
    turned = aligned(_swapped(rows), [b.turned() for b in boxes], way.width)
    return _swapped(turned)


def _swapped(rows: Rows) -> Rows:
    return [[Rect(c.y0, c.x0, c.y1, c.x1) for c in row] for row in rows]


def _merits(rows: Rows, whole: Sequence[Rect], middle: float) -> tuple[float, ...]:
    """What decides between equally many cells, the smaller the better; lengths to a thousandth of a mm."""
    cells = [c for row in rows for c in row]
    joins = sum(1 for _ in shared_sides(cells))
    least = _least_distance(cells, whole) if whole else 0.0
    aside = abs(added(c.cx for c in cells) / len(cells) - middle)
    return (joins, -round(least, 3), round(aside, 3))


def _least_distance(cells: Sequence[Rect], whole: Sequence[Rect]) -> float:
    """The least distance of a whole item from a side of the cell that holds it (mm)."""
    by_left = sorted(cells)
    least = inf
    for item in whole:
        before = by_left[: bisect_right(by_left, item.x0 + SLACK, key=lambda c: c.x0)]
        cell = next(c for c in reversed(before) if c.holds(item))
        sides = (item.x0 - cell.x0, item.y0 - cell.y0, cell.x1 - item.x1, cell.y1 - item.y1)
        least = min(least, *sides)
    return least


def _numbered(rows: Rows, are_rows: bool) -> tuple[Cell, ...]:
    """The cells with their numbers, from top to bottom and from left to right."""
    filled = [row for row in rows if row]
    cells = []
    for strip, row in enumerate(reversed(filled) if are_rows else filled):
        for place, rect in enumerate(row if are_rows else reversed(row)):
            cells.append(Cell(rect, strip, place))
    return tuple(sorted(cells, key=lambda c: (-round(c.rect.y1, 3), c.rect.x0)))
