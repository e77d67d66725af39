"""The worst of all neighbours, asked for again and again while sheets are searched for.

What does not come from joins is the same on any sheets of one piece that lie as these do, so it is worked out once.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from templates_gen.arranging.plan import Plan
from templates_gen.job.accuracy import NORMAL_95, string_share
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tiling.slanting import meeting_sd
from templates_gen.tolerance.corners import Part, measures
from templates_gen.tolerance.expected import looked_at, worst_error
from templates_gen.tolerance.neighbours import Neighbours
from templates_gen.tolerance.sources import Sources
from templates_gen.tolerance.spread import Homes, variance
from templates_gen.tolerance.strung import Taped, taped

Parts = tuple[Part, ...]


class _Asked(NamedTuple):
    """A pair's measures, the step first and then its gaps, with the variances of each without joins (mm²)."""

    measures: tuple[Parts, ...]
    fixed: tuple[float, ...]


class Worst:
    """The error of the worst neighbours of one plan, on any of its sheets."""

    def __init__(self, plan: Plan, pairs: Sequence[Neighbours]) -> None:
        self.plan, self.pairs = plan, pairs
        self._measures = [(what.step, *what.gaps) for what in map(measures, looked_at(plan, pairs))]
        self._known: dict[tuple[bool, bool], list[_Asked]] = {}

    def error(self, sheets: SheetPlan, enough: float = math.inf) -> float:
        """The largest error of these pairs (95 %, mm), or one that is larger than `enough`; 0 of none."""
        accuracy = self.plan.job.accuracy
        match = meeting_sd(accuracy, sheets.hides)
        tape = taped(sheets, self.plan.level_line, accuracy.string, string_share(accuracy, match))
        if len(tape.references) > 1:
            return worst_error(self.plan, sheets, self.pairs)
        homes, worst = Homes(sheets), 0.0
        asked = self._asked(sheets)
        for at, pair in enumerate(asked):
            error = _error(pair, tape, homes, match * match)
            worst = max(worst, error)
            if error > enough:  # it is likely to be the worst next time, too
                asked.insert(0, asked.pop(at))
                break
        return worst

    def _asked(self, sheets: SheetPlan) -> list[_Asked]:
        key = sheets.page.width > sheets.page.height, sheets.printer is not None
        if key not in self._known:
            sources = Sources(self.plan, sheets, sheets.printer is not None, alike=True)
            self._known[key] = [
                _Asked(parts, tuple(_without_joins(sources, one) for one in parts)) for parts in self._measures
            ]
        return self._known[key]


def _without_joins(sources: Sources, parts: Parts) -> float:
    variances = sources.measured_by(parts).variances
    return sum(of for source, of in variances.items() if source != "joins")


def _error(pair: _Asked, tape: Taped, homes: Homes, matched: float) -> float:
    step, *gaps = (
        fixed + matched * variance(tape, ((homes.at(p.x, p.y), p.x, p.y, p.right, p.up + p.tilt) for p in parts))
        for parts, fixed in zip(*pair, strict=True)
    )
    return NORMAL_95 * math.sqrt(step + max(gaps))
