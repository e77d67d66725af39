"""A job file is changed at one place, and stays as it is at all others."""

import tomllib
from pathlib import Path

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from templates_gen.base.errors import InputError
from templates_gen.job.changes import Change, changed
from templates_gen.job.editing import edited

SAMPLES = sorted(Path("samples").resolve().glob("*.toml"))
TEXT = """\
# two prints for the mill's stair   (a remark that stays)
[job]
title = "Tile rubbings"   # as on the card
unit = "in"

[wall]
width = "12' 6\\""
height = 96

# what the baker sits on
[[wall.feature]]
kind = "furniture"
left = 3

[[frame]]
id = "A"
width = 8

[frame.hanger]
kind = "rings"
left = 1

# the one with the chipped corner
[[frame]]
id = "B"
width = 9

# the usual nail
[fixing]
kind = "nail"
"""


def lines_apart(before: str, after: str) -> tuple[set[str], set[str]]:
    """The lines that went, and those that came."""
    one, two = before.splitlines(), after.splitlines()
    return {line for line in one if line not in two}, {line for line in two if line not in one}


@pytest.mark.parametrize(
    ("place", "value", "gone", "come"),
    [
        (("wall", "height"), "8'", {"height = 96"}, {'height = "8\'"'}),
        (("job", "title"), 'A "B"', {'title = "Tile rubbings"   # as on the card'},
         {'title = "A \\"B\\""   # as on the card'}),
        (("job", "client"), "Mill Lane Bakery", set(), {'client = "Mill Lane Bakery"'}),
        (("frame", 1, "width"), None, {"width = 9"}, set()),
        (("frame", 0, "hanger", "left"), "1 1/4", {"left = 1"}, {'left = "1 1/4"'}),
        (("frame", 1, "hanger"), {"kind": "wire", "apart": "4"}, set(), {'hanger = { kind = "wire", apart = "4" }'}),
        (("group", "gap"), "2", set(), {"[group]", 'gap = "2"'}),
        (("frame", 1), None, {'id = "B"', "width = 9", "# the one with the chipped corner"}, set()),
        (("frame", 2), {"id": "C"}, set(), {'id = "C"'}),
        (("wall", "feature", 0), None,
         {"[[wall.feature]]", "# what the baker sits on", 'kind = "furniture"', "left = 3"}, set()),
        (("wall", "feature", 1), {"kind": "door"}, set(), {'kind = "door"'}),
    ],
)  # fmt: skip
def test_a_change_touches_its_own_lines_alone(place, value, gone, come):
    new = edited(TEXT, [Change(place, value)])
    assert lines_apart(TEXT, new) == (gone, come)


def test_a_new_frame_comes_after_the_others_and_before_the_remark_of_what_follows():
    new = edited(TEXT, [Change(("frame", 2), {"id": "C", "width": None})])
    assert new.endswith('width = 9\n\n[[frame]]\nid = "C"\n\n# the usual nail\n[fixing]\nkind = "nail"\n')


def test_a_frame_goes_with_its_own_tables():
    assert tomllib.loads(edited(TEXT, [Change(("frame", 0), None)]))["frame"] == [{"id": "B", "width": 9}]


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_no_change_changes_nothing_and_a_frame_that_comes_and_goes_leaves_no_trace(path):
    text = path.read_text(encoding="utf-8")
    assert edited(text, []) == text
    count = len(tomllib.loads(text).get("frame", []))
    if count:
        more = edited(text, [Change(("frame", count), {"id": "one more"})])
        assert tomllib.loads(edited(more, [Change(("frame", count), None)])) == tomllib.loads(text)
        assert lines_apart(text, edited(more, [Change(("frame", count), None)])) == (set(), set())


def test_the_line_ends_of_another_system_stay():
    new = edited(TEXT.replace("\n", "\r\n"), [Change(("frame", 2), {"id": "C"})])
    assert "\n" not in new.replace("\r\n", "")


VALUES = st.recursive(
    st.booleans() | st.integers(-(10**9), 10**9) | st.text(st.characters(exclude_categories=["Cs", "Cc"]), max_size=9),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from("ab"), inner, max_size=2),
    max_leaves=5,
)  # fmt: skip
PLACES = st.sampled_from(
    [("frame", 0, "drop"), ("frame", 1, "title"), ("group", "rows"), ("wall", "studs"), ("job", "confirmed"),
     ("frame", 0, "hanger", "left"), ("accuracy", "drop"), ("wall", "feature", 0, "name")]
)  # fmt: skip


@example(("group", "rows"), {"a": {}})  # a heading of its own, which goes with it
@given(PLACES, VALUES)
def test_what_is_put_in_is_what_is_read_and_taking_it_out_leaves_the_rest(place, value):
    new = edited(TEXT, [Change(place, value)])
    at = tomllib.loads(new)
    for part in place:
        at = at[part]
    assert at == value
    assert lines_apart(TEXT, edited(new, [Change(place, None)]))[1] <= {f"[{place[0]}]"}


@pytest.mark.parametrize(
    ("text", "place"),
    [
        ("[job", ("job", "title")),  # no TOML
        (TEXT, ("frame", 7, "drop")),  # no such frame
        (TEXT, ("job", "title", "inner")),  # a text has nothing inside
    ],
)
def test_what_cannot_be_changed_is_refused_in_words(text, place):
    with pytest.raises(InputError, match=r"is not valid TOML|is no place|cannot be changed alone"):
        edited(text, [Change(place, "1")])


def test_frames_that_stand_in_one_line_are_changed_too():
    text = 'frame = [{ id = "A" }, { id = "B" }]\n'
    assert tomllib.loads(edited(text, [Change(("frame", 1, "drop"), "2")]))["frame"][1] == {"id": "B", "drop": "2"}
    assert tomllib.loads(edited(text, [Change(("frame", 0), None)]))["frame"] == [{"id": "B"}]


@pytest.mark.parametrize(
    "place", [("job", "title", "left"), ("job", "title", "left", 0), ("frame", 0, "width", "of"), ("frame", 7, "id")]
)
@pytest.mark.parametrize("value", ["1 in", None])
def test_what_has_no_fields_is_no_place_for_one(place, value):
    tables = tomllib.loads(TEXT)
    with pytest.raises(InputError, match="is no place in this file"):
        changed(tables, [Change(place, value)])
    assert tables == tomllib.loads(TEXT)


@pytest.mark.parametrize("place", [("wall", 0), ("wall", 7), ("frame", -1)])
def test_a_table_has_no_numbers_and_a_list_none_below_nought(place):
    with pytest.raises(InputError, match="is no place in this file"):
        changed({"wall": {"width": 2000}, "frame": [{"id": "A"}]}, [Change(place, 1)])
