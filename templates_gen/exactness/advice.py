"""The one step that would make a template's frames hang most exactly.

Every step improves some sources of error; what it gains is worked out on the worst pair of neighbours.  Of the steps
that gain nearly as much as the best, the easiest is advised.
"""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.exactness.expected import SOURCES, Expected, PairError, error_95
from templates_gen.record import Record

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


class Step(Record, frozen=True):
    """Something to do, in words, and what it leaves of each source's error: to the side and upward."""

    name: str
    words: str
    leaves: dict[str, tuple[float, float]]


class Advice(Record, frozen=True):
    """The most useful step, and the error of the worst pair (95 %, mm) with it; "none" where none is worth it."""

    name: str
    words: str
    error: float


def advice(expected: Expected) -> Advice:
    """What would help most."""
    worst = expected.worst
    gains = [(worst.error - improved(worst, step), step) for step in _steps(expected)]
    most = max(gain for gain, _ in gains)
    if most < WORTH:
        return Advice("none", "Nothing that is easily done would make it much better.", worst.error)
    gain, step = next((gain, step) for gain, step in gains if gain >= NEARLY * most)
    return Advice(step.name, step.words, worst.error - gain)


def improved(pair: PairError, step: Step) -> float:
    """The error of a pair (95 %, mm) once the step has been taken."""
    both = {
        (source, axis): (pair.spots.across, pair.spots.up)[axis][source]
        * step.leaves.get(source, (1.0, 1.0))[axis] ** 2
        for source in SOURCES
        for axis in (0, 1)
    }
    return error_95(both)


def _steps(expected: Expected) -> Iterator[Step]:
    """Every step that can be taken, the easiest first."""
    yield Step("drops", "Measure every drop twice with a steel rule and take the mean.", _even(drops=HALVED))
    yield Step("nailing", "Prick a hole through every cross with an awl before you nail.", _even(nailing=HALVED))
    yield Step(
        "rest", "Let the prints rest for an hour more in the room of the wall before you tape.", _even(paper=RESTED)
    )
    if not expected.calibrated:
        yield Step(
            "calibrate", "Measure the printer with its scale page, and print the template for it.",
            {"scale": _shares(expected.scales, expected.measured_scales)},
        )  # fmt: skip
    if expected.match > expected.cut_match:
        yield Step(
            "cut", 'Let the sheets be cut (trim = "cut"): register marks meet better than slanting lines, and hold '
            "short joins too.", _even(joins=expected.cut_match / expected.match),
        )  # fmt: skip
    if expected.kind == "one piece":
        return
    if expected.joins:
        yield Step("larger-paper", "Print on larger paper: fewer joins, and longer ones.", _even(joins=LARGER))
    if expected.joins or expected.pieces > 1:
        yield Step(
            "one-piece", "Have it printed in one piece by a print shop.",
            _even(joins=0.0, placing=0.0) | {"scale": _shares(expected.scales, expected.shop_scales)},
        )  # fmt: skip


def _even(**leaves: float) -> dict[str, tuple[float, float]]:
    return {source: (left, left) for source, left in leaves.items()}


def _shares(now: tuple[float, float], then: tuple[float, float]) -> tuple[float, float]:
    across, up = (min(1.0, after / before) if before else 1.0 for before, after in zip(now, then, strict=True))
    return across, up
