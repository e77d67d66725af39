"""What a machine reads about a template: sheets, registration marks, rulers and nails, page by page.  Lengths in mm."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.grid_index import Near
from templates_gen.checks import Finding, findings_data
from templates_gen.documents.sheets.photo_tags import Tag
from templates_gen.drawing.items import Matrix, moved
from templates_gen.printer.profile import printer_data
from templates_gen.tiling.demand import nail_box
from templates_gen.tiling.page import Page
from templates_gen.tiling.rulers import Ruler, rulers
from templates_gen.tiling.sheet import SheetPlan, bars_on_pages
from templates_gen.tolerance.effort import cuts, effort
from templates_gen.tolerance.expected import Expected
from templates_gen.tolerance.order import taping_order
from templates_gen.tolerance.statement import error_data


def template_report(
    plan: Plan, findings: Sequence[Finding], sheets: SheetPlan, expected: Expected | None, pages: int,
    tags: Sequence[Tag] = (),
) -> dict[str, Any]:  # fmt: skip
    """The report of a template with this many pages and photo tags; `page` counts from 1, rulers are in page points.

    A sheet that is not printed, for it is on older paper, has None for its page.
    Positions are not rounded here: they are what the marks were drawn from.
    """
    printed = sheets.on_these_pages
    first = pages - len(printed) + 1
    page_of = {sheet.name: first + number for number, sheet in enumerate(printed)}
    paper, steps = sheets.paper, taping_order(sheets).joins
    bars = bars_on_pages(sheets)
    ruled: dict[int, tuple[Page, Sequence[Rect]]] = {1: (sheets.page, ())}
    photo_tags = [{"number": tag.number, "page": page_of[tag.sheet], "square": [*tag.box.sides]} for tag in tags]
    ruled |= {page_of[sheet.name]: (sheet.page, bars[sheet.name]) for sheet in printed}
    return {
        "format": 1,
        "job": plan.job.title,
        "paper": {"width": paper.width, "height": paper.height, "margin": list(paper.margin)},
        "sheets": [
            {
                "page": page_of.get(sheet.name), "name": sheet.name, "window": [*sheet.window.sides],
                "cell": [*sheet.cell.sides], "to_page": list(sheet.to_page),
            }
            for sheet in sheets.sheets
        ],
        "register_marks": [
            {"name": mark.name, "x": mark.x, "y": mark.y, "pages": _pages(mark.sheets, page_of)}
            for mark in sheets.marks
        ],
        "joins": [
            {
                "over": page_of.get(join.over), "under": page_of.get(join.under),
                "step": steps[join.over, join.under],
                "line": [join.x0, join.y0, join.x1, join.y1],
            }
            for join in sheets.joins
        ],
        **_effort(sheets, page_of),
        "rules": [
            _ruler_data(number, ruler, page.matrix)
            for number, (page, marks) in sorted(ruled.items(), key=lambda item: item[0])
            for ruler in rulers(page, paper.overlap, plan.job.unit, marks)
        ],
        "nails": _nails(plan, sheets, page_of),
        **({"photo_tags": photo_tags} if tags else {}),
        **({"printer": printer_data(sheets.printer)} if sheets.printer else {}),
        "expected_error": error_data(expected),
        "findings": findings_data(findings),
    }  # fmt: skip


def _effort(sheets: SheetPlan, page_of: Mapping[str, int]) -> dict[str, Any]:
    """The sides to cut, the pieces that hang by themselves, and the minutes that the whole takes."""
    sides = [{"page": page_of.get(cut.sheet), "side": cut.side, "length": cut.length} for cut in cuts(sheets)]
    work = effort(sheets)
    return {"cuts": sides, "pieces": work.pieces, "minutes": work.minutes}


def _pages(names: Sequence[str], page_of: Mapping[str, int]) -> list[int]:
    """The pages of these sheets, as far as they are printed."""
    return [page_of[name] for name in names if name in page_of]


def _ruler_data(page: int, ruler: Ruler, matrix: Matrix) -> dict[str, Any]:
    """Where the ruler is drawn (page points), and how long it must measure once it is printed (mm)."""
    start, end = moved(matrix, ruler.x0, ruler.y0), moved(matrix, ruler.x1, ruler.y1)
    return {"page": page, "from": list(start), "to": list(end), "length": ruler.length}


def _nails(plan: Plan, sheets: SheetPlan, page_of: Mapping[str, int]) -> list[dict[str, Any]]:
    inner = Near((sheet.inner, sheet) for sheet in sheets.sheets)
    found = []
    for nail in plan.nails:
        box = nail_box(nail.x, nail.y)
        names = [sheet.name for sheet in inner.about(box) if sheet.inner.holds(box)]
        found.append({"name": nail.name, "x": nail.x, "y": nail.y, "pages": _pages(names, page_of)})
    return found
