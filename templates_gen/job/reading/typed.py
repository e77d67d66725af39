"""Untyped tables become typed records here, by what their tables declare; what does not fit is explained at once."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from functools import cache
from typing import Any, Literal, TypeVar, get_args, get_origin

from templates_gen.base.errors import InputError, clipped, did_you_mean
from templates_gen.base.record import Record, Table
from templates_gen.base.units import as_found, parse_length
from templates_gen.job.reading.files import MOST_NUMBER
from templates_gen.job.reading.other_words import EACH_ITS_OWN, HOW_MANY, is_not_given, meant, on_two, sides_apart
from templates_gen.job.tables.contents import home_of
from templates_gen.job.tables.field import Limits, choices, fields_of, is_table, options
from templates_gen.job.tables.quantities import Length, Quantity, is_quantity

_TableT = TypeVar("_TableT", bound=Table)


class _Place(Record, frozen=True):
    """Where a value stands, the unit of its bare numbers, and whether numbers may be text, as in spreadsheets."""

    words: str
    unit: str
    loose: bool

    def inside(self, name: str) -> _Place:
        """Where something inside it stands."""
        return _Place(f"{self.words}, {name}" if self.words else name, self.unit, self.loose)


_Reader = Callable[[Any, _Place], Any]

FEW_FIELDS = 4
"""A table of no more says all its fields, for one of them was meant.  Our own choice."""

_UNFIT = object()
"""What a reader makes of a value that is not of its kind."""


def read_table(raw: object, table: type[_TableT], unit: str, where: str, loose: bool = False) -> _TableT:
    """The typed record of one table; bare numbers are in `unit`, lengths come out in mm and weights in kg.

    `loose` is for spreadsheets, where every cell is text: a count may be one.

    Raises InputError with `where`, the field, what was found and what was expected.
    """
    if not isinstance(raw, Mapping):
        hint = f"write [{where}] in single brackets" if isinstance(raw, list) else ""
        raise InputError(where, f"found {_brief(raw)}, expected a table of fields", hint)
    return _record(_as_meant(raw, table, where), table, _Place(where, unit, loose))


def read_field(value: object, table: type[Table], name: str, unit: str, where: str) -> Any:
    """One value of a table, whatever else there is in it.  Raises InputError as `read_table` does."""
    return _reader_of(table, name)(value, _Place(where, unit, False).inside(name))


def read_length(value: object, unit: str, where: str) -> float:
    """The millimetres of a single size.  Raises InputError."""
    try:
        return parse_length(value, unit)
    except ValueError as error:
        raise InputError(where, str(error)) from None


def read_lengths(pair: tuple[object, object], unit: str, where: str) -> tuple[float, float]:
    """The same of two.  Raises InputError."""
    return read_length(pair[0], unit, where), read_length(pair[1], unit, where)


def _as_meant(raw: Mapping[str, Any], table: type[Table], where: str) -> dict[str, Any]:
    """The table with its own words for what people say instead, and without the lengths that are said to be none."""
    fields = fields_of(table)
    raw = sides_apart(raw, where) if {"width", "height"} <= {*fields} else raw
    told: dict[str, Any] = {}
    for name, value in raw.items():
        value = on_two(value, where) if name == "hanger" else value
        if isinstance(value, str) and name in fields:
            value = meant(f"{table.__name__.removesuffix('Table').lower()}.{name}", value, choices(fields[name].type))
            if is_not_given(value) and _may_lack(fields[name].type):
                continue
        told[name] = value
    return told


def _may_lack(kind: Any) -> bool:
    """True for a length, weight or number that may be left out; a word for nothing may be a name elsewhere."""
    return type(None) in get_args(kind) and all(is_quantity(one) or one in (int, float) for one in options(kind))


def _record(told: Mapping[str, Any], table: type[_TableT], place: _Place) -> _TableT:
    """The record of a table whose words are its own.  Raises InputError."""
    fields = fields_of(table)
    values = {}
    for name, value in told.items():
        if name not in fields:
            hint = EACH_ITS_OWN if name.lower() in HOW_MANY and "drop" in fields else ""
            hint = hint or (home_of(name) if len(fields) > FEW_FIELDS else "")
            hint = hint or did_you_mean(name, fields, f"known fields: {', '.join(fields)}")
            raise InputError(place.words, f"unknown field {name!r}", hint)
        values[name] = _reader_of(table, name)(value, place.inside(name))
    for name, field in fields.items():
        if field.needed and name not in values:
            expected = expected_words(field.type)
            raise InputError(place.words, f"the field {name!r} is missing, expected {expected}")
    return table(**values)


@cache
def _reader_of(table: type[Table], name: str) -> _Reader:
    field = fields_of(table)[name]
    read, limits = _reader(field.type), field.words.limits
    return _limited(read, limits) if limits else read


def _limited(read: _Reader, limits: Limits) -> _Reader:
    def within(value: Any, place: _Place) -> Any:
        number = read(value, place)
        if number is None or limits.hold(number):
            return number
        found = as_found(number) if isinstance(number, Length) else f"{number:.12g}{limits.unit}"
        raise InputError(place.words, f"found {found}, expected {limits.expected}")

    return within


def _reader(kind: Any) -> _Reader:
    """What reads a value of this type, for which the first of its kinds that fits is taken."""
    ways, may_lack = [_way(one) for one in options(kind)], type(None) in get_args(kind)

    def read(value: Any, place: _Place) -> Any:
        if value is None and may_lack:
            return None
        for way in ways:
            if (found := way(value, place)) is not _UNFIT:
                return found
        nearest = did_you_mean(value, choices(kind)) if isinstance(value, str) else ""
        raise InputError(place.words, f"found {_brief(value)}, expected {expected_words(kind)}", nearest)

    return read


def _way(kind: Any) -> _Reader:
    """What reads a value of one kind, and finds any other unfit."""
    if is_table(kind):
        return lambda value, place: (
            _record(_as_meant(value, kind, place.words), kind, place) if isinstance(value, Mapping) else _UNFIT
        )
    if (origin := get_origin(kind)) is Literal:
        words = get_args(kind)
        return lambda value, _: value if isinstance(value, str) and value in words else _UNFIT
    if origin in _SEVERAL:
        return _SEVERAL[origin](get_args(kind))
    return _quantity(kind) if is_quantity(kind) else _PLAIN[kind]


def _listed(parts: tuple[Any, ...]) -> _Reader:
    read = _reader(parts[0])
    return lambda value, place: [*_each(read, value, place)] if isinstance(value, (list, tuple)) else _UNFIT


def _paired(parts: tuple[Any, ...]) -> _Reader:
    read = _reader(parts[0])

    def pair(value: Any, place: _Place) -> Any:
        fits = isinstance(value, (list, tuple)) and len(value) == len(parts)
        return tuple(_each(read, value, place)) if fits else _UNFIT

    return pair


def _named(parts: tuple[Any, ...]) -> _Reader:
    read = _reader(parts[1])
    return lambda value, place: (
        {name: read(one, place.inside(name)) for name, one in value.items()} if isinstance(value, Mapping) else _UNFIT
    )


def _each(read: _Reader, values: Any, place: _Place) -> Iterator[Any]:
    return (read(value, place.inside(f"item {number}")) for number, value in enumerate(values, 1))


def _quantity(kind: type[Quantity]) -> _Reader:
    def read(value: Any, place: _Place) -> Quantity:
        try:
            return kind.read(value, place.unit)
        except ValueError as error:
            raise InputError(place.words, str(error)) from None

    return read


def _number(kind: type[int] | type[float], text: str) -> _Reader:
    """A number, or in a spreadsheet a text that is one, with a comma or a point."""

    def read(value: Any, place: _Place) -> Any:
        if place.loose and isinstance(value, str) and re.fullmatch(text, value):
            number = float(value.replace(",", "."))
            return int(number) if kind is int else number
        whole = isinstance(value, int) and not isinstance(value, bool) and abs(value) <= MOST_NUMBER
        return kind(value) if whole or (isinstance(value, kind) and not isinstance(value, int)) else _UNFIT

    return read


_SEVERAL: dict[Any, Callable[[tuple[Any, ...]], _Reader]] = {list: _listed, tuple: _paired, dict: _named}

_PLAIN: dict[Any, _Reader] = {
    Any: lambda value, _: value,
    str: lambda value, _: value if isinstance(value, str) else _UNFIT,
    bool: lambda value, _: value if isinstance(value, bool) else _UNFIT,
    int: _number(int, r"-?\d{1,15}(?:[.,]0{1,15})?"),
    float: _number(float, r"-?\d{1,15}(?:[.,]\d{1,15})?"),
}

_EXPECTED = {
    str: "text in quotes", int: "a whole number", float: "a number", bool: "true or false",
    list: "a list in [ ]", dict: "a table in { }", tuple: "a pair in [ ]",
}  # fmt: skip


def expected_words(kind: Any) -> str:
    """What a value of this type is, for an error: "a length", "one of front, back"."""
    words = [f"one of {', '.join(known)}"] if (known := choices(kind)) else []
    others = [one for one in options(kind) if not (one is int and float in options(kind))]
    return " or ".join(dict.fromkeys(filter(None, words + [_expected(one) for one in others]))) or "something else"


def _expected(kind: Any) -> str:
    """What a value of one kind is."""
    if is_quantity(kind):
        return kind.called
    return "a table in { }" if is_table(kind) else _EXPECTED.get(get_origin(kind) or kind, "")


def _brief(found: object) -> str:
    """The value as the job file writes it."""
    if found is None or isinstance(found, bool):
        return {None: "nothing", True: "true", False: "false"}[found]
    text = repr(found) if isinstance(found, (str, int, float, list, dict)) else str(found)
    return clipped(text)
