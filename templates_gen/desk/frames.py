"""Frames come, go and change their names, and stay in the group's rows, columns, orders and places."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from templates_gen.base.errors import InputError
from templates_gen.base.units import exact
from templates_gen.desk.fields import typed
from templates_gen.desk.opened import Read
from templates_gen.desk.places import frame_number
from templates_gen.job.changes import Change, Place, inside
from templates_gen.job.reading.files import parse_csv, read_bytes
from templates_gen.job.reading.frame_list import NESTED
from templates_gen.job.reading.other_words import two_sides
from templates_gen.job.tables.frame import FrameTable
from templates_gen.job.tables.hanger import HangerTable

LISTS = ("order", "left", "above", "right", "below")
"""Fields of a group that list frames."""

LISTS_OF_LISTS = ("rows", "columns", "together", "same_height")
"""Fields of a group that list lists of frames."""

BY_NAME = ("place", "pin")
"""Fields of a group that have a value for each frame."""

GOES_BY = (("centre_on",), ("centre_on", "frame"), ("height", "of"))
"""Fields of a group that name the frame by which it hangs."""

PASTED = (("id",), ("id", "width", "height"), ("id", "title", "width", "height"),
          ("id", "title", "width", "height", "weight"),
          ("id", "title", "width", "height", "weight", "drop"))  # fmt: skip
"""What the columns of pasted cells are taken for where no header says it, by how many there are.  Our own design."""


ITS_OWN = ("id", "title", "image", "drop")
"""Fields of a frame that another one like it does not have from it."""


def added_frames(read: Read, data: Mapping[str, Any]) -> Sequence[Change]:
    """One more frame with these values, under its own id or the next free one.

    Without a size it is like the frame that is named, but for what was measured of that one alone; with one, it has
    just its kind of hanger.
    """
    values = {key: value for key, value in data.get("values", {}).items() if value not in (None, "")}
    like = _like(read, str(data["like"])) if data.get("like") else {}
    if "width" in values or "height" in values:
        like = {key: value for key, value in like.items() if key == "hanger" and isinstance(value, str)}
    return _added(read, [like | _sides(values)])


def copied_frame(read: Read, data: Mapping[str, Any]) -> Sequence[Change]:
    """One more frame like another, but for its id, its title, its picture and what was measured of it alone."""
    return _added(read, [_like(read, str(data["frame"]))])


def _like(read: Read, name: str) -> dict[str, Any]:
    """What another frame has that one of its kind may have, too: its sides and what holds it, not its drops."""
    table = {key: value for key, value in read.raw["frame"][frame_number(read, name)].items() if key not in ITS_OWN}
    hanger = table.get("hanger")
    if isinstance(hanger, Mapping):
        table["hanger"] = {key: value for key, value in hanger.items() if not key.startswith("drop")}
    return table


def _sides(values: Mapping[str, Any]) -> dict[str, Any]:
    """A width such as 11 x 14 is both sides."""
    both = two_sides(str(values.get("width", ""))) if "height" not in values else None
    return dict(values) | ({"width": both[0], "height": both[1]} if both else {})


def pasted_frames(read: Read, data: Mapping[str, Any]) -> Sequence[Change]:
    """Frames out of cells as a spreadsheet puts them on the clipboard, with a header or without.

    Raises InputError, with the line, for cells that cannot be used.
    """
    text = str(data["text"]).strip("\n")
    if not text.strip():
        raise InputError("pasted", "found nothing, expected cells of a spreadsheet", "copy them there first")
    rows = [fields for _, fields in parse_csv(_with_header(text).encode(), "pasted", _COLUMNS, "id", NESTED)]
    return _added(read, rows)


def taken_in(read: Read, data: Mapping[str, Any]) -> Sequence[Change]:
    """The frames of the spreadsheet become tables of the job file, which names it no more.

    Raises InputError where it cannot be read.
    """
    name = str(read.raw["job"]["frames"])
    rows = parse_csv(read_bytes(read.path.parent / name), name, _COLUMNS, "id", NESTED)
    at = len(read.raw.get("frame", []))
    made = [Change(("frame", at + number), _table(row, at + number)) for number, (_, row) in enumerate(rows)]
    return [*made, Change(("job", "frames"), None)]


def _table(row: Mapping[str, Any], number: int) -> dict[str, Any]:
    """A frame's table of what was typed of it."""
    return {key: typed(("frame", number, key), value) for key, value in row.items()}


_COLUMNS = FrameTable.__struct_fields__


