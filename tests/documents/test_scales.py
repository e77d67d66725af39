"""Graduations by themselves: which ticks there are, and that a figure stands at its tick and outside it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.plan import plan_wall
from templates_gen.documents.sheets.scales import (
    FINE,
    DropScale,
    drop_scale,
    scale_figures,
    scale_lines,
    scales_may_stand,
    ticks_along,
)
from templates_gen.drawing.items import Line, Polygon
from templates_gen.job.model import Hanger
from tests.jobs import frame, job

PLACE = st.integers(-24_000, 24_000).map(lambda eighths: eighths / 8)  # mm
MM = {"mm": 1.0, "cm": 10.0, "in": 25.4}  # of what a figure counts; the inch exactly (international agreement of 1959)


@given(st.sampled_from(list(FINE.values())), PLACE, st.integers(0, 300), PLACE)
def test_there_is_a_tick_at_every_step_between_the_ends_and_none_beyond(grade, start, length, zero):
    ticks = list(ticks_along(start, start + length, zero, grade))
    low, near = round((start - zero) / grade.step), grade.step * 1e-6
    reach = range(low - 2, low + int(length / grade.step) + 3)
    wanted = [n for n in reach if start - near <= zero + n * grade.step <= start + length + near]
    assert [number for _, number in ticks] == [abs(n) for n in wanted]
    assert [at for at, _ in ticks] == pytest.approx([zero + n * grade.step for n in wanted])


@pytest.mark.parametrize("unit", FINE)
@pytest.mark.parametrize("side", [-1, 0, 1])
def test_a_figure_of_a_drop_scale_stands_outside_the_tick_that_it_counts(unit, side):
    scale = DropScale(1200.0, 1700.0, 130.0, side, 80.0)
    spine, *ticks = [item for item in scale_lines(scale, unit) if isinstance(item, Line)]
    ends = {round(scale.top - tick.y0, 4): tick.x1 for tick in ticks}
    way = -1 if side < 0 else 1
    figures = list(scale_figures(scale, unit))
    assert len(figures) == int(130.0 / MM["cm" if unit == "mm" else unit])
    for figure in figures:
        down = scale.top - (figure.y + figure.height / 2)  # to the middle of the figure
        assert down == pytest.approx(float(figure.text) * MM[unit])
        assert way * (figure.x - ends[round(down, 4)]) == pytest.approx(1.0)  # our own design, no source
        assert figure.anchor == ("right" if way < 0 else "left")
    assert all(scale.zone.has_point(line.x1, line.y1) for line in (spine, *ticks))


LENGTHS = {"in": {16: 7.0, 8: 5.5, 4: 4.2, 2: 3.0, 1: 1.8}, "mm": {10: 7.0, 5: 4.5, 1: 2.0}}  # as on a steel rule


@pytest.mark.parametrize(("unit", "step"), [("in", 25.4 / 16), ("mm", 1.0), ("cm", 1.0)])
def test_ticks_of_a_drop_scale_are_as_long_as_what_they_count_and_a_pointer_marks_the_drop(unit, step):
    scale = DropScale(1200.0, 1700.0, 130.0, 1, 80.0)
    spine, *ticks = [item for item in scale_lines(scale, unit) if isinstance(item, Line)]
    assert (spine.x0, spine.x1, spine.y0, spine.y1) == (1209.5, 1209.5, 1700.0, 1570.0)
    lengths = LENGTHS["in" if unit == "in" else "mm"]
    for number, line in enumerate(ticks, 1):
        assert scale.top - line.y0 == pytest.approx(number * step)
        assert line.x1 - line.x0 == pytest.approx(next(long for every, long in lengths.items() if number % every == 0))
    assert len(ticks) == int(130.0 / step)
    (pointer,) = [item for item in scale_lines(scale, unit) if isinstance(item, Polygon)]
    assert set(pointer.points) == {(1209.5, 1620.0), (1207.1, 1621.0), (1207.1, 1619.0)}


def test_before_it_is_decided_a_scale_may_stand_on_either_side_of_its_hanger():
    (hung,) = plan_wall(job(frame("A", 400.0, 500.0, 80.0))).frames
    x, top = hung.rect.cx, hung.rect.y1
    left, right = scales_may_stand(hung)
    assert (left.x0, left.x1, right.x0, right.x1) == (x - 25.0, x - 9.5, x + 9.5, x + 25.0)
    assert left.y1 == right.y1 == top and left.y0 == right.y0 < top - 80.0


def test_a_drop_scale_that_would_run_out_of_its_frame_to_either_side_is_left_out():
    pair = Hanger(kind="rings", left=10.0, right=10.0)  # a scale is wider than that
    (hung,) = plan_wall(job(frame(hanger=pair))).frames
    found = [drop_scale(hung, bearing, side) is not None for bearing in hung.bearings for side in (-1, 1)]
    assert found == [False, True, True, False]
