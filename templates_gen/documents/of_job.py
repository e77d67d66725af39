"""Files of pages about a job: what all of them say of it alike."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from templates_gen.drawing.items import MM_TO_POINTS, Form, Item, Matrix, Page, Template
from templates_gen.job.model import Job
from templates_gen.tiling import sheet


def of_job(
    job: Job, what: str, paper: sheet.Page, pages: Iterable[Page], forms: Iterable[Form] = (), attach: bool = False
) -> Template:
    """Pages about a job on this paper, `what` they are in the title; its own files travel inside where `attach`."""
    title, size = f"{job.title}: {what}" if what else job.title, (paper.width, paper.height)
    return Template(title, job.client, job.language, size, tuple(pages), tuple(forms), job.sources if attach else ())


def numbered(
    pages: Iterable[Sequence[Item]], titles: Mapping[int, str] | None = None, matrix: Matrix = MM_TO_POINTS
) -> tuple[Page, ...]:
    """Pages numbered from 1, with `titles` in the outline for some, counted from 0."""
    known = titles or {}
    return tuple(Page(f"{at + 1}", known.get(at, ""), tuple(items), matrix) for at, items in enumerate(pages))


def whose(job: Job) -> str:
    """Client, wall and date in a line, as far as they are given."""
    return " · ".join(filter(None, (job.client, job.wall.name, job.date)))
