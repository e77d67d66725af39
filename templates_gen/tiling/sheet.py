"""The finished sheet plan: what part of the wall every page shows, and how the pages are joined."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from string import ascii_uppercase

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record, replace
from templates_gen.drawing.items import Matrix, shifted
from templates_gen.drawing.sizes import BARS_HIGH, BARS_LONG, TITLE_DEPTH
from templates_gen.job.accuracy import MATCH, firm
from templates_gen.job.model import Paper
from templates_gen.job.paper_sizes import on_its_side
from templates_gen.printer.profile import Printer
from templates_gen.tiling.cells import Cell, CellPlan, Clearance, Printable
from templates_gen.tiling.covered import Covered, covered, cross_points, uncut_clearance
from templates_gen.tiling.joins import LEAST_JOIN, shared_sides
from templates_gen.tiling.linked import LINKED
from templates_gen.tiling.page import Page, page_of, turned_page
from templates_gen.tiling.registering import end_marks
from templates_gen.tiling.rulers import RULER_END
from templates_gen.tiling.slanting import meeting_sd


class Sheet(Record, frozen=True):
    """One page of the template.

    `cell` is the sheet's own part of the wall, up to its trim lines; `window` is the cell and half of every shared
    strip, all that the sheet shows (wall mm); `inner` is the part of the cell that is free for whole marks.
    `to_page` brings wall mm to PDF points.  `strip` is the number of its row or column.  `page` is the page it is drawn
    on: the plan's own, or that turned by a quarter so that what the sheet shows of the wall lies on its side.
    """

    name: str
    strip: int
    cell: Rect
    window: Rect
    inner: Rect
    to_page: Matrix
    page: Page


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
    def line(self) -> tuple[float, float, float, float]:
        return self.x0, self.y0, self.x1, self.y1

    @property
    def upright(self) -> bool:
        return self.x0 == self.x1

    @property
    def length(self) -> float:
        return abs(self.x1 - self.x0) + abs(self.y1 - self.y0)


class RegistrationMark(Record, frozen=True):
    """A mark at one point of the wall that is printed on both `sheets` of a join, which is `upright` or level."""

    name: str
    x: float
    y: float
    sheets: tuple[str, ...]
    upright: bool = False

    @property
    def box(self) -> Rect:
        """What the bars of a mark take (wall mm)."""
        along, across = 2 * BARS_LONG, 2 * BARS_HIGH
        return Rect.about(self.x, self.y, *((across, along) if self.upright else (along, across)))


class SheetPlan(Record, frozen=True):
    """Every sheet in the order of taping, their joins and registration marks, and the page they are printed on.

    `hides` is there where nothing is cut: what a sheet's margin hides of the one under it.  The marks are then where
    two lines cross that go on from sheet to sheet.  Two marks `firm` mm apart hold a sheet firmly (accuracy.py).
    `spine` where the first strip is one along the level line, and the others go on from it.  `printed` names the
    sheets that are printed where the others are on older paper, without it all are; `gone` those of the older paper
    that show nothing any more which has to be on it.
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
    spine: bool = False
    printed: tuple[str, ...] | None = None
    gone: tuple[str, ...] = ()

    @property
    def on_these_pages(self) -> tuple[Sheet, ...]:
        """The sheets that are printed."""
        return tuple(sheet for sheet in self.sheets if self.printed is None or sheet.name in self.printed)

    @property
    def linked(self) -> bool:
        """Whether only the nails and what links them is on paper: the strip of the target is the first."""
        return self.paper.cover == LINKED

    def sheet(self, name: str) -> Sheet:
        """The sheet of this name."""
        return next(sheet for sheet in self.sheets if sheet.name == name)


def bars_on_pages(sheets: SheetPlan) -> dict[str, list[Rect]]:
    """The registration marks of every sheet by its name (page mm, as the sheet is read); none where nothing is cut."""
    found: dict[str, list[Rect]] = {sheet.name: [] for sheet in sheets.sheets}
    at = {
        sheet.name: (sheet.page.printable.x0 - sheet.window.x0, sheet.page.printable.y0 - sheet.window.y0)
        for sheet in sheets.sheets
    }
    for mark in sheets.marks if sheets.hides is None else ():
        for name in mark.sheets:
            found[name].append(mark.box.shifted(*at[name]))
    return found


class Given(Record, frozen=True):
    """What sheets are planned for: the wall's plan, the paper, the page as it lies either way, what whole items keep
    clear of, and what a sheet hides where nothing is cut."""

    plan: Plan
    paper: Paper
    printer: Printer | None
    pages: dict[bool, Page]
    clear: Clearance
    hides: Covered | None

    @property
    def printables(self) -> list[Printable]:
        """What a page can carry, upright and on its side."""
        return [Printable(page.printable.width, page.printable.height, on) for on, page in self.pages.items()]


