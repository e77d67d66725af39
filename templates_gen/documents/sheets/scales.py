"""Graduated lines: the drop scale at every hanger, and the ticks along the level line and the sheets' own rulers."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import cache

from templates_gen.arranging.plan import Hung
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record, replace
from templates_gen.base.units import INCH
from templates_gen.drawing.items import Form, Item, Line, Polygon, Text
from templates_gen.drawing.sizes import H25, HAIR, INNER_EDGE, NARROW, SCALE_FAR, SCALE_NEAR
from templates_gen.hanging.bearings import Bearing
from templates_gen.tiling.demand import scale_length


class Graduation(Record, frozen=True):
    """How a length is divided: the step between ticks (mm), and tick lengths by how many steps they mark.

    `ticks` holds (every so many steps, length in mm), the rarest first; `figure_every` steps carry a figure that
    counts `figure_unit` mm.
    """

    step: float
    ticks: tuple[tuple[int, float], ...]
    figure_every: int
    figure_unit: float

    def tick(self, number: int) -> float:
        """The length of tick `number`."""
        return next(length for every, length in self.ticks if number % every == 0)

    def figure(self, number: int) -> str:
        """The figure at tick `number`, or "" where there is none."""
        return f"{number * self.step / self.figure_unit:.0f}" if number % self.figure_every == 0 else ""


# Divisions as on a steel rule and a tape measure: common practice, no source.
FINE = {
    "in": Graduation(INCH / 16, ((16, 7.0), (8, 5.5), (4, 4.2), (2, 3.0), (1, 1.8)), 16, INCH),
    "mm": Graduation(1.0, ((10, 7.0), (5, 4.5), (1, 2.0)), 10, 1.0),
    "cm": Graduation(1.0, ((10, 7.0), (5, 4.5), (1, 2.0)), 10, 10.0),
}

POINTER = 2.4, 1.0
"""mm: how long the pointer at a planned drop is, and half of how high.  Our own design, no source."""


UNIT_UNDER = 0.7
"""mm from halfway between two figures of a scale down to the foot of its unit, most of whose letters are low.  Our own
design, no source."""


class DropScale(Record, frozen=True):
    """A drop scale on the wall: from `top` down by `length` along the upright at `x` (mm).

    `side` is +1 when it stands to the right of the hanger's upright, -1 to the left, and 0 when it stands on it
    because there is no nail to keep clear of.
    """

    x: float
    top: float
    length: float
    side: int
    drop: float | None

    @property
    def zone(self) -> Rect:
        """What the scale with its figures takes."""
        if self.side == 0:
            return Rect(self.x - SCALE_FAR / 2, self.top - self.length, self.x + SCALE_FAR / 2, self.top)
        near, far = self.x + self.side * SCALE_NEAR, self.x + self.side * SCALE_FAR
        return Rect(min(near, far), self.top - self.length, max(near, far), self.top)


def scales_may_stand(hung: Hung) -> Iterator[Rect]:
    """What the drop scales of a frame take, on either side of their hangers where it is not decided on which."""
    for bearing in hung.bearings:
        scales = [drop_scale(hung, bearing, side) for side in (-1, 1)]
        yield from (scale.zone for scale in scales if scale)


def scales_to_mark(hung: Hung) -> Iterator[DropScale]:
    """The scales on the uprights of hangers whose drop is not known yet."""
    yield from filter(None, (drop_scale(hung, bearing, 0) for bearing in hung.bearings if bearing.drop is None))


def drop_scale(hung: Hung, bearing: Bearing, side: int) -> DropScale | None:
    """The scale of one hanger on this side of its nail, or on the hanger's upright itself where there is no nail.

    None where the frame is too narrow for it.
    """
    side = 0 if bearing.drop is None else side
    scale = DropScale(bearing.x, hung.rect.y1, scale_length(hung, bearing.drop), side, bearing.drop)
    narrow = scale.zone.x0 < hung.rect.x0 or scale.zone.x1 > hung.rect.x1
    return None if narrow or scale.length <= 0 else scale


def scale_lines(scale: DropScale, unit: str) -> Iterator[Item]:
    """The lines of a drop scale: spine, ticks, and a pointer at the drop that the nail was planned for."""
    grade, way = FINE[unit], scale.side or 1
    spine = scale.x + scale.side * SCALE_NEAR
    yield Line(spine, scale.top, spine, scale.top - scale.length, NARROW)
    for number in range(1, math.floor(scale.length / grade.step + 1e-6) + 1):
        y, length = scale.top - number * grade.step, grade.tick(number)
        yield Line(spine, y, spine + way * length, y, HAIR)
    if scale.drop is not None:
        y = scale.top - scale.drop
        base = spine - way * POINTER[0]
        yield Polygon(((spine, y), (base, y + POINTER[1]), (base, y - POINTER[1])))


def scale_name(hung: Hung, number: int) -> str:
    """The name of the form of a frame's scale, of which it is the first, second, …, from 0."""
    return f"scale {number}:{hung.frame.id}"


def scale_form(hung: Hung, number: int, scale: DropScale, unit: str) -> Form:
    """The lines of a drop scale about the upper end of its hanger's upright."""
    near, far = -SCALE_FAR - 1.0, SCALE_FAR + 1.0
    items = _lines_of(replace(scale, x=0.0, top=0.0), unit)
    return Form(scale_name(hung, number), Rect(near, -scale.length - 1.0, far, 1.0), items)


@cache
def _lines_of(scale: DropScale, unit: str) -> tuple[Item, ...]:
    """The lines of a drop scale, kept: many frames have the same one."""
    return tuple(scale_lines(scale, unit))


def scale_figures(scale: DropScale, unit: str) -> Iterator[Text]:
    """The figures of a drop scale."""
    grade, way = FINE[unit], scale.side or 1
    x = scale.x + scale.side * SCALE_NEAR + way * (grade.ticks[0][1] + 1.0)
    for number in range(grade.figure_every, math.floor(scale.length / grade.step) + 1, grade.figure_every):
        y = scale.top - number * grade.step - H25 / 2
        yield Text(x, y, grade.figure(number), H25, "left" if way > 0 else "right")


def scale_units(scale: DropScale, unit: str) -> Iterator[Text]:
    """Where it may stand what the figures of a drop scale count: over the first, or between any two, from the top."""
    grade, way = FINE[unit], scale.side or 1
    x, step = scale.x + scale.side * SCALE_NEAR + way * (grade.ticks[0][1] + 1.0), grade.figure_every * grade.step
    for number in range(math.floor(scale.length / step + 1e-6)):
        edge = INNER_EDGE if number == 0 else 0.0  # the second line inside the frame's edge
        y = scale.top - (number + 0.5) * step - edge / 2 - UNIT_UNDER
        yield Text(x, y, unit, H25, "left" if way > 0 else "right")


def ticks_along(start: float, end: float, zero: float, grade: Graduation) -> Iterator[tuple[float, int]]:
    """Every graduation between `start` and `end` of a scale that counts both ways from `zero`: (position, number)."""
    first = math.ceil((start - zero) / grade.step - 1e-9)
    last = math.floor((end - zero) / grade.step + 1e-9)
    for number in range(first, last + 1):
        yield zero + number * grade.step, abs(number)


def apart(scales: Sequence[DropScale]) -> list[DropScale]:
    """The scales without those whose zone runs into an earlier one."""
    kept: list[DropScale] = []
    for scale in scales:
        if not any(scale.zone.overlaps(other.zone) for other in kept):
            kept.append(scale)
    return kept
