"""The two rulers of every sheet as they are drawn, and what they take of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache

from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.base.units import INCH
from templates_gen.documents.sheets.layer import Drawn, SoFar
from templates_gen.documents.sheets.scales import Graduation, ticks_along
from templates_gen.drawing.grounds import box_about
from templates_gen.drawing.items import Form, Item, Line, Text, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.shapes import ground
from templates_gen.drawing.sizes import H25, HAIR, INNER_EDGE, NARROW, WIDE
from templates_gen.drawing.strokes import unbroken
from templates_gen.tiling.page import Page
from templates_gen.tiling.rulers import END, Ruler, rulers
from templates_gen.tiling.sheet import Sheet, SheetPlan

RULERS_FORM, LYING_FORM = "rulers", "rulers, lying"

OFF = 0.7
"""mm between a ruler and what lies on it: the black corner of a frame or a registration mark.  Our own design."""

# Divisions as on a steel rule: common practice, no source.
RULER_GRADES = {
    "in": Graduation(INCH / 8, ((8, 3.5), (4, 2.8), (2, 2.0), (1, 1.3)), 8, INCH),
    "mm": Graduation(5.0, ((10, 3.5), (2, 2.5), (1, 1.5)), 10, 1.0),
    "cm": Graduation(5.0, ((10, 3.5), (2, 2.5), (1, 1.5)), 10, 10.0),
}

OVER, BESIDE = 1.2, 3.9
"""mm from the level ruler up to its figures, and from the plumb one to the foot of its own, which lie.  Our own."""

END_STAYS = 6.0
"""mm at either end of a ruler that are whole, whatever runs along it.  Our own design, no source."""

BEYOND, TICKS, FIGURES = 5.0, 4.0, (4.5, 5.0)
"""mm that a ruler takes: beyond its ends, on the side of its ticks, and on that of its figures (level, plumb).  Our own
design, no source."""


def both_rulers(every: Sequence[SoFar]) -> Iterator[Drawn]:
    """Both rulers of every sheet's page, but for what would lie on black corners of frames or on registration marks,
    and sparing where a line of the wall runs along them.

    Sheets that have these at the same places share one form.
    """
    forms: dict[tuple[object, ...], Form] = {}
    for so_far in every:
        sheets, sheet, unit = so_far.sheets, so_far.sheet, so_far.plan.job.unit
        zones, own = rulers_zones(sheets, sheet, unit), form_of_rulers(sheets, sheet)
        marks, corners = _on_rulers(so_far)
        met = marks, corners, _beside_lines(so_far, rulers(sheet.page, sheets.paper.overlap, unit, marks))
        if not any(met):
            yield Drawn(page_items=(Use(own, 0.0, 0.0),), taken_beyond=zones)
            continue
        key = (own, *(tuple(tuple(round(side, 2) for side in box.sides) for box in some) for some in met))
        if key not in forms:
            name = f"{own}, {len(forms) + 1}"
            forms[key] = rulers_form(sheet.page, sheets.paper.overlap, unit, so_far.lettering, name, *met)
        yield Drawn(page_items=(Use(forms[key].name, 0.0, 0.0),), taken_beyond=zones, forms=(forms[key],))


def _on_rulers(so_far: SoFar) -> tuple[list[Rect], list[Rect]]:
    """The registration marks and the black corners of a sheet that rulers would run into (page mm)."""
    sheets, sheet = so_far.sheets, so_far.sheet
    level, plumb = rulers(sheet.page, sheets.paper.overlap, so_far.plan.job.unit)
    half, ticks, figures = END
    drawn = [
        Rect(level.x0 - half, level.y0 - ticks, level.x1 + half, level.y0 + figures),
        Rect(plumb.x0 - ticks, plumb.y0 - half, plumb.x0 + figures, plumb.y1 + half),
    ]
    dx, dy = so_far.to_page
    drawn = [box.shifted(-dx, -dy) for box in drawn]
    marks = () if sheets.hides else so_far.part.bars
    met = ([box for box in some if any(map(box.overlaps, drawn))] for some in (marks, so_far.on_wall.taken))
    found_marks, corners = ([box.shifted(dx, dy) for box in some] for some in met)
    return found_marks, corners


def _beside_lines(so_far: SoFar, both: tuple[Ruler, Ruler]) -> list[Rect]:
    """Along which stretches of both rulers a line of the wall runs, where ticks would make another line of it: edges of
    frames, both long lines, and drop scales (page mm)."""
    plan, (level, plumb), group = so_far.plan, both, so_far.plan.group
    bands = [Rect(group.x0, plan.level_line, group.x1, plan.level_line)]
    stands = [Rect(plan.centre_line, group.y0, plan.centre_line, group.y1)]
    for hung in so_far.part.frames:
        r = hung.rect
        bands += (Rect(r.x0, low, r.x1, low + INNER_EDGE) for low in (r.y0, r.y1 - INNER_EDGE))
        stands += (Rect(low, r.y0, low + INNER_EDGE, r.y1) for low in (r.x0, r.x1 - INNER_EDGE))
        stands += (scale.zone for scale in so_far.scales[hung.frame.id])
    low, high = (
        Rect(level.x0 + END_STAYS, level.y0 - TICKS, level.x1 - END_STAYS, level.y0 + FIGURES[0]),
        Rect(plumb.x0 - TICKS, plumb.y0 + END_STAYS, plumb.x0 + FIGURES[1], plumb.y1 - END_STAYS),
    )
    across = (low.meet(line.shifted(*so_far.to_page)) for line in bands)
    upward = (high.meet(line.shifted(*so_far.to_page)) for line in stands)
    return [
        *(replace(low, x0=met.x0, x1=met.x1) for met in across if met and met.width),
        *(replace(high, y0=met.y0, y1=met.y1) for met in upward if met and met.height),
    ]


def form_of_rulers(sheets: SheetPlan, sheet: Sheet) -> str:
    """The name of the form with the rulers of a sheet's page."""
    return RULERS_FORM if sheet.page is sheets.page else LYING_FORM


