"""A real browser at the desk, and a hand that clicks and types and counts how often."""

from __future__ import annotations

import shutil
import time
from importlib.util import find_spec
from pathlib import Path
from typing import Any

CHROMIUM = next(filter(None, map(shutil.which, ("chromium", "chromium-browser", "google-chrome"))), None)

LACKING = (
    "playwright is not installed: pip install -e '.[browser]'"
    if find_spec("playwright") is None
    else ""
    if CHROMIUM
    else "no Chromium on this machine: apt-get install chromium"
)
"""Why tests in a browser cannot run here; "" where they can."""

OPTIONS = (
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
)  # fmt: skip


def axe() -> str:
    """The script that looks for barriers (axe-core, under MPL 2.0, out of the package that brings it)."""
    spec = find_spec("axe_playwright_python")
    assert spec is not None and spec.submodule_search_locations
    return (Path(spec.submodule_search_locations[0]) / "axe.min.js").read_text(encoding="utf-8")


class Hand:
    """A person at a page: every click and every key is counted."""

    def __init__(self, page: Any) -> None:
        self.page, self.clicks, self.keys, self.start = page, 0, 0, time.monotonic()
        self.told: list[str] = []
        page.on("pageerror", lambda error: self.told.append(f"error: {error}"))
        page.on("console", self._console)

    def _console(self, message: Any) -> None:
        """What the browser complains of, but for answers that say that a value cannot be read (422)."""
        if message.type == "error" and "status of 422" not in message.text:
            self.told.append(message.text)

    @property
    def seconds(self) -> float:
        return time.monotonic() - self.start

    def open(self, address: str) -> None:
        self.page.goto(address)

    def click(self, place: Any) -> None:
        """Click what a selector or a locator finds."""
        self.clicks += 1
        (self.page.locator(place) if isinstance(place, str) else place).first.click()

    def button(self, name: str) -> None:
        self.click(self.page.get_by_role("button", name=name, exact=True))

    def press(self, *keys: str) -> None:
        for key in keys:
            self.keys += 1
            self.page.keyboard.press(key)

    def type(self, text: str) -> None:
        self.keys += len(text)
        self.page.keyboard.type(text)

    def put(self, key: str, text: str) -> None:
        """Type into the field of this key, in place of what is there, and go on to the next."""
        self.click(f'[data-key="{key}"]')
        self.press("Control+a")
        self.type(text)
        self.press("Tab")
        self.saved()

    def choose(self, place: str, value: str) -> None:
        """Choose from a list: opened by a click, and the value clicked."""
        self.clicks += 2
        self.page.locator(place).first.select_option(value)
        self.saved()

    def naming(self) -> None:
        """Wait until the name of what was added has the focus."""
        end = time.monotonic() + 60
        while not self.page.evaluate("document.activeElement.dataset.key?.endsWith('/name') ?? false"):
            assert time.monotonic() < end, "no name has the focus"
            time.sleep(0.02)

    def saved(self) -> None:
        """Wait until the desk has answered."""
        from playwright.sync_api import expect

        expect(self.page.locator("#saved")).not_to_have_text("Saving…")

    def step(self, name: str) -> None:
        self.click(self.page.locator("#steps").get_by_role("button", name=name, exact=True))

    def barriers(self, script: str) -> list[str]:
        """What axe finds against WCAG 2.2 A and AA, each with the elements it is about."""
        self.page.evaluate(script)
        found = self.page.evaluate(
            "axe.run(document, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']})"
        )
        return [
            f"{one['id']}: {one['help']}: {[node['html'][:160] for node in one['nodes'][:3]]}"
            for one in found["violations"]
        ]
