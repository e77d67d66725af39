"""Cells of a spreadsheet: what is written there must not run as a formula, and reads back as it was."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence

_STARTS = ("=", "+", "-", "@", "\t", "\r")
"""A cell that starts like this is taken for a formula (OWASP, "CSV Injection"; from memory)."""


NOTHING = "–"
"""What stands in a cell that does not apply."""

_BLANK = ("-", NOTHING, "—")


def cell(value: object) -> object:
    """A value as a person reads it.

    A text that a spreadsheet would take for a formula gets a quote in front: it came from the job file.
    """
    if isinstance(value, list):
        value = "; ".join(value)
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str) and value[:1] in _STARTS:
        return f"'{value}"
    return "" if value is None else value


def plain(text: str) -> str:
    """The text of a cell without the quote that `cell` put in front; a dash by itself is nothing."""
    if text in _BLANK:
        return ""
    return text[1:] if text[:1] == "'" and text[1:2] in _STARTS else text


def as_csv(header: Sequence[str], rows: Iterable[Sequence[object]]) -> str:
    """A table as CSV (RFC 4180, with plain line ends)."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(header)
    writer.writerows([cell(value) for value in row] for row in rows)
    return out.getvalue()
