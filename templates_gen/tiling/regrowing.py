"""Patches grown anew from those that are there until they hold everything and make one piece.

The next patch is always one that touches what is there and leads to what is nearest of what is missing, laid so that
it holds as much more as it can; a little chance makes every growth another.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from random import Random

from templates_gen.base.geometry import TOLERANCE
from templates_gen.tiling.joins import JOIN_MIN, LEAST_JOIN
from templates_gen.tiling.minutes import EACH, FIRM
from templates_gen.tiling.patches import DIGITS, Ground, Patch, broad, pieces

GOALS = 24
"""Missing items among which the nearest is looked for; of more, so many by chance.  Our own design, no source."""

TAPED = JOIN_MIN - TOLERANCE
"""mm that two patches have to share to be taped to each other, but for rounding."""

FROM = 3
"""Patches that the next one may touch: the nearest to where it leads.  Our own design, no source."""

CHANCE, CHANCE_NEAR, CHANCE_RANK = 0.25, 0.1, 12.0
"""By how much, as shares, distances to what is missing are varied by chance, and those from there to what is near; and
seconds, the most by which a patch has to be better than the best so far.  Our own design, no source."""

HOLDS, LEFT = 28.0, 45.0
"""Seconds that an item more is worth, and that a sheet still missing counts as.  Our own design, no source."""

PART = 0.3
"""Of a sheet, that a goal not yet met or held counts as at the least.  Our own design, no source."""

LONGER, LONG_JOIN = 0.03, 190.0
"""Seconds that a mm of a patch's longest join is worth, and the mm that count at the most.  Our own design."""

BESIDE = 1.6
"""Times a sheet's longer side: how far from a patch items count.  Our own design, no source."""

MOST_ALIGNED = 6
"""Items by which a patch is tried to be aligned.  Our own design, no source."""


def cut_back(patch: Patch, there: Sequence[Patch]) -> Patch | None:
    """The patch without what lies on others, cut where least is lost; None where too little is left."""
    x0, y0, x1, y1 = patch
    for a0, b0, a1, b1 in there:
        if x0 < a1 - TOLERANCE and a0 < x1 - TOLERANCE and y0 < b1 - TOLERANCE and b0 < y1 - TOLERANCE:
            lost = min((x1 - a0, 0), (a1 - x0, 1), (y1 - b0, 2), (b1 - y0, 3))[1]
            if lost == 0:
                x1 = a0
            elif lost == 1:
                x0 = a1
            elif lost == 2:
                y1 = b0
            else:
                y0 = b1
            if x1 - x0 < JOIN_MIN or y1 - y0 < JOIN_MIN:
                return None
    return x0, y0, x1, y1