def given(plan: Plan, paper: Paper, printer: Printer | None, mixed: bool = False) -> Given:
    """What the sheets of this plan are planned for on this paper; `mixed`, as linked paper is, one page lies as the
    other, so that sheets both upright and on their sides go on the same pages."""
    ways = (False,) if paper.kind == "one piece" else (False, True)
    pages = {turned: page_of(paper, turned, printer) for turned in ways}
    if (mixed or paper.cover == LINKED) and True in pages:
        pages[True] = turned_page(pages[False])
    clear, hides = clearance(paper.overlap), None
    if paper.trim == "none":
        hides = covered([page.printable for page in pages.values()], paper.overlap)
        clear = uncut_clearance(clear, hides)
    return Given(plan, paper, printer, pages, clear, hides)


def finished(asked: Given, cells: CellPlan) -> SheetPlan:
    """The sheets of these cells strip by strip, with their joins and registration marks; their names do not stay."""
    plan, paper, clear, hides = asked.plan, asked.paper, asked.clear, asked.hides
    linked = paper.cover == LINKED
    page = asked.pages[not linked and cells.printable.turned]
    in_order = sorted(cells.cells, key=lambda cell: (cell.strip, cell.place))
    lying, upright = turned_page(page) if any(cell.turned for cell in in_order) else page, page
    if paper.kind == "one piece" and on_its_side(paper.width, paper.height, plan.job.unit):  # for a narrower roll
        paper = replace(paper, width=paper.height, height=paper.width)
        page = page_of(paper, turned=False)
        upright = turned_page(page)
    sheets = tuple(
        _sheet(cell, str(at), lying if cell.turned else upright, paper, clear) for at, cell in enumerate(in_order, 1)
    )
    joins = tuple(_joins(sheets))
    marks = _crossing_marks(joins, hides, clear) if hides else _registration_marks(joins)
    held = firm(meeting_sd(plan.job.accuracy, hides))
    return SheetPlan(paper, page, sheets, joins, tuple(marks), cells.rows, hides, asked.printer, held, cells.spine)


def clearance(overlap: float) -> Clearance:
    """What the rulers, the title lines and half the shared strip of a join take on each side of a sheet (mm)."""
    half = overlap / 2
    return Clearance(max(RULER_END, half), max(RULER_END, half), half, max(TITLE_DEPTH, half))


def _sheet(cell: Cell, name: str, page: Page, paper: Paper, clear: Clearance) -> Sheet:
    rect, window = cell.rect, cell.rect.grown(paper.overlap / 2)
    inner = Rect(rect.x0 + clear.left, rect.y0 + clear.bottom, rect.x1 - clear.right, rect.y1 - clear.top)
    to_page = shifted(page.matrix, page.printable.x0 - window.x0, page.printable.y0 - window.y0)
    return Sheet(name, cell.strip, rect, window, inner, to_page, page)


def letters(number: int) -> str:
    """A, B, … Z, AA, AB, … for 0, 1, …, as columns of a map grid are named."""
    name = ""
    number += 1
    while number:
        number, rest = divmod(number - 1, len(ascii_uppercase))
        name = ascii_uppercase[rest] + name
    return name


def _joins(sheets: Sequence[Sheet]) -> Iterator[Join]:
    """The trim lines; the sheet to the right or above is cut and laid over the other."""
    for under, over, length in sorted(shared_sides([sheet.cell for sheet in sheets])):
        line = sheets[under].cell.meet(sheets[over].cell)
        if line and length >= LEAST_JOIN:
            yield Join(sheets[over].name, sheets[under].name, line.x0, line.y0, line.x1, line.y1)


def _registration_marks(joins: Sequence[Join]) -> Iterator[RegistrationMark]:
    """Marks near the two ends of every join, on both its sheets; one in its middle where it is short."""
    points = ((join, *point) for join in joins for point in end_marks(join.line))
    for number, (join, x, y) in enumerate(points):
        yield RegistrationMark(letters(number).lower(), x, y, (join.under, join.over), join.upright)


def _crossing_marks(joins: Sequence[Join], hides: Covered, clear: Clearance) -> Iterator[RegistrationMark]:
    """Where the lines cross by which sheets are taped that nobody cuts."""
    points = ((join, *point) for join in joins for point in cross_points(join.line, hides, clear))
    for number, (join, x, y) in enumerate(points):
        yield RegistrationMark(letters(number).lower(), x, y, (join.over, join.under), join.upright)
