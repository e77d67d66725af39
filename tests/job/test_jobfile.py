"""The job file: what is assumed where nothing is given, how frame types are filled in, and the ways to say a thing."""

import math
import re
from pathlib import Path

import pytest

from templates_gen.job.model import Fixing, Frame, Group, Hanger, Height, Job, Paper, Spot, Wall
from templates_gen.job.paper_sizes import SIZES
from templates_gen.job.reading.building import read_job
from tests.jobs import SAMPLES
from tests.running import MINIMAL

INCH = 25.4  # mm exactly (international yard and pound agreement, 1959)


@pytest.fixture
def read(tmp_path):
    """Writes a job file and reads it."""

    def from_text(text: str) -> Job:
        path = tmp_path / "job.toml"
        path.write_text(text, encoding="utf-8")
        return read_job(path)

    return from_text


def test_what_is_assumed_where_nothing_is_given(read):
    least = MINIMAL.replace('title = "Tile rubbings"', "").replace('unit = "mm"', "")
    job = read(least.replace(least[least.index("wiring") : least.index("[[frame]]")], ""))
    assert (job.title, job.client, job.unit) == ("job", "", "mm")
    assert job.frames == (Frame(id="A", width=300.0, height=200.0, drop=60.0),)
    # 57 in from the floor and 2 1/2 in apart: common practice
    assert job.group == Group(
        arrangement="row", rows=(("A",),), gap_across=63.5, gap_down=63.5, height=Height(by="centre", at=57 * INCH)
    )
    # ISO 216 for A4; the margins and the overlap are our own design
    assert job.paper == Paper(
        name="a4", width=210, height=297, margin=(7.0, 7.0, 13.0, 7.0), overlap=12.0, cover="marks"
    )
    assert job.wall == Wall(name="", width=4000.0, height=2600.0)
    assert job.frames[0].hanger == Hanger(kind="wire")
    assert job.frames[0].fixing == Fixing(kind="nail", diameter=1.8)


@pytest.mark.parametrize(("unit", "name"), [("in", "letter"), ("cm", "a4"), ("mm", "a4")])
@pytest.mark.parametrize("more", ["", "[paper]\noverlap = '15 mm'\n"])
def test_paper_that_is_not_told_is_what_printers_mostly_hold_where_that_unit_is_used(unit, name, more, read):
    paper = read(f'[job]\nunit = "{unit}"\n[wall]\nwidth = 90\nheight = 90\n{FRAME}{more}').paper
    assert (paper.name, (paper.width, paper.height)) == (name, SIZES[name])


FRAME = '[[frame]]\nid = "A"\nwidth = 10\nheight = 12\ndrop = 2\n'


def test_the_date_of_the_last_change_stands_in_for_a_date(read, monkeypatch):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "86400")  # a day after 1970-01-01 UTC
    assert read(MINIMAL.replace('date = "2026-03-01"', "")).date == "1970-01-02"


def test_a_type_fills_in_what_a_frame_leaves_out_and_never_more(read):
    (one, two) = read(
        MINIMAL
        + '[frame_type.wide]\nwidth = 500\nheight = 100\ntitle = "wide"\nhanger = "sawtooth"\nfixing = "screw"\n'
        '[[frame]]\nid = "B"\ntype = "wide"\nheight = 150\nhanger = "wire"\n'
    ).frames
    assert (one.width, one.hanger.kind) == (300.0, "wire")
    assert (two.width, two.height, two.title) == (500.0, 150.0, "wide")
    assert (two.hanger.kind, two.fixing.kind) == ("wire", "screw")


@pytest.mark.parametrize(
    ("given", "centre_on"),
    [('"wall"', "wall"), ("1700", 1700.0), ('"1.7 m"', 1700.0), ('"bench"', "bench"), ('"bench 2"', "bench 2")],
)
def test_a_group_is_centred_on_the_wall_a_feature_or_a_distance(read, given, centre_on):
    feature = '[[wall.feature]]\nkind = "furniture"\nname = "{}"\nleft = 0\nbottom = 0\nwidth = 9\nheight = 9\n'
    job = read(MINIMAL + feature.format("bench") + feature.format("bench 2") + f"[group]\ncentre_on = {given}\n")
    assert job.group.centre_on == centre_on


