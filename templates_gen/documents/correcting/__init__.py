"""After hanging: from what was measured on the frames to what has to be moved, how far, and into which hole."""

from __future__ import annotations

from pathlib import Path

from templates_gen.arranging.plan import Plan
from templates_gen.base.units import DIVISION
from templates_gen.documents.correcting.changing import checked
from templates_gen.documents.correcting.holes import Cured, cured
from templates_gen.documents.correcting.levelling import check_level
from templates_gen.documents.correcting.moves import correction, limits_of
from templates_gen.documents.correcting.poses import poses
from templates_gen.documents.correcting.readings import read_readings


def correct(plan: Plan, path: Path, content: bytes | None = None) -> tuple[Cured, ...]:
    """What to do about every frame of which the CSV file (or the `content` of one not written) holds a reading.

    Raises InputError.
    """
    limits, least = limits_of(plan), DIVISION[plan.job.unit] / 2
    readings = read_readings(path, plan, content)
    found = poses(readings, plan)
    now = checked(plan)
    check_level(readings, found, limits, plan.job.unit)
    return tuple(cured(correction(pose, limits[pose.hung.frame.id], least), now) for pose in found)
