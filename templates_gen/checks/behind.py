"""What is behind the wall: cables and pipes that a nail may meet.  A question each time, and never an all-clear."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect, exceeds
from templates_gen.base.units import show_both
from templates_gen.base.words import capital
from templates_gen.checks.cables.wiring import CABLE_KINDS, UK_SOURCE, Entry, cable_depth, entries, zones_met
from templates_gen.checks.finding import NOTE, WARN, Finding
from templates_gen.checks.sentences import expert, listed, once
from templates_gen.hanging.fixings import depth_of
from templates_gen.job.model import Wall

LOOK = "Look with a detector before you nail; where in doubt, ask"

PIPES = f"Pipes may run there. {LOOK} a plumber."

NO_ZONES = "US rules set no zones to rely on: cables may run behind any other spot too."
"""From memory: the NEC names no zones, and a cable may cross the studs at any height."""

NO_BOXES = "The job gives no outlet, switch, light or thermostat on this wall: add every one there is. "

UK_THIN = 100.0
"""mm; through a wall up to so thick the zones of one side hold on the other (BS 7671, 522.6.202)."""

DEPTH_SOURCE = {"us": "NEC 300.4(A)(1), 300.4(D)", "uk": UK_SOURCE}

PIPE_SOURCE = "common practice"


def _look(wall: Wall) -> str:
    return f"{LOOK} {expert('electrician', wall)}."


def _cable_zone(plan: Plan) -> Iterator[Finding]:
    """One finding for all nails that lie in a zone for one reason."""
    by_reason: dict[tuple[str, str], list[Entry]] = {}
    for zone, nails in zones_met(plan).items():
        by_reason.setdefault((zone.reason, zone.source), []).extend(nails)
    for (reason, source), nails in by_reason.items():
        text = f"{_nails(nails)}: in a zone where cables may run ({reason}). {_look(plan.job.wall)}"
        yield Finding(WARN, "cable-zone", _frames(nails), text, source, _names(nails))


def _nails(nails: Sequence[Entry]) -> str:
    return capital(listed(_names(nails), "nail"))


def _names(nails: Sequence[Entry]) -> tuple[str, ...]:
    return once(nail.name for nail in nails)


def _frames(nails: Sequence[Entry]) -> tuple[str, ...]:
    return once(nail.frame for nail in nails)


def _nail_deep(plan: Plan) -> Iterator[Finding]:
    """One finding for all frames whose fixings go equally deep, down to where cables may begin or deeper."""
    limit, wall, unit = cable_depth(plan.job.wall), plan.job.wall, plan.job.unit
    if limit is None:
        return
    by_depth: dict[str, list[str]] = {}
    for hung in plan.frames:
        depth = depth_of(hung.frame.fixing)
        if depth is not None and not exceeds(limit, depth):
            by_depth.setdefault(show_both(depth, unit), []).append(hung.frame.id)
    why = _why_deep(plan, show_both(limit, unit))
    for depth_shown, names in by_depth.items():
        text = f"The fixings of {listed(names)} go {depth_shown} deep. {why} {_look(wall)}"
        yield Finding(WARN, "nail-deep", tuple(names), text, DEPTH_SOURCE[wall.wiring])


def _why_deep(plan: Plan, limit: str) -> str:
    if plan.job.wall.wiring == "uk":
        return f"At {limit} or deeper, cables need not keep to any zone."
    board = "" if plan.job.wall.board else " (no board counted: wall.board is not given)"
    return f"In a stud, cables may begin {limit} behind the face{board}; between studs, at any depth."


def _wiring_unknown(plan: Plan) -> Iterator[Finding]:
    """Once for a job: what is not known of its cables, by the rule that it gives."""
    wall = plan.job.wall
    boxes = any(feature.kind in CABLE_KINDS for feature in wall.features)
    missing = "" if boxes else NO_BOXES
    if wall.wiring in ("", "none"):
        text = (
            "Where cables run is not known: the job does not say by whose rule they were laid (wiring: us, uk or de). "
            f"{missing}Ask someone who knows the building. {_look(wall)}"
        )
    elif wall.wiring == "us":
        text = f"{NO_ZONES} {missing}{_look(wall)}"
    elif missing:
        text = f"{missing}The zones level with them and straight above and below them are not known. {_look(wall)}"
    else:
        return
    yield Finding(NOTE, "wiring-unknown", (), text)


def _other_side(plan: Plan) -> Iterator[Finding]:
    """By the British rule what is on the other side of a thin wall counts on this one."""
    if plan.job.wall.wiring == "uk" and plan.job.wall.behind:
        text = (
            f"Behind this wall is a room. Where the wall is no thicker than {show_both(UK_THIN, plan.job.unit)}, "
            "cables may also run level with the outlets, switches and lights on that side, and straight above and "
            f"below them: add those as features. {_look(plan.job.wall)}"
        )
        yield Finding(NOTE, "other-side", (), text, UK_SOURCE)


def _pipes_near(plan: Plan) -> Iterator[Finding]:
    for called, nails in pipes_near(plan).items():
        text = f"{_nails(nails)}: above, below or beside the {called}. {PIPES}"
        yield Finding(NOTE, "pipes-near", _frames(nails), text, PIPE_SOURCE, _names(nails))
    rooms = [room for room in once(plan.job.wall.behind) if room in WET_ROOMS]
    if rooms:
        yield Finding(NOTE, "pipes-near", (), f"Behind this wall: {', '.join(rooms)}. {PIPES}", PIPE_SOURCE)


RULES = (_cable_zone, _nail_deep, _pipes_near, _other_side, _wiring_unknown)


PIPE_KINDS = ("pipe", "radiator")
"""The features that a pipe leads to."""

BESIDE = 150.0
"""mm to either side of a pipe or a radiator that are asked about, as well as all above and below it.  Common practice,
no source."""

WET_ROOMS = ("bathroom", "kitchen", "laundry", "toilet")
"""Rooms with water: pipes may run in the walls next to them.  Common practice, no source."""


def pipes_near(plan: Plan) -> dict[str, list[Entry]]:
    """The nails above, below or beside each pipe and radiator, by what it is called."""
    found: dict[str, list[Entry]] = {}
    places = entries(plan)
    for feature in plan.job.wall.features:
        if feature.kind in PIPE_KINDS:
            rect, wall = feature.rect, plan.job.wall.rect
            place = Rect(rect.x0 - BESIDE, wall.y0, rect.x1 + BESIDE, wall.y1)
            near = [nail for nail in places if place.meet(Rect(nail.x, nail.low, nail.x, nail.high))]
            if near:
                found.setdefault(feature.called, []).extend(near)
    return found
