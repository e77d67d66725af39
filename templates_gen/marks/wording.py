"""The words of the first page: how to print, tape, nail and take care.

The print dialogs' words are those on screen.  Nothing here says that a wall, a nail or a spot is safe.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from templates_gen.marks.furniture import Rule
from templates_gen.model import Job
from templates_gen.planning import Hung, Plan
from templates_gen.sheets.sheet import SheetPlan
from templates_gen.units import show_both

PRINT_WORDS = (
    "Print this page alone first, at actual size, on one side, with borderless printing off. What the dialogs call it:",
    "Acrobat: Actual size.  Chrome, Edge: More settings, Scale, Default or Custom 100.  Firefox: Scale 100.  "
    "macOS: Scale 100 %, not Scale to Fit.  Evince: Page Scaling, None.  Okular: Scale mode, None; print original "
    "size.  Command line: lp -o print-scaling=none.  Driver pages that resize: Actual size or No scaling.",
)

CAUTIONS = (
    "Cables and pipes may run behind any spot of a wall, most often straight up, down or sideways from a switch, an "
    "outlet, a light or a tap, and beside doors, windows and corners. Look for them with a detector before you nail; "
    "where in doubt, ask a licensed electrician or plumber. This template knows nothing of what is inside the wall.",
    "What a nail, hook or wall holds is for the maker's rating and the wall itself to say; the local building code and "
    "a professional decide for heavy pieces.",
    "Nothing heavy or glazed over a bed, a seat or a cot. Where the earth may shake, use closed hooks into studs.",
    "On a ladder: not on the top steps, three points of contact, someone to hold it and to hand you things.",
    "Old paint may hold lead and old plaster asbestos: do not drill or sand either before it has been tested.",
)

TOOLS = "Tape measure, spirit level, pencil, scissors, low-tack tape, hammer, the nails or hooks, a string."


def rule_words(rules: tuple[Rule, Rule], unit: str) -> str:
    """What the two rules of the page must measure."""
    level, plumb = (show_both(rule.length, unit) for rule in rules)
    return (
        f"Measure the two rules of this page from end to end: the level one must be {level} long, the plumb "
        f"one on the left {plumb}. If both are right, print the rest the same way; measure the rules of every sheet."
    )


def taping_steps(sheets: SheetPlan) -> Iterator[str]:
    """The order of taping: the sheets of every row (or column) along their long joins, then the rows to each other."""
    strips = _strips(sheets)
    word = "row" if sheets.rows else "column"
    runs = [run for strip in strips for run in strip if len(run) > 1]
    if runs:
        yield f"Tape each {word} first: {_listed_runs(runs)}."
    pieces = sum(len(strip) for strip in strips)
    if pieces > 1:
        way = "from the bottom row up" if sheets.rows else "from the left column to the right"
        yield f"Then tape the {word}s to each other, {way}, the cut edge always on top."


def _strips(sheets: SheetPlan) -> list[list[list[str]]]:
    """The sheets by strip, and in each strip by what hangs together."""
    joined = {(join.under, join.over) for join in sheets.joins} | {(join.over, join.under) for join in sheets.joins}
    strips: list[list[list[str]]] = []
    for _, names in groupby(_in_strips(sheets), key=lambda pair: pair[0]):
        runs: list[list[str]] = []
        for _, name in names:
            if runs and (runs[-1][-1], name) in joined:
                runs[-1].append(name)
            else:
                runs.append([name])
        strips.append(runs)
    return strips


def _in_strips(sheets: SheetPlan) -> list[tuple[str, str]]:
    def split(name: str) -> tuple[str, str]:
        letters = name.rstrip("0123456789")
        return letters, name[len(letters) :]

    order = []
    for sheet in sheets.sheets:
        letters, number = split(sheet.name)
        strip, place = (number, letters) if sheets.rows else (letters, number)
        order.append(((len(strip), strip, len(place), place), strip, sheet.name))
    return [(strip, name) for _, strip, name in sorted(order)]


def _listed_runs(runs: Sequence[Sequence[str]]) -> str:
    shown = [f"{run[0]} to {run[-1]}" if len(run) > 2 else " and ".join(run) for run in runs]
    return ", ".join(shown)


def day_steps(plan: Plan, sheets: SheetPlan) -> Iterator[str]:
    """The hanging day, step by step."""
    job = plan.job
    yield "Let the prints rest for half an hour in the room of the wall: paper grows and shrinks with moisture."
    if sheets.joins:
        yield (
            "Cut along the continuous trim lines, at the left and foot of a sheet where it has a neighbour. Lay the "
            "cut edge on the neighbour's broken line until the register marks of both ends meet, and tape."
        )
    yield "Cut the dotted release slit under every nail mark now, before the paper is on the wall."
    yield from taping_steps(sheets)
    yield from diagonals(plan)
    yield (
        f"Make a pencil mark on the wall {show_both(plan.centre_line, job.unit)} from its left end and "
        f"{show_both(plan.level_line, job.unit)} above the floor. Put the target on it, turn the paper until a spirit "
        "level on the level line is level, and tape it up. Trust the level, not the ceiling or the floor."
    )
    yield from _marking(plan)
    yield "Nail through the middle of every cross. Drive each nail home before the paper moves."
    yield "Lift the paper off over the nail heads: the slits open. Keep it for the next time."
    yield "Hang the frames, step back, and level each one."


def _marking(plan: Plan) -> Iterator[str]:
    missing = [hung.frame.id for hung in plan.frames if len(hung.nails) < len(hung.bearings)]
    if missing:
        names = ", ".join(missing) if len(missing) < 9 else f"{len(missing)} frames"
        yield (
            f"Not measured yet: {names}. Pull the wire taut at the hook, measure from there to the frame's top "
            f"edge, find that length on the frame's drop rule and mark it: {_seat(plan.job)}."
        )


def _seat(job: Job) -> str:
    if any(frame.fixing.kind == "hook" for frame in job.frames):
        return "a bare nail goes just under your mark, a picture hook with its seat on it"
    return "the nail goes just under your mark, its upper side on it"


def diagonals(plan: Plan) -> Iterator[str]:
    """The two diagonals to measure once all is taped, between corners of frames, and what they must be."""
    by_corner = [_outermost(plan, right, top) for right, top in ((0, 1), (1, 0), (1, 1), (0, 0))]
    (a, b), (c, d) = by_corner[:2], by_corner[2:]
    one, two = (_distance(*pair) for pair in ((a[1], b[1]), (c[1], d[1])))
    unit = plan.job.unit
    yield (
        f"Measure both diagonals on the taped paper: {a[0]} to {b[0]} must be {show_both(one, unit)}, "
        f"{c[0]} to {d[0]} {show_both(two, unit)}. If they differ, a join is turned: open it and tape it anew."
    )


def _outermost(plan: Plan, right: int, top: int) -> tuple[str, tuple[float, float]]:
    def corner(hung: Hung) -> tuple[float, float]:
        rect = hung.rect
        return (rect.x1 if right else rect.x0), (rect.y1 if top else rect.y0)

    best = max(
        plan.frames, key=lambda hung: corner(hung)[0] * (1 if right else -1) + corner(hung)[1] * (1 if top else -1)
    )
    side = f"{'upper' if top else 'lower'} {'right' if right else 'left'}"
    return f"the {side} corner of {best.frame.id}", corner(best)


def _distance(one: tuple[float, float], two: tuple[float, float]) -> float:
    return float(((one[0] - two[0]) ** 2 + (one[1] - two[1]) ** 2) ** 0.5)
