"""Rows of stacks: any of them keeps sizes and gaps, and any change of one is another with the same frames."""

from itertools import combinations
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen.arranging.search.boxes import Gaps, around
from templates_gen.arranging.search.stacking import stacked, varied
from templates_gen.arranging.search.stacks import STRETCH, Rows, Stacks

ROOM = (9000.0, 3000.0)
sizes = st.lists(st.tuples(st.integers(50, 900), st.integers(50, 900)), min_size=1, max_size=10)


def apart(boxes, across: float, down: float) -> bool:
    """True when all keep the gap to each other, across or down."""
    return all(
        max(b[0] - a[2], a[0] - b[2]) >= across - 1e-6 or max(b[1] - a[3], a[1] - b[3]) >= down - 1e-6
        for a, b in combinations(boxes, 2)
    )


def frames_in(rows: Rows) -> list[int]:
    return sorted(at for row in rows for stack in row for cell in stack for at in cell)


@settings(max_examples=60, deadline=None)
@given(sizes, st.integers(0, 80), st.integers(0, 80), st.booleans(), st.integers(0, 10_000))
def test_any_rows_keep_sizes_and_gaps_and_their_frames(sizes, across, down, turned, seed):
    random, stacks = Random(seed), Stacks(sizes, Gaps(across, down), turned, ROOM)
    rows: Rows = (tuple(((at,),) for at in range(len(sizes))),)
    for _ in range(30):
        rows = varied(rows, stacks.sizes, random)
        assert frames_in(rows) == list(range(len(sizes)))
        assert all(row and all(stack and all(stack) for stack in row) for row in rows)
        boxes = stacks.boxes(rows)
        assert [(x1 - x0, y1 - y0) for x0, y0, x1, y1 in boxes] == [pytest.approx(size) for size in sizes]
        assert apart(boxes, across, down)


@settings(max_examples=40, deadline=None)
@given(sizes, st.booleans(), st.integers(0, 10_000))
def test_what_is_remembered_of_rows_costs_as_if_they_were_new(sizes, turned, seed):
    random, stacks = Random(seed), Stacks(sizes, Gaps(50.0, 40.0), turned, ROOM)
    rows: Rows = (tuple(((at,),) for at in range(len(sizes))),)
    for _ in range(20):
        rows = varied(rows, stacks.sizes, random)
        assert stacks.cost(rows) == Stacks(sizes, Gaps(50.0, 40.0), turned, ROOM).cost(rows)


def test_a_stack_is_spread_until_flush_when_its_gap_grows_a_little():
    rows: Rows = ((((0,),), ((1,), (2,))),)  # 0 left of 1 over 2
    high = Stacks([(100, 225), (100, 100), (100, 100)], Gaps(20, 20), False, ROOM).boxes(rows)
    assert around(high[1:])[3] - around(high[1:])[1] == pytest.approx(225)  # a gap of 25 for 20
    most = 20 * (1 + STRETCH)
    set_in = Stacks([(100, 201 + most), (100, 100), (100, 100)], Gaps(20, 20), False, ROOM).boxes(rows)
    assert set_in[1][1] - set_in[2][3] == pytest.approx(20)
    assert set_in[1][3] + set_in[2][1] == pytest.approx(set_in[0][1] + set_in[0][3])  # in the middle


def test_of_two_rows_the_upper_stands_on_its_foot_and_the_lower_hangs_from_its_top():
    rows: Rows = ((((0,),), ((1,),)), (((2,),), ((3,),)))
    boxes = Stacks([(100, 200), (100, 100), (100, 200), (100, 100)], Gaps(20, 20), False, ROOM).boxes(rows)
    assert boxes[0][1] == boxes[1][1] == pytest.approx(10.0)
    assert boxes[2][3] == boxes[3][3] == pytest.approx(-10.0)


def test_turned_rows_are_columns():
    rows: Rows = ((((0,),), ((1,),)), (((2,),),))
    boxes = Stacks([(300, 100), (200, 100), (250, 500)], Gaps(30, 40), True, ROOM).boxes(rows)
    assert boxes[2][2] <= min(boxes[0][0], boxes[1][0]) - 30 + 1e-9  # two beside the third
    assert boxes[0][3] <= boxes[1][1] - 40 + 1e-9 or boxes[1][3] <= boxes[0][1] - 40 + 1e-9
    assert apart(boxes, 30, 40)


def test_the_search_ends_better_than_it_began_and_finds_the_same_again():
    random = Random(5)
    sizes = [random.choice([(300, 400), (200, 250), (500, 400), (150, 200)]) for _ in range(11)]

    def judge(boxes) -> float:
        x0, y0, x1, y1 = around(boxes)
        return (x1 - x0) * (y1 - y0)

    def runs():
        return [boxes for boxes in stacked(sizes, Gaps(50, 50), ROOM, 3000, "7", judge) if boxes]

    found = runs()
    assert found == runs()
    filled = sum((w + 50) * (h + 50) for w, h in sizes)
    assert min(map(judge, found)) < 1.15 * filled < max(map(judge, found))
    assert all(apart(boxes, 50, 50) for boxes in found)
