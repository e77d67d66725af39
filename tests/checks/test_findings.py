"""What is wrong or risky: for every rule the smallest job that raises it, and the same with one thing changed."""

import ast
from pathlib import Path
from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from templates_gen import checks as findings
from templates_gen.arranging.plan import plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.checks import find, stops
from templates_gen.job.model import Feature, Fixing, Group, Hanger, Job, Wall
from tests.finding_cases_behind import CASES as BEHIND
from tests.finding_cases_behind import SWITCH, wall
from tests.finding_cases_found import CASES as FOUND
from tests.finding_cases_holding import CASES as HOLDING
from tests.finding_cases_stairs import CASES as STAIRS
from tests.finding_cases_stairs import climbing
from tests.finding_cases_wire import CASES as WIRE
from tests.jobs import Height, Spot, frame, group, job, named


def placed(apart: float) -> Job:
    """Two frames of 400 mm whose middles are so far apart; they should keep 60 mm between them."""
    half = apart / 2
    spots = (("A", Spot(point="centre", x=-half, y=0.0)), ("B", Spot(point="centre", x=half, y=0.0)))
    height = Height(by="centre", at=1450.0)
    asked = Group(arrangement="placed", rows=(("A", "B"),), gap_across=60.0, gap_down=60.0, spots=spots, height=height)
    return job(frame("A"), frame("B"), group=asked)


def beside(left: float, bottom: float = 1400.0, kind: str = "switch", clear: float = 0.0) -> Job:
    """A frame from 1800 to 2200 across, from 1200 to 1700 up, and a feature of 80 mm."""
    rect = Rect.sized(left, bottom, 80.0, 80.0)
    feature = Feature(kind=kind, name="it", rect=rect, clear=clear)
    return job(wall=Wall(name="", width=4000.0, height=2600.0, features=(feature,)))


def at_height(centre: float) -> Job:
    return job(group=group((("A",),), height=Height(by="centre", at=centre)))


def over_bench(by: float, width: float = 800.0) -> Job:
    bench = Feature(kind="furniture", name="bench", rect=Rect.about(2000.0, 350.0, width, 700.0))
    return job(
        wall=Wall(name="", width=4000.0, height=2600.0, features=(bench,)),
        group=group((("A",),), height=Height(by="above", at=by, feature="bench")),
    )


def rings(left: float, right: float = 100.0) -> Job:
    return job(frame(hanger=Hanger(kind="rings", left=left, right=right)))


def pair(left: float) -> Job:
    return rings(left, 190.0)


def plates_over(gap: float) -> Job:
    """A frame with a plate whose hole is 12 mm under it, over another."""
    plates = Hanger(kind="plates", left=60.0, right=60.0, drop_left=512.0, drop_right=480.0)
    return job(frame(drop=None, hanger=plates), frame("B"), group=group((("A",), ("B",)), gap=gap))


def narrow(width: float) -> Wall:
    return Wall(name="", width=width, height=2600.0)


def plates_out(mm: float, *, top: float = 60.0, **more: Any) -> Job:
    """A frame with a plate standing out beyond its right side, the hole `mm` from the frame."""
    plates = Hanger(kind="plates", left=60.0, right=-mm, drop_left=60.0, drop_right=top)
    return job(frame(drop=None, hanger=plates), **more)


def plates_close(gap: float) -> Job:
    """Two frames whose plates stand out 15 mm towards each other, on plaster."""
    plates = Hanger(kind="plates", left=-15.0, right=-15.0, drop_left=90.0, drop_right=90.0)
    plastered = Wall(name="", width=4000.0, height=2600.0, build="plaster")
    frames = [frame(name, drop=None, hanger=plates) for name in "AB"]
    return job(*frames, wall=plastered, group=group((("A", "B"),), gap=gap))


def plates_beside(x: float) -> Job:
    return plates_out(14.0, top=260.0, wall=beside(x).wall)  # 1700 - 260 is beside 1400 to 1480


def hooked(drop: float) -> Job:
    return job(frame(drop=drop, fixing=Fixing(kind="hook", below=22.0)))


def off_centre(by: float) -> Job:
    asked = Group(
        arrangement="placed", rows=(("A",),), gap_across=60.0, gap_down=60.0,
        spots=(("A", Spot(point="centre", x=by, y=0.0)),), height=Height(by="centre", at=1450.0),
    )  # fmt: skip
    return job(group=asked)


