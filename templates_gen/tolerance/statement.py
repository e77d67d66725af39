"""What is said about the expected error: on the first page, by `check`, and to a machine."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any

from templates_gen.base.units import MM, show
from templates_gen.base.words import capital
from templates_gen.job.accuracy import NORMAL_95
from templates_gen.tolerance.advice import WORTH, advice, wider_base
from templates_gen.tolerance.expected import Expected, PairError, sources_95
from templates_gen.tolerance.joint import PROBABILITY


def fine(mm: float, unit: str) -> str:
    """A small length: tenths of a millimetre, with hundredths of an inch before them where the job is in inches."""
    return f"{mm / MM['in']:.2f} in · {mm:.1f} mm" if unit == "in" else f"{mm:.1f} mm"


def first_page_words(expected: Expected, unit: str) -> tuple[str, ...]:
    """Short sentences for the first page: what to expect, what an eye sees, what else there is to know, and what would
    help most."""
    worst, ends = expected.worst, expected.ends
    step = advice(expected)
    gap, seen = show(worst.pair.gap, unit), fine(worst.seen, unit)
    others = (
        f" The pair most likely to be out of line is {_names(worst)}. From end to end, {_names(ends)} hang within "
        f"{fine(ends.error, unit)} of where they belong, again nineteen times in twenty."
    )
    return (
        f"Nineteen times in twenty, all neighbouring frames hang within {fine(expected.step, unit)} of one line, and "
        f"all gaps are within {fine(expected.gap_error, unit)} of their size." + (others if expected.pairs > 1 else ""),
        f"Across a gap of {gap} an eye sees a step of about {seen}: {_compared(expected)}",
        *(f"{capital(words)}." for words in (*_tilt_words(expected, unit), *_uncut_words(expected, unit))),
        *(f"{capital(words)}." for words in _profile_words(expected)),
        step.words
        if step.name == "none"
        else f"What would help most: {_lower(step.words)} All neighbours are then within about "
        f"{fine(step.step, unit)} of one line, and all gaps within {fine(step.gap_error, unit)}.",
    )


def check_words(expected: Expected, unit: str) -> tuple[str, ...]:
    """Two lines for a terminal, and one more for each thing that is out of the ordinary."""
    worst, step = expected.worst, advice(expected)
    pair = f"; {_names(worst)} are the most likely to be out of line" if expected.pairs > 1 else ""
    return (
        f"expected, 19 times in 20: all neighbours within {fine(expected.step, unit)} of one line, and all gaps within "
        f"{fine(expected.gap_error, unit)}{pair}; an eye sees a step of {fine(worst.seen, unit)}",
        *_tilt_words(expected, unit),
        *_uncut_words(expected, unit),
        *_profile_words(expected),
        step.words if step.name == "none" else f"what would help most: {_lower(step.words)}",
    )


def _tilt_words(expected: Expected, unit: str) -> Iterator[str]:
    """What comes from tilt, where it matters, and what helps against it."""
    worst = expected.worst
    if worst.tilting is None or worst.error - worst.untilted < WORTH:
        return
    tilt, wider = fine(dict(sources_95(worst))["tilt"], unit), wider_base(worst)
    yield (
        f"tilt alone puts the facing corners of {_names(worst)} {tilt} out. Frame {worst.tilting.frame.id} hangs on "
        f"two fixings {show(worst.base, unit)} apart, and tilts when one of them is higher. A spirit level on each "
        "frame helps" + (", and so do fixings further apart" if wider > worst.base else "")
    )


def _profile_words(expected: Expected) -> Iterator[str]:
    if expected.worse_than_none:
        known, bought = (NORMAL_95 * max(scales) for scales in (expected.scales, expected.bought_scales))
        yield (
            f"the printer's profile is less sure than none: its scale is known to {known:.1%}, and a printer that was "
            f"not measured is taken to be within {bought:.1%}"
        )


def _uncut_words(expected: Expected, unit: str) -> Iterator[str]:
    """How exactly sheets that are not cut go together, and where nothing holds them well."""
    if expected.match <= expected.cut_match:
        return
    met = f"sheets that are not cut: slanting lines meet within {fine(NORMAL_95 * expected.match, unit)}"
    joins = "1 join is" if expected.loose == 1 else f"{expected.loose} joins are"
    yield f"{met}; {joins} too short for two pairs of them, and sheets can turn there" if expected.loose else met


def _lower(words: str) -> str:
    return words[:1].lower() + words[1:]


def _names(pair: PairError) -> str:
    return f"{pair.pair.one.frame.id} and {pair.pair.two.frame.id}"


def _compared(expected: Expected) -> str:
    if expected.step <= expected.worst.seen:
        return "few steps will show."
    return "some steps will show, so check the edges with a level once all frames hang."


def error_data(expected: Expected | None) -> dict[str, Any] | None:
    """The expected error for a machine (mm, to 0.01); None where there is nothing to expect, with a single frame."""
    if expected is None:
        return None
    step = advice(expected)
    return {
        "probability": PROBABILITY,
        "calibrated": expected.calibrated,
        "profile_worse_than_none": expected.worse_than_none,
        "pairs": expected.pairs,
        "all": {"step": _hundredth(expected.step), "gap_error": _hundredth(expected.gap_error)},
        "worst": _pair_data(expected.worst),
        "typical": _pair_data(expected.typical),
        "end_to_end": _pair_data(expected.ends),
        "advice": {"step": step.name, "text": step.words, "worst_error": _hundredth(step.error)},
    }


def _pair_data(pair: PairError) -> dict[str, Any]:
    return {
        "frames": [pair.pair.one.frame.id, pair.pair.two.frame.id],
        "beside": pair.pair.beside,
        "gap": _hundredth(pair.pair.gap),
        "step": _hundredth(pair.step),
        "gap_error": _hundredth(pair.gap_error),
        "error": _hundredth(pair.error),
        "seen_step": _hundredth(pair.seen),
        "tilt": round(math.degrees(pair.tilt), 3),
        "contributions": {source: _hundredth(mm) for source, mm in sources_95(pair)},
    }


def _hundredth(mm: float) -> float:
    return round(mm, 2) + 0.0
