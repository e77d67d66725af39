"""Patches laid on a ground, with how they meet, what they take a person and what nothing holds, kept up to date as one
is put down or taken away."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from templates_gen.base.geometry import TOLERANCE
from templates_gen.tiling.beside import within
from templates_gen.tiling.branches import APART, NEAR
from templates_gen.tiling.joins import JOIN_MIN, LEAST_JOIN
from templates_gen.tiling.minutes import EACH, FIRM, shaky
from templates_gen.tiling.patches import Ground, Meeting, Patch

SHORT = 60.0
"""Seconds more that a join shorter than `FIRM` counts as, so that there is one only where every other way takes a sheet
more.  Our own design, no source."""

TAPED = JOIN_MIN - TOLERANCE
"""mm that two patches have to share to be taped to each other, but for rounding."""

Meetings = dict[Patch, Meeting]


class Laid:
    """Patches on a ground; `meets` has for every one those near it."""

    __slots__ = ("_cuts", "_missing", "_pairs", "braces", "count", "ground", "meets")

    def __init__(self, ground: Ground) -> None:
        self.ground = ground
        self.meets: dict[Patch, Meetings] = {}
        self.count = [0] * len(ground.items)
        self._missing = set(range(len(ground.items)))
        self.braces: frozenset[Patch] = frozenset()
        self._pairs = 0.0
        self._cuts = 0

    @classmethod
    def of(cls, ground: Ground, patches: Iterable[Patch]) -> Laid | None:
        """These patches; None where two may not lie so."""
        laid = cls(ground)
        return laid if all(map(laid.put, patches)) else None

    def copy(self) -> Laid:
        """The same patches, to be changed by themselves."""
        other = Laid.__new__(Laid)
        other.ground, other.meets, other.count = self.ground, dict(self.meets), list(self.count)
        other.braces, other._pairs, other._cuts, other._missing = self.braces, self._pairs, self._cuts, {*self._missing}
        return other

    @property
    def patches(self) -> Sequence[Patch]:
        """All of them."""
        return list(self.meets)

    @property
    def seconds(self) -> float:
        """What they take, with a little for joins that are short and paper that lies near other paper."""
        cuts = EACH.cut * self._cuts if self.ground.wanted.cut else 0.0
        return EACH.sheet * len(self.meets) + self._pairs + cuts

    @property
    def all_held(self) -> bool:
        """Whether every item is held."""
        return not self._missing

    @property
    def weak(self) -> list[Patch]:
        """For every join that holds no sheet firmly the patch that is laid over the other."""
        every = ((patch, met) for patch, meets in self.meets.items() for met in meets.values() if met.over)
        return [patch for patch, (_, length, _) in every if LEAST_JOIN <= length < FIRM - TOLERANCE]

    def missing(self) -> list[int]:
        """The numbers of the items that nothing holds."""
        return sorted(self._missing)

    def put(self, new: Patch) -> bool:
        """One patch more; False, with nothing changed, where it may not lie there: on others, or across an item."""
        if self.ground.crosses(new):
            return False
        x0, y0, x1, y1 = new
        found: Meetings = {}
        for other in within(self.meets, x0 - APART, y0 - APART, x1 + APART, y1 + APART):
            met = self.ground.meeting(new, other)
            if met is None:
                return False
            found[other] = met
        for other, (upright, length, over) in found.items():
            self._change(other, {**self.meets[other], new: Meeting(upright, length, not over and length > 0.0)})
            self._pairs += _takes(length)
        self.meets[new] = {}
        self._change(new, found)
        for number in self.ground.held(new):
            self.count[number] += 1
        self._missing -= self.ground.held(new)
        return True

    def take(self, patch: Patch) -> None:
        """One patch less."""
        found = self.meets[patch]
        self._change(patch, {})
        del self.meets[patch]
        for other, met in found.items():
            left = dict(self.meets[other])
            del left[patch]
            self._change(other, left)
            self._pairs -= _takes(met.length)
        for number in self.ground.held(patch):
            self.count[number] -= 1
            if not self.count[number]:
                self._missing.add(number)
        self.braces -= {patch}

    def _change(self, patch: Patch, meets: Meetings) -> None:
        self._cuts += _sides(meets) - _sides(self.meets[patch])
        self.meets[patch] = meets

    def names(self) -> dict[Patch, int]:
        """For every patch the number of the taped piece it is part of, counted from 0."""
        names: dict[Patch, int] = {}
        for first in self.meets:
            if first not in names:
                number = len(set(names.values()))
                names[first] = number
                waiting = [first]
                for patch in waiting:
                    for other, met in self.meets[patch].items():
                        if other not in names and met.length >= TAPED:
                            names[other] = number
                            waiting.append(other)
        return names

    @property
    def one_piece(self) -> bool:
        """Whether they are taped into one piece."""
        return max(self.names().values(), default=0) == 0

    def spare(self, patch: Patch) -> bool:
        """Whether nothing needs a patch of one piece: what it holds others hold, and without it all stay one piece."""
        count = self.count
        if len(self.meets) == 1 or 1 in map(count.__getitem__, self.ground.held(patch)):
            return False
        beside = [other for other, met in self.meets[patch].items() if met.length >= TAPED]
        left = set(beside[1:])
        seen, waiting = {patch, *beside[:1]}, beside[:1]
        for one in waiting:
            if not left:
                break
            for other, met in self.meets[one].items():
                if met.length >= TAPED and other not in seen:
                    seen.add(other)
                    waiting.append(other)
                    left.discard(other)
        return not left


def _takes(length: float) -> float:
    """What the meeting of two patches takes (s), with a little for what is short or only near."""
    took = NEAR if length < TAPED else 0.0
    if length >= LEAST_JOIN:
        took += EACH.join + shaky(length) + (SHORT if length < FIRM - TOLERANCE else 0.0)
    return took


def _sides(meets: Mapping[Patch, Meeting]) -> int:
    """On how many sides a patch is cut."""
    over = {upright for upright, length, over in meets.values() if over and length >= LEAST_JOIN}
    return len(over)
