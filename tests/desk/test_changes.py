"""Every change at the desk is an edit of the job file's text, saved at once, or refused with the reason."""

import http.client
import itertools
import json
import random
import re
import threading
import time
import tomllib

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

import templates_gen as tg
from templates_gen.base.errors import MOST_FOUND, MOST_SAID
from templates_gen.base.geometry import Rect
from templates_gen.base.units import INCH
from templates_gen.desk.changes import DOINGS, changes
from templates_gen.desk.fields import field_words
from templates_gen.documents.check import check_plan
from templates_gen.documents.same_paper import serves
from templates_gen.documents.scale_page import scale_of
from templates_gen.job.arrangements import ARRANGEMENTS
from templates_gen.printer.store import load, profile_folder
from templates_gen.tolerance.statement import check_words, fine
from tests.desk.at_the_desk import LIBRARY, AtDesk, running
from tests.desk.test_every_field import CANAL
from tests.jobs import SAMPLES


@pytest.fixture
def desk(tmp_path):
    return AtDesk(tmp_path)


def raw(desk):
    return desk.got("/state")["raw"]


def frame(desk, name):
    return next(one for one in raw(desk)["frame"] if one["id"] == name)


def test_a_value_is_saved_at_once_and_the_rest_stays_as_it_was(desk):
    desk.put("frame", "A", "drop", value=" 2 3/4 ")
    assert desk.text == LIBRARY.replace('drop = "2 1/2"   # wire', 'drop = "2 3/4"   # wire')


def test_what_cannot_be_read_says_why_and_is_not_saved(desk):
    found = desk.put("frame", "A", "drop", value="2 3/4 furlongs", status=422)
    assert "'furlongs' is not a unit here" in found["problem"] and found["where"].endswith("drop")
    assert desk.text == LIBRARY


def test_a_field_that_is_emptied_is_taken_out(desk):
    desk.put("frame", "A", "drop", value="  ")
    assert "drop" not in frame(desk, "A")


@pytest.mark.parametrize(
    ("place", "typed", "held"),
    [
        ("wall built", "1965", 1965), ("wall public", "yes", True), ("wall worktop", "no", False),
        ("wall behind", "bathroom, kitchen", ["bathroom", "kitchen"]), ("fixing nails", "2", 2),
        ("fixing angle", "45,5", 45.5), ("frame A title", "1965", "1965"), ("frame B weight", " 3 lb", "3 lb"),
    ],
)  # fmt: skip
def test_what_is_typed_becomes_what_the_field_holds(desk, place, typed, held):
    *way, name = place.split()
    desk.put(*way, name, value=typed)
    table = frame(desk, way[1]) if way[0] == "frame" else raw(desk)[way[0]]
    assert table[name] == held


def test_undo_and_redo_go_through_the_whole_session(desk):
    texts = [desk.text]
    for value in ("3", "3 1/4", "3 1/2"):
        desk.put("frame", "B", "drop", value=value)
        texts.append(desk.text)
    for text in texts[-2::-1]:
        desk.brought("/undo", {})
        assert desk.text == text
    assert desk.brought("/undo", {})["undo"] is False
    for text in texts[1:]:
        desk.brought("/redo", {})
        assert desk.text == text
    desk.brought("/undo", {})
    desk.put("frame", "B", "drop", value="9")
    assert desk.got("/state")["redo"] is False


def test_an_edit_from_elsewhere_is_taken_in_and_can_be_undone(desk):
    desk.put("frame", "B", "drop", value="3")
    before = desk.got("/state")["number"]
    outside = desk.text.replace('title = "Bog moss"', 'title = "Peat moss"')
    desk.path.write_text(outside)
    state = desk.got("/state")
    assert state["number"] > before and frame(desk, "A")["title"] == "Peat moss"
    desk.put("frame", "C", "drop", value="4")
    assert desk.text == outside.replace('drop = "3 1/8"', 'drop = "4"')
    desk.brought("/undo", {})
    desk.brought("/undo", {})
    assert 'title = "Bog moss"' in desk.text and 'drop = "3"' in desk.text


def test_an_edit_from_elsewhere_that_cannot_be_read_is_told_and_not_overwritten(desk):
    desk.got("/state")
    broken = LIBRARY.replace("[paper]", "[paper")
    desk.path.write_text(broken)
    state = desk.got("/state")
    assert "TOML" in state["problem"]["problem"] and state["screen"]["frames"]
    assert "put it right" in desk.put("frame", "A", "drop", value="1", status=422)["hint"]
    assert desk.text == broken
    assert desk.brought("/undo", {})["problem"] is None
    assert desk.text == LIBRARY


def test_a_file_that_was_removed_is_told_and_comes_back_when_it_is_there_again(desk):
    desk.got("/state")
    desk.path.rename(desk.path.with_suffix(".away"))
    assert "renamed, moved or deleted" in desk.got("/state")["problem"]["problem"]
    desk.path.with_suffix(".away").rename(desk.path)
    assert desk.got("/state")["problem"] is None


def test_two_pages_never_mean_different_frames(desk):
    desk.change("remove", at=["frame", "A"])
    assert desk.put("frame", "A", "drop", value="1", status=409)["gone"]
    desk.put("frame", "B", "drop", value="1")
    assert (frame(desk, "B")["drop"], frame(desk, "C")["drop"]) == ("1", "3 1/8")


