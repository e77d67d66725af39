"""How the frames are arranged: one kind of arrangement becomes another, and what is dragged gets a place by hand."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from typing import Any

import templates_gen as tg
from templates_gen.arranging.kept import placed_values, regrouped
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect, same
from templates_gen.base.units import DIVISION, exact
from templates_gen.desk.opened import Read
from templates_gen.job.changes import Change


def arrange(read: Read, data: Mapping[str, Any]) -> Sequence[Change]:
    """Another arrangement, made from where the frames are now, so that little jumps.

    Raises InputError for one that the wall has nothing for.
    """
    kind = str(data["kind"])
    made = _MAKING[kind](read) if kind in _MAKING else {}
    return _group_as(read, {"arrangement": kind, **made})


def _group_as(read: Read, values: Mapping[str, Any]) -> list[Change]:
    return regrouped(read.raw.get("group", {}), values)


def _around(read: Read) -> Mapping[str, Any]:
    """About the largest window, door or other feature; the frames to both sides of it, in their order.

    Raises InputError for a wall with nothing on it.
    """
    features = sorted(read.job.wall.features, key=lambda one: (one.kind != "window", -one.rect.width * one.rect.height))
    if not features:
        raise InputError("group, around", "there is nothing on the wall to hang around", "add it to the wall first")
    ids, half = _in_order(read), (len(read.job.frames) + 1) // 2
    right = ids[half:] or None
    return {"around": features[0].name, "left": ids[:half], "right": right, "centre_on": None, "height": None}


_MAKING: Mapping[str, Callable[[Read], Mapping[str, Any]]] = {
    "rows": lambda read: {"rows": _bands(read, lambda rect: -rect.cy, lambda rect: rect.cx)},
    "columns": lambda read: {"columns": _bands(read, lambda rect: rect.cx, lambda rect: -rect.cy)},
    "grid": lambda read: {"across": math.ceil(math.sqrt(len(read.job.frames)))},
    "around": _around,
    "placed": lambda read: _placed_as(read, _rects(read)),
}
"""What of the frames as they hang goes into another arrangement; a row, a column and the like need nothing."""


def _in_order(read: Read) -> list[str]:
    """The frames as they hang, row by row; as they stand in the file where no place is known yet."""
    hung = read.plan.frames if read.plan is not None else ()
    return [one.frame.id for one in hung] or [frame.id for frame in read.job.frames]


def _bands(read: Read, across: Callable[[Rect], float], along: Callable[[Rect], float]) -> list[list[str]]:
    """The frames in rows (or columns): those that hang so now, else rows of about the same number."""
    rects = _rects(read) if read.plan is not None else {}
    ids = sorted(rects, key=lambda name: (across(rects[name]), along(rects[name]))) or _in_order(read)
    bands: list[list[str]] = []
    for name in ids:
        least = min(rects[name].width, rects[name].height) / 2 if rects else 0.0
        if bands and rects and across(rects[name]) - across(rects[bands[-1][0]]) < least:
            bands[-1].append(name)
        else:
            bands.append([name])
    if len(bands) in (1, len(ids)) and len(ids) > 2:  # a row, a column or a heap: nothing to go by
        ids, wide = _in_order(read), math.ceil(math.sqrt(len(ids)))
        return [ids[at : at + wide] for at in range(0, len(ids), wide)]
    return [sorted(band, key=lambda name: along(rects[name])) for band in bands] if rects else bands


def _rects(read: Read) -> dict[str, Rect]:
    return _plan(read).rects


def _plan(read: Read) -> tg.Plan:
    if read.plan is None:
        raise InputError("group", "the places of the frames are still being found", "wait for them, or stop the search")
    return read.plan


def _placed_as(read: Read, rects: Mapping[str, Rect]) -> dict[str, Any]:
    return placed_values(_plan(read), rects)


def moved_frame(read: Read, data: Mapping[str, Any]) -> Sequence[Change]:
    """A frame with its middle at x, y (mm on the wall), to the nearest mark of a tape unless it was set to another's
    edge, a gap or a line.  The group is placed by hand from then on."""
    name, unit, plan = str(data["frame"]), read.job.unit, _plan(read)
    rects = _rects(read)
    old, x, y = rects[name], float(data["x"]), float(data["y"])
    step, held = DIVISION[unit], data.get("held", [])
    x = x if "x" in held else plan.centre_line + step * round((x - plan.centre_line) / step)
    y = y if "y" in held else plan.level_line + step * round((y - plan.level_line) / step)
    rects[name] = Rect.about(x, y, old.width, old.height)
    if not _fixed(read):
        return _group_as(read, _placed_as(read, rects))
    spot = {"centre": [exact(x - plan.centre_line, unit), exact(y - plan.level_line, unit)]}
    return [Change(("group", "place", name), spot)]


def _fixed(read: Read) -> bool:
    """True where the frames are placed and no frame's move would move the level line."""
    return read.job.group.arrangement == "placed" and read.job.group.height.by == "centre"


def keep_places(read: Read) -> Sequence[Change]:
    """Every frame placed where it is now."""
    return _group_as(read, _placed_as(read, _rects(read)))


def placed_as(read: Read, data: Mapping[str, Any]) -> Sequence[Change]:
    """All frames at these middles (mm on the wall), as one of several arrangements has them."""
    sizes = {frame.id: frame for frame in read.job.frames}
    rects = {
        name: Rect.about(float(x), float(y), sizes[name].width, sizes[name].height)
        for name, (x, y) in data["middles"].items()
    }
    return _group_as(read, _placed_as(read, rects))


def moved_feature(read: Read, data: Mapping[str, Any], number: int) -> Sequence[Change]:
    """A feature with its lower left corner at x, y (mm on the wall), to the nearest mark of a tape."""
    unit, rect = read.job.unit, read.job.wall.features[number].rect
    step = DIVISION[unit]
    made = []
    for name, old, new in (("left", rect.x0, data["x"]), ("bottom", rect.y0, data["y"])):
        value = max(0.0, float(new) if name in data.get("held", []) else step * round(float(new) / step))
        if not same(value, old):
            made.append(Change(("wall", "feature", number, name), exact(value, unit)))
    return made
