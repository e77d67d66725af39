"""The day that a build names for all it makes."""

from __future__ import annotations

import datetime
import os

from templates_gen.base.errors import InputError

NAME = "SOURCE_DATE_EPOCH"
"""The variable, as the convention of reproducible builds calls it (reproducible-builds.org, specification 1.1; from
memory)."""


def source_date() -> str | None:
    """The day that the variable names, such as 2026-03-14; None where it is not set.  Raises InputError."""
    stamp = os.environ.get(NAME, "").strip()
    if not stamp:
        return None
    try:
        return datetime.datetime.fromtimestamp(int(stamp), tz=datetime.UTC).date().isoformat()
    except (ValueError, OSError, OverflowError):
        raise InputError(NAME, f"found {stamp!r}, expected seconds since 1970", f"or unset {NAME}") from None
