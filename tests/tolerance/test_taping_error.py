"""How far taping moves points: against a simulation of the taping, and against the formula of a single chain."""

from itertools import pairwise

import numpy as np
import pytest

from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.job.accuracy import firm
from templates_gen.tiling.page import Page
from templates_gen.tiling.planning import tiled
from templates_gen.tiling.sheet import Join, RegistrationMark, Sheet, SheetPlan
from templates_gen.tolerance.order import in_order_of_taping
from templates_gen.tolerance.spread import variance
from templates_gen.tolerance.strung import taped
from templates_gen.tolerance.taping import blocks
from tests.jobs import paper
from tests.made import made
from tests.taping_by_hand import Hands

MATCH = 0.4  # mm: what the chains below were simulated with
FIRM = firm(MATCH)

# joins, mm from join to join, mm between a join's marks, match in mm, sd along and across at the middle of the last
# sheet (mm): our own simulation, 20 000 draws; and the formula σ/√2·√N along,
# √(N·σ²/2 + (σ√2·step/d)²·Σ(k − ½)²) across, worked out by hand here
CHAINS = [
    (5, 190.0, 270.0, 0.4, 0.63, 2.63),
    (10, 190.0, 270.0, 0.4, 0.90, 7.29),
    (15, 190.0, 270.0, 0.4, 1.09, 13.4),
    (10, 267.0, 180.0, 0.4, 0.89, 15.3),
    (10, 190.0, 270.0, 0.25, 0.56, 4.56),
    (10, 190.0, 100.0, 0.4, 0.90, 19.6),
]


def chain(joins: int, step: float, distance: float) -> SheetPlan:
    """A row of sheets with `joins` joins, each with two marks so far apart; the row's middle is at a height of 0."""
    cells = [Rect(at * step, -distance / 2, (at + 1) * step, distance / 2) for at in range(joins + 1)]
    names = [f"{chr(ord('A') + at)}1" for at in range(joins + 1)]
    matrix = (1, 0, 0, 1, 0, 0)
    page = Page(595, 841, Rect(7.0, 13.0, 203.0, 290.0))
    sheets = tuple(Sheet(name, 0, cell, cell, cell, matrix, page) for name, cell in zip(names, cells, strict=True))
    taped_at = [(left, right, cell.x0) for (left, right), cell in zip(pairwise(names), cells[1:], strict=True)]
    return SheetPlan(
        paper(), page, sheets,
        tuple(Join(right, left, x, -distance / 2, x, distance / 2) for left, right, x in taped_at),
        tuple(
            RegistrationMark("a", x, y, pair) for *pair, x in map(list, taped_at) for y in (-distance / 2, distance / 2)
        ),
        rows=True,
    )  # fmt: skip


def spread(sheets: SheetPlan, ends: list[tuple[int, float, float]], level: float, string: bool = False):
    """The sds in mm, for a match of 1 mm, of the second of two points against the first: to the side and upward."""
    (a, ax, ay), (b, bx, by) = ends
    tape = taped(sheets, level, string)
    across = variance(tape, [(b, bx, by, 1.0, 0.0), (a, ax, ay, -1.0, 0.0)])
    up = variance(tape, [(b, bx, by, 0.0, 1.0), (a, ax, ay, 0.0, -1.0)])
    return across**0.5, up**0.5


@pytest.mark.parametrize(("joins", "step", "distance", "match", "along", "across"), CHAINS)
def test_a_single_chain_spreads_as_simulated_and_as_its_formula_says(joins, step, distance, match, along, across):
    sheets = chain(joins, step, distance)
    found = spread(sheets, [(0, 0.0, 0.0), (joins, (joins + 0.5) * step, 0.0)], level=0.0)
    assert [match * sd for sd in found] == pytest.approx([along, across], rel=0.02)
    squares = sum((k - 0.5) ** 2 for k in range(1, joins + 1))
    exact = (joins * match**2 / 2 + (match * 2**0.5 * step / distance) ** 2 * squares) ** 0.5
    assert match * found[1] == pytest.approx(exact, rel=1e-9)
    assert match * found[0] == pytest.approx(match * (joins / 2) ** 0.5, rel=1e-9)


def test_with_a_string_a_chain_does_not_turn_more_and_more():
    """Marks turn a sheet by √2 / 270, the string by half of √2 over its 190 mm of line; each counts for the contrary of
    its variance, and what the marks turned is carried on by what the string leaves of it: worked out by hand."""
    sheets, joins, step = chain(10, 190.0, 270.0), 10, 190.0
    across = spread(sheets, [(0, 0.0, 0.0), (joins, (joins + 0.5) * step, 0.0)], level=0.0, string=True)[1]
    marks, string = (2**0.5 / 270.0) ** 2, (0.5 * 2**0.5 / 190.0) ** 2
    weights, known = [], 0.0
    for _ in range(joins):
        weights.append(1 / string / (1 / string + 1 / (known + marks)))
        known = 1 / (1 / string + 1 / (known + marks))
    assert (weights[0], weights[-1]) == pytest.approx((0.66, 0.73), abs=0.01)
    total = joins / 2
    for turned in range(joins):  # every join shifts, and turns what lies beyond it by ever less
        arm, left = 0.0, 1.0
        for at in range(turned, joins):
            left *= 1 - weights[at] if at > turned else 1.0
            arm += left * (step if at < joins - 1 else step / 2)
        total += arm**2 * ((1 - weights[turned]) ** 2 * marks + weights[turned] ** 2 * string)
    assert across == pytest.approx(total**0.5, rel=1e-9)
    assert MATCH * across < 7.29 / 4  # far less than without: the second of CHAINS


