"""A printer's profile: how long it prints what it is asked for, worked out from what was measured on the scale page."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any

from templates_gen.base.errors import InputError
from templates_gen.base.record import Record
from templates_gen.base.units import INCH
from templates_gen.job.accuracy import NORMAL_95, READING, SCALE

MOST_OFF, ODD = 0.05, 0.01
"""Shares of the asked length: further off than the first is refused, than the second is worth a warning.
Our own design, no source."""

MOST_AT_ODDS = 0.015
"""How far a measured diagonal may be from what the measured sides make it, as a share.  Our own design, no source."""

ODD_SKEW = 0.5
"""Degrees; more is rather a slip in measuring a diagonal than a printer.  Our own design, no source."""

FIT = "this is what “fit to page” or “shrink” in a print dialog makes of a page"
BORDERLESS = "this is what borderless printing, or enlarging to fill the paper, makes of a page"
OTHER_PAPER = (
    "this is what becomes of {} when the printer is set to {} paper, or of “fit to page”: set the printer to the "
    "paper that is in it"
)
LETTER_ON_A4, A4_ON_LETTER = OTHER_PAPER.format("a letter page", "A4"), OTHER_PAPER.format("an A4 page", "letter")
NO_DRIVER = (
    "this is what becomes of a page that the computer prints without a description of the printer: install the "
    "printer's driver"
)
TELLTALE = (
    (0.8561, "a4", NO_DRIVER),  # by default without a PPD: cups-filters 1.28.17, measured by us
    (0.8882, "a4", A4_ON_LETTER),  # by default, margins 3.2 and 12.7 mm: cups-filters 1.28.17, measured by us
    (0.9091, "letter", NO_DRIVER),  # fit-to-page without a PPD: cups-filters 1.28.17, measured by us
    (0.9132, "a4", A4_ON_LETTER),  # by default, margins 4.2 mm: cups-filters 1.28.17, measured by us
    (0.9158, "", FIT),  # a4, print-scaling=auto or fit: libcupsfilters 2.2.1, measured by us
    (0.9330, "letter", LETTER_ON_A4),  # by default, margins 4.2 mm: cups-filters 1.28.17, measured by us
    (0.9428, "letter", LETTER_ON_A4),  # by default, margins 3.2 and 12.7 mm: cups-filters 1.28.17, measured by us
    (0.9428, "", FIT),  # letter, fit-to-page, margins 3.2 and 12.7 mm: cups-filters 1.28.17, measured by us
    (0.9466, "", FIT),  # a4, fit-to-page: cups-filters 1.28.17, libcupsfilters 2.1.1, measured by us
    (0.9572, "", FIT),  # a4, fit-to-page through a driverless queue of CUPS 2.4.2, measured by us
    (0.97, "", FIT),  # a4, scaling=97 of the print dialogs, from memory
    (1.053, "", BORDERLESS),  # a page with narrow boxes, fit-to-page: cups-filters 1.28.17, measured by us
    (1.063, "", BORDERLESS),  # letter on borderless a4, by default: cups-filters 1.28.17, measured by us
)
"""Ratios of printed to asked length that tell how a page was printed, on one paper or ("") on any."""

SMALLER = (
    "a printer alone does not shrink both ways alike: the page was printed with “fit to page” or “shrink”, several to "
    "a sheet, or with the printer set to smaller paper"
)
LARGER = (
    "a printer alone does not enlarge both ways alike: the page was printed borderless, enlarged to fill the paper, or "
    "with the printer set to larger paper"
)

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
    _check_scales(readings, paper, where)
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


def worse_than_none(printer: Printer, usual: float) -> bool:
    """True when a scale is known less surely than that of a printer that was not measured, whose sd is `usual`.

    A scale farther off than it is uncertain is worth correcting all the same.
    """
    scales = zip((printer.across, printer.along), sureness(printer.readings)[:2], strict=True)
    return any(sure > max(usual, abs(scale - 1)) for scale, sure in scales)


def lean_words(printer: Printer) -> str:
    """How far, and to which side, what should be upright leans on the paper."""
    return f"{abs(printer.skew):.2f}° to the {'left' if printer.skew < 0 else 'right'}"


def doubts(printer: Printer) -> Iterator[str]:
    """What is odd about a profile that can be used all the same, in words."""
    for axis, ratio in (("across", printer.across), ("along", printer.along)):
        if abs(ratio - 1) > ODD:
            reason = _telltale(ratio, printer.paper)
            yield (
                f"Printer {printer.name} prints {ratio:.2%} {axis}, more than {ODD:.0%} off: "
                + (f"{reason}." if reason else "few printers do.")
                + " The correction is right only as long as every page is printed the way the scale page was."
            )
    across, along, _ = sureness(printer.readings)
    if worse_than_none(printer, SCALE / 100):
        yield (
            f"Printer {printer.name}: this profile is less sure than none. Its scale is known to "
            f"{NORMAL_95 * across:.1%} across and {NORMAL_95 * along:.1%} along, 19 times in 20, and a printer that "
            f"was not measured is taken to be within {NORMAL_95 * SCALE / 100:.1%}. Measure the scale page again with "
            "a steel rule, or print without --printer."
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


def _check_scales(readings: Readings, paper: str, where: str) -> None:
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
                _likely_reason(readings, paper, ratio),
            )


def _likely_reason(readings: Readings, paper: str, ratio: float) -> str:
    if reason := _telltale(ratio, paper):
        return f"{reason}; {AGAIN}"
    exchanged = readings.across / readings.asked_along, readings.along / readings.asked_across
    if all(abs(value - 1) <= MOST_OFF for value in exchanged):
        return "across and along are exchanged: across is the level ruler, along the upright one on the left"
    for size, word in ((INCH, "inches"), (10.0, "centimetres")):
        if abs(ratio * size - 1) <= MOST_OFF:
            return f"a bare number is in mm: say that it is in {word}, as in 7 in or 18 cm"
    alike = abs(readings.across / readings.asked_across - readings.along / readings.asked_along) <= NEAR_TELLTALE
    scaled = (SMALLER if ratio < 1 else LARGER) if alike else "the page was scaled, or something else was measured"
    return f"{scaled}; {AGAIN}"


def _telltale(ratio: float, paper: str) -> str:
    """What a ratio tells about the way a page was printed; "" for nothing.  Of equal ones what this paper tells."""
    told = [(abs(near - ratio), not of, reason) for near, of, reason in TELLTALE if of in ("", paper)]
    off, _, reason = min(told)
    return reason if off <= NEAR_TELLTALE else ""


def _check_diagonals(readings: Readings, where: str) -> None:
    expected = math.hypot(readings.across, readings.along)
    for number, found in enumerate(readings.diagonals or (), 1):
        if not abs(found / expected - 1) <= MOST_AT_ODDS:
            raise InputError(
                f"{where}, diagonal {number}",
                f"found {found:.1f} mm, where the measured sides make it about {expected:.1f} mm",
                "measure the sides and both diagonals once more, from the middle of one corner mark to the next",
            )
