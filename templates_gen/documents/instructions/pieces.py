"""Paper in pieces that hang by themselves: how each is placed, from two pencil lines or, on stairs, from one."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.arranging.plan import Plan
from templates_gen.base.units import show_both
from templates_gen.documents.instructions.sketches import DayStep, sketch
from templates_gen.documents.schedule.distances import left_end
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.order import Order


def piece_by_piece(plan: Plan, sheets: SheetPlan, order: Order) -> Iterator[DayStep]:
    """The steps that put such paper up."""
    which = "Each sheet" if order.pieces == len(sheets.sheets) else "Each piece"
    once = "" if order.pieces == len(sheets.sheets) else " Of sheets taped to each other one is enough."
    yield from _from_nosings(plan, which, once) if plan.slope else _from_lines(plan, which, once)


def _from_lines(plan: Plan, which: str, once: str) -> Iterator[DayStep]:
    """Pieces that are placed one by one from the level line and the centre line."""
    unit = plan.job.unit
    yield DayStep(
        "Mark the wall",
        f"Draw two thin pencil lines on the wall: the level line {show_both(plan.level_line, unit)} above "
        f"the floor, by a spirit level, and the centre line {show_both(plan.centre_line, unit)} from "
        f"{left_end(plan)}, plumb; both as far as the sheets on the map.",
        sketch("pencil-lines"),
    )
    yield DayStep(
        "Paper up",
        f"{which} hangs separately. Large figures say how far "
        "both lines are from its rulers: measure from both ends of the ruler, tape it up when all four are right and "
        f"its level ruler is level. Where it shows a line itself, lay that on the pencil line.{once}",
        sketch("piece-placed"),
    )


def _from_nosings(plan: Plan, which: str, once: str) -> Iterator[DayStep]:
    """On stairs a level line would run through the air: the pitch line is drawn from the nosings, and each piece stands
    on it, so far along and so far straight up or down."""
    unit, way = plan.job.unit, "to-the-right" if plan.slope > 0 else "to-the-left"
    high = show_both(plan.job.group.height.at, unit)
    yield DayStep(
        "Mark the wall",
        f"Lay a straight batten on the nosings. Mark {high} straight above its lower edge at both ends of the group, "
        "and join the marks by a thin pencil line: the pitch line. Where steps are uneven, share out the difference. "
        f"Draw a pencil cross on it {show_both(plan.centre_line, unit)} from {left_end(plan)}, measured level.",
        sketch(f"cross-over-stair-{way}"),
    )
    yield DayStep(
        "Paper up",
        f"{which} hangs separately. Large figures say how far from the cross its upright ruler stands, along the pitch "
        "line: mark that point. Hold the upright ruler plumb over the mark, and the level ruler as far straight above "
        "or below the mark as the figures say. Tape it up when the level ruler is level. Where it shows the pitch line "
        f"itself, lay that on the pencil line.{once}",
        sketch(f"pitch-checked-{way}"),
    )
