"""The job file as it is written: one record for every table, most fields optional."""

from __future__ import annotations

from typing import Literal

from templates_gen.base.record import Table, field
from templates_gen.job.tables.frame import FixingTable, FrameTable
from templates_gen.job.tables.group import GroupTable
from templates_gen.job.tables.paper import AccuracyTable, PaperTable
from templates_gen.job.tables.wall import WallTable


class JobTable(Table):
    title: str = ""
    client: str = ""
    unit: Literal["in", "cm", "mm"] = "mm"
    date: str = ""
    language: str = "en"
    frames: str = ""
    measured: str = ""
    confirmed: list[str] = field(default_factory=list)


class JobFile(Table):
    job: JobTable | None = None
    wall: WallTable | None = None
    group: GroupTable | None = None
    frame_type: dict[str, FrameTable] | None = None
    frame: list[FrameTable] | None = None
    fixing: FixingTable | None = None
    paper: PaperTable | None = None
    accuracy: AccuracyTable | None = None
