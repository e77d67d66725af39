"""What is done before the hanging day, word for word: the prints become one paper, and that is measured."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.base.units import show_both
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.diagonals import measured, telling
from templates_gen.tolerance.order import Order, Step, taping_order


def taping_steps(sheets: SheetPlan, order: Order, line: str = "level line") -> Iterator[str]:
    """The order of taping: the sheets of every row (or column) along their long joins, then the rows to each other.

    Sheets and steps go by their numbers on the map.
    """
    on_top = "the cut edge" if sheets.hides is None else "the sheet above or to the right"
    if sheets.spine:
        yield from _spine_steps(order, line, on_top)
        return
    word = "row" if sheets.rows else "column"
    if order.made and order.pieces > 1:
        yield f"Tape these sheets to each other: {_listed(order.made)}."
    elif order.made:
        yield f"Tape the sheets of each {word} first: {_listed(order.made)}."
    tape = "Then tape" if order.made else "Tape"
    if order.laid and order.pieces > 1:
        yield f"{tape} these sheets to what they meet, {on_top} always on top{_laid(order)}"
    elif order.laid:
        way = "from the bottom row up" if sheets.rows else "from the left column to the right"
        way = way if order.forward else "in this order"
        yield f"{tape} the {word}s to each other, {way}, {on_top} always on top{_laid(order)}"


def _spine_steps(order: Order, line: str, on_top: str) -> Iterator[str]:
    """The spine along the level (or pitch) line first, then every branch by itself, then one after the
    other on what is there."""
    made, single = order.made, len(order.begun[0]) == 1
    first = [] if single else [f"Tape the spine first, the sheets along the {line}: {_listed(made[:1])}."]
    branches = made if single else made[1:]
    if branches:
        first.append(f"Then make each branch of more than one sheet: {_listed(branches)}.")
    if first:
        yield " ".join(first)
    if order.laid:
        yield f"Add the others in turn, {on_top} always on top{_laid(order)}"


def _laid(order: Order) -> str:
    """After a colon the steps that add to paper which is there already, with what is slid under it."""
    under: dict[int, str] = {}
    for number, unders, overs in order.tucked:
        under[number] = f"{under[number]}; " if number in under else ": "
        under[number] += f"{_run(unders)} under {_run(overs)}"
    slide = " (slide those in that go under others)" if under else ""
    return f"{slide}: {_listed(order.laid, under)}."


def _listed(steps: Sequence[Step], told: Mapping[int, str] | None = None) -> str:
    """The sheets of every step, and what is told of it."""
    return ", ".join(f"{_run(names)} (step {number}{(told or {}).get(number, '')})" for number, names in steps)


def _run(names: Sequence[str]) -> str:
    """The numbers of some sheets: three and more that follow each other as "3 to 6"."""
    follow = [str(number) for number in range(int(names[0]), int(names[0]) + len(names))] == list(names)
    if follow and len(names) > 2:
        return f"{names[0]} to {names[-1]}"
    return " and ".join(filter(None, (", ".join(names[:-1]), names[-1])))


def day_before(plan: Plan, sheets: SheetPlan) -> Iterator[str]:
    """From the prints to one checked paper (or pieces), step by step."""
    order = taping_order(sheets)
    yield "Let the prints rest for half an hour in the room of the wall: paper grows and shrinks with moisture."
    if sheets.joins:
        yield _lapping(sheets)
    yield from taping_steps(sheets, order, "pitch line" if plan.slope else "level line")
    yield from _checked(plan, sheets, order)


def into_old_paper(sheets: SheetPlan) -> str:
    """How sheets that are printed anew come into the paper that there is."""
    one = len(sheets.printed or ()) == 1
    new = f"{'Sheet' if one else 'Sheets'} {', '.join(sheets.printed or ())}"
    if sheets.hides is None:
        return (
            f"{new}: cut along every line where it meets another sheet, toothed and dotted. "
            f"Lay {'it' if one else 'each'} over the old sheet of the same number until the slanting bars go on "
            "straight on every side, and tape."
        )
    return (
        f"{new}: take the old sheet of the same number off, and tape the new one in its place, over and under the "
        "same neighbours, until the slanting lines go on straight on every side."
    )


def update_steps(plan: Plan, sheets: SheetPlan) -> Iterator[str]:
    """From the old paper and the new sheets to one checked paper, step by step."""
    yield "Let the prints rest for half an hour in the room of the wall, and lay the old paper out there, too."
    yield into_old_paper(sheets)
    if sheets.gone:
        gone = ", ".join(sheets.gone)
        yield f"Cut off, or cross out with a thick pen: sheets {gone}. What they show is no longer true."
    yield "Cut the new slits. Nails of the old paper that are under new sheets no longer count."
    yield from _checked(plan, sheets, taping_order(sheets))


def _checked(plan: Plan, sheets: SheetPlan, order: Order) -> Iterator[str]:
    """How what is taped is held to a string, measured, and photographed."""
    if order.pieces == 1:
        yield from _string(plan, sheets)
        if sheets.paper.cover != "nails":  # else the frames' corners may not be on paper
            yield from diagonals(plan, len(sheets.sheets))
    if sheets.paper.photo and len(sheets.sheets) > 1:
        yield (
            "The small black and white squares are photo tags: a photograph of the whole taped paper tells which join "
            "is off, and how far each nail is. Ask:  templates-gen photo taped JOB PHOTO"
        )


def _lapping(sheets: SheetPlan) -> str:
    """How one sheet is laid on the other."""
    if sheets.hides is None:
        return (
            "Cut along the toothed lines, at the left and foot of a sheet where it has a neighbour: the teeth fall "
            "off. Lay the cut edge on the neighbour's dotted line until the slanting bars near both ends of the join "
            "go on straight from sheet to sheet, and tape."
        )
    return (
        "Cut nothing. Lay the sheet to the right or above over its neighbour, its edge near the dotted line. Move it "
        "until both slanting lines at either end of the join go on straight from sheet to sheet, checked with a ruler "
        "laid along them, and tape. What the blank margin hides is printed under it; nothing you need is there alone."
    )


def _string(plan: Plan, sheets: SheetPlan) -> Iterator[str]:
    """The level line, or the pitch line on stairs, is held to a string where it goes on from sheet to sheet."""
    level, line = plan.level_line, "pitch line" if plan.slope else "level line"
    if plan.job.accuracy.string and any(join.upright and join.y0 <= level <= join.y1 for join in sheets.joins):
        yield (
            f"Stretch a string along the {line} from end to end of the taped paper. Where the line strays from "
            "it, open the join, turn the sheet until the line is straight, and tape it again."
        )


def diagonals(plan: Plan, count: int) -> Iterator[str]:
    """The two diagonals to measure once all is taped, between corners of frames or nails, and what they must be.

    None between nails that lie nearly in one line.
    """
    one, two, width = measured(plan)
    unit, linked = plan.job.unit, plan.job.paper.cover == "linked"
    if linked and not telling((one, two, width)):
        return
    paper, wrong = (
        ("the taped paper", "If they are not, a join is turned: open it and tape it again")
        if count > 1
        else ("the print", "If they are not, it was printed askew or not at full size: do not use it")
    )
    between = "" if linked or count == 1 else ", between the black corners"
    yield (
        f"Measure both diagonals on {paper}{between}: {one.start} to {one.end} (a) must be "
        f"{show_both(one.length, unit)}, {two.start} to {two.end} (b) {show_both(two.length, unit)}. {wrong}."
    )
    if count > 1:
        job = "JOB --cover linked" if linked else "JOB"
        yield (
            f"Not sure which join? Measure the width too: {width.start} to {width.end} must be "
            f"{show_both(width.length, unit)}. Then run:  templates-gen check {job} --taped a=L,b=L,width=L"
        )
