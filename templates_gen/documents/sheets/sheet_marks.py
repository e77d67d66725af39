"""The wall as one sheet shows it: which forms it places, its part of the lines, and lettering that never collides.

Lettering is placed with the geometry known, the fixed before the movable: nail labels, figures of the drop scales
and of the level line, names of the lines, then frame labels.  All of it lies in the sheet's inner part, so nothing
of it is cut by a trim line or printed on two sheets.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import chain, islice, product

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.grid_index import Near
from templates_gen.base.record import replace
from templates_gen.documents.sheets import wall_marks
from templates_gen.documents.sheets.layer import Drawn, SoFar
from templates_gen.documents.sheets.line_names import line_names
from templates_gen.documents.sheets.nail_marks import NAIL_FORM, place_label
from templates_gen.documents.sheets.of_centre import words_under
from templates_gen.documents.sheets.rulers import ruler_ends
from templates_gen.documents.sheets.scales import (
    DropScale,
    apart,
    drop_scale,
    scale_figures,
    scale_name,
    scale_units,
    scales_may_stand,
    ticks_along,
)
from templates_gen.documents.sheets.wall_marks import LEVEL_GRADES, frame_name
from templates_gen.drawing.items import Item, Line, Polygon, Text, Use
from templates_gen.drawing.placing import Room
from templates_gen.drawing.shapes import corner_triangle
from templates_gen.drawing.sizes import H25, H35, INNER_EDGE, NAIL_CLEAR, TARGET, TITLE_DEPTH
from templates_gen.drawing.strokes import inside
from templates_gen.tiling.demand import nail_box
from templates_gen.tiling.long_lines import level_spans, nosing_line, pieces, pitch_line, wall_edges
from templates_gen.tolerance.diagonals import corners_to_measure

CORNERS = (10.0, 7.0, 5.0)
"""mm: a side of the black corner of a frame to measure from, smaller where something else is near.  Our own design."""

FROM_CORNER = 0.4
"""mm between a black corner and the bars of a registration mark or a ruler's end.  Our own design, no source."""

BESIDE = 0.7
"""mm that lettering better keeps from the lines of a frame's edge.  Our own design, no source."""

LEVEL_UP, LEVEL_DOWN, BY_CENTRE, BY_SLANTING = 6.0, 7.0, 1.5, 1.0
"""mm that the level line takes with its ticks and figures above and below, the centre line on either side, and any
other line.  Our own design, no source."""

PIECE = 3.0
"""mm of a slanting line that go into one box.  Our own design, no source."""

OVER_LEVEL = 1.5
"""mm between the level line and its figures.  Our own design, no source."""

SPARING = ("linked", "nails")
"""Covers that ask for the nails alone."""

STRUCK = 0.5
"""mm by which a line is to miss the letters at least.  Our own design, no source."""


def frames(so_far: SoFar) -> Drawn:
    """The frames; lettering is better not written over their edges."""
    lines: list[Rect] = []
    for hung in so_far.part.frames:
        r, inner = hung.rect, INNER_EDGE
        lines += [
            Rect(r.x0, low - BESIDE, r.x1, high + BESIDE) for low, high in ((r.y0, r.y0 + inner), (r.y1 - inner, r.y1))
        ]
        lines += [
            Rect(low - BESIDE, r.y0, high + BESIDE, r.y1) for low, high in ((r.x0, r.x0 + inner), (r.x1 - inner, r.x1))
        ]
    items = (Use(frame_name(hung), hung.rect.x0, hung.rect.y0) for hung in so_far.part.frames)
    return Drawn(tuple(items), lines=tuple(lines))


def corners_to_measure_from(every: Sequence[SoFar]) -> Iterator[Drawn]:
    """The corners of frames that the diagonals and the width run between, black; they are the same for all sheets."""
    corners = corners_to_measure(every[0].plan) if every and every[0].sheets.joins else []
    for so_far in every:
        yield _black(so_far, [at for at in corners if so_far.sheet.window.has_point(at[0], at[1])])


