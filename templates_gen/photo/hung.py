"""How frames hang, from a photograph on which somebody pointed at their corners, with a photo card for the level.

Each side is looked for near where it was pointed at; the frame's known size chooses among edges of moulding, mat and
shadow.  Places are relative to each other: a photograph does not see where the wall's left end and floor are.

Limits and sizes without a source beside them are our own, no source.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from typing import Any

from templates_gen.base.csv_cells import as_csv, own_text
from templates_gen.base.errors import InputError
from templates_gen.base.record import Record, replace
from templates_gen.base.words import some
from templates_gen.documents.photo_card import Card
from templates_gen.documents.photographed import Face
from templates_gen.photo.cards import LEVEL_OFF
from templates_gen.photo.choosing_edges import Choice, choice
from templates_gen.photo.crossing_edges import Crossings, crossings
from templates_gen.photo.edges import edges
from templates_gen.photo.fit import NORMAL, Fit
from templates_gen.photo.fronts import CARD, SHALLOW, Group, bows, camera, folds, on_wall, rectangle, slants, spread
from templates_gen.photo.gauge import Gauge, spots
from templates_gen.photo.picture import Photo
from templates_gen.photo.tags import seen_tags
from templates_gen.photo.vision import Array, np

FLOOR = 0.6
"""mm of what no edge tells, such as rounded mouldings.  Our own guess."""

LEAST = 2
"""Frames without which nothing is read: places are relative to each other."""

OFTEN, DEPTHS = 2.5, 25
"""Deviations that a depth may be from the one that is told, and how many depths between are looked at."""

TIMES = 3
"""How often edges are chosen again, each time by a camera that the last choice gave."""


class Hangs(Record, frozen=True):
    """How a frame hangs: its top left and top right corner on the wall (mm), as if the frames in the middle were at
    their places, and what 95 of 100 keep within (mm)."""

    id: str
    left: tuple[float, float]
    right: tuple[float, float]
    sure: float


class Hung(Record, frozen=True):
    """The frames that were read, and why others were not, by their ids."""

    frames: tuple[Hangs, ...]
    doubts: tuple[tuple[str, str], ...]


Chosen = Mapping[str, Array]
"""The corners of frames on the picture, the upper left one first, clockwise."""

Choices = Mapping[str, Choice]


def read_hung(
    photo: Photo, faces: Sequence[Face], depths: Mapping[str, float], pointed: Chosen, cards: Sequence[Card]
) -> Hung:
    """How the pointed frames hang.  Raises InputError for fewer than two."""
    known = tuple(face for face in faces if face.id in pointed)
    if len(known) < LEAST:
        raise InputError(photo.name, f"found corners of {len(known)} frames, expected {LEAST} or more",
                         "places are read relative to each other: point at more")  # fmt: skip
    group = Group(photo.size, known, depths, *_card(photo, cards), photo.focal, {})
    chosen: Choices = {}
    for _ in range(TIMES):
        group = replace(group, found=_stands(chosen))
        fit = camera(group, _trusted(chosen), pointed)
        found = {face.id: _found(photo, group, fit, face, pointed[face.id]) for face in known}
        chosen = _by_the_others(group, found, chosen, pointed)
    doubts = {name: _unseen(group, pointed[name]) for name, one in found.items() if one is None}
    doubts |= {name: one.doubt for name, one in chosen.items() if one.doubt}
    if len(known) - len(doubts) < LEAST:
        why = "; ".join(f"{name}: {doubt}" for name, doubt in sorted(doubts.items()))
        told = f"{len(known) - len(doubts)} of {len(known)} frames can be read, expected {LEAST} or more ({why})"
        raise InputError(
            photo.name, told, "point at their fronts' outer corners; check their sizes and depths in the job"
        )
    group = replace(group, found=_stands(chosen))
    return _told(camera(group, _trusted(chosen), pointed), group, doubts)


def _unseen(group: Group, corners: Array) -> str:
    """Why no edges are seen at a side."""
    return "an edge is not to be seen" if _whole(group, corners) else "it is not whole on the photograph"


def _whole(group: Group, corners: Array) -> bool:
    return bool((corners >= 0).all() and (corners <= np.array(group.size) - 1).all())


def _card(photo: Photo, cards: Sequence[Card]) -> tuple[Card, dict[int, Array]]:
    """The card that is seen, and its tags on the picture."""
    seen = dict(seen_tags(photo.grey).tags)
    whole = next((card for card in cards if all(number in seen for number, _ in card.tags)), None)
    if whole is None:
        raise InputError(photo.name, "shows no whole photo card, which tells what is level",
                         "print one with templates-gen photo card, tape it level beside the frames")  # fmt: skip
    return whole, {number: seen[number] for number, _ in whole.tags}


def _found(photo: Photo, group: Group, fit: Fit, face: Face, corners: Array) -> Crossings | None:
    """What the edges near pointed corners give; None where there are none at a side."""
    if not _whole(group, corners):
        return None
    bowed, slant = bows(fit, group, face, corners), slants(fit, group, face)
    told, off = group.told(face)
    depths = np.linspace(max(told - OFTEN * off, SHALLOW), told + OFTEN * off, DEPTHS)
    farther = np.clip(slant.max(1) * depths[-1], 0, None)
    sides = [
        edges(photo.grey, corners[at], corners[(at + 1) % 4], group.unit, bowed[at], farther[at]) for at in range(4)
    ]
    return crossings(sides, slant, depths) if all(sides) else None


def _by_the_others(group: Group, found: Mapping[str, Crossings | None], last: Choices, pointed: Chosen) -> Choices:
    """Of every frame the edges that suit it by a camera of the others: no frame speaks for itself."""
    chosen: dict[str, Choice] = {}
    trusted = _trusted(last)
    for part in folds([face.id for face in group.faces]):
        fit = camera(group, {name: corners for name, corners in trusted.items() if name not in part}, pointed)
        for face in group.faces:
            one = found[face.id]
            if face.id in part and one is not None:
                nearer, farther = (
                    on_wall(fit, group, face, corners.reshape(-1, 2), float(depth)).reshape(-1, 4, 2)
                    for corners, depth in zip(one.corners, one.depths[[0, -1]], strict=True)
                )
                unsure, there = spread(fit, group, face, pointed[face.id]), pointed[face.id]
                told = group.told(face)
                chosen[face.id] = choice(one, (nearer, farther), told, rectangle(face), unsure, there, group.unit)
    return chosen


def _trusted(chosen: Choices) -> Chosen:
    """The corners of frames without a doubt."""
    return {name: one.corners for name, one in chosen.items() if not one.doubt}


def _stands(chosen: Choices) -> dict[str, tuple[float, float]]:
    """How far fronts without a doubt stand off the wall, and how surely (mm, a deviation)."""
    return {name: one.stands for name, one in chosen.items() if not one.doubt}


def _told(fit: Fit, group: Group, doubts: Mapping[str, str]) -> Hung:
    """The readings: turned by the card's level, and moved so that the frames' middles are at their places."""
    read = [face for face in group.faces if face.id not in doubts]
    numbers = [fit.scene.sheets.index(face.id) for face in read]
    card = fit.scene.sheets.index(CARD)
    by = np.zeros((3, 3 * len(fit.scene.sheets)))
    for number in numbers:
        by[0, 3 * number] = by[1, 3 * number + 1] = 1 / len(numbers)
    by[2, 3 * card + 2] = 1.0
    moved = fit.state.sheets[numbers, :2].mean(0)
    lines = Gauge(np.zeros(2), moved, float(fit.state.sheets[card, 2]), by, True)
    places = [(face.id, corner) for face in read for corner in map(tuple, rectangle(face)[:2])]
    found = spots(fit, places, group.centre, lines)
    frames = []
    for at, face in enumerate(read):
        left, right = (rectangle(face)[k] + found.moved[2 * at + k] for k in (0, 1))
        far = np.linalg.norm(rectangle(face)[:2] - group.centre, axis=1).max()
        across, up = found.variance[2 * at : 2 * at + 2].max(0)
        level = (np.radians(LEVEL_OFF) * far) ** 2
        sure = NORMAL * float(np.sqrt(max(across, up + level) + FLOOR**2))
        frames.append(Hangs(face.id, (float(left[0]), float(left[1])), (float(right[0]), float(right[1])), sure))
    return Hung(tuple(frames), tuple(sorted(doubts.items())))


def as_data(hung: Hung) -> dict[str, Any]:
    """The readings for other programs (mm)."""
    frames = [{"id": one.id, "left": list(one.left), "right": list(one.right), "sure": one.sure} for one in hung.frames]
    return {"format": 1, "frames": frames, "not_read": [{"id": name, "why": why} for name, why in hung.doubts]}


def reading(one: Hangs, centre_line: float) -> dict[str, str]:
    """The readings of a frame by their columns."""
    across = one.left[0] - centre_line
    lengths = {"left": one.left[1], "right": one.right[1], "left_edge": across, "within": one.sure}
    return {name: f"{mm:.2f} mm" for name, mm in lengths.items()}


def not_read(hung: Hung) -> Iterator[str]:
    """What to do about every frame that was not read."""
    for name, why in hung.doubts:
        yield f"Frame {name} was not read: {why}. Measure it by hand."


def without_depth(names: Iterable[str], known: Collection[str]) -> Iterator[str]:
    """What to do about frames of which the job does not have the depth."""
    if shallow := [name for name in names if name not in known]:
        said = "How far they stand off the wall is read from their sides on the photograph."
        yield f"Frames without a depth in the job: {some(shallow)}. {said} With their depths more frames can be read."


RELATIVE = "Places are relative to each other: the frames together are taken to be where they were planned."
"""What a photograph does not tell."""


def as_readings(hung: Hung, centre_line: float) -> str:
    """The readings as the spreadsheet that `correct` reads."""
    rows = ((own_text(one.id), *reading(one, centre_line).values()) for one in hung.frames)
    return as_csv(("frame", "left", "right", "left_edge", "within"), rows)
