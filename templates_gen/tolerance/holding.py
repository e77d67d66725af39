"""The sheets of a template that hold its frames as exactly as strips of sheets do, and take the fewest minutes."""

from __future__ import annotations

from templates_gen.arranging.plan import Plan
from templates_gen.job.model import Paper
from templates_gen.printer.profile import Printer
from templates_gen.tiling.planning import tiled
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.numbering import in_order_of_taping


def plan_sheets(plan: Plan, paper: Paper, printer: Printer | None = None, quick: bool = False) -> SheetPlan:
    """The sheets that show what `paper.cover` asks for, corrected for the printer, numbered in the order of taping.

    With `quick` no time goes into fewer minutes.  Raises InputError when the paper is too small.
    """
    return in_order_of_taping(tiled(plan, paper, printer, quick))
