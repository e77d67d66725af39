"""The same paper on another wall: when it serves, what the page says of it, and how to have every sheet anew."""

from __future__ import annotations

import io
import json
from functools import cache
from pathlib import Path

import pypdf
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.geometry import Rect, around
from templates_gen.base.record import replace
from templates_gen.cli.given import job_on
from templates_gen.documents.instructions.sheet_map import to_map
from templates_gen.documents.same_paper import same_paper, serves
from templates_gen.drawing.items import Polygon, Text
from templates_gen.drawing.lettering import job_lettering
from templates_gen.job.model import Feature, Hanger, Height, Job, Wall
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.holding import plan_sheets
from tests.jobs import frame, group, job, paper
from tests.made import SAMPLE_NAMES, TWELVE, made
from tests.running import run

HALL = """
[wall]
name = "hall"
width = "150 in"
height = "100 in"
[[wall.feature]]
kind = "thermostat"
name = "dial"
left = "55 in"
bottom = "47 in"
width = "1 1/2 in"
height = "3 in"
[group]
centre_on = "wall"
height = { centre = "60 in" }
"""


def words_of(path: Path) -> str:
    reader = pypdf.PdfReader(path)
    return " ".join(" ".join(page.extract_text() for page in reader.pages).split())


@pytest.fixture
def moved(folder: Path) -> Path:
    """A folder with the fern prints, their template, and another wall."""
    assert run("start", "--sample", "fern-prints", "ferns.toml").code == 0
    (folder / "hall.toml").write_text(HALL)
    return folder


def test_a_page_comes_instead_of_sheets_and_says_where_the_paper_goes(moved: Path) -> None:
    """The group's middle goes from 53 to 60 in above the floor, 7 in higher; both walls are 150 in wide."""
    ran = run("template", "ferns.toml", "--wall", "hall.toml", "--report", "moved.json")
    assert ran.code == 0
    last = ran.out.splitlines()[-1]
    assert last.startswith("ferns-hall.pdf: ") and last.endswith("the paper of this job there: no sheet is needed")
    assert "To print every sheet anyway: the same command with --all-sheets" in ran.err
    said = words_of(moved / "ferns-hall.pdf")
    assert "Draw a pencil cross 75 in · 1905 mm from the wall's left end and 60 in · 1524 mm above the floor." in said
    assert "all heights above the floor are 7 in · 178 mm higher here than it says" in said
    assert "nearer to" not in said and "farther from" not in said
    assert "thermostat 'dial', 55 in · 1397 mm from the wall's left end and 47 in · 1194 mm above the floor" in said
    assert (
        "Take care" in said
        and "templates-gen template ferns.toml --wall hall.toml --all-sheets" in said
        and "Schedule" in said
    )
    report = json.loads((moved / "moved.json").read_text(encoding="utf-8"))
    assert report["same_paper"] is True and report["moved"] == pytest.approx([0.0, 7 * 25.4])


