"""Frames around a feature: exact places worked out by hand, and what holds for frames of any sizes."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.plan import OVER_FEATURE, Plan, plan_wall
from templates_gen.arranging.rows import arrange
from templates_gen.base.geometry import Rect
from templates_gen.job.model import Feature, Group, Wall
from templates_gen.tiling.long_lines import centre_spans, level_spans
from tests.jobs import Height, frame, group, job, sides
from tests.made import made

side = st.floats(min_value=20.0, max_value=1500.0)
WINDOW = Feature(kind="window", name="window", rect=Rect.sized(1500.0, 900.0, 1000.0, 1200.0))


def about(rows, feature: Feature = WINDOW, **more) -> Group:
    """A group around a feature: left, above, right, below."""
    height = Height(by="around", at=0.0)
    return group(rows, "around", height=height, around=feature, centre_on=feature.name, **more)


@st.composite
def surrounds(draw, symmetric=False):
    """A group with up to 3 frames on each side of a feature of any size, and the sizes."""
    counts = [draw(st.integers(0, 3)) for _ in range(4)]
    if symmetric:
        counts[2] = counts[0]
    if not any(counts):
        counts[1] = 1
    rows = tuple(tuple(f"{place}{at}" for at in range(count)) for place, count in zip("labr", counts, strict=True))
    sizes = {name: (draw(side), draw(side)) for row in rows for name in row}
    gap = draw(st.floats(0.0, 200.0))
    away = draw(st.floats(gap / 2, 300.0))  # two columns about a narrow feature then keep the gap too
    feature = Feature(kind="other", name="it", rect=Rect.about(2000.0, 1300.0, draw(side), draw(side)))
    align = draw(st.sampled_from(("top", "centre", "bottom")))
    return about(rows, feature, gap=gap, gap_around=away, align=align), sizes


@given(surrounds())
def test_no_two_frames_overlap_and_all_keep_the_gap_and_stay_off_the_feature(case):
    asked, sizes = case
    feature = Rect.about(0.0, 0.0, asked.around.rect.width, asked.around.rect.height)
    placed = arrange(asked, sizes)
    assert {name: (rect.width, rect.height) for name, rect in placed.items()} == {
        name: pytest.approx(size) for name, size in sizes.items()
    }
    rects = list(placed.values())
    for at, one in enumerate(rects):
        assert one.gap_to(feature) >= asked.gap_around - 1e-6
        assert all(one.gap_to(two) >= asked.gap_across - 1e-6 for two in rects[:at])


@given(surrounds())
def test_columns_stand_on_the_line_that_is_the_gap_away_and_rows_on_it_or_further_out(case):
    asked, sizes = case
    half, away = asked.around.rect, asked.gap_around
    placed = arrange(asked, sizes)
    left, above, right, below = ([placed[name] for name in row] for row in asked.rows)
    assert all(rect.x1 == pytest.approx(-half.width / 2 - away) for rect in left)
    assert all(rect.x0 == pytest.approx(half.width / 2 + away) for rect in right)
    for row, sign in ((above, 1), (below, -1)):
        edges = [rect.y0 if sign > 0 else -rect.y1 for rect in row]
        assert edges == pytest.approx(edges[:1] * len(edges))
        assert all(edge >= half.height / 2 + away - 1e-6 for edge in edges)
        if row:
            assert row[0].x0 == pytest.approx(-row[-1].x1, abs=1e-6)
            # further out only where a column is in the way, and just the gap away from the highest that is
            out = []
            for reach in (row[-1].x1 + asked.gap_across - 1e-6, row[-1].x1 + asked.gap_across + 1e-6):
                over = [rect for rect in (*left, *right) if -reach < rect.x1 and rect.x0 < reach]
                tops = [(rect.y1 if sign > 0 else -rect.y0) + asked.gap_down for rect in over]
                out.append(pytest.approx(max([half.height / 2 + away, *tops])))
            assert edges[0] in out


@given(surrounds(symmetric=True))
def test_the_same_sizes_on_both_sides_hang_as_mirror_images(case):
    asked, sizes = case
    left, above, right, below = asked.rows
    for row in (above, below):
        sizes |= {name: sizes[other] for name, other in zip(row, row[::-1], strict=True) if name > other}
    sizes |= {name: sizes[other] for name, other in zip(right, left, strict=True)}
    placed = arrange(asked, sizes)
    for one, two in zip((*left, *above, *below), (*right, *above[::-1], *below[::-1]), strict=True):
        a, b = placed[one], placed[two]
        assert sides(b) == pytest.approx((-a.x1, a.y0, -a.x0, a.y1), abs=1e-6)


def plan(rows, sizes, **more) -> Plan:
    frames = [frame(name, *size) for name, size in sizes.items()]
    wall = Wall(name="", width=4000.0, height=3000.0, features=(WINDOW,))
    return plan_wall(job(*frames, wall=wall, group=about(rows, **more)))


def test_a_window_worked_out_by_hand():
    """The window is 1500 to 2500 across and 900 to 2100 up; 40 from it, 20 between frames.

    The left column is 300 + 20 + 200 = 520 high about 1500: 1240 to 1760.  Above, 400 + 20 + 400 = 820 about 2000.
    """
    rows, sizes = (("A", "B"), ("C", "D"), ("E",), ()), {
        "A": (250.0, 300.0), "B": (200.0, 200.0), "C": (400.0, 300.0), "D": (400.0, 200.0), "E": (300.0, 400.0),
    }  # fmt: skip
    done = plan(rows, sizes, gap=20.0, gap_around=40.0)
    found = {hung.frame.id: sides(hung.rect) for hung in done.frames}
    assert found == {
        "A": pytest.approx((1210, 1460, 1460, 1760)), "B": pytest.approx((1260, 1240, 1460, 1440)),
        "C": pytest.approx((1590, 2140, 1990, 2440)), "D": pytest.approx((2010, 2140, 2410, 2340)),
        "E": pytest.approx((2540, 1300, 2840, 1700)),
    }  # fmt: skip
    assert (done.centre_line, done.level_line) == (2000.0, pytest.approx(2290.0))  # the middle of the row above


@pytest.mark.parametrize(("align", "top"), [("top", 2100.0), ("centre", 1760.0), ("bottom", 1420.0)])
def test_a_column_is_aligned_to_the_features_top_middle_or_foot(align, top):
    # 520 high: 2100, 1500 + 260, 900 + 520
    done = plan((("A", "B"), (), (), ()), {"A": (250.0, 300.0), "B": (200.0, 200.0)}, gap=20.0, align=align)
    assert done.group.y1 == pytest.approx(top)


def test_a_row_over_a_column_higher_than_the_window_goes_up_with_it():
    # the column is 1400 high about 1500, its top at 2200; the row of 1200 reaches 100 over it on either side
    done = plan((("A",), ("C",), (), ()), {"A": (300.0, 1400.0), "C": (1200.0, 200.0)}, gap=20.0, gap_around=40.0)
    assert {hung.frame.id: hung.rect.y0 for hung in done.frames}["C"] == pytest.approx(2220.0)


def test_below_alone_the_lines_meet_below_the_window_and_beside_it_alone_over_it():
    below = plan(((), (), (), ("A",)), {"A": (300.0, 400.0)}, gap=20.0, gap_around=40.0)
    assert below.level_line == pytest.approx(660.0)  # 900 − 40 − 200
    beside = plan((("A",), (), (), ()), {"A": (300.0, 400.0)}, gap=20.0, gap_around=40.0)
    assert beside.level_line == pytest.approx(2100.0 + OVER_FEATURE)


def test_the_centre_line_breaks_off_at_the_window_and_the_level_line_runs_over_it():
    rows, sizes = (("A",), ("C",), ("B",), ("D",)), dict.fromkeys("ABCD", (300.0, 400.0))
    done = plan(rows, sizes, gap=20.0, gap_around=40.0)
    assert centre_spans(done) == [(460.0, 900.0), (2100.0, 2540.0)]  # 900 − 40 − 400, 2100 + 40 + 400
    assert level_spans(done) == [(1160.0, 2840.0)]  # 1500 − 40 − 300, 2500 + 40 + 300


def test_no_sheet_of_the_sample_lies_over_the_middle_of_its_window():
    window = made("kiln-tiles").job.group.around.rect
    middle = Rect.about(window.cx, window.cy, window.width / 2, window.height / 2)
    assert not any(sheet.window.overlaps(middle) for sheet in made("kiln-tiles").sheets.sheets)
