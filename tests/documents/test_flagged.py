"""The nails that want thought: their mark in the schedule on a screen and on paper, and their zones for a machine."""

import json

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.checks import Finding, find
from templates_gen.documents.instructions.first_pages import first_pages
from templates_gen.documents.schedule.carrying import KEY, flagged_nails
from templates_gen.documents.schedule.table import as_data, as_text, rows
from templates_gen.drawing.items import Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.job.model import Fixing, Hanger
from templates_gen.job.reading.building import read_job
from templates_gen.tolerance.holding import plan_sheets
from tests.finding_cases_behind import feature, on
from tests.jobs import frame
from tests.running import MINIMAL, run

RINGS = frame("A", hanger=Hanger(kind="rings", left=50.0, right=50.0))
# two frames of 400 mm and a gap of 60 mm about 2000: A from 1570, its rings at 1620 and 1920; B from 2030, its nail at
# 2230: worked out by hand here
PLAN = plan_wall(on(feature("outlet", 1850.0, 300.0), frames=(RINGS, frame("B"))))


def finding(level: str, rule: str, *about: str, nails: tuple[str, ...] = ()) -> Finding:
    return Finding(level, rule, about, "A sentence.", nails=nails)


def test_a_nail_in_a_zone_is_flagged_and_the_other_of_its_frame_is_not():
    assert flagged_nails(PLAN, ()) == {"A right"}
    assert flagged_nails(PLAN, find(PLAN)) == {"A right"}


def test_a_warning_about_one_nail_flags_that_nail_alone():
    assert flagged_nails(PLAN, (finding("stop", "hook-would-show", "A", nails=("A left",)),)) == {"A left", "A right"}
    assert flagged_nails(PLAN, (finding("note", "ladder", "A", nails=("A left",)),)) == {"A right"}


@pytest.mark.parametrize(("level", "flagged"), [("stop", True), ("warn", True), ("note", False)])
def test_a_frame_with_a_warning_has_all_its_nails_flagged(level, flagged):
    found = flagged_nails(PLAN, (finding(level, "frames-close", "A", "B"),))
    assert found == ({"A left", "A right", "B"} if flagged else {"A right"})


def test_the_schedule_on_a_screen_marks_a_nail_and_has_one_line_of_key():
    lines = as_text(PLAN).splitlines()
    assert [line[:13].rstrip() for line in lines if "!" in line[:13]] == ["    ! right", KEY[:13].rstrip()]
    assert lines[-1] == KEY
    assert KEY not in as_text(plan_wall(on()))


def test_the_schedule_on_paper_marks_a_nail_by_its_name():
    assert [row[4] for row in rows(PLAN, frozenset({"A right"}))] == ["A left (facing)", "! A right (facing)", "B"]
    unmeasured = plan_wall(on(frames=(frame("C", drop=None),)))
    assert [row[4] for row in rows(unmeasured, frozenset({"C"}))] == ["! none yet"]
    assert [row[4] for row in rows(unmeasured)] == ["none yet"]


def test_a_name_too_long_for_its_column_keeps_its_mark():
    plan = plan_wall(on(feature("outlet", 1960.0, 300.0), frames=(frame("the long name of a frame " * 9),)))
    pages = first_pages(plan, find(plan), plan_sheets(plan, plan.job.paper), None, Lettering()).pages
    texts = [item.text for page in pages for item in page if isinstance(item, Text)]
    marked = [text for text in texts if text.startswith("! ") and text != KEY]
    assert len(marked) == 2 and all(text.startswith("! the long name") for text in marked)
    assert len([text for text in texts if text.endswith("…") and "long name of" in text]) >= 2


def test_a_nail_that_is_not_measured_yet_is_marked_too():
    # the drop scale of C runs from 1450 to 1700 up, level with the outlet
    text = as_text(plan_wall(on(feature("outlet", 500.0, 1500.0), frames=(frame("C", drop=None),))))
    assert "! no nail yet: measure" in text and text.endswith(KEY)


