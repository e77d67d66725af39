"""A job from a sample, and out of a template that was printed."""

import io
import os
from pathlib import Path, PurePosixPath, PureWindowsPath

import pypdf
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pypdf.generic import NameObject

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.toml import toml
from templates_gen.cli.interview.taken_back import JOB_ENDING, SHEET_ENDINGS, plain_name
from templates_gen.job.reading.building import read_job
from tests.jobs import SAMPLES
from tests.made import SAMPLE_NAMES
from tests.running import MINIMAL, listing, run


def test_samples_are_listed_with_a_line_each(folder):
    ran = run("start", "--sample")
    starts = [line.split()[0] for line in ran.out.splitlines() if not line.startswith(" ")]
    assert (ran.code, ran.err, starts) == (0, "", list(SAMPLE_NAMES))
    assert max(map(len, ran.out.splitlines())) <= 80
    assert all(len(line.split()) > 2 for line in ran.out.splitlines()) and "#" not in ran.out


@pytest.mark.parametrize("name", SAMPLE_NAMES)
def test_a_sample_is_the_same_job_wherever_it_is_written(name, folder):
    ran = run("start", "--sample", name, "mine.toml")
    assert ran.code == 0
    assert ran.out.splitlines()[-1] == "mine.toml: a job; next  templates-gen check mine.toml"
    job, sample = read_job(folder / "mine.toml"), read_job(SAMPLES / f"{name}.toml")
    # all but the names of the files and the paths of the pictures
    assert (job.title, job.wall, job.group, job.paper) == (sample.title, sample.wall, sample.group, sample.paper)
    pictures = [Path(frame.image).read_bytes() for frame in job.frames if frame.image]
    assert pictures == [Path(frame.image).read_bytes() for frame in sample.frames if frame.image]
    assert plan_wall(job).nails == plan_wall(sample).nails
    assert not (folder / "mine.toml").read_text(encoding="utf-8").startswith("#:schema")


def test_the_job_is_named_behind_o_as_well_and_once(folder):
    assert run("start", "--sample", "kiln-tiles", "-o", "mine.toml").code == 0
    assert read_job(folder / "mine.toml").title == read_job(SAMPLES / "kiln-tiles.toml").title
    twice = run("start", "--sample", "kiln-tiles", "one.toml", "-o", "two.toml")
    assert (twice.code, list(listing(folder))) == (2, ["mine.toml"]) and "named twice" in twice.err


def test_an_unknown_sample_is_refused_with_the_nearest(folder):
    ran = run("start", "--sample", "fern-print")
    assert (ran.code, ran.out) == (2, "")
    assert "expected the name of a sample" in ran.err and "did you mean 'fern-prints'?" in ran.err
    assert "samples: alphabet-column, fern-prints" in run("start", "--sample", "zzz").err


def test_a_sample_replaces_nothing_neither_the_job_nor_its_spreadsheet(folder):
    (folder / "tile-rubbings.csv").write_text("mine")
    before = listing(folder)
    assert run("start", "--sample", "tile-rubbings").code == 2
    assert listing(folder) == before
    assert run("start", "--sample", "tile-rubbings", "--force").code == 0


def test_a_samples_picture_replaces_nothing_and_comes_only_with_the_job(folder):
    (folder / "images").mkdir()
    (folder / "images" / "fern-c.png").write_text("mine")
    before = listing(folder)
    ran = run("start", "--sample", "fern-prints")
    assert ran.code == 2 and "images/fern-c.png: already exists" in ran.err and listing(folder) == before


def test_a_file_where_the_pictures_folder_should_be_is_said(folder):
    (folder / "images").write_text("mine")
    ran = run("start", "--sample", "fern-prints")
    assert ran.code == 2 and ran.err.startswith("error: images") and sorted(listing(folder)) == ["images"]


@pytest.mark.parametrize("name", ["fern-prints", "tile-rubbings"])
def test_a_template_gives_its_job_back_byte_for_byte(name, folder):
    (folder / "first").mkdir()
    assert run("start", "--sample", name, f"first/{name}.toml").code == 0
    assert run("template", f"first/{name}.toml", "-o", "printed.pdf").code == 0
    ran = run("start", "--from", "printed.pdf")
    assert (ran.code, ran.err) == (0, "")
    before = {file: content for file, content in listing(folder / "first").items() if not file.startswith("images")}
    assert ("missing pictures: images/fern-a.png," in ran.out) == (name == "fern-prints")
    assert {file: (folder / file).read_bytes() for file in before} == before
    assert run("start", "--from", "printed.pdf").code == 2  # it is there now