def test_frames_come_and_go_with_their_names_in_the_group(desk):
    desk.change("add frame", values={"width": "8", "height": "10"})
    assert raw(desk)["group"]["rows"] == [["A", "B"], ["C", "D"]]
    desk.put("frame", "D", "id", value="Dicranum")
    desk.change("remove", at=["frame", "A"])
    desk.change("copy frame", frame="B")
    assert raw(desk)["group"]["rows"] == [["B"], ["C", "Dicranum", "A"]]
    assert frame(desk, "A") == {"id": "A", "width": "11", "height": "14", "weight": "3 lb"}
    assert "# where people wait for the bus" in desk.text and "# the hooks from the ironmonger's" in desk.text


def test_the_last_frame_stays(desk):
    desk.change("arrange", kind="row")
    for name in "AB":
        desk.change("remove", at=["frame", name])
    assert "is the only one" in desk.change("remove", 422, at=["frame", "C"])["problem"]


@pytest.mark.parametrize(
    ("text", "held"),
    [
        ("F\t8\t10\nG\t9\t11", [("F", "8", "10"), ("G", "9", "11")]),
        ("id;width;height\nF;8;10", [("F", "8", "10")]),
        ("id\ttitle\twidth\theight\nF\tFeather\t8\t10\n", [("F", "8", "10")]),
    ],
)
def test_frames_are_pasted_from_a_spreadsheet(desk, text, held):
    desk.change("paste frames", text=text)
    found = [(one["id"], one["width"], one["height"]) for one in raw(desk)["frame"][3:]]
    assert found == held


@pytest.mark.parametrize("text", ["", "\n", "a\tb\tc\td\te\tf\tg\th", "A\t8\t10", "id,width,height\nX,8"])
def test_cells_that_cannot_be_used_are_refused_whole(desk, text):
    assert desk.change("paste frames", 422, text=text)["problem"]
    assert desk.text == LIBRARY


@pytest.mark.parametrize("kind", [*ARRANGEMENTS, "zap"])
def test_one_arrangement_becomes_another_or_the_wall_lacks_it(desk, kind):
    expected = 422 if kind in ("stairs", "zap") else 200
    assert desk.change("arrange", expected, kind=kind)
    if expected == 200:
        assert raw(desk)["group"]["arrangement"] == kind
        assert desk.change("arrange", kind="row")["arrangement"] == "row"


def test_rows_become_columns_by_where_the_frames_hang(desk):
    desk.change("arrange", kind="placed")
    desk.change("arrange", kind="rows")
    assert raw(desk)["group"]["rows"] == [["A", "B"], ["C"]]


def middles(desk):
    parts = desk.got("/state")["screen"]["frames"]
    return {
        part["name"]: ((part["rect"][0] + part["rect"][2]) / 2, (part["rect"][1] + part["rect"][3]) / 2)
        for part in parts
    }


def test_a_frame_that_is_dragged_hangs_there_and_no_other_moves(desk):
    before = middles(desk)
    lines = desk.got("/state")["lines"]
    x, y = before["A"][0] - 137.3, before["A"][1] + 41.9
    desk.change("move frame", frame="A", x=x, y=y)
    after = middles(desk)
    for name in "BC":
        assert after[name] == pytest.approx(before[name], abs=1e-6)
    # to the nearest 1/16 in of the two lines
    sixteenth = INCH / 16
    assert abs(after["A"][0] - x) <= sixteenth / 2 and abs(after["A"][1] - y) <= sixteenth / 2
    assert (after["A"][0] - lines["centre"]) / sixteenth == pytest.approx(
        round((after["A"][0] - lines["centre"]) / sixteenth)
    )
    desk.change("move frame", frame="C", x=before["C"][0], y=before["C"][1] - 200.0, held=["x", "y"])
    assert middles(desk)["C"] == pytest.approx((before["C"][0], before["C"][1] - 200.0), abs=1e-6)
    assert middles(desk)["A"] == pytest.approx(after["A"], abs=1e-6)
    assert desk.got("/state")["lines"] == pytest.approx(lines)


def test_a_feature_that_is_dragged_takes_the_group_above_it_along(desk):
    before = middles(desk)
    desk.change("move feature", feature="0 settle", x=50 * INCH, y=0)
    assert raw(desk)["wall"]["feature"][0]["left"] == "50 in"
    assert raw(desk)["wall"]["feature"][0]["bottom"] == 0  # it stays as it was written
    desk.put("group", "centre_on", value="settle")
    assert middles(desk)["C"][0] == pytest.approx((50 + 42) * INCH)
    assert middles(desk)["C"][1] == pytest.approx(before["C"][1])


def test_a_feature_that_is_renamed_keeps_the_group_above_it(desk):
    desk.put("wall", "feature", "0 settle", "name", value="bench")
    assert raw(desk)["group"]["height"]["above"] == "bench"


def test_something_new_on_the_wall_has_a_usual_size_in_the_middle(desk):
    desk.change("add feature", kind="door")
    feature = desk.got("/state")["screen"]["features"][-1]
    x0, _, x1, _ = feature["rect"]
    assert (x0 + x1) / 2 == pytest.approx(7 * 12 * INCH, abs=1) and x1 - x0 == pytest.approx(32 * INCH)


