"""Something new on the wall: of a usual size, where such a thing usually is, to be measured and put right."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.base.units import INCH, exact, parse_length
from templates_gen.desk.opened import Read

NEW_FEATURES: Mapping[str, tuple[str, str, str]] = {
    "outlet": ('2 3/4"', '4 1/2"', '12"'), "switch": ('2 3/4"', '4 1/2"', '46"'), "light": ('6"', '8"', '66"'),
    "thermostat": ('4"', '4"', '52"'), "vent": ('12"', '6"', '6"'), "radiator": ('40"', '24"', '4"'),
    "door": ('32"', '80"', "0"), "window": ('40"', '48"', '36"'), "pipe": ('2"', '90"', "0"),
    "furniture": ('60"', '32"', "0"), "other": ('20"', '20"', '40"'),
}  # fmt: skip
"""Width, height and distance from the floor that it begins with: usual sizes of such things, from memory."""

COARSE = 200.0
"""mm from which such a size goes in steps of 5 cm in a job that has no inches, and of 1 cm below.  Our own."""

ASIDE = ("switch", "thermostat")
"""What is beside a door or near the wall's end, not in its middle."""

FROM_DOOR, FROM_END = 100.0, 150.0
"""mm that it begins away from a door, and from the wall's end.  Common practice, no source."""


def new_feature(read: Read, kind: str, values: Mapping[str, Any]) -> dict[str, Any]:
    """The table of something new of a kind, with these `values` of its own, for the job file.

    Raises InputError for a size that is none.
    """
    unit = read.job.unit
    width, height, bottom = (_whole(size, unit) for size in NEW_FEATURES.get(kind, NEW_FEATURES["other"]))
    names = {feature.name for feature in read.job.wall.features}
    candidates = (kind, *(f"{kind} {number}" for number in range(2, len(names) + 3)))
    name = next(name for name in candidates if name not in names)
    table: dict[str, Any] = {"kind": kind, "name": name, "left": "0", "bottom": bottom}
    table |= {"width": width, "height": height}
    table.update({key: value for key, value in values.items() if value})
    if "left" not in values:
        step = INCH if unit == "in" else 10.0
        table["left"] = exact(step * max(0, round(_left(read, kind, table) / step)), unit)
    return table


def _whole(size: str, unit: str) -> str:
    """A usual size in inches as people say it who have none."""
    length = parse_length(size, "in")
    step = 50.0 if length >= COARSE else 10.0
    return size if unit == "in" else exact(step * round(length / step), unit)


def _left(read: Read, kind: str, table: Mapping[str, Any]) -> float:
    """The first usual place that is free of frames and of what is on the wall; without one the first (wall mm)."""
    width, height, bottom = (_length(table, name, read.job.unit) for name in ("width", "height", "bottom"))
    taken = [feature.rect for feature in read.job.wall.features]
    taken += [hung.rect for hung in read.plan.frames] if read.plan else []
    places = [*_places(read, kind, width)]
    for x in places:
        rect = Rect.sized(x, bottom, width, height)
        if read.job.wall.rect.holds(rect) and not any(map(rect.overlaps, taken)):
            return x
    return places[0]


def _places(read: Read, kind: str, width: float) -> Iterator[float]:
    wall = read.job.wall
    if kind in ASIDE:
        for door in (feature.rect for feature in wall.features if feature.kind == "door"):
            yield from (door.x1 + FROM_DOOR, door.x0 - FROM_DOOR - width)
        yield from (wall.rect.x0 + FROM_END, wall.rect.x1 - FROM_END - width)
    yield wall.rect.cx - width / 2


def _length(table: Mapping[str, Any], name: str, unit: str) -> float:
    try:
        return parse_length(str(table[name]), unit)
    except ValueError as error:
        raise InputError(name, str(error)) from None
