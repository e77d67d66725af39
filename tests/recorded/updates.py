"""Jobs that change once they are on paper: which sheets are printed anew, which come off, and what is seen of each."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.record import replace
from templates_gen.documents.old_paper import old_paper, sheets_file
from templates_gen.documents.sheets.layers import lay, sheet_forms, sheet_page
from templates_gen.documents.sheets.seen import seen
from templates_gen.documents.updating import updated
from templates_gen.drawing.lettering import Lettering
from templates_gen.job.model import Height, Job
from templates_gen.tolerance.effort import effort
from templates_gen.tolerance.holding import plan_sheets
from tests.recorded.jobs import crowd, mixed, on_stairs, pair
from tests.recorded.listing import numbers


def _dropped(job: Job) -> Job:
    """The first frame's drop measured anew."""
    first, *others = job.frames
    return replace(job, frames=(replace(first, drop=first.drop and first.drop + 7.0), *others))


def _larger(job: Job) -> Job:
    """The last frame a little larger."""
    *others, last = job.frames
    return replace(job, frames=(*others, replace(last, width=last.width + 40.0, height=last.height + 25.0)))


def _fewer(job: Job) -> Job:
    """The last frame left out."""
    gone = job.frames[-1].id
    rows = tuple(tuple(name for name in row if name != gone) for row in job.group.rows)
    return replace(job, frames=job.frames[:-1], group=replace(job.group, rows=tuple(filter(None, rows))))


def _higher(job: Job) -> Job:
    """The group hung higher, by its middle."""
    return replace(job, group=replace(job.group, height=Height(by="centre", at=1530.0)))


def _renamed(job: Job) -> Job:
    """Another title, and no other for the first frame."""
    first, *others = job.frames
    return replace(job, title="Another title", frames=(replace(first, title="Another fern"), *others))


CHANGES: dict[str, Callable[[Job], Job]] = {
    "drop": _dropped, "larger": _larger, "fewer": _fewer, "higher": _higher, "renamed": _renamed,
}  # fmt: skip

JOBS: dict[str, Callable[[], Job]] = {
    "pair": lambda: pair("a5", "mm"),
    "all": lambda: pair("a4", "cm", cover="all"),
    "uncut": lambda: crowd("letter", "in", trim="none"),
    "linked": lambda: mixed("a3", "mm", cover="linked"),
    "loose": lambda: crowd("a4", "mm", cover="nails"),
    "stairs": lambda: on_stairs("a3", "in", 0.5),
}


def of_updates() -> Iterator[str]:
    """What becomes of the sheets of every job with every change."""
    lettering = Lettering()
    for name, make in JOBS.items():
        plan = plan_wall(make())
        sheets = plan_sheets(plan, plan.job.paper)
        every = lay(plan, sheets, 1, lettering)
        forms = {form.name: form for form in sheet_forms(plan, sheets, every, lettering)}
        for laid in every:
            marks = seen(sheet_page(laid), forms)
            sums = (sum(of) for of in zip(*map(_halves, marks), strict=True))
            yield f"{name}: sheet {laid.so_far.sheet.name}: {len(marks)} marks seen, all together {numbers(*sums)}"
        old = old_paper(sheets_file(plan, sheets)[1], "old")
        for said, change in CHANGES.items():
            now = updated(plan, plan_wall(change(plan.job)), old, None, lettering)
            if isinstance(now, str):
                yield f"{name}, {said}: {now}"
            else:
                yield f"{name}, {said}: prints {now.printed}, takes off {now.gone}: {effort(now).work}"


def _halves(mark: tuple[object, ...]) -> tuple[float, float]:
    """All numbers of what is seen of a mark, those at even and those at odd places."""
    flat = list(_flat(mark))
    return sum(flat[::2]), sum(flat[1::2])


def _flat(value: object) -> Iterator[float]:
    if isinstance(value, tuple | list):
        for inner in value:
            yield from _flat(inner)
    elif isinstance(value, int | float):
        yield float(value)
