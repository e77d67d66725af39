"""No mark of one layer lies on a mark or the lettering of another, whatever has to be on paper."""

from __future__ import annotations

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.documents.sheets.layers import lay
from templates_gen.tolerance.diagonals import corners_to_measure
from templates_gen.tolerance.holding import plan_sheets
from tests.apart import LETTERING, boxes, on_each_other
from tests.crowded import crowded
from tests.jobs import frame, group, job, paper
from tests.made import CROWDED, NAMES, SAMPLE_NAMES, UNCUT, made

JOBS = (*NAMES, *UNCUT, *CROWDED)

ON_TARGET = {("nail", "target")}
"""What the job itself has at one place."""


def found(plan, sheets) -> list[tuple[str, str, Rect]]:
    laid = lay(plan, sheets, 0, LETTERING)
    return [shared for one in laid for shared in on_each_other(one) if shared[:2] not in ON_TARGET]


@pytest.mark.parametrize("name", JOBS)
def test_no_mark_lies_on_another_layers_mark_or_lettering(name: str) -> None:
    done = made(name)
    assert found(done.plan, done.sheets) == []


@pytest.mark.parametrize("name", SAMPLE_NAMES)
@pytest.mark.parametrize(("cover", "size", "trim"), [("all", "a4", "cut"), ("nails", "letter", "none")])
def test_nor_on_other_paper_with_another_cover(name: str, cover: str, size: str, trim: str) -> None:
    plan = made(name).plan
    on = replace(paper(size, cover=cover, trim=trim), photo=True)
    plan = replace(plan, job=replace(plan.job, paper=on))
    assert found(plan, plan_sheets(plan, on, quick=True)) == []


@pytest.mark.parametrize("seed", range(30, 36))
def test_nor_on_the_fullest_sheets_by_chance(seed: int) -> None:
    each = crowded(seed, paper("a4", cover=("all", "marks", "nails")[seed % 3]))
    plan = plan_wall(each)
    assert found(plan, plan_sheets(plan, each.paper)) == []


@pytest.mark.parametrize("name", SAMPLE_NAMES)
def test_every_corner_to_measure_from_is_black_on_some_sheet(name: str) -> None:
    done = made(name)
    laid = lay(done.plan, done.sheets, 0, LETTERING)
    black = [box.grown(0.01) for one in laid for kind, box in boxes(one) if kind == "black corner"]
    for x, y, _, _ in corners_to_measure(done.plan):
        assert any(box.has_point(x, y) for box in black)


def test_what_lies_on_something_else_is_found() -> None:
    """A frame's corner at the end of a ruler, on a sheet whose layers were told of no corner.  Or these tests could not
    fail."""
    each = job(frame("A", 300.0, 300.0, 80.0), group=group((("A",),)), paper=paper("a4"))
    plan = plan_wall(each)
    laid = lay(plan, plan_sheets(plan, each.paper), 0, LETTERING)[0]
    corner, title, ruler = list(laid.drawn)[:3]
    (at,) = [item for item in laid.drawn[title].over[:1]]
    drawn = {**laid.drawn, corner: replace(laid.drawn[corner], items=tuple(_triangle(at.x, at.y)))}
    assert ("title", "black corner") in {pair[:2] for pair in on_each_other(replace(laid, drawn=drawn))}
    assert ruler in laid.drawn


def _triangle(x: float, y: float):
    from templates_gen.drawing.shapes import corner_triangle

    yield corner_triangle(x, y, 10.0, 10.0)
