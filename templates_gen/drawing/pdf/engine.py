"""TrueType fonts: measures, shaping, and a part of one for a file.  The only file that imports reportlab."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property
from pathlib import Path
from typing import Any

from reportlab.pdfbase.ttfonts import TTFontFace

from templates_gen.base.errors import InputError
from templates_gen.base.files import odd_kind
from templates_gen.base.geometry import Rect
from templates_gen.drawing.pdf.glyph import EM, Glyph, forbids_a_part

_NOT_A_CHARACTER = 0x110000
"""The first number past the last character (Unicode 15.0, 3.4, D9): above it any glyph gets its own code."""

_GLYPH_HEADER = 10
"""Bytes before an outline: number of contours, then xMin, yMin, xMax, yMax (OpenType 1.9, table `glyf`)."""

_Extent = tuple[float, float, float, float, float]
"""How far letters go, and the left, lower, right and upper side of their ink (em)."""


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
        self._words: dict[str, _Extent] = {}
        self._bounds: dict[int, Rect | None] = {}
        self._extents: dict[str, _Extent | None] = {}

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
        blank = self.advance(self.glyph(" "))
        pen, x0, y0, x1, y1 = -blank, 0.0, 0.0, 0.0, self.cap_height
        for word in text.split(" "):  # most come again and again
            known = self._words.get(word) or self._word(word)
            if known is None:
                return None
            advance, left, low, right, high = known
            pen += blank
            # comparisons instead of min and max: asked for every word, twice as quick
            x0 = pen + left if pen + left < x0 else x0
            y0 = low if low < y0 else y0
            x1 = pen + right if pen + right > x1 else x1
            y1 = high if high > y1 else y1
            pen += advance
        return pen, Rect(x0, y0, max(x1, pen), y1)

    def _word(self, word: str) -> _Extent | None:
        """How far a word goes, and its ink's left, lower, right and upper side (em); None as above."""
        pen, x0, y0, x1, y1 = 0.0, 0.0, 0.0, 0.0, 0.0
        for char in word:
            known = self._extents[char] if char in self._extents else self._letter(char)
            if known is None:
                return None
            advance, left, low, right, high = known
            x0 = pen + left if pen + left < x0 else x0
            y0 = low if low < y0 else y0
            x1 = pen + right if pen + right > x1 else x1
            y1 = high if high > y1 else y1
            pen += advance
        found = self._words[word] = pen, x0, y0, x1, y1
        return found

    def _letter(self, char: str) -> _Extent | None:
        """The same of a single character."""
        glyph = self.glyph(char)
        ink = self.bounds(glyph) or Rect(0.0, 0.0, 0.0, 0.0)
        found = (self.advance(glyph), ink.x0, ink.y0, ink.x1, ink.y1) if glyph else None
        self._extents[char] = found
        return found

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
