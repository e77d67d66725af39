"""Doubts just beyond their limit and just within it, in a sound job with one value changed.

Limits of one measure by itself are all recorded (tests/recorded/limits.py); here are those that rest on others.
"""

import os
import re
import struct
import tomllib

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.picture_files import shown_size
from templates_gen.base.record import replace
from templates_gen.base.units import parse_length
from templates_gen.checks import find
from templates_gen.cli.interview.doubting import doubt_words, doubts_at
from templates_gen.cli.interview.session import answered, begin, confirmed, taken_back
from templates_gen.job.reading.building import build_job
from tests.cli.test_interview import ONE, WALL
from tests.jobs import SAMPLES
from tests.running import run
from tests.slips import set_to, tables


def doubted(base, *changes):
    """The fields that are doubted once these paths have these values."""
    raw = tables(base)
    for path, value in changes:
        set_to(path, value)(raw)
    found = find(plan_wall(build_job(raw, SAMPLES / "job.toml")))
    return {value.rpartition(": ")[0] for each in found for value in each.confirm}


# The limits are those of checks/doubts/usual.py and of the rule's own file: worked out by hand where they are shares
LIMITS = [  # job, path, a value that is doubted, one that is not, the field as the doubt names it
    ("bakery", "fixing.angle", 4.5, 0, "frame 1, fixing, angle"),
    ("stair", "frame.3.drop", 1.9, 2.1, "frame D, drop"),  # 20 mm
    ("alphabet-column", "wall.width", 1010, 790, "wall, width"),  # 1010 mm hold its door, too
    ("stair", "wall.stairs.nosing", [18, 40], [18, 37], "wall, stairs, nosing"),  # 36 and a fifth of 18 are 39.6
    ("mill", "wall.feature.1.left", 2801, 2800, "feature 2 (door), left"),  # 3600 - 800
    ("mill", "wall.feature.0.height", 0, 510, "feature 1 (sideboard), height"),
    ("bakery", "wall.feature.0.left", 1.7, 1.9, "feature 1 (switch), left"),
    ("mill", "frame.0.hanger.drop_left", 112, 110, "frame A, hanger, drop_right"),  # the other is 91; 20 mm
    ("mill", "frame.0.hanger.drop_left", 19, 99, "frame A, hanger, drop_right"),  # 91, its figures swapped
    ("mill", "frame.0.hanger.left", 131, 129, "frame A, hanger, right"),  # the other is 42; 0.22 of 400
    ("mill", "frame.0.hanger.left", 24, 58, "frame A, hanger, right"),  # 42, its figures swapped
    ("bakery", "frame.1.drop", 7.0, 6.9, "frame 2, drop"),  # five twins or more: 1.6 times what they differ by
    (
        "settee",
        "frame.1.weight",
        "10.8 lb",
        "10.6 lb",
        "frame C, weight",
    ),  # its twin, which weighs 5.5 lb; 3.2 times that is 17.6
    ("bakery", "fixing.nails", 6, 5, "frame 1, fixing, nails"),
    ("bakery", "fixing.kind", "nail", "hook", "frame 1, fixing, kind"),
]


def test_a_short_wire_is_doubted_under_a_twentieth_of_a_small_frames_height():
    alone = {"job": {"title": "One", "unit": "cm"}, "wall": {"width": 400, "height": 250}}
    for drop, is_doubted in ((1.4, True), (1.6, False)):  # 0.05 of 30 cm are 1.5
        raw = {**alone, "frame": [{"id": "A", "width": 20, "height": 30, "drop": drop}]}
        found = find(plan_wall(build_job(raw, SAMPLES / "job.toml")))
        assert ("doubtful-drop" in {each.rule for each in found}) is is_doubted


@pytest.mark.parametrize(("base", "path", "beyond", "within", "field"), LIMITS)
def test_a_value_is_doubted_beyond_its_limit_and_not_within_it(base, path, beyond, within, field):
    assert field in doubted(base, (path, beyond))
    assert field not in doubted(base, (path, within))


def asked(base, *changes):
    """What is asked about each doubted field once these paths have these values."""
    raw = tables(base)
    for path, value in changes:
        set_to(path, value)(raw)
    found = find(plan_wall(build_job(raw, SAMPLES / "job.toml")))
    return " ".join(each.text for each in found if each.confirm)


