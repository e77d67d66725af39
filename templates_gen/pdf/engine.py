"""The one place that knows reportlab: reading TrueType fonts, and putting a PDF file together.

Its object model is used, its canvas is not: that one names a font that is not embedded on every page, writes
empty page transitions, and rounds coordinates to 0.01 pt from 1,000 pt on.
"""

from __future__ import annotations

import hashlib
import zlib
from collections.abc import Sequence
from functools import cached_property
from pathlib import Path
from typing import Any

from reportlab.pdfbase.pdfdoc import (
    PDFArray,
    PDFDictionary,
    PDFDocument,
    PDFName,
    PDFObjectReference,
    PDFStream,
    PDFString,
)
from reportlab.pdfbase.ttfonts import TTFontFace

from templates_gen.errors import InputError
from templates_gen.geometry import Rect
from templates_gen.pdf import MADE_BY
from templates_gen.pdf.drawing import Drawing, FontUse

_NOT_A_CHARACTER = 0x110000
"""The first number past the last character (Unicode 15.0, 3.4 D9): stands for "glyph 0" in a code table."""

_CODES_IN_A_BLOCK = 100
"""So many characters a `beginbfchar` block may hold (Adobe Technical Note 5014, section 7.2, "bfchar")."""


class Font:
    """A TrueType font file; measures are in em (the font size is 1).

    A file that is missing, is no font, has PostScript outlines or may not be embedded is an `InputError`.
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        self._face = _read_face(path)
        self._glyphs: dict[int, int] = self._face.charToGlyph
        self._unit: float = 1 / self._face.unitsPerEm
        self.cap_height: float = self._face.capHeight / 1000

    def glyph(self, char: str) -> int:
        """The number of the glyph for this character, 0 when the font has none."""
        return self._glyphs.get(ord(char), 0)

    def covers(self, char: str) -> bool:
        """True when the font has a glyph for this character."""
        return self.glyph(char) != 0

    def advance(self, glyph: int) -> float:
        """How far the pen moves on after this glyph (em)."""
        return float(self._face.hmetrics[glyph][0]) * self._unit

    def bounds(self, glyph: int) -> Rect | None:
        """The rectangle about the glyph's ink (em, from its origin); None when it has no ink."""
        start, end = self._face.glyphPos[glyph : glyph + 2]
        if end - start < _GLYPH_HEADER:
            return None
        at = self._outlines + start + 2
        sides = (int.from_bytes(self._data[i : i + 2], "big", signed=True) for i in range(at, at + 8, 2))
        return Rect(*(side * self._unit for side in sides))

    @cached_property
    def _data(self) -> bytes:
        return self.path.read_bytes()

    @cached_property
    def _outlines(self) -> int:
        return int(self._face.get_table_pos("glyf")[0])

    @cached_property
    def shaper(self) -> Any:
        """The font as HarfBuzz takes it (a `uharfbuzz.Font`, in the font's own units)."""
        import uharfbuzz

        return uharfbuzz.Font(uharfbuzz.Face(uharfbuzz.Blob(self._data)))

    @property
    def units_per_em(self) -> int:
        return int(self._face.unitsPerEm)

    def subset(self, glyphs: Sequence[int]) -> bytes:
        """A font file with just these glyphs, numbered 1, 2, 3, … in this order."""
        codes = [_NOT_A_CHARACTER + glyph for glyph in glyphs]
        self._face.charToGlyph = dict(zip(codes, glyphs, strict=True))
        try:
            return bytes(self._face.makeSubset(codes))
        finally:
            self._face.charToGlyph = self._glyphs

    def described(self, name: str) -> dict[str, Any]:
        """The entries of the PDF font descriptor, all but the font file (ISO 32000-1, 9.8)."""
        face = self._face
        return {
            "Type": PDFName("FontDescriptor"),
            "FontName": PDFName(name),
            "Flags": face.flags,
            "FontBBox": PDFArray(face.bbox),
            "ItalicAngle": face.italicAngle,
            "Ascent": face.ascent,
            "Descent": face.descent,
            "CapHeight": face.capHeight,
            "StemV": face.stemV,
        }

    @property
    def postscript_name(self) -> str:
        return bytes(self._face.name).decode("ascii", "replace")


_GLYPH_HEADER = 10
"""Bytes before the outline: number of contours, then xMin yMin xMax yMax (OpenType 1.9, table `glyf`)."""


def _read_face(path: Path) -> Any:
    if not path.is_file():
        raise InputError(f"font {path}", "there is no such file", "Give the path of a TrueType font (.ttf).")
    try:
        face = TTFontFace(str(path))
        subset_allowed = not face._full_font
        face.makeSubset([])
    except Exception as wrong:  # a broken table can stop the reader anywhere, with any exception
        raise InputError(
            f"font {path}",
            f"cannot be used: {wrong or type(wrong).__name__}",
            "A TrueType font (.ttf with TrueType outlines) that may be embedded is needed.",
        ) from wrong
    if not subset_allowed:
        raise InputError(f"font {path}", "its licence bits forbid embedding a part of it", "Give another font.")
    return face


