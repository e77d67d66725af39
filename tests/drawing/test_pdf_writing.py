"""The file: what it says about itself, and that marks lie where they were asked for."""

from __future__ import annotations

import io
import random
import shutil
import subprocess
import warnings
from pathlib import Path
from typing import Any

import pypdf
import pypdfium2
import pypdfium2.raw as pdfium
import pytest

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.base.output import MADE_BY
from templates_gen.drawing.items import (
    MM_TO_POINTS,
    POINT,
    Circle,
    Form,
    Item,
    Line,
    Matrix,
    Page,
    Polygon,
    Template,
    Text,
    Use,
)
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.pdf.operators import Drawing, FontUse
from templates_gen.drawing.pdf.writing import write_pdf
from tests.pdf_reading import Marks, page_marks

CLOSE = 0.0005 / POINT
"""How near a place read back has to be: 0.0005 mm in points, a hundredth of a 600 dpi dot."""

FILES = (("job.toml", b"[job]\ntitle = 'x'\n" * 50), ("œuvre.csv", bytes(range(256))), ("פרחים.txt", b""))


def template(*pages: Page, forms: tuple[Form, ...] = (), title: str = "Fern prints") -> Template:
    return Template(title, "Larkfield", "en-GB", (595, 841), pages, forms, FILES)


def page(*items: Item, label: str = "A1", title: str = "") -> Page:
    return Page(label, title, items)


def on_wall(items: tuple[Item, ...], window: Rect, to_page: Matrix) -> Page:
    return Page("A1", "", (), wall_items=items, window=window, to_page=to_page)


def read(data: bytes) -> Any:
    return pypdf.PdfReader(io.BytesIO(data), strict=True)


def marks(*pages: Page, forms: tuple[Form, ...] = ()) -> Marks:
    return page_marks(read(write_pdf(template(*pages, forms=forms), Lettering())).pages[0])


@pytest.fixture(scope="module")
def sample() -> bytes:
    fern = Form("fern", Rect(0, 0, 50, 50), (Line(0, 0, 50, 50, 0.35), Text(5, 5, "in a form", 3.5)))
    first = page(Text(20, 20, "how to print", 5, bold=True), Use("fern", 30, 30), label="0", title="צילום")
    second = page(Circle(50, 50, 5, 0.25), Polygon(((1, 1), (2, 1), (2, 2)), grey=0.5), label="A1", title="A1")
    return write_pdf(template(first, second, page(label="schedule"), forms=(fern,)), Lettering())


def test_one_size_and_no_other_box(sample: bytes) -> None:
    for each in read(sample).pages:
        assert list(each["/MediaBox"]) == [0, 0, 595, 841]
        assert all(isinstance(side, int) for side in each["/MediaBox"])
        others = {"/CropBox", "/TrimBox", "/BleedBox", "/ArtBox", "/UserUnit", "/Rotate"}
        assert not others & set(each)


def test_printing_preferences(sample: bytes) -> None:
    told = read(sample).trailer["/Root"]["/ViewerPreferences"]
    assert told == {
        "/PrintScaling": "/None",
        "/Enforce": ["/PrintScaling"],
        "/Duplex": "/Simplex",
        "/PickTrayByPDFSize": True,
        "/NumCopies": 1,
        "/DisplayDocTitle": True,
    }
    document = pypdfium2.PdfDocument(sample)
    assert pdfium.FPDF_VIEWERREF_GetPrintScaling(document.raw) == 0
    assert pdfium.FPDF_VIEWERREF_GetNumCopies(document.raw) == 1


def test_what_the_file_says(sample: bytes) -> None:
    reader = read(sample)
    assert sample.startswith(b"%PDF-1.7")
    assert reader.page_labels == ["0", "A1", "schedule"]
    assert [(entry.title, reader.get_destination_page_number(entry)) for entry in reader.outline] == [
        ("צילום", 0),
        ("A1", 1),
    ]
    assert reader.trailer["/Root"]["/Lang"] == "en-GB"
    assert reader.metadata is not None
    assert (reader.metadata.title, reader.metadata.author) == ("Fern prints", "Larkfield")
    assert reader.metadata.creator == MADE_BY
    assert MADE_BY.encode() in sample
    assert b"ASCII85" not in sample


def test_attachments_come_back_as_they_were(sample: bytes) -> None:
    found = {name: contents[0] for name, contents in read(sample).attachments.items()}
    assert found == dict(FILES)


def test_every_font_is_inside(sample: bytes) -> None:
    fonts = list(read(sample).pages[0]["/Resources"]["/Font"].values())
    assert fonts
    for font in fonts:
        inner = font.get_object()["/DescendantFonts"][0].get_object()
        assert "/FontFile2" in inner["/FontDescriptor"]


def test_two_runs_give_the_same_bytes() -> None:
    one = template(page(Text(10, 10, "Fern פרחים پ", 5), Line(0, 0, 1, 1, 0.1)))
    other = template(page(Text(10, 10, "Other क्ष", 5)))
    lettering = Lettering()
    first = write_pdf(one, lettering)
    different = write_pdf(other, lettering)
    assert write_pdf(one, lettering) == write_pdf(one, Lettering()) == first
    assert read(first).trailer["/ID"] != read(different).trailer["/ID"]


def test_what_was_written_before_changes_no_byte() -> None:
    """A desk writes many files in its life: what it remembers of others must not show, were it a zero's sign."""

    def begun(zero: float) -> bytes:
        drawing = Drawing(lambda font: FontUse("F1", font))
        drawing.begin((1.0, zero, zero, 1.0, 5.0, 5.0))
        for width in range(1, 300):  # so much else is written meanwhile that nothing is remembered
            drawing.pen(width / 7)
        return drawing.code()

    assert begun(-0.0) == begun(0.0) == begun(-0.0)


