"""Results on standard output by `-o -`: the bytes of the file and nothing else, or one message."""

import os
import pty
import subprocess
import sys

import pytest

from tests.job.test_broken_jobs import one_message
from tests.running import MINIMAL, listing, run

PROGRAM = [sys.executable, "-m", "templates_gen"]

ONE = {  # what makes one result, and a name that it is written under else
    "template": (["template", "job.toml"], "out.pdf"),
    "proof": (["proof", "job.toml"], "out.pdf"),
    "labels": (["labels", "job.toml"], "out.pdf"),
    "measure": (["measure", "job.toml"], "out.pdf"),
    "schedule": (["schedule", "job.toml"], "out.txt"),
    "schedule as JSON": (["schedule", "job.toml", "--format", "json"], "out.json"),
    "form": (["correct", "job.toml", "--form"], "out.pdf"),
    "scale page": (["printer", "page"], "out.pdf"),
    "an option": (["options", "job.toml", "--pick", "1"], "out.toml"),
}

SEVERAL = {
    "one piece": ["template", "job.toml", "--one-piece", "-o", "-"],
    "two jobs": ["template", "job.toml", "job.toml", "-o", "-"],
    "a report": ["template", "job.toml", "-o", "out.pdf", "--report", "-"],
    "what was found": ["check", "job.toml", "--report", "-"],
    "options": ["options", "job.toml", "-o", "-"],
    "blanks": ["measure", "job.toml", "-o", "-", "--csv", "out.csv"],
    "blanks alone": ["measure", "job.toml", "--csv", "-"],
    "patches": ["correct", "job.toml", "hung.csv", "--template", "-o", "-"],
    "a sample": ["start", "--sample", "fern-prints", "-"],
}


@pytest.fixture
def folder(folder):
    """A folder with a job of three frames and readings of it."""
    more = "".join(f'[[frame]]\nid = "{name}"\nwidth = 310\nheight = 200\ndrop = 60\n' for name in "BC")
    (folder / "job.toml").write_text(MINIMAL + more)
    (folder / "hung.csv").write_text("frame,left,right\nA,1548,1548\n")
    return folder


@pytest.mark.parametrize("name", ONE)
def test_one_result_goes_to_standard_output_byte_for_byte(name, folder):
    command, place = ONE[name]
    before = sorted(listing(folder))
    poured = subprocess.run([*PROGRAM, *command, "-o", "-"], cwd=folder, capture_output=True, check=False)
    assert poured.returncode == 0, poured.stderr
    assert sorted(listing(folder)) == before
    assert run(*command, "-o", place).code == 0
    assert poured.stdout == (folder / place).read_bytes()
    assert b"standard output: " in poured.stderr


@pytest.mark.parametrize("name", SEVERAL)
def test_several_results_are_refused_and_none_is_written(name, folder):
    before = listing(folder)
    ran = run(*SEVERAL[name])
    assert (ran.code, ran.out) == (2, "") and listing(folder) == before
    assert "file" in ran.err and "Traceback" not in ran.err


def test_a_terminal_is_spared(folder):
    ours, theirs = pty.openpty()
    command = [*PROGRAM, "template", "job.toml", "-o", "-"]
    done = subprocess.run(command, cwd=folder, stdout=theirs, stderr=subprocess.PIPE, text=True, check=False)
    os.close(theirs)
    os.close(ours)
    assert done.returncode == 2 and done.stderr.startswith("error: -: a terminal cannot show")


@pytest.mark.skipif(not os.path.exists("/dev/full"), reason="no device here that is always full")
def test_a_full_disk_behind_it_is_said(folder):
    with open("/dev/full", "w") as full:
        command = [*PROGRAM, "template", "job.toml", "-o", "-"]
        done = subprocess.run(command, cwd=folder, stdout=full, stderr=subprocess.PIPE, text=True, check=False)
    assert done.returncode == 2 and "No space left on device" in done.stderr and "Traceback" not in done.stderr


def test_a_stopped_job_pours_nothing(folder):
    (folder / "job.toml").write_text(MINIMAL.replace("width = 300", "width = 4300"))
    command = [*PROGRAM, "template", "job.toml", "-o", "-"]
    done = subprocess.run(command, cwd=folder, capture_output=True, check=False)
    assert (done.returncode, done.stdout) == (1, b"")


def test_a_file_is_never_called_a_dash(folder):
    one_message(run("check", "-"))
    assert not (folder / "-").exists()
