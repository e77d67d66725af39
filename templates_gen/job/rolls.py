"""The rolls that print shops and plotters usually have, by the units that people measure in."""

from __future__ import annotations

from templates_gen.base.record import Record
from templates_gen.base.units import INCH


class Roll(Record, frozen=True):
    """A roll: its width in mm, the name that `--paper` takes for it, and the width in both systems."""

    width: float
    name: str
    both: str


def _inches(width: int) -> Roll:
    return Roll(width * INCH, f"{width} in", f"{width} in ({width * INCH:.0f} mm)")


def _mm(width: int) -> Roll:
    return Roll(float(width), f"{width} mm", f"{width} mm ({width / INCH:.0f} in)")


_IN_INCHES = tuple(map(_inches, (24, 36, 42, 44)))
_IN_MM = tuple(map(_mm, (610, 914, 1067)))
"""24, 36, 42 and 44 in, and 1067 mm: from memory.  609 (sold as 610) and 914 mm are among the roll sizes that a
wide-format printer offers (istopwg/ippsample, issue 216)."""


def usual_rolls(unit: str) -> tuple[Roll, ...]:
    """The usual rolls where people measure in this unit, the narrowest first."""
    return _IN_INCHES if unit == "in" else _IN_MM


def roll_for(side: float, unit: str) -> Roll | None:
    """The narrowest usual roll that is as wide as this side of a page (mm); None where none is."""
    return next((roll for roll in usual_rolls(unit) if side <= roll.width), None)


def on_its_side(width: float, height: float, unit: str) -> bool:
    """Whether a page of this size (mm) comes off a narrower roll when it is turned by a quarter."""
    upright, turned = roll_for(width, unit), roll_for(height, unit)
    return turned is not None and (upright is None or turned.width < upright.width)
