"""Finding room for lettering: rectangles that are taken, and the nearest place that is still free."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import product

from templates_gen.geometry import Rect
from templates_gen.lettering import Lettering
from templates_gen.marks.items import Text
from templates_gen.record import replace

AIR = 1.0
"""mm kept free around lettering.  ISO 3098-1 asks for gaps of 2/14 h at least; ours is more, our own design."""


class Room:
    """A region (mm) with what is already taken in it.

    `taken` must never be drawn over, nor may anything come nearer to it than `air` (mm); `lines` are better left
    uncrossed, but may be where nothing else is free.
    """

    def __init__(self, region: Rect, air: float = AIR) -> None:
        self.region, self.air = region, air
        self.taken: list[Rect] = []
        self.lines: list[Rect] = []

    def fits(self, box: Rect, uncrossed: bool = True) -> bool:
        """True when the box lies in the region and on nothing that is taken (or, if wanted, on no line)."""
        if not self.region.holds(box) or _on_any(box, self.taken, self.air):
            return False
        return not (uncrossed and _on_any(box, self.lines, 0.0))

    def take(self, *boxes: Rect) -> None:
        """From now on these are taken."""
        self.taken.extend(boxes)

    def first(self, boxes: Iterable[Rect], uncrossed: bool) -> Rect | None:
        """The first of the boxes that fits."""
        return next((box for box in boxes if self.fits(box, uncrossed)), None)

    def clear(self, line: Rect) -> bool:
        """True when a level or upright line, a rectangle without area, runs through nothing that is taken."""
        return not _on_any(line, self.taken, 0.0)

    def nearest(
        self, width: float, height: float, x: float, y: float, within: Rect, crossing: bool = True
    ) -> Rect | None:
        """The free box of this size inside `within` whose middle is nearest to (x, y); None when there is none.

        Lines are crossed only where nothing else is free, and never unless `crossing`.
        """
        return next(self.free(width, height, x, y, within, crossing), None)

    def free(
        self, width: float, height: float, x: float, y: float, within: Rect, crossing: bool = True
    ) -> Iterator[Rect]:
        """Free boxes of this size inside `within`, the nearest to (x, y) first; those on lines after all others."""
        room = self.region.meet(within)
        if room is None or room.width < width or room.height < height:
            return
        about = room.grown(self.air)
        taken = [box for box in self.taken if box.overlaps(about)]
        lines = [line for line in self.lines if line.overlaps(room)]
        for crossed in (lines, []) if crossing else (lines,):
            for box in _spots(width, height, x, y, room, [box.grown(self.air) for box in taken] + crossed):
                if not _on_any(box, taken, self.air) and not _on_any(box, crossed, 0.0):
                    yield box


def placed_near(
    text: Text, x: float, y: float, within: Rect, room: Room, lettering: Lettering, around: float = 0.0
) -> Text | None:
    """The text where it is free, inside `within` and nearest to (x, y) by its middle; None where it is free nowhere.

    The room it takes from now on is its ink, and so much `around` it (mm).  Wherever the text stands, it is moved.
    """
    ink = lettering.box(replace(text, x=0.0, y=0.0))
    box = room.nearest(ink.width + 2 * around, ink.height + 2 * around, x, y, within)
    if box is None:
        return None
    room.take(box)
    return replace(text, x=box.x0 + around - ink.x0, y=box.y0 + around - ink.y0)


def _spots(width: float, height: float, x: float, y: float, room: Rect, near: Sequence[Rect]) -> Iterator[Rect]:
    """Boxes that touch what is near or the room's sides, nearest to (x, y) first: the best place is one of them."""
    half_w, half_h = width / 2, height / 2
    xs = {x, room.x0 + half_w, room.x1 - half_w}
    xs |= {side for box in near for side in (box.x0 - half_w, box.x1 + half_w)}
    ys = {y, room.y0 + half_h, room.y1 - half_h}
    ys |= {side for box in near for side in (box.y0 - half_h, box.y1 + half_h)}
    middles = product(
        [at for at in xs if room.x0 + half_w <= at <= room.x1 - half_w],
        [at for at in ys if room.y0 + half_h <= at <= room.y1 - half_h],
    )
    for at_x, at_y in sorted(middles, key=lambda at: ((at[0] - x) ** 2 + (at[1] - y) ** 2, at)):
        yield Rect.about(at_x, at_y, width, height)


def _on_any(box: Rect, others: Iterable[Rect], air: float) -> bool:
    """True when the box, with this much air about it, shares area with one of the others.

    Written out, as it is asked some hundred thousand times for one template.
    """
    x0, y0, x1, y1 = box.x0 - air, box.y0 - air, box.x1 + air, box.y1 + air
    for other in others:
        if x0 < other.x1 and other.x0 < x1 and y0 < other.y1 and other.y0 < y1:
            return True
    return False
