"""What the lengths measured on the taped paper say, in plain words and for a machine."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import Any

from templates_gen.base.units import show_both
from templates_gen.job.accuracy import NORMAL_95
from templates_gen.tolerance.statement import fine
from templates_gen.tolerance.tape_check import NAMES, Suspect, TapeCheck

SHARE_DIGITS, DEGREE_DIGITS, MM_DIGITS, ODDS_DIGITS = 5, 3, 1, 2
"""Decimals of what a machine is told: shares of one, degrees, mm, and chances; finer than anyone measures.  Our own
design."""

SHOWN_AS_NOTHING = 0.05
"""mm; less than that is shown as 0.0 mm."""


def tape_words(check: TapeCheck, unit: str) -> Iterator[str]:
    """The numbers, whether to tape it again, where to look first, and what three lengths cannot tell."""
    across, upward, lean = (NORMAL_95 * sd for sd in check.sds)
    yield (
        f"taped: across {check.across:.2%} of what it should be, give or take {across:.2%}; upward "
        f"{check.upward:.2%}, give or take {upward:.2%}"
    )
    side, off = f"the {'right' if check.lean > 0 else 'left'}", fine(abs(check.leaning), unit)
    stands = f": the top stands {off} to {side} over a height of {show_both(check.size[1], unit)}"
    if abs(check.leaning) < SHOWN_AS_NOTHING:
        side, stands = "neither side", ""
    yield f"leans {abs(math.degrees(check.lean)):.2f}° to {side}, give or take {math.degrees(lean):.2f}°{stands}"
    yield from _scale_words(check, unit)
    yield _verdict(check, unit)
    if check.retape and check.suspects:
        yield _where(check.suspects)
    yield (
        "Three lengths cannot tell one turned join from several, and show no bend, as from a join turned in the "
        "middle: hold the level line to a string. If every sheet leans alike, the printer prints askew: templates-gen "
        "printer page measures that."
    )


def _scale_words(check: TapeCheck, unit: str) -> Iterator[str]:
    for axis, (way, ruler, joins) in enumerate((("across", "level", "upright"), ("upward", "upright", "level"))):
        if check.scaled(axis):
            off = ((check.across, check.upward)[axis] - 1) * check.size[axis]
            long, lap = ("long", "little") if off > 0 else ("short", "far")
            yield (
                f"It is {fine(abs(off), unit)} too {long} {way}. Measure the {ruler} ruler of one sheet. If that is "
                f"{long} too, the sheets were not printed at full size: record the printer and print again. If it is "
                f"right, the {joins} joins lap too {lap}: tape them again by their marks."
            )


def _verdict(check: TapeCheck, unit: str) -> str:
    if check.retape:
        seen = fine(check.seen, unit)
        return f"Tape it again: it leans by more than is seen between neighbours ({seen}), if it all comes at one join."
    if abs(check.leaning) > check.seen:
        return "It may lean by more than is seen, but a tape cannot tell so little here: measure once more."
    less = "it leans by less than is seen between neighbours"
    if check.scaled(0) or check.scaled(1):
        return f"The lean alone is no reason to re-tape: {less}."
    return f"No need to re-tape: {less}."


def _where(suspects: Sequence[Suspect]) -> str:
    first, *others = (f"step {one.step} ({_met(one)}, {one.share:.0%})" for one in suspects)
    then = f", then at {', '.join(others)}" if others else ""
    return (
        f"Look first at {first}{then}: steps are those on the map of the sheets, and the percentage is that join's "
        "share of the difference between the diagonals, if all joins are matched alike. Open the join, bring the "
        "registration marks of both its ends together, tape, and measure again."
    )


def _met(suspect: Suspect) -> str:
    """The sheets that meet there, at both ends where they are not the same."""
    return " to ".join(f"sheet {one} with sheet {two}" for one, two in suspect.ends)


def tape_data(check: TapeCheck, unit: str) -> dict[str, Any]:
    """The tape check for a machine; lengths in mm, angles in degrees, scales as shares of one, doubts at 95 %."""
    across, upward, lean = (NORMAL_95 * sd for sd in check.sds)
    return {
        "measured": {
            name: {
                "from": span.start, "to": span.end, "planned": round(span.length, MM_DIGITS),
                "found": round(length, MM_DIGITS),
            }
            for name, span, length in zip(NAMES, check.spans, check.found, strict=True)
        },
        "across": round(check.across, SHARE_DIGITS), "across_doubt": round(across, SHARE_DIGITS),
        "upward": round(check.upward, SHARE_DIGITS), "upward_doubt": round(upward, SHARE_DIGITS),
        "lean": round(math.degrees(check.lean), DEGREE_DIGITS), "lean_doubt": round(math.degrees(lean), DEGREE_DIGITS),
        "leaning": round(check.leaning, MM_DIGITS) + 0.0,
        "retape": check.retape,
        "look_at": [
            {"step": one.step, "sheets": [list(end) for end in one.ends], "share": round(one.share, ODDS_DIGITS)}
            for one in check.suspects
        ],
        "text": list(tape_words(check, unit)),
    }  # fmt: skip
