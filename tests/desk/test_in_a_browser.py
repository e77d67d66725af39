"""The whole job in a real browser, as people do it who never open a terminal."""

import base64
import http.server
import threading

import pytest

import templates_gen as tg
from templates_gen.base.units import INCH
from templates_gen.documents.take_along.page import make_guide
from tests.desk import nine_slides
from tests.desk.at_the_desk import running
from tests.desk.browser import Hand, axe
from tests.jobs import SAMPLES
from tests.running import spawn

pytestmark = pytest.mark.browser


def test_nine_frames_from_nothing_to_the_template(hand: Hand, tmp_path):
    with running(tmp_path) as desk:
        hand.open(desk.address)
        nine_slides.begin(hand)
        nine_slides.on_the_wall(hand)
        nine_slides.the_frames(hand)
        nine_slides.arranged(hand)
        nine_slides.the_paper(hand)
    job = tg.read_job(tmp_path / f"{nine_slides.NAME}.toml")
    assert {
        frame.id: (round(frame.width / INCH, 9), round(frame.height / INCH, 9)) for frame in job.frames
    } == nine_slides.SIZES
    assert [frame.fixing.kind for frame in job.frames] == [*["hook"] * 7, "nail", "nail"]
    assert (tmp_path / f"{nine_slides.NAME}.pdf").read_bytes() == template_of(tmp_path, nine_slides.NAME)
    assert hand.told == []
    assert hand.clicks <= 25 and hand.keys <= 400  # what it took when this was written was 21 and 382
    print(f"{hand.clicks} clicks, {hand.keys} keys, {hand.seconds:.0f} s")


SLOW = """() => {
  const real = window.fetch;
  window.fetch = async (...asked) => {
    if (String(asked[0]).startsWith("/change")) await new Promise((done) => setTimeout(done, 4000));
    return real(...asked);
  };
}"""
"""From now on changes reach the desk four seconds late, as under load."""


def test_what_is_made_is_made_of_all_that_was_changed_before(hand: Hand, library):
    """However late a change comes to the desk: the paper waits for it, and nobody is told that it is saved."""
    hand.open(library.address)
    hand.page.wait_for_selector("#drawing")
    hand.step("Paper")
    hand.page.evaluate(SLOW)
    hand.click('[data-focus="way linked"]')
    number = "() => fetch('/state' + location.search).then(r => r.json()).then(s => s.number)"
    before = hand.page.evaluate(number)
    place = library.folder / "moss.toml"
    place.write_text("# another program was here\n" + library_text(library), encoding="utf-8")
    hand.page.wait_for_function(f"({number})().then(now => now > {before})")
    hand.page.wait_for_timeout(1000)  # the page hears of it, and takes it in
    assert 'cover = "linked"' not in library_text(library)
    assert hand.page.locator("#saved").inner_text() == "Saving…"
    hand.button("Make the template")
    hand.page.locator("#made a").first.wait_for(timeout=240_000)
    assert 'cover = "linked"' in library_text(library) and "another program" in library_text(library)
    assert hand.page.locator("#saved").inner_text() == "All saved"
    assert (library.folder / "moss.pdf").read_bytes() == template_of(library.folder, "moss")
    assert hand.told == []


def test_the_whole_way_by_keys_alone(hand: Hand, library):
    """Tab and arrows reach everything that a click does."""
    hand.open(library.address)
    hand.page.wait_for_selector("#drawing")
    to(hand, "frame A")
    before = rect(hand, "A")
    hand.press("ArrowLeft", "ArrowLeft", "Shift+ArrowUp")
    placed(hand)
    after = rect(hand, "A")
    assert after[0] - before[0] == pytest.approx(-2 * INCH / 16)
    assert after[1] - before[1] == pytest.approx(INCH)
    assert focused(hand) == "frame A"
    hand.press("Control+z")
    hand.saved()
    assert rect(hand, "A") == pytest.approx(before)
    hand.press("Control+y")
    hand.saved()
    assert rect(hand, "A") == pytest.approx(after)
    hand.press("Enter")  # its fields
    assert focused(hand) == "frame/A/id"
    hand.press("Tab", "Tab")
    hand.press("Control+a")
    hand.type("12")
    hand.press("Tab")
    hand.saved()
    assert focused(hand) == "frame/A/height"
    assert 'width = "12"' in library_text(library)
    to(hand, "Paper")
    hand.press("Enter")
    to(hand, "way marks", most=60)
    hand.press("ArrowUp")
    hand.saved()
    to(hand, "make template")
    hand.press("Enter")
    hand.page.locator("#made a").first.wait_for(timeout=240_000)
    assert hand.clicks == 0 and hand.told == []


