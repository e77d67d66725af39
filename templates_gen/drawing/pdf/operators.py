"""Marks as PDF drawing operators: the content of one page or one form.

Coordinates are millimetres under whatever matrix is in force, and so are widths, dashes and letters.  They
are written with four decimals (0.0001 mm).
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import lru_cache
from itertools import chain
from typing import TYPE_CHECKING

from templates_gen.base.adding import added
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Draft, Record, field
from templates_gen.drawing.items import Matrix, Pixels
from templates_gen.drawing.pdf.glyph import EM, Glyph

if TYPE_CHECKING:
    from templates_gen.drawing.pdf.engine import Font

ROUND = 0.5522847498
"""How far a Bézier quarter circle's control points lie along the tangents, for radius 1: 4/3·(√2 - 1)."""

_LINE, _USE, _TEXT = "%.4f %.4f m %.4f %.4f l S", "q 1 0 0 1 %.4f %.4f cm /%s Do Q", "BT %s %.4f %.4f Tm %s"
_START, _ON, _CURVE = "%.4f %.4f m ", "%.4f %.4f l ", "%.4f %.4f %.4f %.4f %.4f %.4f c "
_BOX, _CORNERS = "%.4f %.4f %.4f %.4f re f", 4
"""Operators (ISO 32000-1, annex A), by `%`, which takes half the time of an f-string for many numbers (measured)."""


class Run(Record, frozen=True):
    """Glyphs of one font, left to right; `shaped` when some are moved, or go on by more or less.

    `said` is what the glyphs say together, where glyph by glyph it would be read back as scraps.
    """

    font: Font
    glyphs: tuple[Glyph, ...]
    shaped: bool = False
    said: str = ""


class FontUse(Draft):
    """A font in one file: which of its glyphs are needed, numbered from 1, and what they stand for."""

    name: str
    font: Font
    codes: dict[int, str] = field(default_factory=dict)
    texts: dict[str, str] = field(default_factory=dict)
    of_chars: dict[str, str] = field(default_factory=dict)
    alone: dict[str, FontUse] = field(default_factory=dict)
    """What text in this font alone needs: one value for all of it, so that it is known again."""

    def plain(self, text: str) -> str:
        """The codes of characters that stand by themselves, one glyph each."""
        try:
            return "".join(map(self.of_chars.__getitem__, text))
        except KeyError:  # one comes for the first time
            self.of_chars.update({char: self.code(self.font.plain(char)) for char in text})
            return self.plain(text)

    def code(self, glyph: Glyph) -> str:
        """The glyph's code in this file, as four hexadecimal digits."""
        code = self.codes.get(glyph.number)
        if code is None:
            code = self.codes[glyph.number] = f"{len(self.codes) + 1:04X}"
        if glyph.text and code not in self.texts:
            self.texts[code] = glyph.text
        return code


Lettered = tuple[dict[str, FontUse], str]
"""Text as it is shown, with the fonts that it needs."""


@lru_cache  # widths, sizes and a page's scale come again and again
def _number(value: float, decimals: int = 9) -> str:
    # 0.0 and -0.0 are one key to the cache: without the sum, what came first in a program's life decided on the sign
    return f"{value + 0.0:.{decimals}f}".rstrip("0").rstrip(".")


