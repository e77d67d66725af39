"""Values as TOML writes them (TOML 1.0.0)."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

WIDTH = 80
"""Columns of a line, beyond which TOML editors break a list (as two of them were seen to)."""


def toml(value: object) -> str:
    """A text, number, truth, list or table as it stands behind the = of a line, or a name before it, in quotes."""
    if isinstance(value, str):
        escaped = value.replace("\\", "\\\\").replace('"', '\\"')
        return '"' + "".join(char if char.isprintable() else f"\\U{ord(char):08x}" for char in escaped) + '"'
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, Mapping):
        return f"{{ {', '.join(f'{name} = {toml(inner)}' for name, inner in value.items())} }}"
    return f"[{', '.join(map(toml, value))}]" if isinstance(value, Sequence) else str(value)


def field(name: str, value: object) -> list[str]:
    """The lines of one field; a list too long for a line has one for each item, also of those inside it.

    Of a table the list that stands last in it.
    """
    line = f"{name} = {toml(value)}"
    return [line] if len(line) <= WIDTH else _laid_out(f"{name} = ", value, "", "")


def _laid_out(before: str, value: object, indent: str, after: str) -> list[str]:
    if isinstance(value, Mapping) and value:
        *others, (name, last) = value.items()
        start = "".join(f"{other} = {toml(inner)}, " for other, inner in others)
        return _laid_out(f"{before}{{ {start}{name} = ", last, indent, f" }}{after}")
    if isinstance(value, str) or not isinstance(value, Sequence) or not value:
        return [f"{indent}{before}{toml(value)}{after}"]
    items = (_laid_out("", item, f"{indent}  ", ",") for item in value)
    return [f"{indent}{before}[", *(part for item in items for part in item), f"{indent}]{after}"]
