"""The two fits against published examples, and against sums small enough to do by hand."""

import math

import pytest

from tests.fits import fit_affine, fit_similarity

# Ghilani & Wolf, Adjustment Computations, example of a two-dimensional conformal coordinate transformation
GIVEN = ((121.622, -128.066), (141.228, 187.718), (175.802, 135.728))
ONTO = ((1049422.40, 51089.20), (1049413.95, 49659.30), (1049244.95, 49884.95))
MORE = {
    (174.148, -120.262): (1049187.361, 51040.629),
    (513.520, -192.130): (1047637.713, 51278.829),
    (754.444, -67.706): (1046582.113, 50656.241),
    (972.788, 120.994): (1045644.713, 49749.336),
}
SQUARE = ((0.0, 0.0), (1.0, 0.0), (0.0, 1.0), (1.0, 1.0))


def test_the_similarity_of_ghilani_and_wolf():
    fit = fit_similarity(GIVEN, ONTO)
    assert (fit.a, fit.b) == (pytest.approx(-4.51249, abs=6e-6), pytest.approx(-0.25371, abs=6e-6))
    assert (fit.tx, fit.ty) == (pytest.approx(1050003.715, abs=6e-4), pytest.approx(50542.131, abs=6e-4))
    assert fit.scale == pytest.approx(4.51962, abs=6e-6)
    # the published residuals are fitted minus observed, and S0 has two degrees of freedom
    wanted = ((0.004, -0.029), (0.101, -0.077), (-0.105, 0.106))
    for found, told in zip(fit.residuals, wanted, strict=True):
        assert found == pytest.approx(told, abs=6e-4)
    assert fit.deviation == pytest.approx(0.140, abs=6e-4)


@pytest.mark.parametrize("point", MORE)
def test_further_points_of_ghilani_and_wolf(point):
    assert fit_similarity(GIVEN, ONTO).at(*point) == pytest.approx(MORE[point], abs=0.002)


def test_the_mirrored_points_of_umeyama_are_turned_and_not_mirrored():
    """Umeyama, IEEE Transactions on Pattern Analysis and Machine Intelligence 13(4), 1991: R, c and t to 3 places."""
    fit = fit_similarity(((0, 0), (1, 0), (0, 2)), ((0, 0), (-1, 0), (0, 2)))
    rotation = (fit.a / fit.scale, -fit.b / fit.scale, fit.b / fit.scale, fit.a / fit.scale)
    assert rotation == pytest.approx((0.832, 0.555, -0.555, 0.832), abs=6e-4)
    assert fit.scale == pytest.approx(0.721, abs=6e-4)
    assert (fit.tx, fit.ty) == pytest.approx((-0.8, 0.4), abs=6e-4)


def test_two_points_leave_nothing_over():
    """Worked out by hand here: (0, 0) to (1, 0) becomes (5, 5) to (5, 7): twice as long, a quarter turn to the left."""
    fit = fit_similarity(((0, 0), (1, 0)), ((5, 5), (5, 7)))
    assert (fit.scale, fit.rotation, fit.deviation) == pytest.approx((2, 90, 0))
    assert fit.at(0, 1) == pytest.approx((3, 5))


def test_an_affine_map_is_found_again():
    points = ((0, 0), (180, 3), (-7, 260), (90, 130), (33, 210))
    a, b, c, d, e, f = 0.987, -0.002, 0.0026, 1.004, 12.5, -300.0
    fit = fit_affine(points, tuple((a * x + c * y + e, b * x + d * y + f) for x, y in points))
    assert (fit.a, fit.b, fit.c, fit.d, fit.e, fit.f) == pytest.approx((a, b, c, d, e, f), abs=1e-12)
    assert fit.deviation < 1e-9


def test_the_residuals_of_an_affine_fit_worked_out_by_hand():
    """Of four corners of a square only (1, -1, -1, 1) is beyond an affine map: an error of 4 in one X is spread over
    all four by 1.  Sum of squares 4, 8 values less 6 unknowns: S0 is the root of 4/2.  Worked out by hand here."""
    moved = [*SQUARE[:3], (1.0 + 4.0, 1.0)]
    fit = fit_affine(SQUARE, moved)
    assert [x for x, _ in fit.residuals] == pytest.approx([-1, 1, 1, -1])
    assert [y for _, y in fit.residuals] == pytest.approx([0] * 4)
    assert fit.deviation == pytest.approx(math.sqrt(2))
    assert fit.at(0.5, 0.5) == pytest.approx((1.5, 0.5))


@pytest.mark.parametrize(
    ("fit", "points", "onto"),
    [
        (fit_similarity, ((1, 1),), ((2, 2),)),
        (fit_similarity, ((1, 1), (1, 1)), ((2, 2), (3, 3))),
        (fit_similarity, ((1, 1), (2, 2)), ((2, 2),)),
        (fit_affine, ((0, 0), (1, 0)), ((0, 0), (1, 0))),
        (fit_affine, ((0, 0), (1, 1), (2, 2), (0.1, 0.1)), SQUARE),
    ],
)
def test_points_that_say_too_little_are_refused(fit, points, onto):
    with pytest.raises(ValueError, match="expected"):
        fit(points, onto)