class PdfFile:
    """A PDF file as it grows: drawings become forms and pages, `save` gives the bytes.

    `size` is in whole points and holds for every page (ISO 32000-1, 14.11.2: just a MediaBox).
    """

    def __init__(self, size: tuple[int, int], title: str, author: str, language: str) -> None:
        self._doc = PDFDocument(compression=1, invariant=1, pdfVersion=(1, 7), lang=language or None)
        self._box = PDFArray(list(size))
        self._fonts: dict[Font, FontUse] = {}
        self._titles: list[tuple[str, Any]] = []
        self._labels: list[Any] = []
        self._files: list[tuple[str, Any]] = []
        self._digest = hashlib.md5(usedforsecurity=False)
        # no dates: the same job must give the same bytes
        self._doc.info = PDFDictionary(
            {"Title": _string(title), "Author": _string(author), "Creator": PDFString(MADE_BY),
             "Producer": PDFString(MADE_BY)}
        )  # fmt: skip

    def drawing(self) -> Drawing:
        """An empty drawing for a page or a form of this file."""
        return Drawing(self._font_use)

    def add_form(self, name: str, box: Rect, drawing: Drawing) -> None:
        """Keep the drawing as the form of this name; it is cut off at `box` (mm)."""
        entries = {
            "Type": PDFName("XObject"),
            "Subtype": PDFName("Form"),
            "BBox": f"[{box.x0:.4f} {box.y0:.4f} {box.x1:.4f} {box.y1:.4f}]",
            "Resources": self._resources(drawing),
        }
        self._doc.Reference(self._stream(drawing.code(), entries), _form_key(name))

    def add_page(self, drawing: Drawing, label: str, title: str) -> None:
        """Add a page with its label and, when the title is not empty, its line in the outline."""
        page = PDFDictionary(
            {
                "Type": PDFName("Page"),
                "Parent": self._doc.Reference(self._doc.Pages),
                "MediaBox": self._box,
                "Resources": self._resources(drawing),
                "Contents": self._doc.Reference(self._stream(drawing.code(), {})),
            }
        )
        self._labels += [len(self._labels) // 2, PDFDictionary({"P": _string(label)} if label else {})]
        if title:
            self._titles.append((title, self._doc.thisPageRef()))
        self._doc.addPage(page)

    def attach(self, name: str, content: bytes) -> None:
        """Let a file travel inside (ISO 32000-1, 7.11.4)."""
        check = hashlib.md5(content, usedforsecurity=False).hexdigest()
        entries = {
            "Type": PDFName("EmbeddedFile"),
            "Params": PDFDictionary({"Size": len(content), "CheckSum": f"<{check}>"}),
        }
        stream = self._doc.Reference(self._stream(content, entries))
        spec = PDFDictionary(
            {
                "Type": PDFName("Filespec"),
                "F": _string(name),
                "UF": _string(name),
                "EF": PDFDictionary({"F": stream, "UF": stream}),
            }
        )
        self._files.append((name, self._doc.Reference(spec)))

    def save(self) -> bytes:
        """The finished file; nothing can be added after this."""
        catalog = self._doc.Catalog
        for use in self._fonts.values():
            self._embed(use)
        catalog.ViewerPreferences = _preferences()
        catalog.PageLabels = PDFDictionary({"Nums": PDFArray(self._labels)})
        catalog.Outlines = self._outline()
        if self._files:
            named = [part for name, spec in sorted(self._files, key=_name_order) for part in (_string(name), spec)]
            tree = PDFDictionary({"Names": PDFArray(named)})
            catalog.Names = PDFDictionary({"EmbeddedFiles": tree})
        self._doc.updateSignature(self._digest.digest())
        return bytes(self._doc.format())

    def _stream(self, content: bytes, entries: dict[str, Any]) -> Any:
        self._digest.update(content)
        # a small window: 1.4 to 2.8 times quicker than zlib.compress on pages, at the same size (measured)
        squeeze = zlib.compressobj(6, zlib.DEFLATED, 12, 5)
        packed = squeeze.compress(content) + squeeze.flush()
        return PDFStream(PDFDictionary({**entries, "Filter": PDFName("FlateDecode")}), packed + b"\n"[:0])

    def _resources(self, drawing: Drawing) -> Any:
        fonts = {use.name: PDFObjectReference(use.name) for use in drawing.fonts}
        forms = {key: PDFObjectReference(_form_key(name)) for name, key in drawing.forms.items()}
        used = {"Font": fonts, "XObject": forms}
        return PDFDictionary({key: PDFDictionary(value) for key, value in used.items() if value})

    def _font_use(self, font: Font) -> FontUse:
        if font not in self._fonts:
            self._fonts[font] = FontUse(f"F{len(self._fonts) + 1}", font)
        return self._fonts[font]
