"""Will it hang straight: what a wire does to the frame that hangs from it, and what would be better.

At most one finding for each frame; frames about which the same is to be said share one.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from templates_gen.arranging.plan import Plan
from templates_gen.base.record import Record
from templates_gen.base.units import GRAVITY, INCH, show_both, show_mass
from templates_gen.checks.finding import NOTE, WARN, Finding
from templates_gen.checks.hanging import HOOK_MARGIN
from templates_gen.checks.sentences import same_words
from templates_gen.hanging.bearings import nail_rise
from templates_gen.hanging.statics import (
    HungWire,
    least_apart,
    least_mass_depth,
    moved_apart,
    slip_to_tilt,
    steady_angle,
)
from templates_gen.hanging.wire import drop_at_two_limits, hung_wire, mass_depth
from templates_gen.job.accuracy import SEEN_ANGLE
from templates_gen.job.model import Frame

FLAT, VERY_FLAT = 30.0, 15.0
"""Degrees under which a wire pulls each ring with more than the frame's weight, and with about twice as much:
T = W / (2 sin θ), worked out by hand here.  That these are the limits is our own design, no source."""

LEAST_PAIR = 50.0
"""mm between two fixings: nearer, they are in each other's way.  Our own design, no source."""

RING_ROOM = 25.0
"""mm between a fixing and a ring beside it; nearer, the rings themselves do better.  Our own design, no source."""

DROP_SLACK = 3.0
"""mm, 1/8 in, that the measuring of two drops and the rings may be off in all.  Our own design, no source."""

TIDY = {"in": INCH / 2, "cm": 10.0, "mm": 10.0}
"""mm that an advised distance is a multiple of.  Our own design, no source."""

FLAT_SOURCE = "statics: pull = weight / (2 sin of the angle); C. A. Paschke, trade column, April 2013: 60°"
SLIP_SOURCE = f"statics; people see a tilt of {SEEN_ANGLE:g}°: Vision Research 30(10), 1990"
DROP_SOURCE = "statics"


class _Wired(Record, frozen=True):
    """A frame, its wire as it hangs, and how far its centre of mass lies under its rings (mm)."""

    frame: Frame
    wire: HungWire
    depth: float

    @property
    def steady(self) -> bool:
        return self.depth > least_mass_depth(self.wire)


def _wired(plan: Plan) -> Iterator[_Wired]:
    for hung in plan.frames:
        wire, depth = hung_wire(hung.frame), mass_depth(hung.frame)
        if wire is not None and depth is not None:
            yield _Wired(hung.frame, wire, depth)


def _wire_slips(plan: Plan) -> Iterator[Finding]:
    loose = (item for item in _wired(plan) if item.wire.angle >= VERY_FLAT and not item.steady)
    for names, text in same_words((item.frame.id, _goes_crooked(item, plan.job.unit)) for item in loose):
        yield Finding(NOTE, "wire-slips", names, text, SLIP_SOURCE)


def _wire_flat(plan: Plan) -> Iterator[Finding]:
    """Of one that is not very flat only where nothing is said of its slipping."""
    very = [item for item in _wired(plan) if item.wire.angle < VERY_FLAT]
    flat = [item for item in _wired(plan) if VERY_FLAT <= item.wire.angle < FLAT and item.steady]
    for level, items in ((WARN, very), (NOTE, flat)):
        for names, text in same_words((item.frame.id, _pulls(item, plan.job.unit)) for item in items):
            yield Finding(level, "wire-flat", names, text, FLAT_SOURCE)


def _pulls(item: _Wired, unit: str) -> str:
    wire, weight = item.wire, item.frame.weight
    force = ""
    if weight is not None:
        est, hung = "est. " if item.frame.estimated else "", show_mass(wire.tension * weight, unit)
        force = f" ({est}{wire.tension * weight * GRAVITY:.0f} N, as if {hung} hung there)"
    better = "pull with less than that weight" + ("" if item.steady else ", and swing the frame back to level")
    angle = f"only {math.floor(wire.angle)}°" if wire.angle >= 1 else "less than 1°"
    return (
        f"the wire is {angle} above level and pulls at each ring with {wire.tension:.1f} times the "
        f"frame's weight{force}. {_advice(item, unit, better)}"
    )


