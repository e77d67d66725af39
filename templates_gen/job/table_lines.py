"""Tables in double brackets as lines of a TOML file: one comes or goes with the remarks that are its own."""

from __future__ import annotations

import re
from collections.abc import Sequence

_HEADER = re.compile(r"^\s*(\[\[?)\s*([\w\"'.\s-]+?)\s*\]\]?\s*(#.*)?$")


def with_block(text: str, name: tuple[str, ...], lines: Sequence[str]) -> str | None:
    """The text with these lines after the last table of this name and what is inside it, else after the table around.

    None where there is no such place.
    """
    tables = blocks(text)
    places = [at for at, (path, _) in enumerate(tables) if path[: len(name)] == name]
    around = [at for at, (path, _) in enumerate(tables) if len(name) > 1 and path[: len(name) - 1] == name[:-1]]
    if not places and not around and len(name) > 1:
        return None
    after = (places or around or [len(tables) - 1])[-1] + 1
    before, rest = (_joined(part) for part in (tables[:after], tables[after:]))
    return "\n\n".join(part for part in (before.rstrip("\n"), "\n".join(lines), rest.lstrip("\n")) if part.strip()) + (
        "" if rest.strip() else "\n"
    )


def without_block(text: str, name: tuple[str, ...], number: int) -> str | None:
    """The text without the table of this name and number, counted from 0; None where it does not stand in brackets."""
    parts = cut_out(text, name, number)
    if parts is None:
        return None
    before, rest = parts[0].rstrip("\n"), parts[2].lstrip("\n")
    return f"{before}\n\n{rest}" if before and rest else f"{before}\n" if before else rest


def cut_out(text: str, name: tuple[str, ...], number: int) -> tuple[str, str, str] | None:
    """What stands before the table of this name and number, counted from 0, the table with all that is inside it, and
    what stands behind it; None where it does not stand in double brackets."""
    tables = blocks(text)
    starts = [at for at, (path, lines) in enumerate(tables) if path == name and _doubled(lines)]
    if not 0 <= number < len(starts):
        return None
    first = starts[number]
    last = first + 1
    while last < len(tables) and last not in starts and tables[last][0][: len(name)] == name:
        last += 1
    return _joined(tables[:first]), _joined(tables[first:last]), _joined(tables[last:])


def blocks(text: str) -> list[tuple[tuple[str, ...], list[str]]]:
    """The lines of each table under its path; remarks just above a heading belong to it."""
    found: list[tuple[tuple[str, ...], list[str]]] = [((), [])]
    for line in text.splitlines(keepends=True):
        if header := _HEADER.match(line):
            above, lines = found[-1][1], [line]
            while above and above[-1].startswith("#"):
                lines.insert(0, above.pop())
            path = tuple(part.strip().strip("\"'") for part in header[2].split("."))
            found.append((path, lines))
        else:
            found[-1][1].append(line)
    return found


def _doubled(lines: Sequence[str]) -> bool:
    return any(line.lstrip().startswith("[[") for line in lines)


def _joined(tables: Sequence[tuple[tuple[str, ...], list[str]]]) -> str:
    return "".join("".join(lines) for _, lines in tables)
