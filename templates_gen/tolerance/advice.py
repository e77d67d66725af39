"""The one step that would make a template's frames hang most exactly.

Every step improves some sources of error; what it gains is worked out on the worst pair of neighbours.  Of the steps
that gain nearly as much as the best, the easiest is advised.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from templates_gen.base.record import Record
from templates_gen.tolerance.expected import Expected, PairError, error_95
from templates_gen.tolerance.sources import SCALES

NEARLY = 0.6
"""A step that gains this share of what the best step gains is nearly as good.  Our own design, no source."""

WORTH = 0.1
"""mm.  A step that gains less is not worth its trouble.  Our own design, no source."""

HALVED = 0.5
"""What care leaves of a drop's or a nail's error: two readings of a steel rule instead of one of a tape; a hole
pricked through the cross before the nail is set.  Our own estimate, no source."""

RESTED = 0.5
"""What another hour of rest in the room leaves of the paper's movement.  Our own estimate, no source."""

LARGER = 0.5
"""What paper of twice the side leaves of the joins' errors.  A chain of N joins turns by √N·σ√2/d and its end moves
by N·√N·step·σ√(2/3)/d: half the joins, with step and d doubled, leave 0.5^1.5 = 0.35 of the latter and 0.7 of what
shifts by σ√(N/2).  Worked out by hand here; between the two."""


LEVELLED = 0.1
"""Degrees: the sd of a frame's tilt once a spirit level on it reads level.  Our own estimate, no source: the bubble of
a carpenter's level moves 2 mm for 0.6°, and people see a third of a millimetre of that."""

WIDE_BASE = 0.75
"""Two fixings stand no further apart than this share of a frame's width.  Our own design, no source."""


class Step(Record, frozen=True):
    """Something to do, in words, and what it leaves of the errors of some sources, as shares."""

    name: str
    words: str
    leaves: dict[str, float]


class Advice(Record, frozen=True):
    """The most useful step, and the error of the worst pair (95 %, mm) with it; "none" where none is worth it.

    `step` and `gap_error` are about what becomes of those of all neighbours (mm): in proportion to the worst pair's.
    """

    name: str
    words: str
    error: float
    step: float
    gap_error: float


def advice(expected: Expected) -> Advice:
    """What would help most."""
    worst = expected.worst
    gains = [(worst.error - improved(worst, step), step) for step in _steps(expected)]
    most = max(gain for gain, _ in gains)
    if most < WORTH:
        words = "No easy change would make it much better."
        return Advice("none", words, worst.error, expected.step, expected.gap_error)
    gain, best = next((gain, step) for gain, step in gains if gain >= NEARLY * most)
    step, gap = (
        whole * error_95(_left(by, best)) / alone if (alone := error_95(by)) else whole  # others alone err so
        for whole, by in ((expected.step, worst.by_step), (expected.gap_error, worst.by_gap))
    )
    return Advice(best.name, best.words, worst.error - gain, step, gap)


def improved(pair: PairError, step: Step) -> float:
    """The error of a pair (95 %, mm) once the step has been taken."""
    return math.hypot(*(error_95(_left(by, step)) for by in (pair.by_step, pair.by_gap)))


def _left(by: Mapping[str, float], step: Step) -> dict[str, float]:
    return {source: variance * step.leaves.get(source, 1.0) ** 2 for source, variance in by.items()}


def _steps(expected: Expected) -> Iterator[Step]:
    """Every step that can be taken, the easiest first."""
    yield Step(
        "drops", "Measure every drop twice with a steel rule and take the mean.",
        {"drops": HALVED, "tilting drops": HALVED},
    )  # fmt: skip
    yield Step(
        "nailing", "Prick a hole through every cross with an awl before you nail.",
        {"nailing": HALVED, "tilting nails": HALVED},
    )  # fmt: skip
    yield Step(
        "rest", "Let the prints rest for an hour more in the room of the wall before you tape.", {"paper": RESTED}
    )
    yield from _against_tilt(expected.worst)
    if not expected.calibrated:
        yield Step(
            "calibrate", "Measure the printer with its scale page, and print the template for it.",
            _shares(expected.scales, expected.measured_scales),
        )  # fmt: skip
    elif expected.worse_than_none:
        yield Step(
            "profile", "Measure the scale page again with a steel rule, or print without --printer: this profile is "
            "less sure than none.", _shares(expected.scales, expected.bought_scales),
        )  # fmt: skip
    yield from _better_paper(expected)


def _against_tilt(worst: PairError) -> Iterator[Step]:
    """A spirit level on each frame that hangs on two fixings, or its fixings further apart."""
    if worst.tilting is None:
        return
    left = min(1.0, math.radians(LEVELLED) / worst.tilt)
    yield Step(
        "level", "Set a spirit level on each frame that hangs on two fixings, and raise its lower fixing until it is "
        "level.", {"tilting drops": left, "tilting nails": left},
    )  # fmt: skip
    left = worst.base / wider_base(worst)
    yield Step(
        "wider", "Set the two fixings of each frame further apart, as far as its back allows.",
        {"tilting drops": left, "tilting nails": left},
    )  # fmt: skip


def wider_base(pair: PairError) -> float:
    """How far apart the two fixings of the frame that tilts could be (mm): no less than they are."""
    return max(pair.base, WIDE_BASE * pair.tilting.frame.width) if pair.tilting else 0.0


def _better_paper(expected: Expected) -> Iterator[Step]:
    if expected.match > expected.cut_match:
        yield Step(
            "cut", 'Let the sheets be cut (trim = "cut"): registration marks meet better than slanting lines, and hold '
            "short joins too.", {"joins": expected.cut_match / expected.match},
        )  # fmt: skip
    if expected.kind == "one piece":
        return
    if expected.joins:
        yield Step("larger-paper", "Print on larger paper: fewer joins, and longer ones.", {"joins": LARGER})
    if expected.shop and (expected.joins or expected.pieces > 1):
        yield Step(
            "one-piece", "Have it printed in one piece by a print shop.",
            {"joins": 0.0, "placing": 0.0, "lean": 0.0} | _shares(expected.scales, expected.shop_scales),
        )  # fmt: skip


def _shares(now: tuple[float, float], then: tuple[float, float]) -> dict[str, float]:
    """What is left of the scales' errors, which no step makes larger."""
    both = zip(SCALES, now, then, strict=True)
    return {source: min(1.0, after / before) if before else 1.0 for source, before, after in both}