def _black(so_far: SoFar, shown: Sequence[tuple[float, float, bool, bool]]) -> Drawn:
    """They come first, and what can be elsewhere keeps off them: rulers leave out what would lie on them."""
    if not shown:
        return Drawn()
    off = [Rect.about(nail.x, nail.y, 2 * NAIL_CLEAR, 2 * NAIL_CLEAR) for nail in so_far.plan.nails]
    marks, sheets = so_far.part.bars, so_far.sheets
    ends = ruler_ends(sheets, so_far.sheet, so_far.plan.job.unit, [] if sheets.hides else marks)
    off += (box.grown(FROM_CORNER) for box in (*marks, *ends))
    off += (both for hung in so_far.part.frames for both in scales_may_stand(hung))
    window, inner = so_far.sheet.window, so_far.sheet.inner
    band = [Rect(window.x0, inner.y1, window.x1, inner.y1 + TITLE_DEPTH)] if sheets.hides else []
    found: list[tuple[Polygon, Rect]] = []
    for corner in shown:
        ways = [*_in_corner(*corner)]
        small = sorted(ways, key=lambda way: way[1].width)  # so that the title has room beside it
        tries = ((way, [*off, *band]) for way in ways), ((way, off) for way in small)
        free = (way for way, some in chain(*tries) if not any(map(way[1].overlaps, some)))
        found += islice(free, 1)
    return Drawn(tuple(item for item, _ in found), tuple(box for _, box in found))


def _in_corner(x: float, y: float, right: bool, up: bool) -> Iterator[tuple[Polygon, Rect]]:
    """A black corner with its box, as large as there may be room; beside the frame or over it where there is none in
    it, with its right angle there all the same."""
    for (beside, over), size in product(((1, 1), (-1, 1), (1, -1)), CORNERS):
        across, upward = beside * (-size if right else size), over * (-size if up else size)
        box = Rect(min(x, x + across), min(y, y + upward), max(x, x + across), max(y, y + upward))
        yield corner_triangle(x, y, across, upward), box


def nails(so_far: SoFar) -> Drawn:
    """The marks of the nails, which nothing else crosses."""
    points = [(nail.x, nail.y) for nail in so_far.part.nails]
    return Drawn(tuple(Use(NAIL_FORM, *point) for point in points), tuple(nail_box(*point) for point in points))


def long_lines(so_far: SoFar) -> Drawn:
    """The centre line, the level line, a stair's pitch line and the edges of the wall."""
    plan, window = so_far.plan, so_far.sheet.window
    x, y = plan.centre_line, plan.level_line
    points = [(nail.x, nail.y) for hung in so_far.part.frames for nail in hung.nails]
    lines = [
        Rect(x - BY_CENTRE, window.y0, x + BY_CENTRE, window.y1),
        Rect(window.x0, y - LEVEL_DOWN, window.x1, y + LEVEL_UP),
    ]
    slanting = (pitch_line(plan), nosing_line(plan.job.wall), *wall_edges(plan.job.wall))
    shown = (line for ends in slanting if ends for line in inside(Line(*ends, 0.0), window))
    lines += [box.grown(BY_SLANTING) for line in shown for box in pieces((line.x0, line.y0, line.x1, line.y1), PIECE)]
    return Drawn(tuple(wall_marks.long_lines(plan, window, points)), lines=tuple(lines))


def target(so_far: SoFar) -> Drawn:
    """The mark where the two lines cross, on the sheet that shows the whole of it."""
    plan, sheet = so_far.plan, so_far.sheet
    box = Rect.about(plan.centre_line, plan.level_line, 2 * TARGET, 2 * TARGET)
    items = tuple(wall_marks.target(plan)) if sheet.inner.holds(box) else ()
    return Drawn(items, (box,) if box.overlaps(sheet.window) else ())