def test_a_new_switch_begins_beside_the_door_or_near_the_walls_end_and_never_under_a_frame(tmp_path):
    """10 cm from a door, 15 cm from the wall's end, to the inch: common practice, no source."""
    frames = '[[frame]]\nid = "A"\nwidth = 30\nheight = 40\n'
    desk = AtDesk(tmp_path, f'[job]\nunit = "in"\n[wall]\nwidth = 160\nheight = 96\n{frames}')

    def added():
        desk.change("add feature", kind="switch")
        x0, y0, x1, y1 = desk.got("/state")["screen"]["features"][-1]["rect"]
        frames = [Rect(*frame["rect"]) for frame in desk.got("/state")["screen"]["frames"]]
        assert not any(Rect(x0, y0, x1, y1).overlaps(frame) for frame in frames)
        assert x0 / INCH == pytest.approx(round(x0 / INCH), abs=1e-6)
        return x0, x1

    assert added()[0] == pytest.approx(150.0, abs=INCH / 2)
    desk.change("add feature", kind="door", values={"left": "20"})
    assert added()[0] == pytest.approx((20 + 32) * INCH + 100.0, abs=INCH / 2)  # the door is 32 in wide
    assert added()[1] == pytest.approx(20 * INCH - 100.0, abs=INCH / 2)  # on its other side


def test_something_new_on_a_wall_measured_in_cm_begins_in_whole_cm(tmp_path):
    frames = '[[frame]]\nid = "A"\nwidth = 30\nheight = 40\n'
    desk = AtDesk(tmp_path, f'[job]\nunit = "cm"\n[wall]\nwidth = 320\nheight = 240\n{frames}')
    desk.change("add feature", kind="furniture")
    feature = raw(desk)["wall"]["feature"][-1]
    assert (feature["width"], feature["height"]) == ("150 cm", "80 cm")  # 60 and 32 in, to the nearest 5 cm


def test_a_hanger_written_as_a_word_becomes_a_table_with_its_first_measure(desk):
    desk.put("frame", "A", "hanger", value="wire")
    desk.put("frame", "A", "hanger", "ring_depth", value="5")
    assert frame(desk, "A")["hanger"] == {"kind": "wire", "ring_depth": "5"}


RINGS = {"kind": "rings", "left": "1", "right": "2", "drop_left": "3", "drop_right": "4"}


@pytest.mark.parametrize(("seen", "field"), [("back", "drop_left"), ("front", "drop_right")])
def test_what_is_measured_from_behind_goes_to_the_side_that_the_file_means(desk, seen, field):
    desk.put("frame", "A", "hanger", value={**RINGS, "seen_from": seen})
    told = {one["name"]: one["shown"] for one in desk.got("/back", frame="A")["measures"]}
    assert told["drop_left"] == ("3 in" if seen == "back" else "4 in")
    desk.change("measure", frame="A", name="drop_left", value="3 1/2")
    assert frame(desk, "A")["hanger"] == {**RINGS, "seen_from": seen, field: "3 1/2"}
    told = {one["name"]: one["shown"] for one in desk.got("/back", frame="A")["measures"]}
    assert told["drop_left"] == "3 1/2 in"


def waited(desk, wanted):
    """The state once it is as wanted; a search goes on beside the requests."""
    for _ in range(600):
        state = desk.got("/state")
        if wanted(state):
            return state
        time.sleep(0.05)
    raise AssertionError("it has not come to that within half a minute")


def test_places_are_found_beside_the_work_and_stay_while_nothing_that_matters_changes(desk, short_searches):
    state = desk.change("arrange", kind="salon")
    assert state["finding"] is not None and state["screen"]["frames"] == []
    found = waited(desk, lambda state: state["screen"]["frames"])
    assert found["finding"] is None and {part["name"] for part in found["screen"]["frames"]} == {*"ABC"}
    again = desk.put("frame", "A", "title", value="Peat moss")  # no size, no place
    assert [part["rect"] for part in again["screen"]["frames"]] == [part["rect"] for part in found["screen"]["frames"]]
    made = desk.brought("/paper", {"kind": "template"})["files"]
    assert (desk.folder / made[0]).read_bytes() == tg.make_template(tg.read_job(desk.path)).pdf


def test_a_search_is_stopped_with_the_best_so_far(desk):
    for _ in range(9):
        desk.change("copy frame", frame="A")
    desk.change("arrange", kind="salon")
    desk.brought("/stop", {})
    found = waited(desk, lambda state: state["finding"] is None)
    # kept where they are shown: no later run would find the same
    assert found["noPlaces"] or (len(found["screen"]["frames"]), found["arrangement"]) == (12, "placed")


def test_frames_that_find_no_room_are_told_and_can_be_changed_again(desk, short_searches):
    desk.change("arrange", kind="salon")
    waited(desk, lambda state: state["screen"]["frames"])
    desk.put("frame", "C", "width", value="15'")
    told = waited(desk, lambda state: state["noPlaces"])
    assert told["problem"] is None
    desk.put("frame", "C", "width", value="16")
    waited(desk, lambda state: state["screen"]["frames"])


