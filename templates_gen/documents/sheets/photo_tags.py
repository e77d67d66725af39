"""Tags on every sheet, from which a photograph of the taped paper tells how the sheets lie: four where there is room.

They come last and stand where nothing else is, and where no other sheet's paper comes.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record, replace
from templates_gen.base.words import counted
from templates_gen.documents.sheets.layer import Drawn, SoFar
from templates_gen.drawing.items import POINT, Form, Item, Text, Use
from templates_gen.drawing.placing import Room, placed_near
from templates_gen.drawing.sizes import H25
from templates_gen.drawing.tags import CARDS_FROM, number_of, quiet, tag_form, tag_name
from templates_gen.tiling.sheet import Sheet, SheetPlan
from templates_gen.tolerance.effort import cuts

ON_A_SHEET = 4
"""Tags on a sheet.  Our own simulation: with two a join is read to 0.15 mm, with three to 0.06, with four to 0.04."""

MOST_SHEETS = CARDS_FROM // ON_A_SHEET
"""Sheets that get tags: there are no more numbers."""

SIDES = ((1300.0, 12.0), (2300.0, 15.0), (float("inf"), 20.0))
"""mm: up to this width of the group, a tag's side.  It is then about 18 pixels or more on a picture of 12 megapixels.
Our own simulation, no source."""


class Tag(Record, frozen=True):
    """A tag on a sheet: its number, and the square that it fills (wall mm)."""

    number: int
    sheet: str
    box: Rect


def tag_side(plan: Plan) -> float:
    """How large the tags of this group are (mm)."""
    return next(side for width, side in SIDES if plan.group.width <= width)


def tag_forms(plan: Plan, sheets: SheetPlan) -> Iterator[Form]:
    """The forms that the tags of all sheets place."""
    if sheets.paper.photo:
        for number in range(ON_A_SHEET * min(max(map(_number, sheets.sheets)), MOST_SHEETS)):
            yield tag_form(number, tag_side(plan))


def photo_tags(every: Sequence[SoFar]) -> Iterator[Drawn]:
    """The tags of all sheets, where they are asked for."""
    if not every[0].sheets.paper.photo:
        yield from (Drawn() for _ in every)
        return
    papers = papers_of(every[0].sheets)
    under = {(join.over, join.under) for join in every[0].sheets.joins}
    for so_far in every:
        name, number = so_far.sheet.name, _number(so_far.sheet)
        over = [paper for other, paper in papers.items() if other != name and (name, other) not in under]
        few = number > MOST_SHEETS
        yield Drawn(page_items=tuple(_told(so_far, 0))) if few else _on_sheet(so_far, over, ON_A_SHEET * (number - 1))


def _number(sheet: Sheet) -> int:
    """The number that a sheet has for a name: it keeps its tags where others of an older paper are gone."""
    return int(sheet.name)


def papers_of(sheets: SheetPlan) -> Mapping[str, Rect]:
    """What each sheet's paper covers once it is cut and taped, by its name (wall mm)."""
    cut = {(cut.sheet, cut.side) for cut in cuts(replace(sheets, printed=None))}  # older sheets were cut, too
    return {sheet.name: _paper(sheet, {side for name, side in cut if name == sheet.name}) for sheet in sheets.sheets}


def _paper(sheet: Sheet, cut: set[str]) -> Rect:
    page, (dx, dy), cell = sheet.page, _to_wall(sheet), sheet.cell
    whole = Rect(0.0, 0.0, page.width * POINT, page.height * POINT).shifted(dx, dy)
    return Rect(
        cell.x0 if "left" in cut else whole.x0, cell.y0 if "foot" in cut else whole.y0,
        cell.x1 if "right" in cut else whole.x1, cell.y1 if "head" in cut else whole.y1,
    )  # fmt: skip


def _to_wall(sheet: Sheet) -> tuple[float, float]:
    return sheet.window.x0 - sheet.page.printable.x0, sheet.window.y0 - sheet.page.printable.y0


def _on_sheet(so_far: SoFar, over: Iterable[Rect], first: int) -> Drawn:
    """The tags nearest to the corners of the sheet's inner part, numbered from the `first`."""
    room, (dx, dy) = so_far.whole_page(0.0), so_far.to_page
    room.take(*over)
    side = tag_side(so_far.plan)
    around = quiet(side)
    boxes = list(_places(so_far.sheet.inner, room, side + 2 * around))
    tags = (
        Use(tag_name(first + number), box.x0 + around + dx, box.y0 + around + dy) for number, box in enumerate(boxes)
    )
    return Drawn(taken=tuple(boxes), page_items=(*tags, *_told(so_far, len(boxes), boxes)))


def _places(inner: Rect, room: Room, size: float) -> Iterator[Rect]:
    """Free squares nearest to the corners of a sheet's inner part, each in its own quarter of that if it can be."""
    for corner, quarter in ((corner, quarter) for corner, quarter in _quarters(inner)):
        box = room.nearest(size, size, *corner, quarter, False) or room.nearest(size, size, *corner, inner, False)
        if box is not None:
            room.take(box)
            yield box


def _quarters(inner: Rect) -> Iterator[tuple[tuple[float, float], Rect]]:
    """Every corner with the quarter of a rectangle that it belongs to; opposite ones first."""
    for x, y in ((inner.x0, inner.y0), (inner.x1, inner.y1), (inner.x0, inner.y1), (inner.x1, inner.y0)):
        yield (x, y), Rect(min(x, inner.cx), min(y, inner.cy), max(x, inner.cx), max(y, inner.cy))


def _told(so_far: SoFar, found: int, boxes: Iterable[Rect] = ()) -> Iterator[Item]:
    """That a sheet has fewer tags than others, where there is room to say it."""
    if found == ON_A_SHEET:
        return
    (dx, dy), room = so_far.to_page, so_far.whole_page()
    room.take(*boxes)
    words = Text(0.0, 0.0, f"{counted(found, 'photo tag')} of {ON_A_SHEET}: no room", H25)
    text = placed_near(words, so_far.sheet.inner.cx, so_far.sheet.inner.y0, so_far.sheet.window, room, so_far.lettering)
    if text is not None:
        yield Text(text.x + dx, text.y + dy, text.text, text.height)


def tags_on(pages: Iterable[tuple[Sheet, Iterable[Item]]], side: float) -> Iterator[Tag]:
    """The tags among what is drawn on the pages of the sheets."""
    for sheet, items in pages:
        dx, dy = _to_wall(sheet)
        for item in items:
            if isinstance(item, Use) and (number := number_of(item.form)) is not None:
                yield Tag(number, sheet.name, Rect(item.x, item.y, item.x + side, item.y + side).shifted(dx, dy))


def fewer(tags: Iterable[Tag], sheets: SheetPlan) -> Mapping[str, int]:
    """The sheets that have fewer tags than there may be, with how many they have."""
    count = {sheet.name: 0 for sheet in sheets.on_these_pages}
    for tag in tags:
        count[tag.sheet] += 1
    return {name: found for name, found in count.items() if found < ON_A_SHEET}
