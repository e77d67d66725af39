"""Paper for the nails alone: every sheet can be placed by itself, by its distances from the two lines of the wall."""

from __future__ import annotations

import re

import pytest

from templates_gen.base.units import show, show_both
from templates_gen.documents.instructions.hanging_day import hanging_steps
from templates_gen.documents.instructions.taping_steps import day_before
from templates_gen.tiling.rulers import rulers
from templates_gen.tolerance.order import taping_order
from tests.documents import test_lettering_apart as lettering
from tests.made import NAMES, made
from tests.matrices import inverse
from tests.pdf_reading import moved
from tests.wall_reading import CLOSE, shown

POINT = 25.4 / 72  # mm; ISO 32000-1, 8.3.2.3, and the international inch of 1959
SEPARATE = tuple(name for name in NAMES if made(name).job.paper.cover == "nails")

separate = pytest.mark.parametrize("name", SEPARATE)


def test_there_is_a_job_whose_pieces_hang_separately() -> None:
    assert any(taping_order(made(name).sheets).pieces > 1 for name in SEPARATE)


@separate
def test_every_sheet_says_in_large_figures_how_far_both_lines_are_from_its_rules(name: str) -> None:
    """From the rulers as drawn in the file, in figures 5 mm high or more; 10 mm on most (ISO 3098-1 series)."""
    done = made(name)
    plan, unit = done.plan, done.job.unit
    heights = []
    for sheet, told in zip(shown(name), done.report["sheets"], strict=True):
        back = inverse(told["to_page"])
        level, plumb = (moved(back, *ruler["from"]) for ruler in _rules(done.report, sheet.page))
        down, left = level[1] - plan.level_line, plumb[0] - plan.centre_line
        for away, side in ((down, "below" if down > 0 else "above"), (left, "left" if left > 0 else "right")):
            own, both = show(abs(away), unit), show_both(abs(away), unit)
            figures = [t for t in sheet.texts if t.text in (f"{both} {side}", f"{own} {side}")]
            assert figures, f"{sheet.name} does not say {both} {side}"
            heights.append(max(t.size for t in figures))
    assert min(heights) > 5.0
    assert sum(height > 10.0 for height in heights) >= 0.8 * len(heights)


def _rules(report: dict, page: int) -> list[dict]:
    """The level and the upright ruler of a page."""
    return sorted((r for r in report["rules"] if r["page"] == page), key=lambda r: r["from"][1] != r["to"][1])


@separate
def test_the_figures_say_from_which_rule_they_are_measured(name: str) -> None:
    for sheet in shown(name):
        said = [text.text for text in sheet.texts]
        assert (
            said.count("level line, from the level ruler:") == said.count("centre line, from the upright ruler:") == 1
        )


@separate
def test_lettering_stays_apart(name: str) -> None:
    lettering.test_no_two_texts_overlap(name)
    lettering.test_no_text_touches_a_nail_cross(name)


@pytest.mark.parametrize("name", [name for name in NAMES if name not in SEPARATE])
def test_taped_templates_have_no_large_figures(name: str) -> None:
    said = [text.text for sheet in shown(name) for text in sheet.texts]
    assert not [text for text in said if "from the level ruler:" in text]


@separate
def test_the_steps_are_those_of_separate_pieces(name: str) -> None:
    done = made(name)
    steps = hanging_steps(done.plan, done.sheets)
    words = " ".join([*day_before(done.plan, done.sheets), *(step.words for step in steps)])
    assert "Draw two thin pencil lines on the wall" in words and "diagonals" not in words
    assert show_both(done.plan.level_line, done.job.unit) in words and "measure from both ends of the rule" in words
    assert "Put the target on the cross" not in words
    assert ("trim lines" in words) == bool(done.sheets.joins)


@separate
def test_only_sheets_that_meet_are_taped(name: str) -> None:
    done = made(name)
    order = taping_order(done.sheets)
    joined = {name for join in done.sheets.joins for name in (join.over, join.under)}
    words = " ".join(day_before(done.plan, done.sheets))
    named = {run for _, names in (*order.made, *order.laid) for run in names}
    assert named <= joined
    assert set(re.findall(r"\b[A-Z]+\d+\b(?= \(| to | and )", words)) <= joined


def test_the_rules_are_where_the_plan_says() -> None:
    """The level ruler's line and the plumb one's, from the page's own numbers: what the figures are measured from."""
    done = made(SEPARATE[0])
    level, plumb = rulers(done.sheets.page, done.job.paper.overlap, done.job.unit)
    for told in _rules(done.report, done.report["sheets"][0]["page"])[:2]:
        upright = told["from"][0] == told["to"][0]
        assert abs((told["from"][0] * POINT - plumb.x0) if upright else (told["from"][1] * POINT - level.y0)) < CLOSE
