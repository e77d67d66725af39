"""The sheet plan: what it promises, whatever it is given; and no worse than an exhaustive search."""

from __future__ import annotations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect, bounds
from templates_gen.tiling.cells import CellPlan, Clearance, Printable, plan_cells
from templates_gen.tiling.joins import pieces
from templates_gen.tiling.strips import Box, Boxes, within
from tests.sheet_baselines import Units, best_offset, fewest, fewest_along, fixed_grid

A4 = (Printable(196, 277, False), Printable(283, 190, True))
OVERLAP = 12.0
CLEAR = Clearance(13, 13, 6, 11)
EVEN = Clearance(9, 9, 9, 9)
SLOP = 2e-6

place = st.tuples(st.floats(-900, 900).map(lambda v: round(v, 3)), st.floats(-600, 600).map(lambda v: round(v, 3)))
marks = st.builds(
    lambda p, w, h: Rect.sized(*p, w, h), place, st.sampled_from([0.0, 22, 30]), st.sampled_from([30, 60])
)
areas = st.builds(lambda p, w, h: Rect.sized(*p, w, h), place, st.floats(0, 700), st.floats(0, 500))
lines = st.builds(
    lambda p, n, up: Rect.sized(*p, 0 if up else n, n if up else 0), place, st.floats(0, 900), st.booleans()
)
wholes = st.lists(marks, max_size=6)
divisibles = st.lists(areas | lines, max_size=6)


def subtract(rects: list[Rect], hole: Rect) -> list[Rect]:
    left = []
    for r in rects:
        m = r.meet(hole)
        if m is None:
            left.append(r)
            continue
        left += [p for p in (Rect(r.x0, r.y0, m.x0, r.y1), Rect(m.x1, r.y0, r.x1, r.y1)) if p.width > SLOP]
        left += [p for p in (Rect(m.x0, r.y0, m.x1, m.y0), Rect(m.x0, m.y1, m.x1, r.y1)) if p.height > SLOP]
    return left


def check(plan: CellPlan, whole: list[Rect], divisible: list[Rect], clear: Clearance, connected: bool) -> None:
    cells = [c.rect for c in plan.cells]
    page = plan.printable
    for c in cells:
        assert SLOP < c.width <= page.width - OVERLAP + SLOP and SLOP < c.height <= page.height - OVERLAP + SLOP
    for w in whole:
        room = Rect(w.x0 - clear.left, w.y0 - clear.bottom, w.x1 + clear.right, w.y1 + clear.top)
        assert any(c.holds(room) for c in cells)
    for d in divisible:
        for x in (d.x0, d.cx, d.x1):
            assert all(any(c.has_point(x, y) for c in cells) for y in (d.y0, d.cy, d.y1))
        rest = [d]
        for c in cells:
            rest = subtract(rest, c.grown(SLOP / 2))
        assert not rest
    assert not any(a.overlaps(b) for i, a in enumerate(cells) for b in cells[:i])
    assert not connected or not cells or max(pieces(cells)) == 0
    check_numbers(plan)


def check_numbers(plan: CellPlan) -> None:
    strips: dict[int, list[Rect]] = {}
    for cell in sorted(plan.cells, key=lambda c: (c.strip, c.place)):
        assert cell.place == len(strips.setdefault(cell.strip, []))
        strips[cell.strip].append(cell.rect)
    assert sorted(strips) == list(range(len(strips)))
    order = [(-round(c.rect.y1, 3), c.rect.x0) for c in plan.cells]
    assert order == sorted(order)


def mirrored(rects: list[Rect]) -> list[Rect]:
    return [Rect(-r.x1, r.y0, -r.x0, r.y1) for r in rects]


def plan_or_none(
    whole: list[Rect], divisible: list[Rect], pages: tuple[Printable, ...], overlap: float, clear: Clearance, one: bool
) -> CellPlan | None:
    try:
        return plan_cells(whole, divisible, pages, overlap, clear, one)
    except InputError:
        return None


