"""Pixels and arrays.  The only file that imports OpenCV and NumPy, which come with the extra [photo].

Its neighbours take `np` from here, so that what is missing is said once.  Pixels count from the middle of the upper
left one, x right and y down; angles of a camera are radians.

Limits and sizes without a source beside them are our own, no source.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.drawing.images import as_jpeg, as_png
from templates_gen.drawing.tags import ACROSS

try:
    import cv2
    import numpy as np
    from numpy.typing import NDArray
except ImportError:
    problem = "reading photographs needs OpenCV and NumPy, which are not installed"
    raise InputError("photo", problem, "pip install 'templates-gen[photo]'") from None

Array = NDArray[Any]

View = Mapping[int, Array]
"""The tags on a photograph by their numbers: four corners each, the upper left one first, clockwise (pixels)."""

FAMILY = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_APRILTAG_36h11)

_AROUND, _CELL = 2, 8
"""White modules about the picture of a tag, and its pixels to a module."""

CLEAN = 64.0
"""Pixels along a side of the picture of a tag."""

OF_CORNERS = 8
"""Numbers of four corners: across and down of each."""

CLEAN_CORNERS = np.array([[16, 16], [80, 16], [80, 80], [16, 80]], np.float32) - np.float32(0.5)

WHITE, LEAST_BLUR = 255, 0.3
"""The level of white, and the pixels by which the picture of a tag is blurred at least."""

SMALLEST = 10
"""Pixels of a tag's side that are looked at.  OpenCV drops what is smaller than 3 % of the picture by itself."""

_PER_MODULE = 8
"""Pixels of a module as OpenCV reads it: the 4 that are usual lose small tags."""

_MOST_TRIES, _SURE = 5000, 0.9999
"""Tries that RANSAC makes at most, and how sure it is to have found the best when it stops before."""

_PARTS = 4
"""Binary digits of a part of a pixel that OpenCV draws lines to: sixteenths."""

_CAPITALS, _STROKES = 22.0, 9
"""Pixels of capitals of OpenCV's plain lettering at its own size (measured), and how many strokes high they are."""


def corners_of(rect: Rect) -> Array:
    """The corners of a rectangle, the upper left one first, clockwise."""
    return np.array([(rect.x0, rect.y1), (rect.x1, rect.y1), (rect.x1, rect.y0), (rect.x0, rect.y0)])


def decoded(content: bytes, colour: bool) -> Array | None:
    """The pixels of a JPEG or PNG file, turned as its EXIF orientation says; None where it cannot be read."""
    try:
        pixels = cv2.imdecode(np.frombuffer(content, np.uint8), cv2.IMREAD_COLOR if colour else cv2.IMREAD_GRAYSCALE)
    except cv2.error:
        return None
    return None if pixels is None else np.asarray(pixels)


def encoded(pixels: Array, ending: str) -> bytes:
    """The bytes of a .jpg or .png file, which hold the pixels, by which program, and nothing else."""
    high, wide, _ = pixels.shape
    rows = cv2.cvtColor(pixels, cv2.COLOR_BGR2RGB).tobytes()
    return as_jpeg((wide, high), rows) if ending == "jpg" else as_png((wide, high), rows)


def found_tags(grey: Array) -> list[tuple[int, Array]]:
    """The tags on a picture, roughly; a number may come twice."""
    wanted = cv2.aruco.DetectorParameters()
    wanted.minMarkerPerimeterRate = 4 * SMALLEST / max(grey.shape)
    wanted.cornerRefinementMethod = cv2.aruco.CORNER_REFINE_CONTOUR
    wanted.perspectiveRemovePixelPerCell = _PER_MODULE
    corners, numbers, _ = cv2.aruco.ArucoDetector(FAMILY, wanted).detectMarkers(grey)
    known = [] if numbers is None else [int(number) for number in numbers.ravel()]
    return [(number, np.asarray(found[0], float)) for number, found in zip(known, corners, strict=True)]


def clean_tag(number: int, side: float, blur: float) -> Array:
    """The picture of a tag, 0 black to 1 white, as blurred as it is where a side has so many pixels."""
    tag = cv2.aruco.generateImageMarker(FAMILY, number, ACROSS)
    tag = cv2.copyMakeBorder(tag, _AROUND, _AROUND, _AROUND, _AROUND, cv2.BORDER_CONSTANT, value=WHITE)
    large = np.kron(tag, np.ones((_CELL, _CELL), np.uint8)).astype(np.float32) / WHITE
    return np.asarray(blurred(large, max(blur * CLEAN / side, LEAST_BLUR)))


