"""Where the public is: who walks into a frame, and who looks at one."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import Rect, exceeds
from templates_gen.base.units import show_both
from templates_gen.base.words import capital
from templates_gen.checks.finding import NOTE, WARN, Finding
from templates_gen.checks.fitting import on_wall
from templates_gen.checks.sentences import Printed, ground, listed

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


def _in_path(plan: Plan) -> list[Hung]:
    """The frames on a public path whose lower edge, the leading one, is where a cane does not find it."""
    unit, wall = plan.job.unit, plan.job.wall
    if not wall.public:
        return []
    low, high = LOW_EDGE.mm(unit), HIGH_EDGE.mm(unit)
    edges = [(hung, wall.least_above_ground(hung.rect)) for hung in plan.frames]
    return [hung for hung, edge in edges if exceeds(edge, low) and not exceeds(edge, high)]


def _sticks_out(plan: Plan) -> Iterator[Finding]:
    unit = plan.job.unit
    names = _ids(hung for hung in _in_path(plan) if exceeds(hung.frame.depth or 0.0, DEEPEST.mm(unit)))
    if names:
        text = (
            f"{capital(listed(names))}: more than {DEEPEST.words(unit)} deep, with the lower edge between "
            f"{LOW_EDGE.words(unit)} and {HIGH_EDGE.words(unit)} above {ground(plan)}, on a path open to "
            "the public. A white cane will not detect it: choose a shallower frame, or stand something under it that "
            f"a cane detects. {ACCESS_RULES}"
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


def _viewing_height(plan: Plan) -> Iterator[Finding]:
    unit, above = plan.job.unit, plan.job.wall.above_ground
    if not plan.job.wall.public:
        return
    small = [hung for hung in plan.frames if not exceeds(max(hung.rect.width, hung.rect.height), SMALL)]
    names = _ids(hung for hung in small if exceeds(above(hung.rect.cx, hung.rect.cy), LOW_CENTRE.mm(unit)))
    if names:
        text = (
            f"Small pieces with their middle above {LOW_CENTRE.shown(unit)}: {listed(names)}. Lower ones are seen "
            "better from a wheelchair."
        )
        yield Finding(NOTE, "viewing-height", names, text, LABEL_SOURCE)
    (low, high), middle = EASY_BAND, above(plan.group.cx, plan.group.cy)
    seen = middle >= 0.0 and on_wall(plan, Rect(plan.group.cx, plan.group.cy, plan.group.cx, plan.group.cy))
    if seen and len(small) < len(plan.frames) and (exceeds(low.mm(unit), middle) or exceeds(middle, high.mm(unit))):
        text = (
            f"The middle of the group is {show_both(middle, unit)} above {ground(plan)}. In public rooms, people "
            "standing and people in wheelchairs both see a label well when its middle is between "
            f"{low.shown(unit)} and {high.shown(unit)} up; put the labels there."
        )
        yield Finding(NOTE, "viewing-height", (), text, LABEL_SOURCE)


RULES = (_sticks_out, _depth_missing, _viewing_height)
