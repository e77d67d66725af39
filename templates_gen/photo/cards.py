"""A camera and a wall from the photo cards on a photograph: never from a plane alone, which is far off beyond the card.

The first card's level line and its middle give the wall its axes.
"""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.base.errors import InputError
from templates_gen.base.record import Record, replace
from templates_gen.documents.photo_card import Card
from templates_gen.photo.camera import LENS_STEPS, OF_LENS, OF_POSE, OF_SHEET, POSE_STEPS, State, moved
from templates_gen.photo.fit import Fit, Widths, exactness, fitted
from templates_gen.photo.picture import Photo
from templates_gen.photo.scene import Printed, scene
from templates_gen.photo.screening import predicted
from templates_gen.photo.tags import seen_tags
from templates_gen.photo.vision import Array, corners_of, homography, np, through

WIDTHS = Widths(corner=0.1, aside=30.0, turn=float(np.radians(1.0)), height=1e-4)
"""Of a card: how exactly its tags are seen, and where a second one is beside where a plane sees it.  Our own."""

LEVEL_OFF = 0.05
"""Degrees that a card set by a spirit level is off level, as a deviation: 0.5 mm/m for the level itself and as much for
reading it.  Common practice, no source."""

ABOUT = np.array([[-500.0, -500.0], [500.0, -500.0], [500.0, 500.0], [-500.0, 500.0]])
FAR, ROUNDS = 1000.0, 10
"""Four points of the wall (mm) from which a plane is taken, how far off those may be (mm), and how often what the plane
says is made better.  Our own design, no source."""

ONE_SIDED = 1.645
"""The deviations that 95 of 100 of a normal distribution are under (tables of it, from memory)."""

LEAST_CORNER, AGAIN = 0.02, 2
"""Pixels that a card's corners are seen to at best; how often that is taken anew from what is left of a fit.  Our own
design, no source."""

NEAR = 0.1
"""mm of the wall over which a slope is taken.  Our own design, no source."""

SHEET_STEPS = (1e-3, 1e-3, 1e-6)
"""Over how much of the numbers of a sheet a slope is taken (mm, radians).  Our own design, no source."""


class OnWall(Record, frozen=True):
    """A photograph whose wall is known: points in mm from the first card's middle, x right and y up.

    `cards` are the numbers of the cards that were seen.
    """

    fit: Fit
    cards: tuple[int, ...]

    def pixels(self, points: Array) -> Array:
        """Where points of the wall are on the picture."""
        return _pixels(self.fit, self.fit.state, points)

    def wall(self, pixels: Array) -> Array:
        """Which points of the wall are at these pixels."""
        plane = homography(self.pixels(ABOUT), ABOUT, FAR)
        assert plane is not None  # a camera sees four points of a wall
        points = through(plane, pixels)
        for _ in range(ROUNDS):
            left = pixels - self.pixels(points)
            points = points + np.einsum("nij,nj->ni", np.linalg.inv(self._by_point(points)), left)
        return points

    def sure(self, points: Array) -> Array:
        """What 95 of 100 points keep within, of where they are drawn (mm along the wall)."""
        inverse, step = np.linalg.inv(self._by_point(points)), self._steps
        by = np.zeros((len(points), 2, len(step)))
        for column, size in enumerate(step):
            change = np.zeros(len(self.fit.covariance))
            change[column] = size
            ahead, back = (_pixels(self.fit, moved(self.fit.state, sign * change), points) for sign in (1, -1))
            by[..., column] = (ahead - back) / (2 * size)
        of_wall = inverse @ by
        known = self.fit.covariance[: len(step), : len(step)]
        spread = np.einsum("nij,jk,nlk->nil", of_wall, known, of_wall)
        turning = np.radians(LEVEL_OFF) * points[:, ::-1] * [-1, 1]
        return within(spread + turning[:, :, None] * turning[:, None])

    @property
    def _steps(self) -> Array:
        return np.array([*POSE_STEPS, *LENS_STEPS, *SHEET_STEPS * len(self.fit.scene.sheets)])

    def _by_point(self, points: Array) -> Array:
        columns = [(self.pixels(points + e) - self.pixels(points - e)) / (2 * NEAR) for e in np.eye(2) * NEAR]
        return np.stack(columns, -1)


def within(spread: Array) -> Array:
    """How far 95 of 100 points are at most, of places along and up with these covariances: the sum of their squares is
    taken for a chi-squared distribution (F. E. Satterthwaite 1946; E. B. Wilson and M. M. Hilferty 1931)."""
    mean = np.trace(spread, axis1=1, axis2=2)
    free = mean**2 / (spread**2).sum((1, 2))
    ninth = 2 / (9 * free)
    return np.asarray(np.sqrt(mean * (1 - ninth + ONE_SIDED * np.sqrt(ninth)) ** 3))


def _pixels(fit: Fit, state: State, points: Array) -> Array:
    """Points from the first card's middle, by this state."""
    assert OF_POSE + OF_LENS + OF_SHEET <= len(fit.covariance)
    return predicted(replace(fit, state=state), 0, fit.scene.sheets[0], points, np.zeros(2), np.zeros(2))


def see_wall(photo: Photo, cards: Sequence[Card]) -> OnWall:
    """The wall on a photograph with one card or both.  Raises InputError where no whole card is seen."""
    seen = dict(seen_tags(photo.grey).tags)
    whole = [card for card in cards if all(number in seen for number, _ in card.tags)]
    if not whole:
        found = sum(number in seen for card in cards for number, _ in card.tags)
        hint = "print one with templates-gen photo card; tape it flat, and go nearer or have more light"
        raise InputError(photo.name, f"shows no whole photo card: {found} of its four tags were found", hint)
    printed: Printed = {
        number: (f"{card.number}", card_corners(card, at)) for card in whole for at, (number, _) in enumerate(card.tags)
    }
    first = whole[0]
    plane = homography(
        np.concatenate([seen[number] for number, _ in first.tags]),
        np.concatenate([printed[number][1] for number, _ in first.tags]), 3.0,
    )  # fmt: skip
    if plane is None:
        raise InputError(photo.name, "no camera sees a card like that", "take it again, without a mirror or edit")
    middles = {f"{first.number}": np.zeros(2)}
    placed = dict(printed)
    for card in whole[1:]:
        there = through(plane, np.concatenate([seen[number] for number, _ in card.tags])).mean(0)
        middles[f"{card.number}"] = there
        placed |= {number: (f"{card.number}", printed[number][1] + there) for number, _ in card.tags}
    view = {number: seen[number] for number in placed}
    looked_at = scene([view], photo.size, placed, middles, np.zeros(2), focal=photo.focal)
    fit = fitted(looked_at, flat=True, known=WIDTHS)
    if fit is None:
        raise InputError(photo.name, "no camera sees a card like that", "take it again, without a mirror or edit")
    for _ in range(AGAIN):
        fit = fitted(looked_at, flat=True, known=replace(WIDTHS, corner=max(LEAST_CORNER, exactness(fit)))) or fit
    return OnWall(fit, tuple(card.number for card in whole))


def card_corners(card: Card, at: int) -> Array:
    """The corners of a card's tag from the middle of its level line."""
    level = card.level
    return corners_of(card.tags[at][1]) - ((level.x0 + level.x1) / 2, level.y0)
