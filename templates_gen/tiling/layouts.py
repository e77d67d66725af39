"""Complete plans for one page and one direction of the strips: cut, settled, and made one piece if asked."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from math import ceil, inf

from templates_gen.base.geometry import TOLERANCE, Rect, Span
from templates_gen.tiling.connected import Web
from templates_gen.tiling.joins import Rows, bridged
from templates_gen.tiling.settle import runs_of, settle_heights, settle_strip
from templates_gen.tiling.strips import (
    MOST_CELLS,
    SLACK,
    Box,
    Boxes,
    Line,
    best_strips,
    cells_along,
    evenly,
    line_of,
    within,
)

SPARE = 20.0
"""mm left of a cell's width where that costs no sheet, so that cuts of neighbouring strips can be brought together.
Our own design, no source."""
Strip = tuple[Line, Span, list[list[Span]]]
Strips = list[Strip]
EVERYWHERE = Rect(-inf, -inf, inf, inf)


def layouts(boxes: Sequence[Box], width: float, height: float, connected: bool, limit: int) -> Iterator[Rows]:
    """Plans worth comparing for these boxes, with at most `limit` cells, strip by strip from the bottom.

    When the cells have to be connected there are three starts: everything covered, every strip without a gap,
    and blank stretches left out.  The first needs no bridges, the last the most.
    """
    boxes = Boxes(boxes)
    starts = [(boxes, True)]
    if connected:  # what is all one area has no gaps to leave out, or not to
        starts = [(boxes.covered, True), (boxes, False), *([] if _one_area(boxes) else starts)]
    for wanted, gaps in starts:
        found = best_strips(wanted, width, height, gaps, limit)
        if found is None:
            continue
        spans = settle_heights(wanted, found[1], width, height, gaps, (-inf, inf))
        strips = _with_runs(wanted, spans, width, gaps)
        rows = _joined(strips, width, height, limit) if connected else _rows(strips, width)
        if rows is not None:
            limit = min(limit, sum(map(len, rows)))
            yield rows


def patchwork(
    boxes: Sequence[Box], width: float, height: float, connected: bool, region: Rect = EVERYWHERE
) -> Rows | None:
    """A plan in sections, each with strips of its own, for marks so dense that no cut can cross them all.

    The wall is halved, by a cut that leaves equally many firm boxes on either side, until strips fit.  None
    when even that fails.  With `connected` every section is covered up to its cuts, so that they join.
    """
    boxes = Boxes(boxes)
    wanted = boxes.covered if connected else boxes
    found = best_strips(wanted, width, height, True, MOST_CELLS)
    if found:
        spans = settle_heights(wanted, found[1], width, height, True, (region.y0, region.y1))
        return _rows(_with_runs(wanted, spans, width, True), width, (region.x0, region.x1))
    cut = _middle_cut(boxes)
    if cut is None:
        return None
    rows: Rows = []
    for part in _parts(region, *cut):
        inside = _clipped(wanted, part)
        some = patchwork(inside, width, height, connected, part)
        if some is None:
            return None
        rows += some
    return rows


def _one_area(boxes: Sequence[Box]) -> bool:
    """Whether the largest box meets all others, so that no strip through it has gaps."""
    large = max(boxes, key=lambda box: (box.x1 - box.x0) * (box.y1 - box.y0))
    return all(large.x0 <= box.x1 and box.x0 <= large.x1 and large.y0 <= box.y1 and box.y0 <= large.y1 for box in boxes)


def _clipped(boxes: Sequence[Box], part: Rect) -> list[Box]:
    """What of the boxes lies in this part of the wall; nothing firm crosses its sides."""
    found = []
    for b in within(boxes, part.y0, part.y1):
        if b.x0 < part.x1 and (b.x1 > part.x0 or b.x0 >= part.x0):
            sides = (max(b.x0, part.x0), max(b.y0, part.y0), min(b.x1, part.x1), min(b.y1, part.y1))
            found.append(Box(*sides, b.firm_x, b.firm_y))
    return found


def _middle_cut(boxes: Sequence[Box]) -> tuple[bool, float] | None:
    """The allowed cut that halves the firm boxes best: whether it is upright, and where (mm)."""
    best: tuple[int, bool, float] | None = None
    for upright in (True, False):
        firm = [b for b in boxes if b.firm_x] if upright else [b.turned() for b in boxes if b.firm_y]
        line = line_of(sorted(firm))
        for end, begin in zip(line.firm_hi, line.firm_lo[1:], strict=False):
            at = (end + begin) / 2
            below = sum(b.x1 <= at for b in firm)
            rank = (abs(len(firm) - 2 * below), not upright, at)
            best = rank if best is None else min(best, rank)
    return (not best[1], best[2]) if best else None


def _parts(region: Rect, upright: bool, at: float) -> tuple[Rect, Rect]:
    x0, y0, x1, y1 = region.x0, region.y0, region.x1, region.y1
    if upright:
        return Rect(x0, y0, at, y1), Rect(at, y0, x1, y1)
    return Rect(x0, y0, x1, at), Rect(x0, at, x1, y1)


def _with_runs(boxes: Boxes, spans: Sequence[Span], width: float, gaps: bool) -> Strips:
    """Every strip with its content and its runs of cells, still flush with the left end of the content."""
    strips: Strips = []
    for i, (y0, y1) in enumerate(spans):
        joined = i + 1 < len(spans) and spans[i + 1][0] == y1
        # nothing lies just above the top of a stack, but a line or a rounding may lie right on it
        line = boxes.line(y0, y1 if joined else y1 + SLACK)
        strips.append((line, (y0, y1), runs_of(cells_along(line, width, gaps) or [])))
    return strips


def _rows(
    strips: Strips, width: float, sides: Span = (-inf, inf), leans: Sequence[Sequence[int]] | None = None
) -> Rows:
    every = leans or [[0] * len(runs) for _, _, runs in strips]
    return [_row(strip, width, sides, lean) for strip, lean in zip(strips, every, strict=True)]


def _row(strip: Strip, width: float, sides: Span, leans: Sequence[int]) -> list[Rect]:
    line, (y0, y1), runs = strip
    runs, width = _slim(line, runs, width)
    settled = settle_strip(line, runs, width, sides, leans)
    return [Rect(x0, y0, x1, y1) for run in settled for x0, x1 in run]


def _slim(line: Line, runs: list[list[Span]], width: float) -> tuple[list[list[Span]], float]:
    """The runs in cells a little narrower than paper allows, where as many do: cuts are then free to move."""
    slim = width - SPARE
    cells = cells_along(line, slim, gaps=len(runs) > 1)
    narrow = runs_of(cells or [])
    return (narrow, slim) if [len(run) for run in narrow] == [len(run) for run in runs] else (runs, width)


def _joined(strips: Strips, width: float, height: float, limit: int) -> Rows | None:
    """The strips as one piece: empty strips where the wall is blank, runs moved together, bridges built."""
    full = _without_holes(strips, height)
    rows = _drawn_together(full, width)
    every = [c for row in rows for c in row]
    left, right = min(c.x0 for c in every), max(c.x1 for c in every)
    spans = [Rect(left, y0, right, y1) for _, (y0, y1), _ in full]
    return bridged(rows, spans, width, limit)


def _without_holes(strips: Strips, height: float) -> Strips:
    full: Strips = []
    for line, span, runs in strips:
        below = full[-1][1][1] if full else span[0]
        if span[0] - below > TOLERANCE:
            parts = ceil((span[0] - below) / height)
            full += [(line_of([]), part, []) for part in evenly(below, span[0], parts)]
        full.append((line, span, runs))
    return full


def _drawn_together(strips: Strips, width: float) -> Rows:
    """The rows with every run leaning to the side where that leaves fewer pieces.

    Only runs that are not part of the largest piece are tried: it is they that have to move.
    """
    web = Web(_rows(strips, width))
    largest, first = _largest(web.names), 0
    for i, strip in enumerate(strips):
        leans = [0] * len(strip[2])
        for j, run in enumerate(strip[2]):
            for lean in (-1, 1):
                if web.names[first] == largest:
                    break
                trial = [*leans[:j], lean, *leans[j + 1 :]]
                moved = _row(strip, width, (-inf, inf), trial)
                if web.pieces_with(i, moved) <= max(web.names):
                    web.put(i, moved)
                    leans, largest = trial, _largest(web.names)
            first += len(run)
    return web.rows


def _largest(names: Sequence[int]) -> int:
    return Counter(names).most_common(1)[0][0]
