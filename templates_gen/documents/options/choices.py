"""What there is to choose from: arrangements as plans, with what a person wants to know of each."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from templates_gen.arranging.plan import Plan, as_it_is, free_pile, placed, plan_wall
from templates_gen.arranging.search.task import Watch, no_room
from templates_gen.arranging.search.variety import alike, variety
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import TOLERANCE
from templates_gen.base.record import Record, replace
from templates_gen.base.units import other_unit, show, show_size
from templates_gen.checks import STOP, WARN, Finding, find
from templates_gen.checks.furniture import under
from templates_gen.documents.options.score_words import lean_words, plan_score
from templates_gen.documents.other_ways import roughly
from templates_gen.documents.schedule.distances import above_floor
from templates_gen.job.model import Job
from templates_gen.job.wishes import Wishes

BOUND = ("stairs", "around")
"""Arrangements that are bound to something on the wall: there is nothing to choose."""


SAID = {STOP: "cannot be hung like this", WARN: "to settle first"}
"""How grave what was found is, to whoever chooses."""


AS_IT_IS = "as it is"
"""The kind of the arrangement that the job has now: what a client knows already, and holds the others against."""


class Option(Record, frozen=True):
    """An arrangement to choose: its kind in words, its plan, its score from 0 to 100, about what its paper takes in
    words (None where no sheets can be planned), and what would stop or wants a decision."""

    number: int
    kind: str
    plan: Plan
    score: float
    lean: str
    paper: str | None
    findings: tuple[Finding, ...]


def options(job: Job, count: int, watch: Watch | None = None) -> tuple[Option, ...]:
    """Up to so many options for a job, numbered from 1: the arrangement as it is, then others, the best first.

    The same job gives the same ones.  Of one alone no other is searched for.

    Raises InputError for a group whose places are bound to a stair or a feature, a single frame, or frames that find
    no room.
    """
    group = job.group
    if group.arrangement in BOUND:
        problem = f"found {group.arrangement!r}, expected one whose frames are free to move, such as row, rows or salon"
        raise InputError("group, arrangement", problem, "write another order into the job, and look at its proof")
    if len(job.frames) < 2:
        raise InputError("frame", "found a single frame, expected two or more to arrange")
    free = replace(group, arrangement="salon", rows=(), spots=(), align="centre", set="centre",
                   wishes=group.wishes or Wishes())  # fmt: skip
    at_first = 0.0 if group.arrangement != "salon" else AT_FIRST if count > 1 else 1.0
    own = plan_wall(job, _share(watch, 0.0, at_first))
    found = variety(free_pile(job, free), count, _share(watch, at_first, 1.0)) if count > 1 else ()
    if count > 1 and not found:
        raise no_room("group")
    here = own.rects
    others = [choice for choice in found if not alike(here, choice.rects)][: count - 1]
    return (
        _option(1, AS_IT_IS, plan_wall(as_it_is(own, job))),
        *(_option(at, choice.kind, plan_wall(placed(job, choice.rects))) for at, choice in enumerate(others, 2)),
    )


AT_FIRST = 0.25
"""Of all steps those that find the places of the arrangement as it is, where they are found: one search of four.  Our
own design, no source."""


def _share(watch: Watch | None, start: float, end: float) -> Watch | None:
    """The part of the steps from `start` to `end` that one search is."""
    return None if watch is None else lambda done: watch(start + done * (end - start))


def _option(number: int, kind: str, plan: Plan) -> Option:
    score = plan_score(plan)
    graver = tuple(finding for finding in find(plan) if finding.level in (STOP, WARN))
    total, lean = (100 * score.total, lean_words(score)) if score else (0.0, "")
    return Option(number, kind, plan, total, lean, roughly(plan), graver)


def option_lines(option: Option) -> tuple[str, str, str]:
    """Three lines about an option for whoever plans: kind and score, size, and paper with what was found."""
    return f"{option.kind}; scores {option.score:.0f} of 100; {option.lean}", _size(option), _paper(option, ())


def client_lines(option: Option, but: Collection[str] = ()) -> tuple[str, ...]:
    """The same for whoever chooses: kind and size, how wide it is for the furniture under it, and paper with what was
    found, `but` these rules."""
    return tuple(filter(None, (option.kind, _size(option), _beside(option.plan), _paper(option, but))))


def _size(option: Option) -> str:
    group, unit = option.plan.group, option.plan.job.unit
    size, other = (show_size(group.width, group.height, name) for name in (unit, other_unit(unit)))
    return f"{size} ({other}), {show(group.y0, unit)} {above_floor(option.plan)}"


def _beside(plan: Plan) -> str:
    """The group's width beside that of the furniture under it; "" where there is none."""
    feature = under(plan)
    if feature is None:
        return ""
    share = 100 * plan.group.width / feature.rect.width
    if plan.group.width > feature.rect.width + TOLERANCE:
        return f"wider than the {feature.called}: {share:.0f} % of its width"
    return f"{share:.0f} % of the width of the {feature.called}"


def _paper(option: Option, but: Collection[str]) -> str:
    told = [f"{words}: {rules}" for level, words in SAID.items() if (rules := _rules(option, level, but))]
    return "; ".join([option.paper or "no sheet plan on this paper", *told])


def in_all(options: Sequence[Option]) -> frozenset[str]:
    """The rules that something was found about in every option: they have no part in the choice."""
    return frozenset.intersection(*(frozenset(finding.rule for finding in option.findings) for option in options))


def _rules(option: Option, level: str, but: Collection[str]) -> str:
    """The rules of the findings of a level, in their own words as they are named."""
    rules = (finding.rule for finding in option.findings if finding.level == level and finding.rule not in but)
    return ", ".join(dict.fromkeys(rule.replace("-", " ") for rule in rules))
