"""The sheets numbered 1, 2, 3 … in the order of taping: the page that is printed first is taped first."""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.base.record import replace
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.taping import blocks


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
