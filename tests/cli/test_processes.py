"""The program as a process of its own: from a terminal, into a pipe, and interrupted."""

import os
import pty
import re
import select
import signal
import subprocess
import sys
import time

import pytest

from tests.running import MINIMAL, WAITING, read_terminal, spawn

PROGRAM = [sys.executable, "-m", "templates_gen"]


@pytest.fixture
def folder(tmp_path):
    """A folder with one small job file that has a finding."""
    (tmp_path / "job.toml").write_text(MINIMAL.replace("drop = 60", ""))
    return tmp_path


def on_terminal(folder, *arguments, **environment) -> str:
    """What the program shows on a terminal: both its streams, as they come."""
    ours, theirs = pty.openpty()
    env = {name: value for name, value in os.environ.items() if name != "NO_COLOR"} | {"TERM": "xterm"} | environment
    with subprocess.Popen([*PROGRAM, *arguments], cwd=folder, env=env, stdout=theirs, stderr=theirs) as process:
        os.close(theirs)
        shown = b"".join(iter(lambda: read_terminal(ours), b""))
        process.wait(timeout=30)
    os.close(ours)
    return shown.decode()


def test_it_runs_as_a_module(folder):
    ran = spawn("template", "job.toml", cwd=folder)
    assert ran.code == 0
    assert re.fullmatch(r"job\.pdf: \d+ sheets? of a4 paper, .*about \d+ min\n", ran.out)
    assert ran.err.startswith("note  No nail yet for frame A")


def test_levels_are_coloured_on_a_terminal_and_nowhere_else(folder):
    assert "\x1b[" in on_terminal(folder, "check", "job.toml")
    assert "\x1b" not in spawn("check", "job.toml", cwd=folder).out


@pytest.mark.parametrize("command", ["check", "template"])
def test_no_color_is_honoured_on_a_terminal(command, folder):
    shown = on_terminal(folder, command, "job.toml", NO_COLOR="1")
    assert "No nail yet" in shown
    assert "\x1b" not in shown


def test_an_empty_no_color_is_as_good_as_none(folder):
    # "present and not an empty string": the NO_COLOR convention, from memory
    assert "\x1b[" in on_terminal(folder, "check", "job.toml", NO_COLOR="")


@pytest.mark.parametrize("arguments", ["schedule job.toml", "check job.toml", "--help"])
def test_a_reader_that_goes_away_is_nobodys_fault(arguments, folder):
    gone, pipe = os.pipe()
    os.close(gone)
    command = [*PROGRAM, *arguments.split()]
    done = subprocess.run(command, cwd=folder, stdout=pipe, stderr=subprocess.PIPE, timeout=30, check=False)
    os.close(pipe)
    assert done.stderr == b""
    # not 1, which is a stopping finding; 128 + SIGPIPE is what shells report of a program that does not catch it
    assert done.returncode in (0, 128 + signal.SIGPIPE)


def test_only_the_first_line_may_be_wanted(folder):
    frames = "".join(f'[[frame]]\nid = "B{at}"\nwidth = 10\nheight = 10\ndrop = 2\n' for at in range(2000))
    (folder / "job.toml").write_text(MINIMAL.replace("width = 4000", 'width = "199 m"') + frames)
    command = f"'{sys.executable}' -m templates_gen schedule job.toml | head -1"
    done = subprocess.run(command, shell=True, cwd=folder, capture_output=True, text=True, timeout=30, check=False)
    assert (done.stdout, done.stderr) == ("Tile rubbings\n", "")


def test_names_are_written_whatever_the_terminal_can_show(folder):
    (folder / "job.toml").write_text(MINIMAL.replace('id = "A"', 'id = "α"'), encoding="utf-8")
    ran = spawn("schedule", "job.toml", cwd=folder, env={"PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0"})
    assert (ran.code, ran.err) == (0, "")


def test_an_interrupt_ends_it_with_130_and_without_a_traceback(folder):
    os.mkfifo(folder / "slow.toml")  # reading it waits for a writer, so that the interrupt finds it at work
    process = subprocess.Popen(
        [*WAITING, "check", "slow.toml"], cwd=folder, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    )
    writer = opened(folder / "slow.toml")
    process.send_signal(signal.SIGINT)
    time.sleep(0.05)
    os.close(writer)
    out, err = process.communicate(timeout=30)
    assert (process.returncode, out) == (130, "")  # 128 + SIGINT, as shells report it
    assert err.split() == ["interrupted"]


def opened(path) -> int:
    """The writing end of a pipe, once somebody reads it."""
    for _ in range(1000):
        try:
            return os.open(path, os.O_WRONLY | os.O_NONBLOCK)
        except OSError:
            select.select([], [], [], 0.02)
    raise AssertionError("nobody reads it")
