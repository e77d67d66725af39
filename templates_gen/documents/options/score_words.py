"""An arrangement's score in words, and for a machine."""

from __future__ import annotations

from templates_gen.arranging.plan import Plan
from templates_gen.arranging.search.score import Score, score

SEEN, MUCH = 0.03, 0.15
"""How much heavier one side is that is worth a word, and a strong one.  Our own design, no source."""

COMPACT, LOOSE = 0.9, 0.75
"""Shares of a group's outline that are filled.  Our own design, no source."""


def plan_score(plan: Plan) -> Score | None:
    """The score of a plan's arrangement about its centre line; None for a single frame, and for frames that climb with
    a stair, for which balance about an upright line means nothing."""
    if len(plan.frames) < 2 or plan.slope:
        return None
    group = plan.job.group
    inside = [group.around.rect.grown(group.gap_around)] if group.around else []
    return score([hung.rect for hung in plan.frames], group.gap_across, group.gap_down, plan.centre_line, inside)


def score_words(found: Score) -> str:
    """The score and what it comes from, in one line."""
    parts = (
        lean_words(found),
        f"{_filled(found.filled)}: it fills {_percent(found.filled)} of its outline",
        f"{_percent(found.mirrored)} as in the mirror",
        f"balance {found.balance:.2f}, equilibrium {found.equilibrium:.2f}, symmetry {found.symmetry:.2f}",
    )
    return f"arrangement scores {100 * found.total:.0f} of 100: {'; '.join(parts)}"


def lean_words(found: Score) -> str:
    """Where the weight of an arrangement lies."""
    sides = (found.left_heavy, "left", "right", "on the "), (found.top_heavy, "top", "bottom", "at the ")
    return "; ".join(_heavy(*side) for side in sides)


def _heavy(by: float, one: str, other: str, where: str) -> str:
    if abs(by) < SEEN:
        return f"balanced {one} and {other}"
    return f"{'a little ' if abs(by) < MUCH else ''}heavy {where}{one if by > 0 else other}: {_percent(abs(by))}"


def _percent(share: float) -> str:
    return f"{100 * share:.0f} %"


def _filled(share: float) -> str:
    return "compact" if share >= COMPACT else "loose" if share < LOOSE else "fairly compact"


def score_data(found: Score | None) -> dict[str, float] | None:
    """The measures for a machine, to 0.001: `total` from 0 to 1, `left_heavy` and `top_heavy` from -1 to 1, `mass_off`
    in per cent."""
    if found is None:
        return None
    return {name: round(float(getattr(found, name)), 3) + 0.0 for name in found.__struct_fields__}
