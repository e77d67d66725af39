"""How frames sit to each other: what holds for every arrangement of frames of any sizes."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.rows import arrange
from templates_gen.base.geometry import bounds
from tests.jobs import group

side = st.floats(min_value=20.0, max_value=2000.0)
CHOICES = {  # arrangement: its ways to align, its ways to set
    "row": (("top", "centre", "bottom"), ("centre",)),
    "column": (("left", "centre", "right"), ("centre",)),
    "rows": (("top", "centre", "bottom"), ("left", "centre", "right", "spread")),
    "columns": (("left", "centre", "right"), ("top", "centre", "bottom", "spread")),
    "grid": (("top", "centre", "bottom"), ("left", "centre", "right")),
}


@st.composite
def groups(draw, *arrangements):
    """A group of up to 16 frames of any sizes, and the sizes."""
    kind = draw(st.sampled_from(arrangements or tuple(CHOICES)))
    most = 1 if kind in ("row", "column") else 4
    lengths = draw(st.lists(st.integers(min_value=1, max_value=4), min_size=1, max_size=most))
    rows = tuple(tuple(f"{line}.{at}" for at in range(length)) for line, length in enumerate(lengths))
    sizes = {name: (draw(side), draw(side)) for row in rows for name in row}
    gaps = st.floats(min_value=0.0, max_value=200.0)
    align, set_ = (draw(st.sampled_from(ways)) for ways in CHOICES[kind])
    more = {"gap_across": draw(gaps), "gap_down": draw(gaps), "align": align, "set": set_}
    return group(rows, kind, **more), sizes


@given(groups())
def test_the_bounding_box_is_centred_at_the_origin(case):
    box = bounds(arrange(*case).values())
    assert (box.cx, box.cy) == pytest.approx((0.0, 0.0), abs=1e-6)


@given(groups())
def test_no_two_frames_overlap_and_each_keeps_its_size_and_its_place_in_the_order(case):
    asked, sizes = case
    made = arrange(asked, sizes)
    assert list(made) == [name for row in asked.rows for name in row]
    for name, rect in made.items():
        assert (rect.width, rect.height) == pytest.approx(sizes[name])
    rects = list(made.values())
    assert not any(one.overlaps(two) for at, one in enumerate(rects) for two in rects[:at])


@given(groups("row", "rows", "grid"))
def test_a_row_reads_from_left_to_right_and_rows_from_the_top(case):
    asked, sizes = case
    made = arrange(asked, sizes)
    rows = [[made[name] for name in row] for row in asked.rows]
    for row in rows:
        assert all(one.x1 <= two.x0 + 1e-6 for one, two in pairwise(row))
    for upper, lower in pairwise(rows):
        assert bounds(upper).y0 - bounds(lower).y1 == pytest.approx(asked.gap_down, abs=1e-6)


@given(groups("column", "columns"))
def test_a_column_reads_from_the_top_and_columns_from_the_left(case):
    asked, sizes = case
    made = arrange(asked, sizes)
    columns = [[made[name] for name in column] for column in asked.rows]
    for column in columns:
        assert all(one.y0 >= two.y1 - 1e-6 for one, two in pairwise(column))
    for one, two in pairwise(columns):
        assert bounds(two).x0 - bounds(one).x1 == pytest.approx(asked.gap_across, abs=1e-6)


@given(groups("row", "rows", "column", "columns"))
def test_gaps_within_a_row_or_column_are_kept_exactly_and_a_spread_one_has_even_gaps(case):
    asked, sizes = case
    made = arrange(asked, sizes)
    across = asked.arrangement in ("row", "rows")
    least = asked.gap_across if across else asked.gap_down
    for names in asked.rows:
        rects = [made[name] for name in names]
        gaps = [(two.x0 - one.x1) if across else (one.y0 - two.y1) for one, two in pairwise(rects)]
        assert gaps == pytest.approx(gaps[:1] * len(gaps), abs=1e-6)
        assert all(gap >= least - 1e-6 for gap in gaps)
        if asked.set != "spread":
            assert gaps == pytest.approx([least] * len(gaps), abs=1e-6)


@given(groups("rows", "columns"))
def test_a_spread_row_of_several_reaches_from_side_to_side(case):
    asked, sizes = case
    made = arrange(asked, sizes)
    box = bounds(made.values())
    for names in asked.rows:
        if asked.set == "spread" and len(names) > 1:
            own = bounds(made[name] for name in names)
            if asked.arrangement == "rows":
                assert (own.x0, own.x1) == pytest.approx((box.x0, box.x1), abs=1e-6)
            else:
                assert (own.y0, own.y1) == pytest.approx((box.y0, box.y1), abs=1e-6)


@given(groups("grid"))
def test_a_grid_keeps_the_gap_between_its_columns(case):
    asked, sizes = case
    made = arrange(asked, sizes)
    across = max(len(row) for row in asked.rows)
    columns = [[made[row[at]] for row in asked.rows if at < len(row)] for at in range(across)]
    for one, two in pairwise(columns):
        assert bounds(two).x0 - bounds(one).x1 >= asked.gap_across - 1e-6
    if asked.set == "left":
        lefts = [{round(rect.x0, 6) for rect in column} for column in columns]
        assert all(max(found) - min(found) < 1e-5 for found in lefts)
