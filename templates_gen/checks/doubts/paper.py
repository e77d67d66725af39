"""Doubts about the paper, and about how exactly the person measures."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.checks.doubts import usual
from templates_gen.checks.doubts.doubt import Doubt, unusual, written
from templates_gen.job.model import Job

RULE = "doubtful-paper"

DEVIATIONS = ("reading", "match", "drop", "nailing", "placing")

SIDES = ("top", "right", "bottom", "left")


def paper_doubts(job: Job) -> Iterator[Doubt]:
    """What is doubtful about the paper's size and margins."""
    known, paper = written(job), job.paper
    for name, mm in zip(SIDES, paper.margin, strict=True):
        yield from unusual(RULE, f"paper, margin, {name}", mm, usual.MARGIN, known, "what a printer cannot reach")
    for name in DEVIATIONS:
        place = f"accuracy, {name}"
        yield from unusual(RULE, place, getattr(job.accuracy, name), usual.DEVIATION, known, "a standard deviation")
    if paper.kind == "sheets":
        for name, mm in (("width", paper.width), ("height", paper.height)):
            yield from unusual(RULE, f"paper, size, {name}", mm, usual.SHEET_SIDE, known, f"the {name} of a sheet")