def test_arrangements_are_found_side_by_side_and_one_is_taken(desk, short_searches):
    desk.brought("/options", {})
    for _ in range(600):
        told = desk.got("/options")
        if told["done"] is None:
            break
        time.sleep(0.05)
    other = told["options"][-1]
    desk.change("place", middles=other["middles"])
    assert {name: pytest.approx(place) for name, place in other["middles"].items()} == middles(desk)


def test_a_cure_is_for_the_text_that_it_was_found_for(desk):
    desk.put("group", "height", value={"bottom": "30"})  # over the settle
    whole = desk.got("/found", whole="1")
    finding = next(one for one in whole["findings"] if one["cures"])
    changes = finding["cures"][0]["changes"]
    assert desk.change("cure", 409, text="another", changes=changes)["gone"]
    desk.change("cure", text=whole["text"], changes=changes)
    assert finding["text"] not in [one["text"] for one in desk.got("/found")["findings"]]


def test_how_exactly_it_hangs_is_said_as_check_says_it_never_cut_short(desk):
    expected = check_plan(tg.plan_wall(tg.read_job(desk.folder / "moss.toml")), desk.folder / "moss.toml").expected
    same = f" within {fine(expected.step, 'in')} of one line"
    assert f"all neighbours{same}" in check_words(expected, "in")[0]
    assert f"Neighbours hang{same}" in desk.got("/found", whole="1")["expected"]
    way = desk.got("/way", cover="nails")
    assert re.fullmatch(r"neighbours within \d\.\d\d in · \d+\.\d mm of one line", way["way"]["exact"])


@pytest.mark.parametrize(
    "data",
    [
        {}, {"do": "zap"}, {"do": "set"}, {"do": "set", "sets": [{"at": []}]}, {"do": "move frame"},
        {"do": "set", "sets": [{"at": [3], "value": 1}]}, {"do": "place", "middles": {"Q": [1, 2]}},
        {"do": "cure", "changes": 3}, {"do": "remove", "at": ["frame"]},
    ],
)  # fmt: skip
def test_a_request_that_makes_no_sense_is_refused_in_words(desk, data):
    found = desk.ask("POST", "/change", json.dumps(data).encode())
    assert found.status in (409, 422) and json.loads(found.content)["problem"]
    assert desk.text == LIBRARY


@pytest.mark.parametrize("body", [b"", b"[]", b"{", b"\xff", b"[" * 100_000])
def test_a_body_that_is_no_json_is_refused(desk, body):
    assert desk.ask("POST", "/change", body).status == 422


def test_a_picture_comes_to_lie_beside_the_job(desk):
    content = (SAMPLES / "images" / "fern-a.png").read_bytes()
    desk.brought("/picture", content, frame="A", name="../Bog moss.PNG")
    assert frame(desk, "A")["image"] == "bog-moss.png"
    assert desk.ask("GET", "/picture", frame="A").content.startswith(b"\xff\xd8\xff")
    for broken in (b"", b"<svg/>", b"\x89PNG cut", b"MZ"):
        desk.brought("/picture", broken, 422, frame="A", name="x.png")
    assert sorted(path.name for path in desk.folder.iterdir()) == ["bog-moss.png", "moss.toml"]


def test_the_template_of_the_desk_is_that_of_the_command(desk):
    made = desk.brought("/paper", {"kind": "template"})
    assert made["files"] == ["moss.pdf"]
    assert (desk.folder / "moss.pdf").read_bytes() == tg.make_template(tg.read_job(desk.path)).pdf
    assert desk.ask("GET", "/written", file="moss.pdf").content == (desk.folder / "moss.pdf").read_bytes()


def test_the_template_before_is_kept_at_the_desk_too(desk):
    desk.brought("/paper", {"kind": "template"})
    printed = (desk.folder / "moss.pdf").read_bytes()
    assert "kept" not in desk.brought("/paper", {"kind": "template"})["said"]
    desk.put("group", "height", value={"bottom": "40"})
    assert "moss-before.pdf" in desk.brought("/paper", {"kind": "template"})["said"]
    assert (desk.folder / "moss-before.pdf").read_bytes() == printed


@pytest.mark.parametrize("kind", ["proof", "measuring", "labels", "schedule", "form", "guide"])
def test_every_other_paper_is_made_and_shown(desk, kind):
    for name in desk.brought("/paper", {"kind": kind})["files"]:
        assert len(desk.ask("GET", "/written", file=name).content) > 100


def test_a_stop_keeps_the_template_from_being_made(desk):
    desk.put("group", "height", value={"bottom": "30"})
    assert "no template yet" in desk.brought("/paper", {"kind": "template"}, 422)["problem"]
    assert not (desk.folder / "moss.pdf").exists()


def test_somebody_elses_file_is_not_overwritten(desk):
    (desk.folder / "moss.pdf").write_bytes(b"%PDF-1.4 my letter")
    assert "already exists" in desk.brought("/paper", {"kind": "template"}, 422)["problem"]
    assert (desk.folder / "moss.pdf").read_bytes() == b"%PDF-1.4 my letter"


