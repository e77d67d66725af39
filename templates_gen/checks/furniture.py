"""Does the group go with the furniture that it hangs above: how far above it, and how wide beside it."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import exceeds
from templates_gen.base.units import INCH, show_both
from templates_gen.checks.finding import NOTE, Finding
from templates_gen.job.model import Feature

LEAST_ABOVE, MOST_ABOVE = 150.0, 255.0
"""mm (6-10 in) between furniture and the group above it.  Common practice in interior design, no standard; 10 in from
memory."""

ABOVE_WORDS = {"in": "6 to 10 in", "cm": "15 to 25 cm", "mm": "150 to 250 mm"}

USUAL_ABOVE = 6 * INCH, 10 * INCH
"""mm between which it is moved: common practice, no source."""

NARROW, WIDE = 0.5, 1.0
"""Of the furniture's width, between which a group above it is not remarked on; two thirds to three quarters are
usual.  Common practice in interior design, no standard."""

SMALL = 0.5
"""Of the group's width: furniture less wide stands under it by chance, such as a chair.  Our own, no source."""

USUAL_WIDTH = "two thirds to three quarters of its width"

SOURCE = "common practice, no source"


def under(plan: Plan) -> Feature | None:
    """The piece of furniture that the group hangs above: the one that it is hung by, else that under its middle, unless
    that is a small thing beside it."""
    pieces = [each for each in plan.job.wall.features if each.kind == "furniture" and each.rect.width > 0]
    below = [each for each in pieces if not exceeds(each.rect.y1, plan.group.y0)]
    named = next((each for each in below if each.name == plan.job.group.height.feature), None)
    large = [each for each in below if each.rect.width >= SMALL * plan.group.width]
    middle = (each for each in large if each.rect.x0 <= plan.group.cx <= each.rect.x1)
    return named or max(middle, key=lambda each: each.rect.y1, default=None)


def _furniture_clearance(plan: Plan) -> Iterator[Finding]:
    for feature in plan.job.wall.features:
        gap = plan.group.y0 - feature.rect.y1
        beside = feature.rect.x0 >= plan.group.x1 or feature.rect.x1 <= plan.group.x0
        if feature.kind != "furniture" or beside or exceeds(0.0, gap):
            continue
        if exceeds(LEAST_ABOVE, gap) or exceeds(gap, MOST_ABOVE):
            usual = "lower" if gap < LEAST_ABOVE else "higher"
            hangs = f"The group hangs {show_both(gap, plan.job.unit)} above the {feature.name}"
            text = f"{hangs}, {usual} than usual: {ABOVE_WORDS[plan.job.unit]} is common."
            yield Finding(NOTE, "furniture-clearance", (), text, SOURCE)


def _proportion(plan: Plan) -> Iterator[Finding]:
    """A group that is wider than what it hangs above, or narrower than half of it."""
    feature, unit = under(plan), plan.job.unit
    if feature is None or plan.job.group.around:
        return
    own, whole = plan.group.width, feature.rect.width
    if not exceeds(NARROW * whole, own) and not exceeds(own, WIDE * whole):
        return
    much = "wider than" if own > whole else "less than half as wide as"
    text = (
        f"The group is {show_both(own, unit)} wide, {much} the {feature.name} under it ({show_both(whole, unit)}): "
        f"{USUAL_WIDTH} is common."
    )
    yield Finding(NOTE, "furniture-width", (), text, SOURCE)


RULES = (_furniture_clearance, _proportion)
