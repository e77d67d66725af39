"""The square that shows at a glance when a page was scaled: what is drawn, what it keeps free, and where it goes."""

from __future__ import annotations

import pytest

from templates_gen.base.geometry import Rect
from templates_gen.documents.sheets.square import _parts, place_square, square_form, square_texts
from templates_gen.drawing.items import Line, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room

LINES = [item for item in square_form().items if isinstance(item, Line)]
LETTERING = Lettering()


def test_its_corners_are_100_mm_apart_and_each_has_two_arms_inward():
    arms = [line for line in LINES if max(line.y0, line.y1) <= 100.0]
    for x, to_x in ((0.0, 8.0), (100.0, 92.0)):
        for y, to_y in ((0.0, 8.0), (100.0, 92.0)):
            from_here = {(line.x1, line.y1) for line in arms if (line.x0, line.y0) == (x, y)}
            assert from_here == {(to_x, y), (x, to_y)}
    assert len(arms) == 8


def test_the_bar_over_it_is_four_inches_long_between_its_two_ticks():
    """4 in = 101.6 mm (international agreement of 1959); 4 mm over the square, ticks 1.5 mm to both sides: our own
    design, no source."""
    bar, *ticks = [line for line in LINES if max(line.y0, line.y1) > 100.0]
    assert (bar.x0, bar.x1, bar.y0, bar.y1) == pytest.approx((0.0, 101.6, 104.0, 104.0))
    assert [(tick.x0, tick.x1) for tick in ticks] == [pytest.approx((0.0, 0.0)), pytest.approx((101.6, 101.6))]
    assert all(sorted((tick.y0, tick.y1)) == pytest.approx([102.5, 105.5]) for tick in ticks)


def test_all_its_ink_lies_in_what_is_kept_free_for_it():
    boxes = [Rect(min(i.x0, i.x1), min(i.y0, i.y1), max(i.x0, i.x1), max(i.y0, i.y1)) for i in LINES]
    boxes += [LETTERING.box(text) for text in square_texts((0.0, 0.0))]
    assert all(any(part.grown(1e-6).holds(box) for part in _parts()) for box in boxes)
    for part in _parts():  # and none of it keeps free what carries nothing
        met = [box for box in boxes if part.grown(1e-6).holds(box)]
        assert met and part.width <= max(box.x1 for box in met) - min(box.x0 for box in met) + 12.0
    said = {text.text: text for text in square_form().items if isinstance(text, Text)}
    assert [text.x for text in said.values()] == pytest.approx([50.0, 50.8])


def test_it_goes_to_the_first_free_place_of_the_inner_part_or_else_of_the_page():
    """Two places across and four up are tried first: our own design, no source.  The page has room for it alone: 101.6
    wide and 109 high, worked out by hand here."""
    page, inner = Rect(0.0, 0.0, 201.6, 309.0), Rect(40.0, 40.0, 181.6, 189.0)
    assert place_square(Room(page), inner) == pytest.approx((40.0, 40.0))
    room = Room(page)
    room.take(Rect(40.0, 40.0, 90.0, 45.0))  # its lower left corner and the words beside: the next place is 10 mm up
    assert place_square(room, inner) == pytest.approx((40.0, 50.0))
    room.take(inner)
    x, y = place_square(room, inner)
    assert x in (0.0, 50.0, 100.0) and y == pytest.approx(200.0)
    assert place_square(Room(page), Rect(0.0, 0.0, 101.0, 189.0)) == (0.0, 0.0)  # too narrow: anywhere on the page
    assert place_square(Room(Rect(0.0, 0.0, 101.6, 108.9)), Rect(0.0, 0.0, 50.0, 50.0)) is None
