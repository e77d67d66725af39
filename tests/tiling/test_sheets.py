"""Sheet plans of small random jobs: what must hold whatever the frames, the paper and the place on the wall."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.drawing.items import moved
from templates_gen.job.model import Job
from templates_gen.tiling import quickest
from templates_gen.tiling.demand import nail_box
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tiling.sheet import given as given_of
from templates_gen.tiling.sketch import seen
from templates_gen.tolerance.holding import plan_sheets
from tests.jobs import Fixing, Hanger, frame, group, job, paper
from tests.made import NAMES, made

CLOSE = 1e-5
"""mm; float sums over a few metres are nearer than this.  Common practice, no source."""

BARS = 18.4, 5.0  # mm along and across a join that a registration mark takes; our own design, no source

ARM = 15.0  # mm of either edge from a frame's corner that are on paper; our own design, no source


@pytest.fixture(scope="module", autouse=True)
def hardly_searched() -> Iterator[None]:
    """A step for every sheet: what is asked for here holds however few there are, and there are hundreds of walls."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(quickest, "STEPS_A_SHEET", 1)
        patch.setattr(quickest, "LEAST_STEPS", 1)
        yield


hangers = st.sampled_from(
    [Hanger(kind="wire"), Hanger(kind="sawtooth"), Hanger(kind="rings", left=30.0, right=35.0, drop_left=42.0)]
)
fixings = st.sampled_from([Fixing(), Fixing(kind="hook", below=20.0)])


@st.composite
def jobs(draw: st.DrawFn, covers: tuple[str, ...] = ("all", "marks", "nails")) -> Job:
    """One to eight frames in rows on a4 or letter."""
    count = draw(st.integers(1, 8))
    frames = [
        frame(
            str(number),
            draw(st.floats(80, 700)),
            draw(st.floats(80, 700)),
            draw(st.none() | st.floats(40, 75)),
            hanger=draw(hangers),
            fixing=draw(fixings),
        )
        for number in range(count)
    ]
    cut = draw(st.integers(0, count))
    names = tuple(item.id for item in frames)
    rows = tuple(row for row in (names[:cut], names[cut:]) if row)
    on = paper(
        draw(st.sampled_from(["a4", "letter"])),
        cover=draw(st.sampled_from(covers)),
        overlap=draw(st.sampled_from([8.0, 12.0])),
    )
    centre = draw(st.floats(0, 5000))
    return job(*frames, group=group(rows, gap=draw(st.floats(5, 90)), centre_on=centre), paper=on)


HOLDS: list[Callable[[Job, SheetPlan], None]] = []
"""What must hold of the sheets of any job: each is asked of the same ones, for planning them takes the time."""


def holds(asked: Callable[[Job, SheetPlan], None]) -> Callable[[Job, SheetPlan], None]:
    HOLDS.append(asked)
    return asked


def sheets_of(each: Job) -> SheetPlan:
    return plan_sheets(plan_wall(each), each.paper)


@holds
def every_whole_item_lies_in_the_inner_part_of_one_sheet(each: Job, sheets: SheetPlan) -> None:
    """Nail marks, and the target of 15 mm on each side of the two lines' crossing.  Our own design, no source."""
    plan = plan_wall(each)
    target = Rect.about(plan.centre_line, plan.level_line, 30.0, 30.0)
    for item in (target, *(nail_box(nail.x, nail.y) for nail in plan.nails)):
        assert any(sheet.inner.holds(item) for sheet in sheets.sheets)
        assert sum(sheet.window.holds(item) for sheet in sheets.sheets) == 1


def lines_of(each: Job) -> list[Rect]:
    """What the paper must show in parts: the group, or all corners and both lines, as wide as they are drawn."""
    plan = plan_wall(each)
    group = plan.group.grown(0.125)
    if each.paper.cover != "marks":
        return [group] if each.paper.cover == "all" else []
    found = [
        Rect(plan.centre_line - 0.175, plan.group.y0, plan.centre_line + 0.175, plan.group.y1),
        Rect(plan.group.x0, plan.level_line - 0.175, plan.group.x1, plan.level_line + 0.175),
    ]
    for hung in plan.frames:
        r = hung.rect
        for ends in ((r.x0, r.x0 + ARM), (r.x1 - ARM, r.x1)):
            found += [Rect(ends[0], y, ends[1], y).grown(0.125) for y in (r.y0, r.y1)]
        for ends in ((r.y0, r.y0 + ARM), (r.y1 - ARM, r.y1)):
            found += [Rect(x, ends[0], x, ends[1]).grown(0.125) for x in (r.x0, r.x1)]
    return found


def uncovered(item: Rect, windows: list[Rect]) -> list[tuple[float, float]]:
    """The middles of the pieces, cut at all windows' sides, that no window holds."""
    xs = sorted({item.x0, item.x1, *(x for w in windows for x in (w.x0, w.x1) if item.x0 < x < item.x1)})
    ys = sorted({item.y0, item.y1, *(y for w in windows for y in (w.y0, w.y1) if item.y0 < y < item.y1)})
    middles = [((x0 + x1) / 2, (y0 + y1) / 2) for x0, x1 in pairwise(xs) for y0, y1 in pairwise(ys)]
    return [at for at in middles if not any(w.has_point(*at) for w in windows)]


