"""How exactly slanting lines bring sheets together: against a simulation of laying a ruler along them."""

import math
from itertools import product

import numpy as np
import pytest

from templates_gen.job.accuracy import Accuracy
from templates_gen.tiling.covered import ARM, Covered
from templates_gen.tiling.slanting import crossing_match, crossing_sd
from templates_gen.tolerance.advice import advice
from templates_gen.tolerance.expected import expected_error
from templates_gen.tolerance.sources import loose_joins
from templates_gen.tolerance.statement import check_words
from templates_gen.tolerance.taping import blocks
from tests.jobs import paper
from tests.made import UNCUT, made, make, twelve

READING = 0.2  # mm, of a ruler on one end of a line
TIMES = 4000


def laid(pairs: list[float], depth: float, seed: int = 3) -> np.ndarray:
    """Where the upper sheet comes to lie, each time: (across, along, turn), seen from the first pair of lines.

    A hidden strip `depth` mm deep runs along a join; at the places `pairs` along it (mm) two lines cross that slant by
    ±45°.  A ruler is laid along each line: it touches both ends of the piece before the strip and both of the piece
    behind it, every one with an error of its own, and the sheet is moved and turned until all rulers fit as well as can
    be (least squares; every ruler may shift and turn too).
    """
    lines = list(product(pairs, (math.pi / 4, -math.pi / 4)))
    ends = (-depth / 2 - ARM, -depth / 2, depth / 2, depth / 2 + ARM)  # across the join
    rows = np.zeros((4 * len(lines), 3 + 2 * len(lines)))
    for number, (place, steep) in enumerate(lines):
        for which, across in enumerate(ends):
            row = rows[4 * number + which]
            x, y = across, place + across * math.tan(steep)
            row[3 + 2 * number], row[4 + 2 * number] = 1.0, across / math.cos(steep)
            if across > 0.0:  # on the upper sheet: how far its shift and turn bring this point off the line
                off = -math.sin(steep), math.cos(steep)
                row[:3] = off[0], off[1], off[1] * x - off[0] * y
    errors = np.random.default_rng(seed).normal(0.0, READING, (len(rows), TIMES))
    return np.linalg.lstsq(rows, errors, rcond=None)[0][:3]


@pytest.mark.parametrize("depth", [9.0, 15.0])
def test_two_pairs_hold_a_sheet_as_two_marks_matched_to_what_is_worked_out(depth: float) -> None:
    apart = 150.0
    across, along, turn = laid([-apart / 2, apart / 2], depth)
    sd = crossing_sd(READING, depth)
    # the mean of two marks, and a turn of σ√2/d from what they are off across the join
    assert across.std() == pytest.approx(sd / math.sqrt(2), rel=0.08)
    assert along.std() == pytest.approx(sd / math.sqrt(2), rel=0.08)
    assert turn.std() == pytest.approx(math.sqrt(2) * sd / apart, rel=0.2)
    assert turn.std() <= math.sqrt(2) * sd / apart * 1.03  # the pieces' own directions help a little


def test_a_deeper_strip_is_crossed_less_exactly() -> None:
    # 0.2 · √(1 + 2.5²) mm with 15 mm hidden and 10 mm to see on either side: worked out by hand here
    assert crossing_sd(READING, 15.0) == pytest.approx(0.2 * math.sqrt(7.25))
    assert crossing_sd(READING, 9.0) < crossing_sd(READING, 15.0)
    worse = crossing_match(Accuracy(), Covered(13.0, 13.0, 6.0))
    assert [crossing_match(Accuracy(), Covered(*deep, 6.0)) for deep in ((7.0, 13.0), (13.0, 7.0))] == [worse] * 2


@pytest.mark.parametrize("margin", [7.0, 13.0])
def test_one_pair_holds_the_turn_as_marks_do_that_are_as_far_apart_as_worked_out(margin: float) -> None:
    hides = Covered(margin, margin, 6.0)
    turn = laid([0.0], hides.depth(True))[2]
    sd = crossing_sd(READING, hides.depth(True))
    assert turn.std() == pytest.approx(math.sqrt(2) * sd / hides.held(True), rel=0.08)


@pytest.mark.parametrize("name", UNCUT)
def test_joins_without_two_pairs_are_counted_as_loose_and_hold_less(name: str) -> None:
    sheets = made(name).sheets
    hides = sheets.hides
    assert hides is not None and 0 < loose_joins(sheets) < len(sheets.joins)
    marks = {(mark.x, mark.y) for mark in sheets.marks}
    fits = [fit for block in blocks(sheets) for fit in block.inner]
    for fit in fits:
        ends = fit.first[:2], fit.last[:2]
        assert set(ends) <= marks or math.dist(*ends) <= hides.held(True) + 1e-9


def test_what_is_expected_of_sheets_that_are_not_cut_is_worse_and_said() -> None:
    cut, uncut = (make(twelve(paper("a3", trim=trim))) for trim in ("cut", "none"))
    errors = [expected_error(done.plan, done.sheets) for done in (cut, uncut)]
    assert errors[0] is not None and errors[1] is not None and uncut.sheets.hides is not None
    assert errors[1].worst.error > errors[0].worst.error
    assert errors[1].match == crossing_match(Accuracy(), uncut.sheets.hides)
    # hypot(0.4, 0.2 · √7.25) mm, 1.96 of it: worked out by hand here
    assert "slanting lines meet within 1.3 mm; " in " ".join(check_words(errors[1], "mm"))
    assert "slanting" not in " ".join(check_words(errors[0], "mm"))
    assert errors[0].loose == 0 < errors[1].loose


def test_cutting_the_sheets_is_advised_where_their_joins_are_what_errs() -> None:
    done = make(twelve(paper("a3", trim="none")))
    found = expected_error(done.plan, done.sheets)
    assert found is not None
    assert advice(found).name in ("cut", "one-piece")
