"""What hangs together in a stack of rows, kept so that a row can be tried elsewhere without a look at all the others.

Cells are numbered through, row by row; a row has as many cells in any place.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import accumulate, chain

from templates_gen.geometry import Rect
from templates_gen.sheets.joins import grouped, joined

Pair = tuple[int, int]


class Web:
    """The rows of a plan from the bottom, and the pairs of their cells that are taped to each other."""

    def __init__(self, rows: Sequence[list[Rect]]) -> None:
        self.rows = list(rows)
        self._firsts = [0, *accumulate(map(len, rows))]
        # of every row the pairs of it and the row above, those within it among them
        self._pairs: list[list[Pair]] = [[] for _ in rows]
        row_of = [i for i, row in enumerate(rows) for _ in row]
        for pair in joined([cell for row in rows for cell in row]):
            self._pairs[row_of[min(pair)]].append(pair)
        self._without: tuple[int, list[int]] | None = None

    def names(self) -> list[int]:
        """For each cell the number of the taped piece it is part of, pieces counted from 0."""
        return grouped(self._firsts[-1], chain.from_iterable(self._pairs))

    def pieces_with(self, at: int, row: list[Rect]) -> int:
        """How many pieces there would be with this row instead of that one."""
        if self._without is None or self._without[0] != at:
            others = (pair for i, pairs in enumerate(self._pairs) for pair in pairs if not self._touches(at, i, pair))
            self._without = at, grouped(self._firsts[-1], others)
        names = self._without[1]
        changed = [*self.rows[:at], row, *self.rows[at + 1 :]]
        pairs = chain.from_iterable(self._upward(i, changed) for i in (at - 1, at) if i >= 0)
        return max(grouped(max(names) + 1, ((names[one], names[two]) for one, two in pairs))) + 1

    def put(self, at: int, row: list[Rect]) -> None:
        """From now on the row is this one."""
        self.rows[at] = row
        for i in (at - 1, at):
            if i >= 0:
                self._pairs[i] = list(self._upward(i, self.rows))

    def _upward(self, i: int, rows: Sequence[list[Rect]]) -> Iterator[Pair]:
        cells = [*rows[i], *(rows[i + 1] if i + 1 < len(rows) else ())]
        first, own = self._firsts[i], len(rows[i])
        return ((one + first, two + first) for one, two in joined(cells) if min(one, two) < own)

    def _touches(self, at: int, i: int, pair: Pair) -> bool:
        return i in (at - 1, at) and any(self._firsts[at] <= cell < self._firsts[at + 1] for cell in pair)
