"""How good an arrangement is, in numbers to be told: by its looks, and by published measures, by which nothing is
searched.  Rectangles in mm, y up.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from templates_gen.arranging.search.boxes import Gaps
from templates_gen.arranging.search.ground import boxed
from templates_gen.arranging.search.looks import looks
from templates_gen.base.adding import added
from templates_gen.base.geometry import Rect, bounds
from templates_gen.base.record import Record

BEST = 1.2
"""The total of an arrangement whose looks cost nothing; equal frames in a regular grid cost 0.2.  Our own design."""


class Score(Record, frozen=True):
    """The numbers of an arrangement: the total by its looks, from 0 (bad) to 1, and what was published.

    `filled` is the share of the group's outline that is frame or the gap around one, `mirrored` the share of frame that
    lies on frame in the mirror, `voids` the blank areas within over the area of frames.  `left_heavy` and `top_heavy`
    run from -1 to 1: the difference of the two sides' moments over the larger.  `mass_off` is how far the centre of
    mass lies from the middle, in per cent.
    """

    total: float
    balance: float
    equilibrium: float
    symmetry: float
    filled: float
    mirrored: float
    voids: float
    left_heavy: float
    top_heavy: float
    mass_off: float


def score(
    rects: Sequence[Rect], gap_across: float, gap_down: float, centre: float | None = None, inside: Sequence[Rect] = ()
) -> Score:
    """The score of an arrangement with these gaps wanted (mm), about an upright line at x = `centre`, or its middle.

    What frames hang around lies `inside`: it belongs to the picture, but weighs nothing.
    """
    box = bounds(rects)
    axes = box if centre is None else about_line(box, centre)
    left, top = side_weights(rects, axes)
    seen = looks([boxed(rect) for rect in (*rects, *inside)], Gaps(gap_across, gap_down), centre)
    return Score(
        total=min(1.0, max(0.0, BEST - seen.cost)),
        balance=1 - (abs(left) + abs(top)) / 2,
        equilibrium=equilibrium(rects, axes),
        symmetry=symmetry(rects, axes),
        filled=1 - seen.blank,
        mirrored=1 - seen.unlike,
        voids=seen.void,
        left_heavy=left,
        top_heavy=top,
        mass_off=mass_distance(rects, axes),
    )


def about_line(box: Rect, centre: float) -> Rect:
    """The box made wider until the upright line at `centre` is its middle: the `axes` that measures are taken in."""
    half = max(centre - box.x0, box.x1 - centre)
    return Rect(centre - half, box.y0, centre + half, box.y1)


QUANTITIES = 6
"""Of a quarter: how far its parts are across and up, their widths and heights, angles and distances from the middle."""


def side_weights(rects: Iterable[Rect], axes: Rect) -> tuple[float, float]:
    """How much heavier the left side is than the right, and the top than the bottom, each from -1 to 1.

    A side's weight is the sum of area times the distance of its centroid from the axis, frames cut at the axis; the
    difference is over the larger of the two: BM_v and BM_h of Ngo, Teo and Byrne, A mathematical theory of interface
    aesthetics, Visual Mathematics 2(4), 2000, as restated in public code.  Their balance is 1 - (|BM_v| + |BM_h|) / 2.
    """
    x, y = axes.cx, axes.cy
    left = right = top = bottom = 0.0
    for rect in rects:
        left += rect.height * _moment(x - rect.x1, x - rect.x0)
        right += rect.height * _moment(rect.x0 - x, rect.x1 - x)
        bottom += rect.width * _moment(y - rect.y1, y - rect.y0)
        top += rect.width * _moment(rect.y0 - y, rect.y1 - y)
    return _heavier(left, right), _heavier(top, bottom)


def _moment(near: float, far: float) -> float:
    """Length times distance of the middle, of what lies beyond the axis."""
    near, far = max(near, 0.0), max(far, 0.0)
    return (far * far - near * near) / 2


def _heavier(one: float, two: float) -> float:
    most = max(one, two)
    return (one - two) / most if most > 0 else 0.0


def equilibrium(rects: Sequence[Rect], axes: Rect) -> float:
    """1 where the centre of mass is the middle: 1 - (|EM_x| + |EM_y|) / 2 with EM_x = 2 Σ a (x - x_c) / (n b Σ a).

    b is the width (for y, the height) of the axes; Ngo, Teo and Byrne 2000, as for `side_weights`.
    """
    dx, dy = _mass_off(rects, axes)
    count = len(rects)
    return 1 - (abs(2 * dx / (count * axes.width)) + abs(2 * dy / (count * axes.height))) / 2


def mass_distance(rects: Sequence[Rect], axes: Rect) -> float:
    """How far the centre of mass lies from the middle, in per cent of the sides: 100 √((Δx / b)² + (Δy / h)²).

    The distance of Hübner and Fillinger, Comparison of objective measures for predicting perceptual balance and
    visual aesthetic preference, Front. Psychol. 7:335, 2016; the normalisation is our own, for theirs was not read.
    """
    dx, dy = _mass_off(rects, axes)
    return 100 * math.hypot(dx / axes.width, dy / axes.height)


def _mass_off(rects: Sequence[Rect], axes: Rect) -> tuple[float, float]:
    areas = [rect.width * rect.height for rect in rects]
    x = added(area * rect.cx for area, rect in zip(areas, rects, strict=True))
    y = added(area * rect.cy for area, rect in zip(areas, rects, strict=True))
    return x / added(areas) - axes.cx, y / added(areas) - axes.cy


def symmetry(rects: Iterable[Rect], axes: Rect) -> float:
    """1 where all four quarters are alike: 1 less the mean of the vertical, horizontal and radial differences.

    Each difference is the mean of twelve: six quantities (distance across and up, width, height, angle, radius) in two
    pairs of quarters, each over the largest of the four: SYM of Ngo, Teo and Byrne 2000, as restated in public code.
    Our own: frames are cut at the axes, and each part counts by its area, so that a sliver counts as a sliver; the
    angle stands for their slope, which has no bound.
    """
    quarters = [[0.0] * QUANTITIES for _ in range(4)]
    for quarter, area, dx, dy, width, height in _parts(rects, axes.cx, axes.cy):
        angle, radius = math.atan2(dy, dx), math.hypot(dx, dy)
        sums = quarters[quarter]
        for at, quantity in enumerate((dx, dy, width, height, angle, radius)):
            sums[at] += area * quantity
    difference = 0.0
    for upper_left, upper_right, lower_left, lower_right in zip(*quarters, strict=True):
        most = max(upper_left, upper_right, lower_left, lower_right)
        if most > 0:
            sideways = abs(upper_left - upper_right) + abs(lower_left - lower_right)
            upright = abs(upper_left - lower_left) + abs(upper_right - lower_right)
            radial = abs(upper_left - lower_right) + abs(upper_right - lower_left)
            difference += (sideways + upright + radial) / (3 * 2 * QUANTITIES * most)
    return 1 - difference


def _parts(rects: Iterable[Rect], x: float, y: float) -> Iterator[tuple[int, float, float, float, float, float]]:
    """The parts of the frames in each quarter: its number, area, middle's distances from the axes, width and height."""
    for rect in rects:
        across = [(side, near, far) for side, near, far in _spans(x, rect.x0, rect.x1)]
        for up, low, high in _spans(y, rect.y0, rect.y1):
            height = high - low
            for side, near, far in across:
                width = far - near
                yield 2 * (1 - up) + side, width * height, (near + far) / 2, (low + high) / 2, width, height


def _spans(axis: float, start: float, end: float) -> Iterator[tuple[int, float, float]]:
    """The stretch before the axis as (0, near, far) and the one after it as (1, near, far), distances from it."""
    if start < axis:
        yield 0, max(axis - end, 0.0), axis - start
    if end > axis:
        yield 1, max(start - axis, 0.0), end - axis
