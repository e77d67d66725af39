"""What a frame weighs by its parts, and that an estimate is called one."""

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.plan import plan_wall
from templates_gen.checks import find
from templates_gen.documents.schedule.table import as_csv, as_data, as_text
from templates_gen.job.frame_sizes import Mat, Moulding, outside_size
from templates_gen.job.model import Hanger
from templates_gen.job.weights import (
    Parts,
    Sheet,
    estimate,
    mat_weight,
    moulding_weight,
    sheet_weight,
    weight_words,
    wood_density,
)
from tests.jobs import frame, job

# All weights below worked out by hand here, for contents of 16 x 20 in = 406.4 x 508 mm
CONTENTS = (406.4, 508.0)
# a window of 266.7 x 342.9 for an 11 x 14 in print, 1/4 in of each edge covered
MAT = Mat(sides=(82.55, 69.85, 82.55, 69.85))
STICKS = {wood: Moulding(face=30.0, rabbet=6.35, depth=20.0, rabbet_depth=12.0, wood=wood) for wood in
          ("basswood", "red maple", "ash")}  # fmt: skip
OUTSIDE = outside_size(CONTENTS, STICKS["ash"])  # 456.875 x 558.475: G + 3.175 + 2 (30 - 6.35)


def test_the_glazing():
    # 0.206451 m² x 2 mm x 2.5 kg/m² per mm (EN 572-1) = 1.032; x 1.19 for acrylic (makers' data sheets) = 0.491
    assert sheet_weight(Sheet("glass", 2.0), CONTENTS) == pytest.approx(1.032, abs=5e-4)
    assert sheet_weight(Sheet("acrylic", 2.0), CONTENTS) == pytest.approx(0.491, abs=5e-4)
    assert sheet_weight(Sheet("none", 0.0), CONTENTS) == 0.0


def test_the_mat_and_the_backing():
    # (0.206451 - 0.091451) m² x 0.95 kg/m² (from memory) = 0.109; 0.206451 x 0.6 kg/m² (from memory) = 0.124
    assert mat_weight(MAT, CONTENTS) == pytest.approx(0.109, abs=5e-4)
    assert sheet_weight(Sheet("foam board", 5.0), CONTENTS) == pytest.approx(0.124, abs=5e-4)


# 0.206451 m² x the thickness x 120, 680, 950 and 720 kg/m³ (from memory: foam board 0.6 kg/m² at 5 mm, mat board 0.95
# kg/m² at 1.4 mm, hardboard 900 to 1000, MDF 600 to 800)
@pytest.mark.parametrize(
    ("kind", "thick", "weight"),
    [("foam board", 10.0, 0.2477), ("mat board", 1.4, 0.1965), ("hardboard", 3.0, 0.5884), ("mdf", 3.0, 0.4459)],
)
def test_every_backing(kind, thick, weight):
    assert sheet_weight(Sheet(kind, thick), CONTENTS) == pytest.approx(weight, abs=1e-4)


@pytest.mark.parametrize(("wood", "weight"), [("basswood", 0.415), ("red maple", 0.605), ("ash", 0.673)])
def test_the_moulding(wood, weight):
    # (30 x 20 - 6.35 x 12 = 523.8 mm²) x (2 (456.875 + 558.475) - 4 x 30 = 1910.7 mm) x specific gravity (as
    # below: .37, .54, .60) x 1120 kg/m³
    assert moulding_weight(STICKS[wood], OUTSIDE, 20.0, 12.0) == pytest.approx(weight, abs=5e-4)


# Specific gravity at 12 % (USDA Forest Service, Forest Inventory and Analysis database, table REF_SPECIES, column
# WOOD_SPGR_MC12VOL_DRYWT, public copy); x 1.12, for the moisture is 12 % of the oven-dry mass
@pytest.mark.parametrize(
    ("wood", "gravity"),
    [
        ("alder", 0.41), ("ash", 0.60), ("basswood", 0.37), ("cherry", 0.50), ("aspen", 0.38), ("red maple", 0.54),
        ("birch", 0.62), ("douglas fir", 0.48), ("hemlock", 0.45), ("spruce", 0.35), ("pine", 0.40), ("oak", 0.63),
        ("poplar", 0.42), ("sugar maple", 0.63), ("walnut", 0.55),
    ],
)  # fmt: skip
def test_a_wood_in_a_room_is_heavier_than_its_specific_gravity(wood, gravity):
    assert wood_density(wood) == pytest.approx(gravity * 1120)


def parts(wood: str = "ash", glazing: str = "glass") -> Parts:
    return Parts(mat=MAT, moulding=STICKS[wood], glazing=Sheet(glazing, 2.0), backing=Sheet("foam board", 5.0))