EDGE_ON_A_CUT = (
    [Rect(0, 0, 0, 30)],
    [Rect(0, 0, 213, 0), Rect(0, 170, 185, 348), Rect(-330, 0, -330, 0), Rect(-58.062, 0, -58.062, 179)],
    False,
)


SECOND_STACK_NEAR_THE_FIRST = (
    [],
    [Rect(0, 0, 0, 0), Rect(1, 88, 1, 266), Rect(-553, 0, -184, 0)],
    False,
)


@settings(max_examples=250, deadline=None)
@example(*EDGE_ON_A_CUT)
@example(*SECOND_STACK_NEAR_THE_FIRST)
@given(wholes, divisibles, st.booleans())
def test_a_plan_keeps_every_promise(whole, divisible, connected):
    plan = plan_or_none(whole, divisible, A4, OVERLAP, CLEAR, connected)
    if plan:
        check(plan, whole, divisible, CLEAR, connected)
    else:  # only where marks with their clearances overlap in a chain longer than a sheet
        room = [Rect(w.x0 - 13, w.y0 - 13, w.x1 + 6, w.y1 + 11) for w in whole]
        assert any(a.overlaps(b) for i, a in enumerate(room) for b in room[:i])


@settings(max_examples=40, deadline=None)
@given(wholes, divisibles, st.booleans(), st.integers(-2, 2))
def test_a_plan_of_no_more_than_so_many_sheets_is_found_where_the_best_is_one(whole, divisible, connected, more):
    best = plan_or_none(whole, divisible, A4, OVERLAP, CLEAR, connected)
    if best:
        most = max(1, len(best.cells) + more)
        some = plan_cells(whole, divisible, A4, OVERLAP, CLEAR, connected, most=most)
        assert (len(some.cells) <= most) == (len(best.cells) <= most)
        check(some, whole, divisible, CLEAR, connected)


@settings(max_examples=60, deadline=None)
@given(st.lists(marks, min_size=25, max_size=45), st.booleans())
def test_dense_marks_are_planned_in_sections(found, connected):
    whole: list[Rect] = []
    for m in found:
        squeezed = m.shifted(-m.x0 / 2, -m.y0 / 2)
        if all(squeezed.gap_to(o) > 30 for o in whole):
            whole.append(squeezed)
    plan = plan_or_none(whole, [], A4, OVERLAP, CLEAR, connected)
    if plan:
        check(plan, whole, [], CLEAR, connected)
    else:  # only where more marks than a sheet holds stand so that no straight cut goes between them
        rooms = [Rect(w.x0 - 13, w.y0 - 13, w.x1 + 6, w.y1 + 11) for w in whole]
        assert not all(map(_on_a_sheet, _cut_apart(rooms)))


def _cut_apart(rooms: list[Rect]) -> list[list[Rect]]:
    """The rooms in as many parts as straight cuts, level and upright, can make of them."""
    for low, high in (("x0", "x1"), ("y0", "y1")):
        in_order = sorted(rooms, key=lambda room: getattr(room, low))
        for at in range(1, len(in_order)):
            if max(getattr(room, high) for room in in_order[:at]) <= getattr(in_order[at], low):
                return _cut_apart(in_order[:at]) + _cut_apart(in_order[at:])
    return [rooms]


def _on_a_sheet(rooms: list[Rect]) -> bool:
    around = bounds(rooms)
    return any(around.width <= page.width - OVERLAP and around.height <= page.height - OVERLAP for page in A4)


@settings(max_examples=60, deadline=None)
@given(wholes, divisibles, st.booleans(), st.floats(-3000, 3000), st.floats(-3000, 3000))
def test_moving_everything_moves_the_plan(whole, divisible, connected, dx, dy):
    here = plan_or_none(whole, divisible, A4, OVERLAP, CLEAR, connected)
    there = plan_or_none(
        [r.shifted(dx, dy) for r in whole],
        [r.shifted(dx, dy) for r in divisible],
        A4,
        OVERLAP,
        CLEAR,
        connected,
    )
    assert (here and len(here.cells)) == (there and len(there.cells))


