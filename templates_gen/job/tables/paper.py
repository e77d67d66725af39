"""The tables of the paper and of how exactly people work, as they are written."""

from __future__ import annotations

from typing import Any, Literal

from templates_gen.base.record import Table
from templates_gen.job.tables.field import Length


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
