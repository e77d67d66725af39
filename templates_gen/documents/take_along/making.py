"""A take-along page in one call: from a plan to the bytes of its HTML file."""

from __future__ import annotations

from templates_gen.arranging.plan import Plan
from templates_gen.checks import find
from templates_gen.documents.proof.making import proof_of
from templates_gen.documents.take_along.page import take_along
from templates_gen.printer.profile import Printer
from templates_gen.tolerance.holding import plan_sheets


def make_guide(plan: Plan, printer: Printer | None = None) -> bytes:
    """The page of a plan, with the sheets of its template.

    It is made whatever the findings say, which stand on it first.  Raises InputError for paper too small, or a picture
    that cannot be read.
    """
    svg = proof_of(plan, "svg").content.decode()
    return take_along(plan, find(plan), plan_sheets(plan, plan.job.paper, printer), svg[svg.index("<svg") :])