def test_a_spreadsheet_that_is_there_already_as_it_is_in_the_template_is_no_hindrance(folder):
    assert run("start", "--sample", "tile-rubbings").code == 0
    assert run("template", "tile-rubbings.toml").code == 0
    assert run("start", "--from", "tile-rubbings.pdf", "again.toml").code == 0
    assert (folder / "again.toml").read_bytes() == (folder / "tile-rubbings.toml").read_bytes()
    (folder / "tile-rubbings.csv").write_text("mine")
    assert run("start", "--from", "tile-rubbings.pdf", "once-more.toml").code == 2
    assert (folder / "tile-rubbings.csv").read_text() == "mine"


def test_a_spreadsheet_from_another_folder_comes_to_lie_beside_the_job(folder):
    (folder / "list").mkdir()
    (folder / "list" / "frames.csv").write_text("id,width,height\nA,300,200\n")
    (folder / "drops.csv").write_text("id,drop\nA,60\n")
    head = MINIMAL.partition("[[frame]]")[0]
    (folder / "job.toml").write_text(
        head.replace('unit = "mm"', 'unit = "mm"\nframes = "list/frames.csv"  # theirs\nmeasured = "drops.csv"')
    )
    assert run("template", "job.toml").code == 0
    (folder / "back").mkdir()
    assert run("start", "--from", "job.pdf", "back/again.toml").code == 0
    assert sorted(listing(folder / "back")) == ["again.toml", "drops.csv", "frames.csv"]
    assert 'frames = "frames.csv"  # theirs' in (folder / "back" / "again.toml").read_text()
    assert read_job(folder / "back" / "again.toml").frames == read_job(folder / "job.toml").frames


def test_a_template_for_another_wall_gives_that_wall_back_too(folder):
    assert run("start", "--sample", "fern-prints", "job.toml").code == 0
    assert run("start", "--sample", "loom-drawings", "other.toml").code == 0
    (folder / "back").mkdir()
    moved = run("template", "job.toml", "--wall", "other.toml")
    assert moved.code == 0, moved
    ran = run("start", "--from", moved.out.partition(":")[0], "back/job.toml")
    assert (
        ran.out.splitlines()[-1]
        == "back/job.toml: a job; next  templates-gen check back/job.toml --wall back/other.toml"
    )
    assert (folder / "back" / "other.toml").read_bytes() == (folder / "other.toml").read_bytes()
    assert run("schedule", "back/job.toml", "--wall", "back/other.toml", "--format", "csv").out == (
        run("schedule", "job.toml", "--wall", "other.toml", "--format", "csv").out
    )


@pytest.mark.parametrize("other", ["--wall hall.toml", ""])
def test_a_job_does_not_take_the_name_of_what_lies_beside_it(other, folder):
    assert run("start", "--sample", "tile-rubbings", "job.toml").code == 0
    (folder / "hall.toml").write_text('[job]\nunit = "mm"\n[wall]\nwidth = 5000\nheight = 2600\n')
    assert run("template", "job.toml", *other.split(), "-o", "printed.pdf").code == 0
    (folder / "back").mkdir()
    for way in (["--from", "printed.pdf"], ["--sample", "tile-rubbings"]):
        name = "back/hall.toml" if other and way[0] == "--from" else "back/tile-rubbings.csv"
        ran = run("start", *way, name)
        assert (ran.code, ran.out, list((folder / "back").iterdir())) == (2, "", [])
        assert ran.err.startswith(f"error: {name}: is the name of a file that comes with the job\n  give")


def pdf_with(files: dict[str, bytes], producer: str = "templates-gen") -> bytes:
    """A PDF file with these attachments, said to be made by `producer`."""
    writer, out = pypdf.PdfWriter(), io.BytesIO()
    writer.add_blank_page(100, 100)
    writer.metadata = {"/Producer": producer}
    for name, content in files.items():
        item = writer.add_attachment(name, content)
        relation = "/Supplement" if name in OTHERS or content == SHEET else "/Source"
        item.associated_file_relationship = NameObject(relation)  # ISO 32000-2, 7.11.3, from memory
    writer.write(out)
    return out.getvalue()


