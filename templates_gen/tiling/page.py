"""The paper as it lies: how large it is, where a printer can reach, and what brings it to the points of a PDF file."""

from __future__ import annotations

import math

from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.base.record import Record
from templates_gen.drawing.items import MM_TO_POINTS, POINT, Matrix, after
from templates_gen.job.model import Paper
from templates_gen.printer.correction import correction
from templates_gen.printer.profile import Printer


class Page(Record, frozen=True):
    """The paper as it lies: size in whole points, printable rectangle in mm from its lower left corner.

    The size is rounded down to whole points: a page a hair larger than the paper is printed scaled down.  Page mm are
    true millimetres on the printed paper; `matrix` brings them to PDF points, a printer's correction included.
    """

    width: int
    height: int
    printable: Rect
    matrix: Matrix = MM_TO_POINTS


def page_of(paper: Paper, turned: bool, printer: Printer | None = None) -> Page:
    """The page, upright or on its side; a printer may turn it either way, so both short sides keep the wider margin."""
    top, right, bottom, left = paper.margin
    width, height = paper.width, paper.height
    if turned:
        width, height = height, width
        top, right, bottom, left = max(left, right), max(top, bottom), max(left, right), max(top, bottom)
    points = math.floor(width / POINT + TOLERANCE), math.floor(height / POINT + TOLERANCE)
    printable = Rect(left, bottom, points[0] * POINT - right, points[1] * POINT - top)
    if printer is None:
        return Page(*points, printable)
    matrix, reach = correction(printer, printable, lying=width > height)
    return Page(*points, reach, matrix)


def turned_page(page: Page) -> Page:
    """The same page on its side: what stands upright on it runs from the paper's right side to its left."""
    wide, area = page.width * POINT, page.printable
    quarter = (0.0, 1.0, -1.0, 0.0, wide, 0.0)
    lying = Rect(area.y0, wide - area.x1, area.y1, wide - area.x0)
    return Page(page.height, page.width, lying, after(page.matrix, quarter))
