"""Where points of the sheets lie relative to the centre line and the level line, as these are on the taped paper.

A photograph does not see the lines on the wall.  The paper's own go by them: its target is on their crossing, and its
level line was set level.
"""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.base.record import Record
from templates_gen.documents.photographed import Papers
from templates_gen.photo.fit import Fit
from templates_gen.photo.vision import Array, np

INSET = 5.0
"""mm from a sheet's edge to where its piece of the level line is taken.  Our own design, no source."""


class Gauge(Record, frozen=True):
    """How the whole paper is off its lines: `at` is their crossing from the middle of all (mm), `moved` and `turn`
    (radians) how the paper lies there, and `by` how these three come from the sheets' numbers."""

    at: Array
    moved: Array
    turn: float
    by: Array
    by_lines: bool


class Spots(Record, frozen=True):
    """Points of sheets: how far each is from its place (mm), with the covariance of all and each one's variances."""

    moved: Array
    covariance: Array

    @property
    def variance(self) -> Array:
        return np.diag(self.covariance).reshape(-1, 2)


Places = Sequence[tuple[str, tuple[float, float]]]
"""Points of the wall (mm), each with the sheet that it is looked at on."""


def gauge(fit: Fit, papers: Papers, centre: Array) -> Gauge:
    """How the paper's two lines lie."""
    x, y = papers.centre_line, papers.level_line
    seen = [(name, cell) for name, cell in papers.cells if name in fit.scene.sheets]
    level = [
        (name, (at, y)) for name, cell in seen if cell.y0 <= y <= cell.y1 for at in (cell.x0 + INSET, cell.x1 - INSET)
    ]
    crossing = [(name, (x, y)) for name, cell in seen if cell.x0 <= x <= cell.x1 and cell.y0 <= y <= cell.y1]
    at = np.array([x, y]) - centre
    if not crossing or len(level) < 3:
        return _by_all(fit, seen, centre, at)
    moved, by = _raw(fit, [*level, crossing[0]], centre)
    away = np.array([point[0] - x for _, point in level])
    slope = (away - away.mean()) / ((away - away.mean()) ** 2).sum()
    of_turn = slope @ by[:-1, 1]
    return Gauge(at, moved[-1], float(slope @ moved[:-1, 1]), np.vstack([by[-1], of_turn]), True)


def _by_all(fit: Fit, seen: Sequence[tuple[str, object]], centre: Array, at: Array) -> Gauge:
    """Where too little of the lines was seen: by all sheets."""
    count = len(fit.scene.sheets)
    by = np.zeros((3, 3 * count))
    for k in range(3):
        by[k, k::3] = 1 / count
    mean = fit.state.sheets.mean(0)
    return Gauge(at, mean[:2], float(mean[2]), by, False)


def _raw(fit: Fit, places: Places, centre: Array) -> tuple[Array, Array]:
    """How far points are from their places on the fit's own wall, and how that comes from the sheets' numbers."""
    number = np.array([fit.scene.sheets.index(name) for name, _ in places])
    points = np.array([point for _, point in places])
    first = np.array([np.nonzero(fit.scene.sheet == one)[0][0] for one in number])
    rel = points - centre - fit.scene.middle[first]
    dx, dy, turn = fit.state.sheets[number].T
    c, s = np.cos(turn), np.sin(turn)
    x, y = c * rel[:, 0] - s * rel[:, 1], s * rel[:, 0] + c * rel[:, 1]
    moved = np.stack([x - rel[:, 0] + dx, y - rel[:, 1] + dy], -1)
    by = np.zeros((len(places), 2, 3 * len(fit.scene.sheets)))
    rows = np.arange(len(places))
    by[rows, 0, 3 * number] = by[rows, 1, 3 * number + 1] = 1.0
    by[rows, 0, 3 * number + 2], by[rows, 1, 3 * number + 2] = -y, x
    return moved, by


def spots(fit: Fit, places: Places, centre: Array, lines: Gauge) -> Spots:
    """How far points are from their places relative to the two lines."""
    if not places:
        return Spots(np.zeros((0, 2)), np.zeros((0, 0)))
    raw, by = _raw(fit, places, centre)
    from_crossing = np.array([point for _, point in places]) - centre - lines.at
    there = from_crossing + raw - lines.moved
    c, s = np.cos(lines.turn), np.sin(lines.turn)
    level = np.stack([c * there[:, 0] + s * there[:, 1], c * there[:, 1] - s * there[:, 0]], -1)
    by = by - lines.by[:2]
    by[:, 0] += there[:, 1:] * lines.by[2]
    by[:, 1] -= there[:, :1] * lines.by[2]
    flat = by.reshape(-1, by.shape[-1])
    return Spots(level - from_crossing, flat @ fit.of_sheets @ flat.T)
