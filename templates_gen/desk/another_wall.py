"""The same frames on another wall: a new job from an open one, which stays as it is."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from templates_gen.arranging.kept import regrouped
from templates_gen.arranging.plan import as_found, plan_wall
from templates_gen.base.record import replace
from templates_gen.desk.arrange import keep_places
from templates_gen.desk.fields import typed
from templates_gen.desk.opened import Read
from templates_gen.job.changes import Change
from templates_gen.job.editing import edited
from templates_gen.job.reading.building import build_job
from templates_gen.job.reading.files import parse_toml
from templates_gen.job.table_lines import blocks


def bare(text: str) -> str:
    """The text of a job file whose wall is an empty table: every remark on the old wall goes with what it was about."""
    tables = [(path, lines) for path, lines in blocks(text) if path == ("wall",) or path[:1] != ("wall",)]
    return "".join("[wall]\n\n" if path == ("wall",) else "".join(lines) for path, lines in tables)


def on_another_wall(read: Read, data: Mapping[str, Any]) -> Sequence[Change]:
    """What makes a job one for a wall of this width and height with nothing on it yet, of which nothing else is known.

    Frames, paper and arrangement stay, but for what was on, above or around something of the old wall.
    """
    sides = {name: typed(("wall", name), str(data.get(name) or "")) for name in ("width", "height")}
    wall = read.raw.get("wall", {})
    features = [Change(("wall", "feature", number), None) for number in reversed(range(len(wall.get("feature", []))))]
    gone = [Change(("wall", name), None) for name in wall if name not in ("feature", *sides)]
    job = [
        Change(("job", "title"), typed(("job", "title"), str(data.get("title") or ""))),
        Change(("job", "date"), None),
    ]
    return [*job, *features, *gone, *(Change(("wall", name), side) for name, side in sides.items()), *_placed(read)]


def as_agreed(text: str, read: Read) -> str:
    """The text of a job on another wall with its frames as they were found for the old one, where they fit there."""
    if read.plan is None or read.job.group.arrangement != "salon":
        return text
    raw = parse_toml(text.encode(), read.path.name)
    there = build_job(raw, read.path, text.encode())
    if (kept := as_found(read.plan, there)) is there:
        return text
    plan = replace(plan_wall(kept), job=there)
    return edited(text, keep_places(Read(read.path, text, raw, there, plan)))


def _placed(read: Read) -> list[Change]:
    """The group centred on the wall at the usual height, where it went by something on the old one."""
    group, ids = dict(read.raw.get("group", {})), [frame.id for frame in read.job.frames]
    made = []
    if group.get("arrangement") in ("around", "stairs"):
        made = regrouped(group, {"arrangement": "row"})
    centre, height = group.get("centre_on"), group.get("height")
    if centre is not None and centre not in ids:
        made.append(Change(("group", "centre_on"), centre.get("frame") if isinstance(centre, Mapping) else None))
    if isinstance(height, Mapping) and "above" in height:
        made.append(Change(("group", "height"), None))
    return made
