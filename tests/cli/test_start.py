"""The command `start`: typed answers become a job file, and the way from an empty folder to a printed template."""

import fcntl
import os
import pty
import re
import signal
import subprocess
import sys
import termios
import time
import tomllib
from pathlib import Path

import pypdf
import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import OutputError
from templates_gen.checks import find
from templates_gen.cli.interview.certain import found_so_far
from templates_gen.cli.interview.session import answered, begin, job_so_far
from templates_gen.cli.interview.wall_picture import LINES
from templates_gen.job.reading.building import read_job
from tests.running import read_terminal, run, spawn

ANSWERS = """\
Fern prints
Larkfield Village Library
in
12' 6"
8'
drywall
9 1/4

us

no
no
no
furniture
bench
45
?
0
60
28
2


Hart's-tongue
11 1/4
14 1/4
2.6 lb
wire
3 1/8
same

Royal fern
3
<
2 15/16
no

hook
7/8
20 lb

rows
A / B
2 1/2

above
8
linked
letter

"""
"""Two frames above a bench; one question asked about, and one answer taken back and given anew."""


def test_a_strangers_path_from_an_empty_folder_to_a_template(folder):
    ran = run("start", typed=ANSWERS)
    assert (ran.code, ran.out) == (0, "fern-prints.toml: a job; next  templates-gen check fern-prints.toml\n")
    found = run("check", "fern-prints.toml")
    assert found.code == 0 and re.fullmatch(r"found: \d notes?", found.out.splitlines()[-1])
    for command, result in AFTER_CHECK.items():
        ran = run(command, "fern-prints.toml")
        assert (ran.code, ran.out.partition(":")[0]) == (0, result)
        assert (folder / result).exists()
    texts = [page.extract_text() for page in pypdf.PdfReader(folder / "fern-prints.pdf").pages]
    assert "Larkfield Village Library" in texts[0] and any("Royal fern" in text for text in texts)


AFTER_CHECK = {
    "measure": "fern-prints-measuring.pdf",
    "proof": "fern-prints-proof.pdf",
    "template": "fern-prints.pdf",
    "labels": "fern-prints-labels.pdf",
}
"""What a stranger makes of the job then, command by command, and the file that each writes."""


def test_the_job_file_says_what_was_typed(folder):
    run("start", "my.toml", typed=ANSWERS)
    text = (folder / "my.toml").read_text(encoding="utf-8")
    for line in ('width = "12\' 6\\""', 'left = "45"', 'drop = "2 15/16"', 'height = { above = "bench", by = "8" }'):
        assert line in text
    job = read_job(folder / "my.toml")
    assert [frame.drop for frame in job.frames] == [3.125 * 25.4, 2.9375 * 25.4]  # 3 1/8 and 2 15/16 in: by hand here
    assert job.frames[0].fixing.below == 0.875 * 25.4
    remarks = [line for line in text.splitlines() if "#" in line]
    assert len(remarks) > 25 and max(map(len, text.splitlines())) <= 120


def test_what_no_frame_can_measure_is_said_before_the_next_one_is_asked(folder):
    """What is doubted at once is taken when it is typed again, and is then said in the words of `check`."""
    answers = ANSWERS.replace("\n3 1/8\n", "\n31 1/8\n31 1/8\n<\n3 1/8\n").replace("\n2 15/16\n", "\n29\n29\n")
    ran = run("start", typed=answers)
    first, _, later = ran.err.partition("Another frame")
    assert "stop  Frame A is 14 1/4 in · 362 mm high but its drop is 31 1/8 in" in first
    assert "Frame A is" not in later and "stop  Frame B is" in later.partition("What goes into the wall?")[0]


def test_what_is_asked_goes_to_stderr_with_what_was_typed_the_drawing_and_what_check_says(folder):
    ran = run("start", typed=ANSWERS)
    assert "How wide is the wall?\n> 12' 6\"\n" in ran.err
    assert "> ?\n  from the floor to its lower edge\n" in ran.err
    assert max(map(len, ran.err.splitlines())) <= 80
    assert run("check", "fern-prints.toml").out in ran.err
    drawings = ran.err.count(LINES.wall[0] + LINES.wall[2])
    # the wall, with the bench, with A, with both frames, and as they hang; not again where nothing has changed
    assert drawings == 5
    hung = ran.err[ran.err.rindex(LINES.wall[0]) :]
    assert hung.index("┏A┓") < hung.index("┏B┓") < hung.index("bench")


