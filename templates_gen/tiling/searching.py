"""A search for fewer minutes: some sheets are taken out and grown anew, again and again.

Steps are counted and chance is seeded, so that a wall has the same sheets on every machine.  A change is taken when it
takes no longer, or, in the beginning, a little longer (simulated annealing); never when it may not be, by a judge that
is asked last, for it takes longest.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from random import Random
from typing import NamedTuple

from templates_gen.tiling.laid import Laid
from templates_gen.tiling.registering import Point
from templates_gen.tiling.regrowing import Growing

TAKEN = (1, 1, 2, 2, 3, 3, 4, 5, 6, 8)
"""How many neighbouring sheets are taken out, each as likely.  Our own design, no source."""

BRACED, BRACED_MORE = 0.15, 0.3
"""How often a sheet is added that nothing asks for, to hold others: as a share of all steps, and of those while
nothing holds the limit.  Our own design."""

THERE, SCATTER = 0.6, 300.0
"""How often patches that err too much are changed about where they err most, and how far (mm) from there at the most.
Our own design."""

OVER = 60.0
"""Seconds that any error above the limit counts as at the end.  Our own design, no source."""

WARMTH, WARMTH_ERRING = 15.0, 60.0
"""Seconds that a change may take longer at the beginning, by about, and while nothing holds the limit; less and less,
to none.  Our own design."""

PER_MM, AT_LAST = 60.0, 1500.0
"""Seconds that a mm of error above the limit counts as at the beginning and at the end.  Our own design, no source."""

HARDER, EASIER, HARDEST = 1.05, 1.03, 100.0
"""How many times as many they are after every step above the limit while nothing is quicker than a start that holds it,
and how much less again after any other step; and how many times at the most, so that none goes far from what is held
and does not come back.  Our own trials: on walls where it does come back, it finds less so."""

LATE = 0.7
"""Share of a search from which on changes are mostly made where a join is short, too, where the limit is held.  Our own
design, no source."""


class Judged(NamedTuple):
    """By how much patches miss what is asked of their error (mm), 0 where they hold it; and where a change helps."""

    over: float
    places: tuple[Point, ...] = ()


Excess = Callable[[Laid, float], Judged]
"""What is asked of the error of patches.  Above a second number it need not be exact."""


class Found(NamedTuple):
    """Patches, and how far their error is above its limit (mm)."""

    laid: Laid
    judged: Judged = Judged(0.0)

    @property
    def excess(self) -> float:
        return self.judged.over

    @property
    def seconds(self) -> float:
        return self.laid.seconds


def quicker(
    start: Found, steps: int, excess: Excess, seed: int = 0, begun: float = 0.0, patience: float = math.inf
) -> Found:
    """The quickest patches found from a start in so many steps, of those that hold their error where there are some;
    where there are none after some of them (`patience`), it ends."""
    random = Random(seed)
    growing = Growing(start.laid.ground, random)
    now, best, times = start, start, 1.0
    for step in range(steps):
        share = begun + (1.0 - begun) * step / steps
        lost = best.excess > 0.0  # nothing holds the limit so far
        if lost and step >= patience:
            break
        warmth = (WARMTH_ERRING if lost else WARMTH) * (1 - share)
        times = min(HARDEST, times * HARDER) if now.excess and best is start and not lost else max(1.0, times / EASIER)
        per_mm = times * (PER_MM + (AT_LAST - PER_MM) * share * share)
        over = per_mm * now.excess + OVER * share if now.excess else 0.0
        most = now.seconds + over - warmth * math.log(1.0 - random.random())
        laid = _changed(growing, now, random, most, lost, share > LATE)
        if laid is None or laid.seconds > most:
            continue
        enough = max(0.0, most - laid.seconds - OVER * share) / per_mm
        found = Found(laid, excess(laid, enough))
        if found.excess > enough:
            continue
        now = found
        if (now.excess, now.seconds) < (best.excess, best.seconds):
            best = now
    return best


def _changed(growing: Growing, now: Found, random: Random, most: float, lost: bool, late: bool) -> Laid | None:
    """Some neighbouring patches taken out, grown anew, and those left out that are not needed; or a brace put in.

    While nothing holds the limit it is mostly done where patches err most; late, where a join is short.
    """
    patches = now.laid.patches
    weak = now.laid.weak if late and not lost else ()
    among = weak if weak and random.random() < THERE else patches
    middle = among[int(random.random() * len(among))]
    x, y = middle[0] + middle[2], middle[1] + middle[3]
    if lost and now.excess and random.random() < THERE:
        place = now.judged.places[int(random.random() * len(now.judged.places))]
        x, y = (2.0 * (at + SCATTER * (2.0 * random.random() - 1.0)) for at in place)
    order = sorted(patches, key=lambda patch: max(abs(patch[0] + patch[2] - x), abs(patch[1] + patch[3] - y)))
    if random.random() < (BRACED_MORE if lost else BRACED):
        return growing.braced(now.laid, order[0])
    count = TAKEN[int(random.random() * len(TAKEN))]
    return growing.regrown(now.laid, order[:count], most)
