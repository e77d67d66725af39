"""Groups that grow, are taken apart and set again, mirrored and slid: gaps kept, on the wall, never worse."""

from itertools import combinations
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen.arranging.search.boxes import Box, Gaps, around
from templates_gen.arranging.search.growing import Manner, best_place, grown
from templates_gen.arranging.search.improving import Found, hung, improved
from templates_gen.arranging.search.mirrored import Mirrored, mirrored, twins
from templates_gen.arranging.search.sliding import slid, slips
from templates_gen.arranging.search.task import Task, pile_of
from templates_gen.base.geometry import Rect
from templates_gen.job.model import Feature, Group, Height, Wall
from templates_gen.job.wishes import Wishes
from tests.jobs import frame, job

SIZES = [(203, 254), (254, 305), (305, 406), (305, 305), (210, 297), (150, 200), (500, 400)]
STEADY = Manner(1.2, 0.25, 0.03, 0.0)
SWITCH = Feature(kind="switch", name="s", rect=Rect.sized(1900.0, 1200.0, 90.0, 90.0), clear=60.0)
GABLE = ((0.0, 0.0), (4000.0, 0.0), (4000.0, 1000.0), (2000.0, 2600.0), (0.0, 1000.0))


def task(sizes, *features: Feature, height: Height | None = None, outline=(), anchor: str = "",
         wishes: Wishes | None = None, across: float = 50.0, down: float = 40.0) -> Task:  # fmt: skip
    """Frames F0, F1 … to be arranged on a wall of 4 m by 2.6 m, about x = 2000 and y = 1400."""
    wall = Wall(name="", width=4000.0, height=2600.0, outline=outline, features=features)
    group = Group(arrangement="salon", rows=(), gap_across=across, gap_down=down, anchor=anchor, wishes=wishes,
                  height=height or Height(by="centre", at=1400.0))  # fmt: skip
    frames = [frame(f"F{at}", float(w), float(h)) for at, (w, h) in enumerate(sizes)]
    return Task(pile_of(job(*frames, group=group, wall=wall), group, 2000.0, group.height.at))


def chosen(seed: int, count: int) -> list[tuple[int, int]]:
    random = Random(seed)
    return [random.choice(SIZES) for _ in range(count)]


def assert_hangs(asked: Task, boxes: list[Box]) -> None:
    across, down = asked.ground.gaps
    for box, size in zip(boxes, asked.ground.sizes, strict=True):
        assert (box[2] - box[0], box[3] - box[1]) == pytest.approx(size)
        assert asked.ground.free(box)
    for a, b in combinations(boxes, 2):
        aside, above = max(b[0] - a[2], a[0] - b[2]), max(b[1] - a[3], a[1] - b[3])
        assert aside >= across - 1e-5 or above >= down - 1e-5


@settings(max_examples=30, deadline=None)
@given(st.integers(0, 999), st.integers(1, 12), st.sampled_from([(), (SWITCH,)]), st.sampled_from([(), GABLE]))
def test_a_grown_group_keeps_its_gaps_and_hangs_on_free_wall(seed, count, features, outline):
    asked = task(chosen(seed, count), *features, outline=outline)
    boxes = grown(asked.ground, asked.pull, Random(seed))
    assert boxes is not None
    assert_hangs(asked, [boxes[at] for at in range(count)])
    placed = hung(asked.ground, [boxes[at] for at in range(count)])
    if placed is not None:
        assert_hangs(asked, placed)
        if not features and not outline:
            x0, y0, x1, y1 = around(placed)
            assert ((x0 + x1) / 2, (y0 + y1) / 2) == pytest.approx((2000.0, 1400.0))


def test_the_best_place_is_beside_the_middle_and_in_line():
    # a frame 300 × 400 in the middle; another of that size fits beside it, at the gap, its edges in line
    asked = task([(300, 400), (300, 400)])
    place = best_place(asked.ground, {0: (1850.0, 1200.0, 2150.0, 1600.0)}, 1, STEADY, None, Random(0))
    assert place in [(2200.0, 1200.0, 2500.0, 1600.0), (1500.0, 1200.0, 1800.0, 1600.0)]


def test_what_is_on_the_wall_is_kept_clear_of():
    # something wide where the second frame would go, on either side: it goes above, below, or under one of them
    left, right = (
        Feature(kind="vent", name=name, rect=Rect.sized(x, 1380.0, 700.0, 40.0), clear=10.0)
        for name, x in (("l", 1040.0), ("r", 2260.0))
    )
    asked = task([(300, 400), (300, 400)], left, right)
    place = best_place(asked.ground, {0: (1850.0, 1200.0, 2150.0, 1600.0)}, 1, STEADY, None, Random(0))
    # at the gap of 50 beside the first, and right under the left one, which wants 10 mm clear: 1380 - 10 - 400
    assert place == (1500.0, 970.0, 1800.0, 1370.0)


