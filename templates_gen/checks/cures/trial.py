"""A cure is tried before it is offered: the job file's tables are changed, read and checked again."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any

from templates_gen.arranging.plan import Plan, found_key, placed, plan_wall
from templates_gen.base.errors import InputError
from templates_gen.base.record import replace
from templates_gen.checks.finding import STOP, WARN, Cure, Finding
from templates_gen.job.changes import Change, changed
from templates_gen.job.model import Job
from templates_gen.job.reading.building import build_job

MOST_FRAMES, MOST_LOOKED_AT = 1000, 2000
"""Frames of a job for which anything is tried, and frames that are looked at in all trials of a check, so that these
take about a second.  Our own design, no source."""

After = tuple[Plan, tuple[Finding, ...]]


class Trial:
    """A plan with what was found about it, and the tables it was read from beside `path`; `find` finds again."""

    def __init__(
        self, plan: Plan, found: tuple[Finding, ...], tables: Mapping[str, Any], path: Path,
        find: Callable[[Plan], tuple[Finding, ...]],
    ) -> None:  # fmt: skip
        self.plan, self.found, self.tables, self._path, self._find = plan, found, tables, path, find
        self._done: dict[str, After | None] = {}  # by what is changed

    @property
    def group(self) -> Mapping[str, Any]:
        """The table of the group as it is written."""
        group: Mapping[str, Any] = self.tables.get("group", {})
        return group

    def cures(self, finding: Finding, cure: Cure) -> bool:
        """True when after it the finding is gone, no other stop has come, and no more is doubted than before."""
        after = self.after(cure.changes)
        if after is None or not _gone(finding, after[1]):
            return False
        stops, before = _of_level(after[1], STOP), _of_level(self.found, STOP)
        return not stops - before and (not finding.confirm or not _doubts(after[1]) - _doubts(self.found))

    def after(self, changes: tuple[Change, ...]) -> After | None:
        """The plan and the findings after these changes; None where the job cannot be read then, or for a large job
        once enough was tried."""
        count, key = len(self.plan.frames), repr(changes)
        if key not in self._done and count <= MOST_FRAMES and len(self._done) * count < MOST_LOOKED_AT:
            self._done[key] = self._tried(changes)
        return self._done.get(key)

    def _tried(self, changes: Sequence[Change]) -> After | None:
        try:
            job = build_job(changed(self.tables, changes), self._path, self.plan.job.sources[0][1])
            plan = self._planned(job)
            return (plan, self._find(plan)) if plan else None
        except InputError:
            return None

    def _planned(self, job: Job) -> Plan | None:
        """The plan of a changed job; None where other places would have to be found, which takes too long."""
        if job.group.arrangement != "salon":
            return plan_wall(job)
        same = found_key(job) == found_key(self.plan.job)
        return replace(plan_wall(placed(job, self.plan.rects)), job=job) if same else None


def _gone(finding: Finding, found: Sequence[Finding]) -> bool:
    """True when none of these says the same of the same frames; of a doubt, when none doubts the same field."""
    alike = [other for other in found if other.rule == finding.rule]
    if finding.confirm:
        places = _places(finding)
        return not any(places & _places(other) for other in alike)
    frames = set(finding.about)
    return not any(frames & set(other.about) or not frames or not other.about for other in alike)


def _places(finding: Finding) -> set[str]:
    return {text.rpartition(": ")[0] for text in finding.confirm}


def _of_level(found: Sequence[Finding], level: str) -> Counter[tuple[object, ...]]:
    return Counter((finding.rule, finding.about) for finding in found if finding.level == level)


def _doubts(found: Sequence[Finding]) -> Counter[str]:
    return Counter(place for finding in found if finding.level == WARN for place in _places(finding))
