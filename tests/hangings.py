"""Hanging frames on nails that are not where they should be: where the corners come to, by mechanics alone.

Nothing here knows how the program works its corrections out.  Points are complex numbers, x + iy, in mm on the wall; in
a frame they count from the middle of its top edge.  The centre of mass is taken at the frame's middle.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True)
class Hung:
    """A frame on the wall: the middle of its top edge, and its turn (radians, positive with the right end higher)."""

    top: complex
    turn: float

    def at(self, point: complex) -> complex:
        """Where a point of the frame is on the wall."""
        return self.top + cmath.rect(1.0, self.turn) * point


def swinging(mass: complex, pivot: complex, nail: complex) -> Hung:
    """A frame free to turn about a point of its own that is on the nail: its centre of mass comes to hang below."""
    turn = -math.pi / 2 - cmath.phase(mass - pivot)
    return Hung(nail - cmath.rect(1.0, turn) * pivot, turn)


def on_one_hook(height: float, separation: float, depth: float, length: float, slip: float, hook: complex) -> Hung:
    """A wire of this length on one hook, `slip` mm more of it on the left: the two parts make a triangle with the
    rings, `separation` apart and `depth` under the top edge."""
    left, right = length / 2 + slip, length / 2 - slip
    # the corner of a triangle with these sides, from the left ring (law of cosines)
    along = (left**2 - right**2 + separation**2) / (2 * separation)
    pivot = complex(-separation / 2 + along, -depth + math.sqrt(left**2 - along**2))
    return swinging(complex(0, -height / 2), pivot, hook)


def on_two_hooks(
    height: float, separation: float, depth: float, length: float, slip: float, hooks: tuple[complex, complex]
) -> Hung:
    """A wire that friction holds on two hooks, `slip` mm more of it on the left: the lowest its centre of mass gets.

    Each ring is on a circle about its hook; for every turn of the frame there is one place for both.
    """
    free = length - abs(hooks[1] - hooks[0])
    left, right = free / 2 + slip, free / 2 - slip

    def hung(turn: float) -> Hung:
        ring = cmath.rect(separation / 2, turn)
        one, two = hooks[0] + ring, hooks[1] - ring  # where the middle between the rings would be the circles' centres
        apart = abs(two - one)
        along = (left**2 - right**2 + apart**2) / (2 * apart)
        across = math.sqrt(max(0.0, left**2 - along**2))
        middle = one + (two - one) / apart * complex(along, across)  # the lower place, seen from right to left
        return Hung(middle + cmath.rect(depth, turn + math.pi / 2), turn)

    return hung(least(lambda turn: hung(turn).at(complex(0, -height / 2)).imag, -0.12, 0.12))


def least(of: Callable[[float], float], low: float, high: float) -> float:
    """Where a function with one lowest place has it (golden section, a textbook method)."""
    part = (math.sqrt(5) - 1) / 2
    while high - low > 1e-7:
        one, two = high - part * (high - low), low + part * (high - low)
        low, high = (low, two) if of(one) < of(two) else (one, high)
    return (low + high) / 2


def levelled(hung: Callable[[float], Hung], reach: float) -> Hung:
    """A frame on a wire as a person leaves it who slides the wire until it is level."""
    low, high = -reach, reach
    rising = hung(high).turn > hung(low).turn
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (low, middle) if (hung(middle).turn > 0) == rising else (middle, high)
    return hung((low + high) / 2)


def on_two_points(points: tuple[complex, complex], nails: tuple[complex, complex]) -> Hung:
    """A frame that bears at two points of its own on two nails; what these are farther apart is shared by both."""
    turn = cmath.phase(nails[1] - nails[0]) - cmath.phase(points[1] - points[0])
    middle = (points[0] + points[1]) / 2
    return Hung((nails[0] + nails[1]) / 2 - cmath.rect(1.0, turn) * middle, turn)
