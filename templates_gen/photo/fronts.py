"""The fronts of frames on a photograph, which stand off the wall: a camera by some of them and the card, and where
their corners are on the wall by it.

Limits and sizes without a source beside them are our own, no source.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from templates_gen.base.errors import InputError
from templates_gen.base.record import Record, replace
from templates_gen.documents.photo_card import Card
from templates_gen.documents.photographed import Face
from templates_gen.photo.camera import LENS_STEPS, OF_LENS, OF_POSE, POSE_STEPS, moved
from templates_gen.photo.cards import card_corners
from templates_gen.photo.edges import SHARE
from templates_gen.photo.fit import Fit, Widths, fitted
from templates_gen.photo.scene import PER_WIDTH, USUAL_FOCAL, scene
from templates_gen.photo.screening import predicted
from templates_gen.photo.vision import Array, corners_of, homography, np, through

STANDS, DEPTH_OFF, DEPTH_UNKNOWN = 20.0, 1.5, 7.0
"""mm that the front of a frame stands off the wall where its depth is not known; how surely it is known where the job
has its depth, for hooks and wires hold it off, and where not (deviations).  Our own guess."""

SHALLOW = 1.0
"""mm that a front stands off the wall at least, as far as its own sides are looked for."""

WIDTHS = Widths(corner=0.6, aside=15.0, turn=float(np.radians(1.0)), height=1e-4, matched=False)
"""Of frames: how exactly corners are seen (pixels on a picture of 12 megapixels), and how far they may be off."""

OF_CARD, OF_POINTED = 0.25, 12.0
"""How coarsely the card's corners are seen, with those of frames as 1; and those that somebody only pointed at."""

PRINT_OFF = 0.001
"""A print's scale is off by this share, as a deviation, where its line was measured.  It is taken for a card that is as
much nearer to the camera or farther from it, which looks the same."""

POINTED, IN_THE_SMALL = 60.0, 5.0
"""mm that a corner may be off the plane of all frames as they were pointed at on a picture of 12 megapixels; mm that a
fit may be off the plane of one frame.  Our own design, no source."""

FIRST_FRAME = 10_000
"""Numbers of frames among those of tags."""

CARD = "the card\0"
"""The card among the frames: no id of a frame has such a letter."""

_STEPS = np.array([*POSE_STEPS, *LENS_STEPS])
"""By how much each number of pose and lens is changed to see what comes of it."""


_NO_FRAMES = ("the corners", "are no frames of this job", "point from the upper left corner clockwise")


class Group(Record, frozen=True):
    """The frames that somebody pointed at, and the card: `size` of the picture in pixels, `depths` by the frames' ids
    as far as the job has them (mm), `seen` the pixels of the card's tags, `focal` the focal length that was noted;
    `found` is how far fronts stand off the wall by what is seen of their own sides, and how surely (mm, a deviation).
    """

    size: tuple[int, int]
    faces: tuple[Face, ...]
    depths: Mapping[str, float]
    card: Card
    seen: Mapping[int, Array]
    focal: float | None
    found: Mapping[str, tuple[float, float]]

    @property
    def centre(self) -> Array:
        """The middle of all frames (wall mm)."""
        return np.asarray(np.mean([(face.frame.cx, face.frame.cy) for face in self.faces], axis=0))

    @property
    def unit(self) -> float:
        """Pixels here for one on a picture of 12 megapixels."""
        return max(self.size) / PER_WIDTH

    def told(self, face: Face) -> tuple[float, float]:
        """How far a front stands off the wall as far as the job tells, and how surely (mm, a deviation)."""
        known = self.depths.get(face.id)
        return (STANDS, DEPTH_UNKNOWN) if known is None else (known, DEPTH_OFF)

    def stands(self, face: Face) -> tuple[float, float]:
        """How far a front stands off the wall by all that is known, and how surely (mm, a deviation)."""
        return self.found.get(face.id, self.told(face))


def rectangle(face: Face) -> Array:
    """A frame's corners (wall mm), the upper left one first, clockwise."""
    return corners_of(face.frame)


