"""The measures of an arrangement against worked examples, and what must hold for any."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.plan import plan_wall
from templates_gen.arranging.search.score import equilibrium, mass_distance, score, side_weights, symmetry
from templates_gen.base.geometry import Rect, bounds
from templates_gen.base.record import replace
from templates_gen.documents.options.score_words import lean_words, plan_score, score_words
from tests.jobs import frame, group, job

THREE = [Rect.sized(0, 0, 40, 50), Rect.sized(45, 0, 30, 40), Rect.sized(45, 45, 30, 20)]
UNEVEN = [Rect.sized(0, 0, 20, 30), Rect.sized(25, 10, 10, 10)]
PAIR = [Rect.sized(0, 0, 20, 30), Rect.sized(25, 0, 20, 30)]

sides = st.integers(10, 90)
places = st.integers(0, 300)
rects = st.lists(st.builds(Rect.sized, places, places, sides, sides), min_size=1, max_size=9)


def balance(rects: list[Rect]) -> float:
    across, up = side_weights(rects, bounds(rects))
    return 1 - (abs(across) + abs(up)) / 2


# The formulas of Ngo, Teo and Byrne, Visual Mathematics 2(4), 2000, worked out for these by hand, as is the distance
@pytest.mark.parametrize(
    ("rects", "balanced", "even", "off"),
    [(THREE, 0.7092, 0.9713, 6.953), (UNEVEN, 0.6463, 0.9337, 13.265), (PAIR, 1.0, 1.0, 0.0)],
)
def test_balance_equilibrium_and_centre_of_mass_of_worked_examples(rects, balanced, even, off):
    box = bounds(rects)
    assert balance(rects) == pytest.approx(balanced, abs=5e-5)
    assert equilibrium(rects, box) == pytest.approx(even, abs=5e-5)
    assert mass_distance(rects, box) == pytest.approx(off, abs=5e-4)


def test_the_sides_weights_of_the_worked_example():
    across, down = side_weights(THREE, bounds(THREE))  # there y runs down, so its top is our bottom
    assert across == pytest.approx(-0.1353, abs=5e-5)
    assert down == pytest.approx(-0.4463, abs=5e-5)


def test_symmetry_is_whole_for_four_alike_and_counts_what_differs():
    four = [Rect.sized(x, y, 30, 40) for x in (0, 50) for y in (0, 60)]
    assert symmetry(four, bounds(four)) == pytest.approx(1.0)
    # one of two halves empty: in each of six quantities the sideways difference is 2 of 2, upright 0, radial 2 of 2
    left = [Rect.sized(0, 0, 40, 100)]
    assert symmetry(left, Rect(0, 0, 100, 100)) == pytest.approx(1 - 6 * (2 + 0 + 2) / 36)  # worked out by hand here


@given(rects)
def test_a_mirrored_arrangement_scores_the_same_and_is_heavy_on_the_other_side(rects):
    mirrored = [Rect(-rect.x1, rect.y0, -rect.x0, rect.y1) for rect in rects]
    one, two = score(rects, 20.0, 20.0), score(mirrored, 20.0, 20.0)
    assert (one.balance, one.equilibrium, one.symmetry) == pytest.approx((two.balance, two.equilibrium, two.symmetry))
    assert one.left_heavy == pytest.approx(-two.left_heavy)


@given(rects, st.floats(-500, 500), st.floats(-500, 500), st.floats(0.1, 10))
def test_where_a_group_hangs_and_how_large_it_is_changes_no_measure(rects, dx, dy, scale):
    other = [Rect(*(scale * side for side in (r.x0, r.y0, r.x1, r.y1))).shifted(dx, dy) for r in rects]
    one, two = score(rects, 20.0, 30.0), score(other, 20.0 * scale, 30.0 * scale)
    for name in ("balance", "equilibrium", "symmetry", "filled", "mass_off"):
        assert getattr(one, name) == pytest.approx(getattr(two, name), abs=1e-6)


@given(rects)
def test_measures_stay_between_nothing_and_one(rects):
    found = score(rects, 0.0, 0.0)
    for name in ("total", "balance", "symmetry"):
        assert -1e-9 <= getattr(found, name) <= 1.0 + 1e-9


def test_the_total_is_full_for_equal_frames_in_a_regular_grid_and_less_for_others():
    grid = [Rect.sized(x, y, 400, 320) for x in (0, 464, 928) for y in (0, 384)]
    assert score(grid, 64.0, 64.0).total > 0.97
    assert score([*grid[:5], Rect.sized(1200, 384, 400, 320)], 64.0, 64.0).total < 0.95


def test_the_score_in_words():
    heavy = job(frame("A", 400, 800), frame("B", 400, 600), group=group((("A", "B"),)))
    words = score_words(plan_score(plan_wall(heavy)))
    # A's area times distance is 400 · 800 · 230, B's 400 · 600 · 230: B is lighter by a quarter
    assert "heavy on the left: 25 %" in words
    assert "balanced top and bottom" in words
    assert plan_score(plan_wall(job(frame()))) is None


# limits of 3 and 15 per cent: our own design, no source
@pytest.mark.parametrize(
    ("left", "top", "words"),
    [
        (0.0299, -0.0299, "balanced left and right; balanced top and bottom"),
        (0.0301, -0.0301, "a little heavy on the left: 3 %; a little heavy at the bottom: 3 %"),
        (-0.149, 0.149, "a little heavy on the right: 15 %; a little heavy at the top: 15 %"),
        (-0.151, 0.151, "heavy on the right: 15 %; heavy at the top: 15 %"),
    ],
)
def test_how_much_heavier_a_side_must_be_to_be_worth_a_word(left, top, words):
    assert lean_words(replace(score(PAIR, 5.0, 5.0), left_heavy=left, top_heavy=top)) == words


# filled shares of 0.9 and 0.75: our own design, no source
@pytest.mark.parametrize(
    ("filled", "words"),
    [(0.9, "; compact: it fills 90 %"), (0.899, "; fairly compact"), (0.75, "; fairly compact"), (0.749, "; loose")],
)
def test_how_much_a_group_must_fill_to_be_compact(filled, words):
    assert words in score_words(replace(score(PAIR, 5.0, 5.0), filled=filled))
