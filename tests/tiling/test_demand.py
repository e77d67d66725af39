"""What has to be on paper, and from where to where the long lines run: worked out by hand here."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.job.model import Feature, Height, Wall
from templates_gen.job.stairs import Stairs
from templates_gen.tiling.cells import Clearance
from templates_gen.tiling.covered import Covered
from templates_gen.tiling.demand import bordered, demand, nail_box, scale_length
from templates_gen.tiling.long_lines import centre_spans, level_spans, nosing_line, pieces, pitch_line, wall_edges
from tests.jobs import frame, group, job

CLEAR = Clearance(13.0, 14.0, 6.0, 15.0)
PLAN = plan_wall(job(frame("A", drop=None), frame("B", 300.0, 200.0, 60.0), group=group((("A", "B"),))))


def test_the_mark_of_a_nail_takes_its_hairlines_and_its_slit():
    """9 mm to both sides and 8 up, where its hairlines end, and 36 down to the end of the slit: our own design."""
    assert nail_box(100.0, 1000.0) == Rect(91.0, 964.0, 109.0, 1008.0)


@pytest.mark.parametrize(
    ("height", "drop", "length"),
    [
        (300.0, 50.0, 120.0),  # at the least
        (600.0, 50.0, 200.0),  # a third of the frame
        (300.0, 100.0, 140.0),  # 40 mm past its drop
        (600.0, 170.0, 210.0),
        (100.0, 50.0, 95.0),  # ends 5 mm over the frame's lower edge
        (300.0, None, 120.0),
        (900.0, None, 300.0),
    ],
)
def test_a_drop_scale_goes_on_past_its_drop_and_a_third_down_but_not_out_of_its_frame(height, drop, length):
    (hung,) = plan_wall(job(frame(height=height, drop=drop))).frames
    assert scale_length(hung, drop) == pytest.approx(length)


def test_every_nail_and_the_target_are_whole_whatever_is_covered():
    target = Rect(PLAN.centre_line - 15, PLAN.level_line - 15, PLAN.centre_line + 15, PLAN.level_line + 15)
    for cover in ("all", "panels", "marks", "linked", "nails"):
        whole = demand(PLAN, cover, CLEAR).whole
        assert whole == (*(nail_box(nail.x, nail.y) for nail in PLAN.nails), target)
    assert demand(PLAN, "nails", CLEAR).divisible == demand(PLAN, "nails", CLEAR).lines == ()


def test_the_group_is_shown_with_its_edges_line_or_with_a_border_for_a_sheets_own_marks():
    """0.25 mm wide are the edges; 4 mm of border between them and rulers or title: our own design, no source."""
    group_ = PLAN.group
    assert demand(PLAN, "all", CLEAR).divisible == (group_.grown(0.25),)
    border = Rect(group_.x0 - 17.0, group_.y0 - 18.0, group_.x1 + 10.0, group_.y1 + 19.0)
    assert demand(PLAN, "panels", CLEAR).divisible == (border,) == (bordered(group_, CLEAR),)


@pytest.mark.parametrize("trim", ["cut", "none"])
def test_of_every_mark_the_corners_are_asked_for_and_of_its_strips_the_whole_edges(trim):
    """Arms of 15 mm, as thick as what a line to cut keeps off an edge, 3 mm outside and 6 inside; uncut, 1.5 mm: our
    own design, no source."""
    hides = Covered(7.0, 13.0, 6.0) if trim == "none" else None
    out, into = (1.5, 1.5) if hides else (3.0, 6.0)
    arms = set(demand(PLAN, "marks", CLEAR, hides).divisible)
    edges = demand(PLAN, "edges", CLEAR, hides)
    assert {*demand(PLAN, "marks", CLEAR, hides).lines} >= {*demand(PLAN, "linked", CLEAR, hides).lines}
    for hung in PLAN.frames:
        r = hung.rect
        foot, left = (
            Rect(r.x0 - out, r.y0 - out, r.x0 + 15.0, r.y0 + into),
            Rect(r.x0 - out, r.y0 - out, r.x0 + into, r.y0 + 15.0),
        )
        head, right = (
            Rect(r.x1 - 15.0, r.y1 - into, r.x1 + out, r.y1 + out),
            Rect(r.x1 - into, r.y1 - 15.0, r.x1 + out, r.y1 + out),
        )
        assert {foot, left, head, right} <= arms
    on_edges = [one for one in arms if any(line.holds(one) for line in demand(PLAN, "linked", CLEAR, hides).lines)]
    assert len(on_edges) == 8 * len(PLAN.frames)  # two arms of four corners
    assert all(any(line.holds(one) for line in edges.lines) for one in on_edges)


def test_no_cut_of_linked_paper_runs_along_an_edge_its_second_line_or_a_long_line():
    """From 3 mm outside an edge to 3 mm inside its second line, which is 3 mm inside, and 3 mm to either side of both
    long lines: our own design, no source."""
    edges, g = demand(PLAN, "linked", CLEAR).lines, PLAN.group
    assert len(edges) == 8 + 2
    assert Rect(PLAN.centre_line - 3.0, g.y0, PLAN.centre_line + 3.0, g.y1) in edges
    assert Rect(g.x0, PLAN.level_line - 3.0, g.x1, PLAN.level_line + 3.0) in edges
    for hung in PLAN.frames:
        r, outer = hung.rect, hung.rect.grown(3.0)
        assert Rect(outer.x0, r.y1 - 6.0, outer.x1, outer.y1) in edges
        assert Rect(outer.x0, outer.y0, outer.x1, r.y0 + 6.0) in edges
        assert Rect(outer.x0, outer.y0, r.x0 + 6.0, outer.y1) in edges
        assert Rect(r.x1 - 6.0, outer.y0, outer.x1, outer.y1) in edges


def test_linked_paper_has_the_scale_of_a_drop_that_is_not_known_and_no_other():
    """120 mm from the top edge down, 25 mm to either side: our own design, no source."""
    assert [hung.bearings[0].drop is None for hung in PLAN.frames] == [True, False]
    r = PLAN.frames[0].rect
    assert demand(PLAN, "linked", CLEAR).divisible == (Rect(r.cx - 25.0, r.y1 - 120.0, r.cx + 25.0, r.y1),)


def test_no_cut_runs_through_the_names_and_ticks_of_both_long_lines():
    """7 mm to either side, and what a sheet's own marks take there: our own design, no source."""
    lines, g = demand(PLAN, "all", CLEAR).lines, PLAN.group
    assert Rect(PLAN.centre_line - 20.0, g.y0, PLAN.centre_line + 13.0, g.y1) in lines
    assert Rect(g.x0, PLAN.level_line - 21.0, g.x1, PLAN.level_line + 22.0) in lines


