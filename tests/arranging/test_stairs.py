"""Frames on a stair: where they hang, what is drawn, and what a job file may say of it."""

import math
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.arranging.rows import arrange
from templates_gen.base.geometry import Rect, bounds
from templates_gen.base.record import replace
from templates_gen.documents.schedule.table import as_data, as_text
from templates_gen.job.model import Job, Wall
from templates_gen.job.reading.building import read_job
from templates_gen.job.stairs import Stairs
from templates_gen.tiling.long_lines import REACH, centre_spans, level_spans
from tests.broken_places import with_stairs
from tests.jobs import Height, frame, group, job, named
from tests.made import made
from tests.wall_reading import CLOSE, Shown, distance, every, in_hole, shown, wide

side = st.floats(min_value=20.0, max_value=2000.0)
STRONG = 0.5  # mm; line widths of ISO 128-2, from memory
STEP = 20.0  # mm between the points that are looked at; no source


@st.composite
def climbs(draw):
    """A group of up to 8 frames of any sizes that climbs to the right or left, and the sizes."""
    names = tuple(str(number) for number in range(draw(st.integers(1, 8))))
    slope = math.tan(math.radians(draw(st.floats(1.0, 80.0)))) * draw(st.sampled_from((1, -1)))
    align = draw(st.sampled_from(("top", "centre", "bottom")))
    asked = group((names,), "stairs", gap=draw(st.floats(0.0, 200.0)), slope=slope, align=align)
    asked = replace(asked, gap_down=draw(st.floats(0.0, 200.0)))  # which says nothing of frames side by side
    return asked, {name: (draw(side), draw(side)) for name in names}


def on_line(rect: Rect, align: str) -> float:
    return {"top": rect.y1, "centre": rect.cy, "bottom": rect.y0}[align]


def clear_distance(one: Rect, two: Rect) -> float:
    """The shortest way between two rectangles that are apart (mm)."""
    across, up = max(two.x0 - one.x1, one.x0 - two.x1, 0.0), max(two.y0 - one.y1, one.y0 - two.y1, 0.0)
    return math.hypot(across, up)


@given(climbs())
def test_every_frame_has_its_point_on_one_line_of_the_stairs_slope(case):
    asked, sizes = case
    for rect in arrange(asked, sizes).values():
        assert on_line(rect, asked.align) == pytest.approx(asked.slope * rect.cx, abs=1e-6)


@given(climbs())
def test_neighbours_keep_exactly_the_gap_from_side_to_side_and_never_less_in_any_direction(case):
    asked, sizes = case
    rects = list(arrange(asked, sizes).values())
    for one, two in pairwise(rects):
        assert two.x0 - one.x1 == pytest.approx(asked.gap_across, abs=1e-6)
    for at, one in enumerate(rects):
        assert all(clear_distance(one, two) >= asked.gap_across - 1e-6 for two in rects[:at])
        assert not any(one.overlaps(two) for two in rects[:at])


@given(climbs())
def test_a_stair_to_the_left_is_the_mirror_image_of_one_to_the_right(case):
    asked, sizes = case
    other = group((asked.rows[0][::-1],), "stairs", gap=asked.gap_across, slope=-asked.slope, align=asked.align)
    mirrored = arrange(other, sizes)
    for name, rect in arrange(asked, sizes).items():
        found = mirrored[name]
        sides = (rect.x0, rect.y0, rect.x1, rect.y1)
        assert (-found.x1, found.y0, -found.x0, found.y1) == pytest.approx(sides, abs=1e-9)


@given(climbs())
def test_the_group_is_centred_across(case):
    box = bounds(arrange(*case).values())
    assert box.cx == pytest.approx(0.0, abs=1e-6)


def steps(up: str = "right", **more: float | None) -> Stairs:
    """Steps of 250 mm along and 180 mm up, the first nosing 400 across and 180 up, or mirrored on a wall of 4 m."""
    right = up == "right"
    return Stairs(x=400.0 if right else 3600.0, y=180.0, slope=0.72 if right else -0.72, **more)


