"""Where somebody pointed on a photograph of what hangs: a spreadsheet with the four corners of every frame."""

from __future__ import annotations

import math
from collections.abc import Mapping
from pathlib import Path

from templates_gen.arranging.plan import Plan
from templates_gen.base.errors import InputError
from templates_gen.documents.correcting.readings import frame_named
from templates_gen.job.reading.files import check_text, parse_csv, read_bytes

CORNERS = ("top_left", "top_right", "bottom_right", "bottom_left")

Points = tuple[tuple[float, float], ...]


def read_pointed(path: Path, plan: Plan) -> Mapping[str, Points]:
    """The corners of each frame in pixels, the upper left one first, clockwise.  Raises InputError."""
    found: dict[str, Points] = {}
    content = read_bytes(path, kind="a file of corners")
    for line, fields in parse_csv(content, path.name, ("frame", *CORNERS), "frame", {"id": "frame"}):
        where = f"{path.name}, line {line}"
        check_text(fields, where)
        hung = frame_named(fields.get("frame"), plan, f"{where}, frame")
        found[hung.frame.id] = tuple(_point(fields.get(column), f"{where}, {column}") for column in CORNERS)
    return found


def _point(value: object, where: str) -> tuple[float, float]:
    words = str(value or "").replace(";", " ").split()
    try:
        x, y = (float(word) for word in words)
    except ValueError:
        x = y = math.nan
    if not (math.isfinite(x) and math.isfinite(y)):
        what = "is blank" if value is None else f"found {value!r}"
        raise InputError(where, f"{what}, expected a corner in pixels as x y", "such as 1204 655")
    return x, y
