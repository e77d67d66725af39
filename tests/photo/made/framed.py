"""Frames as they hang: mouldings, mats and pictures of many kinds, off their places, with a shadow on the wall."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

import cv2
import numpy as np

from templates_gen.base.geometry import Rect
from templates_gen.documents.photographed import Face
from tests.photo.made.cameras import Camera
from tests.photo.made.taped import Laid

FINE = 5.0
"""Pixels to the millimetre of a frame's front."""

MANY = 6
"""Places looked at for a pixel of a frame's own sides, each way."""


def _level(stands: float, u: np.ndarray, v: np.ndarray) -> np.ndarray:
    return np.full(np.shape(u), stands)


def hanging(
    faces: Sequence[Face], depth: float, chance: np.random.Generator, aside: float = 3.0, turn: float = 0.4,
    profiled: bool = False, mismeasured: float = 0.0,
):  # fmt: skip
    """The frames, each off its place by `aside` mm and `turn` degrees, as deviations.

    `profiled` mouldings have a bead at their outer edge, lit from above on the left; `mismeasured` is how far a frame
    is from the size that its owner measured (mm, a deviation).
    """
    found = []
    for face in faces:
        r = face.frame
        if mismeasured:
            r = Rect.about(
                r.cx, r.cy, r.width + chance.normal(0, mismeasured), r.height + chance.normal(0, mismeasured)
            )
        high, wide = round(r.height * FINE), round(r.width * FINE)
        front = np.full((high, wide), chance.choice([25, 55, 90, 215, 235]), np.float32)
        face_wide = int(chance.uniform(8, 25) * FINE)
        if profiled:
            _bead(front, int(chance.uniform(2, 5) * FINE), chance)
        inner = front[face_wide:-face_wide, face_wide:-face_wide]
        inner[:] = chance.uniform(225, 250)
        mat = int(min(inner.shape) * chance.uniform(0.05, 0.2))
        picture = inner[mat:-mat, mat:-mat]
        rough = chance.uniform(40, 220, (5, 5)).astype(np.float32)
        picture[:] = cv2.resize(rough, picture.shape[::-1], interpolation=cv2.INTER_CUBIC)
        across, up = wide / r.width, high / r.height
        to_pixels = np.array([[across, 0, -across * r.x0 - 0.5], [0, -up, up * r.y1 - 0.5], [0, 0, 1.0]])
        pose = np.array([*chance.normal(0, aside, 2), np.radians(chance.normal(0, turn))])
        stands = depth + chance.normal(0, 1.5)
        off = partial(_level, stands)
        found.append(Laid(face.id, np.clip(front, 0, 255).astype(np.uint8), to_pixels, r, r, pose, off))
    return found


def _bead(front: np.ndarray, wide: int, chance: np.random.Generator) -> None:
    """A bead all round, lighter where the lamp shines on it, and darker towards the inside."""
    ramp = np.linspace(0.5, 1.0, wide, dtype=np.float32)
    steep = chance.uniform(10, 50)
    for side, lit in zip((front, front.T, front[::-1], front[:, ::-1].T), (1, 0.6, -1, -0.6), strict=True):
        side[:wide] += (steep * lit * ramp)[:, None]


def sides(picture: np.ndarray, frame: Laid, camera: Camera, chance: np.random.Generator) -> None:
    """The frame's own sides, from the wall to its front; those that the camera does not see come under the front."""
    r, own = frame.paper, float(frame.page[0, 0])
    front = np.array([(r.x0, r.y1), (r.x1, r.y1), (r.x1, r.y0), (r.x0, r.y0)])
    near = camera.pixel(np.c_[frame.lies(front), frame.height(front)])
    far = camera.pixel(np.c_[frame.lies(front), np.zeros(4)])
    low = np.maximum(np.floor(np.minimum(near, far).min(0)).astype(int) - 2, 0)
    high_at = np.minimum(np.ceil(np.maximum(near, far).max(0)).astype(int) + 3, camera.size)
    wide, high = high_at - low
    if wide < 1 or high < 1:  # out of the picture
        return
    for at in range(4):
        corners = (np.array([near[at], near[(at + 1) % 4], far[(at + 1) % 4], far[at]]) - low + 0.5) * MANY - 0.5
        mask = np.zeros((high * MANY, wide * MANY), np.uint8)
        cv2.fillPoly(mask, [np.round(corners * 16).astype(np.int32)], 1, cv2.LINE_8, shift=4)
        there = cv2.resize(mask.astype(np.float32), (int(wide), int(high)), interpolation=cv2.INTER_AREA)
        place = picture[low[1] : low[1] + high, low[0] : low[0] + wide]
        place[:] = place * (1 - there) + there * float(np.clip(own * chance.uniform(0.5, 1.1), 5, 250))


def shadow(picture: np.ndarray, frame: Laid, camera: Camera, chance: np.random.Generator) -> None:
    """A soft one on the wall, under the frame and aside."""
    r = frame.paper.shifted(*chance.uniform([-8, -16], [8, -6]))
    corners = np.array([(r.x0, r.y0), (r.x1, r.y0), (r.x1, r.y1), (r.x0, r.y1)])
    seen = camera.pixel(np.c_[frame.lies(corners), np.zeros(4)])
    mask = np.zeros(picture.shape, np.float32)
    cv2.fillPoly(mask, [np.round(seen * 16).astype(np.int32)], 1.0, cv2.LINE_AA, shift=4)
    soft = chance.uniform(3, 9) * np.linalg.norm(seen[1] - seen[0]) / r.width
    picture *= 1 - chance.uniform(0.15, 0.45) * cv2.GaussianBlur(mask, (0, 0), soft)


def pointed(frame: Laid, camera: Camera, chance: np.random.Generator, off: float = 8.0) -> np.ndarray:
    """Where somebody pointed who is off by up to so many pixels."""
    return seen_corners(frame, camera) + chance.uniform(-off, off, (4, 2))


def seen_corners(frame: Laid, camera: Camera) -> np.ndarray:
    r: Rect = frame.paper
    corners = np.array([(r.x0, r.y1), (r.x1, r.y1), (r.x1, r.y0), (r.x0, r.y0)])
    return camera.pixel(np.c_[frame.lies(corners), frame.height(corners)])
