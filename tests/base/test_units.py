"""Lengths and weights: every listed way of writing them, and back."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.base.units import (
    exact,
    exact_mass,
    inches,
    parse_length,
    parse_mass,
    parse_offset,
    show,
    show_both,
    show_mass,
)

# 1 in = 25.4 mm exactly (international yard and pound agreement, 1959)
WAYS = [
    ("14 3/8", "in", 14.375 * 25.4),
    ("14-3/8", "in", 14.375 * 25.4),
    (14.375, "in", 14.375 * 25.4),
    ("14.375", "in", 14.375 * 25.4),
    ("1' 2 3/8\"", "mm", 14.375 * 25.4),
    ("1'2-3/8\"", "mm", 14.375 * 25.4),
    ("5 ft 2 in", "cm", 62 * 25.4),
    ("5' 2", "cm", 62 * 25.4),
    ("5 feet", "cm", 60 * 25.4),
    ("36.5 cm", "in", 365.0),
    ("365 mm", "in", 365.0),
    ("365mm", "in", 365.0),
    ("0.365 m", "in", 365.0),
    ("0,365 m", "in", 365.0),
    ("36,5 cm", "in", 365.0),
    ("14½", "in", 14.5 * 25.4),
    ("14 ½ in", "mm", 14.5 * 25.4),
    ("⅜″", "mm", 0.375 * 25.4),
    ("1’ 2 3⁄8”", "mm", 14.375 * 25.4),
    ("3/8", "in", 0.375 * 25.4),
    ("14\u00a03/8 in", "mm", 14.375 * 25.4),
    ("2''", "mm", 50.8),
    (365, "mm", 365.0),
    (36.5, "cm", 365.0),
    (0, "mm", 0.0),
    (".5", "in", 12.7),
    ("14 IN", "mm", 14 * 25.4),
]


@pytest.mark.parametrize(("written", "unit", "mm"), WAYS)
def test_every_way_of_writing_a_length(written, unit, mm):
    assert parse_length(written, unit) == pytest.approx(mm, abs=1e-9)


@pytest.mark.parametrize(
    "written",
    ["", " ", "-3", "−3 mm", "abc", "14 3/0", "14 9/8", "3/8/2", "14 38", "1,234 mm", "12 furlongs", "2 in 1 ft",
     "5 mm 3", "nan", "inf", "1e999", "1 2 3", "'", "/", "1//2", True, None, [1], math.nan, math.inf, 1e300,
     "999999999 m", "3 kg", "12' 77\"", "8 ft 12 in", "9" * 5000, "9" * 400 + "/1", "--3", "12 1/2 1/2"],
)  # fmt: skip
def test_what_is_not_a_size_is_refused_with_an_example(written):
    with pytest.raises(ValueError, match=r"expected|write it"):
        parse_length(written, "in")


@pytest.mark.parametrize("written", ["5/8", "2 5/8", "⅜", "1-3/16"])
def test_a_bare_fraction_in_a_metric_job_is_likely_inches_and_refused(written):
    for unit in ("mm", "cm"):
        with pytest.raises(ValueError, match=f"may be inches or {unit}: write the unit"):
            parse_length(written, unit)
        assert parse_length(f"{written} {unit}", unit) > 0
    assert parse_length("2 1/2", "cm") == parse_length("2½", "cm") == 25.0


def test_an_offset_may_be_negative_as_a_whole():
    assert parse_offset("-14 3/8", "in") == pytest.approx(-14.375 * 25.4)
    assert parse_offset(-10, "cm") == -100.0


@given(st.integers(min_value=0, max_value=16 * 2000))
def test_shown_sixteenths_read_back_exactly(sixteenths):
    mm = sixteenths / 16 * 25.4
    assert parse_length(show(mm, "in"), "mm") == pytest.approx(mm, abs=1e-9)
    assert parse_length(inches(mm), "in") == pytest.approx(mm, abs=1e-9)


@given(st.floats(min_value=0.1, max_value=10_000), st.sampled_from(["in", "cm", "mm"]))
def test_an_exact_length_reads_back_finer_than_anyone_measures(mm, unit):
    """Nine places behind the point: half of the last is at most 25.4 x 5e-10 = 1.3e-8 mm, worked out by hand here."""
    text = exact(mm, unit)
    assert text.endswith(f" {unit}") and parse_length(text, "mm") == pytest.approx(mm, abs=1.3e-8)


@given(st.floats(min_value=-2e5, max_value=2e5), st.sampled_from(["in", "cm", "mm"]))
def test_whatever_is_written_is_read_again(mm, unit):
    """Every float as large as a wall may be (`units.LONGEST`), the tiniest too, is written as a reader knows it."""
    text = exact(mm, unit)
    assert parse_offset(text, "mm") == pytest.approx(mm, abs=1.3e-8)
    assert "e" not in text and not text.startswith("-0 ")


@pytest.mark.parametrize("left_over", [2.2737367544323206e-13, -8.9517195056e-15, 5e-324, -0.0, 1.2e-8])
def test_what_a_sum_leaves_over_is_nothing(left_over):
    """2**-42 and others that sums of a wall's lengths left, worked out by hand; 1.2e-8 mm is under half a billionth
    of an inch."""
    assert exact(left_over, "in") == "0 in"
    assert exact_mass(left_over, "in") == ("0 lb" if left_over < 1e-9 else "0.000000026 lb")


@given(st.floats(min_value=0.01, max_value=500), st.sampled_from(["in", "mm"]))
def test_an_exact_weight_reads_back(kg, unit):
    assert parse_mass(exact_mass(kg, unit)) == pytest.approx(kg, rel=1e-7)


@given(st.floats(min_value=-50_000, max_value=50_000), st.sampled_from(["in", "cm", "mm"]))
def test_a_shown_length_reads_back_within_half_a_step(mm, unit):
    half = {"in": 25.4 / 32, "cm": 0.5, "mm": 0.5}[unit]
    assert abs(parse_offset(show(mm, unit), unit) - mm) <= half + 1e-9


def test_a_shown_length_changes_half_way_between_two_steps():
    for share, shown in ((0.49, ("14 in", "14.0 cm", "14 mm")), (0.51, ("14 1/16 in", "14.1 cm", "15 mm"))):
        assert (show((14 + share / 16) * 25.4, "in"), show(140 + share, "cm"), show(14 + share, "mm")) == shown


@given(st.integers(0, 9_000), st.floats(0, 9_000), st.sampled_from(["in", "cm", "mm"]))
def test_a_length_half_way_between_two_steps_is_shown_alike_wherever_it_lies(step, start, unit):
    """A frame's width, and that of its rectangle on the wall, are one number; a half goes up (our own rule)."""
    width = (step + 0.5) * {"in": 25.4 / 16, "cm": 1.0, "mm": 1.0}[unit]
    assert show((start + width) - start, unit) == show(width, unit)


