"""Plan, findings and sheets become a finished template: every page with every mark at its place."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record, replace
from templates_gen.checks import Finding
from templates_gen.documents.instructions.first_pages import FirstPages, first_pages
from templates_gen.documents.of_job import numbered, of_job, roman
from templates_gen.documents.sheets.frame_labels import frame_labels
from templates_gen.documents.sheets.furniture import join_items, registration_form, sheet_title
from templates_gen.documents.sheets.nail_marks import nail_form
from templates_gen.documents.sheets.references import references
from templates_gen.documents.sheets.rulers import LYING_FORM, RULERS_FORM, rulers_form, rulers_zones
from templates_gen.documents.sheets.sheet_marks import Labels, Shown, nail_labels, sheet_items, shown_on
from templates_gen.documents.sheets.square import SQUARE_FORM, place_square, square_form, square_texts
from templates_gen.documents.sheets.wall_marks import frame_edges, frame_form
from templates_gen.drawing.grounds import over_lines
from templates_gen.drawing.items import Form, Item, Page, Template, Text, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room
from templates_gen.tiling.sheet import Sheet, SheetPlan
from templates_gen.tolerance.expected import Expected

AWAY = 5.0
"""mm between the distances of a sheet that hangs by itself and the label of a nail or a frame, so that none is read for
part of the other.  Our own design, no source."""


def draw_template(
    plan: Plan, findings: Sequence[Finding], sheets: SheetPlan, expected: Expected | None, lettering: Lettering
) -> Template:
    """The whole template.  Raises InputError for a character that no font has."""
    shown = shown_on(plan, sheets)
    labels = nail_labels(plan, shown, lettering)
    apart = sheets.paper.kind != "sheets"  # the first pages are then a file of their own
    before = FirstPages([], -1, -1) if apart else first_pages(plan, findings, sheets, expected, lettering)
    of = len(before.pages) + len(sheets.sheets)
    begun = [
        _begun(plan, sheets, part, labels, sheet_title(plan, sheets, part, number, of, lettering), lettering)
        for number, part in enumerate(shown, len(before.pages) + 1)
    ]
    names = frame_labels(plan, [(some.part.sheet, some.room) for some in begun], lettering)
    pages = [_sheet_page(plan, sheets, some, names[some.part.sheet.name], labels, lettering) for some in begun]
    ruled = [[Use(RULERS_FORM, 0.0, 0.0), *items] for items in before.pages[:1]]
    first = numbered([*ruled, *before.pages[1:]], before.titles, sheets.page.matrix, roman if sheets.linked else str)
    return of_job(plan.job, "", sheets.page, (*first, *pages), _forms(plan, sheets, labels, lettering), attach=True)


def _forms(plan: Plan, sheets: SheetPlan, labels: Labels, lettering: Lettering) -> Iterator[Form]:
    ruled = {RULERS_FORM: sheets.page, **{_rulers_of(sheets, sheet): sheet.page for sheet in sheets.sheets}}
    for name, page in ruled.items():
        yield rulers_form(page, sheets.paper.overlap, plan.job.unit, lettering, name)
    yield from (registration_form(), nail_form(), square_form())
    for hung in plan.frames:
        yield frame_form(hung, labels.scales[hung.frame.id], plan.job.unit)


class Begun(Record, frozen=True):
    """A sheet with what has its place on it before the frames' labels: `titles` and distances (page mm), `items` (wall
    mm), and the room that they leave."""

    part: Shown
    titles: tuple[Text, ...]
    items: tuple[Item, ...]
    room: Room


def _begun(
    plan: Plan, sheets: SheetPlan, part: Shown, labels: Labels, titles: tuple[Text, ...], lettering: Lettering
) -> Begun:
    """A sheet with what has its place on it.

    One that hangs by itself says how far it is from both lines: out to the edge of its window where nothing is taped
    to it, else in its inner part, and on the blank paper beyond where that is full.
    """
    items, room = sheet_items(plan, part, labels, lettering)
    if part.alone is None:
        return Begun(part, titles, items, room)
    sheet, whole = part.sheet, _whole_room(plan, sheets, part.sheet, room, titles, lettering)
    whole.air = AWAY
    page, window = whole.region, sheet.window
    right, above = Rect(window.x1, page.y0, page.x1, page.y1), Rect(page.x0, window.y1, page.x1, page.y1)
    places = (sheet.inner if part.joins else window, right, above)
    away = tuple(references(plan, sheet, part.alone, places, whole, lettering))
    room.take(*(lettering.box(text).grown(AWAY) for text in away))
    dx, dy = _wall_to_page(sheet)
    on_page = (replace(text, x=text.x + dx, y=text.y + dy) for text in away)
    return Begun(part, (*titles, *on_page), items, room)


def _sheet_page(
    plan: Plan, sheets: SheetPlan, begun: Begun, names: Sequence[Item], labels: Labels, lettering: Lettering
) -> Page:
    """The page of one sheet; `names` are the frames' labels, `labels` those of the nails."""
    part, sheet, titles = begun.part, begun.part.sheet, begun.titles
    whole = _whole_room(plan, sheets, sheet, begun.room, titles, lettering)
    joined = list(join_items(part, sheets, whole, lettering))
    square = place_square(whole, sheet.inner)
    dx, dy = _wall_to_page(sheet)
    later = *(replace(text, x=text.x - dx, y=text.y - dy) for text in titles), *square_texts(square)
    scales = [scale.zone for hung in part.frames for scale in labels.scales[hung.frame.id]]
    edges = [edge for hung in part.frames for edge in frame_edges(hung.rect)]
    return Page(
        label=sheet.name,
        title=f"Sheet {sheet.name}",
        page_items=(*titles, Use(_rulers_of(sheets, sheet), 0.0, 0.0), *_square_on_page(square, sheet)),
        page_matrix=sheet.page.matrix,
        wall_items=tuple(over_lines((*begun.items, *names, *joined), later, edges, scales, lettering)),
        window=sheet.window,
        to_page=sheet.to_page,
    )


def _whole_room(
    plan: Plan, sheets: SheetPlan, sheet: Sheet, room: Room, titles: Sequence[Text], lettering: Lettering
) -> Room:
    """All that the page can show (wall mm), the blank paper beyond the window too, with all taken that is written."""
    dx, dy = _wall_to_page(sheet)
    whole = Room(sheet.page.printable.shifted(-dx, -dy))
    whole.take(*room.taken, *rulers_zones(sheets, sheet, plan.job.unit))
    whole.take(*(lettering.box(title).shifted(-dx, -dy) for title in titles))
    whole.lines += room.lines
    return whole


def _rulers_of(sheets: SheetPlan, sheet: Sheet) -> str:
    """The name of the form with the rulers of a sheet's page."""
    return RULERS_FORM if sheet.page is sheets.page else LYING_FORM


def _wall_to_page(sheet: Sheet) -> tuple[float, float]:
    """By how much a sheet's page mm differ from wall mm."""
    area, window = sheet.page.printable, sheet.window
    return area.x0 - window.x0, area.y0 - window.y0


def _square_on_page(square: tuple[float, float] | None, sheet: Sheet) -> Iterator[Use]:
    if square:
        dx, dy = _wall_to_page(sheet)
        yield Use(SQUARE_FORM, square[0] + dx, square[1] + dy)
