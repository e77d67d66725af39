"""What the job should say of a frame that was put right: so that the next paper has the nail where it is now."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.record import replace
from templates_gen.documents.correcting import correct
from templates_gen.documents.correcting.afterwards import afterwards, afterwards_words
from templates_gen.job.model import Fixing, Hanger
from tests.documents.test_correct import STEPS, Case, corrected
from tests.documents.test_holes import done, hung
from tests.hangings import on_one_hook, on_two_points, swinging

OFF = st.floats(min_value=-30.0, max_value=30.0)
RINGS = {"ring_separation": 320.0, "ring_depth": 150.0}
PAIR = {"left": 60.0, "right": 70.0}

HANGERS = {
    "wire": (Hanger(kind="wire"), Fixing()),
    "wire, rings known": (Hanger(kind="wire", **RINGS), Fixing(kind="hook", below=20.0)),
    "two hooks": (Hanger(kind="wire", apart=100.0, **RINGS), Fixing(kind="hook", below=20.0)),
    "two hooks, both drops": (Hanger(kind="wire", apart=100.0, drop_at_two=95.0), Fixing(kind="hook", below=20.0)),
    "sawtooth": (Hanger(kind="sawtooth"), Fixing()),
    "rings": (Hanger(kind="rings", **PAIR), Fixing(kind="hook", below=20.0)),
    "rings, each its own": (Hanger(kind="rings", **PAIR, drop_left=80.0, drop_right=84.0), Fixing()),
    "plates": (Hanger(kind="plates", **PAIR), Fixing(kind="screw", diameter=4.0)),
    "cleat": (Hanger(kind="cleat", **PAIR, screw_below=20.0), Fixing(kind="screw", diameter=4.5)),
}


def told(frame, measures, fixing=None):
    """The frame of a job that says so."""
    measures = dict(measures)
    drop = measures.pop("drop", frame.drop)
    return replace(frame, drop=drop, hanger=replace(frame.hanger, **measures), fixing=fixing or frame.fixing)


@pytest.mark.parametrize("kind", HANGERS)
@settings(max_examples=30)
@given(OFF, st.one_of(st.just(0.0), OFF))
def test_the_next_paper_has_the_nails_where_they_are_now_if_the_old_ones_were_on_their_marks(kind, up, right):
    hanger, fixing = HANGERS[kind]
    plan = hung(hanger, fixing, drop=25.0 if kind == "sawtooth" else 80.0)
    cured = done(plan, up, right)
    after = afterwards(cured, "mm")
    if cured.apart is not None and after.on_mark == after.off_mark:
        return  # no wire of that drop hangs on these nails: they were not on their marks
    old = {nail.name: (nail.x, nail.bears_y) for nail in plan.nails}
    now = dict(old)
    if cured.apart is not None:
        now = {}
    for move in cured.correction.moves:
        now[move.nail] = (old[move.old][0] + move.right, old[move.old][1] + move.up)
    job = replace(plan.job, frames=(told(plan.job.frames[0], after.on_mark, after.fixing),))
    aside = kind.startswith(("rings", "plates"))  # wherever else the frame is off to the side, its nail was
    for nail in plan_wall(job).nails:
        assert nail.bears_y == pytest.approx(now[nail.name][1], abs=0.51)  # what a tape in mm does not show
        if aside:
            assert nail.x == pytest.approx(now[nail.name][0], abs=0.51)


@pytest.mark.parametrize("slip", [-9.0, -4.0, 4.0, 9.0])
@pytest.mark.parametrize("kind", ["wire", "sawtooth", "rings", "plates"])
@pytest.mark.parametrize("unit", STEPS)
def test_a_drop_that_was_measured_wrong_is_the_real_one_afterwards(kind, unit, slip, tmp_path):
    """The nails are on their marks, and the frame bears `slip` mm farther below its top edge than was measured."""
    case = Case(kind, unit, 3)
    points = [point - complex(0, slip) for point in case.points]
    if kind == "wire":
        wire = case.wire
        frame = on_one_hook(case.height, wire.separation, wire.depth + slip, wire.length, 0.0, case.seats[0])
    elif kind == "sawtooth":
        frame = swinging(complex(0, -case.height / 2), points[0], case.seats[0])
    else:
        frame = on_two_points((points[0], points[1]), (case.seats[0], case.seats[1]))
    (cured,) = correct(case.plan, case.read(frame, tmp_path))
    after = afterwards(cured, unit)
    rewired = cured.wire.longer if cured.wire else 0.0
    real = told(case.plan.job.frames[0], after.on_mark)
    bears = [-point.imag + rewired for point in points]
    hanger = real.hanger
    drops = [real.drop] if kind in ("wire", "sawtooth") else [hanger.drop_left, hanger.drop_right]
    assert drops == pytest.approx(bears, abs=STEPS[unit] + 0.1)  # read to half a step, and said to half a step
    assert after.off_mark == {} or kind == "wire"


@pytest.mark.parametrize("seed", range(8))
@pytest.mark.parametrize("kind", ["wire", "wire, rings known"])
def test_a_wire_that_makes_up_for_a_nail_driven_wrong_has_another_drop_than_the_job_says(kind, seed, tmp_path):
    case = Case(kind, "mm", seed)
    seats = [case.seats[0] + complex(0, 6.0)]
    (cured,) = correct(case.plan, case.read(case.hung(seats, 0.0), tmp_path))
    assert cured.wire is not None and not cured.correction.moves
    now = corrected(case, cured, seats, 0.0, rounded=False)
    after = afterwards(cured, "mm")
    assert after.on_mark == {}
    assert after.off_mark["drop"] == pytest.approx(now.top.imag - seats[0].imag, abs=0.6)


def words(hanger: Hanger, up: float, right: float, fixing: Fixing | None = None, **more) -> list[str]:
    return list(afterwards_words(done(hung(hanger, fixing, **more), up, right), "mm"))


def test_who_drove_the_nail_is_asked_whether_it_was_on_its_mark():
    assert words(Hanger(kind="wire"), -30.0, 0.0) == [
        "For the next paper: was the old nail on its mark? Then put into the job: drop 50 mm. If it was not, the job "
        "is right as it is."
    ]
    assert words(Hanger(kind="wire"), 4.0, 0.0) == [
        "For the next paper: was the old nail on its mark? Then the job is right as it is. If it was not, put into the "
        "job: drop 76 mm."
    ]
    assert words(Hanger(kind="rings", **PAIR), -30.0, 0.0, Fixing(kind="hook", below=20.0)) == [
        "For the next paper: were the old hooks on their marks? Then put into the job: left drop (facing) 50 mm, right "
        "drop (facing) 50 mm. If they were not, the job is right as it is."
    ]
    assert words(Hanger(kind="wire"), 0.0, 0.0) == []


def test_another_hook_goes_into_the_job_whatever_was_wrong():
    told = words(Hanger(kind="rings", **PAIR), -5.0, 0.0, Fixing(kind="hook", below=20.0))
    assert told == [
        "For the next paper: put the new hook into the job. Were the old hooks on their marks? Then put into the job: "
        "left drop (facing) 75 mm, right drop (facing) 75 mm. If they were not, the job is right as it is."
    ]
