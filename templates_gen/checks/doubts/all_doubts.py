"""All doubts about what was typed or measured, as warnings: slips that would reach the paper.

A doubt is only about what may be right; `confirmed` in the job says that it is.
"""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.arranging.plan import Plan
from templates_gen.checks.doubts.doubt import Doubt, as_findings
from templates_gen.checks.doubts.features import feature_doubts
from templates_gen.checks.doubts.fellow_weights import fellow_weights
from templates_gen.checks.doubts.fellows import fellow_doubts
from templates_gen.checks.doubts.fixings import fixing_doubts
from templates_gen.checks.doubts.frames import frame_doubts
from templates_gen.checks.doubts.group import group_doubts
from templates_gen.checks.doubts.hangers import hanger_doubts
from templates_gen.checks.doubts.nearly_twins import nearly_twins
from templates_gen.checks.doubts.odd_places import odd_places
from templates_gen.checks.doubts.off_tape import off_tape
from templates_gen.checks.doubts.paper import paper_doubts
from templates_gen.checks.doubts.plan import plan_doubts
from templates_gen.checks.doubts.twins import twin_doubts
from templates_gen.checks.doubts.wall import wall_doubts
from templates_gen.checks.finding import Finding
from templates_gen.job.model import Job


def job_doubts(job: Job, only: str = "") -> Iterator[Doubt]:
    """Every doubt about a job that takes no plan, confirmed or not.

    With the id of one frame `only` that one is compared with all others: each with each takes long in a large job.
    """
    yield from wall_doubts(job)
    yield from feature_doubts(job)
    yield from fellow_doubts(job, only)  # what its fellows tell of a size goes before what is usual for any
    yield from frame_doubts(job)
    yield from fellow_weights(job, only)
    yield from nearly_twins(job, only)
    yield from hanger_doubts(job)
    yield from twin_doubts(job)
    yield from fixing_doubts(job)
    yield from group_doubts(job)
    yield from paper_doubts(job)
    yield from off_tape(job)


def placing_doubts(plan: Plan) -> Iterator[Doubt]:
    """Every doubt about a job that takes its plan, confirmed or not."""
    yield from plan_doubts(plan)
    yield from odd_places(plan)


def doubtful(plan: Plan, only: str = "") -> Iterator[Finding]:
    """What is doubtful about a plan, as warnings; `only` as for job_doubts."""
    yield from as_findings((*job_doubts(plan.job, only), *placing_doubts(plan)), plan.job)


RULES = (doubtful,)
