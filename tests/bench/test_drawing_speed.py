"""Drawing and writing beside what the same marks cost without the program, and how fast its pages are shown.

Run by hand: `pytest -s tests/bench/test_drawing_speed.py`.  Processor time, medians of interleaved runs.
"""

from __future__ import annotations

import io
import time
from collections.abc import Callable
from statistics import median

import pypdf
import pypdfium2
import pytest

from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.pdf.writing import write_pdf
from tests.bench.floors import straight, streams_of, with_canvas
from tests.bench.growing import Made
from tests.jobs import many

RUNS = 7

WRITING_REACH, DRAWING_REACH = 7.5, 30.0
"""How many times the bytes written straight away the PDF may take, and every mark's place and the PDF together.  Our
own design, no source; measured: 6.1 to 6.6; 16.2 with every mark's place."""

PAGES, SHOWN_REACH = 100, 0.2
"""So many pages of each file are drawn at 72 dpi, and by this share may those of the large one take longer.  Our own
design; measured: 0.98 to 1.00 times."""


def seconds(work: Callable[[], object]) -> float:
    """The processor time that the work takes."""
    start = time.process_time()
    work()
    return time.process_time() - start


def medians(*works: Callable[[], object], runs: int = RUNS) -> list[float]:
    """The median time (s) of each piece of work, over interleaved runs, after one that does not count."""
    times = [[seconds(work) for work in works] for _ in range(runs + 1)][1:]
    return [median(column) for column in zip(*times, strict=True)]


@pytest.fixture(scope="module")
def hundred() -> Made:
    Made(many(5))  # what is imported and read once
    return Made(many(100))


def test_the_floor_has_every_page_and_mark(hundred: Made) -> None:
    streams = streams_of(hundred.pdf)
    floor = pypdf.PdfReader(io.BytesIO(straight(streams, hundred.template.page_size)), strict=True)
    assert len(floor.pages) == len(hundred.template.pages)
    assert len(streams) == len(hundred.template.pages) + len(hundred.template.forms)
    last = pypdf.PdfReader(io.BytesIO(hundred.pdf)).pages[-1].get_contents()
    assert floor.pages[-1].get_contents().get_data() == last.get_data()


def test_drawing_costs_a_few_times_the_bytes_themselves(hundred: Made) -> None:
    streams, size = streams_of(hundred.pdf), hundred.template.page_size
    floor, ours, canvas = medians(
        lambda: straight(streams, size),
        lambda: write_pdf(hundred.template, Lettering()),  # with its fonts to read and its texts to set
        lambda: with_canvas(hundred.template),
    )
    both = ours + hundred.seconds["draw"]
    print(f"\n{len(hundred.template.pages)} pages: straight {floor:.3f} s")
    print(f"written {ours:.3f} s, {ours / floor:.1f} x; with placing every mark {both:.3f} s, {both / floor:.1f} x")
    print(f"reportlab's canvas {canvas:.3f} s, {canvas / floor:.1f} x")
    assert ours <= WRITING_REACH * floor
    assert both <= DRAWING_REACH * floor
    assert ours <= canvas


def test_pages_of_a_large_file_are_shown_as_fast_as_those_of_a_small_one() -> None:
    made = [Made(many(count)) for count in (20, 2000)]
    files = [pypdfium2.PdfDocument(some.pdf) for some in made]
    sheets = [len(some.sheets.sheets) for some in made]  # the last pages of each file
    times = []
    for at in range(PAGES):
        pages = [len(file) - 1 - at * count // PAGES for file, count in zip(files, sheets, strict=True)]
        times.append([seconds(file[page].render) for file, page in zip(files, pages, strict=True)])
    small, large = (median(column) for column in zip(*times, strict=True))
    print(f"\na page of 20 frames {1000 * small:.2f} ms, of 2,000 frames {1000 * large:.2f} ms, {large / small:.2f} x")
    assert large <= (1 + SHOWN_REACH) * small
