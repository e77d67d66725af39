"""The pictures in a proof: every common kind comes out right, what cannot is one clear message, memory stays small."""

from __future__ import annotations

import io
import subprocess
import sys
import zlib
from pathlib import Path

import numpy as np
import pytest
from PIL import Image, ImageCms

from templates_gen.base.errors import InputError
from templates_gen.documents.proof.making import make_proof
from templates_gen.drawing import images as imaging
from templates_gen.drawing.images import read_picture
from templates_gen.job.reading.building import read_job
from tests.jobs import frame, job
from tests.quarters import NEAR, QUARTERS, alike, colours, quarters, saved

MOST = (400, 300)


def read(path: Path, most: tuple[int, int] = MOST) -> Image.Image:
    found = read_picture(path, most, "frame A, image")
    image = Image.open(io.BytesIO(found.jpeg))
    assert (image.format, image.size, image.mode) == ("JPEG", (found.width, found.height), "L" if found.grey else "RGB")
    return image


@pytest.mark.parametrize("name", ["a.jpg", "a.png", "a.tif", "a.webp", "a.bmp", "a.gif", "a.ppm", "A.JPEG", "a.txt"])
def test_every_common_kind_of_picture_is_read(tmp_path: Path, name: str) -> None:
    path = tmp_path / name
    quarters().save(path, "PNG" if name.endswith("txt") else None)
    assert alike(colours(read(path)), QUARTERS)


@pytest.mark.parametrize("mode", ["P", "RGBA", "LA", "L", "1", "I;16", "CMYK", "YCbCr", "LAB"])
def test_every_mode_of_pixels_becomes_grey_or_colours(tmp_path: Path, mode: str) -> None:
    kinds = {"CMYK": "a.jpg", "YCbCr": "a.jpg", "LAB": "a.tif"}
    grey = quarters().convert("L")
    if mode == "I;16":  # black is 0 and white 65535
        image = Image.fromarray(np.asarray(grey).astype(np.uint16) * 257)
    elif mode == "LAB":
        to_lab = ImageCms.buildTransform(ImageCms.createProfile("sRGB"), ImageCms.createProfile("LAB"), "RGB", "LAB")
        image = ImageCms.applyTransform(quarters(), to_lab)
    elif mode in ("P", "1"):
        image = quarters().quantize(4) if mode == "P" else quarters().convert(mode, dither=Image.Dither.NONE)
    else:
        image = quarters().convert(mode)
    found = colours(read(saved(tmp_path, kinds.get(mode, "a.png"), image)))
    wanted = colours(quarters().convert("1", dither=Image.Dither.NONE) if mode == "1" else grey)
    # Pillow's own way from LAB to RGB knows no other white: only roughly the same
    assert alike(found, wanted if mode in ("LA", "L", "1", "I;16") else QUARTERS, 40 if mode == "LAB" else NEAR)


def test_what_shows_through_is_white(tmp_path: Path) -> None:
    clear = quarters().convert("RGBA")
    clear.putalpha(Image.new("L", clear.size, 0))
    assert read(saved(tmp_path, "a.png", clear)).getextrema() == ((255, 255),) * 3
    palette = quarters().quantize(4)
    assert alike(colours(read(saved(tmp_path, "p.png", palette, transparency=palette.getpixel((1, 1))))),
                 QUARTERS | {"upper left": (255, 255, 255)})  # fmt: skip


@pytest.mark.parametrize("orientation", range(1, 9))
def test_a_picture_is_turned_as_its_camera_says(tmp_path: Path, orientation: int) -> None:
    """What is stored is the upright picture turned the other way (Exif 2.32, 4.6.4: where row and column 0 are)."""
    undo = {2: "FLIP_LEFT_RIGHT", 3: "ROTATE_180", 4: "FLIP_TOP_BOTTOM", 5: "TRANSPOSE", 6: "ROTATE_90",
            7: "TRANSVERSE", 8: "ROTATE_270"}.get(orientation)  # fmt: skip
    exif = Image.Exif()
    exif[0x0112] = orientation
    stored = quarters().transpose(Image.Transpose[undo]) if undo else quarters()
    image = read(saved(tmp_path, "a.jpg", stored, exif=exif))
    assert image.size == (400, 300)
    assert alike(colours(image), QUARTERS)


