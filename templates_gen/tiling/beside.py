"""Where a patch can lie beside another: on which sides, where along them, and what is left of it beside others."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from templates_gen.base.geometry import TOLERANCE, Size
from templates_gen.tiling.joins import JOIN_MIN
from templates_gen.tiling.minutes import FIRM
from templates_gen.tiling.patches import DIGITS, Patch

ROUNDED = 2.0 * TOLERANCE
"""mm farther than they could reach that patches are looked for, for what a rounding hides is looked at all the same."""


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


def levelled(patch: Patch, there: Iterable[Patch]) -> Patch:
    """The patch with every side that differs from a side of others by a rounding made theirs, so that it grows no
    larger when the two are made one."""
    x0, y0, x1, y1 = patch
    for other in there:
        for x in other[::2]:  # plain comparisons, for it is asked very often
            x0 = x if -TOLERANCE < x0 - x < TOLERANCE else x0
            x1 = x if -TOLERANCE < x1 - x < TOLERANCE else x1
        for y in other[1::2]:
            y0 = y if -TOLERANCE < y0 - y < TOLERANCE else y0
            y1 = y if -TOLERANCE < y1 - y < TOLERANCE else y1
    return x0, y0, x1, y1


def beside(
    patch: Patch, goal: Patch, some: Sequence[Patch], sizes: Sequence[Size]
) -> Iterator[tuple[Patch, list[Patch]]]:
    """Full patches that touch one on the sides towards a goal, aligned with some of what is missing there: those of one
    size on one side together, each time with the box about them."""
    right = goal[0] + goal[2] > patch[0] + patch[2]
    above = goal[1] + goal[3] > patch[1] + patch[3]
    across, upward = [(item[0], item[2]) for item in some], [(item[1], item[3]) for item in some]
    for width, height in sizes:
        x0 = patch[2] if right else round(patch[0] - width, DIGITS)
        x1 = round(patch[2] + width, DIGITS) if right else patch[0]
        ys = _places(patch[1], patch[3], height, goal[1], goal[3], upward)
        if ys:
            yield (x0, ys[0], x1, ys[-1] + height), [(x0, y, x1, round(y + height, DIGITS)) for y in ys]
        y0 = patch[3] if above else round(patch[1] - height, DIGITS)
        y1 = round(patch[3] + height, DIGITS) if above else patch[1]
        xs = _places(patch[0], patch[2], width, goal[0], goal[2], across)
        if xs:
            yield (xs[0], y0, xs[-1] + width, y1), [(x, y0, round(x + width, DIGITS), y1) for x in xs]


def _places(
    begin: float, end: float, size: float, low: float, high: float, others: Sequence[tuple[float, float]]
) -> list[float]:
    """Where what is so long may begin beside a side from `begin` to `end`, joined to it firmly: level with an end of
    that, of a goal, or of others."""
    least, most = begin + FIRM - size, end - FIRM
    if least > most:
        return []
    places = [begin, end - size, low, high - size]
    for one, two in others:
        places.append(one)
        places.append(two - size)
    inside = {place for place in places if least < place < most}  # few of them are, and to round takes long
    return sorted({round(place, DIGITS) for place in (least, most, *inside)})


def within(patches: Iterable[Patch], x0: float, y0: float, x1: float, y1: float) -> list[Patch]:
    """The patches that reach into a part of the wall."""
    return [patch for patch in patches if patch[0] < x1 and x0 < patch[2] and patch[1] < y1 and y0 < patch[3]]


def shared(one: Patch, two: Patch) -> float:
    """Along how much two patches meet that do not lie on each other (mm)."""
    if abs(one[2] - two[0]) < TOLERANCE or abs(two[2] - one[0]) < TOLERANCE:
        return min(one[3], two[3]) - max(one[1], two[1])
    if abs(one[3] - two[1]) < TOLERANCE or abs(two[3] - one[1]) < TOLERANCE:
        return min(one[2], two[2]) - max(one[0], two[0])
    return 0.0


def touching(patches: Iterable[Patch], box: Patch) -> list[Patch]:
    """The patches that reach into a box or touch it, a rounding more than that at the most."""
    x0, y0, x1, y1 = box
    return within(patches, x0 - ROUNDED, y0 - ROUNDED, x1 + ROUNDED, y1 + ROUNDED)
