"""From a plan of the wall to the sheets of paper: which cells, on which pages, and how they are joined."""

from __future__ import annotations

from templates_gen.arranging.plan import Plan
from templates_gen.base.errors import InputError
from templates_gen.base.record import replace
from templates_gen.job.model import Paper
from templates_gen.printer.profile import Printer
from templates_gen.tiling.cells import CUT, LARGER, Cell, CellPlan, plan_cells
from templates_gen.tiling.demand import bordered, demand
from templates_gen.tiling.large_pages import fitted
from templates_gen.tiling.linked import LINKED, linked_cells, pruned_cells
from templates_gen.tiling.loose import filled
from templates_gen.tiling.minutes import minutes
from templates_gen.tiling.quickest import MOST_SHEETS, less_than_strips, quickest
from templates_gen.tiling.sheet import Given, SheetPlan, clearance, finished, given
from templates_gen.tiling.sketch import Held

LINKED_ON_ROLL = (
    'for the roll, take every mark: --cover marks, or cover = "marks" under [paper]\nfor linked paper, print on '
    "sheets: --paper letter or --paper a4"
)
"""What to do about linked paper on a roll: each line is a way."""

LONG = 0.5
"""Of the minutes of strips with every edge, what linked paper takes at the most that is not compared with sheets of
every mark.  It takes less than half of theirs where its spine holds the frames; our own trials.  Our own design."""


def tiled(
    plan: Plan, paper: Paper, printer: Printer | None = None, quick: bool = False, held: Held | None = None
) -> SheetPlan:
    """The sheets that show what `paper.cover` asks for, corrected for the printer where one is given.

    With `quick` no time goes into fewer minutes: of linked paper it is what is left of the sheets of every mark.  With
    `held` the fewest minutes are searched for at which the error is held: of linked paper and of that of every mark.

    Every nail mark and the target lie whole on one sheet, clear of trim line and shared strip; what else
    `paper.cover` asks for is on some sheet.  Raises InputError when the paper is too small for that.
    """
    if paper.cover == LINKED and paper.kind == "roll":
        problem = 'found "linked" on a roll, expected sheets: a roll\'s long sheets need no links'
        raise InputError("paper.cover", problem, LINKED_ON_ROLL)
    shown = bordered(plan.group, clearance(paper.overlap))
    tried: dict[Paper, CellPlan] = {}

    def count(size: Paper, most: int | None) -> int:
        asked = given(plan, size, printer)
        if most is not None and asked.hides is None:
            return len(_strips(asked, _in_strips(size.cover), most=most).cells)
        tried[size] = _cells(asked)
        return len(tried[size].cells)

    paper = fitted(paper, count, shown)
    asked = given(plan, paper, printer)
    if held and not quick and paper.kind == "sheets":
        if paper.cover == LINKED:
            return _quickest(asked, held)
        if paper.cover == "marks":
            return _quicker_than_strips(asked, _cells(asked), held)
    return finished(asked, tried.get(paper) or _cells(asked, quick))


def linked_of(plan: Plan, marks: SheetPlan) -> SheetPlan:
    """Linked paper as these sheets of every mark without those that it can do without: planned at once, not searched.

    The sheets are not in the order of taping.
    """
    asked, every = _as_linked(plan, marks)
    some = replace(every, spine=False)  # what is left of its first strip need not hang together
    return finished(asked, pruned_cells(plan, some, demand(plan, LINKED, asked.clear), asked.clear))


def _as_linked(plan: Plan, marks: SheetPlan) -> tuple[Given, CellPlan]:
    """What linked paper is asked for, and the cells of these sheets of every mark."""
    asked = given(plan, replace(marks.paper, cover=LINKED), marks.printer)
    cells = (Cell(sheet.cell, sheet.strip, at, sheet.page is not marks.page) for at, sheet in enumerate(marks.sheets))
    lies = (marks.page.width, marks.page.height) != (asked.pages[False].width, asked.pages[False].height)
    return asked, CellPlan(tuple(cells), marks.rows, asked.printables[lies], spine=marks.spine)


