"""How far taping moves the points of a template: the errors of all registration marks, carried through to a point.

Every fit of two marks a distance d apart, each matched with the standard deviation σ on either axis, moves what is
laid on by σ/√2 and turns it by σ√2/d about the middle between the marks (propagation of independent errors, derived
here).  Movements are small, so they add up: the movement of a sheet is (a, b, t), which takes a point (x, y) to
(x + a − t·y, y + b + t·x).  A block's fit rests on the movements of the sheets under it and, with the opposite sign,
on those within itself.

What is wanted is a sum of movements of few points.  Its variance is worked out backwards: from the points to every
fit that they rest on.  That takes a time proportional to the number of sheets for each sum, and no matrices.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator

from templates_gen.base.geometry import Rect
from templates_gen.base.grid_index import Near
from templates_gen.base.record import Record
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.taping import Block, Fit, blocks

Movement = tuple[float, float, float]
"""Right, up, and the turn to the left: of a sheet, or how much a sum changes with each of them."""

Term = tuple[int, float, float, float, float]
"""A sheet's number, a point (x, y) on it, and the weights of the point's movement right and up in a sum."""

NOTHING: Movement = (0.0, 0.0, 0.0)

ROOT = math.sqrt(2)
"""Two independent marks: their mean is off by σ / √2, and what they differ by, over their distance, by σ √2."""


ROUNDING = 1e-9
"""A weight that is no more than rounding leaves (mm, as places on a wall are below 1e5 mm).  Our own design."""


class Homes:
    """Which sheet a point is on."""

    def __init__(self, sheets: SheetPlan) -> None:
        self._cells = [sheet.cell for sheet in sheets.sheets]
        self._near = Near((cell, number) for number, cell in enumerate(self._cells))

    def at(self, x: float, y: float) -> int:
        """The number of the sheet that shows the point, or of the nearest one where none does."""
        point = Rect(x, y, x, y)
        around = (number for number in self._near.about(point) if self._cells[number].holds(point))
        found = next(around, None)
        if found is None:
            found = min(range(len(self._cells)), key=lambda number: self._cells[number].gap_to(point))
        return found


class Taped(Record, frozen=True):
    """The blocks of a template, and what its level line is held to.

    `straight` are the numbers of the blocks whose turn is not what the marks give but that of the level line, by a
    string; with `inner_straight` the sheets of the block too.  `references` has for every piece the sheet that a
    spirit level sets: movements count from it.
    """

    blocks: tuple[Block, ...]
    straight: frozenset[int]
    inner_straight: frozenset[int]
    references: dict[int, int]
    piece_of: dict[int, int]


def taped(sheets: SheetPlan, level_line: float, string: bool) -> Taped:
    """The taping of a template, with the level line (its y) held to a string or not; of several pieces, it is not."""
    every = blocks(sheets)
    string = string and every[-1].piece == every[0].piece
    crossed = {at for at, sheet in enumerate(sheets.sheets) if sheet.cell.y0 <= level_line <= sheet.cell.y1}
    references: dict[int, int] = {}
    straight, inner = set(), set()
    for number, block in enumerate(every):
        on_line = [sheet for sheet in block.sheets if sheet in crossed]
        if string and len(on_line) == len(block.sheets) > 1:
            inner.add(number)
        if on_line and string and block.piece in references:
            straight.add(number)
        if on_line:
            references.setdefault(block.piece, on_line[0])
    for block in every:
        references.setdefault(block.piece, block.sheets[0])
    piece_of = {sheet: block.piece for block in every for sheet in block.sheets}
    return Taped(every, frozenset(straight), frozenset(inner), references, piece_of)


def variance(tape: Taped, terms: Iterable[Term]) -> float:
    """The variance of the weighted sum of the points' movements, for marks matched with an sd of 1 mm (mm²).

    The movements are those against the sheet that a spirit level sets.
    """
    return sum(share for _, share in shares(tape, terms))


def shares(tape: Taped, terms: Iterable[Term]) -> Iterator[tuple[Fit, float]]:
    """The same by what it comes from: every fit with its part of the variance (mm²)."""
    for fit, effect in effects(tape, terms):
        yield fit, sum(part * part for part in effect)


def effects(tape: Taped, terms: Iterable[Term]) -> Iterator[tuple[Fit, Movement]]:
    """How the sum of movements depends on every fit: its weights of three independent errors with an sd of 1 (mm).

    They are the fit's shift to the right, its shift upward, and its turn; the same fit has the same three for any sum.
    """
    wanted: dict[int, Movement] = defaultdict(lambda: NOTHING)
    for sheet, x, y, right, up in terms:
        part = right, up, up * x - right * y
        reference = tape.references[tape.piece_of[sheet]]
        wanted[sheet] = _plus(wanted[sheet], part)
        wanted[reference] = _plus(wanted[reference], part, -1.0)
    for number in range(len(tape.blocks) - 1, -1, -1):
        yield from _block_effects(tape, number, wanted)


def _plus(one: Movement, two: Movement, times: float = 1.0) -> Movement:
    return one[0] + times * two[0], one[1] + times * two[1], one[2] + times * two[2]


def _block_effects(tape: Taped, number: int, wanted: dict[int, Movement]) -> Iterator[tuple[Fit, Movement]]:
    """What the fits of one block add; what they rest on is handed on to the sheets of earlier blocks."""
    block = tape.blocks[number]
    if not any(map(_counts, [wanted[sheet] for sheet in block.sheets if sheet in wanted])):
        return
    if block.laid is not None:
        whole = NOTHING
        for sheet in block.sheets:
            whole = _plus(whole, wanted.get(sheet, NOTHING))
        yield block.laid, _laid_effect(tape, block, number in tape.straight, whole, wanted)
    yield from _inner_effects(block, number in tape.inner_straight, wanted)


def _counts(part: Movement) -> bool:
    """False where what two points want of a sheet has cancelled out but for rounding."""
    return max(map(abs, part)) > ROUNDING


def _laid_effect(tape: Taped, block: Block, straight: bool, whole: Movement, wanted: dict[int, Movement]) -> Movement:
    fit = block.laid
    assert fit is not None
    distance, across, x, y = _about(fit)
    right, up, turn = whole[0], whole[1], whole[2] + whole[0] * y - whole[1] * x
    for (at_x, at_y, under, over), side in ((fit.first, -1.0), (fit.last, 1.0)):
        turned = side * turn * across[0] / distance, side * turn * across[1] / distance
        shift = right / 2 + turned[0], up / 2 + turned[1]
        wanted[over] = _plus(wanted[over], (*shift, shift[1] * at_x - shift[0] * at_y), -1.0)
        if straight:
            shift = right / 2, up / 2
        wanted[under] = _plus(wanted[under], (*shift, shift[1] * at_x - shift[0] * at_y))
    if straight:
        reference = tape.references[block.piece]
        wanted[reference] = _plus(wanted[reference], (0.0, 0.0, turn))
    return right / ROOT, up / ROOT, turn * ROOT / distance


def _inner_effects(block: Block, straight: bool, wanted: dict[int, Movement]) -> Iterator[tuple[Fit, Movement]]:
    """What the joins within a block add, from its last sheet to its first."""
    carried = NOTHING
    for sheet, fit in zip(reversed(block.sheets[1:]), reversed(block.inner), strict=True):
        right, up, turn = carried = _plus(carried, wanted.pop(sheet, NOTHING))
        distance, _, x, y = _about(fit)
        about = turn + right * y - up * x
        yield fit, (right / ROOT, up / ROOT, about * ROOT / distance)
        if straight:
            carried = right, up, up * x - right * y
    wanted.pop(block.sheets[0], None)


def _about(fit: Fit) -> tuple[float, tuple[float, float], float, float]:
    """The distance of the two marks (at least 1 mm), the direction across their line, and the middle between them."""
    (x0, y0, *_), (x1, y1, *_) = fit.first, fit.last
    distance = max(1.0, math.hypot(x1 - x0, y1 - y0))
    return distance, (-(y1 - y0) / distance, (x1 - x0) / distance), (x0 + x1) / 2, (y0 + y1) / 2
