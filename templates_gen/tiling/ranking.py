"""How good a new patch would be: by what it holds, what it leaves missing, and how it is joined."""

from __future__ import annotations

import math
from collections.abc import Sequence, Set

from templates_gen.base.adding import added
from templates_gen.base.geometry import TOLERANCE
from templates_gen.tiling.aiming import Paces
from templates_gen.tiling.beside import shared
from templates_gen.tiling.joins import LEAST_JOIN
from templates_gen.tiling.laid import TAPED
from templates_gen.tiling.minutes import EACH, FIRM
from templates_gen.tiling.patches import Patch

HOLDS, LEFT = 28.0, 45.0
"""Seconds that an item more is worth, and that a sheet still missing counts as.  Our own design, no source."""

PART = 0.3
"""Of a sheet, that a goal not yet met or held counts as at the least.  Our own design, no source."""

LONGER, LONG_JOIN = 0.03, 190.0
"""Seconds that a mm of a patch's longest join is worth, and the mm that count at the most.  Our own design."""

JOINED = EACH.join - LONGER * LONG_JOIN
"""Seconds that joins of a new patch count as at the least."""

Worth = tuple[Patch, float]
"""An item and what it is worth."""


def ranks(paces: Paces, patches: Sequence[Patch], goal: Patch, loose: bool, wanted: Sequence[Worth]) -> list[float]:
    """How good new patches are by what they hold and what they leave missing, in seconds, the least best."""
    rests, rounding = paces.gaps(patches, goal) if loose else paces.steps(patches, goal), paces.rounding
    if not loose:
        rests = [(rest if rest > PART else PART) if rest > rounding else 0.0 for rest in rests]
    if not wanted:
        return [LEFT * rest for rest in rests]
    return [LEFT * rest - HOLDS * _worth(wanted, patch) for patch, rest in zip(patches, rests, strict=True)]


def joined(new: Patch, goal: Patch | None, mine: Set[Patch], around: Sequence[Patch]) -> float:
    """What the joins of a new patch take, in seconds, less what a long one is worth, with something for a goal, another
    patch, that it is not joined to; without end where it would hang on nothing."""
    took, held, longest = 0.0 if goal is None else LEFT * PART, False, 0.0
    for patch in around:
        length = shared(new, patch)
        if length >= LEAST_JOIN:
            took += EACH.join if length >= FIRM - TOLERANCE else EACH.join + EACH.chained
            longest = max(longest, length)
            if length >= TAPED:
                held = held or patch in mine
                took -= LEFT * PART if patch == goal else 0.0
    return took - LONGER * min(longest, LONG_JOIN) if held else math.inf


def _worth(wanted: Sequence[Worth], box: Patch) -> float:
    """What all that lies in a box is worth; written out, for it is asked most often of all."""
    x0, y0, x1, y1 = box
    x0, y0, x1, y1 = x0 - TOLERANCE, y0 - TOLERANCE, x1 + TOLERANCE, y1 + TOLERANCE
    return added([worth for (a0, b0, a1, b1), worth in wanted if x0 <= a0 and y0 <= b0 and a1 <= x1 and b1 <= y1])


def inside(wanted: Sequence[Worth], box: Patch) -> list[Worth]:
    """What of the items with their worths lies in a box."""
    x0, y0, x1, y1 = box
    x0, y0, x1, y1 = x0 - TOLERANCE, y0 - TOLERANCE, x1 + TOLERANCE, y1 + TOLERANCE
    return [one for one in wanted if x0 <= one[0][0] and y0 <= one[0][1] and one[0][2] <= x1 and one[0][3] <= y1]
