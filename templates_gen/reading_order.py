"""The order in which people read a wall: rows from the top, each from left to right."""

from __future__ import annotations

from collections.abc import Mapping

from templates_gen.geometry import Rect


def reading_order(rects: Mapping[str, Rect], slope: float = 0.0) -> list[str]:
    """The names of the rectangles in reading order.

    Two are in one row when at least half of the lower one lies beside the other; a row's rectangles all are so to each
    other.  `slope` is how far rows rise for every mm to the right: frames on a stair are one row.
    """
    levelled = {name: rect.shifted(0.0, -slope * rect.cx) for name, rect in rects.items()}
    left = sorted(levelled, key=lambda name: (-levelled[name].y1, levelled[name].x0))
    order: list[str] = []
    while left:
        row, rest = [left[0]], []
        for at, name in enumerate(left[1:], 1):
            if levelled[name].y1 <= max(levelled[other].y0 for other in row):
                rest += left[at:]
                break
            beside = all(_beside(levelled[name], levelled[other]) for other in row)
            (row if beside else rest).append(name)
        order += sorted(row, key=lambda name: levelled[name].x0)
        left = rest
    return order


def _beside(one: Rect, two: Rect) -> bool:
    shared = min(one.y1, two.y1) - max(one.y0, two.y0)
    return shared >= min(one.height, two.height) / 2