class Drawing:
    """Operators in the order they are asked for; a form or the page starts with an unknown state.

    The state is written only when it changes.  Caps are butt and joins are mitred: that is how a page starts
    (ISO 32000-1, table 52), and nothing here changes it.
    """

    def __init__(self, font_use: Callable[[Font], FontUse]) -> None:
        self.fonts: dict[str, FontUse] = {}
        self.forms: dict[str, str] = {}
        self.pictures: dict[Pixels, str] = {}
        self._font_use = font_use
        self._needed: dict[str, FontUse] | None = None
        self._parts: list[str] = []
        self._x = self._y = 0.0
        self._forget()

    def code(self) -> bytes:
        """The operators as a content stream."""
        return "\n".join(self._parts).encode("ascii")

    def _forget(self) -> None:
        self._pen: tuple[float, tuple[float, ...], float, float] | None = None
        self._width: float | None = None
        self._dash: tuple[tuple[float, ...], float] | None = None
        self._grey: float | None = None
        self._line_grey: float | None = None

    def begin(self, matrix: Matrix, window: Rect | None = None) -> None:
        """Draw under this matrix until `end`; with a window, nothing outside it shows.

        What follows is written from the window's lower left corner, which keeps the numbers small.
        """
        a, b, c, d, e, f = matrix
        if window is not None:
            self._x, self._y = window.x0, window.y0
            e, f = a * self._x + c * self._y + e, b * self._x + d * self._y + f
        self._parts.append("q " + " ".join(map(_number, (a, b, c, d, e, f))) + " cm")
        if window is not None:
            self._parts.append(f"0 0 {window.width:.4f} {window.height:.4f} re W n")
        self._forget()

    def end(self) -> None:
        """Go back to how it was before `begin`."""
        self._parts.append("Q")
        self._x = self._y = 0.0
        self._forget()

    def line(self, x0: float, y0: float, x1: float, y1: float) -> None:
        """A straight line, in the pen set by `pen`."""
        x, y = self._x, self._y
        self._parts.append(_LINE % (x0 - x, y0 - y, x1 - x, y1 - y))

    def pen(self, width: float, dash: tuple[float, ...] = (), phase: float = 0.0, grey: float = 0.0) -> None:
        """Set width, dashes and grey (0 to 1) of the lines that follow; a dash of no length is a full line."""
        if (width, dash, phase, grey) == self._pen:
            return
        self._pen = width, dash, phase, grey
        if grey != self._line_grey:
            self._line_grey = grey
            self._parts.append(f"{_number(grey)} G")
        if width != self._width:
            self._width = width
            self._parts.append(f"{_number(width)} w")
        pattern = (dash, phase) if added(dash) > 0 else ((), 0.0)
        if pattern != self._dash:
            self._dash = pattern
            # a pattern of odd length comes round after two; a phase must not be negative (8.4.3.6)
            start = phase % (2 * added(dash)) if pattern[0] else 0.0
            self._parts.append(f"[{' '.join(map(_number, pattern[0]))}] {_number(start)} d")

    def _fill(self, grey: float) -> None:
        if grey != self._grey:
            self._grey = grey
            self._parts.append(f"{_number(grey)} g")

    def circle(self, x: float, y: float, radius: float, grey: float | None = None) -> None:
        """A circle of four Bézier curves: filled with a grey from 0 to 1, or else a line in the pen set by `pen`."""
        if grey is not None:
            self._fill(grey)
        x, y, r, k = x - self._x, y - self._y, radius, radius * ROUND
        points = (
            (x + r, y),
            (x + r, y + k), (x + k, y + r), (x, y + r),
            (x - k, y + r), (x - r, y + k), (x - r, y),
            (x - r, y - k), (x - k, y - r), (x, y - r),
            (x + k, y - r), (x + r, y - k), (x + r, y),
        )  # fmt: skip
        path = (_START + _CURVE * (len(points) // 3)) % tuple(chain.from_iterable(points))
        self._parts.append(path + ("s" if grey is None else "h f"))

    def polygon(self, points: Sequence[tuple[float, float]], grey: float | None = None) -> None:
        """A closed outline: filled with a grey from 0 to 1, or else a line in the pen set by `pen`."""
        if not points:
            return
        if grey is not None:
            self._fill(grey)
        x, y = self._x, self._y
        if grey is not None and len(points) == _CORNERS:
            (left, low), second, (right, high), last = points
            if second == (right, low) and last == (left, high):  # white under lettering: half of the numbers
                self._parts.append(_BOX % (left - x, low - y, right - left, high - low))
                return
        told: list[float] = []
        for px, py in points:
            told += (px - x, py - y)
        path = _START + _ON * (len(points) - 1)
        self._parts.append(path % tuple(told) + ("s" if grey is None else "h f"))

    def use(self, form: str, x: float, y: float) -> None:
        """Place a form with its origin at (x, y)."""
        name = self.forms.setdefault(form, f"X{len(self.forms) + 1}")
        self._parts.append(_USE % (x - self._x, y - self._y, name))

    def picture(self, pixels: Pixels, box: Rect) -> None:
        """Fill a box with a picture."""
        name = self.pictures.setdefault(pixels, f"P{len(self.pictures) + 1}")
        size, place = f"{box.width:.4f} 0 0 {box.height:.4f}", f"{box.x0 - self._x:.4f} {box.y0 - self._y:.4f}"
        self._parts.append(f"q {size} {place} cm /{name} Do Q")

    def set_plain(self, font: Font, text: str, size: float) -> Lettered:
        """Text of which the font has every character, and each stands by itself, as `set` has it."""
        use = self._font_use(font)
        return use.alone, f"/{use.name} {_number(size)} Tf <{use.plain(text)}> Tj ET"

    def set(self, runs: Sequence[Run], size: float) -> Lettered:
        """Runs one after the other at a font size in mm, as often as they are to be shown in this file."""
        fonts: dict[str, FontUse] = {}
        parts: list[str] = []
        for run in runs:
            use = self._font_use(run.font)
            fonts[use.name] = use
            shown = f"/{use.name} {_number(size)} Tf {_shown(run, use, size)}"
            if run.said:
                # ISO 32000-1, 14.9.4
                told = run.said.encode("utf-16-be").hex()
                shown = f"/Span <</ActualText <FEFF{told}>>> BDC {shown} EMC"
            parts.append(shown)
        return fonts, " ".join([*parts, "ET"])

    def letters(self, x: float, y: float, lettered: Lettered, angle: int) -> None:
        """What was `set`, from (x, y), turned by 0 or 90 degrees."""
        fonts, shown = lettered
        if not fonts:
            return
        if self._grey != 0.0:
            self._fill(0.0)
        if fonts is not self._needed:  # most often it is that of the text before
            self._needed = fonts
            self.fonts.update(fonts)
        turn = "0 1 -1 0" if angle == 90 else "1 0 0 1"
        self._parts.append(_TEXT % (turn, x - self._x, y - self._y, shown))


def _shown(run: Run, use: FontUse, size: float) -> str:
    """The operators that show a run, with the pen's own way corrected where shaping asks for another."""
    if not run.shaped:
        return f"<{''.join(map(use.code, run.glyphs))}> Tj"
    parts, rise, open_array = [], 0.0, ["["]
    for glyph in run.glyphs:
        if glyph.dy != rise:
            parts += [*open_array, "] TJ", f"{_number(glyph.dy * size)} Ts"]
            rise, open_array = glyph.dy, ["["]
        after = glyph.dx + run.font.advance(glyph.number) - glyph.advance
        # TJ counts backwards (ISO 32000-1, table 109)
        open_array.append(f"{_number(-EM * glyph.dx, 3)} <{use.code(glyph)}> {_number(EM * after, 3)}")
    parts += [*open_array, "] TJ"]
    return " ".join([*parts, "0 Ts"] if rise else parts)
