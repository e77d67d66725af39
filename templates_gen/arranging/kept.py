"""Where frames are, kept in the job file: each is placed there by hand from then on."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.units import exact
from templates_gen.job.arrangements import LISTING
from templates_gen.job.changes import Change
from templates_gen.job.reading.grouping import WISHES

OF_ONE_KIND = (*sorted(LISTING), *WISHES, "align", "set")
"""Fields of a group that belong to some arrangements alone."""


def regrouped(own: Mapping[str, Any], values: Mapping[str, Any]) -> list[Change]:
    """What makes a group of its `own` table one with these values, in place of what belonged to its arrangement; gaps
    stay, and a height that fits."""
    gone = [Change(("group", name), None) for name in OF_ONE_KIND if name in own and name not in values]
    height = own.get("height")
    on_stairs = isinstance(height, Mapping) and "above_nosings" in height
    if height is not None and "height" not in values and on_stairs != (values["arrangement"] == "stairs"):
        gone.append(Change(("group", "height"), None))
    new = {name: value for name, value in values.items() if value is not None or name in own}
    return [*gone, *(Change(("group", name), value) for name, value in new.items())]


def placed_values(plan: Plan, rects: Mapping[str, Rect]) -> dict[str, Any]:
    """A group's values that have every frame at its place (wall mm), from the centre line of the plan and a level line
    that no frame moves any more."""
    unit = plan.job.unit
    x, y = plan.centre_line, max(0.0, plan.level_line)  # beside a stair a pitch line may lead below the floor
    place = {name: {"centre": [exact(rect.cx - x, unit), exact(rect.cy - y, unit)]} for name, rect in rects.items()}
    values: dict[str, Any] = {"arrangement": "placed", "place": place, "height": {"centre": exact(y, unit)}}
    return values | ({"centre_on": exact(x, unit)} if plan.job.group.around else {})
