"""A virtual print and tape-up: pages as pixels, each disturbed in its own way, joined by the marks found in them.

Nothing here uses the program's own idea of where a mark is on a page beyond choosing where to look.
"""

from __future__ import annotations

import ctypes
import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import pypdfium2
import pypdfium2.raw as pdfium

DPI = 300
PIXEL = 25.4 / DPI
Points = np.ndarray


@dataclass(frozen=True)
class Disturbance:
    """What printing and laying down does to one sheet: scale across and along, a turn (radians) and a shift (mm)."""

    across: float = 1.0
    along: float = 1.0
    turn: float = 0.0
    shift: tuple[float, float] = (0.0, 0.0)

    def matrix(self) -> np.ndarray:
        """Page mm (y up) to paper mm, as 2 × 3."""
        c, s = math.cos(self.turn), math.sin(self.turn)
        return np.array(
            [[c * self.across, -s * self.along, self.shift[0]], [s * self.across, c * self.along, self.shift[1]]]
        )


def printed(pdf: bytes, page: int, how: Disturbance, margin: float = 10.0) -> np.ndarray:
    """The darkness (0 to 1) of a page printed with a disturbance, one value a pixel; row 0 is the lower edge.

    `margin` mm of white lie around the paper, so that a turned page is not cut off; PDFium draws it through a matrix.
    """
    document = pypdfium2.PdfDocument(pdf)
    sheet = document[page]
    points = sheet.get_width(), sheet.get_height()
    width, height = (round((side * 25.4 / 72 + 2 * margin) / PIXEL) for side in points)
    bitmap = pypdfium2.PdfBitmap.new_native(width, height, pdfium.FPDFBitmap_Gray)
    bitmap.fill_rect((255, 255, 255, 255), 0, 0, width, height)
    (a, c, e), (b, d, f) = how.matrix()
    # page points, y down from the top edge as PDFium gives them, to pixels, y down
    top = points[1] * 25.4 / 72
    k = 25.4 / 72 / PIXEL
    matrix = pdfium.FS_MATRIX(
        a * k, -b * k, -c * k, d * k, (c * top + e + margin) / PIXEL, height - (d * top + f + margin) / PIXEL
    )
    clip = pdfium.FS_RECTF(0, 0, width, height)
    pdfium.FPDF_RenderPageBitmapWithMatrix(bitmap, sheet, ctypes.byref(matrix), ctypes.byref(clip), pdfium.FPDF_ANNOT)
    grey = bitmap.to_numpy().reshape(height, width).astype(float)
    return 1.0 - grey[::-1] / 255.0


def patch(image: np.ndarray, x: float, y: float, half: float, margin: float = 10.0) -> tuple[np.ndarray, int, int]:
    """The square of ±`half` mm about a place on the paper (mm), and the pixel of its lower left corner."""
    left, low = round((x + margin - half) / PIXEL), round((y + margin - half) / PIXEL)
    size = round(2 * half / PIXEL)
    return image[low : low + size, left : left + size], left, low


def find(image: np.ndarray, mark: np.ndarray, x: float, y: float, reach: float) -> tuple[float, float]:
    """Where (mm on the paper) a mark's picture fits best within ±`reach` mm of a place, to a part of a pixel."""
    half = mark.shape[0] * PIXEL / 2
    area, left, low = patch(image, x, y, half + reach)
    score = _correlation(area, mark)
    row, column = np.unravel_index(np.argmax(score), score.shape)
    fine_y = _peak(score[row - 1 : row + 2, column])
    fine_x = _peak(score[row, column - 1 : column + 2])
    middle = mark.shape[0] / 2
    return (
        (left + column + fine_x + middle) * PIXEL - 10.0,
        (low + row + fine_y + middle) * PIXEL - 10.0,
    )


def _correlation(area: np.ndarray, mark: np.ndarray) -> np.ndarray:
    """Normalised cross-correlation of a mark over an area, by Fourier transform."""
    shape = area.shape
    zero = mark - mark.mean()
    raw = np.fft.irfft2(np.fft.rfft2(area, shape) * np.conj(np.fft.rfft2(zero, shape)), shape)
    ones = np.conj(np.fft.rfft2(np.ones_like(mark), shape))
    total = np.fft.irfft2(np.fft.rfft2(area, shape) * ones, shape)
    squares = np.fft.irfft2(np.fft.rfft2(area**2, shape) * ones, shape)
    spread = np.sqrt(np.maximum(squares - total**2 / mark.size, 1e-6))
    valid = tuple(side - edge + 1 for side, edge in zip(shape, mark.shape, strict=True))
    return (raw / spread)[: valid[0], : valid[1]]


def _peak(three: np.ndarray) -> float:
    """How far the top of a parabola through three values lies from the middle one."""
    if len(three) < 3:
        return 0.0
    before, at, after = three
    bend = before - 2 * at + after
    return float(0.5 * (before - after) / bend) if bend < 0 else 0.0


def rigid(source: Points, target: Points) -> np.ndarray:
    """The turn and shift (2 × 3) that bring points nearest to others: paper can be laid down, not stretched.

    S. Umeyama, IEEE PAMI 13(4), 1991, without the scale.
    """
    from_mean, to_mean = source.mean(axis=0), target.mean(axis=0)
    u, _, vt = np.linalg.svd((target - to_mean).T @ (source - from_mean))
    turn = u @ np.diag([1.0, np.sign(np.linalg.det(u @ vt))]) @ vt
    return np.column_stack([turn, to_mean - turn @ from_mean])


def moved(matrix: np.ndarray, points: Points) -> Points:
    """Points brought through a 2 × 3 matrix."""
    return points @ matrix[:, :2].T + matrix[:, 2]


def taped(marks: Sequence[dict[str, tuple[float, float]]], order: Sequence[int]) -> dict[int, np.ndarray]:
    """Every sheet laid down by the marks it shares with those that lie already: sheet number to its 2 × 3 matrix.

    `marks` holds for each sheet where its marks are on it (mm); the first of the order lies as it is.
    """
    placed = {order[0]: np.array([[1.0, 0.0, 0.0], [0.0, 1.0, 0.0]])}
    waiting = list(order[1:])
    while waiting:
        sheet = max(waiting, key=lambda number: (_shared(number, marks, placed), -number))
        waiting.remove(sheet)
        here, there = [], []
        for name, at in marks[sheet].items():
            others = [other for other in placed if name in marks[other]]
            lying = [moved(placed[other], np.array([marks[other][name]]))[0] for other in others]
            if lying:
                here.append(at)
                there.append(np.mean(lying, axis=0))
        placed[sheet] = rigid(np.array(here), np.array(there))
    return placed


def _shared(sheet: int, marks: Sequence[dict[str, tuple[float, float]]], placed: dict[int, np.ndarray]) -> int:
    return sum(any(name in marks[other] for other in placed) for name in marks[sheet])
