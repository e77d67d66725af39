"""The names of the long lines, along them on every sheet that they cross."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import product

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect, Span, same
from templates_gen.base.record import replace
from templates_gen.base.units import show_both
from templates_gen.base.words import UNIT_NAMES
from templates_gen.documents.schedule.distances import above_floor, pitch_words
from templates_gen.drawing.items import Item, Line, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room
from templates_gen.drawing.sizes import H25, H35
from templates_gen.drawing.strokes import inside
from templates_gen.tiling.long_lines import Ends, centre_spans, level_spans, nosing_line, pitch_line, wall_edges

STEP = 5.0
"""mm between the places along a line that are tried for its name.  Our own design, no source."""

AWAY = 2.5
"""mm across and up between a slanting line and a corner of its name, which so keeps out of the boxes that the line's
pieces take.  Our own design, no source."""

LEFT_OF, RIGHT_OF = 2.5, 5.5
BENEATH, ABOVE = 10.5, 7.5
"""mm from the centre line, and from the level line with its ticks and figures, to the foot of their names.  Our own
design, no source."""

FOLD = "fold the paper here"
"""What to do where a sheet reaches beyond the wall."""


def line_names(plan: Plan, inner: Rect, room: Room, lettering: Lettering) -> Iterator[Item]:
    """The name of each line that crosses the sheet: left or right of the centre line, beneath or above the level line,
    level with a corner at the pitch line and the edges of the wall."""
    x, y = plan.centre_line, plan.level_line
    if inner.x0 <= x <= inner.x1:
        ways = (x - LEFT_OF, x + RIGHT_OF)
        names = [[Text(at, 0.0, "centre line", height, "left", 90) for at in ways] for height in (H35, H25)]
        places = [(0.0, up) for up in _places(centre_spans(plan), inner.y0, inner.y1)]
        yield from _named(names, places, room, lettering)
    if inner.y0 <= y <= inner.y1:
        high = show_both(y, plan.job.unit)
        name = f"level line, {high} {above_floor(plan)}"
        words = (
            f"{name}; figures: {UNIT_NAMES[plan.job.unit]} from the centre line",
            name,
            f"level line {high}",
            "level line",
        )
        names = [[Text(0.0, at, word, H25) for at in (y - BENEATH, y + ABOVE)] for word in words]
        places = [(along, 0.0) for along in _places(level_spans(plan), inner.x0, inner.x1)]
        yield from _named(names, places, room, lettering)
    if ends := pitch_line(plan):
        where, how = pitch_words(plan)
        yield from _name_beside(ends, (f"{where}, {how}", where, "pitch line"), inner, room, lettering)
    if nosings := nosing_line(plan.job.wall):
        yield from _name_beside(
            nosings, (f"line of the nosings: {FOLD}", "line of the nosings"), inner, room, lettering
        )
    for edge in wall_edges(plan.job.wall):
        yield from _name_beside(edge, (f"edge of the wall: {FOLD}", "edge of the wall"), inner, room, lettering)


def _name_beside(ends: Ends, words: Sequence[str], inner: Rect, room: Room, lettering: Lettering) -> Iterator[Item]:
    """The first of the names that fits beside a line that may slant, be level or upright."""
    for line in inside(Line(*ends, 0.0), inner):
        dx, dy = line.x1 - line.x0, line.y1 - line.y0
        count = int(math.hypot(dx, dy) / STEP)
        places = [(line.x0 + dx * at / count, line.y0 + dy * at / count) for at in range(count + 1)] if count else []
        names = [_beside(word, dx, dy) for word in words]
        yield from _named(names, places, room, lettering)


def _beside(word: str, dx: float, dy: float) -> tuple[Text, Text]:
    """The name on both sides of a point of a line, each where the line goes away from it."""
    if same(dx, 0.0):
        return Text(-AWAY, 0.0, word, H25, "left", 90), Text(AWAY + H25, 0.0, word, H25, "left", 90)
    left, right = Text(-AWAY, 0.0, word, H25, "right"), Text(AWAY, 0.0, word, H25)
    under, above = (right, left) if dy / dx > 0 else (left, right)
    return replace(under, y=-AWAY - H25), replace(above, y=AWAY)


def _places(spans: Sequence[Span], low: float, high: float) -> Iterator[float]:
    """Where a name may start along the parts of the spans between two sides of a sheet: in steps from their starts."""
    for start, end in spans:
        start, end = max(start, low), min(end, high)
        if start < end:
            yield from (start + number * STEP for number in range(int((end - start) / STEP) + 1))


def _named(
    names: Sequence[Sequence[Text]], places: Sequence[tuple[float, float]], room: Room, lettering: Lettering
) -> Iterator[Item]:
    """The first of the names that fits, moved by the first of the places where it does, across a line if all must.

    `names` holds each name on both sides of its line.
    """
    for uncrossed, sides in product((True, False), names):
        for name, (dx, dy) in product(sides, places):
            text = replace(name, x=name.x + dx, y=name.y + dy)
            box = lettering.box(text)
            if room.fits(box, uncrossed):
                room.take(box)
                yield text
                return
