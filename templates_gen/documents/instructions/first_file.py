"""The first pages as a file of their own, where the template itself is for a roll, a print shop or a plotter."""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.checks import Finding
from templates_gen.documents.instructions.first_pages import first_pages
from templates_gen.documents.of_job import numbered, of_job
from templates_gen.drawing.items import Template
from templates_gen.drawing.lettering import Lettering
from templates_gen.job.paper_sizes import first_paper
from templates_gen.tiling.sheet import SheetPlan, page_of


def draw_first_pages(
    plan: Plan, findings: Sequence[Finding], sheets: SheetPlan, lettering: Lettering
) -> Template | None:
    """The first pages as a template of their own; None where they are part of the template itself."""
    job, paper = plan.job, sheets.paper
    if paper.kind == "sheets":
        return None
    page = page_of(first_paper(paper, job.unit), turned=False)
    before = first_pages(plan, findings, sheets, lettering, page.printable.grown(-3.0))
    return of_job(job, "first pages", page, numbered(before.pages, before.titles), attach=True)
