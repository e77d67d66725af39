"""The wall as one sheet shows it: which forms it places, its part of the lines, and lettering that never collides.

Lettering is placed with the geometry known, the fixed before the movable: nail labels, figures of the drop scales
and of the level line, names of the lines, then frame labels.  All of it lies in the sheet's inner part, so nothing
of it is cut by a trim line or printed on two sheets.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.grid_index import Near
from templates_gen.base.record import Record
from templates_gen.documents.sheets.line_names import line_names
from templates_gen.documents.sheets.nail_marks import NAIL_FORM, place_label
from templates_gen.documents.sheets.scales import DropScale, apart, drop_scale, scale_figures, ticks_along
from templates_gen.documents.sheets.wall_marks import LEVEL_GRADES, frame_name, long_lines, target
from templates_gen.drawing.items import Item, Line, Text, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room
from templates_gen.drawing.sizes import H25, H35, TARGET
from templates_gen.drawing.strokes import inside, nail_holes
from templates_gen.hanging.bearings import Nail
from templates_gen.tiling.demand import nail_box
from templates_gen.tiling.long_lines import level_spans, nosing_line, pieces, pitch_line, wall_edges
from templates_gen.tiling.sheet import Join, RegistrationMark, Sheet, SheetPlan
from templates_gen.tolerance.order import taping_order

STRUCK = 0.5
"""mm by which a line is to miss the letters at least.  Our own design, no source."""


class Shown(Record, frozen=True):
    """What one sheet shows of the wall: frames, whole nails, and its registration marks and joins.

    `alone` is the sheets' overlap where pieces hang by themselves, placed by their distances from the two lines.
    """

    sheet: Sheet
    frames: tuple[Hung, ...]
    nails: tuple[Nail, ...]
    marks: tuple[RegistrationMark, ...]
    joins: tuple[Join, ...]
    alone: float | None = None


class Labels(Record, frozen=True):
    """The nail labels of all sheets, found first because they decide on which side a drop scale stands.

    `items` and the `rooms` that they leave are by sheet, the drop `scales` by frame.
    """

    items: Mapping[str, tuple[Item, ...]]
    rooms: Mapping[str, Room]
    scales: Mapping[str, Sequence[DropScale]]


def shown_on(plan: Plan, sheets: SheetPlan) -> tuple[Shown, ...]:
    """What each sheet shows, in the order of the sheets."""
    frames = Near((hung.rect.grown(1.0), hung) for hung in plan.frames)
    nails = Near((nail_box(nail.x, nail.y), nail) for nail in plan.nails)
    marks, joins = _by_sheet(sheets)
    alone = sheets.paper.overlap if taping_order(sheets).pieces > 1 else None
    return tuple(
        Shown(
            sheet,
            tuple(hung for hung in frames.about(sheet.window) if hung.rect.grown(1.0).overlaps(sheet.window)),
            tuple(nail for nail in nails.about(sheet.inner) if sheet.inner.holds(nail_box(nail.x, nail.y))),
            tuple(marks[sheet.name]),
            tuple(joins[sheet.name]),
            alone,
        )
        for sheet in sheets.sheets
    )


def _by_sheet(sheets: SheetPlan) -> tuple[Mapping[str, list[RegistrationMark]], Mapping[str, list[Join]]]:
    """The registration marks and the joins of every sheet, by its name."""
    marks: dict[str, list[RegistrationMark]] = {sheet.name: [] for sheet in sheets.sheets}
    joins: dict[str, list[Join]] = {sheet.name: [] for sheet in sheets.sheets}
    for mark in sheets.marks:
        for name in mark.sheets:
            marks[name].append(mark)
    for join in sheets.joins:
        joins[join.over].append(join)
        joins[join.under].append(join)
    return marks, joins


def nail_labels(plan: Plan, shown: Sequence[Shown], lettering: Lettering) -> Labels:
    """The label of every nail, beside it on the sheet that holds it."""
    items: dict[str, tuple[Item, ...]] = {}
    rooms: dict[str, Room] = {}
    scale_sides: dict[str, int] = {}
    by_id = {hung.frame.id: hung for hung in plan.frames}
    for part in shown:
        room = rooms[part.sheet.name] = _room(plan, part)
        free = room.copy()
        placed: list[Item] = []
        for nail in part.nails:
            sides, label = place_label(nail, by_id[nail.frame], plan, free, lettering)
            scale_sides[nail.name] = sides.scale
            placed += label
        items[part.sheet.name] = tuple(placed)
        room.take(*free.taken[len(room.taken) :])
    return Labels(items, rooms, {hung.frame.id: _frame_scales(hung, scale_sides) for hung in plan.frames})


def _frame_scales(hung: Hung, sides: Mapping[str, int]) -> list[DropScale]:
    """The drop scales of a frame, one for each hanger that has room for it, on these sides of its nails."""
    scales = (drop_scale(hung, bearing, sides.get(bearing.nail_of(hung.frame.id), 1)) for bearing in hung.bearings)
    return apart([scale for scale in scales if scale is not None])


def sheet_items(plan: Plan, part: Shown, labels: Labels, lettering: Lettering) -> tuple[tuple[Item, ...], Room]:
    """Everything a sheet shows of the wall but the frames' labels, in wall mm, and the room that is left for them."""
    window = part.sheet.window
    holes = nail_holes((nail.x, nail.y) for hung in part.frames for nail in hung.nails)
    items: list[Item] = [Use(frame_name(hung), hung.rect.x0, hung.rect.y0) for hung in part.frames]
    items += [Use(NAIL_FORM, nail.x, nail.y) for nail in part.nails]
    items += long_lines(plan, window, holes)
    room = labels.rooms[part.sheet.name]
    items += labels.items[part.sheet.name]
    if part.sheet.inner.holds(_target(plan)):
        items += target(plan)
    items += _those_that_fit(_scale_figures(plan, part, labels), room, lettering)
    room.take(*(scale.zone for hung in part.frames for scale in labels.scales[hung.frame.id]))
    items += _those_that_fit(_level_figures(plan, part), room, lettering)
    items += line_names(plan, part.sheet.inner, room, lettering)
    return tuple(items), room


