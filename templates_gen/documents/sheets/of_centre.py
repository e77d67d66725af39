"""Which line nails are left or right of: under each label that has room for it, or else once on the sheet."""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.documents.sheets.layer import Drawn, SoFar
from templates_gen.drawing.items import Item, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import AIR, placed_near
from templates_gen.drawing.sizes import H18, H25

OF_CENTRE = "of the centre line"

ON_SHEET = f"left and right: {OF_CENTRE}"


def words_under(label: Sequence[Item], box: Rect) -> list[Text]:
    """What says under the label of a nail, whose box this is, that its last line is a distance from the centre line."""
    texts = [item for item in label if isinstance(item, Text)]
    if not texts or not texts[-1].text.endswith((" left", " right")):
        return []
    return [replace(texts[-1], text=OF_CENTRE, y=box.y0 - AIR)]


def of_centre_line(so_far: SoFar) -> Drawn:
    """The words under the labels of nails, smaller where they must be; where one has no room for them that no line
    crosses they are once on the sheet."""
    room, lettering = so_far.room(), so_far.lettering
    said: list[Text] = []
    for words in so_far.asides:
        sizes = [size for size in (words.height, H25, H18) if size <= words.height]
        for size in sizes:
            text = _hung(replace(words, height=size), lettering)
            if room.fits(lettering.box(text)):
                room.take(lettering.box(text))
                said.append(text)
                break
    if len(said) < len(so_far.asides):
        inner, once = so_far.sheet.inner, Text(0.0, 0.0, ON_SHEET, H25)
        if there := placed_near(once, inner.x0, inner.y0, inner, room, lettering):
            said.append(there)
    return Drawn(tuple(said), tuple(room.taken))


def _hung(text: Text, lettering: Lettering) -> Text:
    """The text with the upper edge of its ink where its base line was."""
    return replace(text, y=2 * text.y - lettering.box(text).y1)
