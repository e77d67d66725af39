"""Doubts about a wire over two fixings and about its rings; and wires that hang deep on purpose."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.base.units import show
from templates_gen.checks.doubts.doubt import Doubt, Written, frame_place
from templates_gen.checks.doubts.other_tape import in_tenths_of_inches
from templates_gen.checks.doubts.readings import Usual, probably
from templates_gen.checks.wire import LEAST_PAIR
from templates_gen.job.hangers import WIRE
from templates_gen.job.model import Frame, Job

APART, SEPARATION, RING_DEPTH = (0.12, 0.72), 0.68, (0.06, 0.55)
"""Of the width that two fixings, and two rings, are apart; of the height that rings lie down.  Our own, no source."""

MOST_AT_TWO = 0.45
"""Of the height, the most that a wire's drop is on two fixings.  Our own, no source."""

DEEPEST, AS_DEEP, HALFWAY = 0.45, 1.1, 0.52
"""Of the height, how deep several wires may hang, and so many times more or less than each other; and how deep two
rings are on a mirror that they were put on halfway down.  Our own."""


def as_deep(frame: Frame, drop: float, job: Job) -> bool:
    """True for a deep wire where another is as deep, and for two rings, unless both are in inches that could be cm."""
    most, share = frame.hanger.traits.usual_drop[1], drop / frame.height
    alike = [each for each in (frame.hanger.drop_left, frame.hanger.drop_right) if each is not None]
    if len(alike) == 2 and most < share <= HALFWAY:
        return max(alike) <= HALFWAY * frame.height and not (job.unit == "in" and all(map(in_tenths_of_inches, alike)))
    if not frame.hanger.traits.on_wire or not most < share <= DEEPEST:
        return False
    others = [other for other in job.frames if other is not frame and other.hanger.traits.on_wire]
    alike = [each.drop for each in others if each.drop and share / AS_DEEP <= each.drop / each.height <= DEEPEST]
    return bool(alike) and not (job.unit == "in" and all(map(in_tenths_of_inches, (drop, *alike))))


def wire_doubts(frame: Frame, known: Written) -> Iterator[Doubt]:
    """What is doubtful about two fixings under a wire, and about the rings that it goes to."""
    hanger, width, height = frame.hanger, frame.width, frame.height
    least_on_two = min(WIRE.usual_drop[0] * height, WIRE.long_enough)
    measures = (
        ("apart", hanger.apart, (APART[0] * width, APART[1] * width), "two fixings under one wire"),
        ("ring_separation", hanger.ring_separation, (SEPARATION * width, width), "two rings, one to the other,"),
        ("ring_depth", hanger.ring_depth, (RING_DEPTH[0] * height, RING_DEPTH[1] * height), "rings from the top edge"),
        ("drop_at_two", hanger.drop_at_two, (least_on_two, MOST_AT_TWO * height), "a wire"),
    )  # fmt: skip
    for name, mm, (least, most), what in measures:
        if mm is None or max(least, LEAST_PAIR if name == "apart" else 0.0) <= mm <= most:
            continue
        place = frame_place(frame.id, "hanger", name)
        likely = probably(mm, known.unit_of(place), Usual(least, most))
        yield Doubt(
            rule="doubtful-hanger", place=place, shown=show(mm, known.unit), about=(frame.id,),
            uses=(frame_place(frame.id, "width"), frame_place(frame.id, "height")),
            why=f"{'less' if mm < most else 'more'} than is usual for {what} on a frame of "
            f"{show(width, known.unit)} × {show(height, known.unit)}",
            ask=likely.ask or "Measure it again.", meant=likely.meant(place),
        )  # fmt: skip