def _target(plan: Plan) -> Rect:
    return Rect.about(plan.centre_line, plan.level_line, 2 * TARGET, 2 * TARGET)


def _room(plan: Plan, part: Shown) -> Room:
    """The sheet's inner part with nails and target taken; lines and frame edges are better not written over."""
    room = Room(part.sheet.inner)
    room.take(*(nail_box(nail.x, nail.y) for nail in part.nails))
    if _target(plan).overlaps(part.sheet.window):
        room.take(_target(plan))
    window, x, y = part.sheet.window, plan.centre_line, plan.level_line
    room.lines += [Rect(x - 1.5, window.y0, x + 1.5, window.y1), Rect(window.x0, y - 7.0, window.x1, y + 6.0)]
    slanting = (pitch_line(plan), nosing_line(plan.job.wall), *wall_edges(plan.job.wall))
    shown = (line for ends in slanting if ends for line in inside(Line(*ends, 0.0), window))
    room.lines += [box.grown(1.0) for line in shown for box in pieces((line.x0, line.y0, line.x1, line.y1), 5.0)]
    for hung in part.frames:
        r = hung.rect
        room.lines += [Rect(r.x0, side - 1.0, r.x1, side + 1.0) for side in (r.y0, r.y1)]
        room.lines += [Rect(side - 1.0, r.y0, side + 1.0, r.y1) for side in (r.x0, r.x1)]
    return room


def _those_that_fit(texts: Iterator[Text], room: Room, lettering: Lettering) -> Iterator[Item]:
    """Texts whose place is fixed: written where it is free, left out where it is not."""
    for text in texts:
        box = lettering.box(text)
        if room.fits(box, uncrossed=False):
            room.take(box)
            yield text


def _scale_figures(plan: Plan, part: Shown, labels: Labels) -> Iterator[Text]:
    """The figures of the drop scales, but for those that the level line would strike through."""
    for hung in part.frames:
        for scale in labels.scales[hung.frame.id]:
            if scale.zone.overlaps(part.sheet.window):
                figures = scale_figures(scale, plan.job.unit)
                yield from (text for text in figures if not -STRUCK < plan.level_line - text.y < H25 + STRUCK)


def _level_figures(plan: Plan, part: Shown) -> Iterator[Text]:
    inner, y, grade = part.sheet.inner, plan.level_line, LEVEL_GRADES[plan.job.unit]
    for low, high in level_spans(plan) if inner.y0 <= y <= inner.y1 else ():
        for x, number in ticks_along(max(low, inner.x0), min(high, inner.x1), plan.centre_line, grade):
            if figure := grade.figure(number):
                yield Text(x, y + 1.5, figure, H35, "middle")
