"""Plan, findings and sheets become a finished template: every page with every mark at its place."""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.checks import Finding
from templates_gen.documents.instructions.first_pages import FirstPages, first_pages
from templates_gen.documents.of_job import numbered, of_job, roman
from templates_gen.documents.sheets.layers import lay, sheet_forms, sheet_page
from templates_gen.documents.sheets.rulers import RULERS_FORM
from templates_gen.drawing.items import Template, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.expected import Expected


def draw_template(
    plan: Plan, findings: Sequence[Finding], sheets: SheetPlan, expected: Expected | None, lettering: Lettering
) -> Template:
    """The whole template.  Raises InputError for a character that no font has."""
    apart = sheets.paper.kind != "sheets"  # the first pages are then a file of their own
    before = FirstPages([], -1, -1) if apart else first_pages(plan, findings, sheets, expected, lettering)
    every = lay(plan, sheets, len(before.pages), lettering)
    ruled = [[Use(RULERS_FORM, 0.0, 0.0), *items] for items in before.pages[:1]]
    first = numbered([*ruled, *before.pages[1:]], before.titles, sheets.page.matrix, roman)
    forms = sheet_forms(plan, sheets, every[0].so_far.scales, lettering)
    return of_job(plan.job, "", sheets.page, (*first, *map(sheet_page, every)), forms, attach=True)
