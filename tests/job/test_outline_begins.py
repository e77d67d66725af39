"""Outlines that begin anywhere: the wall's left end is their lowest left corner, and all else is measured from it."""

from __future__ import annotations

import random
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.plan import centre_line, plan_wall
from templates_gen.base.errors import InputError
from templates_gen.base.record import replace
from templates_gen.base.toml import toml
from templates_gen.checks import find
from templates_gen.checks.cables.wiring import zones
from templates_gen.documents.proof.dimensions import chains
from templates_gen.documents.proof.layers import Asked, view_of
from templates_gen.documents.proof.making import make_proof
from templates_gen.documents.schedule.distances import left_end
from templates_gen.documents.schedule.table import as_text
from templates_gen.drawing.lettering import Lettering
from templates_gen.job.model import Job
from templates_gen.job.reading.building import build_job
from templates_gen.job.reading.other_wall import read_job_on
from tests.running import MINIMAL

ATTIC = ((0, 0), (4000, 0), (4000, 2600), (1500, 2600), (0, 1500))
LEANING = ((0, 0), (4000, 0), (4200, 2600), (-600, 2600))
ON_STAIRS = ((0, 0), (1500, 0), (4500, 2250), (4500, 5000), (0, 5000))
WALLS = {"attic": ATTIC, "leaning": LEANING, "stairs": ON_STAIRS}

MORE = {
    "plain": {"wall": {}, "group": {}},
    "features": {
        "wall": {
            "feature": [
                {"kind": "furniture", "name": "bench", "left": 900, "bottom": 0, "width": 900, "height": 400},
                {"kind": "outlet", "left": 300, "bottom": 300, "width": 80, "height": 80},
            ]
        },
        "group": {"centre_on": "bench", "height": {"above": "bench", "by": 500}},
    },
    "from the left end": {"wall": {"studs": {"first": 300, "spacing": 600}}, "group": {"centre_on": 1900}},
    "found": {"wall": {}, "group": {"arrangement": "salon"}},
}


def asked(corners, more, dx=0.0, dy=0.0) -> dict:
    """A job on a wall with these corners, shifted."""
    outline = [[x + dx, y + dy] for x, y in corners]
    wall = {"outline": outline, "build": "drywall", "wiring": "uk", **MORE[more]["wall"]}
    if corners is ON_STAIRS:
        wall["stairs"] = {"nosing": [1500, 190], "run": 250, "rise": 187.5, "up": "right", "steps": 12}
    frames = [{"id": name, "width": 300, "height": 250, "drop": 50, "weight": "2 kg"} for name in "AB"]
    return {"job": {"title": "x", "date": "2026-03-01"}, "wall": wall, "frame": frames, "group": MORE[more]["group"]}


def job_of(corners, more="plain", dx=0.0, dy=0.0) -> Job:
    return build_job(asked(corners, more, dx, dy), Path("job.toml"))


@pytest.mark.parametrize("more", MORE)
@pytest.mark.parametrize("wall", WALLS)
def test_a_shifted_outline_makes_the_same_plan_and_the_same_drawings(wall, more):
    """Everything that is computed or drawn of a plan, after a shift by a random whole number of mm each way."""
    chance = random.Random(f"{wall} {more}")
    dx, dy = chance.randint(-9000, 9000), chance.choice((0, chance.randint(-900, 900)))
    job, shifted = job_of(WALLS[wall], more), job_of(WALLS[wall], more, dx, dy)
    assert (job.wall.begins, shifted.wall.begins) == ((0.0, 0.0), (dx, dy))
    assert replace(shifted, wall=replace(shifted.wall, begins=(0.0, 0.0))) == job
    one, two = plan_wall(job), plan_wall(shifted)
    assert (two.frames, two.centre_line, two.level_line) == (one.frames, one.centre_line, one.level_line)
    assert zones(two.job.wall) == zones(one.job.wall)
    assert [found for found in find(two) if found.rule != "outline-begins"] == list(find(one))
    drawn = [make_proof(of, "svg", Asked(zones=True)).content for of in (job, shifted)]
    assert drawn[0] == drawn[1]


corners = st.tuples(st.floats(-9000, 9000), st.floats(-9000, 9000))


@given(corners, corners, corners, st.floats(-5000, 5000), st.floats(-5000, 5000))
def test_the_middle_is_halfway_between_the_outermost_points_wherever_an_outline_begins(a, b, c, dx, dy):
    """Random triangles, turned and leaning anyhow: shifts of floats are exact to a billionth of a mm or so."""
    try:
        job, shifted = job_of((a, b, c)), job_of((a, b, c), "plain", dx, dy)
    except InputError:  # a needle of no area, or a side beyond what a wall may be
        return
    xs, ys = zip(*job.wall.outline, strict=True)
    low = [x for x, y in job.wall.outline if abs(y) <= 1e-6]  # mm, geometry.TOLERANCE
    assert min(ys) == 0.0 and min(low) == 0.0
    assert centre_line(job.group, job.wall) == pytest.approx((min(xs) + max(xs)) / 2)
    assert centre_line(shifted.group, shifted.wall) == pytest.approx(centre_line(job.group, job.wall), abs=1e-6)
    assert (shifted.wall.width, shifted.wall.height) == pytest.approx((job.wall.width, job.wall.height), abs=1e-6)


