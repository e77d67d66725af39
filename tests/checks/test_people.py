"""Where people are, and the building: what each sentence says, by the sources beside it."""

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.checks import find
from templates_gen.checks.over import use_of
from templates_gen.checks.untold import not_checked, not_checked_words
from templates_gen.documents.instructions.first_pages import first_pages
from templates_gen.drawing.items import Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.hanging.weight_classes import weight_class
from templates_gen.job.model import Hanger
from templates_gen.tolerance.holding import plan_sheets
from tests.finding_cases_behind import POUND, deep, feature, metric, on, over, shaken
from tests.finding_cases_stairs import climbing
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
    ("crib", "", "cot"), ("cot", "", "cot"), ("workbench", "", "other"), ("counter", "", "other"),
    ("bedding box", "", "other"), ("bench", "other", "other"), ("pallets", "bed", "bed"), ("pallets", "", ""),
    # what people call them
    ("divan", "", "bed"), ("ottoman", "", "seat"), ("chaise longue", "", "seat"), ("corner banquette", "", "seat"),
    ("changing table", "", "cot"), ("mattress", "", "bed"), ("Moses basket", "", "cot"), ("play-pen", "", "cot"),
    ("hammock", "", "bed"), ("bunk beds", "", "bed"), ("work benches", "", "other"), ("sofa table", "", "other"),
    ("table", "", "other"), ("window seat", "", "seat"),
    # German, with its compounds, plurals and marks
    ("Sofa", "", "seat"), ("Ledersessel", "", "seat"), ("Stühle", "", "seat"), ("Eckbank", "", "seat"),
    ("Doppelbett", "", "bed"), ("Hängematte", "", "bed"), ("Wickelkommode", "", "cot"), ("Laufstall", "", "cot"),
    ("Werkbank", "", "other"), ("Schrank", "", "other"),
    # French and Spanish
    ("canapé", "", "seat"), ("fauteuils", "", "seat"), ("lit", "", "bed"), ("lit de bébé", "", "cot"),
    ("table à langer", "", "cot"), ("berceau", "", "cot"), ("armoire", "", "other"), ("sofá", "", "seat"),
    ("sillones", "", "seat"), ("cama", "", "bed"), ("colchón", "", "bed"), ("cuna", "", "cot"), ("mesa", "", "other"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "given", "use"), USES)
def test_what_people_do_on_a_piece_of_furniture(name, given, use):
    assert use_of(feature("furniture", 0.0, 0.0, name=name, use=given)) == use


def test_a_radiator_called_bench_is_no_seat():
    assert use_of(feature("radiator", 0.0, 0.0, name="bench")) == ""


@pytest.mark.parametrize(
    ("more", "level"),
    [
        # FEMA, April 2008; Earthquake Country Alliance, step 1: only soft art over beds or sofas, and 20 lb; that
        # acrylic is usual elsewhere is common practice
        ({"glazing": "glass", "weight": 1.0}, "warn"), ({"glazing": "acrylic", "weight": 1.0}, "note"),
        ({"glazing": "none", "weight": 20 * POUND}, "warn"), ({"weight": 20 * POUND}, "warn"), ({}, "note"),
        ({"glazing": "none"}, "note"), ({"weight": 1.0}, "note"), ({"glazing": "none", "weight": 1.0}, ""),
    ],
)  # fmt: skip
def test_what_is_known_of_a_frame_over_a_sofa_decides_how_it_is_said(more, level):
    assert [found.level for found in named("over-bed", over("sofa", **more))] == ([level] if level else [])


def test_furniture_whose_name_does_not_tell_is_named_with_its_use():
    (found,) = named("over-bed", over("pallets", use="bed", glazing="glass"))
    assert "Over the pallets (bed): frame A." in found.text


def test_what_makes_a_frame_over_a_sofa_usual_is_said_and_which_of_it_is_missing():
    two = Hanger(kind="rings", left=60.0, right=60.0, drop_left=80.0, drop_right=80.0)
    (bare,) = named("over-bed", over("sofa"))
    assert bare.text == (
        "Over the sofa: frame A. Earthquake advice is to hang only soft, light pieces over people. Elsewhere common "
        "practice is: under 20 lb (9.1 kg), acrylic and no glass, two rated fixings each, into studs or masonry. Here: "
        "weight not given (A), glazing not given (A), one fixing (A). The makers' ratings and a professional decide."
    )
    assert bare.source == (
        "FEMA, Mount Framed Pictures and Mirrors Securely, April 2008; Earthquake Country Alliance, step 1; the rest "
        "is common practice"
    )
    (good,) = named("over-bed", over("sofa", glazing="acrylic", weight=2.0, hanger=two))
    assert "Here:" not in good.text and "hang only soft, light pieces" in good.text
    (bad,) = named("over-bed", over("sofa", glazing="glass", weight=12.0, hanger=two))
    assert "Here: too heavy (A), glass (A). " in bad.text


def test_over_a_sofa_in_earthquake_country_the_advice_is_to_hang_elsewhere():
    (found,) = named("over-bed", over("sofa", {"earthquake": True}, glazing="acrylic", weight=2.0))
    assert found.level == "warn" and "and others elsewhere" in found.text and "common practice" not in found.sourced


