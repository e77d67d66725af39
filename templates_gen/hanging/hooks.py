"""The picture hooks that shops sell, and which of them has its nail clear of an old hole."""

from __future__ import annotations

import math
from collections.abc import Iterator

from templates_gen.base.record import Record, replace
from templates_gen.base.units import INCH, KG
from templates_gen.hanging.weight_classes import ROUNDING
from templates_gen.job.model import Fixing


class Sold(Record, frozen=True):
    """A size of picture hook with one nail: its class in lb, and how far its seat is below the nail (mm)."""

    pounds: int
    below: float

    @property
    def rating(self) -> float:
        """Its class in kg."""
        return self.pounds * KG["lb"]


SOLD = (Sold(10, 0.75 * INCH), Sold(20, INCH), Sold(30, 1.25 * INCH))
"""The trade's classes with one nail; how far their seats are below it: about so far, from memory.  Larger ones have
several nails, of which one might meet the old hole."""


def clear_hooks(fixing: Fixing, right: float, up: float, needed: float) -> Iterator[Sold]:
    """Hooks that can replace a fixing whose seat moves so far right and up (mm), the smallest first.

    Each is of its class at least, and has its nail `needed` mm or more from the old hole.
    """
    for sold in SOLD:
        enough = fixing.rating is None or sold.rating >= fixing.rating - ROUNDING
        if fixing.nails == 1 and enough and math.hypot(right, up + sold.below - fixing.rise) >= needed:
            yield sold


def exchanged(fixing: Fixing, sold: Sold) -> Fixing:
    """The fixing with such a hook in its place; its rating is only said where that of the old one was."""
    return replace(fixing, kind="hook", below=sold.below, rating=None if fixing.rating is None else sold.rating)