def sloped(left_height: float) -> Job:
    corners = ((0.0, 0.0), (4000.0, 0.0), (4000.0, 2600.0), (0.0, left_height))
    return job(wall=Wall(name="", width=4000.0, height=2600.0, outline=corners))


def begun(at: float) -> Job:
    asked = sloped(2600.0)
    return replace(asked, wall=replace(asked.wall, begins=(at, 0.0)))


# Limits beside each case worked out by hand here; a frame is 400 x 500 mm with its middle 2000 across, 1450 up
CASES = [  # rule, level, about, a job that raises it, the job with one number changed
    ("frames-overlap", "stop", ("A", "B"), placed(399.0), placed(460.0)),
    ("frames-close", "warn", ("A", "B"), placed(459.0), placed(460.0)),  # 400 + 60
    ("frame-off-wall", "stop", ("A",), at_height(2351.0), at_height(2350.0)),  # 2600 - 250
    ("frame-off-wall", "stop", ("A",), at_height(249.0), at_height(250.0)),
    ("frame-off-wall", "stop", ("A",), sloped(963.0), sloped(964.0)),  # 963.6 + 0.45 (2600 - 963.6) = 1700
    ("outline-begins", "note", (), begun(1.0), begun(0.0)),
    ("frame-over-feature", "stop", ("A",), beside(2199.0), beside(2200.0)),
    ("feature-clearance", "warn", ("A",), beside(2299.0, clear=100.0), beside(2300.0, clear=100.0)),
    ("drop-beyond-frame", "stop", ("A",), job(frame(drop=500.0)), job(frame(drop=499.0))),
    ("hanger-beyond-frame", "stop", ("A",), pair(401.0), pair(190.0)),
    ("hangers-crossed", "stop", ("A",), pair(210.0), pair(209.0)),  # 400 - 190
    ("hangers-one-side", "warn", ("A",), rings(201.0), rings(200.0)),  # 400 / 2
    ("hangers-one-side", "warn", ("A",), rings(100.0, 201.0), rings(100.0, 200.0)),
    ("hook-would-show", "stop", ("A",), hooked(27.9), hooked(28.1)),  # 22 + 6 mm
    ("hole-on-frame", "stop", ("A", "B"), plates_over(17.9), plates_over(18.1)),  # 12 mm under the frame, and 6 mm
    ("hanger-beyond-frame", "stop", ("A",), plates_out(61.0), plates_out(59.0)),  # MOST_BEYOND
    ("drop-beyond-frame", "stop", ("A",), plates_out(14.0, top=-61.0), plates_out(14.0, top=-59.0)),
    ("hole-off-wall", "stop", ("A",), plates_beside(2219.0), plates_beside(2221.0)),  # 2200 + 14, and 6 mm
    ("hole-off-wall", "stop", ("A",), plates_out(14.0, wall=narrow(439.0)), plates_out(14.0, wall=narrow(441.0))),  # 20
    ("holes-close", "warn", ("A", "B"), plates_close(49.7), plates_close(49.9)),  # 30 mm stand out, and 0.66 of 30 mm
    ("furniture-clearance", "note", (), over_bench(149.0), over_bench(151.0)),  # 6 in, rounded to 150 mm
    ("furniture-clearance", "note", (), over_bench(256.0), over_bench(254.0)),  # 10 in, rounded to 255 mm
    # the frame is 400 wide: half of 800
    ("furniture-width", "note", (), over_bench(200.0, 801.0), over_bench(200.0, 799.0)),
    ("furniture-width", "note", (), over_bench(200.0, 399.0), over_bench(200.0, 401.0)),
    ("group-off-centre", "note", (), off_centre(1.1), off_centre(0.9)),
    ("drop-missing", "note", ("A",), job(frame(drop=None)), job(frame(drop=80.0))),
    ("image-missing", "note", ("A",), job(frame(image="a.png", image_missing=True)), job(frame(image="a.png"))),
    *BEHIND,
    *WIRE,
    *FOUND,
    *HOLDING,
    *STAIRS,
]


@pytest.mark.parametrize(("rule", "level", "about", "wrong", "right"), CASES)
def test_a_rule_is_raised_by_the_job_that_breaks_it_and_not_by_the_other(rule, level, about, wrong, right):
    (found,) = named(rule, wrong)
    assert (found.level, found.about) == (level, about)
    assert found.text.endswith(".") and all(name in found.text for name in about)
    assert stops((found,)) == (level == "stop")
    assert named(rule, right) == []


