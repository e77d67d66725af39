"""Patches grown anew where some were taken out, until all hold everything and make one piece.

The next patch is always one that touches what is there and leads to what is nearest of what is missing, laid so that
it holds as much more as it can; a little chance makes every growth another.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from heapq import heappop, heappush
from itertools import chain
from operator import itemgetter
from random import Random

from templates_gen.tiling.aiming import Near, Paces, least_sheets
from templates_gen.tiling.beside import beside, cut_back, levelled, shared, touching, within
from templates_gen.tiling.joins import LEAST_JOIN
from templates_gen.tiling.laid import TAPED, Laid
from templates_gen.tiling.minutes import EACH, FIRM
from templates_gen.tiling.patches import Ground, Patch, broad
from templates_gen.tiling.ranking import JOINED, Worth, inside, joined, ranks

GOALS = 24
"""Missing items among which the nearest is looked for; of more, so many by chance.  Our own design, no source."""

FROM = 3
"""Patches that the next one may touch: the nearest to where it leads.  Our own design, no source."""

CHANCE, CHANCE_NEAR = 0.25, 0.1
"""By how much, as shares, distances to what is missing are varied by chance, and those from there to what is near.  Our
own design, no source."""

LOOSE = 12.0
"""Seconds that chance adds at the most to what a new patch counts as.  Our own design, no source."""

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
        self._paces = Paces(self._sizes)
        self._each = EACH.chained if ground.wanted.cut else EACH.sheet + EACH.join

    def regrown(self, laid: Laid, out: Sequence[Patch], most: float = math.inf) -> Laid | None:
        """The patches without some neighbouring ones, and new ones in their place, none of them spare; None where that
        was not found, or where it would take more than so many seconds."""
        work = laid.copy()
        for patch in out:
            work.take(patch)
        if not work.meets:
            return None
        reach = BESIDE * self._paces.long
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
        names, near = work.names(), (Near(self._paces.steps), Near(self._paces.gaps))
        for count in range(most + 1):
            missing, loose = work.missing(), len(set(names.values())) > 1
            if not missing and not loose:
                return True
            if count == most or self._too_many(missing, seconds - work.seconds):
                return False
            main, others = _pieces(local, names)
            new = self._next(work, main, missing, *self._goal(main, others, missing, near))
            if new is None or work.seconds > seconds:
                return False
            met = {names[other] for other, how in work.meets[new].items() if how.length >= TAPED}
            one = min(met)
            names = {patch: one if name in met else name for patch, name in names.items()}
            names[new] = one
            local.append(new)
        return False

    def _too_many(self, missing: Sequence[int], seconds: float) -> bool:
        """Whether holding what is missing takes longer than that, however it is held.

        A sheet more takes a join, and one of the two is cut.
        """
        most = seconds / self._each
        return most < 1.0 or least_sheets([self.ground.items[number] for number in missing], self._sizes, most) > most

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
        for tried in chain.from_iterable(tries for _, tries in beside(patch, goal, (), self._sizes)):
            by = touching(around, tried)
            new = cut_back(tried, by)
            if new is not None:
                held = sorted(length for other in by if (length := shared(new, other)) >= LEAST_JOIN)
                if len(held) > 1 and held[-2] >= FIRM:
                    found.append((EACH.join * len(held) - held[-2] / FIRM + LOOSE * self.random.random(), new))
        for _, best in sorted(found):
            work, new = laid.copy(), levelled(best, around)
            if self.ground.roomy(new) and work.put(new):
                work.braces |= {new}
                return work
        return None

    def _around(self, patches: Iterable[Patch], patch: Patch) -> list[Patch]:
        """Those that what touches a patch can meet."""
        long = self._paces.long
        return within(patches, patch[0] - long, patch[1] - long, patch[2] + long, patch[3] + long)

    def _goal(
        self, main: Sequence[Patch], others: Sequence[Patch], missing: Sequence[int], near: tuple[Near, Near]
    ) -> tuple[Patch, bool]:
        """What to grow to from the largest piece: about the nearest of what is missing and of the other pieces; and
        whether it is one of these."""
        chance, (by_steps, by_gap) = self.random.random, near
        goals = [self.ground.items[number] for number in missing]
        goals = goals if len(goals) <= GOALS else [goals[int(chance() * len(goals))] for _ in range(GOALS)]
        by_steps.of(main)
        by_gap.of(main)
        best, goal, loose = math.inf, goals[0] if goals else others[0], False
        for apart, targets, to in ((False, goals, by_steps.to), (True, others, by_gap.to)):
            for target in targets:
                steps = to(target) * (1.0 + CHANCE * (2 * chance() - 1))
                if steps < best:
                    best, goal, loose = steps, target, apart
        return goal, loose

    def _next(
        self, work: Laid, main: Sequence[Patch], missing: Sequence[int], goal: Patch, loose: bool
    ) -> Patch | None:
        """The best next patch from the largest piece towards a goal, put down."""
        off, chance, mine = CHANCE_NEAR, self.random.random, set(main)
        apart = [gap * (1 - off + 2 * off * chance()) for gap in self._paces.gaps(main, goal)]
        near = [main[at] for at in sorted(range(len(main)), key=apart.__getitem__)[:FROM]]
        reach = BESIDE * self._paces.long
        wanted = [
            (item, self.ground.worth[number]) for number in missing
            if abs((item := self.ground.items[number])[0] - goal[0]) < reach and abs(item[1] - goal[1]) < reach
        ]  # fmt: skip
        tries: list[tuple[float, Patch, Sequence[Patch], Sequence[Worth]]] = []
        for patch in near:
            around = self._around(work.meets, patch)
            for box, every in beside(patch, goal, self._some([item for item, _ in wanted]), self._sizes):
                inner = inside(wanted, box)
                for tried, rank in zip(every, ranks(self._paces, every, goal, loose, inner), strict=True):
                    tries.append((rank, tried, around, inner))
        tries.sort(key=itemgetter(0))
        ranked: list[tuple[float, Patch]] = []
        seen: set[Patch] = set()
        for at_best, tried, near_by, held in tries:
            while ranked and ranked[0][0] <= at_best + JOINED:  # no other will be better
                if put := self._put(work, heappop(ranked)[1]):
                    return put
            by = touching(near_by, tried)
            new = cut_back(tried, by)
            if new is None or new in seen:
                continue
            seen.add(new)
            if new != tried:
                at_best += ranks(self._paces, (new,), goal, loose, held)[0] - at_best
            if (by_joins := joined(new, goal if loose else None, mine, by)) < math.inf:
                heappush(ranked, (at_best + by_joins + LOOSE * chance(), new))
        return next((put for _, new in sorted(ranked) if (put := self._put(work, new))), None)

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


def _pieces(local: Sequence[Patch], names: Mapping[Patch, int]) -> tuple[list[Patch], list[Patch]]:
    """Local patches of the largest piece, and of the others; where there are none, all of them."""
    every = list(names.values())
    largest = max(set(every), key=lambda name: (every.count(name), -name))
    main = [patch for patch in local if names[patch] == largest]
    main = main or [patch for patch, name in names.items() if name == largest]
    others = [patch for patch in local if names[patch] != largest]
    return main, others or [patch for patch, name in names.items() if name != largest]
