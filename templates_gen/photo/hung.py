"""How frames hang, from a photograph on which somebody pointed at their corners, with a photo card for the level.

Each side is looked for near where it was pointed at; the frame's known size chooses among edges of moulding, mat and
shadow.  Places are relative to each other: a photograph does not see where the wall's left end and floor are.

Limits and sizes without a source beside them are our own, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import partial
from itertools import product

from templates_gen.base.errors import InputError
from templates_gen.base.record import Record
from templates_gen.documents.photo_card import Card
from templates_gen.documents.photographed import Face
from templates_gen.photo.cards import card_corners
from templates_gen.photo.edges import Edge, edges
from templates_gen.photo.fit import NORMAL, Fit, Widths, fitted
from templates_gen.photo.gauge import Gauge, spots
from templates_gen.photo.picture import Photo
from templates_gen.photo.scene import PER_WIDTH, scene
from templates_gen.photo.screening import predicted
from templates_gen.photo.tags import seen_tags
from templates_gen.photo.vision import Array, homography, np, through

STANDS = 20.0
"""mm that the front of a frame stands off the wall where its depth is not known.  Our own guess."""

WIDTHS = Widths(corner=0.4, aside=15.0, turn=float(np.radians(1.0)), height=1e-4)
"""Of frames and the card: how exactly corners are seen, and how far they may be off.  Our own design."""

WRONG_SIZE, ALIKE, ELSEWHERE = 1.5, 0.7, 1.5
"""mm: a frame that seems so much larger or smaller is not read; nor one that another choice of edges fits as well (to
the second), if it lies elsewhere (by the third).  Our own simulation, no source."""

FLOOR = 0.6
"""mm of what no edge tells, such as rounded mouldings.  Our own guess."""

POINTED, IN_THE_SMALL = 60.0, 5.0
"""mm that a corner may be off the plane of all frames as they were pointed at on a picture of 12 megapixels; mm that a
fit may be off the plane of one frame.  Our own design, no source."""

LEAST = 2
"""Frames without which nothing is read: places are relative to each other."""

FIRST_FRAME = 10_000
"""Numbers of frames among those of tags."""


class Hangs(Record, frozen=True):
    """How a frame hangs: its top left and top right corner on the wall (mm), as if the frames in the middle were at
    their places, and what 95 of 100 keep within (mm)."""

    id: str
    left: tuple[float, float]
    right: tuple[float, float]
    sure: float


class Hung(Record, frozen=True):
    """The frames that were read, and why others were not, by their ids."""

    frames: tuple[Hangs, ...]
    doubts: tuple[tuple[str, str], ...]


CARD = "the card\0"
"""The card among the frames: no id of a frame has such a letter."""

ToWall = Callable[[str, Array], Array]
"""Points of the wall at pixels, on the front of a frame."""

Chosen = Mapping[str, Array]
"""The corners of frames on the picture, the upper left one first, clockwise."""


def read_hung(
    photo: Photo, faces: Sequence[Face], depths: Mapping[str, float], pointed: Chosen, cards: Sequence[Card]
) -> Hung:
    """How the pointed frames hang.  Raises InputError for fewer than two."""
    known = [face for face in faces if face.id in pointed]
    if len(known) < LEAST:
        raise InputError(photo.name, f"found corners of {len(known)} frames, expected {LEAST} or more",
                         "places are read relative to each other: point at more")  # fmt: skip
    unit = max(photo.size) / PER_WIDTH
    sides = {face.id: [edges(photo.grey, *pair, unit) for pair in _sides(pointed[face.id])] for face in known}
    doubts = {name: "an edge is not to be seen" for name, found in sides.items() if not all(found)}
    flat = homography(
        np.concatenate([pointed[face.id] for face in known]),
        np.concatenate([_corners(face) for face in known]), POINTED * unit,
    )  # fmt: skip
    if flat is None:
        raise InputError(
            photo.name, "the pointed corners are no frames of this job", "point from the upper left clockwise"
        )
    chosen = _choose(known, sides, doubts, lambda name, points: through(flat, points))
    fit = _fit(photo, known, depths, chosen, cards)
    for _ in range(2):
        doubts = {name: why for name, why in doubts.items() if not all(sides[name])}
        chosen = _choose(known, sides, doubts, partial(_on_wall, fit, known))
        fit = _fit(photo, known, depths, chosen, cards)
    return _told(fit, known, doubts)


def _sides(corners: Array) -> list[tuple[Array, Array]]:
    """Top, right, bottom and left side."""
    return [(corners[at], corners[(at + 1) % 4]) for at in range(4)]


def _corners(face: Face) -> Array:
    r = face.frame
    return np.array([(r.x0, r.y1), (r.x1, r.y1), (r.x1, r.y0), (r.x0, r.y0)])


def _candidates(sides: Sequence[Sequence[Edge]]) -> Array:
    """The corners that every choice of a top, right, bottom and left edge gives: where these cross."""
    lines = []
    for side in sides:
        ends = np.array([edge.ends for edge in side])
        way = ends[:, 1] - ends[:, 0]
        lines.append(np.c_[-way[:, 1], way[:, 0], way[:, 1] * ends[:, 0, 0] - way[:, 0] * ends[:, 0, 1]])
    every = np.array(list(product(*(range(len(side)) for side in sides))))
    top, right, bottom, left = (lines[at][every[:, at]] for at in range(4))
    corners = [np.cross(one, other) for one, other in ((left, top), (top, right), (right, bottom), (bottom, left))]
    return np.stack([corner[:, :2] / corner[:, 2:] for corner in corners], 1)


def _choose(
    known: Sequence[Face], sides: Mapping[str, list[list[Edge]]], doubts: dict[str, str], to_wall: ToWall
) -> dict[str, Array]:
    """Of every frame the edges that suit its size best; it gets a doubt where others suit as well, or none does."""
    chosen = {}
    for face in known:
        if not all(sides[face.id]):
            continue
        corners = _candidates(sides[face.id])
        walls = to_wall(face.id, corners.reshape(-1, 2)).reshape(-1, 4, 2)
        off = _off_size(walls, face)
        best = int(np.argmin(off))
        chosen[face.id] = corners[best]
        elsewhere = np.linalg.norm(walls.mean(1) - walls[best].mean(0), axis=1) > ELSEWHERE
        if off[best] > WRONG_SIZE:
            doubts[face.id] = f"its edges are {off[best]:.1f} mm off its size"
        elif (off[elsewhere] < off[best] + ALIKE).any():
            doubts[face.id] = "two edges suit its size alike"
    return chosen


def _off_size(walls: Array, face: Face) -> Array:
    """How far the sides of candidates are from the frame's, the worst of the four (mm)."""
    lengths = np.linalg.norm(walls - np.roll(walls, -1, 1), axis=2)
    should = np.array([face.frame.width, face.frame.height] * 2)
    return np.asarray(np.abs(lengths - should).max(1))


