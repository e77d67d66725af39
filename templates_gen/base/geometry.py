"""Rectangles on the wall or on a page: millimetres, x to the right, y up."""

from __future__ import annotations

from collections.abc import Iterable

from templates_gen.base.record import Record

TOLERANCE = 1e-6
"""Lengths that differ by less than this (mm) are the same length: far below what a wall or a printer can
show, far above the rounding of float sums over 50 m.  Common practice, no source."""


def exceeds(length: float, most: float) -> bool:
    """True for a length (mm), or a weight (kg), that is more than another by more than rounding."""
    return length > most + TOLERANCE


def same(one: float, two: float) -> bool:
    """True for two lengths (mm) that are one, but for rounding."""
    return abs(one - two) <= TOLERANCE


Size = tuple[float, float]
"""Width and height (mm)."""

Span = tuple[float, float]
"""From where to where along an axis (mm)."""


class Rect(Record, frozen=True, order=True):
    """A rectangle with sides along the axes: left, bottom, right, top in mm (`x0 <= x1`, `y0 <= y1`)."""

    x0: float
    y0: float
    x1: float
    y1: float

    @classmethod
    def sized(cls, left: float, bottom: float, width: float, height: float) -> Rect:
        """The rectangle with this lower left corner and this size."""
        return cls(left, bottom, left + width, bottom + height)

    @classmethod
    def about(cls, x: float, y: float, width: float, height: float) -> Rect:
        """The rectangle of this size with its middle at (x, y)."""
        return cls(x - width / 2, y - height / 2, x + width / 2, y + height / 2)

    @property
    def width(self) -> float:
        return self.x1 - self.x0

    @property
    def height(self) -> float:
        return self.y1 - self.y0

    @property
    def cx(self) -> float:
        return (self.x0 + self.x1) / 2

    @property
    def cy(self) -> float:
        return (self.y0 + self.y1) / 2

    @property
    def sides(self) -> tuple[float, float, float, float]:
        """Left, bottom, right, top."""
        return self.x0, self.y0, self.x1, self.y1

    @property
    def corners(self) -> tuple[tuple[float, float], ...]:
        """The four corners, from the lower left one round, against the clock."""
        return (self.x0, self.y0), (self.x1, self.y0), (self.x1, self.y1), (self.x0, self.y1)

    def shifted(self, dx: float, dy: float) -> Rect:
        """The same rectangle moved by (dx, dy)."""
        return Rect(self.x0 + dx, self.y0 + dy, self.x1 + dx, self.y1 + dy)

    def grown(self, by: float) -> Rect:
        """The rectangle with every side moved outward by this much (inward when negative)."""
        return Rect(self.x0 - by, self.y0 - by, self.x1 + by, self.y1 + by)

    def overlaps(self, other: Rect) -> bool:
        """True when the two share area, and not just an edge."""
        return (  # written out, for it is asked most often
            self.x0 < other.x1 - TOLERANCE
            and other.x0 < self.x1 - TOLERANCE
            and self.y0 < other.y1 - TOLERANCE
            and other.y0 < self.y1 - TOLERANCE
        )

    def holds(self, other: Rect) -> bool:
        """True when the other lies in this one, edges included."""
        return (
            self.x0 <= other.x0 + TOLERANCE
            and self.y0 <= other.y0 + TOLERANCE
            and self.x1 >= other.x1 - TOLERANCE
            and self.y1 >= other.y1 - TOLERANCE
        )

    def has_point(self, x: float, y: float) -> bool:
        """True when the point lies in the rectangle, edges included."""
        return self.holds(Rect(x, y, x, y))

    def meet(self, other: Rect) -> Rect | None:
        """The part that both share, an edge or a corner included; None when they are apart."""
        # comparisons instead of min and max: asked for often, and twice as quick
        x0 = self.x0 if self.x0 >= other.x0 else other.x0
        y0 = self.y0 if self.y0 >= other.y0 else other.y0
        x1 = self.x1 if self.x1 <= other.x1 else other.x1
        y1 = self.y1 if self.y1 <= other.y1 else other.y1
        return Rect(x0, y0, x1, y1) if x0 <= x1 and y0 <= y1 else None

    def gaps_to(self, other: Rect) -> tuple[float, float]:
        """The clear distances between two rectangles across and upward (mm).

        A distance is negative where they overlap in that direction: so far would one have to move."""
        return max(other.x0 - self.x1, self.x0 - other.x1), max(other.y0 - self.y1, self.y0 - other.y1)

    def gap_to(self, other: Rect) -> float:
        """The same along the axis that separates them most (mm); negative when they overlap."""
        return max(self.gaps_to(other))


def around(points: Iterable[tuple[float, float]]) -> Rect:
    """The smallest rectangle around all points (at least one)."""
    xs, ys = zip(*points, strict=True)
    return Rect(min(xs), min(ys), max(xs), max(ys))


def bounds(rects: Iterable[Rect]) -> Rect:
    """The smallest rectangle around all of them (at least one)."""
    every = list(rects)
    left, bottom = min(rect.x0 for rect in every), min(rect.y0 for rect in every)
    return Rect(left, bottom, max(rect.x1 for rect in every), max(rect.y1 for rect in every))
