"""The expected error: how far neighbouring frames will stand off each other, before any paper is used.

A frame hangs from its nails.  Against another frame's, their place on the wall is off by
  - scale: the distance between them times the printer's share of error (one printer: the same on every sheet); of
    pieces that are not taped to each other, whose places are measured on the wall, what each has of it on its paper;
  - paper: the same with the growth of paper by moisture;
  - joins: every register mark matched with an error of its own, carried along the order of taping
    (sheets/spread.py); of sheets that are not cut, every pair of slanting lines (crossing.py);
  - nailing and drops: each nail and each drop with an error of its own, the mean of both where a frame has two;
  - placing: where the two hang on pieces of paper that are not taped to each other.
All are independent, with the standard deviations of `Accuracy`, and add up by their squares.  A 95 % error is 1.96
standard deviations (normal distribution).  Not in it: frames that are not square, hangers that shift, walls that are
not flat, and that measured diagonals find the worst joins.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from templates_gen.accuracy import Accuracy, measured_scale_sd, moisture_sd, scale_sd
from templates_gen.exactness.crossing import crossing_match, loose_joins
from templates_gen.exactness.neighbours import Neighbours, neighbours
from templates_gen.planning import Hung, Plan
from templates_gen.record import Record
from templates_gen.sheets.rules import rules
from templates_gen.sheets.sheet import SheetPlan
from templates_gen.sheets.spread import Homes, Taped, Term, taped, variance

NORMAL_95 = 1.96
"""95 % of a normal distribution lie within this many standard deviations (two-sided quantile)."""

MOST_PAIRS = 40
"""Pairs that are worked out; of more, as many spread evenly over all by their distance from the middle, the farthest
always, so that the time stays proportional to the number of sheets.  Our own design, no source."""

SEEN_ANGLE = 0.6
"""Degrees off level or plumb that people recognise on average ("Recognition of stimulus orientation", Vision Research
30(10), 1990, 1429-37).  For edges apart it is a working threshold: gap · tan 0.6°, a model, not a measured value."""

SOURCES = ("scale", "paper", "joins", "drops", "nailing", "placing")

Variances = dict[str, float]


class Spots(Record, frozen=True):
    """Two frames' nails against each other: variances (mm²) by source, to the side and upward."""

    across: Variances
    up: Variances


class PairError(Record, frozen=True):
    """What to expect of two neighbours (95 %, mm).

    `step` is how far the edge of one stands off its neighbour's: the top edges of frames beside each other, the sides
    of frames above each other.  `gap_error` is how far their gap is off, `seen` the step that an eye sees at this gap.
    """

    pair: Neighbours
    spots: Spots

    @property
    def step(self) -> float:
        return error_95(self.spots.up if self.pair.beside else self.spots.across)

    @property
    def gap_error(self) -> float:
        return error_95(self.spots.across if self.pair.beside else self.spots.up)

    @property
    def error(self) -> float:
        return math.hypot(self.step, self.gap_error)

    @property
    def seen(self) -> float:
        return self.pair.gap * math.tan(math.radians(SEEN_ANGLE))


class Expected(Record, frozen=True):
    """The expected error of a template: of its worst and its typical pair of neighbours, and from end to end.

    `worst` has the largest error, `typical` the middle one of all pairs; `ends` are the two frames farthest apart,
    with what to expect of them.  `scales` are the printer's sds as shares, across and up; `measured_scales` what they
    are with the printer measured, `shop_scales` from a print shop.  `kind` is the paper's, `pieces` and `joins` are the
    numbers of pieces that hang by themselves and of joins.  `match` is the sd (mm) to which marks are brought together
    and `cut_match` what it is where sheets are cut; `loose` are the joins of sheets that are not cut and have fewer
    than two pairs of slanting lines.
    """

    worst: PairError
    typical: PairError
    ends: PairError
    pairs: int
    scales: tuple[float, float]
    measured_scales: tuple[float, float]
    shop_scales: tuple[float, float]
    kind: str
    pieces: int
    joins: int
    match: float
    cut_match: float
    loose: int
    calibrated: bool


def error_95(variances: Mapping[Any, float]) -> float:
    """The 95 % error (mm) of independent errors with these variances."""
    return NORMAL_95 * math.sqrt(sum(variances.values()))


