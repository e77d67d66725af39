"""Where what is found changes as one measure of a small job grows: a line for each measure and each rule it starts."""

from __future__ import annotations

import math
import tomllib
from collections.abc import Iterator
from copy import deepcopy
from typing import Any

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import TemplatesError
from templates_gen.checks import find
from templates_gen.job.reading.building import build_job
from tests.jobs import SAMPLES
from tests.slips import get, set_to

BASE = """
[job]
title = "Two ferns"
unit = "mm"
date = "2026-03-01"
[wall]
width = 4000
height = 2600
build = "drywall"
board = 12.5
studs = { first = 300, spacing = 400, width = 40 }
wiring = "us"
[[wall.feature]]
kind = "furniture"
name = "sofa"
left = 1100
bottom = 0
width = 1900
height = 820
[[wall.feature]]
kind = "switch"
left = 200
bottom = 1150
width = 80
height = 120
[[wall.feature]]
kind = "outlet"
left = 3200
bottom = 300
width = 80
height = 120
[group]
arrangement = "row"
gap = 60
centre_on = "wall"
height = { centre = 1500 }
[[frame]]
id = "A"
width = 420
height = 520
depth = 25
drop = 60
weight = "2.4 kg"
hanger = "wire"
fixing = { kind = "nail", diameter = 1.8, length = 38 }
[[frame]]
id = "B"
width = 410
height = 500
weight = "3 kg"
hanger = { kind = "rings", left = 60, right = 62, drop_left = 80, drop_right = 82, seen_from = "back" }
fixing = { kind = "hook", below = 22, rating = "9 kg", nails = 1, length = 32, angle = 45 }
[[frame]]
id = "C"
width = 400
height = 510
drop = 70
hanger = { kind = "wire", apart = 120, ring_separation = 300, ring_depth = 110 }
fixing = { kind = "screw", diameter = 4, length = 40 }
"""
"""Made up; every measure in mm."""

RAW: dict[str, Any] = tomllib.loads(BASE)
"""Its tables."""

MEASURES = (
    "wall.width", "wall.height", "wall.board", "wall.studs.spacing", "wall.studs.width", "wall.feature.0.width",
    "wall.feature.0.height", "wall.feature.1.bottom", "wall.feature.1.width", "wall.feature.2.bottom",
    "group.height.centre", "frame.0.width", "frame.0.height", "frame.0.depth", "frame.0.drop", "frame.0.weight",
    "frame.0.fixing.diameter", "frame.0.fixing.length", "frame.1.weight", "frame.1.hanger.drop_left",
    "frame.1.hanger.drop_right", "frame.1.fixing.below", "frame.1.fixing.rating", "frame.1.fixing.length",
    "frame.1.fixing.angle", "frame.2.drop", "frame.2.hanger.apart", "frame.2.hanger.ring_separation",
)  # fmt: skip

STEP, FINE = 1.4, 1.01
"""By what factor a measure grows, and how finely a change is looked for.  Our own choice."""

TIMES = 9
"""Steps up and down from the measure as it is."""


def of_limits() -> Iterator[str]:
    """For every measure, what is found, as it grows, from what value on."""
    for path in MEASURES:
        before, low = _found(path, STEP**-TIMES), STEP**-TIMES
        yield f"{path}: {_said(before, frozenset())}"
        for step in range(1 - TIMES, TIMES + 1):
            share = STEP**step
            now = _found(path, share)
            if now != before:
                yield f"    from {_value(path, _change(path, low, share, before)):.1f}: {_said(now, before)}"
            before, low = now, share


def _change(path: str, low: float, high: float, before: frozenset[str]) -> float:
    """Where what is found first is not as it was, between two shares."""
    while high / low > FINE:
        middle = math.sqrt(low * high)
        if _found(path, middle) == before:
            low = middle
        else:
            high = middle
    return high


def _said(now: frozenset[str], before: frozenset[str]) -> str:
    return " ".join([*sorted(f"+{rule}" for rule in now - before), *sorted(f"-{rule}" for rule in before - now)])


def _number(value: Any) -> float:
    return float(str(value).split()[0])


def _value(path: str, share: float) -> float:
    return _number(get(RAW, path)) * share


def _found(path: str, share: float) -> frozenset[str]:
    """What is found with a measure so many times as large, by rule."""
    raw = deepcopy(RAW)
    value = _value(path, share)
    set_to(path, f"{value:.5f} kg" if isinstance(get(RAW, path), str) else value)(raw)
    try:
        return frozenset(each.rule for each in find(plan_wall(build_job(raw, SAMPLES / "job.toml"))))
    except TemplatesError:
        return frozenset(("refused",))
