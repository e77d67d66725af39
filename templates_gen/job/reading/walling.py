"""The wall and paper tables become a wall with its stair and features, and a paper."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import TOLERANCE, Rect, around
from templates_gen.base.units import INCH, as_found
from templates_gen.base.words import counted
from templates_gen.job.model import Feature, Paper, Sides, Studs, Wall
from templates_gen.job.paper_sizes import (
    DEFAULT_MARGIN,
    DEFAULT_OVERLAP,
    MOST_SIDE,
    USUAL_SIZES,
    checked_size,
    large_page,
    paper_size,
    roll_width,
)
from templates_gen.job.reading.typed import read_length, read_table
from templates_gen.job.stairs import Stairs
from templates_gen.job.tables.paper import MarginTable, PaperTable
from templates_gen.job.tables.wall import FeatureTable, StairsTable, StudsTable, WallTable

STUD_SPACING = {"in": 16 * INCH, "metric": 600.0}
"""mm between stud centres when not given: 16 in (IRC, Table R602.3(5), as others quote it); 600 mm (UK practice, from
memory)."""

STUD_WIDTH = 38.0
"""mm, 1 1/2 in: a nominal 2 in stud (DOC PS 20, from memory)."""

STUD_SLACK = 10.0
"""mm for each stud on the way that a second one may be off a given spacing.  Our own design, no source."""


LEAST_STUDS = 100.0
"""mm from one stud's centre to the next: less is taken for a slip.  Our own design, no source."""

OTHERWISE = 25.0
"""mm that a wall's width may be off from that of its outline, both measured.  Our own design, no source."""

STANDING = ("furniture", "door")
"""What stands on the floor where nothing else is said.  Common practice, no source."""

Point = tuple[float, float]


def build_wall(raw: object, unit: str) -> Wall:
    """The wall with its features.  Raises InputError."""
    table = read_table(raw, WallTable, unit, "wall")
    features = tuple(_feature(fields, unit, f"wall.feature {number}") for number, fields in enumerate(table.feature, 1))
    _unique_names(features, [bool(fields.get("name")) for fields in table.feature])
    outline, begins = _outline(table)
    width, height = _wall_size(table, outline)
    build = "drywall" if table.build == "plasterboard" else table.build or ""  # two names of one thing
    return Wall(
        name=table.name, width=width, height=height, outline=outline, begins=begins, clear=table.clear or 0.0,
        stairs=_stairs(table.stairs), build=build, board=table.board,
        studs=_studs(table.studs, unit), wiring=table.wiring or "", worktop=table.worktop, behind=tuple(table.behind),
        public=table.public, earthquake=table.earthquake, built=table.built, features=features,
    )  # fmt: skip


def _outline(table: WallTable) -> tuple[tuple[Point, ...], Point]:
    """The corners from the wall's left end, which is the lowest of them and of those the one furthest left; and where
    the file has that one.  Raises InputError.

    Whatever numbers an outline begins with, all else of a wall is measured from its left end and from the floor.
    """
    if not table.outline:
        return (), (0.0, 0.0)
    if len(table.outline) < 3:
        raise InputError("wall, outline", f"found {counted(len(table.outline), 'corner')}, expected 3 or more")
    from templates_gen.job.outline import check_outline  # only such a wall needs a geometry library

    check_outline(table.outline)
    low = min(y for _, y in table.outline)
    left = min(x for x, y in table.outline if y <= low + TOLERANCE)
    return tuple((x - left, y - low) for x, y in table.outline), (float(left), float(low))


def _wall_size(table: WallTable, outline: tuple[Point, ...]) -> tuple[float, float]:
    """How wide and high the wall is, from its leftmost to its rightmost point where it has an outline."""
    if outline:
        whole = around(outline)
        for side, drawn in (("width", whole.width), ("height", whole.height)):
            value = getattr(table, side)
            if value is not None and abs(value - drawn) > OTHERWISE:
                problem = f"found {as_found(value)}, where the outline makes it {as_found(drawn)}"
                raise InputError(f"wall, {side}", problem, f"leave the {side} out, or mend the outline")
        return whole.width, whole.height
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
    needed = [side for side in ("left", "bottom", "width", "height") if side != "bottom" or table.kind not in STANDING]
    for field in needed:
        if getattr(table, field) is None:
            raise InputError(where, f"{field!r} is missing, expected {', '.join(needed[:-1])} and {needed[-1]}")
    rect = Rect.sized(table.left or 0, table.bottom or 0, table.width or 0, table.height or 0)
    if table.use is not None and table.kind != "furniture":
        raise InputError(f"{where}, use", f"does not belong to a feature of kind {table.kind!r}, but to furniture")
    # furniture without another name is called by the word that was said, such as "couch"
    word = " ".join(raw["kind"].casefold().split()) if table.kind == "furniture" else table.kind
    return Feature(kind=table.kind, name=table.name or word, rect=rect, clear=table.clear or 0.0, use=table.use or "")


def _unique_names(features: tuple[Feature, ...], named: Sequence[bool]) -> None:
    """Names that others may refer to are unique; features left without a name share that of what they are."""
    seen: set[str] = set()
    for number, (feature, own) in enumerate(zip(features, named, strict=True), 1):
        if feature.name in seen and own and feature.name != feature.kind:
            raise InputError(f"wall.feature {number}, name", f"found {feature.name!r} twice, expected different names")
        seen.add(feature.name)


