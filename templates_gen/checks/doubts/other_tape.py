"""What the figures of a size tell of its tape: none in inches shows tenths, none in centimetres quarters."""

from __future__ import annotations

from templates_gen.base.units import INCH
from templates_gen.job.model import Frame

INCH_SIZES = frozenset(
    ((4, 6), (5, 7), (8, 10), (8, 12), (9, 12), (11, 14), (12, 12), (12, 16), (16, 20), (20, 24), (24, 36))
)
"""Sizes of frames sold by the inch that are none in centimetres.  Common practice, no source."""


def by_the_inch(frame: Frame) -> bool:
    """True for a size in cm whose numbers are a size in inches, or quarters, which no metric tape shows."""
    sides = sorted((frame.width / 10.0, frame.height / 10.0))
    quarters = any(abs(side * 2 % 1.0 - 0.5) < 0.01 for side in sides)
    return quarters or tuple(sides) in INCH_SIZES


def in_tenths(frame: Frame) -> bool:
    """True for a size in inches that no tape shows, but one in centimetres does."""
    return any(abs(side / INCH * 32 - round(side / INCH * 32)) > 0.05 for side in (frame.width, frame.height))


def typed_as(frame: Frame, unit: str) -> bool:
    """True for a size whose figures are those of the other tape, in a job that measures in `unit`."""
    return {"in": in_tenths, "cm": by_the_inch}.get(unit, lambda _: False)(frame)
