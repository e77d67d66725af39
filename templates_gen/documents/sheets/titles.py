"""The title of a sheet: which one it is, and how far its rulers are from the two lines of the wall."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.base.units import show, show_both
from templates_gen.documents.sheets.layer import Drawn, Shown, SoFar
from templates_gen.documents.sheets.line_names import BENEATH
from templates_gen.documents.sheets.scales import scales_may_stand
from templates_gen.documents.sheets.wall_marks import LEVEL_GRADES
from templates_gen.drawing.blocks import shortened
from templates_gen.drawing.items import Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room, placed_near
from templates_gen.drawing.sizes import BROAD, H18, H25, H35, INNER_EDGE, TARGET, TITLE_DEPTH
from templates_gen.tiling.demand import nail_box
from templates_gen.tiling.rulers import RULER_END, RULER_START, from_lines, from_pitch_line
from templates_gen.tiling.sheet import Sheet, SheetPlan

TITLE_DOWN = 6.9, 11.3
"""mm from the top of the title's band down to the base lines of its two lines.  Our own design, no source."""

TITLE_AIR, LEVEL_HALF, ALONG = 0.3, BROAD / 2, 1.2
"""mm kept free around title lines, half of what a level line takes there, and what more is kept from a line along which
they run: closer, bold letters look like its teeth.  Our own design, no source."""

TITLE_LOWER, TITLE_OFF = 40.0, 2.0
"""mm that the title may stand lower than usual, and what it then keeps from nails.  Our own design, no source."""

TITLE_LEAST = 4.0
"""mm of height that small title lines beside each other take, with what is free around them.  Our own design."""


def title(so_far: SoFar) -> Drawn:
    """The two title lines."""
    dx, dy = so_far.to_page
    texts = sheet_title(
        so_far.plan, so_far.sheets, so_far.part, so_far.number, so_far.of, so_far.lettering, so_far.on_wall.taken
    )
    boxes = tuple(so_far.lettering.box(text).shifted(-dx, -dy) for text in texts)
    over = tuple(replace(text, x=text.x - dx, y=text.y - dy) for text in texts)
    return Drawn(page_items=texts, over=over, taken=boxes, taken_beyond=boxes)


def sheet_title(
    plan: Plan, sheets: SheetPlan, part: Shown, number: int, of: int, lettering: Lettering, off: Sequence[Rect] = ()
) -> tuple[Text, ...]:
    """The two title lines (page mm): what the sheet is, and where its rulers are.

    They are off long lines and their ticks, frames' edges and drop scales if they can be, rather lower, short, small or
    in three lines than on these; rather across one than along it; and `off` black corners of frames (wall mm) first.

    On a sheet too narrow for that its name stands alone, and no distance, for one cut short is read for another.
    """
    sheet, band = part.sheet, _title_band(sheets, part)
    texts = _lines_of_title(plan, sheets, part, f"page {number} of {of}", band.width, lettering)
    dx, dy = sheet.page.printable.x0 - sheet.window.x0, sheet.page.printable.y0 - sheet.window.y0
    long = LEVEL_GRADES[plan.job.unit].ticks[0][1]
    ticks = Rect(sheet.window.x0, plan.level_line - long, sheet.window.x1, plan.level_line).shifted(dx, dy)
    named = replace(ticks, y0=ticks.y1 - BENEATH - TITLE_OFF)  # with the name of the level line
    fixed = [box.shifted(dx, dy) for box in (*_marks(sheets, part), *off)]
    black = [corner.shifted(dx, dy) for corner in off]
    lines, upright = ([line.shifted(dx, dy) for line in some] for some in (_lines(plan, part), _upright(plan, part)))
    scales = [scale.shifted(dx, dy) for hung in part.frames for scale in scales_may_stand(hung)]
    every = [*fixed, *(line.grown(ALONG) for line in lines), *scales]
    usual = [replace(text, x=band.x0, y=band.y1 - down) for text, down in zip(texts, TITLE_DOWN, strict=False)]
    boxes = [lettering.box(text) for text in usual]
    met = [*every, *upright, ticks]
    if all(band.holds(box) and not any(map(box.grown(TITLE_AIR).overlaps, met)) for box in boxes):
        return tuple(usual)  # so it is on most sheets
    nails = [nail_box(nail.x, nail.y).grown(TITLE_OFF).shifted(dx, dy) for nail in part.nails]
    nails.append(Rect.about(plan.centre_line, plan.level_line, 2 * TARGET, 2 * TARGET).shifted(dx, dy))
    lower = replace(band, y0=max(min(band.y0, sheet.cell.y0 + RULER_START + dy), band.y0 - TITLE_LOWER))
    short = [*usual[:1], *(replace(text, text=ruler_places(plan, sheets, part)[-1]) for text in usual[1:])]
    bare = [replace(text, text=_bare(text.text, plan.job.date)) for text in short]
    small = [*bare[:1], *(replace(text, height=H18) for text in bare[1:])]
    places = ruler_places(plan, sheets, part)[-2].split(";  ") if usual[1:] else []
    parted = [*bare[:1], *(replace(bare[-1], text=text, y=bare[-1].y - at * H35) for at, text in enumerate(places))]
    every.append(named)
    whole = ((usual, (H35, H25)), (short, (H25,)), (bare, (H25,)), (small, (H25, H18)))
    off_lines = product((upright,), (*whole, (parted, (H25, H18))), (band, lower))
    tries = (
        *(
            (words, place, [*every, *nails, *some], sizes)
            for some, (words, sizes), place in (*off_lines, *product(([],), whole, (band, lower)))
        ),
        (usual, band, every, (H18,)),
        *((usual, band, [*fixed, *some], (H35, H25, H18)) for some in ([*lines, ticks], lines, [])),
        (usual, band, black, (H35, H25, H18)), (bare, band, black, (H25, H18)),
    )  # fmt: skip
    tried = (_clear(*way, lettering) for way in tries)
    return next((found for found in tried if found), tuple(usual))


