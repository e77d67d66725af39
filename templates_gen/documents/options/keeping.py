"""The chosen arrangement goes into a job file: the same file, its group placed frame by frame."""

from __future__ import annotations

from collections.abc import Mapping

from templates_gen.base.errors import InputError
from templates_gen.base.toml import toml
from templates_gen.base.units import exact
from templates_gen.job.model import Group, Height, Job
from templates_gen.job.reading.files import parse_toml
from templates_gen.job.table_lines import blocks

GROUP = ("group",)
"""The path of the table that is replaced, with what is inside it."""


def kept(text: str, job: Job, comment: str) -> str:
    """The text of a job file with its group as that of this job, whose frames are placed; all else as it was.

    Raises InputError where the group of the file is not written as a table of its own.
    """
    tables = blocks(text)
    own = [at for at, (path, _) in enumerate(tables) if path[:1] == GROUP] or [len(tables)]
    others = ["".join(lines) for path, lines in tables if path[:1] != GROUP]
    before, after = ("".join(part).strip("\n") for part in (others[: own[0]], others[own[0] :]))
    written = group_table(job.group, job.unit, comment, _own_group(text))
    new = "\n\n".join(filter(None, [before, written, after])) + "\n"
    if "\r\n" in text:  # all lines end as those of the file do
        new = new.replace("\r\n", "\n").replace("\n", "\r\n")
    if not _only_the_group_differs(text, new):
        hint = "write it as a table of its own, under [group]"
        raise InputError("group", "cannot be replaced as it is written", hint)
    return new


def _only_the_group_differs(before: str, after: str) -> bool:
    try:
        one, two = (parse_toml(text.encode(), "") for text in (before, after))
    except InputError:  # a group that is written twice now
        return False
    return {**one, "group": None} == {**two, "group": None} and isinstance(two["group"], dict)


def _own_group(text: str) -> Mapping[str, object]:
    """The group of a job file as it is written there."""
    group = parse_toml(text.encode(), "").get("group", {})
    return group if isinstance(group, dict) else {}


def group_table(group: Group, unit: str, comment: str, own: Mapping[str, object]) -> str:
    """The [group] table of placed frames, to be adjusted by hand; the comment in signs that a remark may have.

    What its `own` table says of gaps and place stays as it was written there: a value that is doubtful without a unit
    is not made to look sure by one.
    """
    remark = "".join(sign if sign.isprintable() else "?" for sign in comment)  # it names a file, called anything
    gaps: dict[str, object] = {"gap_across": exact(group.gap_across, unit), "gap_down": exact(group.gap_down, unit)}
    told = {name: own[name] for name in ("gap", *gaps) if name in own} or gaps
    told["centre_on"] = own.get("centre_on", _centre_on(group, unit))
    told["height"] = own.get("height", _height(group.height, unit))
    lines = [
        "[group]",
        f"# {remark}",
        'arrangement = "placed"',
        *(f"{name} = {toml(value)}" for name, value in told.items()),
        "",
        "# middles of the frames, from the centre line and the level line",
        "[group.place]",
    ]
    for name, spot in group.spots:
        lines.append(f"{toml(name)} = {toml({'centre': [exact(spot.x, unit), exact(spot.y, unit)]})}")
    return "\n".join(lines)


def _centre_on(group: Group, unit: str) -> object:
    over = group.centre_on if isinstance(group.centre_on, str) else exact(group.centre_on, unit)
    return {"frame": group.anchor, "over": over} if group.anchor else over


def _height(height: Height, unit: str) -> dict[str, str]:
    at = exact(height.at, unit)
    told = {"above": height.feature, "by": at} if height.by == "above" else {height.by: at}
    return told | ({"of": height.of} if height.of else {})
