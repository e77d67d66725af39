"""The other ways to have the paper, one line each: what they take, and how exact they are."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.arranging.plan import Plan
from templates_gen.base.record import Record, replace
from templates_gen.base.remembering import remembered
from templates_gen.base.units import show
from templates_gen.base.words import counted
from templates_gen.documents.making import on_paper, planned_on
from templates_gen.documents.print_shop import ask_for
from templates_gen.job.model import Paper
from templates_gen.job.paper_sizes import first_paper, usual_rolls
from templates_gen.printer.profile import Printer
from templates_gen.tiling.large_pages import comes_off_a_roll
from templates_gen.tiling.planning import linked_of
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.effort import Effort, effort
from templates_gen.tolerance.expected import Expected, farthest_off
from templates_gen.tolerance.statement import fine

MOST_FRAMES = 60
"""Frames for which the other ways are planned: half a second for so many, a tenth for a dozen (measured by us)."""

MARKS, LINKED = 0.57, 0.75
"""Of the minutes of cut strips with whole edges, what the quickest sheets with every mark took; and the quickest linked
ones of what is left of sheets with every mark.  Our own measurement: 24 walls of 6 to 40 frames.  On 12 others, A4 and
Letter, half of them are within a seventh of that and all within half; what else a plan tells makes it hardly nearer."""

ABOUT, AT_MOST = "about", "at most about"
"""How a way is said that was not searched for: by what such paper usually takes, and by what some will be saved from.
"""

STRAYS, MOST_FORETOLD = 1.4, 12
"""How many times the error of searched sheets with every mark what is left of them for linked paper may have, and of
how many frames, for the minutes of linked paper to be told by that.  Else it is often laid otherwise, and takes at most
what sheets with every mark do.  Of ten walls of 1 to 12 frames the only one with more error, a stair, took 17 minutes
for 12, the others no more than 8 for 6; one of 20 frames took 41 for 24.  Our own trials."""

SEARCHED = 3
"""Frames for which linked paper is searched for all the same: a third of a second at most (measured by us), and of so
few sheets any that is foretold too many shows: tram tickets on A4 were foretold 5 sheets and take 4."""

TOO_MANY = f"The other ways are not worked out for more than {MOST_FRAMES} frames."

HEADING = "Other ways (--cover, --one-piece), and how far off neighbours may come out:"

FAR = 10.0
"""mm (95 %) that two neighbours may be off each other, from which on other ways are named.  Our own design: walls of 18
frames and more come to 11 to 14 mm by any taping of office paper (our own computations)."""


class Way(Record, frozen=True):
    """A way to have the paper: how it is called, the options of `template` that ask for it, and what it takes.

    `rough` says so where the plan was not searched for the fewest minutes that hold the frames.  `off` is how
    far the worst two neighbours are off each other (95 %, mm) where that was worked out; `shop` what to ask a print
    shop for.
    """

    name: str
    options: str
    effort: Effort
    rough: str = ""
    off: float | None = None
    shop: str = ""

    def words(self, unit: str) -> str:
        """What it takes, and how exact it is, in a line."""
        if self.shop:
            return self.shop
        taken = self.effort.roughly(self.rough) if self.rough else self.effort.words
        return taken + ("" if self.off is None else f"; {_fine(self.off, unit)} off")


def _fine(off: float, unit: str) -> str:
    """How far off neighbours may come out, in the job's own unit alone: a tape's steps would cut a promise short."""
    return fine(off, unit).partition(" · ")[0]


def other_ways(plan: Plan, printer: Printer | None = None, sheets: SheetPlan | None = None) -> list[Way]:
    """The covers that the job does not ask for, and one piece, as far as they can be planned.

    Linked paper, but of the fewest frames, and sheets of every mark are not searched for: that would take longer than
    the template itself.  What they take is told by what strips of sheets with every mark take, or the job's own
    `sheets` where it has these; of linked paper by what is left of those.
    """
    job = plan.job
    own = job.paper if job.paper.kind != "one piece" else first_paper(job.paper, job.unit)
    now = job.paper.cover if job.paper.kind != "one piece" else ""
    if now != "marks" or not sheets:
        sheets = planned_on(plan, replace(own, cover="marks"), printer, quick=True)
    ways: list[Way] = []
    searched = own.kind == "sheets" and own.trim == "cut"
    if searched and now != "linked" and len(plan.frames) <= SEARCHED:
        ways += _way(plan, "linked", "--cover linked", replace(own, cover="linked"), printer)
    elif sheets and now != "linked" and own.kind == "sheets":
        left, rough = linked_of(plan, sheets), ABOUT if searched else AT_MOST
        takes = effort(left).share(LINKED) if searched else effort(left)
        if now == "marks" and searched and _strays(plan, left, sheets):
            takes, rough = effort(sheets), AT_MOST
        ways.append(Way("linked", "--cover linked", takes, rough))
    if sheets and now != "marks":
        takes = effort(sheets)
        ways.append(Way("marks", "--cover marks", takes.share(MARKS) if searched else takes, ABOUT if searched else ""))
    if now != "nails":
        ways += _way(plan, "nails", "--cover nails", replace(own, cover="nails"), printer)
    return [*ways, *(_one_piece(plan) if job.paper.kind != "one piece" else ())]


def _strays(plan: Plan, left: SheetPlan, sheets: SheetPlan) -> bool:
    """Whether linked paper may well be laid otherwise than what is left of the sheets, which is less exact."""
    if len(plan.frames) > MOST_FORETOLD:
        return True
    off, before = farthest_off(plan, left), farthest_off(plan, sheets)
    return off is not None and before is not None and off > STRAYS * before


def roughly(plan: Plan) -> str | None:
    """What the job's own paper takes, without a search for fewer minutes, in a line; None where none can be planned."""
    paper = plan.job.paper
    sheets = planned_on(plan, paper, quick=True)
    if sheets is None:
        return None
    taken, searched = effort(sheets), paper.kind == "sheets" and paper.trim == "cut"
    share = {"marks": MARKS, "linked": LINKED}.get(paper.cover) if searched else None
    return taken.share(share).roughly(ABOUT) if share else taken.words