def test_both_lines_run_across_the_group_and_stop_at_what_it_hangs_around():
    assert level_spans(PLAN) == [(PLAN.group.x0, PLAN.group.x1)]
    assert centre_spans(PLAN) == [(PLAN.group.y0, PLAN.group.y1)]
    fire = Feature(kind="other", name="stove", rect=Rect(1500.0, 900.0, 2500.0, 1700.0))
    sides = group((("A",), ("B",), ("C",), ("D",)), "around", around=fire, gap_around=80.0,
                  height=Height(by="feature", at=0.0))  # fmt: skip
    plan = plan_wall(job(*(frame(name) for name in "ABCD"), group=sides))
    assert plan.level_line > fire.rect.y1 and fire.rect.x0 < plan.centre_line < fire.rect.x1
    assert level_spans(plan) == [(plan.group.x0, plan.group.x1)]
    low = replace(plan, level_line=1000.0)
    assert level_spans(low) == [(plan.group.x0, 1500.0), (2500.0, plan.group.x1)]
    assert level_spans(replace(plan, level_line=900.0)) == level_spans(low)  # along its edge is not over it
    assert level_spans(replace(plan, level_line=899.0)) == level_spans(plan)
    assert centre_spans(plan) == [(plan.group.y0, 900.0), (1700.0, plan.group.y1)]


def on_stairs(slope: float, top: float | None = None):
    wall = Wall(name="", width=4000.0, height=5000.0, stairs=Stairs(x=400.0, y=180.0, slope=slope, top=top))
    names = tuple("ABCDE")
    asked = group((names,), "stairs", gap=50.0, slope=slope, align="centre",
                  height=Height(by="above_nosings", at=1500.0))  # fmt: skip
    return plan_wall(job(*(frame(name, 300.0, 300.0) for name in names), group=asked, wall=wall))


