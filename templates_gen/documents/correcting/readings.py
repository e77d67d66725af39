"""What was measured once the frames hang: a spreadsheet with a row for every frame, checked against the plan."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.errors import InputError, did_you_mean
from templates_gen.base.record import Record, Table
from templates_gen.base.remembering import remembered
from templates_gen.base.units import MM, show_both
from templates_gen.base.words import some
from templates_gen.documents.schedule.distances import sideways, upward
from templates_gen.job.reading.files import check_text, parse_csv, read_bytes
from templates_gen.job.reading.typed import read_table
from templates_gen.job.tables.quantities import Length, Offset

MOST_OFF = 100.0
"""mm.  A frame so far from its place is taken for one read from another edge.  Our own design, no source."""

ALIKE = 30.0
"""mm.  A reading this near to what another edge would have given was likely taken there.  Our own design, no source."""

MOST_TILT = 100.0
"""mm in a metre, about 6°: more is taken for a slip.  Our own design, no source."""


class ReadingTable(Table):
    """A row of the spreadsheet of readings as it is written: what should be measured, and what was."""

    frame: str | None = None
    title: str | None = None
    plan_top: str | None = None
    plan_from_level: str | None = None
    plan_left_edge: str | None = None
    left: Length | None = None
    right: Length | None = None
    left_from_level: Offset | None = None
    right_from_level: Offset | None = None
    tilt: str | None = None
    left_edge: Offset | None = None
    gap: Length | None = None
    beside: str | None = None
    within: Length | None = None


COLUMNS = ReadingTable.__struct_fields__
PRINTED, FORM = COLUMNS[:5], COLUMNS[:-1]
"""The columns that the blank form fills in, but for the frame to be looked at only, and all that it has."""

FROM_LINES = ("left_from_level", "right_from_level", "left_edge")
"""The columns of distances from one of the two lines, which may lie on either side of it."""

SIDES = {"left": "-", "below": "-", "right": "", "above": ""}
"""What may stand behind a distance from one of the two lines, instead of a sign before it."""

_SIDED = re.compile(
    rf"([^-−+].*?)\s+({'|'.join(SIDES)})(?:\s+(?:of|the|centre|center|level|line))*",
    re.IGNORECASE,
)
_OFF = re.compile(r"[-−+].*|.*\s(?:low|high|lower|higher|down|up|below|above|left|right)", re.IGNORECASE)
"""How far off a corner hangs, with a sign or a word, where its height is asked for."""

_ON_LINE = re.compile(r"on (?:the )?(?:(?:centre|center|level) )?line", re.IGNORECASE)


class Reading(Record, frozen=True, kw_only=True):
    """What was read of one frame: heights of its top corners above the floor, in mm; None where nothing was read.

    `tilt` is a spirit level's reading in mm per metre, positive where the right end is higher.  `left_edge` is the x
    of the frame's top left corner on the wall; or else `gap` is the clear distance to the frame `beside` it.
    """

    hung: Hung
    where: str
    left: float | None = None
    right: float | None = None
    tilt: float | None = None
    left_edge: float | None = None
    gap: float | None = None
    beside: str = ""
    within: float | None = None  # mm that 95 of 100 are true to, of those from a photograph


def read_readings(path: Path, plan: Plan, content: bytes | None = None) -> tuple[Reading, ...]:
    """The readings in a CSV file, in the order of the plan's frames; rows in which nothing was filled in are left out.

    Bare numbers are in the job's unit.  `content` is that of a file that is not written.  Raises InputError, naming row
    and column, for what cannot be used.
    """
    content = read_bytes(path) if content is None else content
    rows = parse_csv(content, path.name, ("frame", *COLUMNS[5:], *PRINTED[1:]), "frame", {"id": "frame"})
    found: dict[str, Reading] = {}
    for line, fields in rows:
        where = f"{path.name}, line {line}"
        check_text(fields, where)
        hung = frame_named(fields.get("frame"), plan, f"{where}, frame")
        where = f"{where} ({hung.frame.id})"
        if hung.frame.id in found:
            raise InputError(f"{where}, frame", "was read in an earlier row, expected each frame once")
        if reading := _reading(fields, hung, plan, where):
            found[hung.frame.id] = reading
    if not found:
        raise InputError(path.name, "holds no reading", "fill in  left  and  right  of at least one frame")
    return tuple(found[hung.frame.id] for hung in plan.frames if hung.frame.id in found)


@remembered
def _by_name(plan: Plan) -> dict[str, Hung]:
    """The frames by their ids as cells have them, of which the blanks are taken together."""
    return {" ".join(hung.frame.id.split()): hung for hung in plan.frames}


def frame_named(name: object, plan: Plan, where: str) -> Hung:
    """The frame that a cell names.  Raises InputError."""
    frames = _by_name(plan)
    if not isinstance(name, str):
        raise InputError(where, "is blank, expected the id of the frame that was measured")
    if name not in frames:
        hint = did_you_mean(name, frames, f"frames: {some(list(frames))}")
        raise InputError(where, f"found {name!r}, which is not a frame of this job", hint)
    return frames[name]


def _reading(fields: Mapping[str, Any], hung: Hung, plan: Plan, where: str) -> Reading | None:
    """The reading of one row; None when only what the form printed is in it."""
    if not set(fields) - {*PRINTED, "within"}:
        return None
    _check_heights(fields, hung, plan, where)
    signed = {name: _signed(value) if name in FROM_LINES else value for name, value in fields.items()}
    table = read_table(signed, ReadingTable, plan.job.unit, where, loose=True)
    left, right = (_height(table, side, hung, plan, where) for side in ("left", "right"))
    tilt = _tilt(table.tilt, f"{where}, tilt")
    if (left is None) != (right is None) and tilt is None:
        other = "right" if right is None else "left"
        raise InputError(f"{where}, {other}", "is blank, expected both top corners, or a tilt beside one")
    return Reading(
        hung=hung, where=where, left=left, right=right, tilt=tilt,
        left_edge=_left_edge(table, hung, plan, where), **_beside(table, hung, plan, where), within=table.within,
    )  # fmt: skip


def _check_heights(fields: Mapping[str, Any], hung: Hung, plan: Plan, where: str) -> None:
    """Raises InputError for a height above the floor that is written as so much too high or too low."""
    for side in ("left", "right"):
        text = fields.get(side)
        if isinstance(text, str) and _OFF.fullmatch(text.strip()):
            planned = show_both(hung.rect.y1, plan.job.unit)
            expected = f"expected how high the corner is above the floor; the plan has {planned}"
            hint = f"how high it is above or below the level line goes into {side}_from_level"
            raise InputError(f"{where}, {side}", f"found {text!r}, {expected}", hint)


def _signed(text: object) -> object:
    """A distance such as "21 7/8 in left" with its sign in place of the word, as the form says it; 0 "on the line"."""
    if not isinstance(text, str):
        return text
    if sided := _SIDED.fullmatch(text):
        return SIDES[sided[2].lower()] + sided[1]
    return "0" if _ON_LINE.fullmatch(text) else text


def _height(table: ReadingTable, side: str, hung: Hung, plan: Plan, where: str) -> float | None:
    """The height of a top corner above the floor, from whichever of its two columns is filled in."""
    above: float | None = getattr(table, side)
    from_level: float | None = getattr(table, f"{side}_from_level")
    if above is not None and from_level is not None:
        raise InputError(f"{where}, {side}_from_level", f"{side!r} is filled in too, expected one of the two")
    rect, wall = hung.rect, plan.job.wall
    if from_level is not None:
        level = plan.level_line
        others = {
            "its bottom edge?": rect.y0 - level, "the height above the floor?": rect.y1,
            "below the line? then write  below  behind it": level - rect.y1,
        }  # fmt: skip
        _check_near(from_level, rect.y1 - level, others, f"{where}, {side}_from_level", plan, upward)
        return level + from_level
    if above is not None:
        others = {
            "its bottom edge?": rect.y0, "the distance from the ceiling?": wall.height - rect.y1,
            "the distance from the level line?": abs(rect.y1 - plan.level_line), "how far off it hangs?": 0.0,
        }  # fmt: skip
        _check_near(above, rect.y1, others, f"{where}, {side}", plan)
    return above


def _left_edge(table: ReadingTable, hung: Hung, plan: Plan, where: str) -> float | None:
    if table.left_edge is None:
        return None
    rect, centre = hung.rect, plan.centre_line
    others = {
        "left of the line? then write  left  behind it": centre - rect.x0, "its right edge?": rect.x1 - centre,
        "the distance from the wall's left end?": rect.x0,
    }  # fmt: skip
    _check_near(table.left_edge, rect.x0 - centre, others, f"{where}, left_edge", plan, sideways)
    return centre + table.left_edge


def _beside(table: ReadingTable, hung: Hung, plan: Plan, where: str) -> dict[str, Any]:
    """The gap and the neighbour that it was measured to; both or none of them are there."""
    if table.gap is None and table.beside is None:
        return {}
    if table.gap is None or table.beside is None:
        lacking, has = ("gap", "beside") if table.gap is None else ("beside", "gap")
        raise InputError(f"{where}, {lacking}", f"is blank, expected it where {has!r} is filled in")
    if table.left_edge is not None:
        raise InputError(f"{where}, gap", "'left_edge' is filled in too, expected one of the two")
    other = frame_named(table.beside, plan, f"{where}, beside")
    if other is hung:
        raise InputError(f"{where}, beside", f"found {table.beside!r}, the frame itself, expected the one beside it")
    planned, _ = hung.rect.gaps_to(other.rect)
    if planned < 0:
        raise InputError(f"{where}, beside", f"found {other.frame.id!r}, which hangs above or below, not beside")
    _check_near(table.gap, planned, {}, f"{where}, gap", plan)
    return {"gap": table.gap, "beside": other.frame.id}


def _check_near(
    found: float, planned: float, others: Mapping[str, float], where: str, plan: Plan,
    shown: Callable[[float, str], str] = show_both,
) -> None:  # fmt: skip
    """Raises InputError for a reading that is not plausible, with the edge it may have been read from."""
    if abs(found - planned) <= MOST_OFF:
        return
    unit = plan.job.unit
    hint = next((f"is this {name}" for name, at in others.items() if abs(found - at) <= ALIKE), "")
    slips = [one for one in ("in", "cm", "mm") if one != unit and abs(found / MM[unit] * MM[one] - planned) <= ALIKE]
    if slips and not hint:
        hint = f"is this in {slips[0]}? then write the unit behind the number"
    raise InputError(
        where, f"found {shown(found, unit)}, where the plan has {shown(planned, unit)}",
        hint or "was it read from another edge, or of another frame? measure it again",
    )  # fmt: skip


def _tilt(text: str | None, where: str) -> float | None:
    """A spirit level's reading, in mm per metre."""
    if text is None:
        return None
    try:
        tilt = float(text.lower().replace("mm/m", "").replace(",", ".").replace("−", "-"))
    except ValueError:
        tilt = float("nan")
    if not abs(tilt) <= MOST_TILT:
        expected = f"the level's mm per metre, at most {MOST_TILT:g}, negative where the right end is lower"
        raise InputError(where, f"found {text!r}, expected {expected}", "such as 3, or -1.5")
    return tilt
