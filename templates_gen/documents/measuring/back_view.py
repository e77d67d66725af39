"""A frame seen from its back, to scale, with its hanger, and dimensions where the tape measure goes.

Everything is in page mm; what a frame's own drawing needs is kept in frame mm from its lower left corner, as seen from
the back.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import pairwise

from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.documents.measuring import back_sizes as sizes
from templates_gen.documents.measuring.fields import Measure
from templates_gen.drawing.items import Circle, Item, Line, Polygon, Text
from templates_gen.drawing.sizes import H35, HAIR, MEDIUM, NARROW, WIDE
from templates_gen.job.hangers import Layout, Stroke
from templates_gen.job.model import Frame


class Back(Record, frozen=True):
    """Where a frame is drawn: `rect` on the page, one to `scale`."""

    frame: Frame
    rect: Rect
    scale: int

    def x(self, across: float) -> float:
        """Page x of a distance from the frame's left side, as seen from the back."""
        return self.rect.x0 + across / self.scale

    def down(self, drop: float) -> float:
        """Page y of a distance below the frame's top edge."""
        return self.rect.y1 - drop / self.scale


def drawn_scale(frame: Frame, width: float, height: float) -> int:
    """One to so many: the largest scale in whole numbers at which a frame and its dimensions fit so much room (mm)."""
    return math.ceil(max(frame.width / (width - 2 * sizes.ROOM), frame.height / (height - sizes.ROOM - sizes.OVER)))


def back_view(back: Back, letters: Mapping[str, str]) -> Iterator[Item]:
    """The frame, its hanger, and a dimension for each measure by its letter in `letters` (the job file's fields)."""
    yield from _outline(back)
    yield from _drawing(back.frame.hanger.traits.layout)(back, letters)
    rect = back.rect
    yield from level_dimension(rect.x0, rect.x1, rect.y0 - sizes.ROOM / 2, letters["width"], below=True)
    yield from upright_dimension(rect.x0 - sizes.ROOM / 2, rect.y0, rect.y1, letters["height"], -1)


def _drawing(layout: Layout) -> Callable[[Back, Mapping[str, str]], Iterator[Item]]:
    match layout:
        case Layout.TAUT:
            return _wire
        case Layout.TEETH:
            return _sawtooth
        case Layout.PAIR:
            return _pair
        case Layout.RAIL:
            return _cleat


def _outline(back: Back) -> Iterator[Item]:
    rect = back.rect
    inner = rect.grown(-sizes.MOULDING * min(rect.width, rect.height))
    yield Polygon(rect.corners, WIDE, False)
    yield Polygon(inner.corners, HAIR, False)


def level_dimension(x0: float, x1: float, y: float, letter: str, below: bool = False) -> Iterator[Item]:
    """A level dimension between two points, its letter above or below it."""
    yield from _dimension(x0, x1, lambda along, aside: (along, y + aside))
    yield from _letter((x0 + x1) / 2, y - sizes.LETTER_AIR - H35 if below else y + sizes.LETTER_AIR, letter)


def upright_dimension(x: float, y0: float, y1: float, letter: str, side: int) -> Iterator[Item]:
    """An upright dimension between two heights, its letter to the left (-1) or right (+1) of its middle."""
    yield from _dimension(y0, y1, lambda along, aside: (x + aside, along))
    yield from _letter(x + side * sizes.LETTER_ASIDE, min((y0 + y1 - H35) / 2, y1 - H35 - sizes.LETTER_DOWN), letter)


def _dimension(start: float, end: float, point: Callable[[float, float], tuple[float, float]]) -> Iterator[Item]:
    """A dimension's line from start to end, with an oblique stroke at each; `point` is the place on the page of what
    lies so far along it and so far aside."""
    yield Line(*point(start - sizes.PAST, 0.0), *point(end + sizes.PAST, 0.0), NARROW)
    for along in (start, end):
        (x, y), reach = point(along, 0.0), sizes.STROKE
        yield Line(x - reach, y - reach, x + reach, y + reach, MEDIUM)


