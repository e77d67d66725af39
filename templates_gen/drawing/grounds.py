"""White under lettering, so that lines break off there instead of crossing the letters."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from templates_gen.base.geometry import Rect
from templates_gen.base.grid_index import Near
from templates_gen.drawing.items import Item, Line, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.shapes import AROUND, ground
from templates_gen.drawing.strokes import inside

MANY, GRID = 100, 10.0
"""From so many lines on those at a text are looked up on a grid of squares this large (mm).  Our own design."""

TICK = 7.5
"""mm: no tick of a graduated line is as long as that, and every other line is longer.  Our own design, no source."""


def over_lines(
    items: Sequence[Item], later: Sequence[Text], others: Sequence[Line], whole: Sequence[Rect], lettering: Lettering
) -> Iterator[Item]:
    """The items, then white grounds, then the texts.

    A text has a ground where lines run across it, and so has one that comes `later`.  It has none where a line runs
    along behind the letters or a tick ends there: too much would be gone.  `others` are lines that are drawn as parts
    of forms.  Only what comes later hides any of what else is `whole`.
    """
    texts = [item for item in items if isinstance(item, Text)]
    rest = [item for item in items if not isinstance(item, Text)]
    lines = [*others, *(item for item in rest if isinstance(item, Line))]
    at = Near(((box_about(line), line) for line in lines), GRID) if len(lines) > MANY else None
    yield from rest
    for text in (*texts, *later):
        box = lettering.box(text)
        white = box.grown(AROUND)
        near = lines if at is None else at.about(white)
        met = [line for line in near if _near(line, white) and any(inside(line, white))]
        wanted = text in later or (met and not any(map(box.overlaps, whole)))
        if wanted and all(_across(line, text, box) for line in met):
            yield ground(box)
    yield from texts


def box_about(line: Line) -> Rect:
    """The box about a line."""
    return Rect(min(line.x0, line.x1), min(line.y0, line.y1), max(line.x0, line.x1), max(line.y0, line.y1))


def _near(line: Line, box: Rect) -> bool:
    """False when a line's ends are both beyond one side of the box: most are, and so it is quick to ask."""
    return (
        (line.x0 <= box.x1 or line.x1 <= box.x1)
        and (line.x0 >= box.x0 or line.x1 >= box.x0)
        and (line.y0 <= box.y1 or line.y1 <= box.y1)
        and (line.y0 >= box.y0 or line.y1 >= box.y0)
    )


def _across(line: Line, text: Text, box: Rect) -> bool:
    """True when the line crosses the letters, and is no tick that ends in them."""
    along = line.x0 == line.x1 if text.angle else line.y0 == line.y1
    tick = math.dist((line.x0, line.y0), (line.x1, line.y1)) < TICK and not line.dash
    return not along and not (tick and any(box.has_point(*end) for end in ((line.x0, line.y0), (line.x1, line.y1))))
