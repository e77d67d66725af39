"""What every value of this program is made of: small frozen records.  The only file that imports msgspec.

A record is written like a dataclass, cannot be changed, compares by its fields and can be a key.  Defining one takes
a fortieth of the time of a frozen dataclass, which decides how fast the program starts.
"""

from __future__ import annotations

from typing import Any

import msgspec
from msgspec import field
from msgspec.structs import replace


class Record(msgspec.Struct, frozen=True):
    """Base of every value."""


class Draft(msgspec.Struct):
    """Base of what is still being put together, and never leaves the file it is in."""


class Table(msgspec.Struct, kw_only=True):
    """Base of every table of a job file, as it is written."""

    @property
    def given(self) -> dict[str, Any]:
        """Its fields that are given, by their names."""
        return {name: value for name, value in msgspec.structs.asdict(self).items() if value is not None}


NEEDED = msgspec.NODEFAULT
"""What `declared` has for a field that has to be given."""


def declared(table: type[Table]) -> list[tuple[str, Any, Any]]:
    """The names of a table's fields, each with its type and the value it has where none is given, or `NEEDED`."""
    return [
        (known.name, known.type, known.default if known.default_factory is NEEDED else known.default_factory())
        for known in msgspec.structs.fields(table)
    ]


__all__ = ["NEEDED", "Draft", "Record", "Table", "declared", "field", "replace"]
