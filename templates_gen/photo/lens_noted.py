"""The focal length that a camera noted in a photograph's file: of all that is noted there the only thing that is read.

Exif version 2.32 (CIPA DC-008-2019): a TIFF of its own in the first segment of a JPEG file; section 4.6 has its tags.
"""

from __future__ import annotations

from collections.abc import Mapping

EXIF, JPEG_APP1, TIFF_HEAD = b"Exif\0\0", 0xE1, 8
"""What the segment begins with, its kind, and the bytes of the TIFF before its first table."""

EXIF_TABLE, FOCAL_ON_FILM, WIDE, HIGH = 0x8769, 0xA405, 0xA002, 0xA003
"""Tags: where the table of Exif is, FocalLengthIn35mmFilm, PixelXDimension, PixelYDimension."""

ENTRY, SHORT, LONG = 12, 3, 4
"""Bytes of a table's entry, and the two types of whole numbers."""

MOST_ENTRIES = 200
"""Of a table that are looked at.  Our own bound."""

SHORTEST, LONGEST = 8, 800
"""mm of film between which a noted focal length is believed.  Our own bounds."""

FILM_DIAGONAL = 43.27
"""mm: the diagonal of the film of 24 by 36 mm, by which the focal length is noted (CIPA DCG-001-2018, from memory)."""


def noted_focal(content: bytes, size: tuple[int, int]) -> float | None:
    """The focal length in pixels that a JPEG file of this size notes; None where it notes none, or was cut since."""
    tiff = _tiff(content)
    order = {b"II": "little", b"MM": "big"}.get(tiff[:2], "")
    if not order or len(tiff) < TIFF_HEAD:
        return None
    first = _table(tiff, _number(tiff[4:TIFF_HEAD], order), order)
    own = _table(tiff, first.get(EXIF_TABLE, 0), order)
    focal, sides = own.get(FOCAL_ON_FILM, 0), {own.get(WIDE, 0), own.get(HIGH, 0)}
    if not SHORTEST <= focal <= LONGEST or sides not in ({0}, set(size)):
        return None
    return float(focal / FILM_DIAGONAL * (size[0] ** 2 + size[1] ** 2) ** 0.5)


def _tiff(content: bytes) -> bytes:
    at = 2
    while content[at : at + 1] == b"\xff" and at + 4 < len(content):
        long = int.from_bytes(content[at + 2 : at + 4], "big")
        if content[at + 1] == JPEG_APP1 and content[at + 4 :].startswith(EXIF):
            return content[at + 4 + len(EXIF) : at + 2 + long]
        at += 2 + max(long, 2)
    return b""


def _table(tiff: bytes, at: int, order: str) -> Mapping[int, int]:
    """The whole numbers of a table by their tags."""
    found = {}
    count = min(_number(tiff[at : at + 2], order), MOST_ENTRIES) if 0 < at < len(tiff) else 0
    for entry in range(at + 2, at + 2 + ENTRY * count, ENTRY):
        tag, kind = (_number(tiff[entry + k : entry + k + 2], order) for k in (0, 2))
        if kind in (SHORT, LONG):
            long = 2 if kind == SHORT else 4
            found[tag] = _number(tiff[entry + TIFF_HEAD : entry + TIFF_HEAD + long], order)
    return found


def _number(some: bytes, order: str) -> int:
    return int.from_bytes(some, "little" if order == "little" else "big")
