"""Straight edges near where somebody pointed: every line along which the picture gets darker or lighter all the way.

The median of the slope across a line tells an edge from what only crosses it; each is then fitted to a part of a pixel.

Limits and sizes without a source beside them are our own, no source.
"""

from __future__ import annotations

from templates_gen.base.record import Record
from templates_gen.photo.vision import Array, np, remapped

REACH = 11
"""Pixels on a picture of 12 megapixels beside a pointed line in which edges are looked for."""

SAMPLES, INSIDE = 160, 0.08
"""Places along an edge that are looked at, and what is left out at each end: corners are rounded.  Our own design."""

SHARE = np.linspace(INSIDE, 1 - INSIDE, SAMPLES)
"""Where these are, from the first corner to the second."""

FAINT, SEVERAL, APART = 1.2, 5, 2.0
"""Levels of 255 a pixel under which nothing is taken for an edge; how many are kept of one side; pixels between two."""

ROUGH = 1.0
"""Pixels that a line may move when it is fitted."""

FINE = 2
"""Places looked at for a pixel, across the edge."""

NARROWEST, CLOSE, STRAY = 6, 2.5, 0.15
"""Pixels: what is looked at beside a line at least, what of a slope is taken for the edge, and how far off the line a
place may be that is no stray."""


class Edge(Record, frozen=True):
    """A line from near the first pointed corner to near the second (pixels), and how steep it is (levels a pixel)."""

    ends: Array
    steep: float


def edges(
    grey: Array, first: Array, second: Array, unit: float, bow: Array | float = 0.0, farther: float = 0.0
) -> list[Edge]:
    """The edges along a pointed side, the steepest first; `bow` is how far a straight line is seen beside the one from
    the first corner to the second at `SHARE` of it, for a lens bends lines (pixels), and `farther` how many pixels
    farther they are looked for outwards than inwards."""
    along = second - first
    length = float(np.linalg.norm(along))
    across = np.array([-along[1], along[0]]) / max(length, 1e-9)
    reach = max(NARROWEST, round(REACH * unit))
    share, out = SHARE, reach + round(farther)
    beside = np.arange(-(out + 2) * FINE, (reach + 2) * FINE + 1) / FINE
    places = first + share[:, None, None] * along + (beside + np.reshape(bow, (-1, 1)))[..., None] * across
    levels = remapped(grey, places[..., 0], places[..., 1]).astype(float)
    smooth = (levels[:, :-2] + 2 * levels[:, 1:-1] + levels[:, 2:]) / 4
    slope = (smooth[:, 2:] - smooth[:, :-2]) * FINE / 2
    at = beside[2:-2]
    found: list[Edge] = []
    for start, end, value in _lines(slope, at, share, np.arange(-out, reach + 1)):
        if len(found) == SEVERAL:
            break
        roughly = np.array([first + start * across, second + end * across])
        if not all(_beside((roughly - other.ends) @ across, ROUGH) for other in found):
            continue
        fitted = _fitted(slope * np.sign(value), at, share, start, end)
        ends = np.array([first + fitted[0] * across, second + fitted[1] * across])
        if all(_beside((ends - other.ends) @ across) for other in found):
            found.append(Edge(ends, abs(value)))
    return found


def _beside(away: Array, less: float = 0.0) -> bool:
    """Whether a line lies beside a steeper one: what crosses that is only a part of it, seen at a slant.  It may do so
    by so much less where it is known so roughly (pixels)."""
    near = np.abs(away) + less
    return bool((away[0] * away[1] > 0 or np.abs(away).min() < less) and near.min() > APART / 2 and near.max() > APART)


def _lines(slope: Array, at: Array, share: Array, steps: Array) -> list[tuple[float, float, float]]:
    """Lines by how far they are beside at both ends, with the median of the slope along them, the steepest first: those
    that are steeper than the lines about them."""
    start, end = (side.ravel() for side in np.meshgrid(steps, steps, indexing="ij"))
    beside = start[:, None] + (end - start)[:, None] * share
    column = np.clip(np.round((beside - at[0]) * FINE).astype(int), 0, len(at) - 1)
    values = np.median(slope[np.arange(len(share)), column], axis=1)
    steep = np.pad(np.abs(values).reshape(len(steps), -1), 1)
    about = np.lib.stride_tricks.sliding_window_view(steep, (3, 3)).max((2, 3)).ravel()
    top = np.nonzero((np.abs(values) >= about) & (np.abs(values) >= FAINT))[0]
    top = top[np.argsort(-np.abs(values[top]))]
    return [(float(start[one]), float(end[one]), float(values[one])) for one in top]


def _fitted(rising: Array, at: Array, share: Array, start: float, end: float) -> tuple[float, float]:
    """The same line to a part of a pixel: through the middle of the slope at each place, strays left out."""
    for _ in range(3):
        line = start + (end - start) * share
        weight = np.maximum(rising, 0) * (np.abs(at[None] - line[:, None]) <= CLOSE)
        total = weight.sum(1)
        known = total > 1e-6
        if known.sum() < SAMPLES / 4:
            break
        middle = (weight * at).sum(1)[known] / total[known]
        off = middle - line[known]
        stray = np.abs(off - np.median(off))
        kept = stray <= max(3 * float(np.median(stray)), STRAY)
        where, middle = share[known][kept], middle[kept]
        from_mean = where - where.mean()
        slope = float(from_mean @ middle / (from_mean @ from_mean))
        start = float(middle.mean() - slope * where.mean())
        end = start + slope
    return start, end