def _quickest(asked: Given, held: Held) -> SheetPlan:
    """Linked paper that holds its frames nearly as exactly as strips that show every edge.

    Where that takes long, it is the sheets of every mark, if they take less and hold the frames.
    """
    plan, paper = asked.plan, asked.paper
    need = demand(plan, LINKED, asked.clear, asked.hides)
    spine = linked_cells(plan, need, asked.printables, paper.overlap, asked.clear)
    strips = given(plan, replace(paper, cover="marks"), asked.printer)
    try:
        cells = _cells(strips)
    except InputError:  # no strips at all: there is nothing to measure by
        return finished(asked, spine or _cells(asked, quick=True))
    # the strips' own pages reach no farther than those of linked paper, so their cells fit these, too
    like = finished(strips, cells)
    limit = held.times * held.error(like)
    found = finished(asked, quickest(asked, need, held, limit, spine, cells))
    if _taking(found) <= LONG * _taking(like):
        return found
    every = _quicker_than_strips(strips, cells, held)
    if _taking(every) >= _taking(like):  # then it is strips, whose pages may all lie on their sides
        return found
    same = finished(*_as_linked(plan, every))
    return same if _taking(same) < _taking(found) and held.error(same) <= limit else found


def _quicker_than_strips(asked: Given, cells: CellPlan, held: Held) -> SheetPlan:
    """Sheets with every mark but the middles of edges, where that takes less than strips with whole edges (`cells`)
    do; on very large walls these."""
    strips = finished(asked, cells)
    if len(cells.cells) > MOST_SHEETS:
        return strips
    mixed = given(asked.plan, asked.paper, asked.printer, mixed=True)
    limit = held.times * held.error(strips)
    # where nothing is cut, scales of known drops may be hidden if there is no other way
    spared = (False,) if mixed.hides is None else (False, True)
    needs = (demand(asked.plan, "marks", mixed.clear, mixed.hides, spare) for spare in spared)
    found = next(filter(None, (less_than_strips(mixed, need, held, limit, cells) for need in needs)), None)
    quicker = finished(mixed, found) if found else strips
    return quicker if _taking(quicker) < _taking(strips) else strips


def _taking(sheets: SheetPlan) -> float:
    """The minutes of sheets in one piece."""
    cuts = {(join.over, join.upright) for join in sheets.joins if sheets.hides is None}
    return minutes(len(sheets.sheets), len(sheets.joins), len(cuts), pieces=1)


def _cells(asked: Given, quick: bool = False) -> CellPlan:
    """The cells of the wall, planned so that they can be tiled."""
    try:
        return _planned(asked, quick, spare=False)
    except InputError:
        if asked.hides is None:
            raise
        return _planned(asked, quick, spare=True)


def _planned(asked: Given, quick: bool, spare: bool) -> CellPlan:
    plan, paper, clear, hides = asked.plan, asked.paper, asked.clear, asked.hides
    linked = demand(plan, LINKED, clear) if paper.cover == LINKED else None
    exact = linked is not None and not hides and not quick
    if linked and exact and (found := linked_cells(plan, linked, asked.printables, paper.overlap, clear)):
        return found
    cells = _strips(asked, _in_strips(paper.cover), spare)
    return pruned_cells(plan, cells, linked, clear) if linked else cells


def _in_strips(cover: str) -> str:
    """What strips hold for a cover: whole edges with every mark, of which linked paper is what is left."""
    return "edges" if cover in ("marks", LINKED) else cover


def _strips(asked: Given, cover: str, spare: bool = False, most: int | None = None) -> CellPlan:
    """Strips of cells that hold all that is to be on paper for `cover`; with `most` any that are no more than these."""
    plan, paper, clear, hides = asked.plan, asked.paper, asked.clear, asked.hides
    need = demand(plan, cover, clear, hides, spare)
    connected, helps = cover != "nails", f"{LARGER}, or {CUT}" if hides else LARGER
    pages, lines = asked.printables, need.lines
    cells = plan_cells(need.whole, need.divisible, pages, paper.overlap, clear, connected, lines, helps, most)
    return cells if connected or paper.kind != "sheets" else filled(cells, need.whole, paper.overlap, clear)