def blurred(pixels: Array, sigma: float) -> Array:
    """Blurred by a Gaussian of so many pixels; what is beyond the edge is as the edge is."""
    return np.asarray(cv2.GaussianBlur(pixels, (0, 0), sigma, borderType=cv2.BORDER_REPLICATE))


def warped(pixels: Array, corners: Array, to: Array, width: int, height: int) -> Array:
    """The pixels with four points of theirs brought to others, as they look on a picture of this size."""
    matrix = cv2.getPerspectiveTransform(corners.astype(np.float32), to.astype(np.float32))
    return np.asarray(
        cv2.warpPerspective(
            pixels, matrix, (width, height), flags=cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE
        )
    )  # fmt: skip


def remapped(pixels: Array, x: Array, y: Array) -> Array:
    """The pixels at these places, 0 where there are none."""
    near = cv2.remap(pixels, x.astype(np.float32), y.astype(np.float32), cv2.INTER_AREA, borderMode=cv2.BORDER_CONSTANT)
    return np.asarray(near)


def resized(pixels: Array, width: int, height: int) -> Array:
    """Made smaller or larger."""
    way = cv2.INTER_AREA if width < pixels.shape[1] else cv2.INTER_CUBIC
    return np.asarray(cv2.resize(pixels, (width, height), interpolation=way))


def inside(corners: Array, width: int, height: int) -> Array:
    """Which pixels lie in a polygon."""
    mask = np.zeros((height, width), np.uint8)
    cv2.fillConvexPoly(mask, np.round(corners).astype(np.int32), 1)
    return mask


def best_match(area: Array, picture: Array) -> tuple[float, Array]:
    """How well a picture matches at its best place in a larger one, up to 1, and that place (pixels)."""
    alike = cv2.matchTemplate(area.astype(np.float32), picture.astype(np.float32), cv2.TM_CCOEFF_NORMED)
    _, best, _, at = cv2.minMaxLoc(alike)
    return float(best), np.array(at, float)


def homography(plane: Array, pixels: Array, off: float) -> Array | None:
    """What brings points of a plane to pixels, most of them within `off` pixels; None where there is none."""
    found, _ = cv2.findHomography(plane, pixels, cv2.RANSAC, off, maxIters=_MOST_TRIES, confidence=_SURE)
    return None if found is None else np.asarray(found)


def through(matrix: Array, points: Array) -> Array:
    """Points brought through a homography."""
    return np.asarray(cv2.perspectiveTransform(points[None].astype(float), matrix)[0])


def flat_pose(plane: Array, pixels: Array, focal: float, width: int, height: int) -> tuple[Array, Array] | None:
    """How a plane lies before a camera without distortion: a rotation matrix and where its origin is."""
    matrix = np.array([[focal, 0, (width - 1) / 2], [0, focal, (height - 1) / 2], [0, 0, 1.0]])
    flat = np.c_[plane, np.zeros(len(plane))]
    done, turn, shift = cv2.solvePnP(flat, pixels.astype(float), matrix, None, flags=cv2.SOLVEPNP_IPPE)
    return (rotation(turn.ravel()), np.asarray(shift).ravel()) if done else None


def rotation(vector: Array) -> Array:
    """The matrix that turns about a vector by its length."""
    return np.asarray(cv2.Rodrigues(np.asarray(vector, float))[0])


Colour = tuple[int, int, int]
"""Blue, green and red, 0 to 255."""


def draw_line(pixels: Array, points: Sequence[tuple[float, float]], colour: Colour, width: int) -> None:
    """A line from point to point, drawn on the pixels."""
    way = np.round(np.array(points) * 2**_PARTS).astype(np.int32)
    cv2.polylines(pixels, [way], False, colour, width, cv2.LINE_AA, shift=_PARTS)


def draw_words(pixels: Array, words: str, at: tuple[float, float], height: float, colour: Colour) -> None:
    """Words with their middle at a point and capitals so many pixels high, on white."""
    scale, width = height / _CAPITALS, max(1, round(height / _STROKES))
    (wide, high), below = cv2.getTextSize(words, cv2.FONT_HERSHEY_SIMPLEX, scale, width)
    x, y = round(at[0] - wide / 2), round(at[1] + high / 2)
    cv2.rectangle(pixels, (x - width * 2, y - high - width * 2), (x + wide + width * 2, y + below), (WHITE,) * 3, -1)
    cv2.putText(pixels, words, (x, y), cv2.FONT_HERSHEY_SIMPLEX, scale, colour, width, cv2.LINE_AA)


__all__ = ["Array", "Colour", "View", "np"]
