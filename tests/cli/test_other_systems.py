"""What other systems do otherwise, patched in here: files held open, drives, line ends, encodings, paths of fonts."""

import ast
import io
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base import output
from templates_gen.checks import find
from templates_gen.cli import measure
from templates_gen.documents.schedule.table import as_csv
from templates_gen.drawing.lettering import _font_path
from templates_gen.job.reading.building import read_job
from templates_gen.printer import store
from tests.importing import FILES, tree
from tests.jobs import SAMPLES
from tests.running import MINIMAL, listing, run

pytestmark = pytest.mark.usefixtures("hardly_searched")

RESULTS = [["template", "job.toml"], ["proof", "job.toml", "-o", "job.svg"], ["proof", "job.toml", "-o", "job.png"],
           ["labels", "job.toml"], ["measure", "job.toml"], ["schedule", "job.toml", "-o", "job.csv"],
           ["template", "job.toml", "-o", "x.pdf", "--report", "job.json"],
           ["correct", "job.toml", "--form"]]  # fmt: skip


@pytest.mark.parametrize("code", [5, 32])
@pytest.mark.parametrize("command", RESULTS)
def test_a_result_that_a_viewer_holds_open_is_a_sentence_and_leaves_nothing(command, code, small, monkeypatch):
    assert run(*command, "--force").code == 0
    before = listing(small)

    def held(_: object, target: Path) -> None:
        error = PermissionError(13, "Permission denied", str(target))
        error.winerror = code  # as Windows has it: access denied, sharing violation
        raise error

    monkeypatch.setattr("templates_gen.base.output.os.replace", held)
    ran = run(*command, "--force")
    assert (ran.code, ran.out) == (2, "") and listing(small) == before
    words = " ".join(ran.err.split())
    assert "another program has it open, or it is write-protected close the file there" in words


@pytest.mark.parametrize("code", [5, 32])
def test_a_file_that_is_held_for_a_moment_is_waited_for(code, small, monkeypatch):
    usual, tries = os.replace, []

    def held_twice(source: object, target: object) -> None:
        tries.append(target)
        if len(tries) < 3:
            error = PermissionError(13, "Permission denied", str(target))
            error.winerror = code
            raise error
        usual(source, target)

    monkeypatch.setattr("templates_gen.base.output.os.replace", held_twice)
    output.write_result(small / "job.toml", b"new", force=True)
    assert (small / "job.toml").read_bytes() == b"new" and len(tries) == 3


