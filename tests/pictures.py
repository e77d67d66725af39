"""The pictures of the README, made from a sample by the project itself: `python -m tests.pictures`."""

from __future__ import annotations

import io
from pathlib import Path

import pypdf
import pypdfium2

from templates_gen import make_template, read_job

SAMPLES = Path(__file__).parent.parent / "samples"

PAGES = {"first-page": "How to print and tape", "hanging-day": "The hanging day", "sheet": "Sheet A1"}
"""Picture, and the page it shows by its line in the outline."""

DOTS_PER_INCH = 75.0
"""Small enough for a repository, large enough to read the headings.  Our own design, no source."""


def pictures(sample: str) -> dict[str, bytes]:
    """PNG files by name, of one sample's template."""
    made = make_template(read_job(SAMPLES / f"{sample}.toml"))
    document = pypdfium2.PdfDocument(made.pdf)
    reader = pypdf.PdfReader(io.BytesIO(made.pdf))
    numbers = {entry.title: reader.get_destination_page_number(entry) for entry in reader.outline}
    found = {}
    for name, title in PAGES.items():
        page = document[numbers[title]].render(scale=DOTS_PER_INCH / 72).to_pil().convert("L")
        out = io.BytesIO()
        page.quantize(16).save(out, "PNG", optimize=True)
        found[f"{sample}-{name}.png"] = out.getvalue()
    return found


if __name__ == "__main__":
    for name, content in pictures("fern-prints").items():
        (SAMPLES / name).write_bytes(content)
        print(f"samples/{name}: {len(content)} bytes")