@holds
def every_point_of_a_divisible_item_is_in_some_window(each: Job, sheets: SheetPlan) -> None:
    windows = [sheet.window for sheet in sheets.sheets]
    for item in lines_of(each):
        assert uncovered(item, windows) == []


@holds
def neighbours_share_exactly_the_overlap(each: Job, sheets: SheetPlan) -> None:
    for join in sheets.joins:
        shared = sheets.sheet(join.over).window.meet(sheets.sheet(join.under).window)
        assert shared is not None
        across = shared.width if join.upright else shared.height
        assert math.isclose(across, each.paper.overlap, abs_tol=CLOSE)
        middle = (shared.x0 + shared.x1) / 2 - join.x0 if join.upright else (shared.y0 + shared.y1) / 2 - join.y0
        assert abs(middle) < CLOSE


@holds
def names_are_unique_and_no_two_sheets_own_the_same_wall(each: Job, sheets: SheetPlan) -> None:
    assert len({sheet.name for sheet in sheets.sheets}) == len(sheets.sheets)
    for number, one in enumerate(sheets.sheets):
        assert not any(one.cell.grown(-CLOSE).overlaps(other.cell) for other in sheets.sheets[number + 1 :])


@holds
def both_ends_of_every_join_have_a_registration_mark(each: Job, sheets: SheetPlan) -> None:
    """12 mm from each end, on both sheets, or in the middle of a join too short for two (our own design, no source)."""
    for join in sheets.joins:
        both = [mark for mark in sheets.marks if {join.over, join.under} <= set(mark.sheets)]
        ends = ((join.x0, join.y0), (join.x1, join.y1))
        nearest = [min(both, key=lambda mark: math.dist((mark.x, mark.y), end)) for end in ends] if both else []
        assert len(nearest) == 2, f"{join} has no mark on both sheets"
        assert all(math.dist((mark.x, mark.y), end) < 30 for mark, end in zip(nearest, ends, strict=True))
        if math.dist(*ends) > 45:
            assert nearest[0] is not nearest[1]


@holds
def registration_marks_lie_whole_in_the_windows_of_their_sheets(each: Job, sheets: SheetPlan) -> None:
    for mark in sheets.marks:
        assert len(mark.sheets) == 2
        along, across = (BARS[1], BARS[0]) if mark.upright else BARS
        whole = Rect.about(mark.x, mark.y, along, across)
        assert all(sheets.sheet(name).window.holds(whole) for name in mark.sheets)


@holds
def no_register_mark_hides_another(each: Job, sheets: SheetPlan) -> None:
    marks = sheets.marks
    for number, one in enumerate(marks):
        assert not any(one.box.overlaps(two.box) for two in marks[number + 1 :])


@pytest.mark.parametrize("name", NAMES)
def test_no_register_mark_of_a_sample_hides_another(name: str) -> None:
    marks = made(name).sheets.marks
    for number, one in enumerate(marks):
        for two in marks[number + 1 :]:
            assert not one.box.overlaps(two.box), (one, two)


@settings(max_examples=20, deadline=None, derandomize=True)
@given(jobs(), st.floats(-3000, 3000))
def test_a_move_of_the_centre_moves_all_windows_as_far(each: Job, by: float) -> None:
    moved = replace(each, group=replace(each.group, centre_on=float(each.group.centre_on) + by))
    before, after = sheets_of(each).sheets, sheets_of(moved).sheets
    assert [sheet.name for sheet in before] == [sheet.name for sheet in after]
    for one, two in zip(before, after, strict=True):
        wanted = one.window.shifted(by, 0.0)
        assert wanted.grown(CLOSE).holds(two.window) and two.window.grown(CLOSE).holds(wanted)


def test_a_side_halfway_between_two_roundings_goes_the_same_way_wherever_the_group_hangs() -> None:
    """The middle of two cells lies there, at a five in the eighth decimal of a millimetre."""
    each = job(frame("A", 300, 400, 60), paper=paper("a4"))
    patches = set()
    for at in range(-50, 50):
        asked = given_of(plan_wall(replace(each, group=replace(each.group, centre_on=at * 160.1))), each.paper, None)
        corner = asked.plan.group
        patches.add(
            seen(asked, Rect(12.34567885, 1.00000015, 212.34567865, 301.00000035).shifted(corner.x0, corner.y0))
        )
    assert len(patches) == 1


@holds
def to_page_brings_every_window_to_what_the_printer_reaches(each: Job, sheets: SheetPlan) -> None:
    reach, point = sheets.page.printable, 25.4 / 72  # mm; ISO 32000-1, 8.3.2.3, and the inch of 1959
    for sheet in sheets.sheets:
        one = 1 / point
        turned = (0, one, -one, 0) if sheet.page is not sheets.page else (one, 0, 0, one)
        assert sheet.to_page[:4] == pytest.approx(turned, rel=1e-12)
        across, up = zip(*(moved(sheet.to_page, x, y) for x, y in sheet.window.corners), strict=True)
        on_page = Rect(min(across) * point, min(up) * point, max(across) * point, max(up) * point)
        assert reach.grown(CLOSE).holds(on_page)
        assert on_page.x1 <= sheets.page.width * point and on_page.y1 <= sheets.page.height * point


@settings(max_examples=60, deadline=None, derandomize=True)
@given(jobs())
def test_what_must_hold_of_the_sheets_of_any_job_does(each: Job) -> None:
    sheets = sheets_of(each)
    for asked in HOLDS:
        asked(each, sheets)