def test_a_picture_is_no_finer_than_asked_for_and_never_larger_than_it_is(tmp_path: Path) -> None:
    large = saved(tmp_path, "large.png", quarters(4001, 2999))
    assert read(large).size in ((400, 300), (400, 299))
    assert alike(colours(read(large)), QUARTERS)
    small = read(saved(tmp_path, "small.png", quarters(40, 30)))
    assert small.size == (40, 30)
    assert read(saved(tmp_path, "thin.png", quarters(3000, 2))).size == (400, 1)


def test_colours_follow_the_profile_of_the_picture(tmp_path: Path) -> None:
    """In a profile with the colorants of red and blue exchanged (ICC.1, tags rXYZ and bXYZ) they change places."""
    usual = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    exchanged = usual.replace(b"rXYZ", b"?XYZ").replace(b"bXYZ", b"rXYZ").replace(b"?XYZ", b"bXYZ")
    wanted = {name: colour[::-1] for name, colour in QUARTERS.items()}
    assert alike(colours(read(saved(tmp_path, "a.png", quarters(), icc_profile=exchanged))), wanted)
    assert alike(colours(read(saved(tmp_path, "b.jpg", quarters(), icc_profile=usual))), QUARTERS)
    assert alike(colours(read(saved(tmp_path, "c.png", quarters(), icc_profile=b"not a profile"))), QUARTERS)


def test_images_mouldings_and_mats_are_read_from_job_and_spreadsheet(tmp_path: Path) -> None:
    (tmp_path / "there.png").write_bytes(b"")
    (tmp_path / "frames.csv").write_text("id,width,height,image\nB,300,200,pictures/b.png\n")
    (tmp_path / "job.toml").write_text(
        '[job]\nframes = "frames.csv"\n[wall]\nwidth = 4000\nheight = 2600\n[[frame]]\nid = "A"\nwidth = 400\n'
        'height = 500\nimage = "there.png"\nmoulding = { face = 20, rabbet = 6, allowance = 2 }\nmat = 50\n'
    )
    one, two = read_job(tmp_path / "job.toml").frames
    assert (one.image, one.image_missing) == (str(tmp_path / "there.png"), False)
    assert (two.image, two.image_missing) == (str(tmp_path / "pictures" / "b.png"), True)
    assert (one.face, one.mat) == (20.0, (45.0, 45.0, 45.0, 45.0))  # worked out by hand here: 50 - 6 + 2 / 2
    assert (two.face, two.mat) == (None, None)


BROKEN = {
    "text.jpg": (b"no picture at all", "is not a picture that can be read, expected JPEG"),
    "empty.png": (b"", "is not a picture that can be read"),
    "cut.jpg": (None, "cannot be read"),
    "cut.png": (None, "cannot be read"),
    "page.pdf": (b"%PDF-1.7\n%", "is not a picture that can be read"),
}


