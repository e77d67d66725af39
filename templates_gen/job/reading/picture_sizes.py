"""How wide and high a picture is, from the first bytes of a PNG or JPEG file; nothing of it is drawn here."""

from __future__ import annotations

import struct

HEAD = 65_536
"""Bytes that are read: the size of a JPEG comes after its camera's notes.  Our own design, no source."""

TURNED = (5, 6, 7, 8)
"""Orientations of a JPEG that is shown on its side (Exif 2.32, tag 0x0112, from memory)."""


def picture_size(path: str) -> tuple[int, int] | None:
    """Width and height in pixels as the picture is shown; None where that is not known.

    That is so for what is not there, for other kinds of file, and for a JPEG that is shown on its side.
    """
    try:
        with open(path, "rb") as file:
            head = file.read(HEAD)
    except (OSError, ValueError):
        return None
    size = _png(head) or _jpeg(head)
    return size if size and all(size) else None


def _png(head: bytes) -> tuple[int, int] | None:
    """From its IHDR, which comes first (PNG specification, 11.2.2)."""
    if head[:8] != b"\x89PNG\r\n\x1a\n" or len(head) < 24:
        return None
    width, height = struct.unpack(">II", head[16:24])
    return width, height


def _jpeg(head: bytes) -> tuple[int, int] | None:
    """From its frame header, SOF (ITU-T T.81, B.2.2).  None where the camera was turned: see `TURNED`."""
    if head[:2] != b"\xff\xd8":
        return None
    at = 2
    while at + 9 < len(head) and head[at] == 0xFF:
        kind, length = head[at + 1], int.from_bytes(head[at + 2 : at + 4], "big")
        if 0xC0 <= kind <= 0xCF and kind not in (0xC4, 0xC8, 0xCC):
            height, width = struct.unpack(">HH", head[at + 5 : at + 9])
            return width, height
        if kind == 0xE1 and _orientation(head[at + 4 : at + 2 + length]) in TURNED:
            return None
        at += 2 + length
    return None


def _orientation(notes: bytes) -> int:
    """The orientation that the camera noted; 1, upright, where it noted none."""
    if notes[:6] != b"Exif\0\0" or len(notes) < 16:
        return 1
    order = ">" if notes[6:8] == b"MM" else "<"
    start = 6 + struct.unpack(order + "I", notes[10:14])[0]
    count = int.from_bytes(notes[start : start + 2], "big" if order == ">" else "little")
    for entry in range(min(count, 100)):
        field = notes[start + 2 + 12 * entry : start + 14 + 12 * entry]
        if len(field) == 12 and struct.unpack(order + "H", field[:2])[0] == 0x0112:
            return int(struct.unpack(order + "H", field[8:10])[0])
    return 1
