"""What font files say: of a glyph, which drawings show, and of what may be done with them."""

from typing import NamedTuple

EM = 1000
"""Parts of an em, the size of a font, that a PDF file tells lengths of glyphs in (ISO 32000-1, 9.2.4)."""

_COUNT, _TABLES, _TABLE = slice(4, 6), 12, 16
_NAME, _OFFSET = slice(0, 4), slice(8, 12)
"""A font file: where its number of tables is, where their directory begins, and how long an entry is, in which are the
table's name and its offset (OpenType 1.9, table directory)."""

_FS_TYPE = slice(8, 10)
_WAY, _RESTRICTED, _NO_PART = 0xF, 0x2, 0x300
"""Where the licence bits are in the table `OS/2`; how the font may be embedded, restricted; no subsetting or bitmaps
only (OpenType 1.9, `fsType`)."""


class Glyph(NamedTuple):
    """A glyph of a font: how far the pen goes on, where from the pen it is drawn (em), what it stands for."""

    number: int
    advance: float
    dx: float = 0.0
    dy: float = 0.0
    text: str = ""


def forbids_a_part(content: bytes) -> bool:
    """True where the licence bits of a font file, `fsType` of its table `OS/2`, forbid embedding a part of it."""
    for number in range(int.from_bytes(content[_COUNT], "big")):
        start = _TABLES + _TABLE * number
        entry = content[start : start + _TABLE]
        if entry[_NAME] == b"OS/2":
            table = content[int.from_bytes(entry[_OFFSET], "big") :]
            bits = int.from_bytes(table[_FS_TYPE], "big")
            return bits & _WAY == _RESTRICTED or bits & _NO_PART != 0
    return False
