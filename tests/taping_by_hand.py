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

    With `prints` the sheets are what was printed, each lying as it will; without, every sheet lies in its place.
    """

    def __init__(self, sheets: SheetPlan, times: int, match: float, seed: int, prints: Prints | None = None) -> None:
        self.sheets, self.times, self.match, self.prints = sheets, times, match, prints
        self.random = np.random.default_rng(seed)
        self.lies: dict[str, Lie] = {}
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
            line = first_on_line if string and on_line else ""
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

    def _way(self, vector: complex) -> complex | Complex:
        """How a way on the wall is printed where nothing is turned."""
        return vector

    def _marks(self, one: str, two: str) -> list[complex]:
        joined = any({join.over, join.under} == {one, two} for join in self.sheets.joins)
        return [complex(m.x, m.y) for m in self.sheets.marks if joined and {one, two} <= set(m.sheets)]

    def _met(self, run: Iterable[Sheet]) -> list[Met]:
        names = [sheet.name for sheet in run]
        return [(mark, there, name) for name in names for there in self.lies for mark in self._marks(there, name)]

    def _flat(self) -> Lie:
        return np.ones(self.times, complex), np.zeros(self.times, complex)

    def _block(self, run: Sequence[Sheet], straight: bool) -> dict[str, Lie]:
        """The sheets of a run, each laid on the one before it."""
        lies = {run[0].name: self._flat()}
        for before, sheet in pairwise(run):
            one, two = _farthest(self._marks(before.name, sheet.name))
            turn, shift = lies[before.name]
            there = [self._matched(turn * self._on(before.name, mark) + shift) for mark in (one, two)]
            own = [self._on(sheet.name, mark) for mark in (one, two)]
            lies[sheet.name] = _fit(own, there, turn if straight else 1.0)
        return lies

    def _laid(self, met: list[Met], block: dict[str, Lie], line: str) -> Lie:
        """Where a block comes to lie, by the two marks farthest apart; by the line's turn where a string is held."""
        one, two = _farthest([mark for mark, _, _ in met])
        ends = [next(item for item in met if item[0] == mark) for mark in (one, two)]
        own = [block[name][0] * self._on(name, mark) + block[name][1] for mark, _, name in ends]
        under = [self.moved(there, mark) for mark, there, _ in ends]
        there = [self._matched(point) for point in under]
        way = self._way(two - one)
        untwist = (under[1] - under[0]) / abs(under[1] - under[0]) * abs(way) / way if line else 1.0
        return _fit(own, there, untwist / self.lies[line][0] if line else 1.0)

    def _matched(self, point: Complex) -> Complex:
        noise = self.random.normal(0.0, self.match, (2, self.times))
        return point + noise[0] + 1j * noise[1]


def _after(outer: Lie, inner: Lie) -> Lie:
    return outer[0] * inner[0], outer[0] * inner[1] + outer[1]


def _fit(own: Sequence[complex | Complex], there: Sequence[Complex], untwist: complex | Complex) -> Lie:
    """Two points of a sheet brought to two places, their middles exactly; turned back by `untwist`."""
    turn = (there[1] - there[0]) / (own[1] - own[0]) / untwist
    turn = turn / abs(turn)
    return turn, (there[0] + there[1]) / 2 - turn * (own[0] + own[1]) / 2


def _farthest(marks: Sequence[complex]) -> tuple[complex, complex]:
    return max(combinations(marks, 2), key=lambda pair: abs(pair[1] - pair[0]))
