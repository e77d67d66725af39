"""The expected error: how far neighbouring frames will stand off each other, before any paper is used.

It is about what people see: the facing corners of two neighbours (corners.py).  How they move against each other is
worked out from what their nails are off by (sources.py):
  - scale: the distance between them times the printer's share of error (one printer: the same on every sheet); of
    pieces that are not taped to each other, whose places are measured on the wall, what each has of it on its paper.
    Of a printer that was measured, how surely its profile is known, the lean too where its diagonals were measured;
  - paper: the same with the growth of paper by moisture;
  - joins: every registration mark matched with an error of its own, carried along the order of taping
    (tolerance/spread.py); of sheets that are not cut, every pair of slanting lines (tiling/slanting.py);
  - nailing and drops: each nail and each drop with an error of its own, the mean of both where a frame has two;
  - tilt: what the two nails and drops of one frame are off by against each other, over their distance;
  - placing: where the two hang on pieces of paper that are not taped to each other.
All are independent, with the standard deviations of `Accuracy`, and add up by their squares.  A 95 % error of one
measure is 1.96 standard deviations (normal distribution).  What is said of all neighbours at once, step and gap, is
larger, and holds for all of them together in 95 % of cases: simulated with counted draws (joint.py).  Not in it: frames
that are not square, hangers that shift, how exactly a frame on one nail is levelled, walls that are not flat, the lean
of a printer whose diagonals were not measured, and that measured diagonals find the worst joins.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.adding import added
from templates_gen.base.record import Record
from templates_gen.job.accuracy import NORMAL_95, scale_sd, seen_step
from templates_gen.tiling.large_pages import comes_off_a_roll
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.corners import base_of, measures
from templates_gen.tolerance.joint import joint_factor
from templates_gen.tolerance.neighbours import Neighbours, neighbours
from templates_gen.tolerance.sources import GROUPS, Measured, Sources, loose_joins

MOST_PAIRS = 40
"""Pairs that are worked out; of more, as many spread evenly over all by their distance from the middle, the farthest
always, so that the time stays proportional to the number of sheets.  Our own design, no source."""

Variances = dict[str, float]


class PairError(Record, frozen=True):
    """What to expect of two neighbours, each figure by itself (95 %, mm).

    `step` is how far the edge of one stands off its neighbour's: the top edges of frames beside each other, the sides
    of frames above each other.  `gap_error` is how far their gap is off where it is off most, `seen` the step that an
    eye sees at this gap.  `by_step` and `by_gap` are the variances of both (mm²) by source.  `tilting` is the frame
    that tilts more by its nails and drops, None where neither does, and `tilt` how far: an sd in radians.
    """

    pair: Neighbours
    by_step: Variances
    by_gap: Variances
    tilting: Hung | None
    tilt: float

    @property
    def step(self) -> float:
        return error_95(self.by_step)

    @property
    def gap_error(self) -> float:
        return error_95(self.by_gap)

    @property
    def error(self) -> float:
        return math.hypot(self.step, self.gap_error)

    @property
    def untilted(self) -> float:
        """The error without what comes from tilt."""
        both = (self.by_step, self.by_gap)
        left = ({source: of for source, of in by.items() if source not in GROUPS["tilt"]} for by in both)
        return math.hypot(*map(error_95, left))

    @property
    def seen(self) -> float:
        return seen_step(self.pair.gap)

    @property
    def base(self) -> float:
        """The distance of the two fixings of the frame that tilts (mm); 0 where none does."""
        return (self.tilting and base_of(self.tilting)) or 0.0


class Expected(Record, frozen=True):
    """The expected error of a template: of all neighbours at once, of its worst and its typical pair, and of its ends.

    In 95 of 100 cases no neighbours are more than `step` mm off one line and no gap is more than `gap_error` mm off,
    all of them together.  `worst` has the largest error, `typical` the middle one of all pairs; `ends` are the two
    frames farthest apart, with what to expect of them.  `scales` are the printer's sds as shares, across and up;
    `bought_scales` what they are with a printer that was not measured, `measured_scales` with one that was,
    `shop_scales` from a print shop.  `kind` is the paper's, `pieces` and `joins` are the numbers of pieces that hang by
    themselves and of joins.  `match` is the sd (mm) to which marks are brought together and `cut_match` what it is
    where sheets are cut; `loose` are the joins of sheets that are not cut and have fewer than two pairs of slanting
    lines.  `worse_than_none` is True when the printer's profile is less sure than no profile; `shop`
    where one page of a print shop comes off a usual roll.
    """

    step: float
    gap_error: float
    worst: PairError
    typical: PairError
    ends: PairError
    pairs: int
    scales: tuple[float, float]
    bought_scales: tuple[float, float]
    measured_scales: tuple[float, float]
    shop_scales: tuple[float, float]
    kind: str
    pieces: int
    joins: int
    match: float
    cut_match: float
    loose: int
    calibrated: bool
    worse_than_none: bool
    shop: bool


def error_95(variances: Mapping[str, float]) -> float:
    """The 95 % error (mm) of independent errors with these variances."""
    return NORMAL_95 * math.sqrt(added(variances.values()))


def expected_error(plan: Plan, sheets: SheetPlan) -> Expected | None:
    """What to expect of a template; None for a single frame.

    Takes a time proportional to the number of sheets, and to that of the pairs up to `MOST_PAIRS`.
    """
    if len(plan.frames) < 2:
        return None
    sources = Sources(plan, sheets)
    pairs = neighbours(plan)
    ends = _Pair(_ends(plan), sources)
    found = [_Pair(pair, sources) for pair in looked_at(plan, pairs)] or [ends]
    step, gap = _together(found, len(pairs))
    found.sort(key=lambda item: item.error.error)
    shop = scale_sd(plan.job.accuracy, wide=True)
    return Expected(
        step=step, gap_error=gap, worst=found[-1].error, typical=found[(len(found) - 1) // 2].error, ends=ends.error,
        pairs=len(pairs), scales=sources.scales, bought_scales=sources.bought, measured_scales=sources.measured,
        shop_scales=(shop, shop), kind=sheets.paper.kind, pieces=len(sources.tape.references),
        joins=len(sheets.joins), match=sources.match, cut_match=sources.accuracy.match, loose=loose_joins(sheets),
        calibrated=sheets.printer is not None, worse_than_none=sources.worse_than_none,
        shop=comes_off_a_roll(plan),
    )  # fmt: skip


def worst_error(plan: Plan, sheets: SheetPlan, pairs: Sequence[Neighbours]) -> float:
    """The largest error of these pairs (95 %, mm), of which no more than `MOST_PAIRS` are looked at; 0 of none."""
    sources = Sources(plan, sheets)
    return max((_Pair(pair, sources).error.error for pair in looked_at(plan, pairs)), default=0.0)


def farthest_off(plan: Plan, sheets: SheetPlan) -> float | None:
    """The worst error of `expected_error` alone (95 %, mm), which takes half the time; None for a single frame."""
    return worst_error(plan, sheets, neighbours(plan) or [_ends(plan)]) if len(plan.frames) > 1 else None


class _Pair:
    """A pair with its measures, and what to expect of it."""

    def __init__(self, pair: Neighbours, sources: Sources) -> None:
        what = measures(pair)
        self.step: Measured = sources.measured_by(what.step)
        self.gaps: list[Measured] = [sources.measured_by(gap) for gap in what.gaps]
        wider = max(self.gaps, key=lambda gap: gap.sd)
        tilting = max((pair.one, pair.two), key=sources.tilt)
        tilt = sources.tilt(tilting)
        self.error = PairError(pair, self.step.variances, wider.variances, tilting if tilt else None, tilt)


def _together(found: Sequence[_Pair], every: int) -> tuple[float, float]:
    """Within what steps and gaps all of these pairs keep at once, as those of `every` pairs do that they stand for.

    Both limits are in proportion to the standard deviations of the worst step and of the worst gap.
    """
    steps, gaps = [pair.step for pair in found], [gap for pair in found for gap in pair.gaps]
    step, gap = max(one.sd for one in steps), max(one.sd for one in gaps)
    limits = [step] * len(steps) + [gap] * len(gaps)
    more = max(0.0, every / len(found) - 1.0)
    factor = joint_factor([one.weights for one in (*steps, *gaps)], limits, more)
    return factor * step, factor * gap


def looked_at(plan: Plan, pairs: Sequence[Neighbours]) -> Sequence[Neighbours]:
    """Those of the pairs that are worked out (`MOST_PAIRS`)."""
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


def sources_95(pair: PairError) -> Iterator[tuple[str, float]]:
    """What each source alone would make the error of this pair (95 %, mm); their squares add up to it."""
    for name, sources in GROUPS.items():
        yield (
            name,
            NORMAL_95 * math.sqrt(added(by[source] for by in (pair.by_step, pair.by_gap) for source in sources)),
        )
