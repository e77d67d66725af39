"""What can be on a page: six kinds of mark, forms drawn once and placed often, and finished pages.

A finished `Template` holds positions and items and leaves nothing to decide.  All lengths are millimetres,
y up; where an item's coordinates start from is said by what holds it (a form, the wall, or a page).
"""

from __future__ import annotations

from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record, field
from templates_gen.base.units import INCH

Matrix = tuple[float, float, float, float, float, float]
"""`X = a·x + c·y + e`, `Y = b·x + d·y + f`, written (a, b, c, d, e, f) as in PDF (ISO 32000-1, 8.3.3)."""

POINT = INCH / 72
"""One PDF point in mm: 1/72 in (ISO 32000-1, 8.3.2.3)."""

MM_TO_POINTS: Matrix = (1 / POINT, 0.0, 0.0, 1 / POINT, 0.0, 0.0)
"""Millimetres from the page's lower left corner to PDF points."""


def moved(matrix: Matrix, x: float, y: float) -> tuple[float, float]:
    """Where the matrix brings a point."""
    a, b, c, d, e, f = matrix
    return a * x + c * y + e, b * x + d * y + f


def after(last: Matrix, first: Matrix) -> Matrix:
    """The matrix that does what `first` does and then what `last` does."""
    a, b, c, d, e, f = first
    (e, f), zero = moved(last, e, f), moved(last, 0.0, 0.0)
    (a, b), (c, d) = moved(last, a, b), moved(last, c, d)
    return a - zero[0], b - zero[1], c - zero[0], d - zero[1], e, f


def shifted(matrix: Matrix, dx: float, dy: float) -> Matrix:
    """The matrix that first moves by (dx, dy) and then does what this one does."""
    return (*matrix[:4], *moved(matrix, dx, dy))


class Line(Record, frozen=True):
    """A straight line, black or `grey` up to 1, white.

    `dash` holds lengths of dash and gap in mm, `phase` is where in that pattern it starts.
    """

    x0: float
    y0: float
    x1: float
    y1: float
    width: float
    dash: tuple[float, ...] = ()
    phase: float = 0.0
    grey: float = 0.0


class Circle(Record, frozen=True):
    """A circle, open (`width` of its line) or filled, black or `grey` up to 1, white."""

    x: float
    y: float
    radius: float
    width: float
    filled: bool = False
    grey: float = 0.0


class Polygon(Record, frozen=True):
    """A closed outline, filled or drawn as a line of `width`, black or `grey` up to 1, white."""

    points: tuple[tuple[float, float], ...]
    width: float = 0.0
    filled: bool = True
    grey: float = 0.0


class Text(Record, frozen=True):
    """One line of lettering.

    (x, y) is on the base line, at the `anchor` ("left", "middle" or "right") of the text; `height` is the height
    of its capital letters in mm (h of ISO 3098-1, from memory); `angle` is 0, or 90 to read from the right-hand side.
    """

    x: float
    y: float
    text: str
    height: float
    anchor: str = "left"
    angle: int = 0
    bold: bool = False


class Use(Record, frozen=True):
    """A form placed with its origin at (x, y)."""

    form: str
    x: float
    y: float


class Pixels(Record, frozen=True):
    """A picture as every kind of file keeps it: JPEG data, its size in pixels, and whether it has no colours."""

    jpeg: bytes
    width: int
    height: int
    grey: bool


class Picture(Record, frozen=True):
    """Pixels that fill a box."""

    pixels: Pixels
    box: Rect


Item = Line | Circle | Polygon | Text | Use | Picture


class Form(Record, frozen=True):
    """A drawing kept once in the file and placed by `Use`; nothing of it outside `box` (mm) is shown."""

    name: str
    box: Rect
    items: tuple[Item, ...]


class Page(Record, frozen=True):
    """One page.

    `wall_items` are in wall mm, brought to the page by `to_page` (wall mm to PDF points) and cut off at `window`
    (wall mm).  `page_items` are in mm from the page's lower left corner, brought to points by `page_matrix`
    (which differs from plain `MM_TO_POINTS` only where a printer is corrected for).
    `label` is the page's name as a PDF viewer shows it; `title` its line in the outline, if it has one.
    """

    label: str
    title: str
    page_items: tuple[Item, ...]
    page_matrix: Matrix = MM_TO_POINTS
    wall_items: tuple[Item, ...] = ()
    window: Rect | None = None
    to_page: Matrix | None = None


class Template(Record, frozen=True):
    """The whole file: pages in order, the forms they place, and what the file says about itself.

    `page_size` is in whole PDF points; `attachments` are (file name, content) pairs that travel inside,
    the job file first.
    """

    title: str
    author: str
    language: str
    page_size: tuple[int, int]
    pages: tuple[Page, ...]
    forms: tuple[Form, ...] = ()
    attachments: tuple[tuple[str, bytes], ...] = field(default=())
