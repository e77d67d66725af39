"""What every sheet carries besides the wall: rulers, trim lines, registration marks, neighbours' names and its title.

Nothing here refers to the paper's edge, which may lie 2 mm off (ISO 216 tolerances, from memory): all hangs on the
window, whose lower left corner is at the lower left corner of what the printer can reach.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.base.units import show, show_both
from templates_gen.documents.sheets.layer import Drawn, Shown, SoFar
from templates_gen.documents.sheets.uncut import along_join, uncut_join_items
from templates_gen.drawing.blocks import shortened
from templates_gen.drawing.items import Circle, Form, Item, Line, Text, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room, placed_near
from templates_gen.drawing.shapes import ground
from templates_gen.drawing.sizes import H18, H25, H35, HAIR, NARROW, REGISTRATION, TITLE_DEPTH
from templates_gen.tiling.rulers import RULER_END, RULER_START, from_lines, from_pitch_line
from templates_gen.tiling.sheet import Join, Sheet, SheetPlan

REGISTRATION_FORM = "register"

TITLE_DOWN = 6.9, 11.3
"""mm from the top of the title's band down to the base lines of its two lines.  Our own design, no source."""

TITLE_AIR, LEVEL_HALF = 0.3, 0.15
"""mm kept free around title lines, and half of what a level line takes there.  Our own design, no source."""

TITLE_LEAST = 4.0
"""mm of height that small title lines beside each other take, with what is free around them.  Our own design."""


def registration_form() -> Form:
    """The mark that two sheets share: a ring and a cross at one point of the wall."""
    arm = REGISTRATION
    items = (Line(-arm, 0, arm, 0, NARROW), Line(0, -arm, 0, arm, NARROW), Circle(0, 0, REGISTRATION - 1.0, NARROW))
    return Form(REGISTRATION_FORM, Rect(-arm, -arm, arm, arm), items)


def title(so_far: SoFar) -> Drawn:
    """The two title lines."""
    dx, dy = so_far.to_page
    texts = sheet_title(so_far.plan, so_far.sheets, so_far.part, so_far.number, so_far.of, so_far.lettering)
    boxes = tuple(so_far.lettering.box(text).shifted(-dx, -dy) for text in texts)
    over = tuple(replace(text, x=text.x - dx, y=text.y - dy) for text in texts)
    return Drawn(page_items=texts, over=over, taken_beyond=boxes)


def sheet_title(
    plan: Plan, sheets: SheetPlan, part: Shown, number: int, of: int, lettering: Lettering
) -> tuple[Text, ...]:
    """The two title lines (page mm), off level lines if they can be: what the sheet is, and where its rulers are.

    On a sheet too narrow for that its name stands alone, and no distance, for one cut short is read for another.
    """
    sheet, band = part.sheet, _title_band(sheets, part)
    job = plan.job
    only = f"for {sheets.printer.name} · " if sheets.printer else ""
    which = f"sheet {sheet.name} of {len(sheets.sheets)} · page {number} of {of}"
    up = "this side up · " if sheet.page is not sheets.page else ""  # its page is printed on its side
    about = f"{which} · {up}{only}{job.date} · {job.title}"
    height = H35 if lettering.width(about, H35, True) <= band.width else H25
    cut = shortened(about, height, True, band.width, lettering)
    whole = f"{which} · {up}".rstrip(" ·")
    names = (cut if cut.startswith(whole) else whole, f"sheet {sheet.name}", sheet.name)
    name = next((name for name in names if lettering.width(name, height, True) <= band.width), sheet.name)
    first = Text(0.0, 0.0, name, height, bold=True)
    ways = [
        *((words, H25) for words in ruler_places(plan, sheets, part)),
        (ruler_places(plan, sheets, part)[-1], H18),
    ]
    second = next((Text(0.0, 0.0, *way) for way in ways if lettering.width(*way) <= band.width), None)
    texts = (first, second) if second else (first,)
    dx, dy = sheet.page.printable.x0 - sheet.window.x0, sheet.page.printable.y0 - sheet.window.y0
    around = sheets.hides.reach(False) if sheets.hides else REGISTRATION
    taken = [Rect.about(mark.x + dx, mark.y + dy, 2 * around, 2 * around) for mark in part.marks]
    taken += (Rect(band.x0, y - LEVEL_HALF, band.x1, y + LEVEL_HALF) for y in _levels(plan, part))
    return _clear(texts, band, taken, lettering)


def _clear(texts: Sequence[Text], band: Rect, taken: Sequence[Rect], lettering: Lettering) -> tuple[Text, ...]:
    """Both lines where nothing is taken in the band, one over the other if they can be, and rather small than on it;
    else where they usually are."""
    usual = [replace(text, x=band.x0, y=band.y1 - down) for text, down in zip(texts, TITLE_DOWN, strict=False)]
    for largest, way in product((H35, H25, H18), (1, -1)):
        order = [replace(text, height=min(text.height, largest)) for text in usual][::way]
        room = Room(band, TITLE_AIR)
        room.take(*taken)
        placed = [placed_near(text, band.x0, text.y + text.height / 2, band, room, lettering) for text in order]
        if None not in placed:
            return tuple(text for text in placed if text)
    return tuple(usual)