def test_a_template_gives_its_job_back(desk, tmp_path_factory):
    pdf = tg.make_template(tg.read_job(desk.path)).pdf
    name = desk.brought("/from-template", pdf, name="moss.pdf")["job"]
    assert (desk.folder / name).read_text() == LIBRARY and name != "moss.toml"
    assert desk.brought("/from-template", b"%PDF-1.4 a letter", 422, name="x.pdf")["problem"]


def test_a_new_wall_is_a_job_that_can_be_read(desk):
    data = {
        "job.title": "Bus shelter",
        "job.unit": "cm",
        "wall.width": "380",
        "wall.height": "245",
        "frame.width": "30",
        "frame.height": "40",
        "paper.size": "a4",
    }
    name = desk.brought("/new", data)["job"]
    job = tg.read_job(desk.folder / name)
    assert (name, job.title, job.wall.width, job.frames[0].height) == ("bus-shelter.toml", "Bus shelter", 3800, 400)
    assert "wall, height" in desk.brought("/new", {**data, "wall.height": "tall"}, 422)["where"]
    assert desk.brought("/new", data)["job"] == "bus-shelter-2.toml"


def test_frames_go_on_another_wall_and_the_old_job_stays_as_it_is(desk):
    before = desk.text
    name = desk.brought("/another-wall", {"title": "Moss in the new flat", "width": "11'", "height": "9'"})["job"]
    assert name == "moss-in-the-new-flat.toml" and desk.text == before
    old, new = tg.read_job(desk.path), tg.read_job(desk.folder / name)
    assert new.frames == old.frames and new.group.rows == old.group.rows
    assert (new.wall.width, new.wall.height) == pytest.approx((11 * 304.8, 9 * 304.8))  # feet
    assert new.wall.features == () and new.wall.build == "" and new.group.height.by == "centre"
    assert "# wire pulled taut" in (desk.folder / name).read_text(encoding="utf-8")
    assert desk.brought("/another-wall", {"title": "x", "width": "broad"}, 422)["where"] == "wall, width"


def test_remarks_on_the_old_wall_stay_with_it(desk):
    job = desk.brought("/sample", {"name": "seed-drawers"})["job"]
    assert "# the roof slopes" in (desk.folder / job).read_text(encoding="utf-8")
    name = desk.brought("/another-wall", {"title": "flat", "width": "5 m", "height": "3 m"}, job=job)["job"]
    text = (desk.folder / name).read_text(encoding="utf-8")
    assert "# the roof slopes" not in text and "# The tall middle one hangs on a cleat" in text


@pytest.mark.parametrize("sample", ["kiln-tiles", "lock-keepers", "seed-drawers", "paste-papers", "tile-rubbings"])
def test_every_arrangement_goes_on_another_wall(desk, sample):
    job = desk.brought("/sample", {"name": sample})["job"]
    name = desk.brought("/another-wall", {"title": "other", "width": "5 m", "height": "3 m"}, job=job)["job"]
    assert tg.read_job(desk.folder / name).frames == tg.read_job(desk.folder / job).frames
    assert desk.got("/state", job=name)["problem"] is None


def test_places_that_were_found_stay_on_another_wall_where_they_fit(desk):
    job = desk.job = desk.brought("/sample", {"name": "paste-papers"})["job"]
    waited(desk, lambda state: state["finding"] is None)
    own = tg.plan_wall(tg.read_job(desk.folder / job))
    for width, stays in (("5 m", True), ("1.7 m", False)):
        name = desk.brought("/another-wall", {"title": "x", "width": width, "height": "3 m"}, job=job)["job"]
        assert serves(own, tg.plan_wall(tg.read_job(desk.folder / name))) == stays


def test_every_sample_opens_at_the_desk(desk):
    listed = desk.got("/jobs")
    assert [one["name"] for one in listed["jobs"]] == ["moss.toml"]
    for sample in listed["samples"]:
        name = desk.brought("/sample", {"name": sample["name"]})["job"]
        assert desk.got("/state", job=name)["problem"] is None


def test_readings_become_moves(desk):
    planned = {"floor": "76 1/2 in", "level line": "18 1/4 in above", "left_edge": "12 1/4 in left"}
    assert desk.got("/state")["planned"]["A"] == planned  # 40 + 36 1/2 in up; half of the group's 24 1/2 in to the left
    rows = {"A": {"left": "76", "right": "76", "left_edge": "13 left"}, "B": {}}
    told = desk.brought("/correct", {"rows": rows})
    (found,) = told["frames"]
    assert found["name"] == "A  Bog moss  wire on one hook"
    assert found["lines"][0] == "Found: 1/2 in · 13 mm too low; 3/4 in · 19 mm too far left"
    assert found["lines"][1] == "Nail: up 1/2 in · 13 mm, right 3/4 in · 19 mm"
    assert told["foot"][0] == "Not read: frames B, C."
    assert "holds no reading" in desk.brought("/correct", {"rows": {}}, 422)["problem"]
    assert desk.brought("/correct", {"rows": {"A": {"left": "high", "right": "2"}}}, 422)["where"] == "(A), left"


def test_moved_nails_get_their_papers(desk):
    rows = {"A": {"left": "76", "right": "76", "left_edge": "13 left"}}  # its place is 76 1/2 up and 12 1/4 left
    assert desk.brought("/correct", {"rows": rows})["moves"]
    made = desk.brought("/paper", {"kind": "patches", "rows": rows})
    assert made == {"files": ["moss-patches.pdf"], "said": "1 nail"}
    assert (desk.folder / "moss-patches.pdf").read_bytes().startswith(b"%PDF")


