"""The order in which people read a wall: rows from the top, each from left to right."""

from __future__ import annotations

from collections.abc import Mapping

from templates_gen.base.geometry import Rect

ALIKE = 6
"""Decimals of a height (mm) by which two are the same: far below what hangs askew.  Common practice, no source."""


def reading_order(rects: Mapping[str, Rect], slope: float = 0.0) -> list[str]:
    """The names of the rectangles in reading order.

    Two are in one row when at least half of the lower one lies beside the other; a row's rectangles all are so to each
    other.  `slope` is how far rows rise for every mm to the right: frames on a stair are one row.  Of those that begin
    at one point the higher one is first, and of two alike the one whose name is: never the one that was given first.
    """
    levelled = {name: _band(rect, slope * rect.cx) for name, rect in rects.items()}
    left = sorted(levelled, key=lambda name: (-levelled[name][1], rects[name].x0, -rects[name].y1, name))
    order: list[str] = []
    while left:
        row, rest, bands = [left[0]], [], {levelled[left[0]]}  # thousands of frames may share a band
        for at, name in enumerate(left[1:], 1):
            band = levelled[name]
            if band[1] <= max(foot for foot, _ in bands):
                rest += left[at:]
                break
            if band in bands or all(_beside(band, other) for other in bands):
                row.append(name)
                bands.add(band)
            else:
                rest.append(name)
        order += sorted(row, key=lambda name: rects[name].x0)
        left = rest
    return order


def _band(rect: Rect, rise: float) -> tuple[float, float]:
    """From which height to which it reaches (mm), once its row is level; rounded, for equal frames to share it."""
    return round(rect.y0 - rise, ALIKE), round(rect.y1 - rise, ALIKE)


def _beside(one: tuple[float, float], two: tuple[float, float]) -> bool:
    shared = min(one[1], two[1]) - max(one[0], two[0])
    return shared >= min(one[1] - one[0], two[1] - two[0]) / 2