def _title_band(sheets: SheetPlan, part: Shown) -> Rect:
    """Where a sheet's title lines may stand (page mm): under its upper trim line, and what no other sheet covers.

    Where the sheet is too low for that they stand just over its level ruler or, with nothing above to cover it, on the
    blank paper over the window.
    """
    sheet, area, hides = part.sheet, part.sheet.page.printable, sheets.hides
    over = {join.upright for join in part.joins if join.under == sheet.name}
    cell, inner, window = sheet.cell, sheet.inner, sheet.window
    low, top, right = inner.y1, inner.y1 + TITLE_DEPTH, window.x0 + area.width - sheets.paper.overlap / 2
    if inner.height < 0.0:
        low, top = window.y1, window.y1 + TITLE_DEPTH
        seen = cell.y1 - (hides.beyond(False) if hides else 0.0)
        if False in over and seen - cell.y0 > RULER_END + TITLE_LEAST:
            low, top = cell.y0 + RULER_END, seen
    if True in over:
        right = inner.x1 if hides else cell.x1
    left = cell.x0 + RULER_START
    return Rect(left, low, right - 0.5, top - 0.5).shifted(area.x0 - window.x0, area.y0 - window.y0)


def _levels(plan: Plan, part: Shown) -> list[float]:
    """How high (page mm) a sheet shows level lines of the wall: the level line and edges of frames."""
    window = part.sheet.window
    levels = {plan.level_line, *(y for hung in part.frames for y in (hung.rect.y0, hung.rect.y1))}
    return [y - window.y0 + part.sheet.page.printable.y0 for y in levels if window.y0 < y < window.y1]


def ruler_places(plan: Plan, sheets: SheetPlan, part: Shown) -> tuple[str, ...]:
    """How far the sheet's level ruler is from the level line and its upright ruler from the centre line.

    Of a sheet that hangs by itself on stairs from the pitch line and along it.  In both systems and in the job's unit
    alone, the longest first.
    """
    sheet = part.sheet
    if plan.slope and part.alone is not None:
        return _places_on_pitch(plan, sheets, sheet)
    up, right = from_lines(plan, sheet.window, sheets.paper.overlap)
    unit = plan.job.unit
    above, beside = "above" if up > 0 else "below", "right" if right > 0 else "left"
    both, own = ((told(abs(up), unit), told(abs(right), unit)) for told in (show_both, show))
    return (
        f"level ruler {both[0]} {above} the level line;  upright ruler {both[1]} {beside} of the centre line",
        f"level ruler {own[0]} {above} the level line;  upright ruler {own[1]} {beside} of the centre line",
        f"rulers {own[0]} {above} level line, {own[1]} {beside} of centre line",
    )


def _places_on_pitch(plan: Plan, sheets: SheetPlan, sheet: Sheet) -> tuple[str, ...]:
    up, along = from_pitch_line(plan, sheet.window, sheets.paper.overlap)
    unit, above = plan.job.unit, "above" if up > 0 else "below"
    way = "upstairs" if (along > 0) == (plan.slope > 0) else "downstairs"
    both, own = ((told(abs(up), unit), told(abs(along), unit)) for told in (show_both, show))
    return (
        f"level ruler {both[0]} {above} the pitch line;  upright ruler {both[1]} {way} along it from the cross",
        f"level ruler {own[0]} {above} the pitch line;  upright ruler {own[1]} {way} along it from the cross",
        f"rulers {own[0]} {above} pitch line, {own[1]} {way} along it",
    )


def joins(so_far: SoFar) -> Drawn:
    """Trim lines, registration marks, and what every join joins."""
    room = so_far.whole_page()
    items = tuple(join_items(so_far.part, so_far.sheets, room, so_far.lettering))
    return Drawn(items, tuple(room.taken), tuple(room.lines))


def join_items(part: Shown, sheets: SheetPlan, room: Room, lettering: Lettering) -> Iterator[Item]:
    """Trim lines and registration marks of a sheet, and beside every trim line what it joins (wall mm).

    `room` holds the whole window, without what rulers and title take; what is written is taken from it.
    """
    if sheets.hides is not None:
        yield from uncut_join_items(part.sheet, part.joins, part.marks, sheets.hides, room, lettering)
        return
    room.take(*(Rect.about(mark.x, mark.y, 2 * REGISTRATION, 2 * REGISTRATION) for mark in part.marks))
    yield from (Use(REGISTRATION_FORM, mark.x, mark.y) for mark in part.marks)
    trims = [_trim_line(join, part.sheet, part.sheet.window) for join in part.joins]
    room.lines += (Rect(line.x0, line.y0, line.x1, line.y1).grown(0.5) for line in trims)
    yield from trims
    for join in part.joins:
        yield from _join_name(join, part.sheet, sheets.paper.overlap / 2, room, lettering)


def _trim_line(join: Join, sheet: Sheet, window: Rect) -> Line:
    """A continuous line to cut along, or a broken one that the other sheet's cut edge comes to."""
    if join.over != sheet.name:
        return Line(join.x0, join.y0, join.x1, join.y1, HAIR, (2.0, 2.0))
    if join.upright:
        return Line(join.x0, window.y0, join.x0, window.y1, NARROW)
    return Line(window.x0, join.y0, window.x1, join.y0, NARROW)


def _join_name(join: Join, sheet: Sheet, half: float, room: Room, lettering: Lettering) -> Iterator[Item]:
    cut = join.over == sheet.name
    words = (f"cut here, lay on {join.under}", f"on {join.under}", join.under) if cut else (
        f"{join.over} goes over this", f"under {join.over}", join.over
    )  # fmt: skip
    middle_x, middle_y = (join.x0 + join.x1) / 2, (join.y0 + join.y1) / 2
    out = -half if cut else half
    strip = (
        Rect(min(join.x0, join.x0 + out), join.y0, max(join.x0, join.x0 + out), join.y1)
        if join.upright
        else Rect(join.x0, min(join.y0, join.y0 + out), join.x1, max(join.y0, join.y0 + out))
    )
    near = (middle_x + out / 2 * join.upright, middle_y + out / 2 * (not join.upright))
    for name in along_join(words, join.upright, near, strip, room, lettering):
        yield ground(lettering.box(name))  # the strip is cut off or covered: the other sheet shows what runs behind
        yield name
