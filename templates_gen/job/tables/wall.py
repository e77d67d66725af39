"""The tables of a wall as they are written: its stairs, its studs, and what is on it."""

from __future__ import annotations

from typing import Any, Literal

from templates_gen.base.record import Table, field
from templates_gen.job.tables.field import Length, Offset


class StudsTable(Table):
    first: Length | None = None
    second: Length | None = None
    spacing: Length | None = None
    width: Length | None = None


class FeatureTable(Table):
    kind: Literal[
        "outlet", "switch", "light", "thermostat", "vent", "radiator", "door", "window", "pipe", "furniture", "other"
    ]
    name: str = ""
    left: Length | None = None
    bottom: Length | None = None
    width: Length | None = None
    height: Length | None = None
    clear: Length | None = None
    use: Literal["bed", "seat", "cot", "other"] | None = None


class StairsTable(Table):
    nosing: tuple[Offset, Offset]
    up: Literal["left", "right"]
    run: Length | None = None
    rise: Length | None = None
    pitch: int | float | None = None
    steps: int | None = None
    clear: Length | None = None


class WallTable(Table):
    name: str = ""
    width: Length | None = None
    height: Length | None = None
    outline: list[tuple[Offset, Offset]] | None = None
    clear: Length | None = None
    stairs: StairsTable | None = None
    build: Literal["drywall", "plasterboard", "plaster", "masonry", "timber"] | None = None
    board: Length | None = None
    studs: StudsTable | None = None
    wiring: Literal["us", "uk", "de", "none"] | None = None
    worktop: bool = False
    behind: list[Literal["bathroom", "kitchen", "laundry", "toilet", "other"]] = field(default_factory=list)
    public: bool | None = None
    earthquake: bool | None = None
    built: int | None = None
    feature: list[dict[str, Any]] = field(default_factory=list)