def nail_labels(every: Sequence[SoFar]) -> Iterator[Drawn]:
    """The label of every nail, beside it on the sheet that holds it.

    With all of them it is decided on which side of each hanger its drop scale stands.
    """
    plan = every[0].plan
    by_id = {hung.frame.id: hung for hung in plan.frames}
    labels: list[tuple[tuple[Item, ...], Room, tuple[Text, ...]]] = []
    sides: dict[str, int] = {}
    for so_far in every:
        room, placed, under = so_far.room(), [], []
        for nail in so_far.part.nails:
            found, label = place_label(nail, by_id[nail.frame], plan, room, so_far.lettering)
            sides[nail.name] = found.scale
            placed += label
            under += words_under(label, room.taken[-1]) if label else []
        labels.append((tuple(placed), room, tuple(under)))
    off = Near((box, box) for _, room, _ in labels for box in room.taken)
    scales = {hung.frame.id: frame_scales(hung, sides, off) for hung in plan.frames}
    return (Drawn(items, tuple(room.taken), scales=scales, asides=under) for items, room, under in labels)


def frame_scales(hung: Hung, sides: Mapping[str, int], off: Near[Rect]) -> list[DropScale]:
    """The drop scales of a frame, one for each hanger that has room for it, on these sides of its nails.

    One that has a nail can be done without where it would lie on the label of a nail (`off`).
    """
    scales = (drop_scale(hung, bearing, sides.get(bearing.nail_of(hung.frame.id), 1)) for bearing in hung.bearings)
    return apart([scale for scale in scales if scale and (scale.drop is None or not _on_any(scale.zone, off))])


def _on_any(zone: Rect, off: Near[Rect]) -> bool:
    return any(map(zone.overlaps, off.about(zone)))


def drop_scales(so_far: SoFar) -> Drawn:
    """The drop scales with their figures, but for those that the level line would strike through.

    Where not every mark is on paper, a scale is on the sheet of its nail alone: a piece of it says nothing elsewhere.
    """
    items: list[Item] = []
    figures: list[Sequence[Text]] = []
    units: list[Sequence[Text]] = []
    zones: list[Rect] = []
    sparing, own = so_far.sheets.paper.cover in SPARING, {(nail.frame, nail.x) for nail in so_far.part.nails}
    for hung in so_far.part.frames:
        for number, scale in enumerate(so_far.scales[hung.frame.id]):
            zones.append(scale.zone)
            lone = sparing and scale.drop is not None and (hung.frame.id, scale.x) not in own
            if scale.zone.overlaps(so_far.sheet.window) and not lone:
                items.append(Use(scale_name(hung, number), scale.x, scale.top))
                figures += ([figure] for figure in scale_figures(scale, so_far.plan.job.unit))
                units.append([*scale_units(scale, so_far.plan.job.unit)])
    fitting = _those_that_fit(figures + units, so_far, so_far.plan.level_line)
    return replace(fitting, items=(*items, *fitting.items), taken=(*fitting.taken, *zones))


def level_figures(so_far: SoFar) -> Drawn:
    """The figures along the level line."""
    return _those_that_fit(([figure] for figure in _level_figures(so_far.plan, so_far.sheet.inner)), so_far)


def names_of_lines(so_far: SoFar) -> Drawn:
    """The names of the lines that cross the sheet."""
    room = so_far.room()
    names = tuple(line_names(so_far.plan, so_far.sheet.inner, room, so_far.lettering))
    return Drawn(names, tuple(room.taken))


def _those_that_fit(places: Iterable[Sequence[Text]], so_far: SoFar, struck_at: float = -math.inf) -> Drawn:
    """Of each text the first of its places that is free, and where the line at this height (mm) does not strike it; no
    line runs through one that has several."""
    room, written = so_far.room(), []
    for texts in places:
        for text in texts:
            box = so_far.lettering.box(text)
            if not -STRUCK < struck_at - text.y < H25 + STRUCK and room.fits(box, uncrossed=len(texts) > 1):
                room.take(box)
                written.append(text)
                break
    return Drawn(tuple(written), tuple(room.taken))


def _level_figures(plan: Plan, inner: Rect) -> Iterator[Text]:
    y, grade = plan.level_line, LEVEL_GRADES[plan.job.unit]
    for low, high in level_spans(plan) if inner.y0 <= y <= inner.y1 else ():
        for x, number in ticks_along(max(low, inner.x0), min(high, inner.x1), plan.centre_line, grade):
            if figure := grade.figure(number):
                yield Text(x, y + OVER_LEVEL, figure, H35, "middle")
