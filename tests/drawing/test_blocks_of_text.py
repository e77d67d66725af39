"""Lines of lettering as one block, cut or wrapped to a width; and levels and uprights across rectangles."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen.base.geometry import Rect
from templates_gen.drawing.blocks import block, shortened, wrapped
from templates_gen.drawing.items import Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room, placed_near
from templates_gen.drawing.shapes import ground, level, rounded, upright

LETTERING = Lettering()
WORDS = st.lists(st.sampled_from(["fern", "royal", "Polypody", "14", "3/8", "in", "·", "the"]), max_size=12).map(
    " ".join
)


@settings(deadline=None)
@given(WORDS, st.floats(3.0, 60.0))
def test_a_shortened_text_is_whole_or_as_long_as_there_is_room(text, width):
    short = shortened(text, 2.5, False, width, LETTERING)
    if LETTERING.width(text, 2.5, False) <= width:
        assert short == text
        return
    assert short == "" or (short.endswith("…") and LETTERING.width(short, 2.5, False) <= width)
    kept = len(short[:-1]) if short else 0
    longer = text[: kept + 1]
    while longer != text and longer.rstrip() == text[:kept]:  # blanks at the end take no room
        longer = text[: len(longer) + 1]
    assert LETTERING.width(longer.rstrip() + "…", 2.5, False) > width


@settings(deadline=None)
@given(WORDS, st.floats(20.0, 60.0))
def test_a_line_is_broken_only_where_the_next_word_has_no_room(text, width):
    lines = wrapped(text, 2.5, False, width, LETTERING)
    assert " ".join(lines).split() == text.split()
    assert all(LETTERING.width(line, 2.5, False) <= width + 1e-6 for line in lines)
    plain = wrapped("fern " * 40, 2.5, False, width, LETTERING)
    fitting = next(n for n in range(1, 41) if LETTERING.width(" ".join(["fern"] * (n + 1)), 2.5, False) > width)
    assert {len(line.split()) for line in plain[:-1]} == {fitting}


def test_a_block_begins_with_the_ink_of_its_first_line_and_ends_with_that_of_its_last():
    lines = block([("Fern", 3.5, True), ("", 2.5, False), ("prints", 2.5, False)], LETTERING)
    one, two = lines.at(10.0, 20.0)
    boxes = [LETTERING.box(text) for text in (one, two)]
    assert boxes[0].y1 == pytest.approx(20.0 + lines.height) and boxes[1].y0 == pytest.approx(20.0)
    assert lines.width == pytest.approx(max(box.width for box in boxes))
    # base lines no nearer than 22/14 of the lettering (GOST 2.304-81, table 1, type A)
    assert one.y - two.y == pytest.approx(max(2.5 * 22 / 14, 0.35 * 2.5 + boxes[1].y1 - two.y + one.y - boxes[0].y0))


def test_plain_lines_stand_22_fourteenths_apart():
    """GOST 2.304-81, table 1, lettering type A: the x without tails or accents leaves that as the least."""
    one, two, three = block([("xxx", 2.5, False)] * 3, LETTERING).at(0.0, 0.0)
    assert (one.y - two.y, two.y - three.y) == pytest.approx((2.5 * 22 / 14, 2.5 * 22 / 14))


def test_shapes_across_a_rectangle():
    rect = Rect(10.0, 20.0, 50.0, 100.0)
    across, up = level(rect, 0.25, 0.5), upright(rect, 0.25, 0.5)
    assert (across.x0, across.y0, across.x1, across.y1) == (10.0, 40.0, 50.0, 40.0)
    assert (up.x0, up.y0, up.x1, up.y1) == (20.0, 20.0, 20.0, 100.0)
    # 0.3 mm of white around lettering: our own design, no source
    assert ground(rect).points == rect.grown(0.3).corners


def test_rounded_corners_are_cut_at_a_quarter_and_three_quarters_of_each_side():
    """Corner cutting of Chaikin, 1974 (from memory): a square of 4 becomes eight points, worked out by hand here."""
    square = ((0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0))
    assert rounded(square, 1) == ((1, 0), (3, 0), (4, 1), (4, 3), (3, 4), (1, 4), (0, 3), (0, 1))
    assert len(rounded(square)) == 32


@pytest.mark.parametrize("around", [0.0, 1.5])
def test_a_placed_text_has_as_much_room_around_it_on_every_side(around):
    """In a place just wide and high enough; half a mm less in either way is not enough."""
    text = Text(0.0, 0.0, "Fern", 3.5)
    ink = LETTERING.box(text)
    width, height = ink.width + 2 * around + 0.2, ink.height + 2 * around + 0.2
    within = Rect(50.0, 60.0, 50.0 + width, 60.0 + height)
    room = Room(Rect(0.0, 0.0, 200.0, 200.0))
    for less in (Rect(50.0, 60.0, within.x1 - 0.5, within.y1), Rect(50.0, 60.0, within.x1, within.y1 - 0.5)):
        assert placed_near(text, 60.0, 70.0, less, room, LETTERING, around) is None
    placed = placed_near(text, within.cx, within.cy, within, room, LETTERING, around)
    box = LETTERING.box(placed)
    assert (box.cx, box.cy) == pytest.approx((within.cx, within.cy))
    assert placed_near(text, within.cx, within.cy, within, room, LETTERING, around) is None  # it is taken now
