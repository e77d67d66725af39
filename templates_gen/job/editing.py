"""A job file's text is changed at some places, and stays as it is at all others: remarks, order and line ends.

The only file that imports tomlkit.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping, Sequence
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError
from tomlkit.items import AoT

from templates_gen.base.errors import InputError
from templates_gen.base.toml import field
from templates_gen.job.changes import LISTED, Change, changed, inside, plain
from templates_gen.job.table_lines import cut_out, with_block, without_block


def edited(text: str, changes: Sequence[Change]) -> str:
    """The text of a job file after these changes, one after the other.

    Raises InputError for a text that is no TOML, or that is written in a way in which a place cannot be changed alone;
    whether the result is a job is for its reader.
    """
    unix = text.replace("\r\n", "\n")
    new = _written(unix, changes, changed(_parsed(unix), changes))
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
        if _filled(tomllib.loads(text)) == _filled(wanted):
            return text
    except (TOMLKitError, ValueError, KeyError, TypeError, IndexError, AttributeError):
        pass  # the same as a text that says something else: the way it is written is one that was not foreseen
    where = ", ".join(map(str, changes[0].place)) if changes else ""
    raise InputError(where, "cannot be changed alone as the file is written", "change it in a text editor")


def _filled(tables: Mapping[str, Any]) -> dict[str, Any]:
    """The tables with something in them: one without anything is as good as none."""
    return {name: table for name, table in tables.items() if table != {}}


def _changed(text: str, change: Change) -> str:
    name, number = change.place[:-1], change.place[-1]
    if name in LISTED and isinstance(number, int):
        lines = _lines_changed(text, tuple(map(str, name)), number, change.value)
        if lines is not None:
            return lines
    # parsing takes the longest: that of one frame's table a fiftieth of that of a wall with sixty
    for listed in LISTED:
        rest = change.place[len(listed) :]
        if change.place[: len(listed)] == listed and len(rest) > 1 and isinstance(rest[0], int):
            if parts := cut_out(text, listed, rest[0]):
                before, own, after = parts
                return before + _value_changed(own, Change((*listed, 0, *rest[1:]), change.value)) + after
    return _value_changed(text, change)


def _value_changed(text: str, change: Change) -> str:
    document = tomlkit.parse(text)
    _set(document, change)
    return document.as_string()


def _lines_changed(text: str, name: tuple[str, ...], number: int, value: Any) -> str | None:
    """A table in double brackets added or taken out as lines, so that remarks stay where they belong; None where this
    is another change, or the tables are written otherwise."""
    count = len(inside(_parsed(text), name) or ())
    if value is None:
        return without_block(text, name, number)
    if number < count:
        return None
    return with_block(text, name, [f"[[{'.'.join(name)}]]", *_fields(value)])


def _fields(table: Mapping[str, Any]) -> list[str]:
    return [line for name, value in table.items() if value is not None for line in field(name, value)]


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
        at[last] = _item(change.value, not way or _of_tables(change.value))


def _of_tables(value: Any) -> bool:
    """True for what is easier to read under a heading of its own: a table with a table for each of several names."""
    return isinstance(value, Mapping) and bool(value) and all(isinstance(inner, Mapping) for inner in value.values())


def _item(value: Any, table: bool = False) -> Any:
    """The value as it is to be written: a table at the top under its own heading, any other in its line."""
    if table and isinstance(value, Mapping):
        made: Any = tomlkit.table()
        for name, inner in plain(value).items():
            made[name] = _item(inner)
        return made
    return tomlkit.value("\n".join(field("", plain(value))).removeprefix(" = "))
