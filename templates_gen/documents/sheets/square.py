"""The 100 mm square that shows at a glance when a page was scaled, with 4 in beside it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.base.units import INCH
from templates_gen.documents.sheets.layer import Drawn, SoFar
from templates_gen.drawing.items import Form, Item, Line, Text, Use
from templates_gen.drawing.placing import Room
from templates_gen.drawing.sizes import H25, HAIR, NARROW

SQUARE = 100.0
"""Side of the square that shows gross errors of scale at a glance (ISO 5457:1980 has a graduation of the same
length for this, from memory)."""

SQUARE_FORM = "square"
ARM = 8.0
"""mm of each side that is drawn at a corner: only the corners, so that nobody takes it for a frame.  No source."""

WAYS = ((6, (2, 4)), (2, (4, 6)), (0, (8, 12)))
"""How many of its parts must cross no line, and the places tried across and up a page, few first and then many.  Our
own design, no source."""

FOUR_INCHES = 4 * INCH
BAR_UP = 4.0
"""mm: the length of the bar beside the square, and how far above it the bar stands.  Our own design, no source."""


def square(so_far: SoFar) -> Drawn:
    """The square on a sheet, where it has room for it."""
    room = so_far.whole_page()
    place = place_square(room, so_far.sheet.inner)
    if place is None:
        return Drawn()
    (x, y), (dx, dy) = place, so_far.to_page
    taken = tuple(part.shifted(x, y) for part in _parts())
    return Drawn(taken=taken, page_items=(Use(SQUARE_FORM, x + dx, y + dy),), over=square_texts(place))


def square_form() -> Form:
    """The square about its lower left corner."""
    return Form(SQUARE_FORM, Rect(-1, -1, FOUR_INCHES + 1, SQUARE + BAR_UP + 5), tuple(_items()))


def square_texts(place: tuple[float, float] | None) -> tuple[Text, ...]:
    """The lettering of the square with its lower left corner here."""
    x, y = place or (0.0, 0.0)
    texts = (item for item in _items() if place and isinstance(item, Text))
    return tuple(replace(text, x=text.x + x, y=text.y + y) for text in texts)


def _items() -> Iterator[Item]:
    for x, way_x in ((0.0, 1), (SQUARE, -1)):
        for y, way_y in ((0.0, 1), (SQUARE, -1)):
            yield Line(x, y, x + way_x * ARM, y, NARROW)
            yield Line(x, y, x, y + way_y * ARM, NARROW)
    yield Text(SQUARE / 2, 1.0, "100 mm square, corner to corner", H25, "middle")
    bar = SQUARE + BAR_UP
    yield Line(0, bar, FOUR_INCHES, bar, NARROW)
    yield Line(0, bar - 1.5, 0, bar + 1.5, HAIR)
    yield Line(FOUR_INCHES, bar - 1.5, FOUR_INCHES, bar + 1.5, HAIR)
    yield Text(FOUR_INCHES / 2, bar + 1.2, "4 in", H25, "middle")


def _parts() -> tuple[Rect, ...]:
    """What of the square carries ink, about its lower left corner, the widest first."""
    corners = tuple(Rect(x, y, x + ARM, y + ARM) for x in (0.0, SQUARE - ARM) for y in (0.0, SQUARE - ARM))
    words = Rect(SQUARE / 2 - 28, 0, SQUARE / 2 + 28, 4.5)
    return Rect(0, SQUARE + BAR_UP - 1.5, FOUR_INCHES, SQUARE + BAR_UP + 4.5), words, *corners


def place_square(room: Room, inner: Rect) -> tuple[float, float] | None:
    """A place for the square's lower left corner where none of its ink is on anything else (mm).

    In the sheet's inner part if it can be, else anywhere in the room: the square is needed before trimming only.
    Its corners cross lines where there is no other place, and what is to be read of it only where there is none then.
    """
    for (uncrossed, steps), region in product(WAYS, (inner, room.region)):
        if place := _place(room, region, uncrossed, steps):
            return place
    return None


def _place(room: Room, region: Rect, uncrossed: int, steps: tuple[int, int]) -> tuple[float, float] | None:
    parts, (across, upward) = _parts(), steps
    spare_x, spare_y = region.width - FOUR_INCHES, region.height - SQUARE - BAR_UP - 5
    if spare_x < 0 or spare_y < 0:
        return None
    for at_x, at_y in product(range(across + 1), range(upward + 1)):
        x, y = region.x0 + spare_x * at_x / across, region.y0 + spare_y * at_y / upward
        if all(room.fits(part.shifted(x, y), number < uncrossed) for number, part in enumerate(parts)):
            return x, y
    return None
