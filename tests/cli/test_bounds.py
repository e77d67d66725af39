"""What pyproject.toml says of versions: a lower bound for everything, and fonts just as they were measured."""

import tomllib
from importlib.metadata import PackageNotFoundError, version

import pytest

from tests.lowest import ROOT, lowest

PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
EXTRAS = {name for extra in PROJECT["optional-dependencies"].values() for name in extra}
EVERY = [*PROJECT["dependencies"], *(name for name in EXTRAS if not name.startswith(f"{PROJECT['name']}["))]


def parts(number: str) -> tuple[int, ...]:
    return tuple(int(part) for part in number.split(".") if part.isdigit())


@pytest.mark.parametrize("held", lowest())
def test_what_is_installed_is_no_lower_than_the_lowest(held):
    name, _, least = held.partition("==")
    try:
        found = version(name)
    except PackageNotFoundError:
        extras = PROJECT["optional-dependencies"]
        apart = [*extras["browser"], *extras["standalone"]]  # without the first, tests are left out that say so
        other = [line for line in EVERY if ";" in line]  # not for this system
        assert any(line.startswith(name) for line in (*other, *apart))
        return
    assert parts(found) >= parts(least)


def test_every_dependency_has_a_lower_bound():
    assert len(lowest()) == len(EVERY)


def test_fonts_are_just_those_that_the_labels_were_placed_by():
    fonts = [name for name in EVERY if name.startswith("fontpkg")]
    assert len(fonts) > 6 and all("==" in name for name in fonts)
    pairs = [name.split("==") for name in fonts]
    assert [parts(version(name)) for name, _ in pairs] == [parts(held) for _, held in pairs]  # 2.012 is 2.12


@pytest.mark.parametrize(
    ("name", "least"),
    [
        ("pypdfium2", (5, 0)),  # before, it cannot take a page out of bytes as the proof's PNG needs it: tried
        ("shapely", (2, 0, 6)),  # before, it does not run with NumPy 2: tried
    ],
)
def test_no_bound_is_lower_than_what_was_tried(name, least):
    held = dict(line.split("==") for line in lowest())
    assert parts(held[name]) >= least
