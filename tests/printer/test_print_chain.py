"""Through the filter that CUPS sends PDF files to printers by: with its default options nothing is scaled.

`pdftopdf` is part of cups-filters (measured with 1.28.17, where the same call with fit-to-page gives about 94.7 %).
"""

from __future__ import annotations

import io
import math
import os
import subprocess
import tempfile
from functools import cache
from itertools import combinations
from pathlib import Path

import numpy as np
import pypdf
import pytest

from templates_gen.base.errors import InputError
from templates_gen.documents.scale_page import scale_of, scale_page
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.pdf.writing import write_pdf
from templates_gen.printer.profile import Readings, measured
from tests.made import made
from tests.pdf_reading import page_marks
from tests.taping import Disturbance, find, moved, printed, rigid
from tests.tolerance.test_virtual_taping import BARS_SEEN, PLACES, lain, lying, picture, sheets_of

FILTER = Path("/usr/lib/cups/filter/pdftopdf")
POINT = 25.4 / 72  # mm; ISO 32000-1, 8.3.2.3, and the international inch of 1959

JOBS = ("alphabet-column", "fern-prints", "twelve, a4, nails")
"""A4 and Letter, upright pages and pages on their side."""

# the least a printer description needs, with margins of a common laser printer: 3.2 mm, 12.7 mm at the foot.  Keywords
# as in the PostScript Printer Description File Format Specification 4.3 (Adobe, 1996), from memory
DESCRIPTION = """*PPD-Adobe: "4.3"
*FormatVersion: "4.3"
*FileVersion: "1.0"
*LanguageVersion: English
*LanguageEncoding: ISOLatin1
*PCFileName: "PLAIN.PPD"
*Manufacturer: "Plain"
*Product: "(Plain)"
*ModelName: "Plain"
*ShortNickName: "Plain"
*NickName: "Plain"
*PSVersion: "(3010.000) 0"
*LanguageLevel: "3"
*ColorDevice: False
*DefaultColorSpace: Gray
*OpenUI *PageSize/Size: PickOne
*DefaultPageSize: {size}
*PageSize {size}/{size}: "<</PageSize[{width} {height}]>>setpagedevice"
*CloseUI: *PageSize
*OpenUI *PageRegion/Size: PickOne
*DefaultPageRegion: {size}
*PageRegion {size}/{size}: "<</PageSize[{width} {height}]>>setpagedevice"
*CloseUI: *PageRegion
*DefaultImageableArea: {size}
*ImageableArea {size}/{size}: "9 36 {right} {top}"
*DefaultPaperDimension: {size}
*PaperDimension {size}/{size}: "{width} {height}"
"""
PAPERS = {"a4": ("A4", 595, 842), "letter": ("Letter", 612, 792)}  # as in PPD files: the nearest whole points

jobs = pytest.mark.parametrize("name", JOBS)


@cache
def filtered(name: str, options: str = "") -> bytes:
    """The template as the filter hands it on to the printer."""
    size, width, height = PAPERS[made(name).job.paper.name]
    words = {"size": size, "width": width, "height": height, "right": width - 9, "top": height - 9}
    return piped(made(name).pdf, DESCRIPTION.format(**words), options)


def piped(pdf: bytes, description: str | None, options: str) -> bytes:
    """What the filter makes of a file, for a printer of this description, or for one that it knows nothing of."""
    if not FILTER.exists():
        pytest.skip(f"the system program {FILTER} (cups-filters) is not installed")
    known = {name: value for name, value in os.environ.items() if name != "PPD"}
    with tempfile.TemporaryDirectory() as folder:
        ppd, file = Path(folder, "plain.ppd"), Path(folder, "in.pdf")
        file.write_bytes(pdf)
        if description is not None:
            ppd.write_text(description)
            known["PPD"] = str(ppd)
        done = subprocess.run(
            [FILTER, "1", "somebody", "template", "1", options, file],
            env=known | {"CONTENT_TYPE": "application/pdf"}, capture_output=True,
        )  # fmt: skip
    assert done.returncode == 0, done.stderr
    return done.stdout


