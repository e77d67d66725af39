"""Frames are listed as a wall is read: rows from the top, each from left to right."""

import json

from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.plan import plan_wall, reading_order
from templates_gen.arranging.rows import arrange
from templates_gen.base.geometry import Rect
from templates_gen.documents.schedule.table import as_csv, as_data, as_text, rows
from tests.arranging.test_arrangement_rules import groups
from tests.arranging.test_stairs import climbs
from tests.jobs import frame, group, job


@given(groups("row", "rows", "grid"))
def test_rows_of_frames_on_one_level_are_read_in_their_order(case):
    asked, sizes = case
    sizes = dict.fromkeys(sizes, (300.0, 200.0))
    assert reading_order(arrange(asked, sizes)) == [name for row in asked.rows for name in row]


@given(groups("row"))
def test_one_row_is_read_from_left_to_right_whatever_its_sizes_where_all_share_a_level(case):
    asked, sizes = case
    asked = group(asked.rows, "row", gap=asked.gap_across, align="centre")
    assert reading_order(arrange(asked, sizes)) == list(asked.rows[0])


@given(climbs())
def test_a_climbing_group_is_one_row(case):
    asked, sizes = case
    same = {name: (width, 300.0) for name, (width, _) in sizes.items()}
    assert reading_order(arrange(asked, same), asked.slope) == list(asked.rows[0])


@given(st.lists(st.tuples(*[st.floats(0.0, 3000.0)] * 2, *[st.floats(10.0, 900.0)] * 2), max_size=12), st.randoms())
def test_every_frame_is_read_once_whatever_order_it_comes_in(boxes, random):
    rects = {str(number): Rect.sized(*box) for number, box in enumerate(boxes)}
    order = reading_order(rects)
    assert sorted(order) == sorted(rects)
    assert all(rects[one].y0 <= rects[order[0]].y1 for one in order)
    mixed = list(rects)
    random.shuffle(mixed)
    assert reading_order({name: rects[name] for name in mixed}) == order


def test_frames_that_begin_at_one_point_but_for_a_rounding_are_read_alike_however_they_come():
    """The tops differ by less than what bands are rounded to: found by chance, 3e-8 mm."""
    rects = {"2": Rect.sized(0.0, 0.0, 10.0, 900.0), "5": Rect.sized(0.0, 0.0, 10.0, 899.9999999703149)}
    assert reading_order(rects) == reading_order(dict(reversed(rects.items()))) == ["2", "5"]


def test_two_low_frames_beside_a_high_one():
    # the high one is beside both; the low ones are not beside each other, so the lower begins a row of its own
    rects = {
        "low": Rect.sized(0, 0, 300, 300), "high": Rect.sized(400, 0, 300, 700), "up": Rect.sized(0, 400, 300, 300)
    }  # fmt: skip
    assert reading_order(rects) == ["up", "high", "low"]


def test_schedule_and_data_list_frames_in_reading_order_and_not_as_the_job_does():
    names = ("D", "B", "A", "C")
    plan = plan_wall(job(*(frame(name) for name in names), group=group((("A", "B"), ("C", "D")))))
    order = ["A", "B", "C", "D"]
    assert [hung.frame.id for hung in plan.frames] == [nail.frame for nail in plan.nails] == order
    assert [row[0] for row in rows(plan)] == order
    assert [one["id"] for one in json.loads(json.dumps(as_data(plan, ())))["frames"]] == order
    assert [line.partition(",")[0] for line in as_csv(plan).splitlines()[1:]] == order
    assert [line[0] for line in as_text(plan).splitlines() if line[:1] in names and line[1:3] == "  "] == order