def test_every_rule_has_a_case_here():
    trees = [ast.parse(path.read_text(encoding="utf-8")) for path in Path(findings.__file__).parent.glob("*.py")]
    made = [node for tree in trees for node in ast.walk(tree) if isinstance(node, ast.Call) and node.args]
    calls = [node for node in made if isinstance(node.func, ast.Name) and node.func.id == "Finding"]
    rules = {node.args[1].value for node in calls if isinstance(node.args[1], ast.Constant)}
    assert rules - {case[0] for case in CASES} == set(), "give it a case in CASES, or in a finding_cases_….py"
    assert {case[0] for case in CASES} - rules == set(), "no file of checks/ makes it any more: take its case out"
    assert len(calls) >= len(rules) >= 13  # so many when this was written


def test_a_plain_job_has_nothing_found():
    # all that is asked of a wall: by whose rule it was wired, and a switch on it, far from the nail
    assert find(plan_wall(job(wall=wall(SWITCH)))) == ()


def test_stops_come_first_then_warnings_then_notes():
    both = (frame("A", drop=None), frame("B", width=4100.0))
    levels = [found.level for found in find(plan_wall(job(*both, group=group((("A",), ("B",)), gap=10.0))))]
    assert levels == sorted(levels, key=("stop", "warn", "note").index)
    assert levels[0] == "stop" and levels[-1] == "note"


def test_an_overlap_says_how_far_in_both_units():
    # 400 - 374.6 = 25.4 mm, exactly 1 in
    (found,) = named("frames-overlap", placed(374.6))
    assert "25 mm" in found.text and "1 in" in found.text


def test_frames_of_which_the_same_is_to_be_said_share_one_finding_with_the_right_verb():
    hook = Fixing(kind="hook", below=22.0)
    frames = [frame(name, drop=10.0, fixing=hook, worked_out=(450.0, 500.0)) for name in "AB"]
    of = job(*frames, group=group((("A", "B"),), height=Height(by="centre", at=2400.0)))
    (shows,), (off,), (differs,) = (named(rule, of) for rule in ("hook-would-show", "frame-off-wall", "size-differs"))
    assert shows.about == shows.nails == ("A", "B") and shows.text.startswith("Nails A, B: 12 mm · 1/2 in above")
    assert off.text == "Frames A, B reach beyond the wall: 50 mm · 1 15/16 in at the top."  # 2400 + 250 - 2600
    assert differs.text.startswith("Frames A, B: given as 400 mm × 500 mm")


def test_frames_that_meet_only_at_a_corner_keep_their_gap():
    spots = (("A", Spot(point="bottom_right", x=0.0, y=0.0)), ("B", Spot(point="top_left", x=0.0, y=-60.0)))
    height = Height(by="centre", at=1400.0)
    asked = Group(arrangement="placed", rows=(("A", "B"),), gap_across=60.0, gap_down=60.0, spots=spots, height=height)
    assert named("frames-close", job(frame("A"), frame("B"), group=asked)) == []


def test_the_gap_across_is_for_frames_beside_and_the_gap_down_for_frames_above_each_other():
    # 55 mm apart, where 50 are wanted across and 60 down
    def apart(x: float, y: float) -> list[str]:
        spots = (("A", Spot(point="centre", x=0.0, y=0.0)), ("B", Spot(point="centre", x=x, y=y)))
        height = Height(by="centre", at=1450.0)
        asked = Group(
            arrangement="placed", rows=(("A", "B"),), gap_across=50.0, gap_down=60.0, spots=spots, height=height
        )
        return [found.text for found in named("frames-close", job(frame("A"), frame("B"), group=asked))]

    assert apart(455.0, 0.0) == apart(450.0, 0.0) == []
    assert len(apart(449.9, 0.0)) == 1
    (above,) = apart(0.0, 555.0)
    assert "are 55 mm · 2 3/16 in apart; the gap wanted is 50 mm · 1 15/16 in and 60 mm · 2 3/8 in." in above


def test_every_one_of_many_overlapping_pairs_is_found():
    frames = [frame(name) for name in "ABCD"]
    spots = tuple((name, Spot(point="centre", x=10.0 * at, y=0.0)) for at, name in enumerate("ABCD"))
    height = Height(by="centre", at=1450.0)
    asked = Group(
        arrangement="placed", rows=(tuple("ABCD"),), gap_across=60.0, gap_down=60.0, spots=spots, height=height
    )
    pairs = {frozenset(found.about) for found in named("frames-overlap", job(*frames, group=asked))}
    assert len(pairs) == 6  # 4 x 3 / 2