@pytest.mark.parametrize("kind", ["bench", "furniture", "door"])
def test_furniture_and_doors_stand_on_the_floor_where_nothing_is_said(read, kind):
    feature = read(MINIMAL + f'[[wall.feature]]\nkind = "{kind}"\nleft = 0\nwidth = 9\nheight = 9\n').wall.features[-1]
    assert (feature.rect.y0, feature.rect.y1) == (0.0, 9.0)


@pytest.mark.parametrize(
    ("given", "height"),
    [
        ("{ centre = 1500 }", Height(by="centre", at=1500.0)),
        ("{ top = '2 m' }", Height(by="top", at=2000.0)),
        ("{ bottom = '40 in' }", Height(by="bottom", at=1016.0)),
    ],
)
def test_a_group_hangs_by_its_centre_its_top_or_its_foot(read, given, height):
    assert read(MINIMAL + f"[group]\nheight = {given}\n").group.height == height


def test_placed_frames_have_their_spots_right_and_left_of_the_centre_line(read):
    job = read(MINIMAL + '[group]\narrangement = "placed"\nplace.A = { top_left = ["-10 cm", -50] }\n')
    assert job.group.spots == (("A", Spot(point="top_left", x=-100.0, y=-50.0)),)
    assert job.group.rows == (("A",),)


def test_a_grid_is_filled_row_by_row(read):
    frames = "".join(f'[[frame]]\nid = "{name}"\nwidth = 10\nheight = 10\n' for name in "BCDE")
    assert read(MINIMAL + frames + '[group]\narrangement = "grid"\nacross = 2\n').group.rows == (
        ("A", "B"),
        ("C", "D"),
        ("E",),
    )


def test_plasterboard_is_another_word_for_drywall(read):
    british, american = (
        read(MINIMAL.replace("[wall]", f'[wall]\nbuild = "{word}"')) for word in ("plasterboard", "drywall")
    )
    assert british.wall.build == american.wall.build == "drywall"


def test_an_outline_gives_the_wall_its_size_and_its_corners(read):
    outline = "outline = [[0, 0], ['3 m', 0], [3000, 2500], [0, '2.05 m']]"
    job = read(MINIMAL.replace("width = 4000\nheight = 2600", outline))
    assert job.wall.outline == ((0.0, 0.0), (3000.0, 0.0), (3000.0, 2500.0), (0.0, 2050.0))
    assert (job.wall.width, job.wall.height) == (3000.0, 2500.0)


def test_one_margin_is_for_all_sides_and_paper_may_be_given_by_its_size(read):
    paper = read(MINIMAL + '[paper]\nsize = ["20 cm", 300]\nmargin = "9 mm"\n').paper
    assert (paper.width, paper.height, paper.margin) == (200.0, 300.0, (9.0, 9.0, 9.0, 9.0))


def test_a_job_file_may_start_with_a_byte_order_mark_and_be_named_by_text(tmp_path):
    path = tmp_path / "job.toml"
    path.write_bytes(b"\xef\xbb\xbf" + MINIMAL.encode())
    assert read_job(str(path)) == read_job(path)


@pytest.mark.parametrize("name", [name for name in SIZES if re.fullmatch(r"[ab]\d", name)])
def test_the_papers_of_iso_216_are_halved_from_one_to_the_next(name):
    # a0 is 1000 · 2^(-1/4) by 1000 · 2^(1/4) mm, b0 1000 by 1000 · 2^(1/2), each next one has the longer side halved
    # (ISO 216); + 0.2 and cutting off makes the whole mm of all of them: worked out by hand here
    halvings = int(name[1]) / 2 + (0.25 if name[0] == "a" else 0.0)
    assert SIZES[name] == tuple(math.floor(1000 * 2**-power + 0.2) for power in (halvings, halvings - 0.5))


@pytest.mark.parametrize("sample", sorted(SAMPLES.glob("*.toml")), ids=lambda path: path.stem)
def test_every_sample_can_be_read(sample: Path):
    assert read_job(sample).frames