def way_lines(ways: list[Way], unit: str) -> Iterator[str]:
    """A line for each way, its name first."""
    wide = max((len(way.name) for way in ways), default=0)
    return (f"{f'{way.name}:':{wide + 1}} {way.words(unit)}" for way in ways)


def closer_words(plan: Plan, expected: Expected | None, printer: Printer | None = None) -> list[str]:
    """What brings neighbours closer to their places where taped paper leaves them far off; nothing where it does not.

    The first line says how far off they may be, each of the others a way with its figure.
    """
    if expected is None or expected.worst.error < FAR or len(plan.frames) > MOST_FRAMES:
        return []
    pair, unit = expected.worst.pair, plan.job.unit
    far = _fine(expected.worst.error, unit)
    off = f"{pair.one.frame.id} and {pair.two.frame.id} may come out {far} off each other"
    known = ((way, way.off) for way in _closer(plan, printer) if way.off is not None)
    told = show(expected.worst.error, unit)  # what a tape does not tell apart is no closer
    ways = [way for way, error in known if error < expected.worst.error and show(error, unit) != told]
    if not ways:
        return [f"{off} (19 times in 20 it is less), by any taping."]
    first = f"{off} (19 times in 20 it is less), however carefully the sheets are taped. What brings them closer:"
    return [first, *(_closer_line(way, unit) for way in ways)]


def _closer_line(way: Way, unit: str) -> str:
    within = "" if way.off is None else _fine(way.off, unit)
    taken = way.effort.words if way.effort.sheets > 1 else counted(way.effort.sheets, "page")
    return f"{way.name}, {way.options}: {within} ({taken})"


def _closer(plan: Plan, printer: Printer | None) -> Iterator[Way]:
    """Cutting, loose pieces, larger paper, and the print shop, as far as the job does not have them already."""
    paper = plan.job.paper
    if paper.kind == "sheets":
        if paper.trim == "none":
            yield from _way(plan, "cutting the sheets", "--trim cut", replace(paper, trim="cut"), printer)
        if paper.cover != "nails":
            yield from _way(plan, "loose pieces", "--cover nails", replace(paper, cover="nails"), printer)
        size = "tabloid" if plan.job.unit == "in" else "a3"
        larger = on_paper(plan.job, size).paper
        if larger.width * larger.height > paper.width * paper.height:
            cover = "marks" if paper.cover == "linked" else paper.cover
            options = f"--paper {size}" + (" --cover marks" if cover != paper.cover else "")
            yield from _way(plan, "larger paper", options, replace(larger, cover=cover))
    if paper.kind == "one piece":
        return
    if comes_off_a_roll(plan):
        yield from _way(plan, "a print shop", "--one-piece", on_paper(plan.job, one_piece=True).paper)
    elif paper.kind == "sheets":
        roll = f"roll {usual_rolls(plan.job.unit)[-1].name}"
        strips = on_paper(plan.job, roll, "marks" if paper.cover == "linked" else None).paper
        yield from _way(plan, "a print shop, in strips off a roll", f'--paper "{roll}"', strips)


def _way(plan: Plan, name: str, options: str, paper: Paper, printer: Printer | None = None) -> Iterator[Way]:
    """The way as it is planned; nothing where the paper is too small for it, or is a roll and it needs sheets."""
    known = _planned(plan)
    if (paper, printer) not in known:
        sheets = planned_on(plan, paper, printer)
        known[paper, printer] = (effort(sheets), farthest_off(plan, sheets)) if sheets else None
    if found := known[paper, printer]:
        yield Way(name, options, found[0], off=found[1])


@remembered
def _planned(plan: Plan) -> dict[tuple[Paper, Printer | None], tuple[Effort, float | None] | None]:
    """What each way of a plan was found to take, and how far off it is: loose pieces are asked about twice."""
    return {}


def _one_piece(plan: Plan) -> Iterator[Way]:
    """The narrowest roll that the group fits on in one page, lying or standing."""
    if sheets := planned_on(plan, on_paper(plan.job, one_piece=True).paper):
        yield Way("one piece", "--one-piece", effort(sheets), shop=ask_for(sheets, plan.job.unit))