def test_a_wrong_answer_is_explained_and_asked_for_again(folder):
    ran = run("start", typed=ANSWERS.replace("12' 6\"", "12 yd\n0\n12' 6\"", 1))
    assert ran.code == 0
    assert "no    found '12 yd': 'yd' is not a unit here" in ran.err
    assert """such as "12' 6"" or "3.8 m"\n""" in ran.err
    assert ran.err.count("How wide is the wall?") == 3


def test_a_length_for_the_name_of_a_thing_is_an_answer_to_the_next_question(folder):
    ran = run("start", typed=ANSWERS.replace("\nbench\n", "\n45\nbench\n", 1))
    assert ran.code == 0 and "no    found '45', a length, expected what it is called" in ran.err


def test_no_line_of_a_file_is_asked_for_before_there_is_one(folder):
    ran = run("start", typed="Locks\n\ncm\n412\n26.5\n")
    assert "warn  Wall, height: 26.5 cm" in ran.err and "confirmed" not in ran.err


@pytest.mark.parametrize("lines", [0, 1, 20, len(ANSWERS.splitlines()) - 1])
def test_answers_that_end_too_early_write_nothing(lines, folder):
    ran = run("start", "job.toml", typed="".join(ANSWERS.splitlines(keepends=True)[:lines]))
    assert (ran.code, ran.out, list(folder.iterdir())) == (2, "", [])
    assert re.search(r"\nerror: start: the answers ended at the question “.+\?”\n  Nothing was written.\n$", ran.err)


def test_a_file_that_is_there_is_kept_unless_forced(folder):
    (folder / "job.toml").write_text("mine")
    ran = run("start", "job.toml", typed=ANSWERS)
    assert (ran.code, ran.err.count("?")) == (2, 0)  # refused before anything is asked
    ran = run("start", typed=ANSWERS[:-1] + "job.toml\nother.toml\n")
    assert (ran.code, ran.out.partition(":")[0]) == (0, "other.toml")
    assert "no    job.toml: already exists" in ran.err
    assert (folder / "job.toml").read_text() == "mine"
    assert run("start", "job.toml", "--force", typed=ANSWERS).code == 0
    assert (folder / "job.toml").read_text(encoding="utf-8").startswith("# A job for templates-gen")


def test_places_that_cannot_be_found_are_said_and_the_job_is_written_all_the_same(folder):
    """Two frames of 600 × 1100 mm on a wall of 700 × 2250: neither beside nor above each other is there room."""
    wall = ["Friezes", "", "mm", "700", "2250", "", "", "", "", "", "", ""]
    frames = ["", "", "600", "1100", "", "", "200", "same", "", "", "201", "no", "", "", "", "salon", "", "", ""]
    ran = run("start", typed="\n".join([*wall, *frames, "", "", "", ""]))
    assert ran.code == 0 and (folder / "friezes.toml").exists(), ran.err
    assert "stop  no arrangement of these frames with their gaps has room on this wall" in ran.err


def test_going_back_from_the_first_question_stays_there(folder):
    assert run("start", typed="<\nback\n" + ANSWERS).code == 0


def test_a_terminal_without_line_letters_gets_plain_ones(folder):
    done = subprocess.run(
        [sys.executable, "-m", "templates_gen", "start"], input=ANSWERS.encode(), capture_output=True, timeout=30,
        env={**os.environ, "PYTHONIOENCODING": "ascii:backslashreplace", "PYTHONUTF8": "0"}, check=False,
    )  # fmt: skip
    assert done.returncode == 0
    assert b"+A+" in done.stderr and b".----" in done.stderr and b"\\u2501" not in done.stderr


def test_answers_that_are_no_text_are_refused(folder):
    done = subprocess.run(
        [sys.executable, "-m", "templates_gen", "start"], input=b"\xff\xfe\n", capture_output=True, timeout=30,
        env={**os.environ, "PYTHONIOENCODING": "utf-8:strict"}, check=False,
    )  # fmt: skip
    assert done.returncode == 2 and b"Traceback" not in done.stderr
    assert list(folder.iterdir()) == []


