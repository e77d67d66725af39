"""Many made photographs of what hangs, read where somebody pointed, and compared with the truth."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.documents.photo_card import cards_of
from templates_gen.documents.photographed import Face
from templates_gen.photo.hung import read_hung
from templates_gen.photo.picture import Photo
from tests.photo.made.cameras import standing
from tests.photo.made.carded import cards_at
from tests.photo.made.framed import hanging, pointed, shadow, sides
from tests.photo.made.photograph import developed, lay, wall
from tests.photo.made.runs import Setting, look_of

WIDE, POINTED = 2000.0, 8.0
"""mm from the first frame's outer edge to the last one's; pixels of 4000 that somebody points amiss at most."""


@dataclass(frozen=True)
class Scene:
    """A photograph of frames: where they are planned, their depths as far as somebody measured them, where somebody
    pointed, and where their upper corners truly are (mm)."""

    photo: Photo
    faces: tuple[Face, ...]
    depths: Mapping[str, float]
    corners: Mapping[str, np.ndarray]
    true: Mapping[str, np.ndarray]


@dataclass(frozen=True, order=True)
class Worst:
    """How far the worse corner of a frame is off, what was claimed (mm), and which frame of which photograph it is."""

    far: float
    sure: float
    seed: int
    name: str


@dataclass
class Read:
    """Errors in mm, a row of right and up for each upper corner, relative to the others of its photograph; tilts in
    degrees; what was claimed; how many frames there were."""

    corners: list[np.ndarray] = field(default_factory=list)
    sure: list[float] = field(default_factory=list)
    tilts: list[float] = field(default_factory=list)
    worst: list[Worst] = field(default_factory=list)
    doubts: list[str] = field(default_factory=list)
    frames: int = 0


def group(chance: np.random.Generator) -> tuple[Face, ...]:
    """Four to seven frames over two metres, of any size, in a row whose middles go up and down."""
    count = int(chance.integers(4, 8))
    widths = chance.uniform(0.7, 1.3, count)
    widths *= (WIDE - 60.0 * (count - 1)) / widths.sum()
    found, x = [], 0.0
    for at, width in enumerate(np.round(widths)):
        high = float(round(width * chance.choice([0.75, 1.0, 1.35])))
        y = 1450.0 + float(round(chance.uniform(-60, 60)))
        r = Rect(x, y - high / 2, x + width, y + high / 2)
        found.append(Face(chr(ord("A") + at), r, r.grown(-15), r.grown(-40), None))
        x += width + 60.0
    return tuple(found)


def hung_scene(setting: Setting, seed: int) -> Scene:
    """Frames of one group and their photograph; of odd ones half have no depth in the job."""
    chance = np.random.default_rng(seed)
    faces = group(chance)
    unknown = setting.odd and bool(seed % 2)
    low, high = (min(f.frame.y0 for f in faces), max(f.frame.y1 for f in faces))
    depths = {face.id: float(round(chance.uniform(14, 30))) for face in faces}
    frames = [
        frame
        for face in faces
        for frame in hanging([face], depths[face.id], chance, profiled=setting.odd,
                             mismeasured=0.4 if setting.odd else 0.0)
    ]  # fmt: skip
    card_up = low - 150.0
    camera = standing(chance, setting.size, (WIDE / 2, (high + card_up - 110) / 2), WIDE, high - card_up + 110.0,
                      "divided" if setting.odd else "brown", most=12.0)  # fmt: skip
    picture = wall(camera, chance)
    for frame in frames:
        shadow(picture, frame, camera, chance)
    for frame in frames:
        if setting.odd:
            sides(picture, frame, camera, chance)
        lay(picture, frame, camera)
    middle = [(WIDE * chance.uniform(0.2, 0.8), card_up)]
    for card in cards_at(middle, chance, scale=1 + chance.normal(0, 0.001) if setting.odd else 1.0):
        lay(picture, card, camera)
    points = {frame.name: pointed(frame, camera, chance, POINTED * max(setting.size) / 4000) for frame in frames}
    true = {frame.name: frame.lies(np.array(frame.paper.corners)[[3, 2]]) for frame in frames}
    photo = Photo("hung.jpg", b"", developed(picture, look_of(setting, chance), chance))
    return Scene(photo, faces, {} if unknown else depths, points, true)


def compare(scene: Scene, seed: int, read: Read) -> None:
    """Reads a scene, and adds what was found."""
    read.frames += len(scene.faces)
    try:
        found = read_hung(scene.photo, scene.faces, scene.depths, scene.corners, cards_of("a4"))
    except InputError as error:  # none of the photograph's frames is read
        read.doubts += [f"{seed} {face.id}: {error}" for face in scene.faces]
        return
    read.doubts += [f"{seed} {name}: {why}" for name, why in found.doubts]
    off = np.array([np.array([one.left, one.right]) - scene.true[one.id] for one in found.frames])
    off = off - off.mean((0, 1))  # a photograph tells places relative to each other
    for one, own in zip(found.frames, off, strict=True):
        read.corners += list(own)
        read.sure += [one.sure] * 2
        wide = np.subtract(one.right, one.left)[0]
        read.tilts.append(float(np.degrees((own[1] - own[0])[1] / wide)))
        read.worst.append(Worst(float(np.abs(own).max()), one.sure, seed, one.id))


def hung_run(setting: Setting, count: int, first: int = 0) -> Read:
    """So many photographs, each of other frames."""
    read = Read()
    for seed in range(first, first + count):
        compare(hung_scene(setting, seed), seed, read)
    return read
