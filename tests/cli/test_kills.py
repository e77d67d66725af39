"""Ended at any moment, and two at once: the result is the old file or the new one, whole, and nothing else is left."""

import os
import signal
import subprocess
import sys
import time

import pytest

from templates_gen.base import output
from tests.killing import Killing


@pytest.fixture(scope="module")
def killing(tmp_path_factory):
    return Killing(tmp_path_factory.mktemp("kills"))


def test_a_run_killed_at_any_moment_leaves_the_old_file_or_the_new_one_whole(killing):
    counts = killing.kill(6, seed=1, early=0.6)
    assert counts["exit -9"] and counts["tracebacks"] == 0
    # what a kill may leave is recognisable, and disturbs no later run
    assert all(path.name.startswith(".templates-gen-") and path.suffix == ".part" for path in killing.parts())


STEPS = """
import os, signal, sys
from templates_gen.__main__ import main

step, seen = int(sys.argv.pop(1)), 0

def watch(event, details):
    global seen
    if event in ("open", "os.rename", "os.remove", "os.listdir", "os.scandir") and "write_results" in stack():
        seen += 1
        if seen == step:
            os.kill(os.getpid(), signal.SIGKILL)

def stack():
    frame, names = sys._getframe(2), []
    while frame:
        names.append(frame.f_code.co_name)
        frame = frame.f_back
    return names

sys.addaudithook(watch)
main()
"""


def test_a_run_killed_at_each_step_of_writing_leaves_the_old_file_or_the_new_one_whole(killing):
    ends = []
    for step in range(1, 20):
        old = killing.check()
        job = "one.toml" if old == "two.toml" else "two.toml"
        ended = run_to_step(killing, step, job)
        assert killing.check() in (old, job)
        ends.append(ended)
        if ended == 0:
            break
    assert ends[-1] == 0 and set(ends[:-1]) == {-signal.SIGKILL} and len(ends) >= 4


def run_to_step(killing, step, job) -> int:
    command = [sys.executable, "-c", STEPS, str(step), "template", job, "-o", killing.place.name]
    return subprocess.run(command, cwd=killing.folder, capture_output=True, timeout=60, check=False).returncode


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
def test_a_signal_ends_it_without_a_traceback_and_it_clears_away_what_it_wrote(number, killing):
    before = killing.parts()
    counts = killing.kill(2, seed=number, number=number, early=0.4)
    assert counts["tracebacks"] == 0
    # 128 + the signal as shells report it, by the signal once the work is done, or done before it came; and by SIGINT,
    # as Python ends by itself when a text that it was executing was interrupted
    ends = {f"exit {128 + number}", f"exit {-number}", f"exit {-signal.SIGINT}", "exit 0"}
    assert {name for name in counts if name.startswith("exit")} <= ends
    assert killing.parts() == before


def test_runs_at_once_on_one_output_make_one_whole_file(killing):
    before = killing.parts()
    for _ in range(2):
        runs = [killing.begun(job) for job in ("one.toml", "two.toml", "one.toml")]
        told = [run.communicate(timeout=60) for run in runs]
        assert [run.returncode for run in runs] == [0, 0, 0], told
        killing.check()
    assert killing.parts() == before


def test_what_a_killed_run_left_is_cleared_by_a_later_one_but_not_what_another_is_writing(tmp_path):
    left, fresh, other = (tmp_path / name for name in (".templates-gen-1.part", ".templates-gen-2.part", ".x.part"))
    for path in (left, fresh, other):
        path.write_bytes(b"half")
    long_ago = time.time() - 2 * output.LEFT_BEHIND
    for path in (left, other):
        os.utime(path, (long_ago, long_ago))
    output.write_result(tmp_path / "a.json", b"{}")
    assert sorted(path.name for path in tmp_path.iterdir()) == [".templates-gen-2.part", ".x.part", "a.json"]


def test_a_run_under_nohup_goes_on_when_the_terminal_has_gone(killing):
    # nohup has SIGHUP ignored, and so it stays
    program = " ".join(killing.command("one.toml"))
    command = f"trap '' HUP; {program} & sleep {killing.seconds / 2}; kill -HUP $!; wait $!"
    done = subprocess.run(["sh", "-c", command], cwd=killing.folder, capture_output=True, timeout=60, check=False)
    assert done.returncode == 0, done.stderr
