"""Where a frame was found: its top edge against the one it has on the plan."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.adding import added
from templates_gen.base.errors import InputError
from templates_gen.base.record import Record
from templates_gen.base.units import METRE
from templates_gen.documents.correcting.readings import Reading

AT_ODDS = 10.0
"""mm in a metre between the two heights and the spirit level, from which one of them is taken for a slip: 1 mm at
either end of a frame of 200 mm.  Our own design, no source."""


class Pose(Record, frozen=True):
    """How a frame hangs: `turn` in radians, positive where the right end is higher, and the middle of its top edge.

    `up` and `right` (mm) are how far that middle is above and to the right of its place on the plan; None where it was
    not measured.  `within` is what 95 of 100 such readings are true to (mm), where that is known.
    """

    hung: Hung
    turn: float
    up: float | None
    right: float | None
    within: float | None = None


def poses(readings: Sequence[Reading], plan: Plan) -> tuple[Pose, ...]:
    """How every frame that was read hangs.  Raises InputError for readings that contradict each other."""
    turns = {reading.hung.frame.id: _turn(reading) for reading in readings}
    sides = _Sides(readings, turns, plan)
    return tuple(
        Pose(one.hung, turns[one.hung.frame.id], _up(one, turns), sides.off(one.hung), one.within) for one in readings
    )


def _turn(reading: Reading) -> float:
    """How crooked the frame hangs, by the level where it was read: it shows less than a tape can (radians)."""
    heights = None
    if reading.left is not None and reading.right is not None:
        rise = reading.right - reading.left
        width = reading.hung.rect.width
        if abs(rise) >= width:
            raise InputError(f"{reading.where}, right", "is farther from the left one than the frame is wide")
        heights = rise / width
    if reading.tilt is None:
        return math.asin(heights or 0.0)
    if heights is not None and abs(METRE * heights - reading.tilt) > AT_ODDS:
        found = f"found {reading.tilt:g} mm per m, where the two heights make it {METRE * heights:.0f}"
        raise InputError(f"{reading.where}, tilt", found, "read the level again: negative where the right end is lower")
    return math.asin(reading.tilt / METRE)  # a level's reading is 1000 · sin α (vial makers' technical notes)


def _up(reading: Reading, turns: Mapping[str, float]) -> float | None:
    """How far the middle of the top edge is above its place: half-way from a corner to where the turn puts it."""
    half = reading.hung.rect.width / 2 * math.sin(turns[reading.hung.frame.id])
    known = [
        height + side * half for height, side in ((reading.left, 1.0), (reading.right, -1.0)) if height is not None
    ]
    return added(known) / len(known) - reading.hung.rect.y1 if known else None


class _Sides:
    """How far frames are to the right, those too that were measured from a neighbour which was measured itself."""

    def __init__(self, readings: Sequence[Reading], turns: Mapping[str, float], plan: Plan) -> None:
        self._readings = {reading.hung.frame.id: reading for reading in readings}
        self._turns = turns
        self._hung = {hung.frame.id: hung for hung in plan.frames}
        self._asked: list[str] = []

    def off(self, hung: Hung) -> float | None:
        """How far the middle of a frame's top edge is to the right of its place; None where it was not measured."""
        reading, rect = self._readings.get(hung.frame.id), hung.rect
        if reading is None:
            return None
        half = rect.width / 2 * math.cos(self._turns[hung.frame.id])
        if reading.left_edge is not None:
            return reading.left_edge + half - rect.cx
        if reading.gap is None:
            return None
        if hung.frame.id in self._asked:
            raise InputError(
                f"{reading.where}, gap", "is measured in a ring, each frame from the next",
                "measure one of them from the centre line, as left_edge",
            )  # fmt: skip
        self._asked.append(hung.frame.id)
        other = self._hung[reading.beside]
        side = 1.0 if other.rect.cx < rect.cx else -1.0
        near = other.rect.cx + (self.off(other) or 0.0) + side * self._half(other)
        self._asked.pop()
        return near + side * (reading.gap + half) - rect.cx

    def _half(self, hung: Hung) -> float:
        return hung.rect.width / 2 * math.cos(self._turns.get(hung.frame.id, 0.0))
