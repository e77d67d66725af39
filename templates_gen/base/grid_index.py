"""Rectangles by where they are, so that a question about one place does not look at all of them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from itertools import product
from typing import Generic, TypeVar

from templates_gen.base.geometry import Rect

T = TypeVar("T")

SIDE = 400.0
"""mm; about the size of a frame or a sheet, so that each lies in a few squares.  Our own design, no source."""


class Near(Generic[T]):
    """Things kept under the squares of a coarse grid, `side` mm wide, that their rectangle (mm) touches."""

    def __init__(self, things: Iterable[tuple[Rect, T]] = (), side: float = SIDE) -> None:
        self._side = side
        self._squares: dict[tuple[int, int], list[int]] = defaultdict(list)
        self._things: list[T] = []
        for rect, thing in things:
            self.add(rect, thing)

    def __len__(self) -> int:
        return len(self._things)

    def add(self, rect: Rect, thing: T) -> None:
        """Keep one more thing."""
        for square in self._touched(rect):
            self._squares[square].append(len(self._things))
        self._things.append(thing)

    def about(self, rect: Rect) -> list[T]:
        """Everything that may touch the rectangle, each once, in the order it was added; not all of it does."""
        found = [numbers for square in self._touched(rect) if (numbers := self._squares.get(square))]
        numbers = found[0] if len(found) == 1 else sorted(set().union(*found))
        return [self._things[number] for number in numbers]

    def _touched(self, rect: Rect) -> Iterable[tuple[int, int]]:
        side = self._side
        left, right, low, high = int(rect.x0 // side), int(rect.x1 // side), int(rect.y0 // side), int(rect.y1 // side)
        if left == right and low == high:  # so it is for most
            return ((left, low),)
        return product(range(left, right + 1), range(low, high + 1))
