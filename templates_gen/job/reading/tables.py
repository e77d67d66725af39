"""The job file as it is written: one record for every table, most fields optional."""

from __future__ import annotations

from typing import Any, Literal

from templates_gen.base.record import Table, field

HangerKind = Literal["wire", "sawtooth", "rings", "keyholes", "cleat"]
FixingKind = Literal["nail", "hook", "screw"]


class Length(float):
    """A size in mm, zero or more."""


class Offset(float):
    """A distance in mm, negative to the left or down."""


class Mass(float):
    """A weight in kg."""


class JobTable(Table):
    title: str = ""
    client: str = ""
    unit: Literal["in", "cm", "mm"] = "mm"
    date: str = ""
    language: str = "en"
    frames: str = ""
    measured: str = ""
    confirmed: list[str] = field(default_factory=list)


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


class MarginTable(Table):
    top: Length | None = None
    right: Length | None = None
    bottom: Length | None = None
    left: Length | None = None


class PaperTable(Table):
    size: Any = "a4"
    margin: Any = None
    overlap: Length | None = None
    cover: Literal["all", "marks", "nails"] = "marks"
    trim: Literal["cut", "none"] = "cut"
    font: str = ""


class AccuracyTable(Table):
    scale: int | float | None = None
    reading: Length | None = None
    match: Length | None = None
    moisture_along: int | float | None = None
    moisture_across: int | float | None = None
    humidity: int | float | None = None
    drop: Length | None = None
    nailing: Length | None = None
    placing: Length | None = None
    string: bool = True


class JobFile(Table):
    job: JobTable | None = None
    wall: WallTable | None = None
    group: GroupTable | None = None
    frame_type: dict[str, FrameTable] | None = None
    frame: list[FrameTable] | None = None
    fixing: FixingTable | None = None
    paper: PaperTable | None = None
    accuracy: AccuracyTable | None = None
