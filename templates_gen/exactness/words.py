"""What is said about the expected error: on the first page, by `check`, and to a machine."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from templates_gen.exactness.advice import advice
from templates_gen.exactness.expected import NORMAL_95, Expected, PairError, sources_95
from templates_gen.units import MM, show
from templates_gen.words import capital


def fine(mm: float, unit: str) -> str:
    """A small length: tenths of a millimetre, with hundredths of an inch before them where the job is in inches."""
    return f"{mm / MM['in']:.2f} in · {mm:.1f} mm" if unit == "in" else f"{mm:.1f} mm"


def first_page_words(expected: Expected, unit: str) -> tuple[str, ...]:
    """Short sentences for the first page: what to expect, what an eye sees, and what would help most; before the last
    one, of sheets that are not cut, how exactly they go together."""
    typical, worst, ends = expected.typical, expected.worst, expected.ends
    step = advice(expected)
    gap, seen = show(worst.pair.gap, unit), fine(worst.seen, unit)
    before, after = fine(worst.error, unit), fine(step.error, unit)
    helps = f"{_lower(step.words)} The worst pair is then within {after} instead of {before}."
    return (
        f"Nineteen times in twenty, neighbouring frames hang within {fine(typical.step, unit)} of one line, their gap "
        f"within {fine(typical.gap_error, unit)}; the worst pair, {_names(worst)}, within {fine(worst.step, unit)} and "
        f"{fine(worst.gap_error, unit)}; {_names(ends)}, from end to end, within {fine(ends.error, unit)}.",
        f"Across a gap of {gap} an eye sees a step of about {seen}: {_compared(expected)}",
        *(f"{capital(words)}." for words in _uncut_words(expected, unit)),
        step.words if step.name == "none" else f"What would help most: {helps}",
    )


def check_words(expected: Expected, unit: str) -> tuple[str, ...]:
    """Two lines for a terminal, or three where sheets are not cut."""
    typical, worst = expected.typical, expected.worst
    step = advice(expected)
    return (
        f"expected, 19 times in 20: neighbours within {fine(typical.step, unit)} of one line, their gap within "
        f"{fine(typical.gap_error, unit)}; at worst, {_names(worst)}, {fine(worst.step, unit)} and "
        f"{fine(worst.gap_error, unit)}, where an eye sees {fine(worst.seen, unit)}",
        *_uncut_words(expected, unit),
        step.words if step.name == "none" else f"what would help most: {_lower(step.words)}",
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
    if expected.worst.step <= expected.worst.seen:
        return "few steps will show."
    return "some will show, so check the edges with a level once all hangs."


def error_data(expected: Expected | None) -> dict[str, Any] | None:
    """The expected error for a machine (mm, to 0.01); None where there is nothing to expect, with a single frame."""
    if expected is None:
        return None
    step = advice(expected)
    return {
        "probability": 0.95,
        "calibrated": expected.calibrated,
        "pairs": expected.pairs,
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
        "contributions": {source: _hundredth(mm) for source, mm in sources_95(pair)},
    }


def _hundredth(mm: float) -> float:
    return round(mm, 2) + 0.0
