"""Files where none can be, and streams that are not there: one message, exit 2, nothing left behind."""

import json
import os
import resource
import signal
import subprocess
import sys
import tempfile
from pathlib import Path

import pytest

from templates_gen.base import files
from templates_gen.documents.other_ways import HEADING
from tests.job.test_broken_jobs import one_message
from tests.running import MINIMAL, WAITING, listing, run, spawn

PROGRAM = [sys.executable, "-m", "templates_gen"]

HANGING = "frame,left,right\nA,1548,1548\n"

WRITING = {  # every way to name a result
    "template": ["template", "job.toml", "-o"],
    "first pages": ["template", "job.toml", "--one-piece", "-o"],
    "its report": ["template", "job.toml", "-o", "made.pdf", "--report"],
    "check": ["check", "job.toml", "--report"],
    "schedule": ["schedule", "job.toml", "--report"],
    "form": ["correct", "job.toml", "--form", "-o"],
    "correct": ["correct", "job.toml", "hung.csv", "--report"],
    "scale page": ["printer", "page", "-o"],
    "proof": ["proof", "job.toml", "-o"],
    "options": ["options", "job.toml", "-o"],
    "labels": ["labels", "job.toml", "-o"],
    "measure": ["measure", "job.toml", "-o"],
    "start": ["start", "--sample", "fern-prints"],
}

READING = {  # every way to name what is read
    "template": ["template"],
    "check": ["check"],
    "schedule": ["schedule"],
    "wall": ["template", "job.toml", "--wall"],
    "font": ["template", "job.toml", "--font"],
    "correct": ["correct", "job.toml"],
    "proof": ["proof"],
    "options": ["options"],
    "labels": ["labels"],
    "measure": ["measure"],
    "start": ["start", "new.toml", "--from"],
}


@pytest.fixture
def folder(tmp_path, monkeypatch):
    (tmp_path / "job.toml").write_text(f'{MINIMAL}[[frame]]\nid = "B"\nwidth = 310\nheight = 200\ndrop = 60\n')
    (tmp_path / "hung.csv").write_text(HANGING)
    monkeypatch.chdir(tmp_path)
    return tmp_path


def names(folder) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


@pytest.mark.parametrize("way", WRITING)
@pytest.mark.parametrize("place", ["", ".", "..", "/", "pipe", "to-a-pipe", "loop", "dangling", "x" * 300, "pipe/x"])
def test_a_result_goes_nowhere_but_to_a_file_even_by_force(way, place, folder):
    os.mkfifo(folder / "pipe")
    for link, target in (("to-a-pipe", "pipe"), ("loop", "loop"), ("dangling", "no/such.pdf")):
        (folder / link).symlink_to(target)
    before = names(folder)
    one_message(run(*WRITING[way], place, "--force"))
    assert names(folder) == before and (folder / "pipe").is_fifo() and (folder / "loop").is_symlink()


@pytest.mark.parametrize("way", WRITING)
def test_a_disk_that_is_full_leaves_what_was_there(way, folder):
    before = listing(folder)
    limits = resource.getrlimit(resource.RLIMIT_FSIZE)
    # no file may grow over 20 bytes: the same error as on a full disk but for its words
    resource.setrlimit(resource.RLIMIT_FSIZE, (20, limits[1]))
    try:
        ran = run(*WRITING[way], "result.pdf")
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, limits)
    assert "cannot be written: File too large" in one_message(ran)
    assert listing(folder) == before


def test_what_may_not_be_written_or_read_is_said():
    with tempfile.TemporaryDirectory() as name:  # not below pytest's own folder, which nobody may look into
        folder = Path(name)
        for job, mode in (("job.toml", 0o444), ("mine.toml", 0o000)):
            (folder / job).write_text(MINIMAL)
            (folder / job).chmod(mode)
        folder.chmod(0o555)
        command = [sys.executable, "-c", AS_NOBODY]
        env = os.environ | {"PYTHONPATH": str(Path(__file__).parents[2])}
        done = subprocess.run(command, cwd=folder, env=env, capture_output=True, text=True, check=False, timeout=60)
        assert names(folder) == ["job.toml", "mine.toml"]
    assert (done.returncode, done.stderr) == (
        2,
        "error: out.csv: cannot be written: Permission denied\n  choose a folder that you may write in\n"
        "error: mine.toml: cannot be read: Permission denied\n",
    )