def test_over_a_crib_or_cot_nothing_hangs():
    (found,) = named("over-bed", over("heirloom", use="cot", glazing="none", weight=1.0))
    assert "Over the heirloom (crib or cot): frame A. Hang frames elsewhere" in found.text


# Earthquake Country Alliance, step 1: under 20 lb, to 50 lb, over 50 lb
CLASSES = [(19.99, "light"), (20.0, "medium"), (22.0, "medium"), (50.0, "medium"), (50.01, "heavy"), (51.0, "heavy")]


@pytest.mark.parametrize(("pounds", "expected"), CLASSES)
def test_the_classes_of_weight(pounds, expected):
    assert weight_class(pounds * POUND) == expected
    assert weight_class(None) == ""


# Earthquake Country Alliance, step 1
ADVICE = [
    (19.0, "frame A: one hook each, and all four corners secured with putty or tabs."),
    (22.0, "frame A: a closed-loop hanger screwed into a stud, and all four corners secured."),
    (51.0, "frame A: have a professional hang it."), (None, "frame A: weigh first; under 20 lb (9.1 kg): one hook"),
]  # fmt: skip


@pytest.mark.parametrize(("pounds", "words"), ADVICE)
def test_the_advice_in_earthquake_country(pounds, words):
    (found,) = named("earthquake", shaken(pounds, build="drywall"))
    assert words in found.text and "The local building code decides." in found.text
    assert found.source == "Earthquake Country Alliance, step 1"


def test_two_sources_on_earthquakes_are_two_claims():
    """FEMA (April 2008): long-shanked open eye-hooks, at least 1 to 2 in, into the stud; large pictures."""
    (found,) = named("earthquake-hooks", shaken(22.0, build="drywall"))
    assert "long-shanked open eye-hooks, at least 1 to 2 in (25 to 50 mm) into the stud, and not" in found.text
    assert found.source == "FEMA, Mount Framed Pictures and Mirrors Securely, April 2008"
    assert "closed" not in found.text
    (loop,) = named("earthquake", shaken(22.0, build="drywall"))
    assert "open" not in loop.text and "eye-hook" not in loop.text


@pytest.mark.parametrize("pounds", [19.0, 22.0, 51.0, None])
def test_no_advice_sends_a_screw_into_a_stud_of_a_masonry_wall(pounds):
    texts = [found.text for found in find(plan_wall(shaken(pounds, build="masonry")))]
    assert any("In earthquake country" in text for text in texts)
    assert [text for text in texts if "into a stud" in text or "into the stud" in text] == []
    if pounds == 22.0:
        assert any("Which anchor holds in this masonry" in text for text in texts)


def test_where_studs_are_not_told_they_are_not_taken_for_granted():
    (loop,), (hooks,) = named("earthquake", shaken(22.0)), named("earthquake-hooks", shaken(22.0))
    assert "into a stud if the wall has any" in loop.text and "into the stud if the wall has any" in hooks.text


def test_frames_of_one_class_of_weight_make_one_finding():
    weights = {"A": 1.0, "B": 2.0, "C": 15.0, "D": 30.0}  # kg; 20 lb is 9.07, 50 lb is 22.68
    frames = tuple(frame(name, weight=kg) for name, kg in weights.items())
    found = named("earthquake", on(frames=frames, earthquake=True))
    assert [item.about for item in found] == [("A", "B"), ("C",), ("D",)]


# 40 CFR 745: before 1978; 16 CFR 1304 and home-safety texts: before about 1980
@pytest.mark.parametrize(("built", "lead", "asbestos"), [(1965, 1, 1), (1977, 1, 1), (1978, 0, 1), (1979, 0, 1)])
def test_what_old_paint_and_plaster_may_hold(built, lead, asbestos):
    (found,) = named("old-house", on(built=built, wiring="us"))
    assert ("lead" in found.text, "asbestos" in found.text) == (lead, asbestos)
    assert ("745" in found.source) == lead and "16 CFR 1304" in found.source and str(built) in found.text


# Britain: lead paint sold until 1992; of lead in Germany nothing is said (from memory)
@pytest.mark.parametrize(
    ("wiring", "built", "lead"),
    [("uk", 1991, True), ("uk", 1992, False), ("de", 1960, False), ("none", 1991, True), ("", 1992, False)],
)
def test_no_american_rule_is_cited_for_a_wall_elsewhere(wiring, built, lead):
    (found,) = named("old-house", on(built=built, wiring=wiring))
    assert "CFR" not in found.source and "memory" in found.source
    assert ("lead" in found.text) == lead
    assert "insulating-board partitions" in found.text and "textured coatings" in found.text
    assert ("differs by country" in found.text) == (wiring not in ("uk", "de"))


