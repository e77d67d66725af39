"""Every field of a job file can be reached at the desk and, where it is asked for, in `start`: in the same words."""

import re
from pathlib import Path

import pytest

from templates_gen.base.words import capital
from templates_gen.cli.interview import questions
from templates_gen.cli.interview.question import NO_FIELDS
from templates_gen.desk.fields import field_words
from templates_gen.job.arrangements import SIDES
from templates_gen.job.hangers import HANGERS
from templates_gen.job.tables.contents import CHAPTERS
from templates_gen.job.tables.field import fields_of, options, tables_in
from templates_gen.job.tables.group import SpotTable
from templates_gen.job.tables.whole import JobFile
from tests.desk.at_the_desk import running
from tests.desk.browser import Hand

CANAL = """\
[job]
title = "Weir gauges"
unit = "in"
[wall]
width = "20'"
height = "9'"
[[wall.feature]]
kind = "furniture"
name = "plank"
left = "60"
bottom = 0
width = "60"
height = "30"
[wall.stairs]
up = "right"
run = "10"
rise = "7 1/2"
nosing = ["150", "7 1/2"]
[group]
arrangement = "row"
[frame_type.gauge]
width = "11"
height = "14"
[[frame]]
id = "A"
type = "gauge"
[[frame]]
id = "B"
width = "8"
height = "10"
"""

OTHERWISE = {
    ("GroupTable", "arrangement"): '[data-focus="kind row"]',
    ("FrameTable", "image"): '[data-focus="picture A"]',
    ("PaperTable", "cover"): '[data-focus="way linked"]',
    ("PaperTable", "print_shop"): '[data-focus="way one piece"]',
    ("HangerTable", "kind"): '[data-focus="hanger rings"]',
    ("FrameTable", "hanger"): '[data-focus="hanger rings"]',
    ("FrameTable", "fixing"): '[data-key="frame/A/fixing/kind"]',
    ("HeightTable", "above"): '[data-key="group/height/way"] option[value="above plank"]',
}
"""What is chosen by pictures or buttons: where."""

HEIGHTS = {"row": ("centre", "top", "bottom", "above plank"), "stairs": ("above_nosings",)}

UNASKED = {
    ("HangerTable", "seen_from"),  # a frame is shown from behind, and what is typed is saved as seen from there
    ("PartTable", "kind"), ("PartTable", "thickness"),  # both in one field: "glass 2 mm"
}  # fmt: skip


PARTS = ("group/centre_on/", "group/place/", "group/pin/", "job/confirmed")
"""Keys of parts of a value, whose labels say which part of it each is."""


def all_fields(table=JobFile):
    """Every field of every table, but those that only hold other tables."""
    found = set()
    for name, field in fields_of(table).items():
        inner = tables_in(field.written)
        for one in inner:
            found |= all_fields(one)
        if not inner or {str, float} & {*options(field.written)} or field.choices:
            found.add((table.__name__, name))
    return found - {("JobFile", name) for name in fields_of(JobFile)}


def field_of(key):
    """The table and the field that a key on the page is for."""
    table, found = JobFile, None
    for part in key.split("/"):
        if table is not None and part in fields_of(table):
            found = (table.__name__, part)
            inner = tables_in(fields_of(table)[part].written)
            table = inner[0] if inner else None
    return found


def seen(hand):
    """The keys of all fields of the step that is shown, each with its label."""
    return hand.page.evaluate(
        """() => {
            for (const one of document.querySelectorAll("#panel details")) one.fill?.(); // what is folded, too
            return [...document.querySelectorAll("#panel [data-key]")].map((one) =>
            [one.dataset.key, one.labels?.[0]?.textContent.trim() || ""]);
        }"""
    )


