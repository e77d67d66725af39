"""A job out of a printed template, which anybody may have made: nothing is written but what a job consists of."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping, Sequence
from pathlib import Path, PurePosixPath
from typing import NamedTuple

from templates_gen.base.errors import InputError
from templates_gen.base.file_names import apart, is_device, last_part
from templates_gen.base.toml import toml
from templates_gen.cli.interview.taken import Files, spreadsheets, together
from templates_gen.documents.old_paper import NAME as ABOUT_SHEETS
from templates_gen.drawing.pdf.attached import Attached
from templates_gen.job.reading.files import LARGEST, decoded, parse_toml


class TakenBack(NamedTuple):
    """The files to be written, the job first, and the names of those that stay inside."""

    files: Files
    left: tuple[str, ...]


def from_template(inside: Attached, job: Path | None) -> TakenBack:
    """The job inside a template, as `job` or else under its own name in the current folder, and what it consists of.

    Beside it come to lie the spreadsheets that it names, and the file of the wall that it was moved to, all under plain
    names.  Every other attachment stays where it is, and is not so much as unpacked.  Raises InputError for a job whose
    files are not all there, or cannot be read.
    """
    content = inside.read(inside.job, LARGEST)
    target = job or Path(plain_name(inside.job, JOB_ENDING))
    sheets = _held(inside.others, spreadsheets(content, inside.where), inside.job, inside.where)
    plain = {held: plain_name(held, SHEET_ENDINGS) for held in sheets.values()}
    files = {held: inside.read(held, LARGEST) for held in plain}
    left = [name for name in inside.others if name not in (*plain, ABOUT_SHEETS)]
    if wall := _wall(inside, left):
        plain[wall], files[wall] = plain_name(wall, JOB_ENDING), inside.read(wall, LARGEST)
        left.remove(wall)
    new = dict(zip(plain, apart(plain.values(), () if job else (target.name,)), strict=True))
    content = renamed(content, {field: new[held] for field, held in sheets.items()}, inside.where)
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


JOB_ENDING = (".toml",)
SHEET_ENDINGS = (".csv", ".tsv", ".txt")
"""How a spreadsheet's name may end as text.  Common practice, no source."""

_NEVER = re.compile(r'[<>:"|?*]')
"""What no name may have on one system or another (Windows, "Naming Files, Paths, and Namespaces"; from memory)."""

LONGEST = 60
"""Letters of a name before its ending, four bytes each at most: a system takes 255 (from memory).  Our own
design, no source."""

_TOKEN = r"\"{3}.*?\"{3}|'{3}.*?'{3}|\"(?:\\.|[^\"\\\n])*\"|'[^'\n]*'"
"""A text in any of the four ways of TOML 1.0.0."""


def plain_name(name: str, endings: tuple[str, ...]) -> str:
    """The name without a folder, a dot or dash in front, signs that do not show, and what some system forbids or keeps.

    It ends in one of the `endings`; a name that has another ending gets the first of them behind it.
    """
    shown = "".join(_shown(sign) for sign in last_part(name))
    stem = " ".join(_NEVER.sub("-", shown).split()).lstrip(".- ").rstrip(". ")
    if not stem or f".{stem.lower()}" in endings:
        stem = "job" if endings is JOB_ENDING else "frames"
    if is_device(stem):
        stem = f"_{stem}"
    ending = next((ending for ending in endings if stem.lower().endswith(ending)), "")
    base = stem[: len(stem) - len(ending)]
    return base[:LONGEST].rstrip(". ") + (stem[len(base) :] or endings[0])


def _shown(sign: str) -> str:
    """The sign, a space for any kind of space, nothing for controls, joiners and what else cannot be seen."""
    if sign.isspace():
        return " "
    return "" if unicodedata.category(sign).startswith("C") else sign


def renamed(content: bytes, new: Mapping[str, str], where: str) -> bytes:
    """A job file whose [job] names its other files anew, each in its field, all else as it was.

    Raises InputError where the job names one in a way that cannot be replaced.
    """
    own = parse_toml(content, where)
    old = {field: own["job"][field] for field in new}
    if old == new:
        return content
    naming = re.compile(rf"""\b({"|".join(new)})(["']?\s*=\s*)({_TOKEN})""", re.DOTALL)

    def other(found: re.Match[str]) -> str:
        field, between, token = found.groups()
        return f"{field}{between}{_other(token, old[field], new[field])}"

    changed = naming.sub(other, decoded(content, where)).encode()
    if parse_toml(changed, where) != {**own, "job": {**own["job"], **new}}:
        raise InputError(where, f"names {', '.join(map(repr, old.values()))} in a way that cannot be replaced")
    return changed


def _other(token: str, old: str, new: str) -> str:
    """What stands in place of a text as TOML writes it: the new name for the old one, else itself."""
    import tomllib

    try:
        return toml(new) if tomllib.loads(f"value = {token}")["value"] == old else token
    except tomllib.TOMLDecodeError:
        return token
