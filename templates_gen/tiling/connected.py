"""What hangs together in a stack of rows, kept so that a row can be tried elsewhere without a look at all the others.

Cells are numbered through, row by row; a row has as many cells in any place.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import accumulate, chain

from templates_gen.base.geometry import Rect
from templates_gen.tiling.joins import grouped, joined

Pair = tuple[int, int]


class Web:
    """The rows of a plan from the bottom; `names` has for each cell the number of its taped piece, counted from 0."""

    def __init__(self, rows: Sequence[list[Rect]]) -> None:
        self.rows = list(rows)
        self._firsts = [0, *accumulate(map(len, rows))]
        self._row_of = [i for i, row in enumerate(rows) for _ in row]
        self._pairs: list[list[Pair]] = [[] for _ in range(2 * len(rows))]
        for pair in joined([cell for row in rows for cell in row]):
            self._pairs[self._place(pair)].append(pair)
        self.names = grouped(self._firsts[-1], chain.from_iterable(self._pairs))
        self._without: tuple[int, list[int]] | None = None

    def pieces_with(self, at: int, row: list[Rect]) -> int:
        """How many pieces there would be with this row instead of that one."""
        return max(self._tied(at, self._around(at, row))) + 1

    def put(self, at: int, row: list[Rect]) -> None:
        """From now on the row is this one."""
        pairs = self._around(at, row)
        tied = self._tied(at, pairs)
        self.names = [tied[name] for name in self._names_without(at)]
        self.rows[at] = row
        for place in range(max(0, 2 * at - 1), 2 * at + 2):
            self._pairs[place] = [pair for pair in pairs if self._place(pair) == place]

    def _place(self, pair: Pair) -> int:
        """Where a pair is kept: those within row i at 2 i, those of it and the next one after that."""
        return self._row_of[pair[0]] + self._row_of[pair[1]]

    def _around(self, at: int, row: list[Rect]) -> list[Pair]:
        """The pairs of the row's cells, and of those of the rows beside it, with this row in that place."""
        low = max(0, at - 1)
        cells = chain.from_iterable([*self.rows[low:at], row, *self.rows[at + 1 : at + 2]])
        first = self._firsts[low]
        return [(one + first, two + first) for one, two in joined(list(cells))]

    def _names_without(self, at: int) -> list[int]:
        """The pieces of all cells if those of this row hung on nothing."""
        if self._without is None or self._without[0] != at:
            pairs = chain(self._pairs[: max(0, 2 * at - 1)], self._pairs[2 * at + 2 :])
            self._without = at, grouped(self._firsts[-1], chain.from_iterable(pairs))
        return self._without[1]

    def _tied(self, at: int, pairs: Iterable[Pair]) -> list[int]:
        """Which of those pieces these pairs put together."""
        names = self._names_without(at)
        return grouped(max(names) + 1, ((names[one], names[two]) for one, two in pairs))
