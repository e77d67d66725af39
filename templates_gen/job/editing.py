"""A job file's text is changed at some places, and stays as it is at all others: remarks, order and line ends.

The only file that imports tomlkit.
"""

from __future__ import annotations

import copy
import tomllib
from collections.abc import Mapping, Sequence
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError
from tomlkit.items import AoT

from templates_gen.base.errors import InputError
from templates_gen.base.record import Record
from templates_gen.base.toml import field
from templates_gen.job.table_lines import with_block, without_block

Place = tuple[str | int, ...]
"""Names of tables and fields, and numbers in lists, counted from 0: ("frame", 2, "drop"), ("wall", "width")."""

LISTED: tuple[tuple[str, ...], ...] = (("frame",), ("wall", "feature"))
"""The tables in double brackets, one for each frame and each feature."""


class Change(Record, frozen=True):
    """What a place is to hold: a text, number, truth, list or table as a job file has it; None takes it out.

    The number after the last one of a list adds to it.
    """

    place: Place
    value: Any


def edited(text: str, changes: Sequence[Change]) -> str:
    """The text of a job file after these changes, one after the other.

    Raises InputError for a text that is no TOML, or that is written in a way in which a place cannot be changed alone;
    whether the result is a job is for its reader.
    """
    unix = text.replace("\r\n", "\n")
    wanted: dict[str, Any] = _parsed(unix)
    for change in changes:
        wanted = _put(copy.deepcopy(wanted), change)
    new = _written(unix, changes, wanted)
    return new.replace("\n", "\r\n") if "\r\n" in text else new


def _parsed(text: str) -> dict[str, Any]:
    try:
        return tomllib.loads(text)
    except ValueError as error:
        raise InputError("", f"is not valid TOML: {error}", "put that right in a text editor first") from None


def _written(text: str, changes: Sequence[Change], wanted: Mapping[str, Any]) -> str:
    """The changed text.  It is read again: whatever else would have changed with it stops it."""
    try:
        for change in changes:
            text = _changed(text, change)
        if tomllib.loads(text) == wanted:
            return text
    except (TOMLKitError, ValueError, KeyError, TypeError, IndexError, AttributeError):
        pass  # the same as a text that says something else: the way it is written is one that was not foreseen
    where = ", ".join(map(str, changes[0].place)) if changes else ""
    raise InputError(where, "cannot be changed alone as the file is written", "change it in a text editor")


def _changed(text: str, change: Change) -> str:
    name, number = change.place[:-1], change.place[-1]
    if name in LISTED and isinstance(number, int):
        lines = _lines_changed(text, tuple(map(str, name)), number, change.value)
        if lines is not None:
            return lines
    document = tomlkit.parse(text)
    _set(document, change)
    return document.as_string()


def _lines_changed(text: str, name: tuple[str, ...], number: int, value: Any) -> str | None:
    """A table in double brackets added or taken out as lines, so that remarks stay where they belong; None where this
    is another change, or the tables are written otherwise."""
    count = len(_inside(_parsed(text), name) or ())
    if value is None:
        return without_block(text, name, number)
    if number < count:
        return None
    return with_block(text, name, [f"[[{'.'.join(name)}]]", *_fields(value)])


def _fields(table: Mapping[str, Any]) -> list[str]:
    return [line for name, value in table.items() if value is not None for line in field(name, value)]


def _inside(table: Any, name: Sequence[str]) -> Any:
    for part in name:
        table = table.get(part) if isinstance(table, Mapping) else None
    return table


def _set(document: Any, change: Change) -> None:
    """Put the value into the document; tables that are missing on the way are made."""
    *way, last = change.place
    at = document
    for depth, part in enumerate(way):
        if isinstance(part, str) and part not in at:
            if change.value is None:
                return
            at[part] = tomlkit.table() if depth == 0 else tomlkit.inline_table()
        at = at[part]
    if change.value is None:
        if isinstance(last, int) or last in at:
            del at[last]
    elif isinstance(last, int) and last >= len(at):
        at.append(_item(change.value, isinstance(at, AoT)))
    else:
        at[last] = _item(change.value, not way)


def _item(value: Any, table: bool = False) -> Any:
    """The value as it is to be written: a table at the top under its own heading, any other in its line."""
    if table and isinstance(value, Mapping):
        made: Any = tomlkit.table()
        for name, inner in _plain(value).items():
            made[name] = _item(inner)
        return made
    return tomlkit.value("\n".join(field("", _plain(value))).removeprefix(" = "))


def _put(tables: dict[str, Any], change: Change) -> dict[str, Any]:
    """The same change on plain values, against which the text is held."""
    *way, last = change.place
    at: Any = tables
    for step, part in enumerate(way):
        if isinstance(part, str) and part not in at:
            if change.value is None:
                return tables
            # a number next in a place that is not there begins a list
            at[part] = [] if isinstance(change.place[step + 1], int) else {}
        at = _step(at, part, change)
    if change.value is None:
        if isinstance(last, int) or last in at:
            _step(at, last, change)
            del at[last]
            _prune(tables, tuple(way))
    elif isinstance(last, int) and last >= len(at):
        at.append(_plain(change.value))
    elif isinstance(at, dict):
        at[last] = _plain(change.value)
    elif isinstance(at, list) and isinstance(last, int):
        at[last] = _plain(change.value)
    else:
        raise InputError(", ".join(map(str, change.place)), "is no place in this file")
    return tables


def _prune(tables: dict[str, Any], name: Place) -> None:
    """A list of tables in double brackets is gone with its last one."""
    if name in LISTED and not _inside(tables, [str(part) for part in name]):
        owner: Any = tables if len(name) == 1 else tables[str(name[0])]
        del owner[name[-1]]


def _step(at: Any, part: str | int, change: Change) -> Any:
    try:
        return at[part]
    except (KeyError, IndexError, TypeError):
        raise InputError(", ".join(map(str, change.place)), "is no place in this file") from None


def _plain(value: Any) -> Any:
    """A value without what is not given, and lists in place of other rows of values."""
    if isinstance(value, Mapping):
        return {name: _plain(inner) for name, inner in value.items() if inner is not None}
    return [_plain(inner) for inner in value] if isinstance(value, (list, tuple)) else value
