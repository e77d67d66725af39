"""From the files to a finished job: the one door through which untyped data enters."""

from __future__ import annotations

import datetime
import re
import time
import unicodedata
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from templates_gen.base.errors import InputError, did_you_mean
from templates_gen.base.file_names import apart
from templates_gen.base.record import replace
from templates_gen.base.source_date import source_date
from templates_gen.base.unseen import without_unseen
from templates_gen.job.accuracy import Accuracy
from templates_gen.job.model import Fixing, Frame, Job
from templates_gen.job.reading.files import check_text, parse_toml, read_bytes, shown
from templates_gen.job.reading.frame_list import frame_rows, measured_rows
from templates_gen.job.reading.framing import build_fixing, build_frame
from templates_gen.job.reading.grouping import build_group
from templates_gen.job.reading.own_units import written_units
from templates_gen.job.reading.typed import read_table
from templates_gen.job.reading.walling import build_paper, build_wall
from templates_gen.job.tables.contents import home_of
from templates_gen.job.tables.frame import FrameTable
from templates_gen.job.tables.group import GroupTable
from templates_gen.job.tables.hanger import FixingTable
from templates_gen.job.tables.paper import AccuracyTable, PaperTable
from templates_gen.job.tables.whole import JobFile, JobTable

KNOWN_TABLES = list(JobFile.__struct_fields__)

_ALIKE = str.maketrans("ΑΒΕΖΗΙΚΜΝΟΡΤΥΧοАВЕЅІЈКМНОРСТУХаеѕіјорсух", "ABEZHIKMNOPTYXoABESIJKMHOPCTYXaesijopcyx")
"""Greek and Cyrillic letters, each to the Latin one that looks the same (Unicode TR39, confusables, from memory)."""


def read_job(path: Path | str) -> Job:
    """The job of a TOML file and of the spreadsheet it names, checked and complete.

    Lengths in mm, weights in kg.  Raises InputError saying what was found, what was expected and where.
    """
    path = Path(path)
    content = read_bytes(path)
    try:
        return build_job(parse_toml(content, ""), path, content)
    except InputError as error:
        raise error if error.where.startswith(str(path)) else error.inside(path.name) from None


def build_job(raw: dict[str, Any], path: Path, content: bytes = b"") -> Job:
    """The job of a job file's tables as they are written; what they name is looked for beside `path`.

    Raises InputError.
    """
    check_tables(raw)
    check_text(raw)
    raw = shown(raw)
    job = _job_table(raw.get("job", {}))
    rows, csv_source = frame_rows(raw, job, path)
    types = {name: _type_table(table, job.unit, f"frame_type.{name}") for name, table in _types(raw).items()}
    in_sheet = len(rows) - len(raw.get("frame", []))
    tables = [
        (read_table(row, FrameTable, job.unit, where, loose=at >= len(rows) - in_sheet), where)
        for at, (where, row) in enumerate(rows)
    ]
    default = read_table(raw.get("fixing", {}), FixingTable, job.unit, "fixing")
    fixing = build_fixing(default, "fixing")
    measured, measured_source = measured_rows(job, path, [fields["id"] for _, fields in rows])
    frames = tuple(
        _frame(table, where, measured.get(str(table.id)), types, fixing, job.unit, path.parent)
        for table, where in tables
    )
    wall = build_wall(raw.get("wall", {}), job.unit)
    group_table = read_table(raw.get("group", {}), GroupTable, job.unit, "group")
    return Job(
        title=job.title or without_unseen(path.stem),
        client=job.client,
        unit=job.unit,
        date=job.date or _last_change(path),
        language=job.language,
        wall=wall,
        group=build_group(group_table, _unique(frames), wall, job.unit),
        frames=frames,
        paper=build_paper(read_table(raw.get("paper", {}), PaperTable, job.unit, "paper"), job.unit, path.parent),
        accuracy=_accuracy(read_table(raw.get("accuracy", {}), AccuracyTable, job.unit, "accuracy")),
        written=written_units(raw, rows),
        confirmed=tuple(job.confirmed),
        named=tuple(name for name in (job.frames, job.measured) if name),
        sources=_apart(((path.name, content), *csv_source, *measured_source)),
    )


def _apart(files: Sequence[tuple[str, bytes]]) -> tuple[tuple[str, bytes], ...]:
    """The same files, none under the name of another: two from different folders may be called the same."""
    return tuple(zip(apart(name for name, _ in files), (content for _, content in files), strict=True))


