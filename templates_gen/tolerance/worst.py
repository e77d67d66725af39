"""By how much neighbours err above a limit, asked for again and again while sheets are searched for.

It is what the expected error has (expected.py), worked out without names and marks.  What comes from drops and nails is
the same on any sheets, so it is worked out once; and so is what neighbours err that lie on sheets taped alike.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Sequence
from heapq import nlargest
from typing import Any, NamedTuple

from templates_gen.arranging.plan import Plan
from templates_gen.base.adding import added
from templates_gen.base.geometry import Rect
from templates_gen.job.accuracy import NORMAL_95, string_share
from templates_gen.tiling.registering import Point
from templates_gen.tiling.searching import Judged
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tiling.sketch import Sketch
from templates_gen.tolerance.corners import Measures, Part, measures
from templates_gen.tolerance.expected import looked_at
from templates_gen.tolerance.neighbours import Neighbours
from templates_gen.tolerance.sources import PRINTED, Sources
from templates_gen.tolerance.spread import Term, effects, nearest, shares
from templates_gen.tolerance.strung import Taped, about, taped_of
from templates_gen.tolerance.taping import Fit, Laying, linked

FINE, FINE_DIGITS = 1e-6, 6
"""mm, and decimals, that errors are told apart by, so that roundings decide nothing.  Our own design."""

WEAK = 3
"""Joins that are told to add most to an error.  Our own design, no source."""


class _Measure(NamedTuple):
    """A measure of two neighbours: places (x, y) with how much it changes as they move to the right and upward, and its
    variance by what does not come from paper (mm²)."""

    parts: tuple[tuple[float, float, float, float], ...]
    fixed: float

    @property
    def middle(self) -> Point:
        """Where it is: the middle of its places."""
        xs, ys, *_ = zip(*self.parts, strict=True)
        return added(xs) / len(xs), added(ys) / len(ys)


class _Pair(NamedTuple):
    """Two neighbours by their number: the measure of their step, those of their gaps, and all places of these."""

    number: int
    step: _Measure
    gaps: tuple[_Measure, ...]
    places: tuple[Point, ...]


class _Laid(NamedTuple):
    """Sheets as they are taped: their cells, which of them lie on their sides, and what place is on which."""

    tape: Taped
    cells: Sequence[Rect]
    lying: Sequence[bool]
    mixed: bool
    homes: dict[Point, int]


class Worst:
    """What neighbours of one plan err above a limit (mm), on sheets whose pages lie as `like` has them."""

    def __init__(self, plan: Plan, pairs: Sequence[Neighbours], like: SheetPlan, limit: float) -> None:
        self.limit, self.like = limit, like
        self._sources = Sources(plan, like)
        self._string = plan.job.accuracy.string
        self._corner = plan.group.x0, plan.group.y0
        self._level = plan.level_line - self._corner[1]
        self._pairs = [self._pair(*both) for both in enumerate(map(measures, looked_at(plan, pairs)))]
        self._places = sorted({place for pair in self._pairs for place in pair.places})
        self._held: dict[Rect, list[Point]] = {}
        self._likeness = Likeness()
        self._known: dict[tuple[Any, ...], float] = {}

    def excess(self, sketch: Sketch, enough: float = math.inf) -> Judged:
        """By how much the pairs together err above the limit (mm), or more than `enough`, and where the worst is."""
        joins = linked(sketch.joins)
        cells, strips = [cell.rect for cell in sketch.cells], [cell.strip for cell in sketch.cells]
        numbered = sketch.spine or (self.like.linked and bool(self.like.hides))
        lie = Laying(cells, strips, joins, None if sketch.spine else sketch.rows, numbered, self.like.firm)
        sources = self._sources
        tape = taped_of(lie, self._level, self._string, string_share(sources.accuracy, sources.match))
        lying = [cell.turned for cell in sketch.cells]
        laid = _Laid(tape, cells, lying, len(set(lying)) > 1, self._homes(cells))
        alike, start = self._likeness.of(tape, lying), tape.references[tape.piece_of[0]]
        corner = alike[start], cells[start].x0, cells[start].y0
        over, worst = 0.0, (0.0, -1)
        for at, pair in enumerate(self._pairs):
            key = pair.number, corner, *[alike[self._home(x, y, laid)] for x, y in pair.places]
            more = self._known.get(key)
            if more is None:
                more = self._known[key] = self._error(pair, laid) - self.limit
            if more > 0.0:
                over += round(more + FINE, FINE_DIGITS)
                worst = max(worst, (more, at))
            if over > enough:  # it is likely to err most the next time, too
                self._pairs.insert(0, self._pairs.pop(at))
                return Judged(over)
        return Judged(over, self._weak(self._pairs[worst[1]], laid) if over else ())

    def _error(self, pair: _Pair, laid: _Laid) -> float:
        """What 95 of 100 pairs like this err by at the most (mm)."""
        return NORMAL_95 * math.sqrt(
            self._variance(pair.step, laid) + max(self._variance(measure, laid) for measure in pair.gaps)
        )

    def _weak(self, pair: _Pair, laid: _Laid) -> tuple[Point, ...]:
        """Where a pair is, and where the joins are that add most to its error."""
        found: dict[Point, float] = defaultdict(float)
        for measure in (pair.step, *pair.gaps):
            terms = [(self._home(x, y, laid), x, y, right, up) for x, y, right, up in measure.parts]
            for fit, share in shares(laid.tape, terms):
                found[about(fit)[2:]] += share
        return pair.step.middle, *nlargest(WEAK, found, key=found.__getitem__)

    def _pair(self, number: int, what: Measures) -> _Pair:
        step, *gaps = (self._measure(parts) for parts in (what.step, *what.gaps))
        places = dict.fromkeys((x, y) for measure in (step, *gaps) for x, y, *_ in measure.parts)
        return _Pair(number, step, tuple(gaps), tuple(places))

    def _measure(self, parts: Iterable[Part]) -> _Measure:
        """A measure with what of it is the same on any sheets, its places as they are seen from the group's corner."""
        parts = tuple(parts)
        variances = self._sources.measured_by(parts).variances
        x, y = self._corner
        moved = tuple((p.x - x, p.y - y, p.right, p.up + p.tilt) for p in parts)
        return _Measure(moved, added(of for source, of in variances.items() if source not in (*PRINTED, "joins")))

    def _homes(self, cells: Sequence[Rect]) -> dict[Point, int]:
        """On which sheet every place of a measure is, or on none."""
        found: dict[Point, int] = {}
        for at, cell in enumerate(cells):
            held = self._held.get(cell)
            if held is None:
                held = self._held[cell] = [place for place in self._places if cell.has_point(*place)]
            for place in held:
                found.setdefault(place, at)
        return found

    def _home(self, x: float, y: float, laid: _Laid) -> int:
        sheet = laid.homes.get((x, y))
        return nearest(laid.cells, x, y) if sheet is None else sheet

    def _variance(self, measure: _Measure, laid: _Laid) -> float:
        tape, sources = laid.tape, self._sources
        cell = laid.cells[tape.references[tape.piece_of[0]]]
        terms: list[Term] = []
        printed = dict.fromkeys(PRINTED, 0.0)
        for x, y, right, up in measure.parts:
            sheet = self._home(x, y, laid)
            terms.append((sheet, x, y, right, up))
            for source, aside, above in sources.stretched(laid.lying[sheet], x - cell.x0, y - cell.y0):
                printed[source] += right * aside + up * above
        joins = 0.0
        for fit, effect in effects(tape, terms):
            joins += effect[0] ** 2 + effect[1] ** 2 + effect[2] ** 2 + effect[3] ** 2
            if laid.mixed:
                for source, weight in sources.unlike(fit, effect, laid.lying, (cell.x0, cell.y0)):
                    printed[source] += weight
        return measure.fixed + sources.match**2 * joins + added(of * of for of in printed.values())


Alike = tuple[int, int]
"""The number of a block that lies like this, and the place of a sheet in it."""


class Likeness:
    """What was seen of blocks so far, each time with the same number for the same.

    How far a sheet is off depends on its block, how that is laid on others, and how far those are off: nothing else.
    """

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