def test_on_other_systems_the_reason_is_the_systems_own(small, monkeypatch):
    def denied(*_: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("templates_gen.base.output.os.replace", denied)
    assert run("template", "job.toml").err.endswith(
        "error: job.pdf: cannot be written: Permission denied\n  choose a folder that you may write in\n"
    )


def test_a_file_is_opened_as_bytes_where_a_system_knows_texts(small, monkeypatch):
    seen = []
    usual = os.open

    def opened(path: str, flags: int, *more: int) -> int:
        seen.append(flags)
        return usual(path, flags & ~BINARY, *more)

    monkeypatch.setattr(output.os, "O_BINARY", BINARY, raising=False)
    monkeypatch.setattr(output.os, "open", opened)
    output.write_result(small / "a.csv", b"a\nb\n")
    assert seen and all(flags & BINARY for flags in seen) and (small / "a.csv").read_bytes() == b"a\nb\n"


BINARY = 0x8000
"""O_BINARY of Windows (Microsoft C runtime, fcntl.h; from memory)."""


def test_a_spreadsheet_on_another_drive_is_named_whole(small, monkeypatch):
    def other_drive(*_: object) -> str:
        raise ValueError("path is on mount 'D:', start on mount 'C:'")

    monkeypatch.setattr(measure.os.path, "relpath", other_drive)
    ran = run("measure", "job.toml", "--csv", "blanks.csv")
    assert ran.code == 0 and f'measured = "{(small / "blanks.csv").as_posix()}"' in ran.out


def test_a_home_that_another_shell_sets_is_not_windows_own(monkeypatch, tmp_path):
    monkeypatch.setattr(store.sys, "platform", "win32")
    monkeypatch.setenv("HOME", "no/path/of/its/own")
    monkeypatch.setattr(store.os.path, "expanduser", lambda _: str(tmp_path))
    assert store.profile_folder(tmp_path / "AppData") == tmp_path / "AppData" / "printers"


@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_a_job_file_keeps_its_line_ends(end, folder):
    text = (MINIMAL + '[[frame]]\nid = "B"\nwidth = 310\nheight = 200\ndrop = 60\n# the end\n').replace("\n", end)
    (folder / "job.toml").write_bytes(text.encode())
    assert run("check", "job.toml").code == 0
    assert run("options", "job.toml", "--pick", "1", "-o", "two.toml").code == 0
    kept = (folder / "two.toml").read_bytes()
    assert kept.count(b"\n") == kept.count(end.encode()) > 20 and (end == "\r\n") == (b"\r" in kept)
    assert run("check", "two.toml").code == 0


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_a_spreadsheet_may_have_the_line_ends_of_any_system(end, folder):
    (folder / "list.csv").write_bytes(f"id,width,height,drop{end}B,300,200,60{end}".encode())
    (folder / "job.toml").write_text(MINIMAL.replace("[job]", '[job]\nframes = "list.csv"'))
    assert run("check", "job.toml").code == 0


# the template's own PDF and every text: what else is drawn is written as the PDF is
@pytest.mark.parametrize(
    "command",
    [*(RESULTS[at] for at in (0, 1, 5, 6, 7)), ["start", "--sample", "alphabet-column", "new.toml"]],
)
def test_what_is_written_has_the_same_bytes_whatever_the_locale_says(command, small):
    title = 'title = "Tile rubbings – שלום"'
    (small / "job.toml").write_text(MINIMAL.replace('title = "Tile rubbings"', title), encoding="utf-8")
    assert run(*command).code == 0
    before = listing(small)
    plain = {"LC_ALL": "C", "LANG": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0", "PYTHONIOENCODING": "cp1252"}
    call = [sys.executable, "-m", "templates_gen", *command, "--force"]
    done = subprocess.run(call, cwd=small, env=os.environ | plain, capture_output=True, check=False)
    assert done.returncode == 0, done.stderr
    assert listing(small) == before
    texts = [content for name, content in before.items() if name.endswith((".csv", ".svg", ".json", ".toml"))]
    assert not any(b"\r" in content for content in texts)


def test_no_text_is_opened_in_the_encoding_of_the_system():
    calls = [(module, node) for module in FILES for node in ast.walk(tree(module)) if isinstance(node, ast.Call)]
    opening = [(module, node) for module, node in calls if _name(node.func) in OPENING]
    assert len(opening) > 2
    assert [(module, ast.unparse(node)) for module, node in opening if not _says_how(node)] == []


OPENING = ("open", "read_text", "write_text", "fdopen")


def _says_how(node: ast.Call) -> bool:
    """Bytes, a named encoding, or not a text at all."""
    modes = [arg.value for arg in node.args if isinstance(arg, ast.Constant) and isinstance(arg.value, str)]
    foreign = isinstance(node.func, ast.Attribute) and _name(node.func.value) in ("os", "Image", "webbrowser")
    return foreign or "encoding" in {word.arg for word in node.keywords} or any("b" in mode for mode in modes)


def _name(node: ast.AST) -> str:
    return getattr(node, "attr", getattr(node, "id", ""))


def test_a_table_on_a_stream_of_windows_reads_back_as_it_is(small, monkeypatch):
    bytes_ = io.BytesIO()
    monkeypatch.setattr(sys, "stdout", io.TextIOWrapper(bytes_, encoding="cp1252", newline="\r\n"))
    plan = plan_wall(read_job(small / "job.toml"))
    output.write_result(output.STDOUT, as_csv(plan, find(plan)).encode("utf-8-sig"))
    assert b"\r" not in bytes_.getvalue() and bytes_.getvalue().startswith(b"\xef\xbb\xbf")


@pytest.mark.parametrize("folder_name", ["Schriften für Plakate", "フォント", "a & b"])
def test_a_font_may_lie_anywhere(folder_name, small):
    (small / folder_name).mkdir()
    own = small / folder_name / "meine schrift.ttf"
    shutil.copy(_font_path("fontpkg_pt_sans", "PT_Sans-Web-Bold.ttf"), own)
    assert run("template", "job.toml", "--font", own).code == 0


def test_the_samples_have_the_line_ends_of_the_package(folder):
    for path in SAMPLES.glob("*.toml"):
        assert run("start", "--sample", path.stem, f"{path.stem}-2.toml").code == 0
        assert b"\r" not in (folder / f"{path.stem}-2.toml").read_bytes()
