"""Where patches grow to: what is missing, how far away that is, and how many sheets it takes at the least."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence

from templates_gen.base.adding import added
from templates_gen.base.geometry import TOLERANCE, Size
from templates_gen.tiling.joins import JOIN_MIN
from templates_gen.tiling.patches import Patch

Distances = Callable[[Iterable[Patch], Patch], list[float]]
"""How far each of some patches is from a target."""


class Near:
    """How far a piece of patches is from one target and another, kept up to date as the piece grows."""

    def __init__(self, distances: Distances) -> None:
        self._distances = distances
        self._piece: list[Patch] = []
        self._known: dict[Patch, tuple[int, float]] = {}  # how many of the piece are looked at, and the least so far

    def of(self, piece: Sequence[Patch]) -> None:
        """From now on these are the piece."""
        new = set(piece).difference(self._piece)
        if len(self._piece) + len(new) == len(piece):
            self._piece += new
        else:
            self._piece, self._known = list(piece), {}

    def to(self, target: Patch) -> float:
        """How far the nearest of the piece is."""
        seen, least = self._known.get(target, (0, math.inf))
        if seen < len(self._piece):
            least = min(least, min(self._distances(self._piece[seen:], target)))
            self._known[target] = len(self._piece), least
        return least


class Paces:
    """Distances counted in sheets of two sizes, upright and on their sides."""

    def __init__(self, sizes: Sequence[Size]) -> None:
        self.long = max(max(size) for size in sizes)
        self._both = added(sizes[0]) - JOIN_MIN
        self.rounding = 2.0 * TOLERANCE / self._both

    def steps(self, patches: Iterable[Patch], item: Patch) -> list[float]:
        """About how many sheets it takes from each of the patches until an item is held."""
        x0, y0, x1, y1 = item
        long, both, found = self.long, self._both, []
        for a0, b0, a1, b1 in patches:  # plain comparisons, for it is asked very often
            across = a0 - x0 if a0 - x0 > x1 - a1 else x1 - a1
            upward = b0 - y0 if b0 - y0 > y1 - b1 else y1 - b1
            across = across if across > 0.0 else 0.0
            upward = upward if upward > 0.0 else 0.0
            far = (across if across > upward else upward) / long
            aslant = (across + upward) / both
            found.append(far if far > aslant else aslant)
        return found

    def gaps(self, patches: Iterable[Patch], other: Patch) -> list[float]:
        """About how many sheets there are between each of the patches and another."""
        return self.steps(patches, (*other[2:], *other[:2]))


def least_sheets(items: Sequence[Patch], sizes: Sequence[Size], most: float) -> int:
    """A number of sheets that it takes at the least to hold all these, or one above `most`: so many items of which no
    two fit on one sheet."""
    (wide, high), (wide_lying, high_lying) = ((width + TOLERANCE, height + TOLERANCE) for width, height in sizes)
    alone: list[Patch] = []
    for item in items:
        x0, y0, x1, y1 = item
        for a0, b0, a1, b1 in alone:
            across = (a1 if a1 > x1 else x1) - (a0 if a0 < x0 else x0)
            upward = (b1 if b1 > y1 else y1) - (b0 if b0 < y0 else y0)
            if (across <= wide and upward <= high) or (across <= wide_lying and upward <= high_lying):
                break
        else:
            alone.append(item)
            if len(alone) > most:
                break
    return len(alone)
