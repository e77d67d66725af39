"""What the figures of a size tell of its tape: none in inches shows tenths, none in centimetres quarters."""

from __future__ import annotations

from templates_gen.base.units import INCH, MM
from templates_gen.job.model import Frame

INCH_SIZES = frozenset(
    ((4, 6), (5, 7), (8, 10), (8, 12), (9, 12), (11, 14), (12, 12), (12, 16), (16, 20), (20, 24), (24, 36))
)
"""Sizes of frames sold by the inch that are none in centimetres.  Common practice, no source."""

FINEST = 32
"""Lines to an inch on the finest tape.  Common practice, no source."""

OFF_A_LINE = 0.05
"""Of a line's distance to the next: a size that lies further off is not on the tape.  Our own, no source."""

LINES = {"mm": 2, "cm": 20, "m": 1000}
"""What is read off a metric tape, to one of each: millimetres, and halves between them.  Common practice, no source."""

TYPED = 1e-6
"""Tenths of an inch; what was typed in tenths is off by rounding alone.  Our own, no source."""

SAME = 0.01
"""cm; figures that differ by less are the same.  Our own, no source."""


def by_the_inch(frame: Frame) -> bool:
    """True for a size in cm whose numbers are a size in inches, or quarters, which no metric tape shows."""
    sides = sorted((frame.width / MM["cm"], frame.height / MM["cm"]))
    quarters = any(abs(side * 2 % 1.0 - 0.5) < SAME for side in sides)
    return quarters or tuple(sides) in INCH_SIZES


def read_off_inches(frame: Frame) -> bool:
    """True for a size in inches with a quarter or less of one, which nobody reads off a tape in centimetres."""
    # of one unit a metric tape, and who reads it, has halves at the most
    return any(not no_inches(side) and not on_tape(side / INCH, "mm") for side in (frame.width, frame.height))


def on_tape(number: float, unit: str) -> bool:
    """True for a number that a tape in `unit` shows: no sixteenths in centimetres.  Inches may be written in tenths."""
    lines = number * LINES.get(unit, 0)
    return abs(lines - round(lines)) < SAME


def in_tenths_of_inches(mm: float) -> bool:
    """True for a length whose inches are whole tenths, as centimetres are read."""
    tenths = mm / INCH * 10
    return abs(tenths - round(tenths)) < SAME


def typed_in_tenths(mm: float) -> bool:
    """True for a length whose inches are tenths that no tape in inches shows, as one in centimetres does: as somebody
    typed it, not near it as what was worked out may be."""
    tenths = mm / INCH * 10
    return abs(tenths - round(tenths)) < TYPED and no_inches(mm)


def no_inches(mm: float) -> bool:
    """True for a length that no tape in inches shows."""
    lines = mm / INCH * FINEST
    return abs(lines - round(lines)) > OFF_A_LINE


def in_tenths(frame: Frame) -> bool:
    """True for a size in inches that no tape shows, but one in centimetres does."""
    return no_inches(frame.width) or no_inches(frame.height)


def typed_as(frame: Frame, unit: str) -> bool:
    """True for a size whose figures are those of the other tape, in a job that measures in `unit`."""
    return {"in": in_tenths, "cm": by_the_inch}.get(unit, lambda _: False)(frame)
