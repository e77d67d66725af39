"""Linked paper: nails and target whole, one piece, no cut along an edge, and far less to tape than every mark."""

from __future__ import annotations

from functools import cache
from itertools import cycle

import pytest

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.checks import find
from templates_gen.drawing.items import moved
from templates_gen.job.reading.building import read_job
from templates_gen.tiling import linked, planning, quickest
from templates_gen.tiling.demand import EDGE_CLEAR, nail_box
from templates_gen.tiling.joins import JOIN_MIN
from templates_gen.tiling.minutes import minutes
from templates_gen.tiling.page import page_of, turned_page
from templates_gen.tiling.planning import tiled
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.effort import effort
from templates_gen.tolerance.expected import worst_error
from templates_gen.tolerance.holding import WITH_STRING, plan_sheets
from templates_gen.tolerance.neighbours import neighbours
from tests.conftest import LEAST_STEPS
from tests.crowded import crowded
from tests.jobs import SAMPLES, paper
from tests.made import SAMPLE_NAMES, made

TARGET = 12.0  # mm; the target's diamond to each side is no larger; our own design, no source
STRAIGHT = 300.0  # mm of level line to each side of the target; our own design, no source

SIZES = ("a4", "letter")
WALLS = [
    *((name, size, "cut") for name, size in zip(SAMPLE_NAMES[::2], cycle(SIZES), strict=False)),
    *((f"{seed}", SIZES[seed % 2], "cut") for seed in range(4)),
    *((f"{seed}", "a4", "none") for seed in range(2)),
]
walls = pytest.mark.parametrize(("name", "size", "trim"), WALLS)


@cache
def planned(name: str, size: str, trim: str, cover: str = "linked") -> tuple[Plan, SheetPlan]:
    on = paper(size, trim=trim, cover=cover)
    plan = plan_wall(crowded(int(name), on) if name.isdigit() else read_job(SAMPLES / f"{name}.toml"))
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(quickest, "LEAST_STEPS", LEAST_STEPS)  # with fewer, linked paper may take more than every mark
        return plan, plan_sheets(plan, on)


def taking(sheets: SheetPlan) -> float:
    """Minutes, with a side cut once for all the joins along it; uncut, none."""
    cuts = {(join.over, join.upright) for join in sheets.joins} if sheets.hides is None else set()
    return minutes(len(sheets.sheets), len(sheets.joins), len(cuts), 1)


@walls
def test_every_nail_is_whole_on_one_sheet_and_no_other_sheets_edge_crosses_it(name: str, size: str, trim: str) -> None:
    plan, sheets = planned(name, size, trim)
    boxes = [nail_box(nail.x, nail.y) for nail in plan.nails]
    boxes.append(Rect.about(plan.centre_line, plan.level_line, 2 * TARGET, 2 * TARGET))
    for box in boxes:
        on = [sheet for sheet in sheets.sheets if sheet.inner.holds(box)]
        assert len(on) == 1
        assert not [sheet for sheet in sheets.sheets if sheet not in on and sheet.window.overlaps(box)]


@walls
def test_the_sheets_are_one_piece_by_joins_that_can_be_taped(name: str, size: str, trim: str) -> None:
    _, sheets = planned(name, size, trim)
    met, waiting = set(), [sheets.sheets[0].name]
    ends = [(join.over, join.under) for join in sheets.joins if join.length >= JOIN_MIN - 1e-6]
    while waiting:
        one = waiting.pop()
        met.add(one)
        waiting += [b for a, b in (*ends, *((b, a) for a, b in ends)) if a == one and b not in met]
    assert met == {sheet.name for sheet in sheets.sheets}


@walls
def test_nothing_is_cut_along_the_edge_of_a_frame(name: str, size: str, trim: str) -> None:
    plan, sheets = planned(name, size, trim)
    for join in sheets.joins if trim == "cut" else ():
        line = Rect(min(join.x0, join.x1), min(join.y0, join.y1), max(join.x0, join.x1), max(join.y0, join.y1))
        for r in (hung.rect for hung in plan.frames):
            sides = [Rect(x, r.y0, x, r.y1) for x in (r.x0, r.x1)] if join.upright else [
                Rect(r.x0, y, r.x1, y) for y in (r.y0, r.y1)
            ]  # fmt: skip
            near = [side for side in sides if side.grown(EDGE_CLEAR - 0.01).overlaps(line.grown(0.001))]
            along = [m for side in near if (m := side.grown(EDGE_CLEAR).meet(line.grown(0.001)))]
            assert all(max(m.width, m.height) < 2 * EDGE_CLEAR + 0.1 for m in along), (join.over, join.under)


@walls
def test_the_level_line_goes_on_to_both_sides_of_the_target(name: str, size: str, trim: str) -> None:
    plan, sheets = planned(name, size, trim)
    reach = min(STRAIGHT, plan.group.width / 2)
    for step in range(-10, 11) if not plan.slope else ():
        x = plan.centre_line + step / 10 * (reach - 1.0)
        assert any(sheet.window.has_point(x, plan.level_line) for sheet in sheets.sheets)


@walls
def test_it_takes_less_than_the_paper_with_every_mark(name: str, size: str, trim: str) -> None:
    sparing, marks = planned(name, size, trim)[1], planned(name, size, trim, "marks")[1]
    assert taking(sparing) <= taking(marks)


