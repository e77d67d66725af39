"""Which sheets lie alike on two tapings, so that what was worked out for one holds for the other.

How far a sheet is off depends on its block, how that is laid on others, and how far those are off: nothing else.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from templates_gen.tolerance.strung import Taped
from templates_gen.tolerance.taping import Fit

Alike = tuple[int, int]
"""The number of a block that lies like this, and the place of a sheet in it."""


class Likeness:
    """What was seen of blocks so far, each time with the same number for the same."""

    def __init__(self) -> None:
        self._known: dict[tuple[Any, ...], int] = {}

    def of(self, tape: Taped, lying: Sequence[bool]) -> dict[int, Alike]:
        """For every sheet by its number what is the same on all tapings where it is off by the same errors.

        `lying` says which sheets' pages lie on their sides.
        """
        found: dict[int, Alike] = {}
        for number, block in enumerate(tape.blocks):
            pulls = tuple([tape.inner_straight.get(sheet) for sheet in block.sheets]) if tape.inner_straight else ()
            inner = tuple([_points(fit) for fit in block.inner])
            turned = tuple([lying[sheet] for sheet in block.sheets])
            key = block.piece, inner, turned, pulls, *_laid(tape, number, found)
            same = self._known.setdefault(key, len(self._known))
            for place, sheet in enumerate(block.sheets):
                found[sheet] = same, place
        return found


def _laid(tape: Taped, number: int, found: dict[int, Alike]) -> tuple[Any, ...]:
    """How a block is laid on others."""
    block = tape.blocks[number]
    if block.laid is None:
        return ()
    (*_, under, over), (*_, last_under, last_over) = block.laid.first, block.laid.last
    place = block.sheets.index
    held = tape.straight.get(number)
    string = (place(held[0]), held[1]) if held else None
    return _points(block.laid), found[under], found[last_under], place(over), place(last_over), string


def _points(fit: Fit) -> tuple[float, ...]:
    return *fit.first[:2], *fit.last[:2]
