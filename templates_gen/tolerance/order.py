"""The steps of taping, numbered: every block by itself, then every block laid on what is there already."""

from __future__ import annotations

from collections.abc import Mapping

from templates_gen.base.record import Record
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.taping import blocks

Step = tuple[int, tuple[str, ...]]
"""The number of a step, from 1, and the names of the sheets that it tapes into a block or lays as a block."""

Tuck = tuple[int, tuple[str, ...], tuple[str, ...]]
"""The number of a step, the sheets that it slides under a block already there, and the sheets of that over them."""


class Order(Record, frozen=True):
    """The steps in which blocks are `made`, those in which they are `laid`, and the step of every join.

    A join is known by the names of its upper and its lower sheet.  `begun` are the blocks on which others are laid
    first, one for each `piece` that hangs by itself.  `tucked` are sheets that are laid after what goes over them.
    `forward` says that blocks are laid as their rows (or columns) lie, none before one that is below (or left of) it.
    """

    made: tuple[Step, ...]
    laid: tuple[Step, ...]
    begun: tuple[tuple[str, ...], ...]
    joins: Mapping[tuple[str, str], int]
    tucked: tuple[Tuck, ...]
    forward: bool

    @property
    def pieces(self) -> int:
        return len(self.begun)


def taping_order(sheets: SheetPlan) -> Order:
    """The order of taping of a sheet plan."""
    every = blocks(sheets)
    names = [tuple(sheets.sheets[number].name for number in block.sheets) for block in every]
    makers = [at for at, run in enumerate(names) if len(run) > 1]
    layers = [at for at, block in enumerate(every) if block.laid is not None]
    made = {at: number for number, at in enumerate(makers, 1)}
    laid = {at: number for number, at in enumerate(layers, len(makers) + 1)}
    block_of = {name: at for at, run in enumerate(names) for name in run}
    joins = {}
    late: dict[tuple[int, int], set[str]] = {}
    for join in sheets.joins:
        one, two = sorted((block_of[join.over], block_of[join.under]))
        joins[join.over, join.under] = made[one] if one == two else laid[two]
        if block_of[join.over] < block_of[join.under]:
            late.setdefault((two, one), set()).update((join.under, join.over))
    strips = [sheets.sheets[block.sheets[0]].strip for block in every]
    return Order(
        made=tuple((made[at], names[at]) for at in makers),
        laid=tuple((laid[at], names[at]) for at in layers),
        begun=tuple(names[at] for at, block in enumerate(every) if block.laid is None),
        joins=joins,
        tucked=tuple(
            (laid[low], tuple(filter(met.__contains__, names[low])), tuple(filter(met.__contains__, names[high])))
            for (low, high), met in sorted(late.items())
        ),
        forward=strips == sorted(strips),
    )
