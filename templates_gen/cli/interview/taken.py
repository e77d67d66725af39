"""A job that is there already, taken to a new place with what lies beside it: a sample."""

from __future__ import annotations

import os
from collections.abc import Mapping
from pathlib import Path

import templates_gen
from templates_gen.base.errors import InputError, did_you_mean
from templates_gen.job.reading.building import read_job
from templates_gen.job.reading.files import decoded, parse_toml, read_bytes

SCHEMA_LINE = "#:schema "
"""How a TOML file names its schema to an editor: an open convention of TOML language servers (from memory)."""

SPREADSHEETS = ("frames", "measured")
"""The fields of [job] that name another file."""

Files = dict[Path, bytes]


def samples_folder() -> Path:
    """Where the samples are: in the installed package, or beside it in a working copy."""
    package = Path(templates_gen.__file__).parent
    inside = package / "samples"
    return inside if inside.is_dir() else package.parent / "samples"


def sample_names() -> list[str]:
    """The names of the samples, sorted."""
    return sorted(path.stem for path in samples_folder().glob("*.toml"))


def sample_lines() -> dict[str, str]:
    """What each sample is, in its own first line, by its name."""
    return {name: _sample(name).partition("\n")[0].lstrip("# ") for name in sample_names()}


def sample(name: str, job: Path) -> Files:
    """The files of a sample, its job file as `job` with its spreadsheets and pictures beside it.  Raises InputError."""
    names = sample_names()
    if name not in names:
        hint = did_you_mean(name, names, f"samples: {', '.join(names)}")
        raise InputError("--sample", f"found {name!r}, expected the name of a sample", hint)
    content, folder = _sample(name).encode(), samples_folder()
    frames = read_job(folder / f"{name}.toml").frames
    pictures = [os.path.relpath(frame.image, folder) for frame in frames if frame.image and not frame.image_missing]
    others = (*spreadsheets(content, name).values(), *pictures)
    return together(job, content, {other: read_bytes(folder / other) for other in others})


def together(job: Path, content: bytes, others: Mapping[str, bytes]) -> Files:
    """A job file and what comes to lie beside it.

    Raises InputError where one of these has the job file's name, capitals or not: there are systems to which both are
    one.
    """
    if job.name.casefold() in {other.casefold() for other in others}:
        raise InputError(str(job), "is the name of a file that comes with the job", "give the job file another name")
    return {job: content, **{job.parent / other: others[other] for other in others}}


def _sample(name: str) -> str:
    """The text of a sample, without the schema that lies beside the samples only."""
    path = samples_folder() / f"{name}.toml"
    lines = decoded(read_bytes(path), path.name).splitlines(keepends=True)
    return "".join(line for line in lines if not line.startswith(SCHEMA_LINE))


def missing_pictures(job: Path) -> list[str]:
    """The pictures that a job file names and that are not there; none of a job that cannot be read."""
    try:
        frames = read_job(job).frames
    except InputError:
        return []
    return list(dict.fromkeys(frame.image for frame in frames if frame.image_missing))


def spreadsheets(content: bytes, where: str) -> dict[str, str]:
    """The spreadsheets that a job file names, each by its field.  Raises InputError where it is none."""
    table = parse_toml(content, where).get("job", {})
    named = {name: table.get(name) for name in SPREADSHEETS} if isinstance(table, dict) else {}
    return {name: path for name, path in named.items() if isinstance(path, str) and path}
