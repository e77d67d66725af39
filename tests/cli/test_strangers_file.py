"""A template from a stranger: whatever is inside, only a job comes out, its spreadsheets and its wall."""

import io
import shlex
import subprocess
import sys
import time
import zlib
from pathlib import Path

import pypdf
import pytest
from pypdf.generic import DecodedStreamObject, EncodedStreamObject, NameObject, NumberObject

from templates_gen.base import file_names as filenames
from templates_gen.base.errors import InputError
from templates_gen.drawing.pdf.attached import MOST_FILES, Attached
from tests.cli.test_taken import JOB, WITH_SHEET
from tests.running import MEASURED, MINIMAL, listing, run

SHEET = b"id,width,height,drop\nB,300,200,60\n"
WALL = b"[wall]\nwidth = 5000\nheight = 2600\n"
CODE = b"open('ran', 'w')\n"


def naming(frames: str) -> bytes:
    """A job that names this as its spreadsheet, as TOML writes it behind the `=`."""
    return MINIMAL.replace('unit = "mm"', f'unit = "mm"\nframes = {frames}').encode()


def made_of(files: dict[str, bytes], name: str = "job.toml") -> bytes:
    """The same, without what writing twice would double."""
    writer, out = pypdf.PdfWriter(), io.BytesIO()
    writer.add_blank_page(100, 100)
    writer.metadata = {"/Producer": "templates-gen"}
    for inside, content in files.items():
        item = writer.add_attachment(inside, content)
        item.associated_file_relationship = NameObject("/Source" if inside == name else "/Supplement")
    writer.write(out)
    return out.getvalue()


def taken(folder: Path, content: bytes, *arguments: str) -> tuple[int, list[str], str]:
    """The exit code of `start --from`, what it left in the folder beside the PDF file, and its words."""
    (folder / "x.pdf").write_bytes(content)
    ran = run("start", "--from", "x.pdf", *arguments)
    return ran.code, sorted(set(listing(folder)) - {"x.pdf"}), ran.out + ran.err


EVIL = {
    "click.py": CODE, "json.py": CODE, "sitecustomize.py": CODE, "autorun.inf": b"[autorun]", "desktop.ini": b"[x]",
    "../up.csv": SHEET, "..\\up.csv": SHEET, "/etc/x.csv": SHEET, "C:x.csv": SHEET, ".bashrc": CODE, "con.csv": SHEET,
    "other.csv": SHEET, "images/a.png": b"\x89PNG", "job.toml:stream": CODE, "-rf": CODE, "run.toml": b"a = 1",
}  # fmt: skip


def test_nothing_but_the_job_comes_out_whatever_else_is_inside(folder):
    code, there, said = taken(folder, made_of({"job.toml": JOB, **EVIL}))
    assert (code, there) == (0, ["job.toml"])
    assert f"{len(EVIL)} attachments left inside" in said
    assert not list(folder.parent.glob("up*"))
    subprocess.run([sys.executable, "-m", "templates_gen", "--version"], cwd=folder, check=True, capture_output=True)
    assert not (folder / "ran").exists()


def test_the_spreadsheets_and_the_wall_come_too(folder):
    inside = {"job.toml": WITH_SHEET, "frames.csv": SHEET, "hall.toml": WALL, "click.py": CODE}
    code, there, said = taken(folder, made_of(inside))
    assert (code, there) == (0, ["frames.csv", "hall.toml", "job.toml"])
    assert "check job.toml --wall hall.toml" in said


def test_which_of_two_walls_is_meant_nobody_knows_so_neither_is_written(folder):
    code, there, _ = taken(folder, made_of({"job.toml": JOB, "a.toml": WALL, "b.toml": WALL}))
    assert (code, there) == (0, ["job.toml"])


