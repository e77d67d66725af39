"""A photograph of laid sheets: every pixel looked up on the paper, then blurred, lit, with noise, as JPEG."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import cv2
import numpy as np

from tests.photo.made.cameras import Camera
from tests.photo.made.taped import Laid

GRID, MORE = 6, 2
"""Pixels between those of which the line of sight is worked out, and how many are looked up for one, each way."""


@dataclass(frozen=True)
class Look:
    """How a photograph looks: blur in pixels, `motion` in pixels along a slant, noise in levels of 255, how uneven the
    light is, the quality of the JPEG, and how many strips of tape and spots of glare there are."""

    blur: float = 0.8
    motion: float = 0.0
    noise: float = 2.0
    grain: bool = False
    uneven: float = 0.25
    quality: int = 90
    tapes: int = 0
    glares: int = 0


def photograph(sheets: Sequence[Laid], camera: Camera, look: Look, chance: np.random.Generator) -> np.ndarray:
    """The picture, in grey."""
    picture = wall(camera, chance)
    for sheet in sheets:
        lay(picture, sheet, camera)
    for _ in range(look.tapes):
        tape(picture, sheets, camera, chance)
    return developed(picture, look, chance)


def wall(camera: Camera, chance: np.random.Generator) -> np.ndarray:
    """A painted wall, with a texture and furniture in front of its lower part."""
    width, height = camera.size
    rough = chance.normal(0, 6, (height // 4 + 1, width // 4 + 1)).astype(np.float32)
    picture = chance.uniform(120, 200) + cv2.resize(rough, (width, height), interpolation=cv2.INTER_LINEAR)
    for _ in range(chance.integers(1, 4)):
        x, wide, high = (
            chance.integers(0, width),
            chance.integers(width // 20, width // 4),
            chance.integers(0, height // 9),
        )
        cv2.rectangle(
            picture, (int(x), height - int(high)), (int(x + wide), height), float(chance.uniform(30, 120)), -1
        )
    return picture.astype(np.float32)


def lay(picture: np.ndarray, sheet: Laid, camera: Camera) -> None:
    """A sheet on the picture, over what is there."""
    r = sheet.paper
    edge = np.array([(x, y) for x in np.linspace(r.x0, r.x1, 5) for y in np.linspace(r.y0, r.y1, 5)])
    on_wall = sheet.lies(edge)
    seen = np.concatenate([camera.pixel(np.c_[on_wall, off]) for off in (np.zeros(len(edge)), sheet.height(edge))])
    low = np.maximum(np.floor(seen.min(0)).astype(int) - 12, 0)
    high = np.minimum(np.ceil(seen.max(0)).astype(int) + 12, camera.size)
    if (high - low < 2 * GRID).any():
        return
    width, height = (int(side) // GRID * GRID for side in high - low)
    seen = _planned(sheet, camera, low, width, height)
    m = sheet.to_pixels
    at_x, at_y = (_between(m[k, 0] * seen[..., 0] + m[k, 1] * seen[..., 1] + m[k, 2], width, height) for k in (0, 1))
    paper = cv2.remap(sheet.page, at_x, at_y, cv2.INTER_LINEAR, borderValue=255.0)
    ends = np.sort(m[:2, :2] @ np.array([[r.x0, r.x1], [r.y0, r.y1]]) + m[:2, 2:], axis=1)  # a page lies straight
    (x0, x1), (y0, y1) = ends
    there = ((at_x > x0) & (at_x < x1) & (at_y > y0) & (at_y < y1)).astype(np.float32)
    ink = 35 + 200 / 255 * paper.astype(np.float32)
    ink, there = (_averaged(one * there if one is ink else there) for one in (ink, there))
    place = picture[low[1] : low[1] + height, low[0] : low[0] + width]
    place[:] = place * (1 - there) + ink


def _planned(sheet: Laid, camera: Camera, low: np.ndarray, width: int, height: int) -> np.ndarray:
    """Which points of the plan a grid of pixels sees."""
    columns, rows = (np.arange(0, side, GRID) + GRID / 2 for side in (width, height))
    pixels = np.stack(np.meshgrid(columns, rows), -1) + low - 0.5  # from the edge of a pixel
    sight = camera.sight(pixels)
    off = np.zeros(pixels.shape[:2])
    for _ in range(4 if sheet.off else 1):
        far = (off - camera.at[2]) / sight[..., 2]
        point = camera.at[:2] + sight[..., :2] * far[..., None]
        planned = sheet.planned(point)
        off = sheet.height(planned)
    return planned


def _between(values: np.ndarray, width: int, height: int) -> np.ndarray:
    """The values of a grid, known in the middle of each of its squares, at `MORE` places in every pixel."""
    return cv2.resize(values.astype(np.float32), (width * MORE, height * MORE), interpolation=cv2.INTER_LINEAR)


def _averaged(fine: np.ndarray) -> np.ndarray:
    high, wide = fine.shape
    return cv2.resize(fine.astype(np.float32), (wide // MORE, high // MORE), interpolation=cv2.INTER_AREA)


def tape(picture: np.ndarray, sheets: Sequence[Laid], camera: Camera, chance: np.random.Generator) -> None:
    """A strip of tape over a sheet's edge, half seen through."""
    sheet = sheets[chance.integers(len(sheets))]
    r, way = sheet.cell, chance.uniform(0, np.pi)
    middle = np.array([chance.uniform(r.x0, r.x1), chance.choice([r.y0, r.y1])])
    along, across = np.array([np.cos(way), np.sin(way)]) * 35, np.array([-np.sin(way), np.cos(way)]) * 9
    corners = np.array([middle + i * along + j * across for i, j in ((-1, -1), (1, -1), (1, 1), (-1, 1))])
    seen = camera.pixel(np.c_[corners, np.zeros(4)])
    mask = np.zeros(picture.shape, np.float32)
    cv2.fillPoly(mask, [np.round(seen).astype(np.int32)], float(chance.uniform(0.4, 1.0)), cv2.LINE_AA)
    picture[:] = picture * (1 - mask) + mask * chance.uniform(180, 230)


