"""The same group on another wall: frames and their arrangement from the job, wall and place from another file."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from templates_gen.base.errors import InputError
from templates_gen.base.file_names import apart
from templates_gen.base.record import replace
from templates_gen.base.units import exact
from templates_gen.job.model import Job, Wall
from templates_gen.job.reading.building import check_tables, read_job
from templates_gen.job.reading.files import check_text, parse_toml, read_bytes, shown
from templates_gen.job.reading.grouping import build_group
from templates_gen.job.reading.own_units import written_units
from templates_gen.job.reading.place import is_name
from templates_gen.job.reading.typed import read_length, read_table
from templates_gen.job.reading.walling import build_wall
from templates_gen.job.tables.group import CentreTable, GroupTable
from templates_gen.job.tables.whole import JobTable


def read_job_on(path: Path, other: Path) -> Job:
    """The job of one file on the wall of another: a job file, or one with [wall] alone and perhaps [group].

    Of its [group] only `height`, `centre_on`, and `around` for a group around a feature count; where it gives none,
    those of the job stay, if they mean something there.  Bare numbers are in the other file's own unit, or in the
    job's where it says none.  Both files travel inside the template.  Raises InputError.
    """
    job = read_job(path)
    where = f"--wall {other.name}"
    try:
        content = read_bytes(other)
        raw = parse_toml(content, "")
        check_text(raw)
        return _moved(job, shown(raw), (_other_name(job, other), content))
    except InputError as error:
        inside = error.where.removeprefix(str(other))  # a file that cannot be read at all says so itself
        raise InputError(f"{where}, {inside}" if inside else where, error.problem, error.hint) from None


def _moved(job: Job, raw: Mapping[str, Any], source: tuple[str, bytes]) -> Job:
    check_tables(raw)
    if "wall" not in raw:
        raise InputError("", "has no [wall], expected the wall to hang the group on")
    unit = _unit(raw.get("job"), job.unit)
    wall = build_wall(raw["wall"], unit)
    own = read_table(shown(parse_toml(job.sources[0][1], "")).get("group", {}), GroupTable, job.unit, "group")
    there = raw.get("group", {})
    ids = [frame.id for frame in job.frames]
    table = _placed(own, read_table(there, GroupTable, unit, "group"), set(there), unit, wall, ids)
    try:
        group = build_group(table, job.frames, wall, job.unit)
    except InputError as error:
        hint = f"{error.hint}; say in the [group] of that file how the group is placed there".lstrip("; ")
        raise InputError(error.where, f"on this wall {error.problem}", hint) from None
    kept = [each for each in job.written if not each[0].startswith(("wall", "feature"))]
    written = (*kept, *written_units(raw, ()))
    return replace(job, wall=wall, group=group, sources=(*job.sources, source), moved_to=source[0], written=written)


def _placed(
    own: GroupTable, other: GroupTable, given: set[str], unit: str, wall: Wall, ids: Sequence[str]
) -> GroupTable:
    """The job's own group table, but placed as the other one says where it says so."""
    where = ("around",) if own.arrangement == "around" else ("centre_on", "height")
    table = replace(own, **{name: getattr(other, name) for name in where if name in given})
    if own.arrangement == "around":
        return replace(table, centre_on="wall")  # it is centred on what it hangs around
    if "centre_on" not in given:
        over = own.centre_on.over if isinstance(own.centre_on, CentreTable) else own.centre_on
        known = ["wall", *(feature.name for feature in wall.features)]
        if over not in known and own.centre_on not in ids:
            problem = f"the group is centred on {over!r} of its own wall, which means nothing on this one"
            raise InputError("group, centre_on", problem, CENTRE_HINT)
        return table
    if isinstance(table.centre_on, CentreTable):
        over = _over(table.centre_on.over, unit, wall, "group, centre_on, over")
        return replace(table, centre_on=replace(table.centre_on, over=over))
    if table.centre_on in ids:
        return table
    return replace(table, centre_on=_over(table.centre_on, unit, wall, "group, centre_on"))


def _over(value: str | float, unit: str, wall: Wall, where: str) -> str | float:
    """What a group is over on the other wall, a distance so that it is read in the unit it was written in."""
    if isinstance(value, str) and is_name(value, wall):
        return value
    return exact(read_length(value, unit, where), "mm")


CENTRE_HINT = 'give it here:  [group] centre_on = "wall", the name of a feature, or a distance from the left end'


def _unit(raw: object, unit: str) -> str:
    """The unit that the other file says, else the job's."""
    if isinstance(raw, Mapping) and "unit" in raw:
        return read_table({"unit": raw["unit"]}, JobTable, unit, "job").unit
    return unit


def _other_name(job: Job, other: Path) -> str:
    """The name under which the other file travels: its own, unless one of the job's files has that."""
    names = [name for name, _ in job.sources]
    return other.name if apart([other.name], names) == [other.name] else f"{other.stem}-wall{other.suffix}"
