"""Pictures that were cut short: whatever ends them, missing rows are said to be missing, and never of a whole one."""

import io
import struct
import zlib
from pathlib import Path

import pytest
from PIL import Image

from templates_gen.base.errors import InputError
from templates_gen.drawing.images import read_picture
from templates_gen.drawing.whole_pictures import has_every_row, with_more_data

END = b"\xff\xd9"
"""How a JPEG picture ends (ITU-T T.81, table B.1)."""

WAYS = [{}, {"subsampling": 0}, {"quality": 20}, {"restart_marker_blocks": 4}, {"restart_marker_rows": 1}]


def noise(mode: str = "RGB", size: tuple[int, int] = (640, 481)) -> Image.Image:
    return Image.effect_noise(size, 60).convert(mode)


def as_jpeg(image: Image.Image, **how: object) -> bytes:
    out = io.BytesIO()
    image.save(out, "JPEG", **how)
    return out.getvalue()


def refused(path: Path, content: bytes, most: tuple[int, int] = (300, 300)) -> str:
    path.write_bytes(content)
    with pytest.raises(InputError) as error:
        read_picture(path, most, "frame A, image")
    return str(error.value)


@pytest.mark.parametrize("share", [0.1, 0.5, 0.9, 0.99])
@pytest.mark.parametrize("way", WAYS, ids=str)
def test_a_picture_closed_too_early_has_rows_missing(share, way, tmp_path):
    whole = as_jpeg(noise(), **way)
    cut = whole[: int(len(whole) * share)].rstrip(b"\xff") + END
    assert "has rows missing: it was cut short" in refused(tmp_path / "a.jpg", cut)
    assert "cut short" in refused(tmp_path / "a.jpg", cut, (2000, 2000))
    assert "cut short" in refused(tmp_path / "a.jpg", cut[:-2])
    assert "cut short" in refused(tmp_path / "a.jpg", cut[:-2] + bytes(len(whole)))


def test_a_picture_that_comes_in_passes_has_rows_missing_in_the_first(tmp_path):
    whole = as_jpeg(noise(), progressive=True)
    first = whole.index(b"\xff\xda")
    assert "has rows missing" in refused(tmp_path / "a.jpg", whole[: first + 2000].rstrip(b"\xff") + END)


@pytest.mark.parametrize("mode", ["RGB", "L", "CMYK"])
@pytest.mark.parametrize("size", [(640, 481), (1, 1), (17, 33)])
@pytest.mark.parametrize("way", [*WAYS, {"progressive": True}, {"optimize": True}], ids=str)
def test_a_whole_picture_is_whole_whatever_is_behind_it(mode, size, way, tmp_path):
    grey = Image.new(mode, size, 128 if mode == "L" else (128,) * len(mode))  # as missing rows look
    for image in (noise(mode, size), grey):
        content = as_jpeg(image, **way)
        for behind in (b"", bytes(100), content):  # a phone puts a second picture behind the first
            (tmp_path / "a.jpg").write_bytes(content + behind)
            assert read_picture(tmp_path / "a.jpg", (300, 300), "").width == min(size[0], read_width(size))


def read_width(size: tuple[int, int]) -> int:
    """The width of a picture of this size within 300 × 300."""
    return max(1, round(size[0] * min(1.0, 300 / size[0], 300 / size[1])))


def test_a_small_picture_inside_the_first_segments_does_not_end_it(tmp_path):
    whole, small = as_jpeg(noise()), as_jpeg(noise(size=(80, 60)))
    inside = b"\xff\xe2" + struct.pack(">H", len(small) + 2) + small
    (tmp_path / "a.jpg").write_bytes(whole[:2] + inside + whole[2:])
    assert read_picture(tmp_path / "a.jpg", (300, 300), "").width == 300
    assert "rows missing" in refused(tmp_path / "a.jpg", whole[:2] + inside + whole[2:30000] + END)


@pytest.mark.parametrize("content", [b"", b"\xff\xd8", END, b"\xff\xd8\xff\xd9"])
def test_what_has_no_data_and_no_end_gets_none(content):
    assert with_more_data(content) is None


@pytest.mark.parametrize("data", [b"", b"\0\x02", b"\0\x02abc\xff\0\xff\xd0", b"\0\x02" + bytes(100)])
def test_data_that_do_not_end_are_cut_short(data):
    assert with_more_data(b"\xff\xd8\xff\xda" + data) == b""


def chunk(kind: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))


def test_a_png_with_rows_missing_in_sound_chunks_is_said_to_be_cut_short(tmp_path):
    head = chunk(b"IHDR", struct.pack(">IIBBBBB", 100, 80, 8, 0, 0, 0, 0))
    for rows in (0, 1, 40, 79):
        data = chunk(b"IDAT", zlib.compress((b"\0" + b"\x80" * 100) * rows))
        said = refused(tmp_path / "a.png", b"\x89PNG\r\n\x1a\n" + head + data + chunk(b"IEND", b""))
        assert "cut short" in said


@pytest.mark.parametrize("mode", ["1", "L", "LA", "P", "RGB", "RGBA", "I;16"])
@pytest.mark.parametrize("size", [(1, 1), (2, 9), (9, 2), (100, 81), (641, 480)])
def test_a_whole_png_of_any_kind_is_whole(mode, size, tmp_path):
    Image.new(mode, size).save(tmp_path / "a.png")
    assert read_picture(tmp_path / "a.png", (50, 50), "").width >= 1


@pytest.mark.parametrize("size", [(1, 1), (1, 9), (9, 1), (3, 5), (8, 8), (33, 21)])
def test_a_png_in_passes_has_as_many_bytes_as_its_seven_passes(size, tmp_path):
    """Of each pass the rows and columns are counted pixel by pixel here."""
    passes = {}
    for y in range(size[1]):
        for x in range(size[0]):
            passes.setdefault(ADAM7[y % 8][x % 8], {}).setdefault(y, []).append(x)
    pixels = b"".join(b"\0" + bytes(len(row) * 3) for rows in passes.values() for row in rows.values())
    head = struct.pack(">IIBBBBB", *size, 8, 2, 0, 0, 1)
    for data, whole in ((pixels, True), (pixels[:-1], False)):
        content = (
            b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(data)) + chunk(b"IEND", b"")
        )
        (tmp_path / "a.png").write_bytes(content)
        assert has_every_row(tmp_path / "a.png") == whole


ADAM7 = ("16462646", "77777777", "56565656", "77777777", "36463646", "77777777", "56565656", "77777777")
"""The pass of each pixel of eight by eight (PNG, W3C, third edition, 8.2, from memory)."""
