"""What of a plan has to be on paper: what must stay whole, and what may go on on the next sheet."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from templates_gen.geometry import Rect
from templates_gen.marksizes import MEDIUM, NAIL_ARM, NAIL_CLEAR, SCALE_FAR, SLIT_TO, TARGET
from templates_gen.planning import Hung, Plan

SCALE_LEAST = 120.0
"""mm that a drop rule is long, unless the frame is shorter; a third of the frame's height where that is more, since
rings usually sit about a third down (C. A. Paschke, "Hardware: Wall Hangers and Cleats", trade column, 2013)."""


@dataclass(frozen=True, slots=True)
class Demand:
    """Rectangles on the wall (mm) that sheets must show: `whole` inside one sheet, `divisible` on any."""

    whole: tuple[Rect, ...]
    divisible: tuple[Rect, ...]


def demand(plan: Plan, cover: str) -> Demand:
    """What must be on paper for `cover`: "all" the group's rectangle, "marks" every mark, "nails" only the nails."""
    nails = [nail_box(nail.x, nail.y) for nail in plan.nails]
    target = Rect.about(plan.centre_line, plan.level_line, 2 * TARGET, 2 * TARGET)
    whole = (*nails, target)
    if cover == "nails":
        return Demand(whole, ())
    if cover == "all":
        return Demand(whole, (plan.group.grown(MEDIUM),))
    return Demand(whole, tuple(_marks(plan)))


def nail_box(x: float, y: float) -> Rect:
    """What the mark of a nail at (x, y) takes: hairlines, circle and release slit, without its label."""
    return Rect(x - NAIL_CLEAR, y - SLIT_TO, x + NAIL_CLEAR, y + NAIL_ARM)


def scale_length(hung: Hung, drop: float | None) -> float:
    """How far a drop rule reaches down from the frame's top edge (mm): past its drop, within the frame."""
    wanted = max(SCALE_LEAST, hung.rect.height / 3, (drop or 0.0) + 40.0)  # 40 mm for a twin's drop, our own design
    return min(wanted, hung.rect.height - 5.0)


def _marks(plan: Plan) -> Iterator[Rect]:
    group, half = plan.group, MEDIUM / 2
    for hung in plan.frames:
        yield from _edges(hung.rect)
        for bearing in hung.bearings:
            low = hung.rect.y1 - max(0.0, scale_length(hung, bearing.drop))
            yield Rect(bearing.x - SCALE_FAR / 2, low, bearing.x + SCALE_FAR / 2, hung.rect.y1)
    yield Rect(plan.centre_line - half, group.y0, plan.centre_line + half, group.y1)
    yield Rect(group.x0, plan.level_line - half, group.x1, plan.level_line + half)


def _edges(rect: Rect) -> tuple[Rect, Rect, Rect, Rect]:
    half = MEDIUM / 2
    outer = rect.grown(half)
    return (
        Rect(outer.x0, rect.y1 - half, outer.x1, outer.y1),
        Rect(outer.x0, outer.y0, outer.x1, rect.y0 + half),
        Rect(outer.x0, outer.y0, rect.x0 + half, outer.y1),
        Rect(rect.x1 - half, outer.y0, outer.x1, outer.y1),
    )