def _lines_of_title(
    plan: Plan, sheets: SheetPlan, part: Shown, page: str, width: float, lettering: Lettering
) -> tuple[Text, ...]:
    """The two title lines, or the first alone, as long as there is width for them (mm)."""
    job, sheet = plan.job, part.sheet
    only = f"for {sheets.printer.name} · " if sheets.printer else ""
    which = f"sheet {sheet.name} of {len(sheets.sheets)} · {page}"
    up = "this side up · " if sheet.page is not sheets.page else ""  # its page is printed on its side
    about = f"{which} · {up}{only}{job.date} · {job.title}"
    height = H35 if lettering.width(about, H35, True) <= width else H25
    cut = shortened(about, height, True, width, lettering)
    whole = f"{which} · {up}".rstrip(" ·")
    names = (cut if cut.startswith(whole) and cut.rstrip(" ·…") != whole else whole, f"sheet {sheet.name}", sheet.name)
    name = next((name for name in names if lettering.width(name, height, True) <= width), sheet.name)
    told = ruler_places(plan, sheets, part)
    ways = [*((words, H25) for words in told), (told[-1], H18)]
    second = next((Text(0.0, 0.0, *way) for way in ways if lettering.width(*way) <= width), None)
    return tuple(filter(None, (Text(0.0, 0.0, name, height, bold=True), second)))


def _bare(words: str, date: str) -> str:
    """A title line that says no more than which sheet it is, and for which printer, if for one alone."""
    before = words.partition(f" · {date}")[0].split(" · ")
    parts = [part for part in before if part.startswith(("sheet ", "page ", "this side up", "for "))]
    return " · ".join(parts) or words


def _marks(sheets: SheetPlan, part: Shown) -> Iterator[Rect]:
    """What the registration marks of a sheet take, or its slanting lines where nothing is cut (wall mm)."""
    for mark in part.marks:
        around = sheets.hides.reach(False) if sheets.hides else None
        yield mark.box if around is None else Rect.about(mark.x, mark.y, 2 * around, 2 * around)


def _clear(
    usual: Sequence[Text], band: Rect, taken: Sequence[Rect], sizes: Sequence[float], lettering: Lettering
) -> tuple[Text, ...]:
    """Both lines where nothing is taken in the band, near where they usually are, one over the other if they can be,
    and rather small than on it; nothing where there is no room for them."""
    for largest, way in product(sizes, (1, -1)):
        order = [replace(text, height=min(text.height, largest)) for text in usual][::way]
        room = Room(band, TITLE_AIR)
        room.take(*taken)
        placed = [placed_near(text, band.x0, text.y + text.height / 2, band, room, lettering) for text in order]
        if None not in placed:
            return tuple(text for text in placed if text)
    return ()


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


def _lines(plan: Plan, part: Shown) -> Iterator[Rect]:
    """What runs along behind level lettering on a sheet (wall mm): the level line and edges of frames."""
    window = part.sheet.window
    yield Rect(window.x0, plan.level_line, window.x1, plan.level_line).grown(LEVEL_HALF)
    for hung in part.frames:
        r = hung.rect
        for low, high in ((r.y0, r.y0 + INNER_EDGE), (r.y1 - INNER_EDGE, r.y1)):
            yield Rect(r.x0, low, r.x1, high).grown(LEVEL_HALF)


def _upright(plan: Plan, part: Shown) -> Iterator[Rect]:
    """What runs across behind it: the centre line and the sides of frames."""
    window = part.sheet.window
    yield Rect(plan.centre_line, window.y0, plan.centre_line, window.y1).grown(LEVEL_HALF)
    for hung in part.frames:
        r = hung.rect
        for left, right in ((r.x0, r.x0 + INNER_EDGE), (r.x1 - INNER_EDGE, r.x1)):
            yield Rect(left, r.y0, right, r.y1).grown(LEVEL_HALF)


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
