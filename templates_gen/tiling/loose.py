"""Loose pieces fill their pages: what they carry comes to the middle, and there is room for its words about it."""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.base.geometry import TOLERANCE, Rect, Span
from templates_gen.base.record import replace
from templates_gen.tiling.cells import CellPlan, Clearance


def filled(cells: CellPlan, whole: Sequence[Rect], overlap: float, clear: Clearance) -> CellPlan:
    """The same cells, each that meets no other as large as its page lets it be where no other is, with what of `whole`
    it holds in the middle.

    Cuts between strips go right across the wall, so that one nail may else be left at the edge of a narrow piece.
    """
    page = cells.printable.width - overlap, cells.printable.height - overlap
    rects = [cell.rect for cell in cells.cells]
    for at, cell in enumerate(cells.cells):
        rect, others = rects[at], [*rects[:at], *rects[at + 1 :]]
        held = [box for box in whole if rect.holds(box)]
        if held and not any(_meet(rect, other) for other in others):
            width, height = page[::-1] if cell.turned else page
            x0, x1 = min(box.x0 for box in held) - clear.left, max(box.x1 for box in held) + clear.right
            y0, y1 = min(box.y0 for box in held) - clear.bottom, max(box.y1 for box in held) + clear.top
            beside = [(o.x0, o.x1) for o in others if _apart((o.y0, o.y1), (rect.y0, rect.y1)) < overlap]
            left, right = _grown((rect.x0, rect.x1), (x0, x1), width, beside, overlap)
            rect = Rect(left, rect.y0, right, rect.y1)
            over = [(o.y0, o.y1) for o in others if _apart((o.x0, o.x1), (rect.x0, rect.x1)) < overlap]
            low, high = _grown((rect.y0, rect.y1), (y0, y1), height, over, overlap)
            rects[at] = Rect(left, low, right, high)
    return replace(cells, cells=tuple(replace(cell, rect=rect) for cell, rect in zip(cells.cells, rects, strict=True)))


def _meet(one: Rect, two: Rect) -> bool:
    """Whether two cells share a part of a side, along which they are taped."""
    across, up = _apart((one.x0, one.x1), (two.x0, two.x1)), _apart((one.y0, one.y1), (two.y0, two.y1))
    return max(across, up) < TOLERANCE and min(across, up) < -TOLERANCE


def _apart(one: Span, two: Span) -> float:
    """How far two spans are apart (mm), negative by how much they share."""
    return max(one[0], two[0]) - min(one[1], two[1])


def _grown(own: Span, need: Span, size: float, others: Sequence[Span], gap: float) -> Span:
    """A span as long as `size` about what it needs, a gap away from the others; never less than it has itself."""
    low = min(own[0], max((end + gap for _, end in others if end <= own[0] + TOLERANCE), default=-float("inf")))
    high = max(own[1], min((start - gap for start, _ in others if start >= own[1] - TOLERANCE), default=float("inf")))
    if high - low <= size:
        return low, high
    start = min(max((need[0] + need[1] - size) / 2, low), high - size)
    return start, start + size
