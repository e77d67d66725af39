"""The wall as one sheet shows it: which forms it places, its part of the lines, and lettering that never collides.

Lettering is placed with the geometry known, the fixed before the movable: nail labels, figures of the drop scales
and of the level line, names of the lines, then frame labels.  All of it lies in the sheet's inner part, so nothing
of it is cut by a trim line or printed on two sheets.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.documents.sheets import wall_marks
from templates_gen.documents.sheets.layer import Drawn, SoFar
from templates_gen.documents.sheets.line_names import line_names
from templates_gen.documents.sheets.nail_marks import NAIL_FORM, place_label
from templates_gen.documents.sheets.scales import DropScale, apart, drop_scale, scale_figures, ticks_along
from templates_gen.documents.sheets.wall_marks import LEVEL_GRADES, frame_name
from templates_gen.drawing.items import Item, Line, Text, Use
from templates_gen.drawing.placing import Room
from templates_gen.drawing.shapes import corner_triangle
from templates_gen.drawing.sizes import H25, H35, INNER_EDGE, NAIL_CLEAR, TARGET
from templates_gen.drawing.strokes import inside, nail_holes
from templates_gen.tiling.demand import nail_box
from templates_gen.tiling.long_lines import level_spans, nosing_line, pieces, pitch_line, wall_edges
from templates_gen.tolerance.diagonals import corners_to_measure

CORNER = 10.0
"""mm: a side of the black corner of a frame to measure from.  Our own design, no source."""

BESIDE = 0.7
"""mm that lettering better keeps from the lines of a frame's edge.  Our own design, no source."""

LEVEL_UP, LEVEL_DOWN, BY_CENTRE, BY_SLANTING = 6.0, 7.0, 1.5, 1.0
"""mm that the level line takes with its ticks and figures above and below, the centre line on either side, and any
other line.  Our own design, no source."""

PIECE = 5.0
"""mm of a slanting line that go into one box.  Our own design, no source."""

OVER_LEVEL = 1.5
"""mm between the level line and its figures.  Our own design, no source."""

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
    if not shown:
        return Drawn()
    sides = [(x, y, -CORNER if right else CORNER, -CORNER if up else CORNER) for x, y, right, up in shown]
    boxes = [Rect(min(x, x + a), min(y, y + b), max(x, x + a), max(y, y + b)) for x, y, a, b in sides]
    near = [Rect.about(nail.x, nail.y, 2 * NAIL_CLEAR, 2 * NAIL_CLEAR) for nail in so_far.plan.nails]
    free = [at for at, box in zip(sides, boxes, strict=True) if not any(map(box.overlaps, near))]
    return Drawn(tuple(corner_triangle(*at) for at in free), tuple(boxes))


def nails(so_far: SoFar) -> Drawn:
    """The marks of the nails, which nothing else crosses."""
    points = [(nail.x, nail.y) for nail in so_far.part.nails]
    return Drawn(tuple(Use(NAIL_FORM, *point) for point in points), tuple(nail_box(*point) for point in points))


def long_lines(so_far: SoFar) -> Drawn:
    """The centre line, the level line, a stair's pitch line and the edges of the wall."""
    plan, window = so_far.plan, so_far.sheet.window
    x, y = plan.centre_line, plan.level_line
    holes = nail_holes((nail.x, nail.y) for hung in so_far.part.frames for nail in hung.nails)
    lines = [
        Rect(x - BY_CENTRE, window.y0, x + BY_CENTRE, window.y1),
        Rect(window.x0, y - LEVEL_DOWN, window.x1, y + LEVEL_UP),
    ]
    slanting = (pitch_line(plan), nosing_line(plan.job.wall), *wall_edges(plan.job.wall))
    shown = (line for ends in slanting if ends for line in inside(Line(*ends, 0.0), window))
    lines += [box.grown(BY_SLANTING) for line in shown for box in pieces((line.x0, line.y0, line.x1, line.y1), PIECE)]
    return Drawn(tuple(wall_marks.long_lines(plan, window, holes)), lines=tuple(lines))


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
    labels: list[tuple[tuple[Item, ...], Room]] = []
    sides: dict[str, int] = {}
    for so_far in every:
        room, placed = so_far.room(), []
        for nail in so_far.part.nails:
            found, label = place_label(nail, by_id[nail.frame], plan, room, so_far.lettering)
            sides[nail.name] = found.scale
            placed += label
        labels.append((tuple(placed), room))
    scales = {hung.frame.id: frame_scales(hung, sides) for hung in plan.frames}
    return (Drawn(items, tuple(room.taken), scales=scales) for items, room in labels)


def frame_scales(hung: Hung, sides: Mapping[str, int]) -> list[DropScale]:
    """The drop scales of a frame, one for each hanger that has room for it, on these sides of its nails."""
    scales = (drop_scale(hung, bearing, sides.get(bearing.nail_of(hung.frame.id), 1)) for bearing in hung.bearings)
    return apart([scale for scale in scales if scale is not None])


def drop_scales(so_far: SoFar) -> Drawn:
    """The figures of the drop scales, but for those that the level line would strike through.

    The scales themselves are drawn with their frames.
    """
    scales = [scale for hung in so_far.part.frames for scale in so_far.scales[hung.frame.id]]
    figures = (
        text
        for scale in scales
        if scale.zone.overlaps(so_far.sheet.window)
        for text in scale_figures(scale, so_far.plan.job.unit)
        if not -STRUCK < so_far.plan.level_line - text.y < H25 + STRUCK
    )
    fitting = _those_that_fit(figures, so_far)
    return replace(fitting, taken=(*fitting.taken, *(scale.zone for scale in scales)))


def level_figures(so_far: SoFar) -> Drawn:
    """The figures along the level line."""
    return _those_that_fit(_level_figures(so_far.plan, so_far.sheet.inner), so_far)


def names_of_lines(so_far: SoFar) -> Drawn:
    """The names of the lines that cross the sheet."""
    room = so_far.room()
    names = tuple(line_names(so_far.plan, so_far.sheet.inner, room, so_far.lettering))
    return Drawn(names, tuple(room.taken))


def _those_that_fit(texts: Iterable[Text], so_far: SoFar) -> Drawn:
    """Texts whose place is fixed: written where it is free, left out where it is not."""
    room, written = so_far.room(), []
    for text in texts:
        box = so_far.lettering.box(text)
        if room.fits(box, uncrossed=False):
            room.take(box)
            written.append(text)
    return Drawn(tuple(written), tuple(room.taken))


def _level_figures(plan: Plan, inner: Rect) -> Iterator[Text]:
    y, grade = plan.level_line, LEVEL_GRADES[plan.job.unit]
    for low, high in level_spans(plan) if inner.y0 <= y <= inner.y1 else ():
        for x, number in ticks_along(max(low, inner.x0), min(high, inner.x1), plan.centre_line, grade):
            if figure := grade.figure(number):
                yield Text(x, y + OVER_LEVEL, figure, H35, "middle")
