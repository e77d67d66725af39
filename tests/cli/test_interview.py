"""The questions of a job: what is typed comes through unchanged, every answer is checked, and can be taken back."""

import os
import tomllib
from pathlib import Path
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import TemplatesError
from templates_gen.base.record import replace
from templates_gen.checks import find
from templates_gen.cli.interview.certain import found_so_far
from templates_gen.cli.interview.doubting import doubts_at
from templates_gen.cli.interview.job_text import job_text
from templates_gen.cli.interview.kept import MOST, NAMES, forget, keep, left
from templates_gen.cli.interview.session import answered, begin, confirmed, job_so_far, taken_back
from templates_gen.job.reading.building import build_job, read_job
from tests.running import run

LENGTHS = ("14 3/8", "14-3/8", "1' 2 3/8\"", "36.5 cm", "0.365 m", "14½", "5 ft 2 in", "12″", "7,5", "200", "365 mm")
TEXTS = st.text(st.characters(exclude_categories=("Cs", "Cc")), min_size=1, max_size=12)
OPEN_TEXTS = ("job.title", "job.client", "feature.name", "frame.title")
SHORT = {"feature.kind": "", "more": "no", "others": ""}
MOST_REFUSED = 300
"""Answers in a row to one question: each has some that are taken.  Only to end the test, no source."""

MOST_ANSWERS = 40
"""After so many there is nothing more of what can go on for ever.  Only to end the test, no source."""


def any_answer(state, random, texts):
    """An answer that fits the question."""
    question = state.question
    if len(state.answers) > MOST_ANSWERS and question.key in SHORT:
        return SHORT[question.key]
    if question.key in SHORT:
        ids = [frame["id"] for frame in state.tables.get("frame", [])] if question.key == "others" else []
        return random.choice((*question.choices, *ids[-1:], *[SHORT[question.key]] * 3))
    if question.choices:
        return random.choice(question.choices)
    if question.key == "feature.name":
        return random.choice([*texts, ""])  # the others may be taken
    return random.choice(texts if question.key in OPEN_TEXTS else special(state).get(question.key, LENGTHS))


def special(state):
    """The answers to questions that ask neither for a length nor for any text."""
    ids = [frame["id"] for frame in state.tables.get("frame", []) if "id" in frame]
    listed = [", ".join(ids), f"{', '.join(ids[:1])} / {', '.join(ids[1:])}"]
    return {
        "file": ("job.toml",),
        "frame.weight": ("", "4.2 lb", "1,9 kg", "850 g"),
        "wall.built": ("", "1965", "1200"),
        "frame.id": ("", f"F{len(ids) + 1}", f'no. {len(ids)} "north"'),
        "group.across": ("1", "3"),
        **{f"group.{side}": ("", *ids) for side in ("left", "above", "right", "below")},
        "stairs.run": ("280", "11 in"),
        "stairs.rise": ("170", "7 in"),
        "stairs.steps": ("", "13"),
        "fixing.rating": ("", "20 lb"),
        "group.centre_on": ("", "wall", "2 m"),
        "group.columns": listed,
        "group.rows": listed,
        "paper.size": ("", "a3", "roll 24 in"),
    }


@st.composite
def interviews(draw):
    """A whole interview, after each answer; one that is refused (a name twice, only blanks) is followed by another."""
    random, texts = Random(draw(st.integers(0, 2**32))), ["Ferns", *draw(st.lists(TEXTS, max_size=6))]
    states, refused = [begin()], 0
    while (state := states[-1]).question is not None:
        try:
            states.append(answered(state, any_answer(state, random, texts)))
            refused = 0
        except TemplatesError:
            refused += 1
            assert refused < MOST_REFUSED, (state.question, state.answers)  # a question that nothing answers
    return states


def tables_of(state):
    return {name: table for name, table in state.tables.items() if name != "file"}


