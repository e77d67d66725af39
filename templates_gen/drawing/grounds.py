"""White under lettering, so that lines break off there instead of crossing the letters."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from templates_gen.base.geometry import Rect
from templates_gen.base.grid_index import Near
from templates_gen.drawing.items import Item, Line, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.shapes import AROUND, ground
from templates_gen.drawing.strokes import runs_into

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
    texts = [item for item in items if type(item) is Text]
    rest = [item for item in items if type(item) is not Text]
    lines = [(*_reach(line), line) for line in (*others, *rest) if type(line) is Line]
    at = Near(((Rect(*each[:4]), each) for each in lines), GRID) if len(lines) > MANY else None
    yield from rest
    for text in (*texts, *later):
        box = lettering.box(text)
        white = box.grown(AROUND)
        near = lines if at is None else at.about(white)
        x0, y0, x1, y1 = white.x0, white.y0, white.x1, white.y1
        met = [
            line
            for left, low, right, high, line in near
            # most are beyond one side of the box: written out, for it is asked of every line and text
            if left <= x1 and right >= x0 and low <= y1 and high >= y0 and runs_into(line, white)
        ]
        wanted = text in later or (met and not any(map(box.overlaps, whole)))
        if wanted and all(_across(line, text, box) for line in met):
            yield ground(box)
    yield from texts


def box_about(line: Line) -> Rect:
    """The box about a line."""
    return Rect(*_reach(line))


def _reach(line: Line) -> tuple[float, float, float, float]:
    """The sides of the box about a line: left, bottom, right, top."""
    x0, y0, x1, y1 = line.x0, line.y0, line.x1, line.y1
    # comparisons instead of min and max: asked for every line, more than twice as quick
    return x0 if x0 < x1 else x1, y0 if y0 < y1 else y1, x1 if x0 < x1 else x0, y1 if y0 < y1 else y0


def _across(line: Line, text: Text, box: Rect) -> bool:
    """True when the line crosses the letters, and is no tick that ends in them."""
    along = line.x0 == line.x1 if text.angle else line.y0 == line.y1
    tick = math.dist((line.x0, line.y0), (line.x1, line.y1)) < TICK and not line.dash
    return not along and not (tick and any(box.has_point(*end) for end in ((line.x0, line.y0), (line.x1, line.y1))))
