"""Photographs as phones write them: upright, bounded, refused in one sentence, and nothing kept but their pixels."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from templates_gen.base.errors import InputError
from templates_gen.base.output import is_ours, write_result
from templates_gen.photo.picture import read_photo
from templates_gen.photo.vision import encoded


def half_dark(width: int = 900, height: int = 700) -> Image.Image:
    """Dark in its upper left quarter."""
    pixels = np.full((height, width, 3), 200, np.uint8)
    pixels[: height // 2, : width // 2] = 40
    return Image.fromarray(pixels)


@pytest.mark.parametrize(
    ("orientation", "dark"), [(1, (0, 0)), (2, (0, 1)), (3, (1, 1)), (4, (1, 0)), (5, (0, 0)), (6, (0, 1)), (8, (1, 0))]
)
def test_a_picture_is_turned_as_its_orientation_says(tmp_path, orientation, dark):
    """Exif 2.3, tag 274: which side the first row and the first column are at."""
    exif = Image.Exif()
    exif[274] = orientation
    half_dark().save(tmp_path / "a.jpg", exif=exif)
    photo = read_photo(tmp_path / "a.jpg")
    assert photo.size == ((700, 900) if orientation > 4 else (900, 700))
    high, wide = (side // 2 for side in photo.grey.shape)
    quarters = [
        [photo.grey[j * high : (j + 1) * high, i * wide : (i + 1) * wide].mean() for i in (0, 1)] for j in (0, 1)
    ]
    assert np.unravel_index(np.argmin(quarters), (2, 2)) == dark
    assert photo.colours().shape[:2] == photo.grey.shape


def test_what_is_written_holds_nothing_of_where_it_was_taken(tmp_path):
    exif = Image.Exif()
    exif[271] = "Phonemaker"
    exif.get_ifd(0x8825)[2] = (52.0, 5.0, 0.0)  # where it was taken: Exif 2.3, GPS IFD
    half_dark().save(tmp_path / "a.jpg", exif=exif)
    photo = read_photo(tmp_path / "a.jpg")
    assert b"Phonemaker" in photo.content
    for ending in ("jpg", "png"):
        written = encoded(photo.colours(), ending)
        assert b"Phonemaker" not in written and b"Exif" not in written
        (tmp_path / f"b.{ending}").write_bytes(written)
        with Image.open(tmp_path / f"b.{ending}") as again:
            assert not again.getexif() and again.size == (900, 700)
            again.load()


@pytest.mark.parametrize("ending", ["jpg", "png"])
def test_what_is_written_is_known_as_ours_and_written_again(tmp_path, ending):
    """A second run was refused: the picture "was not made by this program"."""
    half_dark().save(tmp_path / "a.jpg")
    assert not is_ours(tmp_path / "a.jpg")
    pixels = read_photo(tmp_path / "a.jpg").colours()
    for _ in range(2):
        write_result(tmp_path / f"b.{ending}", encoded(pixels, ending))
    assert np.abs(read_photo(tmp_path / f"b.{ending}").colours().astype(float) - pixels).mean() < 1.0


@pytest.mark.parametrize(
    ("content", "problem"),
    [
        (b"\0\0\0\x18ftypheic" + bytes(40), "found a HEIC picture, expected JPEG or PNG"),
        (b"GIF89a" + bytes(40), "is no JPEG or PNG picture"),
        (b"", "is no JPEG or PNG picture"),
        (b"\xff\xd8\xff\xe0", "its data break off or are garbled"),
        (b"\x89PNG\r\n\x1a\n" + bytes(8) + (9000).to_bytes(4, "big") * 2, "found 9000 × 9000 pixels"),
        (b"\x89PNG\r\n\x1a\n" + bytes(8) + (900).to_bytes(4, "big") * 2, "its data break off or are garbled"),
    ],
)
def test_what_cannot_be_read_is_refused_with_what_to_do(tmp_path, content, problem):
    (tmp_path / "a.jpg").write_bytes(content)
    with pytest.raises(InputError) as refused:
        read_photo(tmp_path / "a.jpg")
    assert problem in str(refused.value) and len(str(refused.value).splitlines()) == 2


def test_heic_is_refused_with_how_to_change_it(tmp_path):
    (tmp_path / "a.heic").write_bytes(b"\0\0\0\x18ftypheic" + bytes(40))
    with pytest.raises(InputError, match="Most Compatible"):
        read_photo(tmp_path / "a.heic")


def test_a_preview_and_what_is_no_file_are_refused(tmp_path):
    half_dark(300, 200).save(tmp_path / "small.png")
    for path, problem in (("small.png", "too few to see"), ("none.jpg", "cannot be read"), (".", "is a folder")):
        with pytest.raises(InputError, match=problem):
            read_photo(tmp_path / path)


@pytest.mark.skipif(sys.platform == "win32", reason="Windows does not tell Python how much memory was used")
def test_fifty_million_pixels_take_little_memory_to_read(tmp_path):
    """The whole process, OpenCV and NumPy included: pictures are unpacked in grey, a byte for each pixel."""
    Image.new("RGB", (8160, 6120), (120, 130, 140)).save(tmp_path / "a.jpg")
    code = (
        "import pathlib, resource; from templates_gen.photo.picture import read_photo\n"
        "size = read_photo(pathlib.Path('a.jpg')).size\n"
        "own = pathlib.Path('/proc/self/status')  # getrusage counts the process that started this one, too\n"
        "lines = own.read_text().splitlines() if own.exists() else []\n"
        "most = [int(line.split()[1]) for line in lines if line.startswith('VmHWM')]\n"
        "print(*size, *(most or [resource.getrusage(resource.RUSAGE_SELF).ru_maxrss]))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=tmp_path)
    width, height, most = map(int, done.stdout.split())
    assert (width, height) == (8160, 6120)
    assert most * (1 if sys.platform == "darwin" else 1024) < 900e6  # bytes; Linux counts in KiB


def test_without_the_extra_one_clear_sentence_says_what_to_install(tmp_path):
    """In a Python that has no OpenCV."""
    (tmp_path / "a.jpg").write_bytes(b"\xff\xd8")
    job = Path(__file__).parents[2] / "samples" / "fern-prints.toml"
    code = f"import sys; sys.modules['cv2'] = None; sys.argv[1:] = ['photo', 'taped', {str(job)!r}, 'a.jpg']\\n"
    code = code.replace("\\n", "\n") + "from templates_gen.__main__ import main\nmain()"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False, cwd=tmp_path)
    assert done.returncode == 2 and "Traceback" not in done.stderr
    assert "needs OpenCV and NumPy, which are not installed" in done.stderr
    assert "pip install 'templates-gen[photo]'" in done.stderr


@pytest.mark.parametrize(
    ("noted", "focal"),
    [({0xA405: 26}, 26 / 43.27 * np.hypot(900, 700)),
     ({0xA405: 26, 0xA002: 900, 0xA003: 700}, 26 / 43.27 * np.hypot(900, 700)),
     ({0xA405: 26, 0xA002: 1200, 0xA003: 700}, None), ({0xA405: 0}, None), ({0xA003: 700}, None), ({}, None)],
)  # fmt: skip
def test_the_focal_length_that_a_camera_noted_is_taken_unless_the_picture_was_cut_since(tmp_path, noted, focal):
    """Exif 2.32: FocalLengthIn35mmFilm, PixelXDimension, PixelYDimension; 43.27 mm is the diagonal of that film."""
    exif = Image.Exif()
    exif.get_ifd(0x8769).update(noted)
    half_dark().save(tmp_path / "a.jpg", exif=exif)
    assert read_photo(tmp_path / "a.jpg").focal == (None if focal is None else pytest.approx(focal, rel=1e-3))


@pytest.mark.parametrize("cut", range(0, 36, 7))  # the focal length is at 36 of 44 bytes
def test_notes_of_a_camera_that_are_garbled_note_nothing(tmp_path, cut):
    exif = Image.Exif()
    exif.get_ifd(0x8769)[0xA405] = 26
    half_dark().save(tmp_path / "a.jpg", exif=exif)
    content = bytearray((tmp_path / "a.jpg").read_bytes())
    start = content.index(b"Exif\0\0") + 6
    content[start + cut : start + 44] = b"\xff" * (44 - cut)
    (tmp_path / "b.jpg").write_bytes(content)
    assert read_photo(tmp_path / "b.jpg").focal is None
