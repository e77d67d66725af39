"""The phases of making the template of twelve frames one by one: a table to compare before and after a change.

Run by hand: `pytest tests/bench/test_phases.py`.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from templates_gen.arranging.plan import plan_wall
from templates_gen.checks import find
from templates_gen.documents.template import draw_template
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.pdf.writing import write_pdf
from templates_gen.job.reading.building import read_job
from templates_gen.tolerance.holding import plan_sheets
from tests.bench.test_speed import job_of_twelve


@pytest.fixture(scope="module")
def twelve(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("twelve") / "twelve.toml"
    path.write_text(job_of_twelve(), encoding="utf-8")
    return path


def test_reading(benchmark: BenchmarkFixture, twelve: Path) -> None:
    assert len(benchmark(read_job, twelve).frames) == 12


def test_planning(benchmark: BenchmarkFixture, twelve: Path) -> None:
    assert len(benchmark(plan_wall, read_job(twelve)).frames) == 12


def test_finding(benchmark: BenchmarkFixture, twelve: Path) -> None:
    assert benchmark(find, plan_wall(read_job(twelve)))


def test_planning_sheets(benchmark: BenchmarkFixture, twelve: Path) -> None:
    plan = plan_wall(read_job(twelve))
    assert benchmark(plan_sheets, plan, plan.job.paper).sheets


def test_drawing(benchmark: BenchmarkFixture, twelve: Path) -> None:
    plan = plan_wall(read_job(twelve))
    sheets = plan_sheets(plan, plan.job.paper)
    template = benchmark(lambda: draw_template(plan, find(plan), sheets, None, Lettering()))
    assert len(template.pages) > len(sheets.sheets)


def test_writing(benchmark: BenchmarkFixture, twelve: Path) -> None:
    plan = plan_wall(read_job(twelve))
    template = draw_template(plan, find(plan), plan_sheets(plan, plan.job.paper), None, Lettering())
    assert benchmark(lambda: write_pdf(template, Lettering())).startswith(b"%PDF-1.7")