def template_of(folder, name):
    """What the command `template` makes of a job, in a process of its own as the desk is one."""
    assert spawn("template", f"{name}.toml", "-o", "by-command.pdf", cwd=folder).code == 0
    return (folder / "by-command.pdf").read_bytes()


def focused(hand):
    return hand.page.evaluate("(({ dataset, id }) => dataset.key || dataset.focus || id)(document.activeElement)")


def to(hand, name, most=200):
    """Tab until this has the focus."""
    for _ in range(most):
        if focused(hand) == name:
            return
        hand.press("Tab")
    raise AssertionError(f"{name} is not reached by Tab")


def rect(hand, name):
    """Where the page has a frame (wall mm): left, bottom, right, top."""
    scale = hand.page.evaluate("fetch('/state' + location.search).then(r => r.json()).then(s => s.screen)")
    return next(part["rect"] for part in scale["frames"] if part["name"] == name)


def placed(hand):
    """Wait until a move by keys was saved."""
    hand.page.wait_for_timeout(450)
    hand.saved()


def library_text(desk):
    return (desk.folder / "moss.toml").read_text(encoding="utf-8")


def test_a_frame_is_dragged_and_held_by_an_edge(hand: Hand, library):
    hand.open(library.address)
    hand.page.wait_for_selector("#drawing")
    a, c = rect(hand, "A"), rect(hand, "C")
    scale = hand.page.evaluate("document.getElementById('drawing').getScreenCTM().a")
    box = hand.page.locator('[data-frame="A"]').bounding_box()
    per_mm = box["width"] / (a[2] - a[0])
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    hand.page.mouse.move(x, y)
    hand.page.mouse.down()
    hand.page.mouse.move(x - 40, y + 3, steps=5)
    # its left edge to that of C, three pixels short of it
    hand.page.mouse.move(x + (c[0] - a[0]) * per_mm - 3, y - 30, steps=5)
    assert hand.page.locator("#guides line").count() >= 1
    hand.page.mouse.up()
    hand.saved()
    now = rect(hand, "A")
    assert now[0] == pytest.approx(c[0], abs=1e-6) and scale > 0
    assert rect(hand, "B") == pytest.approx([*rect(hand, "B")]) and rect(hand, "C") == pytest.approx(c, abs=1e-6)
    assert 'arrangement = "placed"' in library_text(library)


def test_a_drag_that_is_given_up_changes_nothing(hand: Hand, library):
    hand.open(library.address)
    hand.page.wait_for_selector("#drawing")
    before = library_text(library)
    box = hand.page.locator('[data-frame="B"]').bounding_box()
    hand.page.mouse.move(box["x"] + 9, box["y"] + 9)
    hand.page.mouse.down()
    hand.page.mouse.move(box["x"] + 90, box["y"] + 90, steps=4)
    hand.press("Escape")
    hand.page.mouse.up()
    hand.saved()
    assert library_text(library) == before


def test_what_cannot_be_read_stays_in_its_field_with_the_reason_even_when_the_page_is_loaded_again(hand: Hand, library):
    hand.open(library.address)
    hand.page.wait_for_selector("#drawing")
    before = library_text(library)
    hand.put("wall/width", "14 paces")
    wrong = hand.page.locator("#f_wall_width_wrong")
    wrong.wait_for()
    assert "'paces' is not a unit here" in wrong.inner_text()
    hand.page.reload()
    wrong.wait_for()
    assert hand.page.locator('[data-key="wall/width"]').input_value() == "14 paces"
    assert library_text(library) == before
    hand.put("wall/width", "15'")
    wrong.wait_for(state="hidden")
    assert 'width = "15\'"' in library_text(library)