# permissions do not bind root, who becomes nobody; what the program imports is imported before, for it may lie where
# nobody may look (and a schedule needs no fonts, which are read when they are needed)
AS_NOBODY = """
import os, sys, tempfile
from tests.running import run
with tempfile.NamedTemporaryFile(suffix=".csv") as elsewhere:
    assert run("schedule", "job.toml", "-o", elsewhere.name, "--force").code == 0
if os.geteuid() == 0:
    os.setgroups([]), os.setgid(65534), os.setuid(65534)
runs = [run("schedule", "job.toml", "-o", "out.csv"), run("schedule", "mine.toml")]
print(*(ran.err for ran in runs), sep="", end="", file=sys.stderr)
sys.exit(min(ran.code for ran in runs))
"""


@pytest.mark.parametrize("way", READING)
@pytest.mark.parametrize("place", ["", ".", "/", "/dev/zero", "/dev/null", "loop", "x" * 300])
def test_what_is_read_is_a_file_with_an_end(way, place, folder):
    (folder / "loop").symlink_to("loop")
    before = names(folder)
    one_message(run(*READING[way], place))
    assert names(folder) == before


@pytest.mark.parametrize("way", READING)
def test_nobody_is_waited_for_who_might_write_into_a_pipe(way, folder):
    os.mkfifo(folder / "pipe")
    assert "a pipe" in one_message(run(*READING[way], "pipe"))


NAMED = {  # what a job names: how, and what it needs besides
    "image": (MINIMAL + 'image = "pipe"\n', ["proof", "job.toml"]),
    "frames": (MINIMAL.replace("[job]", '[job]\nframes = "pipe"'), ["check", "job.toml"]),
    "measured": (MINIMAL.replace("[job]", '[job]\nmeasured = "pipe"'), ["check", "job.toml"]),
    "font": (MINIMAL + '[paper]\nfont = "pipe"\n', ["template", "job.toml"]),
}


@pytest.mark.parametrize("field", NAMED)
@pytest.mark.parametrize(("place", "kind"), [("pipe", "a pipe"), ("/dev/zero", "a device"), (".", "a folder")])
def test_what_a_job_names_is_a_file(field, place, kind, folder):
    os.mkfifo(folder / "pipe")
    text, command = NAMED[field]
    (folder / "job.toml").write_text(text.replace('"pipe"', f'"{place}"'))
    before = names(folder)
    assert kind in one_message(run(*command))
    assert names(folder) == before


def test_a_pipe_that_comes_in_a_files_place_while_it_is_opened_is_not_waited_for(folder, monkeypatch):
    os.mkfifo(folder / "pipe")
    monkeypatch.setattr(files, "odd_kind", lambda path: "")  # as it looked a moment before
    assert "a pipe" in one_message(run("check", "pipe"))


def test_a_job_on_the_standard_input_out_of_a_file_says_where_its_template_goes(folder):
    with (folder / "job.toml").open() as job:
        command = [*PROGRAM, "template", "/dev/stdin"]
        done = subprocess.run(command, cwd=folder, stdin=job, capture_output=True, text=True, check=False)
    assert done.returncode == 2 and "-o FILE" in done.stderr and names(folder) == ["hung.csv", "job.toml"]


def test_a_link_to_a_job_has_its_template_beside_the_link(folder):
    (folder / "links").mkdir()
    (folder / "links" / "mine.toml").symlink_to(folder / "job.toml")
    assert run("template", "links/mine.toml").code == 0
    assert names(folder / "links") == ["mine.pdf", "mine.toml"]