def test_on_stairs_both_lines_go_300_mm_to_each_side_of_the_target_and_the_pitch_line_right_across():
    plan = on_stairs(0.5)
    assert plan.group.width > 600.0 and plan.group.height > 600.0
    assert level_spans(plan) == [(plan.centre_line - 300.0, plan.centre_line + 300.0)]
    assert centre_spans(plan) == [(plan.level_line - 300.0, plan.level_line + 300.0)]
    x0, y0, x1, y1 = pitch_line(plan) or (0.0,) * 4
    assert (x0, x1) == (plan.group.x0, plan.group.x1)
    assert (y1 - y0) / (x1 - x0) == pytest.approx(0.5)
    assert y0 + 0.5 * (plan.centre_line - x0) == pytest.approx(plan.level_line)
    assert pitch_line(PLAN) is None


def test_no_paper_is_asked_for_where_only_the_centre_line_would_be_on_it():
    """On stairs, and beyond what the frames hang around, nothing is measured along it: what is asked for 200 mm above
    the target, and over the stove, are frames and scales alone."""
    plan = on_stairs(0.5)
    apart = Rect.about(plan.centre_line, plan.level_line + 250.0, 60.0, 20.0)
    assert not any(hung.rect.overlaps(apart) for hung in plan.frames)
    assert not any(part.overlaps(apart) for part in demand(plan, "marks", CLEAR).divisible)
    stove = Feature(kind="other", name="stove", rect=Rect(1500.0, 900.0, 2500.0, 1700.0))
    sides = group((("A",), ("B",), (), ()), "around", around=stove, gap_around=80.0,
                  height=Height(by="feature", at=0.0))  # fmt: skip
    around = plan_wall(job(frame("A", 300.0, 1200.0), frame("B", 900.0, 300.0), group=sides))
    ends = [Rect.about(around.centre_line, (low + high) / 2, 8.0, 8.0) for low, high in centre_spans(around)]
    beyond = [end for end in ends if not any(hung.rect.overlaps(end) for hung in around.frames)]
    assert beyond
    assert not any(part.overlaps(end) for part in demand(around, "marks", CLEAR).divisible for end in beyond)
    straight = demand(PLAN, "marks", CLEAR).divisible  # elsewhere it runs from the group's top to its foot
    assert any(part.x0 < PLAN.centre_line < part.x1 and part.height == PLAN.group.height for part in straight)


def test_nosings_end_at_the_top_of_the_stairs_or_at_the_walls_end():
    """From (400, 180) with a slope of 0.5: at 1180 high it is 2000 mm further; the wall is 4000 mm wide."""
    assert nosing_line(on_stairs(0.5, 1180.0).job.wall) == pytest.approx((400.0, 180.0, 2400.0, 1180.0))
    assert nosing_line(on_stairs(0.5).job.wall) == pytest.approx((400.0, 180.0, 4000.0, 1980.0))
    assert nosing_line(PLAN.job.wall) is None
    down = Wall(name="", width=4000.0, height=5000.0, stairs=Stairs(x=3600.0, y=180.0, slope=-0.5))
    assert nosing_line(down) == pytest.approx((3600.0, 180.0, 0.0, 1980.0))


def test_the_walls_edges_go_all_around():
    assert wall_edges(PLAN.job.wall) == [
        (0.0, 0.0, 4000.0, 0.0), (4000.0, 0.0, 4000.0, 2600.0), (4000.0, 2600.0, 0.0, 2600.0), (0.0, 2600.0, 0.0, 0.0),
    ]  # fmt: skip


@given(
    st.tuples(*[st.integers(-500, 500).map(float)] * 4), st.sampled_from([5.0, 20.0, 300.0]),
)  # fmt: skip
def test_pieces_of_a_line_hold_all_of_it_and_none_is_larger_than_asked(line, step):
    x0, y0, x1, y1 = line
    found = list(pieces(line, step))
    assert all(piece.width <= step + 1e-9 and piece.height <= step + 1e-9 for piece in found)
    assert len(found) == max(1, -(-max(abs(x1 - x0), abs(y1 - y0)) // step))
    for at in range(11):
        x, y = x0 + (x1 - x0) * at / 10, y0 + (y1 - y0) * at / 10
        assert any(piece.has_point(x, y) for piece in found)
    ends = {corner for piece in found for corner in piece.corners}
    assert any(abs(x - x1) < 1e-9 and abs(y - y1) < 1e-9 for x, y in ends)
