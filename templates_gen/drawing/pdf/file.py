"""A PDF file as it grows: drawings become forms and pages, and `save` gives the bytes."""

from __future__ import annotations

from string import ascii_uppercase
from typing import Any

from templates_gen.base.geometry import Rect
from templates_gen.base.output import MADE_BY
from templates_gen.base.source_date import source_date
from templates_gen.drawing.items import Pixels
from templates_gen.drawing.pdf.engine import Font
from templates_gen.drawing.pdf.glyph import EM
from templates_gen.drawing.pdf.objects import Objects, text, text_bytes
from templates_gen.drawing.pdf.operators import Drawing, FontUse

_CODES_IN_A_BLOCK = 100
"""So many characters a `beginbfchar` block may hold (Adobe Technical Note 5014; number from memory)."""

_PREFERENCES: dict[str, Any] = {
    "PrintScaling": "/None",
    "Enforce": ["/PrintScaling"],
    "Duplex": "/Simplex",
    "PickTrayByPDFSize": "true",
    "NumCopies": 1,
    "DisplayDocTitle": "true",
}
"""What a viewer should do when it prints (ISO 32000-1, table 150; Enforce: ISO 32000-2, table 147)."""

_BITS, _TAG = 8, 6
"""Bits of a grey or a colour in a JPEG file as it is put in (ISO 32000-1, 7.4.8), and letters before the name of a part
of a font (9.6.4)."""


