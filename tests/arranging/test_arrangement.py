"""How frames sit to each other: worked examples for every arrangement."""

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.arranging.rows import arrange
from templates_gen.base.geometry import Rect
from templates_gen.checks import find
from templates_gen.job.model import Feature, Group, Job, Wall
from tests.jobs import Height, Spot, frame, group, job, sides

INCH = 25.4  # mm exactly (international yard and pound agreement, 1959)

TWO_ROWS = (("A", "B"), ("C",))
SIZES = {"A": (200.0, 300.0), "B": (300.0, 200.0), "C": (400.0, 250.0)}


def placed_at(made: dict[str, Rect], expected: dict[str, tuple[float, float, float, float]]) -> None:
    assert list(made) == list(expected)
    for name, numbers in expected.items():
        assert sides(made[name]) == pytest.approx(numbers, abs=1e-9), name


# Every rectangle below: left, bottom, right, top in mm about the group's middle, worked out by hand here.


def test_a_row_stands_side_by_side_about_its_middle():
    # 200 + 40 + 300 = 540 wide, 300 high
    made = arrange(group((("A", "B"),), "row", gap=40.0), SIZES)
    placed_at(made, {"A": (-270, -150, -70, 150), "B": (-30, -100, 270, 100)})


@pytest.mark.parametrize(
    ("align", "bottom"),
    [("top", -50.0), ("centre", -100.0), ("bottom", -150.0)],  # 300 high: 150 - 200, -100, -150
)
def test_a_row_lines_up_its_tops_middles_or_feet(align, bottom):
    made = arrange(group((("A", "B"),), "row", gap=40.0, align=align), SIZES)
    placed_at(made, {"A": (-270, -150, -70, 150), "B": (-30, bottom, 270, bottom + 200)})


def test_a_column_hangs_one_below_the_other():
    # 300 + 40 + 200 = 540 high, 300 wide
    made = arrange(group((("A", "B"),), "column", gap=40.0), SIZES)
    placed_at(made, {"A": (-100, -30, 100, 270), "B": (-150, -270, 150, -70)})


@pytest.mark.parametrize(("align", "left"), [("left", -150.0), ("centre", -100.0), ("right", -50.0)])
def test_a_column_lines_up_its_sides_or_middles(align, left):
    # 300 wide; frame A is 200: -150, -150 + 50, 150 - 200
    made = arrange(group((("A", "B"),), "column", gap=40.0, align=align), SIZES)
    placed_at(made, {"A": (left, -30, left + 200, 270), "B": (-150, -270, 150, -70)})


# rows: 540 and 400 wide; 300 + 50 + 250 = 600 high, so the upper row is 0..300 and the lower -300..-50
@pytest.mark.parametrize(
    ("set_", "left"),
    [("left", -270.0), ("centre", -200.0), ("right", -130.0), ("spread", -200.0)],
)
def test_a_shorter_row_is_set_left_centre_right_or_alone_in_the_middle(set_, left):
    asked = group(TWO_ROWS, "rows", gap_across=40.0, gap_down=50.0, set=set_)
    made = arrange(asked, SIZES)
    placed_at(
        made,
        {"A": (-270, 0, -70, 300), "B": (-30, 50, 270, 250), "C": (left, -300, left + 400, -50)},
    )


def test_a_spread_row_fills_the_width_of_the_longest():
    # lower row 200 + 40 + 300 + 40 + 400 = 980; upper 400 and 300: its one gap becomes 980 - 700 = 280
    sizes = SIZES | {"D": (400.0, 100.0), "E": (300.0, 100.0)}
    rows = (("D", "E"), ("A", "B", "C"))
    made = arrange(group(rows, "rows", gap_across=40.0, gap_down=50.0, set="spread"), sizes)
    assert made["D"].x0 == pytest.approx(-490)
    assert made["E"].x0 == pytest.approx(190)
    assert made["E"].x1 == pytest.approx(490)
    assert made["B"].x0 - made["A"].x1 == pytest.approx(40)


@pytest.mark.parametrize(
    ("set_", "top"),
    [("top", 270.0), ("centre", 125.0), ("bottom", -20.0), ("spread", 125.0)],
)
def test_a_shorter_column_is_set_at_the_top_middle_foot_or_alone_in_the_middle(set_, top):
    # columns of 300 + 40 + 200 = 540 and 250 high; 300 + 50 + 400 = 750 wide
    asked = group(TWO_ROWS, "columns", gap_across=50.0, gap_down=40.0, set=set_)
    made = arrange(asked, SIZES)
    placed_at(
        made,
        {"A": (-325, -30, -125, 270), "B": (-375, -270, -75, -70), "C": (-25, top - 250, 375, top)},
    )


def test_a_spread_column_fills_the_height_of_the_longest():
    # 300 + 40 + 200 + 40 + 250 = 830 high; 100 + 100: the one gap becomes 630
    sizes = SIZES | {"D": (400.0, 100.0), "E": (300.0, 100.0)}
    rows = (("A", "B", "C"), ("D", "E"))
    made = arrange(group(rows, "columns", gap=40.0, set="spread"), sizes)
    assert made["D"].y1 == pytest.approx(415)
    assert made["D"].y0 - made["E"].y1 == pytest.approx(630)
    assert made["E"].y0 == pytest.approx(-415)


def test_a_grid_keeps_its_columns_and_rows_in_line():
    # columns 400 (C) and 300 (B) wide, rows 300 (A) and 250 (C) high; 400 + 40 + 300 = 740, 300 + 50 + 250 = 600
    made = arrange(group(TWO_ROWS, "grid", gap_across=40.0, gap_down=50.0), SIZES)
    placed_at(
        made,
        {"A": (-270, 0, -70, 300), "B": (70, 50, 370, 250), "C": (-370, -300, 30, -50)},
    )