OTHERS = ("note.txt",)
JOB = MINIMAL.encode()
SHEET = b"id,width,height\nA,300,200\n"
WITH_SHEET = MINIMAL.replace('unit = "mm"', 'unit = "mm"\nframes = "frames.csv"').encode()

REFUSED = {
    "no PDF at all": (b"id,width\n", "is not a PDF file, expected a template"),
    "an empty file": (b"", "is not a PDF file"),
    "a broken PDF": (b"%PDF-1.7\n1 0 obj\n<<", "is a broken PDF file, expected a template"),
    "of another program": (pdf_with({"job.toml": JOB}, "Paperwork 3"), "was not made by this program"),
    "no job": (pdf_with({}), "has no job inside"),
    "no job but a note": (pdf_with({"note.txt": b"hello there"}), "has no job inside"),
    "two jobs": (pdf_with({"a.toml": JOB, "b.toml": JOB}), "has no job inside"),
    "no TOML": (pdf_with({"a.toml": b"hello there"}), "is not valid TOML"),
    "a spreadsheet missing": (pdf_with({"job.toml": WITH_SHEET}), "has no 'frames.csv' inside"),
}


ODD_NAMES = {
    "-ferns.toml": "ferns.toml",
    "--force": "force.toml",
    ".profile": "profile.toml",
    "...": "job.toml",
    ".toml": "job.toml",
    "fern\u00a0prints.toml": "fern prints.toml",  # no-break space
    "\u0645\u06cc\u200c\u062e.toml": "\u0645\u06cc\u062e.toml",  # a non-joiner between letters
    "far\u00adbe.toml": "farbe.toml",  # a soft hyphen
    "\U0001f469\u200d\U0001f3a8.toml": "\U0001f469\U0001f3a8.toml",  # a painter: two signs and a joiner
    "\u202etoml.ferns": "toml.ferns.toml",  # written from right to left
    "two\nlines.toml": "two lines.toml",
    "../job.toml": "job.toml",
    "a/b.toml": "b.toml",
    "..\\job.toml": "job.toml",
    "C:job.toml": "C-job.toml",
    "/etc/job.toml": "job.toml",
    "12:30?.toml": "12-30-.toml",
    "click.py": "click.py.toml",
    "F(1).TOML": "F(1).TOML",
}
"""Names of attachments, and under which plain name each is written.  Our own design, no source."""


@pytest.mark.parametrize("name", ODD_NAMES)
def test_a_job_of_any_name_is_taken_under_a_plain_one_or_the_one_given(name, folder):
    (folder / "x.pdf").write_bytes(pdf_with({name: JOB}))
    assert (run("start", "--from", "x.pdf").code, run("start", "--from", "x.pdf", "new.toml").code) == (0, 0)
    assert sorted(listing(folder)) == sorted(["x.pdf", ODD_NAMES[name], "new.toml"])
    assert (folder / ODD_NAMES[name]).read_bytes() == (folder / "new.toml").read_bytes() == JOB


OWN_NAMES = [name for name in ODD_NAMES if "/" not in name and not name.startswith("...")]


@pytest.mark.skipif(os.name == "nt", reason="Windows has no files of most of these names")
@pytest.mark.parametrize("name", OWN_NAMES)
def test_a_paper_of_ours_gives_its_job_back_whatever_the_job_files_name(name, folder):
    (folder / name).write_bytes(JOB)
    assert run("measure", f"./{name}", "-o", "paper.pdf").code == 0
    ran = run("start", "--from", "paper.pdf", "new.toml")
    assert (ran.code, ran.err, (folder / "new.toml").read_bytes()) == (0, "", JOB)
    (folder / "back").mkdir()
    os.chdir(folder / "back")
    assert run("start", "--from", "../paper.pdf").code == 0
    assert listing(folder / "back") == {ODD_NAMES[name]: JOB}


@given(st.text(max_size=40), st.sampled_from([JOB_ENDING, SHEET_ENDINGS]))
def test_a_plain_name_is_plain_and_stays_itself(name, endings):
    plain = plain_name(name, endings)
    assert plain_name(plain, endings) == plain and plain.isprintable() and plain.lower().endswith(endings)
    assert PureWindowsPath(plain).name == plain == PurePosixPath(plain).name and plain[0] not in ".- "


SHEET_NAMES = {
    "-list.csv": "list.csv",
    "click.py": "click.py.csv",
    "a\u00adb.tsv": "ab.tsv",
    ".csv": "frames.csv",
    "far/-list.csv": "list.csv",
    'the "big" one\'s.csv': "the -big- one's.csv",
}


