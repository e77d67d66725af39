"""The hanging guide: one page to have at the wall, with the tools to tick off and the day in pictures."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from functools import partial

from templates_gen.geometry import Rect
from templates_gen.lettering import Lettering
from templates_gen.marks import sketches
from templates_gen.marks.blocks import ink_of, wrapped
from templates_gen.marks.flow import LEADING, Flow
from templates_gen.marks.items import Item, Polygon, Text
from templates_gen.marks.sketches import FIELD, Sketch
from templates_gen.marks.wording import TOOLS
from templates_gen.marksizes import H5, H25, H35, NARROW
from templates_gen.planning import Hung, Plan
from templates_gen.record import Record
from templates_gen.sheets.order import Order, taping_order
from templates_gen.sheets.sheet import SheetPlan
from templates_gen.units import show_both

GUTTER, LEAST_WIDTH, LEAST_HEIGHT = 5.0, 44.0, 18.0
"""mm between two pictures; how wide one has to be for its words, and how high.  Our own design, no source."""

TICK = 3.2
"""mm; side of a box to tick off.  Our own design, no source."""

_FIXINGS = {"nail": "nail", "hook": "picture hook", "screw": "screw"}


class DayStep(Record, frozen=True):
    """A step of the day: its name, what to do, and what draws it."""

    name: str
    words: str
    draw: Callable[[Sketch], None]


def guide(flow: Flow, plan: Plan, sheets: SheetPlan) -> int:
    """The guide on a page of its own; the number (from 0) of that page."""
    flow.need(flow.area.height)
    begins = len(flow.pages) - 1
    flow.heading("The hanging day")
    _tools(flow, plan)
    flow.space(3.0)
    steps = list(enumerate(hanging_steps(plan, sheets), 1))
    size, rows = _laid_out(steps, flow)
    for row in rows:
        height = size[1] + _below(row, size[0], flow.lettering)
        flow.picture(height, partial(_row, row, size, flow.lettering))
    return begins


def _tools(flow: Flow, plan: Plan) -> None:
    """What to have ready, each with a box to tick off."""
    x, line = flow.area.x0, H25 * LEADING + 1.0
    for words in (*TOOLS, *_fixings(plan)):
        width = TICK + 1.5 + flow.lettering.width(words, H25) + 5.0
        if x > flow.area.x0 and x + width - 5.0 > flow.area.x1:
            x, flow.top = flow.area.x0, flow.top - line
        y = flow.top - TICK
        corners = ((x, y), (x + TICK, y), (x + TICK, y + TICK), (x, y + TICK))
        flow.pages[-1] += [
            Polygon(corners, NARROW, False), Text(x + TICK + 1.5, y + (TICK - H25) / 2, words, H25),
        ]  # fmt: skip
        x += width
    flow.top -= line


def _fixings(plan: Plan) -> Iterator[str]:
    """What goes into the wall, those for frames not measured yet too, and what drives it."""
    kinds = Counter(hung.frame.fixing.kind for hung in plan.frames for _ in hung.bearings)
    for kind, count in kinds.items():
        yield f"{count} {_FIXINGS[kind]}{'s' if count > 1 else ''}"
    yield from dict.fromkeys("screwdriver" if kind == "screw" else "hammer" for kind in kinds)


def hanging_steps(plan: Plan, sheets: SheetPlan) -> Iterator[DayStep]:
    """The day from the finished paper on, step by step."""
    order = taping_order(sheets)
    yield DayStep("Cut the slits", "On the table: cut the dotted release slit under every nail mark.", sketches.slits)
    yield from _whole(plan) if order.pieces == 1 else _piece_by_piece(plan, sheets, order)
    yield from _marking(plan)
    yield DayStep(
        "Nail",
        f"Through the middle of every cross, once you have looked for cables and pipes there.{_several(plan)} Nails "
        "and screws must be in firmly before the paper moves.",
        sketches.nail_home,
    )
    yield DayStep(
        "Take the paper off",
        "Undo the tape. Lift the paper off over the nail heads, one by one: the slits open. Keep it for the next time.",
        sketches.paper_off,
    )
    yield _hanging(plan)
    yield DayStep(
        "Level each",
        "A spirit level on its top edge. Slide a wire on its hook until the bubble stands in the middle.",
        sketches.levelled,
    )
    yield DayStep(
        "Step back",
        "Look from where people will. If one hangs too high or too low, measure its drop again, and move its "
        "nail by as much as it is off.",
        sketches.stepped_back,
    )


def _whole(plan: Plan) -> Iterator[DayStep]:
    unit = plan.job.unit
    yield DayStep(
        "Mark the wall",
        f"A pencil cross {show_both(plan.centre_line, unit)} from the wall's left end and "
        f"{show_both(plan.level_line, unit)} above the floor.",
        sketches.pencil_cross,
    )
    yield DayStep(
        "Put the paper up",
        "Put the target on the cross. Turn the paper until a spirit level on the level line is level, "
        "and tape it up. Trust the level, not the ceiling or the floor.",
        sketches.paper_up,
    )


def _piece_by_piece(plan: Plan, sheets: SheetPlan, order: Order) -> Iterator[DayStep]:
    """Pieces that hang by themselves are placed one by one, from two pencil lines on the wall."""
    unit = plan.job.unit
    yield DayStep(
        "Mark the wall",
        f"Draw two thin pencil lines on the wall: the level line {show_both(plan.level_line, unit)} above "
        f"the floor, by a spirit level, and the centre line {show_both(plan.centre_line, unit)} from the wall's left "
        "end, plumb; both as far as the sheets on the map.",
        sketches.pencil_lines,
    )
    alone = order.pieces == len(sheets.sheets)
    yield DayStep(
        "Put the paper up",
        f"{'Every sheet hangs' if alone else 'Each piece hangs'} by itself. Large figures say how far "
        "both lines are from its rules: measure from both ends of the rule, and tape it up when all four are right and "
        "its level rule is level. Where it shows a line itself, lay that on the pencil line."
        f"{'' if alone else ' Of sheets taped to each other one is enough.'}",
        sketches.piece_placed,
    )


def _marking(plan: Plan) -> Iterator[DayStep]:
    missing = [hung.frame.id for hung in plan.frames if len(hung.nails) < len(hung.bearings)]
    if missing:
        names = ", ".join(missing) if len(missing) < 9 else f"{len(missing)} frames"
        hook = any(frame.fixing.kind == "hook" for frame in plan.job.frames)
        seat = "a bare nail goes just under it, a hook with its seat on it" if hook else "the nail goes just under it"
        yield DayStep(
            "Mark the rest",
            f"Not measured yet: {names}. Pull the wire taut at the hook, measure from there to the "
            f"frame's top edge, and mark that length on its drop rule: {seat}.",
            sketches.drop_mark,
        )


def _several(plan: Plan) -> str:
    """A hook of several nails has one cross."""
    several = any(frame.fixing.nails > 1 for frame in plan.job.frames)
    return " Hold a hook of several nails so that their middle is on the cross." if several else ""


def _hanging(plan: Plan) -> DayStep:
    frames = hanging_order(plan)
    draw = partial(sketches.hung_in_order, frames=frames, group=plan.group)
    if len(frames) == 1:
        return DayStep("Hang", f"Hang {frames[0].frame.id}.", draw)
    words = (
        f"First {frames[0].frame.id}, nearest the middle: the others are judged by it. Then, as numbered, from the top "
        "down, so that little hangs under your hands, and from the middle outward."
    )
    return DayStep("Hang", words, draw)


def hanging_order(plan: Plan) -> tuple[Hung, ...]:
    """The frame nearest to where the two lines cross, then all others from the top down and from the middle outward.

    The eye judges the others by the first one, so it is the one with neighbours on most sides.  From the top down, as
    little as can be hangs where the next one, or a tool, may fall.  Common sense, no source.
    """

    def away(hung: Hung) -> tuple[int, int, float]:
        """In whole mm, so that sums of floats do not decide between two that lie alike."""
        dx, dy = hung.rect.cx - plan.centre_line, hung.rect.cy - plan.level_line
        return (round((dx * dx + dy * dy) ** 0.5), -round(dy), dx)

    def downward(hung: Hung) -> tuple[int, int, float]:
        dx = hung.rect.cx - plan.centre_line
        return (-round(hung.rect.cy), round(abs(dx)), dx)

    first = min(plan.frames, key=away)
    return (first, *sorted((hung for hung in plan.frames if hung is not first), key=downward))


Rows = list[list[tuple[int, DayStep]]]


def _laid_out(steps: Sequence[tuple[int, DayStep]], flow: Flow) -> tuple[tuple[float, float], Rows]:
    """Width and height of every picture (mm), as large as one page allows, and the steps row by row, with numbers."""
    free, best = flow.top - flow.area.y0, ((0.0, 0.0), Rows())
    for columns in range(1, max(1, int((flow.area.width + GUTTER) // (LEAST_WIDTH + GUTTER))) + 1):
        width = (flow.area.width - GUTTER * (columns - 1)) / columns
        rows = [list(steps[first : first + columns]) for first in range(0, len(steps), columns)]
        words = sum(_below(row, width, flow.lettering) for row in rows)
        high = max(LEAST_HEIGHT, min(width * FIELD[1] / FIELD[0], (free - words - 0.1) / len(rows)))
        if high >= best[0][1]:
            best = (width, high), rows
    return best


def _below(row: Sequence[tuple[int, DayStep]], width: float, lettering: Lettering) -> float:
    """The height of what stands under a row of pictures, and a little air (mm)."""
    lines = max(len(wrapped(step.words, H25, False, width, lettering)) for _, step in row)
    return H5 + 2.5 + lines * H25 * LEADING + 4.0


def _row(
    row: Sequence[tuple[int, DayStep]], size: tuple[float, float], lettering: Lettering, place: Rect
) -> Iterator[Item]:
    """Pictures side by side, each over its number, its name and its words."""
    width, high = size
    for column, (number, step) in enumerate(row):
        x = place.x0 + column * (width + GUTTER)
        pen = Sketch(Rect(x, place.y1 - high, x + width, place.y1))
        step.draw(pen)
        yield from pen.items
        base = place.y1 - high - 2.5 - H5
        yield Text(x, base, f"{number}", H5, bold=True)
        yield Text(x + lettering.width(f"{number}", H5, True) + 2.0, base, step.name, H35, bold=True)
        for line in wrapped(step.words, H25, False, width, lettering):
            base -= max(H25 * LEADING, ink_of((line, H25, False), lettering).height + 0.3 * H25)
            yield Text(x, base, line, H25)
