"""Cures of a doubt: what was probably meant is written, or the value is said to be right."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from templates_gen.checks.finding import CONFIRMED, Cure, Finding
from templates_gen.job.changes import Change, Place
from templates_gen.job.model import Job

_FEATURE = re.compile(r"feature (\d+) \(")


def place_of(field: str, numbers: Mapping[str, int]) -> Place:
    """The place in the job file of a field as doubts name it: "frame B, hanger, left", "feature 2 (switch), left".

    `numbers` are those of the frames by their ids, which may have commas, too.
    """
    parts = field.removeprefix("frame ").split(", ")
    for count in range(len(parts) - 1, 0, -1) if field.startswith("frame ") else ():
        if (number := numbers.get(", ".join(parts[:count]))) is not None:
            return "frame", number, *parts[count:]
    if match := _FEATURE.match(field):
        return "wall", "feature", int(match[1]) - 1, *field.rpartition("), ")[2].split(", ")
    return tuple(field.split(", "))


def as_meant(finding: Finding, job: Job) -> Iterator[Cure]:
    """All its fields as they were probably meant."""
    if finding.meant:
        said = ", and ".join(f"{field}, to {text}" for field, text in finding.meant)
        numbers = {frame.id: number for number, frame in enumerate(job.frames)}
        changes = tuple(Change(place_of(field, numbers), text) for field, text in finding.meant)
        yield Cure(f"set {said}", changes)


def as_it_is(finding: Finding, job: Job) -> Iterator[Cure]:
    """What was doubted is right."""
    if finding.confirm:
        yield Cure("it is right as it is", (Change(CONFIRMED, (*job.confirmed, *finding.confirm)),))
