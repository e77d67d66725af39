"""Linked paper: the nails and the target alone, on a spine of sheets along the level line with branches from it."""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.tiling.cells import Cell, CellPlan, Clearance, Printable
from templates_gen.tiling.demand import LINE_CLEAR, Demand
from templates_gen.tiling.pruned import pruned
from templates_gen.tiling.spine import Asked, Stretch, spine
from templates_gen.tiling.strips import SLACK
from templates_gen.tiling.weaving import turned

LINKED = "linked"

REACH = 300.0
"""mm that the spine goes to each side of the target at the least, as far as the group does: a string or a spirit level
of 60 cm lies along its level line.  Our own design, no source."""


def linked_cells(
    plan: Plan, need: Demand, printables: Sequence[Printable], overlap: float, clear: Clearance
) -> CellPlan | None:
    """The cells of linked paper: first those of the spine from the left, then branch by branch, each outwards.

    None where no spine reaches every nail.
    """
    sizes = [(area.width - overlap + SLACK, area.height - overlap + SLACK) for area in printables]
    found = spine(asked_of(plan, need, clear), sizes)
    return CellPlan(tuple(_numbered(found, sizes[0])), True, printables[0], True) if found else None


def pruned_cells(plan: Plan, marks: CellPlan, need: Demand, clear: Clearance) -> CellPlan:
    """The cells of linked paper without a spine: from those that hold every mark, as many as are needed."""
    boxes, reach = _boxes(need, clear), min(REACH, plan.group.width / 2)
    line = Rect(plan.centre_line - reach, plan.level_line - 1.0, plan.centre_line + reach, plan.level_line + 1.0)
    return pruned(marks, boxes, line)


def asked_of(plan: Plan, need: Demand, clear: Clearance) -> Asked:
    """What the spine has to hold, with what every sheet's own marks take."""
    reach = min(REACH, plan.group.width / 2)
    return Asked(
        _boxes(need, clear),
        plan.centre_line - reach, plan.centre_line + reach,
        plan.pitch_at if plan.slope else lambda x: plan.level_line,
        LINE_CLEAR + clear.bottom, LINE_CLEAR + clear.top,
        tuple(line for line in need.lines if line.height > line.width),
        tuple(line for line in need.lines if line.height <= line.width),
    )  # fmt: skip


def _boxes(need: Demand, clear: Clearance) -> tuple[Rect, ...]:
    """The whole items, the target first, and scales to mark by hand, with what sheets' own marks take around them."""
    return tuple(
        Rect(r.x0 - clear.left, r.y0 - clear.bottom, r.x1 + clear.right, r.y1 + clear.top)
        for r in (need.whole[-1], *need.whole[:-1], *need.divisible)
    )


def _numbered(found: Sequence[Stretch], upright: tuple[float, float]) -> list[Cell]:
    strips = [[stretch.cell for stretch in found]]
    strips += [list(branch.cells) for stretch in found for branch in stretch.branches]
    return [
        Cell(rect, strip, place, turned(rect, upright))
        for strip, cells in enumerate(strips)
        for place, rect in enumerate(cells)
    ]
