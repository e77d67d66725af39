"""The finished sheet plan: what part of the wall every page shows, and how the pages are joined."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import permutations

from templates_gen.arranging.plan import Plan
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.base.grid_index import Near
from templates_gen.base.record import Record
from templates_gen.drawing.items import MM_TO_POINTS, POINT, Matrix, shifted
from templates_gen.drawing.sizes import REGISTRATION, RULER_END, TITLE_DEPTH
from templates_gen.job.accuracy import MATCH, firm
from templates_gen.job.model import Paper
from templates_gen.printer.correction import correction
from templates_gen.printer.profile import Printer
from templates_gen.tiling.cells import CUT, LARGER, Cell, CellPlan, Clearance, Printable, plan_cells
from templates_gen.tiling.covered import Covered, covered, cross_points, uncut_clearance
from templates_gen.tiling.demand import demand
from templates_gen.tiling.joins import shared_sides
from templates_gen.tiling.large_pages import fitted
from templates_gen.tiling.slanting import meeting_sd

LEAST_JOIN = 20.0
"""mm.  Sheets that meet along less than this are not taped to each other there: two registration marks would not fit.
Our own design, no source."""

MARK_DISTANCE = 9.0
"""mm between two different registration marks, so that neither hides the other.  Our own design, no source."""

Point = tuple[float, float]


class Page(Record, frozen=True):
    """The paper as it lies: size in whole points, printable rectangle in mm from its lower left corner.

    The size is rounded down to whole points: a page a hair larger than the paper is printed scaled down.  Page mm are
    true millimetres on the printed paper; `matrix` brings them to PDF points, a printer's correction included.
    """

    width: int
    height: int
    printable: Rect
    matrix: Matrix = MM_TO_POINTS


class Sheet(Record, frozen=True):
    """One page of the template.

    `cell` is the sheet's own part of the wall, up to its trim lines; `window` is the cell and half of every shared
    strip, all that the sheet shows (wall mm); `inner` is the part of the cell that is free for whole marks.
    `to_page` brings wall mm to PDF points.  `strip` is the number of its row or column.
    """

    name: str
    strip: int
    cell: Rect
    window: Rect
    inner: Rect
    to_page: Matrix


class Join(Record, frozen=True):
    """Two sheets along one trim line from (x0, y0) to (x1, y1) on the wall; `over` is cut there, laid on `under`.

    Where nothing is cut it is the middle of the strip that both sheets show.
    """

    over: str
    under: str
    x0: float
    y0: float
    x1: float
    y1: float

    @property
    def upright(self) -> bool:
        return self.x0 == self.x1


class RegistrationMark(Record, frozen=True):
    """A mark at one point of the wall that is printed on all of `sheets`."""

    name: str
    x: float
    y: float
    sheets: tuple[str, ...]


class SheetPlan(Record, frozen=True):
    """Every sheet strip by strip, as taped, their joins and registration marks, and the page they are printed on.

    `hides` is there where nothing is cut: what a sheet's margin hides of the one under it.  The marks are then where
    two lines cross that go on from sheet to sheet.  Two marks `firm` mm apart hold a sheet firmly (accuracy.py).
    """

    paper: Paper
    page: Page
    sheets: tuple[Sheet, ...]
    joins: tuple[Join, ...]
    marks: tuple[RegistrationMark, ...]
    rows: bool
    hides: Covered | None = None
    printer: Printer | None = None
    firm: float = firm(MATCH)

    def sheet(self, name: str) -> Sheet:
        """The sheet of this name."""
        return next(sheet for sheet in self.sheets if sheet.name == name)


def plan_sheets(plan: Plan, paper: Paper, printer: Printer | None = None) -> SheetPlan:
    """The sheets that show what `paper.cover` asks for, corrected for the printer where one is given.

    Every nail mark and the target lie whole on one sheet, clear of trim line and shared strip; everything else is
    on some sheet.  Raises InputError when the paper is too small for that.
    """
    paper = fitted(paper, lambda size: len(_cells(plan, size, printer)[1].cells))
    page, cells, clear, hides = _cells(plan, paper, printer)
    in_order = sorted(cells.cells, key=lambda cell: (cell.strip, cell.place))  # as they are taped
    sheets = tuple(_sheet(cell, cells.rows, page, paper.overlap, clear) for cell in in_order)
    joins = tuple(_joins(sheets))
    marks = _crossing_marks(joins, hides, clear) if hides else _registration_marks(sheets, joins)
    held = firm(meeting_sd(plan.job.accuracy, hides))
    return SheetPlan(paper, page, sheets, joins, tuple(marks), cells.rows, hides, printer, held)


def _cells(plan: Plan, paper: Paper, printer: Printer | None) -> tuple[Page, CellPlan, Clearance, Covered | None]:
    """The page, the cells of the wall, and what whole items keep clear of on this paper."""
    ways = (False,) if paper.kind == "one piece" else (False, True)
    pages = {turned: page_of(paper, turned, printer) for turned in ways}
    printables = [Printable(page.printable.width, page.printable.height, turned) for turned, page in pages.items()]
    clear, hides = clearance(paper.overlap), None
    if paper.trim == "none":
        hides = covered([page.printable for page in pages.values()], paper.overlap)
        clear = uncut_clearance(clear, hides)
    connected, helps = paper.cover != "nails", f"{LARGER}, or {CUT}" if hides else LARGER

    def planned(spare: bool) -> CellPlan:
        need = demand(plan, paper.cover, clear, hides, spare)
        return plan_cells(need.whole, need.divisible, printables, paper.overlap, clear, connected, need.lines, helps)

    try:
        cells = planned(spare=False)
    except InputError:
        if hides is None:
            raise
        cells = planned(spare=True)
    return pages[cells.printable.turned], cells, clear, hides


def clearance(overlap: float) -> Clearance:
    """What the rulers, the title lines and half the shared strip of a join take on each side of a sheet (mm)."""
    half = overlap / 2
    return Clearance(max(RULER_END, half), max(RULER_END, half), half, max(TITLE_DEPTH, half))


def page_of(paper: Paper, turned: bool, printer: Printer | None = None) -> Page:
    """The page, upright or on its side; a printer may turn it either way, so both short sides keep the wider margin."""
    top, right, bottom, left = paper.margin
    width, height = paper.width, paper.height
    if turned:
        width, height = height, width
        top, right, bottom, left = max(left, right), max(top, bottom), max(left, right), max(top, bottom)
    points = math.floor(width / POINT + TOLERANCE), math.floor(height / POINT + TOLERANCE)
    printable = Rect(left, bottom, points[0] * POINT - right, points[1] * POINT - top)
    if printer is None:
        return Page(*points, printable)
    matrix, reach = correction(printer, printable, lying=width > height)
    return Page(*points, reach, matrix)


def _sheet(cell: Cell, rows: bool, page: Page, overlap: float, clear: Clearance) -> Sheet:
    rect, window = cell.rect, cell.rect.grown(overlap / 2)
    column, row = (cell.place, cell.strip) if rows else (cell.strip, cell.place)
    inner = Rect(rect.x0 + clear.left, rect.y0 + clear.bottom, rect.x1 - clear.right, rect.y1 - clear.top)
    to_page = shifted(page.matrix, page.printable.x0 - window.x0, page.printable.y0 - window.y0)
    return Sheet(f"{letters(column)}{row + 1}", cell.strip, rect, window, inner, to_page)


def letters(number: int) -> str:
    """A, B, … Z, AA, AB, … for 0, 1, …, as columns of a map grid are named."""
    name = ""
    number += 1
    while number:
        number, rest = divmod(number - 1, 26)
        name = chr(ord("A") + rest) + name
    return name


def _joins(sheets: Sequence[Sheet]) -> Iterator[Join]:
    """The trim lines; the sheet to the right or above is cut and laid over the other."""
    for under, over, length in sorted(shared_sides([sheet.cell for sheet in sheets])):
        line = sheets[under].cell.meet(sheets[over].cell)
        if line and length >= LEAST_JOIN:
            yield Join(sheets[over].name, sheets[under].name, line.x0, line.y0, line.x1, line.y1)


def _registration_marks(sheets: Sequence[Sheet], joins: Sequence[Join]) -> Iterator[RegistrationMark]:
    """Marks at the two extreme ends of every join: its turn, not its gap, is what spoils a template."""
    taken: Near[Point] = Near()
    points: dict[Point, None] = {}
    for join in joins:
        for end, other in permutations(((join.x0, join.y0), (join.x1, join.y1)), 2):
            point = _mark_point(end, other, taken)
            if point not in points:
                points[point] = None
                taken.add(Rect(*point, *point), point)
    windows = Near((sheet.window, sheet) for sheet in sheets)
    for number, (x, y) in enumerate(points):
        mark = Rect.about(x, y, 2 * REGISTRATION, 2 * REGISTRATION)
        names = tuple(sheet.name for sheet in windows.about(mark) if sheet.window.holds(mark))
        yield RegistrationMark(letters(number).lower(), x, y, names)


def _crossing_marks(joins: Sequence[Join], hides: Covered, clear: Clearance) -> Iterator[RegistrationMark]:
    """Where the lines cross by which sheets are taped that nobody cuts."""
    points = (
        (join, *point) for join in joins for point in cross_points((join.x0, join.y0, join.x1, join.y1), hides, clear)
    )
    for number, (join, x, y) in enumerate(points):
        yield RegistrationMark(letters(number).lower(), x, y, (join.over, join.under))


def _mark_point(end: Point, other: Point, taken: Near[Point]) -> Point:
    """The end of a join, or the nearest point along it to the other end that keeps away from other marks."""
    length = math.dist(end, other)
    for step in range(int(length / 2)):
        x, y = (one + step / length * (two - one) for one, two in zip(end, other, strict=True))
        around = taken.about(Rect.about(x, y, 2 * MARK_DISTANCE, 2 * MARK_DISTANCE))
        near = [point for point in around if math.dist(point, (x, y)) < MARK_DISTANCE]
        same = [point for point in near if math.dist(point, (x, y)) < TOLERANCE]
        if same or not near:
            return same[0] if same else (x, y)
    return end
