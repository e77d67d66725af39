"""Choosing fonts for text, and measuring what it will take up on paper.

Letters come from PT Sans.  What it lacks comes from the user's own font files, and then from fonts for other scripts.
Each is opened when a character first needs it.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from functools import cached_property
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.base.words import some
from templates_gen.drawing.items import Text

if TYPE_CHECKING:
    from templates_gen.drawing.pdf.engine import Font
    from templates_gen.drawing.pdf.operators import Run
    from templates_gen.job.model import Job

_BASE = (("fontpkg_pt_sans", "PT_Sans-Web-Regular.ttf"), ("fontpkg_pt_sans", "PT_Sans-Web-Bold.ttf"))
"""Package and file of the letters: plain, bold."""

_OTHERS = (
    ("fontpkg_noto_sans", "NotoSans[wdth,wght].ttf"),
    ("fontpkg_heebo", "Heebo[wght].ttf"),
    ("fontpkg_noto_sans_arabic", "NotoSansArabic[wdth,wght].ttf"),
    ("fontpkg_noto_sans_devanagari", "NotoSansDevanagari[wdth,wght].ttf"),
    ("fontpkg_noto_sans_thai", "NotoSansThai[wdth,wght].ttf"),
)
"""Package and file of the fonts for what the letters lack, in this order."""

_PLAIN = re.compile("[ -~\u00a1-\u00ac\u00ae-\u024f\u2010-\u2027\u2030-\u205e]*")
"""Latin letters, figures and common signs (Unicode blocks Basic Latin to Latin Extended-B, General Punctuation without
its spaces and controls): written as they come, with no shaping and in one direction."""

_SHARES = {"left": 0.0, "middle": 0.5, "right": 1.0}
"""What share of a text lies before its anchor."""


class Lettering:
    """The fonts of one file, and the measures of text set in them.

    `extra` are font files of the user's, asked before all but PT Sans.  One that cannot be used is an
    `InputError`, and so is a character that no font has.
    """

    def __init__(self, extra: tuple[Path, ...] = ()) -> None:
        self._extra = extra
        self._opened: dict[Path, Font] = {}
        self._runs: dict[tuple[str, bool], tuple[Run, ...]] = {}
        self._measures: dict[tuple[str, bool], tuple[float, Rect, float]] = {}
        self.wrapped: dict[tuple[str, float, bool, float], tuple[str, ...]] = {}
        """Texts with their height, weight and width, and the lines that they were broken into (blocks.py)."""
        for path in extra:
            self._open(path)

    def runs(self, text: str, bold: bool = False) -> tuple[Run, ...]:
        """The glyphs of a line of text from left to right.

        Control characters (tabs and line ends too) are spaces; what shows nothing by itself takes no place.
        """
        known = self._runs.get((text, bold))
        if known is None:
            known = self._runs[text, bold] = self._found(text, bold)
        return known

    def plain(self, text: str, bold: bool = False) -> Font | None:
        """The font of a text whose characters are written as they come, one glyph each; None where that is not so."""
        base = self._base(bold)
        return base if text and _PLAIN.fullmatch(text) and base.covers(text) else None

    def size(self, height: float, bold: bool = False) -> float:
        """The font size in mm that makes PT Sans capitals this high; all fonts of a text are set in it."""
        return height / self._base(bold).cap_height

    def width(self, text: str, height: float, bold: bool = False) -> float:
        """How far text with capitals of this height (mm) goes, in mm."""
        known = self._measures.get((text, bold)) or self._measured(text, bold)
        return known[0] * (height / known[2])

    def start(self, item: Text) -> tuple[float, float]:
        """Where the pen starts for a text: its left end, or its lower end when it reads upward (mm)."""
        if item.anchor == "left":
            return item.x, item.y
        back = _SHARES[item.anchor] * self.width(item.text, item.height, item.bold)
        return (item.x, item.y - back) if item.angle == 90 else (item.x - back, item.y)

    def box(self, item: Text) -> Rect:
        """The rectangle that holds the text's ink, and its whole way and capital height (mm)."""
        far, ink, cap_height = self._measures.get((item.text, item.bold)) or self._measured(item.text, item.bold)
        x, y, size = item.x, item.y, item.height / cap_height
        if item.anchor != "left":  # as in `start`, without asking for the measures again
            back = _SHARES[item.anchor] * (far * size)
            x, y = (x, y - back) if item.angle == 90 else (x - back, y)
        if item.angle == 90:
            return Rect(x - ink.y1 * size, y + ink.x0 * size, x - ink.y0 * size, y + ink.x1 * size)
        return Rect(x + ink.x0 * size, y + ink.y0 * size, x + ink.x1 * size, y + ink.y1 * size)

    def _measured(self, text: str, bold: bool) -> tuple[float, Rect, float]:
        """How far the text goes, the rectangle about its ink, at font size 1, and how high a capital is then."""
        base = self._base(bold)
        plain = base.measured(text) if _PLAIN.fullmatch(text) else None
        far, ink = plain or _ink(self.runs(text, bold), base.cap_height)
        known = self._measures[text, bold] = far, ink, base.cap_height
        return known

    def _found(self, text: str, bold: bool) -> tuple[Run, ...]:
        from templates_gen.drawing.pdf.shaping import glyph_runs, plain_run

        if font := self.plain(text, bold):
            return (plain_run(font, text),)
        line = "".join(" " if _is_space(char) else char for char in unicodedata.normalize("NFC", text))
        found, missing = glyph_runs(line, lambda cluster: self._pick(cluster, bold))
        if missing:
            raise _no_glyph(text, missing)
        return found

    def _pick(self, cluster: str, bold: bool) -> Font | None:
        for font in self._chain(bold):
            if font.covers(cluster):
                return font
        return None

    def _chain(self, bold: bool) -> Iterator[Font]:
        yield self._base(bold)
        for path in self._extra:
            yield self._open(path)
        for package, name in _OTHERS:
            yield self._open(_font_path(package, name))

    def _base(self, bold: bool) -> Font:
        return self._bold if bold else self._plain

    @cached_property
    def _plain(self) -> Font:
        return self._open(_font_path(*_BASE[0]))

    @cached_property
    def _bold(self) -> Font:
        return self._open(_font_path(*_BASE[1]))

    def _open(self, path: Path) -> Font:
        if path not in self._opened:
            from templates_gen.drawing.pdf.engine import Font

            self._opened[path] = Font(path)
        return self._opened[path]


