"""Which sheets lie alike on two tapings: those of which everything is the same that their errors depend on."""

from __future__ import annotations

import pytest

from templates_gen.base.record import replace
from templates_gen.tolerance.strung import Pull, Taped
from templates_gen.tolerance.taping import Block, Fit
from templates_gen.tolerance.worst import Likeness

LYING = [False, False, True, False]


def fit(x: float, under: int, over: int, length: float = 200.0) -> Fit:
    """Two marks above each other."""
    return Fit((x, 0.0, under, over), (x, length, under, over))


FIRST = Block((0, 1), (fit(180.0, 0, 1),), None, 0)
SECOND = Block((2,), (), Fit((180.0, 260.0, 0, 2), (360.0, 260.0, 1, 2)), 0)
THIRD = Block((3,), (), fit(440.0, 2, 3), 0)


def taped(
    *blocks: Block, inner: dict[int, Pull] | None = None, straight: dict[int, tuple[int, Pull]] | None = None
) -> Taped:
    """Blocks of one piece that counts from its first sheet."""
    piece_of = {sheet: block.piece for block in blocks for sheet in block.sheets}
    block_of = {sheet: at for at, block in enumerate(blocks) for sheet in block.sheets}
    return Taped(blocks, straight or {}, inner or {}, {0: blocks[0].sheets[0]}, piece_of, block_of)


USUAL = taped(FIRST, SECOND, THIRD)


@pytest.mark.parametrize(
    ("other", "lying", "alike"),
    [
        (taped(FIRST, SECOND, replace(THIRD, laid=fit(441.0, 2, 3))), LYING, [0, 1, 2]),
        (taped(FIRST, SECOND, replace(THIRD, laid=fit(440.0, 2, 3, 210.0))), LYING, [0, 1, 2]),
        (taped(FIRST, replace(SECOND, laid=Fit((180.0, 260.0, 0, 2), (350.0, 260.0, 1, 2))), THIRD), LYING, [0, 1]),
        (taped(FIRST, replace(SECOND, laid=Fit((180.0, 260.0, 0, 2), (360.0, 260.0, 0, 2))), THIRD), LYING, [0, 1]),
        (taped(replace(FIRST, inner=(fit(180.0, 0, 1, 150.0),)), SECOND, THIRD), LYING, []),
        (USUAL, [False, False, False, False], [0, 1]),
        (USUAL, [False, True, True, False], []),
        (taped(FIRST, SECOND, THIRD, inner={1: Pull(0.5, 0.01)}), LYING, []),
        (taped(FIRST, SECOND, THIRD, straight={1: (2, Pull(0.5, 0.01))}), LYING, [0, 1]),
        (taped(FIRST, SECOND, replace(THIRD, piece=1)), LYING, [0, 1, 2]),
    ],
)
def test_a_sheet_is_alike_where_it_and_all_that_it_is_laid_on_are_taped_by_the_same_marks(other, lying, alike):
    likeness = Likeness()
    usual = likeness.of(USUAL, LYING)
    assert usual == likeness.of(USUAL, LYING) and len(set(usual.values())) == len(usual)
    found = likeness.of(other, lying)
    assert [sheet for sheet in usual if found[sheet] == usual[sheet]] == alike


def test_sheets_are_alike_whatever_their_numbers_are():
    """The first block's sheets numbered from 5 on, and nothing else there."""
    likeness = Likeness()
    moved = likeness.of(taped(Block((5, 6), (fit(180.0, 5, 6),), None, 0)), [False] * 7)
    usual = likeness.of(USUAL, LYING)
    assert (moved[5], moved[6]) == (usual[0], usual[1])