def test_a_reader_warns_of_nothing(sample: bytes) -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        for each in read(sample).pages:
            each.extract_text()


@pytest.mark.skipif(shutil.which("qpdf") is None, reason="the system program qpdf is not installed")
def test_a_checker_is_silent(sample: bytes, tmp_path: Path) -> None:
    path = tmp_path / "sample.pdf"
    path.write_bytes(sample)
    subprocess.run(["qpdf", "--check", path], check=True, capture_output=True)


@pytest.mark.parametrize("seed", range(20))
def test_lines_lie_where_they_were_asked_for(seed: int) -> None:
    """A line of the wall, a form that starts up to 3 m off the page, a printer that is corrected for."""
    rng = random.Random(seed)
    left, bottom = rng.uniform(0, 12000), rng.uniform(0, 3000)
    window = Rect.sized(left, bottom, 196, 277)
    kx, ky, skew = rng.uniform(0.95, 1.05) / POINT, rng.uniform(0.95, 1.05) / POINT, rng.uniform(-0.01, 0.01)
    to_page = (kx, skew, skew, ky, 20 - kx * left - skew * bottom, 36 - skew * left - ky * bottom)
    x, y = left + rng.uniform(0, 196), bottom + rng.uniform(0, 277)
    fx, fy = left - rng.uniform(0, 3000), bottom + rng.uniform(-3000, 3000)
    form = Form("f", Rect(-4000, -4000, 4000, 4000), (Line(x - fx, y - fy, x - fx + 5, y - fy, 0.25),))
    found = marks(on_wall((Line(x, y, x + 5, y, 0.25), Use("f", fx, fy)), window, to_page), forms=(form,))
    wanted = [(kx * px + skew * y + to_page[4], skew * px + ky * y + to_page[5]) for px in (x, x + 5)]
    assert len(found.segments) == 2
    for segment in found.segments:
        assert segment[:4] == pytest.approx((*wanted[0], *wanted[1]), abs=CLOSE)
        assert segment.width == pytest.approx(0.25 * (kx * ky - skew * skew) ** 0.5, rel=1e-6)


def test_circles_and_texts_lie_where_they_were_asked_for() -> None:
    found = marks(page(Circle(50, 60, 3, 0.25), Circle(70, 80, 1, 9, filled=True), Text(20, 30, "A 12", 3.5)))
    (ring, dot), (text,) = found.circles, found.texts
    assert ring == pytest.approx((50 / POINT, 60 / POINT, 3 / POINT, 0.25 / POINT), abs=CLOSE)
    assert dot == pytest.approx((70 / POINT, 80 / POINT, 1 / POINT, 0), abs=CLOSE)
    assert text[:3] == pytest.approx((20 / POINT, 30 / POINT, 3.5 / 0.7 / POINT), abs=CLOSE)
    assert text.text == "A 12"


def test_nothing_of_the_wall_shows_outside_its_window() -> None:
    thick = Line(0, 50, 200, 50, 10)
    data = write_pdf(template(on_wall((thick,), Rect(50, 0, 100, 100), MM_TO_POINTS)), Lettering())
    image = pypdfium2.PdfDocument(data)[0].render(scale=POINT * 10 / 2.54 / POINT).to_pil().convert("L")
    across = [image.getpixel((i, round(image.height * (1 - 50 / POINT / 841)))) for i in range(image.width)]
    dark = [i * 595 * POINT / image.width for i, value in enumerate(across) if value < 128]
    assert (min(dark), max(dark)) == pytest.approx((50, 100), abs=0.3)


def test_dashes_start_in_their_pattern() -> None:
    data = write_pdf(template(page(Line(0, 9, 99, 9, 0.2, (12, 3, 0.5, 3), -5.0))), Lettering())
    operators = [(o, n) for o, n in read(data).pages[0].get_contents().operations if n == b"d"]
    assert [[float(v) for v in operators[0][0][0]], float(operators[0][0][1])] == [[12, 3, 0.5, 3], 32.0]


def test_unused_forms_stay_out_and_used_ones_are_there_once() -> None:
    inner = Form("inner", Rect(0, 0, 9, 9), (Line(0, 0, 9, 9, 0.2),))
    outer = Form("outer", Rect(0, 0, 99, 99), (Use("inner", 10, 0), Use("inner", 20, 0)))
    spare = Form("spare", Rect(0, 0, 9, 9), (Line(0, 0, 9, 9, 0.2),))
    pages = (page(Use("outer", 1, 1)), page(Use("outer", 5, 5)))
    data = write_pdf(template(*pages, forms=(spare, inner, outer)), Lettering())
    assert data.count(b"/Subtype /Form") == 2
    assert len(page_marks(read(data).pages[0]).segments) == 2


def test_a_form_that_is_not_there_is_named() -> None:
    with pytest.raises(ValueError, match="nowhere"):
        write_pdf(template(page(Use("nowhere", 0, 0))), Lettering())


def test_a_missing_glyph_stops_the_file() -> None:
    with pytest.raises(InputError, match=r"家 \(U\+5BB6\)"):
        write_pdf(template(page(Text(0, 0, "家", 5))), Lettering())


def test_any_title_can_be_written() -> None:
    odd = "a(b)\\ \n \x00 😀 \ud800"
    data = write_pdf(template(page(label=odd, title=odd), title=odd), Lettering())
    assert read(data).metadata.title == "a(b)\\ \n \x00 😀 �"
