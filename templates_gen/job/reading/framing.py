"""Frame tables become frames: what a type gives is filled in, pairs seen from the back are mirrored."""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from templates_gen.base.errors import InputError
from templates_gen.base.files import odd_kind
from templates_gen.base.picture_files import shown_size
from templates_gen.base.units import as_found
from templates_gen.job.frame_sizes import mat_shown
from templates_gen.job.hangers import HANGERS, WIRE, HangerKind, KindName
from templates_gen.job.model import Fixing, Frame, Hanger
from templates_gen.job.reading.parts import build_parts, check_parts, worked_out
from templates_gen.job.tables.frame import FrameTable
from templates_gen.job.tables.hanger import FixingKind, FixingTable, HangerTable
from templates_gen.job.weights import Estimate, estimate

LEAST_SIDE = 1.0
"""mm.  A frame of less is taken for a slip.  Our own design, no source."""

SCREW = 4.0
"""mm; how thick a screw is that is not told: 4 mm, or a #8 of 4.2 mm, is what holds pictures.  Common practice, no
source."""


def build_frame(
    table: FrameTable, shared: FrameTable | None, fixing: Fixing, unit: str, where: str, beside: Path,
    measured: FrameTable | None = None,
) -> Frame:  # fmt: skip
    """The finished frame; bare numbers inside a text such as "8 x 10" are in `unit`, an image is looked for `beside`.

    What is `measured` goes before what its own table gives, and that before what its type shares.

    Raises InputError for a size that is missing or zero, parts that do not go together, or an incomplete hanger.
    """
    listed = _merged(table, shared)
    given = _merged(measured, table, shared)
    parts = build_parts(given, unit, where)
    built = worked_out(parts)
    size = _size(given, 0, built, where), _size(given, 1, built, where)
    check_parts(parts, size, where)
    weighed, hanger = given["weight"], _hanger((shared, table, measured), f"{where}, hanger")
    weight = estimate(parts, size, given["depth"]) if weighed is None else Estimate(weighed)
    image = beside / given["image"] if given["image"] else None
    if image and (kind := odd_kind(image)):
        raise InputError(f"{where}, image", f"found {kind}, expected the file of a picture")
    return Frame(
        id=given["id"],
        title=given["title"] or "",
        type=given["type"] or "",
        width=size[0],
        height=size[1],
        depth=given["depth"],
        weight=weight.weight,
        estimated=weighed is None and weight.weight is not None,
        drop=given["drop"],
        image=str(image or ""),
        image_missing=image is not None and not os.path.exists(image),
        image_size=shown_size(Path(image)) if image is not None else None,
        face=parts.moulding.face if parts.moulding else None,
        mat=mat_shown(parts.mat, parts.moulding) if parts.mat else None,
        hanger=hanger,
        fixing=_fixing(given["fixing"], fixing, hanger.traits, f"{where}, fixing"),
        glazing=parts.glazing.kind if parts.glazing else "",
        worked_out=built,
        listed=(listed["width"], listed["height"]) if measured else (None, None),
        lacking=weight.lacking,
    )


def _fixing(own: FixingTable | FixingKind | None, usual: Fixing, kind: HangerKind, where: str) -> Fixing:
    """The frame's own fixing, else the job's usual one, else the one that its hanger takes.

    Raises InputError for one of its own that cannot hold its hanger.
    """
    if own is None:
        return usual if usual.kind in kind.fixings else Fixing(**_as_sold(kind.fixings[0]))
    fixing = build_fixing(own, where)
    if fixing.kind not in kind.fixings:
        raise InputError(where, f"found a {fixing.kind}, expected a {' or '.join(kind.fixings)}", f"for {kind.name}")
    return fixing


def build_fixing(table: FixingTable | FixingKind, where: str) -> Fixing:
    """The finished fixing (mm, kg).  Raises InputError for a hook without `below`."""
    if isinstance(table, str):
        table = FixingTable(kind=table)
    if table.kind == "hook" and table.below is None:
        raise InputError(
            where, "a hook needs 'below': how far its seat lies below its nail", 'for example  below = "7/8 in"'
        )
    return Fixing(**_as_sold(table.kind) | table.given)


def _as_sold(kind: str) -> dict[str, Any]:
    """A fixing of which nothing but the kind is told."""
    return {"kind": kind, "diameter": SCREW} if kind == "screw" else {"kind": kind}


