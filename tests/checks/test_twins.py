"""Frames of one size that change places: what is said of their nails is what a new plan of the job would give."""

import re

from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.plan import plan_wall
from templates_gen.checks import find
from templates_gen.job.model import Fixing, Frame, Hanger
from tests.jobs import frame, group, job

HOOK = Fixing(kind="hook", below=22.0)


def said(*frames: Frame, unit: str = "mm") -> str:
    return next(f.text for f in find(plan_wall(job(*frames, unit=unit))) if f.rule == "twins")


def pair(left: float, right: float, inset: float = 40.0) -> Hanger:
    return Hanger(kind="rings", left=inset, right=inset, drop_left=left, drop_right=right)


@given(st.integers(30, 200), st.integers(30, 200), st.booleans())
def test_the_nail_of_one_in_the_place_of_the_other_goes_as_far_as_is_said(one, two, hook):
    frames = frame("A", drop=float(one)), frame("B", drop=float(two), fixing=HOOK if hook else Fixing())
    before, after = (plan_wall(job(*frames, group=group((names,)))) for names in (("A", "B"), ("B", "A")))
    lower = before.frames[0].nails[0].y - after.frames[0].nails[0].y
    assert (before.frames[0].frame.id, after.frames[0].frame.id) == ("A", "B")
    text = said(*frames)
    found = re.search(r"In the place of frame A, the nail of B goes (\d+) mm · .* in (lower|higher)\.", text)
    if found is None:
        assert abs(lower) < 25.4 / 32  # half of 1/16 in
        assert "no nail moves" in text
    else:
        assert abs(int(found[1]) - abs(lower)) <= 0.5  # as it is rounded
        assert found[2] == ("lower" if lower > 0 else "higher")


def test_those_that_hang_alike_are_named_together():
    text = said(frame("A"), frame("B", drop=84.0), frame("C"))
    assert text == (
        "Frames A, B, C are of one size: each nail is for its own frame. In the place of frames A, C, the nail of B "
        "goes 4 mm · 3/16 in lower."
    )  # 84 − 80 = 4 mm = 0.157 in, nearest 3/16 (0.1875) of 1/16 steps: 2.52 sixteenths
    assert said(frame("A"), frame("B")) == (
        "Frames A, B are of one size and hang alike: these may change places, and no nail moves."
    )


def test_nails_that_go_alike_are_told_together():
    drops = (80.0, 84.0, 77.0, 84.0, 77.0)  # 84 − 80 = 4 mm lower, 80 − 77 = 3 mm higher: by hand here
    text = said(*(frame(name, drop=drop) for name, drop in zip("ABCDE", drops, strict=True)))
    assert text.endswith(
        "In the place of frame A, the nails of B, D go 4 mm · 3/16 in lower; the nails of C, E go 3 mm · 1/8 in higher."
    )


def test_what_is_under_half_a_sixteenth_is_no_move():
    # 25.4 / 32 = 0.794 mm, common practice, no source: 0.78 and 0.81 mm
    assert "and hang alike" in said(frame("A"), frame("B", drop=80.78))
    assert "the nail of B goes 1 mm · 1/16 in lower" in said(frame("A"), frame("B", drop=80.81))
    assert "the nail of B goes 1 mm · 1/16 in higher" in said(frame("A"), frame("B", drop=79.19))


def test_a_pair_of_rings_says_each_side():
    text = said(frame("A", hanger=pair(70.0, 72.0)), frame("B", hanger=pair(73.0, 70.0)))
    assert "the nails of B go 3 mm · 1/8 in lower at the left nail (facing) and " in text
    assert text.endswith(" and 2 mm · 1/16 in higher at the right nail (facing).")


def test_a_pair_that_goes_alike_is_told_once():
    text = said(frame("A", hanger=pair(70.0, 72.0)), frame("B", hanger=pair(73.0, 75.0)))
    assert text.endswith("In the place of frame A, the nails of B go 3 mm · 1/8 in lower.")


def test_a_side_that_stays_is_not_told():
    text = said(frame("A", hanger=pair(70.0, 70.0)), frame("B", hanger=pair(70.0, 73.0)))
    assert text.endswith("In the place of frame A, the nails of B go 3 mm · 1/8 in lower at the right nail (facing).")


def test_what_is_not_measured_yet_is_asked_for():
    assert said(frame("A"), frame("B", drop=None)) == (
        "Frames A, B are of one size: each nail is for its own frame. Before frame B changes places, measure its drop."
    )
    assert said(frame("A"), frame("B", drop=None), frame("C", drop=None)).endswith(
        "Before frames B, C change places, measure their drops."
    )
    assert "of which frames A, C hang alike" in said(frame("A"), frame("B", drop=None), frame("C"))


def test_rings_elsewhere_across_the_back_make_no_twins():
    plan = plan_wall(job(frame("A", hanger=pair(70.0, 70.0)), frame("B", hanger=pair(70.0, 70.0, 45.0))))
    assert not any(found.rule == "twins" for found in find(plan))


def test_many_twins_are_told_the_most_that_a_nail_may_move():
    # drops of 80, 82, … 98: 18 mm, 0.709 in = 11.3 sixteenths
    ten = (frame(str(number), 90.0, drop=80.0 + 2 * number) for number in range(10))
    assert "a nail moves by up to 18 mm · 11/16 in." in said(*ten)
    # eight that move are many, seven are named: our own design, no source
    eight, nine = (said(*(frame(str(at), 90.0, drop=80.0 + 2 * at) for at in range(count))) for count in (8, 9))
    assert "In the place of frame 0, the nail of 1 goes 2 mm" in eight and "by up to" not in eight
    assert "Changing places, a nail moves by up to 16 mm · 5/8 in." in nine
    # all of them higher than the first by 10 mm, 6.3 sixteenths; then by 10 higher and 10 lower
    nine = [frame(str(number), 90.0, drop=80.0) for number in range(9)]
    assert "by up to 10 mm · 3/8 in." in said(frame("F", 90.0, drop=90.0), *nine)
    assert "by up to 10 mm · 3/8 in." in said(frame("F", 90.0, drop=70.0), *nine)
    assert "by up to 20 mm · 13/16 in." in said(frame("F", 90.0, drop=90.0), *nine, frame("L", 90.0, drop=100.0))


def test_twins_on_other_fixings_take_them_along():
    strong, weak = (Fixing(kind="screw", rating=rating) for rating in (40.0, 4.0))
    text = said(frame("A", fixing=strong), frame("B", fixing=weak))
    assert text.endswith("no nail moves. Their fixings differ: each frame keeps its own.")
    assert "fixing" not in said(frame("A", fixing=strong), frame("B", fixing=strong))


def test_twins_are_of_one_size_to_a_tenth_of_a_millimetre():
    # wires of twins are alike; 60 mm more is no twin's
    def doubted(width: float) -> bool:
        frames = [frame("A", 300.0, 400.0, 70.0), frame("B", width, 400.0, 130.0)]
        return any("of the same size" in found.text for found in find(plan_wall(job(*frames))))

    assert [doubted(width) for width in (300.0, 300.04, 300.06, 300.2)] == [True, True, False, False]
