"""Frame tables become frames: what a type gives is filled in, pairs seen from the back are mirrored."""

from __future__ import annotations

from typing import Any

from templates_gen.errors import InputError
from templates_gen.holding.weighing import Estimate, estimate
from templates_gen.jobfile.parts import build_parts, check_parts, worked_out
from templates_gen.jobfile.tables import FixingKind, FixingTable, FrameTable, HangerKind, HangerTable
from templates_gen.model import Fixing, Frame, Hanger

PAIRS = ("rings", "keyholes", "cleat")
"""The hangers with two bearing points or screws, whose left and right matter."""

UNUSED_FIELDS = ("image",)


def build_frame(table: FrameTable, shared: FrameTable | None, fixing: Fixing, unit: str, where: str) -> Frame:
    """The finished frame; bare numbers inside a text such as "8 x 10" are in `unit`.

    Raises InputError for a size that is missing or zero, parts that do not go together, or an incomplete hanger.
    """
    given = _merged(table, shared)
    parts = build_parts(given, unit, where)
    built = worked_out(parts)
    size = _size(given, 0, built, where), _size(given, 1, built, where)
    check_parts(parts, size, where)
    weighed, own_fixing = given["weight"], given["fixing"]
    weight = estimate(parts, size, given["depth"]) if weighed is None else Estimate(weighed)
    return Frame(
        id=given["id"],
        title=given["title"] or "",
        width=size[0],
        height=size[1],
        depth=given["depth"],
        weight=weight.weight,
        estimated=weighed is None and weight.weight is not None,
        drop=given["drop"],
        image=given["image"] or "",
        hanger=_hanger(given["hanger"], f"{where}, hanger"),
        fixing=fixing if own_fixing is None else build_fixing(own_fixing, f"{where}, fixing"),
        glazing=parts.glazing.kind if parts.glazing else "",
        worked_out=built,
        lacking=weight.lacking,
    )


def unused_fields(table: FrameTable, shared: FrameTable | None) -> list[str]:
    """The names of the given fields that nothing computes with yet."""
    given = _merged(table, shared)
    return [name for name in UNUSED_FIELDS if given[name] is not None]


def build_fixing(table: FixingTable | FixingKind, where: str) -> Fixing:
    """The finished fixing.  Raises InputError for a hook without `below`, or a nail count below one."""
    if isinstance(table, str):
        table = FixingTable(kind=table)
    if table.kind == "hook" and table.below is None:
        raise InputError(
            where, "a hook needs 'below': how far its seat lies below its nail", 'for example  below = "7/8 in"'
        )
    if table.nails is not None and table.nails < 1:
        raise InputError(f"{where}, nails", f"found {table.nails}, expected 1 or more")
    if table.rating is not None and table.rating <= 0:
        raise InputError(f"{where}, rating", "found 0, expected the weight that its maker rates it for")
    if table.diameter is not None and not 0 < table.diameter <= 20:
        raise InputError(f"{where}, diameter", f"found {table.diameter:g} mm, expected more than 0 and at most 20 mm")
    if table.angle is not None and not 0 <= table.angle < 90:
        raise InputError(f"{where}, angle", f"found {table.angle}, expected degrees from straight in, 0 to 90")
    values = {name: getattr(table, name) for name in table.__struct_fields__}
    return Fixing(**{name: value for name, value in values.items() if value is not None})


def _merged(table: FrameTable, shared: FrameTable | None) -> dict[str, Any]:
    own = {name: getattr(table, name) for name in table.__struct_fields__}
    if shared is None:
        return own
    return {name: getattr(shared, name) if value is None else value for name, value in own.items()}


def _size(given: dict[str, Any], axis: int, built: tuple[float, float] | None, where: str) -> float:
    """An outside side as it is given, else as print, mat and moulding make it."""
    side = ("width", "height")[axis]
    value = given[side]
    if value is None and built is not None:
        return built[axis]
    if value is None:
        hint = "or give 'print' and 'moulding', with its 'face', to have it worked out"
        raise InputError(where, f"{side!r} is missing, expected the outside {side} of the frame", hint)
    if value <= 0:
        raise InputError(f"{where}, {side}", "found 0, expected more than nothing")
    return float(value)


def _hanger(table: HangerTable | HangerKind | None, where: str) -> Hanger:
    if table is None:
        return Hanger(kind="wire")
    if isinstance(table, str):
        table = HangerTable(kind=table)
    _check_fields_fit(table, where)
    values = {name: getattr(table, name) for name in table.__struct_fields__ if name != "seen_from"}
    if table.kind in PAIRS:
        values |= _front_view(table, where)
    return Hanger(**values)


_WIRE_FIELDS = ("apart", "drop_at_two", "ring_separation", "ring_depth")
_PAIR_FIELDS = ("left", "right", "drop_left", "drop_right", "seen_from")


def _check_fields_fit(table: HangerTable, where: str) -> None:
    """A field that this kind of hanger cannot use is a mistake, not a decoration."""
    strange = list(_WIRE_FIELDS if table.kind != "wire" else ())
    strange += _PAIR_FIELDS if table.kind not in PAIRS else ()
    strange += ["screw_below"] if table.kind != "cleat" else []
    strange += ["drop_left", "drop_right"] if table.kind == "cleat" else []
    for name in strange:
        if getattr(table, name) is not None:
            raise InputError(f"{where}, {name}", f"does not belong to a hanger of kind {table.kind!r}")


def _front_view(table: HangerTable, where: str) -> dict[str, float | None]:
    """Left and right as seen from the front, where the paper is seen from.

    Raises InputError when the two sides differ and the file does not say from where they were seen: a guess would
    put both holes in the wrong place.
    """
    if table.left is None or table.right is None:
        raise InputError(where, f"{table.kind} need 'left' and 'right': how far each lies in from the frame's sides")
    sides = (table.left, table.drop_left), (table.right, table.drop_right)
    if sides[0] != sides[1] and table.seen_from is None:
        raise InputError(
            where,
            "left and right differ, expected 'seen_from' to say from where they were seen",
            'for example  seen_from = "back"',
        )
    (left, drop_left), (right, drop_right) = sides[::-1] if table.seen_from == "back" else sides
    return {"left": left, "right": right, "drop_left": drop_left, "drop_right": drop_right}
