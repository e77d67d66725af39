"""The frames of a job one by one, as yet untyped: from its tables, and from the spreadsheets it names."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from templates_gen.base.errors import InputError, did_you_mean
from templates_gen.base.words import some
from templates_gen.job.reading.files import MOST_ROWS, parse_csv, read_bytes
from templates_gen.job.reading.typed import read_table
from templates_gen.job.tables.frame import FrameTable
from templates_gen.job.tables.hanger import HangerTable
from templates_gen.job.tables.whole import JobTable

_JOINERS = re.compile("[\u200c\u200d]")
"""What is left of them in a name is part of its letters (`unseen.py`)."""

NESTED = {name: f"hanger.{name}" for name in HangerTable.__struct_fields__ if name != "kind"}
"""A spreadsheet may name the fields of a hanger by themselves: `drop_left` for `hanger.drop_left`."""

LONGEST_ID = 200
"""Letters of a frame's id: more are no name.  Our own bound, no source."""

MOST_FRAMES = MOST_ROWS
"""A template of so many takes a minute and 430 MB, as measured here; more is taken for a mistake.  Our own design, no
source."""


FIRST = "a frame begins with [[frame]]; for a whole job  templates-gen start NAME.toml"
"""What to do where there is none."""


def frame_rows(
    raw: Mapping[str, Any], job: JobTable, path: Path
) -> tuple[list[tuple[str, Any]], tuple[tuple[str, bytes], ...]]:
    """Every frame as (where, fields), from the job file and the spreadsheet it names, and that spreadsheet.

    Raises InputError for a frame without an id, for no frames, or for too many.
    """
    listed = raw.get("frame", [])
    if not isinstance(listed, list):
        raise InputError("frame", "expected one [[frame]] table for each frame, in double brackets")
    rows = [(_named(fields, f"frame {number}"), fields) for number, fields in enumerate(listed, 1)]
    source: tuple[tuple[str, bytes], ...] = ()
    if job.frames:
        sheet = path.parent / job.frames
        content = read_bytes(sheet)
        rows += _sheet_rows(content, sheet.name)
        source = ((sheet.name, content),)
    if not 0 < len(rows) <= MOST_FRAMES:
        raise InputError("frame", f"found {len(rows)} frames, expected 1 to {MOST_FRAMES}", FIRST)
    for where, fields in rows:
        _check_id(fields, where)
    return rows, source


def _sheet_rows(content: bytes, name: str) -> list[tuple[str, Any]]:
    known = FrameTable.__struct_fields__
    found = parse_csv(content, name, known, "id", NESTED)
    if other := next((column for _, fields in found for column in fields if column not in known), ""):
        hint = did_you_mean(other, known, f"known columns: {', '.join(known)}")
        raise InputError(f"{name}, line 1", f"unknown column {other!r}", hint)
    return [(_named(fields, f"{name}, line {line}"), fields) for line, fields in found]


def measured_rows(
    job: JobTable, path: Path, known: list[str]
) -> tuple[dict[str, tuple[str, FrameTable]], tuple[tuple[str, bytes], ...]]:
    """What was measured of the frames, by their ids, each with where it stands, and the spreadsheet that says so.

    Raises InputError for a frame that the job does not know, or one measured twice.
    """
    if not job.measured:
        return {}, ()
    sheet = path.parent / job.measured
    content = read_bytes(sheet)
    found: dict[str, tuple[str, FrameTable]] = {}
    ids = {" ".join(name.split()): name for name in known}  # in a cell, blanks are one
    for where, fields in _sheet_rows(content, sheet.name):
        _check_id(fields, where)
        name = ids.get(fields["id"], fields["id"])
        if name not in known:
            hint = did_you_mean(name, known, f"frames: {some(known)}")
            raise InputError(f"{where}, id", f"found {name!r}, expected the id of a frame of the job", hint)
        if name in found:
            raise InputError(f"{where}, id", f"found {name!r} twice, expected each frame to be measured once")
        found[name] = where, read_table(fields, FrameTable, job.unit, where, loose=True)
    return found, ((sheet.name, content),)


def _named(fields: object, place: str) -> str:
    name = fields.get("id") if isinstance(fields, Mapping) else None
    return f"{place} ({name})" if isinstance(name, str) and name and name.isprintable() else place


def _check_id(fields: object, where: str) -> None:
    name = fields.get("id") if isinstance(fields, Mapping) else None
    if (
        not isinstance(name, str)
        or not name.strip()
        or not _JOINERS.sub("", name).isprintable()
        or len(name) > LONGEST_ID
    ):
        found = "is missing" if name is None else f"found {name!r}"
        quoted = "" if name is None or isinstance(name, str) else ", in quotes"
        raise InputError(f"{where}, id", f'{found}, expected a short name such as "A"{quoted}')
