"""A template taped together many times over by careful but unsteady hands: a simulation that knows no formula.

Points of the wall are complex numbers.  A sheet lies where z → turn · z + shift brings its points; with turn on the
unit circle nothing is stretched, and nothing is taken for small.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import combinations, pairwise

import numpy as np
from numpy.typing import NDArray

from templates_gen.tiling.sheet import Sheet, SheetPlan
from templates_gen.tolerance.order import taping_order

Complex = NDArray[np.complex128]
Lie = tuple[Complex, Complex]
"""Turn and shift, one for every time it is taped."""

Prints = Mapping[str, Mapping[complex, complex | Complex]]
"""For every sheet where on it, seen from its own corner, points of the wall are printed."""

Met = tuple[complex, str, str]
"""A registration mark, the sheet there already, and the sheet that is laid on it."""


class Hands:
    """Tapes a sheet plan `times` over; every mark is matched with a normal error of `match` mm on either axis.

    An end of the level line is brought under a string with a normal error of `reading` mm.
    With `prints` the sheets are what was printed, each lying as it will; without, every sheet lies in its place.
    """

    def __init__(
        self, sheets: SheetPlan, times: int, match: float, seed: int, prints: Prints | None = None, reading: float = 0.2
    ) -> None:
        self.sheets, self.times, self.match, self.prints, self.reading = sheets, times, match, prints, reading
        self.random = np.random.default_rng(seed)
        self.lies: dict[str, Lie] = {}
        self.known: dict[str, float] = {}
        self.piece: dict[str, int] = {}

    def tape(self, level: float, string: bool = False) -> None:
        """As the first page says: each row (or column) by itself, then these to each other, step by step."""
        order = taping_order(self.sheets)
        first_on_line, pieces = "", 0
        for names in (*order.begun, *(names for _, names in order.laid)):
            run = [self.sheets.sheet(name) for name in names]
            on_line = [sheet.name for sheet in run if sheet.cell.y0 <= level <= sheet.cell.y1]
            block = self._block(run, string and len(on_line) == len(run))
            met = self._met(run)
            pieces += not met
            piece = self.piece[met[0][1]] if met else pieces
            line = (first_on_line, on_line[0]) if string and on_line and first_on_line else None
            lie = self._laid(met, block, line) if met else self._flat()
            for name, own in block.items():
                self.lies[name], self.piece[name] = _after(lie, own), piece
            first_on_line = first_on_line or next(iter(on_line), "")

    def moved(self, name: str, point: complex) -> Complex:
        """Where the sheet's print of a point of the wall has come to lie."""
        turn, shift = self.lies[name]
        return turn * self._on(name, point) + shift

    def _on(self, name: str, point: complex) -> complex | Complex:
        return point if self.prints is None else self.prints[name][point]

    def against(self, name: str, point: complex, level: float) -> Complex:
        """The same, seen from the piece's first sheet on the level line, which a spirit level sets."""
        same = [self.sheets.sheet(other) for other in self.lies if self.piece[other] == self.piece[name]]
        on_line = [sheet for sheet in same if sheet.cell.y0 <= level <= sheet.cell.y1]
        turn, shift = self.lies[(on_line or same)[0].name]
        return (self.moved(name, point) - shift) / turn

    def _marks(self, one: str, two: str) -> list[complex]:
        """Where two sheets are brought together: at both marks of their join, or along the cut edge of a short one,
        which has one mark."""
        joins = [join for join in self.sheets.joins if {join.over, join.under} == {one, two}]
        found = [complex(m.x, m.y) for m in self.sheets.marks if joins and {one, two} <= set(m.sheets)]
        alone = joins and len(found) == 1 and self.sheets.hides is None
        return [complex(joins[0].x0, joins[0].y0), complex(joins[0].x1, joins[0].y1)] if alone else found

    def _met(self, run: Iterable[Sheet]) -> list[Met]:
        names = [sheet.name for sheet in run]
        return [(mark, there, name) for name in names for there in self.lies for mark in self._marks(there, name)]

    def _flat(self) -> Lie:
        return np.ones(self.times, complex), np.zeros(self.times, complex)

    def _block(self, run: Sequence[Sheet], straight: bool) -> dict[str, Lie]:
        """The sheets of a run, each laid on the one before it."""
        lies = {run[0].name: self._flat()}
        self.known[run[0].name] = 0.0
        for before, sheet in pairwise(run):
            one, two = _farthest(self._marks(before.name, sheet.name))
            turn, shift = lies[before.name]
            there = [self._matched(turn * self._on(before.name, mark) + shift) for mark in (one, two)]
            own = [self._on(sheet.name, mark) for mark in (one, two)]
            known = self.known[before.name] + 2 * (self.match / abs(two - one)) ** 2
            toward, self.known[sheet.name] = self._by_string(1.0, sheet.name, known) if straight else (None, known)
            lies[sheet.name] = _fit(own, there, toward)
        return lies

    def _laid(self, met: list[Met], block: dict[str, Lie], line: tuple[str, str] | None) -> Lie:
        """Where a block comes to lie, by the two marks farthest apart; by the line's turn, too, where a string is held
        along it: `line` is the sheet that the string starts from, and the one of the block that lies along it."""
        one, two = _farthest([mark for mark, _, _ in met])
        ends = [next(item for item in met if item[0] == mark) for mark in (one, two)]
        own = [block[name][0] * self._on(name, mark) + block[name][1] for mark, _, name in ends]
        there = [self._matched(self.moved(there, mark)) for mark, there, _ in ends]
        known = sum(self.known[there] for _, there, _ in ends) / 2 + 2 * (self.match / abs(two - one)) ** 2
        toward = None
        if line is not None:
            (wanted, weight), known = self._by_string(self.lies[line[0]][0], line[1], known)
            toward = wanted / block[line[1]][0], weight
        for name in block:
            self.known[name] += known
        return _fit(own, there, toward)

    def _by_string(
        self, turn: complex | Complex, name: str, known: float
    ) -> tuple[tuple[complex | Complex, float], float]:
        """The turn that a string gives a sheet, how much it counts beside marks that hold it with this variance, and
        the variance that is left: two readings of the same, each counting by how sure it is."""
        line = self.sheets.sheet(name).cell.width
        read = self.random.normal(0.0, self.reading, (2, self.times))
        by_string = 2 * (self.reading / line) ** 2
        left = 1 / (1 / known + 1 / by_string) if known and by_string else 0.0
        return (turn * np.exp(1j * (read[1] - read[0]) / line), 1 - left / known if known else 1.0), left

    def _matched(self, point: Complex) -> Complex:
        noise = self.random.normal(0.0, self.match, (2, self.times))
        return point + noise[0] + 1j * noise[1]


def _after(outer: Lie, inner: Lie) -> Lie:
    return outer[0] * inner[0], outer[0] * inner[1] + outer[1]


def _fit(
    own: Sequence[complex | Complex], there: Sequence[Complex], toward: tuple[Complex, float] | None = None
) -> Lie:
    """Two points of a sheet brought to two places, their middles exactly; turned `toward` a turn, by so much of what it
    is off by."""
    turn = (there[1] - there[0]) / (own[1] - own[0])
    turn = turn / abs(turn)
    if toward:
        turn = turn * (toward[0] / turn) ** toward[1]
    return turn, (there[0] + there[1]) / 2 - turn * (own[0] + own[1]) / 2


def _farthest(marks: Sequence[complex]) -> tuple[complex, complex]:
    return max(combinations(marks, 2), key=lambda pair: abs(pair[1] - pair[0]))
