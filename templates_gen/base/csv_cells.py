"""Cells of a spreadsheet: what is written there must not run as a formula, and reads back as it was."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence

from templates_gen.base.unseen import without_unseen

_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
"""A cell that starts like this is taken for a formula, in full-width signs too by some spreadsheets (OWASP, "CSV
Injection"; from memory)."""


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
    if isinstance(value, str):
        value = without_unseen(value)
        return f"'{value}" if value.startswith(_STARTS) else value
    return "" if value is None else value


def own_text(text: str) -> str:
    """A text from the job file for a cell that is read again by `plain`, which then gives it back as it was."""
    would_change = text.startswith(_STARTS) or text in _BLANK or _is_quoted(text)
    return f"'{text}" if would_change else text


def plain(text: str) -> str:
    """The text of a cell without the quote that `cell` or `own_text` put in front; a dash by itself is nothing."""
    if text in _BLANK:
        return ""
    return text[1:] if _is_quoted(text) else text


def _is_quoted(text: str) -> bool:
    quotes = len(text) - len(text.lstrip("'"))
    rest = text[quotes:]
    return quotes > 0 and (rest.startswith(_STARTS) or rest in _BLANK)


def as_csv(header: Sequence[str], rows: Iterable[Sequence[object]]) -> str:
    """A table as CSV (RFC 4180, with plain line ends)."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(header)
    writer.writerows([cell(value) for value in row] for row in rows)
    return out.getvalue()
