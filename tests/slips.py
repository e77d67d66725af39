"""Slips put into sound jobs, and what becomes of each: refused, stopped, warned, or let through to the paper."""

from __future__ import annotations

import copy
import tomllib
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import TemplatesError
from templates_gen.checks import NOTE, find
from templates_gen.job.reading.building import build_job
from tests.jobs import SAMPLES
from tests.slip_bases import BASES

Raw = dict[str, Any]


class Slip(NamedTuple):
    """A slip in words, the job it is put into, and what it does to that job's tables."""

    words: str
    base: str
    put: Callable[[Raw], None]


def tables(base: str) -> Raw:
    """The tables of a base, a fresh copy of them."""
    return copy.deepcopy(_tables(base))


@cache
def _tables(base: str) -> Raw:
    text = BASES[base] if base in BASES else (SAMPLES / f"{base}.toml").read_text(encoding="utf-8")
    raw = tomllib.loads(text)
    if raw["group"]["arrangement"] == "salon":  # found places take half a second for every slip
        raw["group"] = {name: raw["group"][name] for name in ("gap", "centre_on", "height")} | PASTED
    return raw


PASTED = {"arrangement": "rows", "rows": [["wave", "leaf", "comb"], ["net", "moon"], ["a1", "a2", "seal", "rope"]]}
"""The paste papers in rows."""


def told(raw: Raw) -> set[tuple[str, tuple[str, ...]]]:
    """The stops and warns of a job, by rule and frames; a job that is refused has one of its own."""
    try:
        found = find(plan_wall(build_job(raw, SAMPLES / "job.toml")))
    except TemplatesError as error:
        return {("refused", (str(error),))}
    return {(each.rule, each.about) for each in found if each.level != NOTE}


@cache
def sound(base: str) -> frozenset[tuple[str, tuple[str, ...]]]:
    """What is stopped or warned of in a base before anything is put into it."""
    return frozenset(told(tables(base)))


@cache
def noticed(slip: Slip) -> set[tuple[str, tuple[str, ...]]]:
    """What is said of a slip that was not said of its base."""
    raw = tables(slip.base)
    slip.put(raw)
    assert raw != tables(slip.base), slip.words
    return told(raw) - sound(slip.base)


def set_to(path: str, value: object) -> Callable[[Raw], None]:
    """A slip that sets the field at a path such as "frame.2.drop" or "wall.feature.0.left"."""

    def put(raw: Raw) -> None:
        *steps, last = path.split(".")
        place: Any = raw
        for step in steps:
            place = place[int(step)] if isinstance(place, list) else place.setdefault(step, {})
        place[int(last) if isinstance(place, list) else last] = value

    return put


def get(raw: Raw, path: str) -> Any:
    """The value at a path, None where there is none."""
    place: Any = raw
    for step in path.split("."):
        place = place[int(step)] if isinstance(place, list) else place.get(step)
        if place is None:
            return None
    return place


def swapped(one: str, two: str) -> Callable[[Raw], None]:
    """A slip that gives two fields each other's value."""

    def put(raw: Raw) -> None:
        first, second = get(raw, one), get(raw, two)
        set_to(one, second)(raw)
        set_to(two, first)(raw)

    return put


def all_of(*puts: Callable[[Raw], None]) -> Callable[[Raw], None]:
    """Several at once."""

    def put(raw: Raw) -> None:
        for each in puts:
            each(raw)

    return put


__all__ = ["SAMPLES", "Iterator", "Path", "Slip", "all_of", "get", "noticed", "set_to", "sound", "swapped", "tables"]
