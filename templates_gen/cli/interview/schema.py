"""The JSON Schema of the job file, for editors that complete and check TOML by one: made from the tables it is read by.

It knows fields, types and words, not what belongs together; that is for the command `check`.
"""

from __future__ import annotations

from typing import Any

from templates_gen.base.record import json_schemas
from templates_gen.base.units import LENGTH_EXAMPLE, MASS_EXAMPLE
from templates_gen.cli.interview.field_words import FIELDS
from templates_gen.job.tables.field import Length, Mass, Offset
from templates_gen.job.tables.frame import MatTable
from templates_gen.job.tables.group import SpotTable
from templates_gen.job.tables.paper import MarginTable
from templates_gen.job.tables.wall import FeatureTable
from templates_gen.job.tables.whole import JobFile

_LENGTH = {"$ref": "#/$defs/Length"}
_PAIR = {"type": "array", "items": _LENGTH, "minItems": 2, "maxItems": 2}

WRITTEN: dict[type, dict[str, Any]] = {
    Length: {"type": ["number", "string"], "minimum": 0, "description": LENGTH_EXAMPLE},
    Offset: {"type": ["number", "string"], "description": f"{LENGTH_EXAMPLE}; negative to the left or down"},
    Mass: {"type": "string", "description": MASS_EXAMPLE},
}
"""How a length, a distance or a weight is written."""

READ_LATER: dict[str, Any] = {
    "WallTable.feature": {"type": "array", "items": {"$ref": "#/$defs/FeatureTable"}},
    "GroupTable.place": {"type": "object", "additionalProperties": {"$ref": "#/$defs/SpotTable"}},
    "FrameTable.mat": {"anyOf": [_LENGTH, {"$ref": "#/$defs/MatTable"}]},
    "PaperTable.size": {"anyOf": [{"type": "string"}, _PAIR]},
    "PaperTable.margin": {"anyOf": [_LENGTH, {"$ref": "#/$defs/MarginTable"}]},
}
"""Fields that their table leaves untyped, for they are read one by one so that an error can say where it is."""

_TABLES = (JobFile, FeatureTable, SpotTable, MatTable, MarginTable)


def job_schema() -> dict[str, Any]:
    """The schema (JSON Schema 2020-12, and no word that older readers take otherwise)."""
    known = json_schemas(_TABLES, lambda kind: {"$ref": f"#/$defs/{kind.__name__}"})
    told = {name: _table(name, schema) for name, schema in sorted(known.items())}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        **told.pop("JobFile"),
        "title": "A job of templates-gen",
        "$defs": told | {kind.__name__: schema for kind, schema in WRITTEN.items()},
    }


def _table(name: str, schema: dict[str, Any]) -> dict[str, Any]:
    fields = {field: _field(name, field, told) for field, told in schema["properties"].items()}
    return {**schema, "properties": fields}


def _field(table: str, field: str, told: dict[str, Any]) -> dict[str, Any]:
    """One field with what it means; a field of a TOML file is never null, but left out."""
    schema: dict[str, Any] = _plain(READ_LATER.get(f"{table}.{field}", told))
    words = FIELDS.get(f"{table.removesuffix('Table').lower()}.{field}")
    return schema | ({"description": words.means} if words else {})


def _plain(node: Any) -> Any:
    """Without null, and a pair told by one kind of item: what older drafts of JSON Schema read the same way."""
    if isinstance(node, list):
        return [_plain(item) for item in node if item != {"type": "null"}]
    if not isinstance(node, dict):
        return node
    plain = {key: _plain(value) for key, value in node.items() if (key, value) != ("default", None)}
    if "prefixItems" in plain:
        plain["items"] = plain.pop("prefixItems")[0]
    if len(plain.get("anyOf", ())) == 1:
        plain |= plain.pop("anyOf")[0]
    return plain
