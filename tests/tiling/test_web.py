"""What hangs together in a stack of rows: always as if all cells were looked at again."""

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from templates_gen.base.geometry import Rect, bounds
from templates_gen.tiling.connected import Web
from templates_gen.tiling.joins import pieces
from templates_gen.tiling.layouts import _clipped, _middle_cut
from templates_gen.tiling.strips import MOST_CELLS, Box, Boxes, cells_along, line_of

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


def test_the_cut_that_parts_a_crowded_wall_halves_what_is_whole():
    """Worked out by hand here: four in a row are parted two and two, upright; three in a column one and two, level, at
    the lower of two equal cuts; of a row and a column of equal worth the upright cut is taken."""
    row = [Box(20.0 * at, 0.0, 20.0 * at + 10.0, 10.0, True, True) for at in range(4)]
    assert _middle_cut(row) == (True, 35.0)
    assert _middle_cut([box.turned() for box in row[:3]]) == (False, 15.0)
    assert _middle_cut([*row[:2], row[0]._replace(y0=20.0, y1=30.0), row[1]._replace(y0=20.0, y1=30.0)]) == (True, 15.0)
    assert _middle_cut(row[:1]) is None


SPOTS = st.builds(
    lambda x, y, wide, high: Box(x * 10.0, y * 10.0, (x + wide) * 10.0, (y + high) * 10.0, True, True),
    st.integers(0, 9), st.integers(0, 9), st.integers(1, 4), st.integers(1, 4),
)  # fmt: skip


@given(st.lists(SPOTS, min_size=1, max_size=5), st.integers(0, 5), st.integers(6, 14))
def test_all_the_wall_between_boxes_is_asked_for_and_of_a_section_no_more_than_is_in_it(boxes, low, high):
    """The last box of all is the one that asks for the blank wall, and it is not firm."""
    around = bounds([Rect(*box[:4]) for box in boxes])
    (loose,) = (box for box in Boxes(boxes).covered if not box.firm_x)
    assert Rect(*loose[:4]) == around
    part = Rect(low * 10.0, low * 10.0, high * 10.0, high * 10.0)
    for box in _clipped(Boxes(boxes).covered, part):
        assert part.x0 <= box.x0 <= box.x1 <= part.x1 and part.y0 <= box.y0 <= box.y1 <= part.y1
    inside = around.meet(part)
    found = [Rect(*box[:4]) for box in _clipped(Boxes(boxes).covered, part) if not box.firm_x]
    assert found == ([inside] if inside and around.overlaps(part) else found)


def test_a_strip_of_more_cells_than_there_may_be_is_not_planned():
    """One loose stretch, as long as the most cells there may be, and one a hair longer than these."""
    for cells, planned in ((MOST_CELLS, True), (MOST_CELLS + 1, False)):
        found = cells_along(line_of([Box(0.0, 0.0, 100.0 * cells, 10.0, False, False)]), 100.0, False)
        assert (found is not None and len(found) == cells) == planned
