"""The two rulers that every sheet is measured by: where they are."""

from __future__ import annotations

import math

from templates_gen.base.record import Record
from templates_gen.base.units import INCH
from templates_gen.drawing.sizes import RULER_END, RULER_SPINE
from templates_gen.tiling.page import Page

LONGEST_RULER = 1000.0
"""mm; the length of the steel rule or tape that a page is measured with.  Common practice, no source."""


class Ruler(Record, frozen=True):
    """A sheet's ruler from (x0, y0) to (x1, y1), in mm from the page's lower left corner."""

    x0: float
    y0: float
    x1: float
    y1: float

    @property
    def length(self) -> float:
        return self.x1 - self.x0 + self.y1 - self.y0


def rulers(page: Page, overlap: float, unit: str) -> tuple[Ruler, Ruler]:
    """The level and the upright ruler of every page, as long as it allows: a short one cannot set a scale."""
    area, half = page.printable, overlap / 2
    step = INCH / 2 if unit == "in" else 10.0
    x, y = area.x0 + half + RULER_SPINE, area.y0 + half + RULER_SPINE
    start_x, start_y = area.x0 + half + RULER_END + 3, area.y0 + half + RULER_END + 3
    across, upward = (
        max(1, math.floor(min(end - half - 5 - start, LONGEST_RULER) / step)) * step
        for start, end in ((start_x, area.x1), (start_y, area.y1))
    )
    return Ruler(start_x, y, start_x + across, y), Ruler(x, start_y, x, start_y + upward)
