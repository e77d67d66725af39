"""Cures that change a frame or what holds it: a size as measured, a drop that is open again, a rating to ask for."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import TOLERANCE, exceeds
from templates_gen.base.units import DIVISION, show, show_mass
from templates_gen.checks.cures.moves import keeping
from templates_gen.checks.cures.trial import Trial
from templates_gen.checks.finding import Cure, Finding
from templates_gen.checks.hanging import seat_that_hides
from templates_gen.checks.lifting import rating_wanted
from templates_gen.checks.parts import SIZE_SLACK
from templates_gen.checks.sentences import listed
from templates_gen.job.changes import Change, Place, inside

LONGER = 12
"""Steps of length that a nail is tried longer or shorter by.  Our own design, no source."""

STEPS = {"in": 6.35, "cm": 5.0, "mm": 5.0}
"""mm from one length of nails that is sold to the next: 1/4 in, 5 mm (from memory)."""

Numbered = Sequence[tuple[int, Hung]]
"""Frames that a finding is about, each with the number of its table in the job file."""


def others(trial: Trial, finding: Finding) -> Iterator[Cure]:
    """What cures a finding without moving anything that is on the wall by hand."""
    make = CURES.get(finding.rule)
    numbers = {frame.id: number for number, frame in enumerate(trial.plan.job.frames)}
    about = [(numbers[hung.frame.id], hung) for hung in trial.plan.frames if hung.frame.id in finding.about]
    for cure in make(trial, about) if make else ():
        if trial.cures(finding, cure):
            yield cure
            if finding.rule in ONE_IS_ENOUGH:
                return


def _rated(trial: Trial, about: Numbered) -> Iterator[Cure]:
    """Fixings that their maker rates for what the trade asks for; a hook's seat lies as far below its nail as now."""
    unit = trial.plan.job.unit
    wanted = max((rating_wanted(hung, unit) for _, hung in about), default=0.0)
    if not wanted:
        return
    kinds = {hung.frame.fixing.kind for _, hung in about}
    seat = " whose seat lies as far below the nail" if kinds == {"hook"} else ""
    kind = f"{kinds.pop()}s" if len(kinds) == 1 else "fixings"
    shown = show_mass(wanted, unit)
    said = f"use {kind} rated {shown} or more{seat}, and set their rating"
    yield Cure(said, _of_fixings(trial, about, "rating", shown))


def _of_fixings(trial: Trial, about: Numbered, field: str, value: str) -> tuple[Change, ...]:
    """A field of the fixings of these frames, where each has it from: its own table, its type's, or that of all."""
    places: dict[Place, None] = {}
    for number, _ in about:
        table = _table(trial, number)
        kind = ("frame_type", str(table.get("type", "")))
        if isinstance(table.get("fixing"), Mapping):
            places[("frame", number, "fixing", field)] = None
        elif isinstance(inside(trial.tables, (*kind, "fixing")), Mapping):
            places[(*kind, "fixing", field)] = None
        else:
            places[("fixing", field)] = None
    return tuple(Change(place, value) for place in places)


def _table(trial: Trial, number: int) -> Mapping[str, Any]:
    """A frame's own table in the job file; nothing for one of a spreadsheet."""
    tables: Sequence[Mapping[str, Any]] = trial.tables.get("frame", [])
    return tables[number] if number < len(tables) else {}


def _lengthened(sign: int) -> Callable[[Trial, Numbered], Iterator[Cure]]:
    """Nails so much longer (1) or shorter (-1) as it takes, the nearest length first."""

    def cures(trial: Trial, about: Numbered) -> Iterator[Cure]:
        unit, now = trial.plan.job.unit, {hung.frame.fixing.length for _, hung in about}
        at = now.pop() if len(now) == 1 else None
        if at is None:
            return
        step = STEPS[unit]
        first = math.floor(at / step + 0.5)
        for more in range(1, LONGER + 1):
            length = step * (first + sign * more)
            if exceeds(length, 0.0):
                shown = show(length, unit)
                kind = "screws" if all(hung.frame.fixing.kind == "screw" for _, hung in about) else "nails"
                yield Cure(f"use {kind} {shown} long", _of_fixings(trial, about, "length", shown))

    return cures


def _open_drop(trial: Trial, about: Numbered) -> Iterator[Cure]:
    """What was measured wrongly is taken out: the nail is then drawn once it has been measured."""
    taken = [
        Change(("frame", number, *way), None)
        for number, _ in about
        for way in (("drop",), ("hanger", "drop_left"), ("hanger", "drop_right"), ("hanger", "drop_at_two"))
        if inside(_table(trial, number), way) is not None
    ]
    if taken:
        said = listed([hung.frame.id for _, hung in about])
        yield Cure(f"take the drop of {said} out, and measure it again before hanging", tuple(taken))


def _other_seat(trial: Trial, about: Numbered) -> Iterator[Cure]:
    """A hook with its seat nearer to the nail, which comes to lie behind the frame; else the drop is open again."""
    unit, seats = trial.plan.job.unit, [seat_that_hides(hung) for _, hung in about]
    if seats and all(seat is not None for seat in seats):
        seat = show(math.floor(min(filter(None, seats)) / DIVISION[unit] + TOLERANCE) * DIVISION[unit], unit)
        yield Cure(f"use a hook with its seat {seat} below its nail", _of_fixings(trial, about, "below", seat))
    yield from _open_drop(trial, about)


def _without(said: str, *fields: str) -> Callable[[Trial, Numbered], Iterator[Cure]]:
    """These fields are taken out of the frames' tables."""

    def cures(trial: Trial, about: Numbered) -> Iterator[Cure]:
        yield Cure(said, tuple(Change(("frame", number, field), None) for number, _ in about for field in fields))

    return cures


def _as_measured(trial: Trial, about: Numbered) -> Iterator[Cure]:
    """The size in the job file as it was measured."""
    for number, hung in about:
        frame, unit = hung.frame, trial.plan.job.unit
        sides = (("width", frame.width, frame.listed[0]), ("height", frame.height, frame.listed[1]))
        new = [
            (side, show(own, unit)) for side, own, told in sides if told is not None and abs(own - told) > SIZE_SLACK
        ]
        said = " and ".join(f"{side}, to {value}" for side, value in new)
        yield Cure(
            f"set frame {frame.id}, {said}", tuple(Change(("frame", number, side), value) for side, value in new)
        )


def _kept(trial: Trial, about: Numbered) -> Iterator[Cure]:
    """Places that were found are kept; wishes are then met or not, and none is left."""
    plan: Plan = trial.plan
    if plan.job.group.arrangement == "salon":
        yield Cure("keep the frames where they are, placed one by one", keeping(plan, trial.group))


CURES: Mapping[str, Callable[[Trial, Numbered], Iterator[Cure]]] = {
    "rating-exceeded": _rated, "rating-unknown": _rated,
    "nail-short": _lengthened(1), "nail-deep": _lengthened(-1),
    "drop-beyond-frame": _open_drop, "hook-would-show": _other_seat,
    "size-differs": _without("take width and height out: print, mat and moulding give them", "width", "height"),
    "measured-otherwise": _as_measured,
    "drops-disagree": _without("take the drop on one hook out: the one on both counts", "drop"),
    "image-missing": _without("leave the pictures out", "image"), "wish-unmet": _kept, "arrangement-found": _kept,
}  # fmt: skip
"""What may cure a finding, by its rule."""

ONE_IS_ENOUGH = ("nail-short", "nail-deep")
"""Rules whose cures are the same, more or less of it: the first is the nearest."""