FEWER_WITH_A_SLIVER = (
    [Rect(0, 0, 0, 30), Rect(-18, 292, -18, 322)],
    [Rect(0, 0, 176, 0), Rect(-194, 279, -194, 457), Rect(-242, -74, -242, -74), Rect(-281, 0, -281, 283)],
)


@settings(max_examples=100, deadline=None)
@example(*FEWER_WITH_A_SLIVER)
@given(wholes, divisibles)
def test_a_mirrored_wall_takes_as_many_sheets(whole, divisible):
    """Of marks with a thickness, as all that is drawn has: a bare line on a cut belongs to one side by convention."""
    divisible = [Rect(r.x0, r.y0, r.x1 + 0.5, r.y1 + 0.5) for r in divisible]
    here = plan_or_none(whole, divisible, A4, OVERLAP, EVEN, False)
    there = plan_or_none(mirrored(whole), mirrored(divisible), A4, OVERLAP, EVEN, False)
    assert (here and len(here.cells)) == (there and len(there.cells))


@settings(max_examples=100, deadline=None)
@given(st.lists(areas | lines, min_size=1, max_size=6), st.booleans())
def test_never_more_sheets_than_the_fixed_grid(divisible, connected):
    plan = plan_cells([], divisible, A4, OVERLAP, CLEAR, connected)
    assert len(plan.cells) <= fixed_grid(divisible, A4, OVERLAP)


@settings(max_examples=60, deadline=None)
@given(st.lists(marks, min_size=1, max_size=4), st.lists(areas | lines, max_size=3))
def test_never_more_sheets_than_the_fixed_grid_at_its_best_offset(whole, divisible):
    full, some = best_offset(whole, divisible, A4, OVERLAP, CLEAR)
    if full is not None and some is not None:
        assert len(plan_cells(whole, divisible, A4, OVERLAP, CLEAR, True).cells) <= full
        assert len(plan_cells(whole, divisible, A4, OVERLAP, CLEAR, False).cells) <= some


@pytest.mark.parametrize("columns, rows", [(1, 1), (2, 3), (7, 4), (11, 1)])
def test_a_wall_that_fits_exactly_is_not_split_by_rounding(columns, rows):
    wall = Rect.sized(0.1, 0.7, columns * 184.0, rows * 265.0)
    edge = Rect(wall.x0, wall.y1, wall.x1, wall.y1)
    plan = plan_cells([], [wall, edge], A4[:1], OVERLAP, CLEAR, True)
    assert len(plan.cells) == columns * rows
    check(plan, [], [wall, edge], CLEAR, True)


def test_no_sheet_carries_a_sliver():
    wall = Rect(0, 0, 184 * 3 + 3, 265 * 2 + 3)
    plan = plan_cells([], [wall], A4[:1], OVERLAP, CLEAR, True)
    assert len(plan.cells) == 12
    used = [c.rect.meet(wall) for c in plan.cells]
    assert all(u is not None and u.width > 60 and u.height > 60 for u in used)


def test_ties_go_to_the_upright_page_and_an_even_place():
    item = Rect(0, 0, 100, 100)
    plan = plan_cells([], [item], A4[::-1], OVERLAP, CLEAR, True)
    assert not plan.printable.turned
    assert (plan.cells[0].rect.cx, plan.cells[0].rect.cy) == pytest.approx((50, 50), abs=1e-5)


def test_nothing_to_print_needs_no_sheet():
    assert plan_cells([], [], A4, OVERLAP, CLEAR, True).cells == ()


def test_an_item_too_large_for_a_page_names_both_sizes():
    with pytest.raises(InputError, match=r"(?s)319 × 319 mm.*184 × 265 mm or 271 × 178 mm.*larger paper"):
        plan_cells([Rect(0, 0, 300, 295)], [], A4, OVERLAP, CLEAR, False)


