"""Untyped tables become typed records here; what does not fit is explained in the user's terms."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from functools import cache
from typing import Any, Literal, TypeVar, Union, get_args, get_origin, get_type_hints

from templates_gen.base.errors import InputError, did_you_mean
from templates_gen.base.record import Table, convert
from templates_gen.base.units import parse_length, parse_mass, parse_offset
from templates_gen.job.reading.other_words import is_not_given, meant, on_two, sides_apart
from templates_gen.job.tables.field import Length, Mass, Offset

_TableT = TypeVar("_TableT", bound=Table)


def read_table(raw: object, table: type[_TableT], unit: str, where: str, loose: bool = False) -> _TableT:
    """The typed record of one table; bare numbers are in `unit`, lengths come out in mm and weights in kg.

    `loose` is for spreadsheets, where every cell is text: a count may be one.

    Raises InputError with `where`, the field, what was found and what was expected.
    """
    if not isinstance(raw, Mapping):
        raise InputError(where, f"found {raw!r}, expected a table of fields")
    told = _as_meant(raw, table, where)
    try:
        return convert(told, table, _decoder(unit), loose)
    except ValueError as error:
        raise _explained(str(error), told, table, where) from None


def _as_meant(raw: Mapping[str, Any], table: type[Table], where: str) -> dict[str, Any]:
    """The table with its own words for what people say instead, and without the lengths that are said to be none."""
    fields = table.__struct_fields__
    raw = sides_apart(raw, where) if {"width", "height"} <= {*fields} else raw
    told: dict[str, Any] = {}
    for name, value in raw.items():
        value = on_two(value, where) if name == "hanger" else value
        if isinstance(value, Mapping) and name in fields and (inner := _inner_table(table, name)):
            value = _as_meant(value, inner, where)
        elif name in fields and isinstance(value, str):
            value = meant(f"{table.__name__.removesuffix('Table').lower()}.{name}", value, choices(table, name))
            if _may_lack(table, name) and is_not_given(value):
                continue
        told[name] = value
    return told


@cache
def _inner_table(table: type[Table], field: str) -> type[Table] | None:
    return next(iter(_tables_in(get_type_hints(table)[field])), None)


@cache
def _may_lack(table: type[Table], field: str) -> bool:
    """True for a length, weight or number that may be left out; a word for nothing may be a name elsewhere."""
    options = get_args(get_type_hints(table)[field])
    return type(None) in options and not {*options} - {type(None), Length, Offset, Mass, int, float}


def read_length(value: object, unit: str, where: str) -> float:
    """The millimetres of a single size.  Raises InputError."""
    try:
        return parse_length(value, unit)
    except ValueError as error:
        raise InputError(where, str(error)) from None


def _decoder(unit: str) -> Callable[[type, object], object]:
    def decode(kind: type, value: object) -> object:
        if kind is Length:
            return Length(parse_length(value, unit))
        if kind is Offset:
            return Offset(parse_offset(value, unit))
        return Mass(parse_mass(value))

    return decode


def _explained(message: str, raw: Mapping[str, Any], table: type[Table], where: str) -> InputError:
    """The message of the library in our words, with the place, the value found and the nearest known name."""
    text, _, path = message.partition(" - at `$")
    steps = re.findall(r"\.(\w+)|\[(\d+|\.\.\.)\]", path.rstrip("`"))
    place = ", ".join([where, *_named(steps)])
    annotation, found = _walk(table, raw, steps)
    if unknown := re.match(r"Object contains unknown field `(.*)`", text):
        return InputError(place, f"unknown field {unknown[1]!r}", _known(unknown[1], annotation))
    if missing := re.match(r"Object missing required field `(.*)`", text):
        return InputError(place, f"the field {missing[1]!r} is missing, expected {_expected(annotation, missing[1])}")
    if text.startswith("found "):
        return InputError(place, text)
    return InputError(
        place, f"found {_brief(found)}, expected {_expected(annotation)}", _nearest_choice(found, annotation)
    )


def _named(steps: list[tuple[str, str]]) -> list[str]:
    return [name or (f"item {int(index) + 1}" if index.isdigit() else "entry") for name, index in steps]


def _walk(table: type[Table], raw: Any, steps: list[tuple[str, str]]) -> tuple[Any, Any]:
    """The annotation and the value that the path leads to."""
    annotation: Any = table
    for name, index in steps:
        annotation = _step(annotation, name)
        try:
            raw = raw[name] if name else raw[int(index)]
        except (KeyError, IndexError, TypeError, ValueError):
            raw = None
    return annotation, raw


def _step(annotation: Any, name: str) -> Any:
    tables = _tables_in(annotation)
    if name and tables:
        return get_type_hints(tables[0]).get(name, Any)
    inner = [arg for arg in get_args(annotation) if arg is not type(None) and arg is not str]
    return inner[-1] if inner else Any


def _tables_in(annotation: Any) -> list[type[Table]]:
    options = (annotation, *get_args(annotation))
    return [option for option in options if isinstance(option, type) and issubclass(option, Table)]


def _choices(annotation: Any) -> list[str]:
    options = [annotation, *get_args(annotation)]
    return [choice for option in options if get_origin(option) is Literal for choice in get_args(option)]


def _known(unknown: str, annotation: Any) -> str:
    tables = _tables_in(annotation)
    fields = list(tables[0].__struct_fields__) if tables else []
    return did_you_mean(unknown, fields, f"known fields: {', '.join(fields)}")


def _nearest_choice(found: object, annotation: Any) -> str:
    return did_you_mean(found, _choices(annotation)) if isinstance(found, str) else ""


@cache
def choices(table: type[Table], field: str) -> tuple[str, ...]:
    """The words that a field of a table may be, in their order."""
    return tuple(_choices(get_type_hints(table)[field]))


_PLAIN_WORDS = {
    str: "text in quotes", int: "a whole number", float: "a number", bool: "true or false", Length: "a length",
    Offset: "a distance", Mass: "a weight", list: "a list in [ ]", dict: "a table in { }", tuple: "a pair in [ ]",
}  # fmt: skip


def _expected(annotation: Any, field: str = "") -> str:
    if field:
        annotation = get_type_hints(_tables_in(annotation)[0])[field]
    choices = _choices(annotation)
    options = get_args(annotation) if get_origin(annotation) in (Union, type(int | str)) else (annotation,)
    words = [f"one of {', '.join(choices)}"] if choices else []
    for option in options:
        if _tables_in(option):
            words.append("a table in { }")
        elif word := _PLAIN_WORDS.get(get_origin(option) or option):
            words.append(word)
    return " or ".join(dict.fromkeys(words)) or "something else"


def _brief(found: object) -> str:
    """The value as the job file writes it."""
    if found is None or isinstance(found, bool):
        return {None: "nothing", True: "true", False: "false"}[found]
    text = repr(found) if isinstance(found, (str, int, float, list, dict)) else str(found)
    return text if len(text) <= 60 else text[:57] + "..."
