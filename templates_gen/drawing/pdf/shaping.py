"""Text as runs of glyphs in the order they stand on paper, in any script that the fonts at hand have.

Letters with their marks become clusters, each in the first font that has all of it.  Neighbouring clusters of one
direction, font and script become a piece.  Pieces are put in visual order (UAX #9) and made into glyphs.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Callable, Iterator
from itertools import pairwise

from templates_gen.base.record import Draft
from templates_gen.drawing.pdf.direction import levels
from templates_gen.drawing.pdf.engine import Font
from templates_gen.drawing.pdf.glyph import Glyph
from templates_gen.drawing.pdf.operators import Run

_IGNORED = (
    *((0x00AD,) * 2, (0x034F,) * 2, (0x061C,) * 2, (0x115F, 0x1160), (0x17B4, 0x17B5), (0x180B, 0x180F)),
    *((0x200B, 0x200F), (0x202A, 0x202E), (0x2060, 0x206F), (0x3164,) * 2, (0xFE00, 0xFE0F), (0xFEFF,) * 2),
    *((0xFFA0,) * 2, (0xFFF0, 0xFFF8), (0x1BCA0, 0x1BCA3), (0x1D173, 0x1D17A), (0xE0000, 0xE0FFF)),
)
"""Characters that show nothing where they have no effect (Unicode 15.0, Default_Ignorable_Code_Point)."""

_ISOLATES = dict.fromkeys(range(0x2066, 0x206A))
"""Marks of an isolated direction (UAX #9, 2.4); left out, as the bidi library is older than they are."""

_ONE_BY_ONE = frozenset(
    ("", "LATIN", "GREEK", "CYRILLIC", "HEBREW", "ARMENIAN", "GEORGIAN", "CJK", "HIRAGANA", "KATAKANA")
)
"""Scripts whose letters just follow one another; any other is given to HarfBuzz.  From memory."""

PickFont = Callable[[str], Font | None]
"""The first font that has every character of a cluster; None when there is none."""


class _Piece(Draft):
    """Part of a text in one font, script and direction; `level` is odd from right to left."""

    text: str
    level: int
    font: Font
    script: str
    joined: bool = False

    def takes(self, other: _Piece) -> bool:
        same = self.font is other.font and self.level == other.level
        return same and (not self.script or not other.script or self.script == other.script)

    def take(self, other: _Piece) -> None:
        self.text += other.text
        self.script = self.script or other.script
        self.joined = self.joined or other.joined


def ignorable(char: str) -> bool:
    """True for a character that shows nothing by itself: joiners, selectors, marks of direction."""
    return any(first <= ord(char) <= last for first, last in _IGNORED)


def glyph_runs(text: str, pick: PickFont) -> tuple[tuple[Run, ...], list[str]]:
    """The runs of a line of text from left to right, and the characters that no font has."""
    text = text.translate(_ISOLATES)
    clusters = list(_clusters(text))
    pieces = _Pieces(pick, _fonts_of_scripts(clusters, pick))
    for cluster, level in clusters:
        pieces.add(cluster, level)
    missing = pieces.missing
    if missing:
        return (), missing
    runs = [_run(piece, missing) for piece in _visual(pieces.found)]
    return tuple(run for run in runs if run.glyphs), missing


def _clusters(text: str) -> Iterator[tuple[str, int]]:
    """Every letter with the marks on it, and its level."""
    start, level = 0, levels(text)
    for end in range(1, len(text) + 1):
        if end == len(text) or level[end] != level[start] or not _follows(text[end]):
            yield text[start:end], level[start]
            start = end


def _fonts_of_scripts(clusters: list[tuple[str, int]], pick: PickFont) -> dict[str, Font | None]:
    """For every script in the text the font that has all of its letters, so that no word mixes fonts."""
    letters: dict[str, str] = {}
    for cluster, _ in clusters:
        name = _script(cluster[0])
        letters[name] = letters.get(name, "") + _shown(cluster)
    return {name: pick(used) for name, used in letters.items() if name}


def _shown(cluster: str) -> str:
    return "".join(char for char in cluster if not ignorable(char))


def _follows(char: str) -> bool:
    return unicodedata.category(char).startswith("M") or ignorable(char)


class _Pieces:
    """The pieces of a text, from clusters added in reading order."""

    def __init__(self, pick: PickFont, fonts: dict[str, Font | None]) -> None:
        self._pick, self._fonts = pick, fonts
        self.found: list[_Piece] = []
        self.missing: list[str] = []

    def add(self, text: str, level: int) -> None:
        shown = _shown(text)
        script = _script(shown[:1])
        font = self._fonts.get(script) or self._font(shown)
        if font is not None:
            self._join(_Piece(text, level, font, script, joined=len(text) > 1))
        elif len(shown) > 1:
            for char in text:
                self.add(char, level)
        else:
            self.missing.append(shown)

    def _font(self, shown: str) -> Font | None:
        """A blank stays in the font before it, so that a line in one script is one run."""
        before = self.found[-1].font if self.found and shown in ("", " ") else None
        return before if before and before.covers(shown) else self._pick(shown)

    def _join(self, piece: _Piece) -> None:
        if self.found and self.found[-1].takes(piece):
            self.found[-1].take(piece)
        else:
            self.found.append(piece)


def _script(char: str) -> str:
    """The script of a letter, by its name; "" of what is no letter."""
    if not char or unicodedata.category(char)[0] not in "LM":
        return ""
    return unicodedata.name(char, "").split(" ")[0]


def _visual(pieces: list[_Piece]) -> list[_Piece]:
    """The pieces from left to right: rule L2 of UAX #9, on whole pieces."""
    order = list(pieces)
    for level in range(max((piece.level for piece in pieces), default=0), 0, -1):
        start = 0
        while start < len(order):
            end = start
            while end < len(order) and order[end].level >= level:
                end += 1
            order[start:end] = reversed(order[start:end])
            start = max(end, start + 1)
    return order


def _run(piece: _Piece, missing: list[str]) -> Run:
    if piece.level % 2 == 0 and piece.script in _ONE_BY_ONE and not piece.joined:
        return plain_run(piece.font, _shown(piece.text))
    return _shaped_run(piece, missing)


def plain_run(font: Font, text: str) -> Run:
    """Characters that the font has, one glyph each."""
    return Run(font, tuple(map(font.plain, text)))


def _shaped_run(piece: _Piece, missing: list[str]) -> Run:
    infos, positions = piece.font.shaped(piece.text, backward=piece.level % 2 == 1)
    em = piece.font.units_per_em
    ends = dict(pairwise([*sorted({info.cluster for info in infos}), len(piece.text)]))
    glyphs = []
    for info, place in zip(infos, positions, strict=True):
        # the first glyph of a cluster stands for all of its characters
        said = piece.text[info.cluster : ends.pop(info.cluster, info.cluster)]
        if info.codepoint == 0:
            missing.append(piece.text[info.cluster])
        dx, dy = place.x_offset / em, place.y_offset / em
        glyphs.append(Glyph(info.codepoint, place.x_advance / em, dx, dy, said))
    # readers turn right-to-left glyphs round by themselves, and would turn a text given in reading order too
    return Run(piece.font, tuple(glyphs), shaped=True, said="" if piece.level % 2 else piece.text)
