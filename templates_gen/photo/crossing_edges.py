"""The edges near where somebody pointed as the four sides of a frame: where they cross, and how little they look like
its outer ones.

A frame that stands off the wall shows the camera some of its own sides, from its front to where these meet the wall.
Mat, moulding and shadow have edges too.

Limits and sizes without a source beside them are our own simulation, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import product

from templates_gen.base.record import Record
from templates_gen.photo.edges import Edge
from templates_gen.photo.vision import Array, np

FAINTER = 2.0
"""How much worse a choice is for an edge that is e times fainter than the steepest of its side."""

LEAST_DEEP, SEEN = 0.7, 3.0
"""Pixels of a frame's own side that are worth a thought, and from which on it should be seen."""

MEETS_OFF = 0.8
"""Pixels that a line is off where the frame meets the wall (a deviation)."""

OTHER, BESIDE = 0.3, 2.0
"""Edges outside another count where they are at least so steep as a share of it, and so many pixels away."""

STRANGE, LACKING = 4.0, 3.0
"""How much worse a choice is for an edge outside its own that is not explained, and for lack of one that should be."""


class Crossings(Record, frozen=True):
    """Of a frame the corners that every choice of a top, right, bottom and left edge gives, where these cross (pixels),
    if it stands off the wall as little and as much as the first and last of `depths` (mm); and how little, by their
    steepness and, by these depths, by what is outside them, its edges look like a frame's outer ones."""

    depths: Array
    corners: tuple[Array, Array]
    faint: Array
    outside: Array


class Side(Record, frozen=True):
    """Of one side of a frame every edge that its front may end at: the line by the first and by the last depth, how
    much fainter it is than others, and how strange what is outside it, by the depths."""

    lines: tuple[Array, Array]
    faint: Array
    outside: Array


def crossings(sides: Sequence[Sequence[Edge]], slants: Array, depths: Array) -> Crossings:
    """The choices of these edges; `slants` is how far outside each side's front edge, at both ends, the frame meets the
    wall (pixels a mm), and `depths` how far it may stand off the wall (mm)."""
    read = [_side(side, slant, depths) for side, slant in zip(sides, slants, strict=True)]
    every = np.array(list(product(*(range(len(one.faint)) for one in read))))
    first, last = (
        _crossing([one.lines[k][every[:, at]] for at, one in enumerate(read)]) for k in (0, 1)
    )  # fmt: skip
    return Crossings(
        depths, (first, last), np.sum([one.faint[every[:, at]] for at, one in enumerate(read)], axis=0),
        np.sum([one.outside[every[:, at]] for at, one in enumerate(read)], axis=0),
    )  # fmt: skip


def _side(side: Sequence[Edge], slant: Array, depths: Array) -> Side:
    """Its front ends at an edge that is seen; or at none, because the frame's own side looks like its front, and what
    is seen is where the frame meets the wall."""
    ends = np.array([edge.ends for edge in side])
    steep = np.array([edge.steep for edge in side])
    faint = FAINTER * np.log(steep.max() / steep)
    outside = np.array([_own_side(side, edge, slant, depths) for edge in side])
    if slant.mean() * depths[-1] <= LEAST_DEEP:
        return Side((_lines(ends), _lines(ends)), faint, outside)
    nothing = np.full((len(depths), len(slant)), -np.inf)
    hidden = np.array([LACKING + _strange(side, edge, nothing) for edge in side])
    inwards = np.array([_inwards(edge) for edge in side])[:, None]
    first, last = (
        _lines(np.concatenate([ends, ends + depth * slant[:, None] * inwards])) for depth in depths[[0, -1]]
    )  # fmt: skip
    return Side((first, last), np.r_[faint, faint], np.r_[outside, hidden])


def _lines(ends: Array) -> Array:
    """The lines through these pairs of points, as three numbers each."""
    way = ends[:, 1] - ends[:, 0]
    return np.asarray(np.c_[-way[:, 1], way[:, 0], way[:, 1] * ends[:, 0, 0] - way[:, 0] * ends[:, 0, 1]])


def _crossing(lines: Sequence[Array]) -> Array:
    """Where top, right, bottom and left lines cross."""
    top, right, bottom, left = lines
    corners = [np.cross(one, other) for one, other in ((left, top), (top, right), (right, bottom), (bottom, left))]
    return np.asarray(np.stack([corner[:, :2] / corner[:, 2:] for corner in corners], 1))


def _inwards(edge: Edge) -> Array:
    along = edge.ends[1] - edge.ends[0]
    return np.asarray(np.array([-along[1], along[0]]) / np.linalg.norm(along))


def _own_side(side: Sequence[Edge], edge: Edge, slant: Array, depths: Array) -> Array:
    """How much worse a front edge is for the edges outside it, by how far it stands off the wall.  It has none there
    but that where its own side meets the wall, and that is expected where the camera sees so much of the side."""
    meets = -depths[:, None] * slant
    off = [(((other.ends - edge.ends) @ _inwards(edge) - meets) ** 2).mean(1) / MEETS_OFF**2 for other in side]
    expected = LACKING * np.clip((-meets.mean(1) - LEAST_DEEP) / (SEEN - LEAST_DEEP), 0, 1)
    return np.asarray(np.minimum(np.min(off, axis=0), expected) + _strange(side, edge, meets))


def _strange(side: Sequence[Edge], edge: Edge, meets: Array) -> Array:
    """How much worse a front edge is for edges outside it that are not where it meets the wall."""
    worse = np.zeros(len(meets))
    for other in side:
        away = (other.ends - edge.ends) @ _inwards(edge)
        if other.steep > OTHER * edge.steep and away.mean() < -BESIDE:
            worse += STRANGE * (np.abs(away - meets).mean(1) > BESIDE)
    return np.asarray(worse)
