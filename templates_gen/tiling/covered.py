"""Sheets that are taped as they are, with nothing cut: what a sheet's blank margin hides of the one under it.

The sheet on top brings a blank margin with it, on its left or at its foot, and paper is opaque.  So nothing whole may
lie there, and two registration marks at one point cannot be brought together.  Instead two lines at 45° cross in the
middle of the hidden strip and come out of it on both sides: only where both go on straight is the sheet in its place,
across as well as along, for a shift in any direction breaks one of them.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.tiling.cells import Clearance
from templates_gen.tiling.rulers import RULER_START

PAPER_OFF = 2.0
"""mm by which a paper's edge may lie off: ISO 216 allows 2 mm for sides of 150 to 600 mm (from memory), and printers
shift a page as a whole by less than that.  The second from common practice, no source."""

ARM = 10.0
"""mm, across the join, that a crossing line shows on either side of what is hidden.  Our own design, no source."""


class Covered(Record, frozen=True):
    """How deep the next sheet's blank margin is (mm): of a sheet to the right its left one, of one above its foot.

    `half` is half of what both sheets show.
    """

    left: float
    foot: float
    half: float

    def depth(self, upright: bool) -> float:
        """How wide the hidden strip is along an upright or a level join, with what the paper's edge may be off."""
        return (self.left if upright else self.foot) + PAPER_OFF

    def beyond(self, upright: bool) -> float:
        """How far before a join the hidden strip begins."""
        return self.half + self.depth(upright)

    def reach(self, upright: bool) -> float:
        """Half the side of the square that the crossing lines of a join take."""
        return self.depth(upright) / 2 + ARM

    def held(self, upright: bool) -> float:
        """How far apart (mm) two marks are that hold a sheet's turn as firmly as one pair of crossing lines does.

        Of its pieces, `length` long and with their middles `apart`: √(length² + apart²), see tiling/slanting.py.
        """
        return math.sqrt(2) * math.hypot(ARM, self.depth(upright) + ARM)


def covered(printables: Sequence[Rect], overlap: float) -> Covered:
    """The widest margins of these printable areas (page mm), whichever way a page will lie."""
    return Covered(max(area.x0 for area in printables), max(area.y0 for area in printables), overlap / 2)


def uncut_clearance(clear: Clearance, hides: Covered) -> Clearance:
    """The clearance of a whole item where nothing is cut; `clear` is that of sheets that are."""
    right, top = hides.beyond(True) + ARM, hides.beyond(False) + ARM
    return Clearance(clear.left, clear.bottom, right, top + clear.top)


def cross_points(
    ends: tuple[float, float, float, float], hides: Covered, clear: Clearance
) -> list[tuple[float, float]]:
    """Where on a join from (x0, y0) to (x1, y1) its lines cross: near both ends, clear of rulers, titles and joins.

    On a short join there is room for one pair of lines, and on a very short one for none.
    """
    x0, y0, x1, y1 = ends
    upright = x0 == x1
    aside, reach = hides.half + hides.depth(upright) / 2, hides.reach(upright)
    low, high = (y0, y1) if upright else (x0, x1)
    low += RULER_START + reach
    high -= reach + 2.0 + (hides.beyond(False) + ARM if upright else clear.right)
    if high < low - 2.0:
        return []
    places = [low, high] if high - low > 2 * reach + 2.0 else [(low + high) / 2]
    return [(x0 - aside, at) if upright else (at, y0 - aside) for at in places]
