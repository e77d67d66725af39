"""Finished files: what they say about themselves and to a printer, and that checkers have nothing to say about them."""

from __future__ import annotations

import io
import json
import os
import shutil
import subprocess
import sys
import warnings
from pathlib import Path
from typing import Any

import pypdf
import pypdfium2
import pypdfium2.raw as pdfium
import pytest

from templates_gen.tiling import quickest
from tests.jobs import SAMPLES
from tests.made import NAMES, SAMPLE_NAMES, made

# whole points, rounded down, longer side second.  ISO 216 and ANSI Y14.1 sizes (from memory) over 25.4 / 72 mm,
# worked out by hand here: A4 595.28 by 841.89, A3 841.89 by 1190.55, Letter 612 by 792, Tabloid 792 by 1224
POINTS = {"a4": (595, 841), "a3": (841, 1190), "letter": (612, 792), "tabloid": (792, 1224)}

samples = pytest.mark.parametrize("name", SAMPLE_NAMES)
all_jobs = pytest.mark.parametrize("name", NAMES)


def root(name: str) -> Any:
    return made(name).reader.trailer["/Root"]


@all_jobs
def test_all_pages_have_one_size_in_whole_points(name: str) -> None:
    boxes = {tuple(page["/MediaBox"]) for page in made(name).reader.pages}
    assert len(boxes) == 1
    (box,) = boxes
    assert all(isinstance(side, int) for side in box)
    assert box[:2] == (0, 0) and tuple(sorted(box[2:])) == POINTS[made(name).job.paper.name]


@all_jobs
def test_no_page_has_another_box_or_is_turned(name: str) -> None:
    others = {"/CropBox", "/TrimBox", "/BleedBox", "/ArtBox", "/UserUnit", "/Rotate"}
    nodes = [root(name)["/Pages"], *made(name).reader.pages]
    assert [others & set(node) for node in nodes] == [set()] * len(nodes)


@all_jobs
def test_nothing_is_hidden_in_a_layer(name: str) -> None:
    assert "/OCProperties" not in root(name)


@samples
def test_printing_is_asked_for_without_scaling(name: str) -> None:
    preferences = root(name)["/ViewerPreferences"]
    assert preferences["/PrintScaling"] == "/None"
    assert preferences["/Enforce"] == ["/PrintScaling"]
    assert preferences["/Duplex"] == "/Simplex"
    assert preferences["/PickTrayByPDFSize"].value is True
    # 0 is "none" in the header of PDFium; pypdfium2 calls it without its own layer
    assert pdfium.FPDF_VIEWERREF_GetPrintScaling(pypdfium2.PdfDocument(made(name).pdf).raw) == 0


@samples
def test_the_job_travels_inside_byte_for_byte(name: str) -> None:
    wanted = {f"{name}.toml": (SAMPLES / f"{name}.toml").read_bytes()}
    if name == "tile-rubbings":
        wanted["tile-rubbings.csv"] = (SAMPLES / "tile-rubbings.csv").read_bytes()
    found = {key: contents[0] for key, contents in made(name).reader.attachments.items()}
    told = json.loads(found.pop("sheets.json"))
    assert [sheet[0] for sheet in told["sheets"]] == [sheet.name for sheet in made(name).sheets.sheets]
    assert found == wanted


@samples
def test_a_strict_reader_has_no_warning(name: str) -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        reader = pypdf.PdfReader(io.BytesIO(made(name).pdf), strict=True)
        assert all(page.extract_text() for page in reader.pages)


@all_jobs
def test_qpdf_finds_nothing_wrong(name: str, tmp_path: Path) -> None:
    if shutil.which("qpdf") is None:
        pytest.skip("the system program qpdf is not installed")
    path = tmp_path / "template.pdf"
    path.write_bytes(made(name).pdf)
    done = subprocess.run(["qpdf", "--check", path], capture_output=True, text=True)
    assert done.returncode == 0 and done.stderr == ""


def test_two_processes_write_the_same_bytes() -> None:
    """Whatever the seed of the hashes, and so whatever order a set of words comes in.

    They search as little for sheets as all tests do: what a search looks at are numbers, which every seed hashes alike.
    """
    code = (
        "import hashlib, sys, templates_gen as tg\n"
        "from templates_gen.tiling import quickest\n"
        f"quickest.STEPS_A_SHEET, quickest.LEAST_STEPS = {quickest.STEPS_A_SHEET}, {quickest.LEAST_STEPS}\n"
        "print(hashlib.sha256(tg.make_template(tg.read_job(sys.argv[1])).pdf).hexdigest())"
    )
    path = SAMPLES / "fern-prints.toml"
    found = {
        subprocess.run(
            [sys.executable, "-c", code, path],
            env=os.environ | {"PYTHONHASHSEED": seed}, capture_output=True, text=True, check=True,
        ).stdout.strip()
        for seed in ("1", "2", "3")
    }  # fmt: skip
    assert len(found) == 1 and found != {""}


@samples
def test_title_client_and_language_are_the_jobs(name: str) -> None:
    done = made(name)
    assert done.reader.metadata is not None
    assert (done.reader.metadata.title, done.reader.metadata.author) == (done.job.title, done.job.client)
    assert root(name)["/Lang"] == done.job.language


@samples
def test_the_file_is_pdf_1_7(name: str) -> None:
    assert made(name).pdf.startswith(b"%PDF-1.7\n")


@all_jobs
def test_the_outline_leads_to_every_sheet(name: str) -> None:
    done = made(name)
    entries = {entry.title: done.reader.get_destination_page_number(entry) + 1 for entry in done.reader.outline}
    assert list(entries.values()) == sorted(entries.values())
    for sheet in done.report["sheets"]:
        assert entries[f"Sheet {sheet['name']}"] == sheet["page"]


@all_jobs
def test_pages_are_labelled_with_their_sheets_names(name: str) -> None:
    done = made(name)
    labels = done.reader.page_labels
    first = len(labels) - len(done.report["sheets"])
    numbers = ["i", "ii", "iii", "iv", "v", "vi", "vii"]
    assert labels[:first] == numbers[:first]  # for sheets have numbers for names
    assert labels[first:] == [sheet["name"] for sheet in done.report["sheets"]]
    assert labels[first:] == [f"{number}" for number in range(1, len(labels) - first + 1)]


def fonts_of(resources: Any) -> list[Any]:
    """The fonts of a page or form, and those of the forms in it."""
    found = list(resources.get("/Font", {}).values())
    for form in resources.get("/XObject", {}).values():
        found += fonts_of(form.get_object().get("/Resources", {}))
    return found


@samples
def test_every_font_is_inside(name: str) -> None:
    fonts = [font for page in made(name).reader.pages for font in fonts_of(page["/Resources"])]
    assert fonts
    for font in fonts:
        (inner,) = font.get_object()["/DescendantFonts"]
        assert len(inner.get_object()["/FontDescriptor"]["/FontFile2"].get_data()) > 500