def test_a_cleat_whose_screws_follow_the_studs_is_not_doubted():
    """A frame of 500 mm: studs 400 mm apart, one 20 mm from its left side; and one that is on no studs."""
    cleat = {"kind": "cleat", "screw_below": 22, "seen_from": "front"}
    field = "frame rack, hanger, right"
    assert field not in doubted("seed-drawers", ("frame.2.hanger", cleat | {"left": 20, "right": 80}))
    assert field in doubted("seed-drawers", ("frame.2.hanger", cleat | {"left": 20, "right": 140}))


@pytest.mark.parametrize(
    ("drops", "swapped"),
    [
        (("5,5", "5,8", "5,4", "7,5"), True),  # 7.5 was 5.7
        (("5,5", "5,8", "5,4", "7,3"), False),  # 3.7 is no twin's
        (("5,5", "5,8", "7,4", "7,5"), False),  # twins that differ anyway tell nothing
        (("5,5", "5,8", "5,4", "6,5"), False),  # 9 mm, and 5.6 if it were swapped, but near enough as it is
    ],
)
def test_two_figures_that_changed_places_are_seen_by_twins(drops, swapped):
    changes = [(f"frame.{at}.drop", drop) for at, drop in enumerate(drops)]
    raw = tables("bakery")
    for path, value in (*changes, ("frame.4.drop", "5,6"), ("frame.5.drop", "5,6")):
        set_to(path, value)(raw)
    text = " ".join(each.text for each in find(plan_wall(build_job(raw, SAMPLES / "job.toml"))))
    assert ("Did two figures change places?" in text) == swapped


def test_a_window_that_reaches_the_floor_and_not_to_the_head_of_a_door_is_doubted():
    window = {"kind": "window", "left": 20, "width": 100}
    field = "wall.feature.0"
    assert "feature 1 (window), bottom" in doubted("bakery", (field, window | {"bottom": 0, "height": 120}))
    assert "feature 1 (window), bottom" not in doubted("bakery", (field, window | {"bottom": 0, "height": 215}))
    assert "feature 1 (window), bottom" not in doubted("bakery", (field, window | {"bottom": 90, "height": 120}))


def test_a_shelf_may_be_thin():
    shelf = {"kind": "furniture", "name": "ledge", "left": 20, "width": 100, "bottom": 90}
    field = "feature 1 (ledge), height"
    assert field not in doubted("bakery", ("wall.feature.0", shelf | {"height": 1.2}))
    assert field in doubted("bakery", ("wall.feature.0", shelf | {"height": 0.4}))


@pytest.mark.parametrize(
    ("weight", "ask"),
    [
        ("54 kg", "Is a decimal point missing?"),  # in lb it would still be too heavy, and nobody takes kg for oz
        ("20 kg", "Is a decimal point missing?"),
        ("8.1 kg", "Is it in lb, not kg?"),
        ("2.4 oz", "Is it in lb, not oz?"),
    ],
)
def test_a_weight_is_asked_about_in_the_unit_it_was_written_in(weight, ask):
    assert ask in asked("mill", ("frame.0.weight", weight))


def test_no_drop_is_asked_about_in_parts_of_a_foot():
    """3/16 in, in feet 2 1/4 in."""
    assert "ft" not in asked("settee", ("frame.1.drop", "3/16"))


def test_inches_are_asked_about_in_words():
    """20 cm wide furniture: 20 in would be 50.8 cm."""
    bench = {"kind": "furniture", "name": "bench", "left": 20, "width": 20, "bottom": 0, "height": 45}
    text = asked("bakery", ("wall.feature.0", bench))
    assert "Is it in inches?" in text and "the width of a bench" in text


def test_a_diameter_of_tenths_is_shown_as_it_is():
    assert "0.4 mm" in asked("bakery", ("fixing", {"kind": "screw", "diameter": "0.4 mm"}))


def test_a_group_that_hangs_beside_the_furniture_it_is_above_is_doubted():
    assert "group, height, above" in doubted("mill", ("group.centre_on", 1050))  # the sideboard's middle is at 1800
    assert "group, height, above" not in doubted("mill", ("group.centre_on", 1090))  # 0.4 of its 1800 are 720


