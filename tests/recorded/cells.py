"""The cells of walls by chance: what a plan of a job seldom needs, dense walls and loose ones, is planned here."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from random import Random

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.tiling.cells import CellPlan, Printable, plan_cells
from templates_gen.tiling.sheet import clearance
from tests.recorded.listing import box, numbers

PAGES = (Printable(198.0, 285.0, False), Printable(285.0, 198.0, True))
"""What a page of A4 can carry, upright and on its side (mm)."""

OVERLAP = 12.0

WALLS = 60
"""So many walls.  Our own choice."""


def of_cells() -> Iterator[str]:
    """The cells of every wall: how many, in how many strips, their corners in the first and the last, and all sums."""
    for seed in range(WALLS):
        chance = Random(seed)
        whole, divisible = (_dense if seed % 3 == 0 else _loose)(chance)
        lines = [Rect(r.x0, r.y0, r.x1, r.y0 + 1.0) for r in divisible] if seed % 2 else []
        try:
            found = plan_cells(whole, divisible, PAGES, OVERLAP, clearance(OVERLAP), seed % 4 < 2, lines)
        except InputError as error:
            yield f"wall {seed}: {' / '.join(str(error).splitlines())}"
        else:
            yield f"wall {seed}: {_told(found)}"


def _loose(chance: Random) -> tuple[list[Rect], list[Rect]]:
    """Nails and frames here and there, on a wall of 1.6 × 1.2 m."""
    whole = [_at(chance, 1600.0, 1200.0, 18.0, 18.0) for _ in range(chance.randint(3, 9))]
    sizes = ((chance.uniform(60.0, 400.0), chance.uniform(60.0, 500.0)) for _ in range(chance.randint(0, 4)))
    return whole, [_at(chance, 1600.0, 1200.0, *size) for size in sizes]


def _dense(chance: Random) -> tuple[list[Rect], list[Rect]]:
    """What must stay whole so close together that hardly a straight cut is left."""
    cell = chance.uniform(110.0, 150.0)
    spots = [
        (x * cell + chance.uniform(0.0, 60.0), y * cell + chance.uniform(0.0, 60.0)) for x in range(5) for y in range(5)
    ]
    return [Rect.sized(x, y, 70.0, 70.0) for x, y in chance.sample(spots, 18)], []


def _at(chance: Random, wide: float, high: float, width: float, height: float) -> Rect:
    return Rect.sized(chance.uniform(0.0, wide - width), chance.uniform(0.0, high - height), width, height)


def _told(plan: CellPlan) -> str:
    cells = [cell.rect for cell in plan.cells]
    places = " ".join(f"{cell.strip}.{cell.place}" for cell in plan.cells)
    ways = f"{'rows' if plan.rows else 'columns'}{', lying' if plan.printable.turned else ''}"
    return f"{ways}: {places}: {box(cells[0])} | {box(cells[-1])} | all together {_sums(cells)}"


def _sums(cells: Sequence[Rect]) -> str:
    return numbers(*(sum(getattr(cell, side) for cell in cells) for side in ("x0", "y0", "x1", "y1")))
