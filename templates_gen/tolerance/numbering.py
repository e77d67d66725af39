"""The sheets numbered 1, 2, 3 … in the order of taping: the page that is printed first is taped first."""

from __future__ import annotations

from templates_gen.base.record import replace
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.taping import blocks


def in_order_of_taping(sheets: SheetPlan) -> SheetPlan:
    """The same sheets in the order of taping (`blocks`), named by their numbers in it, from 1."""
    order = [at for block in blocks(sheets) for at in block.sheets]
    name = {sheets.sheets[at].name: str(number) for number, at in enumerate(order, 1)}
    return replace(
        sheets,
        sheets=tuple(replace(sheets.sheets[at], name=name[sheets.sheets[at].name]) for at in order),
        joins=tuple(replace(join, over=name[join.over], under=name[join.under]) for join in sheets.joins),
        marks=tuple(replace(mark, sheets=tuple(name[one] for one in mark.sheets)) for mark in sheets.marks),
    )
