"""A picture whose four quarters have colours of their own, so that it shows how it was turned and read."""

from __future__ import annotations

from pathlib import Path

import numpy as np
from PIL import Image

NEAR = 12
"""Steps of 255 that JPEG and a conversion of colours may be off.  Our own design, no source."""

QUARTERS = {"upper left": (220, 40, 30), "upper right": (30, 160, 60), "lower left": (40, 60, 200)}
"""Colours of a picture's quarters; the lower right one is white."""


def quarters(width: int = 400, height: int = 300) -> Image.Image:
    image = Image.new("RGB", (width, height), "white")
    image.paste(QUARTERS["upper left"], (0, 0, width // 2, height // 2))
    image.paste(QUARTERS["upper right"], (width // 2, 0, width, height // 2))
    image.paste(QUARTERS["lower left"], (0, height // 2, width // 2, height))
    return image


def colours(image: Image.Image) -> dict[str, tuple[int, ...]]:
    """The colours in the middles of the quarters."""
    across, down = image.width // 4, image.height // 4
    places = {"upper left": (across, down), "upper right": (3 * across, down), "lower left": (across, 3 * down)}
    return {name: image.convert("RGB").getpixel(place) for name, place in places.items()}


def alike(found: dict[str, tuple[int, ...]], wanted: dict[str, tuple[int, ...]], near: float = NEAR) -> bool:
    return all(np.abs(np.subtract(found[name], wanted[name])).max() <= near for name in wanted)


def saved(folder: Path, name: str, image: Image.Image, **how: object) -> Path:
    image.save(folder / name, **how)
    return folder / name