@pytest.mark.parametrize(
    ("named", "inside", "comes"),
    [
        ('"../x.csv"', "x.csv", "x.csv"),
        ('"C:\\\\x\\\\x.csv"', "x.csv", "x.csv"),
        ("'/root/x.csv'", "x.csv", "x.csv"),
        ('"click.py"', "click.py", "click.py.csv"),
        ('"run.bat"', "run.bat", "run.bat.csv"),
        ('".bashrc"', ".bashrc", "bashrc.csv"),
        ('"-o.csv"', "-o.csv", "o.csv"),
        ('"CON.csv"', "CON.csv", "_CON.csv"),
        ('"lpt1 .csv"', "lpt1 .csv", "_lpt1.csv"),
        ('"a.csv:b.csv"', "a.csv:b.csv", "a.csv-b.csv"),
        ('"a;touch b.csv"', "a;touch b.csv", "a;touch b.csv"),
        ('"$(id).csv"', "$(id).csv", "$(id).csv"),
        ('"a\\u202evsc.exe"', "a\u202evsc.exe", "avsc.exe.csv"),
        ('"x.csv. "', "x.csv. ", "x.csv"),
        (f'"{"a" * 300}.csv"', f"{'a' * 300}.csv", f"{'a' * 60}.csv"),
    ],
)  # fmt: skip
def test_a_spreadsheet_lands_beside_the_job_under_a_spreadsheets_name(named, inside, comes, folder):
    (folder / "deep").mkdir()
    code, there, said = taken(folder, made_of({"job.toml": naming(named), inside: SHEET}), "deep/job.toml")
    assert (code, there) == (0, ["deep", *sorted([f"deep/{comes}", "deep/job.toml"])]), said
    assert (folder / "deep" / comes).read_bytes() == SHEET
    assert run("check", "deep/job.toml").code == 0  # the job names it where it now lies


@pytest.mark.parametrize("frames", ['".."', '"a/"', '"y.csv"', '"/"', "'..\\'"])
def test_a_job_whose_spreadsheet_is_not_inside_is_refused(frames, folder):
    code, there, said = taken(folder, made_of({"job.toml": naming(frames), "x.csv": SHEET}))
    assert (code, there) == (2, []) and "which its job names" in said


@pytest.mark.parametrize("name", ["click.py", "run.sh", "job.toml.exe", "job.TOML", "job"])
def test_a_job_is_written_as_toml_whatever_it_was_called(name, folder):
    code, there, _ = taken(folder, made_of({name: JOB}, name))
    assert (code, there) == (0, [name if name == "job.TOML" else f"{name}.toml"])


@pytest.mark.parametrize("name", ["con.toml", "NUL", "nul.tar.toml", "com1", "LPT³.toml"])
def test_no_name_is_one_that_windows_keeps_for_a_device(name, folder):
    code, there, _ = taken(folder, made_of({name: JOB}, name))
    assert (code, there) == (0, [f"_{name}" if name.endswith(".toml") else f"_{name}.toml"])


def test_what_lies_there_stays(folder):
    (folder / "frames.csv").write_text("mine")
    code, there, _ = taken(folder, made_of({"job.toml": WITH_SHEET, "frames.csv": SHEET}))
    assert (code, there) == (2, ["frames.csv"])
    assert (folder / "frames.csv").read_text() == "mine"


def test_a_name_in_capitals_is_the_same_name_to_some_systems(folder):
    inside = {"job.toml": naming('"JOB.csv"'), "JOB.csv": SHEET}
    code, there, said = taken(folder, made_of(inside), "job.csv")
    assert (code, there) == (2, []) and "is the name of a file that comes with the job" in said


ODD = ["it's a job.toml", "a b.toml", "a;touch ran.toml", "$(touch ran).toml", "`touch ran`.toml", "a&touch ran.toml"]


@pytest.mark.parametrize("name", ODD)
def test_the_line_that_is_suggested_can_be_typed_as_it_stands(name, folder):
    code, _, said = taken(folder, made_of({"job.toml": JOB, "hall.toml": WALL}), name)
    assert code == 0
    line = said.splitlines()[-1].split("; next  ")[1]
    assert shlex.split(line) == ["templates-gen", "check", name, "--wall", "hall.toml"]
    # the shell of a system that has one, with another program in the place of ours
    echoed = subprocess.run(["sh", "-c", line.replace("templates-gen", "echo", 1)], capture_output=True, text=True)
    assert echoed.stdout == f"check {name} --wall hall.toml\n" and not list(folder.glob("ran*"))


def test_a_name_like_an_option_is_suggested_as_a_path(folder):
    (folder / "x.pdf").write_bytes(made_of({"job.toml": JOB}))
    assert run("start", "--from", "x.pdf", "--", "-o.toml").out.endswith("check ./-o.toml\n")


@pytest.mark.parametrize(
    ("path", "typed"), [("job.toml", "job.toml"), ("a b.toml", '"a b.toml"'), ("a&b.toml", '"a&b.toml"')]
)
def test_on_windows_a_path_is_quoted_as_its_shell_reads_it(path, typed, monkeypatch):
    name = Path(path)
    monkeypatch.setattr(filenames.os, "name", "nt")
    assert filenames.quoted(name) == typed


BOMB = 500_000_000
"""Bytes that half a megabyte unpacks to."""


