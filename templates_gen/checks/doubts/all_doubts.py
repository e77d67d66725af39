"""All doubts about what was typed or measured, as warnings: slips that would reach the paper.

A doubt is only about what may be right; `confirmed` in the job says that it is.
"""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.arranging.plan import Plan
from templates_gen.checks.doubts.doubt import Doubt, as_findings
from templates_gen.checks.doubts.features import feature_doubts
from templates_gen.checks.doubts.fellows import fellow_doubts
from templates_gen.checks.doubts.fixings import fixing_doubts
from templates_gen.checks.doubts.frames import frame_doubts
from templates_gen.checks.doubts.group import group_doubts
from templates_gen.checks.doubts.hangers import hanger_doubts
from templates_gen.checks.doubts.paper import paper_doubts
from templates_gen.checks.doubts.plan import plan_doubts
from templates_gen.checks.doubts.twins import twin_doubts
from templates_gen.checks.doubts.wall import wall_doubts
from templates_gen.checks.finding import Finding
from templates_gen.job.model import Job

OF_A_JOB = (
    wall_doubts, feature_doubts, frame_doubts, fellow_doubts, hanger_doubts, twin_doubts, fixing_doubts, group_doubts,
    paper_doubts,
)  # fmt: skip


def job_doubts(job: Job) -> Iterator[Doubt]:
    """Every doubt about a job that takes no plan, confirmed or not."""
    for doubts in OF_A_JOB:
        yield from doubts(job)


def _doubtful(plan: Plan) -> Iterator[Finding]:
    yield from as_findings((*job_doubts(plan.job), *plan_doubts(plan)), plan.job)


RULES = (_doubtful,)
