"""What was measured on the scale page of a printer becomes its profile."""

from __future__ import annotations

from collections.abc import Mapping

from templates_gen.base.errors import InputError
from templates_gen.documents.scale_page import scale_of
from templates_gen.job.accuracy import READING
from templates_gen.job.reading.typed import read_length
from templates_gen.printer.profile import Printer, Readings, measured
from templates_gen.printer.store import checked_name

RULERS = {
    "across": "The level ruler as measured, corner 1 to 2",
    "along": "The upright ruler as measured, corner 1 to 3",
    "rising": "The diagonal from corner 1 to 4",
    "falling": "The diagonal from corner 3 to 2",
    "reading": "Usual error of one reading; default: 0.2 mm",
}
"""What is measured on the scale page.  A bare number is in mm."""


def recorded(name: str, paper: str, measures: Mapping[str, str], called: Mapping[str, str], date: str) -> Printer:
    """The profile of a printer by what was typed for each of the `RULERS`; diagonals and reading may be left out.

    Raises InputError for what cannot be, with what the measure is `called` where it was typed.
    """
    scale = scale_of(paper)
    lengths = {key: _length(value, called[key]) for key, value in measures.items() if value}
    for key in ("across", "along"):
        if key not in lengths:
            raise InputError(called[key], "found nothing, expected a length", "measure it on the scale page")
    if len(both := [lengths[key] for key in ("rising", "falling") if key in lengths]) == 1:
        raise InputError(called["rising"], "found one diagonal, expected both or none")
    readings = Readings(
        asked_across=scale.box.width,
        asked_along=scale.box.height,
        across=lengths["across"],
        along=lengths["along"],
        diagonals=(both[0], both[1]) if both else None,
        reading_error=lengths.get("reading", READING),
    )
    return measured(checked_name(name), scale.paper, readings, date)


def _length(value: str, where: str) -> float:
    """A length above zero in mm.  Raises InputError."""
    length = read_length(value, "mm", where)
    if length <= 0:
        raise InputError(where, f"found {value!r}, expected a length above zero")
    return length
