"""Fonts are found, texts measured and turned the right way, and nothing is ever a black box."""

from __future__ import annotations

import ctypes
import unicodedata
from importlib.util import find_spec
from pathlib import Path

import numpy as np
import pypdfium2
import pypdfium2.raw as pdfium
import pytest
from bidi import get_display
from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.drawing.items import POINT, Page, Template, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.pdf.direction import levels
from templates_gen.drawing.pdf.writing import write_pdf

SCRIPTS = (
    "Fern 0123456789 × 3 3/8″",
    "Ångström Ý Ằ ế",
    "Ελληνικά Κείμενο",
    "Привет, Щука",
    "פרחים (שרך) Fern 12",
    "שָׁלוֹם",
    "مجموعة صور (12) الجدار",
    "क्षत्रिय हिन्दी श्री किताब",
    "ภาพที่แขวนผนัง น้ำ กู้ ปิ่น",
    "x\u0302 q\u0303",
)

LETTERING = Lettering()


def written(*items: Text) -> bytes:
    return write_pdf(Template("t", "a", "en", (595, 841), (Page("1", "", items),)), LETTERING)


def dark(data: bytes, scale: float = 6.0) -> Rect:
    """The rectangle about everything that is drawn, in mm."""
    image = pypdfium2.PdfDocument(data)[0].render(scale=scale, grayscale=True).to_numpy().squeeze()
    rows, columns = (np.flatnonzero((image < 200).any(axis=axis)) for axis in (1, 0))
    mm = POINT / scale
    top = image.shape[0]
    return Rect(columns.min() * mm, (top - rows.max() - 1) * mm, (columns.max() + 1) * mm, (top - rows.min()) * mm)


@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize("angle", [0, 90])
@pytest.mark.parametrize("anchor", ["left", "middle", "right"])
@pytest.mark.parametrize("text", SCRIPTS)
def test_ink_stays_in_its_box(text: str, anchor: str, angle: int, bold: bool) -> None:
    item = Text(105, 150, text, 5, anchor, angle, bold)
    box, ink = LETTERING.box(item), dark(written(item))
    assert box.grown(0.1).holds(ink)
    # and the box is no bigger than it must be, along the text
    along = (ink.width, box.width) if angle == 0 else (ink.height, box.height)
    assert along[0] == pytest.approx(along[1], abs=1.5)


def test_capitals_and_figures_have_a_tight_box() -> None:
    box = LETTERING.box(Text(0, 0, "A12", 10))
    assert box.y1 == pytest.approx(10, abs=0.2)
    assert box.y0 == pytest.approx(0, abs=0.2)


@pytest.mark.parametrize("text", ["Fern 12 3/8 in", "Привет", "Ελληνικά", "WAVE ½ ×"])
def test_width_is_what_the_page_shows(text: str) -> None:
    """The pen goes from the first of two equal letters to the second over the text between."""
    data = written(Text(20, 100, f"I{text}I", 7))
    page = pypdfium2.PdfDocument(data)[0].get_textpage()
    places = []
    for index in (0, page.count_chars() - 1):
        x, y = ctypes.c_double(), ctypes.c_double()
        assert pdfium.FPDFText_GetCharOrigin(page.raw, index, x, y)
        places.append(x.value * POINT)
    assert places[1] - places[0] == pytest.approx(LETTERING.width(f"I{text}", 7), abs=0.002)
    assert places[0] == pytest.approx(20, abs=0.001)


@pytest.mark.parametrize("text", ["Fern 12", "Ελληνικά Привет", "हिन्दी किताब", "ภาพที่แขวนผนัง", "3/8″ × ½"])
def test_text_can_be_searched(text: str) -> None:
    assert pypdfium2.PdfDocument(written(Text(20, 100, text, 5)))[0].get_textpage().get_text_range() == text


def test_capitals_have_the_height_asked_for() -> None:
    ink = dark(written(Text(20, 100, "H", 20)))
    assert ink.height == pytest.approx(20, abs=0.12)


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("Fern שרך 5", "Fern 5 ךרש"),
        ("A (שרך) b", "A (ךרש) b"),
        ("פרחים 12 in (Fern) סוף", "ףוס in (Fern) 12 םיחרפ"),
        ("פרחים (12)", "(12) םיחרפ"),
    ],
)
def test_right_to_left_is_in_visual_order(text: str, shown: str) -> None:
    # a turned bracket stands for the character it was typed as, so the two are not told apart here
    said = "".join(glyph.text for run in LETTERING.runs(text) for glyph in run.glyphs)
    assert said.replace("(", ")") == shown.replace("(", ")")


