"""The title of a sheet: which one it is, and how far its rulers are from the two lines of the wall."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import Rect, bounds
from templates_gen.base.record import replace
from templates_gen.base.units import show, show_both
from templates_gen.documents.sheets.layer import Drawn, Shown, SoFar
from templates_gen.documents.sheets.line_names import BENEATH
from templates_gen.documents.sheets.scales import scales_may_stand
from templates_gen.documents.sheets.wall_marks import LEVEL_GRADES
from templates_gen.drawing.blocks import shortened
from templates_gen.drawing.items import Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room
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

TITLE_AROUND = 5.0
"""mm beyond all places of the title in which is looked for what it keeps off: more than it keeps from anything.  Our
own design, no source."""

LINE_STEP = 1.6
"""Between base lines, in heights of the lower line's letters.  Our own; 22/14 h is the least in GOST 2.304-81."""

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

    They stand together, off long lines and their ticks, frames' edges and drop scales if they can: rather lower, short,
    in three lines or small than on these; rather across one than along it; and `off` black corners (wall mm) first.

    On a sheet too narrow for that its name stands alone, and no distance, for one cut short is read for another.
    """
    sheet, band = part.sheet, _title_band(sheets, part)
    texts = _lines_of_title(plan, sheets, part, f"page {number} of {of}", band.width, lettering)
    dx, dy = sheet.page.printable.x0 - sheet.window.x0, sheet.page.printable.y0 - sheet.window.y0
    long = LEVEL_GRADES[plan.job.unit].ticks[0][1]
    ticks = Rect(sheet.window.x0, plan.level_line - long, sheet.window.x1, plan.level_line).shifted(dx, dy)
    named = replace(ticks, y0=ticks.y1 - BENEATH - TITLE_OFF)  # with the name of the level line
    zone = Rect(band.x0, band.y0 - TITLE_LOWER, band.x1, band.y1).grown(TITLE_AROUND).shifted(-dx, -dy)
    frames = [hung for hung in part.frames if hung.rect.overlaps(zone)]
    told = (*_marks(sheets, part), *off), off, _lines(plan, sheet.window, frames), _upright(plan, sheet.window, frames)
    fixed, black, lines, upright = ([box.shifted(dx, dy) for box in some if box.overlaps(zone)] for some in told)
    scales = [scale.shifted(dx, dy) for hung in frames for scale in scales_may_stand(hung) if scale.overlaps(zone)]
    every = [*fixed, *(line.grown(ALONG) for line in lines), *scales]
    usual = [replace(text, x=band.x0, y=band.y1 - down) for text, down in zip(texts, TITLE_DOWN, strict=False)]
    boxes = [lettering.box(text) for text in usual]
    met = [*every, *upright, ticks]
    if all(band.holds(box) and not any(map(box.grown(TITLE_AIR).overlaps, met)) for box in boxes):
        return tuple(usual)  # so it is on most sheets
    nails = [nail_box(nail.x, nail.y).grown(TITLE_OFF).shifted(dx, dy) for nail in part.nails]
    nails.append(Rect.about(plan.centre_line, plan.level_line, 2 * TARGET, 2 * TARGET).shifted(dx, dy))
    near = replace(band, y1=band.y1 - TITLE_OFF)  # off what is at its upper edge
    lower = replace(near, y0=max(min(band.y0, sheet.cell.y0 + RULER_START + dy), band.y0 - TITLE_LOWER))
    clear = [*every, *nails, named]
    uncrossed = [*clear, *upright]
    short, bare, three = _shorter(usual, plan, sheets, part)
    whole = [(words, place) for place in (near, lower) for words in (usual, short)]
    less = [(words, place) for words in (bare, three) for place in (near, lower)]
    sizes = ((H35, whole), (H25, [*whole, *less]), (H18, less))
    tries = (
        *((words, place, uncrossed, size) for size, some in sizes for words, place in some),
        *((words, place, clear, size) for size, some in sizes for words, place in some),
        *((words, band, taken, H35) for taken in ([*fixed, *lines, ticks], [*fixed, *lines], fixed, black)
          for words in (usual, bare, three)),
        (bare, band, black, H18),
    )  # fmt: skip
    clear_places = _Clear(lettering)
    tried = (clear_places.near(*way) for way in tries)
    return next((found for found in tried if found), tuple(usual))


def _shorter(usual: Sequence[Text], plan: Plan, sheets: SheetPlan, part: Shown) -> tuple[Sequence[Text], ...]:
    """The title with its rulers in few words, with nothing but the sheet's name besides, and that in three lines."""
    places = ruler_places(plan, sheets, part)[-1]
    few = [replace(text, text=places, height=H25) for text in usual[1:]]
    name = [replace(text, text=_bare(text.text, plan.job.date), height=H25) for text in usual[:1]]
    above, _, beside = places.partition(" line, ")
    three = [replace(text, text=words) for text in few for words in (f"{above} line,", beside)]
    return [*usual[:1], *few], [*name, *few], [*name, *three]


