"""The fields of a job file as the page shows them: their words, and what is typed into them."""

from __future__ import annotations

import math
from collections.abc import Mapping
from functools import cache
from typing import Any, get_args, get_origin

from templates_gen.base.errors import InputError, clipped
from templates_gen.base.units import parse_length, show, show_both
from templates_gen.job.arrangements import ARRANGEMENTS
from templates_gen.job.changes import Place
from templates_gen.job.hangers import HANGERS
from templates_gen.job.paper_sizes import SIZES, USUAL_SIZES
from templates_gen.job.reading.other_words import two_sides
from templates_gen.job.reading.place import DEFAULT_CENTRE
from templates_gen.job.reading.typed import read_field
from templates_gen.job.tables.contents import CHAPTERS
from templates_gen.job.tables.field import Field, Words, choices, fields_of, is_table, options
from templates_gen.job.tables.quantities import is_quantity
from templates_gen.job.tables.whole import JobFile

YES = {"yes": True, "true": True, "no": False, "false": False}
"""What may be typed for a truth; the page offers just the first of each."""


@cache
def field_words() -> dict[str, Any]:
    """Every table by its name, with its fields in order; and what else there is to choose from."""
    tables = {chapter.name: [_told(field) for field in fields_of(chapter.table).values()] for chapter in CHAPTERS}
    kinds = [
        {"name": kind.name, "called": kind.called, "takes": kind.takes, "needs": kind.needs, "fixings": kind.fixings}
        for kind in HANGERS.values()
    ]
    return {
        "tables": tables, "hangers": kinds, "papers": list(SIZES), "usualPapers": USUAL_SIZES,
        "arrangements": {
            kind.name: {"takes": kind.takes, "align": kind.align, "set": kind.set} for kind in ARRANGEMENTS.values()
        },
        "usualCentre": {unit: show_both(DEFAULT_CENTRE, unit) for unit in ("in", "cm", "mm")},
    }  # fmt: skip


def _told(field: Field) -> dict[str, Any]:
    words = field.words
    return {
        "name": field.name, "ask": words.ask, "means": words.means, "example": plain_example(words.example),
        "cm": _in_metric(words, kind_of(field.written), "cm"), "mm": _in_metric(words, kind_of(field.written), "mm"),
        "usual": words.usual, "called": words.called,
        "needed": field.needed or words.must, "kind": kind_of(field.written), "choices": field.choices,
    }  # fmt: skip


def plain_example(example: str) -> str:
    """An example as a person types it: a text without its quotes; nothing for what takes a form of its own."""
    text = example.removeprefix('"').removesuffix('"').replace('\\"', '"')
    return "" if text.startswith(("[", "{")) else text


def _in_metric(words: Words, kind: str, unit: str) -> str:
    """An example as people say it who have no inches."""
    plain = plain_example(words.metric or words.example)
    if kind != "length" or not plain or plain.endswith("mm") or (words.metric and unit == "cm"):
        return plain
    return show(parse_length(plain, "in"), unit).replace(".0 ", " ")


_PLAIN = {bool: "yes", int: "number"}
"""How the page asks for a plain value, by its type."""


def kind_of(written: Any) -> str:
    """How the page asks for a value of this type: "own" for a table, whose fields are asked for one by one."""
    kinds = options(written)
    if choices(written):
        return "choice"
    if measured := [kind.dimension for kind in kinds if is_quantity(kind)]:
        return measured[0]
    for kind, name in _PLAIN.items():
        if kind in kinds and not (kind is int and str in kinds):
            return name
    shapes = {get_origin(kind): get_args(kind) for kind in kinds}
    if list in shapes:
        inner = shapes[list][0]
        return {list: "rows", tuple: "points"}.get(get_origin(inner), "own" if is_table(inner) else "names")
    return "text" if str in kinds else "pair" if tuple in shapes else "own"


def written_at(place: Place) -> Any:
    """The type of what a job file has at a place; text where that is open."""
    kind: Any = JobFile
    for part in place:
        kind = next((inner for one in options(kind) if (inner := _inside(one, part)) is not None), str)
    return kind


def check_alone(place: Place, value: Any, unit: str) -> None:
    """Raises InputError where a table would not have this value, whatever else there is in it."""
    *way, name = place
    for table in options(written_at(tuple(way))):
        if is_table(table) and value is not None:
            read_field(value, table, str(name), unit, ", ".join(map(str, way)))


def _inside(kind: Any, part: str | int) -> Any:
    """The type of one part of a value of this type; None where it has no such part."""
    if is_table(kind):
        return fields_of(kind)[str(part)].written if part in fields_of(kind) else None
    origin, inner = get_origin(kind), get_args(kind)
    if origin is dict:
        return inner[1]
    if origin in (list, tuple) and isinstance(part, int):
        return inner[min(part, len(inner) - 1)]
    return None


def typed(place: Place, value: Any) -> Any:
    """What a job file is to hold for what was typed: None for nothing, a number or a truth where the field is one.

    Raises InputError for what is not the two measures that the field takes.
    """
    if isinstance(value, Mapping):
        inner = {name: typed((*place, name), part) for name, part in value.items()}
        inner = {name: part for name, part in inner.items() if part is not None}
        return inner or None
    if not isinstance(value, str):
        return value
    text, written = value.strip(), written_at(place)
    if not text:
        return None
    try:
        return _read(text, written)
    except ValueError as error:
        raise InputError(", ".join(map(str, place)), str(error)) from None


def _read(text: str, written: Any) -> Any:
    kinds, kind = options(written), kind_of(written)
    if kind == "names":
        return _names(text)
    if kind in ("rows", "points"):
        lines = [line for line in text.split("\n") if line.strip(" ,")]
        return [_names(line) if kind == "rows" else _two(line) for line in lines]
    if kind == "pair":
        return _two(text)
    if any(get_origin(one) is tuple for one in kinds):
        return _pair(text)
    if bool in kinds:
        return YES.get(text.lower(), text)
    return _number(text, kinds)


def _names(text: str) -> list[str]:
    return [part.strip() for part in text.split(",") if part.strip()]


def _two(text: str) -> list[str]:
    """Two measures, where nothing else is taken.  Raises ValueError."""
    pair = _pair(text)
    if isinstance(pair, str):
        raise ValueError(f"found {clipped(repr(text))}, expected how far across and how far up, with a comma between")
    return list(pair)


def _pair(text: str) -> Any:
    """Two measures with an x, a semicolon or a comma between; what is no pair stays as it was typed, to be read."""
    ways = (two_sides(text), text.split(";"), text.split(", "), text.split(","))
    pair = next((way for way in ways if way and len(way) == 2 and all(map(str.strip, way))), None)
    return text if pair is None else [part.strip() for part in pair]


def _number(text: str, kinds: tuple[Any, ...]) -> Any:
    """A number where only numbers are taken; a size stays as it was typed."""
    if str in kinds or not {int, float} & {*kinds}:
        return text
    try:
        number = float(text.replace(",", "."))
    except ValueError:
        return text
    if not math.isfinite(number):
        return text
    return int(number) if number.is_integer() else number
