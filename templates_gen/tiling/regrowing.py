"""Patches grown anew where some were taken out, until all hold everything and make one piece.

The next patch is always one that touches what is there and leads to what is nearest of what is missing, laid so that
it holds as much more as it can; a little chance makes every growth another.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from random import Random

from templates_gen.base.geometry import TOLERANCE
from templates_gen.tiling.beside import beside, cut_back, levelled, shared, within
from templates_gen.tiling.joins import JOIN_MIN, LEAST_JOIN
from templates_gen.tiling.laid import TAPED, Laid
from templates_gen.tiling.minutes import EACH, FIRM
from templates_gen.tiling.patches import Ground, Patch, broad

GOALS = 24
"""Missing items among which the nearest is looked for; of more, so many by chance.  Our own design, no source."""

FROM = 3
"""Patches that the next one may touch: the nearest to where it leads.  Our own design, no source."""

CHANCE, CHANCE_NEAR = 0.25, 0.1
"""By how much, as shares, distances to what is missing are varied by chance, and those from there to what is near.  Our
own design, no source."""

HOLDS, LEFT, LOOSE = 28.0, 45.0, 12.0
"""Seconds that an item more is worth, that a sheet still missing counts as, and that chance adds at the most.  Our own
design, no source."""

PART = 0.3
"""Of a sheet, that a goal not yet met or held counts as at the least.  Our own design, no source."""

LONGER, LONG_JOIN = 0.03, 190.0
"""Seconds that a mm of a patch's longest join is worth, and the mm that count at the most.  Our own design."""

BESIDE = 1.6
"""Times a sheet's longer side: how far from a patch items count.  Our own design, no source."""

MOST_ALIGNED = 6
"""Items by which a patch is tried to be aligned.  Our own design, no source."""

MORE = 2
"""Patches more than were taken out that may be put in their place.  Our own design, no source."""

SPARED = 20.0
"""Seconds that are saved at the end of a growth by what it does not need after all, by about.  Our own design."""


