"""How many frames, pairs and features are looked at: the last of them is, and the next one is not.

The numbers are those of checks/, our own: so many that a check takes no longer than a second.
"""

import pytest

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.checks import find
from templates_gen.checks.doubts.features import feature_doubts
from templates_gen.checks.doubts.plan import plan_doubts
from templates_gen.checks.doubts.twins import twin_doubts
from templates_gen.job.model import Feature, Hanger, Spot, Wall
from tests.jobs import frame, group, job


def wall(width: float = 90_000.0, *features: Feature) -> Wall:
    return Wall(name="", width=width, height=2600.0, features=features)


def in_places(places: list[tuple[float, float]], gap: float = 60.0, **more) -> Plan:
    """Frames of 200 x 250 mm, placed by their middles."""
    names = [f"F{number}" for number in range(len(places))]
    spots = tuple((name, Spot(point="centre", x=x, y=y)) for name, (x, y) in zip(names, places, strict=True))
    frames = [frame(name, 200.0, 250.0, 50.0, **more) for name in names]
    return plan_wall(job(*frames, wall=wall(), group=group((tuple(names),), "placed", gap, spots=spots)))


def row(count: int, step: float = 260.0) -> list[tuple[float, float]]:
    """Places beside each other, even about the middle."""
    return [((number - (count - 1) / 2) * step, 0.0) for number in range(count)]


@pytest.mark.parametrize(("half", "looked_at"), [(98, True), (99, True), (100, False)])
def test_one_frame_that_spoils_a_mirror_is_looked_for_among_200(half, looked_at):
    """Pairs of two sizes to the left and the right of the middle, and one more pair, of which one frame is turned."""
    sizes = [(300.0, 400.0), (250.0, 200.0)]
    line = [frame(f"L{at}", *sizes[at % 2], 50.0) for at in range(half)]
    right = [frame(f"R{at}", *sizes[at % 2], 50.0) for at in range(half)]
    turned = [frame("X", 280.0, 350.0, 50.0), frame("Y", 350.0, 280.0, 50.0)]
    names = [each.id for each in (*line[::-1], turned[0], turned[1], *right)]
    plan = plan_wall(job(*line, *right, *turned, wall=wall(), group=group((tuple(names),), "row")))
    assert any(doubt.rule == "doubtful-shape" for doubt in plan_doubts(plan)) == looked_at


@pytest.mark.parametrize(("at", "looked_at"), [(398, True), (399, True), (400, False)])
def test_the_400th_frame_is_compared_with_its_twins(at, looked_at):
    frames = [frame(f"F{number}", 300.0, 400.0, 110.0 if number == at else 60.0) for number in range(401)]
    found = {name for doubt in twin_doubts(job(*frames)) for name in doubt.about[:1]}
    assert (f"F{at}" in found) == looked_at


@pytest.mark.parametrize(("at", "looked_at"), [(58, True), (59, True), (60, False)])
def test_the_60th_feature_is_compared_with_the_others(at, looked_at):
    outlets = [
        Feature(kind="outlet", name=f"O{number}", rect=Rect.sized(300.0 + 200.0 * number, 300.0, 80.0, 80.0))
        for number in range(61)
    ]
    outlets[at] = Feature(kind="outlet", name="again", rect=outlets[0].rect)
    found = list(feature_doubts(job(wall=wall(90_000.0, *outlets))))
    assert any("already" in doubt.why for doubt in found) == looked_at


@pytest.mark.parametrize(("count", "named", "more"), [(50, 49, False), (51, 50, False), (52, 50, True)])
def test_50_pairs_that_overlap_are_named(count, named, more):
    """Each overlaps the next by 20 mm."""
    texts = [found.text for found in find(in_places(row(count, 180.0))) if found.rule == "frames-overlap"]
    assert len([text for text in texts if "overlap by 20 mm" in text]) == named
    assert ("More frames overlap than are named here." in texts) == more


@pytest.mark.parametrize(("count", "named"), [(9, 9), (10, 10), (11, 10)])
def test_10_pairs_of_holes_that_meet_are_named(count, named):
    """Fixings 10 mm apart, of each frame its own two."""
    near = Hanger(kind="rings", left=95.0, right=95.0, drop_left=60.0, drop_right=60.0)
    plan = in_places(row(count), hanger=near)
    assert len([doubt for doubt in plan_doubts(plan) if doubt.rule == "doubtful-fixing"]) == named