def expected_error(plan: Plan, sheets: SheetPlan, calibrated: bool | None = None) -> Expected | None:
    """What to expect of a template; None for a single frame.

    `calibrated` says whether the printer has been measured; else it is what the sheets were planned for.

    Takes a time proportional to the number of sheets, and to that of the pairs up to `MOST_PAIRS`.
    """
    if len(plan.frames) < 2:
        return None
    calibrated = sheets.printer is not None if calibrated is None else calibrated
    model = _Model(plan, sheets, calibrated)
    pairs = neighbours(plan)
    found = sorted((model.pair(pair) for pair in _some(plan, pairs)), key=lambda item: item.error)
    ends = model.pair(_ends(plan))
    if not found:
        found = [ends]
    shop = scale_sd(plan.job.accuracy, wide=True)
    return Expected(
        worst=found[-1], typical=found[(len(found) - 1) // 2], ends=ends, pairs=len(pairs), scales=model.scales,
        measured_scales=model.measured, shop_scales=(shop, shop), kind=sheets.paper.kind,
        pieces=len(model.tape.references), joins=len(sheets.joins), match=model.match,
        cut_match=model.accuracy.match, loose=loose_joins(sheets), calibrated=calibrated,
    )  # fmt: skip


def _some(plan: Plan, pairs: Sequence[Neighbours]) -> Sequence[Neighbours]:
    if len(pairs) <= MOST_PAIRS:
        return pairs
    x, y = plan.group.cx, plan.level_line
    far = sorted(pairs, key=lambda pair: -math.dist((pair.one.rect.cx, pair.one.rect.cy), (x, y)))
    return [far[number * (len(far) - 1) // (MOST_PAIRS - 1)] for number in range(MOST_PAIRS)]


def _ends(plan: Plan) -> Neighbours:
    """The two frames at the ends of the group, left and right or, where it is higher than wide, top and bottom."""
    wide = plan.group.width >= plan.group.height
    order = sorted(plan.frames, key=lambda hung: hung.rect.cx if wide else hung.rect.cy)
    one, two = order[0], order[-1]
    return Neighbours(one, two, wide, max(0.0, one.rect.gap_to(two.rect)))


class _Model:
    """The numbers that every pair of one template is worked out from."""

    def __init__(self, plan: Plan, sheets: SheetPlan, calibrated: bool) -> None:
        self.accuracy: Accuracy = plan.job.accuracy
        level, plumb = rules(sheets.page, sheets.paper.overlap, plan.job.unit)
        self.measured = measured_scale_sd(self.accuracy, level.length), measured_scale_sd(self.accuracy, plumb.length)
        as_bought = scale_sd(self.accuracy, wide=sheets.paper.kind != "sheets")
        self.scales = self.measured if calibrated else (as_bought, as_bought)
        upright = sheets.page.height >= sheets.page.width  # most paper's grain runs along its long side: from memory
        self.moistures = moisture_sd(self.accuracy, not upright), moisture_sd(self.accuracy, upright)
        self.match = crossing_match(self.accuracy, sheets.hides) if sheets.hides else self.accuracy.match
        self.tape: Taped = taped(sheets, plan.level_line, self.accuracy.string)
        self.homes = Homes(sheets)
        self.sheets = sheets

    def pair(self, pair: Neighbours) -> PairError:
        """What to expect of two frames."""
        one, two = _points(pair.one), _points(pair.two)
        weighed = [(*point, -1 / len(one)) for point in one] + [(*point, 1 / len(two)) for point in two]
        homes = [(self.homes.at(x, y), x, y, weight) for x, y, weight in weighed]
        share = 1 / len(one) + 1 / len(two)
        return PairError(pair, Spots(self._variances(0, homes, share), self._variances(1, homes, share)))

    def _variances(self, axis: int, homes: Sequence[tuple[int, float, float, float]], share: float) -> Variances:
        """By source, of a weighed sum of points on their sheets; a `share` of what each nail and drop is off."""
        sds, tape = self.accuracy, self.tape
        terms: list[Term] = [(sheet, x, y, weight * (1 - axis), weight * axis) for sheet, x, y, weight in homes]
        corners = {tape.piece_of[sheet]: self._corner(sheet)[axis] for sheet, *_ in homes}
        apart = sum(home[3] * (home[1 + axis] - corners[tape.piece_of[home[0]]]) for home in homes)
        return {
            "scale": (self.scales[axis] * apart) ** 2,
            "paper": (self.moistures[axis] * apart) ** 2,
            "joins": self.match**2 * variance(tape, terms),
            "drops": sds.drop**2 * share * axis,
            "nailing": sds.nailing**2 * share,
            "placing": 2 * sds.placing**2 * (len(corners) > 1),
        }

    def _corner(self, sheet: int) -> tuple[float, float]:
        """By the corner of which sheet the piece that this one is part of is placed: its lower left."""
        cell = self.sheets.sheets[self.tape.references[self.tape.piece_of[sheet]]].cell
        return cell.x0, cell.y0


def _points(hung: Hung) -> list[tuple[float, float]]:
    """Where the frame's nails go; the tops of its drop rules where no drop is known yet."""
    if hung.nails:
        return [(nail.x, nail.y) for nail in hung.nails]
    return [(bearing.x, hung.rect.y1) for bearing in hung.bearings]


def sources_95(pair: PairError) -> Iterator[tuple[str, float]]:
    """What each source alone would make the error of this pair (95 %, mm); their squares add up to it."""
    for source in SOURCES:
        yield source, NORMAL_95 * math.sqrt(pair.spots.across[source] + pair.spots.up[source])
