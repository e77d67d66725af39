"""A photograph as a phone wrote it: read within bounds, upright, and nothing kept of it but its pixels."""

from __future__ import annotations

from pathlib import Path

from templates_gen.base.errors import InputError
from templates_gen.base.files import NotAFileError, read_at_most
from templates_gen.base.record import Record
from templates_gen.photo.vision import Array, decoded

MOST_BYTES, MOST_PIXELS = 100_000_000, 60_000_000
"""Of a photograph: phones write up to 50 million pixels, and those take less than 1 GB here.  Our own bounds."""

LEAST_SIDE = 600
"""Pixels of the shorter side, under which no tag of a whole wall is seen.  Our own bound, no source."""

_HEIC = (b"heic", b"heix", b"heif", b"hevc", b"mif1", b"msf1", b"avif")


class Photo(Record, frozen=True):
    """A photograph: its file's name and bytes, and its pixels in grey, turned upright."""

    name: str
    content: bytes
    grey: Array

    @property
    def size(self) -> tuple[int, int]:
        """Pixels across and down."""
        return self.grey.shape[1], self.grey.shape[0]

    def colours(self) -> Array:
        """The same pixels in colour."""
        pixels = decoded(self.content, colour=True)
        assert pixels is not None  # as it was read before
        return pixels


def read_photo(path: Path) -> Photo:
    """The photograph of a JPEG or PNG file.  Raises InputError."""
    content = _content(path)
    _check_kind(content, path.name)
    width, height = _size(content, path.name)
    if width * height > MOST_PIXELS:
        found = f"found {width} × {height} pixels, expected at most {MOST_PIXELS / 1e6:.0f} million"
        raise InputError(path.name, found, "take it with a smaller picture size")
    grey = decoded(content, colour=False)
    if grey is None:
        raise InputError(path.name, "cannot be read: its data break off or are garbled", "copy it from the phone again")
    if min(grey.shape) < LEAST_SIDE:
        found = f"found {width} × {height} pixels, too few to see anything exactly"
        raise InputError(path.name, found, "give the picture as the phone took it, not a preview")
    return Photo(path.name, content, grey)


def _content(path: Path) -> bytes:
    try:
        content = read_at_most(path, MOST_BYTES + 1)
    except NotAFileError as error:
        raise InputError(path.name, f"is {error}, expected a photograph") from None
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or str(error)
        raise InputError(path.name, f"cannot be read: {why}", "give the file of a photograph") from None
    if len(content) > MOST_BYTES:
        raise InputError(path.name, f"is larger than {MOST_BYTES / 1e6:.0f} MB", "give it as JPEG")
    return content


def _check_kind(content: bytes, name: str) -> None:
    if content[4:8] == b"ftyp" and content[8:12] in _HEIC:
        hint = (
            "On an iPhone choose Settings, Camera, Formats, Most Compatible, and take it again; or share the picture "
            "as JPEG"
        )
        raise InputError(name, "found a HEIC picture, expected JPEG or PNG", hint)
    if not content.startswith((b"\xff\xd8", b"\x89PNG\r\n\x1a\n")):
        raise InputError(name, "is no JPEG or PNG picture", "save it as one of these")


def _size(content: bytes, name: str) -> tuple[int, int]:
    """Width and height as the file says them, before anything of it is unpacked."""
    if content.startswith(b"\x89PNG"):
        return int.from_bytes(content[16:20], "big"), int.from_bytes(content[20:24], "big")
    at = 2
    while at + 9 < len(content) and content[at] == 0xFF:  # ITU-T T.81, annex B: segments of a JPEG file
        kind, long = content[at + 1], int.from_bytes(content[at + 2 : at + 4], "big")
        if 0xC0 <= kind <= 0xCF and kind not in (0xC4, 0xC8, 0xCC):
            return int.from_bytes(content[at + 7 : at + 9], "big"), int.from_bytes(content[at + 5 : at + 7], "big")
        at += 1 if kind == 0xFF else 2 + long
    raise InputError(name, "cannot be read: its data break off or are garbled", "copy it from the phone again")
