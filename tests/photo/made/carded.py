"""Photo cards as somebody taped them to a wall, to be photographed."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

import cv2
import numpy as np
import pypdfium2

from templates_gen.base.geometry import Rect
from templates_gen.documents.photo_card import Card, card_pages, cards_of
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.pdf.writing import write_pdf
from tests.photo.made.taped import DOTS, FINE, Laid


@cache
def _pages(paper: str) -> tuple[tuple[Card, ...], list[np.ndarray]]:
    cards, lettering = cards_of(paper), Lettering()
    found = []
    for page in pypdfium2.PdfDocument(write_pdf(card_pages(cards, lettering), lettering)):
        wide, high = (round(side / 72 * 25.4 * FINE) for side in page.get_size())
        fine = page.render(scale=DOTS / 72, grayscale=True).to_numpy()
        found.append(cv2.resize(fine, (wide, high), interpolation=cv2.INTER_AREA))
    return cards, found


def cards_at(
    middles: Sequence[tuple[float, float]], chance: np.random.Generator, paper: str = "a4", level: float = 0.05,
    scale: float = 1.0, stretch: float = 0.0,
) -> list[Laid]:  # fmt: skip
    """The cards with the middles of their lines at these points of the wall (mm), so many degrees off level, and
    printed so many times too large, and longer yet by the share `stretch`."""
    cards, pages = _pages(paper)
    found = []
    for card, page, (x, y) in zip(cards, pages, middles, strict=False):
        wide, high = (
            side / 72 * 25.4 * own for side, own in zip(card.size, (scale, scale * (1 + stretch)), strict=True)
        )
        x0, y0 = x - (card.level.x0 + card.level.x1) / 2 * scale, y - card.level.y0 * scale * (1 + stretch)
        across, up = page.shape[1] / wide, page.shape[0] / high
        to_pixels = np.array([[across, 0, -across * x0 - 0.5], [0, -up, up * (high + y0) - 0.5], [0, 0, 1.0]])
        turn = np.radians(chance.normal(0, level))
        middle = Rect.about(x, y, 2.0, 2.0)  # it is turned about the middle of its line
        found.append(Laid(f"{card.number}", page, to_pixels, Rect(x0, y0, x0 + wide, y0 + high), middle,
                          np.array([0, 0, turn])))  # fmt: skip
    return found
