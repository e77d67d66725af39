"""Which fields of a job are doubted: for tests of slips and of their sound neighbours."""

from __future__ import annotations

from typing import Any

from templates_gen.arranging.plan import plan_wall
from templates_gen.checks import find
from templates_gen.checks.finding import Finding
from templates_gen.job.reading.building import build_job
from tests.jobs import SAMPLES

ROOM = {"width": 420, "height": 250}  # cm
INCHES = {"width": 156, "height": 96}

Table = dict[str, Any]


def doubts(unit: str, wall: Table, frames: list[Table], features: Any = (), **group: Any) -> list[Finding]:
    """The doubts about a job of these tables."""
    frames = [{"id": "ABCDEFGH"[at], **frame} for at, frame in enumerate(frames)]
    job = {"title": "Ferry tickets", "unit": unit, "date": "2026-03-14"}
    raw = {"job": job, "wall": {**wall, "feature": list(features)}, "group": group, "frame": frames}
    return [each for each in find(plan_wall(build_job(raw, SAMPLES / "job.toml"))) if each.confirm]


def doubted(unit: str, wall: Table, frames: list[Table], features: Any = (), **group: Any) -> set[str]:
    """The fields that are doubted in a job of these tables."""
    found = doubts(unit, wall, frames, features, **group)
    return {value.rpartition(": ")[0] for each in found for value in each.confirm}


def meant(unit: str, wall: Table, frames: list[Table], features: Any = (), **group: Any) -> dict[str, str]:
    """What was probably meant, by its field."""
    return dict(change for each in doubts(unit, wall, frames, features, **group) for change in each.meant)


def prints(*drops: Any, width: Any = 40, height: Any = 50) -> list[Table]:
    """Frames of one size, with these drops."""
    return [{"width": width, "height": height, "drop": drop} for drop in drops]
