"""Doubts about a group that is right by each figure and odd as it hangs: off eye level, too wide, squeezed."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.units import exact, show, show_both
from templates_gen.base.words import feature_place, with_article
from templates_gen.checks.doubts import usual
from templates_gen.checks.doubts.doubt import Doubt, Written, written
from templates_gen.checks.doubts.readings import Reading, Usual, other_readings, swapped_figures, tenfold
from templates_gen.job.model import Feature

LOW, LOWER, HIGH, EYES = 1200.0, 1300.0, 1780.0, Usual(1380.0, 1660.0)
"""mm above the floor: the middle of a group that is low, also with its top at eye level, or high, where nothing on the
wall tells why, and where most hang, 57 to 63 in and some room.  Our own, by common practice, no source."""

HIGHER, ORDINARY = 0.35, 2600.0
"""Of what a room is higher than ordinary ones (mm), how much higher a group may hang in it.  Our own, no source."""

SMALL, TALL, TALLER, ROOM = 400.0, 1000.0, 1300.0, Usual(2200.0, 4500.0)
"""mm of a group that may be hung for children, of one that reaches low anyway, or below a top; and of a room that
people stand in.  Our own, no source."""

WIDER = 1.15
"""So many times as wide as what it hangs above is a group that is too wide for a narrow one of its name.  Our own: two
thirds to three quarters of the width are what interior design texts advise."""

HALL, EMPTY = 12_000.0, 0.1
"""mm of a wall that is a hall's, and of its width that a group takes which is next to nothing.  Our own, no source."""


def odd_places(plan: Plan) -> Iterator[Doubt]:
    """What is odd about where a group hangs, or about one of its frames in it."""
    yield from _off_eye_level(plan)
    yield from _around_something_low(plan)
    yield from _nearly_empty(plan)
    yield from _wider_than_below(plan)
    yield from _squeezed(plan)


def _off_eye_level(plan: Plan) -> Iterator[Doubt]:
    """A middle that is low or high for no reason, and at eye level if it is read otherwise."""
    height, wall, group = plan.job.group.height, plan.job.wall, plan.group
    whole = height.by in ("centre", "top", "bottom") and not height.of
    if not whole or wall.stairs or wall.outline or not ROOM.holds(wall.height):
        return
    ends = height.by == "top" and EYES.holds(height.at)  # hardly any group ends where people look
    low = group.cy < (LOWER if ends else LOW) and SMALL < group.height < (TALLER if ends else TALL)
    highest = HIGH + HIGHER * max(wall.height - ORDINARY, 0.0)
    high = group.cy > highest or (height.by == "bottom" and EYES.holds(height.at) and not EYES.holds(group.cy))
    if not (low or high) or any(_tells_why(each, group, low) for each in wall.features):
        return
    known, place = written(plan.job), f"group, height, {height.by}"
    for meant in _meant(plan, place, known):
        if EYES.holds(group.cy + meant.mm - height.at):
            yield Doubt(
                rule="doubtful-place", place=place, shown=show(height.at, known.unit),
                why=f"which puts the middle of the group {show_both(group.cy, known.unit)} above the floor, "
                f"{'low' if low else 'high'} where nothing {'stands' if low else 'is'} on the wall under it",
                ask=meant.ask, meant=meant.meant(place),
            )  # fmt: skip
            return


HUNG = Usual(700.0, 2000.0)
"""mm above the floor that what hangs on a wall, or a window, begins.  Our own, no source."""


def _around_something_low(plan: Plan) -> Iterator[Doubt]:
    """Frames around something that begins near the floor, so that the group is as low as none hangs."""
    group, unit = plan.job.group, plan.job.unit
    for at, feature in enumerate(plan.job.wall.features, 1):
        bottom, lowest = feature.rect.y0, min(hung.rect.cy for hung in plan.frames)
        _, more = tenfold(bottom, unit)
        if feature == group.around and lowest < usual.CENTRE.least and HUNG.holds(more.mm):
            place = f"{feature_place(at, feature.name)}, bottom"
            yield Doubt(
                rule="doubtful-feature", place=place, shown=show(bottom, unit), uses=("group, around",),
                why=f"so a frame beside it has its middle only {show_both(lowest, unit)} above the floor",
                ask=more.ask, meant=more.meant(place),
            )  # fmt: skip