@settings(max_examples=40, deadline=None)
@given(states=interviews(), typed=st.text(max_size=12), at=st.integers(0, 100))
def test_an_interview_makes_the_job_of_its_answers_and_any_can_be_taken_back(states, typed, at, tmp_path_factory):
    """Both of the same interviews, for an interview takes longer than what is asked of it."""
    makes_the_same_job(states[-1], tmp_path_factory)
    can_be_taken_back(states[at % (len(states) - 1)], typed)


def makes_the_same_job(state, tmp_path_factory):
    """The job file that is written is the answers."""
    text = job_text(state.tables)
    assert tomllib.loads(text) == tables_of(state)
    path = tmp_path_factory.mktemp("job") / "job.toml"
    path.write_text(text, encoding="utf-8")
    job, built = read_job(path), build_job(tables_of(state), path)
    # a file has its fields in an order of its own
    one, two = (replace(each, sources=(), written=tuple(sorted(each.written))) for each in (job, built))
    assert one == two
    if job.group.arrangement != "salon":  # for which this wall may have no room
        assert len(plan_wall(job).frames) == len(state.tables["frame"])


def can_be_taken_back(before, text):
    """Whatever is typed, unless it is refused."""
    try:
        after = answered(before, text)
    except TemplatesError as error:
        assert str(error)
        return
    back = taken_back(after)
    assert replace(back, offers=()) == before
    assert back.offered is not None and back.offered.default in (after.answers[-1], before.question.default)
    assert answered(back, "").answers == after.answers or not after.answers[-1]
    job_so_far(after.tables)


def told(*answers):
    state = begin()
    for answer in answers:
        state = answered(state, answer)
    return state


WALL = ("Tile rubbings", "", "mm", "4000", "2600", "", "", "", "", "", "")
"""No stair runs along it."""
ONE = (*WALL, "", "A", "", "300", "200", "", "wire", "60")


@pytest.mark.parametrize(
    "before, wrong, words",
    [
        ((), "", "expected an answer"),
        (("Tiles", ""), "yd", "expected one of in, cm, mm"),
        (("Tiles", ""), "m", None),  # the only one that begins so
        (WALL[:3], "4 000", "expected a length"),
        (WALL[:3], "0", "expected the wall's width"),
        (WALL[:3], "201 m", "at most 200 m"),  # units.LONGEST
        (WALL[:5], "straw", "expected one of drywall"),
        (WALL[:7], "65", "a year such as 1965"),
        (WALL[:7], "old", "a whole number"),
        (WALL[:8], "maybe", "expected one of yes, no"),
        ((*WALL, "", "A", "", "300", "200"), "2", "a weight with its unit"),
        ((*WALL, "furniture", "pallets"), "hammock", "expected one of bed, seat, cot, other"),
        ((*WALL, "door", "", "0", "0"), "-3", "zero or more"),
        ((*WALL, "door", "x", "0", "0", "9", "9", "", "window"), "x", "found 'x' twice"),
        ((*WALL, ""), "A/B", "without , and /"),
        ((*WALL, "", "A", ""), "0", "more than nothing"),
        ((*ONE, "same"), "A", "found 'A' twice"),
        ((*ONE, "same", "B", "", "", "no", "", "", "", "rows"), "A / C", "found 'C', which is not a frame"),
        ((*ONE, "same", "B", "", "", "no", "", "", "", "rows"), "A", "frame B is missing"),
        ((*ONE, "same", "B", "", "", "no", "", "", "", "rows"), "A, B", None),
        ((*ONE, "same", "B", "", "", "no", "", "", "", "rows"), "A B", None),
        ((*ONE, "same", "B", "", "", "no", "", "", "", "grid"), "two", "a whole number"),
        ((*ONE, "no", "", ""), "the door", "expected 'wall', the name of a feature"),
        ((*ONE, "no", "", ""), "door 2", "expected 'wall', the name of a feature"),
        ((*ONE, "no", "", "", "", "", ""), "a44", "expected a paper size"),
        ((*ONE, "no", "", "", "", ""), "plotter", "expected one of linked, outlines, shop"),
        ((), "a\x07b", "control character"),
        ((), "\ud800", "text that is not UTF-8"),
    ],
)
def test_an_answer_is_checked_at_once(before, wrong, words):
    state = told(*before)
    if words is None:
        assert answered(state, wrong).question != state.question
        return
    with pytest.raises(TemplatesError) as raised:
        answered(state, wrong)
    assert words in str(raised.value)


