"""How far an arrangement is from what was wished of it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

from templates_gen.arranging.search.boxes import AS_LARGE
from templates_gen.base.adding import added
from templates_gen.base.geometry import Rect, bounds
from templates_gen.job.wishes import Wishes

TOGETHER = 1.6
"""Gaps between two frames that are together still: as far as a gap may be spread.  Our own design, no source."""

IN_LINE = 0.5
"""mm; what a tape measure can show.  Common practice, no source."""


def unmet(wishes: Wishes, rects: Mapping[str, Rect], gap: float) -> Iterator[tuple[tuple[str, ...], str]]:
    """The wishes that an arrangement does not grant: the frames, and in a few words what was wished of them."""
    for names in wishes.together:
        if _parted(names, rects, gap) > IN_LINE:
            yield names, f"{', '.join(names)} together"
    for names in wishes.same_height:
        if _uneven(names, rects) > IN_LINE:
            yield names, f"{', '.join(names)} at the same height"
    if wishes.largest == "centre" and not _holds_middle(rects):
        yield (largest_of(rects),), "the largest frame in the middle"


def regret(wishes: Wishes, rects: Mapping[str, Rect], gap: float) -> float:
    """How far the arrangement is from what was wished: 0 when all is met, about 1 for a wish missed by the group's
    size.  Our own design, no source."""
    box = bounds(rects.values())
    size = math.hypot(box.width, box.height)
    return added(_distances(wishes, rects, gap, box)) / size


def _distances(wishes: Wishes, rects: Mapping[str, Rect], gap: float, box: Rect) -> Iterator[float]:
    """mm that each wish is missed by, with a gap on top so that the last millimetre counts, too."""
    for names in wishes.together:
        yield _missed(_parted(names, rects, gap), gap)
    for names in wishes.same_height:
        yield _missed(_uneven(names, rects), gap)
    if wishes.largest == "centre" and not _holds_middle(rects):
        largest = rects[largest_of(rects)]
        yield math.hypot(largest.cx - box.cx, largest.cy - box.cy) + gap


def _missed(distance: float, gap: float) -> float:
    return distance + gap if distance > IN_LINE else 0.0


def _parted(names: Sequence[str], rects: Mapping[str, Rect], gap: float) -> float:
    """How much further than a gap the frames are from each other, one after the other (mm)."""
    return added(max(0.0, rects[one].gap_to(rects[two]) - TOGETHER * gap) for one, two in pairwise(names))


def _uneven(names: Sequence[str], rects: Mapping[str, Rect]) -> float:
    middles = [rects[name].cy for name in names]
    return max(middles) - min(middles)


def largest_of(rects: Mapping[str, Rect]) -> str:
    """The frame of the largest area, the first of several."""
    return max(rects, key=lambda name: rects[name].width * rects[name].height)


def _holds_middle(rects: Mapping[str, Rect]) -> bool:
    """True when the largest frame, or one as large, is where the group's middle is."""
    box, least = bounds(rects.values()), _area(rects[largest_of(rects)]) * AS_LARGE
    return any(_area(rect) >= least and rect.has_point(box.cx, box.cy) for rect in rects.values())


def _area(rect: Rect) -> float:
    return rect.width * rect.height
