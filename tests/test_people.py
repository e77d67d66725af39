"""Where people are, and the building: what each sentence says, by the sources beside it."""

import pytest

from templates_gen.findings.people import use_of
from templates_gen.holding.weightclasses import weight_class
from tests.finding_cases_behind import POUND, deep, feature, metric, on, over, shaken
from tests.jobs import frame, named


def test_each_unit_is_held_to_the_figures_that_the_standard_prints_for_it():
    # 2010 ADA Standards, 307.2: 4 in (100 mm), 27 in (685 mm), 80 in (2030 mm)
    (inches,), (millimetres,) = named("sticks-out", deep(4.5, 45.0)), named("sticks-out", metric(101.0, 1000.0))
    assert all(words in inches.text for words in ("4 in", "27 in", "80 in"))
    assert all(words in millimetres.text for words in ("100 mm", "685 mm", "2030 mm"))
    assert inches.source == millimetres.source == "2010 ADA Standards, 307.2"


def test_all_frames_that_stick_out_make_one_finding():
    frames = tuple(frame(name, depth=120.0) for name in "ABCDEFGHIJ")
    (found,) = named("sticks-out", on(frames=frames, public=True))
    assert found.about == tuple("ABCDEFGHIJ")
    assert "Frames A, B, C, D, E, F, G and 3 more" in found.text


# our own list of words; furniture whose use is given is what is given
USES = [
    ("sofa", "", "seat"), ("Reading Bench", "", "seat"), ("child's bed", "", "bed"), ("sofa-bed", "", "bed"),
    ("crib", "", "cot"), ("cot", "", "cot"), ("workbench", "", ""), ("counter", "", ""), ("bedding box", "", ""),
    ("bench", "other", "other"), ("pallets", "bed", "bed"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "given", "use"), USES)
def test_what_people_do_on_a_piece_of_furniture(name, given, use):
    assert use_of(feature("furniture", 0.0, 0.0, name=name, use=given)) == use


def test_a_radiator_called_bench_is_no_seat():
    assert use_of(feature("radiator", 0.0, 0.0, name="bench")) == ""


@pytest.mark.parametrize(
    ("more", "level"),
    [
        # FEMA, April 2008; Earthquake Country Alliance, step 1: only soft art over beds or sofas, and 20 lb
        ({"glazing": "glass", "weight": 1.0}, "warn"), ({"glazing": "acrylic", "weight": 1.0}, "warn"),
        ({"glazing": "none", "weight": 20 * POUND}, "warn"), ({"weight": 20 * POUND}, "warn"), ({}, "note"),
        ({"glazing": "none"}, "note"), ({"weight": 1.0}, "note"), ({"glazing": "none", "weight": 1.0}, ""),
    ],
)  # fmt: skip
def test_what_is_known_of_a_frame_over_a_sofa_decides_how_it_is_said(more, level):
    assert [found.level for found in named("over-bed", over("sofa", **more))] == ([level] if level else [])


def test_furniture_whose_name_does_not_tell_is_named_with_its_use():
    (found,) = named("over-bed", over("pallets", use="bed", glazing="glass"))
    assert "Over the pallets (bed): frame A." in found.text


# Earthquake Country Alliance, step 1: under 20 lb, to 50 lb, over 50 lb
CLASSES = [(19.99, "light"), (20.0, "medium"), (22.0, "medium"), (50.0, "medium"), (50.01, "heavy"), (51.0, "heavy")]


@pytest.mark.parametrize(("pounds", "expected"), CLASSES)
def test_the_classes_of_weight(pounds, expected):
    assert weight_class(pounds * POUND) == expected
    assert weight_class(None) == ""


# FEMA, April 2008, and Earthquake Country Alliance, step 1
ADVICE = [(19.0, "putty"), (22.0, "closed hook"), (22.0, "into a stud"), (51.0, "professional"), (None, "weigh first")]


@pytest.mark.parametrize(("pounds", "words"), ADVICE)
def test_the_advice_where_the_earth_may_shake(pounds, words):
    (found,) = named("earthquake", shaken(pounds))
    assert words in found.text
    assert found.source.startswith("Earthquake Country Alliance, step 1")


def test_frames_of_one_class_of_weight_make_one_finding():
    weights = {"A": 1.0, "B": 2.0, "C": 15.0, "D": 30.0}  # kg; 20 lb is 9.07, 50 lb is 22.68
    frames = tuple(frame(name, weight=kg) for name, kg in weights.items())
    found = named("earthquake", on(frames=frames, earthquake=True))
    assert [item.about for item in found] == [("A", "B"), ("C",), ("D",)]


# 40 CFR 745: before 1978; 16 CFR 1304 and home-safety texts: before about 1980
@pytest.mark.parametrize(("built", "lead", "asbestos"), [(1965, 1, 1), (1977, 1, 1), (1978, 0, 1), (1979, 0, 1)])
def test_what_old_paint_and_plaster_may_hold(built, lead, asbestos):
    (found,) = named("old-house", on(built=built))
    assert ("lead" in found.text, "asbestos" in found.text) == (lead, asbestos)
    assert ("745" in found.source) == lead and str(built) in found.text


def test_a_ladder_is_asked_for_once():
    frames = (frame("A"), frame("B", drop=None), frame("C"))
    (found,) = named("ladder", on(frames=frames, centre=1900.0))
    assert found.about == ("A", "B", "C")
    assert "three points of contact" in found.text and "1926.1053(b)(13)" in found.source