def test_a_drop_that_was_measured_wrong_goes_into_the_job_once_it_is_put_right(desk):
    """Frame A hangs 1/2 in too low on a nail that was on its mark: it bears 2 in below its top edge, not 2 1/2."""
    before, rows = desk.text, {"A": {"left": "76", "right": "76", "left_edge": "13 left"}}
    (found,) = desk.brought("/correct", {"rows": rows})["frames"]
    assert found["keeps"] == [{"what": "drop 2 in", "when": "On the mark", "measures": {"drop": "2 in"}}]
    assert "was the old hook on its mark? Then put into the job: drop 2 in." in found["lines"][-1]
    desk.change("put right", frame="A", **found["keeps"][0])
    assert desk.text == before.replace('drop = "2 1/2" ', 'drop = "2 in" ')
    desk.brought("/undo", {})
    assert desk.text == before


@pytest.mark.parametrize("seen", ["front", "back"])
def test_what_was_put_right_goes_to_the_side_that_the_file_means(desk, seen):
    hanger = {"kind": "rings", "seen_from": seen, "left": "2", "right": "3", "drop_left": "4", "drop_right": "5"}
    desk.put("frame", "C", "hanger", value=hanger)
    desk.change(
        "put right", frame="C", measures={"drop_left": "4 1/2 in", "right": "3 1/4 in"}, fixing={"kind": "nail"}
    )
    (one,) = [one for one in tg.read_job(desk.path).frames if one.id == "C"]
    front = (2, 3.25, 4.5, 5) if seen == "front" else (3, 3.25, 4.5, 4)  # inches, as someone facing the wall sees them
    held = (one.hanger.left, one.hanger.right, one.hanger.drop_left, one.hanger.drop_right)
    assert held == pytest.approx([25.4 * each for each in front]) and one.fixing.kind == "nail"


@pytest.mark.parametrize("place", [("job", "frames"), ("group", "rows")])
def test_ten_thousand_letters_are_no_wall_of_text(desk, place):
    told = desk.put(*place, value="x" * 10_000, status=422)
    assert all(len(part) <= MOST_SAID for part in told.values())
    assert len(told["problem"]) <= 2 * MOST_FOUND


@pytest.mark.parametrize("place", [("wall", "outline"), ("wall", "stairs")])
def test_two_measures_are_asked_for_as_people_type_them(desk, place):
    value = "14" if place[-1] == "outline" else {"nosing": "14", "up": "right", "pitch": "37"}
    told = desk.put(*place, value=value, status=422)
    assert "found '14', expected how far across and how far up, with a comma between" in told["problem"]


def test_a_font_that_is_not_there_is_said_before_paper_is_made(desk):
    assert desk.put("paper", "font", value="letters.ttf", status=422)["where"] == "paper, font"
    (desk.folder / "letters.ttf").write_bytes(b"letters")
    desk.put("paper", "font", value="letters.ttf")


def test_examples_in_a_metric_job_are_metric(desk):
    inches = [
        (name, field["name"], field[unit])
        for name, table in desk.got("/fields")["tables"].items()
        for field in table
        for unit in ("cm", "mm")
        if field["kind"] == "length" and field[unit] and not field[unit].endswith((unit, "mm", "m"))
    ]
    assert inches == []


def test_every_table_of_the_page_has_the_words_of_the_job_file(desk):
    told = desk.got("/fields")
    assert {"feature", "frame", "hanger", "fixing", "group", "moulding", "paper", "studs", "wall"} < {*told["tables"]}
    assert all(one["means"] for table in told["tables"].values() for one in table)


@pytest.mark.parametrize("seed", range(3))
def test_a_server_that_is_killed_amid_edits_leaves_a_whole_file(tmp_path, seed):
    """Up to 200 random edits, ended by force somewhere among them: what was saved last is there, or the next."""
    rng, path = random.Random(seed), tmp_path / "moss.toml"
    path.write_text(LIBRARY)
    saved = [LIBRARY]
    with running(tmp_path, "moss.toml") as desk:
        kill = threading.Timer(rng.uniform(0.0, 1.5), desk.process.kill)
        while len(saved) <= 200:
            name, size = rng.choice("ABC"), f"{rng.randint(1, 6)} {rng.randint(1, 15)}/16"
            number = saved[-1].index(f'id = "{name}"')
            tail = re.sub(r'drop = "[^"]*"', f'drop = "{size}"', saved[-1][number:], count=1)
            following = saved[-1][:number] + tail
            try:
                status, _ = desk.change("moss.toml", do="set", sets=[{"at": ["frame", name, "drop"], "value": size}])
            except (OSError, http.client.HTTPException):
                break
            assert status == 200
            saved.append(following)
            if len(saved) == 2:
                kill.start()
        kill.join()
        desk.process.wait(10)
    assert path.read_text() in (saved[-1], following)
    assert len(saved) > 1


