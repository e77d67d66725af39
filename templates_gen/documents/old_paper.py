"""Which sheets a template has, as it carries them inside, so that a later job can keep those that still serve."""

from __future__ import annotations

import json
import math
from pathlib import Path
from typing import Any

from templates_gen.arranging.plan import Plan
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect, same
from templates_gen.base.record import Record, replace
from templates_gen.documents.photographed import Papers
from templates_gen.documents.tagged_paper import as_told
from templates_gen.drawing.pdf.attached import Attached
from templates_gen.job.model import Job, Paper
from templates_gen.job.reading.files import LARGEST as LARGEST_TEXT
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


SCALE = ("paper", "across", "along", "skew")
"""What of a printer's profile decides on how large a page is drawn."""


ALIKE = 1e-3
"""mm that a nail is elsewhere at most, for it to be at the same place: as marks are compared (sheets/seen.py)."""

ELSEWHERE = "has nails elsewhere than they would be planned now for the same job, as by another version"


class OldPaper(Record, frozen=True):
    """The paper that a template is on: its sheets with their cells from the two lines (mm), and its printer."""

    paper: dict[str, Any]
    printer: dict[str, Any] | None
    rows: bool
    lying: bool
    spine: bool
    names: tuple[str, ...]
    cells: tuple[Cell, ...]
    nails: tuple[tuple[str, float, float], ...] | None = None
    photo: Any = None


def sheets_file(plan: Plan, sheets: SheetPlan, papers: Papers | None = None) -> tuple[str, bytes]:
    """The file about the sheets of a template: its name and its content, from the two lines (mm).

    `papers` are what a photograph of them is compared with, where it can be.  Sheets that come off are left out.
    """
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
            if sheet.name not in sheets.gone
        ],
        "nails": [[nail.name, nail.x - x, nail.y - y] for nail in plan.nails],
        **({"photo": as_told(papers)} if papers else {}),
    }
    return NAME, json.dumps(data, separators=(",", ":")).encode()


def _paper(paper: Paper) -> dict[str, Any]:
    told = {name: getattr(paper, name) for name in PAPER}
    return told | {"margin": list(paper.margin)}


def inside(pdf: Path) -> tuple[Attached, OldPaper]:
    """The files inside a template, and what it says of its sheets.  Raises InputError for one that says nothing."""
    held = Attached.of(pdf)
    if NAME not in held.others:
        raise InputError(pdf.name, "says nothing of its sheets, expected a template that this version wrote", ANEW)
    return held, old_paper(held.read(NAME, LARGEST), pdf.name)


def made_from(held: Attached, job: Job) -> bool:
    """Whether a template was made from this job as its files are now.  Raises InputError for a broken template."""
    names = (held.job, *(name for name, _ in job.sources[1:]))  # the job's file may have another name since
    known = {held.job, *held.others}
    return all(
        name in known and held.read(name, LARGEST_TEXT) == content
        for name, (_, content) in zip(names, job.sources, strict=True)
    )


def old_paper(content: bytes, where: str) -> OldPaper:
    """What such a file says.  Raises InputError for one that this program did not write so."""
    try:
        data = json.loads(content)
        if data["format"] != FORM:
            raise InputError(where, "was made by another version, which marks its sheets otherwise", ANEW)
        cells = []
        for place, (_, strip, turned, *sides) in enumerate(data["sheets"]):
            x0, y0, x1, y1 = map(float, sides)
            if not (x0 < x1 and y0 < y1 and math.isfinite(x0 + y0 + x1 + y1)):
                raise ValueError
            cells.append(Cell(Rect(x0, y0, x1, y1), int(strip), place, bool(turned)))
        names = tuple(str(int(sheet[0])) for sheet in data["sheets"])
        if len(set(names)) < len(names):
            raise ValueError
        return OldPaper(
            dict(data["paper"]), data["printer"], bool(data["rows"]), bool(data["lying"]), bool(data["spine"]), names,
            tuple(cells), _nails(data), data.get("photo"),
        )  # fmt: skip
    except (ValueError, KeyError, TypeError, IndexError, AttributeError, OverflowError, RecursionError):
        raise InputError(where, "says nothing of its sheets that can be read", ANEW) from None


