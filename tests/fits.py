"""Least-squares fits between two sets of points, for what was measured on paper: a similarity (Helmert, four
parameters) and an affine map.

Both are for points measured in any one unit; residuals are fitted minus given points, in the unit of the given ones.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from templates_gen.base.record import Record

Point = tuple[float, float]

LEAST_SPREAD = 1e-12
"""Of the squared spread of the points: less than this, across a line, is rounding.  Common practice, no source."""


class Similarity(Record, frozen=True):
    """`X = a·x - b·y + tx`, `Y = b·x + a·y + ty`: turned, scaled and moved, never mirrored.

    `residuals` are fitted minus given points; `deviation` is the standard deviation of unit weight, S0.
    """

    a: float
    b: float
    tx: float
    ty: float
    residuals: tuple[Point, ...]
    deviation: float

    @property
    def scale(self) -> float:
        return math.hypot(self.a, self.b)

    @property
    def rotation(self) -> float:
        """The turn in degrees, counterclockwise positive, from -180 to 180."""
        return math.degrees(math.atan2(self.b, self.a))

    def at(self, x: float, y: float) -> Point:
        """Where the fit brings a point."""
        return self.a * x - self.b * y + self.tx, self.b * x + self.a * y + self.ty


class Affine(Record, frozen=True):
    """`X = a·x + c·y + e`, `Y = b·x + d·y + f`, the letters as in a PDF matrix (ISO 32000-1, 8.3.3)."""

    a: float
    b: float
    c: float
    d: float
    e: float
    f: float
    residuals: tuple[Point, ...]
    deviation: float

    def at(self, x: float, y: float) -> Point:
        """Where the fit brings a point."""
        return self.a * x + self.c * y + self.e, self.b * x + self.d * y + self.f


def fit_similarity(points: Sequence[Point], onto: Sequence[Point]) -> Similarity:
    """The similarity that brings `points` onto `onto` with the least sum of squared residuals.

    Closed form with both sets about their means (Ghilani & Wolf, Adjustment Computations, two-dimensional conformal
    coordinate transformation).  Raises ValueError for fewer than two different points, or lists of different length.
    """
    (x0, y0), (u0, v0) = _means(points, onto, least=2)
    pairs = [(x - x0, y - y0, u - u0, v - v0) for (x, y), (u, v) in zip(points, onto, strict=True)]
    spread = math.fsum(x * x + y * y for x, y, _, _ in pairs)
    if spread == 0:
        raise ValueError("all points are one, expected two different ones at least")
    a = math.fsum(x * u + y * v for x, y, u, v in pairs) / spread
    b = math.fsum(x * v - y * u for x, y, u, v in pairs) / spread
    fit = Similarity(a, b, u0 - a * x0 + b * y0, v0 - b * x0 - a * y0, (), 0.0)
    residuals = _residuals([fit.at(*point) for point in points], onto)
    return Similarity(fit.a, fit.b, fit.tx, fit.ty, residuals, _deviation(residuals, unknown=4))


def fit_affine(points: Sequence[Point], onto: Sequence[Point]) -> Affine:
    """The affine map that brings `points` onto `onto` with the least sum of squared residuals.

    Two independent fits of three parameters, one for X and one for Y.  Raises ValueError for fewer than three points,
    points all in one line, or lists of different length.
    """
    (x0, y0), (u0, v0) = _means(points, onto, least=3)
    pairs = [(x - x0, y - y0, u - u0, v - v0) for (x, y), (u, v) in zip(points, onto, strict=True)]
    xx, yy = math.fsum(x * x for x, *_ in pairs), math.fsum(y * y for _, y, *_ in pairs)
    xy = math.fsum(x * y for x, y, *_ in pairs)
    det = xx * yy - xy * xy
    if det <= LEAST_SPREAD * (xx + yy) ** 2:
        raise ValueError("all points are in one line, expected three corners of a triangle at least")
    xu, yu = math.fsum(x * u for x, _, u, _ in pairs), math.fsum(y * u for _, y, u, _ in pairs)
    xv, yv = math.fsum(x * v for x, _, _, v in pairs), math.fsum(y * v for _, y, _, v in pairs)
    a, c = (xu * yy - yu * xy) / det, (yu * xx - xu * xy) / det
    b, d = (xv * yy - yv * xy) / det, (yv * xx - xv * xy) / det
    fit = Affine(a, b, c, d, u0 - a * x0 - c * y0, v0 - b * x0 - d * y0, (), 0.0)
    residuals = _residuals([fit.at(*point) for point in points], onto)
    return Affine(a, b, c, d, fit.e, fit.f, residuals, _deviation(residuals, unknown=6))


def _means(points: Sequence[Point], onto: Sequence[Point], least: int) -> tuple[Point, Point]:
    if len(points) != len(onto):
        raise ValueError(f"{len(points)} points for {len(onto)}, expected as many")
    if len(points) < least:
        raise ValueError(f"{len(points)} points, expected {least} at least")
    return _mean(points), _mean(onto)


def _mean(points: Sequence[Point]) -> Point:
    return math.fsum(x for x, _ in points) / len(points), math.fsum(y for _, y in points) / len(points)


def _residuals(fitted: Sequence[Point], given: Sequence[Point]) -> tuple[Point, ...]:
    return tuple((x - u, y - v) for (x, y), (u, v) in zip(fitted, given, strict=True))


def _deviation(residuals: Sequence[Point], unknown: int) -> float:
    """S0: the root of the sum of squares over what is measured beyond need; 0 where nothing is."""
    beyond = 2 * len(residuals) - unknown
    return math.sqrt(math.fsum(x * x + y * y for x, y in residuals) / beyond) if beyond > 0 else 0.0