@pytest.mark.parametrize(
    ("wood", "glass", "acrylic"), [("basswood", 1.68, 1.14), ("red maple", 1.87, 1.33), ("ash", 1.94, 1.40)]
)
def test_the_whole(wood, glass, acrylic):
    # the sums of the parts above
    for glazing, weight in (("glass", glass), ("acrylic", acrylic)):
        found = estimate(parts(wood, glazing), OUTSIDE, None)
        assert found.weight == pytest.approx(weight, abs=5e-3)
        assert found.lacking == ()


def without(**more: object) -> Parts:
    whole = {"mat": None, "moulding": STICKS["ash"], "glazing": Sheet("glass", 2.0), "backing": Sheet("none", 0.0)}
    return Parts(**whole | more)


@pytest.mark.parametrize(
    ("some", "lacking"),
    [
        (without(glazing=None), ("glazing",)),
        (without(backing=None), ("backing",)),
        (without(moulding=None), ("moulding.face", "moulding.wood", "moulding.depth")),
        (without(moulding=Moulding(face=30.0, depth=20.0)), ("moulding.wood",)),
        (without(moulding=Moulding(face=30.0, wood="ash")), ("moulding.depth",)),
        (without(moulding=Moulding(face=30.0), glazing=None, backing=None), ()),  # nobody asked for a weight
        (Parts(), ()),
    ],
)
def test_what_is_left_out_would_make_it_too_light_so_it_is_not_estimated(some, lacking):
    found = estimate(some, OUTSIDE, None)
    assert (found.weight, found.lacking) == (None, lacking)


def test_the_frames_depth_stands_in_for_its_mouldings():
    thin, stick = Moulding(face=30.0, wood="ash", rabbet_depth=12.0), STICKS["ash"]
    one, two = (estimate(without(moulding=one), OUTSIDE, 20.0).weight for one in (thin, stick))
    assert one == pytest.approx(two)


def test_a_rabbet_is_taken_to_be_an_eighth_of_an_inch_deeper_than_its_contents():
    # 2 glass + 1.4 mat + 5 foam board + 3.175 = 11.575 mm (common practice of framers): worked out by hand here
    told = Moulding(face=30.0, depth=20.0, wood="ash", rabbet_depth=11.575)
    untold = Moulding(face=30.0, depth=20.0, wood="ash")
    one, two = (
        estimate(Parts(mat=MAT, moulding=stick, glazing=Sheet("glass", 2.0), backing=Sheet("foam board", 5.0)),
                 OUTSIDE, None).weight for stick in (told, untold)
    )  # fmt: skip
    assert one == pytest.approx(two, abs=1e-12)


def test_mdf_is_no_wood_and_keeps_its_own_density():
    assert wood_density("mdf") == 720.0  # kg/m³, 600 to 800 from memory


@given(st.floats(min_value=0.5, max_value=10.0), st.floats(min_value=100.0, max_value=2000.0))
def test_a_larger_frame_or_thicker_glass_is_never_lighter(thick, side):
    def weight(glass: float, outside: float) -> float:
        return estimate(without(glazing=Sheet("glass", glass)), (outside, outside), None).weight or 0.0

    assert 0 < weight(thick, side) < weight(thick + 0.1, side) < weight(thick + 0.1, side + 1.0)


def test_an_estimate_is_called_one_wherever_a_weight_is_shown():
    guessed, weighed = frame("A", weight=1.94, estimated=True), frame("B", weight=1.94)
    plan = plan_wall(job(guessed, weighed, frame("C")))
    one, two, three = as_data(plan, ())["frames"]
    assert [item["weight_is"] for item in (one, two, three)] == ["estimated", "given", "unknown"]
    assert [item["weight_kg"] for item in (one, two, three)] == [1.94, 1.94, None]
    # once beside the frame, once for its nail; 1.94 / 0.45359237 = 4.28, 1.94 x 9.80665 = 19.0: worked out by hand here
    assert as_text(plan).count("est. 1.9 kg · 4.3 lb") == 2 and as_text(plan).count("est.") == 2
    assert as_text(plan).count("carries 1.9 kg · 4.3 lb (19 N)") == 1
    assert [row["weight_is"] for row in csv.DictReader(io.StringIO(as_csv(plan)))] == ["estimated", "given", "unknown"]
    assert weight_words(frame("C"), "mm") == ""
    # 1.94 / 0.45359237 = 4.28: worked out by hand here
    assert weight_words(guessed, "in") == "est. 4.3 lb · 1.9 kg"


def test_a_force_that_comes_of_an_estimate_is_called_one_too():
    flat = Hanger(kind="wire", ring_separation=300.0, ring_depth=100.0)  # rises 10 mm only
    for estimated in (True, False):
        hung = frame(drop=90.0, weight=2.0, estimated=estimated, hanger=flat)
        (text,) = [found.text for found in find(plan_wall(job(hung))) if found.rule == "wire-flat"]
        assert ("(est. " in text) == estimated and " N, as if" in text
