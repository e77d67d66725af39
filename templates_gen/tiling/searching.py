"""A search for fewer minutes: some sheets are taken out and grown anew, again and again.

Steps are counted and chance is seeded, so that a wall has the same sheets on every machine.  A change is taken when it
takes no longer, or, in the beginning, a little longer (simulated annealing); never when it may not be, by a judge that
is asked last, for it takes longest.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from random import Random
from typing import NamedTuple

from templates_gen.tiling.patches import Ground, Patch, pieces
from templates_gen.tiling.regrowing import Growing

TAKEN = (1, 1, 2, 2, 3, 3, 4, 5, 6, 8)
"""How many neighbouring sheets are taken out, each as likely.  Our own design, no source."""

WARMTH = 25.0
"""Seconds that a change may take longer at the beginning, by about; less and less, to none.  Our own design."""

PER_MM = 60.0
"""Seconds that a mm of error above the limit counts as while the search is on its way.  Our own design, no source."""

Excess = Callable[[Sequence[Patch]], float]
"""By how much patches miss what is asked of their error (mm); 0 where they hold it."""


class Found(NamedTuple):
    """Patches with the seconds they take and how far they are above the limit of error (mm)."""

    patches: list[Patch]
    seconds: float
    excess: float

    @property
    def cost(self) -> float:
        return self.seconds + PER_MM * self.excess


def quicker(ground: Ground, start: Found, steps: int, excess: Excess, seed: int = 0) -> Found:
    """The quickest patches found from a start in so many steps, of those that hold their error where there are some."""
    random = Random(seed)
    growing = Growing(ground, random)
    now = best = start
    for step in range(steps):
        warmth = WARMTH * (1 - step / steps)
        tried = _changed(growing, now.patches, random)
        took = ground.seconds(tried) if tried else None
        if tried is None or took is None:
            continue
        most = now.cost - warmth * math.log(1.0 - random.random())
        if took > most:
            continue
        found = Found(tried, took, excess(tried))
        if found.cost > most:
            continue
        now = found
        if (now.excess, now.seconds) < (best.excess, best.seconds):
            best = now
    return best


def lighter(ground: Ground, start: Found, excess: Excess) -> Found:
    """The start without what it can do without, sheet by sheet for as long as its error is held: those first whose
    going saves most."""
    now = start
    waiting = sorted(start.patches, key=lambda patch: (len(ground.held(patch)), patch))
    for patch in waiting:
        left = [other for other in now.patches if other != patch]
        took = ground.seconds(left) if left and ground.all_held(left) else None
        if took is None or took >= now.seconds:
            continue
        over = excess(left)
        if over <= now.excess:
            now = Found(left, took, over)
    return now


def _changed(growing: Growing, now: Sequence[Patch], random: Random) -> list[Patch] | None:
    """Some neighbouring patches taken out, grown anew, and those left out that are not needed."""
    middle = now[int(random.random() * len(now))]
    count = TAKEN[int(random.random() * len(TAKEN))]
    x, y = middle[0] + middle[2], middle[1] + middle[3]
    order = sorted(now, key=lambda patch: max(abs(patch[0] + patch[2] - x), abs(patch[1] + patch[3] - y)))
    kept, out = order[count:], order[:count]
    if not kept:
        return None
    grown = growing.grow(kept, len(out) + 1)
    if grown is None:
        return None
    return without_spares(growing.ground, grown, random)


def without_spares(ground: Ground, patches: Sequence[Patch], random: Random | None = None) -> list[Patch]:
    """The patches without those that nothing needs: what they hold others hold, and all stays one piece."""
    left = list(patches)
    count = [0] * len(ground.items)
    for patch in left:
        for number in ground.held(patch):
            count[number] += 1
    order = list(left)
    if random:
        order = [patch for _, patch in sorted((random.random(), patch) for patch in order)]
    for patch in order:
        if len(left) == 1 or any(count[number] == 1 for number in ground.held(patch)):
            continue
        rest = [other for other in left if other != patch]
        if one_piece(rest):
            left = rest
            for number in ground.held(patch):
                count[number] -= 1
    return left


def one_piece(patches: Sequence[Patch]) -> bool:
    """Whether they are taped into one piece."""
    return max(pieces(patches), default=0) == 0
