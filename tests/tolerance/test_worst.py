"""The error of the worst neighbours, asked again and again: that which is worked out whole, or enough of it."""

from __future__ import annotations

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.record import replace
from templates_gen.job.reading.building import read_job
from templates_gen.tiling.planning import tiled
from templates_gen.tolerance.expected import worst_error
from templates_gen.tolerance.neighbours import neighbours
from templates_gen.tolerance.worst import Worst
from tests.jobs import SAMPLES, paper


@pytest.mark.parametrize("name", ["fern-prints", "kiln-tiles", "tile-rubbings", "lock-keepers"])
@pytest.mark.parametrize("string", [True, False])
def test_it_is_the_error_of_the_worst_pair_on_any_sheets(name: str, string: bool) -> None:
    job = read_job(SAMPLES / f"{name}.toml")
    plan = plan_wall(replace(job, accuracy=replace(job.accuracy, string=string)))
    pairs = neighbours(plan)
    worst = Worst(plan, pairs)
    for cover in ("marks", "linked", "nails", "marks"):
        for trim in ("cut", "none") if cover == "marks" else ("cut",):
            sheets = tiled(plan, paper("a4", cover=cover, trim=trim), quick=True)
            whole = worst_error(plan, sheets, pairs)
            assert worst.error(sheets) == pytest.approx(whole)
            for enough in (whole / 2, whole / 2, whole * 0.99):
                assert enough < worst.error(sheets, enough) <= whole * (1 + 1e-9)
            assert worst.error(sheets, whole * 1.01) == pytest.approx(whole)


def test_of_no_pairs_there_is_no_error() -> None:
    plan = plan_wall(read_job(SAMPLES / "fern-prints.toml"))
    assert Worst(plan, ()).error(tiled(plan, paper("a4"))) == 0.0
