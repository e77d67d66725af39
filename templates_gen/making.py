"""The main job in one call: from a finished job to the bytes of its template and what a machine reads about it."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from templates_gen.findings import Finding, find
from templates_gen.lettering import Lettering
from templates_gen.marks.drawing import draw_template
from templates_gen.model import Job
from templates_gen.papersizes import checked_size, paper_size
from templates_gen.pdf.writing import write_pdf
from templates_gen.planning import plan_wall
from templates_gen.record import Record, replace
from templates_gen.report import template_report
from templates_gen.sheets.sheet import plan_sheets


class Made(Record, frozen=True):
    """A finished template: the file's bytes, its report, its findings, and how many sheets of wall it has."""

    pdf: bytes
    report: dict[str, Any]
    findings: tuple[Finding, ...]
    sheets: int


def make_template(job: Job, fonts: tuple[Path, ...] = ()) -> Made:
    """The template of a job.  Raises InputError for a job, paper or font that cannot be used.

    It is made whatever the findings say: whether a *stop* among them keeps it from being printed is for the caller.
    """
    plan = plan_wall(job)
    findings = find(plan)
    sheets = plan_sheets(plan, job.paper)
    lettering = Lettering((*fonts, *((Path(job.paper.font),) if job.paper.font else ())))
    template = draw_template(plan, findings, sheets, lettering)
    report = template_report(plan, findings, sheets, len(template.pages))
    return Made(write_pdf(template, lettering), report, findings, len(sheets.sheets))


def on_paper(job: Job, size: str | None = None, cover: str | None = None) -> Job:
    """The same job on another paper, or covering more or less.  Raises InputError for an unknown paper."""
    paper = job.paper
    if size is not None:
        width, height = checked_size(*paper_size(size, "--paper"), "--paper")
        paper = replace(paper, name=size, width=width, height=height)
    return replace(job, paper=paper if cover is None else replace(paper, cover=cover))
