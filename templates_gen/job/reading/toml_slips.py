"""What most likely went wrong in a job file that is no TOML, by the shape of its lines."""

from __future__ import annotations

import re

TABLE_TWICE = "each [table] is written once; a frame begins with [[frame]], a feature with [[wall.feature]]"
FIELD_TWICE = "this field is there already: leave one of the two out"
OPEN_LIST = "a list that begins with [ ends with ]: look at the lines above, too"
OPEN_FIELDS = "fields that begin with { end with } on the same line"
OPEN_TABLE = "a table's name stands in [ ], as in  [job]"
OPEN_TEXT = "text ends with the quote it begins with, on one line"
QUOTES = 'text goes in quotes, as in  width = "12 ft 6 in"'
CURLY = "the quotes are curly: type straight ones, and switch smart quotes off"
UNSEEN = "a character that shows nothing stands in this line: take the line out, and type it again"
COMMA = 'a comma stands between two in a list, as in  ["A", "B"]'
EQUALS = 'an = stands between a field and its value, as in  width = "12 ft 6 in"'
INSIDE = 'inside quotes write ft and in, as in  width = "12 ft 6 in"'
BACKSLASH = "a backslash in a text is written twice: write / in place of it"
NO_LINE = "a line is a [table], a field = and its value, or a remark after #"
POINT = 'a number has a point, or stands in quotes:  drop = 6.4  or  drop = "6,4"'
REMARK = "a remark begins with #, and nothing else stands after a value"

MOST_SEARCHED = 1_000
"""Letters of a line in which a shape is looked for.  Our own, no source."""

MOST_SHOWN = 60
"""Letters of a line that are shown.  Our own, no source."""

_TABLE = re.compile(r"\[{1,2}\s*[A-Za-z]")
"""How a table begins; a list that goes on begins with a quote or a figure."""


def slip(error: ValueError, text: str) -> tuple[str, str]:
    """What is wrong by an error of the TOML reader, with the line that it is about, and what most likely helps.

    The line says more than the reader's own words, which are told where there is nothing in it, or where the error is
    at the end of the text.
    """
    lines = text.split("\n")
    number = _number(error)
    line = lines[number - 1].strip() if 0 < number <= len(lines) else ""
    told = [each.strip() for each in (lines[: number - 1] if line else lines) if each.strip()]
    shown = line if len(line) <= MOST_SHOWN else f"{line[:MOST_SHOWN]}…"
    problem = f"line {number} is not valid TOML, found  {shown}" if line else f"is not valid TOML: {error}"
    return problem, _help(line, told) if line or not told else _help(told[-1], told[:-1])


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
    return next((hint for shape, hint in _SHAPES if shape.search(line[:MOST_SEARCHED])), QUOTES)


_TEXT = r"""(?:"(?:[^"\\]|\\.)*"|'[^']*')"""
_PLAIN = rf"^(?:{_TEXT}|[^\"'#])*"
"""A whole text in quotes; and a line up to a place outside of texts and remarks."""

_SHAPES = [(re.compile(shape), hint) for shape, hint in (
    (r"[=\[{,]\s*[“”„‟‘’‚‛«»]", CURLY),
    (rf"{_PLAIN}(?:[^\S \t]|[\x00-\x08\x0e-\x1f\x7f\xad\u200b-\u200f\u2060\ufeff])", UNSEEN),
    (rf"\[[^\]]*{_TEXT}\s*{_TEXT}", COMMA),
    (r"\{[^}]*$", OPEN_FIELDS),
    (r"=\s*-?\d+,\d", POINT),
    (r"^\w+$", OPEN_TABLE),
    (r"^[\w-]+\s*(?::|[\"'\d])", EQUALS),
    (r"^[^=]*$", NO_LINE),
    (r"""=\s*"(?:[^"\\]|\\["\\])*\\[^"\\]""", BACKSLASH),
    (r"""=\s*(["'])(?:(?!\1).)*$""", OPEN_TEXT),
    (rf"""=\s*{_TEXT}[^#]*["']""", INSIDE),
    (rf"=\s*(?:{_TEXT}|[\d.]+)\s*(?:;|,\s*(?:$|#)|//)", REMARK),
)]  # fmt: skip
"""Shapes of a line that is no TOML, and what helps: the first that fits.  Our own, from slips as people make them."""


def _open(text: str) -> bool:
    """True where more lists begin than end; brackets within quotes do not count."""
    plain = re.sub(r'"[^"\n]*"', "", text)
    return plain.count("[") > plain.count("]")