@pytest.mark.parametrize("arguments", ["check job.toml", "schedule job.toml --format json", "--help", "printer list"])
def test_a_full_disk_behind_stdout_is_said(arguments, folder):
    with open("/dev/full", "w") as full:
        done = subprocess.run(
            [*PROGRAM, *arguments.split()], stdout=full, stderr=subprocess.PIPE, text=True, timeout=30, check=False,
            env=os.environ | {"XDG_CONFIG_HOME": str(folder)},
        )  # fmt: skip
    assert (done.returncode, done.stderr) == (2, "error: the output cannot be written: No space left on device\n")


@pytest.mark.parametrize("closed", ["<&-", ">&-", "2>&-", "<&- >&- 2>&-"])
def test_streams_that_are_closed_are_no_trouble(closed, folder):
    command = f"'{sys.executable}' -m templates_gen template job.toml {closed}"
    done = subprocess.run(["sh", "-c", command], capture_output=True, text=True, timeout=30, check=False)
    assert done.returncode == 0 and done.stderr[:1] == ("" if "2>&-" in closed else HEADING[0])
    assert [line for line in done.stderr.splitlines()[1:] if line[:2] != "  "] == []
    assert (folder / "job.pdf").read_bytes().startswith(b"%PDF-")


@pytest.mark.parametrize(
    ("arguments", "code", "said"),
    [
        ("start new.toml <&-", 2, "error: start: the answers ended at the question “What is the job called?”"),
        ("options job.toml 2>&-", 0, ""),  # it would show how far it is
        ("options job.toml <&- >&- 2>&-", 0, ""),
    ],
)
def test_a_stream_that_is_asked_for_may_be_closed(arguments, code, said, folder):
    frames = "".join(f'[[frame]]\nid = "B{at}"\nwidth = 300\nheight = 200\ndrop = 60\n' for at in range(4))
    (folder / "job.toml").write_text(MINIMAL + frames)
    command = f"'{sys.executable}' -m templates_gen {arguments}"
    done = subprocess.run(["sh", "-c", command], capture_output=True, text=True, timeout=30, check=False)
    assert done.returncode == code and said in done.stderr and "Traceback" not in done.stderr


@pytest.mark.parametrize("closed", [">&-", "2>&-", "2>/dev/full", ">/dev/full 2>&1"])
@pytest.mark.parametrize("arguments", ["check none.toml", "printer show none"])
def test_a_refusal_that_nobody_can_read_still_has_its_exit_code(arguments, closed, folder, monkeypatch):
    monkeypatch.delenv("PYTHONUNBUFFERED", raising=False)  # with it nothing is left to write at the end
    command = f"'{sys.executable}' -m templates_gen {arguments} {closed}"
    done = subprocess.run(["sh", "-c", command], capture_output=True, text=True, timeout=30, check=False)
    assert done.returncode == 2 and "Traceback" not in done.stderr


TITLE = "שלום – “Tile” · 14½ 👍"

SHOWN = {  # encoding: the title's line in it; Latin-1 has the half and the middle dot, ASCII click writes as UTF-8
    "utf-8": TITLE.encode(), "ascii": TITLE.encode(),
    "latin-1": b"\\u05e9\\u05dc\\u05d5\\u05dd - 'Tile' \xb7 14\xbd \\ud83d\\udc4d",
    "cp1252": b"\\u05e9\\u05dc\\u05d5\\u05dd \x96 \x93Tile\x94 \xb7 14\xbd \\ud83d\\udc4d",
}  # fmt: skip


@pytest.mark.parametrize("encoding", SHOWN)
def test_what_a_terminal_cannot_show_is_written_plainer(encoding, folder):
    (folder / "job.toml").write_text(MINIMAL.replace("Tile rubbings", TITLE), encoding="utf-8")
    environment = os.environ | {"PYTHONIOENCODING": encoding, "PYTHONUTF8": "0", "LC_ALL": "C"}
    for form in ("text", "json"):
        command = [*PROGRAM, "schedule", "job.toml", "--format", form]
        done = subprocess.run(command, env=environment, capture_output=True, timeout=30, check=False)
        assert (done.returncode, done.stderr) == (0, b"")
        if form == "text":
            assert done.stdout.splitlines()[0] == SHOWN[encoding]
    told = json.loads(done.stdout.decode("utf-8" if encoding == "ascii" else encoding))["job"]
    assert told in (TITLE, "שלום - 'Tile' · 14½ 👍")


