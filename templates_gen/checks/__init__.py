"""What is wrong or risky about a plan, said so that a client could read it.

A *stop* keeps the template from being printed, a *warn* wants a decision, a *note* is good to know.  Nothing here
ever says that a wall, a nail or a spot is safe.  Each file holds the rules of one question, in its `RULES`.
"""

from __future__ import annotations

from collections.abc import Iterable

from templates_gen.arranging.plan import Plan
from templates_gen.checks import (
    behind,
    board,
    building,
    fitting,
    found,
    furniture,
    hanging,
    holding,
    ladder,
    lifting,
    over,
    parts,
    people,
    stairs,
    twins,
    wire,
)
from templates_gen.checks.doubts import all_doubts
from templates_gen.checks.finding import NOTE, STOP, WARN, Finding, findings_data, stops

PARTS = (
    fitting, furniture, all_doubts, hanging, found, stairs, behind, lifting, over, people, ladder, building, wire,
    holding, board, parts, twins,
)  # fmt: skip
RULES = tuple(rule for part in PARTS for rule in part.RULES)


def find(plan: Plan) -> tuple[Finding, ...]:
    """Everything found about a plan, the stops first, and nothing twice."""
    return graded(dict.fromkeys(finding for rule in RULES for finding in rule(plan)))


def find_about(plan: Plan, frame: str) -> tuple[Finding, ...]:
    """What is found about one frame of a plan, the stops first; quicker than `find`, which compares each with each."""
    rules = (rule for rule in RULES if rule not in all_doubts.RULES)
    found = (*(finding for rule in rules for finding in rule(plan)), *all_doubts.doubtful(plan, frame))
    return graded(dict.fromkeys(finding for finding in found if frame in finding.about))


def graded(found: Iterable[Finding]) -> tuple[Finding, ...]:
    """The stops first, then the warns, and of one level in the order given."""
    return tuple(sorted(found, key=lambda finding: (STOP, WARN, NOTE).index(finding.level)))


__all__ = ["NOTE", "RULES", "STOP", "WARN", "Finding", "find", "find_about", "findings_data", "graded", "stops"]
