"""Many made photographs of a wall with one card or two, and how far a point two metres away is drawn from its place."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from templates_gen.documents.photo_card import cards_of
from templates_gen.photo.cards import see_wall
from templates_gen.photo.picture import Photo
from tests.photo.made.cameras import standing
from tests.photo.made.carded import cards_at
from tests.photo.made.photograph import photograph
from tests.photo.made.runs import Setting, look_of

AWAY = 2000.0
"""mm from the first card to the point that is looked at."""

STRETCH = 0.002
"""By what share a print is longer along than across, as a deviation.  Our own guess."""

FILM = 43.27
"""mm: the diagonal of the film by which a focal length is noted."""


@dataclass
class Drawn:
    """How far points were drawn from their places (mm), and what was claimed."""

    off: list[float] = field(default_factory=list)
    sure: list[float] = field(default_factory=list)


def wall_scene(setting: Setting, seed: int, noted: bool) -> tuple[Photo, np.ndarray, np.ndarray]:
    """A photograph with as many cards as the setting has views, the second one 1 to 2 m from the first; a point of the
    wall from the first card's middle, and where it is on the picture."""
    chance = np.random.default_rng(seed)
    middle = np.array([1500.0, 1450.0])
    second = middle + np.array([chance.uniform(1000, 2000), chance.uniform(-300, 300)])
    stretch = chance.normal(0, STRETCH) if setting.odd else 0.0
    cards = cards_at([tuple(middle), tuple(second)][: setting.views], chance, stretch=stretch)
    camera = standing(chance, setting.size, (middle[0] + 850, middle[1]), 2900.0, 1500.0,
                      "divided" if setting.odd else "brown")  # fmt: skip
    point = np.array([AWAY, chance.uniform(-400, 400)])
    grey = photograph(cards, camera, look_of(setting, chance), chance)
    diagonal = float(np.hypot(*setting.size))
    focal = round(camera.focal / diagonal * FILM) / FILM * diagonal if noted else None
    return Photo("wall.jpg", b"", grey, focal), point, camera.pixel(np.append(middle + point, 0.0)[None])


def wall_run(setting: Setting, count: int, first: int = 0, noted: bool = True) -> Drawn:
    """So many photographs; `noted` where the camera noted its focal length, to a millimetre of film."""
    found = Drawn()
    for seed in range(first, first + count):
        photo, point, seen = wall_scene(setting, seed, noted)
        wall = see_wall(photo, cards_of("a4"))
        found.off.append(float(np.linalg.norm(wall.wall(seen)[0] - point)))
        found.sure.append(float(wall.sure(point[None])[0]))
    return found
