"""How the facing corners of two frames move when the nails under them do.

A frame on one nail is levelled by hand, so it moves with its nail and does not turn.  A frame on two that cannot be
levelled by sliding (a pair, as rings are) moves with the middle between them, and tilts by what one ends up higher than
the other, over their distance.  A wire on two fixings is taken for such a one: friction holds it as it was hung.
"""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.arranging.plan import Hung
from templates_gen.base.adding import added
from templates_gen.base.record import Record
from templates_gen.tolerance.neighbours import Neighbours

LEAST_BASE = 1.0
"""mm.  Two fixings are taken to be no nearer to each other than this: a frame does not turn over.  Our own design."""


class Part(Record, frozen=True):
    """How much a measure changes with the movement of one nail at (x, y): to the right, upward, and by `tilt` upward.

    `number` is the nail's among those of its frame.  What it changes by upward in all is `up` + `tilt`.
    """

    frame: str
    number: int
    x: float
    y: float
    right: float
    up: float
    tilt: float


class Measures(Record, frozen=True):
    """What is measured between two neighbours: the step of their facing edges, and their gap at either pair of facing
    corners.  Each is a sum over nails; the two gaps are one where neither frame can tilt."""

    step: tuple[Part, ...]
    gaps: tuple[tuple[Part, ...], ...]


def measures(pair: Neighbours) -> Measures:
    """The measures of two neighbours: step and gap grow as the second moves up and away (beside), or aside and away."""
    one, two = pair.one, pair.two
    swapped = two.rect.cx < one.rect.cx if pair.beside else two.rect.cy < one.rect.cy
    first, second = (two, one) if swapped else (one, two)
    facing = [_facing(first, pair.beside, True), _facing(second, pair.beside, False)]
    along = int(pair.beside)
    step = (*_moved(first, facing[0][0], along, -1.0), *_moved(second, facing[1][0], along, 1.0))
    gaps = tuple(
        (*_moved(first, here, 1 - along, -1.0), *_moved(second, there, 1 - along, 1.0))
        for here, there in zip(*facing, strict=True)
    )
    return Measures(step, gaps if any(part.tilt for gap in gaps for part in gap) else gaps[:1])


def points_of(hung: Hung) -> list[tuple[float, float]]:
    """Where the frame's nails go, one for each point it bears on; the top of the drop scale where a drop is unknown."""
    nails = {nail.side: (nail.x, nail.y) for nail in hung.nails}
    return [nails.get(bearing.side, (bearing.x, hung.rect.y1)) for bearing in hung.bearings]


def base_of(hung: Hung) -> float | None:
    """The distance of the two fixings that a frame tilts on (mm); None for a frame that is levelled on one."""
    points = points_of(hung)
    return max(LEAST_BASE, abs(points[1][0] - points[0][0])) if len(points) > 1 else None


def _facing(hung: Hung, beside: bool, before: bool) -> tuple[tuple[float, float], tuple[float, float]]:
    """The two corners of a frame that face the other: of its right or upper edge when it lies `before` that."""
    rect = hung.rect
    if beside:
        x = rect.x1 if before else rect.x0
        return (x, rect.y0), (x, rect.y1)
    y = rect.y1 if before else rect.y0
    return (rect.x0, y), (rect.x1, y)


def _moved(hung: Hung, corner: tuple[float, float], axis: int, sign: float) -> Iterator[Part]:
    """How a corner moves to the right (axis 0) or upward (1) with the frame's nails, times `sign`."""
    points, base = points_of(hung), base_of(hung)
    if base is None:
        ((x, y),) = points
        yield Part(hung.frame.id, 0, x, y, sign * (1 - axis), sign * axis, 0.0)
        return
    middle, bears = (points[0][0] + points[1][0]) / 2, hung.rect.y1 - added(hung.drops) / max(1, len(hung.drops))
    arm = corner[0] - middle if axis else bears - corner[1]
    for number, (x, y) in enumerate(points):
        end = 1.0 if bool(number) == (points[1][0] >= points[0][0]) else -1.0
        yield Part(hung.frame.id, number, x, y, sign * (1 - axis) / 2, sign * axis / 2, sign * end * arm / base)
