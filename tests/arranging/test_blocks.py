"""Lines of blocks: every line is an arrangement that keeps its gaps, and every change of one is another."""

from itertools import combinations
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.search.blocks import MOST_SPREAD, Cut, built, chained, changed, is_whole, place
from templates_gen.arranging.search.orderly import partition
from templates_gen.base.geometry import Rect, bounds

sizes = st.lists(st.tuples(st.integers(50, 900), st.integers(50, 900)), min_size=1, max_size=10)


def laid(line, sizes, across, down):
    block = built(line, sizes, across, down)
    rects: dict[int, Rect] = {}
    place(block, 0.0, 0.0, block.width, block.height, rects)
    return rects


@given(sizes, st.integers(0, 80), st.integers(0, 80), st.integers(0, 10_000))
def test_any_line_keeps_sizes_and_gaps(sizes, across, down, seed):
    random = Random(seed)
    line = chained([list(range(len(sizes)))])
    for _ in range(30):
        line = changed(line, sizes, random)
    rects = laid(line, sizes, across, down)
    assert sorted(rects) == list(range(len(sizes)))
    for at, rect in rects.items():
        assert (rect.width, rect.height) == pytest.approx(sizes[at])
    for one, two in combinations(rects.values(), 2):
        beside = max(two.x0 - one.x1, one.x0 - two.x1)
        above = max(two.y0 - one.y1, one.y0 - two.y1)
        assert beside >= across - 1e-6 or above >= down - 1e-6


@given(st.integers(1, 9), st.integers(0, 10_000))
def test_a_change_leaves_a_whole_line_with_the_same_frames(count, seed):
    random, sizes = Random(seed), [(100 + at, 100) for at in range(count)]
    line = chained([[at] for at in range(count)])
    for _ in range(20):
        line = changed(line, sizes, random)
        assert is_whole(line)
        assert sorted(sign for sign in line if not isinstance(sign, Cut)) == list(range(count))


def test_the_shorter_block_is_spread_until_flush_when_its_gap_grows_a_little():
    line = (0, 1, 2, Cut(False, 0.5), Cut(True, 0.5))  # 0 left of 1 over 2
    flush = laid(line, [(100, 225), (100, 100), (100, 100)], 20, 20)
    assert bounds([flush[1], flush[2]]).height == pytest.approx(225)  # a gap of 25 for 20
    most = 20 * (1 + MOST_SPREAD)
    set_in = laid(line, [(100, 201 + most), (100, 100), (100, 100)], 20, 20)
    assert set_in[1].y0 - set_in[2].y1 == pytest.approx(20)
    assert bounds([set_in[1], set_in[2]]).cy == pytest.approx(set_in[0].cy)


def test_partition_of_a_published_example():
    """[9 2 6 3] [8 5 8] [1 7 3 4], at most 21: the worked example of a public lecture on Skiena, section 8.5."""
    lengths = [9, 2, 6, 3, 8, 5, 8, 1, 7, 3, 4]
    runs = partition(lengths, 3)
    assert max(sum(lengths[at] for at in run) for run in runs) == 21
    assert [at for run in runs for at in run] == list(range(11))


@given(st.lists(st.integers(1, 50), min_size=1, max_size=8), st.data())
def test_partition_is_the_best_of_all(lengths, data):
    runs = data.draw(st.integers(1, len(lengths)))
    cuts = combinations(range(1, len(lengths)), runs - 1)
    best = min(
        max(sum(lengths[a:b]) for a, b in zip((0, *cut), (*cut, len(lengths)), strict=True)) for cut in cuts
    )  # fmt: skip
    found = partition(lengths, runs)
    assert all(found)
    assert max(sum(lengths[at] for at in run) for run in found) == best
