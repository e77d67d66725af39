"""Which lengths of a job file have their own unit beside them: whoever wrote "3 m" thought of the unit."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from templates_gen.base.words import feature_place
from templates_gen.job.reading.other_words import sides_apart

_WITH_UNIT = re.compile(
    r"[0-9½¼¾⅛⅜⅝⅞]\s*(mm|cm|m|in|ft|[a-z]*met(?:re|er)s?|inch(?:es)?|foot|feet|[\"'”’″′])", re.IGNORECASE
)

Texts = tuple[tuple[str, str], ...]


def written_units(raw: Mapping[str, Any], rows: Sequence[tuple[str, Mapping[str, Any]]]) -> Texts:
    """The places of such lengths in words ("frame B, width"), each with its text; and of hangers from where they were
    seen, and all weights.

    `rows` are the frames one by one; what they take from their type counts as theirs.
    """
    wall = raw.get("wall", {})
    types = raw.get("frame_type", {})
    found = list(_texts({name: value for name, value in wall.items() if name != "feature"}, "wall"))
    for number, feature in enumerate(wall.get("feature", []), 1):
        found += _texts(feature, feature_place(number, str(feature.get("name") or feature.get("kind"))))
    for name in ("group", "fixing", "paper", "accuracy"):
        found += _texts(raw.get(name, {}), name)
    for _, fields in rows:
        found += _texts(_completed(types.get(fields.get("type"), {}), fields), f"frame {fields['id']}")
    return tuple(found)


def _completed(shared: Mapping[str, Any], own: Mapping[str, Any]) -> Mapping[str, Any]:
    """A frame's fields over those of its type; a hanger without a kind completes its type's."""
    both = shared.get("hanger"), own.get("hanger")
    together = {**shared, **own}
    if isinstance(both[0], Mapping) and isinstance(both[1], Mapping) and "kind" not in both[1]:
        together["hanger"] = {**both[0], **both[1]}
    return together


def _texts(table: object, place: str) -> Iterator[tuple[str, str]]:
    """Of what is no table nothing: a file that only gives its wall is not read further than that."""
    for name, value in sides_apart(table, place).items() if isinstance(table, Mapping) else ():
        if isinstance(value, Mapping):
            yield from _texts(value, f"{place}, {name}")
        elif isinstance(value, str) and (name in ("seen_from", "weight") or _WITH_UNIT.search(value)):
            yield f"{place}, {name}", value
