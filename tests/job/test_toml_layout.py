"""TOML as editors lay it out: what lies in samples/ and what the program writes is left as it is, and is valid."""

from __future__ import annotations

import datetime
import json
import re
import shutil
import subprocess
import sys
import tomllib
from functools import cache, partial
from pathlib import Path
from random import Random

import jsonschema
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen.arranging.plan import placed
from templates_gen.base.errors import TemplatesError
from templates_gen.base.geometry import Rect
from templates_gen.base.toml import WIDTH, field
from templates_gen.cli.interview.job_text import job_text
from templates_gen.cli.interview.schema import job_schema
from templates_gen.cli.interview.session import answered, begin
from templates_gen.documents.options.keeping import kept
from tests.cli.test_interview import any_answer
from tests.jobs import SAMPLES, frame, group, job
from tests.made import SAMPLE_NAMES

VALIDATOR = jsonschema.Draft202012Validator(job_schema())
TAPLO = shutil.which("taplo", path=str(Path(sys.executable).parent)) or shutil.which("taplo")
"""A formatter and linter of TOML that editors use; the project's own rules below hold without it, too."""

TEXTS = ("Ferns", "α β", "x" * 40, 'a "q" b', "#no", "日本語のとても長い題名")


def answers(seed: int, count: int) -> str:
    """The job file of an interview by chance, with so many frames at least."""
    random, state = Random(seed), begin()
    while (question := state.question) is not None:
        more = question.key == "more" and len(state.tables["frame"]) < count
        try:
            state = answered(state, "same" if more else any_answer(state, random, TEXTS))
        except TemplatesError:
            continue
    return job_text(state.tables)


def picked(count: int) -> str:
    """A job file with an arrangement that was picked."""
    names = [f"no. {number}" for number in range(count)]
    asked = job(*map(frame, names), group=group((tuple(names),)), unit="in")
    rects = {name: Rect.sized(500.123 * at, 1000.7, 400, 500) for at, name in enumerate(names)}
    text = '[job]\ntitle = "x"\n[wall]\nwidth = "9 m"\nheight = "3 m"\n'
    text += "".join(f'\n[[frame]]\nid = "{name}"\nwidth = 400\nheight = 500\n' for name in names)
    return kept(text.replace("\n[", "\n\n[").replace("\n\n\n", "\n\n"), placed(asked, rects), "option 2 of x.toml")


WRITTEN = {
    **{f"sample {name}": partial((SAMPLES / f"{name}.toml").read_text, encoding="utf-8") for name in SAMPLE_NAMES},
    **{f"answers {seed}": partial(answers, seed, count) for seed, count in enumerate((1, 2, 5, 30, 3, 4))},
    "picked": partial(picked, 12),
}


@cache
def written(name: str) -> str:
    return WRITTEN[name]()


@pytest.mark.parametrize("name", WRITTEN)
def test_it_is_valid_and_laid_out(name):
    """A field a line with one blank beside its =, comments above it, lists broken that are too long for a line."""
    text = written(name)
    tables = json.loads(json.dumps(tomllib.loads(text), default=datetime.date.isoformat))
    VALIDATOR.validate(tables)
    lines = text.splitlines()
    assert text == "\n".join(lines) + "\n"
    assert [line for line in lines if line != line.rstrip() or "\t" in line] == []
    assert "\n\n\n" not in text and not text.startswith("\n") and not text.endswith("\n\n")
    assert [line for line in lines if behind(line)] == []
    assert [line for line in lines if re.match(r"[^#\[\s][^=]*=", line) and not re.match(r"\S.* = \S", line)] == []
    assert [line for line in lines if " = [" in line and not line.startswith("#") and len(line) > WIDTH] == []


def behind(line: str) -> bool:
    """True for a comment behind a value: some editors put one blank before it, others two, others line them up."""
    return not line.startswith("#") and "#" in re.sub(r'"(?:\\.|[^"\\])*"' + r"|'[^']*'", "", line)


@pytest.mark.skipif(TAPLO is None, reason="taplo is not installed, and not to be had for every machine")
def test_an_editors_formatter_and_linter_leave_it_as_it_is(tmp_path):
    shutil.copy(SAMPLES / "job.schema.json", tmp_path)
    for number, text in enumerate(map(written, WRITTEN)):
        named = text if text.startswith("#:schema") else f"#:schema ./job.schema.json\n\n{text}"
        (tmp_path / f"{number}.toml").write_text(named, encoding="utf-8")
    files = sorted(path.name for path in tmp_path.glob("*.toml"))
    for command in (["fmt", "--check", "--diff"], ["lint"]):
        ran = subprocess.run([TAPLO or "", *command, *files], cwd=tmp_path, capture_output=True, text=True, check=False)
        assert ran.returncode == 0, ran.stdout + ran.stderr
    (tmp_path / "0.toml").write_text(f"{written('picked')}[odd]\n".replace(" = ", "=", 1), encoding="utf-8")
    assert subprocess.run([TAPLO or "", "fmt", "--check", "0.toml"], cwd=tmp_path, capture_output=True).returncode != 0


values = st.recursive(st.text(max_size=30), lambda inner: st.lists(inner, max_size=5), max_leaves=20)


@settings(max_examples=60)
@given(values)
def test_a_field_of_any_length_reads_back(value):
    lines = field("rows", value)
    assert tomllib.loads("\n".join(lines))["rows"] == value
    assert len(lines) == 1 or all(len(line) <= WIDTH or line.count('"') >= 2 for line in lines)
