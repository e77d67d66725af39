"""A job that is there already, taken to a new place with what lies beside it: a sample, or out of a template."""

from __future__ import annotations

import os
from collections.abc import Mapping
from pathlib import Path, PurePosixPath

import templates_gen
from templates_gen.errors import InputError, did_you_mean
from templates_gen.jobfile.building import read_job
from templates_gen.jobfile.reading import decoded, parse_toml, read_bytes
from templates_gen.jobfile.travelling import apart, last_part
from templates_gen.pdf.attached import attached
from templates_gen.starting.plainnames import JOB_ENDING, SHEET_ENDINGS, plain_name, renamed

SCHEMA_LINE = "#:schema "
"""How a TOML file names its schema to an editor: an open convention of TOML language servers (from memory)."""

LARGEST_PDF = 500_000_000
"""Bytes.  A template of 2,000 frames has far fewer; this keeps a wrong file from filling the memory.  No source."""

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
    others = (*_spreadsheets(content, name).values(), *pictures)
    return _together(job, content, {other: read_bytes(folder / other) for other in others})


def _together(job: Path, content: bytes, others: Mapping[str, bytes]) -> Files:
    """A job file and what comes to lie beside it.  Raises InputError where one of these has the job file's name."""
    if job.name in others:
        raise InputError(str(job), "is the name of a file that comes with the job", "give the job file another name")
    return {job: content, **{job.parent / other: others[other] for other in others}}


def _sample(name: str) -> str:
    """The text of a sample, without the schema that lies beside the samples only."""
    path = samples_folder() / f"{name}.toml"
    lines = decoded(read_bytes(path), path.name).splitlines(keepends=True)
    return "".join(line for line in lines if not line.startswith(SCHEMA_LINE))


def from_template(pdf: Path, job: Path | None) -> Files:
    """The job inside a template, as `job` or else under its own name in the current folder, and what else is inside.

    Beside it come to lie its spreadsheets, and the file of the wall that it was moved to, all under plain names.

    Raises InputError for a file that this program did not make or that holds no job.
    """
    files = attached(read_bytes(pdf, LARGEST_PDF, "a template"), pdf.name)
    name = next(iter(files))
    content = files.pop(name)
    target = job or Path(plain_name(name, JOB_ENDING))
    sheets = _held(files, _spreadsheets(content, pdf.name), name, pdf.name)
    others = {held: plain_name(held, SHEET_ENDINGS if held in sheets.values() else JOB_ENDING) for held in files}
    new = dict(zip(others, apart(others.values(), () if job else (target.name,)), strict=True))
    content = renamed(content, {field: new[held] for field, held in sheets.items()}, pdf.name)
    return _together(target, content, {new[held]: files[held] for held in files})


def _held(files: Mapping[str, bytes], wanted: Mapping[str, str], job: str, where: str) -> dict[str, str]:
    """The name under which the spreadsheet of each field travels.  Raises InputError where one is missing."""
    held: dict[str, str] = {}
    for field, path in wanted.items():
        # a file of the name that another one has already travels under a name with a number
        names = [apart([name], [job, *held.values()])[0] for name in (PurePosixPath(path).name, last_part(path))]
        found = next((name for name in names if name in files), None)
        if found is None:
            raise InputError(where, f"has no {last_part(path)!r} inside, which its job names")
        held[field] = found
    return held


def missing_pictures(job: Path) -> list[str]:
    """The pictures that a job file names and that are not there; none of a job that cannot be read."""
    try:
        frames = read_job(job).frames
    except InputError:
        return []
    return list(dict.fromkeys(frame.image for frame in frames if frame.image_missing))


def _spreadsheets(content: bytes, where: str) -> dict[str, str]:
    """The spreadsheets that a job file names, each by its field.  Raises InputError where it is none."""
    table = parse_toml(content, where).get("job", {})
    named = {name: table.get(name) for name in SPREADSHEETS} if isinstance(table, dict) else {}
    return {name: path for name, path in named.items() if isinstance(path, str) and path}
