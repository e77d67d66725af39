"""The one place that knows reportlab: reading TrueType fonts, and laying objects out as a PDF file.

Its object model is used, its canvas is not.  The canvas names a font that is not embedded on every page, writes empty
page transitions, and keeps seven digits of a coordinate, whatever that is in millimetres.
"""

from __future__ import annotations

import hashlib
import zlib
from collections.abc import Sequence
from functools import cached_property
from pathlib import Path
from typing import Any

from reportlab.pdfbase.pdfdoc import PDFArray, PDFDictionary, PDFDocument, PDFObjectReference, PDFStream, PDFString
from reportlab.pdfbase.ttfonts import TTFontFace

from templates_gen.base.errors import InputError
from templates_gen.base.files import odd_kind
from templates_gen.base.geometry import Rect
from templates_gen.drawing.pdf.glyph import EM, Glyph, forbids_a_part

_NOT_A_CHARACTER = 0x110000
"""The first number past the last character (Unicode 15.0, 3.4, D9): above it any glyph gets its own code."""

_VERSION = (1, 7)
"""Of PDF: what ISO 32000-1 describes."""

_SQUEEZE = (4, zlib.DEFLATED, 12, 5)
"""Level, method, window and memory of packing: 2 to 4 times quicker than usual, pages 1/40 larger (measured)."""

_GLYPH_HEADER = 10
"""Bytes before an outline: number of contours, then xMin, yMin, xMax, yMax (OpenType 1.9, table `glyf`)."""


class Font:
    """A TrueType font file; measures are in em (the font size is 1).

    A file that is missing, is no font, has PostScript outlines or may not be embedded is an `InputError`.
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        self._face = _read_face(path)
        self._glyphs: dict[int, int] = self._face.charToGlyph
        self.units_per_em = int(self._face.unitsPerEm)
        self.cap_height = float(self._face.capHeight) / EM
        self.name = bytes(self._face.name).decode("ascii", "replace")
        self._covered = frozenset(chr(char) for char, glyph in self._glyphs.items() if glyph)
        self._plain: dict[str, Glyph] = {}
        self._letters: dict[str, tuple[float, float, float, float, float]] = {}
        self._bounds: dict[int, Rect | None] = {}

    def glyph(self, char: str) -> int:
        """The number of the glyph for this character, 0 when the font has none."""
        return self._glyphs.get(ord(char), 0)

    def covers(self, text: str) -> bool:
        """True when the font has a glyph for every character of the text."""
        return self._covered.issuperset(text)

    def plain(self, char: str) -> Glyph:
        """The glyph of a character that stands by itself."""
        known = self._plain.get(char)
        if known is None:
            number = self.glyph(char)
            known = self._plain[char] = Glyph(number, self.advance(number), text=char)
        return known

    def measured(self, text: str) -> tuple[float, Rect] | None:
        """How far plain text goes, and the rectangle about its ink (em); None when the font lacks a character."""
        pen, x0, y0, x1, y1 = 0.0, 0.0, 0.0, 0.0, self.cap_height
        for char in text:
            letter = self._letters.get(char) or self._letter(char)
            if letter is None:
                return None
            advance, left, low, right, high = letter
            # comparisons instead of min and max: asked for every letter, twice as quick
            x0 = pen + left if pen + left < x0 else x0
            y0 = low if low < y0 else y0
            x1 = pen + right if pen + right > x1 else x1
            y1 = high if high > y1 else y1
            pen += advance
        return pen, Rect(x0, y0, max(x1, pen), y1)

    def _letter(self, char: str) -> tuple[float, float, float, float, float] | None:
        """A character's advance and its ink's left, lower, right and upper side (em)."""
        glyph = self.glyph(char)
        if not glyph:
            return None
        ink = self.bounds(glyph) or Rect(0.0, 0.0, 0.0, 0.0)
        letter = self._letters[char] = (self.advance(glyph), ink.x0, ink.y0, ink.x1, ink.y1)
        return letter

    def advance(self, glyph: int) -> float:
        """How far the pen moves on after this glyph (em)."""
        return float(self._face.hmetrics[glyph][0]) / self.units_per_em

    def bounds(self, glyph: int) -> Rect | None:
        """The rectangle about the glyph's ink (em, from its origin); None when it has no ink."""
        if glyph not in self._bounds:
            self._bounds[glyph] = self._read_bounds(glyph)
        return self._bounds[glyph]

    def _read_bounds(self, glyph: int) -> Rect | None:
        start, end = self._face.glyphPos[glyph : glyph + 2]
        if end - start < _GLYPH_HEADER:
            return None
        at = self._outlines + start + 2
        places = range(at, at + _GLYPH_HEADER - 2, 2)
        sides = (int.from_bytes(self._data[i : i + 2], "big", signed=True) for i in places)
        return Rect(*(side / self.units_per_em for side in sides))

    @cached_property
    def _data(self) -> bytes:
        return self.path.read_bytes()

    @cached_property
    def _outlines(self) -> int:
        return int(self._face.get_table_pos("glyf")[0])

    @cached_property
    def _shaper(self) -> Any:
        import uharfbuzz

        return uharfbuzz.Font(uharfbuzz.Face(uharfbuzz.Blob(self._data)))

    def shaped(self, text: str, backward: bool) -> tuple[Sequence[Any], Sequence[Any]]:
        """What HarfBuzz makes of a text in one script and direction: glyphs with their clusters, and their positions.

        Left to right as they stand on paper, in the font's own units; `backward` when the text reads to the left.
        """
        import uharfbuzz

        buffer = uharfbuzz.Buffer()
        buffer.add_str(text)
        buffer.guess_segment_properties()
        buffer.direction = "rtl" if backward else "ltr"
        buffer.flags = uharfbuzz.BufferFlags.REMOVE_DEFAULT_IGNORABLES
        uharfbuzz.shape(self._shaper, buffer)
        return buffer.glyph_infos or (), buffer.glyph_positions or ()

    def subset(self, glyphs: Sequence[int]) -> bytes:
        """A font file with just these glyphs, numbered 1, 2, 3, … in this order."""
        codes = [_NOT_A_CHARACTER + glyph for glyph in glyphs]
        self._face.charToGlyph = dict(zip(codes, glyphs, strict=True))
        try:
            return bytes(self._face.makeSubset(codes))
        finally:
            self._face.charToGlyph = self._glyphs

    def descriptor(self) -> dict[str, Any]:
        """The measures that a PDF font descriptor holds (ISO 32000-1, 9.8), in thousandths of an em."""
        face = self._face
        return {
            "Flags": face.flags,
            "FontBBox": list(face.bbox),
            "ItalicAngle": face.italicAngle,
            "Ascent": face.ascent,
            "Descent": face.descent,
            "CapHeight": face.capHeight,
            "StemV": face.stemV,
        }


