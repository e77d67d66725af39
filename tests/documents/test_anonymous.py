"""What leaves the house with a template, and what does not by --anonymous: the PDF file read back, byte for byte."""

import io
import json
import re
import zlib

import pypdf
import pytest

from templates_gen.documents.anonymous import TITLE
from tests.running import MINIMAL, run

pytestmark = pytest.mark.usefixtures("hardly_searched")

CLIENT = "Widow Ambrose, 7 Kiln Lane"
SECRETS = ("Ambrose", "Kiln Lane", "back parlour", "ambrose-job", "aunts-list", "aunts-drops", "aunts-hall", "private",
           "Heirloom", "drawer by the stove")  # fmt: skip
"""What stands in the job and its files, and would say whose it is."""

JOB = f"""# the key is in the drawer by the stove
[job]
title = "Tile rubbings"
client = "{CLIENT}"
unit = "mm"
date = "2026-03-01"
frames = "aunts-list.csv"
measured = "aunts-drops.csv"
[wall]
name = "back parlour"
width = 4000
height = 2600
wiring = "uk"
"""


@pytest.fixture
def home(folder, monkeypatch):
    monkeypatch.setenv("XDG_CONFIG_HOME", str(folder / "config"))
    (folder / "ambrose-job.toml").write_text(JOB)
    (folder / "aunts-list.csv").write_text("id,width,height,image\nA,300,200,private/a.png\nB,300,210,private/b.png\n")
    (folder / "aunts-drops.csv").write_text("id,width,drop\nA,300,60\nB,306,61\n")
    (folder / "aunts-hall.toml").write_text('[wall]\nname = "back parlour"\nwidth = 5000\nheight = 2600\n')
    assert run("printer", "record", "Heirloom", "--paper", "a4", "--across", "179.4", "--along", "260.4").code == 0
    return folder


def everything(pdf: bytes) -> str:
    """All that a file holds: its bytes, every stream unpacked, and every text as a reader of PDF files finds it."""
    streams = []
    for found in re.finditer(rb"stream\r?\n(.*?)endstream", pdf, re.DOTALL):
        unpacking = zlib.decompressobj()
        try:
            streams.append(unpacking.decompress(found[1]))
        except zlib.error:
            streams.append(found[1])
    reader = pypdf.PdfReader(io.BytesIO(pdf))
    told = [page.extract_text() for page in reader.pages] + [str(value) for value in (reader.metadata or {}).values()]
    told += [item.title for item in reader.outline]
    wide = [re.sub(r"(?s)\0(.)", r"\1", part.decode("latin-1")) for part in (pdf, *streams)]  # texts in UTF-16
    return " ".join([*(part.decode("latin-1") for part in (pdf, *streams)), *wide, *told])


WAYS = {
    "sheets": [],
    "the same paper on another wall": ["--wall", "aunts-hall.toml"],
    "on another wall": ["--wall", "aunts-hall.toml", "--all-sheets"],
    "for a printer": ["--printer", "Heirloom"],
    "in one piece": ["--one-piece"],
}


@pytest.mark.parametrize("way", WAYS)
def test_nothing_in_an_anonymous_template_says_whose_it_is(way, home):
    command = ["template", "ambrose-job.toml", "-o", "out.pdf", *WAYS[way]]
    assert run(*command).code == 0
    usual = [everything(path.read_bytes()) for path in sorted(home.glob("out*.pdf"))]
    ran = run(*command, "--anonymous")
    said = ran.out + re.sub(r"ambrose-job\.(toml|pdf)", "", ran.err)  # whoever typed its name is told it
    assert ran.code == 0 and not any(secret in said for secret in SECRETS)
    files = [path for path in sorted(home.glob("out*.pdf")) if path.name != "out-before.pdf"]  # the one with all names
    assert len(files) == len(usual) == (2 if way == "in one piece" else 1)
    for before, path in zip(usual, files, strict=True):
        content = path.read_bytes()
        found = everything(content)
        assert [secret for secret in SECRETS if secret.lower() in found.lower()] == []
        assert "Ambrose" in before and "aunts-list.csv" in before and "drawer by the stove" in before
        reader = pypdf.PdfReader(io.BytesIO(content))
        assert not reader.attachments and not reader.metadata.author and "Tile rubbings" in reader.metadata.title
        assert "EmbeddedFile" not in found and "Tile rubbings" in found
    assert ("Heirloom" in usual[0]) == (way == "for a printer")


def test_the_marks_on_the_wall_are_the_same(home):
    reports = []
    for more in ([], ["--anonymous"]):
        assert run("template", "ambrose-job.toml", "-o", "out.pdf", "--report", "out.json", *more).code == 0
        report = json.loads((home / "out.json").read_text())
        reports.append([(nail["name"], nail["x"], nail["y"]) for nail in report["nails"]])
    assert reports[0] == reports[1] and len(reports[0]) == 2


def test_no_job_comes_out_of_it_and_that_is_said(home):
    assert run("template", "ambrose-job.toml", "-o", "out.pdf", "--anonymous").code == 0
    ran = run("start", "--from", "out.pdf", "again.toml")
    assert ran.code == 2 and "has no job inside" in ran.err


def test_a_title_that_is_only_the_files_name_goes_too(home):
    (home / "ambrose-job.toml").write_text(JOB.replace('title = "Tile rubbings"\n', ""))
    assert run("template", "ambrose-job.toml", "-o", "out.pdf", "--anonymous").code == 0
    content = (home / "out.pdf").read_bytes()
    assert "ambrose" not in everything(content).lower()
    assert pypdf.PdfReader(io.BytesIO(content)).metadata.title == TITLE


def test_a_title_that_names_the_client_all_the_same_is_said(home):
    (home / "ambrose-job.toml").write_text(JOB.replace("Tile rubbings", f"For {CLIENT.upper()}"))
    ran = run("template", "ambrose-job.toml", "-o", "out.pdf", "--anonymous")
    assert ran.code == 0 and "still named on paper: the title." in " ".join(ran.err.split())


def test_without_names_to_leave_out_it_is_the_same_but_for_the_job_inside(small):
    assert run("template", "job.toml", "--anonymous").code == 0
    reader = pypdf.PdfReader(small / "job.pdf")
    assert not reader.attachments and MINIMAL.strip() not in everything((small / "job.pdf").read_bytes())
