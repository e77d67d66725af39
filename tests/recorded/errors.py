"""What the frames of some plans will be off by: the variances of all pairs of neighbours, source by source."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import product

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.record import replace
from templates_gen.job.model import Job
from templates_gen.job.paper_sizes import large_page
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.corners import measures
from templates_gen.tolerance.expected import expected_error, looked_at
from templates_gen.tolerance.holding import plan_sheets
from templates_gen.tolerance.neighbours import neighbours
from templates_gen.tolerance.sources import Sources
from tests.jobs import many, paper
from tests.made import twelve
from tests.recorded.jobs import on_stairs, printer
from tests.recorded.listing import wrapped

WAYS = tuple(product(("a4", "tabloid"), ("cut", "none"), ("marks", "linked", "nails")))


def _jobs() -> dict[str, Job]:
    """Twelve frames on all kinds of paper, three up a stair, and sixty."""
    return {
        **{" ".join(way): twelve(paper(way[0], trim=way[1], cover=way[2])) for way in WAYS},
        "one piece": twelve(large_page(paper("a4"))),
        "stair": on_stairs("a4", "mm", 0.68),
        "sixty": replace(many(60), paper=paper("a4")),
    }


def of_errors() -> Iterator[str]:
    """Of every plan, found without a search, its errors, of a printer that was measured and of one that was not."""
    for (name, job), of in product(_jobs().items(), (None, printer())):
        plan = plan_wall(job)
        sheets = plan_sheets(plan, job.paper, of, quick=True)
        yield from wrapped(f"{name}{', measured' if of else ''}: ", _of_plan(plan, sheets))


def _of_plan(plan: Plan, sheets: SheetPlan) -> Iterator[str]:
    sources, pairs = Sources(plan, sheets), neighbours(plan)
    expected = expected_error(plan, sheets)
    assert expected is not None
    all_of = f"step {expected.step:.6f}, gap {expected.gap_error:.6f}, ends {expected.ends.pair.gap:.2f} apart"
    yield f"{len(pairs)} pairs, {all_of}, variances of steps and gaps"
    steps, gaps = Counter[str](), Counter[str]()
    for pair in looked_at(plan, pairs):
        what = measures(pair)
        steps.update(sources.measured_by(what.step).variances)
        for gap in what.gaps:
            gaps.update(sources.measured_by(gap).variances)
    yield from (
        f"{source} {steps[source]:.6f} {gaps[source]:.6f}"
        for source in sorted({*steps, *gaps})
        if steps[source] + gaps[source]
    )
