"""How exactly many made-up jobs are told to hang: all words and numbers of it, and how their sheets are taped."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from random import Random

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.errors import TemplatesError
from templates_gen.base.record import replace
from templates_gen.checks import find
from templates_gen.documents.instructions.first_pages import first_pages
from templates_gen.drawing.items import Item, Text, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.job.accuracy import Accuracy
from templates_gen.job.reading.building import build_job
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.effort import effort
from templates_gen.tolerance.expected import expected_error
from templates_gen.tolerance.holding import plan_sheets
from templates_gen.tolerance.order import taping_order
from tests.jobs import SAMPLES, paper
from tests.recorded.jobs import printer
from tests.recorded.limits import summed
from tests.recorded.listing import coordinates, look, told, wrapped
from tests.recorded.tampered import tampered

JOBS = 60
"""So many of them.  Our own choice."""

DRAWN = range(0, 160, 8)
"""The jobs of which those pages are drawn.  Our own choice."""

LINES = 12
"""So many sums for each job, so that one tells about where something moved.  Our own choice."""


def of_taped() -> Iterator[str]:
    """For each job what its paper is, and sums of what is told."""
    for seed in range(JOBS):
        try:
            plan, sheets = _planned(seed)
        except TemplatesError as error:
            yield f"{seed}: {' '.join(str(error).split())[:90]}"
            continue
        on = plan.job.paper
        yield from wrapped(f"{seed}: {on.name} {on.trim} {on.cover} {effort(sheets).words}: ", _said(plan, sheets))


def _planned(seed: int) -> tuple[Plan, SheetPlan]:
    chance = Random(seed)
    plan = plan_wall(build_job(tampered(seed), SAMPLES / "job.toml"))
    on = paper(
        chance.choice(("a4", "letter", "a3", "a5")), trim=chance.choice(("cut", "none")),
        cover=chance.choice(("all", "marks", "nails", "linked")), overlap=chance.choice((12.0, 20.0, 30.0)),
    )  # fmt: skip
    plan = replace(plan, job=replace(plan.job, paper=on, accuracy=_accuracy(chance)))
    return plan, plan_sheets(plan, on, printer() if on.name == "a4" else None, quick=True)


def of_pages() -> Iterator[str]:
    """For some of the jobs, sums of all that stands on each page that is read before nailing."""
    for seed in DRAWN:
        try:
            plan, sheets = _planned(seed)
        except TemplatesError:
            continue
        expected = expected_error(plan, sheets)
        pages = first_pages(plan, find(plan), sheets, expected, Lettering())
        yield f"{seed}: {plan.job.unit}, {sheets.paper.name}, {len(pages.pages)} pages"
        yield from (f"    {_page(page)}" for page in pages.pages)


def _page(items: Sequence[Item]) -> str:
    """How many items, sums of their looks and words, and of their places."""
    looks = [f"{look(item)} {item.text if isinstance(item, Text) else ''}" for item in items]
    places = [(item.x, item.y) if isinstance(item, Text | Use) else coordinates(item) for item in items]
    return f"{len(items)} items, {summed(looks)}, {sum(map(sum, places)):.2f}"


def _accuracy(chance: Random) -> Accuracy:
    usual = Accuracy()
    names = [name for name in usual.__struct_fields__ if name != "string"]
    numbers = {name: getattr(usual, name) * chance.choice((0.5, 1.0, 1.0, 3.0)) for name in names}
    return Accuracy(**numbers, string=chance.random() < 0.6)


def _said(plan: Plan, sheets: SheetPlan) -> Iterator[str]:
    lines = [*told(plan, sheets), str(taping_order(sheets)), f"{effort(sheets).share(0.4)}"]
    size = -(-len(lines) // LINES)
    yield from (summed(lines[at : at + size]).replace(", all numbers", "") for at in range(0, len(lines), size))
