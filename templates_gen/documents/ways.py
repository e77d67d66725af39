"""Every way to print a job, each planned to the end, with what it takes: to be chosen from side by side."""

from __future__ import annotations

from templates_gen.arranging.plan import Plan
from templates_gen.base.record import Record, replace
from templates_gen.base.words import capital
from templates_gen.documents.making import on_paper, planned_on
from templates_gen.documents.print_shop import ask_for
from templates_gen.job.paper_sizes import first_paper
from templates_gen.tolerance.effort import effort
from templates_gen.tolerance.expected import expected_error
from templates_gen.tolerance.statement import fine

COVERS = ("linked", "marks", "all", "nails")
"""What has to be on the paper, by the words of the job file."""


class PrintWay(Record, frozen=True):
    """One way: the cover that asks for it, its sheets, joins and loose pieces, about how many minutes it takes, how
    exact it comes out in words, and the part of the wall that each sheet shows (mm: left, bottom, right, top)."""

    cover: str
    sheets: int
    joins: int
    pieces: int
    minutes: float
    exact: str
    windows: tuple[tuple[str, tuple[float, float, float, float]], ...]


def print_way(plan: Plan, cover: str) -> PrintWay | None:
    """The job on its paper with this cover; None where that cannot be planned."""
    job, paper = plan.job, plan.job.paper
    sheets_of = first_paper(paper, job.unit) if paper.kind == "one piece" else paper
    own = plan.on(replace(sheets_of, cover=cover))
    sheets = planned_on(own, own.job.paper)
    if sheets is None:
        return None
    taken, expected = effort(sheets), expected_error(own, sheets)
    windows = tuple((sheet.name, sheet.window.sides) for sheet in sheets.sheets)
    exact = f"neighbours within {fine(expected.step, job.unit)} of one line" if expected else ""
    return PrintWay(cover, taken.sheets, taken.joins, taken.pieces, taken.minutes, exact, windows)


def shop_words(plan: Plan) -> str:
    """What to ask a print shop for, in a line; "" where the group is too large for one."""
    sheets = planned_on(plan, on_paper(plan.job, one_piece=True).paper)
    return capital(ask_for(sheets, plan.job.unit, 'choose the paper "{}" above')) if sheets else ""
