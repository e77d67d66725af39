"""What is to be measured on every frame, as seen from its back; and the same as a spreadsheet to be filled in."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.base.csv_cells import NOTHING, as_csv, own_text
from templates_gen.base.record import Record
from templates_gen.base.units import exact, exact_mass, show, show_mass
from templates_gen.job.model import Frame, Job

COLUMNS = (
    "drop", "drop_at_two", "left", "right", "drop_left", "drop_right", "ring_separation", "ring_depth", "screw_below",
    "width", "height", "weight",
)  # fmt: skip
"""The fields of the job file that are measured, in the order of the spreadsheet."""


class Measure(Record, frozen=True):
    """One thing to measure: the job file's field, what to do in words, and what is known of it (mm, or kg)."""

    name: str
    words: str
    known: float | None

    @property
    def is_mass(self) -> bool:
        return self.name == "weight"

    def shown(self, unit: str) -> str:
        """What is known, for a person; "" when nothing is."""
        if self.known is None:
            return ""
        return show_mass(self.known, unit) if self.is_mass else show(self.known, unit)

    def exactly(self, unit: str) -> str:
        """What is known, for a file; "" when nothing is."""
        if self.known is None:
            return ""
        return exact_mass(self.known, unit) if self.is_mass else exact(self.known, unit)


def measures(frame: Frame, unit: str) -> tuple[Measure, ...]:
    """Everything to measure on a frame, the hanger first.  Left and right are as seen from the back."""
    weight = None if frame.estimated else frame.weight
    return (
        *_of_hanger(frame, unit),
        Measure("width", "width, outside", frame.width),
        Measure("height", "height, outside", frame.height),
        Measure("weight", "weight, as it will hang", weight),
    )


def _of_hanger(frame: Frame, unit: str) -> Iterator[Measure]:
    hanger, kind = frame.hanger, frame.hanger.traits
    apart = show(hanger.apart, unit) if hanger.apart else ""
    for name, words in kind.on_two if apart else kind.measured:
        yield Measure(name, words.format(apart=apart), _known(frame, name))


def _known(frame: Frame, name: str) -> float | None:
    """What is known of a field; both sides of a pair change places when they are seen from the back."""
    hanger, drop = frame.hanger, frame.drop
    sides = {"left": hanger.right, "right": hanger.left}
    drops = {"drop": drop, "drop_left": hanger.drop_right, "drop_right": hanger.drop_left}
    if name in drops:
        return drop if drops[name] is None else drops[name]
    known: float | None = sides[name] if name in sides else getattr(hanger, name)
    return known


def to_fill_in(job: Job) -> str:
    """A spreadsheet of what is to be measured, with what is known; the job file reads it when it is filled in.

    Its columns are the job file's fields; a dash stands where a frame has nothing to measure.  Lengths have their unit
    beside them: a spreadsheet then takes neither `5/8` for a day in May nor `79.4` for one in April.
    """
    rows = [_row(frame, job.unit) for frame in job.frames]
    header = [name for name in _ABOUT if any(row[name] for row in rows)]
    header += [name for name in COLUMNS if any(name in row for row in rows)]
    return as_csv(header, ([row.get(name, NOTHING) for name in header] for row in rows))


_ABOUT = ("id", "title", "type", "hanger", "apart", "seen_from")


def _row(frame: Frame, unit: str) -> dict[str, str]:
    apart, pair = frame.hanger.apart, frame.hanger.left is not None
    return {
        "id": own_text(frame.id), "title": own_text(frame.title), "type": own_text(frame.type),
        "hanger": frame.hanger.kind,
        "apart": exact(apart, unit) if apart else "", "seen_from": "back" if pair else "",
        **{one.name: one.exactly(unit) for one in measures(frame, unit)},
    }  # fmt: skip
