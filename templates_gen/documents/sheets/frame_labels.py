"""A frame's lettering: its id large in the middle with title, size, drop and the way up; its id alone elsewhere."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.grid_index import Near
from templates_gen.base.record import replace
from templates_gen.base.units import other_unit, show, show_both
from templates_gen.documents.schedule.distances import drop_words, facing, unmistakable
from templates_gen.documents.sheets.layer import Drawn, SoFar
from templates_gen.drawing.blocks import block, shortened
from templates_gen.drawing.items import Item, Line, Polygon, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room, placed_near
from templates_gen.drawing.sizes import H5, H7, H10, H14, H18, H20, H25, H35, INNER_EDGE, MEDIUM, WIDE

SIZES = (
    (H20, H7, H5),
    (H20, H5, H35),
    (H14, H5, H35),
    (H10, H35, H25),
    (H7, H25, H25),
    (H5, H25, H25),
    (H35, H25, H25),
    (H35, H18, H18),
)
"""Heights of id, title and figures, largest first: smaller only where there is no room.  Our own design, no source."""

TRIES = (
    *((sizes, False, False) for sizes in SIZES[:4]),
    *((sizes, False, True) for sizes in SIZES[:-1]),
    *((sizes, True, True) for sizes in SIZES[3:]),
)
"""Heights, whether the lines are broken in two for a narrow frame, and whether long lines and edges may run through."""

TAG_SIZES = (H10, H7, H5, H35)
"""Heights of the id alone, largest first.  Our own design, no source."""

STROKES = "Iil|"
"""Two of these side by side, 10 mm high and bold, look like the bars of a registration mark farther away (0.87 of 1,
the least like of the marks themselves 0.80; at 7 and 14 mm 0.78 at most): our own measurement, seen from two metres."""

OFF = 1.5
EDGE = INNER_EDGE + OFF
"""mm that lettering keeps from the edge of a sheet's inner part and of the frame.  Our own design, no source."""

NARROWEST = 20.0
"""mm that a name or title may take at least, before it is cut.  Our own design, no source."""

ARROW, SLIM = 0.7, 2.5
"""The arrow beside the id: what it takes across, as a share of the id's height, and how many times longer its head is
than half of it is wide.  Our own design, no source."""

APART = 3.0
"""mm between a frame's lettering and any other, so that a nail's does not seem to go on with it.  Our own design."""


def label_region(hung: Hung, inner: Rect) -> Rect | None:
    """The part of the frame that a sheet's inner part leaves for lettering, or None."""
    return (
        inner.grown(-OFF).meet(hung.rect.grown(-EDGE))
        if hung.rect.width > 2 * EDGE and hung.rect.height > 2 * EDGE
        else None
    )


def frame_labels(every: Sequence[SoFar]) -> Iterator[Drawn]:
    """The lettering of the frames by sheet: each frame's full label once, and its id on the other sheets it is on.

    The full label stands on the sheet that shows most of the frame's inside or, where that is too full already, on
    the next best.
    """
    plan, lettering = every[0].plan, every[0].lettering
    rooms = [(so_far.sheet, so_far.room(APART)) for so_far in every]
    items: dict[str, list[Item]] = {sheet.name: [] for sheet, _ in rooms}
    near = Near((sheet.inner, (sheet, room)) for sheet, room in rooms)
    for hung in plan.frames:
        parts = [
            (region, room, items[sheet.name])
            for sheet, room in near.about(hung.rect)
            if (region := label_region(hung, sheet.inner))
        ]
        parts.sort(key=lambda part: (min(part[0].width, part[0].height), part[0].width * part[0].height), reverse=True)
        labelled = None
        for region, room, on in parts:
            label = list(_frame_label(hung, plan, room, region, lettering))
            if label:
                labelled = on
                on += label
                break
        for region, room, on in parts:
            if on is not labelled:
                on += _frame_tag(hung, room, region, lettering)
    return (Drawn(tuple(items[sheet.name]), tuple(room.taken)) for sheet, room in rooms)


