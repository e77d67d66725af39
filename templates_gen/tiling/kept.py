"""Cells of older paper under a plan that has changed: whether all that must be on paper still lies in them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.base.grid_index import Near
from templates_gen.tiling.demand import Demand, demand
from templates_gen.tiling.patches import CROSSED
from templates_gen.tiling.sheet import Given, Sheet, SheetPlan


def unserved(asked: Given, sheets: SheetPlan) -> str:
    """What these sheets do not show as it has to be shown, in words; "" where they show all of it.

    Nail marks and the target have to lie whole inside a sheet, lines and edges on some sheet, and no trim line may run
    along an edge.  Where nothing is cut, the scales of known drops may be hidden if they have to be.
    """
    found = _unserved(asked, _need(asked), sheets)
    return _unserved(asked, _need(asked, spare=True), sheets) if found and asked.hides else found


def _unserved(asked: Given, need: Demand, sheets: SheetPlan) -> str:
    windows = Near((sheet.window, sheet) for sheet in sheets.sheets)
    for box in need.whole:
        if not any(sheet.inner.holds(box) for sheet in sheets.sheets):
            return "a nail or the target would lie on a trim line or beside the old paper"
    for box in _anywhere(asked, need):
        if not _covered(box, windows.about(box)):
            return "part of a frame or of a line lies beside the old paper"
    if any(_along(join.line, line) for join in sheets.joins for line in need.lines):
        return "a trim line would run along the edge of a frame"
    return ""


def idle(asked: Given, sheets: SheetPlan) -> frozenset[str]:
    """The names of sheets that show nothing which has to be on paper."""
    need = _need(asked)
    boxes = Near((box, box) for box in (*need.whole, *_anywhere(asked, need)))
    used = (sheet.name for sheet in sheets.sheets if any(box.overlaps(sheet.cell) for box in boxes.about(sheet.cell)))
    return frozenset(sheet.name for sheet in sheets.sheets) - frozenset(used)


def _need(asked: Given, spare: bool = False) -> Demand:
    return demand(asked.plan, asked.paper.cover, asked.clear, asked.hides, spare)


def _anywhere(asked: Given, need: Demand) -> tuple[Rect, ...]:
    """What has to be on some sheet or other: whole edges, too, where the whole group is asked for."""
    return (*need.divisible, *need.lines) if asked.paper.cover == "all" else need.divisible


def _covered(box: Rect, sheets: Iterable[Sheet]) -> bool:
    """Whether the windows of these sheets show every point of a box."""
    left = [box]
    for sheet in sheets:
        left = [part for rest in left for part in _without(rest, sheet.window)]
    return not left


def _without(box: Rect, other: Rect) -> Iterator[Rect]:
    """What of a box is outside another, in rectangles wider and higher than the tolerance."""
    x0, x1 = max(box.x0, min(other.x0, box.x1)), min(box.x1, max(other.x1, box.x0))
    y0, y1 = max(box.y0, min(other.y0, box.y1)), min(box.y1, max(other.y1, box.y0))
    if x1 - x0 < -TOLERANCE or y1 - y0 < -TOLERANCE:
        yield box
        return
    parts: Sequence[Rect] = (
        Rect(box.x0, box.y0, x0, box.y1), Rect(x1, box.y0, box.x1, box.y1),
        Rect(x0, box.y0, x1, y0), Rect(x0, y1, x1, box.y1),
    )  # fmt: skip
    yield from (part for part in parts if part.width > TOLERANCE and part.height > TOLERANCE)


def _along(join: tuple[float, float, float, float], line: Rect) -> bool:
    """Whether a trim line runs along a line of the wall, inside what it keeps away from it, not just across its end."""
    x0, y0, x1, y1 = join
    if x0 == x1:
        meets = min(y1, line.y1) - max(y0, line.y0) > CROSSED
        return line.height > line.width and line.x0 + TOLERANCE < x0 < line.x1 - TOLERANCE and meets
    meets = min(x1, line.x1) - max(x0, line.x0) > CROSSED
    return line.width >= line.height and line.y0 + TOLERANCE < y0 < line.y1 - TOLERANCE and meets
