"""The table of how exactly people and machines work, complete."""

from __future__ import annotations

from templates_gen.base.record import replace
from templates_gen.job.accuracy import Accuracy
from templates_gen.job.tables.paper import AccuracyTable


def build_accuracy(table: AccuracyTable) -> Accuracy:
    """The standard deviations in mm and per cent, the usual ones where none is given."""
    given = {name: value for name in table.__struct_fields__ if (value := getattr(table, name)) is not None}
    return replace(Accuracy(), **{name: value if name == "string" else float(value) for name, value in given.items()})
