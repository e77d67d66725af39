"""What every paper of a job with rings calls left, held against where it is: facing the wall, or from behind.

One frame of 400 x 500 mm in the middle of a wall of 4 m, its middle 1450 mm up: from 1800 to 2200, its top at 1700.
Facing it, the left ring is 40 mm in and 90 mm down, the right one 70 mm in and 110 mm down.  So, worked out by hand
here, the nails are at x = 1840 and 2130, and half a nail of 2 mm under 1610 and 1590.
"""

import csv
import io
import json
import math

import pypdf
import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.documents.labels.label_sheet import label_sheet
from templates_gen.documents.labels.labels import labels
from templates_gen.documents.measuring.sheet import measuring_sheet
from templates_gen.drawing.items import Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.job.paper_sizes import own_paper
from templates_gen.job.reading.building import read_job
from tests.made import Everything, make
from tests.papers import read_back
from tests.running import run
from tests.wall_reading import brought_back

JOB = """\
[job]
title = "Tile rubbings"
[wall]
width = 4000
height = 2600
[group]
rows = [["A"]]
arrangement = "rows"
gap = 50
height = { centre = 1450 }
[fixing]
diameter = 2
[[frame]]
id = "A"
width = 400
height = 500
"""
PAIR = "hanger = {{ kind = 'rings', left = {}, right = {}, drop_left = {}, drop_right = {}, seen_from = '{}' }}"
SEEN = {"front": PAIR.format(40, 70, 90, 110, "front"), "back": PAIR.format(70, 40, 110, 90, "back")}
X = {"left": 1840.0, "right": 2130.0}
Y = {"left": 1609.0, "right": 1589.0}
DROP = {"left": 90.0, "right": 110.0}
OTHER = {"left": "right", "right": "left"}


