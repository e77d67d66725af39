"""The drawing of the wall in letters: things are where they are on the wall, to half a letter."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.cli.interview.wall_picture import COLUMNS, LINES, PLAIN, ROWS, TALL, wall_picture
from templates_gen.job.model import Feature, Wall
from templates_gen.job.stairs import Stairs


def wall(width=5800.0, height=3000.0, *features):
    # 58 letters of 100 mm between the wall's edges, 15 of 200 mm up: worked out by hand here
    return Wall(name="", width=width, height=height, features=features)


def cells(lines, sign):
    """The columns and rows that a sign stands in, the wall's edge not counted."""
    return {(x - 1, y - 1) for y, line in enumerate(lines) for x, found in enumerate(line) if found == sign}


def test_a_frame_is_drawn_where_it_hangs():
    lines = wall_picture(wall(), [("A", Rect(1000, 1000, 2000, 2000))], "mm")
    drawn = set().union(*(cells(lines, sign) for sign in "┏┓┗┛━┃"))
    # 10 letters from the left end, 5 from the floor, 10 wide, 5 high: worked out by hand here
    assert {min(drawn), max(drawn)} == {(10, 5), (19, 9)}
    assert cells(lines[:-1], "A") == {(14, 7)}


def test_a_feature_is_filled_and_named():
    bench = Feature(kind="furniture", name="bench", rect=Rect(0, 0, 1000, 600))
    lines = wall_picture(wall(5800.0, 3000.0, bench), [], "mm", PLAIN)
    # 10 letters wide, 3 high, five of them under its name: worked out by hand here
    assert len(cells(lines, "'")) == 10 * 3 - len("bench")
    assert "bench" in lines[-4]


def test_a_stair_is_filled_up_to_its_treads():
    stairs = Stairs(x=1000, y=400, slope=0.8, run=500, rise=400, top=1200)
    lines = wall_picture(replace(wall(), stairs=stairs), [], "mm", PLAIN)
    high = [sum(row[column] == "'" for row in lines[1:-2]) for column in range(1, 59)]
    # treads of 5 letters across, 2 up, from 10 letters on, and a landing 6 high: worked out by hand here
    assert high == [0] * 10 + [2] * 5 + [4] * 5 + [6] * 38


@given(
    width=st.floats(300, 50_000), height=st.floats(300, 20_000),
    rect=st.tuples(*[st.floats(-2000, 60_000)] * 2, *[st.floats(1, 5000)] * 2), name=st.text("ABC", min_size=1),
    signs=st.sampled_from([LINES, PLAIN]),
)  # fmt: skip
def test_any_wall_fits_a_terminal_and_nothing_is_drawn_outside_it(width, height, rect, name, signs):
    *lines, size = wall_picture(wall(width, height), [(name, Rect.sized(*rect))], "cm", signs)
    assert len({len(line) for line in lines}) == 1
    assert len(lines[0]) <= COLUMNS and len(lines) <= ROWS + 2 and size.strip()
    sides = {line[0] + line[-1] for line in lines[1:-1]}
    assert sides == {signs.wall[3] * 2}
    assert lines[-1] == signs.wall[4] * len(lines[0])


@given(left=st.floats(0, 4800), bottom=st.floats(0, 2000))
def test_an_edge_is_within_half_a_letter_of_its_place(left, bottom):
    lines = wall_picture(wall(), [("A", Rect.sized(left, bottom, 1000, 1000))], "mm")
    drawn = set().union(*(cells(lines, sign) for sign in "┏┓┗┛━┃"))
    assert abs(min(x for x, _ in drawn) * 100 - left) <= 50 + 1e-6
    assert abs((ROWS - 1 - max(y for _, y in drawn)) * 100 * TALL - bottom) <= 100 + 1e-6


@pytest.mark.parametrize("signs", [LINES, PLAIN])
def test_a_frame_too_small_for_a_box_is_its_name(signs):
    lines = wall_picture(wall(), [("A", Rect(1000, 1000, 1100, 1100))], "mm", signs)
    assert len(cells(lines[:-1], "A")) == 1
    assert not set("".join(lines[1:-2])) & set(signs.frame)


def test_plain_signs_are_ascii():
    assert (PLAIN.wall + PLAIN.frame + PLAIN.feature).isascii()
    assert [len(LINES.wall), len(LINES.frame)] == [len(PLAIN.wall), len(PLAIN.frame)]
