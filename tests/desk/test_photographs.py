"""Photographs at the desk: the group on one of the wall, taped sheets read, corners pointed at; in a real browser."""

from __future__ import annotations

import csv
import io
import json
import sys

import pytest

from tests.desk.at_the_desk import AtDesk, running
from tests.desk.browser import Hand, axe
from tests.photo.made.examples import JOB, of_hung, of_wall, photographed, write_examples


@pytest.fixture
def rubbings(tmp_path):
    """A desk at which a small job is open, and its photographs."""
    write_examples(tmp_path)
    with running(tmp_path, "job.toml") as desk:
        yield desk, tmp_path


def asked(desk: AtDesk, path: str, body: bytes, **query: str):
    return desk.ask("POST", path, body, **query)


@pytest.mark.browser
def test_the_group_is_drawn_on_a_photograph_of_the_wall(hand: Hand, rubbings):
    desk, folder = rubbings
    before = sorted(path.name for path in folder.iterdir())
    hand.open(desk.address)
    hand.step("Wall")
    hand.click("summary:has-text('The group on a photograph')")
    hand.page.locator('[data-focus="file wall"]').set_input_files(folder / "wall.jpg")
    picture = hand.page.locator(".photo img")
    picture.wait_for()
    assert hand.page.evaluate("document.querySelector('.photo img').decode().then(() => true)")
    assert "19 times in 20" in hand.page.locator(".said-of-photo").inner_text()
    assert sorted(path.name for path in folder.iterdir()) == before  # it is kept nowhere
    assert hand.barriers(axe()) == [] and hand.told == []


@pytest.mark.browser
def test_a_photograph_may_be_dropped_on_the_wall_and_one_without_a_card_is_refused_there(hand: Hand, rubbings):
    desk, _ = rubbings
    hand.open(desk.address)
    hand.page.wait_for_selector("#drawing")
    hand.step("Frames")
    hand.page.evaluate(
        """async () => {
            const canvas = new OffscreenCanvas(900, 700);
            canvas.getContext("2d").fillRect(0, 0, 900, 700);
            const data = new DataTransfer();
            data.items.add(new File([await canvas.convertToBlob({ type: "image/jpeg" })], "hall.jpg"));
            const drop = new DragEvent("drop", { bubbles: true, cancelable: true, dataTransfer: data });
            document.querySelector("#drawing").dispatchEvent(drop);
        }"""
    )
    hand.page.locator(".said-of-photo .wrong").wait_for()
    words = hand.page.locator(".said-of-photo .wrong").inner_text()
    assert "hall.jpg: shows no whole photo card" in words and hand.told == []


@pytest.mark.browser
def test_joins_and_nails_are_said_of_a_photograph_of_the_taped_paper(hand: Hand, rubbings):
    desk, folder = rubbings
    hand.open(desk.address)
    hand.step("Paper")
    hand.click("summary:has-text('Check the taped paper')")
    hand.page.locator('[data-focus="file taped"]').set_input_files([folder / "taped.jpg"])
    hand.page.locator(".photo img").wait_for()
    words = hand.page.locator(".said-of-photo").inner_text()
    assert "sheets read" in words and "nail A" in words and "does not show the scale" in words
    hand.page.locator("#panel h2").first.scroll_into_view_if_needed()  # nothing lies half under the steps
    assert hand.barriers(axe()) == [] and hand.told == []


@pytest.mark.browser
def test_corners_are_pointed_at_and_what_is_read_goes_into_the_readings(hand: Hand, rubbings):
    """By mouse for one frame, by keys alone for the other."""
    desk, folder = rubbings
    rows = {row["frame"]: row for row in csv.DictReader(io.StringIO(of_hung()[1]))}
    corners = {
        name: [tuple(map(float, row[key].split())) for key in ("top_left", "top_right", "bottom_right", "bottom_left")]
        for name, row in rows.items()
    }
    hand.open(desk.address)
    hand.step("After hanging")
    hand.click("summary:has-text('Read it from a photograph')")
    hand.page.locator('[data-focus="file hung"]').set_input_files(folder / "hung.jpg")
    whole, part = (hand.page.locator(f'[data-focus="{name}"]') for name in ("whole", "part"))
    for x, y in corners["A"]:
        whole.wait_for()
        box, wide = whole.bounding_box(), 2000
        whole.click(position={"x": x * box["width"] / wide, "y": y * box["width"] / wide})
        part.wait_for()
        near = hand.page.evaluate("import('/page/pointing.js').then((it) => it.pointed.near)")
        part.click(position={"x": 160 + x - round(near[0]), "y": 160 + y - round(near[1])})
        part.wait_for(state="detached")
    for x, y in corners["B"]:
        whole.focus()
        hand.press("ArrowRight", "ArrowLeft")  # from the middle
        near = hand.page.evaluate("import('/page/pointing.js').then((it) => it.pointed.near)")
        _walk(hand, x - near[0], y - near[1], 100, 20)
        hand.press("Enter")
        near = hand.page.evaluate("import('/page/pointing.js').then((it) => it.pointed.near)")
        _walk(hand, x - near[0], y - near[1], 10, 1)
        hand.press("Enter")
        part.wait_for(state="detached")
    assert hand.barriers(axe()) == []
    hand.button("Read the frames")
    hand.page.locator("text=Frame A is read within").wait_for()
    filled = hand.page.locator('[data-focus="A left"]')
    assert filled.input_value().endswith(" mm")
    hand.click("summary:has-text('Frame A')") if not filled.is_visible() else None
    assert all(row["within"].endswith(" mm") for row in _sent(hand).values())
    hand.page.locator(".told").wait_for()
    filled.fill("1650 mm")  # a tape's reading is not as unsure as the photograph's
    within = {name: row["within"] for name, row in _sent(hand).items()}
    assert within["A"] == "" and within["B"].endswith(" mm")
    assert hand.told == []