def test_a_starter_goes_where_each_system_looks_for_it(tmp_path):
    from templates_gen.desk.shortcut import put_shortcut

    jobs = tmp_path / "my walls"
    jobs.mkdir()
    linux, mac, windows = (put_shortcut(jobs, tmp_path, system) for system in ("linux", "darwin", "win32"))
    assert linux.relative_to(tmp_path).as_posix() == ".local/share/applications/templates-gen-desk.desktop"
    assert f"Path={jobs}\n" in linux.read_text() and "-m templates_gen desk\n" in linux.read_text()
    assert mac.stat().st_mode & 0o111 and f"cd '{jobs}'" in mac.read_text()
    assert f'cd /d "{jobs}"' in windows.read_text()


PARTS = st.sampled_from(
    ["frame", "A", "B", "wall", "feature", "0 settle", "1 switch", "group", "rows", "height", "place", "job", "hanger",
     "left", "id", "name", "drop", "fixing", "kind", "paper", "size", "studs", "frame_type", "x", "", 0, 1, 7, -1]
)  # fmt: skip
ANYTHING = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5) | PARTS,
    lambda inner: st.lists(inner, max_size=3)
    | st.dictionaries(st.sampled_from(["A", "kind", "left", "x"]), inner, max_size=3),
    max_leaves=6,
)  # fmt: skip
REQUESTS = st.fixed_dictionaries(
    {"do": st.sampled_from(sorted(DOINGS))},
    optional={
        "sets": st.lists(st.fixed_dictionaries({"at": st.lists(PARTS, max_size=4), "value": ANYTHING}), max_size=2),
        "at": st.lists(PARTS, max_size=4), "kind": st.sampled_from(["row", "rows", "placed", "door", ""]) | ANYTHING,
        "frame": PARTS, "name": PARTS, "value": ANYTHING, "x": ANYTHING, "y": ANYTHING, "held": ANYTHING,
        "feature": PARTS, "values": ANYTHING, "text": st.text(max_size=20), "middles": ANYTHING, "confirm": ANYTHING,
        "changes": ANYTHING,
    },
)  # fmt: skip


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
@example(request={"do": "remove", "at": []})
@given(request=REQUESTS)
def test_whatever_a_page_asks_the_file_stays_a_job_or_the_request_is_refused(tmp_path, request):
    desk = AtDesk(tmp_path)
    found = desk.ask("POST", "/change", json.dumps(request).encode())
    assert found.status in (200, 409, 422), found
    if found.status != 200:
        assert json.loads(found.content)["problem"]
        assert desk.text == LIBRARY
    assert tg.read_job(desk.path).frames
    json.loads(desk.ask("GET", "/state").content)


def test_every_arrangement_becomes_every_other_one(tmp_path):
    """On a wall with a stair and a plank, by whatever height the group hangs that the first one takes."""
    desk = AtDesk(tmp_path, CANAL, "weir.toml")
    kinds = next(one["choices"] for one in field_words()["tables"]["group"] if one["name"] == "arrangement")
    kinds = [kind for kind in kinds if kind != "salon"]  # whose places have to be found first
    plain = itertools.cycle([{"bottom": "40"}, {"above": "plank", "by": "5"}, {"centre": "50", "of": "A"}])
    for first, then in itertools.permutations(kinds, 2):
        desk.change("arrange", kind=first)
        height = {"above_nosings": "58"} if first == "stairs" else None if first == "around" else next(plain)
        desk.put("group", "height", value=height)
        desk.change("arrange", kind=then)
        assert desk.got("/state")["arrangement"] == then


def test_a_height_begins_where_the_group_hangs(desk):
    for way, also in (("centre", {}), ("top", {}), ("bottom", {}), ("above settle", {"above": "settle"})):
        before = desk.got("/state")
        amount = before["now"][way]
        desk.put("group", "height", value={"by" if also else way: amount, **also})
        assert desk.got("/state")["group"] == pytest.approx(before["group"])


def test_a_frame_by_which_the_group_hangs_keeps_that_under_another_name(desk):
    desk.put("group", "centre_on", value={"frame": "A", "over": "settle"})
    desk.put("group", "height", value={"centre": "58", "of": "A"})
    desk.put("frame", "A", "id", value="Q")
    desk.put("wall", "feature", "0 settle", "name", value="pew")
    group = desk.got("/state")["raw"]["group"]
    assert (group["centre_on"], group["height"]) == ({"frame": "Q", "over": "pew"}, {"centre": "58", "of": "Q"})
    desk.change("remove", at=["frame", "Q"])
    group = desk.got("/state")["raw"]["group"]
    assert (group["centre_on"], group["height"]) == ({"over": "pew"}, {"centre": "58"})


def test_frames_of_a_spreadsheet_are_taken_into_the_job(tmp_path):
    (tmp_path / "slips.csv").write_text(
        "id;title;width;height;drop;left;hanger\nS;One;8;10;1 1/2;;\nT;;9;12;;;sawtooth\n"
    )
    desk = AtDesk(tmp_path, LIBRARY.replace("[job]", '[job]\nframes = "slips.csv"').replace('["C"]', '["C", "S", "T"]'))
    before = desk.got("/state")
    refused = desk.put("frame", "S", "width", value="10", status=422)
    assert "slips.csv" in refused["problem"]
    desk.change("take in frames")
    after = desk.got("/state")
    assert after["frames"] == [one | {"own": at} for at, one in enumerate(before["frames"])]
    assert after["group"] == before["group"] and "slips" not in desk.text and "# wire pulled taut" in desk.text
    desk.put("frame", "S", "width", value="10")