def three(up: str = "right", align: str = "centre") -> Plan:
    sizes = {"A": (300.0, 400.0), "B": (400.0, 300.0), "C": (200.0, 250.0)}
    names = ("A", "B", "C") if up == "right" else ("C", "B", "A")
    asked = group((names,), "stairs", gap=50.0, align=align, slope=steps(up).slope,
                  height=Height(by="above_nosings", at=1500.0))  # fmt: skip
    frames = [frame(name, *sizes[name], drop=60.0) for name in ("A", "B", "C")]
    return plan_wall(job(*frames, group=asked, wall=Wall(name="", width=4000.0, height=5000.0, stairs=steps(up))))


def test_three_frames_worked_out_by_hand():
    """300 + 50 + 400 + 50 + 200 = 1000 about 2000: middles at 1650, 2050 and 2400.

    The pitch line is at 180 + 0.72 (x − 400) + 1500: 2580, 2868 and 3120; at 2000 it is 2832.
    """
    plan = three()
    assert [(hung.rect.cx, hung.rect.cy) for hung in plan.frames] == [
        pytest.approx(middle) for middle in ((1650.0, 2580.0), (2050.0, 2868.0), (2400.0, 3120.0))
    ]
    assert (plan.centre_line, plan.level_line) == pytest.approx((2000.0, 2832.0))
    assert plan.frames[0].nails[0].y == pytest.approx(2580 + 200 - 60 - 0.9)  # a nail of 1.8 mm is half of it lower


def test_the_same_up_to_the_left():
    plan, right = three("left"), three()
    assert {hung.frame.id: (4000 - hung.rect.cx, hung.rect.cy) for hung in plan.frames} == {
        hung.frame.id: pytest.approx((hung.rect.cx, hung.rect.cy)) for hung in right.frames
    }


def test_feet_on_the_line():
    assert [hung.rect.y0 for hung in three(align="bottom").frames] == pytest.approx([2580.0, 2868.0, 3120.0])


def test_what_one_stands_on_is_the_floor_then_the_nosings_then_the_landing():
    # 180 + 0.72 · 500 = 540; the landing at 180 + 4 · 180 = 900 is reached 1000 after the first nosing
    stair = steps(top=900.0)
    assert [stair.ground_at(x) for x in (399.0, 400.0, 900.0, 1400.0, 3000.0)] == pytest.approx(
        [0.0, 180.0, 540.0, 900.0, 900.0]
    )
    assert steps("left", top=900.0).ground_at(3100.0) == pytest.approx(540.0)
    assert stair.pitch == pytest.approx(math.degrees(math.atan2(180, 250)))


@given(st.sampled_from((0.75, -0.75)), st.floats(0.0, 3600.0))
def test_a_frame_is_as_high_above_a_stair_as_its_nearest_point_whichever_way_that_climbs(slope, left):
    wall = Wall(name="", width=4000.0, height=2600.0, stairs=Stairs(x=2000.0, y=180.0, slope=slope, top=1200.0))
    heights = [wall.above_ground(left + 4.0 * number, 1500.0) for number in range(101)]
    assert wall.least_above_ground(Rect.sized(left, 1500.0, 400.0, 500.0)) == pytest.approx(min(heights))


def test_both_lines_reach_a_spirit_levels_length_about_the_target():
    plan = three()
    assert level_spans(plan) == [(2000.0 - REACH, 2000.0 + REACH)]
    assert centre_spans(plan) == [pytest.approx((2832.0 - REACH, 2832.0 + REACH))]


def test_the_schedule_says_where_the_pitch_line_is():
    plan = three()
    assert "pitch line 1500 mm · 59 1/16 in above the nosings\nclimbing at 35.8°" in as_text(plan)  # atan 0.72
    assert as_data(plan, ())["pitch_line"] == {"slope": 0.72, "above_nosings": 1500.0}
    assert "pitch_line" not in as_data(plan_wall(job()), ())


# The sample: 10 in along, 7 1/2 in up, the first nosing 20 in across and 7 1/2 in up, 58 in above.  Four frames of
# 11 1/4 in, one of 16 1/2 in and four gaps of 3 in are 73 1/2 in, about 80 in.  All worked out by hand here.
INCH = 25.4
LEFT, RIGHT = (80 - 73.5 / 2) * INCH, (80 + 73.5 / 2) * INCH


def pitch_at(x: float) -> float:
    return (7.5 + 58.0) * INCH + 0.75 * (x - 20 * INCH)


def slanting(sheet: Shown) -> list:
    return [s for s in wide(sheet.segments, STRONG) if s.dash[0] and min(abs(s.x1 - s.x0), abs(s.y1 - s.y0)) > CLOSE]


