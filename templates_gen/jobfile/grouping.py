"""The group table becomes a group: which frames in which row, and where the whole hangs."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from templates_gen.errors import InputError
from templates_gen.jobfile.tables import GroupTable, HeightTable, SpotTable
from templates_gen.jobfile.typed import nearest, read_length, read_table
from templates_gen.model import Feature, Frame, Group, Height, Spot
from templates_gen.units import INCH

DEFAULT_GAP = 63.5
"""mm (2 1/2 in) between frames when none is given: within the 2-3 in usual for home groups.  Common practice."""

DEFAULT_CENTRE = 57 * INCH
"""mm.  57 in from the floor to the middle of a picture, as many museums hang.  Common practice, not a standard."""

NOT_COMPUTED = ("stairs", "salon")
ALIGNMENTS = {
    "row": ("top", "centre", "bottom"), "rows": ("top", "centre", "bottom"), "grid": ("top", "centre", "bottom"),
    "column": ("left", "centre", "right"), "columns": ("left", "centre", "right"),
    "placed": ("top", "centre", "bottom", "left", "right"),
}  # fmt: skip
SETTINGS = {
    "rows": ("left", "centre", "right", "spread"), "grid": ("left", "centre", "right"),
    "columns": ("top", "centre", "bottom", "spread"),
}  # fmt: skip


def build_group(
    table: GroupTable, frames: Sequence[Frame], features: Sequence[Feature], unit: str, where: str
) -> Group:
    """The finished group, every frame in it exactly once.  Raises InputError."""
    if table.arrangement in NOT_COMPUTED:
        raise InputError(
            f"{where}, arrangement", f"{table.arrangement!r} is not computed yet", f"use one of {', '.join(ALIGNMENTS)}"
        )
    _one_of(table.align, ALIGNMENTS[table.arrangement], f"{where}, align", table.arrangement)
    _one_of(table.set, SETTINGS.get(table.arrangement, ("centre",)), f"{where}, set", table.arrangement)
    gap = DEFAULT_GAP if table.gap is None else table.gap
    return Group(
        arrangement=table.arrangement,
        rows=_rows(table, [frame.id for frame in frames], where),
        gap_across=gap if table.gap_across is None else table.gap_across,
        gap_down=gap if table.gap_down is None else table.gap_down,
        align=table.align,
        set=table.set,
        spots=_spots(table, unit, where),
        centre_on=_centre_on(table.centre_on, features, unit, f"{where}, centre_on"),
        height=_height(table.height, features, f"{where}, height"),
    )


def _one_of(found: str, allowed: Sequence[str], where: str, arrangement: str) -> None:
    if found not in allowed:
        raise InputError(where, f"found {found!r}, expected one of {', '.join(allowed)} for {arrangement!r}")


def _rows(table: GroupTable, ids: list[str], where: str) -> tuple[tuple[str, ...], ...]:
    """The rows (or columns) of ids, each frame once."""
    kind = table.arrangement
    for name in {"rows", "columns", "order", "across", "place"} - _USED[kind]:
        if getattr(table, name) is not None:
            raise InputError(f"{where}, {name}", f"does not belong to arrangement {kind!r}")
    rows = _listed(table, ids, where)
    _each_once([name for row in rows for name in row], ids, f"{where}, {_listing_field(table)}")
    return tuple(tuple(row) for row in rows)


_USED = {
    "row": {"order"}, "column": {"order"}, "rows": {"rows"}, "columns": {"columns"},
    "grid": {"rows", "order", "across"}, "placed": {"place"},
}  # fmt: skip


def _listing_field(table: GroupTable) -> str:
    named = ("rows", "columns", "order", "place")
    return next((name for name in named if getattr(table, name) is not None), "arrangement")


def _listed(table: GroupTable, ids: list[str], where: str) -> list[list[str]]:
    if table.arrangement in ("rows", "columns"):
        rows = table.rows if table.arrangement == "rows" else table.columns
        if not rows or not all(rows):
            name = table.arrangement
            raise InputError(f"{where}, {name}", f'expected lists of frame ids, such as  {name} = [["A", "B"], ["C"]]')
        return rows
    if table.arrangement == "placed":
        return [list(table.place or {})]
    if table.rows is not None:
        if not table.rows or not all(table.rows):
            raise InputError(f"{where}, rows", 'expected lists of frame ids, such as  rows = [["A", "B"], ["C"]]')
        return table.rows
    order = table.order if table.order is not None else ids
    return [order] if table.arrangement != "grid" else _wrapped(order, table.across, f"{where}, across")


def _wrapped(order: list[str], across: int | None, where: str) -> list[list[str]]:
    if across is None or across < 1:
        raise InputError(where, f"found {across}, expected how many frames stand in one row of the grid, 1 or more")
    return [order[at : at + across] for at in range(0, len(order), across)]


def _each_once(used: list[str], ids: list[str], where: str) -> None:
    known, counted = set(ids), Counter(used)
    for name, count in counted.items():
        if name not in known:
            near = nearest(name, ids)
            raise InputError(where, f"found {name!r}, which is no frame", f"did you mean {near!r}?" if near else "")
        if count > 1:
            raise InputError(where, f"found {name!r} twice, expected each frame once")
    if missing := [name for name in ids if name not in counted]:
        raise InputError(where, f"the frames {', '.join(missing)} are missing, expected every frame once")


def _spots(table: GroupTable, unit: str, where: str) -> tuple[tuple[str, Spot], ...]:
    return tuple((name, _spot(spot, unit, f"{where}, place, {name}")) for name, spot in (table.place or {}).items())


def _spot(raw: object, unit: str, where: str) -> Spot:
    table = read_table(raw, SpotTable, unit, where)
    given = [(name, getattr(table, name)) for name in table.__struct_fields__ if getattr(table, name) is not None]
    if len(given) != 1:
        raise InputError(
            where, f"found {len(given)} points, expected one of {', '.join(table.__struct_fields__)}",
            'for example  { centre = ["-10 in", "4 in"] }, from the centre line and the level line',
        )  # fmt: skip
    ((point, (x, y)),) = given
    return Spot(point=point, x=x, y=y)


def _centre_on(value: str | int | float, features: Sequence[Feature], unit: str, where: str) -> str | float:
    if isinstance(value, str):
        names = [feature.name for feature in features]
        if value == "wall" or value in names:
            return _only(value, names, where)
        if not any(char.isdigit() for char in value):
            near = nearest(value, ["wall", *names])
            hint = f"did you mean {near!r}?" if near else f"features: {', '.join(filter(None, names)) or 'none'}"
            raise InputError(where, f"found {value!r}, expected 'wall', the name of a feature, or a distance", hint)
    return read_length(value, unit, where)


def _height(table: HeightTable | None, features: Sequence[Feature], where: str) -> Height:
    if table is None:
        return Height(by="centre", at=DEFAULT_CENTRE)
    ways = [name for name in ("centre", "above", "top", "bottom") if getattr(table, name) is not None]
    if len(ways) != 1 or (table.by is not None) != (ways == ["above"]):
        raise InputError(
            where, f"found {', '.join(ways) or 'nothing'}, expected one of centre, top, bottom, or above with by",
            'for example  { centre = "57 in" }  or  { above = "bench", by = "8 in" }',
        )  # fmt: skip
    if table.above is None:
        return Height(by=ways[0], at=getattr(table, ways[0]))
    names = [feature.name for feature in features]
    if table.above not in names:
        near = nearest(table.above, names)
        hint = f"did you mean {near!r}?" if near else f"features: {', '.join(filter(None, names)) or 'none'}"
        raise InputError(f"{where}, above", f"found {table.above!r}, expected the name of a feature", hint)
    return Height(by="above", at=table.by or 0.0, feature=_only(table.above, names, f"{where}, above"))


def _only(name: str, names: Sequence[str], where: str) -> str:
    """The name, when it means one feature and not two of a kind."""
    if names.count(name) > 1:
        raise InputError(where, f"found {name!r}, which is {names.count(name)} features", "give each a name of its own")
    return name