def _goes_crooked(item: _Wired, unit: str) -> str:
    slip = max(1.0, slip_to_tilt(item.wire, item.depth, SEEN_ANGLE))  # less than 1 mm is not for a tape measure
    return (
        f"on {_count(item.frame, item.wire.apart)} only friction keeps the frame level, so a touch can leave it "
        f"crooked: a slip of only {show_both(slip, unit)} is visible (weight assumed at its centre). "
        + _advice(item, unit, "swing back to level")
    )


def _count(frame: Frame, apart: float) -> str:
    return f"two {frame.fixing.kind}s" if apart else f"one {frame.fixing.kind}"


def _advice(item: _Wired, unit: str, better: str) -> str:
    """One sentence: two fixings so far apart that the wire is steep and the frame steady (`better`), or its rings."""
    pair, apart = f"two {item.frame.fixing.kind}s", _better_apart(item, unit)
    if apart is None:
        separation = show_both(item.wire.separation, unit)
        return f"Hung by the rings on {pair} {separation} apart, the frame is as level as they are."
    return f"On {pair} {show_both(apart, unit)} apart it would {better}."


def _better_apart(item: _Wired, unit: str) -> float | None:
    """The least tidy distance of two fixings with a steep wire and a steady frame, or None; never one too near."""
    wire, step = item.wire, TIDY[unit]
    angle = max(FLAT, steady_angle(wire.separation, item.depth))
    if angle >= 90.0:
        return None
    steep = (math.floor(least_apart(wire.separation, wire.length, angle) / step) + 1) * step
    apart = max(steep, math.ceil(LEAST_PAIR / step) * step)
    if apart > wire.separation - 2 * RING_ROOM:
        return None
    drop = item.frame.height / 2 - item.depth - moved_apart(wire, apart).rise
    return apart if drop - nail_rise(item.frame) >= HOOK_MARGIN else None


def _drop_needs_both_hooks(plan: Plan) -> Iterator[Finding]:
    """A drop measured on one fixing says nothing about two, unless the rings are known."""
    for measured, level in ((True, WARN), (False, NOTE)):
        frames = [hung.frame for hung in plan.frames if _cannot_know(hung.frame)]
        said = ((item.id, _to_measure(item, plan.job.unit)) for item in frames if (item.drop is not None) == measured)
        for names, text in same_words(said):
            yield Finding(level, "drop-needs-both-hooks", names, text)


def _cannot_know(frame: Frame) -> bool:
    hanger = frame.hanger
    rings_known = hanger.ring_separation is not None and hanger.ring_depth is not None
    return bool(hanger.apart) and hanger.drop_at_two is None and not rings_known


def _drops_disagree(plan: Plan) -> Iterator[Finding]:
    """Both drops were measured, and one wire cannot have both."""
    said = ((hung.frame.id, _cannot_both_be(hung.frame, plan.job.unit)) for hung in plan.frames)
    for names, text in same_words(said):
        yield Finding(WARN, "drops-disagree", names, text, DROP_SOURCE)


def _cannot_both_be(frame: Frame, unit: str) -> str:
    """What the drop on two fixings ought to be by the one on one, as a sentence; "" where they go together."""
    found, limits = frame.hanger.drop_at_two, drop_at_two_limits(frame)
    if found is None or limits is None or limits[0] - DROP_SLACK <= found <= limits[1] + DROP_SLACK:
        return ""
    least, most = (show_both(each, unit) for each in limits)
    ought = f"about {least}" if least == most else f"between {least} and {most}"
    return (
        f"a drop of {show_both(frame.drop or 0.0, unit)} on one {frame.fixing.kind} and of {show_both(found, unit)} on "
        f"two cannot both be right: from the first, the second would be {ought}. The second is used: measure both "
        "again."
    )


def _to_measure(frame: Frame, unit: str) -> str:
    pair = f"two {frame.fixing.kind}s {show_both(frame.hanger.apart or 0.0, unit)} apart"
    return (
        f"on {pair} the drop is longer than on one. Measure it with the wire pulled taut over two points as far apart, "
        "and give it as drop_at_two; or give ring_separation and ring_depth beside the drop on one."
    )


RULES = (_wire_slips, _wire_flat, _drop_needs_both_hooks, _drops_disagree)
