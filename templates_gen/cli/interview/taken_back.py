"""A job out of a printed template, which anybody may have made: nothing is written but what a job consists of."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path, PurePosixPath
from typing import NamedTuple

from templates_gen.base.errors import InputError
from templates_gen.cli.interview.plain_names import JOB_ENDING, SHEET_ENDINGS, plain_name, renamed
from templates_gen.cli.interview.taken import Files, spreadsheets, together
from templates_gen.documents.old_paper import NAME as ABOUT_SHEETS
from templates_gen.drawing.pdf.attached import Attached
from templates_gen.job.reading.files import LARGEST, parse_toml, read_bytes
from templates_gen.job.reading.travelling import apart, last_part

LARGEST_PDF = 500_000_000
"""Bytes.  A template of 2,000 frames has far fewer; this keeps a wrong file from filling the memory.  No source."""


class TakenBack(NamedTuple):
    """The files to be written, the job first, and the names of those that stay inside."""

    files: Files
    left: tuple[str, ...]


def from_template(pdf: Path, job: Path | None) -> TakenBack:
    """The job inside a template, as `job` or else under its own name in the current folder, and what it consists of.

    Beside it come to lie the spreadsheets that it names, and the file of the wall that it was moved to, all under plain
    names.  Every other attachment stays where it is, and is not so much as unpacked.

    Raises InputError for a file that this program did not make or that holds no job.
    """
    return from_content(read_bytes(pdf, LARGEST_PDF, "a template"), pdf, job)


def from_content(pdf_content: bytes, pdf: Path, job: Path | None) -> TakenBack:
    """The same out of the content of a template of this name, wherever that came from."""
    inside = Attached(pdf_content, pdf.name)
    content = inside.read(inside.job, LARGEST)
    target = job or Path(plain_name(inside.job, JOB_ENDING))
    sheets = _held(inside.others, spreadsheets(content, pdf.name), inside.job, pdf.name)
    plain = {held: plain_name(held, SHEET_ENDINGS) for held in sheets.values()}
    files = {held: inside.read(held, LARGEST) for held in plain}
    left = [name for name in inside.others if name not in (*plain, ABOUT_SHEETS)]
    if wall := _wall(inside, left):
        plain[wall], files[wall] = plain_name(wall, JOB_ENDING), inside.read(wall, LARGEST)
        left.remove(wall)
    new = dict(zip(plain, apart(plain.values(), () if job else (target.name,)), strict=True))
    content = renamed(content, {field: new[held] for field, held in sheets.items()}, pdf.name)
    return TakenBack(together(target, content, {new[held]: files[held] for held in new}), tuple(left))


def _held(inside: Sequence[str], wanted: Mapping[str, str], job: str, where: str) -> dict[str, str]:
    """The name under which the spreadsheet of each field travels.  Raises InputError where one is missing."""
    held: dict[str, str] = {}
    for field, path in wanted.items():
        # a file of the name that another one has already travels under a name with a number
        names = [apart([name], [job, *held.values()])[0] for name in (PurePosixPath(path).name, last_part(path))]
        found = next((name for name in names if name in inside), None)
        if found is None:
            raise InputError(where, f"has no {last_part(path)!r} inside, which its job names")
        held[field] = found
    return held


def _wall(inside: Attached, left: Sequence[str]) -> str | None:
    """Which of what is left is the file of a wall: the only TOML file, or the only file, if it has a [wall]."""
    tables = [name for name in left if name.lower().endswith(JOB_ENDING)] or left
    if len(tables) != 1:
        return None
    try:
        found = parse_toml(inside.read(tables[0], LARGEST), tables[0])
    except InputError:
        return None
    return tables[0] if isinstance(found.get("wall"), dict) else None