@pytest.mark.parametrize("name", BROKEN)
def test_what_is_no_whole_picture_is_one_message_that_names_file_frame_and_field(tmp_path: Path, name: str) -> None:
    content, words = BROKEN[name]
    if content is None:
        noise = Image.fromarray(np.random.default_rng(1).integers(0, 255, (300, 400, 3), dtype=np.uint8))
        content = saved(tmp_path, name, noise).read_bytes()
        content = content[: len(content) // 2]
    (tmp_path / name).write_bytes(content)
    of = job(frame("A", image=str(tmp_path / name)))
    with pytest.raises(InputError, match=words) as error:
        make_proof(of)
    assert str(error.value).startswith(f"frame A, image: {tmp_path / name} ")


def test_a_picture_that_may_not_be_read_or_is_a_folder_is_a_message(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="is a folder, expected the file of a picture"):
        read(tmp_path)
    with pytest.raises(InputError, match="cannot be read: No such file"):
        read(tmp_path / "gone.png")


def test_every_cut_of_a_small_picture_is_a_message_or_a_picture(tmp_path: Path) -> None:
    for name in ("a.png", "a.jpg", "a.gif", "a.tif", "a.webp", "a.bmp"):
        content = saved(tmp_path, name, quarters(16, 12)).read_bytes()
        for end in range(0, len(content), max(1, len(content) // 40)):
            (tmp_path / name).write_bytes(content[:end])
            try:
                assert read(tmp_path / name).size == (16, 12)
            except InputError as error:
                assert str(tmp_path / name) in str(error)


MEASURED = """
import resource, subprocess, sys
done = subprocess.run([sys.executable, "-m", "templates_gen", "proof", "job.toml", "-o", "out.png"])
print(resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss)
sys.exit(done.returncode)
"""
"""A small process of its own starts the program: what it takes counts from what its parent took when it was forked."""

HUNDRED = 10_000


@pytest.mark.skipif(sys.platform == "win32", reason="no resource module, so memory cannot be measured here")
@pytest.mark.parametrize("name", ["a.jpg", "a.png"])
def test_a_picture_of_a_hundred_megapixels_takes_less_than_500_mb(tmp_path: Path, name: str) -> None:
    """Peak memory of the whole command; 500 MB is our own bound, no source."""
    how = {"compress_level": 1} if name.endswith("png") else {"quality": 50}
    Image.new("RGB", (HUNDRED, HUNDRED), (200, 180, 90)).save(tmp_path / name, **how)
    (tmp_path / "job.toml").write_text(
        f'[wall]\nwidth = 4000\nheight = 2600\n[[frame]]\nid = "A"\nwidth = 900\nheight = 900\nimage = "{name}"\n'
    )
    done = subprocess.run([sys.executable, "-c", MEASURED], cwd=tmp_path, capture_output=True, text=True, timeout=120)
    assert (done.returncode, (tmp_path / "out.png").exists()) == (0, True), done.stderr
    kilobytes = int(done.stdout.splitlines()[-1]) / (1024 if sys.platform == "darwin" else 1)
    assert kilobytes < 500_000
    assert "Warning" not in done.stderr


def test_more_pixels_than_can_be_read_are_a_message(tmp_path: Path) -> None:
    path = tmp_path / "huge.png"
    small = saved(tmp_path, "small.png", Image.new("RGB", (10, 10))).read_bytes()
    # the header chunk's width and height, and its checksum (PNG specification, 5.3 and 11.2.2)
    chunk = small[12:16] + (40_000).to_bytes(4, "big") * 2 + small[24:29]
    path.write_bytes(small[:12] + chunk + zlib.crc32(chunk).to_bytes(4, "big") + small[33:])
    with pytest.raises(InputError, match="40000 × 40000 pixels, too many to be read at once"):
        read(path)


def test_a_progressive_jpeg_counts_as_the_whole_that_libjpeg_keeps(tmp_path: Path, monkeypatch) -> None:
    """4:4:4 and 4:2:0 keep 3 and 1 1/2 values of 2 bytes for each of 1200 × 900 pixels: 6.5 and 3.2 MB, by hand."""
    monkeypatch.setattr(imaging, "MOST_BYTES", 5_000_000)
    image = quarters(1200, 900)
    assert read(saved(tmp_path, "plain.jpg", image, subsampling=0)).size == (400, 300)
    assert read(saved(tmp_path, "half.jpg", image, subsampling=2, progressive=True)).size == (400, 300)
    with pytest.raises(InputError, match="1200 × 900 pixels, too many"):
        read(saved(tmp_path, "full.jpg", image, subsampling=0, progressive=True))
