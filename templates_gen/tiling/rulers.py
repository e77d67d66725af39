"""The two rulers that every sheet is measured by: where they are."""

from __future__ import annotations

import math
from collections.abc import Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.base.units import INCH, MM
from templates_gen.tiling.page import Page

LONGEST_RULER = 1000.0
"""mm; the length of the steel rule or tape that a page is measured with.  Common practice, no source."""

RULER_LINE, RULER_START, RULER_END = 8.0, 16.0, 13.0
"""mm inside a sheet's trim lines: its rulers' lines; where they start, clear of each other, as do titles; and nothing
whole comes nearer than `RULER_END`.  Our own design, no source."""

BEYOND = 5.0
"""mm between a ruler's end and the next trim line.  Our own design, no source."""


END = 3.8, 4.0, 4.5
"""mm: how far to both sides of a ruler's end, on the side of its tick and on that of its figure no registration mark
comes.  Our own design, no source."""


class Ruler(Record, frozen=True):
    """A sheet's ruler from (x0, y0) to (x1, y1), in mm from the page's lower left corner."""

    x0: float
    y0: float
    x1: float
    y1: float

    @property
    def length(self) -> float:
        return self.x1 - self.x0 + self.y1 - self.y0


def inset(overlap: float) -> float:
    """How far inside its window a sheet's rulers lie (mm)."""
    return overlap / 2 + RULER_LINE


def from_lines(plan: Plan, window: Rect, overlap: float) -> tuple[float, float]:
    """How far a sheet's level ruler is above the level line, and its upright ruler right of the centre line (mm)."""
    aside = inset(overlap)
    return window.y0 + aside - plan.level_line, window.x0 + aside - plan.centre_line


def from_pitch_line(plan: Plan, window: Rect, overlap: float) -> tuple[float, float]:
    """On stairs: how far a sheet's level ruler is above the pitch line, straight up at its upright ruler, and how far
    that stands from the centre line, along the pitch line, to the right (mm)."""
    down, left = from_lines(plan, window, overlap)
    return down - plan.slope * left, left * math.hypot(1.0, plan.slope)


def rulers(page: Page, overlap: float, unit: str, marks: Sequence[Rect] = ()) -> tuple[Ruler, Ruler]:
    """The level and the upright ruler of a page, as long as it allows: a short one cannot set a scale.

    No ruler ends on one of the registration `marks` that are on the page (page mm).
    """
    area, half_strip, aside = page.printable, overlap / 2, inset(overlap)
    step = INCH / 2 if unit == "in" else MM["cm"]
    x, y = area.x0 + aside, area.y0 + aside
    start_x, start_y = area.x0 + half_strip + RULER_START, area.y0 + half_strip + RULER_START
    across, upward = (
        max(1, math.floor(min(end - half_strip - BEYOND - start, LONGEST_RULER) / step)) * step
        for start, end in ((start_x, area.x1), (start_y, area.y1))
    )
    half, deep, high = END
    while any(map(Rect(-half, -deep, half, high).shifted(start_x + across, y).overlaps, marks)):
        across -= step
    while any(map(Rect(-deep, -half, high, half).shifted(x, start_y + upward).overlaps, marks)):
        upward -= step
    return Ruler(start_x, y, start_x + across, y), Ruler(x, start_y, x, start_y + upward)
