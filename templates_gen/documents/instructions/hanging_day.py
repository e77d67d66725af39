"""The hanging day step by step, from the finished paper on: what to do, what to have ready, which frame first.

Nothing here says that a wall, a nail or a spot is safe.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.units import show_both
from templates_gen.base.words import some
from templates_gen.checks.sentences import once
from templates_gen.documents.instructions.cautions import TITLE
from templates_gen.documents.instructions.pieces import piece_by_piece
from templates_gen.documents.instructions.sketches import DayStep, hung_in_order, sketch
from templates_gen.documents.schedule.distances import above_floor, left_end
from templates_gen.documents.sheets.wall_marks import has_window
from templates_gen.hanging.weight_classes import on_bare_nails, wants_two
from templates_gen.job.model import Frame
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.order import taping_order

TARGET_AT = "the target", "the target's window"

PHOTOGRAPHED = "Photograph the whole paper before: its photo tags tell whether a join or a nail is off. "

MOST_NAMED = 8
"""Frames that are named one by one, not counted.  Our own design, no source."""


def hanging_steps(plan: Plan, sheets: SheetPlan) -> Iterator[DayStep]:
    """The day from the finished paper on, step by step."""
    order = taping_order(sheets)
    cut = "the toothed slit under every nail mark" + has_window(plan) * " and the target's window"
    before = PHOTOGRAPHED * (sheets.paper.photo and len(sheets.sheets) > 1)  # of one sheet a photograph tells nothing
    yield DayStep("Cut the slits", f"On the table: {cut}.", sketch("slits"))
    yield from _whole(plan) if order.pieces == 1 else piece_by_piece(plan, sheets, order)
    if sheets.paper.cover != "nails":  # paper for nails alone has no drop scale
        yield from _marking(plan)
    yield DayStep(
        "Nail",
        f"{before}Read “{TITLE}” first. Through the dot in every ring, once you have "
        "looked for cables and pipes there."
        f"{_several(plan)}{_unrated(plan)}{_drilled_only(plan)}",
        sketch("nail-home"),
    )
    yield DayStep(
        "Paper off",
        "Undo the tape. Lift the paper off over the nail heads, one by one: the slits open. Keep it for the next time.",
        sketch("paper-off"),
    )
    yield _hanging(plan)
    yield DayStep("Level each", " ".join(_levelling(plan)), sketch("levelled"))
    yield DayStep(
        "Step back",
        "Look from where people will stand. If one hangs too high or too low, measure its drop again, and move its "
        "nail by the difference.",
        sketch("stepped-back"),
    )


LEVELLED = {
    "slide": "Slide a wire on its hook, or on both, until the bubble stands in the middle.",
    "teeth": "Hang a sawtooth by the tooth at which the bubble stands in the middle.",
}
"""How a frame is levelled that hangs on one fixing or on a wire, by what its hanger does."""

ONE_EACH = ", or on both"
"""What is left out where no wire is on two hooks."""


def _levelling(plan: Plan) -> Iterator[str]:
    """How each is levelled; what hangs on two fixings without a wire is as level as they are, and no hand slides it."""
    yield "A spirit level on its top edge."
    last, frames = through(plan), plan.job.frames
    firm = [frame for frame in frames if frame.hanger.traits.pair and frame.id not in last]
    loose = {frame.hanger.traits.by_hand for frame in frames if not frame.hanger.traits.pair}
    both = any(frame.hanger.apart is not None for frame in frames)
    told = (words for by_hand, words in LEVELLED.items() if by_hand in loose)
    yield from (words if both else words.replace(ONE_EACH, "") for words in told)
    if firm:
        ids = some([frame.id for frame in firm])
        yield f"On two fixings ({ids}) a frame does not slide: if the bubble is off, see templates-gen correct."
    if last:
        yield f"Plates ({some(last)}) do not slide: level the frame before its second screw is tight."


def _whole(plan: Plan) -> Iterator[DayStep]:
    unit = plan.job.unit
    cross = f"Draw a pencil cross {show_both(plan.centre_line, unit)} from {left_end(plan)} and "
    hold = (
        f"Put {TARGET_AT[has_window(plan)]} on the cross. Turn the paper until a spirit level on the level line is "
        "level, and tape it up. Trust the level, not the ceiling or the floor."
    )
    if not plan.slope:
        above = f"{show_both(plan.level_line, unit)} {above_floor(plan)}."
        yield DayStep("Mark the wall", cross + above, sketch("pencil-cross"))
        yield DayStep("Paper up", hold, sketch("paper-up"))
        return
    high, way = show_both(plan.job.group.height.at, unit), "to-the-right" if plan.slope > 0 else "to-the-left"
    yield DayStep(
        "Mark the wall",
        f"Lay a straight batten on the nosings. {cross}{high} straight above its lower edge.",
        sketch(f"cross-over-stair-{way}"),
    )
    yield DayStep("Paper up", hold, sketch("paper-up"))
    yield DayStep(
        "Check the pitch",
        f"Near both its ends the pitch line is {high} straight above the batten. Where they differ, the steps are "
        "uneven: keep the level line level, and move the paper up or down to share out the difference.",
        sketch(f"pitch-checked-{way}"),
    )


def _marking(plan: Plan) -> Iterator[DayStep]:
    frames = [hung.frame for hung in plan.frames if len(hung.nails) < len(hung.bearings)]
    if frames:
        names = ", ".join(frame.id for frame in frames) if len(frames) <= MOST_NAMED else f"{len(frames)} frames"
        wires = {frame.hanger.traits.on_wire for frame in frames}
        taut = ", with a wire pulled taut at its hook," if len(wires) > 1 else ""
        start = f"Measure from where the hanger bears{taut}"
        start = "Pull the wire taut at the hook, measure from there" if wires == {True} else start
        yield DayStep(
            "Mark the rest",
            f"Not measured yet: {names}. {start} to the frame's top edge, and mark that length on its drop scale: "
            f"{', '.join(once(map(_on_mark, frames)))}.",
            sketch("drop-mark"),
        )


def _on_mark(frame: Frame) -> str:
    """What goes where to the mark of a drop."""
    traits = frame.hanger.traits
    if traits.rail or traits.shows:
        return "a rail lies with its upper edge on it" if traits.rail else "a plate's screw goes on it"
    return (
        "a hook goes with its seat on it"
        if frame.fixing.kind == "hook"
        else "a bare nail or a screw goes just under it"
    )


def _several(plan: Plan) -> str:
    """A hook of several nails has one mark."""
    several = any(frame.fixing.nails > 1 for frame in plan.job.frames)
    return " Hold a hook that takes several nails with their middle on the dot." if several else ""


def through(plan: Plan) -> list[str]:
    """The frames whose screws go in last, through a hanger that shows: then the frame has to be there already."""
    return [
        hung.frame.id
        for hung in plan.frames
        if hung.frame.hanger.traits.shows and any(not hung.rect.has_point(nail.x, nail.y) for nail in hung.nails)
    ]


def _drilled_only(plan: Plan) -> str:
    """What is in the wall before the paper moves: nails and screws, or the holes of those that come last."""
    last, all_in = through(plan), " Nails and screws must be in firmly before the paper moves."
    if not last:
        return all_in
    drill = f" For {some(last)} only drill, and plug where no stud is: the screws come last, through the plates."
    return drill + (" All others" + all_in.removeprefix(" Nails and screws") if len(last) < len(plan.frames) else "")


def _unrated(plan: Plan) -> str:
    """Before which frames' nails something has to be settled."""
    unrated = [frame.id for frame in plan.job.frames if on_bare_nails(frame)]
    return f" First settle what holds {some(unrated)}: nobody rates a bare nail." if unrated else ""


def _hanging(plan: Plan) -> DayStep:
    frames = hanging_order(plan)
    draw = partial(hung_in_order, frames=frames, group=plan.group)
    two = [hung.frame.id for hung in frames if wants_two(hung.frame)]
    if len(frames) == 1:
        name = frames[0].frame.id
        words = f"Two people: hang {name}, one at each side, nobody under it." if two else f"Hang {name}."
        return DayStep("Hang", words + _held_up(plan), draw)
    turns = {f"{turn}" for turn, _ in enumerate(frames, 1)}
    named = not turns.isdisjoint(hung.frame.id for hung in frames)  # as their turns in the picture are
    numbers = "the numbers of the picture (turns, not names), " if named else "the numbers, "
    words = (
        f"Hang {'frame ' * named}{frames[0].frame.id} first, nearest the middle: the others are judged by it. "
        f"Then follow {numbers}from the top down and from the middle outward."
        + (f" Two people: hang {some(two)}, one at each side, nobody under it." if two else "")
    )
    return DayStep("Hang", words + _held_up(plan), draw)


def _held_up(plan: Plan) -> str:
    last = through(plan)
    return f" Hold {some(last)} in place, holes over holes, and drive the screws through the plates." if last else ""


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