def points(reader: pypdf.PdfReader, page: int) -> np.ndarray:
    """Where every line of a page starts and ends, in mm."""
    segments = page_marks(reader.pages[page]).segments
    return np.array([at for s in segments for at in ((s.x0, s.y0), (s.x1, s.y1))]) * POINT


def sizes(name: str, options: str = "") -> list[float]:
    """How large every page comes out, 1 for true: by the farthest of its points, laid on the page before."""
    after = pypdf.PdfReader(io.BytesIO(filtered(name, options)))
    assert len(after.pages) == len(made(name).template.pages)
    found = []
    for page in range(len(after.pages)):
        was, now = points(made(name).reader, page), points(after, page)
        apart = [np.linalg.norm(some - some.mean(axis=0), axis=1) for some in (was, now)]
        found.append(apart[1].max() / apart[0].max())
        assert np.abs(moved(rigid(was, now / found[-1]), was) - now / found[-1]).max() < 0.001  # mm: nothing is bent
    return found


@jobs
def test_default_options_keep_every_page_at_100_000_per_cent(name: str) -> None:
    assert max(abs(100 * size - 100) for size in sizes(name)) < 0.0005


def test_fit_to_page_would_be_seen() -> None:
    """Or the test above could not fail."""
    assert all(0.9 < size < 0.99 for size in sizes("alphabet-column", "fit-to-page"))


@pytest.mark.parametrize("name", JOBS[:2])
def test_registration_marks_are_as_far_apart_in_the_pixels_of_what_is_printed(name: str) -> None:
    """PDFium at 300 dpi: found to 0.02 mm or so, on 100 to 250 mm."""
    register = {way: picture(place, BARS_SEEN) for way, place in PLACES.items()}
    upright = {mark.name: mark.upright for mark in made(name).sheets.marks}
    pdf = filtered(name)
    for page, marks, _ in sheets_of(name)[::5]:
        image = printed(pdf, page, Disturbance())
        names = max(combinations(marks, 2), key=lambda pair: math.dist(marks[pair[0]], marks[pair[1]]))
        looks = {key: lain(register[upright[key]], page in lying(name)) for key in names}
        seen = [find(image, looks[key], *marks[key], 2.0) for key in names]
        assert abs(math.dist(*seen) - math.dist(*(marks[key] for key in names))) < 0.03


WRONG_WAYS = [
    ("letter", "a4", "", 0.9330, "a letter page when the printer is set to A4 paper"),
    ("a4", "letter", "", 0.9132, "an A4 page when the printer is set to letter paper"),
    ("a4", None, "", 0.8561, "without a description of the printer"),
    ("letter", None, "fit-to-page", 0.9091, "without a description of the printer"),
]


@pytest.mark.parametrize(("page", "printer", "options", "ratio", "words"), WRONG_WAYS)
def test_a_scale_page_printed_a_wrong_way_is_refused_with_what_was_wrong(page, printer, options, ratio, words) -> None:
    """On a printer with margins of 12 points all round, set to the other paper, or without its description."""
    scale = scale_of(page)
    template = scale_page(scale, Lettering())
    before = write_pdf(template, Lettering())
    size, width, height = PAPERS[printer or "a4"]
    ppd = DESCRIPTION.replace("9 36 {right} {top}", f"12 12 {width - 12} {height - 12}")
    after = piped(before, ppd.format(size=size, width=width, height=height) if printer else None, options)
    lengths = [np.ptp(points(pypdf.PdfReader(io.BytesIO(pdf)), 0), axis=0) for pdf in (before, after)]
    across, along = lengths[1] / lengths[0]
    assert (across, along) == pytest.approx((ratio, ratio), abs=0.0002)
    readings = Readings(
        asked_across=scale.box.width, asked_along=scale.box.height,
        across=scale.box.width * across, along=scale.box.height * along,
    )  # fmt: skip
    with pytest.raises(InputError, match="expected no more than 5% off") as caught:
        measured("study", page, readings, "2026-03-01")
    assert words in caught.value.hint
