"""A job file with every field in it, read."""

import pytest

from templates_gen.base.geometry import Rect
from templates_gen.job.model import Feature, Fixing, Frame, Group, Hanger, Height, Job, Paper, Studs, Wall
from templates_gen.job.reading.building import read_job

INCH = 25.4  # mm exactly (international yard and pound agreement, 1959)
FOOT = 304.8  # mm exactly (same agreement)
POUND = 0.45359237  # kg exactly (same agreement)

WHOLE = r"""
[job]
title = "Fern prints"
client = "Larkfield Village Library"
unit = "in"
date = 2026-03-14
language = "en-GB"

[wall]
name = "reading room, east"
width = "12' 6\""
height = "8'"
build = "drywall"
board = "1/2"
studs = { first = "9 1/4", spacing = "16", width = "1 1/2" }
wiring = "us"
public = false

[[wall.feature]]
kind = "furniture"
name = "bench"
left = "40"
bottom = 0
width = "60"
height = "32"
clear = "2"

[[wall.feature]]
kind = "switch"
left = "4"
bottom = "45"
width = "3"
height = "5"

[group]
arrangement = "rows"
rows = [["A"], ["B"]]
gap = "2 1/2"
gap_down = "3"
align = "top"
set = "left"
centre_on = "bench"
height = { above = "bench", by = "8" }

[frame_type.tall]
width = "16"
height = "20"
depth = "1 1/4"
weight = "4.2 lb"
hanger = "wire"

[[frame]]
id = "A"
title = "Hart's-tongue"
type = "tall"
drop = "3 1/8"
image = "images/fern-a.jpg"

[[frame]]
id = "B"
width = "8"
height = "10"

[frame.hanger]
kind = "rings"
left = "1 1/2"
right = "1 1/4"
drop_left = "2 1/4"
drop_right = "2 3/16"
seen_from = "back"

[frame.fixing]
kind = "hook"
below = "7/8"
rating = "20 lb"
nails = 1
length = "1 1/4"
angle = 45

[fixing]
kind = "nail"
diameter = "1.8 mm"

[paper]
size = "letter"
margin = { top = "7 mm", right = "8 mm", bottom = "13 mm" }
overlap = "15 mm"
cover = "all"
"""


@pytest.fixture
def whole(tmp_path) -> Job:
    path = tmp_path / "job.toml"
    path.write_text(WHOLE, encoding="utf-8")
    return read_job(path)


def whole_wall() -> Wall:
    # feet and inches as they are given: 12' 6" and 8'
    bench = Rect.sized(40 * INCH, 0.0, 60 * INCH, 32 * INCH)
    switch = Rect.sized(4 * INCH, 45 * INCH, 3 * INCH, 5 * INCH)
    return Wall(
        name="reading room, east", width=12 * FOOT + 6 * INCH, height=8 * FOOT, build="drywall", board=0.5 * INCH,
        studs=Studs(first=9.25 * INCH, spacing=16 * INCH, width=1.5 * INCH), wiring="us", public=False,
        features=(
            Feature(kind="furniture", name="bench", rect=bench, clear=2 * INCH),
            Feature(kind="switch", name="switch", rect=switch),
        ),
    )  # fmt: skip


def test_the_wall_of_a_whole_job_file(whole):
    assert whole.wall == whole_wall()


def test_the_frames_of_a_whole_job_file(whole, tmp_path):
    one, two = whole.frames
    assert one == Frame(
        id="A", title="Hart's-tongue", type="tall", width=16 * INCH, height=20 * INCH, depth=1.25 * INCH,
        weight=4.2 * POUND, drop=3.125 * INCH, image=str(tmp_path / "images/fern-a.jpg"), image_missing=True,
        fixing=Fixing(kind="nail", diameter=1.8),
    )  # fmt: skip
    # rings seen from the back change sides
    rings = Hanger(kind="rings", left=1.25 * INCH, right=1.5 * INCH, drop_left=2.1875 * INCH, drop_right=2.25 * INCH)
    hook = Fixing(kind="hook", below=0.875 * INCH, rating=20 * POUND, nails=1, length=1.25 * INCH, angle=45)
    assert two == Frame(id="B", width=8 * INCH, height=10 * INCH, hanger=rings, fixing=hook)


def test_the_group_and_the_paper_of_a_whole_job_file(whole):
    job = whole
    assert job.group == Group(
        arrangement="rows", rows=(("A",), ("B",)), gap_across=2.5 * INCH, gap_down=3 * INCH, align="top", set="left",
        centre_on="bench", height=Height(by="above", at=8 * INCH, feature="bench"),
    )  # fmt: skip
    # letter is 8 1/2 x 11 in (PWG 5101.1, na_letter)
    assert job.paper == Paper(
        name="letter", width=8.5 * INCH, height=11 * INCH, margin=(7.0, 8.0, 13.0, 7.0), overlap=15.0, cover="all"
    )


def test_the_rest_of_a_whole_job_file(whole):
    job = whole
    assert (job.title, job.client, job.unit) == ("Fern prints", "Larkfield Village Library", "in")
    assert (job.date, job.language) == ("2026-03-14", "en-GB")
    assert job.sources == (("job.toml", WHOLE.encode()),)
    assert next(frame for frame in job.frames if frame.id == "B").width == 8 * INCH
