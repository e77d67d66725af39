"""What is typed wrong at the desk: it is said at its field, and no longer than it is wrong."""

import re

import pytest

from tests.desk.at_the_desk import LIBRARY, running
from tests.desk.browser import Hand
from tests.desk.test_in_a_browser import library_text

pytestmark = pytest.mark.browser

STUDS = LIBRARY.replace('build = "drywall"\n', 'build = "drywall"\nstuds = { first = "8", second = "24" }\n')


def expect(shown):
    """What the page is to come to show; the browser's library is there with the extra [browser] only."""
    from playwright.sync_api import expect as of

    return of(shown)


def under(hand: Hand, key: str):
    """What stands under a field: why it is not saved."""
    return hand.page.locator(f'.field:has([data-key="{key}"])').locator('[id$="_wrong"]')


def saved(hand: Hand):
    return expect(hand.page.locator("#saved"))


def test_what_is_said_of_all_that_is_typed_holds(hand: Hand, library):
    hand.open(library.address)
    hand.put("wall/height", "tall")
    saved(hand).to_have_text("Not all saved")
    hand.put("wall/width", "15'")
    saved(hand).to_have_text("Not all saved")
    hand.click('[data-key="wall/height"]')
    hand.press("Escape")
    saved(hand).to_have_text("All saved")
    hand.put("wall/height", "tall")
    hand.put("wall/height", "8'")  # as it was
    saved(hand).to_have_text("All saved")
    expect(under(hand, "wall/height")).to_be_hidden()
    assert hand.told == []


@pytest.mark.parametrize("mended", ["", "16"])
def test_a_field_that_was_wrong_for_another_alone_is_so_no_longer(hand: Hand, tmp_path, mended):
    (tmp_path / "moss.toml").write_text(STUDS)
    with running(tmp_path, "moss.toml") as desk:
        hand.open(desk.address)
        hand.page.wait_for_selector("#drawing")
        hand.click(hand.page.get_by_text("Studs behind the board"))
        hand.put("wall/studs/spacing", "17")
        expect(under(hand, "wall/studs/second")).to_contain_text("not a whole number of spacings")
        hand.click('[data-key="wall/studs/spacing"]')
        hand.press("Control+a", "Delete")
        hand.type(mended)
        hand.press("Tab")
        expect(under(hand, "wall/studs/second")).to_be_hidden()
        saved(hand).to_have_text("All saved")
        assert hand.told == []


def test_a_slip_in_a_field_that_waits_for_another_is_said_at_once(hand: Hand, library):
    hand.open(library.address)
    hand.page.wait_for_selector("#drawing")
    hand.click(hand.page.get_by_text("A stair along the wall"))
    hand.put("wall/stairs/nosing", "20")
    expect(under(hand, "wall/stairs/nosing")).to_contain_text("Found '20', expected how far across and how far up")
    hand.put("wall/stairs/rise", "7 steps")
    expect(under(hand, "wall/stairs/rise")).to_contain_text("Found '7 steps': 'steps' is not a unit here")
    hand.put("wall/stairs/rise", "7 1/2")
    expect(under(hand, "wall/stairs/rise")).to_contain_text("Saved together with")
    assert library_text(library) == LIBRARY and hand.told == []


def test_escape_takes_back_what_was_typed_and_then_closes_the_fold(hand: Hand, library):
    hand.open(library.address)
    hand.page.wait_for_selector("#drawing")
    fold = hand.page.locator('details[data-focus="more wall"]')
    fold.locator("summary").press("Enter")
    hand.click('[data-key="wall/board"]')
    hand.type("1/2")
    hand.press("Escape")
    assert hand.page.input_value('[data-key="wall/board"]') == "" and fold.get_attribute("open") is not None
    hand.press("Escape")
    expect(fold).not_to_have_attribute("open", "")
    expect(fold.locator("summary")).to_be_focused()
    assert library_text(library) == LIBRARY and hand.told == []


def test_the_same_frames_go_on_another_wall(hand: Hand, library):
    hand.open(library.address)
    hand.page.wait_for_selector("#drawing")
    hand.click(hand.page.get_by_text("The same frames on another wall"))
    for name, text in (("title", "New flat"), ("width", "11 elbows"), ("height", "8'")):
        hand.page.fill(f"#other_{name}", text)
    hand.button("Begin the other wall")
    expect(hand.page.locator("#other label:has(#other_width) .wrong")).to_contain_text("'elbows' is not a unit here")
    hand.page.fill("#other_width", "11'")
    hand.button("Begin the other wall")
    expect(hand.page.locator("#title")).to_have_text("New flat")
    assert library_text(library) == LIBRARY and (library.folder / "new-flat.toml").exists() and hand.told == []


def test_what_waits_for_another_field_says_so(hand: Hand, library):
    hand.open(library.address)
    hand.page.wait_for_selector("#drawing")
    hand.click(hand.page.get_by_text("A stair along the wall"))
    hand.put("wall/stairs/nosing", "20, 7 1/2")
    expect(under(hand, "wall/stairs/nosing")).to_contain_text("Which way does it climb")
    hand.choose('[data-key="wall/stairs/up"]', "right")
    expect(under(hand, "wall/stairs/nosing")).to_contain_text("from one nosing to the next")
    hand.put("wall/stairs/pitch", "37")
    saved(hand).to_have_text("All saved")
    expect(under(hand, "wall/stairs/nosing")).to_be_hidden()
    assert "pitch = 37" in library_text(library) and hand.told == []


