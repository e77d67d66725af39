"""Graduations by themselves: which ticks there are, and that a figure stands at its tick and outside it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.items import Line
from templates_gen.marks.scales import FINE, DropRule, rule_figures, rule_lines, ticks_along

PLACE = st.floats(min_value=-3000.0, max_value=3000.0)
MM = {"mm": 1.0, "cm": 10.0, "in": 25.4}  # of what a figure counts; the inch exactly (international agreement of 1959)


@given(st.sampled_from(list(FINE.values())), PLACE, st.floats(0.0, 300.0), PLACE)
def test_there_is_a_tick_at_every_step_between_the_ends_and_none_beyond(grade, start, length, zero):
    ticks = list(ticks_along(start, start + length, zero, grade))
    low, near = round((start - zero) / grade.step), grade.step * 1e-6
    reach = range(low - 2, low + int(length / grade.step) + 3)
    wanted = [n for n in reach if start - near <= zero + n * grade.step <= start + length + near]
    assert [number for _, number in ticks] == [abs(n) for n in wanted]
    assert [at for at, _ in ticks] == pytest.approx([zero + n * grade.step for n in wanted])


@pytest.mark.parametrize("unit", FINE)
@pytest.mark.parametrize("side", [-1, 0, 1])
def test_a_figure_of_a_drop_rule_stands_outside_the_tick_that_it_counts(unit, side):
    rule = DropRule(1200.0, 1700.0, 130.0, side, 80.0)
    spine, *ticks = [item for item in rule_lines(rule, unit) if isinstance(item, Line)]
    ends = {round(rule.top - tick.y0, 4): tick.x1 for tick in ticks}
    way = -1 if side < 0 else 1
    figures = list(rule_figures(rule, unit))
    assert len(figures) == int(130.0 / MM["cm" if unit == "mm" else unit])
    for figure in figures:
        down = rule.top - (figure.y + figure.height / 2)  # to the middle of the figure
        assert down == pytest.approx(float(figure.text) * MM[unit])
        assert way * (figure.x - ends[round(down, 4)]) == pytest.approx(1.0)  # our own design, no source
        assert figure.anchor == ("right" if way < 0 else "left")
    assert all(rule.zone.has_point(line.x1, line.y1) for line in (spine, *ticks))
