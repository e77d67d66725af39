"""Plan, findings and sheets become a finished template: every page with every mark at its place."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.base.record import replace
from templates_gen.checks import Finding
from templates_gen.documents.instructions.first_pages import FirstPages, first_pages
from templates_gen.documents.of_job import numbered, of_job, roman
from templates_gen.documents.old_paper import sheets_file
from templates_gen.documents.photographed import Papers, papers
from templates_gen.documents.sheets.layers import Laid, lay, sheet_forms, sheet_page
from templates_gen.documents.sheets.photo_tags import photo_tags, tag_side, tags_on
from templates_gen.documents.sheets.rulers import RULERS_FORM
from templates_gen.drawing.items import Template, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.expected import Expected


def draw_template(
    plan: Plan, findings: Sequence[Finding], sheets: SheetPlan, expected: Expected | None, lettering: Lettering,
    bare: bool = False, older: Papers | None = None,
) -> Template:  # fmt: skip
    """The whole template, or with `bare` its sheets without the pages before them, as they are numbered there.

    `older` is the paper of which sheets are kept, where these have photo tags.

    Raises InputError for a character that no font has.
    """
    apart = sheets.paper.kind != "sheets"  # the first pages are then a file of their own
    told = replace(sheets, printed=None) if bare else sheets  # torn sheets are numbered as among all of them
    before = FirstPages([], -1, -1) if apart else first_pages(plan, findings, told, expected, lettering)
    every = lay(plan, sheets, len(before.pages), lettering, told.on_these_pages)
    ruled = [[Use(RULERS_FORM, 0.0, 0.0), *items] for items in before.pages[:1]]
    first = numbered([*ruled, *before.pages[1:]], before.titles, sheets.page.matrix, roman)
    forms = sheet_forms(plan, sheets, every, lettering)
    printed = {sheet.name for sheet in sheets.on_these_pages}
    pages = (sheet_page(laid) for laid in every if laid.so_far.sheet.name in printed)
    drawn = of_job(plan.job, "", sheets.page, (*(() if bare else first), *pages), forms, attach=True)
    if apart or not plan.job.sources:
        return drawn
    on_paper = _papers_laid(plan, sheets, every, older) if sheets.paper.photo else None
    return replace(drawn, attachments=(*drawn.attachments, sheets_file(plan, sheets, on_paper)))


def _papers_laid(plan: Plan, sheets: SheetPlan, every: Iterable[Laid], older: Papers | None) -> Papers:
    """What a photograph of these sheets is compared with, of which some may be of older paper."""
    tags = tags_on([(laid.so_far.sheet, laid.drawn[photo_tags].page_items) for laid in every], tag_side(plan))
    if older is None or sheets.printed is None:
        return papers(plan, sheets, tags)
    x, y = plan.centre_line - older.centre_line, plan.level_line - older.level_line
    kept = (replace(tag, box=tag.box.shifted(x, y)) for tag in older.tags if tag.sheet not in sheets.printed)
    return papers(plan, sheets, [*(tag for tag in tags if tag.sheet in sheets.printed), *kept])