def developed(picture: np.ndarray, look: Look, chance: np.random.Generator) -> np.ndarray:
    """The picture through lens, light, sensor and file."""
    height, width = picture.shape
    if look.blur:
        picture = cv2.GaussianBlur(picture, (0, 0), look.blur)
    if look.motion:
        long = int(np.ceil(look.motion)) * 2 + 1
        kernel = np.zeros((long, long), np.float32)
        way, middle = chance.uniform(0, np.pi), long // 2
        for at in np.linspace(-look.motion / 2, look.motion / 2, 41):
            x, y = middle + at * np.cos(way), middle + at * np.sin(way)
            i, j = int(np.floor(x)), int(np.floor(y))
            for di, dj in ((0, 0), (0, 1), (1, 0), (1, 1)):
                if i + di < long and j + dj < long:
                    kernel[j + dj, i + di] += (1 - abs(x - i - di)) * (1 - abs(y - j - dj))
        picture = cv2.filter2D(picture, -1, kernel / kernel.sum(), borderType=cv2.BORDER_REPLICATE)
    light = 1 - look.uneven * chance.random((3, 4)).astype(np.float32)
    picture = picture * cv2.resize(light, (width, height), interpolation=cv2.INTER_CUBIC)
    for _ in range(look.glares):
        spot = np.zeros((height // 8, width // 8), np.float32)
        middle = int(chance.integers(width // 8)), int(chance.integers(height // 8))
        cv2.circle(spot, middle, int(chance.integers(width // 200, width // 80)), 160.0, -1)
        picture = picture + cv2.resize(cv2.GaussianBlur(spot, (0, 0), width / 800), (width, height))
    if look.grain:  # as many photons as there are
        tile = chance.standard_normal((height, width), dtype=np.float32)
        tile = cv2.GaussianBlur(tile, (0, 0), 0.6) * 1.9
        picture = picture + tile * look.noise * np.sqrt(np.maximum(picture, 1) / 120)
    else:
        picture = picture + chance.standard_normal((height, width), dtype=np.float32) * look.noise
    grey = np.clip(np.round(picture), 0, 255).astype(np.uint8)
    _, content = cv2.imencode(".jpg", grey, [cv2.IMWRITE_JPEG_QUALITY, look.quality])
    return cv2.imdecode(content, cv2.IMREAD_GRAYSCALE)