def test_file_names_that_are_no_text_are_files_all_the_same(folder):
    name = b"job\xff.toml"
    with open(name, "w") as file:
        file.write(MINIMAL)
    ran = spawn("template", os.fsdecode(name), cwd=folder)
    assert ran.code == 0 and ran.err.startswith(HEADING) and ran.out.startswith(r"job\udcff.pdf: ")
    assert b"job\xff.pdf" in os.listdir(os.fsencode(folder))
    assert r"none\udcfe.toml: there is no such file" in one_message(spawn("check", "none\udcfe.toml", cwd=folder))


@pytest.mark.parametrize("columns", ["1", "7", "20", "0", "-5", "x", "99999"])
def test_a_terminal_of_any_width_will_do(columns, folder, monkeypatch):
    monkeypatch.setenv("COLUMNS", columns)
    (folder / "job.toml").write_text(MINIMAL.replace("drop = 60", ""))
    ran = run("check", "job.toml")
    assert ran.code == 0 and "".join(ran.out.split()).startswith("noteNonailyetforframeA:")
    assert run("--help").code == 0


@pytest.mark.parametrize("home", ["", "relative", "/no/such/home", "job.toml"])
@pytest.mark.parametrize("command", ["list", "show study", "record study --paper a4 --across 179.4 --along 260.4"])
def test_a_home_that_is_missing_is_said_by_what_keeps_printers(command, home, folder, monkeypatch):
    monkeypatch.delenv("XDG_CONFIG_HOME", raising=False)
    monkeypatch.setenv("HOME", str(folder / home) if home == "job.toml" else home)
    assert "there is no home folder" in one_message(run("printer", *command.split()))
    assert run("template", "job.toml").code == 0  # nothing else needs one


def test_a_config_folder_that_is_a_file_is_said(folder, monkeypatch):
    monkeypatch.setenv("XDG_CONFIG_HOME", str(folder / "job.toml"))
    for command in ("list", "show study", "record study --paper a4 --across 179.4 --along 260.4"):
        assert "Not a directory" in one_message(run("printer", *command.split()))


def test_too_little_memory_is_said(folder):
    done = subprocess.run(
        [sys.executable, "-c", NO_MEMORY, "template", "job.toml"], capture_output=True, text=True, check=False
    )  # fmt: skip
    assert (done.returncode, done.stderr) == (2, "error: not enough memory for a job of this size\n")


NO_MEMORY = """
from templates_gen.documents import making
from templates_gen.__main__ import main

def none(*_):
    raise MemoryError

making.write_pdf = none
main()
"""


def test_a_signal_before_anything_is_done_ends_it_too(folder):
    os.mkfifo(folder / "slow.toml")
    process = subprocess.Popen([*WAITING, "check", "slow.toml"], stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    writer = os.open(folder / "slow.toml", os.O_WRONLY)  # waits until it reads
    process.send_signal(signal.SIGTERM)
    _, told = process.communicate(timeout=30)
    os.close(writer)
    assert (process.returncode, told.split()) == (128 + signal.SIGTERM, [b"interrupted"])


@pytest.mark.parametrize(("command", "name"), [("check", "-wall.toml"), ("start", "-new.toml"), ("desk", "-old.pdf")])
def test_of_a_name_that_begins_with_a_dash_is_said_how_it_is_given(command, name, small):
    (small / "-wall.toml").write_text(MINIMAL)
    ran = run(command, name)
    assert ran.code == 2 and ran.err.endswith(f"A file whose name begins with a dash is given as  ./{name}\n")
    assert run("check", "./-wall.toml").code == 0
    assert "dash" not in run("check", "--zzz", "job.toml").err
