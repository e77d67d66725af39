"""Everything there is to say about a job before paper is used."""

from __future__ import annotations

from pathlib import Path

from templates_gen.arranging.plan import Plan
from templates_gen.arranging.search.score import Score
from templates_gen.base.errors import InputError
from templates_gen.base.record import Record, replace
from templates_gen.checks import WARN, Finding, find, graded
from templates_gen.checks.untold import not_checked
from templates_gen.documents.options.score_words import plan_score
from templates_gen.tolerance.expected import Expected, expected_error
from templates_gen.tolerance.holding import plan_sheets

MOST_FRAMES = 200
"""Frames for which the sheets are planned in a check, which stays under half a second then.  Our own design."""

TOO_MANY = f"expected error: left out for more than {MOST_FRAMES} frames; the first page tells it"


class Checked(Record, frozen=True):
    """What was found, the error to expect (None for a single frame, for too `many` frames, or without a sheet plan),
    the score of the arrangement, if it has one, and what was not checked for want of being told."""

    findings: tuple[Finding, ...]
    expected: Expected | None
    score: Score | None = None
    many: bool = False
    unchecked: tuple[str, ...] = ()


def check_plan(plan: Plan, path: Path | None = None) -> Checked:
    """Check the plan of a job; that its paper is too small is a finding.

    With the path of its job file the findings have their cures.
    """
    checked = Checked(found(plan, path), None, plan_score(plan), unchecked=not_checked(plan))
    if not 1 < len(plan.frames) <= MOST_FRAMES:
        return replace(checked, many=len(plan.frames) > 1)
    try:
        return replace(checked, expected=expected_error(plan, plan_sheets(plan, plan.job.paper)))
    except InputError as error:
        return replace(checked, findings=graded((*checked.findings, _no_sheets(plan, error))))


def found(plan: Plan, path: Path | None = None) -> tuple[Finding, ...]:
    """What is found about a plan, with cures where the path of its job file is given: they are tried by reading it."""
    findings = find(plan)
    if path is None or not findings:
        return findings
    from templates_gen.checks.cures.curing import cured

    return cured(plan, findings, path)


def _no_sheets(plan: Plan, error: InputError) -> Finding:
    ways = "; ".join(error.hint.splitlines())
    hint = f" What helps: {ways}." if ways else ""
    text = f"No template can be planned on {plan.job.paper.name} paper: {error.problem}.{hint}"
    return Finding(WARN, "no-sheet-plan", (), text)