def camera(group: Group, corners: Mapping[str, Array], pointed: Mapping[str, Array]) -> Fit:
    """The camera by the card, by the frames of which the corners are given (pixels), and roughly by where somebody
    pointed at others."""
    printed: dict[int, tuple[str, Array]] = {}
    view, middles = {}, {}
    numbers = dict(enumerate(group.faces, FIRST_FRAME))
    for number, face in numbers.items():
        printed[number] = (face.id, rectangle(face))
        view[number] = corners.get(face.id, pointed[face.id])
        middles[face.id] = np.array([face.frame.cx, face.frame.cy])
    plane = homography(np.concatenate(list(view.values())), np.concatenate([rectangle(face) for face in group.faces]),
                       POINTED * group.unit)  # fmt: skip
    if plane is None:
        raise InputError(*_NO_FRAMES)
    middle = through(plane, np.concatenate([group.seen[number] for number, _ in group.card.tags])).mean(0)
    middles[CARD] = middle
    for at, (number, _) in enumerate(group.card.tags):
        printed[number], view[number] = (CARD, card_corners(group.card, at) + middle), group.seen[number]
    there, beside = through(np.linalg.inv(plane), np.array([middle, middle + np.array([1.0, 0.0])]))
    away = (group.focal or USUAL_FOCAL * group.unit) / float(np.linalg.norm(beside - there))
    rough = {number: OF_POINTED for number, face in numbers.items() if face.id not in corners}
    found = fitted(
        scene(
            [view], group.size, printed, middles, group.centre,
            stands={number: group.stands(face)[0] for number, face in numbers.items()},
            unsure={number: group.stands(face)[1] for number, face in numbers.items()}
            | dict.fromkeys(group.seen, PRINT_OFF * away),
            coarse=dict.fromkeys(group.seen, OF_CARD) | rough, focal=group.focal,
        ), flat=True, known=WIDTHS,
    )  # fmt: skip
    if found is None:
        raise InputError(*_NO_FRAMES)
    return found


def seen_front(fit: Fit, group: Group, face: Face, points: Array, stands: float | None = None) -> Array:
    """The pixels of points of the wall, but as far off it as a frame's front, or so far (mm)."""
    off = group.stands(face)[0] if stands is None else stands
    return predicted(fit, 0, "", points, points.mean(0), group.centre, off)


def on_wall(fit: Fit, group: Group, face: Face, pixels: Array, stands: float | None = None) -> Array:
    """Points of the wall that are seen at these pixels on a frame's front, or so far off the wall (mm)."""
    grid = rectangle(face)
    plane = homography(seen_front(fit, group, face, grid, stands), grid, IN_THE_SMALL)
    assert plane is not None  # four corners
    points = through(plane, pixels)
    for _ in range(2):  # the lens bends little within a frame
        points = points + through(plane, pixels) - through(plane, seen_front(fit, group, face, points, stands))
    return points


def bows(fit: Fit, group: Group, face: Face, corners: Array) -> list[Array]:
    """How far beside a straight line of the picture each side of a front is seen (pixels), at `SHARE` of it."""
    points, found = on_wall(fit, group, face, corners), []
    for at in range(4):
        first, second = points[at], points[(at + 1) % 4]
        line = seen_front(fit, group, face, first + np.r_[0.0, SHARE, 1.0][:, None] * (second - first))
        along = line[-1] - line[0]
        across = np.array([-along[1], along[0]]) / np.linalg.norm(along)
        found.append((line[1:-1] - line[0]) @ across)
    return found


def slants(fit: Fit, group: Group, face: Face) -> Array:
    """How far outside each side of a front, at both its ends, the frame meets the wall (pixels for each mm that it
    stands off): below 0 where the front hides it."""
    corners = rectangle(face)
    stands = max(group.stands(face)[0], SHALLOW)
    front, wall = (seen_front(fit, group, face, corners, off) for off in (stands, 0.0))
    found = np.empty((4, 2))
    for at in range(4):
        ends = [at, (at + 1) % 4]
        along = front[ends[1]] - front[ends[0]]
        inwards = np.array([-along[1], along[0]]) / np.linalg.norm(along)
        found[at] = (front - wall)[ends] @ inwards / stands
    return found


def spread(fit: Fit, group: Group, face: Face, pixels: Array) -> Array:
    """The covariance of a front's corners on the wall (mm), x and y of each, from what is not sure of the camera."""
    by = np.empty((2 * len(pixels), len(_STEPS)))
    for column, size in enumerate(_STEPS):
        change = np.zeros(len(fit.covariance))
        change[column] = size
        ahead, back = (
            on_wall(replace(fit, state=moved(fit.state, sign * change)), group, face, pixels) for sign in (1, -1)
        )
        by[:, column] = ((ahead - back) / (2 * size)).ravel()
    known = fit.covariance[: OF_POSE + OF_LENS, : OF_POSE + OF_LENS]
    return np.asarray(by @ known @ by.T)


FOLDS = 8
"""Parts that frames are left out in, one after another.  Our own design, no source."""


def folds(names: Sequence[str]) -> list[set[str]]:
    """The names in `FOLDS` parts, or one by one."""
    return [set(names[at::FOLDS]) for at in range(min(FOLDS, len(names)))]