def test_what_is_typed_is_kept_while_another_answer_comes(hand: Hand, library):
    hand.open(library.address)
    hand.step("Frames")
    hand.click('[data-frame="A"]')
    hand.click('[data-key="frame/A/title"]')
    hand.press("Control+a")
    hand.type("Peat mo")
    library.change("moss.toml", do="set", sets=[{"at": ["frame", "B", "title"], "value": "Cup lichen"}])
    hand.page.locator('[data-frame="B"][aria-label*="Cup lichen"]').wait_for()
    assert focused(hand) == "frame/A/title"
    hand.type("ss")
    hand.press("Tab")
    hand.saved()
    assert 'title = "Peat moss"' in library_text(library) and 'title = "Cup lichen"' in library_text(library)


def test_two_pages_and_an_editor_see_each_others_changes(chromium, hand: Hand, library):
    hand.open(library.address)
    hand.page.wait_for_selector("#drawing")
    other = Hand(hand.page.context.new_page())
    other.open(f"http://{library.host}/wall?job=moss.toml")
    other.page.wait_for_selector("#drawing")
    hand.put("wall/height", "9'")
    other.page.locator('[data-key="wall/height"]').wait_for()
    from playwright.sync_api import expect

    expect(other.page.locator('[data-key="wall/height"]')).to_have_value("9'")
    path = library.folder / "moss.toml"
    path.write_text(path.read_text().replace("Bog moss", "Feather moss"))
    for one in (hand, other):
        one.page.locator('[data-frame="A"][aria-label*="Feather moss"]').wait_for()
    path.write_text(path.read_text() + "\n[wal")
    expect(hand.page.locator("#notice")).to_contain_text("cannot be read")
    hand.button("Undo")
    expect(hand.page.locator("#notice")).to_be_hidden()


def test_a_picture_is_dropped_on_a_frame(hand: Hand, library):
    hand.open(library.address)
    hand.page.wait_for_selector("#drawing")
    content = base64.b64encode((SAMPLES / "images" / "fern-a.png").read_bytes()).decode()
    hand.page.evaluate(
        """async ([content]) => {
            const bytes = Uint8Array.from(atob(content), (one) => one.charCodeAt(0));
            const data = new DataTransfer();
            data.items.add(new File([bytes], "bog moss.png", { type: "image/png" }));
            const frame = document.querySelector('[data-frame="A"] .hold');
            frame.dispatchEvent(new DragEvent("drop", { bubbles: true, cancelable: true, dataTransfer: data }));
        }""",
        [content],
    )
    hand.page.locator('[data-frame="A"] image').wait_for(state="attached")
    hand.saved()
    assert 'image = "bog-moss.png"' in library_text(library) and hand.told == []


def test_other_arrangements_are_looked_for_and_one_is_taken(hand: Hand, library):
    hand.open(library.address)
    hand.step("Arrange")
    hand.button("Show some side by side")
    hand.page.locator(".options li").nth(1).wait_for(timeout=240_000)
    hand.click('[data-focus="option 2"]')
    hand.saved()
    assert 'arrangement = "placed"' in library_text(library) and hand.told == []


STEPS = ("Wall", "Frames", "Arrange", "Measure", "Paper", "After hanging")
STACKED = """() => {
    const top = (one, part) => one.querySelector(part).getBoundingClientRect().top;
    return [...document.querySelectorAll(".measure:has(.blanks)")]
        .filter((one) => top(one, ".blanks") > top(one, ".drawing") + 20)
        .map((one) => `${one.textContent}: its blanks are under its drawing, and the list twice as long`);
}"""