@given(st.text(max_size=30))
def test_any_text_gives_a_length_or_a_value_error(text):
    try:
        assert 0 <= parse_length(text, "in") < math.inf
    except ValueError as error:
        assert "found" in str(error)


def test_fractions_are_reduced_and_zero_has_no_sign():
    assert inches(9.525) == "3/8"
    assert inches(-9.525) == "-3/8"
    assert inches(-0.1) == "0"
    assert show(-0.2, "mm") == "0 mm"
    assert show(365, "cm") == "36.5 cm"
    assert show_both(1447.8, "in") == "57 in · 1448 mm"
    assert show_both(1447.8, "mm") == "1448 mm · 57 in"


def test_weights():
    # the pound is 0.45359237 kg exactly (international yard and pound agreement, 1959)
    assert parse_mass("4.2 lb") == pytest.approx(4.2 * 0.45359237)
    assert parse_mass("4 lb 8 oz") == pytest.approx(4.5 * 0.45359237)
    assert parse_mass("1,9 kg") == pytest.approx(1.9)
    assert parse_mass("850 g") == pytest.approx(0.85)
    assert show_mass(1.9, "mm") == "1.9 kg"
    assert show_mass(0.45359237, "in") == "1.0 lb"


@pytest.mark.parametrize(
    "written", ["4", 4, "4 mm", "", "heavy", "-2 kg", "99999 kg", "2 oz 1 lb", "4 lb 16 oz", "1,234 kg"]
)
def test_what_is_not_a_weight_is_refused(written):
    with pytest.raises(ValueError, match=r"expected|write it"):
        parse_mass(written)


@pytest.mark.parametrize(
    ("text", "words"), [("12' 77\"", "12 in behind the feet"), ("4 lb 16 oz", "16 oz behind the pounds")]
)
def test_too_many_of_the_smaller_unit_are_refused_in_words(text, words):
    with pytest.raises(ValueError, match=f"expected fewer than {words}"):
        parse_mass(text) if "lb" in text else parse_length(text, "in")