def test_the_next_frame_is_like_the_last_one_unless_it_has_a_size(desk):
    desk.change("set", sets=[{"at": ["frame", "C", "hanger"], "value": {"kind": "rings", "left": "2", "right": "2",
                "drop_left": "3", "drop_right": "3", "seen_from": "back"}}])  # fmt: skip
    desk.change("add frame", like="C", values={"title": "Fork moss"})
    desk.change("add frame", like="B", values={"width": "8 x 10", "drop": "2"})
    told = {one["id"]: one for one in tomllib.loads(desk.text)["frame"]}
    rings = {"kind": "rings", "left": "2", "right": "2", "seen_from": "back"}  # its drops are still to be measured
    assert told["D"] == {
        "id": "D",
        "width": "16",
        "height": "20",
        "weight": "5 lb",
        "hanger": rings,
        "title": "Fork moss",
    }
    assert told["E"] == {"id": "E", "width": "8", "height": "10", "drop": "2"}


def test_a_width_typed_with_a_height_is_both(desk):
    desk.put("frame", "A", "width", value='8" x 10"')
    assert (frame(desk, "A")["width"], frame(desk, "A")["height"]) == ('8"', '10"')


def test_a_printer_is_measured_and_corrected_for(tmp_path, monkeypatch):
    desk = AtDesk(tmp_path)
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    assert desk.got("/printers")["printers"] == []
    scale = scale_of("letter").box
    wrong = {"name": "study", "paper": "letter", "across": f"{scale.width * 0.996} mm", "along": "12 mm"}
    assert "no more than 5% off" in desk.brought("/printers", wrong, 422)["problem"]
    right = wrong | {"along": f"{scale.height * 0.997} mm"}
    told = desk.brought("/printers", right)
    assert told["name"] == "study" and "99.60% across" in told["printers"][0]["about"]
    desk.brought("/paper", {"kind": "template", "printer": "study"})
    known = load(profile_folder(tmp_path / "config" / "templates-gen"), "study")
    assert (tmp_path / "moss.pdf").read_bytes() == tg.make_template(tg.read_job(desk.path), printer=known).pdf
    assert (tmp_path / "moss.pdf").read_bytes() != tg.make_template(tg.read_job(desk.path)).pdf
    assert desk.brought("/paper", {"kind": "template", "printer": "attic"}, 422)["problem"]


def test_a_file_that_is_gone_is_said_so_and_written_again(desk):
    desk.put("wall", "height", value="9'")
    text = desk.text
    desk.path.rename(desk.folder / "kelp.toml")
    told = desk.got("/state")
    assert told["gone"] and "renamed, moved or deleted" in told["problem"]["problem"] and told["raw"]["wall"]["height"]
    assert "renamed, moved or deleted" in desk.put("wall", "height", value="8'", status=422)["problem"]
    assert not desk.path.exists()  # nothing comes back that nobody asked for
    told = desk.brought("/again", {})
    assert (told["gone"], told["problem"], desk.text) == (False, None, text)
    desk.brought("/undo", {})
    assert desk.text == LIBRARY


def test_a_folder_that_nothing_can_be_written_in_is_said_on_the_first_page(desk, monkeypatch):
    assert desk.got("/jobs")["blocked"] == ""

    def full(path, content):
        raise OSError(30, "Read-only file system")

    monkeypatch.setattr("templates_gen.base.output._write", full)
    assert desk.got("/jobs")["blocked"].endswith("nothing can be written in this folder: Read-only file system")


@pytest.mark.parametrize(
    ("title", "name"), [("Con", "con-wall.toml"), ("AUX ", "aux-wall.toml"), ("lpt1", "lpt1-wall.toml")]
)
def test_a_new_wall_is_never_called_as_windows_calls_a_device(title, name, desk):
    data = {
        "job.title": title,
        "wall.width": "3 m",
        "wall.height": "2 m",
        "frame.width": "30 cm",
        "frame.height": "30 cm",
    }
    assert desk.brought("/new", data)["job"] == name


def test_what_two_desks_change_at_one_time_is_both_kept(tmp_path):
    one, other = AtDesk(tmp_path), AtDesk(tmp_path)
    other.got("/state")
    meanwhile = threading.Thread(target=other.put, args=("wall", "name"), kwargs={"value": "Stair hall"})

    def slowly(read):
        meanwhile.start()
        meanwhile.join(0.5)  # the other one has all the time to write
        return changes(read, {"do": "set", "sets": [{"at": ["job", "title"], "value": "Sphagnum"}]})

    one.desk.opened(one.job).change(slowly)
    meanwhile.join()
    assert 'title = "Sphagnum"' in one.text and 'name = "Stair hall"' in one.text
    assert raw(one) == raw(other)


def test_a_write_protected_job_stays_as_it_is(desk):
    desk.path.chmod(0o444)
    before = desk.text
    told = desk.put("job", "title", value="Sphagnum", status=422)
    assert "is write-protected" in told["problem"] and "take the protection off" in told["hint"]
    assert desk.text == before
