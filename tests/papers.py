"""The papers beside the template, of every sample and generated job, and what their pages draw, read back."""

from __future__ import annotations

import io
from functools import cache

import pypdf

from templates_gen.arranging.plan import plan_wall
from templates_gen.documents.labels.label_sheet import label_sheet
from templates_gen.documents.labels.labels import labels
from templates_gen.documents.measuring.sheet import measuring_sheet
from templates_gen.drawing.items import Template
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.pdf.writing import write_pdf
from templates_gen.job.model import Job
from templates_gen.job.paper_sizes import own_paper
from tests.made import made
from tests.pdf_reading import Marks, page_marks
from tests.shared import made_once

POINT = 25.4 / 72  # mm; ISO 32000-1, 8.3.2.3, and the international inch of 1959
LABEL, PITCH, FIRST = (70.0, 36.0), (70.0, 37.0), (0.0, 4.5)  # mm; labels of our own, no source


def _measuring(job: Job, lettering: Lettering) -> Template:
    return measuring_sheet(job, own_paper(job), lettering)


def _to_cut(job: Job, lettering: Lettering) -> Template:
    return labels(plan_wall(job), label_sheet(own_paper(job), job.unit), lettering)


def _on_labels(job: Job, lettering: Lettering) -> Template:
    return labels(plan_wall(job), label_sheet(own_paper(job, "a4"), job.unit, LABEL, PITCH, FIRST), lettering, 4)


PAPERS = {"measuring sheet": _measuring, "labels to cut": _to_cut, "sheet of labels": _on_labels}


@cache
def paper(kind: str, name: str) -> Template:
    """This paper of the job of this name."""
    done = made(name)
    return PAPERS[kind](done.job, done.lettering)


@cache
def marks(kind: str, name: str) -> list[Marks]:
    """What every page of its file draws."""
    return made_once(("paper", kind, name), lambda: read_back(paper(kind, name), made(name).lettering))


def read_back(template: Template, lettering: Lettering) -> list[Marks]:
    """What every page of a written file draws; points of the page."""
    reader = pypdf.PdfReader(io.BytesIO(write_pdf(template, lettering)), strict=True)
    return [page_marks(page) for page in reader.pages]
