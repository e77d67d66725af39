"""The README and the texts beside the samples: every command in them runs, and every link leads somewhere."""

import io
import json
import re
import shlex
import shutil
from pathlib import Path

import pytest
from PIL import Image

from templates_gen.arranging.plan import plan_wall
from templates_gen.cli.interview.wall_picture import wall_picture
from templates_gen.job.reading.building import read_job
from tests.cli.test_start import ANSWERS
from tests.jobs import SAMPLES
from tests.pictures import DESK, pictures
from tests.running import run

ROOT = SAMPLES.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")
TEXTS = {path.relative_to(ROOT): path.read_text(encoding="utf-8") for path in sorted(SAMPLES.glob("*.md"))}
EVERY = {Path("README.md"): README, **TEXTS}
HAVE = {"FILE": "FILE.svg", "NAME": "study"}
"""What stands in the texts for a word of the reader's own, and a word of ours."""

LONGEST = 9000
"""Bytes of the README: what someone reads who wants paper today.  Our own rule."""


def commands() -> list[str]:
    """Every command of the program in the texts: between ` and ` and in their blocks for a shell."""
    text = "\n".join(EVERY.values())
    inline = [" ".join(found.split()) for found in re.findall(r"`templates-gen ([^`]+)`", text)]
    blocks = "\n".join(re.findall(r"```(?:sh|powershell)\n(.*?)```", text, re.DOTALL))
    return list(dict.fromkeys([*inline, *re.findall(r"[\\/]templates-gen (.+)", blocks)]))


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """A reader's folder: the samples, a job of theirs, another wall, a recorded printer."""
    shutil.copytree(SAMPLES, tmp_path / "samples", ignore=shutil.ignore_patterns("*.pdf"))
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    assert run("start", "--sample", "fern-prints", "JOB.toml").code == 0
    (tmp_path / "hall.toml").write_text('[wall]\nwidth = "4 m"\nheight = 100\n[group.height]\ncentre = "57 in"\n')
    assert run("printer", "record", "study", "--paper", "letter", "--across", "178.6", "--along", "241.3").code == 0
    return tmp_path


@pytest.mark.parametrize("line", commands())
def test_every_command_of_the_texts_runs(line, folder, hardly_searched):
    line, _, target = line.partition(" > ")
    words = [word for given in shlex.split(line.replace("\\", "/")) for word in expanded(given, folder)]
    made_before(words, folder)
    ran = run(*words, typed=ANSWERS)
    assert ran.code == 0, ran
    assert ran.out
    if target:
        assert json.loads(ran.out)


def expanded(word, folder):
    """The word as a shell and the reader give it."""
    shown = {path.name for path in folder.glob(word)} - {"hall.toml"} if "*" in word else set()
    return sorted(shown) or [HAVE.get(word, word)]


def made_before(words, folder):
    """What earlier steps have left behind: the job ferns.toml, its template, readings that were filled in."""
    if "start" in words and "--from" not in words:
        return
    shutil.copy(folder / "JOB.toml", folder / "ferns.toml")
    if "--form" not in words:
        shutil.copy(SAMPLES / "fern-prints-hung.csv", folder / "readings.csv")
    if "--from" in words:
        assert run("template", "ferns.toml").code == 0
    if "--since" in words:
        assert run("template", "JOB.toml").code == 0


def test_the_commands_for_windows_are_those_for_other_systems():
    unix, windows = (re.findall(rf"```{shell}\n(.*?)\n```", README, re.DOTALL)[0] for shell in ("sh", "powershell"))
    assert windows.count(".venv\\Scripts\\") == unix.count(".venv/bin/") == 2
    same = windows.replace("\\", "/").replace("Scripts", "bin").replace(";", " &&")
    assert same.replace("py -m", "python3 -m") == unix


def test_the_readme_is_short():
    assert 4000 < len(README.encode()) < LONGEST


@pytest.mark.parametrize("place", [*EVERY, Path("DEVELOPERS.md")], ids=str)
def test_every_link_leads_somewhere(place):
    text = (ROOT / place).read_text(encoding="utf-8")
    for target in re.findall(r"\]\(([^)]+)\)", text):
        name, _, heading = target.partition("#")
        other = (ROOT / place).parent / name if name else ROOT / place
        assert other.exists(), target
        headings = re.findall(r"^#+ (.*)", other.read_text(encoding="utf-8"), re.MULTILINE) if heading else []
        assert not heading or heading in [line.lower().replace(" ", "-") for line in headings], target


def test_the_readme_leads_to_every_text():
    linked = set(re.findall(r"\]\((samples/[\w-]+\.md)\)", README))
    assert linked == {place.as_posix() for place in TEXTS}


@pytest.mark.parametrize("place", TEXTS, ids=str)
def test_help_shows_a_text_without_its_pictures(place):
    shown, whole = run("help", place.stem).out.splitlines(), TEXTS[place].splitlines()
    assert [line for line in shown if line] == [line for line in whole if line and not line.startswith("![")]
    assert f"  templates-gen help {place.stem}" in run("help").out.splitlines()


@pytest.mark.parametrize("place", TEXTS, ids=str)
def test_a_text_fits_a_terminal(place):
    """But for commands and pictures, which stay in one line."""
    long = "![", "`templates-gen ", "TEMPLATES_GEN"
    lines = [line for line in TEXTS[place].splitlines() if not any(sign in line for sign in long)]
    assert max(map(len, lines)) <= 80


def test_the_drawing_is_what_the_program_draws():
    plan = plan_wall(read_job(SAMPLES / "fern-prints.toml"))
    frames = [(hung.frame.id, hung.rect) for hung in plan.frames]
    drawing = "\n".join(wall_picture(plan.job.wall, frames, plan.job.unit))
    assert f"```\n{drawing}\n```" in "".join(TEXTS.values())


@pytest.mark.parametrize("place", [place for place, text in EVERY.items() if "```toml" in text], ids=str)
def test_the_job_of_a_text_is_one(place, folder):
    (text,) = re.findall(r"```toml\n(.*?)```", EVERY[place], re.DOTALL)
    (folder / "readme.toml").write_text(text, encoding="utf-8")
    assert run("check", "readme.toml").code == 0
    assert run("template", "readme.toml").code == 0


def test_the_pictures_of_the_texts_are_those_that_are_made():
    """Each page is found, and each picture has the size of the one in the repository: how letters look may differ."""
    made = pictures("fern-prints")
    shown = re.findall(r"\]\((?:samples/)?([\w-]+\.png)\)", "".join(EVERY.values()))
    desk = {f"fern-prints-{name}.png": size[:2] for name, size in DESK.items()}  # a browser makes them, by hand
    assert sorted([*made, *desk]) == sorted(shown)
    assert {name: Image.open(SAMPLES / name).size for name in desk} == desk
    for name, content in made.items():
        assert Image.open(io.BytesIO(content)).size == Image.open(SAMPLES / name).size
