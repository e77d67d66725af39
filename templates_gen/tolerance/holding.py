"""The sheets of a template that take the fewest minutes, and hold its frames nearly as exactly as strips of sheets."""

from __future__ import annotations

from templates_gen.arranging.plan import Plan
from templates_gen.job.model import Paper
from templates_gen.printer.profile import Printer
from templates_gen.tiling.planning import tiled
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tiling.sketch import Held
from templates_gen.tolerance.expected import worst_error
from templates_gen.tolerance.neighbours import neighbours
from templates_gen.tolerance.order import in_order_of_taping
from templates_gen.tolerance.worst import Worst

WITH_STRING, WITHOUT = 1.1, 1.25
"""How many times the error of strips with whole edges that of other sheets may be, with the level line held to a string
and without.  Our own design, no source."""


def plan_sheets(plan: Plan, paper: Paper, printer: Printer | None = None, quick: bool = False) -> SheetPlan:
    """The sheets that show what `paper.cover` asks for, corrected for the printer, numbered in the order of taping.

    No pair of neighbours errs by more than the worst of strips with whole edges, but for a little (`WITH_STRING`,
    `WITHOUT`).  With `quick` no time goes into fewer minutes.  Raises InputError when the paper is too small.
    """
    return in_order_of_taping(tiled(plan, paper, printer, quick, holding(plan)))


def holding(plan: Plan) -> Held:
    """How the error of a plan's sheets is known, and what it may be."""
    pairs = neighbours(plan) if len(plan.frames) > 1 else ()
    times = WITH_STRING if plan.job.accuracy.string else WITHOUT
    return Held(
        lambda sheets: worst_error(plan, sheets, pairs),
        lambda like, limit: Worst(plan, pairs, like, limit).excess,
        times,
    )
