"""How far a sheet that hangs by itself is from the two lines of the wall, in figures that are read from a step back.

On stairs it is placed from the pitch line, which is drawn from the nosings: a level line would run through the air.

What is measured from are the sheet's own two rulers.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.base.units import show, show_both
from templates_gen.documents.sheets.layer import Drawn, SoFar
from templates_gen.drawing.blocks import Block, block
from templates_gen.drawing.items import Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room
from templates_gen.drawing.sizes import H5, H7, H10, H25, H35
from templates_gen.tiling.rulers import from_lines, from_pitch_line
from templates_gen.tiling.sheet import Sheet

SIZES = ((H10, H35), (H7, H35), (H5, H25))
"""Heights of the figures and of the words over them, largest first: smaller where there is no room, or where a line
would run through them."""

OFF_LINES = 2.5
"""mm around a distance where no line runs, for beside heavy figures the edge of a frame looks like a line to cut from
two metres: measured (`tests/bench/marks_told_apart.py`).  Our own design."""

AWAY = 5.0
"""mm between the distances of a sheet that hangs by itself and the label of a nail or a frame, so that none is read for
part of the other.  Our own design, no source."""


def distances(so_far: SoFar) -> Drawn:
    """The distances of a sheet that hangs by itself from both lines.

    Out to the edge of its window where nothing is taped to it, else in its inner part, and on the blank paper beyond
    where that is full.
    """
    part, sheet, lettering = so_far.part, so_far.sheet, so_far.lettering
    if part.alone is None:
        return Drawn()
    room, window, (dx, dy) = so_far.whole_page(AWAY - OFF_LINES), sheet.window, so_far.to_page
    page = room.region
    right, above = Rect(window.x1, page.y0, page.x1, page.y1), Rect(page.x0, window.y1, page.x1, page.y1)
    places = (sheet.inner if part.joins else window, right, above)
    away = tuple(references(so_far.plan, sheet, part.alone, places, room, lettering))
    on_page = tuple(replace(text, x=text.x + dx, y=text.y + dy) for text in away)
    return Drawn(
        taken=tuple(lettering.box(text).grown(AWAY) for text in away),
        page_items=on_page,
        over=tuple(replace(text, x=text.x - dx, y=text.y - dy) for text in on_page),
        taken_beyond=tuple(lettering.box(text).shifted(-dx, -dy) for text in on_page),
    )


def references(
    plan: Plan, sheet: Sheet, overlap: float, places: Sequence[Rect], room: Room, lettering: Lettering
) -> Iterator[Text]:
    """The distances of both rulers from the lines that the sheet is placed by, large (wall mm).

    Each stands in two lines where it is too wide for one, in the first of the `places` that has room for it, as near
    to the sheet's foot as may be.
    """
    for words, away, side in _told(plan, sheet, overlap):
        blocks = [label for size in SIZES for label in _blocks(words, abs(away), side, plan.job.unit, size, lettering)]
        for place, crossing, label in product(places, (False, True), blocks):
            wide, high = label.width + 2 * OFF_LINES, label.height + 2 * OFF_LINES
            box = room.nearest(wide, high, sheet.inner.cx, sheet.inner.y0, place, crossing)
            if box is not None:
                room.take(box)
                yield from label.at(box.x0 + OFF_LINES, box.y0 + OFF_LINES)
                break


def _told(plan: Plan, sheet: Sheet, overlap: float) -> Iterator[tuple[str, float, str]]:
    """What is measured from what, how far (mm), and which way; on stairs from the pitch line and along it."""
    if not plan.slope:
        down, left = from_lines(plan, sheet.window, overlap)
        yield "level line, from the level ruler:", down, "below" if down > 0 else "above"
        yield "centre line, from the upright ruler:", left, "left" if left > 0 else "right"
        return
    down, along = from_pitch_line(plan, sheet.window, overlap)
    climbs = (along > 0) == (plan.slope > 0)
    yield "level ruler, straight from the pitch line:", down, "above" if down > 0 else "below"
    yield "upright ruler, along the pitch line from the cross:", along, "upstairs" if climbs else "downstairs"


def _blocks(
    words: str, away: float, side: str, unit: str, sizes: tuple[float, float], lettering: Lettering
) -> Iterator[Block]:
    large, small = sizes
    own, both = show(away, unit), show_both(away, unit)
    yield block([(words, small, False), (f"{both} {side}", large, True)], lettering)
    other = both[len(own) :].lstrip(" ·")
    yield block([(words, small, False), (f"{own} {side}", large, True), (other, large, True)], lettering)