def test_fixings_that_are_nearer_in_masonry_than_their_holes_may_be_are_doubted():
    near = [("frame.0.hanger.left", 186), ("frame.0.hanger.right", 185)]  # 29 mm on 400
    assert "nails A left and A right" in doubted("mill", *near)
    assert "nails A left and A right" not in doubted("mill", *near, ("wall.build", "timber"))  # 25 mm there


def test_a_picture_that_stands_in_a_frame_that_lies_is_doubted():
    turned = [("frame.1.width", "20 1/4"), ("frame.1.height", "16 1/4")]
    assert "frame B, width" in doubted("fern-prints", *turned)
    assert doubted("fern-prints") == set()


def test_what_was_seen_from_the_front_is_doubted_where_it_matters():
    front = [(f"frame.{at}.hanger.seen_from", "front") for at in range(2)]  # the third was seen from the back
    assert "frame A, hanger, seen_from" not in doubted("mill", *front, ("frame.0.hanger.right", 44))
    assert "frame A, hanger, seen_from" in doubted("mill", *front, ("frame.0.hanger.right", 39))  # 6 mm less than left
    assert "frame A, hanger, seen_from" not in doubted("mill", ("frame.0.hanger.right", 39))


@pytest.mark.parametrize(
    ("text", "meant"),
    [("31/8", "3 1/8"), ("143/8", "14 3/8"), ("71/16", "7 1/16"), ("315/16", "3 15/16"), ("8/8", "such as 3/8")],
)
def test_a_fraction_that_lost_its_space_is_refused_with_what_was_meant(text, meant):
    with pytest.raises(ValueError, match=meant):
        parse_length(text, "in")


@pytest.mark.parametrize("text", ["3 1/18", "1/11", "2 1/0"])
def test_a_fraction_that_no_tape_shows_is_refused(text):
    with pytest.raises(ValueError, match=r"no tape has|below one"):
        parse_length(text, "in")


def jpeg(width, height, orientation=None):
    """The beginning of a JPEG, with a camera's note of how it was held (ITU-T T.81, B.2; Exif 2.32, 4.6)."""
    notes = b""
    if orientation is not None:
        entry = struct.pack("<HHIHH", 0x0112, 3, 1, orientation, 0)
        body = b"Exif\0\0II*\0" + struct.pack("<I", 8) + struct.pack("<H", 1) + entry + b"\0\0\0\0"
        notes = b"\xff\xe1" + struct.pack(">H", len(body) + 2) + body
    return b"\xff\xd8" + notes + b"\xff\xc0" + struct.pack(">HBHH", 11, 8, height, width) + b"\1\1\x11\0" + b"\0" * 20


@pytest.mark.parametrize(
    ("content", "size"),
    [
        (b"\x89PNG\r\n\x1a\n" + struct.pack(">I4sII", 13, b"IHDR", 300, 400), (300, 400)),
        (jpeg(640, 480), (640, 480)),
        (jpeg(640, 480, 1), (640, 480)),
        (jpeg(640, 480).replace(b"\xff\xc0", b"\xff\xff\xff\xc0"), (640, 480)),  # bytes that only fill: T.81, B.1.1.2
        (jpeg(640, 480, 6), None),  # held upright: its sides change places as it is shown
        (b"GIF89a", None),
        (b"", None),
    ],
)
def test_the_size_of_a_picture_is_read_from_its_first_bytes(content, size, tmp_path):
    (tmp_path / "a").write_bytes(content)
    os.mkfifo(tmp_path / "pipe")  # is not waited for
    assert shown_size(tmp_path / "a") == size
    assert shown_size(tmp_path) is shown_size(tmp_path / "none") is shown_size(tmp_path / "pipe") is None


def told(*answers):
    """The state before the last answer, and after it."""
    states = [begin()]
    for answer in answers:
        states.append(answered(states[-1], answer))
    return states[-2], states[-1]


