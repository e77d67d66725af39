"""Where people are: who walks into a frame, sits or lies under one, looks at one, or stands on a ladder for it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from templates_gen.behind.entries import entries
from templates_gen.findings.finding import NOTE, WARN, Finding
from templates_gen.findings.printed import Printed
from templates_gen.findings.words import listed, once
from templates_gen.geometry import TOLERANCE
from templates_gen.holding.weightclasses import HEAVY_WORDS, is_heavy
from templates_gen.model import Feature, Frame
from templates_gen.planning import Hung, Plan
from templates_gen.units import show_both
from templates_gen.words import capital

ADA_SOURCE = "2010 ADA Standards, 307.2"
DEEPEST, LOW_EDGE, HIGH_EDGE = Printed(4, 100), Printed(27, 685), Printed(80, 2030)
"""How far an object may stick out, and between which heights of its leading edge (2010 ADA Standards, 307.2)."""

ACCESS_RULES = "The rules on access where you are decide."

LABEL_SOURCE = "Smithsonian Guidelines for Accessible Exhibition Design, on labels, as others quote them"
LOW_CENTRE = Printed(40, 1015)
"""The middle of a small item is no higher, to be seen from a chair (the same guidelines)."""

EASY_BAND = Printed(48, 1220), Printed(66, 1675)
"""Between them lies the middle of a label that people see well who stand and who sit in a wheelchair (the same
guidelines, about labels).  They are quoted with 67 in beside 1675 mm, which is 66 in: the lower of the two is taken."""

SMALL = 200.0
"""mm; a frame whose longer side is no longer counts as a small item.  Our own reading, no source."""

REACH = 2000.0
"""mm; a nail higher than this is driven from a ladder or steps.  Common practice, no source."""

USES = {
    "bed": ("bed", "beds", "bunk", "bunks", "daybed", "futon", "headboard"),
    "cot": ("cot", "cots", "crib", "cribs", "cradle", "bassinet"),
    "seat": (
        "sofa", "sofas", "couch", "couches", "settee", "loveseat", "chair", "chairs", "armchair", "armchairs", "bench",
        "benches", "seat", "seats", "seating", "stool", "stools", "pew", "pews", "recliner", "wheelchair", "highchair",
    ),
}  # fmt: skip
"""What people lie or sit on, by words of a piece of furniture's name.  Our own list, no source."""

OVER_SOURCE = "FEMA, Mount Framed Pictures and Mirrors Securely, 2008; Earthquake Country Alliance, step 1"
LADDER_SOURCE = "OSHA, 29 CFR 1926.1053(b)(13)"

COT_SOURCE = "common advice in nursery-safety texts"


def _in_path(plan: Plan) -> list[Hung]:
    """The frames on a public path whose lower edge, the leading one, is where a cane does not find it."""
    unit, wall = plan.job.unit, plan.job.wall
    low, high = LOW_EDGE.mm(unit) + TOLERANCE, HIGH_EDGE.mm(unit) + TOLERANCE
    return [hung for hung in plan.frames if low < wall.least_above_ground(hung.rect) <= high] if wall.public else []


def _ground(plan: Plan) -> str:
    """What heights are above, in words."""
    return "the floor or the stair" if plan.job.wall.stairs else "the floor"


def _sticks_out(plan: Plan) -> Iterator[Finding]:
    unit = plan.job.unit
    names = _ids(hung for hung in _in_path(plan) if (hung.frame.depth or 0.0) > DEEPEST.mm(unit) + TOLERANCE)
    if names:
        text = (
            f"{capital(listed(names))}: more than {DEEPEST.words(unit)} deep, with the lower edge between "
            f"{LOW_EDGE.words(unit)} and {HIGH_EDGE.words(unit)} above {_ground(plan)}, on a path open to "
            "the public. A cane does not find what sticks out there: choose a shallower frame, or stand something "
            f"under it that a cane finds. {ACCESS_RULES}"
        )
        yield Finding(WARN, "sticks-out", names, text, ADA_SOURCE)


def _depth_missing(plan: Plan) -> Iterator[Finding]:
    names = _ids(hung for hung in _in_path(plan) if hung.frame.depth is None)
    if names:
        text = (
            f"No depth given for {listed(names)}: measure it, for on a path open to the public a frame more than "
            f"{DEEPEST.words(plan.job.unit)} deep sticks out too far. {ACCESS_RULES}"
        )
        yield Finding(NOTE, "depth-missing", names, text, ADA_SOURCE)