def _lines_of_title(
    plan: Plan, sheets: SheetPlan, part: Shown, page: str, width: float, lettering: Lettering
) -> tuple[Text, ...]:
    """The two title lines, or the first alone, as long as there is width for them (mm)."""
    job, sheet = plan.job, part.sheet
    parts = [f"sheet {sheet.name} of {len(sheets.sheets)}", page]
    parts += ["this side up"] if sheet.page is not sheets.page else []  # its page is printed on its side
    parts += [f"for {sheets.printer.name}"] if sheets.printer else []
    about = " · ".join([*parts, job.date, job.title])
    height = H35 if lettering.width(about, H35, True) <= width else H25
    cut, dated = shortened(about, height, True, width, lettering), " · ".join([*parts, job.date, ""])
    fewer = (" · ".join(parts[:most]) for most in range(len(parts), 0, -1))
    names = (*([cut] if cut.startswith(dated) else []), *fewer, f"sheet {sheet.name}", sheet.name)
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


def _marks(sheets: SheetPlan, part: Shown) -> tuple[Rect, ...]:
    """What the registration marks of a sheet take, or its slanting lines where nothing is cut (wall mm)."""
    if sheets.hides is None:
        return part.bars
    wide = 2 * sheets.hides.reach(False)
    return tuple(Rect.about(mark.x, mark.y, wide, wide) for mark in part.marks)


class _Clear:
    """Clear places for the lines of one title.  The same words and places come again, so both are kept, known by being
    the same ones."""

    def __init__(self, lettering: Lettering) -> None:
        self._lettering = lettering
        self._set: dict[tuple[int, float], tuple[list[Text], Rect]] = {}
        self._rooms: dict[tuple[int, int], Room] = {}

    def near(self, words: Sequence[Text], band: Rect, taken: Sequence[Rect], largest: float) -> tuple[Text, ...]:
        """The lines under each other where nothing is taken in the band, near where they usually are; none without
        room."""
        lines, ink = self._set.get((id(words), largest)) or self._under_each_other(words, largest)
        room = self._rooms.get((id(band), id(taken)))
        if room is None:
            whole = Room(band, TITLE_AIR)
            whole.take(*taken)
            room = self._rooms[id(band), id(taken)] = whole.near(band)
        wide, high = ink.width, ink.height
        box = room.nearest(wide, high, band.x0 + wide / 2, band.y1 - high / 2, band)
        return tuple(replace(line, x=box.x0 - ink.x0, y=line.y + box.y0 - ink.y0) for line in lines) if box else ()

    def _under_each_other(self, words: Sequence[Text], largest: float) -> tuple[list[Text], Rect]:
        lines: list[Text] = []
        for text in words:
            height = min(text.height, largest)
            lines.append(replace(text, x=0.0, y=lines[-1].y - height * LINE_STEP if lines else 0.0, height=height))
        found = self._set[id(words), largest] = lines, bounds(map(self._lettering.box, lines))
        return found


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


def _lines(plan: Plan, window: Rect, frames: Sequence[Hung]) -> Iterator[Rect]:
    """What runs along behind level lettering in a window (wall mm): the level line and edges of frames."""
    yield Rect(window.x0, plan.level_line, window.x1, plan.level_line).grown(LEVEL_HALF)
    for hung in frames:
        r = hung.rect
        for low, high in ((r.y0, r.y0 + INNER_EDGE), (r.y1 - INNER_EDGE, r.y1)):
            yield Rect(r.x0, low, r.x1, high).grown(LEVEL_HALF)


def _upright(plan: Plan, window: Rect, frames: Sequence[Hung]) -> Iterator[Rect]:
    """What runs across behind it: the centre line and the sides of frames."""
    yield Rect(plan.centre_line, window.y0, plan.centre_line, window.y1).grown(LEVEL_HALF)
    for hung in frames:
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