def _frame_label(hung: Hung, plan: Plan, room: Room, region: Rect, lettering: Lettering) -> Iterator[Item]:
    """The full label as near to the frame's middle as there is room, with an arrow that points up; else nothing."""
    whole = unmistakable(hung.frame.id)
    for (large, title, small), broken, crossing in TRIES:
        lines = _lines(hung, plan.job.unit, broken)
        name = shortened(whole, large, True, max(NARROWEST, region.width - large), lettering)
        if (name != whole and large > H35) or _like_bars(name, large):
            continue  # rather small than cut
        most = max(NARROWEST, region.width - large) if not broken else _widest(lines, small, lettering)
        label = block(
            [
                (name, large, True),
                (shortened(hung.frame.title, title, False, most, lettering), title, False),
                *((line, small, False) for line in lines),
            ],
            lettering,
        )
        arrow = large * ARROW
        box = room.nearest(label.width + arrow, label.height, hung.rect.cx, hung.rect.cy, region, crossing)
        if box is not None:
            room.take(box)
            yield from up_arrow(box.x0 + arrow / 3, box.y1 - large, large)
            yield from label.at(box.x0 + arrow, box.y0)
            return


def _frame_tag(hung: Hung, room: Room, region: Rect, lettering: Lettering) -> Iterator[Item]:
    """The frame's id on a sheet that shows another part of it, rather small or upright than cut, and on no line."""
    name = unmistakable(hung.frame.id)
    sizes = [size for size in TAG_SIZES if not _like_bars(name, size)]
    whole = [Text(0.0, 0.0, name, size, "left", angle, True) for angle in (0, 90) for size in sizes]
    cut = shortened(name, sizes[-1], True, region.width, lettering)
    for text in (*whole, *([replace(whole[len(sizes) - 1], text=cut)] if cut else [])):
        if tag := placed_near(text, hung.rect.cx, hung.rect.cy, region, room, lettering, crossing=False):
            yield tag
            return


def _like_bars(name: str, height: float) -> bool:
    """Whether two of the strokes stand side by side in a name of the height at which they look like bars."""
    return height == H10 and any(one in STROKES and other in STROKES for one, other in pairwise(name))


def _widest(lines: Sequence[str], height: float, lettering: Lettering) -> float:
    return max(lettering.width(line, height, False) for line in lines)


def _lines(hung: Hung, unit: str, broken: bool) -> list[str]:
    """Size and drop, each in one line, or broken in two where a frame is narrow."""
    lines = [f"{size_words(hung, unit)} · {size_words(hung, other_unit(unit))}", *_drops(hung, unit)]
    return [part for line in lines for part in line.split(" · ")] if broken else lines


def size_words(hung: Hung, unit: str) -> str:
    """The frame's outside size as it is shown."""
    width, height = hung.rect.width, hung.rect.height
    return f"{show(width, unit).rpartition(' ')[0]} × {show(height, unit)}"


def _drops(hung: Hung, unit: str) -> list[str]:
    missing = [bearing for bearing in hung.bearings if bearing.drop is None]
    if missing:
        return ["drop not measured:", "mark it on the drop scale"]
    drops = [bearing.drop for bearing in hung.bearings if bearing.drop is not None]
    told = [drop_words(drop, hung, lambda mm: show_both(mm, unit)) for drop in drops]
    if len(set(drops)) == 1:
        return told[:1]
    called = (facing(bearing.side, hung.frame.fixing) for bearing in hung.bearings)
    return [f"{name}: {words}" for name, words in zip(called, told, strict=True)]


def up_arrow(x: float, y: float, height: float) -> Iterator[Item]:
    """An arrow from (x, y) straight up, for the way that is up."""
    head = height / 3
    yield Line(x, y, x, y + height - head / 2, WIDE if height > H7 else MEDIUM)
    yield Polygon(((x - head / SLIM, y + height - head), (x, y + height), (x + head / SLIM, y + height - head)))