def rulers_form(
    page: Page, overlap: float, unit: str, lettering: Lettering, name: str = RULERS_FORM,
    marks: Sequence[Rect] = (), corners: Sequence[Rect] = (), sparing: Sequence[Rect] = (),
) -> Form:  # fmt: skip
    """Both rulers with their graduations and figures, about the page's lower left corner.

    Nothing of them lies on the registration marks and black corners of a sheet (page mm), and they are `sparing` where
    a line of the wall runs along them.
    """
    ruled = rulers(page, overlap, unit, marks)
    size = Rect(0, 0, page.printable.x1, page.printable.y1)
    without = [box.grown(OFF) for box in (*marks, *corners)]
    return Form(name, size, tuple(_both(*ruled, unit, lettering, without, sparing)))


def _both(
    level: Ruler, plumb: Ruler, unit: str, lettering: Lettering, without: Sequence[Rect], sparing: Sequence[Rect]
) -> Iterator[Item]:
    """Both rulers, but nothing of them in the boxes `without`, and in those `sparing` figures with their ticks alone.

    Under the figures is white, so that lines of the wall break off there instead of crossing or following them.
    """
    every, ticks = (*without, *sparing), _ticks(level, plumb, unit)
    yield from unbroken((Line(ruler.x0, ruler.y0, ruler.x1, ruler.y1, NARROW) for ruler in (level, plumb)), every)
    for line, box, figure in ticks:
        if not any(map(box.overlaps, without if figure else every)):
            yield line
    boxes = [(figure, lettering.box(figure)) for _, _, figure in ticks if figure]
    written = [(figure, box) for figure, box in boxes if not any(map(box.overlaps, without))]
    yield from (ground(box) for _, box in written)
    yield from (figure for figure, _ in written)


@lru_cache
def _ticks(level: Ruler, plumb: Ruler, unit: str) -> tuple[tuple[Line, Rect, Text | None], ...]:
    """Every tick of both rulers with what it takes, and its figure if it has one; most pages have the same."""
    grade, ticks = RULER_GRADES[unit], []
    for x, number in ticks_along(level.x0, level.x1, level.x0, grade):
        line = Line(x, level.y0, x, level.y0 - grade.tick(number), _weight(x, level.x0, level.x1))
        figure = f"{grade.figure(number)} {unit}" if number else "0"
        ticks.append((line, Text(x, level.y0 + OVER, figure, H25, "middle") if grade.figure(number) else None))
    for y, number in ticks_along(plumb.y0, plumb.y1, plumb.y0, grade):
        line = Line(plumb.x0, y, plumb.x0 - grade.tick(number), y, _weight(y, plumb.y0, plumb.y1))
        figure = f"{grade.figure(number)} {unit}" if number else "0"
        ticks.append((line, Text(plumb.x0 + BESIDE, y, figure, H25, "middle", 90) if grade.figure(number) else None))
    return tuple((line, box_about(line).grown(HAIR), figure) for line, figure in ticks)


def ruler_ends(sheets: SheetPlan, sheet: Sheet, unit: str, marks: Sequence[Rect]) -> Iterator[Rect]:
    """The ticks at both ends of a sheet's two rulers, which are measured between, with these registration marks on it
    (wall mm)."""
    area = sheet.page.printable
    dx, dy = sheet.window.x0 - area.x0, sheet.window.y0 - area.y0
    level, plumb = rulers(sheet.page, sheets.paper.overlap, unit, [mark.shifted(-dx, -dy) for mark in marks])
    long = RULER_GRADES[unit].ticks[0][1]
    for x in (level.x0, level.x1):
        yield Rect(x, level.y0 - long, x, level.y0).shifted(dx, dy).grown(WIDE)
    for y in (plumb.y0, plumb.y1):
        yield Rect(plumb.x0 - long, y, plumb.x0, y).shifted(dx, dy).grown(WIDE)


def _weight(at: float, start: float, end: float) -> float:
    """The ends that are measured between are stronger than the other ticks."""
    return WIDE if min(abs(at - start), abs(at - end)) < 1e-6 else HAIR


def rulers_zones(sheets: SheetPlan, sheet: Sheet, unit: str) -> tuple[Rect, Rect]:
    """What the two rulers with their figures take of a sheet (wall mm)."""
    area = sheet.page.printable
    shift = sheet.window.x0 - area.x0, sheet.window.y0 - area.y0
    level, plumb = rulers(sheet.page, sheets.paper.overlap, unit)
    return (
        Rect(level.x0 - BEYOND, level.y0 - TICKS, level.x1 + BEYOND, level.y0 + FIGURES[0]).shifted(*shift),
        Rect(plumb.x0 - TICKS, plumb.y0 - BEYOND, plumb.x0 + FIGURES[1], plumb.y1 + BEYOND).shifted(*shift),
    )
