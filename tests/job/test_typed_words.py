"""What people type for a length, a size, a word or nothing: taken in answers, in the job file and in spreadsheets."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import InputError
from templates_gen.base.toml import toml
from templates_gen.cli.interview.job_text import job_text
from templates_gen.cli.interview.session import answered
from templates_gen.job.model import Job
from templates_gen.job.reading.building import build_job, read_job
from templates_gen.job.reading.other_words import MEANT, NOT_GIVEN, TWO_HOOKS, is_not_given, meant, two_sides
from templates_gen.job.tables.contents import field_of
from tests.cli.test_interview import told
from tests.running import MINIMAL, run

INCH = 25.4  # mm exactly (international yard and pound agreement, 1959)

UNITS = {"inches": "in", "inch": "in", '"': "in", "IN": "in", "Centimetres": "cm", "millimeters": "mm", "mm": "mm"}
BUILDS = {"sheetrock": "drywall", "gypsum": "drywall", "Gypsum board": "drywall", "brick": "masonry", "wood": "timber"}
KINDS = {
    "light switch": "switch",
    "socket": "outlet",
    "Receptacle": "outlet",
    "couch": "furniture",
    "sofa": "furniture",
}
HANGERS = {"D-rings": "rings", "d rings": "rings", "Wire": "wire", "saw tooth": "sawtooth", "French cleat": "cleat"}
FIXINGS = {"picture hook": "hook", "Hooks": "hook", "nails": "nail", "screws": "screw"}


def job(old: str = "", new: str = "", text: str = MINIMAL) -> Job:
    assert old in text
    return build_job(tomllib.loads(text.replace(old, new, 1) if old else text), Path("job.toml"))


@pytest.mark.parametrize("typed", UNITS)
def test_a_unit_in_words(typed):
    assert told("Tiles", "", typed).tables["job"]["unit"] == UNITS[typed]
    assert job('unit = "mm"', f"unit = {toml(typed)}").unit == UNITS[typed]


@pytest.mark.parametrize("typed", BUILDS)
def test_what_a_wall_is_built_of(typed):
    assert told("Tiles", "", "in", "120", "96", typed).tables["wall"]["build"] == BUILDS[typed]
    assert job("[wall]", f"[wall]\nbuild = {toml(typed)}").wall.build == BUILDS[typed]


@pytest.mark.parametrize("typed", KINDS)
def test_what_is_on_the_wall(typed):
    """A couch is furniture, and called a couch: what is hung above it can say so."""
    kind = KINDS[typed]
    name = typed.lower() if kind == "furniture" else kind
    state = told("Tiles", "", "in", "120", "96", *[""] * 6, typed, "", "1", *(() if kind == "furniture" else ("2",)))
    if kind == "furniture":
        state = answered(state, "0")
    (feature,) = state.tables["wall"]["feature"]
    assert feature["kind"] == kind and feature.get("name", kind) == name
    (feature,) = job('kind = "switch"', f"kind = {toml(typed)}").wall.features
    assert (feature.kind, feature.name) == (kind, name)


def test_a_group_hangs_above_a_couch_by_that_name():
    couch = '[[wall.feature]]\nkind = "couch"\nleft = 900\nbottom = 0\nwidth = 900\nheight = 700\n'
    both = f"{MINIMAL}{couch}[group]\ncentre_on = 'couch'\nheight = {{ above = 'couch', by = 200 }}\n"
    assert plan_wall(job(text=both)).group.y0 == 900.0  # 700 + 200
    assert len(job(text=f"{MINIMAL}{couch}{couch}").wall.features) == 3  # two without a name of their own
    with pytest.raises(InputError, match="which is 2 features"):
        job(text=both + couch)
    named = couch.replace("left", 'name = "red"\nleft')
    with pytest.raises(InputError, match="found 'red' twice"):
        job(text=f"{MINIMAL}{named}{named}")


START = ("Tiles", "", "in", "120", "96", *[""] * 6, "", "A", "", "8", "10", "")


@pytest.mark.parametrize("typed", HANGERS)
def test_what_is_on_a_frames_back(typed):
    hanger = told(*START, typed).tables["frame"][0]["hanger"]
    assert (hanger["kind"] if isinstance(hanger, dict) else hanger) == HANGERS[typed]
    more = ", left = 40, right = 40" if HANGERS[typed] in ("rings", "cleat") else ""
    for written in (f"{{ kind = {toml(typed)}{more} }}", *(() if more else (toml(typed),))):
        frame = job("drop = 60", f"drop = 60\nhanger = {written}").frames[0]
        assert frame.hanger.kind == HANGERS[typed]


@pytest.mark.parametrize("typed", FIXINGS)
def test_what_goes_into_the_wall(typed):
    assert told(*START, "wire", "2", "no", "", typed).tables["fixing"]["kind"] == FIXINGS[typed]
    for text in (f"[fixing]\nkind = {toml(typed)}\nbelow = 20\n", f"fixing = {{ kind = {toml(typed)}, below = 20 }}\n"):
        assert job(text=MINIMAL + text).frames[0].fixing.kind == FIXINGS[typed]


@pytest.mark.parametrize("typed", ["two hooks", "2 hooks", "Two Nails"])
def test_two_hooks_are_asked_how_far_apart_they_are(typed):
    """At the question what is on the back, and at the one what goes into the wall, for every frame on a wire."""
    state = told(*START, typed)
    assert state.question.ask == "How far apart are the two hooks of frame A?"
    state = answered(answered(state, "4"), "2 1/2")
    assert state.tables["frame"][0]["hanger"] == {"kind": "wire", "apart": "4", "drop_at_two": "2 1/2"}
    twin = answered(answered(answered(state, "same"), ""), "")
    assert twin.question.key == "hanger.drop_at_two"  # each frame has its own; the distance is that of the last
    assert twin.tables["frame"][1]["hanger"] == {"kind": "wire", "apart": "4"}

    state = told(*START, "wire", "2", "other", "B", "", "8", "10", "", "sawtooth", "1", "no", "", typed)
    kind = "nail" if "nail" in typed.lower() else "hook"
    assert state.tables["fixing"]["kind"] == kind
    state = answered(state, "1/2") if kind == "hook" else state
    assert state.question.ask == "How far apart are the two hooks of frame A?"
    state = answered(answered(state, "4"), "")
    hangers = [frame["hanger"] for frame in state.tables["frame"]]
    assert hangers == [{"kind": "wire", "apart": "4"}, "sawtooth"]
    assert state.question.key == "fixing.kind" and "frame B" in state.question.ask  # a sawtooth has its own
    text = job_text({**state.tables, "group": {}, "paper": {}})
    assert 'hanger = { kind = "wire", apart = "4" }' in text and "not measured yet" not in text  # A's drop on one is


def test_two_hooks_in_a_file_say_how_far_apart_they_are(tmp_path):
    frame = job("drop = 60", 'drop = 60\nhanger = { kind = "two hooks", apart = 90 }').frames[0]
    assert (frame.hanger.kind, frame.hanger.apart) == ("wire", 90.0)
    with pytest.raises(InputError, match="expected how far apart they are") as raised:
        job("drop = 60", 'hanger = "two hooks"')
    assert 'apart = "8 in"' in raised.value.hint
    frame = from_sheet(tmp_path, "id,width,height,hanger,apart\nA,300,200,two hooks,90\n").frames[0]
    assert (frame.hanger.kind, frame.hanger.apart) == ("wire", 90.0)


def from_sheet(folder: Path, sheet: str, unit: str = "mm") -> Job:
    head = MINIMAL.partition("[[frame]]")[0].replace('unit = "mm"', f'unit = "{unit}"\nframes = "frames.csv"')
    (folder / "job.toml").write_text(head)
    (folder / "frames.csv").write_text(sheet)
    return read_job(folder / "job.toml")


@pytest.mark.parametrize("typed", ["n/a", "none", "No", "-", "–", "N/A", "unknown"])
def test_nothing_is_said_in_many_ways(typed, tmp_path):
    state = told(
        "Tiles", typed, "in", "120", "96", typed, "", *[""] * 4, typed, "A", typed, "8", "10", typed, "", typed, typed
    )
    assert "client" not in state.tables["job"] and "build" not in state.tables["wall"]
    assert state.tables["frame"] == [{"id": "A", "width": "8", "height": "10", "hanger": "wire"}]
    assert state.question.key == "pictures"  # no feature, no title, no drop, no more frames
    frame = job("drop = 60", f"drop = {toml(typed)}\nweight = {toml(typed)}\ndepth = {toml(typed)}").frames[0]
    assert (frame.drop, frame.weight, frame.depth) == (None, None, None)
    frame = from_sheet(tmp_path, f"id,title,width,height,drop,weight\nA,{typed},300,200,{typed},{typed}\n").frames[0]
    assert (frame.drop, frame.weight) == (None, None)
    assert frame.title == ("" if typed in "-–" else typed)  # a picture may be called so; a dash is a blank cell


def test_an_answer_that_is_needed_and_a_word_that_means_something_stay():
    with pytest.raises(InputError):
        told("Tiles", "", "in", "none")  # a wall has a width
    assert told("Tiles", "", "in", "120", "96", "", "none").tables["wall"]["wiring"] == "none"
    assert told(*START[:12], "no").tables["frame"][0]["id"] == "no"
    with pytest.raises(InputError):
        told(*START, "none")  # something is on its back
    with pytest.raises(InputError, match="expected"):
        job("[wall]", '[wall]\nstairs = { nosing = "none", up = "right", pitch = 30 }')


SIZES = {
    "24x36": (24, 36), "24 x 36": (24, 36), "24 × 36": (24, 36), "24X36 in": (24, 36), '24" x 36"': (24, 36),
    "24 by 36": (24, 36), "14 3/8in x 20½": (14.375, 20.5), "2' x 5'2": (24, 62), "60.96 cm × 91.44 cm": (24, 36),
    "60.96 x 91.44 cm": (24, 36),
}  # fmt: skip
"""In inches, worked out by hand: 24 × 2.54 = 60.96, 36 × 2.54 = 91.44, 5 × 12 + 2 = 62."""


@pytest.mark.parametrize("typed", SIZES)
def test_width_and_height_in_one_answer(typed, tmp_path):
    size = tuple(side * INCH for side in SIZES[typed])
    state = told(*START[:14], typed)
    assert state.question.key == "frame.weight"
    frame = state.tables["frame"][0]
    made = job('unit = "mm"', 'unit = "in"', MINIMAL.replace("width = 300\nheight = 200", f"width = {toml(typed)}"))
    for one in (
        job(
            'unit = "mm"',
            'unit = "in"',
            MINIMAL.replace("300", toml(frame["width"])).replace("200", toml(frame["height"])),
        ),
        made,
        from_sheet(tmp_path, f"id;width;drop\nA;{cell(typed)};2\n", "in"),
    ):
        assert (one.frames[0].width, one.frames[0].height) == pytest.approx(size)


def cell(text: str) -> str:
    return '"' + text.replace('"', '""') + '"'


def test_walls_features_and_types_have_both_sides_in_one_too():
    text = MINIMAL.replace("width = 4000\nheight = 2600", 'width = "4 x 2.6 m"')
    text = text.replace("width = 86\nheight = 86", 'width = "86x86"')
    text = text.replace("width = 300\nheight = 200", 'type = "t"') + '[frame_type.t]\nwidth = "300 × 200"\n'
    assert job(text=text) == job(text=text) and job(text=text).wall == job().wall
    assert (job(text=text).frames[0].width, job(text=text).frames[0].height) == (300.0, 200.0)
    state = told("Tiles", "", "cm", "400 x 260", *[""] * 6, "door", "", "0", "", "90x200")
    assert state.tables["wall"]["width"] == "400" and state.tables["wall"]["height"] == "260"
    assert state.tables["wall"]["feature"][0]["height"] == "200" and state.question.key == "feature.clear"


def test_both_sides_and_a_height_are_one_too_many():
    with pytest.raises(InputError, match="found '300 x 200' and a height") as raised:
        job("width = 300", 'width = "300 x 200"')
    assert raised.value.where == "frame 1 (A), width"


def test_an_answer_of_both_sides_is_doubted_for_either():
    """The height of 36 cm, in a job of inches written as 0.9, is asked about though the question was the width."""
    answers = ["Tiles", "", "in", "120", "96", *[""] * 6, "", "A", "", "24 x 0.9"]
    ran = run("start", "job.toml", typed="\n".join(answers) + "\n")
    assert "warn" in ran.err and "7/8 in, less than" in ran.err.partition("warn")[2]


LENGTHS = {
    "5'2": 62, "5' 2": 62, "14 3/8in": 14.375, "14 3/8 inches": 14.375, "14-3/8 in": 14.375, '36"': 36, "36 inches": 36,
}  # fmt: skip
"""In inches, worked out by hand: 5 × 12 + 2 = 62, 3 / 8 = 0.375."""


@pytest.mark.parametrize("typed", LENGTHS)
def test_lengths_as_they_are_typed(typed, tmp_path):
    mm = LENGTHS[typed] * INCH
    assert job("drop = 60", f"drop = 60\ndepth = {toml(typed)}").frames[0].depth == pytest.approx(mm)
    sheet = f"id;width;height;depth\nA;300;200;{cell(typed)}\n"
    assert from_sheet(tmp_path, sheet).frames[0].depth == pytest.approx(mm)
    assert told("Tiles", "", "cm", typed).tables["wall"]["width"] == typed


@pytest.mark.parametrize("field", [*MEANT])
def test_every_word_that_stands_for_another_stands_for_a_known_one_and_is_none_itself(field):
    known = field_of(field).choices
    assert set(MEANT[field].values()) <= set(known) and not set(MEANT[field]) & {*known, *NOT_GIVEN, *TWO_HOOKS}
    assert all(meant(field, word.upper(), known) == word for word in known)
    assert all(meant(field, f" {other} ", known) == word for other, word in MEANT[field].items())


@given(st.text(max_size=20))
def test_any_text_is_two_sides_or_not_and_nothing_or_something(text):
    sides = two_sides(text)
    assert sides is None or all(any(map(str.isnumeric, side)) for side in sides)
    assert is_not_given(text) in (True, False)
