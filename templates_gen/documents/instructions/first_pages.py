"""The pages before the sheets: how to print and tape, findings and cautions, the schedule, and the hanging guide."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from templates_gen.arranging.plan import Plan
from templates_gen.base.file_names import quoted
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.base.units import show_both
from templates_gen.base.words import capital
from templates_gen.checks import Finding
from templates_gen.checks.untold import not_checked, not_checked_words
from templates_gen.documents.instructions import wording
from templates_gen.documents.instructions.cautions import take_care
from templates_gen.documents.instructions.guide import guide
from templates_gen.documents.instructions.map_pages import map_pages
from templates_gen.documents.instructions.marks_key import HEIGHT, marks_key
from templates_gen.documents.instructions.taping_steps import day_before, update_steps
from templates_gen.documents.of_job import numbered, of_job, text_area, whose
from templates_gen.documents.schedule import table as schedule
from templates_gen.documents.schedule.carrying import HEADER as CARRIED_HEADER
from templates_gen.documents.schedule.carrying import KEY, carried, carried_rows, flagged_nails, has_mark
from templates_gen.documents.schedule.distances import above_floor, left_end, pitch_words
from templates_gen.drawing.flow import Flow
from templates_gen.drawing.items import Item, Template
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.sizes import H7, H25
from templates_gen.job.paper_sizes import first_paper
from templates_gen.tiling.page import Page as SheetPage
from templates_gen.tiling.page import page_of
from templates_gen.tiling.rulers import RULER_END, rulers
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.expected import Expected
from templates_gen.tolerance.statement import first_page_words

FOUND_INDENT, FOUND_APART = 18.0, 0.2
"""mm; the column of a finding's number and level, and what is free under a finding.  Our own design, no source."""

BESIDE_RULER = 4.0
"""mm that text keeps from what the rulers take.  Our own design, no source."""


def area_beside_rulers(page: SheetPage, overlap: float) -> Rect:
    """The part of a page that is free for text beside the rulers (page mm)."""
    area, inset = page.printable, overlap / 2 + RULER_END + BESIDE_RULER
    return Rect(area.x0 + inset, area.y0 + inset, area.x1 - 2.0, area.y1 - 2.0)


class FirstPages(Record, frozen=True):
    """The items (page mm) of every page before the sheets, and the pages (from 0) that parts of them begin on."""

    pages: list[list[Item]]
    schedule: int
    guide: int

    @property
    def titles(self) -> dict[int, str]:
        """Lines of the outline, by page: what begins on each."""
        begins = ((0, "How to print and tape"), (self.schedule, "Schedule"), (self.guide, "The hanging day"))
        pages = sorted({page for page, _ in begins})
        return {at: " · ".join(title for page, title in begins if page == at) for at in pages}


def first_pages(
    plan: Plan, findings: Sequence[Finding], sheets: SheetPlan, expected: Expected | None, lettering: Lettering,
    area: Rect | None = None,
) -> FirstPages:  # fmt: skip
    """What stands before the sheets: how to print and tape, findings, the schedule, cautions, and the hanging day.

    `area` (page mm) is where it stands on pages of their own; else the first page is printed as the sheets are, and
    has their rulers, to be measured before any other is printed.
    """
    ruled = area_beside_rulers(sheets.page, sheets.paper.overlap)
    flow = Flow(area, lettering) if area else Flow(ruled, lettering, text_area(sheets.page))
    _title(flow, plan)
    _printing(flow, plan, sheets)
    map_pages(flow, plan, sheets)
    flow.space(2.0)
    flow.picture(HEIGHT, partial(marks_key, sheets, lettering))
    if sheets.printed is None:
        flow.heading("Tape the sheets" if sheets.joins else "Before it goes up")
        flow.steps(day_before(plan, sheets))
    else:
        flow.heading("Bring the old paper up to date")
        flow.steps(update_steps(plan, sheets))
    flow.together(partial(_expected, expected=expected, unit=plan.job.unit))
    found_words(flow, findings, not_checked_words(not_checked(plan)))
    flagged = flagged_nails(plan, findings)
    schedule_page = flow.together(partial(schedule_words, plan=plan, flagged=flagged), lines=len(plan.frames))
    flow.together(partial(_carried, plan=plan, findings=findings, flagged=flagged), lines=len(plan.nails))
    flow.together(partial(take_care, wall=plan.job.wall))
    guide_page = guide(flow, plan, sheets)
    return FirstPages(flow.pages, schedule_page, guide_page)


