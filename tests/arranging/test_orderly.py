"""Frames dealt to rows of about one length."""

from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.search.orderly import partition


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
