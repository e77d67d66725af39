"""Finding room for lettering, beside trying every place."""

from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen.base.geometry import Rect
from templates_gen.drawing import placing
from templates_gen.drawing.placing import MANY, Boxes, Room

PAGE = Rect(0.0, 0.0, 60.0, 40.0)
STEP = 0.5  # mm between the places that are tried
whole = st.integers(0, 60).map(float)


@st.composite
def boxes(draw):
    x, y = draw(whole), draw(whole)
    return Rect.sized(x, y, draw(st.integers(1, 30)), draw(st.integers(1, 20)))


@st.composite
def rooms(draw):
    """A page with some of it taken, and lines on it."""
    room = Room(PAGE, air=draw(st.sampled_from([0.0, 1.0])))
    room.take(*draw(st.lists(boxes(), max_size=8)))
    room.lines += draw(st.lists(boxes(), max_size=3))
    return room


def every_place(width, height):
    across, upward = (int((side - size) / STEP) for side, size in ((PAGE.width, width), (PAGE.height, height)))
    return (Rect.sized(x * STEP, y * STEP, width, height) for x in range(across + 1) for y in range(upward + 1))


@given(rooms(), whole, whole, st.sampled_from([(6.0, 4.0), (20.0, 5.0)]))
@settings(deadline=None, max_examples=60)
def test_no_free_place_is_nearer_than_the_nearest(room, x, y, size):
    def far(box):
        return (box.cx - x) ** 2 + (box.cy - y) ** 2

    found = room.nearest(*size, x, y, PAGE)
    uncrossed = [box for box in every_place(*size) if room.fits(box)]
    best = min(map(far, uncrossed or filter(lambda box: room.fits(box, False), every_place(*size))), default=None)
    assert (found is None) == (best is None)
    if found:
        assert room.fits(Rect.about(found.cx, found.cy, size[0] - 1e-6, size[1] - 1e-6), bool(uncrossed))
        assert far(found) <= best + 1e-6


@given(rooms(), whole, whole)
@settings(deadline=None, max_examples=60)
def test_free_places_come_from_the_nearest_on(room, x, y):
    fars = [(box.cx - x) ** 2 + (box.cy - y) ** 2 for box in room.free(6.0, 4.0, x, y, PAGE, crossing=False)]
    assert fars == sorted(fars)


@given(st.lists(boxes(), min_size=MANY - 5, max_size=MANY + 5), boxes())
@settings(deadline=None, max_examples=20)
def test_what_is_at_a_place_is_the_same_for_few_boxes_and_for_many(some, place):
    kept = Boxes()
    for box in some:
        kept.append(box)
        if len(kept) % 50 == 0:
            kept.at(place)
    assert kept.at(place) == [box for box in some if box.overlaps(place)]


def test_where_there_is_no_line_to_cross_a_full_place_is_searched_once(monkeypatch):
    searched = []
    monkeypatch.setattr(placing, "_nearest_point", lambda *asked: searched.append(asked))
    place = Rect(0.0, 0.0, 50.0, 50.0)
    full = Room(place)
    full.take(place)
    assert full.nearest(10.0, 10.0, 25.0, 25.0, place) is None
    assert len(searched) == 1
    full.lines.append(Rect(0.0, 20.0, 50.0, 20.0).grown(1.0))
    assert full.nearest(10.0, 10.0, 25.0, 25.0, place) is None
    assert len(searched) == 3  # off the line, and across it
