"""What an eye makes of a mark from two metres: pages in coarse pixels, blurred, compared with every kind of mark.

Nothing here knows where a mark's lines are: only how it looks.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

import numpy as np
import pypdfium2
from numpy.typing import NDArray

from templates_gen.base.geometry import Rect
from templates_gen.drawing.items import MM_TO_POINTS, Form, Item, Page, Template, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.pdf.writing import write_pdf

Pixels = NDArray[np.float64]

DPI = 40.0
"""A pixel is then a minute of arc, what a good eye tells apart, from 2.2 m: 25.4 mm / 40 / tan(1/60°).  The minute is
common knowledge, from memory."""

PIXEL = 25.4 / DPI
BLUR = 0.35 / PIXEL
"""Standard deviation of the blur in pixels: 0.35 mm.  Our own choice."""

HALF = 16
"""Pixels to each side of a mark that are looked at: 10 mm.  Our own choice."""

SHIFTS = 2
"""Pixels by which a mark may be off from where it is looked for.  Our own choice."""

SCALES = (0.5, 0.6, 0.7, 0.85, 1.0, 1.2, 1.4, 1.7, 2.0)
"""Of a mark's size that someone may see it at who does not know how far away it is.  Our own choice."""

FAINT, AROUND, LEAST_SEEN = 0.1, 1, 12
"""What is lighter is no part of a mark; pixels of white around it; and so many pixels have to be seen of it to be
compared.  Our own choice."""

SIDE = 2 * HALF + 1
WHOLE: tuple[slice, slice] = (slice(0, SIDE), slice(0, SIDE))
HALVES = {
    "left": (slice(0, SIDE), slice(0, HALF + 1)), "right": (slice(0, SIDE), slice(HALF, SIDE)),
    "upper": (slice(0, HALF + 1), slice(0, SIDE)), "lower": (slice(HALF, SIDE), slice(0, SIDE)),
}  # fmt: skip
"""The half that is still seen when the other one is hidden."""


def seen(pdf: bytes, page: int) -> Pixels:
    """The darkness (0 to 1) of a page as it is seen from two metres; row 0 is its upper edge."""
    image = pypdfium2.PdfDocument(pdf)[page].render(scale=DPI / 72, grayscale=True).to_numpy()
    return blurred(1.0 - image.reshape(image.shape[:2]).astype(float) / 255.0)


def blurred(dark: Pixels) -> Pixels:
    """The same out of focus."""
    reach = np.arange(-3, 4)
    weights = np.exp(-(reach**2) / (2 * BLUR**2))
    weights /= weights.sum()
    for axis in (0, 1):
        dark = sum(weight * np.roll(dark, step, axis) for weight, step in zip(weights, reach, strict=True))
    return dark


def form(name: str, *items: Item) -> Form:
    """A mark of these items about its middle."""
    return Form(name, Rect(-40.0, -40.0, 40.0, 40.0), items)


@cache
def drawn(form: Form, scale: float) -> Pixels:
    """A mark alone, at a scale, in the middle of its picture."""
    side = 40 * 25.4 / 72 * 5  # mm of a page of 200 points, which is a whole number of pixels; no source
    page_matrix = tuple(value * scale for value in MM_TO_POINTS[:4])
    middle = side / 2 / scale
    page = Page("1", "", (Use(form.name, middle, middle),), (*page_matrix, 0.0, 0.0))
    points = round(side / 25.4 * 72)
    found = seen(write_pdf(Template("a mark", "", "en", (points, points), (page,), (form,)), Lettering()), 0)
    row, column = found.shape[0] // 2, found.shape[1] // 2
    return found[row - HALF : row + HALF + 1, column - HALF : column + HALF + 1]


def ways(form: Form, scales: Sequence[float] = (1.0,)) -> list[Pixels]:
    """A mark at these scales, turned by quarters."""
    return [np.rot90(drawn(form, scale), turn) for scale in scales for turn in range(4)]


def around(page: Pixels, x: float, y: float) -> list[Pixels]:
    """The pictures of a place of a page (points from its lower left corner), one for every shift."""
    column, row = round(x / 72 * DPI - 0.5), round(page.shape[0] - y / 72 * DPI - 0.5)
    wide = np.pad(page, HALF + SHIFTS)
    steps = range(2 * SHIFTS + 1)
    return [
        wide[row + down : row + down + SIDE, column + aside : column + aside + SIDE]
        for down in steps
        for aside in steps
    ]


def likeness(places: Sequence[Pixels], shapes: Sequence[Pixels], part: tuple[slice, slice] = WHOLE) -> float:
    """How like the likest of the shapes it is in one of the places, where only a part is seen: 1 is the same.

    Normalised cross-correlation, over what the shape takes and a little around it.
    """
    return _likest(places, shapes, part)


def alike(places: Pixels | Sequence[Pixels], shapes: Sequence[Pixels]) -> float:
    """How like the likest of the shapes a place is, or the likest of several, with all that is around both."""
    return _likest(places, shapes, None)


@dataclass(frozen=True)
class _Shapes:
    """Shapes as rows: where each is looked at, of how many pixels, and what it is there, with a mean of 0 and a length
    of 1; all 0 where too little of it is seen."""

    of: Sequence[Pixels]
    at: Pixels
    count: Pixels
    rows: Pixels


_KNOWN: dict[tuple[int, str], _Shapes] = {}
"""By the list of the shapes and what of them is seen; the list is held here, so that no other comes to its place."""


def _shapes(shapes: Sequence[Pixels], part: tuple[slice, slice] | None) -> _Shapes:
    key = id(shapes), str(part)
    if key not in _KNOWN:
        seen_part = np.zeros((SIDE, SIDE), bool)
        seen_part[WHOLE if part is None else part] = True
        at = np.array([(seen_part if part is None else _taken(one) & seen_part).ravel() for one in shapes], float)
        count = at.sum(axis=1)
        rows = np.array([one.ravel() for one in shapes])
        rows = (rows - (rows * at).sum(axis=1, keepdims=True) / np.maximum(count, 1.0)[:, np.newaxis]) * at
        rows *= ((count >= LEAST_SEEN) / np.maximum(np.linalg.norm(rows, axis=1), 1e-9))[:, np.newaxis]
        _KNOWN[key] = _Shapes(shapes, at, np.maximum(count, 1.0), rows)
    return _KNOWN[key]


def _likest(places: Pixels | Sequence[Pixels], shapes: Sequence[Pixels], part: tuple[slice, slice] | None) -> float:
    """The greatest normalised cross-correlation of any place and shape, all at once."""
    images, known = np.reshape(places, (-1, SIDE * SIDE)), _shapes(shapes, part)
    squares = images**2 @ known.at.T - (images @ known.at.T) ** 2 / known.count
    return float((images @ known.rows.T / np.maximum(np.sqrt(np.maximum(squares, 0.0)), 1e-9)).max())


def _taken(shape: Pixels) -> NDArray[np.bool_]:
    """The rectangle that holds all of a mark, grown by what is white around it."""
    rows, columns = (np.flatnonzero(shape.max(axis=axis) > FAINT) for axis in (1, 0))
    taken = np.zeros(shape.shape, bool)
    taken[max(0, rows[0] - AROUND) : rows[-1] + AROUND + 1, max(0, columns[0] - AROUND) : columns[-1] + AROUND + 1] = (
        True
    )
    return taken
