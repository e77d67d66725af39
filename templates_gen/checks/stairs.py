"""A stair along the wall: frames at its nosings, and who stands on it to hang them."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import Rect, exceeds
from templates_gen.base.units import show_both
from templates_gen.base.words import capital
from templates_gen.checks.finding import NOTE, STOP, WARN, Finding
from templates_gen.checks.sentences import Printed, by_how_much, listed, short_of

HANDRAIL = Printed(34, 865), Printed(38, 965)
"""Straight above the nosings, between which the top of a handrail is (2010 ADA Standards, 505.4, from memory)."""

HANDRAIL_SOURCE = "2010 ADA Standards, 505.4, from memory"

FOOTING_SOURCE = "OSHA, 29 CFR 1926.1053(b)(6), from memory: ladders on stable and level surfaces, unless secured"


def _over_stair(plan: Plan) -> Iterator[tuple[Hung, float]]:
    """The frames over a stair or its landing, with how high they are straight above its nosings (mm)."""
    wall = plan.job.wall
    for hung in plan.frames if wall.stairs else ():
        high = wall.least_above_ground(hung.rect)
        if high < hung.rect.y0:  # else there is only floor under it
            yield hung, high


def _at_nosings(plan: Plan) -> Iterator[Finding]:
    clear, unit = plan.job.wall.stairs.clear if plan.job.wall.stairs else 0.0, plan.job.unit
    for hung, high in _over_stair(plan):
        name = hung.frame.id
        line = "the line of the stair's nosings" if on_steps(plan, hung.rect) else "the landing"
        if exceeds(0.0, high):
            text = f"Frame {name} reaches {by_how_much(-high, unit)} below {line}."
            yield Finding(STOP, "below-nosings", (name,), text)
        elif exceeds(clear, high):
            up = short_of(clear, high, unit)
            text = f"Frame {name} is {up} above {line}, nearer than {show_both(clear, unit)}."
            yield Finding(WARN, "near-nosings", (name,), text)


def _handrail(plan: Plan) -> Iterator[Finding]:
    stairs, unit, (low, high) = plan.job.wall.stairs, plan.job.unit, HANDRAIL
    over = [(hung, up) for hung, up in _over_stair(plan) if not exceeds(0.0, up)]
    names = tuple(hung.frame.id for hung, up in over if exceeds(high.mm(unit), up))
    if names:
        line = "the nosings" if stairs is None or stairs.top is None else "the nosings or the landing"
        text = (
            f"Lower edge less than {high.words(unit)} straight above {line}: {listed(names)}. The top of a handrail is "
            f"at {low.words(unit)} to {high.words(unit)}: leave room for it and for the hands on it, and mind what "
            "people carry past. The local building code decides."
        )
        yield Finding(NOTE, "handrail", names, text, HANDRAIL_SOURCE)


def _climbing_on(plan: Plan) -> Iterator[Finding]:
    stairs, unit = plan.job.wall.stairs, plan.job.unit
    if stairs is None or stairs.top is None or plan.job.group.arrangement != "stairs":
        return
    on = [hung for hung in plan.frames if exceeds(stairs.line_at(hung.rect.cx), stairs.top)]
    if on:
        names, high = tuple(hung.frame.id for hung in on), max(hung.rect.cy for hung in on) - stairs.top
        text = (
            f"Over the landing the pitch line climbs on, and with it {listed(names)}: up to {show_both(high, unit)} "
            "above it in the middle. What is to hang no higher there than over the steps needs a job of its own."
        )
        yield Finding(NOTE, "climbing-on", names, text)


def _footing(plan: Plan) -> Iterator[Finding]:
    names = tuple(hung.frame.id for hung, _ in _over_stair(plan) if on_steps(plan, hung.rect))
    if names:
        text = (
            f"{capital(listed(names))}: over stairs. A common stepladder does not stand on steps, and anyone who falls "
            "will fall down the stairs. Use a ladder made for stairs, or a level platform fixed over the steps, set up "
            "by someone trained to do it; have a second person at its foot, and keep all others off the stairs. Over "
            "an open stairwell leave it to a professional."
        )
        yield Finding(WARN, "stair-footing", (), text, FOOTING_SOURCE)  # about the day, not about single nails


def on_steps(plan: Plan, rect: Rect) -> bool:
    """True when there are steps under the rectangle, and not only a landing."""
    stairs = plan.job.wall.stairs
    return stairs is not None and stairs.ground_at(rect.x0) != stairs.ground_at(rect.x1)


def _cables(plan: Plan) -> Iterator[Finding]:
    wall = plan.job.wall
    if wall.stairs and wall.wiring in ("uk", "de"):
        text = (
            "The zones where cables may run are worked out from a level floor and ceiling. Beside a stair they may "
            "follow it: look with a detector along the whole stair."
        )
        yield Finding(NOTE, "stair-cables", (), text)


RULES = (_at_nosings, _handrail, _climbing_on, _footing, _cables)
