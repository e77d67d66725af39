"""Sheets in no strips, put into runs that are taped first: worked out by hand here."""

from __future__ import annotations

from templates_gen.base.geometry import Rect
from templates_gen.tiling.weaving import HELD
from tests.tiling.runs import put_into_runs


def test_sheets_in_no_strips_are_put_into_runs_from_the_targets_outwards():
    """A row of three at the line, a column of two over its middle, and one beside the upper of them."""
    cells = [
        Rect(0, 0, 200, 100), Rect(200, 0, 400, 100), Rect(400, 0, 600, 100),
        Rect(200, 100, 400, 200), Rect(200, 200, 400, 300), Rect(400, 200, 600, 300),
    ]  # fmt: skip
    found = put_into_runs(cells, 1, lambda cell: cell.y0 <= 50 <= cell.y1, False, (200.0, 300.0))
    placed = {(cell.strip, cell.place): cells.index(cell.rect) for cell in found}
    assert placed == {(0, 0): 0, (0, 1): 1, (0, 2): 2, (1, 0): 3, (1, 1): 4, (2, 0): 5}
    assert not any(cell.turned for cell in found)
    rows = put_into_runs(cells, 1, lambda cell: cell.y0 <= 50 <= cell.y1, True, (99.0, 200.0))
    placed = {(cell.strip, cell.place): cells.index(cell.rect) for cell in rows}
    assert placed == {(0, 0): 0, (0, 1): 1, (0, 2): 2, (1, 0): 3, (2, 0): 4, (2, 1): 5}
    assert all(cell.turned for cell in rows)
    assert all(cell.turned for cell in put_into_runs(cells, 1, lambda cell: True, True, (199.0, 300.0)))


def test_only_what_holds_the_line_is_in_the_first_run_and_a_run_is_no_longer_than_an_arms_span():
    cells = [Rect(200.0 * at, 0.0, 200.0 * at + 200.0, 100.0) for at in range(12)]
    every = put_into_runs(cells, 5, lambda cell: True, False, (200.0, 300.0))
    assert {cell.strip for cell in every} == {0} and [cell.place for cell in every] == list(range(12))
    some = put_into_runs(cells, 5, lambda cell: 800.0 <= cell.x0 <= 1400.0, True, (200.0, 300.0))
    first = sorted(cell.rect.x0 for cell in some if cell.strip == 0)
    assert first == [800.0, 1000.0, 1200.0, 1400.0]
    none = put_into_runs(cells, 0, lambda cell: False, True, (200.0, 300.0))
    runs = [[cell.rect for cell in none if cell.strip == strip] for strip in sorted({cell.strip for cell in none})]
    assert [len(run) for run in runs] == [1, 10, 1]  # 2 m
    assert all(max(c.x1 for c in run) - min(c.x0 for c in run) <= HELD for run in runs)
    tall = [Rect(0.0, 100.0 * at, 100.0, 100.0 * at + 100.0) for at in range(25)]
    columns = put_into_runs(tall, 0, lambda cell: cell.y0 == 0.0, False, (100.0, 100.0))
    assert [sum(cell.strip == strip for cell in columns) for strip in range(3)] == [1, 20, 4]


def test_a_sheet_goes_into_the_run_that_it_is_longer_joined_to():
    """The upper row meets the target's sheet at 150 and 50 mm, and a cell under it along 40."""
    cells = [
        Rect(0, 0, 200, 100), Rect(200, 0, 400, 60), Rect(200, 60, 400, 300), Rect(0, 100, 200, 300),
    ]  # fmt: skip
    found = put_into_runs(cells, 0, lambda cell: cell.y0 == 0.0, False, (400.0, 400.0))
    strips = {cells.index(cell.rect): cell.strip for cell in found}
    assert strips[0] == strips[1] == 0 and strips[2] != strips[3]
    right = put_into_runs(cells, 0, lambda cell: True, False, (400.0, 400.0))
    strips = {cells.index(cell.rect): cell.strip for cell in right}
    assert strips[0] == 0 and strips[1] == 0  # 60 mm of a side rather than 40


def test_a_cell_larger_than_its_page_by_a_rounding_is_not_turned():
    """A sheet that was a millionth of a mm too high was once drawn on its side, and off its page."""
    for more in (0.0, 1.1e-6):
        (cell,) = put_into_runs(
            [Rect(0.0, 0.0, 180.0 + more, 260.0 + more)], 0, lambda cell: True, False, (180.0, 260.0)
        )
        assert not cell.turned
        (cell,) = put_into_runs(
            [Rect(0.0, 0.0, 260.0 + more, 180.0 + more)], 0, lambda cell: True, False, (180.0, 260.0)
        )
        assert cell.turned
