"""Dimensions of wall and group: how wide and high they are, and how far the group is from the wall's ends and floor."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise, product

from templates_gen.arranging.plan import Plan
from templates_gen.base.record import Record
from templates_gen.base.units import other_unit, show
from templates_gen.documents.proof.view import View
from templates_gen.drawing.items import Item, Line, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room
from templates_gen.drawing.sizes import H18, H25, HAIR, MEDIUM, NARROW
from templates_gen.drawing.strokes import CENTRE_DASH

FIRST, NEXT = 7.5, 16.5
"""mm from the wall to its nearest row of dimensions, and to the row beyond.  Our own design, no source."""

TICK, PAST = 1.1, 1.2
"""mm: half an oblique stroke both ways, and how far extension lines go beyond the dimension line.  Strokes in place of
arrow heads are among the ends of ISO 129-1 (from memory); the lengths are our own design."""

OFF = 0.9
"""mm between a dimension line and its figures.  Our own design, no source."""

BEYOND = 3.0
"""mm that centre line and level line go on beyond the group.  Our own design, no source."""

LEAST = 0.5
"""mm; two places nearer than this have no dimension between them: a tape shows no less.  Common practice, no source."""

EXTENSION = 0.6
"""Grey of extension lines.  Our own design, no source."""

CENTRE = 0.35
"""Grey of the centre line.  Our own design, no source."""


class Chain(Record, frozen=True):
    """Dimensions one after the other along one line of the page, level at a y or upright at an x (`at`, page mm).

    `stops` are the places on the wall between which they run (wall mm), each with where on the page its extension line
    starts (page mm), None where it has none.
    """

    stops: tuple[tuple[float, float | None], ...]
    at: float
    upright: bool


def chains(plan: Plan, view: View) -> list[Chain]:
    """The rows of dimensions about a wall.

    Above: the group and what is left of the wall on both sides.  Below: the centre line, and the whole width.  Left:
    the level line's height.  Right: floor, group and ceiling, and the whole height.
    """
    of, wall, group = plan.group, view.rect(plan.job.wall.rect), view.rect(plan.group)
    left, right, height = plan.job.wall.rect.x0, plan.job.wall.rect.x1, plan.job.wall.height
    above = () if plan.job.wall.outline else ((height, wall.x1),)
    ends = (left, wall.y1), (of.x0, group.y1), (of.x1, group.y1), (right, wall.y1)
    foot = dict.fromkeys(((left, wall.y0), (0.0, wall.y0)))  # the left end, and what leans out beyond it
    return [
        Chain(ends, wall.y1 + FIRST, False),
        Chain((*foot, (plan.centre_line, None), (right, wall.y0)), wall.y0 - FIRST, False),
        Chain(((left, wall.y0), (right, wall.y0)), wall.y0 - NEXT, False),
        Chain(((0.0, wall.x0), (plan.level_line, None)), wall.x0 - FIRST, True),
        Chain(((0.0, wall.x1), (of.y0, group.x1), (of.y1, group.x1), *above), wall.x1 + FIRST, True),
        Chain(((0.0, wall.x1), (height, wall.x1)), wall.x1 + NEXT, True),
    ]


def both_lines(plan: Plan, view: View) -> tuple[Line, Line]:
    """Centre line and level line, through the group to their dimensions below and left of the wall."""
    wall, group = view.rect(plan.job.wall.rect), view.rect(plan.group)
    x, y = view.point(plan.centre_line, plan.level_line)
    return (
        Line(x, wall.y0 - FIRST - PAST, x, group.y1 + BEYOND, NARROW, CENTRE_DASH, grey=CENTRE),
        Line(wall.x0 - FIRST - PAST, y, group.x1 + BEYOND, y, HAIR, grey=EXTENSION),
    )


def extension_lines(chain: Chain, view: View) -> Iterator[Line]:
    """From wall and group to the dimension line and a little beyond."""
    for stop, start in chain.stops:
        if start is not None:
            way = PAST if chain.at > start else -PAST
            (x0, y0), (x1, y1) = (_spot(chain, view, stop, above) for above in (start - chain.at, way))
            yield Line(x0, y0, x1, y1, HAIR, grey=EXTENSION)


def _spot(chain: Chain, view: View, stop: float, beyond: float) -> tuple[float, float]:
    """The point of the page at a stop of the chain, `beyond` mm up from its line (to the right of an upright one)."""
    x, y = view.point(stop, stop)
    return (chain.at + beyond, y) if chain.upright else (x, chain.at + beyond)


def dimension_items(chain: Chain, plan: Plan, view: View, room: Room, lettering: Lettering) -> Iterator[Item]:
    """The dimension line with its strokes, and the length of every piece in both systems."""
    stops = sorted(stop for stop, _ in chain.stops)
    places = [_spot(chain, view, stop, 0.0) for stop in stops]
    yield Line(*places[0], *places[-1], HAIR)
    yield from (Line(x - TICK, y - TICK, x + TICK, y + TICK, MEDIUM) for x, y in places)
    for piece in sorted(pairwise(stops), key=lambda piece: piece[0] - piece[1]):
        if piece[1] - piece[0] > LEAST:
            yield from _figures(chain, piece, plan.job.unit, view, room, lettering)


def _figures(
    chain: Chain, piece: tuple[float, float], unit: str, view: View, room: Room, lettering: Lettering
) -> Iterator[Text]:
    """The length of one piece: in its middle, or beyond the chain's end where it is too short for its figures.

    The job's unit stands above the line, the other below it; to be read from the right where the line is upright.
    """
    length = piece[1] - piece[0]
    told = (show(length, unit), H25, OFF), (show(length, other_unit(unit)), H18, -OFF - H18)
    wide = max(lettering.width(text, height) for text, height, _ in told) + 3 * TICK
    for count, along in product((2, 1), _places(chain, piece, view, wide)):
        texts = [_figure(chain, view, along, *line) for line in told[:count]]
        boxes = [lettering.box(text) for text in texts]
        if all(room.fits(box, uncrossed=False) for box in boxes):
            room.take(*boxes)
            yield from texts
            return


def _places(chain: Chain, piece: tuple[float, float], view: View, wide: float) -> list[float]:
    """Where the middle of figures so wide (mm on paper) may be, the best first (wall mm along the chain)."""
    start, end = piece
    every, away = [stop for stop, _ in chain.stops], view.scale * (wide / 2 + PAST)
    beyond = ((start - away) if start == min(every) else None, (end + away) if end == max(every) else None)
    middle = [(start + end) / 2]
    outside = [place for place in beyond if place is not None]
    return middle + outside if (end - start) / view.scale >= wide else outside + middle


def _figure(chain: Chain, view: View, along: float, text: str, height: float, above: float) -> Text:
    """A length with its base line `above` the dimension line (to the left of an upright one)."""
    x, y = _spot(chain, view, along, -above if chain.upright else above)
    return Text(x, y, text, height, "middle", 90 if chain.upright else 0)