def test_a_ladder_is_asked_for_once():
    frames = (frame("A"), frame("B", drop=None), frame("C"))
    (found,) = named("ladder", on(frames=frames, centre=1900.0, wiring="us"))
    assert found.about == ("A", "B", "C")
    assert "three points of contact while climbing" in found.text
    assert "two highest" not in found.text and "stand on a stepladder's top or its top step" in found.text
    # the section has the top step and no more
    assert found.source == "top step: OSHA, 29 CFR 1926.1053(b)(13); the rest is common practice"
    (british,) = named("ladder", on(frames=frames, centre=1900.0))
    assert british.source == "common practice"


def test_a_step_stool_is_asked_for_only_where_there_is_no_ladder():
    assert named("step-stool", on(frames=(frame("A"), frame("B")), centre=1750.0)) != []
    low, high = frame("A", height=1500.0), frame("B", height=2200.0)
    both = on(frames=(low, high), centre=1300.0)  # nails at 1969 and 2319 up
    assert named("step-stool", both) == [] and named("ladder", both)[0].about == ("B",)


# 25 kg and 12 kg: over 50 lb (22.68 kg), and over 20 lb (9.07 kg); Earthquake Country Alliance, step 1
@pytest.mark.parametrize("build", ["plaster", "masonry", "timber", ""])
@pytest.mark.parametrize(("kg", "level"), [(25.0, "warn"), (12.0, "note")])
def test_a_heavy_glazed_frame_on_one_bare_nail_is_told_three_things(build, kg, level):
    hung = on(frames=(frame(weight=kg, glazing="glass"),), build=build)
    (nail,), (lift,) = named("bare-nail", hung), named("two-people", hung)
    assert nail.level == "warn" and f"holds in {build or 'this wall'} is not known" in nail.text
    assert f"rated {4 * kg:.1f} kg" in nail.text  # the trade's factor (Paschke, April 2013)
    assert lift.level == level and "Two people lift frame A" in lift.text and "gloves" in lift.text
    assert "professional" in nail.text and "professional" in lift.text
    assert named("rating-unknown", hung) == []


def test_two_bare_nails_share_what_each_would_be_rated_for():
    pair = Hanger(kind="rings", left=60.0, right=60.0, drop_left=80.0, drop_right=80.0)
    (found,) = named("bare-nail", on(frames=(frame(weight=12.0, hanger=pair),), build="drywall"))
    assert (
        "on 2 bare nails" in found.text and "24.0 kg · 52.9 lb or more each" in found.text and "in board" in found.text
    )


def untold(of):
    return not_checked_words(not_checked(plan_wall(of)))


def test_what_the_job_does_not_tell_is_said_once_and_names_the_field():
    silent = on(feature("furniture", 1800.0, 0.0, 400.0, 300.0, name="pallets"), frames=(frame("A"), frame("B")))
    assert untold(silent) == (
        "Not told in the job, so not checked: what holds any frame, and who lifts what (weight); whether people sit or "
        "lie at the pallets (use); lead and asbestos (wall.built); earthquakes (wall.earthquake); what sticks out into "
        "a public path (wall.public)."
    )
    told = {"built": 1965, "earthquake": False, "public": True}
    some = on(frames=(frame("A", weight=2.0), frame("B")), **told)
    assert untold(some) == "Not told in the job, so not checked: what holds B, and who lifts what (weight)."
    assert untold(on(frames=(frame(weight=2.0),), **told)) == ""


@pytest.mark.parametrize(("field", "words"), [("built", "asbestos"), ("earthquake", "earthquakes"), ("public", "path")])
def test_what_is_told_to_be_not_so_is_told(field, words):
    told = {"built": 2010, "earthquake": False, "public": False}
    assert untold(on(frames=(frame(weight=2.0),), **told)) == ""
    assert words in untold(on(frames=(frame(weight=2.0),), **{**told, field: None}))


def test_furniture_that_no_frame_is_over_is_not_asked_about():
    assert "pallets" not in untold(on(feature("furniture", 0.0, 0.0, 400.0, 300.0, name="pallets")))


def test_what_is_not_checked_stands_on_paper_under_what_is_found():
    plan = plan_wall(on(frames=(frame(drop=None),)))
    pages = first_pages(plan, find(plan), plan_sheets(plan, plan.job.paper), None, Lettering()).pages
    words = " ".join(item.text for page in pages for item in page if isinstance(item, Text))
    assert words.count("Not told in the job, so not checked: what holds any frame") == 1
    assert words.index("1 note") < words.index("Not told in the job") < words.index("Schedule")


def test_no_step_stool_is_set_on_stairs():
    """Its nail is 250 - 80 above the middle of the frame: 1820 above the steps, or above the floor and more."""
    over = climbing(1650.0)
    assert named("stair-footing", over) != [] and named("step-stool", over) == []
    before = climbing(1650.0, nosing=2200.1)  # the stair begins right of the frame
    assert named("stair-footing", before) == [] and named("step-stool", before) != []


@pytest.mark.parametrize("centre", [-3000.0, 3000.0])
def test_the_height_of_a_group_that_is_not_on_the_wall_is_no_viewing_height(centre):
    """The wall is 2600 mm high: its rulers end there."""
    found = find(plan_wall(on(centre=centre, public=True)))
    assert {"frame-off-wall"} <= {each.rule for each in found} and "viewing-height" not in {one.rule for one in found}
