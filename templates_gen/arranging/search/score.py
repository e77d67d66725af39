"""How well an arrangement hangs together: its measures by their weights.  Rectangles in mm, y up."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templates_gen.arranging.search.measures import (
    alignment,
    compactness,
    equilibrium,
    evenness,
    mass_distance,
    proportion,
    side_weights,
    symmetry,
)
from templates_gen.base.geometry import Rect, bounds
from templates_gen.base.record import Record

WEIGHTS = {
    "balance": 0.16, "equilibrium": 0.06, "symmetry": 0.18, "compactness": 0.28, "alignment": 0.14, "evenness": 0.10,
    "proportion": 0.08,
}  # fmt: skip
"""What each measure counts for.  Our own design, no source: people judge balance and symmetry well and like symmetry
(Bauerly and Liu, IJHCS 64, 2006, 670-682), and a group is to be one piece on the wall, so compactness counts most."""


class Score(Record, frozen=True):
    """The measures of an arrangement, each from 0 (bad) to 1, and how much heavier one side is.

    `left_heavy` and `top_heavy` run from -1 to 1: the difference of the two sides' moments over the larger.  `mass_off`
    is how far the centre of mass lies from the middle, in per cent.
    """

    balance: float
    equilibrium: float
    symmetry: float
    compactness: float
    alignment: float
    evenness: float
    proportion: float
    left_heavy: float
    top_heavy: float
    mass_off: float

    @property
    def total(self) -> float:
        """All measures by their weights."""
        return sum((weight * float(getattr(self, name)) for name, weight in WEIGHTS.items()), 0.0)


def score(rects: Sequence[Rect], gap_across: float, gap_down: float, centre: float | None = None) -> Score:
    """The score of an arrangement with these gaps wanted (mm), about an upright line at x = `centre`, or its middle."""
    axes = _axes(bounds(rects), centre)
    left, top = side_weights(rects, axes)
    off = mass_distance(rects, axes)
    return Score(**dict(_measures(rects, gap_across, gap_down, centre)), left_heavy=left, top_heavy=top, mass_off=off)


def total(
    rects: Sequence[Rect], gap_across: float, gap_down: float, centre: float | None = None, least: float = 0.0
) -> float:
    """The total of the score; where it cannot reach `least`, some number below that, which is sooner known."""
    most = 1.0
    for name, value in _measures(rects, gap_across, gap_down, centre):
        most -= WEIGHTS[name] * (1 - value)
        if most < least:
            return most
    return most


def _measures(
    rects: Sequence[Rect], gap_across: float, gap_down: float, centre: float | None
) -> Iterator[tuple[str, float]]:
    """Every measure by its name, those that are quick to tell first."""
    box = bounds(rects)
    axes = _axes(box, centre)
    yield "compactness", compactness(rects, box, gap_across, gap_down)
    yield "proportion", proportion(box)
    yield "equilibrium", equilibrium(rects, axes)
    left, top = side_weights(rects, axes)
    yield "balance", 1 - (abs(left) + abs(top)) / 2
    yield "alignment", alignment(rects)
    yield "symmetry", symmetry(rects, axes)
    yield "evenness", evenness(rects, gap_across, gap_down)


def _axes(box: Rect, centre: float | None) -> Rect:
    return box if centre is None else about_line(box, centre)


def about_line(box: Rect, centre: float) -> Rect:
    """The box made wider until the upright line at `centre` is its middle."""
    half = max(centre - box.x0, box.x1 - centre)
    return Rect(centre - half, box.y0, centre + half, box.y1)
