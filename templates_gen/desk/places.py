"""Places as the page names them, frames by their ids and features by their names, become places in the job file."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from templates_gen.base.errors import InputError
from templates_gen.desk.messages import GoneError
from templates_gen.desk.opened import Read
from templates_gen.job.changes import Place


def resolved(read: Read, at: Sequence[Any]) -> Place:
    """The place in the file: frames are named by id, so that two pages never mean different ones by a number.

    Raises GoneError where the frame or the feature is not there any more, InputError for a frame of a spreadsheet.
    """
    parts = [part if isinstance(part, int) else str(part) for part in at]
    if not parts or isinstance(parts[0], int):
        raise InputError("", f"found {at!r}, which is no place in a job file", "load the page again")
    if parts[0] == "frame" and len(parts) > 1:
        return ("frame", frame_number(read, str(parts[1])), *parts[2:])
    if parts[:2] == ["wall", "feature"] and len(parts) > 2:
        return ("wall", "feature", feature_number(read, parts[2]), *parts[3:])
    return tuple(parts)


def frame_number(read: Read, name: str) -> int:
    """Which [[frame]] table of the file it is, counted from 0.

    Raises GoneError for a frame that is no longer there, InputError for one that stands in a spreadsheet.
    """
    for number, table in enumerate(read.raw.get("frame", [])):
        if table.get("id") == name:
            return number
    if any(frame.id == name for frame in read.job.frames):
        sheet = read.raw.get("job", {}).get("frames", "a spreadsheet")
        raise InputError(f"frame {name}", f"stands in {sheet}", "change it there; the desk takes it in at once")
    raise GoneError


def feature_number(read: Read, name: Any) -> int:
    """Which [[wall.feature]] table of the file it is, told by number and name, as "2 bench", counted from 0.

    Raises GoneError where another stands there now.
    """
    number, _, called = str(name).partition(" ")
    features = read.job.wall.features
    if number.isdigit() and int(number) < len(features) and features[int(number)].name == called:
        return int(number)
    raise GoneError
