"""Which of the edges near where somebody pointed are a frame's own: those that are steep and make its known rectangle.

A choice of four is right where it makes the frame's rectangle, and where no other choice that lies elsewhere makes it
nearly as well.  How far the frame stands off the wall is chosen with them: it makes the frame larger on the picture,
and shows more of its own sides.

Limits and sizes without a source beside them are our own simulation, no source.
"""

from __future__ import annotations

from templates_gen.base.record import Record
from templates_gen.photo.crossing_edges import Crossings
from templates_gen.photo.vision import OF_CORNERS, Array, np

FREE = 5
"""Numbers of four corners that a known rectangle leaves no choice of: 8, less 3 of its place and turn."""

EDGE_OFF = 0.35
"""mm: how far corners are off, for edges are rounded and sizes are measured to a millimetre (a deviation)."""

UNLIKE = 15.1
"""The sum of squares that corners of the frame's own rectangle reach once in 100 times: the chi-squared distribution of
`FREE` numbers."""

AMISS = 5.0
"""Pixels that somebody points amiss, as a deviation: 8 at most."""

DEPTH_LEAST, ASTRAY = 0.4, 1.5
"""mm: how surely it is seen at best how far a frame stands off the wall, and how far it may hang elsewhere by what is
not known of that (deviations)."""

ALIKE, ASIDE = 4.0, 1.5
"""A choice is doubted where by another, worse by less than the first, the frame's upper corners hang elsewhere (mm)."""

AROUND, EVERY = 2.0, 1.5
"""It is doubted, too, where all corners of another are elsewhere (mm), and only its fainter edges make it worse by more
than the first: a frame within a frame, such as a bead."""

UPPER = slice(0, 2)
"""The upper corners among four."""


class Choice(Record, frozen=True):
    """The corners that were chosen (pixels, the upper left one first, clockwise), how far they are off the frame's
    rectangle (mm, a deviation), how far the front stands off the wall and how surely (mm, a deviation), and why all
    that is doubted; blank where it is not."""

    corners: Array
    off: float
    stands: tuple[float, float]
    doubt: str


class _Suits(Record, frozen=True):
    """By depth and choice: the corners on the wall, where the frame's rectangle lies then (mm, complex numbers), how
    unlike it they are, and how bad the choice is without and with how faint its edges are."""

    wall: Array
    lies: Array
    unlike: Array
    alone: Array
    worse: Array


def choice(
    choices: Crossings, walls: tuple[Array, Array], told: tuple[float, float], rectangle: Array, spread: Array,
    pointed: Array, unit: float,
) -> Choice:  # fmt: skip
    """The best choice; `walls` are the corners on the wall by the first and last depths, and `spread` their covariance
    (mm); `told` is how far the front should stand off it, and how surely (mm, a deviation); `pointed` is where somebody
    pointed (pixels), `unit` pixels there for one on a picture of 12 megapixels."""
    share = np.linspace(0, 1, len(choices.depths))
    wall = walls[0] + share[:, None, None, None] * (walls[1] - walls[0])
    shapes = _shapes(rectangle)
    inverse = np.linalg.inv(shapes.T @ (spread + EDGE_OFF**2 * np.eye(OF_CORNERS)) @ shapes)
    off = off_rectangle(wall.reshape(-1, 4, 2), rectangle)
    unlike = np.einsum("ni,ij,nj->n", off, inverse, off).reshape(wall.shape[:2])
    first, last = choices.corners
    amiss = (((first + last) / 2 - pointed) ** 2).sum((1, 2)) / (AMISS * unit) ** 2
    usual = ((choices.depths - told[0]) / told[1]) ** 2
    alone = unlike + amiss + usual[:, None] + choices.outside.T
    lies = _laid(wall.reshape(-1, 4, 2), rectangle).reshape(*wall.shape[:2], 4)
    suits = _Suits(wall, lies, unlike, alone, alone + choices.faint)
    depth, best = (int(at) for at in np.unravel_index(np.argmin(suits.worse), unlike.shape))
    worse = suits.worse[:, best] - suits.worse[depth, best]
    likely = np.exp(-worse / 2) * (worse < ALIKE)
    likely /= likely.sum()
    stands = float(likely @ choices.depths)
    unsure = float(np.sqrt(likely @ (choices.depths - stands) ** 2 + DEPTH_LEAST**2))
    far = float(np.sqrt((off_rectangle(wall[depth, best][None], rectangle) ** 2).mean()))
    corners = first[best] + float(np.interp(stands, choices.depths, share)) * (last[best] - first[best])
    aside = unsure * float(np.abs(lies[-1, best] - lies[0, best])[UPPER].max() / np.ptp(choices.depths))
    return Choice(corners, far, (stands, unsure), _doubt(suits, depth, best, far, aside))


def _doubt(suits: _Suits, depth: int, best: int, far: float, aside: float) -> str:
    """Why the best choice is doubted: it is so far off its size, or hangs so far aside by what is not known of how far
    it stands off the wall (mm)."""
    if suits.unlike[depth, best] > UNLIKE:
        return f"its edges are {far:.1f} mm off its size"
    nearest, rows = np.argmin(suits.worse, 0), np.arange(suits.worse.shape[1])
    elsewhere = np.abs(suits.lies[nearest, rows] - suits.lies[depth, best])[:, UPPER].max(1) > ASIDE
    around = np.linalg.norm(suits.wall[nearest, rows] - suits.wall[depth, best], axis=2).min(1) > EVERY
    least, alone = suits.worse.min(0), suits.alone.min(0)
    if (least[elsewhere] < least[best] + ALIKE).any() or (alone[around] < alone[best] + AROUND).any():
        return "other edges suit its size as well"
    return "it is seen from aside, and the job has no depth of it" if aside > ASTRAY else ""


def off_rectangle(corners: Array, rectangle: Array) -> Array:
    """How four corners of the wall are off a rectangle that is laid as near as it can be, for each choice: `FREE`
    numbers (mm)."""
    turned = _turn(corners, rectangle).conj()[:, None] * (_plane(corners) - _plane(corners).mean(1, keepdims=True))
    level = turned - _plane(rectangle - rectangle.mean(0))
    off = np.stack([level.real, level.imag], -1).reshape(-1, OF_CORNERS)
    return np.asarray(off @ _shapes(rectangle))


def _laid(corners: Array, rectangle: Array) -> Array:
    """Where that rectangle's corners lie, as complex numbers (mm)."""
    own = _plane(rectangle - rectangle.mean(0))
    return np.asarray(_plane(corners).mean(1, keepdims=True) + _turn(corners, rectangle)[:, None] * own)


def _turn(corners: Array, rectangle: Array) -> Array:
    """How that rectangle is turned, as complex numbers of length 1."""
    seen = _plane(corners - corners.mean(1, keepdims=True))
    turn = (seen * _plane(rectangle - rectangle.mean(0)).conj()).sum(1)
    return np.asarray(turn / np.abs(turn))


def _plane(points: Array) -> Array:
    return np.asarray(points @ [1, 1j])


def _shapes(rectangle: Array) -> Array:
    """The ways in which four corners may be off that are no move and no turn, a column each."""
    x, y = (rectangle - rectangle.mean(0)).T
    one, none = np.ones(4), np.zeros(4)
    moves = np.stack([np.c_[one, none].ravel(), np.c_[none, one].ravel(), np.c_[-y, x].ravel()], -1)
    return np.asarray(np.linalg.svd(moves)[0][:, 3:])
