"""Sizes and gaps become rectangles about (0, 0): exact arithmetic, one small function for each arrangement.

Every function takes the sizes (mm) in the order of the group's rows and returns a rectangle for each, in the same
order, with x to the right and y up.  Most return a group whose bounding box has its middle at (0, 0).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from templates_gen.arranging.along import length, starts
from templates_gen.arranging.around import around
from templates_gen.arranging.climbing import climbing
from templates_gen.base.geometry import Rect, Size, bounds
from templates_gen.job.model import Group, Spot


def arrange(group: Group, sizes: Mapping[str, Size]) -> dict[str, Rect]:
    """The rectangle of every frame about the group's own origin (mm), by frame id in the group's order.

    The origin is the middle of the group's bounding box; but where centre line and level line cross for placed frames,
    where the centre line crosses the pitch line on stairs, and the middle of the feature that frames hang around.
    """
    if group.arrangement == "placed":
        return {name: _placed(spot, sizes[name]) for name, spot in group.spots}
    rows = [[sizes[name] for name in row] for row in group.rows]
    if group.around is not None:
        return _named(group, around(rows, group))
    if group.arrangement == "stairs":
        return _named(group, [climbing(rows[0], group)])
    rects = _ARRANGEMENTS[group.arrangement](rows, group)
    box = bounds(rect for row in rects for rect in row)
    return {name: rect.shifted(-box.cx, -box.cy) for name, rect in _named(group, rects).items()}


def _named(group: Group, rects: Sequence[Sequence[Rect]]) -> dict[str, Rect]:
    return {
        name: rect for names, row in zip(group.rows, rects, strict=True) for name, rect in zip(names, row, strict=True)
    }


def _rows(rows: Sequence[Sequence[Size]], group: Group) -> list[list[Rect]]:
    """Rows from the top, each as high as its highest frame."""
    widest = max(length([width for width, _ in row], group.gap_across) for row in rows)
    tops = starts([max(height for _, height in row) for row in rows], group.gap_down)
    return [_row(row, -top, widest, group) for row, top in zip(rows, tops, strict=True)]


def _row(row: Sequence[Size], top: float, widest: float, group: Group) -> list[Rect]:
    widths = [width for width, _ in row]
    start, gap = _set(widths, group.gap_across, widest, _FRACTION[group.set], group.set == "spread")
    tallest = max(height for _, height in row)
    return [
        Rect.sized(start + left, top - _FRACTION[group.align] * (tallest - height) - height, width, height)
        for left, (width, height) in zip(starts(widths, gap), row, strict=True)
    ]


def _columns(columns: Sequence[Sequence[Size]], group: Group) -> list[list[Rect]]:
    """Columns from the left, each as wide as its widest frame."""
    longest = max(length([height for _, height in column], group.gap_down) for column in columns)
    lefts = starts([max(width for width, _ in column) for column in columns], group.gap_across)
    return [_column(column, left, longest, group) for column, left in zip(columns, lefts, strict=True)]


def _column(column: Sequence[Size], left: float, longest: float, group: Group) -> list[Rect]:
    heights = [height for _, height in column]
    start, gap = _set(heights, group.gap_down, longest, _FRACTION[group.set], group.set == "spread")
    widest = max(width for width, _ in column)
    return [
        Rect.sized(left + _FRACTION[group.align] * (widest - width), -start - down - height, width, height)
        for down, (width, height) in zip(starts(heights, gap), column, strict=True)
    ]


def _grid(rows: Sequence[Sequence[Size]], group: Group) -> list[list[Rect]]:
    """Cells in line both ways: a column is as wide as its widest frame, a row as high as its highest.

    `set` places a frame across its cell, `align` up and down in it.
    """
    across = max(len(row) for row in rows)
    widths = [max(row[at][0] for row in rows if at < len(row)) for at in range(across)]
    heights = [max(height for _, height in row) for row in rows]
    lefts, downs = starts(widths, group.gap_across), starts(heights, group.gap_down)
    return [
        [
            Rect.sized(
                lefts[at] + _FRACTION[group.set] * (widths[at] - width),
                -downs[line] - _FRACTION[group.align] * (heights[line] - height) - height,
                width,
                height,
            )
            for at, (width, height) in enumerate(row)
        ]
        for line, row in enumerate(rows)
    ]


_ARRANGEMENTS: Mapping[str, Callable[[Sequence[Sequence[Size]], Group], list[list[Rect]]]] = {
    "row": _rows,
    "rows": _rows,
    "column": _columns,
    "columns": _columns,
    "grid": _grid,
}

_FRACTION = {"left": 0.0, "top": 0.0, "spread": 0.0, "centre": 0.5, "right": 1.0, "bottom": 1.0}
"""How much of the spare room lies before (left of, above) a frame or row."""


def _set(lengths: Sequence[float], gap: float, whole: float, before: float, spread: bool) -> tuple[float, float]:
    """Where a row starts in the whole width, and its gap; a spread row fills it, a single frame is in the middle."""
    spare = whole - length(lengths, gap)
    if not spread:
        return before * spare, gap
    return (0.0, gap + spare / (len(lengths) - 1)) if len(lengths) > 1 else (spare / 2, gap)


def _placed(spot: Spot, size: Size) -> Rect:
    """The rectangle whose named point lies at the spot."""
    width, height = size
    if spot.point == "centre":
        return Rect.about(spot.x, spot.y, width, height)
    left = spot.x - (width if spot.point.endswith("right") else 0.0)
    bottom = spot.y - (height if spot.point.startswith("top") else 0.0)
    return Rect.sized(left, bottom, width, height)