def _ids(found: Iterable[Hung]) -> tuple[str, ...]:
    return tuple(hung.frame.id for hung in found)


def use_of(feature: Feature) -> str:
    """What people do on a piece of furniture: as the job says it, or by the words of its name; "" for neither."""
    if feature.kind != "furniture" or feature.use:
        return feature.use
    words = set(re.findall(r"[a-z]+", feature.name.lower()))
    return next((use for use, known in USES.items() if words & set(known)), "")


def _over_bed(plan: Plan) -> Iterator[Finding]:
    for feature in plan.job.wall.features:
        use = use_of(feature)
        if use not in USES:
            continue
        over = [hung for hung in plan.frames if _is_over(hung, feature)]
        known = [hung for hung in over if _heavy_or_glazed(hung.frame, use)]
        asked = [hung for hung in over if _heavy_or_glazed(hung.frame, use) is None]
        for level, frames in ((WARN, known), (NOTE, asked)):
            if frames:
                names = _ids(frames)
                source = COT_SOURCE if use == "cot" else OVER_SOURCE
                yield Finding(level, "over-bed", names, _over_text(names, feature, use, level), source)


def _is_over(hung: Hung, feature: Feature) -> bool:
    one, two = hung.rect, feature.rect
    return one.x0 < two.x1 - TOLERANCE and two.x0 < one.x1 - TOLERANCE and one.y1 > two.y1 + TOLERANCE


def _heavy_or_glazed(frame: Frame, use: str) -> bool | None:
    """True over a cot whatever the frame; None when the job does not say both what it weighs and its glazing."""
    heavy = None if frame.weight is None else is_heavy(frame.weight)
    glazed = frame.glazing != "none" if frame.glazing else None
    if use == "cot" or heavy or glazed:
        return True
    return None if heavy is None or glazed is None else False


def _over_text(names: Sequence[str], feature: Feature, use: str, level: str) -> str:
    place = f"{feature.called} ({use})" if feature.use and use not in feature.called else feature.called
    what = "Hang what is glazed or heavy" if level == WARN else f"Glazed, or {HEAVY_WORDS}? Then hang"
    advice = f"{what} elsewhere: over people only soft, light pieces."
    if use == "cot":
        advice = "Hang frames elsewhere: over a cot nothing that can fall."
    return f"Over the {place}: {listed(names)}. {advice}"


def _ladder(plan: Plan) -> Iterator[Finding]:
    above = plan.job.wall.above_ground
    high = [entry for entry in entries(plan) if above(entry.x, entry.high) > REACH + TOLERANCE]
    if high:
        names = tuple(one.name for one in high)
        text = (
            f"More than {show_both(REACH, plan.job.unit)} above {_ground(plan)}: {listed(names, 'nail')}. "
            "Do not stand on a stepladder's top or its two highest steps, keep three points of contact, lean a ladder "
            "1 out for 4 up, and have someone hold it and hand you things. What its maker says goes first."
        )
        yield Finding(NOTE, "ladder", once(one.frame for one in high), text, LADDER_SOURCE, names)


def _viewing_height(plan: Plan) -> Iterator[Finding]:
    unit, above = plan.job.unit, plan.job.wall.above_ground
    if not plan.job.wall.public:
        return
    small = [hung for hung in plan.frames if max(hung.rect.width, hung.rect.height) <= SMALL + TOLERANCE]
    names = _ids(hung for hung in small if above(hung.rect.cx, hung.rect.cy) > LOW_CENTRE.mm(unit) + TOLERANCE)
    if names:
        text = (
            f"Small pieces with their middle above {LOW_CENTRE.shown(unit)}: {listed(names)}. Lower ones are seen "
            "better from a wheelchair."
        )
        yield Finding(NOTE, "viewing-height", names, text, LABEL_SOURCE)
    (low, high), middle = EASY_BAND, above(plan.group.cx, plan.group.cy)
    if len(small) < len(plan.frames) and not low.mm(unit) - TOLERANCE <= middle <= high.mm(unit) + TOLERANCE:
        text = (
            f"The middle of the group is {show_both(middle, unit)} above {_ground(plan)}. In public rooms, who stands "
            f"and who sits in a wheelchair both see well what has its middle between {low.shown(unit)} and "
            f"{high.shown(unit)}; put the labels there."
        )
        yield Finding(NOTE, "viewing-height", (), text, LABEL_SOURCE)


RULES = (_sticks_out, _depth_missing, _over_bed, _ladder, _viewing_height)
