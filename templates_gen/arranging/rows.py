"""Sizes and gaps become rectangles about (0, 0): exact arithmetic, one small function for each arrangement.

Every function takes the sizes (mm) in the order of the group's rows and returns a rectangle for each, in the same
order, with x to the right and y up.  Most return a group whose bounding box has its middle at (0, 0).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from itertools import accumulate

from templates_gen.base.adding import added
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


def _lines(lines: Sequence[Sequence[Size]], group: Group) -> list[list[Rect]]:
    """Rows from the top, each as high as its highest frame, or columns from the left, each as wide as its widest."""
    upright = group.arrangement in ("column", "columns")
    along, aside = (1, 0) if upright else (0, 1)
    gap, between = (group.gap_down, group.gap_across) if upright else (group.gap_across, group.gap_down)
    longest = max(length([size[along] for size in line], gap) for line in lines)
    begins = starts([max(size[aside] for size in line) for line in lines], between)
    return [_line(line, begin, longest, gap, group, along) for line, begin in zip(lines, begins, strict=True)]


def _line(line: Sequence[Size], begin: float, longest: float, gap: float, group: Group, along: int) -> list[Rect]:
    """One row (`along` 0) that begins so far down, or column (1) that begins so far to the right."""
    lengths, most = [size[along] for size in line], max(size[1 - along] for size in line)
    start, own_gap = _set(lengths, gap, longest, _FRACTION[group.set], group.set == "spread")
    found = []
    for before, size in zip(starts(lengths, own_gap), line, strict=True):
        spare = _FRACTION[group.align] * (most - size[1 - along])
        left, top = (begin + spare, -start - before) if along else (start + before, -begin - spare)
        found.append(Rect.sized(left, top - size[1], *size))
    return found


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
            Rect.sized(lefts[at] + _FRACTION[group.set] * (widths[at] - width),
                       -downs[line] - _FRACTION[group.align] * (heights[line] - height) - height, width, height)
            for at, (width, height) in enumerate(row)
        ]
        for line, row in enumerate(rows)
    ]  # fmt: skip


_ARRANGEMENTS: Mapping[str, Callable[[Sequence[Sequence[Size]], Group], list[list[Rect]]]] = {
    "row": _lines, "rows": _lines, "column": _lines, "columns": _lines, "grid": _grid,
}  # fmt: skip

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


def climbing(sizes: Sequence[tuple[float, float]], group: Group) -> list[Rect]:
    """A rectangle for each size (mm), from the left, about the point where the centre line crosses the pitch line.

    The gap is kept level, from side to side: neighbours are never nearer in any direction, and further apart only
    where one hangs wholly above the other.
    """
    widths = [width for width, _ in sizes]
    first, below = -length(widths, group.gap_across) / 2, UNDER[group.align]
    return [
        Rect.sized(left, group.slope * (left + width / 2) - below * height, width, height)
        for (width, height), left in zip(sizes, (first + x for x in starts(widths, group.gap_across)), strict=True)
    ]


UNDER = {"top": 1.0, "centre": 0.5, "bottom": 0.0}
"""How much of a frame lies under the pitch line; how much of the room beside a feature that a side column leaves."""


def around(sides: Sequence[Sequence[Size]], group: Group) -> list[list[Rect]]:
    """The rectangles of the frames on the four sides, in the order of `SIDES`, about the feature's middle (mm).

    All stand on the line that is `gap_around` away from the feature.  A row that reaches over a column that is higher
    than the feature keeps the gap down from the column instead, and so is further away from the feature.
    """
    assert group.around is not None
    feature, away = group.around.rect, group.gap_around
    left, above, right, below = sides
    inner, outer = feature.width / 2 + away, feature.height / 2 + away
    at_left = [rect.shifted(-inner - rect.x1, 0.0) for rect in _side_column(left, feature.height, group)]
    at_right = [rect.shifted(inner, 0.0) for rect in _side_column(right, feature.height, group)]
    columns = [*at_left, *at_right]
    under = [_flipped(rect) for rect in _level_row(below, outer, [_flipped(rect) for rect in columns], group)]
    return [at_left, _level_row(above, outer, columns, group), at_right, under]


def _side_column(sizes: Sequence[Size], beside: float, group: Group) -> list[Rect]:
    """A column from the top with its left sides at 0, aligned to a feature of this height about 0."""
    heights = [height for _, height in sizes]
    whole = length(heights, group.gap_down)
    top = whole - beside / 2 + UNDER[group.align] * (beside - whole)
    return [
        Rect.sized(0.0, top - down - height, width, height)
        for (width, height), down in zip(sizes, starts(heights, group.gap_down), strict=True)
    ]


def _level_row(sizes: Sequence[Size], bottom: float, columns: Sequence[Rect], group: Group) -> list[Rect]:
    """A row about the upright at 0, its lower edges at this height or, over a column, the gap down above that."""
    widths, gap = [width for width, _ in sizes], group.gap_across
    half = length(widths, gap) / 2
    over = [frame.y1 + group.gap_down for frame in columns if frame.x0 < half + gap and frame.x1 > -half - gap]
    bottom = max([bottom, *over])
    return [
        Rect.sized(left - half, bottom, width, height)
        for (width, height), left in zip(sizes, starts(widths, gap), strict=True)
    ]


def _flipped(rect: Rect) -> Rect:
    """The rectangle upside down about the level through 0."""
    return Rect(rect.x0, -rect.y1, rect.x1, -rect.y0)


def starts(lengths: Sequence[float], gap: float) -> list[float]:
    """Where each of several lengths (mm) begins; nothing for none."""
    return [0.0, *accumulate(each + gap for each in lengths[:-1])][: len(lengths)]


def length(lengths: Sequence[float], gap: float) -> float:
    """How long they are together with their gaps (mm)."""
    return added(lengths) + gap * (len(lengths) - 1)