def _nails(data: dict[str, Any]) -> tuple[tuple[str, float, float], ...] | None:
    """Every nail that is on the paper, from the two lines (mm); None where the file is of before it said so."""
    if "nails" not in data:
        return None
    return tuple((str(name), float(x), float(y)) for name, x, y in data["nails"])


def as_planned(old: OldPaper, plan: Plan) -> bool:
    """Whether the nails on old paper are where the plan has them: places that are found may be others by now."""
    if old.nails is None:
        return True
    then = {name: (x, y) for name, x, y in old.nails}
    now = {nail.name: (nail.x - plan.centre_line, nail.y - plan.level_line) for nail in plan.nails}
    return then.keys() == now.keys() and all(math.dist(then[name], now[name]) < ALIKE for name in then)


def paper_as_printed(old: OldPaper, like: Paper, where: str) -> Paper:
    """The paper of an old template; what it does not say is as another has it.  Raises InputError."""
    told = old.paper
    try:
        top, right, bottom, left = map(float, told["margin"])
        sizes = {name: float(told[name]) for name in ("width", "height", "overlap")}
        words = {name: str(told[name]) for name in ("name", "cover", "trim")}
    except (ValueError, KeyError, TypeError, OverflowError):
        raise InputError(where, "says nothing of its paper that can be read", ANEW) from None
    paper = replace(like, kind="sheets", first=None, margin=(top, right, bottom, left), photo=bool(told.get("photo")))
    return replace(paper, **sizes, **words)


def same_paper_as(old: OldPaper, paper: Paper, printer: Printer | None, where: str) -> None:
    """Raises InputError where new sheets could not be taped to the old ones, for they are on other paper."""
    asked = _paper(paper)
    if paper.kind != "sheets":
        raise InputError("--since", f"found {paper.kind}, expected paper in sheets", ANEW)
    for name in PAPER:
        if asked[name] != old.paper.get(name):
            problem, again = _unlike(name, old.paper.get(name), asked[name])
            raise InputError(where, problem, f"{again}, or {ANEW}")
    _same_scale(old.printer, printer_data(printer) if printer else None, where)


def _unlike(name: str, was: object, asked: object) -> tuple[str, str]:
    """How old paper is not as it is asked for now, and what asks for the same."""
    if name == "photo":
        now = "has photo tags, but none are asked for now", "has no photo tags, but they are asked for now"
        return (now[0], "add --photo-marks") if was else (now[1], "leave --photo-marks out")
    old_one = f"is on {_shown(was)} paper" if name == "name" else f"has {name} {_shown(was)}"
    option = {"name": "--paper", "cover": "--cover", "trim": "--trim"}.get(name)
    again = f"add {option} {_shown(was)}" if option else "ask for the same"
    return f"{old_one}, but {_shown(asked)} is asked for now", again


def _same_scale(old: dict[str, Any] | None, new: dict[str, Any] | None, where: str) -> None:
    """Raises InputError where what is drawn for one printer is not as large as what is drawn for the other."""
    if (old is None) == (new is None) and all((old or {}).get(name) == (new or {}).get(name) for name in SCALE):
        return
    if old is None:
        raise InputError(where, "was drawn for no printer that was measured", f"leave --printer out, or {ANEW}")
    name, date = old.get("name"), old.get("date")
    if new is not None and new["name"] == name:
        problem = f"was drawn for the printer {name!r} as it was measured on {date}, which was measured anew since"
        raise InputError(where, f"{problem}: sheets drawn now would be of another scale", ANEW)
    now = "for no printer" if new is None else f"for {new['name']!r}"
    raise InputError(where, f"was drawn for the printer {name!r}, and now {now}", f"give --printer {name}, or {ANEW}")


def _shown(value: object) -> str:
    if isinstance(value, (int, float)):
        return f"{value:g} mm"
    return " ".join(f"{side:g}" for side in value) + " mm" if isinstance(value, list) else str(value)


def alike(one: SheetPlan, two: SheetPlan) -> bool:
    """Whether two plans have the same sheets in the same places."""
    pairs = list(zip(one.sheets, two.sheets, strict=False))
    return len(one.sheets) == len(two.sheets) and all(
        a.name == b.name and a.page == b.page and all(map(same, a.cell.sides, b.cell.sides)) for a, b in pairs
    )


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
