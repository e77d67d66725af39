"""Where somebody pointed on a photograph of what hangs: a spreadsheet with the four corners of every frame."""

from __future__ import annotations

import math
from collections.abc import Mapping
from pathlib import Path

from templates_gen.arranging.plan import Plan
from templates_gen.base.errors import InputError, did_you_mean
from templates_gen.base.words import some
from templates_gen.job.reading.files import check_text, parse_csv, read_bytes

CORNERS = ("top_left", "top_right", "bottom_right", "bottom_left")

Points = tuple[tuple[float, float], ...]


def read_pointed(path: Path, plan: Plan) -> Mapping[str, Points]:
    """The corners of each frame in pixels, the upper left one first, clockwise.  Raises InputError."""
    frames = {" ".join(hung.frame.id.split()): hung.frame.id for hung in plan.frames}
    found: dict[str, Points] = {}
    content = read_bytes(path, kind="a file of corners")
    for line, fields in parse_csv(content, path.name, ("frame", *CORNERS), "frame", {"id": "frame"}):
        where = f"{path.name}, line {line}"
        check_text(fields, where)
        name = fields.get("frame")
        if name not in frames:
            hint = did_you_mean(str(name), frames, f"frames: {some(list(frames))}")
            raise InputError(f"{where}, frame", f"found {name!r}, which is not a frame of this job", hint)
        found[frames[name]] = tuple(_point(fields.get(column), f"{where}, {column}") for column in CORNERS)
    return found


def _point(value: object, where: str) -> tuple[float, float]:
    words = str(value or "").replace(";", " ").split()
    try:
        x, y = (float(word) for word in words)
    except ValueError:
        x = y = math.nan
    if not (math.isfinite(x) and math.isfinite(y)):
        raise InputError(where, f"found {value!r}, expected a corner in pixels as x y", "such as 1204 655")
    return x, y