@pytest.mark.parametrize(
    ("set_", "align", "left", "top"),
    [
        ("left", "top", -370.0, 300.0),
        ("centre", "bottom", -270.0, 300.0),
        ("right", "centre", -170.0, 300.0),
    ],
)
def test_a_grid_sets_a_frame_across_and_aligns_it_down_its_cell(set_, align, left, top):
    asked = group(TWO_ROWS, "grid", gap_across=40.0, gap_down=50.0, set=set_, align=align)
    made = arrange(asked, SIZES)
    foot = {"top": 100.0, "centre": 50.0, "bottom": 0.0}[align]  # 200 high in a row of 300 from 0
    assert sides(made["A"]) == pytest.approx((left, top - 300, left + 200, top))
    assert sides(made["B"]) == pytest.approx((70, foot, 370, foot + 200))


@pytest.mark.parametrize(
    ("point", "expected"),
    [
        ("centre", (0, -50, 200, 250)),
        ("top_left", (100, -200, 300, 100)),
        ("top_right", (-100, -200, 100, 100)),
        ("bottom_left", (100, 100, 300, 400)),
        ("bottom_right", (-100, 100, 100, 400)),
    ],
)
def test_a_placed_frame_has_the_named_point_at_its_spot(point, expected):
    asked = Group(
        arrangement="placed",
        rows=(("A",),),
        gap_across=0.0,
        gap_down=0.0,
        spots=(("A", Spot(point=point, x=100.0, y=100.0)),),
        height=Height(by="centre", at=1450.0),
    )
    assert sides(arrange(asked, SIZES)["A"]) == pytest.approx(expected)


def test_placed_frames_stay_where_they_are_put_and_are_not_centred():
    asked = Group(
        arrangement="placed",
        rows=(("B", "A"),),
        gap_across=0.0,
        gap_down=0.0,
        spots=(("B", Spot(point="centre", x=900.0, y=0.0)), ("A", Spot(point="centre", x=500.0, y=0.0))),
        height=Height(by="centre", at=1450.0),
    )
    made = arrange(asked, SIZES)
    assert list(made) == ["B", "A"]
    assert (made["B"].cx, made["A"].cx) == (900.0, 500.0)


def test_a_column_of_three_on_the_usual_centre_line_in_inches():
    # 10 + 2.5 + 14 + 2.5 + 8 = 37; 57 + 37 / 2 = 75.5; 75.5 - 5, then 63 - 7, then 46.5 - 4: worked out by hand here
    heights = {"A": 10.0, "B": 14.0, "C": 8.0}
    frames = [frame(name, width=8 * INCH, height=high * INCH) for name, high in heights.items()]
    asked = group((("A", "B", "C"),), "column", gap=2.5 * INCH, height=Height(by="centre", at=57 * INCH))
    plan = plan_wall(job(*frames, group=asked))
    assert plan.group.height / INCH == pytest.approx(37.0)
    assert plan.group.y1 / INCH == pytest.approx(75.5)
    assert [hung.rect.cy / INCH for hung in plan.frames] == pytest.approx([70.5, 56.0, 42.5])


def test_the_same_column_in_millimetres():
    # 250 + 60 + 350 + 60 + 200 = 920; 1450 + 460 = 1910; centres 1785, 1425, 1090: worked out by hand here
    heights = {"A": 250.0, "B": 350.0, "C": 200.0}
    frames = [frame(name, height=high) for name, high in heights.items()]
    plan = plan_wall(job(*frames, group=group((("A", "B", "C"),), "column", gap=60.0)))
    assert (plan.group.height, plan.group.y1) == pytest.approx((920.0, 1910.0))
    assert [hung.rect.cy for hung in plan.frames] == pytest.approx([1785.0, 1425.0, 1090.0])


def over_a_sofa(height: Height) -> Job:
    """A frame 24 in high over a sofa with its back at 34 in."""
    sofa = Feature(kind="furniture", name="sofa", rect=Rect.sized(1200.0, 0.0, 1600.0, 34 * INCH))
    wall = Wall(name="", width=4000.0, height=2600.0, features=(sofa,))
    return job(frame(height=24 * INCH), wall=wall, unit="in", group=group((("A",),), height=height))


@pytest.mark.parametrize("align", ["top", "centre", "bottom"])
def test_a_group_hangs_by_the_edge_or_the_middle_whose_height_is_given(align):
    for by, edge in (("top", "y1"), ("bottom", "y0"), ("centre", "cy")):
        asked = group((("A", "B"),), align=align, height=Height(by=by, at=1300.0))
        plan = plan_wall(job(frame("A", 400.0, 500.0), frame("B", 300.0, 200.0), group=asked))
        assert getattr(plan.group, edge) == pytest.approx(1300.0)
        assert plan.level_line == pytest.approx(plan.group.cy)


def test_over_furniture_a_gap_decides_the_height_and_eye_level_would_hang_too_high():
    # 34 + 8 + 24 / 2 = 54 in; on 57 in the gap is 57 - 12 - 34 = 11, more than the 6 to 8 in of interior design texts
    gap, eye = (
        plan_wall(over_a_sofa(height))
        for height in (Height(by="above", at=8 * INCH, feature="sofa"), Height(by="centre", at=57 * INCH))
    )
    assert gap.frames[0].rect.cy / INCH == pytest.approx(54.0)
    assert (eye.group.y0 - 34 * INCH) / INCH == pytest.approx(11.0)
    assert [[f.rule for f in find(plan) if f.rule == "furniture-clearance"] for plan in (gap, eye)] == [
        [], ["furniture-clearance"]
    ]  # fmt: skip