def test_too_many_sheets_are_refused():
    with pytest.raises(InputError, match="20,000"):
        plan_cells([], [Rect(0, 0, 50_000, 50_000)], A4, OVERLAP, CLEAR, True)


UNIT = 50.0
unit_boxes = st.tuples(st.integers(0, 9), st.integers(0, 9), st.integers(1, 5), st.integers(1, 5))
unit_firm = st.tuples(st.integers(0, 9), st.integers(0, 9), st.integers(1, 2), st.integers(1, 2))


def in_mm(units: Units) -> list[Rect]:
    return [Rect(*(v * UNIT for v in b)) for b in units]


@settings(max_examples=120, deadline=None)
@given(
    st.lists(unit_firm, max_size=4),
    st.lists(unit_boxes, max_size=5),
    st.sampled_from([(2, 2), (2, 3), (3, 2), (4, 3)]),
)
def test_as_few_sheets_as_an_exhaustive_search_finds(firm, soft, size):
    firm, soft = ([(x, y, x + w, y + h) for x, y, w, h in boxes] for boxes in (firm, soft))
    page = (Printable(size[0] * UNIT + OVERLAP, size[1] * UNIT + OVERLAP, False),)
    turned = [[(b[1], b[0], b[3], b[2]) for b in boxes] for boxes in (firm, soft)]
    best = min(fewest(firm, soft, *size), fewest(*turned, size[1], size[0]))
    plan = plan_or_none(in_mm(firm), in_mm(soft), page, OVERLAP, Clearance(0, 0, 0, 0), False)
    if best < float("inf"):
        assert plan is not None and len(plan.cells) == best
    elif plan:  # strips right across the wall cannot do it, sections could
        check(plan, in_mm(firm), in_mm(soft), Clearance(0, 0, 0, 0), False)


def test_one_strip_is_as_short_as_an_exhaustive_search_finds():
    soft = [(0, 0, 1, 1), (4, 0, 5, 1), (6, 0, 9, 1), (12, 0, 13, 1)]
    firm = [(3, 0, 5, 1), (8, 0, 10, 1)]
    plan = plan_cells(in_mm(firm), in_mm(soft), (Printable(162, 162, False),), OVERLAP, Clearance(0, 0, 0, 0), False)
    assert len(plan.cells) == fewest_along(firm, soft, 3)


@settings(max_examples=60, deadline=None)
@given(
    wholes, st.lists(st.tuples(st.integers(0, 800), st.integers(100, 700), st.booleans()), min_size=1, max_size=4),
    st.booleans(),
)  # fmt: skip
def test_no_cut_runs_along_a_line(whole, spread, connected):
    lines = [Rect(at, 0, at + 20, far) if upright else Rect(0, at, far, at + 20) for at, far, upright in spread]
    try:
        plan = plan_cells(whole, [], A4, OVERLAP, CLEAR, connected, lines)
    except InputError:  # lines or marks side by side, wider than a sheet
        return
    for line in lines:
        for cell in (c.rect for c in plan.cells):
            shared = cell.meet(line)
            if shared is None or shared.width < SLOP or shared.height < SLOP:
                continue
            upright = line.height >= line.width
            assert (shared.width if upright else shared.height) >= 20 - SLOP


@settings(deadline=None)
@given(st.lists(areas | lines | marks, max_size=12), st.lists(st.floats(-1500, 1500), min_size=2, max_size=2))
def test_a_strip_finds_its_content_as_if_it_had_looked_at_all(rects, ends):
    boxes = [Box(r.x0, r.y0, r.x1, r.y1, True, False) for r in rects]
    for low, high in ([*sorted(ends)], *((r.y0, r.y1) for r in rects)):
        assert Boxes(boxes).within(low, high) == within(sorted(boxes), low, high)