@pytest.mark.parametrize("quoted", [toml, lambda name: '"' + "".join(f"\\u{ord(sign):04x}" for sign in name) + '"'])
@pytest.mark.parametrize("name", SHEET_NAMES)
def test_a_spreadsheet_of_any_name_comes_under_a_plain_one_and_the_job_says_so(name, quoted, folder):
    head = MINIMAL.partition("[[frame]]")[0]
    text = head.replace('unit = "mm"', f'unit = "mm" # frames = "{name[:1]}"\n"frames" = {quoted(name)} # theirs')
    (folder / "x.pdf").write_bytes(pdf_with({"job.toml": text.encode(), name.rpartition("/")[2]: SHEET}))
    assert run("start", "--from", "x.pdf").code == 0
    assert listing(folder).keys() == {"x.pdf", "job.toml", SHEET_NAMES[name]}
    assert (folder / SHEET_NAMES[name]).read_bytes() == SHEET
    assert [frame.id for frame in read_job(folder / "job.toml").frames] == ["A"]
    assert (folder / "job.toml").read_text().replace(toml(SHEET_NAMES[name]), quoted(name)) == text


def test_spreadsheets_of_one_name_from_two_folders_both_come_back(folder):
    for place, content in (("list", SHEET), ("drops", b"id,drop\nA,60\n")):
        (folder / place).mkdir()
        (folder / place / "frames.csv").write_bytes(content)
    named = 'unit = "mm"\nmeasured = "drops/frames.csv"\nframes = "list/frames.csv"'
    (folder / "job.toml").write_text(MINIMAL.partition("[[frame]]")[0].replace('unit = "mm"', named))
    assert run("measure", "job.toml", "-o", "paper.pdf").code == 0
    (folder / "back").mkdir()
    assert run("start", "--from", "paper.pdf", "back/job.toml").code == 0
    assert sorted(listing(folder / "back")) == ["frames-2.csv", "frames.csv", "job.toml"]
    assert read_job(folder / "back" / "job.toml").frames == read_job(folder / "job.toml").frames


def test_a_spreadsheet_named_where_it_cannot_be_replaced_is_said(folder):
    text = MINIMAL.partition("[[frame]]")[0].replace('unit = "mm"', 'unit = "mm"\n"fra\\u006des" = "-a.csv"')
    (folder / "x.pdf").write_bytes(pdf_with({"job.toml": text.encode(), "-a.csv": SHEET}))
    ran = run("start", "--from", "x.pdf")
    assert (ran.code, list(folder.iterdir())) == (2, [folder / "x.pdf"])
    assert "names '-a.csv' in a way that cannot be replaced" in ran.err


@pytest.mark.parametrize("name", REFUSED)
def test_a_file_that_is_no_template_of_ours_is_refused_and_nothing_written(name, folder):
    content, words = REFUSED[name]
    (folder / "x.pdf").write_bytes(content)
    ran = run("start", "--from", "x.pdf")
    assert (ran.code, ran.out, list(folder.iterdir())) == (2, "", [folder / "x.pdf"])
    assert ran.err.startswith("error: x.pdf: ") and words in ran.err and ran.err.count("\n") <= 2


def test_the_same_file_with_a_plain_name_is_taken(folder):
    (folder / "x.pdf").write_bytes(pdf_with({"job.toml": JOB}))
    assert run("start", "--from", "x.pdf").code == 0
    assert (folder / "job.toml").read_bytes() == JOB


def test_a_job_that_can_be_read_no_more_is_given_back_all_the_same(folder):
    (folder / "x.pdf").write_bytes(pdf_with({"job.toml": JOB + b"odd = 1\n"}))
    ran = run("start", "--from", "x.pdf")
    assert (ran.code, ran.out) == (0, "job.toml: a job; next  templates-gen check job.toml\n")


def test_a_template_in_place_of_its_job_says_how_to_get_the_job(folder):
    (folder / "x.pdf").write_bytes(pdf_with({"job.toml": JOB}))
    ran = run("check", "x.pdf")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.startswith("error: x.pdf: is a PDF file, expected a job file\n  the job comes out")


def test_two_ways_at_once_are_wrong_use(folder):
    ran = run("start", "--sample", "fern-prints", "--from", "x.pdf")
    assert ran.code == 2 and "not both" in ran.err
