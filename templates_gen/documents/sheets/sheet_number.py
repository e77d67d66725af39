"""The sheet's number in its house, large, so that a pile of sheets is sorted from a step back."""

from __future__ import annotations

from templates_gen.documents.sheets.layer import Drawn, SoFar
from templates_gen.drawing.houses import house, house_size
from templates_gen.drawing.sizes import H5, H7, H10, HEAVY

SIZES = (H10, H7, H5)
"""Heights of the digits, largest first: smaller only where there is no room.  Our own design, no source."""


APART, OFF_LINES = 3.0, 1.5
"""mm between the house and any lettering, so that a frame's letter is not taken for part of it, and between the house
and the lines of a frame's edge, so that these do not close up with its walls.  Our own design."""


def sheet_number(so_far: SoFar) -> Drawn:
    """The house as near to the upper right corner of the sheet as there is room, over no line if that can be."""
    room, sheet = so_far.whole_page(APART - OFF_LINES), so_far.sheet
    room.take(*so_far.part.bars)
    for size, crossing in ((size, crossing) for crossing in (False, True) for size in SIZES):
        wide, high = house_size(sheet.name, size, so_far.lettering)
        wide, high = wide + 2 * OFF_LINES, high + 2 * OFF_LINES
        around = room.nearest(wide, high, sheet.inner.x1, sheet.inner.y1, sheet.inner, crossing)
        if around is not None:
            box = around.grown(-OFF_LINES)
            return Drawn(tuple(house(sheet.name, size, box.x0, box.y0, so_far.lettering)), (box.grown(HEAVY),))
    return Drawn()
