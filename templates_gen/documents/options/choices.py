"""What there is to choose from: arrangements as plans, with what a person wants to know of each."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from templates_gen.arranging.plan import Plan, free_pile, placed, plan_wall
from templates_gen.arranging.search.variety import variety
from templates_gen.arranging.search.watch import Watch
from templates_gen.base.errors import InputError
from templates_gen.base.record import Record, replace
from templates_gen.base.units import other_unit, show
from templates_gen.base.words import counted
from templates_gen.checks import STOP, WARN, Finding, find
from templates_gen.documents.options.score_words import lean_words, plan_score
from templates_gen.documents.schedule.distances import above_floor
from templates_gen.job.model import Job
from templates_gen.job.wishes import Wishes
from templates_gen.tolerance.holding import plan_sheets

BOUND = ("stairs", "around")
"""Arrangements that are bound to something on the wall: there is nothing to choose."""


SAID = {STOP: "cannot be hung like this", WARN: "to settle first"}
"""How grave what was found is, to whoever chooses."""


class Option(Record, frozen=True):
    """An arrangement to choose: its kind in words, its plan, its score from 0 to 100, how many sheets it takes (None
    where none can be planned), and what would stop or wants a decision."""

    number: int
    kind: str
    plan: Plan
    score: float
    lean: str
    sheets: int | None
    findings: tuple[Finding, ...]


def options(job: Job, count: int, watch: Watch | None = None) -> tuple[Option, ...]:
    """Up to so many options for a job, the best first and numbered from 1; the same job gives the same ones.

    Raises InputError for a group whose places are bound to a stair or a feature, a single frame, or frames that find
    no room.
    """
    group = job.group
    if group.arrangement in BOUND:
        problem = f"found {group.arrangement!r}, whose frames have their places, expected a group with free places"
        raise InputError("group, arrangement", problem)
    if len(job.frames) < 2:
        raise InputError("frame", "found a single frame, expected two or more to arrange")
    free = replace(group, arrangement="salon", rows=(), spots=(), align="centre", set="centre",
                   wishes=group.wishes or Wishes())  # fmt: skip
    found = variety(free_pile(job, free), count, watch)
    if not found:
        raise InputError(
            "group", "no arrangement of these frames with their gaps has room on this wall",
            "smaller gaps, fewer frames, less clear space around features, or another height or centre_on",
        )  # fmt: skip
    return tuple(
        _option(number, choice.kind, plan_wall(placed(job, choice.rects))) for number, choice in enumerate(found, 1)
    )


def _option(number: int, kind: str, plan: Plan) -> Option:
    score = plan_score(plan)
    graver = tuple(finding for finding in find(plan) if finding.level in (STOP, WARN))
    try:
        sheets = len(plan_sheets(plan, plan.job.paper).sheets)
    except InputError:
        sheets = None
    total, lean = (100 * score.total, lean_words(score)) if score else (0.0, "")
    return Option(number, kind, plan, total, lean, sheets, graver)


def option_lines(option: Option, but: Collection[str] = ()) -> tuple[str, str, str]:
    """Three lines about an option: kind and score, size, and paper with what was found, `but` these rules."""
    group, unit = option.plan.group, option.plan.job.unit
    sheets = "no sheet plan on this paper" if option.sheets is None else counted(option.sheets, "sheet")
    told = [f"{words}: {rules}" for level, words in SAID.items() if (rules := _rules(option, level, but))]
    size, other = (f"{show(group.width, name)} × {show(group.height, name)}" for name in (unit, other_unit(unit)))
    return (
        f"{option.kind}; scores {option.score:.0f} of 100; {option.lean}",
        f"{size} ({other}), {show(group.y0, unit)} {above_floor(option.plan)}",
        "; ".join([sheets, *told]),
    )


def in_all(options: Sequence[Option]) -> frozenset[str]:
    """The rules that something was found about in every option: they have no part in the choice."""
    return frozenset.intersection(*(frozenset(finding.rule for finding in option.findings) for option in options))


def _rules(option: Option, level: str, but: Collection[str]) -> str:
    """The rules of the findings of a level, in their own words as they are named."""
    rules = (finding.rule for finding in option.findings if finding.level == level and finding.rule not in but)
    return ", ".join(dict.fromkeys(rule.replace("-", " ") for rule in rules))
