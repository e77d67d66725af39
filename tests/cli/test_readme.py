"""The README: every command in it runs, and its drawing is what the program draws."""

import io
import json
import re
import shlex
import shutil

import click
import pytest
from PIL import Image

from templates_gen.arranging.plan import plan_wall
from templates_gen.cli import program
from templates_gen.cli.interview.wall_picture import wall_picture
from templates_gen.job.reading.building import read_job
from tests.cli.test_start import ANSWERS
from tests.jobs import SAMPLES
from tests.pictures import pictures
from tests.running import run

README = (SAMPLES.parent / "README.md").read_text(encoding="utf-8")
HAVE = {"FILE": "FILE.svg", "JOB": "JOB.toml", "JOB…": "JOB.toml", "[JOB]": "JOB2.toml", "NAME": "study"}
"""What stands in the README for a word of the reader's own, and a word of ours."""

MORE = {"printer record": ("--paper", "a4", "--across", "179.4", "--along", "260.4")}
"""What a command needs besides, where the table of commands names only the command."""


def commands() -> list[str]:
    """Every command of the program in the README: between ` and ` and in its blocks for a shell."""
    inline = re.findall(r"`templates-gen ([^`]+)`", README)
    blocks = "\n".join(re.findall(r"```sh\n(.*?)```", README, re.DOTALL))
    return list(dict.fromkeys([*inline, *re.findall(r"bin/templates-gen (.+)", blocks)]))


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """A reader's folder: the samples, a job of theirs, readings of it, and a recorded printer."""
    shutil.copytree(SAMPLES, tmp_path / "samples", ignore=shutil.ignore_patterns("*.pdf"))
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    assert run("start", "--sample", "fern-prints", "JOB.toml").code == 0
    for name in ("READINGS.csv", "readings.csv"):
        shutil.copy(SAMPLES / "fern-prints-hung.csv", tmp_path / name)
    assert run("printer", "record", "study", "--paper", "letter", "--across", "178.6", "--along", "241.3").code == 0
    return tmp_path


@pytest.mark.parametrize("line", commands())
def test_every_command_of_the_readme_runs(line, folder, short_searches):
    line, _, target = line.partition(" > ")
    words = [word for given in shlex.split(line) for word in expanded(given, folder)]
    made_before(words, folder)
    more = next((more for name, more in MORE.items() if name == " ".join(words[:2]) and len(words) < 4), ())
    ran = run(*words, *more, typed=ANSWERS)
    assert ran.code == 0, ran
    assert ran.out
    if target:
        assert json.loads(ran.out)


def expanded(word, folder):
    """The word as a shell and the reader give it."""
    return sorted(path.name for path in folder.glob(word)) if "*" in word else [HAVE.get(word, word)]


def made_before(words, folder):
    """What earlier steps of the README have left behind: another wall, the job ferns.toml, and its template."""
    if "hall.toml" in words:
        (folder / "hall.toml").write_text('[wall]\nwidth = "4 m"\nheight = 100\n[group.height]\ncentre = "57 in"\n')
    if "start" in words and "--from" not in words:
        return
    shutil.copy(folder / "JOB.toml", folder / "ferns.toml")
    if "--from" in words:
        assert run("template", "ferns.toml").code == 0


def test_every_command_of_the_program_is_in_the_table():
    rows = re.findall(r"^\| `templates-gen (\w+)", README, re.MULTILINE)
    assert set(rows) == set(program.commands)


@pytest.mark.parametrize("name", program.commands)
def test_every_option_is_in_its_commands_row_or_below_the_table(name):
    lines = README.partition("## Commands")[2].partition("## Printing true")[0].splitlines()
    said = "".join(line for line in lines if not line.startswith("|") or line.startswith(f"| `templates-gen {name} "))
    command = program.get_command(click.Context(program), name)
    parts = getattr(command, "commands", {name: command}).values()
    options = {item.opts[0] for part in parts for item in part.params if item.opts[0].startswith("-")}
    assert [option for option in options if f"`{option}" not in said and f", {option} " not in said] == []
    assert options or name == "schema"


def test_the_drawing_is_what_the_program_draws():
    plan = plan_wall(read_job(SAMPLES / "fern-prints.toml"))
    frames = [(hung.frame.id, hung.rect) for hung in plan.frames]
    drawing = "\n".join(wall_picture(plan.job.wall, frames, plan.job.unit))
    assert f"```\n{drawing}\n```" in README


def test_the_job_of_the_readme_is_one(folder):
    (text,) = re.findall(r"```toml\n(.*?)```", README, re.DOTALL)
    (folder / "readme.toml").write_text(text, encoding="utf-8")
    assert run("check", "readme.toml").code == 0
    assert run("template", "readme.toml").code == 0


def test_the_pictures_of_the_readme_are_those_that_are_made():
    """Each page is found, and each picture has the size of the one in the repository: how letters look may differ."""
    made = pictures("fern-prints")
    assert {f"samples/{name}" for name in made} == set(re.findall(r"\]\((samples/.*?\.png)\)", README))
    for name, content in made.items():
        assert Image.open(io.BytesIO(content)).size == Image.open(SAMPLES / name).size