@pytest.fixture(scope="module")
def bomb() -> bytes:
    """A deflated stream of `BOMB` zeros."""
    packing = zlib.compressobj(5)
    return b"".join([packing.compress(bytes(10_000_000)) for _ in range(BOMB // 10_000_000)] + [packing.flush()])


def packed(name: str, data: bytes, filters: str | None = "/FlateDecode", job: bytes = JOB) -> bytes:
    """A template whose attachment of this name has a stream as it is given here."""
    writer, out = pypdf.PdfWriter(), io.BytesIO()
    writer.add_blank_page(100, 100)
    writer.metadata = {"/Producer": "templates-gen"}
    for inside, content in {"job.toml": job, name: b""}.items():
        item = writer.add_attachment(inside, content)
        item.associated_file_relationship = NameObject("/Source" if inside == "job.toml" else "/Supplement")
        if inside == name:
            stream = EncodedStreamObject() if filters else DecodedStreamObject()
            stream._data = data
            if filters:
                stream[NameObject("/Filter")] = NameObject(filters)
            stream[NameObject("/Length")] = NumberObject(len(data))
            item.pdf_object["/EF"][NameObject("/F")] = writer._add_object(stream)
    writer.write(out)
    return out.getvalue()


@pytest.mark.parametrize("name", ["job.toml", "frames.csv", "hall.toml"])
def test_what_unpacks_without_end_is_refused_before_it_is_unpacked(name, bomb, folder):
    (folder / "x.pdf").write_bytes(packed(name, bomb, job=WITH_SHEET if name == "frames.csv" else JOB))
    start = time.process_time()
    ran = subprocess.run(
        [*MEASURED, "start", "--from", "x.pdf"], cwd=folder, capture_output=True, text=True, timeout=60
    )
    assert time.process_time() - start < 10
    assert int(ran.stderr.split()[-1]) < 200_000  # kilobytes: 20 MB of it, the program, and the file itself
    if name == "hall.toml":  # no part of a job, since it is no wall
        assert ran.returncode == 0 and "1 attachment left inside" in ran.stderr
    else:
        assert ran.returncode == 2 and "has an attachment of more than 20 MB" in ran.stderr
        assert list(listing(folder)) == ["x.pdf"]


def test_what_is_not_wanted_is_not_unpacked_at_all(bomb):
    inside = Attached(packed("click.py", bomb), "x.pdf")
    assert (inside.job, inside.others) == ("job.toml", ("click.py",))


@pytest.mark.parametrize(
    ("data", "filters", "words"),
    [
        (zlib.compress(JOB)[:-20], "/FlateDecode", "cannot be unpacked"),
        (b"no deflated data", "/FlateDecode", "cannot be unpacked"),
        (b"4142>", "/ASCIIHexDecode", "packed in a way that this program does not use"),
        (b"x" * 20_000_001, None, "more than 20 MB"),
    ],
)
def test_a_stream_that_is_not_as_ours_are_is_refused(data, filters, words, folder):
    code, there, said = taken(folder, packed("job.toml", data, filters))
    assert (code, there) == (2, []) and words in said


def test_thousands_of_attachments_are_refused(folder):
    start = time.process_time()
    code, there, said = taken(folder, made_of({"job.toml": JOB, **{f"{number}.csv": SHEET for number in range(3000)}}))
    assert (code, there) == (2, []) and f"has more than {MOST_FILES} attachments" in said
    assert time.process_time() - start < 20


@pytest.mark.parametrize("word", ["", "fern"])
@pytest.mark.parametrize("revision", [3, 6])
def test_an_encrypted_file_is_refused_as_one(revision, word, folder):
    writer, out = pypdf.PdfWriter(), io.BytesIO()
    writer.append(io.BytesIO(made_of({"job.toml": JOB})))
    writer.encrypt(word, "owner", algorithm="RC4-128")
    writer.write(out)
    newer = out.getvalue().replace(b"/R 3", b"/R 6").replace(b"/V 2", b"/V 5") if revision == 6 else out.getvalue()
    code, there, said = taken(folder, newer)
    assert (code, there) == (2, []) and "is encrypted" in said


def test_a_template_cut_short_anywhere_gives_a_whole_job_or_one_message(folder):
    whole = made_of({"job.toml": WITH_SHEET, "frames.csv": SHEET})
    for length in range(0, len(whole), 97):
        try:
            inside = Attached(whole[:length], "x.pdf")
            assert inside.read("job.toml", 10_000) == WITH_SHEET
        except InputError as error:
            assert str(error).startswith("x.pdf: ")
