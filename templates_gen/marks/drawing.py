"""Plan, findings and sheets become a finished template: every page with every mark at its place."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from templates_gen.findings import Finding
from templates_gen.lettering import Lettering
from templates_gen.marks.firstpages import FirstPages, first_pages
from templates_gen.marks.framelabels import main_sheets
from templates_gen.marks.furniture import (
    RULES_FORM,
    join_items,
    register_form,
    rules_form,
    rules_zones,
    sheet_title,
    title_ground,
)
from templates_gen.marks.items import Form, Page, Template, Text, Use
from templates_gen.marks.nailmarks import nail_form
from templates_gen.marks.placing import Room
from templates_gen.marks.sheetmarks import Labels, Shown, frame_rules, nail_labels, sheet_items, shown_on
from templates_gen.marks.square import SQUARE_FORM, place_square, square_form
from templates_gen.marks.wallmarks import frame_form
from templates_gen.planning import Plan
from templates_gen.sheets.sheet import Sheet, SheetPlan


def draw_template(plan: Plan, findings: Sequence[Finding], sheets: SheetPlan, lettering: Lettering) -> Template:
    """The whole template.  Raises InputError for a character that no font has."""
    shown = shown_on(plan, sheets)
    labels = nail_labels(plan, shown, lettering)
    apart = sheets.paper.kind != "sheets"  # the first pages are then a file of their own
    before = FirstPages([], -1, -1) if apart else first_pages(plan, findings, sheets, lettering)
    of = len(before.pages) + len(sheets.sheets)
    main = main_sheets(plan.frames, sheets.sheets)
    pages = list(_pages_before(before, sheets))
    for part in shown:
        pages.append(_sheet_page(plan, sheets, part, labels, main, len(pages) + 1, of, lettering))
    job = plan.job
    return Template(
        title=job.title,
        author=job.client,
        language=job.language,
        page_size=(sheets.page.width, sheets.page.height),
        pages=tuple(pages),
        forms=tuple(_forms(plan, sheets, labels)),
        attachments=job.sources,
    )


def _forms(plan: Plan, sheets: SheetPlan, labels: Labels) -> Iterator[Form]:
    yield rules_form(sheets.page, sheets.paper.overlap, plan.job.unit)
    yield from (register_form(), nail_form(), square_form())
    for hung in plan.frames:
        yield frame_form(hung, frame_rules(hung, labels), plan.job.unit)


def _pages_before(before: FirstPages, sheets: SheetPlan) -> Iterator[Page]:
    for number, items in enumerate(before.pages):
        page_items = (Use(RULES_FORM, 0.0, 0.0), *items)
        yield Page(
            label=str(number + 1),
            title=before.titles.get(number, ""),
            page_items=page_items,
            page_matrix=sheets.page.matrix,
        )


def _sheet_page(
    plan: Plan,
    sheets: SheetPlan,
    part: Shown,
    labels: Labels,
    main: Mapping[str, str],
    number: int,
    of: int,
    lettering: Lettering,
) -> Page:
    """The page of one sheet, `number` counting from 1 in the file."""
    sheet = part.sheet
    items, room = sheet_items(plan, part, labels, main, lettering)
    titles = sheet_title(plan, sheets, sheet, number, of, lettering)
    whole = _whole_room(plan, sheets, sheet, room, titles, lettering)
    joined = list(join_items(part, sheets, whole, lettering))
    whole.lines = room.lines
    square = place_square(whole, sheet.inner)
    ground = title_ground(plan, sheets, part, titles, lettering)
    return Page(
        label=sheet.name,
        title=f"Sheet {sheet.name}",
        page_items=(*ground, *titles, Use(RULES_FORM, 0.0, 0.0), *_square_on_page(square, sheets, sheet)),
        page_matrix=sheets.page.matrix,
        wall_items=(*items, *joined),
        window=sheet.window,
        to_page=sheet.to_page,
    )


def _whole_room(
    plan: Plan, sheets: SheetPlan, sheet: Sheet, room: Room, titles: Sequence[Text], lettering: Lettering
) -> Room:
    """All that the page can show (wall mm), the blank paper beyond the window too, with all taken that is written."""
    area, window = sheets.page.printable, sheet.window
    shift = window.x0 - area.x0, window.y0 - area.y0
    whole = Room(area.shifted(*shift))
    whole.take(*room.taken, *rules_zones(sheets, sheet, plan.job.unit))
    whole.take(*(lettering.box(title).shifted(*shift) for title in titles))
    return whole


def _square_on_page(square: tuple[float, float] | None, sheets: SheetPlan, sheet: Sheet) -> Iterator[Use]:
    if square:
        area, window = sheets.page.printable, sheet.window
        yield Use(SQUARE_FORM, square[0] - window.x0 + area.x0, square[1] - window.y0 + area.y0)