def _frame(
    table: FrameTable, where: str, measured: tuple[str, FrameTable] | None, types: Mapping[str, FrameTable],
    fixing: Fixing, unit: str, beside: Path,
) -> Frame:  # fmt: skip
    if measured is None:
        return build_frame(table, _type_of(table, types, where), fixing, unit, where, beside)
    where, values = f"{where}, measured in {measured[0]}", _own_words(measured[1], table)
    shared = _type_of(table if values.type is None else values, types, where)
    return build_frame(table, shared, fixing, unit, where, beside, values)


def _own_words(measured: FrameTable, own: FrameTable) -> FrameTable:
    """What was measured, with the job's own words where they differ by blanks alone, of which a cell keeps one."""
    words = {name: getattr(own, name) or "" for name in ("id", "title", "type")}
    same = {name: text for name, text in words.items() if " ".join(text.split()) == getattr(measured, name)}
    return replace(measured, **same)


def _accuracy(table: AccuracyTable) -> Accuracy:
    """The standard deviations in mm and per cent, the usual ones where none is given."""
    given = {name: value if name == "string" else float(value) for name, value in table.given.items()}
    return replace(Accuracy(), **given)


def check_tables(raw: Mapping[str, Any]) -> None:
    """Raises InputError for a table that no job file has."""
    for name, found in raw.items():
        if name not in KNOWN_TABLES:
            table = isinstance(found, (Mapping, list))
            hint = home_of(name, table) or did_you_mean(name, KNOWN_TABLES, f"known tables: {', '.join(KNOWN_TABLES)}")
            raise InputError("", f"unknown table {name!r}", hint)


def _job_table(raw: object) -> JobTable:
    if isinstance(raw, Mapping) and isinstance(raw.get("date"), datetime.date):
        raw = {**raw, "date": raw["date"].isoformat()[:10]}
    table = read_table(raw, JobTable, "mm", "job")
    try:
        datetime.date.fromisoformat(table.date or "2000-01-01")
    except ValueError:
        raise InputError("job, date", f"found {table.date!r}, expected a date such as 2026-03-14") from None
    if not re.fullmatch(_LANGUAGE, table.language):
        raise InputError("job, language", f"found {table.language!r}, expected a language's tag such as en-GB or cy")
    return table


_LANGUAGE = r"[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*"
"""What a tag is made of (RFC 5646, 2.1)."""


def _types(raw: Mapping[str, Any]) -> Mapping[str, Any]:
    types = raw.get("frame_type", {})
    if not isinstance(types, Mapping):
        raise InputError("frame_type", "expected tables such as [frame_type.tall]")
    return types


def _type_table(raw: object, unit: str, where: str) -> FrameTable:
    table = read_table(raw, FrameTable, unit, where)
    for name in ("id", "type"):
        if getattr(table, name) is not None:
            raise InputError(f"{where}, {name}", "does not belong to a frame type, which says what frames share")
    return table


def _type_of(table: FrameTable, types: Mapping[str, FrameTable], where: str) -> FrameTable | None:
    if table.type is None:
        return None
    if table.type not in types:
        hint = did_you_mean(table.type, types, f"types: {', '.join(types) or 'none'}")
        raise InputError(f"{where}, type", f"found {table.type!r}, expected the name of a [frame_type.…] table", hint)
    return types[table.type]


def _unique(frames: Sequence[Frame]) -> Sequence[Frame]:
    """The same frames.  Raises InputError when the ids of two look the same on paper."""
    seen: dict[str, str] = {}
    for frame in frames:
        shown = " ".join(unicodedata.normalize("NFC", frame.id).translate(_ALIKE).split())
        if shown in seen:
            found = "twice" if seen[shown] == frame.id else f"and {seen[shown]!r}, which look the same"
            where = f"frame {frame.id}, id"
            raise InputError(where, f"found {frame.id!r} {found}, expected each frame to have its own id")
        seen[shown] = frame.id
    return frames


def _last_change(path: Path) -> str:
    """The day of the job file's last change: what is printed is the same for the same file, whenever it is printed.

    Today for one that is not written yet.
    """
    seconds = int(path.stat().st_mtime if path.exists() else time.time())
    return source_date() or datetime.datetime.fromtimestamp(seconds).date().isoformat()
