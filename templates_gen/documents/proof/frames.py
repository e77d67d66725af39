"""The frames as they will hang: moulding, mat and picture, or a blank that says what goes there."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from itertools import product

from templates_gen.arranging.plan import Hung
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.documents.proof.view import View
from templates_gen.documents.sheets.frame_labels import size_words
from templates_gen.drawing.blocks import block, named_in, shortened, wrapped
from templates_gen.drawing.items import Item, Picture, Pixels, Polygon, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room
from templates_gen.drawing.shapes import box
from templates_gen.drawing.sizes import H5, H18, H25, H35, HAIR, MEDIUM

FACE, SHARE = 15.0, 0.08
"""mm of moulding drawn where it is not given, but at most this share of a side.  Our own design, no source."""

MOULDING, BLANK, MAT = 0.62, 0.95, 0.4
"""Greys of a moulding, a blank, and the edge of a mat.  Our own design, no source."""

STYLES = tuple(
    (count, *heights) for count in (2, 1, 0) for heights in ((H5, H25), (H35, H25), (H35, H18), (H25, H18), (H18, H18))
)
"""How a blank may be lettered, the best first: lines under its id, heights of id and lines; all alike if possible."""

CAPTION_OFF = 0.7
"""mm between a frame and the capitals of its caption.  Our own design, no source."""

INSET = 0.8
"""mm; a label stays this far inside its frame.  Our own design, no source."""


def opening(hung: Hung) -> Rect:
    """What the moulding leaves to see of the frame's inside (wall mm)."""
    face = hung.frame.face
    usual = min(FACE, SHARE * min(hung.rect.width, hung.rect.height))
    return hung.rect.grown(-(usual if face is None else face))


def window(hung: Hung) -> Rect:
    """What mat and moulding leave to see (wall mm); a mat that leaves nothing is not counted."""
    inside = opening(hung)
    top, right, bottom, left = (max(0.0, side) for side in hung.frame.mat or (0.0, 0.0, 0.0, 0.0))
    across, down = inside.width - left - right, inside.height - bottom - top
    return Rect.sized(inside.x0 + left, inside.y0 + bottom, across, down) if across > 0 < down else inside


def frame_items(hung: Hung, view: View, line: float = MEDIUM) -> Iterator[Item]:
    """The moulding, its edge so wide (mm), and within it white: mat, or what a picture leaves."""
    yield from box(view.rect(hung.rect), line, MOULDING)
    yield from box(view.rect(opening(hung)), HAIR, 1.0)


def picture_items(hung: Hung, view: View, pixels: Pixels | None) -> Iterator[Item]:
    """The picture, whole and as large as the window allows, in its middle; a light blank where there is none.

    The edge of a mat comes last: it lies on the picture.
    """
    place = view.rect(window(hung))
    if pixels is None:
        yield Polygon(place.grown(-HAIR / 2).corners, grey=BLANK)
    else:
        scale = min(place.width / pixels.width, place.height / pixels.height)
        yield Picture(pixels, Rect.about(place.cx, place.cy, pixels.width * scale, pixels.height * scale))
    if window(hung) != opening(hung):
        yield from box(place, HAIR, None, MAT)


def labels(
    frames: Sequence[Hung], view: View, pictures: Mapping[str, Pixels], room: Room, lettering: Lettering
) -> Iterator[Item]:
    """What says which frame is which: in a blank itself, under a picture where there is room."""
    room.take(*(view.rect(hung.rect) for hung in frames))
    blanks = [hung for hung in frames if hung.frame.id not in pictures]
    ways = [{hung.frame.id: _blank_label(hung, view, style, lettering) for hung in blanks} for style in STYLES]
    alike = [way for way in ways if all(way.values())][:1] or ways
    inside = Room(view.page.printable, room.air)  # labels of frames that overlap, which a proof may show
    for hung in frames:
        label = next((label for way in alike if (label := way.get(hung.frame.id))), ())
        boxes = [lettering.box(text) for text in label]
        if not label:
            yield from _caption(hung, view, room, inside if hung in blanks else None, lettering)
        elif all(map(inside.fits, boxes)):
            inside.take(*boxes)
            yield from label


def _caption(hung: Hung, view: View, room: Room, inside: Room | None, lettering: Lettering) -> Iterator[Item]:
    """Its id under the frame's foot or over its head, on no line; else `inside` a blank, in lines or upright; else cut
    short there, or outside on a line; nothing where all is taken."""
    rect, name = view.rect(hung.rect), hung.frame.id
    short = shortened(name, H18, False, rect.width, lettering)
    ends, levels = ((rect.x0, "left"), (rect.x1, "right")), (rect.y0 - CAPTION_OFF - H18, rect.y1 + CAPTION_OFF)
    places = [Text(x, y, "", H18, anchor) for (x, anchor), y in product(ends, levels)]
    whole, cut = ([(replace(place, text=words),) for place in places] for words in (name, short))
    within = _inside(view.rect(window(hung)).grown(-room.air), name, lettering) if inside else []
    ways = (
        *((room, True, way) for way in whole), *((inside, False, way) for way in within),
        *((room, False, way) for way in (*whole, *cut)),
    )  # fmt: skip
    for where, uncrossed, texts in ways:
        boxes = [lettering.box(text) for text in texts]
        if where and boxes and all(where.fits(box, uncrossed) for box in boxes):
            where.take(*boxes)
            yield from texts
            return


def _inside(place: Rect, name: str, lettering: Lettering) -> list[tuple[Text, ...]]:
    """A name in a blank: in lines, none of them cut, or in one, level or upright and cut short where it must be."""
    lines = wrapped(name, H18, False, place.width, lettering)
    label = block([(line, H18, False) for line in lines], lettering)
    fits = label.height <= place.height and not any(line.endswith("…") for line in lines)
    own = named_in(place, name, ((H18, False),), lettering)
    ways = [tuple(label.at(place.cx - label.width / 2, place.cy - label.height / 2, "middle"))] if fits else []
    return [*ways, *([(own,)] if own and own.text else [])]


def _blank_label(hung: Hung, view: View, style: tuple[int, float, float], lettering: Lettering) -> tuple[Text, ...]:
    """The id, and under it the title, and that its picture is not there; empty where the window lacks room."""
    count, large, small = style
    frame, place = hung.frame, view.rect(window(hung)).grown(-INSET)
    lines = [line for line in (frame.title, "no picture" if frame.image else "") if line][:count]
    parts = [part for line in lines for part in wrapped(line, small, False, place.width, lettering)]
    label = block([(frame.id, large, True), *((part, small, False) for part in parts)], lettering)
    cut = " ".join(parts).split() != " ".join(lines).split()
    if cut or label.width > place.width or label.height > place.height:
        return ()
    return tuple(label.at(place.cx - label.width / 2, place.cy - label.height / 2, "middle"))


def frame_key(frames: Sequence[Hung], unit: str) -> Iterator[tuple[str, ...]]:
    """What every frame is, at length and in short: id, title and size; id and title.

    A mark of direction after what is read from the right keeps the parts in this order (UAX #9, 2.6).
    """
    sizes = {hung.frame.id: size_words(hung, unit) for hung in frames}
    for sized in (sizes, dict.fromkeys(sizes, "")):
        parts = [[_marked(part) for part in (hung.frame.id, hung.frame.title, sized[hung.frame.id])] for hung in frames]
        yield tuple(": ".join(filter(None, (name, ", ".join(filter(None, about))))) for name, *about in parts)


def _marked(text: str) -> str:
    return text + "\u200e" if any(unicodedata.bidirectional(char) in ("R", "AL") for char in text) else text