def _fit(
    photo: Photo, known: Sequence[Face], depths: Mapping[str, float], chosen: Chosen, cards: Sequence[Card]
) -> Fit:  # fmt: skip
    """The camera by all frames that were chosen, and the card that is seen."""
    seen = dict(seen_tags(photo.grey).tags)
    whole = next((card for card in cards if all(number in seen for number, _ in card.tags)), None)
    if whole is None:
        raise InputError(photo.name, "shows no whole photo card, which tells what is level",
                         "print one with templates-gen photo card, tape it level beside the frames")  # fmt: skip
    printed: dict[int, tuple[str, Array]] = {}
    view, stands, middles = {}, {}, {}
    for at, face in enumerate(face for face in known if face.id in chosen):
        number = FIRST_FRAME + at
        printed[number], view[number] = (face.id, _corners(face)), chosen[face.id]
        stands[number] = depths.get(face.id, STANDS)
        middles[face.id] = np.array([face.frame.cx, face.frame.cy])
    if len(view) < LEAST:
        raise InputError(photo.name, "no edges of two frames are to be seen where they were pointed at",
                         "point at the outer corners; take the picture with more light")  # fmt: skip
    plane = homography(
        np.concatenate(list(view.values())), np.concatenate([corners for _, corners in printed.values()]), POINTED
    )
    assert plane is not None  # two frames, eight corners
    middle = through(plane, np.concatenate([seen[number] for number, _ in whole.tags])).mean(0)
    middles[CARD] = middle
    for at, (number, _) in enumerate(whole.tags):
        printed[number], view[number] = (CARD, card_corners(whole, at) + middle), seen[number]
    centre = np.mean([middles[face.id] for face in known if face.id in middles], axis=0)
    fit = fitted(scene([view], photo.size, printed, middles, centre, stands), flat=True, known=WIDTHS)
    assert fit is not None  # a camera sees these, as a plane does
    return fit


