"""The pictures of the README and of the samples, made by the project itself: `python -m tests.pictures`."""

from __future__ import annotations

import io
import shutil
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pypdfium2
from PIL import Image

from templates_gen import make_template, read_job
from templates_gen.documents.proof.making import make_proof
from tests.artwork import PICTURES
from tests.desk.at_the_desk import running
from tests.desk.browser import CHROMIUM, LACKING, OPTIONS

SAMPLES = Path(__file__).parent.parent / "samples"

PAGES = {
    "first-page": "How to print and tape",
    "hanging-day": "The hanging day", "sheet": "Sheet 16", "proof": "Fern prints",
}  # fmt: skip
"""Picture, and the page it shows by its line in the outline; a sheet with a nail, a scale, an edge and a label."""

DOTS_PER_INCH = 75.0
"""Small enough for a repository, large enough to read the headings.  Our own design, no source."""

COLOURS = {"proof": 64}
"""Of a picture in colours; the others are in 16 greys."""

LIES = {"sheet": 90}
"""Degrees by which a picture is turned to the right, of a page that lies on its side: as it hangs on the wall."""


def pictures(sample: str) -> dict[str, bytes]:
    """PNG files by name, of one sample's template and proof."""
    job = read_job(SAMPLES / f"{sample}.toml")
    pages = dict([*outlined(make_template(job).pdf), *outlined(make_proof(job).content)])
    return {
        f"{sample}-{name}.png": small_png(pages[line], COLOURS.get(name), LIES.get(name, 0))
        for name, line in PAGES.items()
    }


def outlined(pdf: bytes) -> Iterator[tuple[str, pypdfium2.PdfPage]]:
    """The pages of a file by their lines in its outline."""
    document = pypdfium2.PdfDocument(pdf)
    for line in document.get_toc():
        if (place := line.get_dest()) is not None:
            yield line.get_title(), document[place.get_index()]


def small_png(page: pypdfium2.PdfPage, colours: int | None, turned: int) -> bytes:
    image = page.render(scale=DOTS_PER_INCH / 72 * (1.4 if colours else 1.0)).to_pil().rotate(-turned, expand=True)
    few = image.quantize(colours, Image.Quantize.MAXCOVERAGE) if colours else image.convert("L").quantize(16)
    out = io.BytesIO()
    few.save(out, "PNG", optimize=True)
    return out.getvalue()


DESK = {"desk": (1280, 900, "light", "Frames"), "desk-phone": (390, 844, "light", "Wall"),
        "desk-dark": (1280, 900, "dark", "Paper")}  # fmt: skip
"""Pictures of the desk: how wide and high, light or dark, and which step."""


def desk_pictures(sample: str) -> dict[str, bytes]:
    """PNG files by name of a sample at the desk, in a real browser."""
    from playwright.sync_api import expect, sync_playwright

    made: dict[str, bytes] = {}
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        shutil.copy(SAMPLES / f"{sample}.toml", folder)
        shutil.copytree(SAMPLES / "images", Path(folder) / "images")
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=[*OPTIONS])
        with running(Path(folder), f"{sample}.toml") as desk:
            for name, (width, height, colours, step) in DESK.items():
                context = browser.new_context(
                    viewport={"width": width, "height": height}, color_scheme=colours, locale="en-US"
                )
                page = context.new_page()
                page.goto(desk.address)
                page.locator("#findings .finding").first.wait_for()
                if step == "Frames":
                    page.locator('[data-frame="B"]').click()
                page.locator("#steps").get_by_role("button", name=step).click()
                page.wait_for_timeout(1000)  # for the drawings in the step
                expect(page.get_by_text("being worked out…")).to_have_count(0, timeout=120_000)
                made[f"{sample}-{name}.png"] = few_colours(Image.open(io.BytesIO(page.screenshot())))
                context.close()
        browser.close()
    return made


def few_colours(image: Image.Image) -> bytes:
    out = io.BytesIO()
    image.convert("RGB").quantize(96, Image.Quantize.FASTOCTREE).save(out, "PNG", optimize=True)
    return out.getvalue()


if __name__ == "__main__":
    artwork = {f"images/{name}.png": draw() for name, draw in PICTURES.items()}
    (SAMPLES / "images").mkdir(exist_ok=True)
    for name, content in artwork.items():
        (SAMPLES / name).write_bytes(content)
    if LACKING:
        print(f"the desk's pictures stay as they are: {LACKING}")
    desk = {} if LACKING else desk_pictures("fern-prints")
    for name, content in (artwork | pictures("fern-prints") | desk).items():
        (SAMPLES / name).write_bytes(content)
        print(f"samples/{name}: {len(content)} bytes")
