"""The wall's stairs table becomes a stair, by the line of its nosings."""

from __future__ import annotations

import math

from templates_gen.base.errors import InputError
from templates_gen.job.stairs import Stairs
from templates_gen.job.tables.stairs import StairsTable

STEEPEST = 80.0
"""Degrees.  A steeper pitch is taken for a slip.  Common practice, no source."""

EXAMPLE = 'for example  run = "10 in", rise = "7 1/2 in"  or  pitch = 37'


def build_stairs(table: StairsTable | None, where: str) -> Stairs | None:
    """The stair along the wall, if there is one.  Raises InputError."""
    if table is None:
        return None
    slope = _slope(table, where) * (1 if table.up == "right" else -1)
    return Stairs(
        x=table.nosing[0], y=table.nosing[1], slope=slope, run=table.run, rise=table.rise,
        top=_top(table, f"{where}, steps"), clear=table.clear or 0.0,
    )  # fmt: skip


def _slope(table: StairsTable, where: str) -> float:
    """How far the stair rises for every mm of its run."""
    by_step = table.run is not None or table.rise is not None
    if by_step == (table.pitch is not None):
        found = "both a step and a pitch" if by_step else "neither"
        raise InputError(where, f"found {found}, expected run and rise of one step, or pitch in degrees", EXAMPLE)
    if table.pitch is not None:
        slope, place = math.tan(math.radians(table.pitch)), f"{where}, pitch"
    elif table.run and table.rise:
        slope, place = table.rise / table.run, where
    else:
        lacking = "rise" if table.run else "run"
        problem = f"found a step with no {lacking}, expected its run (level) and its rise (up), both more than 0"
        raise InputError(where, problem)
    pitch = math.degrees(math.atan(slope)) if table.pitch is None else table.pitch
    if not 0 < pitch <= STEEPEST:
        raise InputError(place, f"found a pitch of {pitch:.1f} degrees, expected more than 0 and up to {STEEPEST:g}")
    return slope


def _top(table: StairsTable, where: str) -> float | None:
    """The height of the last nosing, where the number of steps is given."""
    if table.steps is None:
        return None
    if table.rise is None:
        problem = "found steps with a pitch, expected them with run and rise, which say how high the stair goes"
        raise InputError(where, problem, 'for example  run = "10 in", rise = "7 1/2 in", steps = 13')
    return table.nosing[1] + (table.steps - 1) * table.rise
