"""How fast the desk answers in a real browser: `python tests/bench/desk_speed.py [CHANGES]`, on a machine at rest.

For 12 and 60 frames: milliseconds from the page's first request to its drawing, and from a change to the drawing that
shows it (the middle, and that which 95 of 100 stay under); frames a second of the screen while one is dragged.
"""

from __future__ import annotations

import os
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from tests.desk.at_the_desk import running
from tests.desk.browser import CHROMIUM, LACKING, OPTIONS

CHANGE = """async ([name, drop]) => {
    const api = await import("/page/api.js");
    const start = performance.now();
    const error = await api.change({ do: "set", sets: [{ at: ["frame", name, "drop"], value: drop }] });
    if (error) throw error;
    await new Promise(requestAnimationFrame);
    return performance.now() - start;
}"""

FIRST = """() => new Promise((done) => {
    const look = () => document.getElementById("drawing") ? requestAnimationFrame(() => done(performance.now()))
        : requestAnimationFrame(look);
    look();
})"""
"""Milliseconds from when the page was asked for, which the browser counts from (High Resolution Time, W3C)."""

PACE = """() => new Promise((done) => {
    let count = 0; const start = performance.now();
    const tick = () => { count += 1; performance.now() - start < 1000 ? requestAnimationFrame(tick) : done(count); };
    requestAnimationFrame(tick);
})"""


def job(count: int) -> str:
    """A wall with so many frames in rows of twelve."""
    names = [f"F{number}" for number in range(count)]
    rows = [names[at : at + 12] for at in range(0, count, 12)]
    frames = "".join(
        f'\n[[frame]]\nid = "{name}"\nwidth = "11"\nheight = "14"\ndrop = "2 1/2"\nweight = "3 lb"\n' for name in names
    )
    return (
        (
            f'[job]\ntitle = "Seed packets"\nunit = "in"\n\n[wall]\nwidth = "20\'"\nheight = "12\'"\n\n[group]\n'
            f'arrangement = "rows"\nrows = {rows}\n{frames}\n[fixing]\nkind = "hook"\nbelow = "7/8"\nrating = "30 lb"\n'
        )
        .replace("'F", '"F')
        .replace("',", '",')
        .replace("']", '"]')
    )


def measured(count: int, changes: int) -> str:
    """The figures for a wall with so many frames, in a line."""
    from playwright.sync_api import sync_playwright

    with tempfile.TemporaryDirectory() as name, sync_playwright() as playwright:
        folder = Path(name)
        (folder / "packets.toml").write_text(job(count))
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=[*OPTIONS])
        with running(folder, "packets.toml") as desk:
            page = browser.new_page(viewport={"width": 1280, "height": 900})
            page.goto(desk.address)
            page.locator("#findings .finding").first.wait_for()
            first = sorted(opened(page, desk.host) for _ in range(5))
            took = [page.evaluate(CHANGE, [f"F{at % count}", f"{2 + at % 7} 1/8"]) for at in range(changes)]
            pace = dragged(page)
        browser.close()
    took.sort()
    return (
        f"{count} frames: first drawing {first[2]:.0f} ms; a change {took[len(took) // 2]:.0f} ms, "
        f"95 of 100 within {took[int(len(took) * 0.95) - 1]:.0f} ms; dragging at {pace} frames a second"
    )


def opened(page, host: str) -> float:
    page.goto(f"http://{host}/wall?job=packets.toml", wait_until="commit")
    return page.evaluate(FIRST)


def dragged(page) -> int:
    """Frames of the screen in a second of dragging."""
    page.wait_for_timeout(1500)
    box = page.locator('[data-frame="F3"]').bounding_box()
    page.mouse.move(box["x"] + 5, box["y"] + 5)
    page.mouse.down()
    page.evaluate("() => { window.pace = (" + PACE + ")(); }")
    end = time.monotonic() + 1.2
    while time.monotonic() < end:
        page.mouse.move(box["x"] + 5 + 60 * (time.monotonic() % 1), box["y"] + 30)
    page.keyboard.press("Escape")
    page.mouse.up()
    return page.evaluate("window.pace")


if __name__ == "__main__":
    if LACKING:
        sys.exit(LACKING)
    print(f"load {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores")
    for frames in (12, 60):
        print(measured(frames, int(sys.argv[1]) if len(sys.argv) > 1 else 100))
