"""A page of a PDF file as pixels.  Only this file knows pypdfium2."""

from __future__ import annotations

import ctypes
import math

import pypdfium2
from pypdfium2 import raw

from templates_gen.base.errors import InputError

POINTS = 72
"""To an inch (ISO 32000-1, 8.3.2.3)."""

WHITE = 255
"""All light of a colour in one byte."""

MILLION = 1_000_000

MOST_PIXELS = 40 * MILLION
"""Of a page: A0 at 150 dots per inch, and no more than 500 MB while it is written.  Our own bound, no source."""


def page_pixels(pdf: bytes, dots_per_inch: float) -> tuple[tuple[int, int], bytes]:
    """Width and height of the first page in pixels, and its pixels (RGB, from the upper left row by row).

    The page is drawn at exactly this scale from its upper left corner.  Raises InputError for too many pixels.
    """
    document = pypdfium2.PdfDocument(pdf)
    page, scale = document[0], dots_per_inch / POINTS
    width, height = (math.ceil(side * scale) for side in page.get_size())
    if width * height > MOST_PIXELS:
        found = f"found {dots_per_inch:g}, which makes {width} × {height} pixels"
        raise InputError("--dpi", found, f"expected at most {MOST_PIXELS // MILLION} million pixels on this paper")
    bitmap = pypdfium2.PdfBitmap.new_native(width, height, raw.FPDFBitmap_BGR)
    bitmap.fill_rect((WHITE, WHITE, WHITE, WHITE), 0, 0, width, height)
    # a bitmap has whole pixels and a page may have none: its own matrix keeps the scale exact, where pypdfium2's
    # render would stretch the page
    matrix, whole = raw.FS_MATRIX(scale, 0, 0, scale, 0, 0), raw.FS_RECTF(0, 0, width, height)
    raw.FPDF_RenderPageBitmapWithMatrix(
        bitmap, page, ctypes.byref(matrix), ctypes.byref(whole), raw.FPDF_ANNOT | raw.FPDF_REVERSE_BYTE_ORDER
    )
    rows = memoryview(bitmap.buffer).cast("B")
    return (width, height), b"".join(rows[start : start + 3 * width] for start in range(0, len(rows), bitmap.stride))
