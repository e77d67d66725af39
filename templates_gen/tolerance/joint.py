"""What may be promised of many measures at once: all of them within their limits in 95 of 100 cases.

Every measure is a weighed sum of the same independent normal errors.  The limits are given but for a common factor k,
and k is what makes all measures keep within k times their limits together in 95 % of cases.  It is simulated: the
measures nearest to their limits, `MOST_DRAWN` at most, are drawn together from their covariances (by Cholesky's root).
The number of draws is counted and nothing is left to chance, so a job has the same figures on every machine.  Two
things save draws.  How far a draw is from the middle says nothing of its direction, so every direction is tried with
every distance that was drawn.  And draws are spread evenly, by multiples of the roots of primes (R. D. Richtmyer, 1951,
from memory).

Of what is not drawn each is taken by itself, and the probabilities are multiplied.  That is a bound: measures of a
common normal distribution keep within limits together no less often (T. Royen, "A simple proof of the Gaussian
correlation conjecture", 2014; Z. Šidák, 1967, for limits of this kind; both from memory).
"""

from __future__ import annotations

import math
from bisect import bisect_right
from cmath import rect
from collections.abc import Mapping, Sequence
from functools import cache
from math import log, sqrt, tau
from operator import mul
from typing import Any

from templates_gen.base.adding import added

PROBABILITY = 0.95

DRAWN = 10_000
"""Normal errors that are drawn in all, for a hundredth of a second.  The probability is then 0.4 % off, as an sd, and
0.8 % at most (of 2 to 24 measures that err each by itself, our own trial).  Our own choice."""

FIRST = 1000
"""The first multiple that is taken: of roots near each other the first multiples lie near each other, too."""

MOST_DRAWN = 24
"""Measures that are drawn together.  Our own choice."""

INDEPENDENT = 1e-9
"""A smaller share of a measure's variance than this is rounding.  Our own design."""

FARTHEST = 9.0
"""No factor is larger than this: of a million measures one in a million jobs goes beyond six deviations.  Our own."""

Weights = Mapping[Any, float]
"""By error, how much a measure changes with one standard deviation of it (mm)."""

Numbered = Mapping[int, float]
"""The same, with numbers for the errors."""

NEAR_ENOUGH = 1e-3
"""How near the factor is found, as a share of the largest limit.  Our own design, no source."""


def joint_factor(measures: Sequence[Weights], limits: Sequence[float], more: float = 0.0) -> float:
    """The common factor of the limits (mm) within which all measures keep together; 0 where nothing errs at all.

    `more` is how many times as many measures of the same kind there are that were not worked out.
    """
    scaled = []
    for weights, limit in zip(measures, limits, strict=True):
        sd = math.sqrt(added(weight * weight for weight in weights.values()))
        if sd > 0.0:
            scaled.append((sd / limit, {error: weight / limit for error, weight in weights.items()}))
    if not scaled:
        return 0.0
    scaled.sort(key=lambda item: -item[0])
    place: dict[Any, int] = {}  # numbers are looked up more quickly than what they stand for
    numbered = [
        {place.setdefault(error, len(place)): weight for error, weight in weights.items()}
        for _, weights in scaled[:MOST_DRAWN]
    ]
    directions, distances = _drawn(numbered)
    ratios = [ratio for ratio, _ in scaled]

    def kept(factor: float) -> float:
        """How often all keep within `factor` times their limits."""
        alone = [math.erf(factor / (ratio * math.sqrt(2))) for ratio in ratios]
        together = sum([bisect_right(distances, factor / largest) for largest in directions]) / len(distances) ** 2
        return together * math.prod(alone[MOST_DRAWN:]) * (math.prod(alone) ** more if more else 1.0)

    low, high = 0.0, FARTHEST * ratios[0]
    while high - low > NEAR_ENOUGH * ratios[0]:
        middle = (low + high) / 2
        low, high = (low, middle) if kept(middle) >= PROBABILITY else (middle, high)
    return high


def _drawn(measures: Sequence[Numbered]) -> tuple[list[float], list[float]]:
    """For every draw the largest of the measures at a distance of 1 from the middle; and all distances, least first.

    Two draws are worked out at once: the real and the imaginary parts of complex errors (Box and Muller, a textbook
    method).
    """
    rows = [[complex(weight) for weight in row] for row in _root(measures)]
    directions, distances = [], []
    for errors, away in _errors(max(map(len, rows))):
        found = [added(map(mul, row, errors)) for row in rows]
        for sums, distance in (([one.real for one in found], away[0]), ([one.imag for one in found], away[1])):
            distances.append(distance)
            directions.append(max(max(sums), -min(sums)) / distance)
    return directions, sorted(distances)


@cache
def _errors(count: int) -> list[tuple[list[complex], tuple[float, float]]]:
    """All draws of so many errors, two at once, and how far each of the two is from the middle."""
    roots = [math.sqrt(prime) for prime in _primes(2 * count)]
    ways = list(zip(roots[:count], roots[count:], strict=True))
    drawn = []
    for draw in range(FIRST, FIRST + DRAWN // count // 2):
        errors = [rect(sqrt(-2.0 * log(1.0 - draw * far % 1.0)), tau * (draw * way % 1.0)) for far, way in ways]
        away = math.hypot(*[error.real for error in errors]), math.hypot(*[error.imag for error in errors])
        drawn.append((errors, away))
    return drawn


def _primes(count: int) -> list[int]:
    """The first prime numbers."""
    found: list[int] = []
    number = 2
    while len(found) < count:
        if all(number % prime for prime in found):
            found.append(number)
        number += 1
    return found


def _root(measures: Sequence[Numbered]) -> list[list[float]]:
    """The lower triangular root of their covariances, row by row (Cholesky); what earlier ones determine adds nothing
    new, and has no column of its own."""
    rows: list[list[float]] = []
    own: list[int] = []
    for number, weights in enumerate(measures):
        row: list[float] = []
        for column, other in enumerate(own):
            left = _covariance(weights, measures[other]) - added(map(mul, row, rows[other]))
            row.append(left / rows[other][column])
        whole = _covariance(weights, weights)
        left = whole - added(map(mul, row, row))
        if left > INDEPENDENT * whole:
            row.append(math.sqrt(left))
            own.append(number)
        rows.append(row)
    return rows


def _covariance(one: Numbered, two: Numbered) -> float:
    fewer, more = (one, two) if len(one) <= len(two) else (two, one)
    return added([weight * other for error, weight in fewer.items() if (other := more.get(error))])
