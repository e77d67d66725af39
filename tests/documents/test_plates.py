"""Two plates with a screw each: what every paper and every command says of them, and that no nail is meant."""

from pathlib import Path

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import InputError
from templates_gen.checks import find
from templates_gen.documents.correcting.sentences import hanger_words
from templates_gen.documents.instructions.wording import own_tools
from templates_gen.documents.measuring.fields import measures
from templates_gen.documents.schedule.distances import facing, from_behind
from templates_gen.job.model import Fixing, Frame, Hanger, Wall
from templates_gen.job.reading.framing import build_fixing, build_frame
from templates_gen.job.reading.typed import read_table
from templates_gen.job.tables.frame import FrameTable
from templates_gen.tolerance.corners import base_of
from tests.documents.test_guide import steps
from tests.jobs import frame, group, job, named
from tests.running import run

UNDER = Hanger(kind="plates", left=60.0, right=70.0, drop_left=512.0, drop_right=513.0)
BEHIND = Hanger(kind="plates", left=60.0, right=60.0, drop_left=80.0, drop_right=80.0)
SCREW = Fixing(kind="screw", diameter=4.0)


def plates(hanger: Hanger = UNDER, name: str = "A", **more: object) -> Frame:
    return frame(name, drop=None, hanger=hanger, fixing=SCREW, **more)


def as_read(usual: Fixing, **fields: object) -> Frame:
    """A frame as the job file gives it, where the job's usual fixing is this."""
    hanger = {"kind": "mirror plates", "left": 60, "right": 70, "drop_left": 512, "drop_right": 513}
    raw = {"id": "A", "width": 400, "height": 500, "hanger": hanger | {"seen_from": "front"}} | fields
    return build_frame(read_table(raw, FrameTable, "mm", "frame A"), None, usual, "mm", "frame A", Path())


@pytest.mark.parametrize("diameter", [2.0, 5.0])
def test_the_screw_is_where_the_drop_leads_however_thick_it_is(diameter: float):
    """Worked out by hand here: the frame from 1800 to 2200 on the wall, its top edge at 1450 + 250."""
    item = frame(drop=None, hanger=UNDER, fixing=Fixing(kind="screw", diameter=diameter))
    nails = plan_wall(job(item)).nails
    assert [(nail.name, nail.x, nail.y) for nail in nails] == [("A left", 1860.0, 1188.0), ("A right", 2130.0, 1187.0)]


def test_they_take_screws_whatever_the_others_take():
    assert as_read(Fixing()).hanger == UNDER
    assert as_read(Fixing()).fixing.kind == as_read(Fixing(kind="hook", below=20.0)).fixing.kind == "screw"
    assert as_read(SCREW).fixing == SCREW  # the job's own screw
    assert as_read(Fixing(), fixing={"kind": "screw", "diameter": 5}).fixing.diameter == 5.0
    with pytest.raises(InputError, match="found a nail, expected a screw"):
        as_read(SCREW, fixing="nail")


def test_a_hole_under_the_frame_is_no_fault_but_one_far_under_it_is():
    """60 mm is our own limit: for any other hanger the lower edge is."""
    assert {found.rule for found in find(plan_wall(job(plates())))} & {"drop-beyond-frame", "hook-would-show"} == set()
    far = Hanger(kind="plates", left=60.0, right=60.0, drop_left=560.5, drop_right=560.5)
    (found,) = named("drop-beyond-frame", job(plates(far)))
    assert found.level == "stop"
    rings = Hanger(kind="rings", left=60.0, right=70.0, drop_left=512.0, drop_right=513.0)
    assert len(named("drop-beyond-frame", job(frame(drop=None, hanger=rings, fixing=SCREW)))) == 1


