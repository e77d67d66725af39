"""Every phase of a command runs once: what it found is handed on to all that need it."""

from __future__ import annotations

import sys
from collections import Counter
from importlib import import_module
from pathlib import Path
from typing import Any

import pytest

from templates_gen.job.reading.building import read_job
from templates_gen.tolerance.holding import plan_sheets
from tests.jobs import SAMPLES
from tests.made import made
from tests.running import run

PHASES = {
    "plan_wall": "arranging.plan",
    "find": "checks",
    "plan_sheets": "tolerance.holding",
    "expected_error": "tolerance.expected",
    "shown_on": "documents.sheets.layer",
    "long_lines": "documents.sheets.wall_marks",
    "frame_scales": "documents.sheets.sheet_marks",
    "frame_form": "documents.sheets.wall_marks",
    "first_pages": "documents.instructions.first_pages",
    "arranged": "arranging.search.salon",
}
"""The functions that are counted, and where they are at home."""


@pytest.fixture
def calls(monkeypatch: pytest.MonkeyPatch) -> Counter[str]:
    """How often each function was called, in whatever file it is known by its name."""
    counter: Counter[str] = Counter()
    for file in ("making", "check", "fewer_sheets", "other_ways", "proof.making"):
        import_module(f"templates_gen.documents.{file}")
    for name, home in PHASES.items():
        function = getattr(import_module(f"templates_gen.{home}"), name)

        def counting(*given: Any, _name: str = name, _function: Any = function, **more: Any) -> Any:
            counter[_name] += 1
            return _function(*given, **more)

        for file in [file for at, file in sys.modules.items() if at.startswith("templates_gen")]:
            if getattr(file, name, None) is function:
                monkeypatch.setattr(file, name, counting)
    return counter


ONCE = ("plan_wall", "find", "plan_sheets", "expected_error", "shown_on", "first_pages")


@pytest.mark.parametrize(
    "more",
    [(), ("--sheets-at-most", "900", "--report", "report.json"), ("--one-piece",), ("--paper", "roll 24 in")],
    ids=lambda more: " ".join(more) or "as it is",
)
def test_a_template_goes_through_each_phase_once(
    calls: Counter[str], more: tuple[str, ...], folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    every = made("fern-prints")
    monkeypatch.setattr("templates_gen.cli.template.show_ways", lambda *_: None)  # they are plans of their own
    calls.clear()
    assert run("template", SAMPLES / "fern-prints.toml", "-o", "out.pdf", *more).code == 0
    assert {name: calls[name] for name in ONCE} == dict.fromkeys(ONCE, 1)
    assert calls["frame_scales"] == calls["frame_form"] == len(every.plan.frames)
    if not more:
        assert calls["long_lines"] == len(every.sheets.sheets)
    assert calls["arranged"] == 0


def test_places_are_searched_for_once(calls: Counter[str], folder: Path, short_searches: None) -> None:
    for command in ("template", "proof", "labels"):
        calls.clear()
        assert run(command, SAMPLES / "paste-papers.toml", "-o", "out.pdf").code == 0
        assert (calls["arranged"], calls["plan_wall"]) == (1, 1)
    for command, *more in (["check"], ["check", "--taped", "a=900,b=900,width=700"], ["schedule"]):
        calls.clear()
        assert run(command, SAMPLES / "paste-papers.toml", *more).code == (2 if more else 0)  # it is wider than that
        # a cure that check offers is tried by planning anew, the places being known
        assert calls["arranged"] == 1 and (calls["plan_wall"] == 1 or command == "check")


def test_other_papers_are_tried_without_planning_the_wall_again(calls: Counter[str], folder: Path) -> None:
    job = read_job(SAMPLES / "fern-prints.toml")
    calls.clear()
    assert run("template", SAMPLES / "fern-prints.toml", "--sheets-at-most", "2").code == 1
    assert (calls["plan_wall"], calls["find"]) == (1, 1)
    assert calls["plan_sheets"] > 2  # that of the job, and of every other paper
    assert len(plan_sheets(made("fern-prints").plan, job.paper).sheets) > 2


def test_the_other_ways_take_the_wall_as_it_is_planned(calls: Counter[str], folder: Path) -> None:
    assert run("template", SAMPLES / "fern-prints.toml", "-o", "out.pdf").code == 0
    others = 2  # nails and one piece, beside marks; linked paper is what is left of the sheets of every mark
    assert (calls["plan_wall"], calls["find"], calls["first_pages"], calls["shown_on"]) == (1, 1, 1, 1)
    assert calls["plan_sheets"] == 1 + others
