"""The fields of a job file as the page shows them: their words, and what is typed into them."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any, Literal, get_args, get_origin

from templates_gen.base.record import Table
from templates_gen.job.changes import Place
from templates_gen.job.hangers import HANGERS
from templates_gen.job.paper_sizes import SIZES
from templates_gen.job.tables.contents import CHAPTERS
from templates_gen.job.tables.field import Field, Length, Mass, Offset, fields_of, options, tables_in
from templates_gen.job.tables.frame import MouldingTable
from templates_gen.job.tables.hanger import FixingTable
from templates_gen.job.tables.wall import StudsTable
from templates_gen.job.tables.whole import JobFile

_TABLES: dict[str, type[Table]] = {
    **{chapter.name: chapter.table for chapter in CHAPTERS},
    "studs": StudsTable, "fixing": FixingTable, "moulding": MouldingTable,
}  # fmt: skip

YES = {"yes": True, "true": True, "no": False, "false": False}
"""What may be typed for a truth; the page offers just the first of each."""


@cache
def field_words() -> dict[str, Any]:
    """Every table by its name, with its fields in order; and what else there is to choose from."""
    tables = {name: [_told(field) for field in fields_of(table).values()] for name, table in _TABLES.items()}
    kinds = [
        {"name": kind.name, "called": kind.called, "takes": kind.takes, "needs": kind.needs, "fixings": kind.fixings}
        for kind in HANGERS.values()
    ]
    return {"tables": tables, "hangers": kinds, "papers": list(SIZES)}


def _told(field: Field) -> dict[str, Any]:
    words = field.words
    return {
        "name": field.name, "ask": words.ask, "means": words.means, "example": plain_example(words.example),
        "metric": plain_example(words.metric or words.example), "usual": words.usual, "more": words.more,
        "kind": _kind(field), "choices": field.choices,
    }  # fmt: skip


def plain_example(example: str) -> str:
    """An example as a person types it: a text without its quotes; nothing for what takes a form of its own."""
    text = example.removeprefix('"').removesuffix('"').replace('\\"', '"')
    return "" if text.startswith(("[", "{")) else text


def _kind(field: Field) -> str:
    """How the page asks for it."""
    kinds = options(field.written)
    if field.choices:
        return "choice"
    for kind, name in ((Mass, "mass"), (Length, "length"), (Offset, "length"), (bool, "yes"), (int, "number")):
        if kind in kinds:
            return name
    inner = [part for kind in kinds if get_origin(kind) is list for part in get_args(kind)]
    if any(part is str or get_origin(part) is Literal for part in inner):
        return "names"
    return "text" if str in kinds else "own"


def field_at(place: Place) -> Field | None:
    """The field that a place in a job file is, None for a whole table or for a place in a list."""
    table: type[Table] = JobFile
    found: Field | None = None
    for part in place:
        if isinstance(part, int) or part not in fields_of(table):
            continue  # a number in a list, or the name of one table of several
        found = fields_of(table)[part]
        inner = tables_in(found.written)
        table = inner[0] if inner else table
    return found if found is not None and place[-1] == found.name else None


def typed(place: Place, value: Any) -> Any:
    """What a job file is to hold for what was typed: None for nothing, a number or a truth where the field is one."""
    if isinstance(value, Mapping):
        inner = {name: typed((*place, name), part) for name, part in value.items()}
        inner = {name: part for name, part in inner.items() if part is not None}
        return inner or None
    if not isinstance(value, str):
        return value
    text, field = value.strip(), field_at(place)
    if not text:
        return None
    kinds = options(field.written) if field is not None else ()
    if field is not None and _kind(field) == "names":
        return [part.strip() for part in text.split(",") if part.strip()]
    if bool in kinds:
        return YES.get(text.lower(), text)
    return _number(text, kinds)


def _number(text: str, kinds: tuple[Any, ...]) -> Any:
    """A number where only numbers are taken; a size stays as it was typed."""
    if str in kinds or not {int, float} & {*kinds}:
        return text
    try:
        number = float(text.replace(",", "."))
    except ValueError:
        return text
    return int(number) if number.is_integer() else number
