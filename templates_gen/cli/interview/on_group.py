"""The questions about the group: how the frames are arranged, and where they hang."""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.base.units import show_both
from templates_gen.cli.interview.question import Asking, Tables, count, fill, is_length, names_in, question_for
from templates_gen.job.arrangements import ARRANGEMENTS, SIDES
from templates_gen.job.reading.grouping import DEFAULT_GAP
from templates_gen.job.reading.place import DEFAULT_CENTRE

OFFERED = ("row", "rows", "column", "columns", "grid", "salon")
"""The arrangements that are offered on every wall; placed frames take a place for every one."""


def ask_group(group: Tables, tables: Tables) -> Asking:
    """How the frames are arranged, what is between them, and where they hang."""
    frames, unit = tables["frame"], tables["job"]["unit"]
    features = [feature.get("name", feature["kind"]) for feature in tables["wall"].get("feature", [])]
    once = tuple(name for name in features if features.count(name) == 1)
    if len(frames) > 1:
        on_stairs = ("stairs",) if "stairs" in tables["wall"] else ()
        ways = (*OFFERED, *(("around",) if once else ()), *on_stairs)
        yield from fill(group, "group.arrangement", choices=ways, default=(*on_stairs, "row")[0], begins=True)
        yield from _listing(group, frames, once)
        yield from fill(group, "group.gap", open=f"{show_both(DEFAULT_GAP, unit)}, the usual gap")
    if group.get("arrangement") == "around":
        return
    yield from fill(group, "group.centre_on", default="wall")
    if group["centre_on"] in [frame["id"] for frame in frames] and group["centre_on"] != "wall":
        yield from _frame_over(group, features, unit)
    if group.get("arrangement") == "stairs":
        yield from _above_nosings(group, unit)
    else:
        yield from _height(group, once, unit)


def _frame_over(group: Tables, features: Sequence[str], unit: str) -> Asking:
    """What the frame that goes in the middle hangs over; the middle of the wall is said by its name alone, but for a
    name that may be something else."""
    name = group["centre_on"]
    if other := "feature" if name in features else "distance" if is_length(name, unit) else "":
        group["centre_on"] = {"over": name}
        if (yield question_for("which", {"name": name, "other": other}, choices=("frame", other))) == other:
            return
        group["centre_on"] = {"frame": name}
    over = yield question_for("centre_on.over", {"frame": name}, default="wall")
    if over != "wall":
        group["centre_on"] = {"frame": name, "over": over}


def _above_nosings(group: Tables, unit: str) -> Asking:
    usual = f"{show_both(DEFAULT_CENTRE, unit)}, common practice"
    if text := (yield question_for("height.above_nosings", open=usual)):
        group["height"] = {"above_nosings": text}


def _listing(group: Tables, frames: Sequence[Tables], features: tuple[str, ...]) -> Asking:
    kind, ids = group["arrangement"], [frame["id"] for frame in frames]
    line, align = ARRANGEMENTS[kind].line, ARRANGEMENTS[kind].align
    if kind in ("rows", "columns"):
        means = f"names with a comma between them, and a slash between {kind}: {_example(ids)}"
        text = yield question_for(f"group.{kind}", means=means, example=_example(ids))
        group[kind] = [names_in(part, ids) for part in text.split("/")]
    elif kind == "grid":
        text = yield question_for("group.across")
        group["across"] = count(text)
    elif kind == "around":
        yield from _around(group, ids, features)
    aside = "width" if line == "column" else "height"
    if line and len({frame[aside] for frame in frames}) > 1:
        yield from fill(group, "group.align", {"line": line}, choices=align, default="centre")


def _around(group: Tables, ids: Sequence[str], features: tuple[str, ...]) -> Asking:
    """The feature, and the frames on each side of it; those that are named nowhere else are below it."""
    group["around"] = features[0]
    if len(features) > 1:
        group["around"] = yield question_for("group.around", choices=features)
    rest = list(ids)
    for side in SIDES:
        left = ", ".join(rest) if side == SIDES[-1] else ""
        text = yield question_for(f"group.{side}", default=left, open="" if left else "none")
        if text:
            group[side] = names_in(text, ids)
            rest = [name for name in rest if name not in group[side]]


def _example(ids: Sequence[str]) -> str:
    half = (len(ids) + 1) // 2
    return f"{', '.join(ids[:half])} / {', '.join(ids[half:])}"


def _height(group: Tables, features: tuple[str, ...], unit: str) -> Asking:
    ways = ("eye", *(["above"] if features else []), "centre", "top", "bottom")
    usual = f"eye: the middle of the group at {show_both(DEFAULT_CENTRE, unit)}, common practice"
    way = yield question_for("group.height", means=usual, choices=ways, default="eye")
    if way == "eye":
        return
    height: Tables = {}
    group["height"] = height
    if way != "above":
        yield from fill(height, f"height.{way}")
        return
    height["above"] = features[0]
    if len(features) > 1:
        there = group.get("centre_on", "")
        yield from fill(height, "height.above", choices=features, default=there if there in features else "")
    yield from fill(height, "height.by")
