"""What a taping goes by: its blocks, the sheet that a spirit level sets, and a string along the level line.

Where a level line is held to a string, that has a say in a sheet's turn, too.  The line's two ends on the sheet, L
apart, are brought under it, each with the error of a reading, and so turn the sheet by √2 · reading / L.  Marks and
string do not quite agree then.  A careful hand lets them settle between, by how surely each of them holds: the turn by
the marks adds up from join to join, that by the string does not.  With P for the variance of what the marks give and s²
for that of the string's turn, the string counts for w = P / (P + s²), and (1 − w) P is what the next join adds to
(R. E. Kalman's filter, 1960, for a single number; from memory).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.taping import Block, Fit, Laying, blocks_of, laying

ROOT = math.sqrt(2)
"""Two independent marks: their mean is off by σ / √2, and what they differ by, over their distance, by σ √2."""


class Pull(NamedTuple):
    """What a string does to the turn of a sheet on the level line: its weight beside that of the marks, and the turn by
    its readings (radians, for marks matched with an sd of 1 mm)."""

    weight: float
    turn: float


FREE = Pull(0.0, 0.0)
"""Where no string is held."""


class Taped(Record, frozen=True):
    """The blocks of a template, and what its level line is held to.

    `straight` has, by their numbers, the blocks that are laid along a string, each with the sheet of it that the string
    holds and how; `inner_straight` the same for the sheets within a block that lies along it, by their numbers.
    `references` has for every piece the sheet that a spirit level sets: movements count from it.  `piece_of` and
    `block_of` have the numbers of every sheet's piece and block.
    """

    blocks: tuple[Block, ...]
    straight: dict[int, tuple[int, Pull]]
    inner_straight: dict[int, Pull]
    references: dict[int, int]
    piece_of: dict[int, int]
    block_of: dict[int, int]


def taped(sheets: SheetPlan, level_line: float, string: bool, reading: float = 0.5) -> Taped:
    """The taping of a template, with the level line (its y) held to a string or not; of several pieces, it is not.

    `reading` is the sd of a string at one end of the line on a sheet, as a share of that of a mark that is matched.
    """
    return taped_of(laying(sheets), level_line, string, reading)


def taped_of(lie: Laying, level_line: float, string: bool, reading: float) -> Taped:
    """The same of sheets as they lie."""
    every = blocks_of(lie)
    string = string and every[-1].piece == every[0].piece
    crossed = {at for at, cell in enumerate(lie.cells) if cell.y0 <= level_line <= cell.y1}
    references: dict[int, int] = {}
    strung = _Strung(lie.cells, reading)
    for number, block in enumerate(every):
        on_line = [sheet for sheet in block.sheets if sheet in crossed]
        along = string and len(on_line) == len(block.sheets)
        strung.lay(number, block, on_line[0] if on_line and string and block.piece in references else None)
        strung.tape(block, along)
        if on_line:
            references.setdefault(block.piece, on_line[0])
    for block in every:
        references.setdefault(block.piece, block.sheets[0])
    piece_of = {sheet: block.piece for block in every for sheet in block.sheets}
    block_of = {sheet: number for number, block in enumerate(every) for sheet in block.sheets}
    return Taped(every, strung.straight, strung.inner, references, piece_of, block_of)


class _Strung:
    """How surely every sheet's turn is held, found block by block as they are taped."""

    def __init__(self, cells: Sequence[Rect], reading: float) -> None:
        self.cells, self.reading = cells, reading
        self.straight: dict[int, tuple[int, Pull]] = {}
        self.inner: dict[int, Pull] = {}
        self._known: dict[int, float] = {}  # the variance of every sheet's turn, as it is weighed

    def lay(self, number: int, block: Block, on_line: int | None) -> None:
        """A block laid on what is there; a string is held along a sheet of it or not."""
        fit, known = block.laid, 0.0
        if fit is not None:
            before = (self._known[fit.first[2]] + self._known[fit.last[2]]) / 2
            held = self._pull(before, fit, on_line)
            known = (1 - held.weight) * (before + (ROOT / apart(fit)) ** 2)
            if on_line is not None:
                self.straight[number] = on_line, held
        self._known[block.sheets[0]] = known

    def tape(self, block: Block, along: bool) -> None:
        """The sheets within a block, which is made by itself; a string is held along all of them or none."""
        known = 0.0
        for sheet, fit in zip(block.sheets[1:], block.inner, strict=True):
            held = self._pull(known, fit, sheet if along else None)
            known = (1 - held.weight) * (known + (ROOT / apart(fit)) ** 2)
            self._known[sheet] = self._known[block.sheets[0]] + known
            if along:
                self.inner[sheet] = held

    def _pull(self, known: float, fit: Fit, on_line: int | None) -> Pull:
        """How a string along a sheet settles with two marks on what is known so well."""
        if on_line is None:
            return FREE
        turn = self.reading * ROOT / self.cells[on_line].width
        marks = known + (ROOT / apart(fit)) ** 2
        return Pull(marks / (marks + turn * turn), turn)


def apart(fit: Fit) -> float:
    """The distance of the two marks (mm), at least 1."""
    return max(1.0, math.hypot(fit.last[0] - fit.first[0], fit.last[1] - fit.first[1]))


def about(fit: Fit) -> tuple[float, tuple[float, float], float, float]:
    """The distance of the two marks (at least 1 mm), the direction across their line, and the middle between them."""
    (x0, y0, _, _), (x1, y1, _, _) = fit.first, fit.last
    right, up = x1 - x0, y1 - y0
    distance = max(1.0, math.hypot(right, up))  # as `apart`, without a call: asked for every join of every measure
    return distance, (-up / distance, right / distance), (x0 + x1) / 2, (y0 + y1) / 2