@pytest.mark.parametrize(("apart", "rule", "more"), [
    (30.0, "frames-close", "More frames are less than 60 mm · 2 3/8 in apart than are named here."),
    (-1.0, "frames-overlap", "More frames overlap than are named here."),
])  # fmt: skip
def test_of_more_than_fifty_pairs_it_is_said_that_there_are_more(apart, rule, more):
    # 50 pairs are named: our own design, no source
    for count in (51, 52):
        names = tuple(f"{number}" for number in range(count))
        spots = tuple((name, Spot(point="centre", x=(400.0 + apart) * at, y=0.0)) for at, name in enumerate(names))
        height = Height(by="centre", at=1450.0)
        asked = Group(arrangement="placed", rows=(names,), gap_across=60.0, gap_down=60.0, spots=spots, height=height)
        found = named(rule, job(*map(frame, names), group=asked))
        assert [item.text for item in found if not item.about] == ([more] if count > 51 else [])
        assert len([item for item in found if item.about]) == 50


def test_a_wire_whose_hook_would_stand_above_the_frame_is_named_with_its_side():
    rings = Hanger(kind="rings", left=60.0, right=60.0, drop_left=10.0, drop_right=80.0)
    (found,) = named("hook-would-show", job(frame(hanger=rings, fixing=Fixing(kind="hook", below=22.0))))
    assert "A left" in found.text and "12 mm" in found.text and "above the top edge" in found.text  # 22 - 10


@given(st.floats(min_value=400.0, max_value=2300.0), st.floats(min_value=1.0, max_value=61.0))
@example(21 * 25.4, 2.375 * 25.4)  # a float sum just under 6 mm
def test_a_nail_just_six_millimetres_under_the_edge_is_never_a_stop(centre, below):
    hook = Fixing(kind="hook", below=below)
    hung = job(frame(drop=below + 6.0, fixing=hook), group=group((("A",),), height=Height(by="centre", at=centre)))
    assert named("hook-would-show", hung) == []


@given(st.floats(min_value=100.0, max_value=900.0), st.floats(min_value=300.0, max_value=700.0))
def test_furniture_just_as_far_below_as_advised_is_never_noted(top, high):
    bench = Feature(kind="furniture", name="bench", rect=Rect.sized(1500.0, 0.0, 1000.0, top))
    wall = Wall(name="", width=4000.0, height=2600.0, features=(bench,))
    for by in (150.0, 255.0):
        above = group((("A",),), height=Height(by="above", at=by, feature="bench"))
        assert named("furniture-clearance", job(frame(height=high), wall=wall, group=above)) == []


def test_a_group_is_not_held_to_a_chair_that_happens_to_stand_under_it():
    def over(width: float) -> Job:
        chair = Feature(kind="furniture", name="chair", rect=Rect.about(2000.0, 400.0, width, 800.0))
        return job(frame(width=1000.0), wall=Wall(name="", width=4000.0, height=2600.0, features=(chair,)))

    assert named("furniture-width", over(499.0)) == []
    (found,) = named("furniture-width", over(501.0))
    assert found.text == (
        "The group is 1000 mm · 39 3/8 in wide, wider than the chair under it (501 mm · 19 3/4 in): two thirds to "
        "three quarters of its width is common."
    )


@given(st.floats(min_value=100.0, max_value=900.0), st.floats(min_value=300.0, max_value=700.0))
def test_a_group_that_stands_on_its_furniture_is_always_noted_and_never_stopped(top, high):
    bench = Feature(kind="furniture", name="bench", rect=Rect.sized(1500.0, 0.0, 1000.0, top))
    wall = Wall(name="", width=4000.0, height=2600.0, features=(bench,))
    above = group((("A",),), height=Height(by="above", at=0.0, feature="bench"))
    standing = job(frame(height=high), wall=wall, group=above)
    assert len(named("furniture-clearance", standing)) == 1
    assert named("frame-over-feature", standing) == []


def test_what_is_wrong_with_both_hangers_of_a_frame_is_said_once():
    (deep,) = named("drop-beyond-frame", job(frame(drop=500.0, hanger=Hanger(kind="rings", left=60.0, right=60.0))))
    (wide,) = named("hanger-beyond-frame", job(frame(hanger=Hanger(kind="wire", apart=401.0, drop_at_two=80.0))))
    assert "500 mm" in deep.text and "401" not in wide.text and "measure" in wide.text.lower()