def test_another_like_the_last_has_its_size_and_hanger_and_a_drop_of_its_own():
    rings = ("B", "", "400", "500", "", "rings", "30", "35", "70", "71")
    one, two, three, four = told(
        *ONE, "same", "B1", "Wheat", "", "other", *rings, "same", "C", "", "31", "36", "72", "", "no"
    ).tables["frame"]
    assert (one["width"], one["height"], one["hanger"], one["drop"]) == ("300", "200", "wire", "60")
    assert two == {"id": "B1", "title": "Wheat", "width": "300", "height": "200", "hanger": "wire"}
    assert three["hanger"]["drop_right"] == "71"
    assert (four["width"], four["height"]) == ("400", "500")
    assert four["hanger"] == {"kind": "rings", "seen_from": "back", "left": "31", "right": "36", "drop_left": "72"}


def test_what_is_checked_for_safety_is_asked_and_may_be_left_open():
    wall = told(*WALL[:7], "1965", "yes", "n").tables["wall"]
    assert (wall["built"], wall["earthquake"], wall["public"]) == (1965, True, False)
    assert not {"built", "earthquake", "public"} & set(told(*WALL).tables["wall"])
    text = job_text(told(*WALL[:7], "", "", "no", "", *ONE[len(WALL) :], "no", "", "", "", "", "", "").tables)
    assert "# built = 1965" in text and "# earthquake = true" in text and "\npublic = false" in text


def test_another_like_the_last_weighs_the_same():
    one, two = told(*WALL, "", "A", "", "300", "200", "1.9 kg", "wire", "60", "same", "B", "", "61", "no").tables[
        "frame"
    ]
    assert one["weight"] == two["weight"] == "1.9 kg"


@pytest.mark.parametrize("name", ["", "pallets"])
def test_what_furniture_is_used_for_is_asked_where_its_name_does_not_tell(name):
    asked = told(*WALL, "furniture", name)
    assert asked.question.key == "feature.use" and asked.question.open
    assert answered(asked, "be").tables["wall"]["feature"][0]["use"] == "bed"
    assert "use" not in answered(asked, "").tables["wall"]["feature"][0]


@pytest.mark.parametrize("name", ["sofa", "Wickeltisch", "lit de bébé", "mesa", "chest of drawers"])
def test_what_furniture_is_used_for_is_not_asked_where_its_name_tells(name):
    assert told(*WALL, "furniture", name).question.key == "feature.left"


def test_only_furniture_is_used():
    assert told(*WALL, "door", "").question.key == "feature.left"


def test_an_answer_may_be_as_short_as_it_is_clear():
    assert told(*WALL[:5], "mas").tables["wall"]["build"] == "masonry"
    with pytest.raises(TemplatesError, match="found 'c', expected one of column, columns"):
        answered(told(*ONE, "same", "B", "", "", "no", "", "", ""), "c")  # column or columns


def test_a_name_is_offered_that_no_frame_has():
    assert told(*WALL, "", "", "", "300", "200", "", "wire", "60", "same").question.default == "B"
    assert told(*WALL, "", "B", "", "300", "200", "", "wire", "60", "same").question.default == "A"