def test_the_new_heights_are_those_of_the_schedule_of_the_new_wall(moved: Path) -> None:
    assert run("template", "ferns.toml", "--wall", "hall.toml").code == 0
    said = words_of(moved / "ferns-hall.pdf")
    data = json.loads(run("schedule", "ferns.toml", "--wall", "hall.toml", "--format", "json").out)
    text = run("schedule", "ferns.toml", "--wall", "hall.toml").out
    heights = [nail["y"] / 25.4 for each in data["frames"] for nail in each["nails"]]
    assert len(heights) == 5
    for height in heights:
        whole, part = divmod(round(height * 16), 16)
        divisor = next(step for step in (16, 8, 4, 2, 1) if part * step % 16 == 0 and part % (16 // step) == 0)
        smallest = min(step for step in (1, 2, 4, 8, 16) if part * step % 16 == 0)
        assert divisor >= smallest
        shown = f"{whole} {part * smallest // 16}/{smallest} in" if part else f"{whole} in"
        assert shown in said and shown in text


@pytest.mark.parametrize(
    "more", [["--all-sheets"], ["--paper", "a4"], ["--cover", "linked"], ["--one-piece"], ["--trim", "none"]], ids=str
)
def test_who_asks_for_sheets_gets_them(more: list[str], moved: Path) -> None:
    ran = run("template", "ferns.toml", "--wall", "hall.toml", *more)
    assert ran.code == 0 and " sheet" in ran.out.splitlines()[-1] and "no sheet is needed" not in ran.out


def test_the_page_can_be_made_again_from_itself_and_an_anonymous_one_carries_nothing(moved: Path) -> None:
    assert run("template", "ferns.toml", "--wall", "hall.toml").code == 0
    first = (moved / "ferns-hall.pdf").read_bytes()
    assert sorted(pypdf.PdfReader(io.BytesIO(first)).attachments) == ["ferns.toml", "hall.toml"]
    assert run("template", "ferns.toml", "--wall", "hall.toml").code == 0
    assert (moved / "ferns-hall.pdf").read_bytes() == first
    assert run("template", "ferns.toml", "--wall", "hall.toml", "--anonymous").code == 0
    hidden = pypdf.PdfReader(moved / "ferns-hall.pdf")
    assert not hidden.attachments and "Larkfield" not in words_of(moved / "ferns-hall.pdf")
    assert "hall" not in words_of(moved / "ferns-hall.pdf")


def test_paper_from_before_the_job_changed_is_not_said_to_serve(moved: Path) -> None:
    """The drop of a frame was measured anew: the nail on the taped paper is not where it goes now."""
    asked = ("template", "ferns.toml", "--wall", "hall.toml", "--force")
    ran = run(*asked)
    said = " ".join(ran.err.split())
    assert "no sheet is needed" in ran.out
    assert "The taped paper is taken to be of ferns.toml as it is now: no ferns.pdf lies beside it." in said
    assert run("template", "ferns.toml", "--cover", "linked").code == 0
    ran = run(*asked)
    assert "no sheet is needed" in ran.out and "is taken to be" not in ran.err
    assert "corner of" not in words_of(moved / "ferns-hall.pdf")  # that paper is measured between nails
    text = (moved / "ferns.toml").read_text(encoding="utf-8")
    assert 'drop = "3"\n' in text
    (moved / "ferns.toml").write_text(text.replace('drop = "3"\n', 'drop = "2 7/8"\n'), encoding="utf-8")
    ran = run(*asked)
    assert ran.code == 0 and "sheets of letter paper" in ran.out
    assert "ferns.toml has changed since ferns.pdf was made: that paper does not serve there." in " ".join(
        ran.err.split()
    )


def on(job: Job, wall: Wall, high: float) -> Plan:
    """The job's plan on another wall, its level line so high."""
    return plan_wall(replace(job, wall=wall, group=replace(job.group, height=Height(by="centre", at=high))))


lengths = st.floats(2500.0, 6000.0)


@cache
def on_its_wall() -> tuple[Job, Plan, SheetPlan]:
    """Four frames, planned once for all walls."""
    own = job(*TWELVE[:4], group=group((("1", "2"), ("3", "4")), gap=45.0), paper=paper("a4"))
    plan = plan_wall(own)
    return own, plan, plan_sheets(plan, own.paper)


@settings(max_examples=15, deadline=None)
@given(width=lengths, height=lengths, high=st.floats(1000.0, 2000.0))
def test_paper_that_serves_has_the_same_sheets_when_it_is_printed_anew(
    width: float, height: float, high: float
) -> None:
    """Every sheet shows from the two lines what it showed on the other wall."""
    own, one, sheets = on_its_wall()
    two = on(own, Wall(name="hall", width=width, height=height), high)
    assert serves(one, two)
    anew = plan_sheets(two, own.paper)
    assert len(sheets.sheets) == len(anew.sheets)
    for old, new in zip(sheets.sheets, anew.sheets, strict=True):
        old_window = old.window.shifted(-one.centre_line, -one.level_line)
        new_window = new.window.shifted(-two.centre_line, -two.level_line)
        assert (old_window.x0, old_window.y0) == pytest.approx((new_window.x0, new_window.y0), abs=1e-5)
        assert old.name == new.name


@settings(max_examples=40, deadline=None)
@given(at=st.integers(0, 1), field=st.sampled_from(["width", "height", "drop", "gap"]), more=st.floats(0.01, 30.0))
def test_paper_of_which_anything_moved_does_not_serve(at: int, field: str, more: float) -> None:
    frames = [frame("A", 300.0, 400.0, 60.0), frame("B", 260.0, 340.0, 50.0)]
    own = job(*frames, group=group((("A", "B"),)))
    if field == "gap":
        other = replace(own, group=group((("A", "B"),), gap=60.0 + more))
    else:
        frames[at] = replace(frames[at], **{field: getattr(frames[at], field) + more})
        other = job(*frames, group=group((("A", "B"),)))
    assert serves(plan_wall(own), plan_wall(own))
    assert not serves(plan_wall(own), plan_wall(other))


@pytest.mark.parametrize("name", SAMPLE_NAMES)
def test_the_paper_of_a_sample_serves_on_its_own_wall(name: str) -> None:
    assert serves(made(name).plan, made(name).plan)


SPOTS = {"switch": (350.0, 1050.0), "dimmer": (600.0, 1050.0), "bell": (350.0, 900.0)}
"""Where three switches are on the wall (mm): our own example."""


def test_no_name_lies_on_a_switch_in_the_picture_of_the_wall() -> None:
    """A switch is smaller there than any lettering: its name, and those of its neighbours, stand beside it."""
    spots = [Feature(kind="switch", name=name, rect=Rect.sized(*at, 86.0, 86.0)) for name, at in SPOTS.items()]
    own = job(frame("A"), frame("B"))
    plan = on(own, Wall(name="hall", width=3200.0, height=2650.0, features=tuple(spots)), 1500.0)
    lettering = job_lettering(plan.job)
    made = same_paper(plan_wall(own), plan, (), plan_sheets(plan, own.paper), "", lettering)
    items = made.template.pages[0].page_items
    whole = around(next(item for item in items if isinstance(item, Polygon) and not item.filled).points)
    _, at = to_map(plan.job.wall.rect, whole)
    names = [lettering.box(item) for item in items if isinstance(item, Text) and item.text in SPOTS]
    assert len(names) == len(spots)
    assert not [name for name in names for spot in spots if name.overlaps(at(spot.rect))]


ROOM = '[wall]\nwidth = {0}\nheight = 2500\n[group]\ncentre_on = "wall"\nheight = {{ centre = 1400 }}\n'
"""A wall so many mm wide, for the paste papers, whose places are found: 1960 mm."""


def test_places_that_were_found_stay_on_another_wall_and_so_the_paper_serves(folder: Path) -> None:
    run("start", "--sample", "paste-papers", "papers.toml")
    (folder / "hall.toml").write_text(ROOM.format(2600))
    ran = run("template", "papers.toml", "--wall", "hall.toml")
    assert "no sheet is needed" in ran.out + ran.err
    (folder / "closet.toml").write_text(ROOM.format(1700))  # where they do not fit, others are found
    for wall, width in (("hall.toml", 2600.0), ("closet.toml", 1700.0)):
        job = job_on(Path("papers.toml"), Path(wall))
        here, own = plan_wall(job), plan_wall(job_on(Path("papers.toml"), None))
        assert all(0.0 <= hung.rect.x0 and hung.rect.x1 <= width for hung in here.frames)
        assert serves(own, here) == (wall == "hall.toml")


def test_the_frame_that_the_target_is_on_is_named_in_the_picture_of_the_wall() -> None:
    """On 13 ft of wall the target left no room of 2.5 mm for the name of a frame 14 1/2 in wide with two rings."""
    rings = Hanger(kind="rings", left=38.1, right=41.3, drop_left=81.0, drop_right=82.6)
    frames = [frame(name, 368.3, 463.55, hanger=rings) for name in ("B", "A", "C")]
    own = job(*frames, group=group((("B", "A", "C"),), gap=63.5))
    plan = on(own, Wall(name="", width=3962.4, height=2743.2), 1524.0)
    made = same_paper(plan_wall(own), plan, (), plan_sheets(plan, own.paper), "", job_lettering(plan.job))
    items = made.template.pages[0].page_items
    inside = next(at for at, item in enumerate(items) if isinstance(item, Text) and item.text == "target")
    assert [item.text for item in items[inside + 1 : inside + 4]] == ["B", "A", "C"]
