"""People as they are: without a mouse, with Back, a renamed file, a full disk, a desk that was ended."""

import io
import os
import subprocess

import pytest

import templates_gen as tg
from tests.desk.at_the_desk import LIBRARY, running
from tests.desk.browser import Hand
from tests.desk.test_in_a_browser import focused, library_text, template_of, to

pytestmark = pytest.mark.browser


def test_from_nothing_to_the_template_by_keys_alone(hand: Hand, tmp_path):
    with running(tmp_path) as desk:
        hand.open(desk.address)
        hand.page.wait_for_selector("#new_job_title")
        to(hand, "new_job_title")
        for text in ("Moss by keys", "", "14'", "8'"):
            hand.type(text)
            hand.press("Tab")
        hand.type("16 x 20")
        hand.press("Enter")
        hand.page.wait_for_selector("#drawing")
        step(hand, "Wall", "add furniture")
        hand.press("Enter")
        hand.naming()
        for text in ("settle", "", "42", "", "84", "33"):
            hand.type(text)
            hand.press("Tab")
            hand.saved()
        step(hand, "Frames", "new frame title")
        for title, size, drop in (("Bog moss", "11x14", "2 1/2"), ("Fork moss", "", "2 5/8")):
            count = hand.page.locator("#drawing .frame").count()
            for text in (title, size, "", "", ""):
                hand.type(text)
                hand.press("Tab")
            hand.type(drop)
            hand.press("Enter")
            hand.page.locator("#drawing .frame").nth(count).wait_for()
        step(hand, "Arrange", "kind row")
        for _ in range(2):  # one row, one column, rows
            hand.press("ArrowDown")
            hand.saved()
        step(hand, "Measure", "measure/A/drop")
        hand.type("3 1/8")
        hand.press("Tab")
        hand.saved()
        step(hand, "Paper", "way marks")
        hand.press("ArrowUp")
        hand.saved()
        to(hand, "make template")
        hand.press("Enter")
        hand.page.locator("#made a").first.wait_for()
    job = tg.read_job(tmp_path / "moss-by-keys.toml")
    assert (job.group.arrangement, job.paper.cover) == ("rows", "linked")
    assert [frame.drop for frame in job.frames] == pytest.approx([3.125 * 25.4, 2.5 * 25.4, 2.625 * 25.4])  # inches
    assert (tmp_path / "moss-by-keys.pdf").read_bytes() == template_of(tmp_path, "moss-by-keys")
    assert hand.clicks == 0 and hand.told == []


def step(hand: Hand, name: str, field: str) -> None:
    """Go to a step, and on to one of its fields, by Tab and Enter."""
    to(hand, name)
    hand.press("Enter")
    to(hand, field)


def test_back_goes_a_step_back_and_a_reload_stays(hand: Hand, library):
    hand.open(library.address)
    hand.step("Frames")
    hand.step("Paper")
    hand.page.reload()
    hand.page.locator('#steps [aria-current="step"]').wait_for()
    assert hand.page.locator('#steps [aria-current="step"]').inner_text() == "Paper"
    hand.page.go_back()
    hand.page.locator('#steps [data-focus="Frames"][aria-current="step"]').wait_for()
    hand.page.go_back()
    hand.page.locator('#steps [data-focus="Wall"][aria-current="step"]').wait_for()
    assert hand.told == []


def test_a_file_that_is_renamed_under_the_page_is_written_again(hand: Hand, library):
    hand.open(library.address)
    hand.put("wall/height", "9'")
    (library.folder / "moss.toml").rename(library.folder / "kelp.toml")
    hand.page.get_by_text("it was renamed, moved or deleted").wait_for()
    hand.button("Write it again as it was")
    hand.page.locator("#notice").wait_for(state="hidden")
    assert library_text(library) == (library.folder / "kelp.toml").read_text(encoding="utf-8")
    assert hand.told == []


def test_an_id_may_have_any_signs(hand: Hand, library):
    for old, new in (("A", "🌿"), ("B", "🍀"), ("C", "<b>&\"'/")):
        library.change("moss.toml", do="set", sets=[{"at": ["frame", old, "id"], "value": new}])
    hand.open(library.address)
    hand.step("Measure")
    hand.put("measure/🍀/drop", "2 3/4")
    hand.put("measure/🌿/drop", "2 1/4")
    drops = {frame.id: frame.drop for frame in tg.read_job(library.folder / "moss.toml").frames}
    assert (drops["🍀"], drops["🌿"]) == (2.75 * 25.4, 2.25 * 25.4)
    ids = hand.page.evaluate("[...document.querySelectorAll('[id]')].map((one) => one.id)")
    assert len(ids) == len(set(ids))
    hand.step("Paper")
    hand.button("Make the template")
    hand.page.get_by_text("no font here has 🌿").wait_for()
    assert hand.told == []


