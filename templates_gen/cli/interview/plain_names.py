"""Names under which files that travelled inside a template are written: plain ones, and the job says so."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping

from templates_gen.base.errors import InputError
from templates_gen.base.file_names import is_device
from templates_gen.base.toml import toml
from templates_gen.job.reading.files import decoded, parse_toml
from templates_gen.job.reading.travelling import last_part

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
