"""How findings name what they are about."""

from templates_gen.arranging.plan import plan_wall
from templates_gen.checks import find
from templates_gen.checks.sentences import listed
from templates_gen.job.model import Fixing, Hanger
from tests.jobs import frame, job


def test_left_and_right_nails_are_those_of_someone_who_faces_the_wall():
    assert listed(("B left", "B right"), "nail") == "nails B left, B right (facing)"
    assert listed(("B right",), "nail") == "nail B right (facing)"
    assert listed(("B",), "nail") == "nail B"
    assert listed(("top left",)) == "frame top left"


def test_a_finding_says_from_where_left_is_seen():
    rings = Hanger(kind="rings", left=40.0, right=40.0, drop_left=20.0, drop_right=60.0)
    hook = Fixing(kind="hook", below=25.0)
    (found,) = [each for each in find(plan_wall(job(frame("B", drop=None, hanger=rings, fixing=hook))))
                if each.rule == "hook-would-show"]  # fmt: skip
    assert found.text.startswith("Nail B left (facing): ")
