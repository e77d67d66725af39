"""The group table becomes a group: which frames in which row, and where the whole hangs."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from templates_gen.base.errors import InputError, did_you_mean
from templates_gen.job.arrangements import ARRANGEMENTS, LISTING, SIDES
from templates_gen.job.model import Frame, Group, Spot, Wall
from templates_gen.job.reading.place import centre_of, feature_around, gap_around, height_of, known_frame, slope_of
from templates_gen.job.reading.typed import read_table
from templates_gen.job.tables.group import GroupTable, SpotTable
from templates_gen.job.wishes import Wishes

DEFAULT_GAP = 63.5
"""mm (2 1/2 in) between frames when none is given: within the 2-3 in usual for home groups.  Common practice."""


def build_group(table: GroupTable, frames: Sequence[Frame], wall: Wall, unit: str) -> Group:
    """The finished group, every frame in it exactly once.  Raises InputError."""
    kind = ARRANGEMENTS[table.arrangement]
    _one_of(table.align, kind.align, "group, align", kind.name)
    _one_of(table.set, kind.set, "group, set", kind.name)
    gap = DEFAULT_GAP if table.gap is None else table.gap
    around = feature_around(table, wall)
    ids = [frame.id for frame in frames]
    centre_on, anchor = centre_of(table, ids, wall, unit)
    height = height_of(table, ids, wall)
    return Group(
        arrangement=table.arrangement,
        rows=_rows(table, ids),
        gap_across=gap if table.gap_across is None else table.gap_across,
        gap_down=gap if table.gap_down is None else table.gap_down,
        align=table.align,
        set=table.set,
        spots=_spots(table, unit),
        centre_on=centre_on,
        anchor=anchor,
        height=height,
        slope=slope_of(table, wall),
        around=around,
        gap_around=gap_around(table, gap),
        wishes=build_wishes(table, ids, (anchor, height.of)),
        seed=table.seed,
    )


def _one_of(found: str, allowed: Sequence[str], where: str, arrangement: str) -> None:
    if found not in allowed:
        raise InputError(where, f"found {found!r}, expected one of {', '.join(allowed)} for {arrangement!r}")


def _rows(table: GroupTable, ids: list[str]) -> tuple[tuple[str, ...], ...]:
    """The rows (or columns) of ids, each frame once."""
    for name in sorted(LISTING - {*ARRANGEMENTS[table.arrangement].takes}):
        if getattr(table, name) is not None:
            raise InputError(f"group, {name}", f"does not belong to arrangement {table.arrangement!r}")
    rows = _listed(table, ids)
    _each_once([name for row in rows for name in row], ids, f"group, {_listing_field(table)}")
    return tuple(tuple(row) for row in rows)


def _listing_field(table: GroupTable) -> str:
    named = ("rows", "columns", "order", "place", "around")
    return next((name for name in named if getattr(table, name) is not None), "arrangement")


def _listed(table: GroupTable, ids: list[str]) -> list[list[str]]:
    if table.arrangement in ("rows", "columns"):
        return _all_listed(table.rows if table.arrangement == "rows" else table.columns, table.arrangement)
    if table.arrangement == "placed":
        return [list(table.place or {})]
    if table.arrangement == "around":
        return [getattr(table, side) or [] for side in SIDES]
    if table.rows is not None:
        return _all_listed(table.rows, "rows")
    order = table.order if table.order is not None else ids
    return [order] if table.arrangement != "grid" else _wrapped(order, table.across)


def _all_listed(lists: list[list[str]] | None, name: str) -> list[list[str]]:
    """The lists, none of which may be empty."""
    if not lists or not all(lists):
        line = name.removesuffix("s")
        problem = f"names no frame, expected the frames of every {line}"
        raise InputError(f"group, {name}", problem, f'for example  {name} = [["A", "B"], ["C"]]')
    return lists


def _wrapped(order: list[str], across: int | None) -> list[list[str]]:
    if across is None:
        problem = "is missing, expected how many frames are in each row of the grid"
        raise InputError("group, across", problem, "for example  across = 3")
    return [order[at : at + across] for at in range(0, len(order), across)]


def _each_once(used: list[str], ids: list[str], where: str) -> None:
    known, counted = set(ids), Counter(used)
    for name, count in counted.items():
        if name not in known:
            raise InputError(where, f"found {name!r}, which is not a frame of this job", did_you_mean(name, ids))
        if count > 1:
            raise InputError(where, f"found {name!r} twice, expected each frame once")
    if missing := [name for name in ids if name not in counted]:
        verb = "s {} are" if len(missing) > 1 else " {} is"
        raise InputError(where, f"frame{verb.format(', '.join(missing))} missing, expected every frame once")


def _spots(table: GroupTable, unit: str) -> tuple[tuple[str, Spot], ...]:
    return tuple((name, _spot(spot, unit, f"group, place, {name}")) for name, spot in (table.place or {}).items())


def _spot(raw: object, unit: str, where: str) -> Spot:
    table = read_table(raw, SpotTable, unit, where)
    given = [*table.given.items()]
    if len(given) != 1:
        raise InputError(
            where, f"found {len(given)} points, expected one of {', '.join(table.__struct_fields__)}",
            'for example  { centre = ["-10 in", "4 in"] }, from the centre line and the level line',
        )  # fmt: skip
    ((point, (x, y)),) = given
    return Spot(point=point, x=x, y=y)


WISHES = ("largest", "pin", "together", "same_height", "heavy_low", "seed")
"""The fields of a group that only an arrangement to be found has."""


def build_wishes(table: GroupTable, ids: Sequence[str], anchors: Sequence[str]) -> Wishes | None:
    """The wishes for a group, None for an arrangement that is not found but given; `anchors` have their place by how
    the group hangs.  Raises InputError."""
    if table.arrangement != "salon":
        for name in WISHES:
            if getattr(table, name):
                raise InputError(f"group, {name}", f"does not belong to arrangement {table.arrangement!r}")
        return None
    pins = tuple((known_frame(name, ids, "group, pin"), x, y) for name, (x, y) in (table.pin or {}).items())
    if twice := [name for name, _, _ in pins if name in anchors]:
        problem = f"frame {twice[0]} is pinned, and centre_on or height goes by it, too"
        raise InputError("group, pin", problem, "leave one of the two out")
    return Wishes(
        largest=table.largest or "",
        pins=pins,
        together=_lists(table.together, ids, "group, together"),
        same_height=_lists(table.same_height, ids, "group, same_height"),
        heavy_low=table.heavy_low,
    )


def _lists(lists: list[list[str]] | None, ids: Sequence[str], where: str) -> tuple[tuple[str, ...], ...]:
    for names in lists or []:
        for name in names:
            known_frame(name, ids, where)
        if len(names) < 2 or len(set(names)) < len(names):
            raise InputError(where, f"found {names!r}, expected two or more different frames")
    return tuple(map(tuple, lists or []))
