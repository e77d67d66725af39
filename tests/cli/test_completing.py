"""What the shell offers when the tab key is pressed."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from click.shell_completion import BashComplete, ShellComplete

from templates_gen.cli import program
from templates_gen.job.paper_sizes import SIZES, paper_size
from tests.made import SAMPLE_NAMES
from tests.running import MINIMAL, run


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """Two jobs here, one in a folder, and what is no job; one recorded printer."""
    (tmp_path / "inner").mkdir()
    for name in ("ferns.toml", "tiles.toml", "notes.txt", "inner/looms.toml"):
        (tmp_path / name).write_text(MINIMAL)
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    return tmp_path


def offered(*words: str) -> list[tuple[str, str]]:
    """What is offered for the last word, with what kind of word it is."""
    complete = ShellComplete(program, {}, "templates-gen", "_TEMPLATES_GEN_COMPLETE")
    return [(item.type, item.value) for item in complete.get_completions(list(words[:-1]), words[-1])]


@pytest.mark.parametrize("command", ["template", "check", "schedule"])
def test_job_files_here_and_a_folder_down(command, folder):
    inner = f"inner{os.sep}looms.toml"
    assert offered(command, "") == [("plain", name) for name in ("ferns.toml", inner, "tiles.toml")]
    assert offered(command, "t") == [("plain", "tiles.toml")]
    assert offered(command, "in") == [("plain", inner)]
    assert offered(command, "inner/") == [("plain", "inner/looms.toml")]
    assert offered(command, "[") == [("dir", "[")]  # the shell then offers folders


def test_several_jobs_each(folder):
    assert offered("template", "ferns.toml", "ti") == [("plain", "tiles.toml")]


def test_printers_that_were_recorded(folder):
    assert offered("template", "--printer", "") == []
    assert run("printer", "record", "study", "--paper", "a4", "--across", "179.4", "--along", "260.4").code == 0
    assert offered("template", "--printer", "s") == offered("printer", "show", "") == [("plain", "study")]
    assert offered("template", "--printer", "x") == []


def test_no_home_offers_no_printer_and_no_fault(folder, monkeypatch):
    monkeypatch.delenv("XDG_CONFIG_HOME")
    monkeypatch.setattr("templates_gen.cli.given.click.get_app_dir", lambda _: "~/nowhere")
    assert offered("template", "--printer", "") == []


def test_papers_in_words_that_the_option_takes(folder):
    for words in (("template", "--paper", ""), ("printer", "page", "--paper", "")):
        names = [value for _, value in offered(*words)]
        assert [paper_size(name, "") for name in names] == list(SIZES.values())
        assert not any(" " in name for name in names)
    assert offered("template", "--paper", "LET") == [("plain", "letter")]


def test_samples(folder):
    assert [value for _, value in offered("start", "--sample", "")] == list(SAMPLE_NAMES)
    assert offered("start", "--sample", "t") == [("plain", "tile-rubbings"), ("plain", "tram-tickets")]


def test_commands_by_themselves(folder):
    assert ("plain", "start") in offered("st")


def test_the_program_answers_a_shell(folder):
    env = {**os.environ, "COMP_WORDS": "templates-gen check t", "COMP_CWORD": "2"}
    code = "import sys; sys.argv = ['templates-gen']; from templates_gen.__main__ import main; main()"
    env["_TEMPLATES_GEN_COMPLETE"] = "bash_complete"
    done = subprocess.run([sys.executable, "-c", code], env=env, capture_output=True, text=True, timeout=30, check=True)
    assert (done.stdout, done.stderr) == ("plain,tiles.toml\n", "")


TERMINAL = (Path(__file__).parents[2] / "samples" / "terminal.md").read_text(encoding="utf-8")


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_the_text_tells_the_line_for_each_shell_and_it_gives_a_script(shell):
    (line,) = [
        line for line in TERMINAL.splitlines() if f"_TEMPLATES_GEN_COMPLETE={shell}_source templates-gen" in line
    ]
    code = "import sys; sys.argv = ['templates-gen']; from templates_gen.__main__ import main; main()"
    env = {**os.environ, "_TEMPLATES_GEN_COMPLETE": f"{shell}_source"}
    done = subprocess.run([sys.executable, "-c", code], env=env, capture_output=True, text=True, timeout=30, check=True)
    assert f"_TEMPLATES_GEN_COMPLETE={shell}_complete" in done.stdout and "templates-gen" in done.stdout
    assert f"# {shell}: ~/." in line


@pytest.mark.skipif(shutil.which("bash") is None, reason="no bash on this machine")
def test_the_script_for_bash_is_one():
    script = BashComplete(program, {}, "templates-gen", "_TEMPLATES_GEN_COMPLETE").source()
    assert subprocess.run(["bash", "-n"], input=script, text=True, timeout=30, check=False).returncode == 0
