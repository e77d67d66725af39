"""The wall and paper tables become a wall with its features, and a paper."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from templates_gen.errors import InputError
from templates_gen.geometry import Rect
from templates_gen.jobfile.tables import FeatureTable, MarginTable, PaperTable, StudsTable, WallTable
from templates_gen.jobfile.typed import read_length, read_table
from templates_gen.model import Feature, Paper, Sides, Studs, Wall
from templates_gen.papersizes import (
    DEFAULT_MARGIN,
    DEFAULT_OVERLAP,
    LEAST_OVERLAP,
    MOST_OVERLAP,
    checked_size,
    paper_size,
)

UNUSED = ("build", "board", "studs", "wiring")

STUD_SPACING = {"in": 16 * 25.4, "metric": 600.0}
"""mm between stud centres when not given: 16 in (IRC Table R602.3(5)); 600 mm (UK practice, from memory)."""

STUD_WIDTH = 38.0
"""mm, 1 1/2 in: a nominal 2 in stud (DOC PS 20, from memory)."""


def build_wall(raw: object, unit: str) -> tuple[Wall, tuple[str, ...]]:
    """The wall, and the names of its fields that nothing computes with yet.  Raises InputError."""
    table = read_table(raw, WallTable, unit, "wall")
    features = tuple(_feature(fields, unit, f"wall.feature {number}") for number, fields in enumerate(table.feature, 1))
    _unique_names(features)
    outline = tuple((float(x), float(y)) for x, y in table.outline or ())
    width, height = _wall_size(table, outline)
    wall = Wall(
        name=table.name, width=width, height=height, outline=outline, build=table.build or "", board=table.board,
        studs=_studs(table.studs, unit), wiring=table.wiring or "", public=table.public, features=features,
    )  # fmt: skip
    unused = [f"wall.{name}" for name in UNUSED if getattr(table, name) is not None]
    return wall, (*unused, *(["wall.public"] if table.public else []))


def _wall_size(table: WallTable, outline: tuple[tuple[float, float], ...]) -> tuple[float, float]:
    if outline:
        if len(outline) < 3:
            raise InputError("wall, outline", f"found {len(outline)} corners, expected 3 or more [x, y] pairs")
        from templates_gen.outline import check_outline  # only such a wall needs a geometry library

        check_outline(outline)
        return table.width or max(x for x, _ in outline), table.height or max(y for _, y in outline)
    for side in ("width", "height"):
        value = getattr(table, side)
        if not value:
            found = "is missing" if value is None else "found 0"
            raise InputError(f"wall, {side}", f'{found}, expected the wall\'s {side}, such as "12\' 6\\"" or "3.8 m"')
    return float(table.width or 0), float(table.height or 0)


def _feature(raw: Mapping[str, Any], unit: str, where: str) -> Feature:
    name = raw.get("name") if isinstance(raw, Mapping) else None
    where = f"{where} ({name})" if isinstance(name, str) and name else where
    table = read_table(raw, FeatureTable, unit, where)
    for field in ("left", "bottom", "width", "height"):
        if getattr(table, field) is None:
            raise InputError(where, f"{field!r} is missing, expected left, bottom, width and height")
    rect = Rect.sized(table.left or 0, table.bottom or 0, table.width or 0, table.height or 0)
    return Feature(kind=table.kind, name=table.name or table.kind, rect=rect, clear=table.clear or 0.0)


def _unique_names(features: tuple[Feature, ...]) -> None:
    """Names that others may refer to are unique; features left without a name share their kind's."""
    seen: dict[str, int] = {}
    for number, feature in enumerate(features, 1):
        if feature.name in seen and feature.name != feature.kind:
            raise InputError(f"wall.feature {number}, name", f"found {feature.name!r} twice, expected different names")
        seen[feature.name] = number


def _studs(table: StudsTable | None, unit: str) -> Studs | None:
    if table is None:
        return None
    spacing = STUD_SPACING["in" if unit == "in" else "metric"] if table.spacing is None else table.spacing
    return Studs(first=table.first, spacing=spacing, width=STUD_WIDTH if table.width is None else table.width)


def build_paper(table: PaperTable, unit: str, beside: Path) -> Paper:
    """The paper with what the printer can reach of it; a font file is looked for beside the job.  Raises InputError."""
    name, width, height = _paper_size(table.size, unit, "paper, size")
    margin = _margin(table.margin, unit, "paper, margin")
    overlap = DEFAULT_OVERLAP if table.overlap is None else float(table.overlap)
    if not LEAST_OVERLAP <= overlap <= MOST_OVERLAP:
        raise InputError("paper, overlap", f"found {overlap:g} mm, expected {LEAST_OVERLAP:g} to {MOST_OVERLAP:g} mm")
    if margin[1] + margin[3] >= width or margin[0] + margin[2] >= height:
        raise InputError("paper, margin", f"leaves nothing of a sheet of {width:g} × {height:g} mm")
    font = str(beside / table.font) if table.font else ""
    return Paper(name=name, width=width, height=height, margin=margin, overlap=overlap, cover=table.cover, font=font)


def _paper_size(size: object, unit: str, where: str) -> tuple[str, float, float]:
    if isinstance(size, str):
        if size.lower().startswith("roll"):
            raise InputError(where, "paper from a roll is not computed yet", "use a sheet size such as a4 or letter")
        return size, *checked_size(*paper_size(size, where), where)
    if isinstance(size, list) and len(size) == 2:
        width, height = (read_length(side, unit, where) for side in size)
        return f"{width:g} × {height:g} mm", *checked_size(width, height, where)
    raise InputError(where, f'found {size!r}, expected a name such as "a4" or "letter", or [width, height]')


def _margin(value: object, unit: str, where: str) -> Sides:
    if value is None:
        return DEFAULT_MARGIN
    if isinstance(value, Mapping):
        table = read_table(value, MarginTable, unit, where)
        given = (table.top, table.right, table.bottom, table.left)
        top, right, bottom, left = (d if g is None else g for g, d in zip(given, DEFAULT_MARGIN, strict=True))
        return top, right, bottom, left
    every = read_length(value, unit, where)
    return every, every, every, every
