"""The map of many sheets, in parts: every sheet on one of them, large enough to be told apart."""

from __future__ import annotations

from collections import Counter
from functools import cache

import pytest

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.documents.instructions.first_pages import area_beside_rulers
from templates_gen.documents.instructions.map_numbers import sheet_numbers
from templates_gen.documents.instructions.map_pages import LEAST_CELL, map_pages
from templates_gen.drawing.flow import Flow
from templates_gen.drawing.items import Item, Polygon, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room
from templates_gen.job.paper_sizes import large_page
from templates_gen.tiling.page import page_of
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.diagonals import corners_to_measure
from templates_gen.tolerance.holding import plan_sheets
from templates_gen.tolerance.order import taping_order
from tests.jobs import frame, group, job, many, paper

SMALLEST = 1.8  # mm; the least lettering height of ISO 3098-1, from memory


@cache
def planned(across: int, count: int = 120) -> tuple[Plan, SheetPlan]:
    plan = plan_wall(many(count, across))
    return plan, plan_sheets(plan, plan.job.paper)


def pages_of(plan: Plan, sheets: SheetPlan) -> tuple[list[list[Text]], list[list[Rect]], Flow]:
    """The texts and the open outlines on every page of the map."""
    flow = Flow(area_beside_rulers(sheets.page, sheets.paper.overlap), Lettering())
    map_pages(flow, plan, sheets)
    texts = [[item for item in page if isinstance(item, Text)] for page in flow.pages]
    open_ones = [[item for item in page if isinstance(item, Polygon) and not item.filled] for page in flow.pages]
    outlines = [[box(item) for item in page if len(item.points) == 4] for page in open_ones]  # houses have five
    return texts, outlines, flow


def in_houses(page: list[Item]) -> list[str]:
    """The numbers on a page that have a house around them, or have no room for one."""
    houses = [box(item) for item in page if isinstance(item, Polygon) and not item.filled and len(item.points) == 5]
    texts = [item for item in page if isinstance(item, Text) and item.bold]
    housed = [text for text in texts if any(house.has_point(text.x, text.y) for house in houses)]
    return [text.text for text in texts if text in housed or text.height == SMALLEST]


def box(outline: Polygon) -> Rect:
    xs, ys = zip(*outline.points, strict=True)
    return Rect(min(xs), min(ys), max(xs), max(ys))


@pytest.mark.parametrize("across", [40, 12])
def test_every_sheet_is_on_one_part_and_on_the_page(across: int) -> None:
    plan, sheets = planned(across)
    texts, outlines, flow = pages_of(plan, sheets)
    parts = Counter(item.text for page in texts for item in page if item.text.startswith("The sheets, part"))
    assert len(parts) >= 2 and set(parts.values()) == {1}
    names = Counter(number for page in flow.pages for number in in_houses(page))
    names["1"] -= len(parts)  # every part has its key
    assert all(names[sheet.name] <= 1 for sheet in sheets.sheets)
    assert sum(names[sheet.name] for sheet in sheets.sheets) >= 0.95 * len(sheets.sheets)
    drawn = [side for page in outlines for side in page]
    assert len(drawn) == len(sheets.sheets) + len(parts)  # the parts' own outlines are on the overview
    assert all(flow.area.grown(1e-6).holds(side) for side in drawn)


@pytest.mark.parametrize("across", [40, 12])
def test_sheets_can_be_told_apart_and_steps_of_taping_found(across: int) -> None:
    plan, sheets = planned(across)
    texts, outlines, _ = pages_of(plan, sheets)
    widths = sorted(min(side.width, side.height) for page in outlines for side in page)
    assert widths[len(widths) // 2] >= LEAST_CELL
    steps = {f"{number}" for number in taping_order(sheets).joins.values()}
    told = {item.text for page in texts for item in page}
    assert len(steps & told) >= 0.9 * len(steps)


def test_a_map_that_can_be_read_is_one() -> None:
    texts, outlines, _ = pages_of(*planned(5, 20))
    assert not [item for page in texts for item in page if "part" in item.text]
    assert sum(map(len, outlines)) == len(planned(5, 20)[1].sheets)


def test_nearly_every_sheet_of_a_single_map_has_its_house() -> None:
    """A number without one can be taken for that of a step on a join."""
    plan, sheets = planned(4, 12)
    (page,) = pages_of(plan, sheets)[2].pages
    open_ones = [item for item in page if isinstance(item, Polygon) and not item.filled and len(item.points) == 5]
    assert len(open_ones) - 1 >= 0.9 * len(sheets.sheets)  # and one in the key


@pytest.mark.parametrize("high", [1.9, 1.5])
def test_a_sheet_lower_on_the_map_than_its_number_has_it_all_the_same(high: float) -> None:
    _, sheets = planned(2, 4)
    low = min(sheet.cell.height for sheet in sheets.sheets)
    up, across = high / low, 0.1  # mm on the map for one on the wall

    def at(rect: Rect) -> Rect:
        return Rect(rect.x0 * across, rect.y0 * up, rect.x1 * across, rect.y1 * up)

    room = Room(Rect(-1e6, -1e6, 1e6, 1e6))
    told = [item.text for item in sheet_numbers(sheets, (SMALLEST,), at, room, Lettering()) if isinstance(item, Text)]
    assert sorted(told) == sorted(sheet.name for sheet in sheets.sheets)


def test_a_part_shows_the_corners_of_the_whole_group_alone() -> None:
    """Those that the taped paper is measured between: each on a part, and none of the part's own frames."""
    plan, sheets = planned(40)
    flow = pages_of(plan, sheets)[2]
    black = [item for page in flow.pages for item in page if isinstance(item, Polygon) and item.filled]
    triangles = [item for item in black if len(item.points) == 3]
    parts = sum(text.text.startswith("The sheets, part") for page in pages_of(plan, sheets)[0] for text in page)
    corners = corners_to_measure(plan)
    assert parts > 2 and len(corners) <= len(triangles) <= 2 * len(corners) < parts * len(corners)


def test_the_map_of_one_sheet_has_no_number_and_every_frames_whole_name() -> None:
    names = ("Sheet bend", "Bowline", "Reef knot", "Clove hitch")
    frames = [frame(name, 300.0, 400.0, 50.0) for name in names]
    one = job(*frames, group=group((names[:2], names[2:]), gap=300.0), paper=large_page(paper()))
    plan = plan_wall(one)
    sheets = plan_sheets(plan, plan.job.paper)
    assert len(sheets.sheets) == 1
    flow = Flow(area_beside_rulers(page_of(paper(), turned=False), sheets.paper.overlap), Lettering())
    map_pages(flow, plan, sheets)
    assert not any(isinstance(item, Polygon) and len(item.points) == 5 for page in flow.pages for item in page)
    assert set(names) <= {item.text for page in flow.pages for item in page if isinstance(item, Text)}