def test_a_picture_of_forty_megabytes_is_taken_and_a_larger_file_refused(hand: Hand, library):
    from PIL import Image

    side = 3700  # pixels of chance, three bytes each: 41 MB that cannot be packed
    noise = io.BytesIO()
    Image.frombytes("RGB", (side, side), os.urandom(side * side * 3)).save(noise, "PNG", compress_level=0)
    (library.folder / "noise.png").write_bytes(noise.getvalue())
    (library.folder / "huge.jpg").write_bytes(b"\xff\xd8\xff" + bytes(61_000_000))
    hand.open(library.address)
    hand.step("Frames")
    hand.click('[data-frame="A"]')
    hand.page.locator("input[type=file]").first.set_input_files(str(library.folder / "noise.png"))
    hand.page.locator('[data-frame="A"] image').wait_for(state="attached")
    hand.page.locator("input[type=file]").first.set_input_files(str(library.folder / "huge.jpg"))
    hand.page.get_by_text("That is more than 60 MB. Save the picture smaller.").wait_for()
    assert "huge" not in library_text(library) and 'image = "noise-2.png"' in library_text(library)


def test_a_full_disk_loses_nothing_that_was_typed(hand: Hand, tmp_path):
    small = tmp_path / "small"
    small.mkdir()
    command = ["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", str(small)]
    try:
        mounted = subprocess.run(command, capture_output=True, check=False).returncode == 0
    except FileNotFoundError:
        mounted = False
    if not mounted:
        pytest.skip("a small disk cannot be mounted here")
    try:
        (small / "moss.toml").write_text(LIBRARY)
        with running(small, "moss.toml") as desk:
            hand.open(desk.address)
            hand.page.wait_for_selector("#drawing")
            with pytest.raises(OSError, match="No space left"):
                (small / "filling").write_bytes(bytes(65_536))
            hand.put("wall/height", "9'")
            hand.page.get_by_text("No space left on device").wait_for()
            assert library_text(desk) == LIBRARY
            (small / "filling").unlink()
            hand.click('[data-key="wall/height"]')
            hand.press("Tab")  # it is tried again, as it was typed
            hand.saved()
            hand.page.get_by_text("No space left on device").wait_for(state="hidden")
            assert 'height = "9\'"' in library_text(desk)
    finally:
        subprocess.run(["umount", "-l", str(small)], check=True)


def test_a_desk_that_is_ended_while_it_searches_leaves_the_file_whole(hand: Hand, library):
    for _ in range(17):
        library.change("moss.toml", do="copy frame", frame="A")
    hand.open(library.address)
    hand.step("Arrange")
    hand.click('[data-focus="kind salon"]')
    hand.page.locator("#finding").wait_for()
    library.process.kill()
    hand.page.get_by_text("The desk does not answer. Is it still running?").wait_for()
    assert tg.read_job(library.folder / "moss.toml").group.arrangement == "salon"
    hand.step("Wall")
    hand.put("wall/height", "9'")
    hand.page.get_by_text("what you typed is kept on this page").wait_for()
    assert hand.page.locator('[data-key="wall/height"]').input_value() == "9'"
    assert focused(hand) != ""


def test_sixty_frames_on_a_phone_are_all_within_reach(chromium, library):
    for _ in range(57):
        library.change("moss.toml", do="copy frame", frame="A")
    context = chromium.new_context(viewport={"width": 390, "height": 844}, has_touch=True, is_mobile=True)
    hand = Hand(context.new_page())
    hand.open(library.address)
    hand.page.wait_for_selector("#drawing")
    for name in ("Wall", "Frames", "Arrange", "Measure", "Paper", "After hanging"):
        hand.step(name)
        assert hand.page.evaluate("document.documentElement.scrollWidth") <= 390, name
    hand.step("Frames")
    hand.button("M2")
    hand.put("frame/M2/title", "Last of sixty")
    assert 'title = "Last of sixty"' in library_text(library) and hand.told == []
    context.close()
