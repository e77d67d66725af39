"""The main job in one call: from a finished job to the bytes of its template and what a machine reads about it."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.errors import InputError
from templates_gen.base.record import Record, replace
from templates_gen.checks import Finding, find
from templates_gen.documents.instructions.first_pages import draw_first_pages
from templates_gen.documents.photographed import Papers, drawn_tags, lacking, papers
from templates_gen.documents.report import template_report
from templates_gen.documents.template import draw_template
from templates_gen.drawing.items import POINT
from templates_gen.drawing.lettering import job_lettering
from templates_gen.drawing.pdf.writing import write_pdf
from templates_gen.job.model import Job, Paper
from templates_gen.job.paper_sizes import MOST_SIDE, first_paper, large_page, paper_size, roll_width
from templates_gen.printer.profile import Printer
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.effort import Effort, effort
from templates_gen.tolerance.expected import Expected, expected_error
from templates_gen.tolerance.holding import plan_sheets


class Made(Record, frozen=True):
    """A finished template: the file's bytes, its report, its findings, and how many sheets of wall it has.

    `effort` is what it takes to tape it, `expected` its expected error.  `first` are the bytes of the first pages where
    they are a file of their own; `page` is the size of a sheet (mm).
    """

    pdf: bytes
    report: dict[str, Any]
    findings: tuple[Finding, ...]
    sheets: int
    page: tuple[float, float]
    effort: Effort
    expected: Expected | None
    first: bytes | None = None
    lacking: str = ""


def make_template(job: Job, fonts: tuple[Path, ...] = (), printer: Printer | None = None) -> Made:
    """The template of a job, corrected for the printer where one is given.

    Raises InputError for a job, paper or font that cannot be used.  It is made whatever the findings say: whether a
    *stop* among them keeps it from being printed is for the caller.
    """
    plan = plan_wall(job)
    return finish_template(plan, find(plan), plan_sheets(plan, job.paper, printer), fonts)


def finish_template(
    plan: Plan, findings: tuple[Finding, ...], sheets: SheetPlan, fonts: tuple[Path, ...] = (), bare: bool = False,
    reported: bool = True, older: Papers | None = None,
) -> Made:  # fmt: skip
    """The template of a plan, of which everything else is known; with `bare` its sheets alone, without a report (empty
    then) where it is not to be `reported`.  `older` is the paper of which sheets are kept, where these have photo tags.

    Raises InputError for a font that cannot be used.
    """
    lettering, expected = job_lettering(plan.job, fonts), expected_error(plan, sheets)
    template = draw_template(plan, findings, sheets, expected, lettering, bare, older)
    tags = drawn_tags(plan, sheets, template)
    pages = len(template.pages)
    report = template_report(plan, findings, sheets, expected, pages, tags) if reported else {}
    first = draw_first_pages(plan, findings, sheets, expected, lettering)
    return Made(
        write_pdf(template, lettering), report, findings, len(sheets.on_these_pages),
        (sheets.page.width * POINT, sheets.page.height * POINT), effort(sheets), expected,
        write_pdf(first, lettering) if first else None,
        lacking(tags, sheets) if sheets.paper.photo else "",
    )  # fmt: skip


def template_marks(job: Job, fonts: tuple[Path, ...] = (), printer: Printer | None = None) -> Papers:
    """What a photograph of a job's taped template is compared with, as its sheets are laid now."""
    plan = plan_wall(job)
    sheets = plan_sheets(plan, job.paper, printer)
    template = draw_template(plan, find(plan), sheets, expected_error(plan, sheets), job_lettering(job, fonts))
    return papers(plan, sheets, drawn_tags(plan, sheets, template))


def planned_on(plan: Plan, paper: Paper, printer: Printer | None = None, quick: bool = False) -> SheetPlan | None:
    """The sheets of a plan on another paper; None where that is too small, or cannot have what is asked for."""
    try:
        return plan_sheets(plan.on(paper), paper, printer, quick)
    except InputError:
        return None


def on_paper(
    job: Job, size: str | None = None, cover: str | None = None, trim: str | None = None, one_piece: bool = False,
    photo: bool = False,
) -> Job:  # fmt: skip
    """The same job on another paper, covering more or less, cut or not, as large pages for a print shop, with tags for
    a photograph.

    The paper of sheets that a roll or one piece stands in for is kept for the first pages, and a job for a print shop
    is on that again where another paper is asked for.  Raises InputError for an unknown paper.
    """
    paper = job.paper
    if paper.kind == "one piece" and (size or cover or trim):
        paper = first_paper(paper, job.unit)
    if size is not None:
        roll = roll_width(size, "--paper")
        width, height = (roll, MOST_SIDE) if roll else paper_size(size, "--paper")
        first = paper if roll and paper.kind == "sheets" else None
        kind = "roll" if roll else "sheets"
        paper = replace(paper, name=size, width=width, height=height, kind=kind, first=first)
    paper = replace(paper, cover=cover or paper.cover, trim=trim or paper.trim, photo=photo or paper.photo)
    return replace(job, paper=large_page(paper) if one_piece else paper)
