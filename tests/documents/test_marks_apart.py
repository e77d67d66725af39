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

THIN = 0.1
"""mm: half of what is looked at along a line that has no width.  Our own choice."""


def found(plan, sheets) -> list[tuple[str, str, Rect]]:
    laid = lay(plan, sheets, 0, LETTERING)
    return [shared for one in laid for shared in on_each_other(one) if shared[:2] not in ON_TARGET]


@pytest.mark.parametrize("name", JOBS)
def test_no_mark_lies_on_another_layers_mark_or_lettering(name: str) -> None:
    done = made(name)
    assert found(done.plan, done.sheets) == []


@pytest.mark.parametrize("name", NAMES)
def test_no_title_and_no_frames_lettering_lies_on_a_line(name: str) -> None:
    """Neither on a long line nor on a frame's edge, nor a title within 1 mm of one along it, where it looks like teeth.

    A title may on one sheet in 25 of the crowded jobs, where nothing else is free within 40 mm.
    """
    done = made(name)
    plan, on = done.plan, set()
    for laid in lay(plan, done.sheets, 0, LETTERING):
        window = laid.so_far.sheet.window
        lines = [
            Rect(plan.centre_line, plan.group.y0, plan.centre_line, plan.group.y1).grown(THIN),
            Rect(plan.group.x0, plan.level_line, plan.group.x1, plan.level_line).grown(THIN),
        ]
        for r in (hung.rect for hung in laid.so_far.part.frames):
            lines += [Rect(x, r.y0, x, r.y1).grown(THIN) for x in (r.x0, r.x1)]
            lines += [Rect(r.x0, y, r.x1, y).grown(THIN) for y in (r.y0, r.y1)]
        seen = [line for line in lines if line.overlaps(window)]
        texts = [(kind, box) for kind, box in boxes(laid) if kind in ("title", "label of a frame")]
        near = [
            (kind, replace(box, y0=box.y0 - (kind == "title"), y1=box.y1 + (kind == "title"))) for kind, box in texts
        ]
        on |= {(kind, laid.so_far.sheet.name) for kind, box in near for line in seen if box.overlaps(line)}
    assert {kind for kind, _ in on} <= {"title"}
    assert len(on) * 25 <= len(done.sheets.sheets) * (name not in SAMPLE_NAMES)


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