def _studs(table: StudsTable | None, unit: str) -> Studs | None:
    """The studs; a second measured one gives or confirms their spacing, else the usual one stays unconfirmed."""
    if table is None:
        return None
    spacing = STUD_SPACING["in" if unit == "in" else "metric"] if table.spacing is None else float(table.spacing)
    confirmed = table.first is not None and table.spacing is not None
    if table.first is not None and table.second is not None:
        spacing = _measured_spacing(abs(table.second - table.first), table.spacing)
        confirmed = True
    width = STUD_WIDTH if table.width is None else table.width
    if not 0 < width < spacing:
        found = f"found studs {as_found(width)} wide every {as_found(spacing)}"
        raise InputError("wall, studs", f"{found}, expected room between them")
    if spacing < LEAST_STUDS:
        found = f"found {as_found(spacing)} from one to the next"
        raise InputError("wall, studs", f"{found}, expected {LEAST_STUDS:g} mm or more")
    return Studs(first=table.first, spacing=spacing, width=width, confirmed=confirmed)


def _measured_spacing(between: float, spacing: float | None) -> float:
    """From two measured studs, which may have others between them when the spacing is given too."""
    if spacing is None:
        return between
    steps = round(between / spacing) if spacing else 0
    if not steps or abs(between - steps * spacing) > steps * STUD_SLACK:
        found = (
            f"found {as_found(between)} from the first, which is not a whole number of spacings of {as_found(spacing)}"
        )
        raise InputError("wall, studs, second", found, "measure both again, or leave the spacing out")
    return between / steps


def build_paper(table: PaperTable, unit: str, beside: Path) -> Paper:
    """The paper with what the printer can reach of it; a font file is looked for beside the job.  Raises InputError."""
    size = USUAL_SIZES[unit] if table.size is None else table.size
    roll = roll_width(size, "paper, size") if isinstance(size, str) else None
    name, width, height = (size, roll, MOST_SIDE) if roll else _paper_size(size, unit, "paper, size")
    margin = _margin(table.margin, unit, "paper, margin")
    overlap = DEFAULT_OVERLAP if table.overlap is None else float(table.overlap)
    if margin[1] + margin[3] >= width or margin[0] + margin[2] >= height:
        raise InputError("paper, margin", f"leaves nothing of a sheet of {width:g} × {height:g} mm")
    font = str(beside / table.font) if table.font else ""
    paper = Paper(
        name=name, width=width, height=height, margin=margin, overlap=overlap, cover=table.cover, font=font,
        kind="roll" if roll else "sheets", trim=table.trim, photo=table.photo,
    )  # fmt: skip
    return large_page(paper) if table.print_shop else paper


def _paper_size(size: object, unit: str, where: str) -> tuple[str, float, float]:
    if isinstance(size, str):
        return size, *paper_size(size, where)
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


STEEPEST = 80.0
"""Degrees.  A steeper pitch is taken for a slip.  Common practice, no source."""

_EXAMPLE = 'for example  run = "10 in", rise = "7 1/2 in"  or  pitch = 37'


def _stairs(table: StairsTable | None) -> Stairs | None:
    """The stair along the wall, if there is one.  Raises InputError."""
    if table is None:
        return None
    slope = _slope(table) * (1 if table.up == "right" else -1)
    return Stairs(
        x=table.nosing[0], y=table.nosing[1], slope=slope, run=table.run, rise=table.rise,
        top=_top(table), clear=table.clear or 0.0,
    )  # fmt: skip


def _slope(table: StairsTable) -> float:
    """How far the stair rises for every mm of its run."""
    by_step = table.run is not None or table.rise is not None
    if by_step == (table.pitch is not None):
        found = "both a step and a pitch" if by_step else "neither"
        raise InputError(
            "wall, stairs", f"found {found}, expected run and rise of one step, or pitch in degrees", _EXAMPLE
        )
    if table.pitch is not None:
        slope, place = math.tan(math.radians(table.pitch)), "wall, stairs, pitch"
    elif table.run and table.rise:
        slope, place = table.rise / table.run, "wall, stairs"
    else:
        lacking = "rise" if table.run else "run"
        problem = f"found a step with no {lacking}, expected its run (level) and its rise (up), both more than 0"
        raise InputError("wall, stairs", problem)
    pitch = math.degrees(math.atan(slope)) if table.pitch is None else table.pitch
    if not 0 < pitch <= STEEPEST:
        raise InputError(place, f"found a pitch of {pitch:.1f} degrees, expected more than 0 and up to {STEEPEST:g}")
    return slope


def _top(table: StairsTable) -> float | None:
    """The height of the last nosing, where the number of steps is given."""
    if table.steps is None:
        return None
    if table.rise is None:
        problem = "found steps with a pitch, expected them with run and rise, which say how high the stair goes"
        raise InputError("wall, stairs, steps", problem, 'for example  run = "10 in", rise = "7 1/2 in", steps = 13')
    return table.nosing[1] + (table.steps - 1) * table.rise
