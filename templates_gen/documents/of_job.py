"""Files of pages about a job: what all of them say of it alike."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence

from templates_gen.base.geometry import Rect
from templates_gen.drawing.items import MM_TO_POINTS, Form, Item, Matrix, Page, Template
from templates_gen.job.model import Job
from templates_gen.tiling.page import Page as PaperPage

MARGIN = 3.0
"""mm that text keeps from what a printer reaches at most.  Our own design, no source."""


def of_job(
    job: Job, what: str, paper: PaperPage, pages: Iterable[Page], forms: Iterable[Form] = (), attach: bool = False
) -> Template:
    """Pages about a job on this paper, `what` they are in the title; its own files travel inside where `attach`."""
    title, size = f"{job.title}: {what}" if what else job.title, (paper.width, paper.height)
    return Template(title, job.client, job.language, size, tuple(pages), tuple(forms), job.sources if attach else ())


def numbered(
    pages: Iterable[Sequence[Item]],
    titles: Mapping[int, str] | None = None,
    matrix: Matrix = MM_TO_POINTS,
    label: Callable[[int], str] = str,
) -> tuple[Page, ...]:
    """Pages labelled by their number, from 1, with `titles` in the outline for some, counted from 0."""
    known = titles or {}
    return tuple(Page(label(at + 1), known.get(at, ""), tuple(items), matrix) for at, items in enumerate(pages))


def roman(number: int) -> str:
    """i, ii, iii, iv, … for 1, 2, 3, 4, …, as pages before those with the numbers are numbered; up to 39."""
    return "x" * (number // 10) + ("", "i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix")[number % 10]


def text_area(page: PaperPage) -> Rect:
    """The part of a page without rulers that is free for text (page mm)."""
    return page.printable.grown(-MARGIN)


def whose(job: Job) -> str:
    """Client, wall and date in a line, as far as they are given."""
    return " · ".join(filter(None, (job.client, job.wall.name, job.date)))
