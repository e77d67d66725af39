"""What a height and a distance are measured from, in the schedule and on labels."""

from __future__ import annotations

import json

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.record import replace
from templates_gen.documents.schedule.distances import stood_on, unmistakable
from templates_gen.documents.schedule.table import as_data, as_text, header, rows
from templates_gen.documents.sheets.nail_marks import nail_lines
from templates_gen.drawing.items import Text
from templates_gen.job.model import Fixing
from templates_gen.job.stairs import Stairs
from tests.jobs import frame, group, job
from tests.made import made

STAIRS = Stairs(x=500.0, y=190.0, slope=190.0 / 250.0, run=250.0, rise=190.0, top=950.0)


@pytest.mark.parametrize(
    ("x", "under", "high"),
    # by hand: nosings at 500, 750, 1000, … 190 mm higher each; before the first the floor, from 1500 on the landing
    [(499.0, "floor", 0.0), (501.0, "tread", 190.0), (751.0, "tread", 380.0), (1501.0, "landing", 950.0)],
)
def test_heights_on_stairs_are_from_what_one_stands_on(x: float, under: str, high: float) -> None:
    plan = plan_wall(job(frame("A", 300.0, 300.0, 80.0), group=group((("A",),))))
    climbing = replace(plan, job=replace(plan.job, wall=replace(plan.job.wall, stairs=STAIRS)))
    assert stood_on(climbing, x) == (under, high)
    assert stood_on(plan, x) == ("floor", 0.0)
    nail = replace(plan.nails[0], x=x, y=high + 1500.0)
    assert nail_lines(nail, Fixing(), climbing)[1].startswith(f"{under} 1500 mm")


def test_the_schedule_has_every_nails_distance_from_the_walls_left_end() -> None:
    plan = made("fern-prints").plan
    assert header(plan)[-1] == "left end"
    by_nail = {row[4].removeprefix("! "): row[-1] for row in rows(plan)}
    assert by_nail["A"] == "58 3/4 in"  # the centre line at 75 in, and the nail 16 1/4 in left of it
    assert "58 3/4 in · 1492 mm from the wall's left end" in as_text(plan)


def test_the_schedule_of_stairs_has_heights_from_tread_and_floor() -> None:
    """Ada's nail: 91 3/8 in over the lower floor, and its tread three risers of 7 1/2 in up."""
    plan = made("lock-keepers").plan
    at = header(plan).index("stairs")
    row = next(row for row in rows(plan) if row[0] == "Ada")
    (nail,) = [nail for nail in plan.nails if nail.frame == "Ada"]
    under, high = stood_on(plan, nail.x)
    assert under == "tread" and high % 190.5 == pytest.approx(0.0)
    assert row[at].endswith(", tread") and row[at + 1] == "91 3/8 in"
    assert "above the tread; " in as_text(plan)
    data = json.loads(json.dumps(as_data(plan, ())))
    assert data["frames"][0]["nails"][0]["above_stairs"] == pytest.approx(nail.y - high, abs=0.06)


@pytest.mark.parametrize("name", ["I", "l", "II", "|", "O", "0", "--", "I left"])
def test_an_id_that_could_be_a_stroke_or_a_ring_is_called_a_frames(name: str) -> None:
    assert unmistakable(name) == f"frame {name}"


@pytest.mark.parametrize("name", ["A", "1", "10", "Ida", "B left", "α", "i", "Oslo"])
def test_any_other_id_stands_alone(name: str) -> None:
    assert unmistakable(name) == name


def test_no_sheet_has_a_lone_stroke_for_a_name() -> None:
    done = made("tram-tickets")
    said = [item.text for page in done.template.pages for item in page.wall_items if isinstance(item, Text)]
    assert {"frame I", "frame II"} <= set(said) and not {"I", "II", "III"} & set(said)
