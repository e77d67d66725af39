"""Tags on a photograph, to a twentieth of a pixel: each is found roughly, then all its pixels are matched."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence

from templates_gen.base.record import Record
from templates_gen.drawing.tags import ACROSS
from templates_gen.photo.vision import CLEAN_CORNERS, OF_CORNERS, Array, clean_tag, found_tags, inside, np, warped

BLURS = (0.5, 0.7, 0.9, 1.1, 1.4, 1.8)
"""Pixels: how blurred a picture may be; the one that suits most tags is taken.  Our own design, no source."""

TRIED = 8
"""Tags by which the blur of a picture is judged.  Our own design, no source."""

STEPS, NEAR, STILL = 6, 0.15, 0.005
"""Rounds of a match, pixels over which a slope is taken, and the step in pixels that ends it.  Our own, no source."""

WORST, FARTHEST = 0.25, 3.0
"""A match is dropped when what is left is more than this share of the contrast, or it went so many pixels.  Our own."""

SMALLEST, AROUND = 4.0, 1.2
"""Pixels of a side that can be matched, and how far beyond a tag its pixels are matched, as a share of its size: white
belongs to it.  Our own, no source."""

HELD = 1e-3
"""How firmly a corner is held where its pixels say nothing, as a share of the contrast.  Our own, no source."""


class Sharp(Record, frozen=True):
    """A matched tag: its corners, what is left (a share of its contrast), and its side in pixels."""

    corners: Array
    left: float
    side: float


Tags = Sequence[tuple[int, Array]]
"""Tags by their numbers with their corners; a number may come twice."""


class Seen(Record, frozen=True):
    """The tags of a picture with exact corners, and how blurred it is (pixels)."""

    tags: Tags
    blur: float


def side_of(corners: Array) -> float:
    """The middle length of a tag's sides in pixels."""
    return float(np.linalg.norm(corners - np.roll(corners, 1, 0), axis=1).mean())


def seen_tags(grey: Array) -> Seen:
    """All tags of a picture."""
    rough = found_tags(grey)
    blur = _blur(grey, rough)
    return Seen([(number, sharp.corners) for number, sharp in sharpened(grey, rough, blur)], blur)


def sharpened(grey: Array, rough: Tags, blur: float) -> Iterable[tuple[int, Sharp]]:
    """Those that could be matched near where they were found."""
    for number, corners in rough:
        sharp = match(grey, number, corners, blur)
        if sharp and sharp.left <= WORST and np.abs(sharp.corners - corners).max() <= FARTHEST:
            yield number, sharp


def _blur(grey: Array, rough: Tags) -> float:
    some = rough[:: max(1, len(rough) // TRIED)][:TRIED]
    best = (math.inf, 1.0)
    for blur in BLURS:
        found = [match(grey, number, corners, blur) for number, corners in some]
        left = [sharp.left for sharp in found if sharp]
        best = min(best, (float(np.median(left)), blur)) if left else best
    return best[1]


def match(grey: Array, number: int, corners: Array, blur: float) -> Sharp | None:
    """Least squares of a tag's pixels: its four corners, contrast, and darkness with a slope of light.

    None where it reaches out of the picture.
    """
    at, side = corners.astype(float).copy(), side_of(corners)
    module = side / ACROSS
    low = np.floor(at.min(0) - module).astype(int)
    high = np.ceil(at.max(0) + module).astype(int) + 1
    if (low < 0).any() or high[0] >= grey.shape[1] or high[1] >= grey.shape[0] or side < SMALLEST:
        return None
    patch = grey[low[1] : high[1], low[0] : high[0]].astype(float)
    height, width = patch.shape
    tag = clean_tag(number, side, blur)
    rows, columns = np.nonzero(inside(at.mean(0) + (at - at.mean(0)) * AROUND - low, width, height))
    pixels, light = patch[rows, columns], np.c_[np.ones(len(rows)), columns / width - 0.5, rows / height - 0.5]

    def looks(points: Array) -> Array:
        picture = warped(tag, CLEAN_CORNERS, points - low, width, height)
        return np.asarray(picture[rows, columns].astype(float))

    left, contrast = pixels, 1.0
    for _ in range(STEPS):
        known = np.c_[looks(at), light]
        weights, *_ = np.linalg.lstsq(known, pixels, rcond=None)
        contrast, left = float(weights[0]), pixels - known @ weights
        step = _step(looks, at, known, left, contrast)
        far = np.abs(step).max()
        at += step * min(1.0, 1.0 / max(far, 1e-9))
        if far < STILL:
            break
    return Sharp(at, float(np.sqrt((left**2).mean())) / max(abs(contrast), 1.0), side)


def _step(looks: Callable[[Array], Array], at: Array, known: Array, left: Array, contrast: float) -> Array:
    """How the corners have to move."""
    slopes = np.empty((len(left), OF_CORNERS))
    for column in range(OF_CORNERS):
        there, back = at.copy(), at.copy()
        there[column // 2, column % 2] += NEAR
        back[column // 2, column % 2] -= NEAR
        slopes[:, column] = (looks(there) - looks(back)) / (2 * NEAR) * contrast
    every = np.c_[slopes, known]
    held = np.diag([HELD * contrast**2 + 1e-9] * OF_CORNERS + [1e-9] * known.shape[1])
    moved, *_ = np.linalg.lstsq(every.T @ every + held, every.T @ left, rcond=None)
    return np.asarray(moved[:OF_CORNERS]).reshape(4, 2)
