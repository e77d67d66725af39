"""Cuts of neighbouring strips that nearly meet are brought together, so that registration marks fall on one corner."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence

from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.tiling.joins import JOIN_MIN, Rows, pieces
from templates_gen.tiling.strips import SLACK, Box, Boxes, Line

NEAR = 15.0
"""Cuts nearer to each other than this (mm) would have registration marks that run into each other.  Our own design."""


def aligned(rows: Rows, boxes: Sequence[Box], width: float) -> Rows:
    """The same cells, each side of one moved to a side of the strip below where that is near and allowed.

    Every cell keeps its content and at most `width` (mm); what hangs together still does.
    """
    boxes = Boxes(boxes)
    moved: Rows = []
    known: list[float] = []
    for row in rows:
        row = _row(row, known, boxes, width)
        moved.append(row)
        known = [side for cell in row for side in (cell.x0, cell.x1)]
    before, after = ([cell for row in some for cell in row] for some in (rows, moved))
    return moved if max(pieces(after), default=0) <= max(pieces(before), default=0) else rows


def _row(row: list[Rect], known: Sequence[float], boxes: Boxes, width: float) -> list[Rect]:
    if not row or not known:
        return row
    line = boxes.line(row[0].y0, row[0].y1 + SLACK)
    cells = list(row)
    for at in range(len(cells) + 1):
        left, right = at - 1 if at else None, at if at < len(cells) else None
        if left is not None and right is not None and cells[left].x1 != cells[right].x0:
            _move(cells, left, None, _near(cells[left].x1, known), line, width)
            _move(cells, None, right, _near(cells[right].x0, known), line, width)
        else:
            side = cells[at].x0 if left is None else cells[left].x1
            _move(cells, left, right, _near(side, known), line, width)
    return cells


def _near(side: float, known: Sequence[float]) -> float | None:
    """The known side (of those from left to right) that is nearest, if near enough and not the same."""
    after = bisect_left(known, side)
    best = min(known[max(0, after - 1) : after + 1], key=lambda other: abs(other - side))
    return best if 0 < abs(best - side) < NEAR else None


def _move(cells: list[Rect], left: int | None, right: int | None, to: float | None, line: Line, width: float) -> None:
    """Move the side that two cells share, or where a run of cells ends, if the strip's content allows it."""
    if to is None or line.cut_at_most(to) != to:
        return
    changed = {}
    if left is not None:
        changed[left] = Rect(cells[left].x0, cells[left].y0, to, cells[left].y1)
    if right is not None:
        changed[right] = Rect(to, cells[right].y0, cells[right].x1, cells[right].y1)
    if not all(JOIN_MIN <= cell.width <= width for cell in changed.values()):
        return
    if len(changed) == 1 and not _end_may_move(cells, left, right, to, line):
        return
    for at, cell in changed.items():
        cells[at] = cell


def _end_may_move(cells: list[Rect], left: int | None, right: int | None, to: float, line: Line) -> bool:
    """True when the end of a run neither leaves content behind nor runs into the next run."""
    at = left if left is not None else right or 0
    now = cells[at].x1 if left is not None else cells[at].x0
    low, high = min(now, to) - TOLERANCE, max(now, to) + TOLERANCE
    if any(lo < high and hi > low for lo, hi in zip(line.all_lo, line.all_hi, strict=True)):
        return False
    others = [cell for number, cell in enumerate(cells) if number != at]
    return not any(other.x0 < high and other.x1 > low for other in others)