def _with_header(text: str) -> str:
    first = text.partition("\n")[0].rstrip("\r")
    sign = next((sign for sign in "\t;," if sign in first), "\t")
    cells = [cell.strip().strip('"').lower() for cell in first.split(sign)]
    if {*cells} & {*_COLUMNS, *HangerTable.__struct_fields__}:
        return text
    header = next((names for names in PASTED if len(names) == len(cells)), None)
    if header is None:
        hint = "copy the line with the names of the columns, too: id, title, width, height, weight, drop"
        raise InputError("pasted", f"found {len(cells)} columns without a header", hint)
    return sign.join(header) + "\n" + text


def _added(read: Read, rows: Sequence[Mapping[str, Any]]) -> list[Change]:
    ids = [frame.id for frame in read.job.frames]
    made: list[Change] = []
    at = len(read.raw.get("frame", []))
    for row in rows:
        name = str(row.get("id") or next(_free(ids)))
        table = {"id": name, **{key: value for key, value in row.items() if key != "id"}}
        ids.append(name)
        place = ("frame", at + len(made))
        made.append(Change(place, _table(table, at + len(made))))
    return [*made, *_listed(read, ids[len(read.job.frames) :])]


def _free(ids: Sequence[str]) -> Iterator[str]:
    """Short names that no frame has: A to Z without I and O, which look like figures, then with a number behind."""
    for number in range(0, len(ids) + 2):
        for letter in "ABCDEFGHJKLMNPQRSTUVWXYZ":
            name = f"{letter}{number or ''}"
            if name not in ids:
                yield name


def _listed(read: Read, new: Sequence[str]) -> list[Change]:
    """The new frames at the end of whatever lists every frame."""
    group = read.raw.get("group", {})
    for name in ("rows", "columns"):
        if rows := group.get(name):
            return [Change(("group", name), [*rows[:-1], [*rows[-1], *new]])]
    if "order" in group:
        return [Change(("group", "order"), [*group["order"], *new])]
    if group.get("arrangement") == "around":
        return [Change(("group", "right"), [*group.get("right", []), *new])]
    return [Change(("group", "place", name), spot) for name, spot in _beside(read, new)] if "place" in group else []


def _beside(read: Read, new: Sequence[str]) -> Iterator[tuple[str, dict[str, list[str]]]]:
    """Places to the right of the group, where a new frame is in nobody's way, at its middle height."""
    plan, unit = read.plan, read.job.unit
    if plan is None:
        return
    x, y = plan.group.x1 - plan.centre_line, plan.group.cy - plan.level_line
    wide = max(hung.rect.width for hung in plan.frames)
    for name in new:
        x += read.job.group.gap_across + wide
        yield name, {"centre": [exact(round(x - wide / 2, 1), unit), exact(round(y, 1), unit)]}


def removed_frame(read: Read, name: str) -> list[Change]:
    """A frame goes, and its name with it from the group.  Raises InputError for the last one."""
    number = frame_number(read, name)
    if len(read.job.frames) == 1:
        raise InputError(f"frame {name}", "is the only one, and a job has at least one frame", "add another one first")
    return [Change(("frame", number), None), *_renamed(read.raw.get("group", {}), name, None)]


def renamed_frame(read: Read, place: Place, value: Any) -> list[Change]:
    """A frame's name changes wherever the group has it."""
    old = read.raw["frame"][place[1]].get("id")
    new = None if value is None else str(value)
    return [Change(place, value), *(_renamed(read.raw.get("group", {}), old, new) if new else [])]


def _renamed(group: Mapping[str, Any], old: str, new: str | None) -> list[Change]:
    """All that a group has by a frame's name, with another name in place of it, or without it."""

    def listed(names: Sequence[str]) -> list[str]:
        return [one for name in names if (one := new if name == old else name) is not None]

    made = [Change(("group", name), listed(group[name])) for name in LISTS if old in group.get(name, ())]
    for name in LISTS_OF_LISTS:
        rows = group.get(name)
        if rows and any(old in row for row in rows):
            least = 1 if name in ("rows", "columns") else 2  # one frame alone is no pair
            made.append(Change(("group", name), [row for row in map(listed, rows) if len(row) >= least] or None))
    for name in BY_NAME:
        if old in group.get(name, {}):
            made.append(Change(("group", name, old), None))
            made += [Change(("group", name, new), group[name][old])] if new else []
    gone_by = (way for way in GOES_BY if inside(group, way) == old)
    return [*made, *(Change(("group", *way), new) for way in gone_by)]
