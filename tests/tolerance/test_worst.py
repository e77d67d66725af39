"""By how much neighbours err above a limit, asked in a search for sheets: what the expected error says of them."""

from __future__ import annotations

from itertools import product

import pytest

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.record import replace
from templates_gen.job.reading.building import read_job
from templates_gen.printer.profile import Printer, Readings, measured
from templates_gen.tiling.cells import Cell
from templates_gen.tiling.planning import tiled
from templates_gen.tiling.searching import Judged
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tiling.sketch import Judge, Sketch
from templates_gen.tolerance.expected import worst_error
from templates_gen.tolerance.holding import holding, plan_sheets
from templates_gen.tolerance.neighbours import neighbours
from templates_gen.tolerance.taping import laying
from templates_gen.tolerance.worst import Worst
from tests.bench.minutes import hung
from tests.bench.sheet_counts import wall
from tests.jobs import SAMPLES, paper

READ = Readings(
    asked_across=200.0, asked_along=250.0, across=200.0, along=250.0, diagonals=(320.2, 320.2), reading_error=0.5
)
"""Of a printer that prints as it should: lengths of our own choice."""


def sketched(plan: Plan, sheets: SheetPlan) -> Sketch:
    """Sheets as a search has them, seen from the group's corner."""
    x, y = plan.group.x0, plan.group.y0
    cells = [
        Cell(sheet.cell.shifted(-x, -y), sheet.strip, at, sheet.page != sheets.page)
        for at, sheet in enumerate(sheets.sheets)
    ]
    joins = [
        (one, two, ((a[0] - x, a[1] - y), (b[0] - x, b[1] - y)))
        for one, met in laying(sheets).links.items()
        for two, (a, b) in met.items()
        if one < two
    ]
    return Sketch(cells, joins, sheets.rows, sheets.spine)


KNOWN = measured("study", "a4", READ, "2026-03-01")


@pytest.mark.parametrize(
    ("name", "string", "printer"),  # every two of the three meet
    [
        *product(("fern-prints", "tile-rubbings"), (True,), (None,)),
        *product(("fern-prints", "tile-rubbings"), (False,), (KNOWN,)),
        *product(("kiln-tiles", "lock-keepers"), (True,), (KNOWN,)),
        *product(("kiln-tiles", "lock-keepers"), (False,), (None,)),
    ],
)
def test_it_is_what_the_expected_errors_of_all_neighbours_are_above_the_limit(
    name: str, string: bool, printer: Printer | None
) -> None:
    """On pages that lie both ways, too, which grow otherwise: once the search did not know, and was a seventh off."""
    job = read_job(SAMPLES / f"{name}.toml")
    plan = plan_wall(replace(job, accuracy=replace(job.accuracy, string=string)))
    pairs = neighbours(plan)
    for cover, trim in (("linked", "cut"), ("marks", "cut"), ("marks", "none")):
        sheets = plan_sheets(plan, paper("a4", cover=cover, trim=trim), printer)
        errors, sketch = [worst_error(plan, sheets, [pair]) for pair in pairs], sketched(plan, sheets)
        for limit in (0.0, max(errors) * 0.8, max(errors) * 1.01):
            worst = Worst(plan, pairs, sheets, limit)
            over = sum(max(0.0, error - limit) for error in errors)
            assert worst.excess(sketch).over == pytest.approx(over, abs=1e-4)
            at = worst.excess(sketch).places
            assert bool(at) == (over > 0.0) and all(
                -300.0 <= x <= plan.group.width + 300.0 for x, _ in at
            )  # a sheet more, at most
            for enough in (over / 2, over / 2, over * 0.99):
                assert enough <= worst.excess(sketch, enough).over <= over + 1e-4


@pytest.mark.parametrize("string", [True, False])
def test_what_is_known_of_sheets_taped_alike_is_what_all_worked_out_anew_comes_to(string: bool) -> None:
    """Some of what a search asks about, by one that has seen all of it and by one that has seen nothing."""
    job = hung(wall(180), "a4", "linked", "cut")
    plan = plan_wall(replace(job, accuracy=replace(job.accuracy, string=string)))
    pairs, asked = neighbours(plan), [0, 0]

    def judge(like: SheetPlan, limit: float) -> Judge:
        knows = Worst(plan, pairs, like, limit)

        def excess(sketch: Sketch, enough: float) -> Judged:
            asked[0] += 1
            if asked[0] % 7 == 0:
                new = Worst(plan, pairs, like, limit).excess(sketch)
                assert knows.excess(sketch).over == pytest.approx(new.over, abs=1e-5)
                asked[1] += new.over > 0.0
            return knows.excess(sketch, enough)

        return excess

    held = replace(holding(plan), judge=judge)
    tiled(plan, plan.job.paper, None, False, held)
    assert asked[0] > 25 and asked[1] > 2


def test_of_no_pairs_there_is_no_error() -> None:
    plan = plan_wall(read_job(SAMPLES / "fern-prints.toml"))
    sheets = plan_sheets(plan, paper("a4"), quick=True)
    assert Worst(plan, (), sheets, 0.0).excess(sketched(plan, sheets)).over == 0.0
