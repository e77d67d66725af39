"""The JSON Schema of the job file, for editors that complete and check TOML by one: made from the tables it is read by.

It knows fields, types and words, not what belongs together; that is for the command `check`.
"""

from __future__ import annotations

import math
from typing import Any, Literal, get_args, get_origin

from templates_gen.base.record import Table
from templates_gen.job.tables.field import Field, fields_of, is_table, options, tables_in
from templates_gen.job.tables.quantities import Inset, Length, Mass, Offset, Quantity, is_quantity
from templates_gen.job.tables.whole import JobFile

_PLAIN: dict[Any, str] = {str: "string", int: "integer", float: "number", bool: "boolean"}


def job_schema() -> dict[str, Any]:
    """The schema (JSON Schema 2020-12, and no word that older readers take otherwise)."""
    tables = sorted(_within(JobFile) - {JobFile}, key=lambda table: table.__name__)
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        **_table(JobFile),
        "title": "A job of templates-gen",
        "$defs": {table.__name__: _table(table) for table in tables}
        | {kind.__name__: _written(kind) for kind in (Length, Offset, Inset, Mass)},
    }


def _written(kind: type[Quantity]) -> dict[str, Any]:
    """How a number with a unit is written: a bare one is in the job's unit, but for a weight."""
    said = "; ".join(filter(None, (kind.example, kind.beyond)))
    if kind.dimension == "mass":
        return {"type": "string", "description": said}
    return {"type": ["number", "string"]} | ({} if kind.beyond else {"minimum": 0}) | {"description": said}


def _within(table: type[Table]) -> set[type[Table]]:
    """The table and all that may stand inside it."""
    inner = [one for field in fields_of(table).values() for one in tables_in(field.written)]
    return {table}.union(*map(_within, inner))


def _table(table: type[Table]) -> dict[str, Any]:
    fields = fields_of(table)
    needed = [name for name, field in fields.items() if field.needed]
    return {
        "title": table.__name__,
        "type": "object",
        "properties": {name: _field(field) for name, field in fields.items()},
        "required": needed,
        "additionalProperties": False,
    }


def _field(field: Field) -> dict[str, Any]:
    """One field with what it means; a field of a TOML file is never null, but left out."""
    usual = {} if field.needed or field.default is None else {"default": field.default}
    return _schema(field.written) | _limits(field) | usual | {"description": field.words.means}


def _limits(field: Field) -> dict[str, Any]:
    """Those of a plain number: a length may have any unit, and is a text with one."""
    limits = field.words.limits
    if limits is None or not {*options(field.type)} <= {int, float}:
        return {}
    low = {"exclusiveMinimum" if limits.above else "minimum": limits.least}
    high = {"exclusiveMaximum" if limits.under else "maximum": limits.most}
    return low | (high if math.isfinite(limits.most) else {})


def _schema(kind: Any) -> dict[str, Any]:
    ways = [_way(one) for one in options(kind) if not (one is int and float in options(kind))]
    return ways[0] if len(ways) == 1 else {"anyOf": ways}


def _way(kind: Any) -> dict[str, Any]:
    """How a value of one kind is written; a pair as older drafts of JSON Schema have it, too."""
    origin, parts = get_origin(kind), get_args(kind)
    if is_table(kind) or is_quantity(kind):
        return {"$ref": f"#/$defs/{kind.__name__}"}
    if origin is Literal:
        return {"enum": sorted(parts)}
    if origin is dict:
        return {"type": "object", "additionalProperties": _schema(parts[1])}
    if origin in (list, tuple):
        counted = {"minItems": len(parts), "maxItems": len(parts)} if origin is tuple else {}
        return {"type": "array", "items": _schema(parts[0]), **counted}
    return {"type": _PLAIN[kind]}
