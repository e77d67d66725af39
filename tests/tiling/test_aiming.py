"""How far away what is missing is, and how many sheets it takes at the least: against a look at everything."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen.tiling.aiming import Near, Paces, least_sheets
from templates_gen.tiling.patches import Patch
from tests.tiling.test_patches import SIZES

corners = st.tuples(st.integers(-20, 20), st.integers(-20, 20))


def items(lefts: list[tuple[int, int]]) -> list[Patch]:
    return [(x * 50.0, y * 50.0, x * 50.0 + 30.0, y * 50.0 + 40.0) for x, y in lefts]


def test_distances_are_counted_in_sheets_straight_ahead_and_aslant() -> None:
    """Sheets of 180 x 260 mm: 260 mm straight ahead, and 180 + 260 mm less a join of 40 mm across and up together."""
    paces, start = Paces(SIZES), (0.0, 0.0, 100.0, 100.0)
    assert paces.steps([start], (20.0, 20.0, 50.0, 50.0)) == [0.0]
    assert paces.steps([start], (200.0, 20.0, 230.0, 50.0)) == [pytest.approx(130.0 / 260.0)]
    assert paces.steps([start], (200.0, 220.0, 230.0, 250.0)) == [pytest.approx(280.0 / 400.0)]
    assert paces.gaps([start, (150.0, 0.0, 250.0, 100.0)], (300.0, 0.0, 400.0, 100.0)) == [
        pytest.approx(200.0 / 260.0), pytest.approx(50.0 / 260.0),
    ]  # fmt: skip


@settings(deadline=None, max_examples=60, derandomize=True)
@given(st.lists(st.lists(corners, min_size=1, max_size=6, unique=True), min_size=1, max_size=5), corners)
def test_what_is_known_of_a_piece_is_kept_right_as_it_grows_and_as_another_takes_its_place(pieces, target):
    paces, (aim,) = Paces(SIZES), items([target])
    near, grown = Near(paces.steps), list[Patch]()
    for number, more in enumerate(pieces):
        kept = grown if number % 3 else []
        grown = [*kept, *(patch for patch in items(more) if patch not in kept)]
        near.of(grown)
        assert near.to(aim) == min(paces.steps(grown, aim)) == near.to(aim)


@settings(deadline=None, max_examples=60, derandomize=True)
@given(st.lists(corners, max_size=7, unique=True), st.integers(0, 8))
def test_of_so_many_items_as_sheets_are_needed_at_the_least_no_two_fit_on_one_sheet(lefts, most):
    def together(one: Patch, two: Patch) -> bool:
        wide, high = max(one[2], two[2]) - min(one[0], two[0]), max(one[3], two[3]) - min(one[1], two[1])
        return any(wide <= w and high <= h for w, h in SIZES)

    asked = items(lefts)
    found = least_sheets(asked, SIZES, most)
    apart = [
        size for size in range(len(asked) + 1)
        for some in combinations(asked, size) if not any(together(*pair) for pair in combinations(some, 2))
    ]  # fmt: skip
    assert found <= min(max(apart), most + 1) and (found >= 1 or not asked)
    assert least_sheets(asked, SIZES, len(asked)) == len(asked) or max(apart) < len(asked)
