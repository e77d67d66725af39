"""The table of a group as it is written: how the frames are arranged, and where they hang."""

from __future__ import annotations

from typing import Any, Literal

from templates_gen.base.record import Table
from templates_gen.job.tables.field import Length, Offset


class HeightTable(Table):
    centre: Length | None = None
    above: str | None = None
    above_nosings: Length | None = None
    by: Length | None = None
    top: Length | None = None
    bottom: Length | None = None


class SpotTable(Table):
    centre: tuple[Offset, Offset] | None = None
    top_left: tuple[Offset, Offset] | None = None
    top_right: tuple[Offset, Offset] | None = None
    bottom_left: tuple[Offset, Offset] | None = None
    bottom_right: tuple[Offset, Offset] | None = None


class GroupTable(Table):
    arrangement: Literal["row", "column", "rows", "columns", "grid", "stairs", "around", "salon", "placed"] = "row"
    rows: list[list[str]] | None = None
    columns: list[list[str]] | None = None
    order: list[str] | None = None
    across: int | None = None
    place: dict[str, Any] | None = None
    around: str | None = None
    left: list[str] | None = None
    above: list[str] | None = None
    right: list[str] | None = None
    below: list[str] | None = None
    gap_around: Length | None = None
    largest: Literal["centre"] | None = None
    pin: dict[str, tuple[Offset, Offset]] | None = None
    together: list[list[str]] | None = None
    same_height: list[list[str]] | None = None
    heavy_low: bool = False
    seed: int = 0
    gap: Length | None = None
    gap_across: Length | None = None
    gap_down: Length | None = None
    align: Literal["top", "centre", "bottom", "left", "right"] = "centre"
    set: Literal["left", "centre", "right", "top", "bottom", "spread"] = "centre"
    centre_on: str | int | float = "wall"
    height: HeightTable | None = None
