"""Pictures of any common kind, made small enough for a proof; and pixels written as PNG.  Only here is Pillow known."""

from __future__ import annotations

import io
import math
import warnings
from pathlib import Path
from typing import Any

from PIL import Image, ImageCms, PngImagePlugin, UnidentifiedImageError

from templates_gen.base.errors import InputError
from templates_gen.base.files import odd_kind
from templates_gen.base.output import MADE_BY
from templates_gen.base.picture_files import TURNED
from templates_gen.drawing.items import Pixels
from templates_gen.drawing.whole_pictures import has_every_row, with_more_data

KINDS = ("JPEG", "PNG", "TIFF", "WEBP", "GIF", "BMP", "PPM")
"""Pillow's names of the kinds that are read; all others are left to a program for pictures."""

MOST_BYTES = 400_000_000
"""A picture that takes more than so many while it is read is refused: a proof as a whole keeps within 500 MB, and 100
million pixels in colours may be read.  Our own bound, no source."""

LARGEST_JPEG = 60_000_000
"""Bytes of a JPEG picture that is looked into for missing rows, for that takes it into the memory twice.  Our own
bound, no source."""

BYTES = {"1": 1.0, "L": 1.0, "P": 1.0, "I;16": 2.0}
"""Of a pixel in Pillow's modes; all others take 4."""

BAND = 16
"""Rows of a picture that become one row of a smaller one, and so many of those, are read at a time: then there is no
second copy of the whole.  Our own design, no source."""

QUALITY = 90
"""Of JPEG, in the scale of libjpeg: no loss that an eye sees on paper.  Common practice, no source."""

ORIENTATION = 0x0112
"""The tag that says how a picture is to be turned (Exif 2.32, 4.6.4)."""

TURNS = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}
"""What brings a picture of each orientation upright (Exif 2.32, 4.6.4)."""

# Our own bound comes right after a picture's size is known, and says what to do; Pillow's would warn in its own words.
Image.MAX_IMAGE_PIXELS = None

WIDEST = 4.0
"""For a pixel of any other kind: one of 32 bits is the largest that Pillow has."""

SIXTEEN_TO_EIGHT = 257
"""65 535 / 255: white stays white."""


def read_picture(path: Path, most: tuple[int, int], where: str) -> Pixels:
    """The picture of a file, upright, on white, no larger than `most` pixels across and down.

    Raises InputError, naming the file, for one that is no picture, is cut short or broken, or has too many pixels.
    """
    if kind := odd_kind(path):  # to open a pipe would wait for whoever writes to it
        raise InputError(where, f"{path} is {kind}, expected the file of a picture")
    try:
        with warnings.catch_warnings(action="ignore"), Image.open(path, formats=KINDS) as image:
            made = _pixels(image, most, path, where)
            if not _WHOLE.get(str(image.format), lambda _: True)(path):
                raise InputError(where, f"{path} has rows missing: it was cut short", "save or copy the picture again")
            return made
    except InputError:
        raise
    except UnidentifiedImageError:
        kinds = "JPEG, PNG, TIFF, WebP, GIF or BMP"
        raise InputError(where, f"{path} is not a picture that can be read, expected {kinds}") from None
    except OSError as error:
        problem = error.strerror or f"broken or cut short ({error})"
        raise InputError(where, f"{path} cannot be read: {problem}", "save or copy the picture again") from None
    except Exception as wrong:  # broken data can stop a decoder anywhere, with any exception
        problem = f"{path} cannot be read: broken ({str(wrong) or type(wrong).__name__})"
        raise InputError(where, problem, "save or copy the picture again") from None


def _pixels(image: Image.Image, most: tuple[int, int], path: Path, where: str) -> Pixels:
    whole, profile = image.size, image.info.get("icc_profile")
    # a JPEG picture can be read at a half, a quarter or an eighth of its size
    image.draft(None, (max(most), max(most)))
    if _held(image, whole) > MOST_BYTES:
        problem = f"{path} has {whole[0]} × {whole[1]} pixels, too many to be read at once"
        raise InputError(where, problem, "save it smaller: a proof needs a few hundred pixels across")
    orientation = image.getexif().get(ORIENTATION, 1)  # of a PNG picture it may be found at the very end
    turn = TURNS.get(orientation)
    across, down = most[::-1] if orientation in TURNED else most
    small = _in_srgb(_smaller(image, across, down), profile)
    small = small if turn is None else small.transpose(turn)
    out = io.BytesIO()
    small.save(out, "JPEG", quality=QUALITY, subsampling=0)
    return Pixels(out.getvalue(), small.width, small.height, small.mode == "L")


