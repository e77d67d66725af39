"""Changes of a job file: a value at a place of its tables.  `editing.py` makes them in its text."""

from __future__ import annotations

import copy
from collections.abc import Mapping, Sequence
from typing import Any

from templates_gen.base.errors import InputError
from templates_gen.base.record import Record

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


def changed(tables: Mapping[str, Any], changes: Sequence[Change]) -> dict[str, Any]:
    """The tables of a job file after these changes, one after the other; the given ones stay as they are.

    Raises InputError for a place that there is not.
    """
    after: dict[str, Any] = copy.deepcopy(dict(tables))
    for change in changes:
        after = _put(after, change)
    return after


def _put(tables: dict[str, Any], change: Change) -> dict[str, Any]:
    """The tables after one change; they are changed in place."""
    *way, last = change.place
    at: Any = tables
    for step, part in enumerate(way):
        _table_or_list(at, change)
        if isinstance(part, str) and part not in at:
            if change.value is None:
                return tables
            # a number next in a place that is not there begins a list
            at[part] = [] if isinstance(change.place[step + 1], int) else {}
        at = _step(at, part, change)
    _table_or_list(at, change)
    if change.value is None:
        if isinstance(last, int) or last in at:
            _step(at, last, change)
            del at[last]
            _prune(tables, tuple(way))
    elif isinstance(at, list) and isinstance(last, int) and last >= 0:
        at[last : last + 1] = [plain(change.value)]  # the number after the last one adds to it
    elif isinstance(at, dict) and isinstance(last, str):
        at[last] = plain(change.value)
    else:
        raise InputError(", ".join(map(str, change.place)), "is no place in this file")
    return tables


def _prune(tables: dict[str, Any], name: Place) -> None:
    """A list of tables in double brackets is gone with its last one."""
    if name in LISTED and not inside(tables, [str(part) for part in name]):
        owner: Any = tables if len(name) == 1 else tables[str(name[0])]
        del owner[name[-1]]


def _table_or_list(at: Any, change: Change) -> None:
    """Raises InputError for a text or a number, which has nothing in it: hanger = "wire" has no field."""
    if not isinstance(at, (dict, list)):
        raise InputError(", ".join(map(str, change.place)), "is no place in this file")


def _step(at: Any, part: str | int, change: Change) -> Any:
    try:
        return at[part]
    except (KeyError, IndexError, TypeError):
        raise InputError(", ".join(map(str, change.place)), "is no place in this file") from None


def inside(table: Any, name: Sequence[str]) -> Any:
    """What is at this place of a table; None where nothing is."""
    for part in name:
        table = table.get(part) if isinstance(table, Mapping) else None
    return table


def plain(value: Any) -> Any:
    """A value without what is not given, and lists in place of other rows of values."""
    if isinstance(value, Mapping):
        return {name: plain(inner) for name, inner in value.items() if inner is not None}
    return [plain(inner) for inner in value] if isinstance(value, (list, tuple)) else value