def job_lettering(job: Job, fonts: tuple[Path, ...] = ()) -> Lettering:
    """The lettering of a job's papers, with these fonts and its own.  Raises InputError for a font of no use."""
    return Lettering((*fonts, *((Path(job.paper.font),) if job.paper.font else ())))


def _font_path(package: str, name: str) -> Path:
    spec = find_spec(package)
    if spec is None or spec.origin is None:
        project = package.replace("_", "-")
        raise InputError("", f"the fonts of the package {project} are missing", f"Install it: pip install {project}")
    return Path(spec.origin).parent / "files" / name


def _is_space(char: str) -> bool:
    return unicodedata.category(char) in ("Cc", "Zs", "Zl", "Zp")


def _ink(runs: tuple[Run, ...], cap_height: float) -> tuple[float, Rect]:
    """How far a text goes at font size 1, and the rectangle about its ink, with the marks of any script."""
    pen, x0, y0, x1, y1 = 0.0, 0.0, 0.0, 0.0, cap_height
    for run in runs:
        for glyph in run.glyphs:
            ink = run.font.bounds(glyph.number)
            if ink is not None:
                x, y = pen + glyph.dx, glyph.dy
                x0, y0 = min(x0, ink.x0 + x), min(y0, ink.y0 + y)
                x1, y1 = max(x1, ink.x1 + x), max(y1, ink.y1 + y)
            pen += glyph.advance
    return pen, Rect(x0, y0, max(x1, pen), y1)


def _no_glyph(text: str, missing: list[str]) -> InputError:
    named = some([f"{_printable(char)} (U+{ord(char):04X})" for char in dict.fromkeys("".join(missing))])
    return InputError(
        f"text “{_printable(text)}”",
        f"no font here has {named}",
        "Use other letters, or give a TrueType font that has them: font in [paper], or --font FILE.ttf",
    )


def _printable(text: str) -> str:
    return "".join(char if char.isprintable() else "?" for char in text)
