"""Cells put into runs, joined wherever they meet along enough."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from templates_gen.base.geometry import Rect
from templates_gen.tiling.cells import Cell
from templates_gen.tiling.joins import JOIN_MIN, shared_sides
from templates_gen.tiling.weaving import Meet, woven


def put_into_runs(
    cells: Sequence[Rect], start: int, on_line: Callable[[Rect], bool], rows: bool, upright: tuple[float, float]
) -> Sequence[Cell]:
    """The cells with their strips, as `woven` has them."""
    meets = [
        Meet(one, two, cells[one].x1 == cells[two].x0, length)
        for one, two, length in shared_sides(cells)
        if length >= JOIN_MIN
    ]
    return woven(cells, start, on_line, rows, upright, meets)
