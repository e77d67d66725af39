"""Small jobs for tests: the least a job needs, with what a test changes."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.checks import Finding, find
from templates_gen.job.model import Fixing, Frame, Group, Hanger, Height, Job, Paper, Spot, Wall
from templates_gen.job.paper_sizes import DEFAULT_MARGIN, SIZES

SAMPLES = Path(__file__).parent.parent / "samples"


def frame(
    name: str = "A", width: float = 400.0, height: float = 500.0, drop: float | None = 80.0, **more: Any
) -> Frame:
    return Frame(id=name, width=width, height=height, drop=drop, **more)


def group(rows: tuple[tuple[str, ...], ...], arrangement: str = "rows", gap: float = 60.0, **more: Any) -> Group:
    values: dict[str, Any] = {"height": Height(by="centre", at=1450.0), "gap_across": gap, "gap_down": gap} | more
    return Group(arrangement=arrangement, rows=rows, **values)


def paper(name: str = "a4", **more: Any) -> Paper:
    width, height = SIZES[name]
    values: dict[str, Any] = {"margin": DEFAULT_MARGIN, "overlap": 12.0, "cover": "marks"} | more
    return Paper(name=name, width=width, height=height, **values)


def job(*frames: Frame, **more: Any) -> Job:
    frames = frames or (frame(),)
    values: dict[str, Any] = {
        "title": "Tile rubbings", "client": "", "unit": "mm", "date": "2026-03-01", "language": "en",
        "wall": Wall(name="", width=4000.0, height=2600.0), "paper": paper(),
        "group": group((tuple(item.id for item in frames),)),
    }  # fmt: skip
    return Job(frames=frames, **(values | more))


def sides(rect: Rect) -> tuple[float, float, float, float]:
    """Left, bottom, right and top (mm)."""
    return rect.x0, rect.y0, rect.x1, rect.y1


def named(rule: str, of: Job) -> list[Finding]:
    """The findings of this rule about a job."""
    return [found for found in find(plan_wall(of)) if found.rule == rule]


ROWS = 5
"""Rows of frames on a wide wall: what grows with the frames is the wall's width.  Our own design, no source."""


def many(count: int, across: int | None = None) -> Job:
    """A job of so many frames, no two of one size, `across` of them in a row.

    It is built in memory, for its wall is wider than a job file may say (`jobfile/`); no limit of the program is
    changed, and the sheet plan's own (`MOST_CELLS`) holds.
    """
    across = across or max(1, count // ROWS)
    names = [f"{number}" for number in range(1, count + 1)]
    rows = tuple(tuple(names[at : at + across]) for at in range(0, count, across))
    frames = [
        frame(name, 300.0 + 37 * at % 200 + at / 1000, 400.0 + 53 * at % 150, 80.0, title=f"Fern {name}")
        for at, name in enumerate(names)
    ]
    high, wide = len(rows) * 620.0 + 1000.0, across * 570.0 + 2000.0
    middle = Height(by="centre", at=high / 2)
    return job(*frames, group=group(rows, height=middle), wall=Wall(name="", width=wide, height=high + 500.0))


__all__ = ["SAMPLES", "Fixing", "Hanger", "Height", "Spot", "frame", "group", "job", "many", "named", "paper", "sides"]
