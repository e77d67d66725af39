"""What hangs over people: over beds, seats, and where babies lie."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import exceeds
from templates_gen.base.words import some
from templates_gen.checks.finding import NOTE, WARN, Finding
from templates_gen.checks.sentences import listed
from templates_gen.hanging.weight_classes import LIGHT_WORDS, is_heavy
from templates_gen.job.model import Feature
from templates_gen.job.seats import USES, use_by_name

SHAKING_SOURCE = "FEMA, Mount Framed Pictures and Mirrors Securely, April 2008; Earthquake Country Alliance, step 1"
"""Large pictures not over beds, chairs or couches; only soft art over beds or sofas."""

OVER_SOURCE = f"{SHAKING_SOURCE}; the rest is common practice"

COT_SOURCE = "common advice in nursery-safety texts"


def use_of(feature: Feature) -> str:
    """What people do on a piece of furniture: as the job says it, or by the words of its name; "" for neither."""
    return feature.use if feature.kind != "furniture" or feature.use else use_by_name(feature.name)


def is_over(hung: Hung, feature: Feature) -> bool:
    """True when the frame reaches higher than the feature and lies over some of its width."""
    one, two = hung.rect, feature.rect
    return exceeds(two.x1, one.x0) and exceeds(one.x1, two.x0) and exceeds(one.y1, two.y1)


def _over_bed(plan: Plan) -> Iterator[Finding]:
    for feature in plan.job.wall.features:
        use = use_of(feature)
        if use not in USES:
            continue
        over = [hung for hung in plan.frames if is_over(hung, feature) and (use == "cot" or not _soft(hung))]
        known = [hung for hung in over if use == "cot" or _may_hurt(hung, bool(plan.job.wall.earthquake))]
        for level, frames in ((WARN, known), (NOTE, [hung for hung in over if hung not in known])):
            if frames:
                names = tuple(hung.frame.id for hung in frames)
                advice, source = _advice(plan, frames, use)
                text = f"Over the {_place(feature)}: {listed(names)}. {advice}"
                yield Finding(level, "over-bed", names, text, source)


def _advice(plan: Plan, frames: Sequence[Hung], use: str) -> tuple[str, str]:
    """What to do about what hangs over people, and who says so."""
    if use == "cot":
        return "Hang frames elsewhere: nothing that can fall over a crib or cot.", COT_SOURCE
    if plan.job.wall.earthquake:
        return "In earthquake country hang only soft, light pieces over people, and others elsewhere.", SHAKING_SOURCE
    return _usual(frames), OVER_SOURCE


def _soft(hung: Hung) -> bool:
    """True for what is known to be light and unglazed."""
    weight = hung.frame.weight
    return hung.frame.glazing == "none" and weight is not None and not is_heavy(weight)


def _may_hurt(hung: Hung, shaken: bool) -> bool:
    """True for what is known to be heavy, or to have glass in it; where the earth may shake, acrylic too."""
    return hung.frame.glazing in (("glass", "acrylic") if shaken else ("glass",)) or is_heavy(hung.frame.weight)


def _place(feature: Feature) -> str:
    use = {"cot": "crib or cot"}.get(feature.use, feature.use)
    return f"{feature.called} ({use})" if use and use not in feature.called else feature.called


def _usual(frames: Sequence[Hung]) -> str:
    """The caution, what is usual all the same, and what of that these frames lack or the job does not tell."""
    told = (
        ("too heavy", [hung for hung in frames if is_heavy(hung.frame.weight)]),
        ("weight not given", [hung for hung in frames if hung.frame.weight is None]),
        ("glass", [hung for hung in frames if hung.frame.glazing == "glass"]),
        ("glazing not given", [hung for hung in frames if not hung.frame.glazing]),
        ("one fixing", [hung for hung in frames if len(hung.bearings) < 2]),
    )
    lacks = [f"{what} ({some([hung.frame.id for hung in those])})" for what, those in told if those]
    return (
        "Earthquake advice is to hang only soft, light pieces over people. Elsewhere common practice is: "
        f"{LIGHT_WORDS}, acrylic and no glass, two rated fixings each, into studs or masonry. "
        + (f"Here: {', '.join(lacks)}. " if lacks else "")
        + "The makers' ratings and a professional decide."
    )


RULES = (_over_bed,)
