"""Which of the edges near where somebody pointed are a frame's own: those that are steep and make its known rectangle.

Mat, moulding, shadow and the frame's own sides have edges too.  A choice of four is right where it makes the frame's
rectangle, and where no other choice that lies elsewhere makes it nearly as well.

Limits and sizes without a source beside them are our own simulation, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import product

from templates_gen.base.record import Record
from templates_gen.photo.edges import Edge
from templates_gen.photo.vision import OF_CORNERS, Array, np

FREE = 5
"""Numbers of four corners that a known rectangle leaves no choice of: 8, less 3 of its place and turn."""

FAINTER = 2.0
"""How much worse a choice is for an edge that is e times fainter than the steepest of its side."""

EDGE_OFF = 0.35
"""mm: how far corners are off, for edges are rounded and sizes are measured to a millimetre (a deviation)."""

UNLIKE = 20.5
"""The sum of squares that corners of the frame's own rectangle reach once in 1,000 times: the chi-squared distribution
of `FREE` numbers."""

LEAST_DEEP = 0.7
"""Pixels of a frame's own side that are worth a thought."""

OTHER, BESIDE, SEEN = 0.3, 2.0, 3.0
"""Edges outside another count where they are at least so steep as a share of it, and so many pixels away; a frame's own
side is seen where it takes so many."""

STRANGE, LACKING = 4.0, 1.5
"""How much worse a choice is for an edge outside its own that is not explained, and for lack of one that should be."""

AMISS = 5.0
"""Pixels that somebody points amiss, as a deviation: 8 at most."""

ALIKE, ASIDE = 4.0, 1.5
"""A choice is doubted where by another, worse by less than the first, the frame's upper corners hang elsewhere (mm)."""

AROUND, EVERY = 2.0, 1.5
"""It is doubted, too, where all corners of another are elsewhere (mm), and only its fainter edges make it worse by more
than the first: a frame within a frame, such as a bead or the frame's own sides."""


class Choice(Record, frozen=True):
    """The corners that were chosen (pixels, the upper left one first, clockwise), how far they are off the frame's
    rectangle (mm, a deviation), and why they are doubted; blank where they are not."""

    corners: Array
    off: float
    doubt: str


class Crossings(Record, frozen=True):
    """Of a frame the corners that every choice of a top, right, bottom and left edge gives, where these cross (pixels),
    and how little its edges look like a frame's outer ones, each by itself."""

    corners: Array
    faint: Array


def crossings(sides: Sequence[Sequence[Edge]], deep: Sequence[float], unsure: float) -> Crossings:
    """The choices of these edges; `deep` is how far outside each side's front edge the frame meets the wall (pixels),
    and `unsure` a share of it (a deviation)."""
    lines, faint = [], []
    for side, away in zip(sides, deep, strict=True):
        hidden = _hidden(side, away)
        ends = np.array([edge.ends for edge in (*side, *hidden)])
        way = ends[:, 1] - ends[:, 0]
        lines.append(np.c_[-way[:, 1], way[:, 0], way[:, 1] * ends[:, 0, 0] - way[:, 0] * ends[:, 0, 1]])
        steep = np.array([edge.steep for edge in side])
        alone = FAINTER * np.log(steep.max() / steep)
        faint.append(np.r_[alone + _outside(side, away, unsure * abs(away)), (alone + LACKING)[: len(hidden)]])
    every = np.array(list(product(*(range(len(one)) for one in faint))))
    top, right, bottom, left = (lines[at][every[:, at]] for at in range(4))
    corners = [np.cross(one, other) for one, other in ((left, top), (top, right), (right, bottom), (bottom, left))]
    fainter = sum(faint[at][every[:, at]] for at in range(4))
    return Crossings(np.stack([corner[:, :2] / corner[:, 2:] for corner in corners], 1), np.asarray(fainter))


def _hidden(side: Sequence[Edge], deep: float) -> list[Edge]:
    """Front edges that are not to be seen, because the frame's own side looks like its front: where these would be if
    what is seen is where the frame meets the wall."""
    if deep < LEAST_DEEP:
        return []
    found = []
    for edge in side:
        along = edge.ends[1] - edge.ends[0]
        inwards = np.array([-along[1], along[0]]) / np.linalg.norm(along)
        found.append(Edge(edge.ends + deep * inwards, edge.steep, edge.inwards + deep))
    return found


def _outside(side: Sequence[Edge], deep: float, unsure: float) -> Array:
    """How much worse an edge is for edges outside it.  A frame's outer edge has none there but that where its own side
    meets the wall, and that is expected where the camera sees so much of the side."""
    worse = np.zeros(len(side))
    for at, edge in enumerate(side):
        away = [edge.inwards - other.inwards for other in side if other.steep > OTHER * edge.steep]
        out = np.array([far for far in away if far > BESIDE])
        own = np.abs(out - deep) < BESIDE + unsure
        worse[at] = STRANGE * (~own).sum() + (LACKING if deep > SEEN and not own.any() else 0.0)
    return worse


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


def choice(choices: Crossings, wall: Array, rectangle: Array, spread: Array, pointed: Array, unit: float) -> Choice:
    """The best choice; `wall` are the corners on the wall, and `spread` their covariance (mm); `pointed` is where
    somebody pointed (pixels), `unit` pixels there for one on a picture of 12 megapixels."""
    off, shapes = off_rectangle(wall, rectangle), _shapes(rectangle)
    inverse = np.linalg.inv(shapes.T @ (spread + EDGE_OFF**2 * np.eye(OF_CORNERS)) @ shapes)
    unlike = np.einsum("ni,ij,nj->n", off, inverse, off)
    amiss = ((choices.corners - pointed) ** 2).sum((1, 2)) / (AMISS * unit) ** 2
    worse = unlike + choices.faint + amiss
    best = int(np.argmin(worse))
    lies, alone = _laid(wall, rectangle), unlike + amiss
    elsewhere = np.abs(lies - lies[best])[:, :2].max(1) > ASIDE
    around = np.linalg.norm(wall - wall[best], axis=2).min(1) > EVERY
    far = float(np.sqrt((off[best] ** 2).mean()))
    doubt = ""
    if unlike[best] > UNLIKE:
        doubt = f"its edges are {far:.1f} mm off its size"
    elif (worse[elsewhere] < worse[best] + ALIKE).any() or (alone[around] < alone[best] + AROUND).any():
        doubt = "other edges suit its size as well"
    return Choice(choices.corners[best], far, doubt)