@pytest.mark.parametrize(
    ("height", "side", "at"),
    [(Height(by="bottom", at=1000.0), 1, 1000.0), (Height(by="top", at=2000.0), 3, 2000.0)],
)
def test_a_group_grows_above_or_below_the_line_that_it_hangs_by(height, side, at):
    asked = task(chosen(3, 9), height=height)
    for seed in range(5):
        boxes = grown(asked.ground, None, Random(seed))
        placed = hung(asked.ground, [boxes[n] for n in range(9)])
        assert around(placed)[side] == pytest.approx(at)


def test_a_group_about_a_frame_has_that_in_the_middle():
    asked = task(chosen(3, 9), anchor="F4", height=Height(by="centre", at=1400.0, of="F4"))
    boxes = grown(asked.ground, None, Random(1))
    placed = hung(asked.ground, [boxes[n] for n in range(9)])
    x0, y0, x1, y1 = placed[4]
    assert ((x0 + x1) / 2, (y0 + y1) / 2) == pytest.approx((2000.0, 1400.0))


def test_frames_in_the_way_of_something_are_set_again_and_the_others_stay():
    asked = task([(300, 400)] * 5, SWITCH)  # a row about x = 2000: the third lies over the switch
    row = [(1050.0 + 350 * at, 1200.0, 1350.0 + 350 * at, 1600.0) for at in range(5)]
    placed = hung(asked.ground, [(x0 + 75.0, y0, x1 + 75.0, y1) for x0, y0, x1, y1 in row])
    assert placed is not None
    assert_hangs(asked, placed)
    assert sum(box[1] == pytest.approx(placed[0][1]) for box in placed) >= 4


@settings(max_examples=10, deadline=None)
@given(st.integers(0, 999), st.sampled_from([(), (SWITCH,)]))
def test_taking_out_and_setting_again_only_ever_says_what_is_better(seed, features):
    asked = task(chosen(seed, 8), *features)
    boxes = grown(asked.ground, None, Random(seed))
    placed = hung(asked.ground, [boxes[at] for at in range(8)])
    if placed is None:
        return
    best = Found(asked.judge(placed), placed)
    for found in improved(best, asked.ground, asked.judge, None, (), 60, Random(seed)):
        if found is not None:
            assert found.cost < best.cost and found.cost == pytest.approx(asked.judge(found.boxes))
            assert_hangs(asked, found.boxes)
            best = found


def test_frames_of_one_size_are_twins_and_the_rest_goes_into_the_middle():
    found = twins([(1, 2), (3, 4), (1, 2), (5, 6), (3, 4)], -1)
    assert found.pairs == ((0, 2), (1, 4)) and found.singles == (3,)
    about = twins([(1, 2), (1, 2), (3, 4), (3, 4), (5, 6), (5, 6)], 2)  # the third is to be in the middle
    assert about.pairs == ((0, 1), (4, 5)) and about.singles == (3, 2)
    assert twins([(1, 1), (2, 2), (3, 3), (4, 4)], -1) is None  # nothing comes in pairs
    assert twins([(1, 1), (1, 1), (3, 3), (4, 4), (5, 5), (6, 6)], -1) is None  # a tower of four in the middle


@settings(max_examples=10, deadline=None)
@given(st.integers(0, 999), st.integers(2, 5), st.integers(0, 2))
def test_mirrored_groups_mirror_each_other_and_keep_their_gaps(seed, pairs, singles):
    half = chosen(seed, pairs)
    sizes = [*half, *half, *[(331 + at, 415) for at in range(singles)]]
    asked = task(sizes)
    found = twins(asked.pile.sizes, -1)
    made = Mirrored(asked.ground.sizes, Gaps(50.0, 40.0), found)
    groups = [each for each in mirrored(made, lambda boxes, _: asked.judge(boxes), 20, Random(seed)) if each]
    assert groups and [each.cost for each in groups] == sorted((each.cost for each in groups), reverse=True)
    for each in groups:
        about = {(round(box[0], 6), round(box[1], 6), round(box[2], 6)) for box in each.boxes}
        assert {(-x1 + 0.0, y0, -x0 + 0.0) for x0, y0, x1 in about} == {(a + 0.0, b, c + 0.0) for a, b, c in about}
        for a, b in combinations(each.boxes, 2):
            assert max(b[0] - a[2], a[0] - b[2]) >= 50 - 1e-5 or max(b[1] - a[3], a[1] - b[3]) >= 40 - 1e-5


def test_edges_that_are_almost_in_line_are_slips_and_are_slid_into_line():
    asked = task([(300, 400), (300, 400)], across=50.0, down=50.0)
    skew = [(1675.0, 1200.0, 1975.0, 1600.0), (2025.0, 1208.0, 2325.0, 1608.0)]
    assert slips(skew, 50.0) == 1.0  # two edges, of two frames
    placed = hung(asked.ground, skew)
    found = [each for each in slid(Found(asked.judge(placed), placed), asked.ground, asked.judge) if each]
    assert slips(found[-1].boxes, 50.0) == 0.0
    assert found[-1].boxes[0][1] == pytest.approx(found[-1].boxes[1][1])
