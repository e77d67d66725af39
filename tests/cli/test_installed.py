"""The wheel: everything the program needs is in it, the samples among it."""

import re
import shutil
import subprocess
import sys
import tomllib
import zipfile
from pathlib import Path

import pytest

import templates_gen
from tests.jobs import SAMPLES
from tests.made import SAMPLE_NAMES

ROOT = SAMPLES.parent


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory):
    """The wheel of a copy of this tree, unpacked as an installer does."""
    tree, out = tmp_path_factory.mktemp("tree"), tmp_path_factory.mktemp("out")
    for name in ("pyproject.toml", "README.md", "LICENSE"):
        shutil.copy(ROOT / name, tree)
    for name in ("templates_gen", "samples"):
        shutil.copytree(ROOT / name, tree / name, ignore=shutil.ignore_patterns("__pycache__", "*.pdf"))
    build = f"from setuptools.build_meta import build_wheel; build_wheel({str(out)!r})"
    subprocess.run([sys.executable, "-c", build], cwd=tree, capture_output=True, timeout=120, check=True)
    (wheel,) = out.glob("*.whl")
    zipfile.ZipFile(wheel).extractall(out / "site")
    return out / "site"


def ran(unpacked: Path, folder: Path, *arguments: str) -> str:
    """What the installed program says in that folder."""
    code = f"import sys; sys.path.insert(0, {str(unpacked)!r}); from templates_gen.__main__ import main; main()"
    command = [sys.executable, "-P", "-c", code, *arguments]
    done = subprocess.run(command, cwd=folder, env={"PATH": ""}, capture_output=True, text=True, timeout=60, check=True)
    return done.stdout


def test_the_wheel_has_every_file_of_the_package(unpacked):
    ours = files(ROOT / "templates_gen")
    assert Path("documents/instructions/sketches.txt") in ours
    assert {path for path in files(unpacked / "templates_gen") if path.parts[0] != "samples"} == ours


def files(package: Path) -> set[Path]:
    """What lies in a package and its folders, but what Python puts there itself."""
    found = {path.relative_to(package) for path in package.rglob("*") if path.is_file()}
    return {path for path in found if "__pycache__" not in path.parts}


def test_the_wheel_has_the_version_that_the_package_says(unpacked):
    (about,) = unpacked.glob("*.dist-info/METADATA")
    assert f"Version: {templates_gen.__version__}" in about.read_text(encoding="utf-8").splitlines()


def test_the_wheel_tells_type_checkers_that_it_has_types(unpacked):
    assert (unpacked / "templates_gen" / "py.typed").is_file()  # PEP 561, "Packaging type information"


def test_the_wheel_has_every_file_of_the_samples(unpacked):
    names = {path.relative_to(ROOT / "samples") for path in (ROOT / "samples").rglob("*") if path.suffix != ".pdf"}
    samples = unpacked / "templates_gen" / "samples"
    assert {path.relative_to(samples) for path in samples.rglob("*")} == names


def test_every_folder_of_the_package_is_listed():
    listed = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["tool"]["setuptools"]["packages"]
    folders = {".".join(path.parent.relative_to(ROOT).parts) for path in (ROOT / "templates_gen").rglob("*.py")}
    assert set(listed) == folders | {"templates_gen.samples"}


def test_the_installed_program_has_the_samples(unpacked, tmp_path):
    where = "from templates_gen.cli.interview.taken import samples_folder; print(samples_folder())"
    code = f"import sys; sys.path.insert(0, {str(unpacked)!r}); {where}"
    folder = subprocess.run(
        [sys.executable, "-P", "-c", code], env={"PATH": ""}, capture_output=True, text=True, check=True
    )
    assert folder.stdout.strip() == str(unpacked / "templates_gen" / "samples")
    reference = unpacked / "templates_gen" / "samples" / "job-reference.txt"
    assert ran(unpacked, tmp_path, "help", "job") == reference.read_text(encoding="utf-8")
    for name in SAMPLE_NAMES:
        assert ran(unpacked, tmp_path, "start", "--sample", name).splitlines()[-1].startswith(f"{name}.toml: a job")
    assert (tmp_path / "tile-rubbings.csv").read_bytes() == (SAMPLES / "tile-rubbings.csv").read_bytes()
    assert (tmp_path / "images" / "fern-a.png").read_bytes() == (SAMPLES / "images" / "fern-a.png").read_bytes()
    said = ran(unpacked, tmp_path, "template", "tile-rubbings.toml")
    assert re.search(r"tile-rubbings\.pdf: \d+ sheets of a4 paper", said)  # how many is for other tests
