"""The table of how exactly people and machines work, complete and checked."""

from __future__ import annotations

import math

from templates_gen.base.errors import InputError
from templates_gen.base.record import replace
from templates_gen.job.accuracy import Accuracy
from templates_gen.job.tables.paper import AccuracyTable

LARGEST_LENGTH = 50.0
"""mm.  A larger standard deviation is taken for a slip of the unit.  Our own design, no source."""

LARGEST_SHARE = {"scale": 5.0, "moisture_along": 2.0, "moisture_across": 2.0, "humidity": 50.0}
"""Per cent.  A printer more than 5 % off was told to fit the page; paper grows by less than 2 % for 10 % of humidity
even where it is swelling.  Our own design, no source."""


def build_accuracy(table: AccuracyTable, where: str) -> Accuracy:
    """The standard deviations in mm and per cent, the usual ones where none is given.  Raises InputError."""
    given = {name: getattr(table, name) for name in table.__struct_fields__ if getattr(table, name) is not None}
    for name, value in given.items():
        if name in LARGEST_SHARE:
            _check(value, LARGEST_SHARE[name], "per cent", f"{where}, {name}")
        elif name != "string":
            _check(value, LARGEST_LENGTH, "mm", f"{where}, {name}")
    return replace(Accuracy(), **{name: value if name == "string" else float(value) for name, value in given.items()})


def _check(value: float, largest: float, unit: str, where: str) -> None:
    if not (math.isfinite(value) and 0 <= value <= largest):
        raise InputError(where, f"found {value:g} {unit}, expected 0 to {largest:g} {unit}")