def _has_every_row(path: Path) -> bool:
    """False for a JPEG picture whose data end before its last row.  The decoder fills the rest with grey in silence.

    More data put behind them would then change what is seen.  An eighth of its size shows it: there every
    block is a pixel.
    """
    content = path.read_bytes() if path.stat().st_size <= LARGEST_JPEG else b""
    more = with_more_data(content)
    return more is None or (bool(more) and _eighth(content) == _eighth(more))


_WHOLE = {"JPEG": _has_every_row, "PNG": has_every_row}
"""The kinds whose decoders are silent about rows that are missing, and what finds them."""


def _eighth(content: bytes) -> bytes:
    with Image.open(io.BytesIO(content), formats=("JPEG",)) as image:
        image.draft(None, (1, 1))
        return image.tobytes()


def _held(image: Image.Image, whole: tuple[int, int]) -> float:
    """The bytes that a picture takes while it is read at its present size, when its `whole` size is another."""
    held = image.width * image.height * BYTES.get(image.mode, WIDEST)
    if image.format == "WEBP":
        return 2 * held  # its decoder has a copy of its own
    if image.format == "JPEG" and "progressive" in image.info:
        # libjpeg keeps 2 bytes for every value of the whole picture, of which colours may have fewer than brightness
        values = [across * down for _, across, down, _ in getattr(image, "layer", [(0, 1, 1, 0)])]
        held += whole[0] * whole[1] * 2 * sum(values) / max(values)
    return held


def _smaller(image: Image.Image, across: int, down: int) -> Image.Image:
    """The picture within this size (never larger than it is), in grey, RGB or CMYK, band by band."""
    scale = min(1.0, across / image.width, down / image.height)
    step = max(1, math.floor(1 / scale / 2))  # whole steps to about twice the size, then exactly to it
    image.load()
    small: Image.Image | None = None
    for top in range(0, image.height, BAND * step):
        band = _plain(image.crop((0, top, image.width, min(image.height, top + BAND * step)))).reduce(step)
        if small is None:
            small = Image.new(band.mode, (band.width, math.ceil(image.height / step)))
        small.paste(band, (0, top // step))
    assert small is not None
    size = max(1, round(image.width * scale)), max(1, round(image.height * scale))
    return small if small.size == size else small.resize(size, Image.Resampling.LANCZOS)


def _plain(band: Image.Image) -> Image.Image:
    """The same in grey, RGB or CMYK with 8 bits; what shows through is white."""
    if band.mode in ("L", "RGB", "CMYK"):
        return band if "transparency" not in band.info else _on_white(band)
    if band.mode.startswith("I"):  # 16 bits of grey, in a mode of 16 or of 32
        return band.convert("I").point(lambda value: value / SIXTEEN_TO_EIGHT).convert("L")
    if band.mode in ("1", "F"):
        return band.convert("L")
    return _on_white(band) if band.has_transparency_data else band.convert("RGB")


def _on_white(band: Image.Image) -> Image.Image:
    clear = band.convert("RGBA")
    white = Image.new("RGB", clear.size, "white")
    white.paste(clear, mask=clear.getchannel("A"))
    return white


def _in_srgb(image: Image.Image, profile: bytes | None) -> Image.Image:
    """The colours as a screen shows them: by the picture's own profile where it has a usable one."""
    if profile:
        try:
            own = ImageCms.ImageCmsProfile(io.BytesIO(profile))
            found = ImageCms.profileToProfile(image, own, ImageCms.createProfile("sRGB"), outputMode="RGB")
        except (ImageCms.PyCMSError, OSError):
            found = None  # for another kind of picture, or broken: the numbers are taken as they are
        if found is not None:
            return found
    return image if image.mode == "L" else image.convert("RGB")


def as_png(size: tuple[int, int], pixels: bytes, dots_per_inch: float | None = None) -> bytes:
    """Pixels (RGB, from the upper left row by row) as a PNG file that says how large it is to be shown, if it is."""
    about = PngImagePlugin.PngInfo()
    about.add_text("Software", MADE_BY)
    scale = {} if dots_per_inch is None else {"dpi": (dots_per_inch, dots_per_inch)}
    return _saved(size, pixels, "PNG", pnginfo=about, **scale)


def as_jpeg(size: tuple[int, int], pixels: bytes) -> bytes:
    """The same as a JPEG file."""
    return _saved(size, pixels, "JPEG", quality=QUALITY, comment=MADE_BY)


def _saved(size: tuple[int, int], pixels: bytes, kind: str, **how: Any) -> bytes:
    out = io.BytesIO()
    Image.frombytes("RGB", size, pixels).save(out, kind, **how)
    return out.getvalue()