class PdfFile:
    """A PDF 1.7 file whose pages all have one size, in whole points."""

    def __init__(self, size: tuple[int, int], title: str, author: str, language: str) -> None:
        source_date()  # a build that names no day is told so, whether or not anything here is dated
        self._objects = Objects()
        self._size, self._language = size, language
        self._pages: list[str] = []
        # no dates: the same job has to give the same bytes
        self._info = {
            "Title": text(title),
            "Author": text(author),
            "Creator": f"({MADE_BY})",
            "Producer": f"({MADE_BY})",
        }
        self._fonts: dict[Font, FontUse] = {}
        self._pictures: dict[Pixels, Any] = {}
        self._outline: list[tuple[str, Any]] = []
        self._labels: list[Any] = []
        self._files: list[tuple[str, Any]] = []

    def drawing(self) -> Drawing:
        """An empty drawing for a page or a form of this file."""
        return Drawing(self._font_use)

    def add_form(self, name: str, box: Rect, drawing: Drawing) -> None:
        """Keep the drawing as the form of this name, cut off at `box` (mm)."""
        entries = {
            "Type": "/XObject",
            "Subtype": "/Form",
            "BBox": f"[{box.x0:.4f} {box.y0:.4f} {box.x1:.4f} {box.y1:.4f}]",
            "Resources": self._resources(drawing),
        }
        self._objects.stream(drawing.code(), entries, _form_key(name))

    def same_form(self, name: str, other: str) -> None:
        """The form of this name is the other one, which is in the file already."""
        self._objects.same(_form_key(name), _form_key(other))

    def add_page(self, drawing: Drawing, label: str, title: str) -> None:
        """Add a page with its label and, unless the title is empty, its line in the outline."""
        parent, content = self._objects.reference("pages"), self._objects.stream(drawing.code(), {})
        sides = f"[0 0 {self._size[0]:d} {self._size[1]:d}]"
        here = self._objects.add(
            f"<</Type /Page/Parent {parent}/MediaBox {sides}/Resources {self._resources(drawing)}/Contents {content}>>"
        )
        self._pages.append(here)
        self._labels += [len(self._labels) // 2, {"P": text(label)} if label else {}]
        if title:
            self._outline.append((title, here))

    def attach(self, name: str, content: bytes, relation: str) -> None:
        """Let a file travel inside under this name (ISO 32000-1, 7.11.4).

        `relation` says what it is to the pages: "Source", what they are made from, or "Supplement" (ISO 32000-2,
        7.11.3, from memory).
        """
        entries = {"Type": "/EmbeddedFile", "Params": {"Size": len(content)}}
        stream = self._objects.stream(content, entries)
        told = text(name)
        inside = {"F": stream, "UF": stream}
        spec = {"Type": "/Filespec", "F": told, "UF": told, "EF": inside, "AFRelationship": f"/{relation}"}
        self._files.append((name, self._objects.add(spec)))

    def save(self) -> bytes:
        """The finished file; nothing can be added to it any more."""
        for use in self._fonts.values():
            self._embed(use)
        pages = self._objects.add({"Type": "/Pages", "Count": len(self._pages), "Kids": self._pages}, "pages")
        catalog: dict[str, Any] = {"Type": "/Catalog", "Pages": pages, "ViewerPreferences": _PREFERENCES}
        if self._language:
            catalog["Lang"] = text(self._language)
        if self._labels:
            catalog["PageLabels"] = {"Nums": self._labels}
        if self._outline:
            catalog["Outlines"] = self._outlines()
        if self._files:
            # a name tree is sorted (7.9.6), and readers compare bytes
            named = sorted(self._files, key=lambda item: text_bytes(item[0]))
            names = [part for name, spec in named for part in (text(name), spec)]
            catalog["Names"] = {"EmbeddedFiles": {"Names": names}}
        return self._objects.write(catalog, self._info)

    def _font_use(self, font: Font) -> FontUse:
        if font not in self._fonts:
            use = self._fonts[font] = FontUse(f"F{len(self._fonts) + 1}", font)
            use.alone[use.name] = use
        return self._fonts[font]

    def _resources(self, drawing: Drawing) -> str:
        at = self._objects.reference
        fonts = "".join([f"/{name} {at(name)}" for name in drawing.fonts])
        forms = "".join([f"/{name} {at(_form_key(form))}" for form, name in drawing.forms.items()])
        pictures = "".join([f"/{name} {self._picture(pixels)}" for pixels, name in drawing.pictures.items()])
        named = (("Font", fonts), ("XObject", forms + pictures))
        return f"<<{''.join([f'/{kind} <<{used}>>' for kind, used in named if used])}>>"

    def _picture(self, pixels: Pixels) -> Any:
        """The picture's data, put into the file the first time (ISO 32000-1, 8.9.5); its JPEG data as it is."""
        if pixels not in self._pictures:
            entries = {
                "Type": "/XObject",
                "Subtype": "/Image",
                "Width": pixels.width,
                "Height": pixels.height,
                "ColorSpace": "/DeviceGray" if pixels.grey else "/DeviceRGB",
                "BitsPerComponent": _BITS,
                "Filter": "/DCTDecode",
            }
            self._pictures[pixels] = self._objects.stream(pixels.jpeg, entries)
        return self._pictures[pixels]

    def _outlines(self) -> Any:
        at, last = self._objects.reference, len(self._outline) - 1
        for i, (title, page) in enumerate(self._outline):
            entry = {"Title": text(title), "Parent": at("outline"), "Dest": [page, "/Fit"]}
            if i > 0:
                entry["Prev"] = at(f"outline {i - 1}")
            if i < last:
                entry["Next"] = at(f"outline {i + 1}")
            self._objects.add(entry, f"outline {i}")
        ends = {"First": at("outline 0"), "Last": at(f"outline {last}")}
        return self._objects.add({"Type": "/Outlines", "Count": last + 1, **ends}, "outline")

    def _embed(self, use: FontUse) -> None:
        """Put the glyphs in use into the file, as a font with two-byte codes (ISO 32000-1, 9.7)."""
        objects, font, glyphs = self._objects, use.font, list(use.codes)
        name = f"/{_subset_tag(use.name)}+{font.name}"
        inner = {
            "Type": "/Font",
            "Subtype": "/CIDFontType2",
            "BaseFont": name,
            "CIDSystemInfo": {"Registry": "(Adobe)", "Ordering": "(Identity)", "Supplement": 0},
            "CIDToGIDMap": "/Identity",
            "FontDescriptor": self._descriptor(name, font, glyphs),
            "W": [1, [EM * font.advance(glyph) for glyph in glyphs]],
        }
        outer = {
            "Type": "/Font",
            "Subtype": "/Type0",
            "BaseFont": name,
            "Encoding": "/Identity-H",
            "DescendantFonts": [objects.add(inner)],
            "ToUnicode": objects.stream(_meanings(use.texts), {}),
        }
        objects.add(outer, use.name)

    def _descriptor(self, name: str, font: Font, glyphs: list[int]) -> Any:
        program = font.subset(glyphs)
        file = self._objects.stream(program, {"Length1": len(program)})
        entries = {"Type": "/FontDescriptor", "FontName": name, **font.descriptor(), "FontFile2": file}
        return self._objects.add(entries)


def _form_key(name: str) -> str:
    return f"form {name}"


def _subset_tag(name: str) -> str:
    """Six capitals that mark a part of a font (9.6.4); other ones for every font of the file."""
    number, letters = int(name[1:]), len(ascii_uppercase)
    return "".join(ascii_uppercase[number // letters**power % letters] for power in reversed(range(_TAG)))


def _meanings(texts: dict[str, str]) -> bytes:
    """The table from glyph codes to characters that searching and copying go by (9.10.3)."""
    pairs = [f"<{code}> <{told.encode('utf-16-be').hex()}>" for code, told in texts.items()]
    lines = [
        "/CIDInit /ProcSet findresource begin 12 dict begin begincmap",
        "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def",
        "/CMapName /Adobe-Identity-UCS def /CMapType 2 def",
        "1 begincodespacerange <0000> <FFFF> endcodespacerange",
    ]
    for start in range(0, len(pairs), _CODES_IN_A_BLOCK):
        block = pairs[start : start + _CODES_IN_A_BLOCK]
        lines += [f"{len(block)} beginbfchar", *block, "endbfchar"]
    lines.append("endcmap CMapName currentdict /CMap defineresource pop end end")
    return "\n".join(lines).encode("ascii")