def on_terminal(folder, *sent, **environment) -> tuple[int, str]:
    """What `start` ends with and shows on a terminal when these lines are typed."""
    ours, theirs = pty.openpty()
    env = {name: value for name, value in os.environ.items() if name != "NO_COLOR"} | {"TERM": "xterm"} | environment
    env |= {"XDG_CONFIG_HOME": f"{folder}-kept", "HOME": str(folder)}
    command = [sys.executable, "-m", "templates_gen", "start"]
    with subprocess.Popen(
        command, cwd=folder, env=env, stdin=theirs, stdout=theirs, stderr=theirs, start_new_session=True,
        preexec_fn=take_terminal,
    ) as process:  # fmt: skip
        os.close(theirs)
        shown = b""
        for line in sent:
            shown += until(ours, b": " if line in (b"y\n", b"n\n") else b"> ")
            time.sleep(0.05)  # until it reads: an interrupt just before that is lost in it
            os.write(ours, line)
        while part := read_terminal(ours):
            shown += part
        code = process.wait(timeout=30)
    os.close(ours)
    return code, shown.decode()


def take_terminal() -> None:
    """Make standard input the terminal whose keys interrupt this process."""
    fcntl.ioctl(0, termios.TIOCSCTTY, 0)


def until(terminal, end) -> bytes:
    shown = b""
    while not shown.endswith(end) and (part := read_terminal(terminal)):
        shown += part
    return shown


@pytest.mark.parametrize("key", [b"\x03", b"\x04"], ids=["Ctrl-C", "Ctrl-D"])
def test_leaving_at_a_terminal_ends_with_130(key, folder):
    code, shown = on_terminal(folder, b"Fern prints\n", key)
    assert code == 128 + signal.SIGINT  # as shells report it
    assert shown.split()[-1] == "interrupted" and "Traceback" not in shown
    assert list(folder.iterdir()) == []


def test_answers_are_kept_when_one_leaves_and_gone_on_with(folder):
    code, shown = on_terminal(folder, b"Fern prints\n", b"\n", b"in\n", b"\x03")
    assert code == 130 and "Your answers are kept: the same command goes on where you stopped." in shown
    assert "The job file is written at the end." in shown and "Nothing is written" not in shown  # the answers are
    code, shown = on_terminal(folder, b"y\n", b"12'\n", b"\x03")
    assert "Go on where you stopped (3 answers, Fern prints)? [Y/n]: " in shown
    assert "How wide is the wall?" in shown and "What is the job called?" not in shown
    code, shown = on_terminal(folder, b"n\n", b"<\n", b"\x03")
    assert "(4 answers, Fern prints)" in shown and "What is the job called?" in shown
    assert list(folder.iterdir()) == []


def test_nothing_is_said_to_be_kept_where_it_cannot_be(folder):
    Path(f"{folder}-kept").write_text("a file where the folder would be")
    code, shown = on_terminal(folder, b"Fern prints\n", b"\n", b"\x03")
    assert code == 130 and "are kept" not in shown and shown.endswith("interrupted\r\n")


def test_answers_are_kept_when_the_job_cannot_be_written(folder, monkeypatch):
    def full(*_: object) -> None:
        raise OutputError("fern-prints.toml: cannot be written: No space left on device")

    kept = Path(f"{folder}-kept")
    monkeypatch.setattr("templates_gen.cli.asking._kept_in", lambda: kept)
    monkeypatch.setattr("templates_gen.cli.start.write_results", full)
    ran = run("start", typed=ANSWERS)
    assert ran.code == 2 and "Your answers are kept" in ran.err and ran.err.endswith("No space left on device\n")
    assert len(list(kept.glob("started*"))) == 1


def test_what_was_kept_is_taken_away_once_the_job_is_written(folder):
    answers = [f"{line}\n".encode() for line in ANSWERS.splitlines()]
    code, shown = on_terminal(folder, *answers)
    assert code == 0 and (folder / "fern-prints.toml").exists(), shown
    assert not list(Path(f"{folder}-kept").rglob("started*"))


def test_what_is_found_at_the_end_is_no_longer_than_the_window(folder):
    answers = [f"{line}\n".encode() for line in ANSWERS.splitlines()]
    shown = on_terminal(folder, *answers, LINES="12", COLUMNS="80")[1]
    last = shown[shown.rindex("What paper is in the printer?") :]
    assert len(last.partition("Which file")[0].splitlines()) <= 12
    assert re.search(r"and \d+ more: templates-gen check shows them all", last)