def _sent(hand: Hand) -> dict[str, dict[str, str]]:
    """The readings of every frame that the page asks about what has to move."""
    with hand.page.expect_request("**/correct*") as asked_for:
        hand.button("What has to move?")
    return json.loads(asked_for.value.post_data)["rows"]


def _walk(hand: Hand, x: float, y: float, far: int, near: int) -> None:
    """To a place by the arrow keys: far steps with Shift, then near ones."""
    for way, (ahead, back) in ((x, ("ArrowRight", "ArrowLeft")), (y, ("ArrowDown", "ArrowUp"))):
        key, left = (ahead if way > 0 else back), abs(way)
        hand.press(*[f"Shift+{key}"] * int(left // far), *[key] * round(left % far / near))


def test_without_the_extra_one_clear_sentence_stands_at_the_place(tmp_path, monkeypatch):
    monkeypatch.setitem(sys.modules, "cv2", None)
    for name in [name for name in sys.modules if name.startswith("templates_gen.photo")]:
        monkeypatch.delitem(sys.modules, name)
    desk = AtDesk(tmp_path, JOB, "job.toml")
    answer = asked(desk, "/photo/wall", b"\xff\xd8", names="a.jpg")
    assert answer.status == 422 and b"pip install 'templates-gen[photo]'" in answer.content


def test_the_card_is_made_at_the_desk(tmp_path):
    made = AtDesk(tmp_path, JOB, "job.toml").brought("/paper", {"kind": "photo card"})
    assert made["files"] == ["job-photo-card.pdf"] and (tmp_path / "job-photo-card.pdf").read_bytes().startswith(
        b"%PDF"
    )


@pytest.mark.parametrize(
    ("path", "query", "problem"),
    [("/photo/hung", {"corners": '{"A": [[1, 2]]}'}, "no corners"), ("/photo/hung", {"corners": "["}, "no corners"),
     ("/photo/taped", {"names": "a.jpg", "sizes": "x"}, "no sizes"), ("/photo/taped", {}, "no photograph"),
     ("/photo/wall", {"names": "a.jpg"}, "is no JPEG or PNG picture"),
     ("/photo/wall", {"names": "a.jpg", "card": "a9"}, "a9")],
)  # fmt: skip
def test_what_the_page_sends_amiss_is_refused(tmp_path, path, query, problem):
    content = of_wall() if "card" in query else b"no picture"
    answer = asked(
        AtDesk(tmp_path, JOB, "job.toml"), path, photographed() if path.endswith("hung") else content, **query
    )
    assert answer.status == 422 and problem in answer.content.decode()


def test_taped_paper_is_read_by_the_template_that_was_made_at_the_desk(tmp_path):
    """Also after the job has changed at the desk; what it was read by is said."""
    desk = AtDesk(tmp_path, JOB, "job.toml")
    query = {"names": "taped.jpg", "sizes": str(len(photographed()))}

    def told():
        answer = asked(desk, "/photo/taped", photographed(), **query)
        assert answer.status == 200
        found = json.loads(answer.content)
        return found["said"][0]["text"], found["table"], found["said"][1]["text"]

    heading, table, said = told()
    assert heading.startswith("3 of 3 sheets read") and "laid anew from job.toml: no job.pdf lies beside it" in said
    desk.brought("/paper", {"kind": "template"})
    desk.brought("/change", {"do": "set", "sets": [{"at": ["group", "gap"], "value": "240"}]})
    again, nails, said = told()
    assert (again, nails) == (heading, table)
    assert "those of job.pdf, beside job.toml. job.toml has changed since" in said
