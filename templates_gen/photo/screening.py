"""Before and between fits: which tags are where they may be, which sheets are not, and tags that were overlooked.

Limits and sizes without a source beside them are our own, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from templates_gen.base.record import Record
from templates_gen.drawing.tags import ACROSS
from templates_gen.photo.camera import pixels_of
from templates_gen.photo.fit import Fit
from templates_gen.photo.scene import Printed
from templates_gen.photo.tags import Seen, Tags, match, side_of
from templates_gen.photo.vision import (
    CLEAN_CORNERS,
    Array,
    View,
    best_match,
    clean_tag,
    homography,
    np,
    through,
    warped,
)

NEAR, STRAY = 12.0, 25.0
"""Pixels on a picture of 12 megapixels: what a plane without a lens is fitted to, and where a tag is stray."""

LEAST, LEAST_SIDE = 4, 8.0
"""Tags without which nothing is fitted; pixels of a side under which no tag is looked for."""

ALIKE, LEFT, FAR = 0.75, 0.2, 2.0
"""What a tag that is looked for must match by at least; of its contrast, what may be left; pixels it may move then.
Our own simulation, no source."""

ELSEWHERE = 5.0
"""mm around its place in which a tag is looked for, where nothing of its sheet was seen yet."""


class Misplaced(Record, frozen=True):
    """A sheet that is nowhere near its place: how far off (mm), and turned by how much (degrees)."""

    name: str
    dx: float
    dy: float
    turn: float


class Screened(Record, frozen=True):
    """The tags that may be right, the sheets that are elsewhere, and how many tags strayed."""

    view: View
    elsewhere: tuple[Misplaced, ...] = ()
    strays: int = 0


def screened(seen: Seen, printed: Printed, unit: float) -> Screened:
    """A view without what is nowhere near its place: misread, upside down, another template's."""
    tags = [(number, corners) for number, corners in seen.tags if number in printed]
    if len(tags) < LEAST:
        return Screened({})
    wall = np.array([printed[number][1] for number, _ in tags])
    pixels = np.array([corners for _, corners in tags])
    plane = homography(wall.mean(1), pixels.mean(1), NEAR * unit)
    if plane is None:
        return Screened({})
    seen_wall = through(plane, wall.reshape(-1, 2)).reshape(-1, 4, 2)
    off = np.linalg.norm(seen_wall - pixels, axis=2).max(1)
    good = _nearest(tags, off, STRAY * unit)
    bad = [at for at, (number, _) in enumerate(tags) if number not in good]
    lost = _lost([tags[at][0] for at in bad], list(good), printed)
    back = np.linalg.inv(plane)
    elsewhere = tuple(
        _misplaced(name, [(wall[at], through(back, pixels[at])) for at in bad if printed[tags[at][0]][0] == name])
        for name in lost
    )
    view = {number: corners for number, corners in good.items() if printed[number][0] not in lost}
    return Screened(view, elsewhere, len(bad) - sum(printed[tags[at][0]][0] in lost for at in bad))


def _nearest(tags: Tags, off: Array, most: float) -> dict[int, Array]:
    """Of every number the tag that is nearest to its place, if it is near at all."""
    found: dict[int, tuple[float, Array]] = {}
    for (number, corners), far in zip(tags, off, strict=True):
        if far <= most and far < found.get(number, (most + 1, corners))[0]:
            found[number] = (float(far), corners)
    return {number: corners for number, (_, corners) in found.items()}


def _lost(bad: list[int], good: list[int], printed: Printed) -> list[str]:
    """The sheets of which more tags are astray than not, two at least."""
    names = [printed[number][0] for number in bad]
    kept = [printed[number][0] for number in good]
    return sorted(name for name in set(names) if len(set(bad)) and names.count(name) > max(1, kept.count(name)))


def _misplaced(name: str, tags: list[tuple[Array, Array]]) -> Misplaced:
    planned, found = (np.concatenate([pair[k] for pair in tags]) for k in (0, 1))
    dx, dy = found.mean(0) - planned.mean(0)
    ways = [complex(*(there[1] - there[0])) / complex(*(own[1] - own[0])) for own, there in tags]
    return Misplaced(name, float(dx), float(dy), float(np.degrees(np.angle(np.sum(ways)))))


def predicted(
    fit: Fit, view: int, sheet: str, corners: Array, middle: Array, centre: Array, stands: float = 0.0
) -> Array:
    """The pixels of a tag's corners (wall mm, so far off the wall) by a fit, on a sheet that it may not know."""
    rel, mid = corners - middle, middle - centre
    if sheet in fit.scene.sheets:
        dx, dy, turn = fit.state.sheets[fit.scene.sheets.index(sheet)]
        c, s = np.cos(turn), np.sin(turn)
        rel = np.stack([c * rel[:, 0] - s * rel[:, 1], s * rel[:, 0] + c * rel[:, 1]], -1)
        mid = mid + np.array([dx, dy])
    points = np.c_[rel + mid, np.full(len(rel), stands)]
    away = points @ fit.state.turns[view].T + fit.state.shifts[view]
    return pixels_of(away, fit.state.lens, fit.scene.focal, fit.scene.size)


def overlooked(
    grey: Array, fit: Fit, at: int, have: View, printed: Printed, middles: Mapping[str, Array], centre: Array,
    blur: float,
) -> Iterator[tuple[int, Array]]:  # fmt: skip
    """Tags that were not found, looked for where they must be; only a match is asked for, the number being known."""
    for number, (sheet, corners) in printed.items():
        if number in have:
            continue
        there = predicted(fit, at, sheet, corners, middles[sheet], centre)
        found = _looked_for(grey, number, there, corners, blur, sheet in fit.scene.sheets)
        if found is not None:
            yield number, found


def _looked_for(grey: Array, number: int, there: Array, corners: Array, blur: float, known: bool) -> Array | None:
    side = side_of(there)
    if side < LEAST_SIDE:
        return None
    scale = side / np.linalg.norm(corners[0] - corners[1])
    reach = int(np.ceil((1.0 if known else ELSEWHERE) * scale)) + 2
    low = np.floor(there.min(0) - side / ACROSS).astype(int)
    high = np.ceil(there.max(0) + side / ACROSS).astype(int) + 1
    if (low - reach < 0).any() or high[0] + reach >= grey.shape[1] or high[1] + reach >= grey.shape[0]:
        return None
    picture = warped(clean_tag(number, side, blur), CLEAN_CORNERS, there - low, *(int(one) for one in high - low))
    area = grey[low[1] - reach : high[1] + reach, low[0] - reach : high[0] + reach]
    best, at = best_match(area, picture)
    start = there + at - reach
    sharp = match(grey, number, start, blur) if best >= ALIKE else None
    if sharp is None or sharp.left > LEFT or np.abs(sharp.corners - start).max() > FAR:
        return None
    return sharp.corners