def test_questions_are_bold_on_a_terminal_unless_that_is_not_wanted(folder):
    assert "\x1b[1mWho is it for?\x1b[0m" in on_terminal(folder, b"Ferns\n", b"\x03")[1]
    plain = folder / "plain"  # with no answers kept from before
    plain.mkdir()
    assert "\x1b" not in on_terminal(plain, b"Ferns\n", b"\x03", NO_COLOR="1")[1]


def test_an_interrupt_between_pipes_ends_with_130(folder):
    command = [sys.executable, "-m", "templates_gen", "start"]
    with subprocess.Popen(command, stdin=subprocess.PIPE, stderr=subprocess.PIPE, cwd=folder) as process:
        until(process.stderr.fileno(), b"> ")
        time.sleep(0.05)
        process.send_signal(signal.SIGINT)
        assert process.wait(timeout=30) == 128 + signal.SIGINT
        assert process.stderr.read().split() == [b"interrupted"]


def test_it_runs_as_a_process_too(folder):
    assert spawn("start", "--sample", cwd=folder).out.startswith("alphabet-column")


HEAVY = ANSWERS.replace("2.6 lb", "12 lb").replace("20 lb", "10 lb").replace("?\n", "").replace("3\n<\n", "")


def test_what_is_found_is_said_after_the_answer_that_makes_it_certain():
    said: dict[str, list[str]] = {}
    state, told = begin(), ()
    for line in HEAVY.splitlines()[:-1]:
        key = state.question.key
        state = answered(state, line)
        now = found_so_far(state)
        said.setdefault(key, []).extend(finding.rule for finding in now if finding not in told)
        told = now
    # a hook in board bears less than 12 lb, by how it is hung and by what its maker says: before the next question
    assert {key: rules for key, rules in said.items() if rules} == {
        "fixing.kind": ["board-heavy"], "fixing.rating": ["rating-exceeded"],
    }  # fmt: skip
    whole = find(plan_wall(job_so_far(state.tables)))
    assert {finding.rule for finding in whole if finding.level != "note"} == {"board-heavy", "rating-exceeded"}


def test_what_is_found_is_shown_before_the_next_question_and_once(folder):
    shown = run("start", typed=HEAVY).err
    rated = shown.index("What does its maker rate one of them for?")
    warned = shown.index("rated 10.0 lb")
    assert rated < warned < shown.index("How are the frames arranged?")
    assert shown.count("on 1 hook rated") == 2  # there, and in the end among all that was found


def test_a_caution_about_all_frames_is_not_said_again_with_every_one(folder):
    stair = [
        "Stairwell",
        "",
        "mm",
        "5200",
        "5 m",
        "",
        "",
        "",
        "",
        "",
        "yes",
        "right",
        "280",
        "170",
        "600",
        "170",
        "",
        "",
    ]
    frames = ["A", "", "400 x 500", "", "", "70", "same", "B", "", "72", "same", "C", "", "71", "no"]
    shown = run("start", "stair.toml", typed="\n".join([*stair, *frames, *[""] * 10, ""])).err
    assert "Frame A: over stairs." in shown and "Frames A, B, C: over stairs." in shown  # at its answer, and in the end
    assert shown.count("over stairs.") == 2 and (folder / "stair.toml").exists()


@pytest.mark.parametrize("named", [True, False])
def test_a_folder_that_cannot_be_written_in_is_said_before_anything_is_asked(named, folder, monkeypatch):
    def full(path: Path, content: bytes) -> None:
        raise PermissionError(13, "Permission denied", str(path))

    monkeypatch.setattr("templates_gen.base.output._write", full)
    ran = run("start", *(["job.toml"] if named else []), typed=ANSWERS)
    assert (ran.code, ran.out, ran.err.count("?")) == (2, "", 0)
    assert "nothing can be written in this folder: Permission denied" in ran.err


@pytest.mark.parametrize(("over", "centre_on"), [("bench", {"frame": "A", "over": "bench"}), ("", "A")])
def test_a_frame_in_the_middle_is_asked_what_it_hangs_over(over, centre_on, folder):
    ran = run("start", typed=ANSWERS.replace("A / B\n2 1/2\n\n", f"A / B\n2 1/2\nA\n{over}\n"))
    assert ran.code == 0 and "Over what does the middle of frame A go?" in ran.err
    assert tomllib.loads((folder / "fern-prints.toml").read_text(encoding="utf-8"))["group"]["centre_on"] == centre_on
