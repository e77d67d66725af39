"""What is seen of a sheet, by itself: two states of it are the same where nobody could tell them apart on paper."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.documents.sheets.neighbours import neighbour_name
from templates_gen.documents.sheets.seen import seen
from templates_gen.drawing.items import Circle, Form, Line, Page, Polygon, Text, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.moving import moved_by
from templates_gen.drawing.placing import Room

WINDOW = Rect(1000.0, 500.0, 1200.0, 800.0)
LETTERING = Lettering()


def shown(*items, window=WINDOW, forms=(), beside=()):
    page = Page("1", "", tuple(beside), wall_items=tuple(items), window=window)
    return seen(page, {form.name: form for form in forms})


LINE = Line(900.0, 600.0, 1300.0, 650.0, 0.5)
CIRCLE, AREA = Circle(1100.0, 600.0, 5.0, 0.5), Polygon(((1000.0, 500.0), (1010.0, 500.0), (1000.0, 510.0)))
WORDS = Text(1050.0, 700.0, "fern", 3.5)
EVERY = (LINE, CIRCLE, AREA, WORDS, Use("mark", 1100.0, 700.0))
MARK = Form("mark", Rect(-5.0, -5.0, 5.0, 5.0), (Line(-5.0, 0.0, 5.0, 0.0, 0.3), Line(0.0, -5.0, 0.0, 4.0, 0.3)))


@given(st.integers(-500, 500), st.integers(-500, 500))
def test_a_sheet_whose_window_moved_with_all_that_it_shows_is_the_same(dx, dy):
    moved = moved_by(EVERY, dx, dy)
    assert shown(*moved, window=WINDOW.shifted(dx, dy), forms=[MARK]) == shown(*EVERY, forms=[MARK])


@pytest.mark.parametrize("item", [*EVERY, Line(1000.0, 600.0, 1200.0, 600.0, 0.5, (3.0, 2.0))])
@pytest.mark.parametrize("by", [(0.0, 0.002), (0.0, -0.002), (0.002, 0.002)])
def test_what_moved_by_two_thousandths_of_a_millimetre_is_not_the_same(item, by):
    assert shown(*moved_by([item], *by), forms=[MARK]) != shown(item, forms=[MARK])


@pytest.mark.parametrize(
    ("item", "change"),
    [
        (LINE, {"width": 0.7}), (LINE, {"grey": 0.5}), (LINE, {"dash": (3.0, 2.0)}),
        (CIRCLE, {"radius": 5.1}), (CIRCLE, {"width": 0.7}), (CIRCLE, {"filled": True}),
        (AREA, {"grey": 0.5}), (WORDS, {"text": "Fern"}), (WORDS, {"height": 2.5}), (WORDS, {"bold": True}),
        (WORDS, {"anchor": "middle"}), (WORDS, {"angle": 90}),
    ],
)  # fmt: skip
def test_what_looks_otherwise_is_not_the_same(item, change):
    assert shown(replace(item, **change)) != shown(item)


def test_a_form_is_what_it_is_made_of():
    drawn = moved_by(MARK.items, 1100.0, 700.0)
    assert shown(Use("mark", 1100.0, 700.0), forms=[MARK]) == shown(*drawn)


def test_of_a_line_the_part_in_the_window_counts_whichever_end_it_begins_at():
    cut = Line(1000.0, 612.5, 1200.0, 637.5, 0.5)  # rises 50 in 400: 12.5 mm to the window's left, 37.5 to its right
    assert shown(LINE) == shown(cut) == shown(replace(cut, x0=cut.x1, y0=cut.y1, x1=cut.x0, y1=cut.y0))
    upright = Line(1100.0, 400.0, 1100.0, 900.0, 0.5)
    assert shown(upright) == shown(replace(upright, y0=500.0, y1=800.0))


@pytest.mark.parametrize(
    "line",
    [
        Line(900.0, 499.0, 1300.0, 499.0, 0.5), Line(900.0, 801.0, 1300.0, 801.0, 0.5),
        Line(999.0, 400.0, 999.0, 900.0, 0.5), Line(1201.0, 400.0, 1201.0, 900.0, 0.5),
        Line(900.0, 600.0, 990.0, 600.0, 0.5), Line(1300.0, 600.0, 1210.0, 600.0, 0.5),
        Line(1190.0, 400.0, 1300.0, 520.0, 0.5),  # passes its corner
    ],
)  # fmt: skip
def test_a_line_beside_the_window_is_not_seen_of_it(line):
    assert shown(line) == frozenset()


@pytest.mark.parametrize(("x", "there"), [(994.0, False), (996.0, True), (1204.0, True), (1206.0, False)])
def test_a_circle_is_seen_where_any_of_it_is_in_the_window(x, there):
    assert bool(shown(replace(CIRCLE, x=x))) == there


def test_dashes_are_where_they_were_before_the_line_was_cut_off():
    """100 mm lie left of the window: 20 periods of 5 mm, so dashes begin at its side as they do at the line's end."""
    dashed = Line(900.0, 600.0, 1300.0, 600.0, 0.5, (3.0, 2.0))
    assert shown(dashed) == shown(replace(dashed, x0=1000.0, x1=1200.0))
    assert shown(replace(dashed, x0=898.0)) == shown(replace(dashed, x0=1000.0, x1=1200.0, phase=2.0))
    assert shown(replace(dashed, x0=898.0)) != shown(dashed)


