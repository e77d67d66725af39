"""The quickest sheets that hold their frames nearly as exactly as strips of sheets with every edge do.

The error of a plan is worked out elsewhere and asked for here as a number (`Held`); what it may be is a little more
than that of the strips.  Where the search finds nothing that holds it, sheets are taken from the strips for as long as
what is left does.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.base.grid_index import Near
from templates_gen.base.record import replace
from templates_gen.tiling.cells import CellPlan
from templates_gen.tiling.demand import Demand, not_hidden
from templates_gen.tiling.joins import JOIN_MIN
from templates_gen.tiling.laid import Laid
from templates_gen.tiling.linked import asked_of
from templates_gen.tiling.parting import lighter
from templates_gen.tiling.patches import Ground, Wanted
from templates_gen.tiling.searching import Found, quicker
from templates_gen.tiling.sheet import Given, finished
from templates_gen.tiling.sketch import Held, Judge, Weaver, seen, sizes
from templates_gen.tiling.spine import Asked

STEPS_A_SHEET, OF_A_SPINE, STEPS = 14, 2, 4800
"""Steps of a search for every sheet of the strips that it begins with, how many times that for a sheet of a spine, of
which there are fewer, and how many at the most: one or two seconds for twelve frames.  Our own design, no source."""

LEAST_STEPS = 120
"""Steps of a search at the least: the fewest sheets, too, are laid anew often.  Our own design, no source."""

MOST_LOOKED_AT = 1_000_000
"""Sheets that are looked at in all steps of a search, so that there are fewer steps for very large walls.  Our own
design, no source."""

MOST_SHEETS = 400
"""Sheets that a search begins with at the most: every step takes longer with more.  Larger walls keep their strips, or
their spine.  Our own design, no source."""

FEW, OF_FEW, GROWTH = 12, 400, 6
"""Frames that are few, and the steps of a search at the most for no more than these: about two seconds, also where they
hang far apart and take many sheets.  Of more frames it is as many more as this power of these, so that from 19 on none
are left out.  Our own trials."""

PATIENCE = 200
"""Steps in which a search from a spine of few frames has to come to hold the limit, or is given up for one from the
strips: of 15 that came to it 14 did so within a third.  Larger walls are not given up; the two that were tried took
more minutes from the strips.  Our own trials."""

MOST_ROUNDS, STRICT = 6, 0.6
"""Searches one after the other while none has found what is good enough, begun for as long as all together are no
longer than the longest may be; and the share of the first from which those begin that go on from what was found: half
as long, and stricter with what errs too much.  Where that found nothing better, the next begins anew.  Our own design,
no source."""

MUCH = 0.05
"""Share of its time that what was found has to be able to do without at the end for another search to follow: what
comes to hold the limit at last was not searched for less since.  Our own trials."""

SHORT, LITTLE = 0.1, 0.01
"""Short joins for every sheet, at the most, of what is good enough: strips have many, and a search that strays from
what holds the limit leaves them there.  And the share of the time of what was found that a search has to save for
another to follow where there are more.  Our own design, no source."""

WORTH = 60.0
"""Seconds that searched sheets have to save, for a spine with branches reads at once.  Our own design, no source."""


def quickest(
    given: Given, need: Demand, held: Held, limit: float, spine: CellPlan | None, strips: CellPlan
) -> CellPlan:
    """The quickest cells for what is asked of linked paper, with no error above `limit` (mm).

    `spine` is a plan to begin with, `strips` is the one that holds every mark; it is what is left where nothing else
    holds the limit.
    """
    asked = asked_of(given.plan, need, given.clear)
    ground = Ground(_wanted(given, asked, line_bits(asked)))
    judge = held.judge(finished(given, _as_laid(strips, given)), limit)
    patience = PATIENCE if len(given.plan.frames) <= FEW else STEPS
    found = _from_spine(ground, Weaver(given, judge, asked, rows=False), spine, patience) if spine else None
    if found is None:
        ground = ground.of_what_is_held([seen(given, cell.rect) for cell in strips.cells])
        found = _from_strips(ground, given, judge, asked, strips)
    return found or _as_laid(strips, given)


def less_than_strips(given: Given, need: Demand, held: Held, limit: float, strips: CellPlan) -> CellPlan | None:
    """The quickest cells for what is asked of paper with every mark, with no error above `limit` (mm); None where no
    search from these `strips` holds that."""
    asked = asked_of(given.plan, replace(need, divisible=()), given.clear)
    seen_whole = not_hidden(need.divisible, given.hides)
    items = marks_bits(seen_whole, [cell.rect for cell in strips.cells], given.paper.overlap)
    judge = held.judge(finished(given, _as_laid(strips, given)), limit)
    return _from_strips(Ground(_wanted(given, asked, items)), given, judge, asked, strips)


def _from_spine(ground: Ground, weaver: Weaver, spine: CellPlan, patience: int) -> CellPlan | None:
    """What the search finds from the spine, if it holds the limit; the spine, if that is hardly slower."""
    start = _found(ground, weaver, spine)
    if start is None:
        return None
    best = _searched(start, weaver, OF_A_SPINE * STEPS_A_SHEET, patience)
    if not start.excess and start.seconds - best.seconds < WORTH and not start.laid.weak:
        best = start
    return None if best.excess else weaver.cells(best.laid)


def _from_strips(ground: Ground, given: Given, judge: Judge, asked: Asked, strips: CellPlan) -> CellPlan | None:
    """What the search finds from what is left of the strips without all that is not needed, or that itself; None, too,
    where they are too many to be searched from."""
    if len(strips.cells) > MOST_SHEETS:
        return None
    weaver = Weaver(given, judge, asked, strips.rows)
    start = _found(ground, weaver, strips)
    best = _searched(lighter(start, weaver.excess), weaver, STEPS_A_SHEET) if start else None
    if best and not best.excess:
        return weaver.cells(best.laid)
    as_laid = _as_laid(strips, given)
    weaver = Weaver(given, judge, asked, strips.rows, as_laid)
    start = _found(ground, weaver, as_laid)
    return weaver.cells(lighter(start, weaver.excess).laid) if start and not start.excess else None


def _searched(start: Found, weaver: Weaver, each: int, patience: int = STEPS) -> Found:
    """What the search finds from a start in so many steps for each sheet, more strictly while it errs too much; the
    first search is given up after some steps (`patience`) in which nothing holds the limit."""
    count, frames = len(start.laid.meets), len(weaver.given.plan.frames)
    if count > MOST_SHEETS:
        return start
    longest = min(STEPS, MOST_LOOKED_AT // count, int(OF_FEW * max(1.0, frames / FEW) ** GROWTH))
    steps = min(longest, max(LEAST_STEPS, each * count))
    best, left = quicker(start, steps, weaver.excess, patience=patience), longest - steps
    erred, before, took = best.excess, math.inf, math.inf
    for seed in range(1, MOST_ROUNDS):
        if left <= 0 or (not best.excess and _enough(best.laid, took)):
            break
        if not best.excess or best.excess < before:
            before, took = best.excess, best.seconds
            best = quicker(best, steps // 2, weaver.excess, seed, STRICT)
            left -= steps // 2
        else:  # it goes no further from there
            again = quicker(start, steps, weaver.excess, seed)
            best = min(best, again, key=lambda found: (found.excess, found.seconds))
            before = took = math.inf
            left -= steps
    light = lighter(best, weaver.excess)
    much = left > 0 and best.seconds - light.seconds > MUCH * best.seconds
    if not best.excess and (erred or much):  # it was not searched for less since it held, or since it is lighter
        light = lighter(quicker(light, steps // 2, weaver.excess, MOST_ROUNDS, STRICT), weaver.excess)
    return light


def _enough(laid: Laid, took: float) -> bool:
    """Whether few joins are short, or little was saved of what it took before (s)."""
    return len(laid.weak) <= SHORT * len(laid.meets) or took - laid.seconds < LITTLE * laid.seconds


def _as_laid(strips: CellPlan, given: Given) -> CellPlan:
    """The strips numbered as they are laid: rows from the foot up; each cell turned if its page lies on its side."""
    last = max(cell.strip for cell in strips.cells)
    cells = (
        replace(cell, strip=last - cell.strip if strips.rows else cell.strip, turned=strips.printable.turned)
        for cell in strips.cells
    )
    return replace(strips, cells=tuple(cells), printable=given.printables[0])


def _found(ground: Ground, weaver: Weaver, cells: CellPlan) -> Found | None:
    laid = Laid.of(ground, [seen(weaver.given, cell.rect) for cell in cells.cells])
    if laid is None or not laid.all_held or not laid.one_piece:
        return None
    return Found(laid, weaver.excess(laid))


def _wanted(given: Given, asked: Asked, bits: Iterable[Rect]) -> Wanted:
    upright, level = (tuple(Rect(*seen(given, line)) for line in lines) for lines in (asked.upright, asked.level))
    items = tuple(seen(given, box) for box in (*asked.boxes, *bits))
    clear = given.clear
    least = JOIN_MIN + max(clear.left + clear.right, clear.bottom + clear.top)  # beside a sheet's own marks
    return Wanted(items, upright, level, tuple(sizes(given)), given.hides is None, least)


BIT = 20.0
"""mm between the bits of linked paper's line: paper nearer to other paper than that is joined to it or counts as in its
way.  Our own design, no source."""

SMALL = 40.0
"""mm.  What is no longer than this is asked for as one.  Our own design, no source."""


def line_bits(asked: Asked) -> Iterator[Rect]:
    """The line of linked paper, with room for its ticks."""
    count = max(1, round((asked.right - asked.left) / BIT))
    for at in range(count + 1):
        x = asked.left + (asked.right - asked.left) * at / count
        yield Rect(x, asked.line_at(x) - asked.below, x, asked.line_at(x) + asked.above)


def marks_bits(boxes: Iterable[Rect], cells: Sequence[Rect], overlap: float) -> Iterator[Rect]:
    """Boxes (wall mm) that may go on on the next sheet: each small one whole if one of the cells holds it, else what
    each cell holds of it; of a longer one slices across, no farther from each other than sheets overlap, so that there
    is no gap between what two sheets show of it."""
    near = Near((cell, cell) for cell in cells)
    for box in boxes:
        for bit in [box] if max(box.width, box.height) <= SMALL else _slices(box, overlap):
            around = list(near.about(bit))
            if any(cell.holds(bit) for cell in around):
                yield bit
            else:
                yield from (part for cell in around if (part := _shared(bit, cell)))


def _slices(box: Rect, apart: float) -> Iterator[Rect]:
    """Thin slices across a box, from end to end."""
    count = math.ceil(max(box.width, box.height) / apart - TOLERANCE)  # not one more for a rounding
    for at in range(count + 1):
        if box.width > box.height:
            x = box.x0 + box.width * at / count
            yield Rect(x, box.y0, x, box.y1)
        else:
            y = box.y0 + box.height * at / count
            yield Rect(box.x0, y, box.x1, y)


def _shared(bit: Rect, cell: Rect) -> Rect | None:
    """What of a bit lies in a cell, if it is as thick as the bit may be thin."""
    part = bit.meet(cell)
    if part is None or (part.width < TOLERANCE < bit.width) or (part.height < TOLERANCE < bit.height):
        return None
    return part