def test_the_written_pitch_line_is_straight_above_the_nosings_on_every_sheet_that_shows_it():
    nails = [(nail.x, nail.y) for nail in made("lock-keepers").plan.nails]
    points = [(x, pitch_at(x)) for x in every(LEFT, RIGHT, STEP)]
    counts = [0] * len(points)
    for sheet in shown("lock-keepers"):
        lines = slanting(sheet)
        for number, (x, y) in enumerate(points):
            if sheet.window.grown(-CLOSE).has_point(x, y):
                counts[number] += 1
                assert in_hole(nails, x, y) or min(distance(s, x, y) for s in lines) < CLOSE, (sheet.name, x, y)
    assert min(counts) >= 1


def test_nothing_else_is_drawn_along_a_slope():
    found = 0
    for sheet in shown("lock-keepers"):
        for s in slanting(sheet):
            assert LEFT - CLOSE < min(s.x0, s.x1) and max(s.x0, s.x1) < RIGHT + CLOSE
            assert all(abs(y - pitch_at(x)) < CLOSE for x, y in ((s.x0, s.y0), (s.x1, s.y1)))
            found += 1
    assert found


def test_dashes_of_the_pitch_line_meet_across_joins():
    """Dash, gap, dot, gap, dot, gap, as line type 12 (ISO 128-2, from memory); their lengths are our own design."""
    starts = []
    for sheet in shown("lock-keepers"):
        for s in slanting(sheet):
            lengths, phase = s.dash
            assert lengths == pytest.approx((4.0, 2.0, 0.8, 2.0, 0.8, 2.0), abs=CLOSE)
            along = s.x0 * math.hypot(s.x1 - s.x0, s.y1 - s.y0) / (s.x1 - s.x0)
            starts.append((along - phase) / sum(lengths))
    apart = [(start - starts[0] + 0.5) % 1 - 0.5 for start in starts]
    assert len(starts) > 5
    assert max(map(abs, apart)) * 11.6 < 0.01  # mm; slopes read from points of 0.0001 mm; no source


def test_the_pitch_line_is_named_with_its_angle_and_its_step():
    words = [text.text for sheet in shown("lock-keepers") for text in sheet.texts if "pitch line" in text.text]
    # atan(7.5 / 10) = 36.87 degrees
    assert "pitch line 58 in · 1473 mm above the nosings, climbing at 36.9°, 7 1/2 in up for 10 in along" in words
    assert len(words) >= 5


def read_text(folder: Path, text: str) -> Job:
    (folder / "job.toml").write_text(text, encoding="utf-8")
    return read_job(folder / "job.toml")


def test_a_job_with_stairs_is_read(tmp_path):
    done = read_text(tmp_path, with_stairs(more="height = { above_nosings = 1500 }"))
    assert done.wall.stairs == Stairs(x=3600.0, y=180.0, slope=-0.72, run=250.0, rise=180.0, top=900.0, clear=700.0)
    assert (done.group.slope, done.group.height) == (-0.72, Height(by="above_nosings", at=1500.0))


def test_a_pitch_may_stand_for_the_step(tmp_path):
    done = read_text(tmp_path, with_stairs('stairs = { pitch = 45, up = "right", nosing = [0, 0] }'))
    assert done.wall.stairs is not None
    assert done.wall.stairs.slope == pytest.approx(1.0)
    assert done.group.height == Height(by="above_nosings", at=57 * INCH)  # common practice


def test_what_is_over_the_landing_is_said_to_be_over_that():
    # the frame is 2000 across, its lower edge at 1200; the landing at 600 is reached (600 − 180) / 0.72 = 583 after 400
    near = Wall(name="", width=4000.0, height=2600.0, stairs=steps(top=600.0, clear=700.0))
    (found,) = named("near-nosings", job(wall=near))
    assert found.text.startswith("Frame A is 600 mm · 23 5/8 in above the landing")
    (rail,) = named("handrail", job(wall=near))
    assert "above the nosings or the landing" in rail.text


def test_heights_on_a_wall_with_a_stair_are_above_the_lower_floor():
    plan = three()
    assert "level line 2832 mm · 111 1/2 in above the lower floor" in as_text(plan)  # 2832 / 25.4 = 111.496
    assert "above the floor" in as_text(plan_wall(job()))
