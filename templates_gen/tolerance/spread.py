"""How far taping moves the points of a template: the errors of all registration marks, carried through to a point.

Every fit of two marks a distance d apart, each matched with the standard deviation σ on either axis, moves what is
laid on by σ/√2 and turns it by σ√2/d about the middle between the marks (propagation of independent errors, derived
here).  Movements are small, so they add up: the movement of a sheet is (a, b, t), which takes a point (x, y) to
(x + a − t·y, y + b + t·x).  A block's fit rests on the movements of the sheets under it and, with the opposite sign,
on those within itself.

Of a sheet that is held to a string only a part of the turn comes from its marks (tolerance/strung.py).

What is wanted is a sum of movements of few points.  Its variance is worked out backwards: from the points to every
fit that they rest on.  That takes a time proportional to the number of sheets for each sum, and no matrices.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from heapq import heappop, heappush

from templates_gen.base.adding import added
from templates_gen.base.geometry import Rect
from templates_gen.base.grid_index import Near
from templates_gen.tolerance.strung import FREE, ROOT, Pull, Taped, about
from templates_gen.tolerance.taping import Block, Fit

Movement = tuple[float, float, float]
"""Right, up, and the turn to the left: of a sheet, or how much a sum changes with each of them."""

Term = tuple[int, float, float, float, float]
"""A sheet's number, a point (x, y) on it, and the weights of the point's movement right and up in a sum."""

Effect = tuple[float, float, float, float]
"""Of a sum, how much of a fit is in it: to the right, upward, the marks' turn, the string's turn."""

NOTHING: Movement = (0.0, 0.0, 0.0)

ROUNDING = 1e-9
"""A weight that is no more than rounding leaves (mm, as places on a wall are below 1e5 mm).  Our own design."""


class Homes:
    """Which sheet a point is on."""

    def __init__(self, cells: Sequence[Rect]) -> None:
        self._cells = cells
        self._near = Near((cell, number) for number, cell in enumerate(self._cells))
        self._known: dict[tuple[float, float], int] = {}

    def at(self, x: float, y: float) -> int:
        """The number of the sheet that shows the point, or of the nearest one where none does."""
        known = self._known.get((x, y))
        if known is None:
            known = self._known[x, y] = self._found(x, y)
        return known

    def _found(self, x: float, y: float) -> int:
        point = Rect(x, y, x, y)
        around = (number for number in self._near.about(point) if self._cells[number].holds(point))
        found = next(around, None)
        return nearest(self._cells, x, y) if found is None else found


def nearest(cells: Sequence[Rect], x: float, y: float) -> int:
    """The number of the cell that lies nearest to a point."""
    point = Rect(x, y, x, y)
    return min(range(len(cells)), key=lambda number: cells[number].gap_to(point))


def variance(tape: Taped, terms: Iterable[Term]) -> float:
    """The variance of the weighted sum of the points' movements, for marks matched with an sd of 1 mm (mm²).

    The movements are those against the sheet that a spirit level sets.
    """
    return added(share for _, share in shares(tape, terms))


def shares(tape: Taped, terms: Iterable[Term]) -> Iterator[tuple[Fit, float]]:
    """The same by what it comes from: every fit with its part of the variance (mm²)."""
    for fit, effect in effects(tape, terms):
        yield fit, added(part * part for part in effect)


def effects(tape: Taped, terms: Iterable[Term]) -> Iterator[tuple[Fit, Effect]]:
    """How the sum of movements depends on every fit: its weights of independent errors with an sd of 1 (mm).

    They are the fit's shift to the right, its shift upward, its turn by the marks, and that by a string; the same fit
    has the same ones for any sum.
    """
    wanted: dict[int, Movement] = {}
    waiting = _Waiting(tape)
    for sheet, x, y, right, up in terms:
        part = right, up, up * x - right * y
        waiting.want(wanted, sheet, part)
        waiting.want(wanted, tape.references[tape.piece_of[sheet]], part, -1.0)
    for number in waiting.blocks():
        yield from _block_effects(tape, number, wanted, waiting)


class _Waiting:
    """The blocks of which something is wanted, the last first: a block hands on what it rests on to earlier ones."""

    def __init__(self, tape: Taped) -> None:
        self._block_of = tape.block_of
        self._heap: list[int] = []
        self._known: set[int] = set()

    def want(self, wanted: dict[int, Movement], sheet: int, part: Movement, times: float = 1.0) -> None:
        """More of a sheet's movement is wanted."""
        wanted[sheet] = _plus(wanted.get(sheet, NOTHING), part, times)
        number = self._block_of[sheet]
        if number not in self._known:
            self._known.add(number)
            heappush(self._heap, -number)

    def blocks(self) -> Iterator[int]:
        """Their numbers, for as long as there are any."""
        while self._heap:
            yield -heappop(self._heap)


