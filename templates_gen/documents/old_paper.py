"""Which sheets a template has, as it carries them inside, so that a later job can keep those that still serve."""

from __future__ import annotations

import json
from typing import Any

from templates_gen.arranging.plan import Plan
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record, replace
from templates_gen.job.model import Paper
from templates_gen.printer.profile import Printer, printer_data
from templates_gen.tiling.cells import Cell, CellPlan, Printable
from templates_gen.tiling.sheet import Given, SheetPlan, finished, given
from templates_gen.tolerance.order import named

NAME = "sheets.json"
"""The name of the file inside a template; no job and no spreadsheet has this ending."""

FORM = 1
"""The form of the file, and with it how sheets are marked: paper of another form is printed anew."""

ANEW = "leave --since out, and print every sheet"

LARGEST = 5_000_000
"""Bytes of the file that are read; a thousand sheets take a tenth of a million.  Our own design, no source."""

PAPER = ("name", "width", "height", "margin", "overlap", "cover", "trim", "photo")
"""What has to be alike for old sheets and new ones to be taped to each other."""


class OldPaper(Record, frozen=True):
    """The paper that a template is on: its sheets with their cells from the two lines (mm), and its printer."""

    paper: dict[str, Any]
    printer: dict[str, Any] | None
    rows: bool
    lying: bool
    spine: bool
    names: tuple[str, ...]
    cells: tuple[Cell, ...]


def sheets_file(plan: Plan, sheets: SheetPlan) -> tuple[str, bytes]:
    """The file about the sheets of a template: its name and its content, from the two lines (mm)."""
    x, y = plan.centre_line, plan.level_line
    data = {
        "format": FORM,
        "paper": _paper(sheets.paper),
        "printer": printer_data(sheets.printer) if sheets.printer else None,
        "rows": sheets.rows,
        "lying": sheets.page.width > sheets.page.height,
        "spine": sheets.spine,
        "sheets": [
            [sheet.name, sheet.strip, sheet.page is not sheets.page, *sheet.cell.shifted(-x, -y).sides]
            for sheet in sheets.sheets
        ],
    }
    return NAME, json.dumps(data, separators=(",", ":")).encode()


def _paper(paper: Paper) -> dict[str, Any]:
    told = {name: getattr(paper, name) for name in PAPER}
    return told | {"margin": list(paper.margin)}


def old_paper(content: bytes, where: str) -> OldPaper:
    """What such a file says.  Raises InputError for one that this program did not write so."""
    try:
        data = json.loads(content)
        if data["format"] != FORM:
            raise InputError(where, "was made by another version, which marks its sheets otherwise", ANEW)
        cells = []
        for place, (_, strip, turned, *sides) in enumerate(data["sheets"]):
            x0, y0, x1, y1 = map(float, sides)
            cells.append(Cell(Rect(x0, y0, x1, y1), int(strip), place, bool(turned)))
        names = tuple(str(sheet[0]) for sheet in data["sheets"])
        return OldPaper(
            dict(data["paper"]), data["printer"], bool(data["rows"]), bool(data["lying"]), bool(data["spine"]), names,
            tuple(cells),
        )  # fmt: skip
    except (ValueError, KeyError, TypeError):
        raise InputError(where, "says nothing of its sheets that can be read", ANEW) from None


def same_paper_as(old: OldPaper, paper: Paper, printer: Printer | None, where: str) -> None:
    """Raises InputError where new sheets could not be taped to the old ones, for they are on other paper."""
    asked = _paper(paper)
    if paper.kind != "sheets":
        raise InputError("--since", f"found {paper.kind}, expected paper in sheets", ANEW)
    for name in PAPER:
        if asked[name] != old.paper.get(name):
            was, option = _shown(old.paper.get(name)), {"name": "--paper", "cover": "--cover"}.get(name)
            old_one = f"is on {was} paper" if name == "name" else f"has {name} {was}"
            again = f"add {option} {was}" if option else "ask for the same"
            problem = f"{old_one}, but {_shown(asked[name])} is asked for now"
            raise InputError(where, problem, f"{again}, or {ANEW}")
    if (printer_data(printer) if printer else None) != old.printer:
        was = f"for the printer {old.printer.get('name')!r}" if old.printer else "for no printer that was measured"
        raise InputError(where, f"was drawn {was}, and now for another", f"give the same --printer, or {ANEW}")


def _shown(value: object) -> str:
    return " ".join(f"{side:g}" for side in value) if isinstance(value, list) else str(value)


def sheets_on(old: OldPaper, plan: Plan, paper: Paper, printer: Printer | None) -> tuple[Given, SheetPlan]:
    """The old sheets under a plan, each where it was from the two lines."""
    asked = given(plan, paper, printer)
    x, y = plan.centre_line, plan.level_line
    cells = tuple(replace(cell, rect=cell.rect.shifted(x, y)) for cell in old.cells)
    page = asked.pages[old.lying].printable
    layout = CellPlan(cells, old.rows, Printable(page.width, page.height, old.lying), old.spine)
    found = finished(asked, layout)  # strip by strip, and in each as the old paper is numbered
    listed = sorted(range(len(cells)), key=lambda at: (cells[at].strip, cells[at].place))
    order = sorted(range(len(cells)), key=listed.__getitem__)
    return asked, named(found, order, old.names)
