"""Several templates at once: all are made, each is told together and in order, and the worst decides the exit code."""

import contextlib
import os
import pty
import re
import signal
import subprocess
import sys
import time

import pytest

from templates_gen.cli import several
from templates_gen.documents.other_ways import HEADING
from tests.cli.test_processes import opened
from tests.running import MINIMAL, WAITING, run, spawn

BROKEN = MINIMAL.replace("width = 300", 'width = "wide"')
STOPPED = MINIMAL.replace("width = 300", "width = 4300")
UNMEASURED = MINIMAL.replace("drop = 60", "")


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """Four jobs, the second and the third of which cannot be printed."""
    for name, text in {"a": UNMEASURED, "b": BROKEN, "c": STOPPED, "d": MINIMAL}.items():
        (tmp_path / f"{name}.toml").write_text(text)
    monkeypatch.chdir(tmp_path)
    return tmp_path


JOBS = ("a.toml", "b.toml", "c.toml", "d.toml")


@pytest.mark.parametrize("cores", [1, 3])
def test_each_job_is_told_together_in_order_and_none_stops_the_others(cores, folder, monkeypatch):
    monkeypatch.setattr(several, "_cores", lambda: cores)
    ran = run("template", *JOBS)
    assert ran.code == 2  # bad input is worse than a stop
    work = "2 sheets of a4 paper, 1 join, 1 cut, about 1 min"
    assert ran.out == f"a.pdf: {work}\nd.pdf: {work}\n"
    assert [line for line in re.sub(r"\n      ", " ", ran.err).splitlines() if line[:2] != "  "] == [
        "a.toml:", "note  No nail yet for frame A: measure the drop, or mark it by hand on the drop scale.", HEADING,
        "b.toml:", "error: b.toml, frame 1 (A), width: found 'wide', expected a length such as"
        """ "14 3/8", "1' 2 3/8\\"", "36.5 cm" or "365 mm\"""",
        "c.toml:",
        "stop  Frame A reaches beyond the wall: 150 mm · 5 7/8 in at the left, 150 mm · 5 7/8 in at the right.",
        "note  Two people lift frame A: one at each side, until every fixing bears it. Nobody stands under it or "
        "climbs with it alone. Without a second person, leave it to a professional. (common practice)",
        "error: c.toml: no template: settle what is marked stop first",
        "d.toml:", HEADING, "2 written, 2 failed",
    ]  # fmt: skip
    assert sorted(path.name for path in folder.glob("*.pdf")) == ["a.pdf", "d.pdf"]


def test_a_stop_is_the_worst_when_nothing_is_broken(folder):
    ran = run("template", "c.toml", "d.toml")
    assert (ran.code, ran.err.splitlines()[-1]) == (1, "1 written, 1 failed")


def test_all_is_well_when_all_are_written(folder):
    ran = run("template", "a.toml", "d.toml")
    assert (ran.code, ran.err.splitlines()[-1]) == (0, "2 written")


def test_the_same_bytes_whether_alone_or_among_others(folder):
    run("template", "a.toml", "d.toml")
    together = (folder / "d.pdf").read_bytes()
    run("template", "d.toml")
    assert (folder / "d.pdf").read_bytes() == together


def test_one_job_pays_for_no_pool(folder):
    code = (
        "import sys\nsys.argv[1:] = ['template', 'd.toml']\nfrom templates_gen.__main__ import main\n"
        "try:\n    main()\nfinally:\n    print(*sys.modules, file=sys.stderr)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, timeout=30, check=True)
    names = set(done.stderr.split())
    assert "templates_gen.drawing.pdf.writing" in names
    assert names & {"concurrent.futures", "multiprocessing", "templates_gen.cli.several"} == set()


def test_a_worker_that_is_killed_is_said_to_be(folder, monkeypatch):
    monkeypatch.setattr(several, "_cores", lambda: 2)
    codes = several.each([folder / "a.toml", folder / "d.toml"], killed)
    assert codes == [2, 2]


def killed(_) -> int:
    os.kill(os.getpid(), signal.SIGKILL)
    return 0


def slow(_) -> int:
    time.sleep(0.3)
    return 0


def test_how_far_the_work_is_is_shown_on_a_terminal_only(folder, monkeypatch, capfd):
    monkeypatch.setattr(several, "_cores", lambda: 2)
    monkeypatch.setattr(several, "SLOW", 0.1)
    several.each(JOBS, slow)
    assert "[" not in capfd.readouterr().err
    monkeypatch.setattr("sys.stderr.isatty", lambda: True, raising=False)
    several.each(JOBS, slow)
    shown = capfd.readouterr().err
    assert "[..............................] 0 of 4" in shown
    # four jobs of 0.3 s, two at a time; the last line is wiped: worked out by hand here
    assert "] 4 of 4" not in shown and re.search(r"\r +\r$", shown)


def test_an_interrupt_ends_all_at_once_and_leaves_no_part_of_a_file(folder):
    os.mkfifo(folder / "slow.toml")  # reading it waits for a writer, so that the interrupt finds a worker at work
    before = sorted(folder.iterdir())
    command = [*WAITING, "template", *["slow.toml"] * 5]
    with subprocess.Popen(command, cwd=folder, stderr=subprocess.PIPE, text=True, start_new_session=True) as process:
        writer = opened(folder / "slow.toml")
        os.killpg(process.pid, signal.SIGINT)  # as a terminal does
        try:
            assert process.wait(timeout=20) == 128 + signal.SIGINT  # as shells report it
        finally:
            with contextlib.suppress(ProcessLookupError):
                os.killpg(process.pid, signal.SIGKILL)
        assert process.stderr.read().split()[-1] == "interrupted"
    os.close(writer)
    assert sorted(folder.iterdir()) == before


def test_colour_reaches_a_terminal_and_no_pipe(folder):
    assert "\x1b" not in spawn("template", "a.toml", "d.toml", cwd=folder).err
    ours, theirs = pty.openpty()
    env = {name: value for name, value in os.environ.items() if name != "NO_COLOR"} | {"TERM": "xterm"}
    command = [sys.executable, "-m", "templates_gen", "template", "a.toml", "d.toml"]
    subprocess.run(command, cwd=folder, env=env, stdout=theirs, stderr=theirs, timeout=30, check=True)
    assert b"\x1b[36m\x1b[1mnote\x1b[0m" in os.read(ours, 4096)
    os.close(ours), os.close(theirs)