@pytest.mark.parametrize(
    ("answers", "words"),
    [
        (
            ("Tiles", "", "in", "381"),
            "Is it in cm? 381 cm is 150 in. If that is right, give the same answer again; < goes back.",
        ),
        (("Tiles", "", "in", "12' 6\"", "8"), "Is it in ft? 8 ft is 96 in."),
        ((*WALL, "furniture", "sofa", "100", "0", "2000", "0"), "What is its height?"),
        ((*WALL, "switch", "", "3950"), None),  # how wide it is, is not told yet
        ((*WALL, "switch", "", "3950", "1100", "80"), "beyond the wall's right end"),
        ((*WALL, "", "A", "", "300", "40", "", "wire", "4"), "less than is usual for a wire"),
        ((*WALL, "", "A", "", "300"), None),
        ((*ONE, "same", "B", "", "36"), "of the same size"),  # A's drop is 60, and 24 mm are not the wire
        ((*ONE, "same", "B", "", "65"), None),
    ],
)
def test_start_doubts_an_answer_as_soon_as_all_is_told_that_the_doubt_rests_on(answers, words):
    doubts = doubts_at(*told(*answers))
    assert bool(doubts) == (words is not None)
    if doubts:
        assert words in doubt_words(doubts)


BARE = ("Tiles", "", "cm", "420", "250", "", "", "", "", "", "no")
FOUR = ("A", "", "30", "40", "", "", "5", "same", "B", "", "5", "same", "C", "", "5", "same", "D", "", "5", "no", "")
HUNG = (*FOUR, "nail", "")
SOFA = ("furniture", "sofa", "5", "0", "200", "80", "", "")


@pytest.mark.parametrize(
    ("answers", "words"),
    [
        ((*BARE, "", *HUNG, "grid", "2"), None),
        ((*BARE, "", *HUNG, "row", "6", "wall", "centre"), None),
        ((*BARE, "", *HUNG, "grid", "2", "6", "wall", "centre", "105"), "Did two figures change places?"),
        ((*BARE, "", *HUNG, "grid", "2", "6", "wall", "centre", "150"), None),
        ((*BARE, *SOFA, *HUNG, "row", "6", "wall", "above"), "Group, height, above: sofa, but the group's middle is"),
        ((*BARE, *SOFA, *HUNG, "row", "6", "sofa", "above"), None),
        ((*BARE, *SOFA, *HUNG, "row", "30", "sofa", "above", "9"), "Did gap and height change places?"),
    ],
)
def test_start_doubts_how_a_group_hangs_as_soon_as_it_is_told(answers, words):
    doubts = doubts_at(*told(*answers))
    assert bool(doubts) == (words is not None)
    if doubts:
        assert words in doubt_words(doubts)


def test_what_is_confirmed_goes_into_the_job_and_is_taken_back_with_its_answer():
    before, after = told("Tiles", "", "in", "381")
    sure = confirmed(after, [doubt.confirming for doubt in doubts_at(before, after)])
    assert sure.tables["job"]["confirmed"] == ["wall, width: 381 in"]
    assert answered(sure, "96").tables["job"]["confirmed"] == ["wall, width: 381 in"]
    assert "confirmed" not in taken_back(sure).tables["job"]
    assert replace(taken_back(taken_back(answered(sure, "96"))), offers=()) == before


JOB = '[job]\nunit = "in"\n[wall]\nwidth = "381"\nheight = "96"\n[[frame]]\nid = "A"\nwidth = 16\nheight = 20\n'


def test_check_says_how_to_confirm_and_is_silent_once_it_is_done(tmp_path):
    path = tmp_path / "job.toml"
    path.write_text(JOB, encoding="utf-8")
    ran = run("check", path)
    line = 'confirmed = ["wall, width: 381 in"]'
    assert ran.code == 0 and "warn  Wall, width: 381 in, more than is usual" in ran.out
    assert line in " ".join(ran.out.split())
    path.write_text(JOB.replace("[job]", f"[job]\n{line}"), encoding="utf-8")
    assert "381 in, more" not in run("check", path).out


@pytest.mark.parametrize("height", ["96", "961"])
def test_what_is_to_be_confirmed_can_be_copied_as_it_is_shown(height, tmp_path):
    """In 80 letters to a line; a line's end within quotes would be no TOML."""
    path, text = tmp_path / "job.toml", JOB.replace('"96"', f'"{height}"')
    path.write_text(text, encoding="utf-8")
    shown = re.search(r"^ +confirmed = \[.*?\]$", run("check", path).out, re.DOTALL | re.MULTILINE)[0]
    assert len(tomllib.loads(shown)["confirmed"]) == (1 if height == "96" else 2)
    path.write_text(text.replace("[job]", f"[job]\n{shown}"), encoding="utf-8")
    assert "is asked about" not in run("check", path).out
