"""A digest of everything the program writes, to hold a rearrangement of its code against: not one byte may differ.

    python -m tests.digest > before.txt      # about two minutes
    … move code about …
    python -m tests.digest > after.txt; diff before.txt after.txt

One line for each result: a hash, and what was asked for.  Every sample on three papers, with every cover, cut and
uncut, in one piece; every other command on every sample; and the help of every command.
"""

from __future__ import annotations

import hashlib
import itertools
import os
import shutil
import tempfile
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from templates_gen.arranging import plan
from templates_gen.arranging.search.task import Pile, Watch
from templates_gen.base.geometry import Rect
from tests.cli.test_commands import COMMANDS
from tests.running import run

SAMPLES = Path(__file__).parent.parent / "samples"
PAPERS = ("letter", "a4", "tabloid")
COVERS = ("all", "marks", "linked", "nails")
TRIMS = ("cut", "none")
RECORDED = ("--paper", "a4", "--across", "179.2 mm", "--along", "249.5 mm")
"""What was measured on some printer's scale page of A4: a little short both ways.  Made up."""


def asked(job: str) -> Iterator[tuple[str, ...]]:
    """The arguments of every run on one job but `options`, which is slow; results go to out, out-first, report."""
    for paper, cover, trim in itertools.product(PAPERS, COVERS, TRIMS):
        yield ("template", job, "--paper", paper, "--cover", cover, "--trim", trim, "--report", "report.json")
    yield ("template", job, "--report", "report.json")
    yield ("template", job, "--one-piece", "--report", "report.json")
    yield ("template", job, "--paper", "roll 24 in")
    yield ("template", job, "--paper", "a4", "--printer", "tested")
    yield ("check", job)
    yield ("check", job, "--report", "report.json")
    for ending in ("pdf", "svg", "png"):
        yield ("proof", job, "--zones", "--sign", "-o", f"out.{ending}")
    for shape in ("text", "csv", "json", "md"):
        yield ("schedule", job, "--format", shape)
    yield ("measure", job, "--csv", "out.csv")
    yield ("labels", job)
    yield ("correct", job, "--form")


def runs() -> Iterator[tuple[str, ...]]:
    """Every run, in order."""
    for command in COMMANDS:
        yield (*command.split(), "--help")
    yield ("schema",)
    yield ("help",)
    yield ("help", "job")
    yield ("printer", "page", "-o", "out.pdf")
    yield ("printer", "record", "tested", *RECORDED)
    yield ("printer", "show", "tested")
    yield ("printer", "list")
    for job in sorted(SAMPLES.glob("*.toml")):
        yield from asked(job.name)
    yield ("correct", "fern-prints.toml", "fern-prints-hung.csv", "--template")
    yield ("correct", "fern-prints.toml", "fern-prints-hung.csv", "--format", "json")
    yield ("options", "fern-prints.toml")
    yield ("options", "tile-rubbings.toml", "--pick", "2", "-o", "out.toml")


def digest(arguments: tuple[str, ...], folder: Path) -> str:
    """The hash of all that one run says and of all files that it makes or changes in the current folder."""
    before = {path: path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file()}
    ran = run(*arguments)
    found = hashlib.sha256(f"{ran.code}\0{ran.out}\0{ran.err}".replace(str(folder), "…").encode())
    for path in sorted(folder.rglob("*")):
        if path.is_file() and path.read_bytes() != before.get(path):
            found.update(str(path.relative_to(folder)).encode() + b"\0" + path.read_bytes())
            if path not in before and "printers" not in path.parts:
                path.unlink()
    return found.hexdigest()[:20]


def search_once() -> None:
    """Keep every arrangement that is found: the program searches in each run anew, for a second or two."""
    found: dict[tuple[Any, ...], Mapping[str, Rect]] = {}
    search = plan.arranged

    def kept(pile: Pile, watch: Watch | None = None) -> Mapping[str, Rect]:
        key = (
            pile.names,
            pile.sizes,
            pile.group,
            pile.room.wall,
            pile.centre,
            *pile.pinned.items(),
            *pile.masses.items(),
        )
        if key not in found:
            found[key] = search(pile, watch)
        return found[key]

    plan.arranged = kept


def main() -> None:
    """Print the digest of every run, in a folder of its own with a copy of the samples."""
    search_once()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name).resolve()
        shutil.copytree(SAMPLES, folder, dirs_exist_ok=True)
        os.environ |= {"COLUMNS": "80", "NO_COLOR": "1", "XDG_CONFIG_HOME": str(folder / "settings")}
        os.environ |= {"HOME": str(folder), "TZ": "UTC"}
        os.chdir(folder)
        for path in folder.rglob("*"):
            os.utime(path, (1_780_000_000, 1_780_000_000))
        for arguments in runs():
            print(digest(arguments, folder), *arguments, flush=True)


if __name__ == "__main__":
    main()