def test_the_number_of_a_page_is_not_seen_but_all_else_beside_the_window_is():
    title, name = Text(10.0, 280.0, "sheet 3 of 9 · page 4 of 12", 3.5), Text(10.0, 280.0, "sheet 3", 3.5)
    assert shown(beside=[title]) == frozenset()
    assert shown(beside=[name]) != shown(beside=[replace(name, x=11.0)]) != frozenset()
    with pytest.raises(ValueError, match="shows nothing of the wall"):
        seen(Page("7", "", ()), {})


def named(strip, upright=False, words=("lay on", "on", "")):
    room = Room(Rect(0.0, 0.0, 1000.0, 1000.0))
    items = list(neighbour_name(words, "12", upright, strip, room, LETTERING))
    return items, room


@pytest.mark.parametrize("upright", [False, True])
def test_a_neighbours_name_stands_in_the_middle_of_its_strip_on_white_with_its_house(upright):
    strip = Rect(100.0, 100.0, 108.0, 300.0) if upright else Rect(100.0, 100.0, 300.0, 108.0)
    items, room = named(strip, upright)
    (ground, *_), (taken,) = items, room.taken
    assert strip.grown(1e-6).holds(taken) and (taken.cx, taken.cy) == pytest.approx((strip.cx, strip.cy))
    assert isinstance(ground, Polygon) and ground.grey == 1.0 and set(ground.points) == set(taken.corners)
    (words,) = [item for item in items if isinstance(item, Text) and item.text == "lay on"]
    (number,) = [item for item in items if isinstance(item, Text) and item.text == "12"]
    assert words.height == 2.5 and words.angle == (90 if upright else 0)
    first, second = LETTERING.box(words), LETTERING.box(number)
    assert (first.y1 < second.y0) if upright else (first.x1 < second.x0)
    assert abs(second.cx - taken.cx if upright else second.cy - taken.cy) < 1.0  # the number is in its house's middle
    if upright:
        sides = [x for item in items[1:] if isinstance(item, Polygon) for x, _ in item.points]
        assert (min(sides) + max(sides)) / 2 == pytest.approx(taken.cx, abs=0.05)
    for item in items[1:]:
        points = item.points if isinstance(item, Polygon) else ()
        assert all(taken.grown(0.3).has_point(x, y) for x, y in points)
    assert all(taken.grown(1e-6).holds(box) for box in (first, second))


def test_a_neighbours_name_gets_shorter_where_its_strip_is():
    said = []
    for length in (60.0, 14.0, 8.5, 4.0):
        items, _ = named(Rect(100.0, 100.0, 100.0 + length, 108.0))
        said.append([item.text for item in items if isinstance(item, Text) and item.text != "12"])
    assert said[0] == ["lay on"] and said[-1] == []
    assert [len(" ".join(words)) for words in said] == sorted((len(" ".join(words)) for words in said), reverse=True)
