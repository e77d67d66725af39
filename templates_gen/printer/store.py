"""Printers' profiles kept as TOML files in a folder, one file for each printer.

A file holds what was measured.  What follows from that is worked out again whenever the file is read.
"""

from __future__ import annotations

import os
import re
import sys
import unicodedata
from collections.abc import Iterator
from pathlib import Path

from templates_gen.base.errors import InputError, OutputError
from templates_gen.base.file_names import is_device
from templates_gen.base.files import NotAFileError, read_at_most
from templates_gen.base.output import write_result
from templates_gen.base.record import Table
from templates_gen.base.toml import toml
from templates_gen.base.units import LONGEST
from templates_gen.job.paper_sizes import paper_size
from templates_gen.job.reading.typed import read_table
from templates_gen.printer.profile import Printer, Readings, measured

_NAME = re.compile(r"\w(?:[\w .-]{0,38}[\w-])?")

LONG_NAME = 60
"""Letters of an impossible name that are shown.  Our own bound, no source."""

LARGEST = 100_000
"""Bytes.  A profile has a few hundred.  Our own design, no source."""

AGAIN = "measure the scale page and record the printer again"


class ProfileTable(Table):
    """A profile as it is written; lengths in mm."""

    format: int
    name: str
    paper: str
    date: str
    asked_across: float
    asked_along: float
    across: float
    along: float
    reading_error: float
    diagonals: tuple[float, float] | None = None


def profile_folder(config: Path) -> Path:
    """The folder of the profiles inside the program's config folder.  Raises OutputError when there is no home for it.

    It need not be there yet, but the user's home must: nothing is made where no user is.
    """
    home = _home()
    if not config.is_absolute() or not _has_home(config, home):
        raise OutputError(f"{config}: there is no home folder to keep printers in\n  set HOME or XDG_CONFIG_HOME")
    return config / "printers"


def _home() -> Path:
    """The user's own folder.  An empty HOME names none, though Python takes it for /.

    Windows has it elsewhere, and a HOME that another shell sets there may be no path of its own.
    """
    if sys.platform == "win32":
        return Path(os.path.expanduser("~"))
    return Path(os.environ.get("HOME", os.path.expanduser("~")))


def _has_home(config: Path, home: Path) -> bool:
    if not home.is_absolute():
        return bool(os.environ.get("XDG_CONFIG_HOME"))
    return home.is_dir() or not config.is_relative_to(home)


def checked_name(name: str) -> str:
    """A printer's name that can be a file's.  Raises InputError for any other."""
    plain = unicodedata.normalize("NFC", name.strip())
    hint = "a name such as study or “HP 4100 upstairs”"
    if is_device(plain):
        problem = f"found the name “{plain}”, which Windows keeps for a device, expected another"
        raise InputError("printer", problem, hint)
    if not _NAME.fullmatch(plain):
        shown = plain if plain.isprintable() and len(plain) <= LONG_NAME else ascii(plain)[:LONG_NAME]
        raise InputError(
            "printer",
            f"found the name “{shown}”, expected letters, figures, spaces, dots and hyphens, at most 40",
            hint,
        )
    return plain


def save(folder: Path, printer: Printer) -> None:
    """Keep a profile, in place of an earlier one of the same printer.  Raises OutputError."""
    path = _path(folder, printer.name)
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise OutputError(f"{folder}: cannot be made: {error.strerror or error}") from None
    write_result(path, _written(printer).encode(), force=True)


def load(folder: Path, name: str) -> Printer:
    """The profile of this printer.  Raises InputError when there is none, or when its file is damaged."""
    path = _path(folder, checked_name(name))
    try:
        content = read_at_most(path, LARGEST)
    except FileNotFoundError:
        known = ", ".join(names(folder))
        hint = f"known: {known}" if known else "see  templates-gen printer page  for how to measure one"
        raise InputError("printer", f"no printer “{name}” has been recorded", hint) from None
    except NotAFileError as kind:
        raise InputError(str(path), f"found {kind}, expected a file") from None
    except OSError as error:
        raise InputError(str(path), f"cannot be read: {error.strerror or error}") from None
    return _read(content, path)


def names(folder: Path) -> list[str]:
    """The names of all files with a profile, sorted; none where the folder is missing.  Raises InputError."""
    try:
        return sorted(path.stem for path in folder.iterdir() if path.suffix == ".toml" and _NAME.fullmatch(path.stem))
    except FileNotFoundError:
        return []
    except OSError as error:
        raise InputError(str(folder), f"cannot be read: {error.strerror or error}") from None


def every(folder: Path) -> Iterator[Printer | InputError]:
    """Every profile by name; in place of a damaged one, what is wrong with it."""
    for name in names(folder):
        try:
            yield load(folder, name)
        except InputError as error:
            yield error


def _path(folder: Path, name: str) -> Path:
    """Names that differ by capitals only are one printer: on some disks they are one file."""
    return folder / f"{name.casefold()}.toml"


def _written(printer: Printer) -> str:
    given = printer.readings
    fields = {
        "format": 1, "name": printer.name, "paper": printer.paper, "date": printer.date,
        "asked_across": given.asked_across, "asked_along": given.asked_along,
        "across": given.across, "along": given.along,
        **({"diagonals": given.diagonals} if given.diagonals else {}), "reading_error": given.reading_error,
    }  # fmt: skip
    lines = [f"{name} = {toml(value)}" for name, value in fields.items()]
    return "\n".join(["# What was measured on the scale page of a printer.  Lengths in mm.", *lines, ""])


def _read(content: bytes, path: Path) -> Printer:
    import tomllib

    try:
        return _printer(read_table(tomllib.loads(content.decode()), ProfileTable, "mm", ""))
    except (ValueError, RecursionError, InputError) as error:
        place = f"{error.where}: " if isinstance(error, InputError) and error.where else ""
        problem = f"{place}{error.problem}" if isinstance(error, InputError) else str(error)
        raise InputError(str(path), f"the printer's profile is damaged: {problem}", AGAIN) from None


def _printer(table: ProfileTable) -> Printer:
    if table.format != 1:
        raise ValueError(f"format {table.format}, expected 1")
    lengths = (table.asked_across, table.asked_along, table.across, table.along, table.reading_error)
    if not all(0 < length < LONGEST for length in lengths):
        raise ValueError("a length is not above zero")
    paper_size(table.paper, "paper")
    readings = Readings(
        asked_across=table.asked_across, asked_along=table.asked_along, across=table.across, along=table.along,
        diagonals=table.diagonals, reading_error=table.reading_error,
    )  # fmt: skip
    return measured(checked_name(table.name), table.paper, readings, table.date)