def test_only_a_feature_with_a_name_of_its_own_is_offered_to_hang_above():
    outlet = ("outlet", "", "0", "300", "80", "80", "")
    choices = told(*WALL, *outlet, *outlet, *ONE[len(WALL) :], "no", "", "", "").question.choices
    assert "above" not in choices
    assert "above" in told(*WALL, *outlet, *ONE[len(WALL) :], "no", "", "", "").question.choices


def test_the_file_is_asked_for_last_and_has_the_title_for_a_name():
    state = told(*ONE, "no", "", "", "", "", "", "")
    assert (state.question.key, state.question.default) == ("file", "tile-rubbings.toml")
    refused = []
    done = answered(state, "", refused.append)
    assert (done.question, refused) == (None, [Path("tile-rubbings.toml")])
    with pytest.raises(ValueError, match="there are no more questions"):
        answered(done, "")


def test_the_job_file_says_which_drops_are_still_to_be_measured():
    rings = ("B", "", "400", "500", "", "rings", "30", "35", "70", "")
    state = told(*ONE[:-1], "", "other", *rings, "other", "C", "", "9", "9", "", "", "", "no", *[""] * 11)
    text = job_text(state.tables)
    assert text.count("not measured yet") == 3
    assert text.count("\n# drop = ") == 2  # what a drop is, is said once
    assert "\n# not measured yet; from the top edge down" in text
    assert text.count('\n# not measured yet\n# drop = "7.9 cm"\n') == 1
    assert "\n# not measured yet: drop_right of the hanger" in text


@pytest.mark.parametrize(
    ("printed", "kind", "cover"),
    [
        ("linked", "sheets", "linked"),
        ("", "sheets", "marks"),
        ("outlines", "sheets", "marks"),
        ("sh", "one piece", "panels"),
    ],
)
def test_how_it_will_be_printed_is_asked_and_kept(printed, kind, cover, folder, monkeypatch):
    monkeypatch.setenv("XDG_CONFIG_HOME", str(folder / "config"))
    state = told(*ONE, "no", "", "", "", "", printed, "a4", "ferns.toml")
    (folder / "ferns.toml").write_text(job_text(state.tables), encoding="utf-8")
    job = read_job(folder / "ferns.toml")
    assert (job.paper.kind, job.paper.cover, job.paper.name) == (kind, cover, "a4")
    assert run("template", "ferns.toml").code == 0
    assert (folder / "ferns-print-shop.txt").exists() == (kind == "one piece")
    if kind == "one piece":  # another cover goes before it, and a printer at home does not
        ran = run("template", "ferns.toml", "--cover", "marks", "--force")
        assert ran.code == 0 and "of a4 paper" in ran.out
        run("printer", "record", "study", "--paper", "a4", "--across", "179.4", "--along", "260.4")
        ran = run("template", "ferns.toml", "--printer", "study")
        assert ran.code == 2 and "the job is for a print shop" in ran.err


def test_what_is_taken_back_is_offered_again_and_what_is_told_after_it():
    state = told(*ONE, "same", "B", "Wheat", "61")
    for _ in range(4):  # the drop, the title, the name, and that there is another
        state = taken_back(state)
    assert (state.question.key, state.offered.default) == ("more", "same")
    state = answered(state, "")
    assert state.offered.default == "B"
    state = answered(state, "C")  # another name than it had
    assert state.offered.default == "Wheat"
    state = answered(answered(state, ""), "")
    assert state.tables["frame"][1] == {
        "id": "C", "title": "Wheat", "width": "300", "height": "200", "hanger": "wire", "drop": "61"
    }  # fmt: skip
    # of another frame nothing is offered that was never told
    assert answered(answered(state, "same"), "D").offered.default == ""


