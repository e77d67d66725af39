"""What is doubtful about an answer, as soon as it is given: what `check` would say of it, of what was told so far."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import suppress
from typing import Any

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import TemplatesError
from templates_gen.base.words import capital, feature_place
from templates_gen.checks.doubts.all_doubts import job_doubts, placing_doubts
from templates_gen.checks.doubts.doubt import Doubt, first_of_each
from templates_gen.cli.interview.question import Tables
from templates_gen.cli.interview.session import BACK, Interview, job_so_far

TABLES = {"frame": "", "hanger": "hanger", "height": "height"}

IN_WALL = ("studs", "stairs")
"""The tables inside that of the wall."""

SPACED = {"studs.second": ("first", "second", "spacing")}
"""A second stud tells how far they are apart, which may be doubted as the first one's."""


def doubts_at(before: Interview, after: Interview) -> tuple[Doubt, ...]:
    """The doubts that the last answer raised; none that rest on what is not told yet."""
    if before.question is None:
        return ()
    given = set(_given(after.tables))
    asked = {*_places(before.question.key, after.tables), *_refixed(before.tables, after.tables)} & given
    doubts = _doubts_so_far(after.tables) if asked else ()
    return tuple(
        first_of_each(
            doubt
            for doubt in doubts
            if asked & {doubt.place, *doubt.uses} and given.issuperset((doubt.place, *doubt.uses))
        )
    )


def _doubts_so_far(tables: Tables) -> Iterator[Doubt]:
    """Every doubt about what was told; how it hangs is looked at from the group's first question on."""
    job = job_so_far(tables)
    yield from job_doubts(job)
    if "group" in tables:
        with suppress(TemplatesError):  # it cannot be planned before its height is told
            yield from placing_doubts(plan_wall(job))


def doubt_words(doubts: tuple[Doubt, ...]) -> str:
    """What is doubtful about an answer, in one paragraph, and how to go on."""
    told = dict.fromkeys(f"{capital(doubt.place)}: {doubt.shown}, {doubt.why}. {doubt.ask}" for doubt in doubts)
    return f"{' '.join(told)} If that is right, give the same answer again; {BACK[0]} goes back."


def _places(key: str, tables: Tables) -> Iterator[str]:
    """Where the field of a question stands, as doubts name it; the fixing of all frames is each one's."""
    table, _, field = key.partition(".")
    frames = [str(frame.get("id", "")) for frame in tables.get("frame", [])]
    features = tables.get("wall", {}).get("feature", [])
    sides = ("width", "height") if field == "width" else (field,)  # who answers 24 x 36 has told both
    if table in ("frame", "hanger") and frames:
        yield from (", ".join(filter(None, (f"frame {frames[-1]}", TABLES[table], side))) for side in sides)
    elif table == "feature" and features:
        yield from (feature_place(len(features), _called(features[-1]), side) for side in sides)
    elif table == "height":
        yield f"group, height, {field}"
    elif key == "group.height":  # what it hangs above is told by this, if there is one thing only
        yield "group, height, above"
    elif table in IN_WALL:
        yield from (f"wall, {table}, {side}" for side in SPACED.get(key, (field,)))
    else:
        yield from (f"{table}, {side}" for side in sides)


def _given(tables: Tables) -> Iterator[str]:
    """The places of all that was told."""
    wall = tables.get("wall", {})
    yield from _fields("wall", wall)
    if "second" in wall.get("studs", {}):
        yield "wall, studs, spacing"
    for number, feature in enumerate(wall.get("feature", []), 1):
        yield from _fields(feature_place(number, _called(feature)), feature)
    for frame in tables.get("frame", []):
        yield from _fields(f"frame {frame.get('id', '')}", frame)
        yield from _fields(f"frame {frame.get('id', '')}, fixing", _fixing(frame, tables))
    for name in ("group", "paper"):
        yield from _fields(name, tables.get(name, {}))


def _fixing(frame: Mapping[str, Any], tables: Tables) -> Mapping[str, Any]:
    """What goes into the wall for a frame: what is its own, or else for all."""
    fixing: Mapping[str, Any] = frame.get("fixing", tables.get("fixing", {}))
    return fixing


def _refixed(before: Tables, after: Tables) -> Iterator[str]:
    """The places of what an answer told of frames' fixings."""
    for one, two in zip(before.get("frame", []), after.get("frame", []), strict=False):
        old, new = _fixing(one, before), _fixing(two, after)
        yield from (f"frame {two.get('id', '')}, fixing, {name}" for name in new if old.get(name) != new[name])


def _fields(place: str, table: Mapping[str, Any]) -> Iterator[str]:
    for name, value in table.items():
        yield f"{place}, {name}"
        if isinstance(value, Mapping):
            yield from _fields(f"{place}, {name}", value)


def _called(feature: Mapping[str, Any]) -> str:
    return str(feature.get("name") or feature["kind"])
