"""The photo card: four tags at the corners of a page and a level line, which give a photograph of a wall its scale.

Two cards differ in their tags alone: a photograph with both places things far from either more exactly.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.base.units import INCH, MM, inches
from templates_gen.documents.instructions.wording import PRINT_WORDS
from templates_gen.drawing.flow import Flow
from templates_gen.drawing.items import Item, Line, Page, Polygon, Template, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.sizes import H5, H35, MEDIUM, WIDE
from templates_gen.drawing.tags import CARDS_FROM, ON_CARDS, quiet, tag_form, tag_name
from templates_gen.job.paper_sizes import named_sheet
from templates_gen.tiling.page import page_of

ON_A_CARD = 4
CARDS = ON_CARDS // ON_A_CARD

SMALL, LARGE, LARGE_FROM = 40.0, 60.0, 400.0
"""mm: a tag's side on common paper, and on paper at least so long.  40 mm are 20 pixels or more on a picture of 12
megapixels that shows 6 m of wall.  Our own simulation, no source."""

AIR, TICK, ARROW = 6.0, 3.0, 22.0
"""mm: between tags and words, half a tick at the ends of the level line, and how high the arrow is.  Our own."""

LEVEL_OFF = 4.0
"""mm from the level line to what stands over and under it.  Our own design, no source."""


class Card(Record, frozen=True):
    """A card: its paper's name, the squares of its tags by number, and its level line (page mm); `size` in points."""

    number: int
    paper: str
    tags: tuple[tuple[int, Rect], ...]
    level: Line
    unit: str
    size: tuple[int, int]


def cards_of(paper: str, where: str = "--paper") -> tuple[Card, ...]:
    """Both cards on a paper by its name, lying on its side.  Raises InputError for a paper that is too small."""
    sheet, unit = named_sheet(paper, where)
    page = page_of(sheet, turned=True)
    side = LARGE if max(sheet.width, sheet.height) >= LARGE_FROM else SMALL
    area = page.printable.grown(-quiet(side))
    if area.width < 4 * side or area.height < 3 * side:
        raise InputError(where, f"{sheet.name} is too small for a photo card", "choose a4, letter or a3")
    step = INCH / 2 if unit == "in" else MM["cm"]
    long = math.floor(area.width / step) * step
    level = Line(area.cx - long / 2, area.cy, area.cx + long / 2, area.cy, MEDIUM)
    corners = ((area.x0, area.y0), (area.x1 - side, area.y0), (area.x0, area.y1 - side),
               (area.x1 - side, area.y1 - side))  # fmt: skip
    squares = list(enumerate(Rect(x, y, x + side, y + side) for x, y in corners))
    size = page.width, page.height
    numbers = range(CARDS_FROM, CARDS_FROM + ON_A_CARD * CARDS, ON_A_CARD)
    return tuple(
        Card(card, sheet.name, tuple((first + at, square) for at, square in squares), level, unit, size)
        for card, first in enumerate(numbers, 1)
    )


def card_pages(cards: tuple[Card, ...], lettering: Lettering) -> Template:
    """A page for each card.  Raises InputError for a paper so small that the words do not fit."""
    pages = tuple(Page(f"card {card.number}", "", tuple(_items(card, lettering))) for card in cards)
    forms = tuple(tag_form(number, square.width) for card in cards for number, square in card.tags)
    return Template("Photo card", "", "en", cards[0].size, pages, forms)


def _items(card: Card, lettering: Lettering) -> Iterator[Item]:
    level, (_, first), (_, last) = card.level, card.tags[0], card.tags[-1]
    for number, square in card.tags:
        yield Use(tag_name(number), square.x0, square.y0)
    yield level
    for x in (level.x0, level.x1):
        yield Line(x, level.y0 - TICK, x, level.y0 + TICK, MEDIUM)
    between = Rect(first.x1 + AIR, first.y0, last.x0 - AIR, last.y1)
    above, below = Rect(between.x0, level.y0 + LEVEL_OFF, between.x1, between.y1), between
    yield from _arrow(above.x0 + ARROW / 4, above.y1)
    beside = Rect(above.x0 + ARROW, above.y0, above.x1, above.y1)
    yield from _written(_heads(card), beside, lettering, card)
    yield from _written(_steps(card), Rect(below.x0, below.y0, below.x1, level.y0 - LEVEL_OFF), lettering, card)


def _arrow(x: float, top: float) -> Iterator[Item]:
    """This way up."""
    head = ARROW / 3
    yield Polygon(((x, top), (x - head / 2, top - head), (x + head / 2, top - head)))
    yield Line(x, top - head, x, top - ARROW, WIDE * 2)


def _written(lines: list[tuple[str, float, bool]], area: Rect, lettering: Lettering, card: Card) -> list[Item]:
    flow = Flow(area, lettering)
    for words, height, bold in lines:
        flow.paragraph(words, height, bold=bold)
        flow.space(1.0)
    if len(flow.pages) > 1:
        raise InputError("--paper", f"{card.paper} is too small for a photo card", "choose a4, letter or a3")
    return flow.pages[0]


def _heads(card: Card) -> list[tuple[str, float, bool]]:
    return [
        (f"Photo card {card.number}", H5, True),
        ("It gives a photograph of the wall its scale and its level.", H35, False),
        ("One card does; with both, 1 to 2 m apart, things far away are placed better.", H35, False),
    ]


def _steps(card: Card) -> list[tuple[str, float, bool]]:
    long = card.level.x1 - card.level.x0
    told = f"{inches(long)} in · {long:.1f} mm" if card.unit == "in" else f"{long:.0f} mm"
    return [
        (f"This line must be {told} from tick to tick.", H35, True),
        (f"Print at actual size. {PRINT_WORDS[1]}", H35, False),
        ("Tape the whole page flat to the wall, arrow up, and set this line by a spirit level.", H35, False),
        ("Leave the tags and the white around them uncovered.", H35, False),
        ("Photograph it with the wall around, without zoom, and do not edit the picture.", H35, False),
    ]
