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
from templates_gen.tiling.branches import APART, NEAR
from templates_gen.tiling.joins import JOIN_MIN, LEAST_JOIN, grouped
from templates_gen.tiling.minutes import EACH, FIRM, shaky

CROSSED = 3.0
"""mm of a thin box that a join may have beside it: the thickness of an edge that ends at the join or that it crosses.
Our own design."""

SHORT = 12.0
"""Seconds more that a join shorter than `FIRM` counts as, so that there is one only where it saves a sheet.  Our own
design, no source."""

THIN = 0.1
"""What a thin item, a bit of a long line, is worth of a broad one.  Our own design, no source."""

DIGITS = 9
"""Decimals (mm) that cells are rounded to, so that sides that meet are the same number.  Our own design."""

Patch = tuple[float, float, float, float]


class Wanted(Record, frozen=True):
    """What sheets have to hold: every item whole inside one of them, with what their own marks take around it.

    A long line is asked for as many thin items.  `upright` and `level` are thin boxes that no join may run along;
    `sizes` are the width and height of a cell on an upright page and on one on its side.  `cut` where sheets are.
    """

    items: tuple[Patch, ...]
    upright: tuple[Rect, ...]
    level: tuple[Rect, ...]
    sizes: tuple[Size, ...]
    cut: bool = True


class Meets(NamedTuple):
    """How two patches meet: by their numbers, the one to the right or above second, and along how much (mm)."""

    under: int
    over: int
    upright: bool
    length: float


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
    last = -math.inf
    for side in sorted(sides):
        last = last if side - last < TOLERANCE else side
        found[side] = last
    return found


def broad(item: Patch) -> bool:
    """Whether an item is no bit of a long line."""
    return item[2] - item[0] > 1.0 and item[3] - item[1] > 1.0


def pieces(patches: Sequence[Patch]) -> list[int]:
    """For each patch the number of the taped piece it is part of; pieces are counted from 0."""
    pairs = []
    order = sorted(range(len(patches)), key=patches.__getitem__)
    for place, one in enumerate(order):
        _, b0, a1, b1 = patches[one]
        for two in order[place + 1 :]:
            c0, d0, c1, d1 = patches[two]
            if c0 > a1 + TOLERANCE:
                break
            shared = min(b1, d1) - max(b0, d0)
            if (shared >= JOIN_MIN - TOLERANCE and abs(c0 - a1) < TOLERANCE) or (
                abs(shared) < TOLERANCE and min(a1, c1) - c0 >= JOIN_MIN - TOLERANCE
            ):
                pairs.append((one, two))
    return grouped(len(patches), pairs)


class Ground:
    """What is wanted of a wall, with what was found out about patches so far."""

    def __init__(self, wanted: Wanted) -> None:
        self.wanted = wanted
        self.items = sorted(wanted.items)
        self._lefts = [item[0] for item in self.items]
        self._worth = [1.0 if broad(item) else THIN for item in self.items]
        self._held: dict[Patch, frozenset[int]] = {}
        self._along: dict[tuple[bool, float, float, float], bool] = {}

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

    def joins(self, patches: Sequence[Patch]) -> tuple[list[Meets], int] | None:
        """Every join and how many pairs lie near each other without a good one; None where two lie on each other or a
        join runs along what it may not."""
        found: list[Meets] = []
        near = 0
        order = sorted(range(len(patches)), key=patches.__getitem__)
        for place, one in enumerate(order):
            first = patches[one]
            for two in order[place + 1 :]:
                second = patches[two]
                if second[0] - first[2] >= APART:
                    break
                upward = max(first[1], second[1]) - min(first[3], second[3])
                if upward >= APART:
                    continue
                met = self._met(first, second, upward)
                if met is None:
                    return None
                upright, length, swapped = met
                if length >= LEAST_JOIN:
                    found.append(Meets(two, one, upright, length) if swapped else Meets(one, two, upright, length))
                near += length < JOIN_MIN - TOLERANCE
        return found, near

    def _met(self, one: Patch, two: Patch, upward: float) -> tuple[bool, float, bool] | None:
        """Whether two patches near each other, the first no farther right, meet at an upright side, along how much, and
        whether the first is the upper one; None where they may not lie so."""
        across = two[0] - one[2]
        if across >= TOLERANCE or upward >= TOLERANCE or (across > -TOLERANCE and upward > -TOLERANCE):
            return False, 0.0, False
        if across > -TOLERANCE:
            low, high = max(one[1], two[1]), min(one[3], two[3])
            return None if self.runs_along(True, one[2], low, high) else (True, high - low, False)
        if upward > -TOLERANCE:
            low, high, above = two[0], min(one[2], two[2]), one[1] > two[1]
            at = one[1] if above else one[3]
            return None if self.runs_along(False, at, low, high) else (False, high - low, above)
        return None

    def short_joins(self, patches: Sequence[Patch]) -> int:
        """How many joins hold no sheet firmly."""
        return sum(meet.length < FIRM - TOLERANCE for meet in (self.joins(patches) or ((), 0))[0])

    def seconds(self, patches: Sequence[Patch]) -> float | None:
        """What they take, with a little for joins that are short and paper that lies near other paper; None where they
        do not make one piece."""
        met = self.joins(patches)
        if met is None:
            return None
        found, near = met
        firm = [(one, two) for one, two, _, length in found if length >= JOIN_MIN - TOLERANCE]
        if max(grouped(len(patches), firm), default=0) > 0:
            return None
        cuts = len({(over, upright) for _, over, upright, _ in found}) if self.wanted.cut else 0
        weak = sum(shaky(length) + (SHORT if length < FIRM - TOLERANCE else 0.0) for *_, length in found)
        return EACH.sheet * len(patches) + EACH.join * len(found) + EACH.cut * cuts + weak + NEAR * near

    def worth(self, patch: Patch, missing: set[int]) -> float:
        """What holding these items is worth: one for what is broad, and for thin ones by their share of a sheet."""
        return sum(self._worth[number] for number in self.held(patch) & missing)
