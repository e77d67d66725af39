"""Finding room for lettering: rectangles that are taken, and the nearest place that is still free."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from heapq import heappop, heappush
from operator import itemgetter

from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.base.grid_index import Near
from templates_gen.base.record import replace
from templates_gen.drawing.items import Text
from templates_gen.drawing.lettering import Lettering

AIR = 1.0
"""mm kept free around lettering.  ISO 3098-1 asks for gaps of 2/14 h at least (from memory); ours is more, our own
design."""


MANY, GRID = 100, 10.0
"""From so many boxes on those at a place are looked up on a grid of squares this large (mm).  Our own design; measured:
40 and 200 boxes, or squares of 5 and 20 mm, are no quicker."""


class Boxes(list[Rect]):
    """Rectangles that become more, of which those at a place are wanted."""

    _near: Near[Rect] | None = None  # most rooms never have so many

    def at(self, place: Rect) -> list[Rect]:
        """Those that share area with the place, in the order in which they came."""
        x0, y0, x1, y1 = place.x0 + TOLERANCE, place.y0 + TOLERANCE, place.x1 - TOLERANCE, place.y1 - TOLERANCE
        return [box for box in self._about(place) if x0 < box.x1 and box.x0 < x1 and y0 < box.y1 and box.y0 < y1]

    def _about(self, place: Rect) -> Sequence[Rect]:
        if len(self) < MANY:
            return self
        near = self._near = self._near or Near[Rect](side=GRID)
        for box in self[len(near) :]:
            near.add(box, box)
        return near.about(place)

    def any_at(self, place: Rect, air: float) -> bool:
        """Whether one of them shares area with the place, with so much air about it (mm)."""
        about = self if len(self) < MANY else self._about(place.grown(air))
        return _on_any(place, about, air - TOLERANCE)


class Room:
    """A region (mm) with what is already taken in it.

    `taken` must never be drawn over, nor may anything come nearer to it than `air` (mm); `lines` are better left
    uncrossed, but may be where nothing else is free.  What is so in the rooms that it lies `over` is so in it, too, but
    what is taken in it is not taken in these.
    """

    def __init__(self, region: Rect, air: float = AIR, over: Sequence[Room] = ()) -> None:
        self.region, self.air = region, air
        self.taken, self.lines = Boxes(), Boxes()
        self._all: tuple[Room, ...] = (self, *(room for under in over for room in under._all)) if over else (self,)
        self._whole: Room | None = None

    def fits(self, box: Rect, uncrossed: bool = True) -> bool:
        """True when the box lies in the region and on nothing that is taken (or, if wanted, on no line)."""
        if not self.region.holds(box):
            return False
        for room in self._all:  # written out, as it is asked some hundred thousand times for one template
            if room.taken and _on_any(box, room.taken, self.air):
                return False
            if uncrossed and room.lines and _on_any(box, room.lines, 0.0):
                return False
        return True

    def _taken_at(self, box: Rect) -> bool:
        """Whether something taken or a line is at the box."""
        for room in self._all:  # most rooms have nothing in them
            if (room.taken and room.taken.any_at(box, self.air)) or (room.lines and room.lines.any_at(box, 0.0)):
                return True
        return False

    def take(self, *boxes: Rect) -> None:
        """From now on these are taken."""
        self.taken.extend(boxes)
        if self._whole is not None:
            self._whole.take(*boxes)

    def first(self, boxes: Iterable[Rect], uncrossed: bool) -> Rect | None:
        """The first of the boxes that fits."""
        return next((box for box in boxes if self.fits(box, uncrossed)), None)

    def clear(self, line: Rect) -> bool:
        """True when a level or upright line, a rectangle without area, runs through nothing that is taken."""
        return not any(_on_any(line, room.taken, 0.0) for room in self._all)

    def nearest(
        self, width: float, height: float, x: float, y: float, within: Rect, crossing: bool = True
    ) -> Rect | None:
        """The free box of this size inside `within` whose middle is nearest to (x, y); None when there is none.

        Lines are crossed only where nothing else is free, and never unless `crossing`.
        """
        room = self.region.meet(within)
        if room is None or room.width < width or room.height < height:
            return None
        half_x, half_y = width / 2, height / 2  # most often it is free where it would be best
        at_x, at_y = min(max(x, room.x0 + half_x), room.x1 - half_x), min(max(y, room.y0 + half_y), room.y1 - half_y)
        best = Rect.about(at_x, at_y, width, height)
        if self.region.holds(best) and not self._taken_at(best):
            return best
        middles, taken, lines = self._of_middles(room, half_x, half_y)
        for crossed in (lines, []) if crossing and lines else (lines,):
            if point := _nearest_point(x, y, middles, taken + crossed):
                return Rect.about(*point, width, height)
        return None

    def free(
        self, width: float, height: float, x: float, y: float, within: Rect, crossing: bool = True
    ) -> Iterator[Rect]:
        """Free boxes of this size inside `within`, the nearest to (x, y) first; those on lines after all others."""
        room = self.region.meet(within)
        if room is None or room.width < width or room.height < height:
            return
        middles, taken, lines = self._of_middles(room, width / 2, height / 2)
        for crossed in (lines, []) if crossing and lines else (lines,):
            for at_x, at_y in _free_points(x, y, middles, taken + crossed):
                yield Rect.about(at_x, at_y, width, height)

    def near(self, place: Rect) -> Room:
        """The room with only what lies at a place (mm), for many questions about it; what is taken there is so in the
        whole room, too."""
        near, about = Room(self.region, self.air), place.grown(self.air)
        near._whole = self
        for room in self._all:
            if room.taken:
                near.taken += room.taken.at(about)
            if room.lines:
                near.lines += room.lines.at(place)
        return near

    def _of_middles(self, place: Rect, across: float, up: float) -> tuple[Rect, list[_Box], list[_Box]]:
        """Where in a place the middle of something may be that reaches so far across and up from it, and where it may
        not: for each box that is taken there, and for each line."""
        about, wide, high = place.grown(self.air), across + self.air, up + self.air
        taken = [box for room in self._all if room.taken for box in room.taken.at(about)]
        lines = [line for room in self._all if room.lines for line in room.lines.at(place)]
        return (
            Rect(place.x0 + across, place.y0 + up, place.x1 - across, place.y1 - up),
            [(box.x0 - wide, box.y0 - high, box.x1 + wide, box.y1 + high) for box in taken],
            [(line.x0 - across, line.y0 - up, line.x1 + across, line.y1 + up) for line in lines],
        )


def placed_near(
    text: Text, x: float, y: float, within: Rect, room: Room, lettering: Lettering, around: float = 0.0,
    crossing: bool = True,
) -> Text | None:  # fmt: skip
    """The text where it is free, inside `within` and nearest to (x, y) by its middle; None where it is free nowhere.

    Lines are crossed only where nothing else is free, and never unless `crossing`.  The room it takes from now on is
    its ink, and so much `around` it (mm).  Wherever the text stands, it is moved.
    """
    ink = lettering.box(replace(text, x=0.0, y=0.0))
    box = room.nearest(ink.width + 2 * around, ink.height + 2 * around, x, y, within, crossing)
    if box is None:
        return None
    room.take(box)
    return replace(text, x=box.x0 + around - ink.x0, y=box.y0 + around - ink.y0)


_Box = tuple[float, float, float, float]
"""Left, bottom, right and top (mm), where a `Rect` for each would take longer than all that is asked of it."""


def _uprights(x: float, within: Rect, blocked: Sequence[_Box]) -> list[tuple[float, float]]:
    """The uprights on which a best point can be, the nearest first, each with its distance squared."""
    low, high, foot, top = within.x0, within.x1, within.y0, within.y1
    xs = {at for left, _, right, _ in blocked for at in (left, right) if low <= at <= high}
    if low <= high:
        xs |= {low, high, min(max(x, low), high)}
    for left, bottom, right, upper in blocked:
        if bottom < foot and top < upper:  # from the foot to the top: in a narrow place nearly all are
            xs = {at for at in xs if at <= left or at >= right}
    return sorted([((at - x) ** 2, at) for at in xs])


def _nearest_point(x: float, y: float, within: Rect, blocked: Sequence[_Box]) -> tuple[float, float] | None:
    """The first of the `_free_points`, found without the others: on each upright the next free place up and down."""
    level = min(max(y, within.y0), within.y1)
    best: tuple[float, float, float] | None = None
    for far, at_x in _uprights(x, within, blocked):
        if best is not None and best[0] < far:
            break
        spans = sorted([(low, high) for left, low, right, high in blocked if left < at_x < right])
        up = down = level
        for low, high in spans:
            if low < up < high:
                up = high
        for low, high in sorted(spans, key=itemgetter(1), reverse=True) if up > level else ():
            if low < down < high:
                down = low
        for at_y in (down, up):
            found = far + (at_y - y) ** 2, at_x, at_y
            if within.y0 <= at_y <= within.y1 and (best is None or found < best):
                best = found
    return best[1:] if best else None


def _free_points(x: float, y: float, within: Rect, blocked: Sequence[_Box]) -> Iterator[tuple[float, float]]:
    """Points in none of the blocked rectangles, the nearest to (x, y) first.

    The best one is level with a side of a rectangle or straight over one.

    Those of an upright are found when no other upright can have a nearer one than is known.
    """
    ys = {min(max(y, within.y0), within.y1), within.y0, within.y1, *(at for box in blocked for at in (box[1], box[3]))}
    upward = [(at, (at - y) ** 2) for at in ys if within.y0 <= at <= within.y1]
    found: list[tuple[float, float, float]] = []
    for far, at_x in _uprights(x, within, blocked):
        while found and found[0][0] < far:
            yield heappop(found)[1:]
        spans = [(low, high) for left, low, right, high in blocked if left < at_x < right]
        for at_y, up in upward:
            for low, high in spans:
                if low < at_y < high:
                    break
            else:
                heappush(found, (far + up, at_x, at_y))
    while found:
        yield heappop(found)[1:]


def _on_any(box: Rect, others: Iterable[Rect], air: float) -> bool:
    """True when the box, with this much air about it, shares area with one of the others.

    It is written out, for one template asks it some hundred thousand times.
    """
    x0, y0, x1, y1 = box.x0 - air, box.y0 - air, box.x1 + air, box.y1 + air
    for other in others:
        if x0 < other.x1 and other.x0 < x1 and y0 < other.y1 and other.y0 < y1:
            return True
    return False