def _plus(one: Movement, two: Movement, times: float = 1.0) -> Movement:
    return one[0] + times * two[0], one[1] + times * two[1], one[2] + times * two[2]


def _block_effects(
    tape: Taped, number: int, wanted: dict[int, Movement], waiting: _Waiting
) -> Iterator[tuple[Fit, Effect]]:
    """What the fits of one block add; what they rest on is handed on to the sheets of earlier blocks."""
    block = tape.blocks[number]
    if not any(max(map(abs, wanted[sheet])) > ROUNDING for sheet in block.sheets if sheet in wanted):
        return  # what two points want of these sheets has cancelled out
    if block.laid is not None:
        whole = NOTHING
        for sheet in block.sheets:
            if sheet in wanted:
                whole = _plus(whole, wanted[sheet])
        yield block.laid, _laid_effect(tape, block, tape.straight.get(number), whole, wanted, waiting)
    yield from _inner_effects(block, tape.inner_straight, wanted)


def _laid_effect(
    tape: Taped, block: Block, straight: tuple[int, Pull] | None, whole: Movement, wanted: dict[int, Movement],
    waiting: _Waiting,
) -> Effect:  # fmt: skip
    fit = block.laid
    assert fit is not None
    distance, across, x, y = about(fit)
    right, up, turn = whole[0], whole[1], whole[2] + whole[0] * y - whole[1] * x
    held, by_string = straight[1] if straight else FREE, 0.0
    if straight:
        # the string turns its own sheet, and so the block by the contrary of how that lies within it
        by_string = turn * held.weight
        waiting.want(wanted, straight[0], (0.0, 0.0, by_string), -1.0)
        waiting.want(wanted, tape.references[block.piece], (0.0, 0.0, by_string))
    by_marks = turn - by_string
    for (at_x, at_y, under, over), side in ((fit.first, -1.0), (fit.last, 1.0)):
        turned = side * by_marks * across[0] / distance, side * by_marks * across[1] / distance
        shift = right / 2 + turned[0], up / 2 + turned[1]
        moved = (*shift, shift[1] * at_x - shift[0] * at_y)
        waiting.want(wanted, over, moved, -1.0)
        waiting.want(wanted, under, moved)
    return right / ROOT, up / ROOT, by_marks * ROOT / distance, by_string * held.turn


def _inner_effects(
    block: Block, straight: Mapping[int, Pull], wanted: dict[int, Movement]
) -> Iterator[tuple[Fit, Effect]]:
    """What the joins within a block add, from its last sheet to its first."""
    carried = NOTHING
    for sheet, fit in zip(reversed(block.sheets[1:]), reversed(block.inner), strict=True):
        if carried is NOTHING and sheet not in wanted:  # nothing rests on it
            continue
        right, up, turn = carried = _plus(carried, wanted.pop(sheet, NOTHING))
        distance, _, x, y = about(fit)
        turning = turn + right * y - up * x
        held = straight.get(sheet, FREE)
        by_string = turning * held.weight
        yield fit, (right / ROOT, up / ROOT, (turning - by_string) * ROOT / distance, by_string * held.turn)
        carried = right, up, turn - by_string  # what the string turns counts from the block's first sheet
    wanted.pop(block.sheets[0], None)
