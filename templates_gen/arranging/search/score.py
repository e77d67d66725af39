"""How good an arrangement is, in numbers to be told: by its looks, and by published measures.  mm, y up."""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.arranging.search.boxes import Gaps
from templates_gen.arranging.search.ground import boxed
from templates_gen.arranging.search.looks import looks
from templates_gen.arranging.search.measures import equilibrium, mass_distance, side_weights, symmetry
from templates_gen.base.geometry import Rect, bounds
from templates_gen.base.record import Record

BEST = 1.2
"""The total of an arrangement whose looks cost nothing; equal frames in a regular grid cost 0.2.  Our own design."""


class Score(Record, frozen=True):
    """The numbers of an arrangement: the total by its looks, from 0 (bad) to 1, and what was published.

    `filled` is the share of the group's outline that is frame or the gap around one, `mirrored` the share of frame that
    lies on frame in the mirror, `voids` the blank areas within over the area of frames.  `left_heavy` and `top_heavy`
    run from -1 to 1: the difference of the two sides' moments over the larger.  `mass_off` is how far the centre of
    mass lies from the middle, in per cent.
    """

    total: float
    balance: float
    equilibrium: float
    symmetry: float
    filled: float
    mirrored: float
    voids: float
    left_heavy: float
    top_heavy: float
    mass_off: float


def score(
    rects: Sequence[Rect], gap_across: float, gap_down: float, centre: float | None = None, inside: Sequence[Rect] = ()
) -> Score:
    """The score of an arrangement with these gaps wanted (mm), about an upright line at x = `centre`, or its middle.

    What frames hang around lies `inside`: it belongs to the picture, but weighs nothing.
    """
    box = bounds(rects)
    axes = box if centre is None else about_line(box, centre)
    left, top = side_weights(rects, axes)
    seen = looks([boxed(rect) for rect in (*rects, *inside)], Gaps(gap_across, gap_down), centre)
    return Score(
        total=min(1.0, max(0.0, BEST - seen.cost)),
        balance=1 - (abs(left) + abs(top)) / 2,
        equilibrium=equilibrium(rects, axes),
        symmetry=symmetry(rects, axes),
        filled=1 - seen.blank,
        mirrored=1 - seen.unlike,
        voids=seen.void,
        left_heavy=left,
        top_heavy=top,
        mass_off=mass_distance(rects, axes),
    )


def about_line(box: Rect, centre: float) -> Rect:
    """The box made wider until the upright line at `centre` is its middle."""
    half = max(centre - box.x0, box.x1 - centre)
    return Rect(centre - half, box.y0, centre + half, box.y1)
