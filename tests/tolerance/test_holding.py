"""Linked paper holds its frames nearly as exactly as the strips of sheets that show every edge."""

from __future__ import annotations

from functools import cache

import pytest

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.record import replace
from templates_gen.job.reading.building import read_job
from templates_gen.tiling import planning, quickest
from templates_gen.tiling.searching import Excess, Found
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.effort import effort
from templates_gen.tolerance.expected import expected_error, worst_error
from templates_gen.tolerance.holding import plan_sheets
from templates_gen.tolerance.neighbours import neighbours
from tests.crowded import crowded
from tests.jobs import SAMPLES, paper

TIMES = {True: 1.1, False: 1.25}  # with the level line held to a string, and without; our own design, no source


@cache
def planned(name: str, size: str, string: bool, cover: str) -> tuple[Plan, SheetPlan]:
    on = paper(size, cover=cover)
    job = crowded(int(name), on) if name.isdigit() else read_job(SAMPLES / f"{name}.toml")
    plan = plan_wall(replace(job, accuracy=replace(job.accuracy, string=string)))
    return plan, plan_sheets(plan, on, quick=cover == "marks")  # of every mark, the strips


@pytest.mark.parametrize(
    ("name", "size", "string"), [("fern-prints", "a4", True), ("fern-prints", "letter", False), ("2", "letter", True)]
)
def test_no_neighbours_on_linked_paper_err_by_more_than_a_little_more_than_on_strips(
    name: str, size: str, string: bool
) -> None:
    """As the first page has it, of the worst pair; all sources of error are in it."""
    worst = {}
    for cover in ("linked", "marks"):
        expected = expected_error(*planned(name, size, string, cover))
        assert expected is not None
        worst[cover] = max(expected.worst.step, expected.worst.gap_error)
    assert worst["linked"] <= TIMES[string] * worst["marks"] + 1e-9
    sheets = {cover: len(planned(name, size, string, cover)[1].sheets) for cover in worst}
    assert sheets["linked"] <= 0.8 * sheets["marks"], sheets  # and is no mere copy of the strips


@pytest.mark.parametrize(("name", "size", "string"), [("fern-prints", "a4", True), ("kiln-tiles", "letter", False)])
def test_sheets_of_every_mark_err_little_more_than_their_strips_and_take_far_less(
    name: str, size: str, string: bool
) -> None:
    plan, strips = planned(name, size, string, "marks")
    found = plan_sheets(plan, paper(size, cover="marks"))
    pairs = neighbours(plan)
    assert worst_error(plan, found, pairs) <= TIMES[string] * worst_error(plan, strips, pairs) + 1e-9
    assert effort(found).minutes <= 0.8 * effort(strips).minutes


def test_sheets_of_every_mark_never_take_more_than_their_strips(
    sheets_planned_anew: None, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As if the search gave back what takes longer, for it counts short joins as more: the strips stay."""
    plan, strips = planned("fern-prints", "a4", True, "marks")
    monkeypatch.setattr(planning, "minutes", lambda sheets, *_, pieces: -float(sheets))
    assert plan_sheets(plan, paper("a4", cover="marks")) == strips


def test_a_search_that_leaves_the_strips_short_joins_is_gone_on_with(
    sheets_planned_anew: None, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As if the first search had strayed from what holds the limit and not come back."""
    search, seeds = quickest.quicker, []

    def stray(start: Found, steps: int, excess: Excess, seed: int = 0, begun: float = 0.0, **more: float) -> Found:
        seeds.append(seed)
        return search(start, steps, excess, seed, begun, **more) if seed else start

    monkeypatch.setattr(quickest, "quicker", stray)
    plan, strips = planned("fern-prints", "a4", True, "marks")
    found = plan_sheets(plan, paper("a4", cover="marks"))
    assert seeds[:2] == [0, 1]
    assert effort(found).minutes < effort(strips).minutes


def test_few_frames_are_searched_in_so_many_steps_at_the_most(
    sheets_planned_anew: None, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As if every sheet asked for a thousand steps: whoever hangs a dozen frames waits no longer for many sheets."""
    asked: list[int] = []

    def counted(start: Found, steps: int, *_: object, **more: object) -> Found:
        asked.append(steps)
        return start

    monkeypatch.setattr(quickest, "quicker", counted)
    monkeypatch.setattr(quickest, "STEPS_A_SHEET", 1000)
    for cover in ("linked", "marks"):
        plan, _ = planned("fern-prints", "a4", True, "marks")
        assert len(plan.frames) <= quickest.FEW
        plan_sheets(plan, paper("a4", cover=cover))
    assert asked and max(asked) == quickest.OF_FEW
