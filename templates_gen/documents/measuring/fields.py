"""What is to be measured on every frame, as seen from its back; and the same as a spreadsheet to be filled in."""

from __future__ import annotations

from templates_gen.base.csv_cells import NOTHING, as_csv, own_text
from templates_gen.base.record import Record
from templates_gen.base.units import exact, exact_mass, show, show_mass
from templates_gen.job.model import Frame, Hanger, Job

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


def _of_hanger(frame: Frame, unit: str) -> tuple[Measure, ...]:
    hanger, drop = frame.hanger, frame.drop
    if hanger.kind == "wire" and hanger.apart:
        apart = show(hanger.apart, unit)
        return (
            Measure("drop", "on one hook, to the top edge", drop),
            Measure("drop_at_two", f"on two, {apart} apart, to the top edge", hanger.drop_at_two),
            Measure("ring_separation", "from ring to ring", hanger.ring_separation),
            Measure("ring_depth", "rings to the top edge", hanger.ring_depth),
        )
    if hanger.kind == "wire":
        return (Measure("drop", "taut wire to the top edge", drop),)
    if hanger.kind == "sawtooth":
        return (Measure("drop", "middle teeth to the top edge", drop),)
    return _of_pair(hanger, drop)


def _of_pair(hanger: Hanger, drop: float | None) -> tuple[Measure, ...]:
    """Both sides of a pair, which change places when they are seen from the back."""
    if hanger.kind == "cleat":
        return (
            Measure("drop", "bearing edge to the top edge", drop),
            Measure("screw_below", "wall rail's screws below that edge", hanger.screw_below),
            Measure("left", "left screw from behind: in by", hanger.right),
            Measure("right", "right screw from behind: in by", hanger.left),
        )
    one, point = ("ring", "ring") if hanger.kind == "rings" else ("slot", "slot's top")
    left, right = (drop if own is None else own for own in (hanger.drop_right, hanger.drop_left))
    return (
        Measure("drop_left", f"left {point} from behind: drop", left),
        Measure("drop_right", f"right {point} from behind: drop", right),
        Measure("left", f"left {one} from behind: in by", hanger.right),
        Measure("right", f"right {one} from behind: in by", hanger.left),
    )


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
