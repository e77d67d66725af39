"""How exactly many made-up jobs are told to hang: all words and numbers of it, and how their sheets are taped."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.errors import TemplatesError
from templates_gen.base.record import replace
from templates_gen.job.accuracy import Accuracy
from templates_gen.job.reading.building import build_job
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.effort import effort
from templates_gen.tolerance.holding import plan_sheets
from templates_gen.tolerance.order import taping_order
from tests.jobs import SAMPLES, paper
from tests.recorded.jobs import printer
from tests.recorded.limits import summed
from tests.recorded.listing import told, wrapped
from tests.recorded.tampered import tampered

JOBS = 60
"""So many of them.  Our own choice."""

LINES = 12
"""So many sums for each job, so that one tells about where something moved.  Our own choice."""


def of_taped() -> Iterator[str]:
    """For each job what its paper is, and sums of what is told."""
    for seed in range(JOBS):
        chance = Random(seed)
        try:
            plan = plan_wall(build_job(tampered(seed), SAMPLES / "job.toml"))
            on = paper(
                chance.choice(("a4", "letter", "a3", "a5")), trim=chance.choice(("cut", "none")),
                cover=chance.choice(("all", "marks", "nails", "linked")), overlap=chance.choice((12.0, 20.0, 30.0)),
            )  # fmt: skip
            plan = replace(plan, job=replace(plan.job, paper=on, accuracy=_accuracy(chance)))
            sheets = plan_sheets(plan, on, printer() if on.name == "a4" else None, quick=True)
        except TemplatesError as error:
            yield f"{seed}: {' '.join(str(error).split())[:90]}"
            continue
        yield from wrapped(f"{seed}: {on.name} {on.trim} {on.cover} {effort(sheets).words}: ", _said(plan, sheets))


def _accuracy(chance: Random) -> Accuracy:
    usual = Accuracy()
    names = [name for name in usual.__struct_fields__ if name != "string"]
    numbers = {name: getattr(usual, name) * chance.choice((0.5, 1.0, 1.0, 3.0)) for name in names}
    return Accuracy(**numbers, string=chance.random() < 0.6)


def _said(plan: Plan, sheets: SheetPlan) -> Iterator[str]:
    lines = [*told(plan, sheets), str(taping_order(sheets)), f"{effort(sheets).share(0.4)}"]
    size = -(-len(lines) // LINES)
    yield from (summed(lines[at : at + size]).replace(", all numbers", "") for at in range(0, len(lines), size))
