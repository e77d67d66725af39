"""What was found, each with the changes of the job file that cure it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from templates_gen.arranging.plan import Plan
from templates_gen.base.record import replace
from templates_gen.checks import find
from templates_gen.checks.cures.moves import moves
from templates_gen.checks.cures.others import others
from templates_gen.checks.cures.trial import MOST_LOOKED_AT, Trial
from templates_gen.checks.cures.usual_places import further, to_stud, to_usual_room
from templates_gen.checks.finding import CONFIRMED, Cure, Finding
from templates_gen.job.changes import Change, Place
from templates_gen.job.model import Job
from templates_gen.job.reading.files import parse_toml


def cured(plan: Plan, found: Sequence[Finding], path: Path) -> tuple[Finding, ...]:
    """The same findings with their cures, for a job that was read from `path`.

    A cure is only offered once it has been tried: the changed job can be read, the finding is gone, and no new stop has
    come.  No other places are looked for, and of a very large job few cures are tried, or none: that takes too long.
    Nothing is tried on another wall than the job's.
    """
    job = plan.job
    if not job.sources or job.moved_to:
        return tuple(found)
    if len(plan.frames) > MOST_LOOKED_AT:
        return tuple(replace(finding, cures=tuple(as_it_is(finding, job))) for finding in found)
    trial = Trial(plan, tuple(found), parse_toml(job.sources[0][1], path.name), path, find)
    return tuple(replace(finding, cures=tuple(_cures(trial, finding))) for finding in found)


def _cures(trial: Trial, finding: Finding) -> Iterator[Cure]:
    job = trial.plan.job
    yield from (cure for cure in as_meant(finding, job) if trial.cures(finding, cure))
    for way in (moves, further, to_usual_room, to_stud, others):
        yield from way(trial, finding)
    yield from as_it_is(finding, job)


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
