"""The tables of a frame as they are written: its hanger, its fixing, and what it is made of."""

from __future__ import annotations

from typing import Any, Literal

from templates_gen.base.record import Table
from templates_gen.job.tables.field import Length, Mass

HangerKind = Literal["wire", "sawtooth", "rings", "keyholes", "cleat"]
FixingKind = Literal["nail", "hook", "screw"]


class HangerTable(Table):
    """A hanger; without a kind it completes that of the frame's type."""

    kind: HangerKind | None = None
    left: Length | None = None
    right: Length | None = None
    drop_left: Length | None = None
    drop_right: Length | None = None
    seen_from: Literal["front", "back"] | None = None
    apart: Length | None = None
    drop_at_two: Length | None = None
    ring_separation: Length | None = None
    ring_depth: Length | None = None
    screw_below: Length | None = None


class FixingTable(Table):
    kind: FixingKind = "nail"
    diameter: Length | None = None
    below: Length | None = None
    rating: Mass | None = None
    nails: int | None = None
    length: Length | None = None
    angle: int | float | None = None


class MouldingTable(Table):
    face: Length | None = None
    rabbet: Length | None = None
    allowance: Length | None = None
    wood: str | None = None
    depth: Length | None = None
    rabbet_depth: Length | None = None


class MatTable(Table):
    width: Length | None = None
    top: Length | None = None
    right: Length | None = None
    bottom: Length | None = None
    left: Length | None = None
    overlap: Length | None = None


class PartTable(Table):
    kind: str
    thickness: Length | None = None


class FrameTable(Table):
    """A frame, or what the frames of one type share."""

    id: str | None = None
    type: str | None = None
    title: str | None = None
    width: Length | None = None
    height: Length | None = None
    depth: Length | None = None
    weight: Mass | None = None
    drop: Length | None = None
    hanger: HangerKind | HangerTable | None = None
    fixing: FixingKind | FixingTable | None = None
    image: str | None = None
    print: tuple[Length, Length] | str | None = None
    mat: Any = None
    moulding: MouldingTable | None = None
    glazing: str | PartTable | None = None
    backing: str | PartTable | None = None