def test_an_interview_that_was_left_is_gone_on_with(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    state = confirmed(told(*ONE, "same", "B"), ["frame A, drop: 60 mm"])
    place = tmp_path / "kept" / "here"
    assert left(place, "") is None
    keep(state, place)
    assert left(place, "") == state
    assert left(place, "other.toml") is None  # it was for no file of that name
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    monkeypatch.chdir(elsewhere)
    assert left(place, "") is None  # the files that it may name lie in another folder
    monkeypatch.chdir(tmp_path)
    forget(state, place)
    assert left(place, "") is None


def test_each_job_that_was_begun_is_kept_and_the_oldest_go(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    states = [replace(told(*WALL[: 3 + number % 2]), file=f"{number}.toml") for number in range(MOST + 2)]
    for number, state in enumerate(states):
        keep(state, tmp_path)
        for path in tmp_path.iterdir():  # as if a day went by
            os.utime(path, ns=(0, path.stat().st_mtime_ns - 10**9 * 86_400))
        assert left(tmp_path, "") == left(tmp_path, f"{number}.toml") == state
    assert [left(tmp_path, f"{number}.toml") for number in range(MOST + 2)] == [None, None, *states[2:]]


@pytest.mark.parametrize(
    "text", ["", "[]", "{", '{"format": 2}', '{"format": 1, "answers": 5, "confirmed": []}', "\udcff", "null"]
)
def test_answers_kept_in_no_form_that_is_known_are_left_alone(text, tmp_path):
    (tmp_path / NAMES.replace("*", "x")).write_bytes(text.encode("utf-8", "surrogateescape"))
    assert left(tmp_path, "") is None


def test_of_answers_that_were_kept_those_are_taken_that_still_do(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    keep(told(*WALL), tmp_path)
    (path,) = tmp_path.glob(NAMES)
    path.write_text(path.read_text(encoding="utf-8").replace('"4000"', '"4 yd"'), encoding="utf-8")
    assert left(tmp_path, "").answers == WALL[:3]


def read_of(state, folder):
    """The job that the answers come to, read from the file that they are written to."""
    path = folder / "job.toml"
    path.write_text(job_text(state.tables), encoding="utf-8")
    return read_job(path)


SOFA = ("sofa", "", "1000", "0", "2000", "800", "")
RINGS = ("M", "Looking glass", "600", "900", "10 kg", "rings", "50", "52", "108", "106")
WIRES = ("same", "B", "", "61")
TEETH = ("other", "S", "", "200", "250", "0.7 kg", "sawtooth", "11", "same", "T", "", "12")
HUNG = ("hook", "28", "22 kg", "hook", "22", "9 kg", "nail", "")
"""What goes into the wall for the looking glass, for the wires, and for the sawtooth hangers."""


def test_a_mixed_wall_is_finished_without_an_editor(tmp_path):
    wires = ("other", "A", "", "400", "500", "2.5 kg", "wire", "60", *WIRES)
    state = told(
        *WALL, *SOFA, "", *RINGS, *wires, *TEETH, "no", "", *HUNG, "columns", "S, A / M / B, T", "", "", "sofa"
    )
    state = answered(state, "above")
    for answer in ("180", "", "", "job.toml"):
        state = answered(state, answer)
    assert state.question is None
    job = read_of(state, tmp_path)
    fixings = {frame.id: (frame.fixing.kind, frame.fixing.below, frame.fixing.rating) for frame in job.frames}
    assert fixings["M"] == ("hook", 28.0, 22.0) and fixings["A"] == fixings["B"] == ("hook", 22.0, 9.0)
    assert fixings["S"] == fixings["T"] == ("nail", None, None)
    assert [found.text for found in find(plan_wall(job)) if found.level == "stop"] == []


def test_some_frames_may_have_a_fixing_of_their_own():
    state = told(*ONE, "same", "B", "", "61", "same", "C", "", "62", "no", "", "hook", "22")
    assert state.question.key == "others" and state.question.open
    with pytest.raises(TemplatesError, match="found 'D', expected names of frames: A, B, C"):
        answered(state, "D")
    state = answered(state, "A, C")
    assert state.question.ask == "What goes into the wall for frames A, C?"
    one, two, three = answered(answered(state, "nail"), "").tables["frame"]
    assert one["fixing"] == three["fixing"] == {"kind": "nail"} and "fixing" not in two
    # and where it is the same after all, nothing is written
    same = answered(answered(answered(state, "hook"), "22"), "")
    assert not any("fixing" in frame for frame in same.tables["frame"])


def test_plates_take_a_screw_whatever_the_wires_beside_them_take():
    plates = ("other", "P", "", "400", "500", "", "plates", "60", "64", "512", "513")
    state = told(*ONE, *plates, "no", "", "hook", "22")
    assert (state.question.ask, state.question.default) == ("What goes into the wall for frame P (plates)?", "screw")
    with pytest.raises(TemplatesError, match="expected a screw"):
        answered(state, "nail")
    assert answered(state, "").tables["frame"][1]["fixing"] == {"kind": "screw"}


def test_two_hooks_are_told_for_wires_alone():
    state = told(*ONE, *TEETH, "no", "", "two hooks")
    assert state.question.key == "fixing.below"


def test_a_stair_is_asked_for_and_the_frames_climb_along_it(tmp_path):
    state = told(*WALL[:-1], "yes", "right", "280", "170", "500", "", "", "", *ONE[len(WALL) + 1 :])
    assert state.tables["wall"]["stairs"] == {
        "up": "right", "run": "280", "rise": "170", "nosing": ["500", "170"]
    }  # fmt: skip
    state = answered(answered(answered(answered(state, "same"), "B"), ""), "61")
    for answer in ("no", "", "", ""):
        state = answered(state, answer)
    assert (state.question.key, state.question.default) == ("group.arrangement", "stairs")
    for answer in ("", "", "", ""):  # stairs, the usual gap, the wall's middle, the usual height
        state = answered(state, answer)
    for answer in ("", "", "job.toml"):
        state = answered(state, answer)
    job = read_of(state, tmp_path)
    # 57 in above the nosings is the usual height: common practice
    assert (job.group.arrangement, job.group.height.by, job.group.height.at) == ("stairs", "above_nosings", 57 * 25.4)
    assert job.group.slope == pytest.approx(170 / 280)


def test_nothing_is_said_over_stairs_before_there_is_a_frame():
    stair = (*WALL[:-1], "yes", "right", "280", "170", "500", "", "", "")
    assert found_so_far(told(*stair)) == ()
    framed = found_so_far(told(*stair, *ONE[len(WALL) + 1 :]))
    assert [finding.rule for finding in framed] == ["stair-footing"] and "Frame A:" in framed[0].text


def test_frames_are_told_around_a_feature(tmp_path):
    window = ("window", "", "1500", "900", "900", "1200", "")
    frames = (*ONE[len(WALL) + 1 :], "same", "B", "", "61", "same", "C", "", "62", "no", "", "", "")
    state = told(*WALL, *window, "", *frames, "around")
    assert state.question.ask == "Which frames hang on its left, from the top?"
    with pytest.raises(TemplatesError, match="found 'X', which is not a frame"):
        answered(state, "X")
    state = answered(answered(state, "A"), "none")
    with pytest.raises(TemplatesError, match="A"):
        answered(state, "A")
    state = answered(state, "B")
    assert state.question.default == "C"  # what hangs nowhere else is below
    state = answered(answered(state, ""), "")
    assert state.question.key == "paper.print_shop"  # the feature says where they hang
    for answer in ("", "", "job.toml"):
        state = answered(state, answer)
    assert read_of(state, tmp_path).group.rows == (("A",), (), ("B",), ("C",))


def test_places_may_be_found_and_pictures_told(tmp_path):
    state = told(*ONE, "same", "B", "", "61", "no", "yes", "images/a.png", "", "", "", "salon")
    assert state.question.key == "group.gap"
    assert [frame.get("image") for frame in state.tables["frame"]] == ["images/a.png", None]
    for answer in ("", "", "", "", "", "job.toml"):
        state = answered(state, answer)
    assert read_of(state, tmp_path).group.arrangement == "salon"


def test_studs_are_asked_for_where_there_may_be_some():
    assert told(*WALL[:5], "masonry").question.key == "wall.wiring"
    state = told(*WALL[:5], "drywall", "235", "640")
    assert state.tables["wall"]["studs"] == {"first": "235", "second": "640"}
    assert "studs" not in told(*WALL[:5], "drywall", "").tables["wall"]


@pytest.mark.parametrize(
    ("first", "second", "sound", "doubted"),
    [("320", "0", "720", "wall, studs, first"), ("235", "1200", "640", "wall, studs, spacing")],
)
def test_a_second_stud_that_makes_an_odd_spacing_is_doubted_at_once(first, second, sound, doubted):
    """320 and 965 mm from one to the next; studs are built 400 or 600 mm apart (common practice, no source)."""
    before = told(*WALL[:5], "drywall", first)
    assert [doubt.place for doubt in doubts_at(before, answered(before, second))] == [doubted]
    assert doubts_at(before, answered(before, sound)) == ()


@pytest.mark.parametrize(("slip", "meant"), [("2nd shelff", "2nd shelf"), ("sofaa", "sofa"), ("wal", "wall")])
def test_a_slip_in_a_name_is_asked_about_and_not_taken_for_a_length(slip, meant):
    shelf = ("other", "2nd shelf", "100", "900", "500", "30", "")
    state = told(*WALL, *SOFA, *shelf, *ONE[len(WALL) :], "no", "", "")
    with pytest.raises(TemplatesError) as raised:
        answered(state, slip)
    assert f"did you mean {meant!r}?" in str(raised.value) and "length" not in str(raised.value)


@pytest.mark.parametrize("leaving", ["skip", "Skip", "-"])
def test_an_answer_that_is_offered_again_can_be_left_out(leaving):
    state = taken_back(told("Tiles", "Owner"))
    assert state.offered.answers == ("Enter: Owner", "skip: no client")
    after = answered(state, leaving)
    assert after.tables["job"] == {"title": "Tiles"} and after.question.key == "job.unit"


def test_a_question_that_offers_nothing_to_leave_out_is_skipped_like_by_enter():
    state = told("Skip", "skip", "mm", "4000", "2500", "skip")
    assert (
        state.tables["job"] == {"title": "Skip", "unit": "mm"} and "build" not in state.tables["wall"]
    )  # a title is needed
    named = told(*WALL, "outlet", "skip", "100", "300", "80", "80", "skip", "no", "skip", "skip")
    assert named.tables["wall"]["feature"][0].get("name", "outlet") == "outlet" and named.tables["frame"] == [
        {"id": "A"}
    ]


ON_VENT = ("vent", "A", "1000", "2000", "200", "100", "", "")
"""A vent called A on the wall, and nothing more."""


@pytest.mark.parametrize(
    ("features", "name", "other"), [(ON_VENT, "A", "feature"), (("",), "40", "distance"), (("",), "A", "")]
)
def test_a_frames_name_that_may_mean_something_else_is_asked_about(features, name, other):
    state = told(*WALL, *features, name, "", "300", "200", "", "wire", "60", "no", "", "", name)
    if not other:
        assert state.question.key == "centre_on.over"
        return
    assert (state.question.ask, state.question.choices) == (
        f"Is {name} here the frame or the {other}?",
        ("frame", other),
    )
    assert answered(state, other).tables["group"]["centre_on"] == {"over": name}
    frame = answered(state, "frame")
    assert frame.question.ask == f"Over what does the middle of frame {name} go?"
    assert answered(frame, "").tables["group"]["centre_on"] == {"frame": name}
    job = job_so_far(answered(answered(frame, name), "").tables)
    assert (job.group.anchor, job.group.centre_on) == (name, 40.0 if other == "distance" else name)
