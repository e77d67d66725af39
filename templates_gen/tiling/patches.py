"""A wall's sheets as loose rectangles: what they hold, how they meet, and what that takes a person.

Here a cell is a plain tuple (left, bottom, right, top in mm), for a search looks at very many of them.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from templates_gen.base.geometry import TOLERANCE, Rect, Size
from templates_gen.base.record import Record, replace

CROSSED = 3.0
"""mm of a thin box that a join may have beside it: the thickness of an edge that ends at the join or that it crosses.
Our own design."""

THIN = 0.1
"""What a thin item, a bit of a long line, is worth of a broad one.  Our own design, no source."""

DIGITS = 7
"""Decimals (mm) that cells are rounded to, so that sides that meet are the same number.  Our own design."""

Patch = tuple[float, float, float, float]


class Wanted(Record, frozen=True):
    """What sheets have to hold: every item whole inside one of them, with what their own marks take around it.

    A long line is asked for as many thin items.  `upright` and `level` are thin boxes that no join may run along;
    `sizes` are the width and height of a cell on an upright page and on one on its side; no cell that is put down is
    narrower or lower than `least`.  `cut` where sheets are.
    """

    items: tuple[Patch, ...]
    upright: tuple[Rect, ...]
    level: tuple[Rect, ...]
    sizes: tuple[Size, ...]
    cut: bool = True
    least: float = 0.0


class Meeting(NamedTuple):
    """How a patch meets another: at an upright side or a level one, along how much (mm; 0 where it only lies near), and
    whether it is the one to the right or above, which is cut and laid over the other."""

    upright: bool
    length: float
    over: bool


NOT_KNOWN = Meeting(False, -1.0, False)
"""Stands for a meeting that was not looked at yet."""


def rounded(rect: Rect) -> Patch:
    """The rectangle as a patch."""
    return round(rect.x0, DIGITS), round(rect.y0, DIGITS), round(rect.x1, DIGITS), round(rect.y1, DIGITS)


def snapped(patches: Sequence[Patch]) -> list[Rect]:
    """The patches as rectangles, with sides that differ by a rounding made one, so that what meets shares its side."""
    across = _one_of_near({side for patch in patches for side in patch[::2]})
    upward = _one_of_near({side for patch in patches for side in patch[1::2]})
    return [Rect(across[x0], upward[y0], across[x1], upward[y1]) for x0, y0, x1, y1 in patches]


def _one_of_near(sides: set[float]) -> dict[float, float]:
    found: dict[float, float] = {}
    before = first = -math.inf
    for side in sorted(sides):
        first = first if side - before < TOLERANCE else side
        found[side], before = first, side
    return found


def broad(item: Patch) -> bool:
    """Whether an item is no bit of a long line."""
    return item[2] - item[0] > 1.0 and item[3] - item[1] > 1.0


class Ground:
    """What is wanted of a wall, with what was found out about patches so far."""

    def __init__(self, wanted: Wanted) -> None:
        self.wanted = wanted
        self.items = sorted(wanted.items)
        self._lefts = [item[0] for item in self.items]
        self._widest = max((item[2] - item[0] for item in self.items), default=0.0) + TOLERANCE
        self.worth = [1.0 if broad(item) else THIN for item in self.items]
        self._held: dict[Patch, frozenset[int]] = {}
        self._crossed: dict[Patch, bool] = {}
        self._along: dict[tuple[bool, float, float, float], bool] = {}
        self._meetings: dict[tuple[Patch, Patch], Meeting | None] = {}

    def roomy(self, patch: Patch) -> bool:
        """Whether a patch is no narrower and no lower than any that is put down."""
        return min(patch[2] - patch[0], patch[3] - patch[1]) >= self.wanted.least - TOLERANCE

    def held(self, patch: Patch) -> frozenset[int]:
        """The numbers of the items that a patch holds."""
        found = self._held.get(patch)
        if found is None:
            x0, y0, x1, y1 = (
                patch[0] - TOLERANCE, patch[1] - TOLERANCE, patch[2] + TOLERANCE, patch[3] + TOLERANCE,
            )  # fmt: skip
            first, last = bisect_left(self._lefts, x0), bisect_right(self._lefts, x1)
            found = frozenset(
                number
                for number in range(first, last)
                if (item := self.items[number])[1] >= y0 and item[2] <= x1 and item[3] <= y1
            )
            self._held[patch] = found
        return found

    def crosses(self, patch: Patch) -> bool:
        """Whether a side of a patch runs through an item, which no other patch beside it could hold whole then."""
        found = self._crossed.get(patch)
        if found is None:
            x0, y0, x1, y1 = (
                patch[0] + TOLERANCE, patch[1] + TOLERANCE, patch[2] - TOLERANCE, patch[3] - TOLERANCE,
            )  # fmt: skip
            held, first = self.held(patch), bisect_left(self._lefts, x0 - self._widest)
            near = enumerate(self.items[first : bisect_left(self._lefts, x1)], first)
            found = self._crossed[patch] = any(
                [a1 > x0 and b0 < y1 and b1 > y0 and number not in held for number, (_, b0, a1, b1) in near]
            )
        return found

    def all_held(self, patches: Iterable[Patch]) -> bool:
        """Whether every item is held."""
        return len(frozenset().union(*map(self.held, patches))) == len(self.items)

    def of_what_is_held(self, patches: Iterable[Patch]) -> Ground:
        """The same ground with no more wanted of long lines than these patches hold."""
        held = frozenset().union(*map(self.held, patches))
        kept = (item for number, item in enumerate(self.items) if number in held or broad(item))
        return Ground(replace(self.wanted, items=tuple(kept)))

    def runs_along(self, upright: bool, at: float, low: float, high: float) -> bool:
        """Whether a join there runs along something that no join may run along."""
        key = upright, at, low, high
        found = self._along.get(key)
        if found is None:
            if upright:
                found = any(
                    b.x0 + TOLERANCE < at < b.x1 - TOLERANCE and min(b.y1, high) - max(b.y0, low) > CROSSED
                    for b in self.wanted.upright
                )
            else:
                found = any(
                    b.y0 + TOLERANCE < at < b.y1 - TOLERANCE and min(b.x1, high) - max(b.x0, low) > CROSSED
                    for b in self.wanted.level
                )
            self._along[key] = found
        return found

    def meeting(self, one: Patch, two: Patch) -> Meeting | None:
        """How two patches near each other meet; None where they may not lie so: on each other, or with a join along
        what no join may run along."""
        known = self._meetings.get((one, two), NOT_KNOWN)
        if known is NOT_KNOWN:
            known = self._met(one, two)
            self._meetings[one, two] = known
        return known

    def _met(self, one: Patch, two: Patch) -> Meeting | None:
        across, upward = max(one[0], two[0]) - min(one[2], two[2]), max(one[1], two[1]) - min(one[3], two[3])
        if across >= TOLERANCE or upward >= TOLERANCE or (across > -TOLERANCE and upward > -TOLERANCE):
            return Meeting(False, 0.0, False)
        upright = across > -TOLERANCE
        if not upright and upward <= -TOLERANCE:
            return None
        at, along, length = (0, 1, -upward) if upright else (1, 0, -across)
        over, upper = one[at] > two[at], max(one, two, key=lambda patch: patch[at])
        low, high = max(one[along], two[along]), min(one[along + 2], two[along + 2])
        if self.wanted.cut:  # right along its side
            low, high = upper[along], upper[along + 2]
        return None if self.runs_along(upright, upper[at], low, high) else Meeting(upright, length, over)
