"""Where cables may run: the zones as rectangles, on either side of every limit, and how deep a nail goes.

Every figure of a rule has its source beside it; what follows from it is worked out by hand here.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.plan import plan_wall
from templates_gen.checks import find
from templates_gen.checks.cables.edges import edge_pieces
from templates_gen.checks.cables.wiring import Entry, cable_depth, entries, nail_zones, zones
from templates_gen.hanging.fixings import depth_of, tip_below
from templates_gen.job.model import Fixing, Hanger, Studs, Wall
from tests.finding_cases_behind import INCH, feature, nailed, on, wall
from tests.jobs import frame

# a single plate of 86 mm with its middle at (1200, 450): 86 mm from memory
OUTLET = feature("outlet", 1157.0, 407.0, 86.0, 86.0)

UK = Wall(name="", width=3000.0, height=2400.0, wiring="uk", features=(OUTLET,))
DE = Wall(name="", width=3000.0, height=2500.0, wiring="de")


def reasons(at: Wall, x: float, y: float) -> list[str]:
    """Of the zones that a nail straight in at (x, y) meets, each once."""
    entry = Entry("A", "A", x, y, y)
    return list(dict.fromkeys(zone.reason for zone in zones(at) if zone.meets(entry)))


def box(at: Wall, reason: str) -> list[tuple[float, float, float, float]]:
    found = [zone.rect for zone in zones(at) if reason in zone.reason]
    return [(rect.x0, rect.y0, rect.x1, rect.y1) for rect in found]


def test_the_zones_of_a_wall_by_the_british_rule():
    # BS 7671, 522.6.202: 150 mm of the top, 150 mm of an angle, level with and above or below the accessory
    assert box(UK, "top of the wall") == [(0.0, 2250.0, 3000.0, 2400.0)]
    assert sorted(box(UK, "corner")) == [(0.0, 0.0, 150.0, 2400.0), (2850.0, 0.0, 3000.0, 2400.0)]
    assert box(UK, "straight above or below the outlet") == [(1157.0, 0.0, 1243.0, 2400.0)]
    assert box(UK, "level with the outlet") == [(0.0, 407.0, 3000.0, 493.0)]
    assert len(zones(UK)) == 5
    assert {zone.source for zone in zones(UK)} == {"BS 7671, 522.6.202"}


UK_PLACES = [  # x, y, words of the one reason; the limits are those of the test above
    (1200.0, 1600.0, "above or below the outlet"),
    (1300.0, 1600.0, ""),  # 57 mm beside the band
    (1157.0, 1600.0, "above or below"), (1156.9, 1600.0, ""), (1243.0, 1600.0, "above or below"), (1243.1, 1600.0, ""),
    (600.0, 407.0, "level with"), (600.0, 406.9, ""), (600.0, 493.0, "level with"), (600.0, 493.1, ""),
    (600.0, 2250.0, "of the top"), (600.0, 2249.9, ""),
    (150.0, 1600.0, "of a corner"), (150.1, 1600.0, ""), (2850.0, 1600.0, "corner"), (2849.9, 1600.0, ""),
]  # fmt: skip


@pytest.mark.parametrize(("x", "y", "words"), UK_PLACES)
def test_a_nail_on_either_side_of_each_british_limit(x, y, words):
    found = reasons(UK, x, y)
    assert len(found) == (1 if words else 0)
    assert all(words in reason for reason in found)


DE_PLACES = [  # x, y, words; DIN 18015-3:2016-09 in a room of 2500 mm: 2500 − 450 = 2050, 2500 − 150 = 2350
    (250.0, 1600.0, "100 to 300 mm · 3 15/16 to 11 13/16 in beside a corner"),
    (400.0, 1600.0, ""),
    (400.0, 2100.0, "150 to 450 mm · 5 7/8 to 17 11/16 in below the ceiling"),
    (100.0, 1600.0, "corner"), (99.9, 1600.0, ""), (300.0, 1600.0, "corner"), (300.1, 1600.0, ""),
    (2700.0, 1600.0, "corner"), (2699.9, 1600.0, ""), (2900.0, 1600.0, "corner"), (2900.1, 1600.0, ""),
    (400.0, 2050.0, "below the ceiling"), (400.0, 2049.9, ""), (400.0, 2350.0, "below"), (400.0, 2350.1, ""),
    (400.0, 150.0, "150 to 450 mm · 5 7/8 to 17 11/16 in above the floor"), (400.0, 149.9, ""),
    (400.0, 450.0, "floor"), (400.0, 450.1, ""),
]  # fmt: skip


@pytest.mark.parametrize(("x", "y", "words"), DE_PLACES)
def test_a_nail_on_either_side_of_each_german_limit(x, y, words):
    found = reasons(DE, x, y)
    assert len(found) == (1 if words else 0)
    assert all(words in reason for reason in found)


@pytest.mark.parametrize(("y", "met"), [(1000.0, True), (999.9, False), (1300.0, True), (1300.1, False)])
def test_the_middle_german_zone_is_only_in_rooms_with_worktops(y, met):
    # DIN 18015-3:2016-09: 1000 to 1300 mm above the floor
    kitchen = Wall(name="", width=3000.0, height=2500.0, wiring="de", worktop=True)
    assert len(reasons(kitchen, 1500.0, y)) == met
    assert reasons(DE, 1500.0, y) == []


@pytest.mark.parametrize("kind", ["door", "window"])
def test_a_german_door_or_window_has_a_zone_on_either_side_over_the_whole_height(kind):
    # DIN 18015-3:2016-09: 100 to 300 mm beside the edge; 1000 − 300, 1000 − 100, 1900 + 100, 1900 + 300
    opening = feature(kind, 1000.0, 0.0, 900.0, 2000.0)
    at = Wall(name="", width=3000.0, height=2500.0, wiring="de", features=(opening,))
    assert box(at, f"beside the {kind}") == [(700.0, 0.0, 900.0, 2500.0), (2000.0, 0.0, 2200.0, 2500.0)]
    for wiring in ("uk", "us"):
        assert not any(kind in zone.reason for zone in zones(wall(opening, wiring=wiring)))


def test_in_the_us_there_is_only_the_stud_beside_a_box_and_the_words_say_that_nothing_is_to_be_relied_on():
    # common practice, from memory: up or down along the stud beside a box; studs of 1 1/2 in, 38 mm (from memory)
    us = Wall(name="", width=3000.0, height=2400.0, wiring="us", features=(OUTLET,))
    assert box(us, "outlet") == [(1157.0 - 38.0, 0.0, 1243.0 + 38.0, 2400.0)]
    steel = Wall(
        name="", width=3000.0, height=2400.0, wiring="us", features=(OUTLET,),
        studs=Studs(first=None, spacing=600.0, width=50.0),
    )  # fmt: skip
    assert box(steel, "outlet") == [(1157.0 - 50.0, 0.0, 1243.0 + 50.0, 2400.0)]
    (note,) = [found for found in find(plan_wall(on(wiring="us"))) if found.rule == "wiring-unknown"]
    assert "no zones to rely on" in note.text and "any other spot" in note.text


@pytest.mark.parametrize("wiring", ["", "none"])
def test_without_a_rule_there_are_no_zones_and_one_question(wiring):
    lost = on(OUTLET, wiring=wiring)
    assert zones(lost.wall) == ()
    rules = [found.rule for found in find(plan_wall(lost))]
    assert rules.count("wiring-unknown") == 1 and "cable-zone" not in rules


@pytest.mark.parametrize("wiring", ["uk", "de", "us"])
@pytest.mark.parametrize("kind", ["outlet", "switch", "light", "thermostat", "vent", "radiator", "pipe", "other"])
def test_cables_lead_to_what_needs_power_and_to_nothing_else(wiring, kind):
    at = Wall(name="", width=4000.0, height=2600.0, wiring=wiring, features=(feature(kind, 1500.0, 1200.0),))
    assert any(kind in zone.reason for zone in zones(at)) == (kind in ("outlet", "switch", "light", "thermostat"))


def test_a_zone_names_the_feature_as_the_job_does():
    named = feature("switch", 1960.0, 1000.0, name="by the door")
    assert nail_zones(plan_wall(on(named))) == {"A": ("straight above or below the switch 'by the door'",)}


def test_two_outlets_without_names_make_one_finding():
    plan = plan_wall(on(feature("outlet", 1960.0, 300.0), feature("outlet", 1980.0, 600.0)))
    (found,) = [item for item in find(plan) if item.rule == "cable-zone"]
    assert found.text.startswith("Nail A: in a zone where cables may run (straight above or below the")
    assert nail_zones(plan) == {"A": ("straight above or below the outlet",)}


def test_only_the_nail_of_a_pair_that_lies_in_a_zone_is_named():
    # the frame from 1800 to 2200 has its rings 50 mm in: at 1850 and at 2150
    rings = frame(hanger=Hanger(kind="rings", left=50.0, right=50.0))
    plan = plan_wall(on(feature("outlet", 2100.0, 300.0), frames=(rings,)))
    assert list(nail_zones(plan)) == ["A right"]
    (found,) = [item for item in find(plan) if item.rule == "cable-zone"]
    assert (found.about, "A left" in found.text) == (("A",), False)


def test_a_nail_whose_drop_is_not_measured_is_looked_for_along_its_drop_scale():
    unmeasured = frame(drop=None)
    # from the frame's middle, 1450, to its top edge, 1700
    assert entries(plan_wall(on(frames=(unmeasured,)))) == (Entry("A", "A", 2000.0, 1450.0, 1700.0),)
    for bottom, met in ((1369.9, False), (1370.0, True), (1700.0, True), (1700.1, False)):  # 1450 − 80
        assert bool(nail_zones(plan_wall(on(feature("outlet", 500.0, bottom), frames=(unmeasured,))))) == met


def test_a_slanting_nail_reaches_down_into_a_zone_under_its_nail_point():
    # 40 mm at 30° from straight in: its tip is 40 · sin 30° = 20 mm below its nail point at 1619.1
    (entry,) = entries(plan_wall(nailed(40.0, 30.0)))
    assert (entry.x, entry.low, entry.high) == pytest.approx((2000.0, 1599.1, 1619.1))
    (entry,) = entries(plan_wall(on(frames=(frame(drop=None, fixing=Fixing(length=40.0, angle=30.0)),))))
    assert (entry.x, entry.low, entry.high) == pytest.approx((2000.0, 1430.0, 1700.0))  # 20 below the frame's middle
    outlet = {top: feature("outlet", 500.0, top - 80.0) for top in (1599.0, 1599.2)}
    assert not nail_zones(plan_wall(on(outlet[1599.0], frames=nailed(40.0, 30.0).frames)))
    assert nail_zones(plan_wall(on(outlet[1599.2], frames=nailed(40.0, 30.0).frames)))
    assert not nail_zones(plan_wall(on(outlet[1599.2], frames=nailed(40.0, 0.0).frames)))
    assert tip_below(Fixing(length=None, angle=45.0)) == 0.0


def test_the_zones_follow_a_sloping_ceiling():
    # from 2000 at the left end to 3000 at the right: a slope of 1 in 3, √10/3 = 1.0541 as far upright as square to it
    corners = ((0.0, 0.0), (3000.0, 0.0), (3000.0, 3000.0), (0.0, 2000.0))
    for outline in (corners, corners[::-1]):
        sloped = Wall(name="", width=3000.0, height=3000.0, wiring="uk", outline=outline)
        at_middle = 2500.0  # the ceiling at x = 1500
        assert reasons(sloped, 1500.0, at_middle - 158.0) == ["within 150 mm · 5 7/8 in of the top of the wall"]
        # a piece of 50 mm falls 16 mm: at most so much more is in the zone
        assert reasons(sloped, 1500.0, at_middle - 158.2 - 16.0) == []
        assert reasons(sloped, 150.0, 1000.0) == ["within 150 mm · 5 7/8 in of a corner with the next wall"]


@given(st.floats(1.0, 2999.0), st.floats(0.0, 158.0), st.booleans())
def test_nothing_within_the_band_under_a_slope_is_missed(x, under, left):
    ends = (2000.0, 3000.0) if left else (3000.0, 2000.0)
    outline = ((0.0, 0.0), (3000.0, 0.0), (3000.0, ends[1]), (0.0, ends[0]))
    ceiling = ends[0] + (ends[1] - ends[0]) * x / 3000.0
    sloped = Wall(name="", width=3000.0, height=3000.0, wiring="uk", outline=outline)
    assert "within 150 mm · 5 7/8 in of the top of the wall" in reasons(sloped, x, ceiling - under)


def test_a_sloping_edge_is_followed_in_short_pieces_from_end_to_end():
    # a roof on the line y = x + 1600 over its first metre, √2 m long: 29 pieces of less than 50 mm, by hand here
    corners = ((0.0, 0.0), (4000.0, 0.0), (4000.0, 2600.0), (1000.0, 2600.0), (0.0, 1600.0))
    for outline in (corners, corners[::-1]):
        edges = edge_pieces(Wall(name="", width=4000.0, height=2600.0, outline=outline))
        roof = sorted(edge.rect for edge in edges if edge.stretch != 1.0)
        assert len(roof) == 29 and len(edges) == 33
        steps = [1000.0 * number / 29 for number in range(30)]
        assert [rect.x0 for rect in roof] == pytest.approx(steps[:-1])
        assert [rect.x1 for rect in roof] == pytest.approx(steps[1:])
        assert {round(y - x, 6) for rect in roof for x, y in ((rect.x0, rect.y0), (rect.x1, rect.y1))} == {1600.0}


def test_a_rectangle_has_four_edges():
    assert [(edge.side, edge.stretch) for edge in edge_pieces(DE)] == [
        ("floor", 1.0), ("right", 1.0), ("top", 1.0), ("left", 1.0)
    ]  # fmt: skip


DEPTHS = [  # length in inches, degrees from straight in, depth in inches: length · cos(angle)
    (1.25, 45.0, 0.884), (2.0, 45.0, 1.414), (2.5, 0.0, 2.5), (2.5, None, 2.5), (2.0, 60.0, 1.0),
]  # fmt: skip


@pytest.mark.parametrize(("length", "angle", "depth"), DEPTHS)
def test_how_deep_a_nail_goes(length, angle, depth):
    assert depth_of(Fixing(length=length * INCH, angle=angle)) == pytest.approx(depth * INCH, abs=0.01)


def test_a_nail_of_no_known_length_has_no_known_depth():
    assert depth_of(Fixing(length=None, angle=45.0)) is None


def test_where_cables_may_begin_behind_a_board():
    # NEC 300.4(A)(1), (D): 1 1/4 in = 31.75 mm behind the board; 1/2 in makes 44.45, 5/8 in 47.625
    assert cable_depth(wall(wiring="us", board=0.5 * INCH)) == pytest.approx(44.45)
    assert cable_depth(wall(wiring="us", board=0.625 * INCH)) == pytest.approx(47.625)
    assert cable_depth(wall(wiring="us")) == pytest.approx(31.75)
    assert cable_depth(wall(wiring="uk", board=12.5)) == 50.0  # BS 7671, 522.6.202
    assert [cable_depth(wall(wiring=rule)) for rule in ("de", "none", "")] == [None, None, None]
    assert cable_depth(wall(wiring="us", build="masonry")) is None  # no stud to be bored through


# 1 1/4 and 2 in at 45° stay short of 1 3/4 in, 2 1/2 in straight goes further
@pytest.mark.parametrize(("length", "angle", "deep"), [(1.25, 45.0, 0), (2.0, 45.0, 0), (2.5, None, 1), (1.74, 0.0, 0)])
def test_a_nail_that_goes_where_cables_may_begin_in_a_stud(length, angle, deep):
    job = nailed(length * INCH, angle, wiring="us", board=0.5 * INCH, unit="in")
    found = [item for item in find(plan_wall(job)) if item.rule == "nail-deep"]
    assert len(found) == deep
    assert all("1 3/4 in" in item.text and "between studs, at any depth" in item.text for item in found)


def test_without_a_board_the_nail_is_counted_from_the_stud_and_the_words_say_so():
    (found,) = [item for item in find(plan_wall(nailed(32.0, wiring="us"))) if item.rule == "nail-deep"]
    assert "no board counted" in found.text


def test_frames_of_one_depth_make_one_finding():
    fixing = Fixing(kind="screw", length=60.0)
    frames = tuple(frame(name, fixing=fixing) for name in "ABC")
    (found,) = [item for item in find(plan_wall(on(frames=frames))) if item.rule == "nail-deep"]
    assert found.about == ("A", "B", "C")


def test_every_warning_about_cables_asks_for_a_detector_and_an_electrician():
    jobs = {rule: on(feature("outlet", 1960.0, 300.0), wiring=rule) for rule in ("uk", "de", "us", "none", "")}
    found = [(rule, item) for rule, job in jobs.items() for item in find(plan_wall(job))]
    texts = [(rule, item.text) for rule, item in found if item.rule in ("cable-zone", "wiring-unknown")]
    assert len(texts) == 6  # a zone in three of them, a question in "us", "none" and ""
    experts = {"uk": "a registered or qualified electrician"}  # by the country's own word
    assert all("detector" in text for _, text in texts)
    assert all(experts.get(rule, "a licensed electrician") in text for rule, text in texts)


def test_a_feature_is_called_by_its_kind_and_its_name():
    called = [feature(*given, 0.0, 0.0, name=name).called for given, name in (
        (("switch",), "switch"), (("switch",), "left one"), (("furniture",), "sofa"), (("other",), "beam"),
    )]  # fmt: skip
    assert called == ["switch", "switch 'left one'", "sofa", "beam"]
