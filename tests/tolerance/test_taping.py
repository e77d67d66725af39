"""The order of taping, on the map and in words."""

from __future__ import annotations

import math
import re
from itertools import combinations, product
from random import Random

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.documents.instructions.taping_steps import diagonals, taping_steps
from templates_gen.drawing.items import Polygon, Text
from templates_gen.tiling.sheet import Join, SheetPlan
from templates_gen.tolerance.holding import plan_sheets
from templates_gen.tolerance.order import taping_order
from templates_gen.tolerance.taping import FEW, _outermost
from tests.crowded import crowded
from tests.jobs import paper
from tests.made import NAMES, made
from tests.tiling.test_linked import SIZES

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
    told = {int(number): run_of(run) for run, number in re.findall(rf"({RUN}) \(step (\d+)[:)]", words)}
    assert told == dict((*order.made, *order.laid))


def run_of(words: str) -> tuple[str, ...]:
    """The sheets that "7", "3 and 4", "3, 5 and 6" and "3 to 6" name."""
    if " to " in words:
        first, last = map(int, words.split(" to "))
        return tuple(str(number) for number in range(first, last + 1))
    return tuple(re.findall(r"\d+", words))


RUN = r"(?:\d+, )*\d+(?: (?:to|and) \d+)?"
STEP_UNDER, SAID_UNDER = re.compile(r"\(step (\d+): ([^)]*)\)"), re.compile(rf"({RUN}) under ({RUN})")
SLID = " always on top (slide those in that go under others): "


CHANCE = [*product(range(8), ("marks", "nails")), *((seed, "linked") for seed in range(4))]


@pytest.mark.parametrize(
    ("seed", "cover", "trim"),  # uncut every second pair of seeds: both sizes are met either way
    [(seed, cover, ("cut", "none")[seed // 2 % 2]) for seed, cover in CHANCE],
)
def test_what_goes_under_paper_already_there_is_said_at_its_step(seed: int, cover: str, trim: str) -> None:
    """In crowded jobs by chance; followed sheet by sheet, as a pair of hands would follow the words."""
    on = paper(SIZES[seed % 2], trim=trim, cover=cover)
    sheets = plan_sheets(plan_wall(crowded(seed, on)), on)
    order = taping_order(sheets)
    words = " ".join(taping_steps(sheets, order))
    step_of = dict.fromkeys((name for names in order.begun for name in names), 0)
    step_of |= {name: number for number, names in order.laid for name in names}
    said = set()
    for step, pairs in STEP_UNDER.findall(words):
        for low, high in (SAID_UNDER.fullmatch(pair).groups() for pair in pairs.split("; ")):
            assert {step_of[under] for under in run_of(low)} == {int(step)}
            said |= {(under, over) for under in run_of(low) for over in run_of(high)}
    for join in sheets.joins:
        assert ((join.under, join.over) in said) == (step_of[join.under] > step_of[join.over])
    assert (SLID in words) == bool(said)
    strips = [sheets.sheet(names[0]).strip for names in (*order.begun, *(names for _, names in order.laid))]
    if re.search("from the (bottom row up|left column to the right)", words):
        assert strips == sorted(strips)


def test_a_block_laid_before_one_that_goes_under_it_is_said_to_be_in_this_order() -> None:
    """Some crowded job by chance has such a block, and some has none: both kinds of words are met."""
    told = [" ".join(taping_steps(s, taping_order(s))) for s in map(crowded_sheets, range(8))]
    assert {"in this order" in words for words in told} == {True, False}
    assert any(SLID in words for words in told)


def crowded_sheets(seed: int) -> SheetPlan:
    """Strips, which are not searched for fewer minutes."""
    return plan_sheets(plan_wall(crowded(seed, paper())), paper(), quick=True)


LEAST = 1.8
"""mm; the lettering height of ISO 3098-1 (from memory) that the steps' numbers have."""

ON_LINE = 0.5
"""mm by which the middle of a number's ink may lie off its join on the map, which goes through it.  Our own design."""


def on_the_map(name: str) -> tuple[list[tuple[Text, float, float]], float]:
    """The numbers of steps on the map, with the wall's point under the middle of each, and the map's scale.

    The scale is found from the outlines of the sheets.
    """
    done = made(name)
    items = [item for page in done.template.pages[:3] for item in page.page_items if not page.wall_items]
    outlines = [i for i in items if isinstance(i, Polygon) and not i.filled and len(i.points) == 4]
    cells = [outline.points for outline in outlines[: len(done.sheets.sheets)]]
    first = done.sheets.sheets[0].cell
    scale = (cells[0][1][0] - cells[0][0][0]) / first.width
    dx, dy = cells[0][0][0] - first.x0 * scale, cells[0][0][1] - first.y0 * scale
    found = []
    for item in items:
        if isinstance(item, Text) and item.text.isdigit() and item.height == LEAST and not item.bold:
            ink = done.lettering.box(item)
            found.append((item, (ink.cx - dx) / scale, (ink.cy - dy) / scale))
    return found, scale


@all_jobs
def test_numbers_on_the_map_stand_on_joins_of_their_steps(name: str) -> None:
    """Every join longer than 160 mm has one: shorter ones have no room on some maps.  Our own design, no source."""
    done, (found, scale) = made(name), on_the_map(name)
    steps, shown_joins, elsewhere = taping_order(done.sheets).joins, set[Join](), 0
    for text, x, y in found:
        near = [join for join in done.sheets.joins if _on(join, x, y, ON_LINE / scale)]
        shown_joins.update(near)
        elsewhere += not near
        assert not near or int(text.text) in {steps[join.over, join.under] for join in near}
    assert elsewhere == bool(done.sheets.joins)  # the key's own
    assert {join for join in done.sheets.joins if join.length > 160} <= shown_joins


@all_jobs
def test_every_step_has_its_number_on_the_map(name: str) -> None:
    order = taping_order(made(name).sheets)
    figures = {text.text for text, *_ in on_the_map(name)[0]}
    assert {str(number) for number, _ in (*order.made, *order.laid)} <= figures


def _on(join: Join, x: float, y: float, off: float) -> bool:
    """True for a point on the join's line, or so little off it."""
    return join.x0 - off <= x <= join.x1 + off and join.y0 - off <= y <= join.y1 + off


@all_jobs
def test_the_key_of_the_map_is_there_where_sheets_are_joined(name: str) -> None:
    done = made(name)
    said = [i.text for page in done.template.pages for i in page.page_items if isinstance(i, Text)]
    key = [text for text in said if text == "on a join: the step in which it is taped"]
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


def test_diagonals_that_are_to_differ_are_not_called_wrong_for_it() -> None:
    """Along the stair one diagonal is longer than the other: what tells of a turned join is a length not as said."""
    words = next(iter(diagonals(made("lock-keepers").plan, 24)))
    one, two = re.findall(r"\([ab]\)(?: must be)? ([^·]+) ·", words)
    assert one != two
    assert words.endswith("If they are not, a join is turned: open it and tape it again.") and "differ" not in words


@pytest.mark.parametrize("seed", range(20))
def test_of_many_marks_those_farthest_apart_are_found(seed: int) -> None:
    """Those that every two of them compared give."""
    chance = Random(seed)
    marks = [(chance.uniform(0.0, 900.0), chance.uniform(0.0, 90.0 + 40.0 * seed), 0, at) for at in range(3 * FEW)]
    fit = _outermost(marks)
    assert fit is not None
    assert math.dist(fit.first[:2], fit.last[:2]) == max(
        math.dist(one[:2], two[:2]) for one, two in combinations(marks, 2)
    )