class Growing:
    """Growth on one ground, with one source of chance."""

    def __init__(self, ground: Ground, random: Random) -> None:
        self.ground, self.random = ground, random
        self._sizes = ground.wanted.sizes
        self._long = max(max(size) for size in self._sizes)
        self._both = sum(self._sizes[0]) - JOIN_MIN

    def regrown(self, laid: Laid, out: Sequence[Patch], most: float = math.inf) -> Laid | None:
        """The patches without some neighbouring ones, and new ones in their place, none of them spare; None where that
        was not found, or where it would take more than so many seconds."""
        work = laid.copy()
        for patch in out:
            work.take(patch)
        if not work.meets:
            return None
        reach = BESIDE * self._long
        local = within(
            work.meets, min(p[0] for p in out) - reach, min(p[1] for p in out) - reach,
            max(p[2] for p in out) + reach, max(p[3] for p in out) + reach,
        )  # fmt: skip
        if not self._grown(work, local, len(out) + MORE, most + SPARED):
            return None
        self.pruned(work, local)
        return work

    def _grown(self, work: Laid, local: list[Patch], most: int, seconds: float) -> bool:
        """Whether new patches, at most so many, make one piece that holds everything, and no more seconds than these;
        they are put down and are local from then on."""
        names = work.names()
        for count in range(most + 1):
            missing, loose = work.missing(), len(set(names.values())) > 1
            if not missing and not loose:
                return True
            new = self._next(work, local, names, missing) if count < most else None
            if new is None or work.seconds > seconds:
                return False
            met = {names[other] for other, how in work.meets[new].items() if how.length >= TAPED}
            one = min(met)
            names = {patch: one if name in met else name for patch, name in names.items()}
            names[new] = one
            local.append(new)
        return False

    def pruned(self, work: Laid, local: Sequence[Patch]) -> None:
        """Take away those of some patches that nothing needs, but for braces, in any order."""
        for patch in self.random.sample(local, len(local)):
            if patch not in work.braces and work.spare(patch):
                work.take(patch)

    def braced(self, laid: Laid, patch: Patch) -> Laid | None:
        """One patch more beside this one that joins it to another near it; None where there is no place for one."""
        around = self._around(laid.meets, patch)
        others = [other for other in around if other != patch and shared(patch, other) < LEAST_JOIN]
        if not others:
            return None
        goal = others[int(self.random.random() * len(others))]
        found: list[tuple[float, Patch]] = []
        for tried in beside(patch, goal, (), self._sizes):
            new = cut_back(tried, around)
            if new is not None:
                held = sorted(length for other in around if (length := shared(new, other)) >= LEAST_JOIN)
                if len(held) > 1 and held[-2] >= FIRM:
                    found.append((EACH.join * len(held) - held[-2] / FIRM + LOOSE * self.random.random(), new))
        for _, best in sorted(found):
            work, new = laid.copy(), levelled(best, around)
            if self.ground.roomy(new) and work.put(new):
                work.braces |= {new}
                return work
        return None

    def _steps(self, patches: Iterable[Patch], item: Patch) -> float:
        """About how many sheets it takes from the nearest of the patches until an item is held."""
        x0, y0, x1, y1 = item
        return self._sheets((p[0] - x0, x1 - p[2], p[1] - y0, y1 - p[3]) for p in patches)

    def _gap(self, patches: Iterable[Patch], other: Patch) -> float:
        """About how many sheets there are between the nearest of the patches and another."""
        x0, y0, x1, y1 = other
        return self._sheets((p[0] - x1, x0 - p[2], p[1] - y1, y0 - p[3]) for p in patches)

    def _sheets(self, ways: Iterable[tuple[float, float, float, float]]) -> float:
        """How many sheets the least of these ways takes, each to the left, to the right, down and up."""
        least, long, both = math.inf, self._long, self._both
        for left, right, down, up in ways:  # plain comparisons, for it is asked very often
            across = left if left > right else right
            upward = down if down > up else up
            across = across if across > 0.0 else 0.0
            upward = upward if upward > 0.0 else 0.0
            far = (across if across > upward else upward) / long
            aslant = (across + upward) / both
            far = far if far > aslant else aslant
            least = far if far < least else least
        return least

    def _around(self, patches: Iterable[Patch], patch: Patch) -> list[Patch]:
        """Those that what touches a patch can meet."""
        long = self._long
        return within(patches, patch[0] - long, patch[1] - long, patch[2] + long, patch[3] + long)

    def _next(
        self, work: Laid, local: Sequence[Patch], names: Mapping[Patch, int], missing: Sequence[int]
    ) -> Patch | None:
        """The best next patch from the largest piece towards what is nearest of what is missing, put down."""
        chance = self.random.random
        every = list(names.values())
        largest = max(set(every), key=lambda name: (every.count(name), -name))
        main = [patch for patch in local if names[patch] == largest]
        main = main or [patch for patch, name in names.items() if name == largest]
        others = [patch for patch in local if names[patch] != largest]
        others = others or [patch for patch, name in names.items() if name != largest]
        items = [self.ground.items[number] for number in missing]
        goals = items if len(items) <= GOALS else [items[int(chance() * len(items))] for _ in range(GOALS)]
        best, goal, loose = math.inf, goals[0] if goals else others[0], False
        for apart, targets, distance in ((False, goals, self._steps), (True, others, self._gap)):
            for target in targets:
                steps = distance(main, target) * (1.0 + CHANCE * (2 * chance() - 1))
                if steps < best:
                    best, goal, loose = steps, target, apart
        off = CHANCE_NEAR
        near = sorted(main, key=lambda patch: self._gap((patch,), goal) * (1 - off + 2 * off * chance()))[:FROM]
        reach = BESIDE * self._long
        wanted = [
            (item, self.ground.worth[number]) for number, item in zip(missing, items, strict=True)
            if abs(item[0] - goal[0]) < reach and abs(item[1] - goal[1]) < reach
        ]  # fmt: skip
        found: dict[Patch, float] = {}
        mine = set(main)
        for patch in near:
            around = self._around(work.meets, patch)
            for tried in beside(patch, goal, self._some([item for item, _ in wanted]), self._sizes):
                new = cut_back(tried, around)
                if new is not None and new not in found:
                    found[new] = self._rank(new, goal, loose, wanted, mine, around) + LOOSE * chance()
        ranked = (new for new in sorted(found, key=found.__getitem__) if found[new] < math.inf)
        return next((put for new in ranked if (put := self._put(work, new))), None)

    def _put(self, work: Laid, new: Patch) -> Patch | None:
        """The patch as it is put down, level with what is near; None where it may not lie so."""
        level = levelled(new, self._around(work.meets, new))
        if not self.ground.roomy(level) or not work.put(level):
            return None
        if any(met.length >= TAPED for met in work.meets[level].values()):
            return level
        work.take(level)  # level with one thing it no longer touches another, by a rounding
        return None

    def _some(self, items: Sequence[Patch]) -> list[Patch]:
        """A few of the items, mostly broad ones."""
        found = [item for item in items if broad(item)]
        thin = [item for item in items if not broad(item)]
        found += [thin[int(self.random.random() * len(thin))] for _ in range(2)] if thin else []
        while len(found) > MOST_ALIGNED:
            found.pop(int(self.random.random() * len(found)))
        return found

    def _rank(
        self, new: Patch, goal: Patch, loose: bool, wanted: Sequence[tuple[Patch, float]], mine: set[Patch],
        around: Sequence[Patch],
    ) -> float:  # fmt: skip
        """How good a new patch is, in seconds, the least best; without end where it would hang on nothing."""
        took, held, longest, goal_met = 0.0, False, 0.0, False
        x0, y0, x1, y1 = new
        for patch in around:
            if patch[0] > x1 + TOLERANCE or x0 > patch[2] + TOLERANCE:
                continue
            if patch[1] > y1 + TOLERANCE or y0 > patch[3] + TOLERANCE:
                continue
            length = shared(new, patch)
            if length >= LEAST_JOIN:
                took += EACH.join if length >= FIRM - TOLERANCE else EACH.join + EACH.chained
                longest = max(longest, length)
                if length >= TAPED:
                    held = held or patch in mine
                    goal_met = goal_met or patch == goal
        if not held:
            return math.inf
        if loose:
            rest = self._gap((new,), goal) + (0.0 if goal_met else PART)
        else:
            holds = x0 <= goal[0] + TOLERANCE and y0 <= goal[1] + TOLERANCE
            holds = holds and x1 >= goal[2] - TOLERANCE and y1 >= goal[3] - TOLERANCE
            rest = 0.0 if holds else max(PART, self._steps((new,), goal))
        x0, y0, x1, y1 = x0 - TOLERANCE, y0 - TOLERANCE, x1 + TOLERANCE, y1 + TOLERANCE
        more = sum([w for i, w in wanted if x0 <= i[0] and y0 <= i[1] and i[2] <= x1 and i[3] <= y1])
        return LEFT * rest - HOLDS * more + took - LONGER * min(longest, LONG_JOIN)
