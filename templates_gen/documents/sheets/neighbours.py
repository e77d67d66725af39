"""The neighbour's number in its house beside a join, with a word before it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.drawing.houses import house, house_size
from templates_gen.drawing.items import Item, Polygon, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room
from templates_gen.drawing.sizes import H18, H25

NEXT_ROOM = 0.6
"""mm between a join's line and what is written beside it.  Our own design, no source."""

BESIDE = 1.0
"""mm between the words and the house.  Our own design, no source."""


def neighbour_name(
    words: Sequence[str], number: str, upright: bool, strip: Rect, room: Room, lettering: Lettering
) -> Iterator[Item]:
    """The first of the words that fits into the strip along a join, with the house; along an upright join the words
    stand upright, too, and the house, roof up, over them.  As near as can be to the strip's middle (wall mm).

    Without the house where it finds no room, for the number must be there.
    """
    houses = ((size, house_size(number, size, lettering)) for size in (H25, H18))
    fitting = [(size, wide, high) for size, (wide, high) in houses if wide <= strip.width and high <= strip.height]
    for (size, wide, high), said in product(fitting, words):
        text = Text(0.0, 0.0, said, size, angle=90 if upright else 0)
        ink = lettering.box(text) if said else Rect(0.0, 0.0, 0.0, 0.0)
        gap = BESIDE if said else 0.0
        width, height = (
            (max(ink.width, wide), ink.height + gap + high)
            if upright
            else (ink.width + gap + wide, max(ink.height, high))
        )
        if box := room.nearest(width, height, strip.cx, strip.cy, strip):
            room.take(box)
            yield Polygon(
                box.corners, grey=1.0
            )  # the strip falls off or is covered: the other sheet has what is behind
            if upright:
                yield from house(number, size, box.cx - wide / 2, box.y1 - high, lettering)
                at = replace(text, x=box.cx - ink.cx, y=box.y0 - ink.y0)
            else:
                yield from house(number, size, box.x1 - wide, box.cy - high / 2, lettering)
                at = replace(text, x=box.x0 - ink.x0, y=box.cy - ink.cy)
            if said:
                yield at
            return
    if plain := _plain(words[0], number, upright, strip, room, lettering):
        box, text = plain
        room.take(box)
        yield Polygon(box.corners, grey=1.0)
        yield text


def _plain(
    said: str, number: str, upright: bool, strip: Rect, room: Room, lettering: Lettering
) -> tuple[Rect, Text] | None:
    """The words with the number alone, or without them where they find no room."""
    for words, size in product((f"{said} sheet {number}", number), (H25, H18)):
        text = Text(0.0, 0.0, words, size, angle=90 if upright else 0)
        ink = lettering.box(text)
        if box := room.nearest(ink.width, ink.height, strip.cx, strip.cy, strip):
            return box, replace(text, x=box.cx - ink.cx, y=box.cy - ink.cy)
    return None
