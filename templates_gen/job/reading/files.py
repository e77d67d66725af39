"""Files become untyped tables: TOML for the job, a spreadsheet's CSV for its frames."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

from templates_gen.base.csv_cells import plain
from templates_gen.base.errors import InputError, did_you_mean
from templates_gen.base.files import MB, NotAFileError, read_at_most
from templates_gen.base.unseen import without_unseen
from templates_gen.job.reading.toml_slips import slip

LARGEST = 20_000_000
"""Bytes.  A job file is a few kilobytes; this keeps a wrong file from filling the memory.  No source."""

MOST_ROWS = 10_000
"""Of a spreadsheet that are not blank: as many as a job may have frames.  Our own design, no source."""

MOST_COLUMNS = 200
"""Columns with a name: five times as many as a frame has fields.  Our own design, no source."""

LONGEST_LINE = 250_000
"""Letters in a line of a spreadsheet: a dozen long titles and more.  Our own design, no source."""

MOST_LETTERS = 10_000
"""Letters of one text; more takes long to set, and no paper shows it.  Our own design, no source."""

MOST_NUMBER = 10**15
"""A larger whole number than a float holds exactly.  Our own design, no source."""

PATHS = ("frames", "measured", "image", "font")
"""The fields that name another file.  They keep even characters that show nothing: without one it is another name."""

_DELIMITERS = ",;\t|"

_NO_TEXT = {
    b"\x89PNG": "a picture", b"\xff\xd8\xff": "a picture", b"GIF8": "a picture", b"%PDF-": "a PDF file",
    b"PK\x03\x04": "a file of an office program, or a zip", b"\xd0\xcf\x11\xe0": "a file of an office program",
    b"{\\rtf": "text with its looks (RTF)", b"<!": "a web page", b"<html": "a web page",
}  # fmt: skip
"""How files begin that people take for plain text (file signatures; from memory)."""


def read_bytes(path: Path, largest: int = LARGEST, kind: str = "a job file") -> bytes:
    """The content of a file.  Raises InputError when it is not there, not a file, not readable or far too large."""
    try:
        content = read_at_most(path, largest + 1)
        if len(content) > largest:
            raise InputError(str(path), f"found more than {largest // MB} MB, expected {kind}")
        return content
    except NotAFileError as error:
        raise InputError(str(path), f"found {error}, expected a file") from None
    except FileNotFoundError:
        raise InputError(str(path), "there is no such file", _near(path)) from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or error
        raise InputError(str(path), f"cannot be read: {reason}") from None


def parse_toml(content: bytes, where: str) -> dict[str, Any]:
    """The tables of a TOML file.  Raises InputError with the line and column."""
    import tomllib

    if content.startswith(b"%PDF-"):
        hint = "the job comes out of a template by  templates-gen start --from FILE.pdf"
        raise InputError(where, "is a PDF file, expected a job file", hint)
    try:
        return tomllib.loads(decoded(content, where))
    except ValueError as error:  # tomllib's own errors, and a number of thousands of digits
        raise InputError(where, *slip(error, decoded(content, where))) from None
    except RecursionError:
        raise InputError(where, "is not valid TOML: nested too deeply") from None


def parse_csv(
    content: bytes, where: str, known: Sequence[str], needed: str, nested: Mapping[str, str]
) -> list[tuple[int, dict[str, Any]]]:
    """The rows of a spreadsheet as (line number, fields); a blank cell is left out, `hanger.kind` nests.

    Any delimiter a spreadsheet writes is taken: the one that finds the most `known` names in the header.  `needed` is
    the column that says which frame it is; `nested` gives the full name of columns that may go by a short one.
    Raises InputError for a header it cannot use or a row longer than its header.
    """
    import csv
    import io

    text = decoded(content, where)
    first = next(_lines(io.StringIO(text, newline=""), where), "")
    if not first.strip():
        raise InputError(where, f"has no header line, expected one such as {','.join(known[:3])}")
    names = {*known, *nested}
    delimiter = max(_DELIMITERS, key=lambda sign: _hits(first, sign, names))
    if not _hits(first, delimiter, names):
        hint = "its first line names the columns; save a spreadsheet as CSV UTF-8"
        raise InputError(where, f"has no column that is known here, such as {', '.join(known[:3])}", hint)
    reader = csv.reader(_lines(io.StringIO(text, newline=""), where), delimiter=delimiter)
    try:
        header = _header(next(reader), where, nested)
        if needed not in header:
            raise InputError(where, f"has no column {needed!r}, expected one that names the frame of each row")
        return _rows(header, reader, where)
    except csv.Error as error:
        raise InputError(where, f"is not a table: {error}") from None


def _lines(text: Iterable[str], where: str) -> Iterator[str]:
    """The lines of a spreadsheet.  Raises InputError at one that is longer than any."""
    for number, line in enumerate(text, 1):
        if len(line) > LONGEST_LINE:
            raise InputError(f"{where}, line {number}", f"found more than {LONGEST_LINE} letters in a line")
        yield line


def _rows(header: Sequence[str], reader: Iterable[Sequence[str]], where: str) -> list[tuple[int, dict[str, Any]]]:
    """The fields of the rows that are not blank, with their lines, made one by one: what is refused is not kept.

    Raises InputError for a row that is longer than the header, or one row too many.
    """
    rows: list[tuple[int, dict[str, Any]]] = []
    for row in reader:
        if not any(map(str.strip, row)):
            continue
        if len(rows) == MOST_ROWS:
            raise InputError(where, f"found more than {MOST_ROWS} rows, expected one for each frame")
        line: int = getattr(reader, "line_num", 0)
        fields = _fields(header, row, f"{where}, line {line}")
        check_text(fields, f"{where}, line {line}")
        rows.append((line, fields))
    return rows


def _hits(line: str, delimiter: str, known: set[str]) -> int:
    return sum(cell.strip().strip('"').lower().partition(".")[0] in known for cell in line.split(delimiter))


def _header(cells: Sequence[str], where: str, nested: Mapping[str, str]) -> list[str]:
    """The names of the columns, each once, and none both a plain field and a table of fields."""
    names = [cell.strip().lower() for cell in cells]
    if (count := len(names) - names.count("")) > MOST_COLUMNS:
        raise InputError(where, f"found {count} columns, expected {MOST_COLUMNS} at most")
    tables = {nested[name].partition(".")[0] for name in names if name in nested}
    names = [f"{name}.kind" if name in tables else nested.get(name, name) for name in names]
    for name in filter(None, names):
        if names.count(name) > 1:
            raise InputError(where, f"has the column {name!r} twice, expected each field once")
        if name.partition(".")[0] != name and name.partition(".")[0] in names:
            table = name.partition(".")[0]
            raise InputError(where, f"has both {table!r} and {name!r}", f"write {table}.kind instead of {table}")
    return names


def _fields(header: Sequence[str], row: Sequence[str], where: str) -> dict[str, Any]:
    if any(cell.strip() for cell in row[len(header) :]):
        raise InputError(where, f"found {len(row)} cells, expected {len(header)} as in the header")
    fields: dict[str, Any] = {}
    for name, cell in zip(header, row, strict=False):
        value = plain(" ".join((cell if name in PATHS else without_unseen(cell)).split()))
        if not value:
            continue
        if not name:
            raise InputError(where, f"found {cell!r} in a column without a name", "give each column a field's name")
        table, _, inner = name.partition(".")
        if inner:
            fields.setdefault(table, {})[inner] = value
        else:
            fields[table] = value
    return fields


def decoded(content: bytes, where: str) -> str:
    """The text of a file in UTF-8 or UTF-16.  Raises InputError."""
    if kind := next((kind for start, kind in _NO_TEXT.items() if content.startswith(start)), ""):
        hint = "save it there as plain text, or a spreadsheet as CSV UTF-8"
        raise InputError(where, f"is {kind}, expected plain text", hint)
    try:
        return content.decode(_encoding(content))
    except UnicodeDecodeError as error:
        raise InputError(
            where, f"is not UTF-8 text (byte {error.start})", "save it as UTF-8, or as CSV UTF-8"
        ) from None


def _encoding(content: bytes) -> str:
    """UTF-16 by its mark, or where that is missing by the zero beside its first letter, one of ASCII; else UTF-8."""
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        return "utf-16"
    zeros = content[:1] == b"\0", content[1:2] == b"\0"
    return {(True, False): "utf-16-be", (False, True): "utf-16-le"}.get(zeros, "utf-8-sig")


def _near(path: Path) -> str:
    """The hint for a file that is not there: one with an ending more, which a system may not show, or one like it."""
    try:
        beside = sorted(path.parent.iterdir())
    except OSError:
        return ""
    longer = [entry.name for entry in beside if entry.stem == path.name and entry.suffix in (".toml", ".txt")]
    names = [entry.stem for entry in beside if entry.suffix == path.suffix]
    return f"did you mean {longer[0]!r}?" if longer else did_you_mean(path.stem, names, ending=path.suffix)


def check_text(value: object, where: str = "") -> None:
    """Raises InputError for a number too large for any use, a text too long, or one with a control character or a
    separator of lines, which would garble the paper."""
    if isinstance(value, str):
        if len(value) > MOST_LETTERS:
            raise InputError(where, f"found a text of {len(value)} letters, expected {MOST_LETTERS} at most")
        if bad := next((char for char in value if unicodedata.category(char) in ("Cc", "Zl", "Zp")), ""):
            raise InputError(where, f"found the control character U+{ord(bad):04X} in a text, expected plain text")
    elif isinstance(value, int) and abs(value) > MOST_NUMBER:
        raise InputError(where, f"found a number of {len(str(abs(value)))} figures, expected a smaller one")
    elif isinstance(value, Mapping):
        for key, inner in value.items():
            check_text(key, where)
            check_text(inner, f"{where}, {key}" if where else str(key))
    elif isinstance(value, list):
        for number, inner in enumerate(value, 1):
            check_text(inner, f"{where} {number}")


def shown(value: Any, name: str = "") -> Any:
    """What a file says, without the characters in its texts that show nothing; a path stays as it is."""
    if isinstance(value, str):
        return value if name in PATHS else without_unseen(value)
    if isinstance(value, Mapping):
        return {without_unseen(key): shown(inner, key) for key, inner in value.items()}
    return [shown(inner) for inner in value] if isinstance(value, list) else value
