"""What every value of this program is made of: small frozen records.  The only file that imports msgspec.

A record is written like a dataclass, cannot be changed, compares by its fields and can be a key.  Defining one takes
a fortieth of the time of a frozen dataclass, which decides how fast the program starts.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any, TypeVar

import msgspec
from msgspec import field
from msgspec.structs import replace


class Record(msgspec.Struct, frozen=True):
    """Base of every value."""


class Draft(msgspec.Struct):
    """Base of what is still being put together, and never leaves the file it is in."""


class Table(msgspec.Struct, forbid_unknown_fields=True, kw_only=True):
    """Base of every table of a job file, as it is written; an unknown field is an error."""


NEEDED = msgspec.NODEFAULT
"""What `defaults_of` has for a field that has to be given."""


def defaults_of(table: type[Table]) -> list[tuple[str, Any]]:
    """The names of a table's fields, each with the value it has where none is given, or `NEEDED`."""
    return [
        (known.name, known.default if known.default_factory is NEEDED else known.default_factory())
        for known in msgspec.structs.fields(table)
    ]


_TableT = TypeVar("_TableT", bound=Table)


def convert(raw: object, table: type[_TableT], decode: Callable[[type, object], Any], loose: bool) -> _TableT:
    """The record of one untyped table; `decode` makes lengths and weights; `loose` takes numbers written as text.

    Raises ValueError in the library's words, ending in the path to the fault (`… - at `$.hanger.left``).
    """
    try:
        return msgspec.convert(raw, table, dec_hook=decode, strict=not loose)
    except msgspec.ValidationError as error:
        raise ValueError(str(error)) from None


def json_schemas(tables: Sequence[type[Table]], custom: Callable[[type], dict[str, Any]]) -> dict[str, dict[str, Any]]:
    """The JSON Schemas of tables and of those that they refer to, under `#/$defs/`, by the name of the table.

    `custom` tells how a type is written that is none of JSON's.
    """
    return msgspec.json.schema_components(tables, schema_hook=custom, ref_template="#/$defs/{name}")[1]


__all__ = ["NEEDED", "Draft", "Record", "Table", "convert", "defaults_of", "field", "json_schemas", "replace"]
