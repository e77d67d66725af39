"""What two frames' corners are off by, source by source: a printer's scale, paper, joins, nails, drops, placing.

A measure between corners is a weighed sum of nails' movements (`Part`).  Here it becomes a weighed sum of independent
errors, each with a standard deviation of 1, so that measures can be compared and drawn together.
"""

from __future__ import annotations

import math
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.adding import added
from templates_gen.base.record import Record
from templates_gen.job.accuracy import Accuracy, measured_scale_sd, moisture_sd, scale_sd, string_share
from templates_gen.printer.correction import doubt_as_it_lies
from templates_gen.printer.profile import worse_than_none
from templates_gen.tiling.rulers import rulers
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tiling.slanting import meeting_sd
from templates_gen.tolerance.corners import Part, base_of
from templates_gen.tolerance.spread import Effect, Homes, Term, effects
from templates_gen.tolerance.strung import ROOT, Taped, about, taped
from templates_gen.tolerance.taping import Fit

Error = tuple[Any, ...]
"""One independent error; its source comes first."""

NEGLIGIBLE = 1e-9
"""mm.  What changes a measure by less is rounding.  Our own design."""

SCALES = ("scale across", "scale up")

PRINTED = (*SCALES, "lean", "paper")
"""The sources that stretch what a sheet shows."""

SOURCES = (*PRINTED, "joins", "drops", "nailing", "tilting drops", "tilting nails", "placing")
"""Every source by itself; `tilting` is what the two nails and drops of one frame are off by against each other."""

GROUPS = {
    "scale": (*SCALES, "lean"), "paper": ("paper",), "joins": ("joins",), "drops": ("drops",), "nailing": ("nailing",),
    "tilt": ("tilting drops", "tilting nails"), "placing": ("placing",),
}  # fmt: skip
"""The sources as they are told."""


class Measured(Record, frozen=True):
    """A measure as a sum of errors (mm for one sd of each), and its variances (mm²) by source."""

    weights: dict[Error, float]
    variances: dict[str, float]

    @property
    def sd(self) -> float:
        return math.sqrt(added(self.variances.values()))