def _letter(x: float, y: float, letter: str) -> Iterator[Item]:
    """A letter on white ground, in the middle of x."""
    white = Rect(x - sizes.LETTER_HALF, y - sizes.LETTER_MORE, x + sizes.LETTER_HALF, y + H35 + sizes.LETTER_MORE)
    yield Polygon(white.corners, 0.0, True, 1.0)
    yield Text(x, y, letter, H35, "middle", 0, True)


def _nail(x: float, y: float) -> Circle:
    """A nail under what bears on it at (x, y)."""
    return Circle(x, y - sizes.HELD, sizes.HELD, 0.0, True)


def wire_depths(frame: Frame) -> tuple[float, float, float]:
    """How deep the rings and the taut wire (on one nail, and on two) lie, and where nobody measured, may lie (mm)."""
    hanger = frame.hanger
    known = [drop for drop in (frame.drop, hanger.drop_at_two) if drop is not None]
    likely = min(sizes.RINGS_AT * max(known, default=0.0), sizes.RINGS_MOST * frame.height)
    rings = hanger.ring_depth or max(sizes.RINGS_DOWN * frame.height, likely)
    one = frame.drop if frame.drop is not None else sizes.TAUT_DOWN * rings
    two = hanger.drop_at_two if hanger.drop_at_two is not None else one + sizes.TWO_DOWN * (rings - one)
    return rings, one, two


def _wire(back: Back, letters: Mapping[str, str]) -> Iterator[Item]:
    frame, hanger = back.frame, back.frame.hanger
    rings, one, two = wire_depths(frame)
    apart = hanger.ring_separation or sizes.RINGS_APART * frame.width
    left, right = back.x((frame.width - apart) / 2), back.x((frame.width + apart) / 2)
    middle, ring, top = back.rect.cx, back.down(rings), back.rect.y1
    for x in (left, right):
        yield Circle(x, ring, sizes.RING, MEDIUM)
    over_one = (left, ring), (middle, back.down(one)), (right, ring)
    on_two = "drop_at_two" in letters
    yield from _taut(over_one, sizes.BROKEN if on_two else ())
    if not on_two:
        yield from upright_dimension(middle, back.down(one), top, letters["drop"], 1)
        return
    half = (hanger.apart or 0.0) / 2 / back.scale
    hooks = [(x, back.down(two)) for x in (middle - half, middle + half)]
    yield from _taut(((left, ring), *hooks, (right, ring)))
    yield from upright_dimension(middle, back.down(one), top, letters["drop"], 1)
    yield from upright_dimension(middle - half, back.down(two), top, letters["drop_at_two"], -1)
    yield from upright_dimension(right, ring, top, letters["ring_depth"], -1)
    yield from level_dimension(left, right, ring - sizes.OVER, letters["ring_separation"], below=True)


def _taut(points: Sequence[tuple[float, float]], dash: tuple[float, ...] = ()) -> Iterator[Item]:
    """A wire from ring to ring, pulled taut over the nails between them."""
    for (x0, y0), (x1, y1) in pairwise(points):
        yield Line(x0, y0, x1, y1, NARROW if dash else MEDIUM, dash)
    yield from (_nail(x, y) for x, y in points[1:-1])


def _sawtooth(back: Back, letters: Mapping[str, str]) -> Iterator[Item]:
    frame, middle = back.frame, back.rect.cx
    drop = frame.drop if frame.drop is not None else sizes.SAWTOOTH_DOWN * frame.height
    y, half, tooth = back.down(drop), min(sizes.SAWTOOTH_HALF, sizes.SAWTOOTH_SHARE * back.rect.width), sizes.TOOTH
    teeth = [
        (middle + (i - sizes.TEETH) * half / sizes.TEETH, y - (i % 2 == 0) * tooth) for i in range(2 * sizes.TEETH + 1)
    ]
    bar = [(middle + half, y + sizes.BAR), (middle - half, y + sizes.BAR)]
    yield Polygon((*teeth, *bar), NARROW, False)
    yield _nail(middle, y)
    yield from upright_dimension(middle + half + sizes.BY_TOOTH, y, back.rect.y1, letters["drop"], 1)
    yield Line(middle, y, middle + half + sizes.PAST_TOOTH, y, HAIR)


