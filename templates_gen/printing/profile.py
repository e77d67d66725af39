"""A printer's profile: how long it prints what it is asked for, worked out from what was measured on the scale page."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any

from templates_gen.accuracy import READING
from templates_gen.errors import InputError
from templates_gen.record import Record
from templates_gen.units import INCH

MOST_OFF, ODD = 0.05, 0.01
"""Shares of the asked length: further off than the first is refused, than the second is worth a warning.
Our own design, no source."""

MOST_AT_ODDS = 0.015
"""How far a measured diagonal may be from what the measured sides make it, as a share.  Our own design, no source."""

ODD_SKEW = 0.5
"""Degrees; more is rather a slip in measuring a diagonal than a printer.  Our own design, no source."""

FIT = "this is what “fit to page” or “shrink” in a print dialog makes of a page"
BORDERLESS = "this is what borderless printing, or enlarging to fill the paper, makes of a page"
TELLTALE = (
    (0.9158, FIT),  # a4, print-scaling=auto or fit: libcupsfilters 2.2.1, measured by us
    (0.9428, FIT),  # letter on a4, by default: cups-filters 1.28.17, measured by us
    (0.9466, FIT),  # a4, fit-to-page: cups-filters 1.28.17, libcupsfilters 2.1.1, measured by us
    (0.9572, FIT),  # a4, fit-to-page through a driverless queue of CUPS 2.4.2, measured by us
    (0.97, FIT),  # a4, scaling=97 of the print dialogs, from memory
    (1.053, BORDERLESS),  # a page with narrow boxes, fit-to-page: cups-filters 1.28.17, measured by us
    (1.063, BORDERLESS),  # letter on borderless a4, by default: cups-filters 1.28.17, measured by us
)
"""Ratios of printed to asked length that tell how a page was printed."""

NEAR_TELLTALE = 0.004
"""A ratio this near to a telltale one is taken for it: reading 180 mm to 0.5 mm.  Our own design, no source."""

AGAIN = "print the scale page again at actual size (100 %), with borderless printing off, and measure again"


class Readings(Record, frozen=True, kw_only=True):
    """What was measured on the scale page, in mm, beside what was asked of the printer.

    `diagonals`: from the lower left to the upper right corner, and from the upper left to the lower right one.
    `reading_error` is the standard deviation of reading one end of a length.
    """

    asked_across: float
    asked_along: float
    across: float
    along: float
    diagonals: tuple[float, float] | None = None
    reading_error: float = READING


class Printer(Record, frozen=True, kw_only=True):
    """How one printer prints on one paper: `across` and `along` in printed mm per asked mm.

    `skew` in degrees: how far what should be upright leans to the right on the paper.
    """

    name: str
    paper: str
    across: float
    along: float
    skew: float
    readings: Readings
    date: str


def measured(name: str, paper: str, readings: Readings, date: str) -> Printer:
    """The profile that follows from what was measured.

    Raises InputError, with the likely reason, for scales that no printer has and for diagonals that the sides
    contradict.
    """
    where = f"printer {name}"
    _check_scales(readings, where)
    skew = 0.0
    if readings.diagonals is not None:
        _check_diagonals(readings, where)
        one, two = readings.diagonals
        # the law of cosines in both triangles of the parallelogram
        skew = math.degrees(math.asin((one**2 - two**2) / (4 * readings.across * readings.along)))
    across, along = readings.across / readings.asked_across, readings.along / readings.asked_along
    return Printer(name=name, paper=paper, across=across, along=along, skew=skew, readings=readings, date=date)


def sureness(readings: Readings) -> tuple[float, float, float]:
    """How sure the profile is, as standard deviations: of both scales (shares of one), and of the skew (degrees).

    Two ends are read for every length L, so a scale is known to √2·σ/L; the skew follows from two diagonals so read.
    Propagation of errors, worked out by hand here.  The skew's is 0 where no diagonals were measured.
    """
    length = math.sqrt(2) * readings.reading_error
    skew = 0.0
    if readings.diagonals is not None:
        skew = length * math.hypot(*readings.diagonals) / (2 * readings.across * readings.along)
    return length / readings.asked_across, length / readings.asked_along, math.degrees(skew)


def lean_words(printer: Printer) -> str:
    """How far, and to which side, what should be upright leans on the paper."""
    return f"{abs(printer.skew):.2f}° to the {'left' if printer.skew < 0 else 'right'}"


def doubts(printer: Printer) -> Iterator[str]:
    """What is odd about a profile that can be used all the same, in words."""
    for axis, ratio in (("across", printer.across), ("along", printer.along)):
        if abs(ratio - 1) > ODD:
            reason = _telltale(ratio)
            yield (
                f"Printer {printer.name} prints {ratio:.2%} {axis}, more than {ODD:.0%} off: "
                + (f"{reason}." if reason else "few printers do.")
                + " The correction is right only as long as every page is printed the way the scale page was."
            )
    if abs(printer.skew) > ODD_SKEW:
        yield (
            f"Printer {printer.name} leans by {lean_words(printer)}, more than {ODD_SKEW:g}°: few printers do. "
            "Measure both diagonals once more."
        )


def printer_data(printer: Printer) -> dict[str, Any]:
    """A profile as a machine reads it: lengths in mm, skew in degrees, scales as printed over asked."""
    readings, (sure_across, sure_along, sure_skew) = printer.readings, sureness(printer.readings)
    return {
        "name": printer.name, "paper": printer.paper, "date": printer.date,
        "across": printer.across, "along": printer.along, "skew": printer.skew,
        "sigma": {"across": sure_across, "along": sure_along, "skew": sure_skew},
        "asked": {"across": readings.asked_across, "along": readings.asked_along},
        "measured": {
            "across": readings.across, "along": readings.along,
            "diagonals": list(readings.diagonals) if readings.diagonals else None,
        },
    }  # fmt: skip


def _check_scales(readings: Readings, where: str) -> None:
    for axis, asked, found in (
        ("across", readings.asked_across, readings.across),
        ("along", readings.asked_along, readings.along),
    ):
        ratio = found / asked
        if not abs(ratio - 1) <= MOST_OFF:
            raise InputError(
                f"{where}, {axis}",
                f"found {found:.1f} mm where {asked:.1f} mm was asked for, which is {ratio:.1%}, "
                f"expected no more than {MOST_OFF:.0%} off",
                _likely_reason(readings, ratio),
            )


def _likely_reason(readings: Readings, ratio: float) -> str:
    if reason := _telltale(ratio):
        return f"{reason}: {AGAIN}"
    exchanged = readings.across / readings.asked_along, readings.along / readings.asked_across
    if all(abs(value - 1) <= MOST_OFF for value in exchanged):
        return "across and along are exchanged: across is the level rule, along the plumb one on the left"
    for size, word in ((INCH, "inches"), (10.0, "centimetres")):
        if abs(ratio * size - 1) <= MOST_OFF:
            return f"a bare number is in mm: say that it is in {word}, as in 7 in or 18 cm"
    return f"the page was scaled, or something else was measured: {AGAIN}"


def _telltale(ratio: float) -> str:
    """What a ratio tells about the way a page was printed; "" for nothing."""
    near, reason = min(TELLTALE, key=lambda item: abs(item[0] - ratio))
    return reason if abs(near - ratio) <= NEAR_TELLTALE else ""


def _check_diagonals(readings: Readings, where: str) -> None:
    expected = math.hypot(readings.across, readings.along)
    for number, found in enumerate(readings.diagonals or (), 1):
        if not abs(found / expected - 1) <= MOST_AT_ODDS:
            raise InputError(
                f"{where}, diagonal {number}",
                f"found {found:.1f} mm, where the measured sides make it about {expected:.1f} mm",
                "measure the sides and both diagonals once more, from the middle of one corner mark to the next",
            )