@settings(max_examples=300, deadline=None)
@given(st.text("ab1 -,()[].אבגדא٣مصر", max_size=12))
def test_levels_agree_with_another_implementation(text: str) -> None:
    """Turning the text by our levels gives what a library in another language makes of it."""
    order = list(range(len(text)))
    level = levels(text)
    for at_least in range(max(level, default=0), 0, -1):
        start = 0
        while start < len(order):
            end = start
            while end < len(order) and level[order[end]] >= at_least:
                end += 1
            order[start:end] = reversed(order[start:end])
            start = max(end, start + 1)
    assert "".join(text[i] for i in order) == get_display(text)


def test_arabic_letters_join() -> None:
    joined = LETTERING.width("ببب", 10)
    assert joined < 0.8 * sum(LETTERING.width("ب", 10) for _ in range(3))


def test_a_word_is_in_one_font() -> None:
    assert len(LETTERING.runs("Κείμενο")) == 1
    assert len(LETTERING.runs("Hà Nội Ằ")) == 1


@pytest.mark.parametrize(
    "text", ["", " ", "a\u200db", "\ufe0f", "a\u00adb", "\u2067אב\u2069", "\u202eabc\u202c", "\u0301"]
)
def test_what_shows_nothing_takes_no_place(text: str) -> None:
    for run in LETTERING.runs(text):
        assert all(glyph.number for glyph in run.glyphs)
    written(Text(9, 9, text, 5))


def test_control_characters_are_spaces() -> None:
    assert LETTERING.width("a\tb\nc\u00a0d", 5) == pytest.approx(LETTERING.width("a b c d", 5))


def test_decomposed_letters_are_put_together() -> None:
    assert LETTERING.width(unicodedata.normalize("NFD", "Åé"), 5) == LETTERING.width("Åé", 5)


def test_a_missing_glyph_is_named_and_a_font_helps() -> None:
    with pytest.raises(InputError, match=r"家 \(U\+5BB6\).*\n.*--font FILE.ttf"):
        LETTERING.runs("Fern 家")
    with pytest.raises(InputError, match=r"வ \(U\+0BB5\)"):
        LETTERING.runs("வீடு")
    spec = find_spec("fontpkg_noto_sans_tamil")
    assert spec is not None and spec.origin is not None
    (path,) = (Path(spec.origin).parent / "files").glob("NotoSansTamil[[]*.ttf")
    assert Lettering((path,)).width("வீடு", 5) > 0


def test_a_file_that_is_no_font_is_refused(tmp_path: Path) -> None:
    for name, content in (
        ("empty.ttf", b""),
        ("words.ttf", b"no font" * 99),
        ("cff.otf", b"OTTO" + bytes(99)),
    ):
        path = tmp_path / name
        path.write_bytes(content)
        with pytest.raises(InputError, match=name):
            Lettering((path,))
    with pytest.raises(InputError, match="no such file"):
        Lettering((tmp_path / "none.ttf",))


@pytest.mark.parametrize(
    ("bits", "allowed"),
    # fsType (OpenType 1.9, table OS/2): installable, restricted, preview and print, editable; no subsetting, bitmaps
    [(0, True), (2, False), (4, True), (8, True), (0x100, False), (0x104, False), (0x200, False)],
)
def test_a_font_whose_licence_forbids_a_part_is_refused(bits: int, allowed: bool, tmp_path: Path) -> None:
    spec = find_spec("fontpkg_noto_sans_tamil")
    assert spec is not None and spec.origin is not None
    (own,) = (Path(spec.origin).parent / "files").glob("NotoSansTamil[[]*.ttf")
    content = bytearray(own.read_bytes())
    entry = content.index(b"OS/2", 12, 12 + 16 * int.from_bytes(content[4:6], "big"))
    start = int.from_bytes(content[entry + 8 : entry + 12], "big")
    content[start + 8 : start + 10] = bits.to_bytes(2, "big")
    path = tmp_path / "tamil.ttf"
    path.write_bytes(content)
    if allowed:
        assert Lettering((path,)).width("வீடு", 5) > 0
    else:
        with pytest.raises(InputError, match=r"tamil.ttf: its licence bits forbid embedding a part of it"):
            Lettering((path,))


@settings(max_examples=100, deadline=None)
@given(st.text(max_size=20), st.booleans())
def test_any_text_is_drawn_or_refused(text: str, bold: bool) -> None:
    item = Text(50, 50, text, 5, "middle", 0, bold)
    try:
        data = written(item)
    except InputError as refused:
        assert "U+" in str(refused)
        return
    assert data.startswith(b"%PDF")
    assert LETTERING.box(item).width >= 0
