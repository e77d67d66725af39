"""Heavy and large frames: who lifts them, and bare nails of which nobody says what they hold."""

from __future__ import annotations

import math
from collections.abc import Iterator

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.units import KG, show_mass_both
from templates_gen.base.words import counted
from templates_gen.checks.finding import NOTE, WARN, Finding
from templates_gen.checks.sentences import WHO_DECIDES, listed, same_words
from templates_gen.hanging.fixings import TRADE_FACTOR, is_board
from templates_gen.hanging.weight_classes import on_bare_nails, wants_two, weight_class
from templates_gen.job.model import Wall
from templates_gen.job.weights import weight_words

LIFTING_SOURCE = "common practice"

RATING_SOURCE = "C. A. Paschke, Hardware: Wall Hangers and Cleats, trade column, April 2013"


RATED_FOR_WALL = "a hook or screw that its maker rates for this wall"


def _bare_nail(plan: Plan) -> Iterator[Finding]:
    """One for all frames of which the same is to be said."""
    unit, wall = plan.job.unit, plan.job.wall
    said = ((hung.frame.id, _not_known(hung, wall, unit)) for hung in plan.frames if on_bare_nails(hung.frame))
    for names, text in same_words(said):
        yield Finding(WARN, "bare-nail", names, text, RATING_SOURCE)


def _not_known(hung: Hung, wall: Wall, unit: str) -> str:
    """What a bare nail is not known to hold, and what to take instead."""
    count, each = len(hung.bearings), show_mass_both(rating_wanted(hung, unit), unit)
    rates = f"and plug that its maker rates for {wall.build}"
    instead = f"a hook or a screw {rates}" if wall.build in ("masonry", "plaster") else RATED_FOR_WALL
    into = "board" if is_board(wall) else wall.build or "this wall"
    return (
        f"{weight_words(hung.frame, unit)} on {counted(count, 'bare nail')}. What a bare nail holds in {into} is not "
        f"known: no maker rates it, and it is not computed here. Take {instead}, rated {each} or more"
        f"{' each' if count > 1 else ''} (4 times the weight, as the trade counts), and give that as fixing.rating. "
        f"{WHO_DECIDES}"
    )


def rating_wanted(hung: Hung, unit: str) -> float:
    """What the trade has each fixing of a frame rated for, in kg up to what is shown of it; 0 for no known weight."""
    weight = hung.frame.weight
    return 0.0 if weight is None or not hung.bearings else _up(TRADE_FACTOR * weight * max(hung.shares), unit)


def _up(kg: float, unit: str) -> float:
    """The weight up to what is shown of it: a tenth of a pound or a kilogram."""
    tenth = KG["lb" if unit == "in" else "kg"] / 10
    return math.ceil(kg / tenth - 1e-6) * tenth


def _two_people(plan: Plan) -> Iterator[Finding]:
    """One for those over 50 lb, where it wants a decision, and one for all others."""
    large = [hung for hung in plan.frames if wants_two(hung.frame)]
    grave = [hung for hung in large if weight_class(hung.frame.weight) == "heavy"]
    for level, frames in ((WARN, grave), (NOTE, [hung for hung in large if hung not in grave])):
        if frames:
            names = tuple(hung.frame.id for hung in frames)
            yield Finding(level, "two-people", names, _lifted(frames, plan.job.unit), LIFTING_SOURCE)


def _lifted(frames: list[Hung], unit: str) -> str:
    names = listed([hung.frame.id for hung in frames])
    one, every = ("it", "every fixing bears it") if len(frames) == 1 else ("one", "every fixing of it bears")
    glass = " Wear gloves for glass." if any(hung.frame.glazing == "glass" for hung in frames) else ""
    return (
        f"Two people lift {names}{_weights(frames, unit)}: one at each side, until {every}. Nobody stands under {one} "
        f"or climbs with {one} alone.{glass} Without a second person, leave it to a professional."
    )


def _weights(frames: list[Hung], unit: str) -> str:
    """The weight of one, or of the heaviest."""
    known = [hung for hung in frames if hung.frame.weight is not None]
    if not known:
        return ""
    heaviest = max(known, key=lambda hung: hung.frame.weight or 0.0)
    return f" ({'up to ' if len(frames) > 1 else ''}{weight_words(heaviest.frame, unit)})"


RULES = (_bare_nail, _two_people)