def _on_wall(fit: Fit, known: Sequence[Face], name: str, pixels: Array) -> Array:
    """Points of a frame's front at these pixels (mm), by the fit: a homography in the small, made anew at the frame."""
    face = next(face for face in known if face.id == name)
    grid = _corners(face)
    return through(_plane(fit, name, grid, known), pixels)


def _plane(fit: Fit, name: str, grid: Array, known: Sequence[Face]) -> Array:
    seen = seen_front(fit, name, grid, _middle_of(fit, known))
    found = homography(seen, grid, IN_THE_SMALL)
    assert found is not None  # a frame's four corners
    return found


def _middle_of(fit: Fit, known: Sequence[Face]) -> Array:
    return np.asarray(
        np.mean([(face.frame.cx, face.frame.cy) for face in known if face.id in fit.scene.sheets], axis=0)
    )


def seen_front(fit: Fit, name: str, points: Array, centre: Array) -> Array:
    """The pixels of points on a frame's front, which stands off the wall."""
    number = fit.scene.sheets.index(name) if name in fit.scene.sheets else -1
    rows = np.nonzero(fit.scene.sheet == number)[0]
    stands = float(fit.scene.stands[fit.scene.tag[rows[0]]]) if len(rows) else STANDS
    middle = points.mean(0) if not len(rows) else fit.scene.middle[rows[0]] + centre
    return predicted(fit, 0, name, points, middle, centre, stands)


def _told(fit: Fit, known: Sequence[Face], doubts: Mapping[str, str]) -> Hung:
    """The readings: turned by the card's level, and moved so that the frames' middles are at their places."""
    centre = _middle_of(fit, known)
    read = [face for face in known if face.id in fit.scene.sheets]
    numbers = [fit.scene.sheets.index(face.id) for face in read]
    card = fit.scene.sheets.index(CARD)
    by = np.zeros((3, 3 * len(fit.scene.sheets)))
    for number in numbers:
        by[0, 3 * number] = by[1, 3 * number + 1] = 1 / len(numbers)
    by[2, 3 * card + 2] = 1.0
    moved = fit.state.sheets[numbers, :2].mean(0)
    lines = Gauge(np.zeros(2), moved, float(fit.state.sheets[card, 2]), by, True)
    places = [(face.id, corner) for face in read for corner in map(tuple, _corners(face)[:2])]
    found = spots(fit, places, centre, lines)
    frames = []
    for at, face in enumerate(read):
        if face.id in doubts:
            continue
        left, right = (_corners(face)[k] + found.moved[2 * at + k] for k in (0, 1))
        sure = NORMAL * float(np.sqrt(found.variance[2 * at : 2 * at + 2].max() + FLOOR**2))
        frames.append(Hangs(face.id, (float(left[0]), float(left[1])), (float(right[0]), float(right[1])), sure))
    return Hung(tuple(frames), tuple(sorted(doubts.items())))
