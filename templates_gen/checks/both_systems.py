"""Lengths of standards that print them in both systems, the one not quite the other."""

from __future__ import annotations

from templates_gen.base.record import Record
from templates_gen.base.units import INCH, show, show_both


class Printed(Record, frozen=True):
    """A length as a standard prints it, in inches and in mm; a job is held to the figure of its own unit."""

    inches: float
    metric: float

    def mm(self, unit: str) -> float:
        """The length that a job in this unit is held to (mm)."""
        return self.inches * INCH if unit == "in" else self.metric

    def words(self, unit: str) -> str:
        """In the job's unit and then in the other, both as the standard prints them."""
        if unit == "in":
            return f"{self.inches:g} in · {self.metric:g} mm"
        return f"{show(self.metric, unit)} · {self.inches:g} in"

    def shown(self, unit: str) -> str:
        """The figure of the job's unit, and what that is in the other."""
        return show_both(self.mm(unit), unit)