def test_a_string_that_is_read_without_error_leaves_no_turn_and_one_that_is_not_read_all_of_it():
    sheets, ends = chain(10, 190.0, 270.0), [(0, 0.0, 0.0), (10, 10.5 * 190.0, 0.0)]
    tapes = [taped(sheets, 0.0, *how) for how in ((True, 0.0), (True, 1e9), (False, 0.5))]
    terms = [(at, x, y, 0.0, sign) for (at, x, y), sign in zip(ends, (-1.0, 1.0), strict=True)]
    exact, unread, without = (variance(tape, terms) for tape in tapes)
    assert exact == pytest.approx(10 / 2, rel=1e-9)  # the shifts alone
    assert unread == pytest.approx(without, rel=1e-4)


def test_points_of_one_sheet_move_together():
    assert spread(chain(4, 190.0, 270.0), [(0, 0.0, 0.0), (0, 150.0, 90.0)], level=0.0) == (0.0, 0.0)


SIMULATED = [  # job, with a string
    ("alphabet-column", False), ("fern-prints", False), ("fern-prints", True), ("tile-rubbings", False),
    ("tile-rubbings", True), ("seed-drawers", False), ("seed-drawers", True), ("low and wide", False),
    ("low and wide", True), ("twelve, a4, marks", False), ("twelve, letter, all", False),
    ("twelve, letter, all", True), ("twelve, a4, nails", False),
]  # fmt: skip


@pytest.mark.parametrize(("name", "string"), SIMULATED)
def test_points_spread_as_when_the_sheets_are_taped_many_times(name, string):
    every = made(name)
    level, sheets = every.plan.level_line, every.sheets
    hands = Hands(sheets, times=2000, match=MATCH, seed=7)
    hands.tape(level, string)
    homes = [home(sheets, hung.rect.cx, hung.rect.y1 - 60.0) for hung in every.plan.frames]
    pairs = [*pairwise(homes), (homes[0], homes[-1])]
    compared = 0
    for one, two in pairs:
        places = [hands.against(sheets.sheets[at].name, complex(x, y), level) for at, x, y in (one, two)]
        drawn = (places[1] - places[0]).real.std(), (places[1] - places[0]).imag.std()
        for worked_out, sd in zip(spread(sheets, [one, two], level, string), drawn, strict=True):
            if sd > 0.01:  # else both lie on one sheet
                # 2000 draws give an sd to 1.6 % (1/√(2n)), and 8 % is five times that
                assert MATCH * worked_out == pytest.approx(sd, rel=0.08)
                compared += 1
    assert compared >= len(every.plan.frames) / 2


def home(sheets: SheetPlan, x: float, y: float) -> tuple[int, float, float]:
    """A point of a frame, on the sheet that shows it or lies nearest to it."""
    at = Rect(x, y, x, y)
    return min(range(len(sheets.sheets)), key=lambda number: sheets.sheets[number].cell.gap_to(at)), x, y


def test_the_simulation_moves_nothing_when_hands_are_steady():
    sheets = made("fern-prints").sheets
    hands = Hands(sheets, times=3, match=0.0, seed=1)
    hands.tape(made("fern-prints").plan.level_line)
    assert set(hands.lies) == {sheet.name for sheet in sheets.sheets}
    assert all(np.allclose(hands.moved(name, 1000 + 900j), 1000 + 900j) for name in hands.lies)


def test_a_block_waits_for_a_join_that_holds_it_firmly():
    every = made("twelve, a4, marks")
    sheets = in_order_of_taping(tiled(every.plan, every.job.paper))  # in columns with whole edges: not searched
    fits, plain = ([block.laid for block in blocks(one) if block.laid] for one in (sheets, replace(sheets, firm=0.0)))
    assert len(fits) > 10
    apart = sorted(abs(fit.last[1] - fit.first[1]) for fit in fits)
    assert apart[1] >= FIRM and apart[0] > 0.9 * FIRM  # one block has no join that holds it more firmly
    # not for want of short joins between columns: the first of them is on the way of the plain order
    columns = {sheet.name: sheet.strip for sheet in sheets.sheets}
    assert any(join.y1 - join.y0 < FIRM / 2 for join in sheets.joins if columns[join.over] != columns[join.under])
    assert min(abs(fit.last[1] - fit.first[1]) for fit in plain) < FIRM / 2
