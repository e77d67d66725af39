"""How far a sheet that hangs by itself is from the two lines of the wall, in figures that are read from a step back.

What is measured from are the sheet's own two rulers.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.units import show, show_both
from templates_gen.drawing.blocks import Block, block
from templates_gen.drawing.items import Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room
from templates_gen.drawing.sizes import H5, H7, H10, H25, H35
from templates_gen.tiling.rulers import from_lines
from templates_gen.tiling.sheet import Sheet

SIZES = ((H10, H35), (H7, H35), (H5, H25))
"""Heights of the figures and of the words over them, largest first: smaller where there is no room, or where a line
would run through them."""


def references(
    plan: Plan, sheet: Sheet, overlap: float, places: Sequence[Rect], room: Room, lettering: Lettering
) -> Iterator[Text]:
    """The distances from the level ruler to the level line, from the upright one to the centre line, large (wall mm).

    Each stands in two lines where it is too wide for one, in the first of the `places` that has room for it, as near
    to the sheet's foot as may be.
    """
    down, left = from_lines(plan, sheet.window, overlap)
    told = (
        ("level line, from the level ruler:", down, "below" if down > 0 else "above"),
        ("centre line, from the upright ruler:", left, "left" if left > 0 else "right"),
    )
    for words, away, side in told:
        blocks = [label for size in SIZES for label in _blocks(words, abs(away), side, plan.job.unit, size, lettering)]
        for place, crossing, label in product(places, (False, True), blocks):
            box = room.nearest(label.width, label.height, sheet.inner.cx, sheet.inner.y0, place, crossing)
            if box is not None:
                room.take(box.grown(1.5))  # so that nobody takes what stands beside it for part of it
                yield from label.at(box.x0, box.y0)
                break


def _blocks(
    words: str, away: float, side: str, unit: str, sizes: tuple[float, float], lettering: Lettering
) -> Iterator[Block]:
    large, small = sizes
    own, both = show(away, unit), show_both(away, unit)
    yield block([(words, small, False), (f"{both} {side}", large, True)], lettering)
    other = both[len(own) :].lstrip(" ·")
    yield block([(words, small, False), (f"{own} {side}", large, True), (other, large, True)], lettering)