@pytest.fixture(params=SEEN)
def done(request, tmp_path, monkeypatch) -> Everything:
    """The job as it was given, in a folder of its own, with its template."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "job.toml").write_text(JOB + SEEN[request.param] + "\n")
    return make(read_job(tmp_path / "job.toml"))


def words_of(template) -> list[str]:
    return [item.text for page in template.pages for item in page.page_items if isinstance(item, Text)]


@pytest.mark.parametrize("side", X)
def test_on_the_sheets_each_mark_and_the_drop_are_those_of_its_side(done, side):
    nails = {nail["name"]: (nail["x"], nail["y"]) for nail in done.report["nails"]}
    assert nails[f"A {side}"] == pytest.approx((X[side], Y[side]))
    texts = [text for sheet in brought_back(done) for text in sheet.texts]
    for text in (text for text in texts if text.text.strip() == f"A {side}"):
        assert math.dist((text.x, text.y), (X[side], Y[side])) < 60.0 < abs(text.x - X[OTHER[side]])
    said = {text.text for text in texts}
    assert any(f"{side} nail (facing): drop {DROP[side]:.0f} mm" in words for words in said)
    assert not any(f"{side} nail (facing): drop {DROP[OTHER[side]]:.0f} mm" in words for words in said)


@pytest.mark.parametrize("side", X)
def test_the_schedule_has_each_nail_where_it_is(done, side):
    data = json.loads(run("schedule", "job.toml", "--format", "json").out)["frames"][0]["nails"]
    assert {nail["name"]: (nail["x"], nail["y"]) for nail in data}[f"A {side}"] == (X[side], Y[side])
    rows = {row["nail"]: row for row in csv.DictReader(io.StringIO(run("schedule", "job.toml", "--format", "csv").out))}
    assert float(rows[f"A {side}"]["x_mm"]) == X[side]
    lines = run("schedule", "job.toml").out.splitlines()
    (at,) = [n for n, line in enumerate(lines) if line.split()[:2] in ([side, f"{DROP[side]:.0f}"], ["!", side])]
    off = X[side] - 2000.0
    assert f"{DROP[side]:.0f} mm" in lines[at] and f"{abs(off):.0f} mm {side}" in lines[at]
    assert lines[at + 1].strip().startswith("(facing)")
    first = " ".join(" ".join(page.extract_text().split()) for page in done.reader.pages[:3])
    assert f"A {side} (facing)" in first


@pytest.mark.parametrize("side", X)
def test_a_label_on_the_back_says_both_what_is_faced_and_what_is_seen_from_behind(done, side):
    plan = done.plan
    said = words_of(labels(plan, label_sheet(own_paper(plan.job), "mm"), Lettering()))
    at = said.index(f"{side} nail (facing) = {OTHER[side]} ring from behind:")
    assert said[at + 1].startswith(f"drop {DROP[side]:.0f} mm ·") and f" {Y[side]:.0f} mm · " in said[at + 1]
    assert not [text for text in said if text.startswith(("left from", "drop left", "nail left", "nail right"))]


def test_the_measuring_sheet_is_as_seen_from_behind_in_words_and_drawing(done):
    """There the ring 70 mm in and 110 mm down is the left one."""
    job = done.job
    sheet = measuring_sheet(job, own_paper(job), Lettering())
    said = words_of(sheet)
    was = {said[at]: said[at - 1] for at in range(1, len(said)) if said[at - 1].startswith("was ")}
    behind = {"left": ("110 mm", "70 mm"), "right": ("90 mm", "40 mm")}
    for side, (drop, inset) in behind.items():
        assert was[f"{side} ring from behind: drop"] == f"was {drop}"
        assert was[f"{side} ring from behind: in by"] == f"was {inset}"
    (page,) = read_back(sheet, Lettering())
    rings = sorted((c.cx, c.cy) for c in page.circles if c.width)
    (_, left_y), (_, right_y) = rings[0], rings[-1]
    assert left_y < right_y  # the left one hangs lower under the edge
    (row,) = csv.DictReader(io.StringIO(_blanks()))
    assert (row["seen_from"], row["drop_left"], row["left"]) == ("back", "110 mm", "70 mm")
    assert (row["drop_right"], row["right"]) == ("90 mm", "40 mm")


def _blanks() -> str:
    assert run("measure", "job.toml", "--csv", "blanks.csv").code == 0
    with open("blanks.csv", encoding="utf-8-sig") as file:
        return file.read()


def test_what_was_measured_from_behind_comes_to_the_same_nails(done, tmp_path):
    _blanks()
    text = (tmp_path / "job.toml").read_text().replace("[job]", '[job]\nmeasured = "blanks.csv"')
    (tmp_path / "again.toml").write_text(text)
    nails = plan_wall(read_job(tmp_path / "again.toml")).nails
    assert {nail.side: (nail.x, nail.y) for nail in nails} == {side: (X[side], Y[side]) for side in X}


@pytest.mark.parametrize("side", X)
def test_correcting_names_the_nail_under_the_corner_that_is_low(done, side):
    """One end 16 mm too low: over 400 mm that is 2.3 degrees, so the nail under it goes up by most of that."""
    low = {"left": "1684,1700", "right": "1700,1684"}[side]
    with open("hung.csv", "w", encoding="utf-8") as file:
        file.write(f"frame,left,right\nA,{low}\n")
    ran = run("correct", "job.toml", "hung.csv", "--format", "json")
    moves = {move["nail"]: move for move in json.loads(ran.out)["frames"][0]["moves"]}
    ups = {name: move["up"] for name, move in moves.items()}
    assert max(ups, key=lambda name: ups[name]) == f"A {side}" and ups[f"A {side}"] > 12.0
    text = run("correct", "job.toml", "hung.csv").out
    assert f"; {OTHER[side]} end 16 mm" in text
    (line,) = [line for line in text.splitlines() if line.strip().startswith(f"{side} nail (facing)")]
    assert f"up {ups[f'A {side}']:.0f} mm" in line
    assert run("correct", "job.toml", "hung.csv", "--template", "-o", "moved.pdf").code == 0
    said = " ".join(" ".join(page.extract_text().split()) for page in pypdf.PdfReader("moved.pdf").pages)
    at = said.index(f"{side} nail (facing)")
    assert f"new hole: up {ups[f'A {side}']:.0f} mm" in said[at : at + 60]
    assert "as you face the wall" in said and "as you face the wall" in text


def test_the_form_says_from_where_left_and_right_are_seen(done):
    assert run("correct", "job.toml", "--form", "-o", "form.pdf").code == 0
    said = " ".join(" ".join(page.extract_text().split()) for page in pypdf.PdfReader("form.pdf").pages)
    assert "left and right are as you face the wall" in said
