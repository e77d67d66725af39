"""Pages made to measure: from a roll as long as needed, in one piece as large as needed, never more pages for it."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Callable
from functools import partial

from templates_gen.arranging.plan import Plan
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.base.record import replace
from templates_gen.drawing.items import POINT
from templates_gen.job.model import Paper
from templates_gen.job.paper_sizes import LEAST_SIDE, MOST_SIDE, large_page, roll_for
from templates_gen.tiling.demand import bordered
from templates_gen.tiling.sheet import clearance

LEAST, MOST = math.ceil(LEAST_SIDE / POINT), math.floor(MOST_SIDE / POINT)
"""The sides of a page in whole points: a page of a fraction of a point is printed scaled by some viewers."""


def fitted(paper: Paper, count: Callable[[Paper, int | None], int], shown: Rect) -> Paper:
    """The paper with the smallest sides, in whole points, that need as few pages as the largest ones do.

    `count` says how many pages a paper needs, or, where it is told how many are enough and needs more, that it needs
    more; `shown` is what one page in one piece would show, which is tried first.
    Paper in sheets is left as it is; of a roll only the length changes.  Raises InputError when not even the largest
    page will do.
    """
    if paper.kind == "sheets":
        return paper
    top, right, bottom, left = paper.margin
    wide, high = shown.width + left + right + paper.overlap, shown.height + top + bottom + paper.overlap
    across, up = _points(wide), _points(high)
    if paper.kind == "one piece" and LEAST <= min(across, up) and max(across, up) <= MOST:
        one = replace(paper, width=across * POINT, height=up * POINT)
        if _holds(lambda _: count(one, None) == 1, 1):
            return one  # a smaller page does not show all of it
    best = replace(paper, height=MOST * POINT, width=paper.width if paper.kind == "roll" else MOST * POINT)
    pages = count(best, None)
    best = replace(best, height=_least(lambda up: count(replace(best, height=up * POINT), pages) <= pages, high))
    if paper.kind == "roll":
        return best
    long = best
    return replace(long, width=_least(lambda across: count(replace(long, width=across * POINT), pages) <= pages, wide))


def _least(enough: Callable[[int], bool], likely: float) -> float:
    """The least whole number of points that is enough, in mm, when the most is; a likely one (mm) is tried first."""
    holds, first = partial(_holds, enough), _points(likely)
    if LEAST < first < MOST and holds(first) and not holds(first - 1):
        return first * POINT
    return (LEAST + bisect_left(range(LEAST, MOST), True, key=holds)) * POINT


def comes_off_a_roll(plan: Plan) -> bool:
    """Whether a usual roll is as wide as one page that shows the group of a plan, lying or standing."""
    unit, paper = plan.job.unit, large_page(plan.job.paper)
    shown, (top, right, bottom, left) = bordered(plan.group, clearance(paper.overlap)), paper.margin
    wide, high = shown.width + left + right + paper.overlap, shown.height + top + bottom + paper.overlap
    return max(wide, high) <= MOST_SIDE and roll_for(min(wide, high), unit) is not None


def _points(likely: float) -> int:
    return math.ceil(likely / POINT - TOLERANCE)


def _holds(enough: Callable[[int], bool], points: int) -> bool:
    try:
        return enough(points)
    except InputError:  # too small for what must stay whole
        return False