def test_on_the_day_their_screws_come_last_where_they_show():
    said = steps(plates())
    assert said["Nail"].endswith(
        "For A only drill, and plug where no stud is: the screws come last, through the plates."
    )
    assert said["Hang"].endswith("Hold A in place, holes over holes, and drive the screws through the plates.")
    assert said["Level each"].endswith("Plates (A) do not slide: level the frame before its second screw is tight.")
    assert "Slide" not in said["Level each"]
    both = steps(plates(), frame("B"))
    assert both["Nail"].endswith("through the plates. All others must be in firmly before the paper moves.")
    assert "Slide a wire" in both["Level each"] and "Plates (A) do not slide" in both["Level each"]
    hidden = steps(plates(BEHIND))  # hung on screws that are there before
    assert hidden["Nail"].endswith("Nails and screws must be in firmly before the paper moves.")
    assert hidden["Hang"] == "Hang A." and "On two fixings (A)" in hidden["Level each"]


def test_the_tools_are_those_of_screws():
    plan = plan_wall(job(plates(), wall=Wall(name="", width=4000.0, height=2600.0, build="masonry")))
    assert [*own_tools(plan)] == ["2 screws", "screwdriver", "drill and bits", "2 plugs or anchors"]


def test_words_for_the_back_the_front_and_the_table():
    assert from_behind("left", UNDER) == "right plate from behind"
    assert facing("left", SCREW) == "left screw (facing)"
    assert hanger_words(plan_wall(job(plates())).frames[0]) == "plates"
    asked = [(one.name, one.words, one.known) for one in measures(plates(), "mm")][:4]
    assert asked == [
        ("drop_left", "left hole from behind: drop", 513.0), ("drop_right", "right hole from behind: drop", 512.0),
        ("left", "left hole from behind: in by", 70.0), ("right", "right hole from behind: in by", 60.0),
    ]  # fmt: skip


def test_one_screw_higher_than_the_other_tilts_the_frame():
    hung = plan_wall(job(plates(), frame("B"), group=group((("A", "B"),)))).frames[0]
    assert base_of(hung) == 400.0 - 60.0 - 70.0


JOB = """
[job]
unit = "mm"
[wall]
width = 2400
height = 2500
[[frame]]
id = "A"
width = 400
height = 500
weight = "3 kg"
hanger = { kind = "security plates", left = 60, right = 64, drop_left = 512, drop_right = 513, seen_from = "back" }
"""


def test_every_command_takes_them(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.chdir(tmp_path)
    Path("job.toml").write_text(JOB, encoding="utf-8")
    Path("read.csv").write_text("frame,left,right,left_edge\nA,1704 mm,1704 mm,-200 mm\n", encoding="utf-8")
    for command in ("check", "template", "measure", "labels", "proof"):
        ran = run(command, "job.toml")
        assert ran.code == 0 and "warn" not in ran.err + ran.out, ran  # nothing is doubted of plates under the frame
    assert "screw" in run("schedule", "job.toml").out
    assert "left" in run("correct", "job.toml", "read.csv").out


def test_start_asks_for_both_holes_and_offers_a_screw(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.chdir(tmp_path)
    typed = "Friezes\n\nmm\n2400\n2500\n\n\n\n\n\n\n\n\n\n400\n500\n\nmirror plates\n"
    typed += "60\n64\n512\n513\nno\n\n\n\n\n\na4\njob.toml\n"
    ran = run("start", typed=typed)
    assert ran.code == 0, ran.err
    text = Path("job.toml").read_text(encoding="utf-8")
    assert 'kind = "plates"' in text and 'drop_right = "513"' in text and 'kind = "screw"' in text


@pytest.mark.parametrize(("usual", "thick"), [("screw", 4.0), ("nail", 1.8), (Fixing(kind="hook", below=20.0), 1.8)])
def test_a_screw_that_is_not_told_is_thicker_than_a_nail(usual, thick):
    fixing = build_fixing(usual, "fixing") if isinstance(usual, str) else usual
    assert fixing.diameter == thick and fixing.rise == (20.0 if fixing.kind == "hook" else -thick / 2)
