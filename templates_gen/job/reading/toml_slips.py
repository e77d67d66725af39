"""What most likely went wrong in a job file that is no TOML, by the shape of its lines."""

from __future__ import annotations

import re

TABLE_TWICE = "each [table] is written once; a frame begins with [[frame]], a feature with [[wall.feature]]"
FIELD_TWICE = "this field is there already: leave one of the two out"
OPEN_LIST = "a list that begins with [ ends with ]"
OPEN_TABLE = "a table's name stands in [ ], as in  [job]"
OPEN_TEXT = "text ends with the quote it begins with, on one line"
QUOTES = 'text goes in quotes, as in  width = "12 ft 6 in"'

MOST_SHOWN = 60
"""Letters of a line that are shown.  Our own, no source."""

_TABLE = re.compile(r"\[{1,2}\s*[A-Za-z]")
"""How a table begins; a list that goes on begins with a quote or a figure."""


def slip(error: ValueError, text: str) -> tuple[str, str]:
    """The line that an error of the TOML reader is about, as it is shown, and what most likely helps.

    No line is shown where there is nothing in it, or where the error is at the end of the text.
    """
    lines = text.split("\n")
    number = _number(error)
    line = lines[number - 1].strip() if 0 < number <= len(lines) else ""
    told = [each.strip() for each in (lines[: number - 1] if line else lines) if each.strip()]
    shown = line if len(line) <= MOST_SHOWN else f"{line[:MOST_SHOWN]}…"
    return shown, _help(line, told) if line or not told else _help(told[-1], told[:-1])


def _number(error: ValueError) -> int:
    """The number of the line, 0 for none: told by itself from Python 3.14 on, and by the words of older ones alone,
    which are the same for good."""
    known = getattr(error, "lineno", None)
    at = re.search(r"at line (\d+)", str(error))
    return known if isinstance(known, int) else int(at[1]) if at else 0


def _help(line: str, before: list[str]) -> str:
    """What helps with a line, by those before it."""
    begun = next((at for at in range(len(before), 0, -1) if _TABLE.match(before[at - 1])), 0)
    fields = before[begun:]
    key, _, value = (part.strip() for part in line.partition("="))
    if _open("\n".join(fields)) or (value and _open(value)):
        return OPEN_LIST
    if _TABLE.match(line):
        return TABLE_TWICE if "]" in line else OPEN_TABLE
    if key in {field.partition("=")[0].strip() for field in fields}:
        return FIELD_TWICE
    return OPEN_TEXT if value[:1] in ('"', "'") and value.count(value[0]) == 1 else QUOTES


def _open(text: str) -> bool:
    """True where more lists begin than end; brackets within quotes do not count."""
    plain = re.sub(r'"[^"\n]*"', "", text)
    return plain.count("[") > plain.count("]")