@given(st.floats(min_value=100.0, max_value=3000.0), st.floats(min_value=1500.0, max_value=2500.0))
def test_a_wire_on_two_hooks_at_the_very_sides_of_its_frame_is_not_beyond_it(width, centre):
    wire = Hanger(kind="wire", apart=width, drop_at_two=80.0)
    asked = group((("A",),), centre_on=centre)
    assert named("hanger-beyond-frame", job(frame(width=width, hanger=wire), group=asked)) == []


def test_a_fixing_under_the_frame_would_show_too():
    # a cleat 80 down with its screws 414 under its edge is 6 mm above the frame's lower edge, at 500
    low, hidden, beyond = (Hanger(kind="cleat", left=90.0, right=90.0, screw_below=mm) for mm in (414.1, 414.0, 430.0))
    (found,) = named("hook-would-show", job(frame(hanger=low)))
    assert found.level == "stop" and found.nails == ("A left", "A right")
    assert "6 mm · 1/4 in above the lower edge" in found.text and "wire" not in found.text
    assert named("hook-would-show", job(frame(hanger=hidden))) == []
    (under,) = named("hook-would-show", job(frame(hanger=beyond)))
    assert "10 mm · 3/8 in below the lower edge" in under.text  # 80 + 430 − 500


def test_how_far_a_frame_is_off_a_wall_with_an_outline_is_not_told():
    (off,) = named("frame-off-wall", sloped(900.0))
    assert off.text == "Frame A reaches beyond the wall."


def test_what_is_too_near_is_also_shown_to_be_nearer():
    assert named("frames-close", placed(459.9))[0].text == (
        "Frames A and B are a little less than 60 mm · 2 3/8 in apart; the gap wanted is 60 mm · 2 3/8 in."
    )
    near = replace(at_height(1450.0).wall, clear=900.1)  # 2600 − 1450 − 250 = 900
    assert named("wall-clearance", job(wall=near))[0].text == (
        "Frame A is a little less than 900 mm · 35 7/16 in from an edge of the wall, nearer than 900 mm · 35 7/16 in."
    )


def test_a_frame_over_two_things_of_one_name_is_told_once():
    wall = replace(beside(1900.0).wall, features=beside(1900.0).wall.features + beside(2000.0).wall.features)
    assert len(named("frame-over-feature", job(wall=wall))) == 1


def test_what_no_tape_measure_shows_is_never_nought():
    for apart in (399.9, 399.6):  # half of a millimetre is where a tape shows one
        assert named("frames-overlap", placed(apart))[0].text == "Frames A and B overlap by less than 1 mm · 1/16 in."
    assert "overlap by 1 mm · 1/16 in." in named("frames-overlap", placed(399.1))[0].text
    (off,) = named("frame-off-wall", at_height(2350.1))
    assert off.text == "Frame A reaches beyond the wall: less than 1 mm · 1/16 in at the top."


def test_a_group_off_its_centre_line_is_told_which_way():
    # 40 / 25.4 = 1.575 in, nearest 1 9/16
    (right,), (left,) = (named("group-off-centre", off_centre(by)) for by in (40.0, -40.0))
    assert right.text == "The group's middle is 40 mm · 1 9/16 in to the right of its centre line."
    assert left.text == "The group's middle is 40 mm · 1 9/16 in to the left of its centre line."


def test_a_handrail_is_told_with_both_its_limits_as_the_standard_prints_them():
    # 34 to 38 in, 865 to 965 mm (2010 ADA Standards, 505.4, from memory)
    (metric,), (inches,) = (named("handrail", replace(climbing(1300.0), unit=unit)) for unit in ("mm", "in"))
    assert "less than 965 mm · 38 in straight" in metric.text and "at 865 mm · 34 in to 965 mm · 38 in" in metric.text
    assert "less than 38 in · 965 mm straight" in inches.text and "at 34 in · 865 mm to 38 in · 965 mm" in inches.text
    assert "from memory" in metric.source
    assert len(named("handrail", climbing(400.0))) == 1  # its lower corner just on the line


def test_frames_that_climb_on_over_a_landing_are_told_how_high_they_come():
    # the line of the nosings is 750 up under the frame's middle, which is 1500 above it; the landing is 749 up
    (found,) = named("climbing-on", climbing(1500.0, nosing=1240.0, top=749.0))
    assert "up to 1501 mm · 59 1/8 in above it" in found.text  # 59.09 in: worked out by hand here
