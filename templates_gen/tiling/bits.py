"""What may go on on the next sheet, in bits that a search asks for one by one, each on one sheet or another."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.base.grid_index import Near
from templates_gen.tiling.spine import Asked

BIT = 20.0
"""mm between the bits of linked paper's line: paper nearer to other paper than that is joined to it or counts as in its
way.  Our own design, no source."""

SMALL = 40.0
"""mm.  What is no longer than this is asked for as one.  Our own design, no source."""


def line_bits(asked: Asked) -> Iterator[Rect]:
    """The line of linked paper, with room for its ticks."""
    count = max(1, round((asked.right - asked.left) / BIT))
    for at in range(count + 1):
        x = asked.left + (asked.right - asked.left) * at / count
        yield Rect(x, asked.line_at(x) - asked.below, x, asked.line_at(x) + asked.above)


def marks_bits(boxes: Iterable[Rect], cells: Sequence[Rect], overlap: float) -> Iterator[Rect]:
    """Boxes (wall mm) that may go on on the next sheet: each small one whole if one of the cells holds it, else what
    each cell holds of it; of a longer one slices across, no farther from each other than sheets overlap, so that there
    is no gap between what two sheets show of it."""
    near = Near((cell, cell) for cell in cells)
    for box in boxes:
        for bit in [box] if max(box.width, box.height) <= SMALL else _slices(box, overlap):
            around = list(near.about(bit))
            if any(cell.holds(bit) for cell in around):
                yield bit
            else:
                yield from (part for cell in around if (part := _shared(bit, cell)))


def _slices(box: Rect, apart: float) -> Iterator[Rect]:
    """Thin slices across a box, from end to end."""
    count = math.ceil(max(box.width, box.height) / apart - TOLERANCE)  # not one more for a rounding
    for at in range(count + 1):
        if box.width > box.height:
            x = box.x0 + box.width * at / count
            yield Rect(x, box.y0, x, box.y1)
        else:
            y = box.y0 + box.height * at / count
            yield Rect(box.x0, y, box.x1, y)


def _shared(bit: Rect, cell: Rect) -> Rect | None:
    """What of a bit lies in a cell, if it is as thick as the bit may be thin."""
    part = bit.meet(cell)
    if part is None or (part.width < TOLERANCE < bit.width) or (part.height < TOLERANCE < bit.height):
        return None
    return part
