"""The reference of the job file as text, made from its tables: every field with an example, its type, what it means."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any, get_args, get_origin

from templates_gen.base.errors import InputError, did_you_mean
from templates_gen.base.toml import toml
from templates_gen.base.words import capital, lines_of
from templates_gen.job.tables.contents import CHAPTERS, Chapter
from templates_gen.job.tables.field import Field, choices, fields_of, options, tables_in
from templates_gen.job.tables.quantities import Length, Offset, is_quantity

WIDTH = 80
"""Letters in a line: what a terminal shows, and a page of typed text.  Common practice, no source."""

_FIELD, _BELOW = "  ", "      "
_EACH = "a table each"

_KINDS: dict[Any, str] = {
    str: "text", int: "a whole number", float: "a number", bool: "true or false",
}  # fmt: skip


def reference(name: str = "") -> str:
    """The reference of the job file, or of one of its tables, or of all fields of one name, in lines of 80 letters.

    Raises InputError for a name of none.
    """
    if not name:
        return _text(_whole())
    plain = name.strip("[]").removeprefix("wall.").casefold()
    if chapter := next((one for one in CHAPTERS if one.name == _ALSO.get(plain, plain)), None):
        return _text(_lines(chapter))
    holders = [chapter for chapter in CHAPTERS if plain in fields_of(chapter.table)]
    if not holders:
        names = [chapter.name for chapter in CHAPTERS]
        known = [*names, *(field for chapter in CHAPTERS for field in fields_of(chapter.table))]
        hint = did_you_mean(plain, known, f"tables: {', '.join(names)}")
        raise InputError("help job", f"found {name!r}, expected the name of a table or a field", hint)
    found = ((chapter.heading, "", *_field(fields_of(chapter.table)[plain])) for chapter in holders)
    return _text(line for lines in found for line in lines)


def table_names() -> list[str]:
    """The names under which a table may be asked for."""
    return [chapter.name for chapter in CHAPTERS] + [*_ALSO]


_ALSO = {"frame_type": "frame", "glazing": "part", "backing": "part", "spot": "place"}


def _text(lines: Iterator[str]) -> str:
    return "\n".join(lines).rstrip("\n") + "\n"


def _whole() -> Iterator[str]:
    yield from _titled("The job file", "=")
    for paragraph in INTRODUCTION:
        yield from (*lines_of(paragraph, WIDTH), "")
    yield "Its tables, each to be had alone (templates-gen help job wall):"
    yield ""
    widest = max(len(chapter.name) for chapter in CHAPTERS)
    yield from (f"  {chapter.name:{widest}}  {chapter.heading}" for chapter in CHAPTERS)
    yield from ("", "This is a whole job:", "")
    yield from (f"  {line}".rstrip() for line in EXAMPLE.splitlines())
    for chapter in CHAPTERS:
        yield from ("", *_lines(chapter))


def _titled(text: str, line: str = "-") -> Iterator[str]:
    yield from (text, line * len(text), "")


def _lines(chapter: Chapter) -> Iterator[str]:
    yield from _titled(chapter.heading)
    for paragraph in chapter.about:
        yield from (*lines_of(paragraph, WIDTH), "")
    for field in fields_of(chapter.table).values():
        yield from _field(field)


def _field(field: Field) -> Iterator[str]:
    """A field as a job file has it, its type and what it is left out, and what it means."""
    words, each = field.words, type_words(field.written) == _EACH
    yield from lines_of(words.example if each else f"{field.name} = {words.example}", WIDTH, _FIELD, _BELOW)
    kind = f"{capital(type_words(field.written))}{_limits(field)}"
    yield from lines_of(f"{kind}. {_left_out(field)}", WIDTH, _BELOW, _BELOW)
    yield from (*lines_of(_meaning(field), WIDTH, _BELOW, _BELOW), "")


def _limits(field: Field) -> str:
    """What a number may be: ", 1 or more", ", 10 to 40 mm"."""
    limits = field.words.limits
    if limits is None:
        return ""
    least = f"more than {limits.least:g}" if limits.above else f"{limits.least:g}"
    if limits.most == math.inf:
        return f", {least}" if limits.above else f", {least} or more"
    unit = " mm" if Length in options(field.type) else limits.unit
    return f", {least}{', up' if limits.above else ''} to {'less than ' if limits.under else ''}{limits.most:g}{unit}"


def _meaning(field: Field) -> str:
    """What it means in sentences; words of the job file keep their small letters."""
    words = field.words
    means = words.means if words.means.startswith(choices(field.type) or "\0") else capital(words.means)
    return f"{means}. {words.more}".strip()


def _listed(kind: Any) -> str:
    """What a list holds: "text", "lists of text", "some of kitchen, toilet"."""
    if get_origin(kind) is list:
        return f"lists of {_listed(get_args(kind)[0])}"
    words = choices(kind)
    return f"some of {', '.join(words)}" if words else type_words(kind)


def _left_out(field: Field) -> str:
    if field.needed or field.words.must:
        return "Needed."
    if field.words.usual:
        return f"If left out: {field.words.usual}."
    if field.default in (None, "", []):
        return "May be left out."
    return f"If left out: {toml(field.default)}."


def type_words(kind: Any) -> str:
    """How a value of this type is written, in words: "a length", "one of cut, none"."""
    several = [one for one in options(kind) if not (one is int and float in options(kind))]
    said = [f"one of {', '.join(words)}"] if (words := choices(kind)) else []
    return " or ".join([*said, *filter(None, map(_one, several))])


def _one(kind: Any) -> str:
    origin, parts = get_origin(kind), get_args(kind)
    if origin is tuple:
        return "[across, up]" if parts[0] is Offset else "[width, height]"
    if origin is list:
        return _EACH if tables_in(parts[0]) else f"a list of {_listed(parts[0])}, in [ ]"
    if origin is dict:
        return f"a name = {type_words(parts[1])} for each"
    if is_quantity(kind):
        return ", ".join(filter(None, (kind.called, kind.beyond)))
    return "a table in { }" if tables_in(kind) else _KINDS.get(kind, "")


INTRODUCTION = (
    "A job file is a text file in TOML: tables in [ ], and fields with a value behind a =. # begins a remark.",
    'Lengths are written as people write them: "14 3/8", "14-3/8", 14.375, "1\' 2 3/8\\"", "5 ft 2 in", '
    '"36.5 cm", "36,5 cm", "0.365 m", "14½". A bare number is in the job\'s unit. In a job of cm or mm a bare 5/8 is '
    'refused: write its unit. A width of "24 x 36" is a width and a height. "n/a" or "none" is a length that is not '
    "given. A weight has its unit behind it.",
    "What people say for a word of the file is taken for it: inches, sheetrock, light switch, socket, couch, D-rings. "
    "The questions of start and spreadsheets take the same.",
)

EXAMPLE = """\
[job]
title = "Fern prints"
client = "Larkfield Village Library"
unit = "in"

[wall]
width = "12' 6\\""
height = "8'"

[[wall.feature]]
kind = "furniture"
name = "bench"
left = "45"
bottom = 0
width = "60"
height = "28"
clear = "2"

[group]
arrangement = "rows"
rows = [["A", "B"], ["C"]]
gap = "2 1/2"
height = { above = "bench", by = "8" }

[frame_type.tall]
width = "11 1/4"
height = "14 1/4"
hanger = "wire"

[[frame]]
id = "A"
title = "Hart's-tongue"
type = "tall"
drop = "3 1/8"

[[frame]]
id = "B"
type = "tall"
fixing = { kind = "hook", below = "7/8" }

[frame.hanger]
kind = "rings"
left = "1 1/2"
right = "1 1/2"
drop_left = "2 1/4"
drop_right = "2 3/16"
seen_from = "back"

# no drop yet: no nail yet
[[frame]]
id = "C"
type = "tall"

[paper]
size = "letter"
"""
"""A whole job, to begin with."""
