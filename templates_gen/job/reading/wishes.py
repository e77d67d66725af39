"""What is wished of an arrangement that is to be found: which frames where, and which together."""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.base.errors import InputError, did_you_mean
from templates_gen.job.tables.group import GroupTable
from templates_gen.job.wishes import Wishes

FIELDS = ("largest", "pin", "together", "same_height", "heavy_low", "seed")
"""The fields of a group that only an arrangement to be found has."""


def build_wishes(table: GroupTable, ids: Sequence[str], where: str) -> Wishes | None:
    """The wishes for a group, None for an arrangement that is not found but given.  Raises InputError."""
    if table.arrangement != "salon":
        for name in FIELDS:
            if getattr(table, name):
                raise InputError(f"{where}, {name}", f"does not belong to arrangement {table.arrangement!r}")
        return None
    pins = tuple((_known(name, ids, f"{where}, pin"), x, y) for name, (x, y) in (table.pin or {}).items())
    return Wishes(
        largest=table.largest or "",
        pins=pins,
        together=_lists(table.together, ids, f"{where}, together"),
        same_height=_lists(table.same_height, ids, f"{where}, same_height"),
        heavy_low=table.heavy_low,
    )


def _lists(lists: list[list[str]] | None, ids: Sequence[str], where: str) -> tuple[tuple[str, ...], ...]:
    for names in lists or []:
        for name in names:
            _known(name, ids, where)
        if len(names) < 2 or len(set(names)) < len(names):
            raise InputError(where, f"found {names!r}, expected two or more different frames")
    return tuple(map(tuple, lists or []))


def _known(name: str, ids: Sequence[str], where: str) -> str:
    if name not in ids:
        raise InputError(where, f"found {name!r}, which is not a frame of this job", did_you_mean(name, ids))
    return name
