"""What was found, each with the changes of the job file that cure it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from templates_gen.arranging.plan import Plan
from templates_gen.base.record import replace
from templates_gen.checks import find
from templates_gen.checks.cures.meant import as_it_is, as_meant
from templates_gen.checks.cures.moves import moves
from templates_gen.checks.cures.others import others
from templates_gen.checks.cures.trial import MOST_LOOKED_AT, Trial
from templates_gen.checks.cures.usual_places import further, to_stud, to_usual_room
from templates_gen.checks.finding import Cure, Finding
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
