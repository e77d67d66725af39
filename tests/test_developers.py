"""DEVELOPERS.md: every path, name and command in it is there, and its table of rooms is that of the package."""

import re
from pathlib import Path

import pytest

import templates_gen
from tests.importing import PACKAGE
from tests.test_structure import ROOMS

ROOT = PACKAGE.parent
TEXT = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
SPANS = [*re.findall(r"`([^`\n]+)`", TEXT), *re.findall(r"^    (\S.*)", TEXT, re.MULTILINE)]
"""What stands between ` and `, and the lines of its blocks."""

PATH = re.compile(r"(?:[\w.-]+/)+(?:[\w.-]+)?|[\w-]+\.(?:py|toml|md)")
NAME = re.compile(r"[A-Z][A-Za-z]+|_?[A-Z_]{3,}|[a-z]+_[a-z_]+")
NO_PATHS = {"cli/NAME.py", "samples/NAME.toml", "n/a"}
"""Files that are to be made, and a word that people type."""


def paths() -> set[str]:
    return {found for span in SPANS for found in PATH.findall(span)} - NO_PATHS


def names() -> set[str]:
    """Names of classes, constants and functions, alone between ` and `, or called there."""
    words = {re.sub(r"\(.*| in .*", "", span).split(".")[0] for span in SPANS}
    return {word for word in words if NAME.fullmatch(word)} - {"KeyboardInterrupt"}


@pytest.fixture(scope="module")
def source() -> str:
    files = [*PACKAGE.rglob("*.py"), *(ROOT / "tests").rglob("*.py")]
    return "\n".join(path.read_text(encoding="utf-8") for path in files if path != Path(__file__))


def test_every_path_is_there():
    assert len(paths()) > 80
    missing = {path for path in paths() if not (ROOT / path).exists() and not (PACKAGE / path).exists()}
    assert missing == set(), "DEVELOPERS.md names what is not there: say there what took its place"


def test_every_name_is_in_the_code(source):
    known = set(re.findall(r"\w+", source))
    assert len(names()) > 15
    assert names() - known == set(), "DEVELOPERS.md names what is not in the code"


def test_every_module_that_is_run_is_there():
    modules = re.findall(r"python -m (tests[\w.]+)", TEXT)
    assert len(modules) > 3
    places = {name: ROOT / name.replace(".", "/") for name in modules}
    run = {name: (place.with_name(f"{place.name}.py"), place / "__main__.py") for name, place in places.items()}
    assert [name for name, either in run.items() if not any(path.is_file() for path in either)] == []


def test_the_table_of_rooms_is_that_of_the_package():
    assert re.findall(r"^\| `(\w+)/` \|", TEXT, re.MULTILINE) == list(ROOMS)


def test_the_table_of_rooms_has_every_phase():
    phases = re.findall(r"^    (\w+\(.*\) -> .*)", templates_gen.__doc__ or "", re.MULTILINE)
    table = TEXT.replace("\\|", "|")
    assert len(phases) > 5
    assert [phase for phase in phases if f"| `{phase}` |" not in table] == []


def test_the_changelog_tells_of_what_comes_or_of_this_version():
    newest = re.findall(r"^### (.*)", TEXT.partition("## Changelog")[2].partition("## Words")[0], re.MULTILINE)[0]
    assert newest == "Unreleased" or newest.startswith(f"{templates_gen.__version__} ")
