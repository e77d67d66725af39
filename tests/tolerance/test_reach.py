"""Whether the steps of taping can be done: every join is reached, and what is carried can be held."""

from __future__ import annotations

import pytest
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

from templates_gen.arranging.plan import plan_wall
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.holding import plan_sheets
from templates_gen.tolerance.taping import blocks
from tests.bench.minutes import hung
from tests.bench.sheet_counts import wall

HELD = 2000.0  # mm; an arm's span is about as much: common practice, no source


def paper_of(sheets: SheetPlan, numbers: tuple[int, ...]) -> Polygon:
    cells = (sheets.sheets[number].cell for number in numbers)
    return unary_union([box(cell.x0, cell.y0, cell.x1, cell.y1) for cell in cells])


@pytest.mark.parametrize("cover", ["linked", "marks"])
@pytest.mark.parametrize("seed", [1, 2, 6])
def test_no_block_is_laid_into_a_ring_of_paper_and_none_but_the_spine_is_longer_than_a_person_holds(
    seed: int, cover: str
) -> None:
    """Into closed paper nobody can reach to lay a sheet under it, or to tape it from outside."""
    plan = plan_wall(hung(wall(seed), "a4", cover, "cut"))
    sheets = plan_sheets(plan, plan.job.paper)
    first, *others = blocks(sheets)
    there = paper_of(sheets, first.sheets)
    for block in others:
        new = paper_of(sheets, block.sheets)
        rings = [Polygon(ring) for ring in there.interiors]  # one piece, so one polygon
        assert not any(ring.buffer(1e-6).covers(new) for ring in rings), block.sheets
        x0, y0, x1, y1 = new.bounds
        assert not sheets.spine or max(x1 - x0, y1 - y0) <= HELD + 1e-6
        there = unary_union([there, new])
