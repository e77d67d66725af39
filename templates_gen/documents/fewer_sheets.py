"""What would have to give for a template to take fewer sheets: other papers, less on paper, or one piece."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.arranging.plan import Plan
from templates_gen.base.record import Record
from templates_gen.base.words import counted
from templates_gen.documents.making import on_paper, planned_on
from templates_gen.job.paper_sizes import usual_rolls

LARGER = {"in": ("tabloid", "a3"), "cm": ("a3", "tabloid"), "mm": ("a3", "tabloid")}
"""The larger sheets that office printers and copy shops have.  Common practice, no source."""

MOST_FRAMES = 24
"""Frames for which linked paper is planned to be named, which takes seconds for more.  Our own design."""


class Instead(Record, frozen=True):
    """Other options for the command `template`, and the sheets of wall that they take."""

    options: str
    sheets: int
    about: str


def too_many(plan: Plan, needed: int, most: int) -> list[str]:
    """Lines that say how to get by with `most` sheets; none when the plan as it is needs no more.

    The first line says what the job needs; each of the others is a choice of options with what it takes.
    """
    if needed <= most:
        return []
    tried = list(_tried(plan))
    fitting = [way for way in tried if way.sheets <= most] or sorted(tried, key=lambda way: way.sheets)[:1]
    width = max((len(way.options) for way in fitting), default=0)
    first = f"needs {counted(needed, 'sheet')} of {plan.job.paper.name} paper, but at most {most} may be used"
    enough = any(way.sheets <= most for way in fitting)
    told = "this would do:" if enough else "nothing gets by with so few; the fewest:"
    lines = (f"  {way.options:{width}}  {counted(way.sheets, 'sheet')}{way.about}" for way in fitting)
    return [f"{first}; {told}", *lines]


def _tried(plan: Plan) -> Iterator[Instead]:
    """Every other way there is, as far as it can be planned: those that change least come first."""
    job, cover = plan.job, plan.job.paper.cover
    if cover == "all":
        yield from _way(plan, "--cover marks", cover="marks")
    if cover in ("all", "marks") and job.paper.kind == "sheets" and len(plan.frames) <= MOST_FRAMES:
        yield from _way(plan, "--cover linked", ", with the nails on one piece of paper", cover="linked")
    if cover != "nails":
        yield from _way(plan, "--cover nails", ", with only the nails; its pieces may hang separately", cover="nails")
    for size in LARGER[job.unit]:
        if size != job.paper.name.lower():
            yield from _way(plan, f"--paper {size}", size=size)
            if cover != "nails":
                both = f"--paper {size} --cover nails"
                yield from _way(plan, both, ", with only the nails", size=size, cover="nails")
    if job.paper.kind == "sheets":
        roll = f"roll {usual_rolls(job.unit)[0].name}"
        yield from _way(plan, f'--paper "{roll}"', ", from a print shop or plotter", size=roll)
    if job.paper.kind != "one piece":
        yield from _way(plan, "--one-piece", ", from a print shop or plotter", one_piece=True)


def _way(
    plan: Plan,
    options: str,
    about: str = "",
    size: str | None = None,
    cover: str | None = None,
    one_piece: bool = False,
) -> Iterator[Instead]:
    if sheets := planned_on(plan, on_paper(plan.job, size, cover, one_piece=one_piece).paper):
        yield Instead(options, len(sheets.sheets), about)