def _pair(back: Back, letters: Mapping[str, str]) -> Iterator[Item]:
    """The same part twice, each with its drop and its distance from the frame's side."""
    frame, hanger, rect = back.frame, back.frame.hanger, back.rect
    sides = (
        (-1, "left", back.x(hanger.right or 0.0), hanger.drop_right),
        (1, "right", back.x(frame.width - (hanger.left or 0.0)), hanger.drop_left),
    )
    for way, side, x, own in sides:
        drop = own if own is not None else frame.drop if frame.drop is not None else sizes.PAIR_DOWN * frame.height
        y, edge = back.down(drop), rect.x0 if way < 0 else rect.x1
        yield from _part(hanger.traits.strokes, x, y)
        yield from upright_dimension(
            x, y, rect.y1, letters[f"drop_{side}"], way if abs(x - edge) > sizes.NEAR_EDGE else -way
        )
        down = -1 if y - sizes.SIDE_DIMENSION >= rect.y0 else 1  # under it, unless that is where the width stands
        yield from level_dimension(
            min(x, edge), max(x, edge), y + down * sizes.SIDE_DIMENSION, letters[side], below=down < 0
        )
        yield Line(x, y + down * sizes.SIDE_LINE[0], x, y + down * sizes.SIDE_LINE[1], HAIR)


def _part(strokes: tuple[Stroke, ...], x: float, y: float) -> Iterator[Item]:
    """The part of a hanger that bears at (x, y)."""
    for shape, (right, up, *more) in strokes:
        match shape:
            case "circle":
                yield Circle(x + right, y + up, more[0], MEDIUM)
            case "line":
                yield Line(x + right, y + up, x + more[0], y + more[1], MEDIUM)
            case "box":
                yield Polygon(Rect(x + right, y + up, x + more[0], y + more[1]).corners, NARROW, False)


def _cleat(back: Back, letters: Mapping[str, str]) -> Iterator[Item]:
    """The frame's own rail, and under it, broken, the wall's rail with its screws."""
    frame, hanger, rect = back.frame, back.frame.hanger, back.rect
    drop = frame.drop if frame.drop is not None else sizes.CLEAT_DOWN * frame.height
    below = hanger.screw_below if hanger.screw_below is not None else sizes.SCREWS_DOWN * frame.height
    y, screws = back.down(drop), back.down(drop + below)
    left, right = back.x(hanger.right or 0.0), back.x(frame.width - (hanger.left or 0.0))
    inset = sizes.RAIL_SHARE * rect.width
    x0, x1 = min(left, rect.x0 + inset) - sizes.RAIL_MORE, max(right, rect.x1 - inset) + sizes.RAIL_MORE
    yield Polygon(((x0, y), (x1, y), (x1, (y + rect.y1) / 2), (x0, (y + rect.y1) / 2)), NARROW, False)
    yield Line(x0, y, x1, y, WIDE)
    foot = screws - sizes.RAIL_FOOT
    for start, end in (((x0, y), (x0, foot)), ((x0, foot), (x1, foot)), ((x1, foot), (x1, y))):
        yield Line(*start, *end, NARROW, sizes.BROKEN)
    yield from (Circle(x, screws, sizes.SCREW, 0.0, True) for x in (left, right))
    yield from upright_dimension(rect.cx, y, rect.y1, letters["drop"], 1)
    yield from upright_dimension(rect.cx - sizes.SCREW_DIMENSION, screws, y, letters["screw_below"], -1)
    yield Line(left, screws, rect.cx - sizes.SCREW_LINE, screws, HAIR)
    for way, x, edge in (("left", left, rect.x0), ("right", right, rect.x1)):
        yield from level_dimension(min(x, edge), max(x, edge), foot - sizes.UNDER, letters[way], below=True)
        yield Line(x, screws, x, foot - sizes.UNDER_LINE, HAIR)


def lettered(wanted: tuple[Measure, ...]) -> dict[str, str]:
    """A letter for every length to measure, by its field: a, b, c, …"""
    lengths = [one.name for one in wanted if not one.is_mass]
    return dict(zip(lengths, "abcdefghijkl", strict=False))
