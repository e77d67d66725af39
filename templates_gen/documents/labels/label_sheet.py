"""Where labels lie on a sheet: plain paper to cut, or a sheet of labels by its size and pitch."""

from __future__ import annotations

import math
from collections.abc import Iterator

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.base.record import Record
from templates_gen.base.units import INCH, show, show_size
from templates_gen.drawing.items import POINT
from templates_gen.job.model import Paper
from templates_gen.tiling.page import Page, page_of

Pair = tuple[float, float]

USUAL: dict[str, Pair] = {"in": (3.5 * INCH, 2 * INCH), "mm": (90.0, 50.0), "cm": (90.0, 50.0)}
"""Width and height (mm) of a label of which none is given.  Our own design, no source."""


class LabelSheet(Record, frozen=True):
    """Labels in rows and columns: `size` of one, `pitch` from one to the next across and down, `first` the distance of
    the first from the sheet's left and upper edge (mm).  `cut` where lines are drawn to cut along.
    """

    page: Page
    size: Pair
    pitch: Pair
    first: Pair
    columns: int
    rows: int
    cut: bool

    @property
    def count(self) -> int:
        return self.columns * self.rows

    def places(self) -> Iterator[Rect]:
        """Every label on the page (page mm), row by row from the upper left."""
        top = self.page.height * POINT - self.first[1]
        for row in range(self.rows):
            for column in range(self.columns):
                x, y = self.first[0] + column * self.pitch[0], top - row * self.pitch[1]
                yield Rect(x, y - self.size[1], x + self.size[0], y)


def label_sheet(
    paper: Paper, unit: str, size: Pair | None = None, pitch: Pair | None = None, first: Pair | None = None
) -> LabelSheet:
    """As many labels as the sheet holds; what is not given is set in its middle, side by side.

    Without `pitch` and `first` it is plain paper: the labels keep to what a printer reaches, with lines to cut along.
    Raises InputError for labels that do not fit the sheet, or would lie on each other.
    """
    cut, own = pitch is None and first is None, size or USUAL[unit]
    if min(own) <= 0:
        raise InputError("--label", "found 0, expected a width and a height")
    apart = pitch or own
    if apart[0] < own[0] - TOLERANCE or apart[1] < own[1] - TOLERANCE:
        problem = f"found {show_size(*apart, unit)}, expected at least the {show_size(*own, unit)} of a label"
        raise InputError("--pitch", problem, "it runs from one label's edge to the same edge of the next")
    page = page_of(paper, turned=False)
    margins = (2 * max(paper.margin[1], paper.margin[3]), paper.margin[0] + paper.margin[2]) if cut else (0.0, 0.0)
    sheet = paper.width, paper.height
    start = first or (0.0, 0.0)
    free = [whole - margin - begin for whole, margin, begin in zip(sheet, margins, start, strict=True)]
    columns, rows = (
        math.floor((room - side) / step + TOLERANCE) + 1 for room, side, step in zip(free, own, apart, strict=True)
    )
    if columns < 1 or rows < 1:
        raise InputError("--label", _too_large(own, first, paper, unit), "choose larger paper, or smaller labels")
    taken = own[0] + (columns - 1) * apart[0], own[1] + (rows - 1) * apart[1]
    middle = (sheet[0] - taken[0]) / 2, (paper.margin[0] if cut else 0.0) + (free[1] - taken[1]) / 2
    return LabelSheet(page, own, apart, first or middle, columns, rows, cut)


def _too_large(size: Pair, first: Pair | None, paper: Paper, unit: str) -> str:
    left, top = (show(distance, unit) for distance in first or (0.0, 0.0))
    begins = f" that begins {left} from the left and {top} from the top" if first else ""
    sheet = show_size(paper.width, paper.height, unit)
    return f"found a label of {show_size(*size, unit)}{begins}, which does not fit on {paper.name} paper, {sheet}"