class Growing:
    """Growth on one ground, with one source of chance."""

    def __init__(self, ground: Ground, random: Random) -> None:
        self.ground, self.random = ground, random
        sizes = ground.wanted.sizes
        self._long = max(max(size) for size in sizes)
        self._both = sum(sizes[0]) - JOIN_MIN

    def grow(self, kept: Sequence[Patch], most: int) -> list[Patch] | None:
        """The kept patches and new ones, at most so many, that hold everything and make one piece; None where that was
        not found."""
        patches, ground = list(kept), self.ground
        missing = set(range(len(ground.items))).difference(*map(ground.held, patches))
        names = pieces(patches)
        while missing or max(names, default=0) > 0:
            new = self._next(patches, names, missing) if len(patches) < len(kept) + most else None
            if new is None:
                return None
            met = {name for patch, name in zip(patches, names, strict=True) if _shared(new, patch) >= TAPED}
            order = {name: at for at, name in enumerate(sorted(set(names) - met), 1)}
            patches.append(new)
            names = [0 if name in met else order[name] for name in (*names, *list(met)[:1])]
            missing -= ground.held(new)
        return patches

    def _steps(self, across: float, upward: float) -> float:
        """About how many sheets it takes for so many mm."""
        across, upward = max(0.0, across), max(0.0, upward)
        return max(across / self._long, upward / self._long, (across + upward) / self._both)

    def _to_hold(self, patch: Patch, item: Patch) -> float:
        """About how many sheets it takes from a patch until an item is held whole."""
        return self._steps(max(item[2] - patch[2], patch[0] - item[0]), max(item[3] - patch[3], patch[1] - item[1]))

    def _to_meet(self, patch: Patch, other: Patch) -> float:
        """About how many sheets it takes from a patch until it meets another."""
        return self._steps(max(other[0] - patch[2], patch[0] - other[2]), max(other[1] - patch[3], patch[1] - other[3]))

    def _next(self, patches: Sequence[Patch], names: Sequence[int], missing: set[int]) -> Patch | None:
        """The best next patch from the largest piece towards what is nearest of what is missing."""
        ground, chance = self.ground, self.random.random
        largest = max(set(names), key=lambda name: (names.count(name), -name))
        main = [patch for patch, name in zip(patches, names, strict=True) if name == largest]
        others = [patch for patch, name in zip(patches, names, strict=True) if name != largest]
        items = [ground.items[number] for number in sorted(missing)]
        goals = items if len(items) <= GOALS else [items[int(chance() * len(items))] for _ in range(GOALS)]
        best, goal, loose = math.inf, None, False
        for target in (*goals, *others):
            apart = target in others
            for patch in main:
                steps = (self._to_meet if apart else self._to_hold)(patch, target) * (1.0 + CHANCE * (2 * chance() - 1))
                if steps < best:
                    best, goal, loose = steps, target, apart
        if goal is None:
            return None
        off = CHANCE_NEAR
        near = sorted(main, key=lambda patch: self._to_meet(patch, goal) * (1 - off + 2 * off * chance()))[:FROM]
        reach = BESIDE * self._long
        local = [item for item in items if abs(item[0] - goal[0]) < reach and abs(item[1] - goal[1]) < reach]
        around = [
            p for p in patches
            if abs(p[0] - goal[0]) < 2 * reach and abs(p[1] - goal[1]) < 2 * reach
        ]  # fmt: skip
        top, found = math.inf, None
        seen: set[Patch] = set()
        for patch in near:
            for tried in self._beside(patch, goal, local):
                if tried in seen:
                    continue
                seen.add(tried)
                new = cut_back(tried, around)
                if new is None:
                    continue
                rank = self._rank(new, goal, loose, missing, main, around)
                if rank is not None and rank + CHANCE_RANK * chance() < top:
                    top, found = rank, new
        return found

    def _some(self, items: Sequence[Patch]) -> list[Patch]:
        """A few of the items, mostly broad ones."""
        found = [item for item in items if broad(item)]
        thin = [item for item in items if not broad(item)]
        found += [thin[int(self.random.random() * len(thin))] for _ in range(2)] if thin else []
        while len(found) > MOST_ALIGNED:
            found.pop(int(self.random.random() * len(found)))
        return found

    def _rank(
        self, new: Patch, goal: Patch, loose: bool, missing: set[int], main: Sequence[Patch], around: Sequence[Patch]
    ) -> float | None:
        """How good a new patch is, in seconds; None where it would hang on nothing."""
        met, held_by_main, longest = 0, False, 0.0
        goal_met = False
        for patch in around:
            length = _shared(new, patch)
            if length >= LEAST_JOIN:
                met += 1
                longest = max(longest, length)
                if length >= TAPED:
                    held_by_main = held_by_main or patch in main
                    goal_met = goal_met or patch == goal
        if not held_by_main:
            return None
        if loose:
            rest = self._to_meet(new, goal) + (0.0 if goal_met else PART)
        else:
            holds = new[0] <= goal[0] + TOLERANCE and new[1] <= goal[1] + TOLERANCE
            holds = holds and new[2] >= goal[2] - TOLERANCE and new[3] >= goal[3] - TOLERANCE
            rest = 0.0 if holds else max(PART, self._to_hold(new, goal))
        more = self.ground.worth(new, missing)
        return LEFT * rest - HOLDS * more + EACH.join * met - LONGER * min(longest, LONG_JOIN)

    def _beside(self, patch: Patch, goal: Patch, local: Sequence[Patch]) -> Iterator[Patch]:
        """Full patches that touch one on the sides towards a goal, aligned with what is missing there."""
        some = self._some(local)
        for width, height in self.ground.wanted.sizes:
            yield from _at_side(patch, goal, some, width, height)
            over = _at_side(_turned(patch), _turned(goal), [*map(_turned, some)], height, width)
            yield from map(_turned, over)


def _at_side(patch: Patch, goal: Patch, some: Sequence[Patch], width: float, height: float) -> Iterator[Patch]:
    """Patches of this size left or right of one, by where the goal lies, that meet it along `FIRM` mm or more."""
    low, high = patch[1] + FIRM - height, patch[3] - FIRM
    if low > high:
        return
    places = {low, high, patch[1], patch[3] - height, goal[1], goal[3] - height}
    places |= {place for item in some for place in (item[1], item[3] - height)}
    right = goal[0] + goal[2] > patch[0] + patch[2]
    x0, x1 = (patch[2], patch[2] + width) if right else (patch[0] - width, patch[0])
    for y in sorted({min(max(place, low), high) for place in places}):
        yield round(x0, DIGITS), round(y, DIGITS), round(x1, DIGITS), round(y + height, DIGITS)


def _turned(patch: Patch) -> Patch:
    """The patch with its axes exchanged."""
    x0, y0, x1, y1 = patch
    return y0, x0, y1, x1


def _shared(one: Patch, two: Patch) -> float:
    """Along how much two patches meet that do not lie on each other (mm)."""
    if abs(one[2] - two[0]) < TOLERANCE or abs(two[2] - one[0]) < TOLERANCE:
        return min(one[3], two[3]) - max(one[1], two[1])
    if abs(one[3] - two[1]) < TOLERANCE or abs(two[3] - one[1]) < TOLERANCE:
        return min(one[2], two[2]) - max(one[0], two[0])
    return 0.0
