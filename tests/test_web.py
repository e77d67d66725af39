"""What hangs together in a stack of rows: always as if all cells were looked at again."""

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from templates_gen.geometry import Rect
from templates_gen.sheets.joins import pieces
from templates_gen.sheets.web import Web

HEIGHT = 100.0
# cuts in steps of 20 mm, so that cells share nothing, less than the 40 mm of a join, or more
cuts = st.lists(st.integers(0, 40).map(lambda step: 20.0 * step), min_size=6, max_size=6, unique=True).map(sorted)


def row(at: int, sides: list[float], gap: int) -> list[Rect]:
    """Five cells between these sides but one, which is left blank."""
    spans = [span for number, span in enumerate(pairwise(sides)) if number != gap]
    return [Rect(x0, at * HEIGHT, x1, (at + 1) * HEIGHT) for x0, x1 in spans]


rows = st.lists(st.tuples(cuts, st.integers(0, 4)), min_size=1, max_size=6)


@given(rows, st.lists(st.tuples(st.integers(0, 5), cuts, st.integers(0, 4), st.booleans()), max_size=5))
def test_trying_and_moving_rows_counts_pieces_as_counting_all_anew_does(stack, moves):
    web = Web([row(at, sides, gap) for at, (sides, gap) in enumerate(stack)])
    assert web.names == pieces([cell for cells in web.rows for cell in cells])
    for at, sides, gap, kept in moves:
        at %= len(stack)
        moved = row(at, sides, gap)
        tried = [*web.rows[:at], moved, *web.rows[at + 1 :]]
        named = pieces([cell for cells in tried for cell in cells])
        assert web.pieces_with(at, moved) == max(named) + 1
        if kept:
            web.put(at, moved)
            assert web.names == named
