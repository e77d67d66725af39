"""What laid patches can do without: whole patches, and joins of two that are cut so far apart that they do not meet.

Strips of sheets meet all along their sides.  Most of those joins hold nothing that the others do not hold, and those
that are short hold nothing well.
"""

from __future__ import annotations

from templates_gen.base.geometry import TOLERANCE
from templates_gen.tiling.branches import APART
from templates_gen.tiling.joins import LEAST_JOIN
from templates_gen.tiling.laid import Laid
from templates_gen.tiling.minutes import FIRM
from templates_gen.tiling.patches import DIGITS, Patch
from templates_gen.tiling.searching import Excess, Found

LEFT, FOOT, RIGHT, HEAD = range(4)
"""The sides of a patch, by their places in it."""


def lighter(start: Found, excess: Excess) -> Found:
    """The start without what it can do without, patch by patch and then join by join, for as long as its error is held:
    those patches first whose going saves most.  What nothing but the error needs is a brace from then on."""
    now = start
    for patch in sorted(start.laid.meets, key=lambda patch: (len(start.laid.ground.held(patch)), patch)):
        if now.laid.spare(patch):
            left = now.laid.copy()
            left.take(patch)
            now = _better(now, left, excess)
    now = _parted(now, excess)
    left = now.laid.copy()
    left.braces = frozenset(filter(left.spare, left.meets))
    return Found(left, now.judged)


def _parted(start: Found, excess: Excess) -> Found:
    """The start with those patches cut back that can be, side by side."""
    now = start
    for first in sorted(start.laid.meets):
        patch = first
        for side in (LEFT, FOOT, RIGHT, HEAD):
            back = _cut_back(patch, side)
            left = _with(now.laid, patch, back) if side in _joined(now.laid, patch) and back else None
            if left is not None and back is not None:
                now = _better(now, left, excess)
                patch = back if now.laid is left else patch
    return now


def _better(now: Found, left: Laid, excess: Excess) -> Found:
    """What is left, where it takes less and errs no more; what is there now, where not."""
    if left.seconds >= now.seconds:
        return now
    judged = excess(left, now.excess)
    return Found(left, judged) if judged.over <= now.excess else now


def _joined(laid: Laid, patch: Patch) -> set[int]:
    """The sides at which a patch is joined to others."""
    found: set[int] = set()
    for other, (upright, length, _) in laid.meets[patch].items():
        if length >= LEAST_JOIN:
            low, high = (LEFT, RIGHT) if upright else (FOOT, HEAD)
            found.add(low if abs(other[high] - patch[low]) < TOLERANCE else high)
    return found


def _cut_back(patch: Patch, side: int) -> Patch | None:
    """The patch with a side so far back that it lies apart from what it met there; None where too little is left for
    firm joins at its other sides."""
    x0, y0, x1, y1 = (
        round(at + (APART if side < RIGHT else -APART), DIGITS) if number == side else at
        for number, at in enumerate(patch)
    )
    return (x0, y0, x1, y1) if min(x1 - x0, y1 - y0) >= FIRM else None


def _with(laid: Laid, patch: Patch, back: Patch) -> Laid | None:
    """The patches with one cut back; None where they would not hold everything in one piece then."""
    ground = laid.ground
    if any(laid.count[number] == 1 for number in ground.held(patch) - ground.held(back)):
        return None
    left, brace = laid.copy(), patch in laid.braces
    left.take(patch)
    if not left.put(back):
        return None
    if brace:
        left.braces |= {back}
    return left if left.one_piece else None
