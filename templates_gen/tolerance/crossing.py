"""Where sheets that are not cut hold each other badly: joins with fewer than two pairs of slanting lines."""

from __future__ import annotations

from collections import Counter

from templates_gen.tiling.sheet import SheetPlan


def loose_joins(sheets: SheetPlan) -> int:
    """How many joins of sheets that are not cut have fewer than two pairs of lines, so that sheets can turn there."""
    if sheets.hides is None:
        return 0
    pairs = Counter(frozenset(mark.sheets) for mark in sheets.marks)
    return sum(pairs[frozenset((join.over, join.under))] < 2 for join in sheets.joins)
