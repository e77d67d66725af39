"""The order of taping, on the map and in words."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.documents.instructions.taping_steps import taping_steps
from templates_gen.drawing.items import Polygon, Text
from templates_gen.tiling.sheet import Join, SheetPlan
from templates_gen.tolerance.holding import plan_sheets
from templates_gen.tolerance.order import Order, taping_order
from tests.crowded import crowded
from tests.jobs import paper
from tests.made import NAMES, made

all_jobs = pytest.mark.parametrize("name", NAMES)


@all_jobs
def test_every_join_is_taped_in_one_numbered_step(name: str) -> None:
    sheets = made(name).sheets
    order = taping_order(sheets)
    steps = [number for number, _ in (*order.made, *order.laid)]
    assert steps == list(range(1, len(steps) + 1))
    assert set(order.joins) == {(join.over, join.under) for join in sheets.joins}
    assert set(order.joins.values()) == set(steps)


@all_jobs
def test_blocks_come_before_their_long_joins(name: str) -> None:
    """Every sheet is in one block alone; a join within a block has its number, all others come after all blocks."""
    sheets = made(name).sheets
    order = taping_order(sheets)
    block_of = {sheet: number for number, names in order.made for sheet in names}
    assert len(block_of) == sum(len(names) for _, names in order.made)
    for (over, under), number in order.joins.items():
        inside = over in block_of and block_of[over] == block_of.get(under)
        assert number == block_of[over] if inside else number > len(order.made)


@all_jobs
def test_the_steps_name_every_block_with_its_number(name: str) -> None:
    sheets = made(name).sheets
    order, words = taping_order(sheets), " ".join(taping_steps(sheets, taping_order(sheets)))
    words = words.replace(SLID.search(words)[0], "") if SLID.search(words) else words
    told = {int(number): run for run, number in re.findall(r"([A-Z]*\d+(?: (?:to|and) [A-Z]*\d+)?) \((\d+)\)", words)}
    assert set(told) == {number for number, _ in (*order.made, *order.laid)}
    for number, names in (*order.made, *order.laid):
        assert told[number].split(" ")[0] == names[0] and told[number].split(" ")[-1] == names[-1]


RUN = r"([A-Z]*\d+)(?: (?:to|and) ([A-Z]*\d+))?"
SAID_UNDER = re.compile(rf"{RUN} under {RUN} \((\d+)\)")
SLID = re.compile(r" Slide these under the paper that is already there: [^.]*\.")


@pytest.mark.parametrize("trim", ["cut", "none"])
@pytest.mark.parametrize("cover", ["marks", "linked", "nails"])
@pytest.mark.parametrize("seed", range(8))
def test_what_goes_under_paper_already_there_is_said_at_its_step(seed: int, cover: str, trim: str) -> None:
    """In crowded jobs by chance; followed sheet by sheet, as a pair of hands would follow the words."""
    on = paper(cover=cover, trim=trim)
    sheets = plan_sheets(plan_wall(crowded(seed, on)), on)
    order = taping_order(sheets)
    words = " ".join(taping_steps(sheets, order))
    step_of = dict.fromkeys((name for names in order.begun for name in names), 0)
    step_of |= {name: number for number, names in order.laid for name in names}
    said = set()
    for low, low_end, high, high_end, step in SAID_UNDER.findall(words):
        for under in _run_of(order, low, low_end or low):
            assert step_of[under] == int(step)
            said |= {(under, over) for over in _run_of(order, high, high_end or high)}
    for join in sheets.joins:
        assert ((join.under, join.over) in said) == (step_of[join.under] > step_of[join.over])
    assert bool(SLID.search(words)) == bool(said)
    strips = [sheets.sheet(names[0]).strip for names in (*order.begun, *(names for _, names in order.laid))]
    if re.search("from the (bottom row up|left column to the right)", words):
        assert strips == sorted(strips)


def _run_of(order: Order, first: str, last: str) -> tuple[str, ...]:
    """The sheets of a block from one to another."""
    (run,) = (names for names in (*order.begun, *(n for _, n in order.laid)) if first in names)
    return run[run.index(first) : run.index(last) + 1]


def test_a_block_laid_before_one_that_goes_under_it_is_said_to_be_in_this_order() -> None:
    """Some crowded job by chance has such a block, and some has none: both kinds of words are met."""
    told = [" ".join(taping_steps(s, taping_order(s))) for s in map(crowded_sheets, range(8))]
    assert {"in this order" in words for words in told} == {True, False}
    assert any("Slide these under the paper that is already there" in words for words in told)


def crowded_sheets(seed: int) -> SheetPlan:
    return plan_sheets(plan_wall(crowded(seed, paper())), paper())


def heads(name: str) -> Iterator[tuple[float, float]]:
    """Points of the arrow heads on the map (page mm), but for that of the key: a small filled triangle."""
    before = [page for page in made(name).template.pages[:3] if not page.wall_items]
    maps = [page for page in before if not page.title.endswith("The hanging day")]  # there are arrows in its pictures
    for item in (item for page in maps for item in page.page_items):
        if isinstance(item, Polygon) and item.filled and len(item.points) == 3 and item.grey == 0:
            yield item.points[2]


@all_jobs
def test_arrow_heads_on_the_map_stand_on_their_joins_and_point_to_the_lower_sheet(name: str) -> None:
    """The map brings the wall to the page by one scale, found from the sheets' outlines; all heads but one are joins'.

    Every join longer than 130 mm has one: shorter ones have no room on some maps.  Our own design, no source.
    """
    done = made(name)
    items = [item for page in done.template.pages[:3] for item in page.page_items if not page.wall_items]
    outlines = [i for i in items if isinstance(i, Polygon) and not i.filled and len(i.points) == 4]
    cells = [outline.points for outline in outlines[: len(done.sheets.sheets)]]
    first = done.sheets.sheets[0].cell
    scale = (cells[0][1][0] - cells[0][0][0]) / first.width
    dx, dy = cells[0][0][0] - first.x0 * scale, cells[0][0][1] - first.y0 * scale
    found = list(heads(name))
    on_joins, shown_joins = 0, set[Join]()
    for x, y in found:
        wall_x, wall_y = (x - dx) / scale, (y - dy) / scale
        near = [join for join in done.sheets.joins if _just_beyond(join, wall_x, wall_y, 0.9 / scale)]
        on_joins += bool(near)
        shown_joins.update(near)
        for join in near:
            assert done.sheets.sheet(join.under).cell.has_point(wall_x, wall_y)
    assert on_joins == max(0, len(found) - 1)  # the key's own
    long = {join for join in done.sheets.joins if math.dist((join.x0, join.y0), (join.x1, join.y1)) > 130}
    assert long <= shown_joins


@all_jobs
def test_every_step_has_its_number_on_the_map(name: str) -> None:
    """In bold figures 1.8 mm high (ISO 3098-1 series, from memory)."""
    done = made(name)
    order = taping_order(done.sheets)
    items = [item for page in done.template.pages[:3] for item in page.page_items if not page.wall_items]
    figures = {i.text for i in items if isinstance(i, Text) and i.bold and i.height == 1.8}
    assert {str(number) for number, _ in (*order.made, *order.laid)} <= figures


def _just_beyond(join: Join, x: float, y: float, reach: float) -> bool:
    """True for a point under or left of the join, as far as an arrow head reaches."""
    if join.upright:
        return abs(join.x0 - x - reach) < 0.2 * reach and join.y0 <= y <= join.y1
    return abs(join.y0 - y - reach) < 0.2 * reach and join.x0 <= x <= join.x1


@all_jobs
def test_the_key_of_the_map_is_there_where_sheets_are_joined(name: str) -> None:
    done = made(name)
    said = [i.text for page in done.template.pages for i in page.page_items if isinstance(i, Text)]
    key = [text for text in said if text.startswith("points from the sheet on top")]
    assert len(key) == bool(done.sheets.joins)


@all_jobs
def test_the_report_says_of_every_join_what_lies_over_what_where_and_in_which_step(name: str) -> None:
    """Pages and lines by the sheets' own cells: the two cells meet in the line, and it runs along a whole side."""
    report, order = made(name).report, taping_order(made(name).sheets)
    cells = {sheet["page"]: (sheet["name"], sheet["cell"]) for sheet in report["sheets"]}
    assert len(report["joins"]) == len(made(name).sheets.joins)
    for join in report["joins"]:
        (over, above), (under, below) = cells[join["over"]], cells[join["under"]]
        assert join["step"] == order.joins[over, under]
        low = [max(one, two) for one, two in zip(above[:2], below[:2], strict=True)]
        high = [min(one, two) for one, two in zip(above[2:], below[2:], strict=True)]
        assert join["line"] == [*low, *high]