def _title(flow: Flow, plan: Plan) -> None:
    job = plan.job
    flow.paragraph(job.title, H7, bold=True)
    where = whose(job)
    flow.paragraph(f"{where} · hanging template at full size" if where else "Hanging template at full size", H25)
    if job.moved_to:
        made = f"templates-gen template {quoted(job.sources[0][0])} --wall {quoted(job.moved_to)}"
        flow.paragraph(f"A group moved to another wall. Both job files are attached; to make this again:  {made}", H25)


def _printing(flow: Flow, plan: Plan, sheets: SheetPlan) -> None:
    if sheets.paper.kind != "sheets":
        flow.heading("Have the template printed")
        for words in (*wording.shop_words(sheets, plan.job.unit), *wording.work_words(sheets)):
            flow.paragraph(words)
        return
    both = rulers(sheets.page, sheets.paper.overlap, plan.job.unit)
    flow.heading("Print this page first")
    for words in wording.PRINT_WORDS:
        flow.paragraph(words)
    flow.paragraph(wording.ruler_words(both, plan.job.unit), bold=True)
    if sheets.printer:
        flow.paragraph(wording.printer_words(sheets.printer))
    flow.paragraph(
        f"Paper: {sheets.paper.name}. {wording.sheets_words(sheets)}"
        + (", printed in landscape." if sheets.page.width > sheets.page.height else ".")
        + "".join(f" {words}" for words in wording.work_words(sheets))
    )


def _expected(flow: Flow, expected: Expected | None, unit: str) -> None:
    """The expected error, in a few lines."""
    if expected is not None:
        flow.heading("Expected accuracy")
        flow.paragraph(" ".join(first_page_words(expected, unit)))


def found_words(flow: Flow, findings: Sequence[Finding], untold: str) -> None:
    """What was found, and below it what was not checked."""
    told = [(f"{number} {finding.level}", finding.sourced) for number, finding in enumerate(findings, 1)]
    told += [("", untold)] if untold else []
    if told:
        flow.heading("Before you hang", follows=flow.depth(told[0][1], indent=FOUND_INDENT))
    for lead, words in told:
        flow.paragraph(words, indent=FOUND_INDENT if lead else 0.0, lead=lead)  # what was not told is no finding
        flow.space(FOUND_APART)


def schedule_words(flow: Flow, plan: Plan, flagged: frozenset[str]) -> None:
    """The schedule, with a mark at the nails that are flagged."""
    unit = plan.job.unit
    flow.heading("Schedule")
    flow.paragraph(
        f"Centre line {show_both(plan.centre_line, unit)} from {left_end(plan)}; level line "
        f"{show_both(plan.level_line, unit)} {above_floor(plan)}."
        + (f" {capital(', '.join(pitch_words(plan)))}." if plan.slope else "")
    )
    if flagged:
        flow.paragraph(KEY, bold=True)
    flow.space(2.0)
    flow.table(schedule.header(plan), schedule.rows(plan, flagged), strong=has_mark)


def _carried(flow: Flow, plan: Plan, findings: Sequence[Finding], flagged: frozenset[str]) -> None:
    """What every nail carries and goes into, where that is known of any."""
    if lines := carried(plan, findings):
        flow.heading("What every nail carries and goes into")
        flow.table(CARRIED_HEADER, carried_rows(lines, flagged), strong=has_mark)


def draw_first_pages(
    plan: Plan, findings: Sequence[Finding], sheets: SheetPlan, expected: Expected | None, lettering: Lettering
) -> Template | None:
    """The first pages as a template of their own; None where they are part of the template itself."""
    job, paper = plan.job, sheets.paper
    if paper.kind == "sheets":
        return None
    page = page_of(first_paper(paper, job.unit), turned=False)
    before = first_pages(plan, findings, sheets, expected, lettering, text_area(page))
    return of_job(job, "first pages", page, numbered(before.pages, before.titles), attach=True)
