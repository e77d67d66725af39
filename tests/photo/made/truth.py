"""What is true of laid sheets: how joins meet, and where nails are relative to the paper's two lines."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np

from templates_gen.documents.photographed import Papers
from tests.photo.made.taped import Laid


@dataclass(frozen=True)
class Truth:
    """`joins` by their sheets: off (mm, at the worse end), dx, dy at the middle; `nails` by name: dx, dy (mm)."""

    joins: Mapping[tuple[str, str], tuple[float, float, float]]
    nails: Mapping[str, np.ndarray]
    sheets: Mapping[str, np.ndarray]


def truth(laid: Iterable[Laid], papers: Papers, more: Mapping[str, Laid] | None = None) -> Truth:
    """The truth of the sheets that are laid; `more` are those that are not there, as they would have lain."""
    sheets = {sheet.name: sheet for sheet in laid} | dict(more or {})
    joins = {}
    for join in papers.joins:
        x0, y0, x1, y1 = join.line
        points = np.array([(x0, y0), (x1, y1), ((x0 + x1) / 2, (y0 + y1) / 2)])
        off = sheets[join.over].lies(points) - sheets[join.under].lies(points)
        joins[join.over, join.under] = (float(np.hypot(*off[:2].T).max()), *map(float, off[2]))
    on_wall = _by_lines(sheets, papers)
    nails = {
        nail.name: on_wall(sheets[nail.sheet], np.array([nail.x, nail.y])) - (nail.x, nail.y) for nail in papers.nails
    }
    middles = {name: on_wall(sheets[name], np.array([cell.cx, cell.cy])) - (cell.cx, cell.cy)
               for name, cell in papers.cells}  # fmt: skip
    return Truth(joins, nails, middles)


def _by_lines(sheets: Mapping[str, Laid], papers: Papers):
    """Points of sheets with the paper's target at the crossing of the lines, and its level line level."""
    x, y = papers.centre_line, papers.level_line
    ends = []
    for name, cell in papers.cells:
        if cell.y0 <= y <= cell.y1:
            ends += [sheets[name].lies(np.array([at, y])) for at in (cell.x0 + 5, cell.x1 - 5)]
    slope = np.polyfit(*np.array(ends).T, 1)[0]
    holder = next(sheets[name] for name, cell in papers.cells
                  if cell.x0 <= x <= cell.x1 and cell.y0 <= y <= cell.y1)  # fmt: skip
    target, way = holder.lies(np.array([x, y])), np.arctan(slope)
    c, s = np.cos(way), np.sin(way)
    return lambda sheet, point: np.array([[c, s], [-s, c]]) @ (sheet.lies(point) - target) + (x, y)
