"""How the number of a length may have been meant otherwise: on another tape, or with its figures out of place."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

from templates_gen.base.record import Record
from templates_gen.base.units import MM, exact, show
from templates_gen.checks.doubts.other_tape import on_tape

LIKELY = {
    "in": ("cm", "mm", "ft"), "cm": ("in", "mm", "m", "ft"), "mm": ("cm", "in", "m", "ft"),
    "m": ("ft", "cm", "in"), "ft": ("in", "m", "cm"),
}  # fmt: skip
"""What a number written in one unit may have been measured in, the likeliest first.  Our own, no source."""


class Usual(Record, frozen=True):
    """Between which lengths a measure usually lies (mm), and beyond which, if at all, it is doubted however it is read.

    With `figures` two figures of its number that changed places are looked for, too.
    """

    least: float
    most: float
    far_least: float = 0.0
    far_most: float = math.inf
    figures: bool = False

    def holds(self, mm: float) -> bool:
        """True for a length that is usual."""
        return self.least <= mm <= self.most


class Reading(Record, frozen=True):
    """What a number could mean (mm), in words with a {} for it as its tape shows it; `unit` is what it is written in.

    Most readings are looked at and never asked about, so the question is put only when it is.
    """

    mm: float
    words: str = ""
    unit: str = ""
    tape: str = ""

    @property
    def ask(self) -> str:
        """The question: "Is it in cm? 36 cm is …"."""
        return self.words and self.words.format(show(self.mm, self.tape))

    @property
    def text(self) -> str:
        """The number as it is written if the answer is yes."""
        return exact(self.mm, self.unit) if self.unit else ""

    def meant(self, place: str) -> tuple[tuple[str, str], ...]:
        """What the field at this place is to say; nothing where there is no such reading."""
        return ((place, self.text),) if self.text else ()


NO_READING = Reading(0.0)


def other_readings(mm: float, unit: str) -> Iterator[Reading]:
    """What the number of a length could mean in another unit, whose tape shows it.

    Nobody writes less than a foot in feet.
    """
    number = mm / MM[unit]
    for other in LIKELY[unit]:
        if (other == "ft" and number < 1) or not on_tape(number, other):
            continue
        words = "inches" if other == "in" else other
        then = "Then it is {}." if other == _tape(unit) else f"{number:.4g} {other} is {{}}."
        yield Reading(number * MM[other], f"Is it in {words}? {then}", other, _tape(unit))


def tenfold(mm: float, unit: str) -> Iterator[Reading]:
    """A length with its decimal point one place to either side."""
    yield Reading(mm / 10, "Is a decimal point missing? A tenth is {}.", unit, _tape(unit))
    yield Reading(mm * 10, "Is a figure missing? Ten times as much is {}.", unit, _tape(unit))


def swapped_figures(mm: float, unit: str) -> Iterator[Reading]:
    """A length with two figures beside each other that changed places; of inches only whole ones, behind are fractions.

    No number begins with a 0 for it.
    """
    number = f"{mm / MM[unit]:.7g}"
    places = [
        at for at, sign in enumerate(number) if sign.isdigit() and (unit in METRIC or at < len(number.split(".")[0]))
    ]
    for one, two in pairwise(places):
        signs = list(number)
        signs[one], signs[two] = signs[two], signs[one]
        other = "".join(signs)
        if other != number and other.lstrip("-")[0] != "0":
            words = "Did two figures change places? Then it is {}."
            yield Reading(float(other) * MM[unit], words, unit, _tape(unit))


def doubled_figure(mm: float, unit: str) -> Iterator[Reading]:
    """A length with one figure less, where it was typed twice: 11 3/4 for 1 3/4."""
    whole, point, parts = f"{mm / MM[unit]:.7g}".partition(".")
    for one, two in pairwise(range(len(whole))):
        if whole[one] == whole[two]:
            number = float(whole[:one] + whole[two:] + point + parts)
            yield Reading(number * MM[unit], "Was a figure typed twice? Then it is {}.", unit, _tape(unit))
            return


METRIC = ("mm", "cm", "m")


def _tape(unit: str) -> str:
    return {"ft": "in", "m": "cm"}.get(unit, unit)


def probably(mm: float, unit: str, fits: Usual) -> Reading:
    """How the number was meant otherwise, in the first way that is usual; `NO_READING` where none is."""
    readings = (*other_readings(mm, unit), *(swapped_figures(mm, unit) if fits.figures else ()), *tenfold(mm, unit))
    return next((reading for reading in readings if fits.holds(reading.mm)), NO_READING)
