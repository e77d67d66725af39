"""Values as TOML writes them (TOML 1.0.0)."""

from __future__ import annotations

from collections.abc import Mapping, Sequence


def toml(value: object) -> str:
    """A text, number, list or table as it stands behind the = of a line, or a name before it, in quotes."""
    if isinstance(value, str):
        escaped = value.replace("\\", "\\\\").replace('"', '\\"')
        return '"' + "".join(char if char.isprintable() else f"\\U{ord(char):08x}" for char in escaped) + '"'
    if isinstance(value, Mapping):
        return f"{{ {', '.join(f'{name} = {toml(inner)}' for name, inner in value.items())} }}"
    return f"[{', '.join(map(toml, value))}]" if isinstance(value, Sequence) else str(value)
