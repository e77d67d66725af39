"""Cures of a doubt: what was probably meant is written, or the value is said to be right."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from templates_gen.checks.finding import CONFIRMED, Cure, Finding
from templates_gen.job.changes import Change, Place
from templates_gen.job.model import Frame, Job

_FEATURE = re.compile(r"feature (\d+) \(")


def place_of(field: str, frames: Sequence[Frame]) -> Place:
    """The place in the job file of a field as doubts name it: "frame B, hanger, left", "feature 2 (switch), left"."""
    for number, frame in enumerate(frames):
        if field.startswith(start := f"frame {frame.id}, "):
            return "frame", number, *field.removeprefix(start).split(", ")
    if match := _FEATURE.match(field):
        return "wall", "feature", int(match[1]) - 1, *field.rpartition("), ")[2].split(", ")
    return tuple(field.split(", "))


def as_meant(finding: Finding, job: Job) -> Iterator[Cure]:
    """All its fields as they were probably meant."""
    if finding.meant:
        said = ", and ".join(f"{field}, to {text}" for field, text in finding.meant)
        changes = tuple(Change(place_of(field, job.frames), text) for field, text in finding.meant)
        yield Cure(f"set {said}", changes)


def as_it_is(finding: Finding, job: Job) -> Iterator[Cure]:
    """What was doubted is right."""
    if finding.confirm:
        yield Cure("it is right as it is", (Change(CONFIRMED, (*job.confirmed, *finding.confirm)),))
