"""Cameras that see a wall: where they stand, how their lens bends, and where a pixel's line of sight meets the paper.

Two lenses, written without the program's own: `brown` is the usual formula, inverted by iteration; `divided` is a
division model (A. W. Fitzgibbon, Simultaneous linear estimation of multiple view geometry and lens distortion, 2001)
with a ripple of our own and a shear of the picture, which no formula of the program holds.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True)
class Camera:
    """`at` is its place (wall mm, z off the wall), `axes` its right, down and forward, `focal` in pixels."""

    size: tuple[int, int]
    at: np.ndarray
    axes: np.ndarray
    focal: float
    centre: np.ndarray
    bends: tuple[float, ...]
    kind: str = "brown"

    def pixel(self, points: np.ndarray) -> np.ndarray:
        """Where points of the wall (x, y, z in mm) are on the picture."""
        away = (points - self.at) @ self.axes.T
        flat = away[..., :2] / away[..., 2:]
        return self._bent(flat) * self.focal + self._middle

    def sight(self, pixels: np.ndarray) -> np.ndarray:
        """The directions in which these pixels look (wall axes)."""
        seen = (pixels - self._middle) / self.focal
        flat = seen.copy()
        for _ in range(12):  # a contraction, for lenses bend little
            flat = flat + seen - self._bent(flat)
        return np.concatenate([flat, np.ones((*flat.shape[:-1], 1))], -1) @ self.axes

    @property
    def _middle(self) -> np.ndarray:
        return (np.array(self.size) - 1) / 2 + self.centre

    def _bent(self, flat: np.ndarray) -> np.ndarray:
        r = (flat**2).sum(-1, keepdims=True)
        x, y = flat[..., :1], flat[..., 1:]
        if self.kind == "brown":
            k1, k2, k3, p1, p2 = self.bends
            radial = 1 + r * (k1 + r * (k2 + r * k3))
            aside = np.concatenate([2 * p1 * x * y + p2 * (r + 2 * x * x), p1 * (r + 2 * y * y) + 2 * p2 * x * y], -1)
            return flat * radial + aside
        bend, ripple, shear = self.bends
        radial = 2 / (1 + np.sqrt(np.maximum(1 - 4 * bend * r, 0.1))) * (1 + ripple * np.cos(9 * np.sqrt(r)))
        return flat * radial + np.concatenate([shear * y, shear * x], -1)


def standing(
    chance: np.random.Generator,
    size: tuple[int, int],
    middle: tuple[float, float],
    width: float,
    height: float,
    kind: str = "brown",
    aside: float | None = None,
    most: float = 20.0,
) -> Camera:
    """A camera that has this much of the wall in its picture, from up to `most` degrees aside (or just `aside`)."""
    unit = max(size) / 4000
    focal = 3000 * unit * (1 + chance.uniform(-0.05, 0.05))
    fill = chance.uniform(0.78, 0.9)
    away = max(width * focal / (fill * size[0]), height * focal / (fill * size[1]))
    yaw = np.radians(chance.uniform(-most, most) if aside is None else aside)
    pitch = np.radians(chance.uniform(-most, most) * 0.4)
    away *= 1 + 0.5 * abs(np.sin(yaw)) * width / away
    look = np.array([middle[0], middle[1], 0.0]) + np.append(chance.normal(0, 0.02 * width, 2), 0.0)
    forward = -np.array([np.sin(yaw) * np.cos(pitch), np.sin(pitch), np.cos(yaw) * np.cos(pitch)])
    at = look - forward * away
    right = np.cross(forward, [0.0, 1.0, 0.0])
    right /= np.linalg.norm(right)
    down = np.cross(forward, right)
    roll = np.radians(chance.normal(0, 1.5))
    right, down = np.cos(roll) * right + np.sin(roll) * down, np.cos(roll) * down - np.sin(roll) * right
    if kind == "brown":
        bends = (chance.uniform(-0.08, 0.08), chance.uniform(-0.06, 0.06), chance.uniform(-0.02, 0.02),
                 *chance.normal(0, 5e-4, 2))  # fmt: skip
    else:
        bends = (chance.uniform(-0.08, 0.08), chance.uniform(-2e-4, 2e-4), chance.normal(0, 3e-4))
    return Camera(size, at, np.array([right, down, forward]), focal, chance.normal(0, 10 * unit, 2), bends, kind)