@pytest.mark.parametrize("look", ["wide", "phone", "dark", "large"])
def test_no_step_has_a_barrier_and_nothing_is_cut_off(chromium, library, look):
    """At 1280 pixels, at 390, dark, and at 200 %, which is half as many pixels of twice the size."""
    width, height = {"phone": (390, 844), "large": (640, 450)}.get(look, (1280, 900))
    context = chromium.new_context(
        viewport={"width": width, "height": height}, color_scheme="dark" if look == "dark" else "light",
        device_scale_factor=2 if look == "large" else 1, locale="en-GB",
    )  # fmt: skip
    hand = Hand(context.new_page())
    hand.open(library.address)
    hand.page.locator("#findings .finding").first.wait_for()
    found = {}
    for step in STEPS:
        hand.click('[data-frame="B"]' if step == "Frames" else '[data-feature="0 settle"]')
        hand.step(step)
        found[step] = hand.barriers(axe())
        wide = hand.page.evaluate("[document.documentElement.scrollWidth, document.documentElement.clientWidth]")
        found[step] += ["it has to be scrolled sideways"] if wide[0] > wide[1] else []
        if step == "Measure":
            hand.page.locator(".measure .blanks").first.wait_for()
            found[step] += hand.page.evaluate(STACKED)
    assert found == {step: [] for step in STEPS}
    assert hand.told == []
    context.close()


def test_the_first_page_has_no_barrier_and_opens_a_sample(hand: Hand, tmp_path):
    with running(tmp_path) as desk:
        hand.open(desk.address)
        hand.button("Play with a sample wall")
        hand.page.wait_for_selector("#drawing")
        hand.open(f"http://{desk.host}/")
        hand.page.get_by_role("link", name="Fern prints").wait_for()
        assert hand.barriers(axe()) == []
        hand.open(f"http://{desk.host}/proof?job=fern-prints.toml")
        hand.page.locator("#pdf").wait_for(timeout=240_000)
        assert hand.page.evaluate("document.getElementById('proof').naturalWidth") > 100
        assert hand.barriers(axe()) == []
        assert hand.told == []


def test_a_page_of_another_origin_gets_nothing(chromium, library):
    """A page on another port of this machine, with the cookie that the browser has, asks in every way that it can."""
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), http.server.SimpleHTTPRequestHandler)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    context = chromium.new_context()
    page = context.new_page()
    page.goto(library.address)
    page.wait_for_selector("#drawing")
    before = library_text(library)
    stranger = context.new_page()
    stranger.goto(f"http://127.0.0.1:{server.server_port}/")
    told = stranger.evaluate(
        """async (host) => {
            const tries = [];
            const seen = async (name, request) => {
                try { const r = await request(); tries.push([name, r.type === "opaque" ? "opaque" : r.status]); }
                catch { tries.push([name, "refused"]); }
            };
            const body = JSON.stringify({ do: "set", sets: [{ at: ["job", "title"], value: "taken" }] });
            const at = `http://${host}/change?job=moss.toml`;
            await seen("read", () => fetch(`http://${host}/state?job=moss.toml`, { credentials: "include" }));
            await seen("change", () => fetch(at, { method: "POST", body, credentials: "include" }));
            const blind = { method: "POST", credentials: "include", mode: "no-cors" };
            await seen("change blind", () => fetch(at, { ...blind, body }));
            await seen("upload", () => fetch(`http://${host}/picture?job=moss.toml&frame=A&name=x.png`,
                { ...blind, body: new Blob(["x"]) }));
            const image = new Image();
            image.src = `http://${host}/picture?job=moss.toml&frame=A`;
            await new Promise((done) => { image.onload = image.onerror = done; });
            tries.push(["image", image.naturalWidth]);
            const frame = document.createElement("iframe");
            frame.src = `http://${host}/wall?job=moss.toml`;
            document.body.append(frame);
            await new Promise((done) => { frame.onload = done; });
            let inside = "shown";
            try { inside = frame.contentDocument ? "shown" : "closed"; } catch { inside = "closed"; }
            tries.push(["frame", inside]);
            return Object.fromEntries(tries);
        }""",
        library.host,
    )
    assert told["read"] == told["change"] == "refused"
    assert told["image"] == 0 and told["frame"] == "closed"
    page.wait_for_timeout(300)
    assert library_text(library) == before and not (library.folder / "x.png").exists()
    server.shutdown()
    server.server_close()
    context.close()


