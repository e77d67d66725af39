"""One browser for all tests in it."""

import pytest

from tests.desk.at_the_desk import LIBRARY, running
from tests.desk.browser import CHROMIUM, LACKING, OPTIONS, Hand


@pytest.fixture(scope="session")
def chromium(tmp_path_factory):
    if LACKING:
        pytest.skip(LACKING)
    from playwright.sync_api import expect, sync_playwright

    expect.set_options(timeout=60_000)  # as long as a machine under load takes
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=[*OPTIONS])
        yield browser
        browser.close()


@pytest.fixture
def hand(chromium):
    """A person with a new browser of 1280 × 900 pixels."""
    context = chromium.new_context(viewport={"width": 1280, "height": 900}, locale="en-US")
    context.set_default_timeout(60_000)
    yield Hand(context.new_page())
    context.close()


@pytest.fixture
def library(tmp_path):
    """A desk at which the library's wall is open, in a folder of its own."""
    (tmp_path / "moss.toml").write_text(LIBRARY)
    with running(tmp_path, "moss.toml") as desk:
        yield desk
