"""Paper as somebody taped it: where every sheet lies, how it stands off the wall, and what is printed on it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import cv2
import numpy as np
import pypdfium2

from templates_gen.base.geometry import Rect
from templates_gen.documents.sheets.photo_tags import papers_of
from tests.made import Everything

FINE = 6.0
"""Pixels to the millimetre of a page as it is laid on the wall: 3 for one of a photograph of 12 megapixels."""

DOTS = 600.0


@dataclass(frozen=True)
class Laid:
    """A sheet: its page in pixels, what brings wall mm as planned to these, the paper it is cut to (wall mm as
    planned), the middle it is turned about, and its true dx, dy (mm) and turn (radians); `off` is its height off the
    wall by place in the cell, 0 to 1 each way."""

    name: str
    page: np.ndarray
    to_pixels: np.ndarray
    paper: Rect
    cell: Rect
    pose: np.ndarray
    off: Callable[[np.ndarray, np.ndarray], np.ndarray] | None = None

    @property
    def middle(self) -> np.ndarray:
        return np.array([self.cell.cx, self.cell.cy])

    def planned(self, wall: np.ndarray) -> np.ndarray:
        """What point of the plan lies at a point of the wall."""
        c, s = np.cos(self.pose[2]), np.sin(self.pose[2])
        return (wall - self.middle - self.pose[:2]) @ np.array([[c, -s], [s, c]]) + self.middle

    def lies(self, planned: np.ndarray) -> np.ndarray:
        """Where a point of the plan lies on the wall."""
        c, s = np.cos(self.pose[2]), np.sin(self.pose[2])
        return (planned - self.middle) @ np.array([[c, s], [-s, c]]) + self.middle + self.pose[:2]

    def height(self, planned: np.ndarray) -> np.ndarray:
        """How far the paper stands off the wall at points of the plan (mm)."""
        if self.off is None:
            return np.zeros(planned.shape[:-1])
        u = np.clip((planned[..., 0] - self.cell.x0) / self.cell.width, 0, 1)
        v = np.clip((planned[..., 1] - self.cell.y0) / self.cell.height, 0, 1)
        return self.off(u, v)


_PAGES: dict[tuple[int, float], list[np.ndarray]] = {}


def _pages(done: Everything, dots: float) -> list[np.ndarray]:
    """The sheets' pages, drawn fine and made coarser by averaging."""
    if (id(done), dots) not in _PAGES:
        document, found = pypdfium2.PdfDocument(done.pdf), []
        for sheet in done.report["sheets"]:
            page = document[sheet["page"] - 1]
            fine = page.render(scale=dots / 72, grayscale=True).to_numpy()
            width, height = (round(side / 72 * 25.4 * FINE) for side in page.get_size())
            found.append(cv2.resize(fine, (width, height), interpolation=cv2.INTER_AREA))
        _PAGES[id(done), dots] = found
    return _PAGES[id(done), dots]


def bulging(chance: np.random.Generator, most: float) -> Callable[[np.ndarray, np.ndarray], np.ndarray]:
    """A sheet that is held at its edges and stands off the wall between them."""
    high = chance.uniform(0.15, 1.0) * most
    return lambda u, v: high * np.sin(np.pi * u) * np.sin(np.pi * v)


def lifting(chance: np.random.Generator, most: float) -> Callable[[np.ndarray, np.ndarray], np.ndarray]:
    """A sheet whose one side stands off the wall, and which waves along it."""
    high, side, phase = chance.uniform(0.1, 0.6) * most, chance.integers(4), chance.uniform(0, 6)
    along = (lambda u, v: u, lambda u, v: 1 - u, lambda u, v: v, lambda u, v: 1 - v)[side]
    across = (lambda u, v: v, lambda u, v: v, lambda u, v: u, lambda u, v: u)[side]
    return lambda u, v: high * along(u, v) ** 2 * (1 + 0.4 * np.sin(5 * across(u, v) + phase))


def taped(
    done: Everything,
    chance: np.random.Generator,
    aside: float = 1.0,
    turn: float = 0.15,
    most_off: float = 0.0,
    spread: float = 0.0,
    dots: float = DOTS,
    loose: bool = False,
    stretch: float = 0.0,
) -> list[Laid]:
    """Every sheet as taped, those that lie under others first; `aside` (mm) and `turn` (degrees) are how far it is off,
    `spread` is how far ink runs (mm)."""
    papers, found = papers_of(done.sheets), []
    for sheet, page in zip(done.sheets.sheets, _pages(done, dots), strict=True):
        high, wide = page.shape
        width, height = (side / 72 * 25.4 for side in (sheet.page.width, sheet.page.height))
        if sheet.page is not done.sheets.page:  # it is drawn on its side
            width, height = height, width
        scale = np.diag([wide / width, -high / height, 1.0]) @ np.array([[25.4 / 72, 0, 0], [0, 25.4 / 72, -height],
                                                                          [0, 0, 1.0]])  # fmt: skip
        a, b, c, d, e, f = sheet.to_page
        to_pixels = np.array([[1, 0, -0.5], [0, 1, -0.5], [0, 0, 1.0]]) @ scale @ np.array([[a, c, e], [b, d, f],
                                                                                           [0, 0, 1.0]])  # fmt: skip
        pose = np.array([*chance.normal(0, aside, 2), np.radians(chance.normal(0, turn))])
        bend = (lifting if loose else bulging)(chance, most_off) if most_off else None
        if spread:
            page = np.minimum(page, cv2.GaussianBlur(page, (0, 0), spread * FINE).astype(np.uint8))
        found.append(Laid(sheet.name, page, to_pixels, papers[sheet.name], sheet.cell, pose, bend))
    return in_order(found, [(join.over, join.under) for join in done.sheets.joins])


def in_order(sheets: Sequence[Laid], over: Sequence[tuple[str, str]]) -> list[Laid]:
    """Those that lie under others first, as the joins say."""
    left, found = {sheet.name: sheet for sheet in sheets}, []
    while left:
        free = [name for name in left if not any(one == name and other in left for one, other in over)]
        found += [left.pop(name) for name in free or list(left)[:1]]
    return found