def _tells_why(feature: Feature, group: Rect, low: bool) -> bool:
    """True for what is beside or under a group, over which it hangs so high or beside which it is seen so low."""
    beside = feature.rect.x0 < group.x1 and feature.rect.x1 > group.x0
    return feature.kind not in ("outlet", "switch", "thermostat") and (low or (beside and feature.rect.y0 < group.y0))


def _meant(plan: Plan, place: str, known: Written) -> Iterator[Reading]:
    """Other readings of a height: its figures, its unit, or another edge of the group that was measured."""
    height, half, unit = plan.job.group.height, plan.group.height / 2, known.unit_of(place)
    if not known.explicit(place):
        yield from () if plan.job.wall.public else swapped_figures(height.at, unit)  # where it is hung for everyone
        yield from other_readings(height.at, unit)
    edges = {
        "centre": (("top", -half), ("bottom", half)),
        "bottom": (("middle", -half), ("top", -2 * half)),
        "top": (("middle", half), ("bottom", 2 * half)),
    }
    for edge, more in edges[height.by]:
        yield Reading(
            height.at + more, f"Is it the {edge} of the group? Then its {height.by} is at {{}}.", unit, known.unit
        )


SQUEEZED, LITTLE, CLOSER, WIDE_GAP, ROOM_ABOVE = 0.45, 100.0, 0.7, 125.0, 130.0
"""Of the gap, that little room (mm) above something is at least, and of a wide one (mm): a group keeps together, and
more room than the last (mm) is enough.  Our own, no source."""


def _squeezed(plan: Plan) -> Iterator[Doubt]:
    """A group nearer to what it hangs above than its frames are to each other."""
    group, height, unit = plan.job.group, plan.job.group.height, plan.job.unit
    gap = max(group.gap_across, group.gap_down)
    little = height.at < min(SQUEEZED * gap, LITTLE) or (gap >= WIDE_GAP and height.at <= CLOSER * gap)
    ledge = any(each.name == height.feature and each.rect.height < usual.LEDGE for each in plan.job.wall.features)
    if height.by == "above" and len(plan.frames) > 1 and not ledge and little and height.at <= ROOM_ABOVE:
        yield Doubt(
            rule="doubtful-place", place="group, height, by", shown=show(height.at, unit), uses=("group, gap",),
            why=f"but frames are {show(gap, unit)} apart, further than from what they hang above",
            ask="Did gap and height change places?",
            meant=(("group, height, by", exact(gap, unit)), ("group, gap", exact(height.at, unit))),
        )  # fmt: skip


def _nearly_empty(plan: Plan) -> Iterator[Doubt]:
    """A wall as long as a hall, of which next to nothing is used: its decimal point is out of place, or its unit."""
    wall, unit = plan.job.wall, plan.job.unit
    tenth = wall.width * EMPTY
    if wall.width > HALL and max([plan.group.width, *(each.rect.x1 for each in wall.features)]) <= tenth:
        yield Doubt(
            rule="doubtful-wall", place="wall, width", shown=show(wall.width, unit),
            why=f"and the group takes only {show(plan.group.width, unit)} of it",
            ask=f"Is a decimal point missing? A tenth is {show(tenth, unit)}.",
            meant=(("wall, width", exact(tenth, unit)),),
        )  # fmt: skip


def _wider_than_below(plan: Plan) -> Iterator[Doubt]:
    """A group wider than what it hangs above, which is narrow for what it is called."""
    height, unit = plan.job.group.height, plan.job.unit
    for at, feature in enumerate(plan.job.wall.features, 1):
        narrow, wide = usual.narrow(feature.name), plan.group.width
        above = height.by == "above" and feature.name == height.feature
        if above and feature.rect.width < narrow and wide > WIDER * feature.rect.width:
            place = feature_place(at, feature.name)
            yield Doubt(
                rule="doubtful-feature", place=f"{place}, width", shown=show(feature.rect.width, unit),
                uses=(f"{place}, left", "group, height, above"),
                why=f"narrow for {with_article(feature.called)}, and the group above is {show_both(wide, unit)} wide",
                ask="Did two figures, or left and width, change places?",
            )  # fmt: skip
