"""The other ways to have the paper, one line each: what they take, and how exact they are."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import InputError
from templates_gen.base.units import show
from templates_gen.documents.making import on_paper
from templates_gen.drawing.items import POINT
from templates_gen.job.model import Job
from templates_gen.printer.profile import Printer
from templates_gen.tiling.sheet import plan_sheets
from templates_gen.tolerance.effort import effort
from templates_gen.tolerance.expected import expected_error

ROLLS = {"in": (24.0, 36.0, 42.0, 44.0), "mm": (610.0, 914.0, 1067.0), "cm": (610.0, 914.0, 1067.0)}
"""Widths of the usual rolls, in inches or mm: from memory."""


def other_ways(job: Job, printer: Printer | None = None) -> list[str]:
    """Lines for the covers that the job does not ask for, and for one piece."""
    lines = [f"{cover}: {words}" for cover in _covers(job) for words in _way(job, cover, printer)]
    return [*lines, *_one_piece(job)]


def _covers(job: Job) -> tuple[str, ...]:
    return tuple(cover for cover in ("linked", "marks", "nails") if cover != job.paper.cover)


def _way(job: Job, cover: str, printer: Printer | None) -> Iterator[str]:
    plan = plan_wall(on_paper(job, cover=cover))
    try:
        sheets = plan_sheets(plan, plan.job.paper, printer)
    except InputError:  # the paper is too small for it
        return
    expected = expected_error(plan, sheets)
    exact = f"; neighbours within {show(expected.step, job.unit)} of one line" if expected else ""
    yield f"{effort(sheets).words}{exact}"


def _one_piece(job: Job) -> Iterator[str]:
    """The narrowest roll that the group fits on in one page, lying or standing."""
    plan = plan_wall(on_paper(job, one_piece=True))
    try:
        sheets = plan_sheets(plan, plan.job.paper)
    except InputError:
        return
    if len(sheets.sheets) > 1:
        yield f"one piece: {len(sheets.sheets)} panels from a print shop"
        return
    unit, inch = ("in", 25.4) if job.unit == "in" else ("mm", 1.0)
    side = min(sheets.page.width, sheets.page.height) * POINT
    roll = next((width for width in ROLLS[job.unit] if side <= width * inch), None)
    ask = f"ask a print shop for a {roll:g} {unit} roll" if roll else "wider than the usual rolls: ask a print shop"
    yield f"one piece: {ask}"
