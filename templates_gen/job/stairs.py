"""A stair along the wall, by the line of its tread nosings."""

from __future__ import annotations

import math

from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.base.record import Record


class Stairs(Record, frozen=True, kw_only=True):
    """A stair along the wall: the line of its tread nosings starts at (x, y), the lowest nosing, and climbs.

    `slope` is how far it rises for every mm to the right, negative where it climbs to the left; `run` and `rise` are
    those of one step (mm) where they are given.  `top` is the height of the last nosing, where a landing follows;
    None where the line climbs on to the wall's end.  `clear` is how far frames stay above the line.
    """

    x: float
    y: float
    slope: float
    run: float | None = None
    rise: float | None = None
    top: float | None = None
    clear: float = 0.0

    @property
    def pitch(self) -> float:
        """The angle of the nosing line with the level, in degrees."""
        return math.degrees(math.atan(abs(self.slope)))

    def end(self, wall: Rect) -> float:
        """How far right the line ends on such a wall: at its last nosing, or at the wall's end."""
        if self.top is not None:
            return self.x + (self.top - self.y) / self.slope
        return wall.x1 if self.slope > 0 else wall.x0

    def line_at(self, x: float) -> float:
        """The height of the nosing line above x, also where it is drawn on beyond the stair."""
        return self.y + self.slope * (x - self.x)

    def ground_at(self, x: float) -> float:
        """The height of what one stands on at x: the nosing line, the floor before it, or the landing after it."""
        height = self.line_at(x)
        if height < self.y - TOLERANCE:
            return 0.0
        return height if self.top is None else min(height, self.top)

    def tread_at(self, x: float) -> float:
        """How high one stands at x: on a tread, which lies below the line of the nosings, floor or landing."""
        ground = self.ground_at(x)
        if not self.run or not self.rise or ground in (0.0, self.top):
            return ground
        return self.y + self.rise * math.floor(abs(x - self.x) / self.run + TOLERANCE)
