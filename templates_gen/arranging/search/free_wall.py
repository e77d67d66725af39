"""The part of the wall that frames may take: inside its edges or outline, clear of what is on it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from templates_gen.base.adding import added
from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.base.record import Record
from templates_gen.job.model import Wall

NEAREST = 14
"""Places each way that are tried for a frame that has to move.  Our own design, no source."""

MOST_MOVED = 4
"""Frames that may be in the way of something for an arrangement to be worth mending.  Our own design, no source."""


class FreeWall(Record, frozen=True):
    """Where frames may be (wall mm): `within` is clear of the wall's edges; `taken` are the features with what they
    want clear; gaps are between frames."""

    wall: Wall
    within: Rect
    taken: tuple[Rect, ...]
    gap_across: float
    gap_down: float

    def free(self, rect: Rect) -> bool:
        """True when the rectangle lies on the wall and clear of its features."""
        return not any(map(rect.overlaps, self.taken)) and self.inside(rect)

    def inside(self, rect: Rect) -> bool:
        """True when the rectangle lies on the wall, with what is to be clear at its edges."""
        if not self.within.holds(rect):
            return False
        if not self.wall.outline:
            return True
        from templates_gen.job.outline import outline_holds

        return outline_holds(self.wall.outline, rect, self.wall.clear)

    def apart(self, rect: Rect, others: Iterable[Rect]) -> bool:
        """True when the rectangle keeps the gap to all others, across or down."""
        across, down = self.gap_across - TOLERANCE, self.gap_down - TOLERANCE
        return not any(
            rect.x0 - other.x1 < across and other.x0 - rect.x1 < across
            and rect.y0 - other.y1 < down and other.y0 - rect.y1 < down
            for other in others
        )  # fmt: skip


def free_wall(wall: Wall, gap_across: float, gap_down: float) -> FreeWall:
    """What is free of a wall, for frames with these gaps (mm)."""
    within = wall.rect.grown(-wall.clear)
    return FreeWall(wall, within, tuple(item.rect.grown(item.clear) for item in wall.features), gap_across, gap_down)


def settled(wanted: Mapping[int, Rect], fixed: Sequence[Rect], room: FreeWall) -> dict[int, Rect] | int:
    """The rectangles where they are wanted, or as near to it as the room allows, the gaps kept; else for how many
    there is no place.

    `fixed` frames stay.  Those nearest to the middle settle first; each that is in the way moves to the nearest place
    beside another frame, a feature or the wall's edge.
    """
    astray = sum(not (room.free(rect) and room.apart(rect, fixed)) for rect in wanted.values())
    if astray == 0:
        return dict(wanted)
    if astray > MOST_MOVED:
        return astray
    x = added(rect.cx for rect in wanted.values()) / len(wanted)
    y = added(rect.cy for rect in wanted.values()) / len(wanted)
    found: dict[int, Rect] = {}
    for at in sorted(wanted, key=lambda at: (abs(wanted[at].cx - x) + abs(wanted[at].cy - y), at)):
        place = _nearest(wanted[at], [*fixed, *found.values()], room)
        if place is None:
            return 1
        found[at] = place
    return found


def _nearest(rect: Rect, others: Sequence[Rect], room: FreeWall) -> Rect | None:
    """The free place nearest to the rectangle's own: as it is, slid down under an outline, or beside something."""
    if room.free(rect) and room.apart(rect, others):
        return rect
    slid = _slid_down(rect, room)
    if slid and room.free(slid) and room.apart(slid, others):
        return slid
    xs, ys = _places(rect, others, room)
    for _, dx, dy in sorted((dx * dx + dy * dy, dx, dy) for dx in xs[:NEAREST] for dy in ys[:NEAREST]):
        moved = rect.shifted(dx, dy)
        if room.apart(moved, others) and room.free(moved):
            return moved
    return None


def _places(rect: Rect, others: Sequence[Rect], room: FreeWall) -> tuple[list[float], list[float]]:
    """How far the rectangle may be moved across and up to stand beside something, or in line with it."""
    xs, ys = [0.0], [0.0]
    for other in others:
        xs += [other.x1 + room.gap_across - rect.x0, other.x0 - room.gap_across - rect.x1, other.x0 - rect.x0,
               other.x1 - rect.x1]  # fmt: skip
        ys += [other.y1 + room.gap_down - rect.y0, other.y0 - room.gap_down - rect.y1, other.y0 - rect.y0,
               other.y1 - rect.y1]  # fmt: skip
    for other in room.taken:
        xs += [other.x1 - rect.x0, other.x0 - rect.x1]
        ys += [other.y1 - rect.y0, other.y0 - rect.y1]
    xs += [room.within.x0 - rect.x0, room.within.x1 - rect.x1]
    ys += [room.within.y1 - rect.y1, room.within.y0 - rect.y0]
    return sorted(set(xs), key=abs), sorted(set(ys), key=abs)


def _slid_down(rect: Rect, room: FreeWall) -> Rect | None:
    """The rectangle moved straight down as little as it takes to lie inside an outline; None for plain walls."""
    wall, lowest = room.wall, rect.shifted(0.0, room.wall.clear - rect.y0)
    if not wall.outline or rect.y0 <= lowest.y0 or not room.inside(lowest):
        return None
    from templates_gen.job.outline import ceiling_over

    return rect.shifted(0.0, min(0.0, ceiling_over(wall.outline, lowest, wall.clear) - rect.y1))
