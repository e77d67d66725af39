"""Linked paper where no spine reaches every nail: the plan of every mark, without the sheets that it can do without."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from heapq import heappop, heappush

from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.tiling.cells import Cell, CellPlan
from templates_gen.tiling.joins import JOIN_MIN, shared_sides
from templates_gen.tiling.minutes import EACH, shaky

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
        replace(cell, strip=_outwards(cell.strip - cells[start].strip), turned=plan.printable.turned)
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
