"""What a paper of its own is printed on."""

from __future__ import annotations

from templates_gen.marks.firstfile import first_paper
from templates_gen.model import Job, Paper
from templates_gen.papersizes import sheet_size
from templates_gen.record import replace


def own_paper(job: Job, size: str | None = None) -> Paper:
    """The paper of this size, or the job's sheets, or what the first pages of a roll or of one piece are printed on.

    Raises InputError for an unknown size, and for a roll.
    """
    paper = first_paper(job.paper, job.unit)
    if size is None:
        return paper
    width, height = sheet_size(size, "--paper")
    return replace(paper, name=size, width=width, height=height)
