"""The steps of taping, numbered: every block by itself, then every block laid on what is there already.

Sheets have their numbers in this order: the page that is printed first is taped first.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from templates_gen.base.record import Record, replace
from templates_gen.base.remembering import remembered
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


@remembered
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


def in_order_of_taping(sheets: SheetPlan) -> SheetPlan:
    """The same sheets in the order of taping (`blocks`), named by their numbers in it, from 1."""
    order = [at for block in blocks(sheets) for at in block.sheets]
    return named(sheets, order, [str(number) for number in range(1, len(order) + 1)])


def named(sheets: SheetPlan, order: Sequence[int], names: Sequence[str]) -> SheetPlan:
    """The same sheets in this order, by their places in the plan, and with these names in it."""
    name = {sheets.sheets[at].name: new for at, new in zip(order, names, strict=True)}
    return replace(
        sheets,
        sheets=tuple(replace(sheets.sheets[at], name=name[sheets.sheets[at].name]) for at in order),
        joins=tuple(replace(join, over=name[join.over], under=name[join.under]) for join in sheets.joins),
        marks=tuple(replace(mark, sheets=tuple(name[one] for one in mark.sheets)) for mark in sheets.marks),
    )
