"""What font files say: of a glyph, which drawings show, and of what may be done with them."""

from typing import NamedTuple


class Glyph(NamedTuple):
    """A glyph of a font: how far the pen goes on, where from the pen it is drawn (em), what it stands for."""

    number: int
    advance: float
    dx: float = 0.0
    dy: float = 0.0
    text: str = ""


def forbids_a_part(content: bytes) -> bool:
    """True where the licence bits of a font file forbid embedding a part of it.

    They are `fsType` of its table `OS/2`: restricted (2), no subsetting (0x100), bitmaps only (0x200); OpenType 1.9.
    """
    tables = int.from_bytes(content[4:6], "big")
    for at in range(12, 12 + 16 * tables, 16):  # the table directory: tag, checksum, offset, length
        if content[at : at + 4] == b"OS/2":
            start = int.from_bytes(content[at + 8 : at + 12], "big")
            bits = int.from_bytes(content[start + 8 : start + 10], "big")
            return bits & 0xF == 2 or bits & 0x300 != 0
    return False
