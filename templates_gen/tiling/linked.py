"""Linked paper: the nails and the target alone, on a spine of sheets along the level line with branches from it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from heapq import heappop, heappush

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.tiling.cells import Cell, CellPlan, Clearance, Printable
from templates_gen.tiling.demand import LINE_CLEAR, Demand
from templates_gen.tiling.joins import JOIN_MIN, shared_sides
from templates_gen.tiling.minutes import EACH, shaky
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


Links = Mapping[int, Mapping[int, float]]
"""For every cell those that it is joined to, with the seconds that the way over that join takes."""


def pruned(plan: CellPlan, boxes: Sequence[Rect], line: Rect) -> CellPlan:
    """The cells that hold the boxes (wall mm, the first of them the target's) and the line, and those between them; of
    a box that no cell holds whole, such as a long drop scale, all that show a part of it.

    They stay one piece: one needed cell after the other is joined to what is there by the quickest way.  The strip of
    the target comes first, and then the others from there outwards.
    """
    cells = plan.cells
    start = next(at for at, cell in enumerate(cells) if cell.rect.holds(boxes[0]))
    needed = {at for at, cell in enumerate(cells) if cell.rect.overlaps(line)}
    for box in boxes:
        whole = {at for at, cell in enumerate(cells) if cell.rect.holds(box)}
        needed |= whole or {at for at, cell in enumerate(cells) if cell.rect.overlaps(box)}
    links = _links(cells)
    kept = {start}
    while needed - kept:
        way = _way(links, kept, needed - kept)
        if not way:
            break
        kept.update(way)
    outwards = [
        replace(cell, strip=_outwards(cell.strip - cells[start].strip), turned=cell.turned or plan.printable.turned)
        for cell in (cells[at] for at in sorted(kept))
    ]
    return replace(plan, cells=tuple(outwards))


def _outwards(strips: int) -> int:
    """0 for the target's own strip, then 1, 2, 3, … by turns to either side."""
    return 2 * strips - 1 if strips > 0 else -2 * strips


def _links(cells: Sequence[Cell]) -> Links:
    links: dict[int, dict[int, float]] = defaultdict(dict)
    for one, two, length in shared_sides([cell.rect for cell in cells]):
        if length >= JOIN_MIN:
            links[one][two] = links[two][one] = EACH.chained + shaky(length)
    return links


def _way(links: Links, kept: set[int], needed: set[int]) -> list[int]:
    """The quickest way from what is kept to the first of the needed cells, itself included; empty where none is."""
    reached: dict[int, int | None] = {}
    waiting: list[tuple[float, int, int | None]] = [(0.0, at, None) for at in sorted(kept)]
    while waiting:
        cost, at, before = heappop(waiting)
        if at in reached:
            continue
        reached[at] = before
        if at in needed:
            return _back(reached, at, kept)
        for other, takes in links.get(at, {}).items():
            if other not in reached:
                heappush(waiting, (cost + takes, other, at))
    return []


def _back(reached: Mapping[int, int | None], at: int, kept: set[int]) -> list[int]:
    way = [at]
    while (before := reached[way[-1]]) is not None and before not in kept:
        way.append(before)
    return way