def test_a_reading_that_cannot_be_is_said_at_its_field(hand: Hand, library):
    hand.open(library.address)
    hand.step("After hanging")
    hand.button("What has to move?")
    hand.page.get_by_text("Nothing is filled in yet").wait_for()
    hand.click(hand.page.get_by_text("Frame A: Bog moss"))
    read(hand, "A left", "low")
    read(hand, "A right", "70")
    hand.button("What has to move?")
    at = hand.page.locator('label:has([data-focus="A left"]) .wrong')
    expect(at).to_contain_text("Found 'low', expected")
    expect(hand.page.locator("#panel .wrong:visible")).to_have_count(1)
    read(hand, "A left", "76")
    read(hand, "A right", "76")
    read(hand, "A left_edge", "13 left")
    hand.button("What has to move?")
    hand.page.locator(".told h3").wait_for()
    hand.button("Papers for the new holes")
    hand.page.get_by_role("link", name="Open moss-patches.pdf").wait_for()
    assert (library.folder / "moss-patches.pdf").read_bytes().startswith(b"%PDF")
    assert hand.told == []


def test_a_drop_that_was_wrong_is_put_into_the_job_by_a_button(hand: Hand, library):
    hand.open(library.address)
    hand.step("After hanging")
    hand.click(hand.page.get_by_text("Frame A: Bog moss"))
    for name, text in (("A left", "76"), ("A right", "76"), ("A left_edge", "13 left")):
        read(hand, name, text)
    hand.button("What has to move?")
    expect(hand.page.get_by_role("button", name="On the mark: put drop 2 in into the job")).to_be_disabled()
    hand.page.get_by_label("Done: frame A hangs as it should now").check()
    hand.button("On the mark: put drop 2 in into the job")
    hand.page.get_by_text("Undo takes it back").wait_for()
    assert 'drop = "2 in"' in library_text(library)
    expect(hand.page.locator('[data-focus="A left"]')).to_have_value("")  # it was read before that
    hand.click("#undo")
    saved(hand).to_have_text("All saved")
    assert library_text(library) == LIBRARY
    assert hand.told == []


def test_a_schedule_is_made_again_over_the_old_one_when_told_so(hand: Hand, library):
    (library.folder / "moss-schedule.csv").write_text("typed by somebody\n")
    hand.open(library.address)
    hand.step("Paper")
    hand.button("The schedule")
    hand.page.get_by_text("already exists, and may hold what somebody typed").wait_for()
    assert "--" not in hand.page.inner_text("#notice")
    hand.button("Replace it")
    hand.page.get_by_role("link", name="Open moss-schedule.csv").wait_for()
    assert "typed" not in (library.folder / "moss-schedule.csv").read_text()


def read(hand: Hand, name: str, text: str) -> None:
    hand.click(f'[data-focus="{name}"]')
    hand.press("Control+a")
    hand.type(text)


def test_readings_from_the_level_line(hand: Hand, library):
    hand.open(library.address)
    hand.step("After hanging")
    hand.click('[data-focus="from level line"]')
    hand.click(hand.page.get_by_text("Frame A: Bog moss"))
    read(hand, "A left_from_level", "18 above")
    read(hand, "A right_from_level", "18 above")
    hand.button("What has to move?")
    expect(hand.page.locator(".told h3")).to_contain_text("A  Bog moss")
    assert hand.told == []


@pytest.mark.parametrize(
    ("step", "button", "name"),
    [("Measure", "A measuring sheet on paper", "measuring"), ("After hanging", "A form on paper", "readings")],
)
def test_a_paper_can_be_opened_where_it_is_made(hand: Hand, library, step, button, name):
    hand.open(library.address)
    hand.step(step)
    hand.button(button)
    hand.page.get_by_role("link", name=f"Open moss-{name}.pdf").wait_for()
    assert hand.told == []


SLIPS = ("31/8", "-5", "🙂")
"""A space left out, a minus, a slip of the hand: refused by all that takes a measure, a number or one of some words."""

FREE = ("id", "title", "wood")
"""Fields that take any words."""

FIELDS = """() => {
    for (const one of document.querySelectorAll("#panel details")) { one.fill?.(); one.open = true; }
    return [...document.querySelectorAll("#panel .field input[type=text]")].map((one) => one.dataset.key);
}"""


def test_every_field_of_a_frame_says_of_each_slip_what_it_expects(hand: Hand, tmp_path):
    rings = 'hanger = { kind = "rings", left = "2", right = "2", drop_left = "3", drop_right = "3" }'
    (tmp_path / "moss.toml").write_text(LIBRARY.replace('drop = "3 1/8"', rings))
    with running(tmp_path, "moss.toml") as desk:
        before = library_text(desk)
        hand.open(desk.address)
        hand.page.locator('[data-frame="C"]').press("Enter")
        keys = [key for key in hand.page.evaluate(FIELDS) if key.rpartition("/")[2] not in FREE]
        assert len(keys) > 25
        told = {(key, slip): slipped(hand, key, slip) for key in keys for slip in SLIPS[len(key) % 2 :: 2]}
        assert {place: said for place, said in told.items() if said} == {}
        assert library_text(desk) == before and hand.told == []
        hand.put("frame/C/width", "15")
        saved(hand).to_have_text("All saved")


def slipped(hand: Hand, key: str, slip: str) -> str:
    """What is amiss about what the page says of a slip in this field; "" where nothing is."""
    place = hand.page.locator(f'#panel [data-key="{key}"]')
    old = place.input_value()
    place.fill(slip)
    place.press("Tab")
    said = under(hand, key)
    said.filter(has_text=re.compile("found '|expected ", re.IGNORECASE)).wait_for()
    amiss = "" if place.input_value() == slip and place.get_attribute("aria-invalid") else "the value is gone"
    amiss += "" if slip in said.inner_text() else f"does not say what was found: {said.inner_text()}"
    place.press("Escape")
    said.wait_for(state="hidden")
    return amiss if place.input_value() == old else f"{amiss} Escape does not bring {old!r} back"
