"""What the first bytes of a PNG or JPEG file say of the picture in it; nothing of the picture is unpacked here."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Mapping
from pathlib import Path

from templates_gen.base.files import read_at_most
from templates_gen.base.record import Record

HEAD = 65_536
"""Bytes of a file that are read for its size: that of a JPEG comes after its camera's notes.  Our own design."""

PNG, JPEG = b"\x89PNG\r\n\x1a\n", b"\xff\xd8"
"""How a file of either kind begins (PNG specification, 5.2; ITU-T T.81, B.1.1.3: the marker SOI)."""

TURNED = (5, 6, 7, 8)
"""Orientations of a JPEG that is shown on its side (Exif 2.32, tag 0x0112, from memory)."""

_WIDTH, _HEIGHT = slice(16, 20), slice(20, 24)
"""Where a PNG file says them: IHDR comes first (PNG specification, 11.2.2)."""

_MARK, _LENGTH, _BODY = 0xFF, slice(2, 4), 4
"""A segment of a JPEG file: this byte, its kind, how long it is from there on, and what it holds (T.81, B.1.1.4)."""

_FRAMES, _NO_FRAMES = range(0xC0, 0xD0), (0xC4, 0xC8, 0xCC)
"""Kinds of segment that head a picture, SOF, and the three among their numbers that do not (T.81, table B.1)."""

_LINES, _ACROSS = slice(5, 7), slice(7, 9)
"""Where the head of a JPEG picture says its height and its width (T.81, B.2.2)."""

_NOTES, _EXIF, _LOW, _HIGH, _FIRST = 0xE1, b"Exif\0\0", b"II", b"MM", slice(4, 8)
"""The camera's notes, APP1: they begin so, and then as a TIFF file does, with whether the low or the high byte of a
number comes first and where the first list of notes begins (Exif 2.32, 4.5.2, 4.7.2; TIFF 6.0, 2; from memory)."""

_COUNT, _ENTRY, _TAG, _TYPE, _VALUE, _MOST = 2, 12, slice(0, 2), slice(2, 4), 8, 200
"""A list of notes: bytes of its length and of a note, where in it are its tag, its type and, from there on, its value
(TIFF 6.0, 2), and how many notes are looked at: our own bound."""

_BYTES = {3: 2, 4: 4}
"""Of the two types of whole numbers, SHORT and LONG (TIFF 6.0, 2)."""

_ORIENTATION, _MORE = 0x0112, 0x8769
"""Tags: how the picture is turned, and where the list of Exif's own notes begins (Exif 2.32, 4.6)."""


class _Segment(Record, frozen=True):
    """A segment of a JPEG file, from its mark on."""

    kind: int
    content: bytes


def shown_size(path: Path) -> tuple[int, int] | None:
    """Width and height in pixels of the picture in a file as it is shown; None where that is not known.

    That is so for what is not there or no file, for other kinds of file, and for a JPEG that is shown on its side.
    """
    try:
        head = read_at_most(path, HEAD)
    except (OSError, ValueError):
        return None
    size = written_size(head)
    return size if size and all(size) and camera_notes(head).get(_ORIENTATION) not in TURNED else None


def written_size(content: bytes) -> tuple[int, int] | None:
    """Width and height in pixels as they are written, not as a turned picture is shown; None where they are not."""
    if content.startswith(PNG):
        return (_number(content[_WIDTH]), _number(content[_HEIGHT])) if len(content) >= _HEIGHT.stop else None
    frame = next((segment.content for segment in _segments(content) if _heads(segment.kind)), None)
    return (_number(frame[_ACROSS]), _number(frame[_LINES])) if frame else None


def camera_notes(content: bytes) -> Mapping[int, int]:
    """What the camera noted before the picture in a JPEG file: whole numbers by their tags (Exif 2.32, 4.6)."""
    before = itertools.takewhile(lambda segment: not _heads(segment.kind), _segments(content))
    bodies = (segment.content[_BODY:] for segment in before if segment.kind == _NOTES)
    tiff = next((body.removeprefix(_EXIF) for body in bodies if body.startswith(_EXIF)), b"")
    if not tiff.startswith((_LOW, _HIGH)):
        return {}
    high = tiff.startswith(_HIGH)
    first = _listed(tiff, _number(tiff[_FIRST], high), high)
    return first | _listed(tiff, first.get(_MORE, 0), high)


def _segments(content: bytes) -> Iterator[_Segment]:
    """Those of a JPEG file as far as they are whole up to their head; of another file none."""
    at = len(JPEG) if content.startswith(JPEG) else len(content)
    while at + _ACROSS.stop < len(content) and content[at] == _MARK:
        kind = content[at + 1]
        if kind == _MARK:  # a byte that only fills (T.81, B.1.1.2)
            at += 1
            continue
        end = at + _LENGTH.start + _number(content[at + _LENGTH.start : at + _LENGTH.stop])
        yield _Segment(kind, content[at : max(end, at + _ACROSS.stop)])
        at = end


def _heads(kind: int) -> bool:
    return kind in _FRAMES and kind not in _NO_FRAMES


def _listed(tiff: bytes, start: int, high: bool) -> dict[int, int]:
    """The whole numbers of the list that begins there, by their tags; there is none at 0."""
    found = {}
    for number in range(min(_number(tiff[start : start + _COUNT], high), _MOST) if start else 0):
        note = tiff[start + _COUNT + _ENTRY * number :][:_ENTRY]
        if len(note) == _ENTRY and (long := _BYTES.get(_number(note[_TYPE], high))):
            found[_number(note[_TAG], high)] = _number(note[_VALUE : _VALUE + long], high)
    return found


def _number(content: bytes, high_first: bool = True) -> int:
    return int.from_bytes(content, "big" if high_first else "little")
