"""Who stands on a ladder or a step stool to drive a nail."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import exceeds
from templates_gen.base.units import show_both
from templates_gen.checks.cables.wiring import Entry, entries
from templates_gen.checks.finding import NOTE, Finding
from templates_gen.checks.sentences import ground, listed, once
from templates_gen.checks.stairs import on_steps

REACH = 2000.0
"""mm; a nail higher than this is driven from a ladder or steps.  Common practice, no source."""

STOOL_REACH = 1800.0
"""mm; a nail higher than this, and up to `REACH`, is driven from a step stool, for a hammer is not well swung
over one's head.  Our own choice, no source."""

LADDER_SOURCE = "top step: OSHA, 29 CFR 1926.1053(b)(13); the rest is common practice"
"""The rule says that the top or the top step of a stepladder is not to be stood on, and no more."""

PRACTICE = "common practice"

FIRST = "Follow the {} maker's instructions first."

LADDER = (
    "Do not stand on a stepladder's top or its top step. Keep three points of contact while climbing, lean a ladder "
    "1 out for 4 up, and have someone hold it and hand you things. " + FIRST.format("ladder")
)

STOOL = (
    "Stand on a step stool, opened fully on firm and level floor, not on a chair or on furniture, and do not lean out "
    "from it. " + FIRST.format("stool")
)


def stood_on(plan: Plan) -> str:
    """What to bring to stand on for the highest nail, as these findings and that about stairs have it; or nothing."""
    if any(on_steps(plan, hung.rect) for hung in plan.frames):
        return "ladder made for stairs, or platform"
    return "ladder" if _above(plan, REACH) else "step stool" if _above(plan, STOOL_REACH) else ""


def _ladder(plan: Plan) -> Iterator[Finding]:
    if high := _above(plan, REACH):
        source = PRACTICE if plan.job.wall.wiring in ("uk", "de") else LADDER_SOURCE
        text = f"{_where(plan, REACH, high)} {LADDER}"
        yield Finding(NOTE, "ladder", once(nail.frame for nail in high), text, source, _names(high))


def _step_stool(plan: Plan) -> Iterator[Finding]:
    """Nothing where a ladder is at hand for higher ones, nor over stairs, of which another finding tells."""
    over = {hung.frame.id for hung in plan.frames if on_steps(plan, hung.rect)}
    high = [nail for nail in _above(plan, STOOL_REACH) if nail.frame not in over]
    if high and not _above(plan, REACH):
        text = f"{_where(plan, STOOL_REACH, high)} {STOOL}"
        yield Finding(NOTE, "step-stool", once(nail.frame for nail in high), text, PRACTICE, _names(high))


def _above(plan: Plan, height: float) -> list[Entry]:
    """The nails so far above what one stands on (mm)."""
    above = plan.job.wall.above_ground
    return [nail for nail in entries(plan) if exceeds(above(nail.x, nail.high), height)]


def _names(nails: Sequence[Entry]) -> tuple[str, ...]:
    return tuple(nail.name for nail in nails)


def _where(plan: Plan, height: float, nails: Sequence[Entry]) -> str:
    return f"More than {show_both(height, plan.job.unit)} above {ground(plan)}: {listed(_names(nails), 'nail')}."


RULES = (_ladder, _step_stool)
