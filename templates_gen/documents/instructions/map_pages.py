"""The map of the sheets on its pages: in one picture, or in parts where its sheets would be too small to tell apart."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from functools import partial
from math import ceil
from statistics import median

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import Rect, bounds
from templates_gen.base.grid_index import Near
from templates_gen.base.record import Record, replace
from templates_gen.documents.instructions.sheet_map import (
    CELL,
    KEY,
    frames_on_map,
    map_area,
    map_height,
    sheet_map,
    to_map,
)
from templates_gen.drawing.flow import LEADING, Flow
from templates_gen.drawing.items import Item, Polygon, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.sizes import H7, H25, H35, MEDIUM
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.order import taping_order

LEAST_CELL = 6.0
"""mm that half of the sheets must be on the map, both ways, to be told apart on it.  Our own design, no source."""

HIGHEST = 0.85
"""How much of a page's height a part of the map takes at most.  Our own design, no source."""

LARGER = 1.5
"""How many times its usual size a sheet is on a part with few of them, at most.  Our own design, no source."""

HEADING, SMALLER = 14.0, 0.75
"""mm that the map's heading takes; how much smaller the map is drawn rather than on the next page.  Our own design, no
source."""


class Part(Record, frozen=True):
    """Some of the sheets, their joins, and the frames behind them."""

    plan: Plan
    sheets: SheetPlan


def map_pages(flow: Flow, plan: Plan, sheets: SheetPlan) -> None:
    """The map of the sheets; one in parts has an overview of the parts before them."""
    steps = taping_order(sheets).joins
    wanted, left = map_height(plan, sheets, flow.area), flow.top - flow.area.y0 - HEADING
    height = left if SMALLER * wanted <= left < wanted else wanted  # a little smaller rather than on the next page
    flow.heading("The sheets", follows=height)
    parts = _parts(plan, sheets, flow.area, height)
    if len(parts) < 2:
        flow.picture(height, partial(sheet_map, plan, sheets, steps, flow.lettering))
        return
    flow.paragraph(f"One map would be too small to read: it follows in {len(parts)} parts.")
    size = _size(sheets)
    flow.picture(height - H25 * LEADING, partial(_overview, plan, sheets, parts, flow.lettering))
    for number, part in enumerate(parts, 1):
        area = map_area(part.plan, part.sheets)
        scale = min(flow.area.width / area.width, LARGER * CELL / size)
        height = min(HIGHEST * flow.area.height, scale * area.height + KEY)
        flow.heading(f"The sheets, part {number} of {len(parts)}", follows=height)
        flow.picture(height, partial(sheet_map, part.plan, part.sheets, steps, flow.lettering, whole=plan))


def _overview(plan: Plan, sheets: SheetPlan, parts: list[Part], lettering: Lettering, place: Rect) -> Iterator[Item]:
    """The frames, and the parts with their numbers."""
    _, at = to_map(map_area(plan, sheets), place)
    yield from frames_on_map(plan, at)
    for number, part in enumerate(parts, 1):
        box = at(bounds(sheet.cell for sheet in part.sheets.sheets))
        yield Polygon(box.corners, MEDIUM, False)
        yield _number(f"{number}", box, lettering)


def _number(number: str, box: Rect, lettering: Lettering) -> Text:
    """The number in the middle of a box, as large as it can be and at least legible."""
    texts = (Text(box.cx, box.cy, number, height, "middle", bold=True) for height in (H7, H35))
    inside = (text for text in texts if lettering.box(text).height < box.height - 1.0)
    text = next(inside, Text(box.cx, box.cy, number, H25, "middle", bold=True))
    return replace(text, y=2 * box.cy - lettering.box(text).cy)


def _parts(plan: Plan, sheets: SheetPlan, page: Rect, height: float) -> list[Part]:
    """The parts in rows from the upper left, each so large that its map fits the page; one when one map does."""
    area = map_area(plan, sheets)
    size = _size(sheets)
    if min(page.width / area.width, (height - KEY) / area.height) * size >= LEAST_CELL:
        return [Part(plan, sheets)]
    across = ceil(area.width * CELL / size / page.width)
    down = ceil(area.height * CELL / size / (HIGHEST * page.height))
    part_of, own, joins = {}, defaultdict(list), defaultdict(list)
    for sheet in sheets.sheets:
        row = int((area.y1 - sheet.cell.cy) / area.height * down)
        part_of[sheet.name] = which = row, int((sheet.cell.cx - area.x0) / area.width * across)
        own[which].append(sheet)
    for join in sheets.joins:
        for which in {part_of[join.over], part_of[join.under]}:
            joins[which].append(join)
    frames = Near((hung.rect, hung) for hung in plan.frames)
    some = (replace(sheets, sheets=tuple(own[which]), joins=tuple(joins[which])) for which in sorted(own))
    return [_part(plan, part, frames) for part in some]


def _size(sheets: SheetPlan) -> float:
    """What half of the sheets measure at least, both ways (mm)."""
    return median(min(sheet.cell.width, sheet.cell.height) for sheet in sheets.sheets)


def _part(plan: Plan, sheets: SheetPlan, frames: Near[Hung]) -> Part:
    """These sheets with the frames that they show."""
    shown = bounds(sheet.cell for sheet in sheets.sheets)
    hung = tuple(hung for hung in frames.about(shown) if hung.rect.overlaps(shown))
    return Part(replace(plan, frames=hung, group=bounds([shown, *(some.rect for some in hung)])), sheets)