class Sources:
    """The standard deviations of one template, and how its sheets are taped."""

    def __init__(self, plan: Plan, sheets: SheetPlan) -> None:
        self.accuracy: Accuracy = plan.job.accuracy
        self.sheets = sheets
        level, plumb = rulers(sheets.page, sheets.paper.overlap, plan.job.unit)
        self.measured = measured_scale_sd(self.accuracy, level.length), measured_scale_sd(self.accuracy, plumb.length)
        bought = scale_sd(self.accuracy, wide=sheets.paper.kind != "sheets")
        self.bought = bought, bought
        self.worse_than_none = sheets.printer is not None and worse_than_none(sheets.printer, bought)
        self.scales, self.lean = self.bought, 0.0
        if sheets.printer is not None:
            *scales, self.lean = doubt_as_it_lies(sheets.printer, sheets.page.width > sheets.page.height)
            self.scales = scales[0], scales[1]
        upright = sheets.page.height >= sheets.page.width  # most paper's grain runs along its long side: from memory
        self.moistures = moisture_sd(self.accuracy, not upright), moisture_sd(self.accuracy, upright)
        self._lying = [sheet.page is not sheets.page and sheet.page != sheets.page for sheet in sheets.sheets]
        self._both_ways = len(set(self._lying)) > 1
        self.match = meeting_sd(self.accuracy, sheets.hides)
        reading = string_share(self.accuracy, self.match)
        self.tape: Taped = taped(sheets, plan.level_line, self.accuracy.string, reading)
        self._homes = Homes([sheet.cell for sheet in sheets.sheets])

    def tilt(self, hung: Hung) -> float:
        """The sd (radians) of a frame's tilt by its nails and drops; 0 where it is levelled on one nail."""
        base = base_of(hung)
        return math.sqrt(2) * math.hypot(self.accuracy.nailing, self.accuracy.drop) / base if base else 0.0

    def measured_by(self, parts: Iterable[Part]) -> Measured:
        """A measure between corners as a sum of errors."""
        parts, weights = list(parts), defaultdict[Error, float](float)
        self._print(parts, weights)
        for error, weight in self._driven(parts):
            weights[error] += weight
        kept = {error: weight for error, weight in weights.items() if abs(weight) > NEGLIGIBLE}
        variances = dict.fromkeys(SOURCES, 0.0)
        for error, weight in kept.items():
            variances[error[0]] += weight * weight
        for source, sd in (("drops", self.accuracy.drop), ("nailing", self.accuracy.nailing)):
            # the two nails of a frame tilt it one against the other, so what tilts and what lifts it are independent
            tilting = added((part.tilt * sd) ** 2 for part in parts)
            variances[source] -= tilting
            variances["tilting drops" if source == "drops" else "tilting nails"] += tilting
        return Measured(kept, variances)

    def _print(self, parts: Iterable[Part], weights: dict[Error, float]) -> None:
        """Add to the weights what comes from the paper: its scale, its growth, its joins and its places."""
        terms: list[Term] = []
        for part in parts:
            sheet, up = self._homes.at(part.x, part.y), part.up + part.tilt
            terms.append((sheet, part.x, part.y, part.right, up))
            piece = self.tape.piece_of[sheet]
            x, y = self._corner(piece)
            for source, right, above in self.stretched(self._lying[sheet], part.x - x, part.y - y):
                weights[source,] += part.right * right + up * above
            if len(self.tape.references) > 1:
                weights["placing", piece, "across"] += self.accuracy.placing * part.right
                weights["placing", piece, "up"] += self.accuracy.placing * up
        for fit, effect in effects(self.tape, terms):
            for way, weight in enumerate(effect):
                if weight:  # without a string nothing comes of that
                    weights["joins", id(fit), way] += self.match * weight
            if self._both_ways:
                corner = self._corner(self.tape.piece_of[fit.first[2]])
                for source, weight in self.unlike(fit, effect, self._lying, corner):
                    weights[source,] += weight

    def stretched(self, lying: bool, x: float, y: float) -> Iterator[tuple[str, float, float]]:
        """How far to the right and up a point this far from its piece's corner is printed, source by source.

        A page that lies the other way has the printer's scales, its grain and its lean the other way round.
        """
        one, two = (1, 0) if lying else (0, 1)
        yield SCALES[one], self.scales[one] * x, 0.0
        yield SCALES[two], 0.0, self.scales[two] * y
        yield "lean", self.lean * (-y if lying else y), 0.0
        yield "paper", self.moistures[one] * x, self.moistures[two] * y

    def unlike(
        self, fit: Fit, effect: Effect, lying: Sequence[bool], corner: tuple[float, float]
    ) -> Iterator[tuple[str, float]]:
        """What comes of two marks that are not as far apart on pages that lie one way and the other, source by source.

        `lying` says which sheets do, `corner` by what corner their piece is placed.
        """
        for mark, sign in ((fit.first, -1.0), (fit.last, 1.0)):
            x, y, *both = mark
            if lying[both[0]] == lying[both[1]]:
                continue
            side, (_, across, *_) = sign * effect[2] / ROOT, about(fit)
            right, up = effect[0] * ROOT / 2 + side * across[0], effect[1] * ROOT / 2 + side * across[1]
            for sheet, times in zip(both, (1.0, -1.0), strict=True):
                for source, aside, above in self.stretched(lying[sheet], x - corner[0], y - corner[1]):
                    yield source, times * (right * aside + up * above)

    def _driven(self, parts: Iterable[Part]) -> Iterator[tuple[Error, float]]:
        """What comes from measuring drops and driving nails."""
        for part in parts:
            up = part.up + part.tilt
            yield ("nailing", part.frame, part.number, "across"), self.accuracy.nailing * part.right
            yield ("nailing", part.frame, part.number, "up"), self.accuracy.nailing * up
            yield ("drops", part.frame, part.number), self.accuracy.drop * up

    def _corner(self, piece: int) -> tuple[float, float]:
        """By the corner of which sheet a piece is placed: its lower left."""
        cell = self.sheets.sheets[self.tape.references[piece]].cell
        return cell.x0, cell.y0


def loose_joins(sheets: SheetPlan) -> int:
    """How many joins of sheets that are not cut have fewer than two pairs of lines, so that sheets can turn there."""
    if sheets.hides is None:
        return 0
    pairs = Counter(frozenset(mark.sheets) for mark in sheets.marks)
    return sum(pairs[frozenset((join.over, join.under))] < 2 for join in sheets.joins)
