"""Jobs whose people and machines err in nothing but what a test names."""

from __future__ import annotations

import math
from functools import cache

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.record import replace
from templates_gen.job.accuracy import Accuracy
from templates_gen.job.model import Job
from templates_gen.printer.profile import Printer, Readings, measured
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.expected import Expected, expected_error
from templates_gen.tolerance.holding import plan_sheets
from tests.jobs import frame, group, job

NOTHING = Accuracy(
    scale=0.0, reading=0.0, match=0.0, moisture_along=0.0, moisture_across=0.0, humidity=0.0, drop=0.0, nailing=0.0,
    placing=0.0,
)  # fmt: skip


def row(count: int = 4, pitch: float = 400.0, **more: object) -> Job:
    """Frames of 340 x 300 mm side by side, their middles `pitch` apart, all with a drop of 60 mm."""
    frames = [frame(str(at), 340.0, 300.0, 60.0) for at in range(count)]
    return job(*frames, group=group((tuple(item.id for item in frames),), gap=pitch - 340.0), **more)


@cache
def planned(asked: Job) -> SheetPlan:
    return plan_sheets(plan_wall(asked), asked.paper)


def printer(reading: float, along: float = 250.0, diagonals: bool = False) -> Printer:
    """A printer that prints true on A4, its lengths 200 mm across and `along` read with this error (mm)."""
    diagonal = math.hypot(200.0, along)
    readings = Readings(
        asked_across=200.0, asked_along=along, across=200.0, along=along,
        diagonals=(diagonal, diagonal) if diagonals else None, reading_error=reading,
    )  # fmt: skip
    return measured("study", "a4", readings, "2026-03-01")


def of(asked: Job, known: Printer | None = None, **accuracy: float | bool) -> Expected:
    """The expected error of a job whose people and machines err in nothing but what is given."""
    exact = replace(asked, accuracy=replace(NOTHING, **accuracy))
    found = expected_error(plan_wall(exact), replace(planned(asked), printer=known))
    assert found is not None
    return found