def test_the_page_for_the_phone_keeps_its_ticks_and_has_no_barrier(chromium, tmp_path):
    place = tmp_path / "guide.html"
    place.write_bytes(make_guide(tg.plan_wall(tg.read_job(SAMPLES / "fern-prints.toml"))))
    context = chromium.new_context(viewport={"width": 390, "height": 844})
    hand = Hand(context.new_page())
    hand.open(place.as_uri())
    hand.page.locator('[data-key="nail A"]').check()
    hand.page.reload()
    assert hand.page.locator('[data-key="nail A"]').is_checked()
    assert not hand.page.locator('[data-key="nail C"]').is_checked()
    assert hand.barriers(axe()) == []
    assert hand.page.evaluate("document.documentElement.scrollWidth") == 390
    assert hand.told == []
    context.close()


def test_what_is_begun_in_other_fields_stays_while_an_edit_comes_in(hand: Hand, library):
    hand.open(library.address)
    hand.step("Frames")
    for name, text in (("id", "Q"), ("width", "8")):
        hand.click(f'[data-key="new frame {name}"]')
        hand.type(text)
    path = library.folder / "moss.toml"
    path.write_text(path.read_text().replace("Bog moss", "Fork moss"))
    hand.page.locator('[data-frame="A"][aria-label*="Fork moss"]').wait_for()
    assert hand.page.locator('[data-key="new frame id"]').input_value() == "Q"
    assert focused(hand) == "new frame width"
    hand.press("Tab")
    hand.type("10")
    hand.press("Enter")
    hand.page.locator('[data-frame="Q"]').wait_for()
    assert hand.page.locator('[data-key="new frame id"]').input_value() == ""


def test_rings_are_shown_and_saved_from_behind_whichever_way_the_file_sees_them(hand: Hand, library):
    ring = {"kind": "rings", "left": "1", "right": "2", "drop_left": "3", "drop_right": "4", "seen_from": "front"}
    library.change("moss.toml", do="set", sets=[{"at": ["frame", "A", "hanger"], "value": ring}])
    hand.open(library.address)
    hand.step("Frames")
    hand.click('[data-frame="A"]')
    shown = {name: hand.page.locator(f'[data-key="frame/A/hanger/{name}"]').input_value() for name in [*ring][1:5]}
    assert shown == {"left": "2", "right": "1", "drop_left": "4", "drop_right": "3"}
    nails = [(nail["x"], nail["y"]) for nail in state(hand)["nails"] if nail["frame"] == "A"]
    hand.put("frame/A/hanger/drop_left", "4 1/2")
    hanger = tg.read_job(library.folder / "moss.toml").frames[0].hanger  # as seen from the front
    assert (hanger.left, hanger.right) == (1 * INCH, 2 * INCH)
    assert (hanger.drop_left, hanger.drop_right) == (3 * INCH, 4.5 * INCH)
    after = [(nail["x"], nail["y"]) for nail in state(hand)["nails"] if nail["frame"] == "A"]
    assert [x for x, _ in after] == pytest.approx([x for x, _ in nails])
    assert hand.told == []


def test_a_field_that_was_saved_with_another_before_its_answer_came_waits_for_nothing(hand: Hand, library):
    """Seen once in nine frames from nothing: the answer that a field waits found its draft gone."""
    hand.open(library.address)
    hand.step("Frames")
    hand.page.evaluate("import('/page/drafts.js').then((it) => it.wait('frame/A/hanger/left', 'Waits.'))")
    assert hand.page.evaluate("import('/page/drafts.js').then((it) => it.drafts.size)") == 0
    assert hand.told == []


def test_no_hanger_is_offered_twice_for_a_new_frame(hand: Hand, library):
    """The last frame's is the first choice, by whatever it is called; it stood there a second time."""
    hand.open(library.address)
    hand.step("Frames")
    offered = hand.page.locator('[data-key="new frame hanger"] option').all_inner_texts()
    assert "wire" in offered and len(set(offered)) == len(offered)


def test_a_search_shows_how_far_it_is_and_is_stopped(hand: Hand, library):
    for _ in range(17):
        library.change("moss.toml", do="copy frame", frame="A")
    hand.open(library.address)
    hand.step("Arrange")
    hand.click('[data-focus="kind salon"]')
    hand.button("Stop, and take the best so far")
    hand.page.locator("#drawing .frame").nth(19).wait_for(timeout=240_000)
    hand.saved()
    assert 'arrangement = "placed"' in library_text(library)


def state(hand):
    return hand.page.evaluate("fetch('/state' + location.search).then(r => r.json())")