@walls
def test_no_neighbours_err_by_much_more_than_those_of_strips_with_whole_edges(name: str, size: str, trim: str) -> None:
    """A tenth more with a string, a quarter without (as the samples are taped); uncut, nothing is searched for.

    It is what is printed of the pages as they lie: on some of these walls the limit was once passed by a seventh.
    """
    plan, sheets = planned(name, size, trim)
    if trim == "cut" and len(plan.frames) > 1:
        times = 1.1 if plan.job.accuracy.string else 1.25  # our own limits
        strips = tiled(plan, paper(size, trim=trim, cover="marks"))
        pairs = neighbours(plan)
        assert worst_error(plan, sheets, pairs) <= times * worst_error(plan, strips, pairs)


def test_a_roll_is_refused_in_one_line() -> None:
    on = replace(paper("letter", cover="linked"), kind="roll", width=609.6, height=5000.0)
    with pytest.raises(InputError, match="expected sheets"):
        plan_sheets(plan_wall(crowded(0, on)), on)


@pytest.mark.parametrize(("name", "size"), [("16", "letter"), ("2", "a4")])
def test_a_wall_without_a_spine_has_linked_paper_all_the_same(
    name: str, size: str, sheets_planned_anew: None, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As if none were found: what is left of the plan of every mark keeps all that holds for one."""
    asked_for: list[object] = []
    monkeypatch.setattr(linked, "spine", lambda *_: asked_for.append(1))
    monkeypatch.setitem(globals(), "planned", cache(planned.__wrapped__))  # what is known of other walls is kept
    planned(name, size, "cut")
    assert asked_for
    test_every_nail_is_whole_on_one_sheet_and_no_other_sheets_edge_crosses_it(name, size, "cut")
    test_the_sheets_are_one_piece_by_joins_that_can_be_taped(name, size, "cut")
    test_nothing_is_cut_along_the_edge_of_a_frame(name, size, "cut")
    test_the_level_line_goes_on_to_both_sides_of_the_target(name, size, "cut")
    test_it_takes_less_than_the_paper_with_every_mark(name, size, "cut")


def test_a_turned_page_is_the_same_paper_on_its_side() -> None:
    """Its left side is the foot of the upright page: its point (x, y) is at (width - y, x) of that, from the same
    corner, worked out by hand here; a4 is 595 points wide, 209.9 mm."""
    page = page_of(paper("a4"), False)
    lying = turned_page(page)
    assert (lying.width, lying.height) == (page.height, page.width)
    x, y = moved(lying.matrix, 10.0, 20.0)
    assert (x, y) == pytest.approx((595 - 20.0 / 25.4 * 72, 10.0 / 25.4 * 72))
    corners = [moved(lying.matrix, *corner) for corner in lying.printable.corners]
    assert min(x for x, _ in corners) == pytest.approx(page.printable.x0 / 25.4 * 72)
    assert max(y for _, y in corners) == pytest.approx(page.printable.y1 / 25.4 * 72)


def test_a_sheet_is_turned_only_where_it_does_not_fit_upright() -> None:
    """As high as an upright page but for a rounding, a sheet was once taken for a turned one, and cut off."""
    for name, size, trim in WALLS:
        _, sheets = planned(name, size, trim)
        for sheet in sheets.sheets:
            assert sheet.window.width <= sheet.page.printable.width + 1e-6
            assert sheet.window.height <= sheet.page.printable.height + 1e-6


@pytest.mark.parametrize("trim", ["cut", "none"])
@pytest.mark.parametrize("name", ["lock-keepers", "fern-prints"])
def test_a_frame_without_a_drop_has_its_drop_scale_on_the_paper(name: str, trim: str) -> None:
    """There its nail is marked on the day: 120 mm down from the top edge, 25 mm to either side (our own lengths)."""
    plan = made(name).plan
    sheets = plan_sheets(plan, replace(plan.job.paper, cover="linked", trim=trim))
    unknown = [(hung.rect.y1, at.x) for hung in plan.frames for at in hung.bearings if at.drop is None]
    assert unknown
    for top, x in unknown:
        for below in range(0, 120, 5):
            piece = Rect(x - 24.9, top - below - 5.0, x + 24.9, top - below)
            assert any(sheet.window.holds(piece) for sheet in sheets.sheets)


def test_paper_for_nails_alone_sends_nobody_to_a_drop_scale() -> None:
    plan = made("lock-keepers").plan
    told = {}
    for cover in ("linked", "nails"):
        job = replace(plan.job, paper=replace(plan.job.paper, cover=cover))
        told[cover] = next(each.text for each in find(replace(plan, job=job)) if each.rule == "drop-missing")
    assert told["linked"].endswith("measure the drop, or mark it by hand on the drop scale.")
    assert told["nails"].endswith("measure the drop; paper for nails alone has no drop scale to mark it by.")


def _minutes(sheets: SheetPlan) -> float:
    return effort(sheets).minutes


def test_linked_paper_takes_no_longer_than_every_mark(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where no search holds the frames, its sheets are no strips: of twelve frames those would take twice as long."""
    plan = made("twelve, a4, marks").plan
    as_laid = quickest._as_laid
    monkeypatch.setattr(planning, "quickest", lambda given, need, held, limit, spine, strips: as_laid(strips, given))
    found = plan_sheets(plan, paper("a4", cover="linked"))
    every, strips = (plan_sheets(plan, paper("a4", cover="marks"), quick=quick) for quick in (False, True))
    assert _minutes(found) <= _minutes(every) < 0.8 * _minutes(strips)  # 31 of 46 min, our own trial
    for sheet in found.sheets:
        window, area = sheet.window, sheet.page.printable
        assert window.width <= area.width + 1e-6 and window.height <= area.height + 1e-6  # for rounding
    pairs = neighbours(plan)
    assert worst_error(plan, found, pairs) <= WITH_STRING * worst_error(plan, strips, pairs)