def _merged(*layers: FrameTable | None) -> dict[str, Any]:
    """Of every field what the first layer that gives it says."""
    merged: dict[str, Any] = dict.fromkeys(FrameTable.__struct_fields__)
    for layer in reversed(layers):
        merged |= layer.given if layer is not None else {}
    return merged


def _size(given: dict[str, Any], axis: int, built: tuple[float, float] | None, where: str) -> float:
    """An outside side as it is given, else as print, mat and moulding make it."""
    side = ("width", "height")[axis]
    value = given[side]
    if value is None and built is not None:
        return built[axis]
    if value is None:
        hint = "or give 'print' and 'moulding', with its 'face', to have it worked out"
        raise InputError(where, f"{side!r} is missing, expected the outside {side} of the frame", hint)
    if value < LEAST_SIDE:
        expected = f"more than nothing: {LEAST_SIDE:g} mm at least"
        raise InputError(f"{where}, {side}", f"found {as_found(value)}, expected {expected}")
    return float(value)


def _hanger(layers: Sequence[FrameTable | None], where: str) -> Hanger:
    """The hanger that a type shares, a frame's own, and the one that was measured, each over what came before it.

    One without a kind completes what came before it, and so does one that was measured and is of the same kind.  What
    a frame completes was seen from where its type says, unless it says otherwise.
    """
    values: dict[str, Any] = {"kind": WIRE.name}
    called: dict[str, str] = {}  # what the file calls a field that is told as seen from the front
    shared = layers[0].hanger if layers[0] is not None else None
    seen = shared.seen_from if shared is not None and not isinstance(shared, str) else None
    for layer, was_measured in zip(layers, (False, False, True), strict=True):
        if layer is not None and layer.hanger is not None:
            own = _front_view(layer.hanger, where, None if was_measured else seen)
            same = was_measured and own.get("kind") == values["kind"]
            values = values | own if same or "kind" not in own else own
            behind = (own.get("seen_from") or (None if was_measured else seen)) == "back"
            called |= {name: MIRRORED.get(name, name) if behind else name for name in own}
    _check_fields_fit(values, where, called)
    values.pop("seen_from", None)
    return Hanger(**values)


MIRRORED = {"left": "right", "right": "left", "drop_left": "drop_right", "drop_right": "drop_left"}
"""What lies on one side of a frame from behind lies on the other from the front."""


def _check_fields_fit(values: Mapping[str, Any], where: str, called: Mapping[str, str]) -> None:
    """A field that this kind of hanger cannot use is a mistake, not a decoration; it is `called` as in the file."""
    kind = HANGERS[values["kind"]]
    for name in HangerTable.__struct_fields__:
        if name in values and name != "kind" and name not in kind.takes:
            raise InputError(f"{where}, {called[name]}", f"does not belong to a hanger of kind {kind.name!r}")
        if name in values and isinstance(values[name], float) and values[name] < 0 and not kind.shows:
            problem = f"found {as_found(values[name])}, expected 0 or more: only plates stand out beyond a frame's edge"
            raise InputError(f"{where}, {called[name]}", problem)
    if any(name not in values for name in kind.needs):
        needed = " and ".join(map(repr, kind.needs))
        raise InputError(where, f"{kind.needing} {needed}: how far each lies in from the frame's sides")


def _front_view(table: HangerTable | KindName, where: str, seen: str | None) -> dict[str, Any]:
    """What the table gives, left and right as seen from the front, where the paper is seen from.

    `seen`: from where the type's sides were seen, for a table that completes it.

    Raises InputError when the two sides differ and the file does not say from where they were seen: a guess would
    put both holes in the wrong place.
    """
    if isinstance(table, str):
        return {"kind": table}
    values = table.given
    sides = (table.left, table.drop_left), (table.right, table.drop_right)
    seen_from = table.seen_from or (seen if table.kind is None else None)
    if sides[0] != sides[1] and seen_from is None and (table.kind is None or HANGERS[table.kind].pair):
        differ = "drop_left and drop_right" if table.left == table.right else "left and right"
        raise InputError(
            where,
            f"{differ} differ, expected 'seen_from' to say from where they were seen",
            'for example  seen_from = "back"',
        )
    if seen_from != "back":
        return values
    return {MIRRORED.get(name, name): value for name, value in values.items()}