def _read_face(path: Path) -> Any:
    if not path.is_file():
        found = f"is {kind}" if (kind := odd_kind(path)) else "there is no such file"
        raise InputError(f"font {path}", found, "Give the path of a TrueType font (.ttf).")
    try:
        if not (forbidden := forbids_a_part(path.read_bytes())):
            face = TTFontFace(str(path))
            face.makeSubset([])
    except Exception as wrong:  # a broken table can stop the reader anywhere, with any exception
        raise InputError(
            f"font {path}",
            f"cannot be used: {str(wrong) or type(wrong).__name__}",
            "What works is a .ttf file with TrueType outlines (not PostScript ones) that may be embedded.",
        ) from wrong
    if forbidden:
        raise InputError(f"font {path}", "its licence bits forbid embedding a part of it", "Give another font.")
    return face


def text_bytes(value: str) -> bytes:
    """What stands in the file for this text, in any script (ISO 32000-1, 7.9.2.2): ASCII, or else UTF-16."""
    if value.isascii() and value.isprintable():
        return value.encode("ascii")
    # half a surrogate pair cannot be written; it becomes U+FFFD
    whole = value.encode("utf-16-be", "surrogatepass").decode("utf-16-be", "replace")
    return b"\xfe\xff" + whole.encode("utf-16-be")


def text(value: str) -> Any:
    """A text string object."""
    return PDFString(text_bytes(value), enc="raw")


def _object(value: Any) -> Any:
    """Plain values as reportlab's objects: a str is written as it stands, so `/Name` is a name."""
    if isinstance(value, dict):
        return PDFDictionary({key: _object(entry) for key, entry in value.items()})
    return PDFArray([_object(entry) for entry in value]) if isinstance(value, list) else value


class Objects:
    """The objects of a PDF file: numbered as they come, written by `write`.

    Values are dict, list, number, str (written as it stands) and what `text`, `add` and `reference` give.
    """

    def __init__(self, language: str) -> None:
        self._document = PDFDocument(compression=1, invariant=1, pdfVersion=_VERSION, lang=language or None)
        self._digest = hashlib.md5(usedforsecurity=False)
        self.pages = self._document.Reference(self._document.Pages)

    def add(self, value: dict[str, Any] | list[Any], key: str | None = None) -> Any:
        """Number the object; the reference to it."""
        return self._document.Reference(_object(value), key)

    def stream(self, content: bytes, entries: dict[str, Any], key: str | None = None) -> Any:
        """Number a stream, compressed unless its entries name a filter of its own; the reference to it."""
        self._digest.update(content)
        if "Filter" in entries:
            return self._document.Reference(PDFStream(_object(entries), content), key)
        squeeze = zlib.compressobj(*_SQUEEZE)
        packed = squeeze.compress(content) + squeeze.flush()
        dictionary = _object({**entries, "Filter": "/FlateDecode"})
        return self._document.Reference(PDFStream(dictionary, packed), key)

    def reference(self, key: str) -> Any:
        """The reference to an object that has this key, or will have when the file is written."""
        return PDFObjectReference(key)

    def add_page(self, entries: dict[str, Any]) -> Any:
        """Put a page after the others; the reference to it."""
        here = self._document.thisPageRef()
        self._document.addPage(_object(entries))
        return here

    def write(self, catalog: dict[str, Any], info: dict[str, Any]) -> bytes:
        """The whole file, with these entries in its catalogue and its information dictionary."""
        # reportlab starts a catalogue with an outline of its own, which cannot be written without its canvas
        for name, value in {"Outlines": None, **catalog}.items():
            setattr(self._document.Catalog, name, _object(value))
        self._document.info = _object(info)
        # the file's identifier comes from what is in it, so that equal files have equal ones
        self._document.updateSignature(self._digest.digest())
        return bytes(self._document.format())