def test_the_middle_of_walls_worked_out_by_hand():
    assert plan_wall(job_of(((500, 0), (4500, 0), (4500, 2600), (500, 2600)))).centre_line == 2000.0  # 4000 / 2
    assert plan_wall(job_of(ATTIC)).centre_line == 2000.0
    assert plan_wall(job_of(LEANING)).centre_line == 1800.0  # halfway from -600 to 4200
    assert plan_wall(job_of(ON_STAIRS)).centre_line == 2250.0  # 4500 / 2, and not the middle of the floor before it


def test_another_walls_outline_may_begin_anywhere_too(tmp_path):
    (tmp_path / "job.toml").write_text(MINIMAL)
    plans = []
    for dx in (0, 700):
        outline = [[x + dx, y] for x, y in ATTIC]
        (tmp_path / "hall.toml").write_text(f"[wall]\noutline = {toml(outline)}\n")
        plans.append(plan_wall(read_job_on(tmp_path / "job.toml", tmp_path / "hall.toml")))
    assert plans[0].nails == plans[1].nails and plans[0].centre_line == plans[1].centre_line == 2000.0


@pytest.mark.parametrize(
    ("more", "shift", "level", "words"),
    [
        ("plain", (700, 0), "note", ("but 700 mm · 27 9/16 in to the right of it", "write the outline from [0, 0]")),
        ("features", (700, 0), "warn", ("what is on the wall, distances and heights are measured from it",)),
        ("from the left end", (-700, 0), "warn", ("700 mm · 27 9/16 in to the left",)),
        ("plain", (0, 900), "warn", ("but 900 mm · 35 7/16 in above it", "if the wall begins above the floor")),
        ("plain", (0, -900), "warn", ("900 mm · 35 7/16 in below it",)),
    ],
)  # fmt: skip
def test_an_outline_that_begins_elsewhere_is_said(more, shift, level, words):
    """Inches by hand: 700 / 25.4 = 27.559, 900 / 25.4 = 35.433, to the nearest sixteenth."""
    (found,) = [one for one in find(plan_wall(job_of(ATTIC, more, *shift))) if one.rule == "outline-begins"]
    assert found.level == level and [word for word in words if word not in found.text] == []
    assert "outline-begins" not in [one.rule for one in find(plan_wall(job_of(ATTIC, more)))]


@pytest.mark.parametrize(("side", "value"), [("width", 3974), ("width", 4026), ("height", 2500)])
def test_a_width_or_height_that_the_outline_makes_otherwise_is_refused(side, value):
    raw = asked(ATTIC, "plain")
    raw["wall"][side] = value
    with pytest.raises(InputError, match="where the outline makes it") as raised:
        build_job(raw, Path("job.toml"))
    assert raised.value.where == f"wall, {side}"
    raw["wall"][side] = {"width": 3990, "height": 2610}[side]  # within the 25 mm of two measurements
    wall = build_job(raw, Path("job.toml")).wall
    assert (wall.width, wall.height) == (4000.0, 2600.0)


def test_where_the_left_side_leans_it_is_said_from_which_corner_to_measure(tmp_path):
    for corners, words in (
        (ATTIC, "from the wall's left end"),
        (LEANING, "the lowest left corner, along the floor"),
    ):
        plan = plan_wall(job_of(corners))
        assert words in f"from {left_end(plan)}" and words in " ".join(as_text(plan).split())


def test_the_proof_of_a_leaning_wall_gives_the_centre_line_from_its_left_end_and_the_whole_width():
    """From the left end, 0, to the middle, 1800; what leans out beyond it, 600; in all -600 to 4200, 4800."""
    plan, lettering = plan_wall(job_of(LEANING)), Lettering()
    below = chains(plan, view_of(plan, Asked(), lettering))[1:3]
    assert [sorted(stop for stop, _ in chain.stops) for chain in below] == [[-600, 0, 1800, 4200], [-600, 4200]]


def test_frames_are_kept_on_what_leans_out_to_the_left_of_the_left_end():
    """Found places: a group centred 300 left of the left end, at the height where the wall reaches to -600."""
    raw = asked(LEANING, "found")
    raw["group"] |= {"height": {"top": 2500}}
    raw["wall"]["outline"] = [[0, 0], [100, 0], [200, 2600], [-1900, 2600], [-1500, 1300]]
    plan = plan_wall(build_job(raw, Path("job.toml")))
    assert plan.group.x1 < 200 and plan.group.x0 < 0
    assert [found.rule for found in find(plan) if found.level == "stop"] == []