@pytest.mark.browser
def test_every_field_is_on_the_page_in_its_tables_words(hand: Hand, tmp_path):
    (tmp_path / "weir.toml").write_text(CANAL)
    keys: dict[str, str] = {}
    found: set[str] = set()
    with running(tmp_path, "weir.toml") as desk:
        hand.open(desk.address)
        hand.page.locator('[data-feature="0 plank"]').press("Enter")
        look(hand, keys, found)
        for kind in HANGERS:
            hand.page.locator('[data-frame="A"]').press("Enter")
            hand.click(f'[data-focus="hanger {kind}"]')
            hand.saved()
            look(hand, keys, found)
        hand.step("Arrange")
        kinds = field_words()["tables"]["group"][0]["choices"]
        for kind in (one for one in kinds if one != "salon"):
            hand.click(f'[data-focus="kind {kind}"]')
            hand.page.locator(f'[data-focus="kind {kind}"]:checked').wait_for()
            hand.saved()
            look(hand, keys, found)
            for way in HEIGHTS.get(kind, ()):
                hand.choose('[data-key="group/height/way"]', way)
                hand.page.locator(f'[data-key="group/height/{"by" if " " in way else way}"]').wait_for()
                look(hand, keys, found)
        hand.step("Frames")  # placed by hand, the last arrangement
        for point in fields_of(SpotTable):
            desk.change("weir.toml", do="set", sets=[{"at": ["group", "place", "A"], "value": {point: ["-9", "2"]}}])
            hand.page.locator(f'[data-key="group/place/A/{point}"]').wait_for()
            look(hand, keys, found)
        hand.click('[data-frame="B"]')
        hand.step("Arrange")
        hand.click('[data-focus="kind salon"]')
        hand.saved()
        hand.click('details[data-focus="more group"] summary')
        hand.page.locator('[data-key="group/seed"]').wait_for()
        look(hand, keys, found)
        hand.step("Frames")
        look(hand, keys, found)
        hand.step("Paper")
        look(hand, keys, found)
    assert all_fields() - {field_of(key) for key in keys} - {*OTHERWISE} - UNASKED == set()
    assert {place for place, where in OTHERWISE.items() if where not in found} == set()
    asked = {(one.__name__, name): field.words for one in tables() for name, field in fields_of(one).items()}
    other = {
        key: label
        for key, label in keys.items()
        if field_of(key) and not key.startswith(PARTS) and not said(asked[field_of(key)], label)
    }
    assert other == {}


def look(hand, keys, found):
    keys |= dict(seen(hand))
    found |= {where for where in OTHERWISE.values() if hand.page.locator(where).count()}


def tables(table=JobFile):
    inner = [one for field in fields_of(table).values() for one in tables_in(field.written)]
    return {table}.union(*map(tables, inner))


def said(words, label):
    pattern = re.sub(r"\\\{\w+\\\}", ".+", re.escape(words.ask or capital(words.means)))
    return re.fullmatch(pattern, label) is not None


def test_every_question_of_the_tables_is_asked_by_start():
    """Whatever a table has a question for is asked in some interview; `start` has no words for a field of its own."""
    written = "\n".join(path.read_text(encoding="utf-8") for path in Path(questions.__file__).parent.glob("on_*.py"))
    written += Path(questions.__file__).read_text(encoding="utf-8")
    kinds = {key for kind in HANGERS.values() for key in kind.asks}
    sides = {f"{table}.{side}" for table in ("wall", "frame", "feature") for side in ("width", "height")}
    listed = {f"group.{name}" for name in ("rows", "columns", *SIDES)} | {"wall.earthquake", "wall.public"}
    ways = {f"height.{name}" for name in ("centre", "top", "bottom")}
    asked = {
        f"{chapter.name}.{name}" for chapter in CHAPTERS for name, field in fields_of(chapter.table).items()
        if field.words.ask
    }  # fmt: skip
    assert {key for key in asked if f'"{key}"' not in written} - kinds - sides - listed - ways == set()
    assert {key for key in NO_FIELDS if key in asked} == set()
