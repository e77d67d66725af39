"""A photograph as a phone wrote it: read within bounds, upright, and nothing kept of it but its pixels."""

from __future__ import annotations

from pathlib import Path

from templates_gen.base.errors import InputError
from templates_gen.base.files import MB, NotAFileError, read_at_most
from templates_gen.base.picture_files import JPEG, PNG, camera_notes, written_size
from templates_gen.base.record import Record
from templates_gen.photo.vision import Array, decoded

MOST_BYTES, MOST_PIXELS = 100_000_000, 60_000_000
"""Of a photograph: phones write up to 50 million pixels, and those take less than 1 GB here.  Our own bounds."""

LEAST_SIDE = 600
"""Pixels of the shorter side, under which no tag of a whole wall is seen.  Our own bound, no source."""

_GARBLED = ("cannot be read: its data break off or are garbled", "copy it from the phone again")

_MILLION = 1_000_000

_KIND, _BRAND = slice(4, 8), slice(8, 12)
"""Where a file of the ISO base media format says so, and which of them it is (ISO/IEC 14496-12, 4.3)."""

FOCAL_ON_FILM, WIDE, HIGH = 0xA405, 0xA002, 0xA003
"""Tags of what a camera noted: FocalLengthIn35mmFilm, PixelXDimension, PixelYDimension (Exif 2.32, 4.6)."""

SHORTEST, LONGEST, FILM_DIAGONAL = 8, 800, 43.27
"""mm: between what a noted focal length is believed (our own bounds), and the diagonal of the film of 24 by 36 mm, by
which it is noted (CIPA DCG-001-2018, from memory)."""

_HEIC = (b"heic", b"heix", b"heif", b"hevc", b"mif1", b"msf1", b"avif")


class Photo(Record, frozen=True):
    """A photograph: its file's name and bytes, its pixels in grey, turned upright, and the focal length that its camera
    noted (pixels)."""

    name: str
    content: bytes
    grey: Array
    focal: float | None = None

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
    return photo_of(path.name, _content(path))


def photo_of(name: str, content: bytes) -> Photo:
    """The photograph in these bytes of a file of this name.  Raises InputError."""
    _check_kind(content, name)
    size = written_size(content)
    if size is None:
        raise InputError(name, *_GARBLED)
    width, height = size
    if width * height > MOST_PIXELS:
        found = f"found {width} × {height} pixels, expected at most {MOST_PIXELS / _MILLION:.0f} million"
        raise InputError(name, found, "take it with a smaller picture size")
    grey = decoded(content, colour=False)
    if grey is None:
        raise InputError(name, *_GARBLED)
    if min(grey.shape) < LEAST_SIDE:
        found = f"found {width} × {height} pixels, too few to see anything exactly"
        raise InputError(name, found, "give the picture as the phone took it, not a preview")
    return Photo(name, content, grey, _noted_focal(content, (width, height)))


def _noted_focal(content: bytes, size: tuple[int, int]) -> float | None:
    """The focal length in pixels that a JPEG file of this size notes, the only note that is read; None where it notes
    none, or was cut since."""
    notes = camera_notes(content)
    focal, sides = notes.get(FOCAL_ON_FILM, 0), {notes.get(WIDE, 0), notes.get(HIGH, 0)}
    if not SHORTEST <= focal <= LONGEST or sides not in ({0}, set(size)):
        return None
    return float(focal / FILM_DIAGONAL * (size[0] ** 2 + size[1] ** 2) ** 0.5)


def _content(path: Path) -> bytes:
    try:
        content = read_at_most(path, MOST_BYTES + 1)
    except NotAFileError as error:
        raise InputError(path.name, f"is {error}, expected a photograph") from None
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or str(error)
        raise InputError(path.name, f"cannot be read: {why}", "give the file of a photograph") from None
    if len(content) > MOST_BYTES:
        raise InputError(path.name, f"is larger than {MOST_BYTES // MB} MB", "give it as JPEG")
    return content


def _check_kind(content: bytes, name: str) -> None:
    if content[_KIND] == b"ftyp" and content[_BRAND] in _HEIC:
        hint = (
            "On an iPhone choose Settings, Camera, Formats, Most Compatible, and take it again; or share the picture "
            "as JPEG"
        )
        raise InputError(name, "found a HEIC picture, expected JPEG or PNG", hint)
    if not content.startswith((JPEG, PNG)):
        raise InputError(name, "is no JPEG or PNG picture", "save it as one of these")
