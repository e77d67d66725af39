"""The group drawn on a photograph of the wall: frames in perspective, with moulding, mat, picture and a soft shadow."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from templates_gen.base.errors import InputError
from templates_gen.base.files import read_at_most
from templates_gen.base.geometry import Rect
from templates_gen.documents.photographed import Face
from templates_gen.photo.cards import OnWall
from templates_gen.photo.picture import MOST_BYTES
from templates_gen.photo.vision import WHITE, Array, blurred, corners_of, decoded, encoded, inside, np, resized, warped

MOULDING, MAT, BLANK = (70, 74, 80), 245, 225
"""Blue, green and red of a moulding of which nothing is known; levels of a mat and of a picture not given.  Our
own design, no source."""

SHADE, ASIDE, SOFT = 0.35, (6.0, -9.0), 8.0
"""How dark a shadow is, where it falls and how soft it is (mm): a lamp above on the left.  Our own, no source."""

FINE, SOFT_EDGE = 1.5, 0.6
"""Pixels of a frame's own picture to one of the photograph, and of that by which its edge is soft.  Our own design, no
source."""


def drawn(photo: Array, wall: OnWall, faces: Sequence[Face], middle: tuple[float, float], ending: str) -> bytes:
    """The bytes of the photograph with the frames on it; `middle` is where the first card's middle is on the wall (mm).

    Raises InputError for nothing: a picture that cannot be read is left blank.
    """
    pixels = photo.astype(np.float32)
    for face in faces:
        _shadow(pixels, _seen(wall, face.frame, middle, ASIDE), _scale(wall, face.frame, middle))
    for face in faces:
        _frame(pixels, face, _seen(wall, face.frame, middle), _scale(wall, face.frame, middle))
    return encoded(np.clip(np.round(pixels), 0, WHITE).astype(np.uint8), ending)


def _seen(wall: OnWall, rect: Rect, middle: tuple[float, float], aside: tuple[float, float] = (0.0, 0.0)) -> Array:
    """The corners of a rectangle of the wall on the picture, the upper left one first, clockwise."""
    return wall.pixels(corners_of(rect) - np.array(middle) + np.array(aside))


def _scale(wall: OnWall, rect: Rect, middle: tuple[float, float]) -> float:
    """Pixels to the millimetre at a frame."""
    corners = _seen(wall, rect, middle)
    return float(np.linalg.norm(corners[1] - corners[0]) / rect.width)


def _part(pixels: Array, corners: Array, around: float) -> tuple[Array, Array] | None:
    """The part of the picture about these corners, and where it begins; None where they are out of it."""
    low = np.maximum(np.floor(corners.min(0) - around).astype(int), 0)
    high = np.minimum(np.ceil(corners.max(0) + around).astype(int) + 1, pixels.shape[1::-1])
    return None if (high - low < 2).any() else (pixels[low[1] : high[1], low[0] : high[0]], low)


def _shadow(pixels: Array, corners: Array, scale: float) -> None:
    part = _part(pixels, corners, 3 * SOFT * scale)
    if part is not None:
        place, low = part
        there = inside(corners - low, place.shape[1], place.shape[0]).astype(np.float32)
        place *= 1 - SHADE * blurred(there, max(SOFT * scale, 0.5))[..., None]


def _frame(pixels: Array, face: Face, corners: Array, scale: float) -> None:
    part = _part(pixels, corners, 2)
    if part is None:
        return
    place, low = part
    own = _front(face, scale * FINE)
    high, wide = own.shape[:2]
    from_corners = np.array([(-0.5, -0.5), (wide - 0.5, -0.5), (wide - 0.5, high - 0.5), (-0.5, high - 0.5)])
    picture = warped(own, from_corners, corners - low, place.shape[1], place.shape[0])
    there = blurred(inside(corners - low, place.shape[1], place.shape[0]).astype(np.float32), SOFT_EDGE)[..., None]
    place[:] = place * (1 - there) + picture * there


def _front(face: Face, scale: float) -> Array:
    """A frame as seen from the front, so many pixels to the millimetre."""
    whole = face.frame
    own = np.empty((max(4, round(whole.height * scale)), max(4, round(whole.width * scale)), 3), np.float32)
    own[:] = MOULDING
    for rect, level in ((face.opening, MAT), (face.window, BLANK)):
        own[_span(own, whole, rect, scale)] = level
    picture = _picture(face)
    if picture is not None:
        rows, columns = _span(own, whole, face.window, scale)
        high, wide = rows.stop - rows.start, columns.stop - columns.start
        share = max(wide / picture.shape[1], high / picture.shape[0])  # it fills the window, as in the proof
        across, down = (max(1, round(side / share)) for side in (wide, high))
        x, y = (picture.shape[1] - across) // 2, (picture.shape[0] - down) // 2
        own[rows, columns] = resized(picture[y : y + down, x : x + across], wide, high)
    return own


def _span(own: Array, whole: Rect, rect: Rect, scale: float) -> tuple[slice, slice]:
    high, wide = own.shape[:2]
    x0, x1 = (min(wide, max(0, round((x - whole.x0) * scale))) for x in (rect.x0, rect.x1))
    y0, y1 = (min(high, max(0, round((whole.y1 - y) * scale))) for y in (rect.y1, rect.y0))
    return slice(y0, max(y1, y0 + 1)), slice(x0, max(x1, x0 + 1))


def _picture(face: Face) -> Array | None:
    if face.image is None:
        return None
    try:
        return decoded(read_at_most(face.image, MOST_BYTES), colour=True)
    except (OSError, ValueError):
        return None


def placed(wall: OnWall, faces: Sequence[Face], middle: tuple[float, float]) -> Iterator[dict[str, Any]]:
    """Where every frame is drawn (pixels), and how exactly: what 95 of 100 keep within (mm)."""
    for face in faces:
        there = np.array([[face.frame.cx, face.frame.cy]]) - np.array(middle)
        corners = _seen(wall, face.frame, middle)
        yield {"id": face.id, "corners": corners.tolist(), "sure": float(wall.sure(there)[0])}


def told_of(wall: OnWall, frames: Sequence[Mapping[str, Any]]) -> Iterator[str]:
    """How exactly placed frames are drawn, and what would help."""
    worst = max(frames, key=lambda one: float(one["sure"]))
    yield (f"Frame {worst['id']}, where it is least exact, is drawn within {max(1.0, worst['sure']):.0f} mm, 19 times "
           "in 20.")  # fmt: skip
    if len(wall.cards) == 1:
        yield "That is by one card alone. With a second one, 1 to 2 m from the first, it is several times as exact."


def measured(wall: OnWall, corners: Array, middle: tuple[float, float]) -> tuple[Rect, float]:
    """The rectangle of the wall about four points of a photograph (pixels), and what 95 of 100 keep within (mm)."""
    points = wall.wall(corners)
    x, y = np.sort(points[:, 0]), np.sort(points[:, 1])
    rect = Rect(x[:2].mean(), y[:2].mean(), x[2:].mean(), y[2:].mean()).shifted(*middle)
    return rect, float(wall.sure(points).max())


def pointed_at(text: str) -> Array:
    """Four points of a photograph, in pixels.  Raises InputError."""
    try:
        found = np.array([[float(number) for number in pair.split(",")] for pair in text.split()])
    except ValueError:
        found = np.zeros(0)
    if found.shape != (4, 2) or not np.isfinite(found).all():
        hint = 'such as "210,340 655,338 660,790 208,795"'
        raise InputError("--corners", f"found {text!r}, expected four corners in pixels", hint)
    return found