def test_the_printed_pages_have_the_mark_and_its_key():
    sheets = plan_sheets(PLAN, PLAN.job.paper)
    pages = first_pages(PLAN, find(PLAN), sheets, None, Lettering()).pages
    texts = [item.text for page in pages for item in page if isinstance(item, Text)]
    assert texts.count("! A right (facing)") == 2 and KEY in texts  # in either table
    assert "A left (facing)" in texts and [text for text in texts if text.startswith("A left (facing), ")]
    plain = plan_wall(on())
    pages = first_pages(plain, (), plan_sheets(plain, plain.job.paper), None, Lettering()).pages
    assert not any("!" in item.text for page in pages for item in page if isinstance(item, Text))


def test_the_schedule_for_a_machine_lists_the_zones_of_every_nail():
    (first, second) = as_data(PLAN, ())["frames"]
    assert [nail["zones"] for nail in first["nails"]] == [[], ["straight above or below the outlet"]]
    assert [nail["zones"] for nail in second["nails"]] == [[]]


WALLS = """wiring = "de"
worktop = true
behind = ["bathroom", "kitchen"]
public = true
earthquake = true
built = 1965

[[wall.feature]]
kind = "furniture"
name = "pallets"
left = 0
bottom = 0
width = 900
height = 500
use = "bed"
"""


def test_the_fields_of_a_wall_are_read(tmp_path):
    path = tmp_path / "job.toml"
    path.write_text(MINIMAL.replace('wiring = "uk"\n', WALLS))
    job = read_job(path)
    wall = job.wall
    assert (wall.wiring, wall.worktop, wall.behind) == ("de", True, ("bathroom", "kitchen"))
    assert (wall.public, wall.earthquake, wall.built) == (True, True, 1965)
    assert wall.features[0].use == "bed"


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ('"kitchen"', '"kichen"', ("wall, behind", "'kichen'", "did you mean 'kitchen'?")),
        ("built = 1965", "built = 65", ("wall, built", "found 65", "1965")),
        ("built = 1965", "built = 3000", ("wall, built", "found 3000")),
        ('use = "bed"', 'use = "bad"', ("wall.feature 1 (pallets), use", "'bad'", "did you mean 'bed'?")),
        ('"furniture"', '"radiator"', ("wall.feature 1 (pallets), use", "'radiator'", "furniture")),
    ],
)
def test_a_field_of_a_wall_that_cannot_be_is_refused(tmp_path, monkeypatch, old, new, words):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "job.toml").write_text(MINIMAL.replace('wiring = "uk"\n', WALLS.replace(old, new)), encoding="utf-8")
    ran = run("check", "job.toml")
    assert ran.code == 2
    assert all(word in ran.err for word in words)


def test_the_command_marks_what_it_finds(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    # the nail of the small job file is 2000 across
    (tmp_path / "job.toml").write_text(MINIMAL.replace("left = 100", "left = 1960"), encoding="utf-8")
    assert "! nail" in run("schedule", "job.toml").out
    (nail,) = json.loads(run("schedule", "job.toml", "--format", "json").out)["frames"][0]["nails"]
    assert nail["zones"] == ["straight above or below the switch"]
    assert "zone where cables may run" in run("check", "job.toml").out


def test_a_warned_frame_is_marked_by_the_command_too(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    deep = MINIMAL.replace("drop = 60", "drop = 60\ndepth = 120")
    deep = deep.replace("height = 2600\n", "height = 2600\npublic = true\n")
    (tmp_path / "job.toml").write_text(deep, encoding="utf-8")
    assert "! nail" in run("schedule", "job.toml").out
    (tmp_path / "job.toml").write_text(deep.replace("public = true\n", ""), encoding="utf-8")
    assert "! nail" not in run("schedule", "job.toml").out


def test_the_tip_of_a_slanting_nail_counts_for_the_mark():
    # 40 mm at 30° from straight in reaches 40 · sin 30° = 20 mm below the nail point at 1619.1, to 1599.1
    outlet = feature("outlet", 500.0, 1520.0)  # up to 1600
    slanting = frame(fixing=Fixing(length=40.0, angle=30.0))
    assert flagged_nails(plan_wall(on(outlet, frames=(slanting,))), ()) == {"A"}
    assert flagged_nails(plan_wall(on(outlet)), ()) == frozenset()
