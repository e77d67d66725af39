"""The names under which a job's files travel inside its papers: no two of them alike."""

from __future__ import annotations

import re
from collections.abc import Iterable


def last_part(path: str) -> str:
    """The last part of a path as either kind of system writes it."""
    return re.split(r"[/\\]", path)[-1]


def apart(names: Iterable[str], taken: Iterable[str] = ()) -> list[str]:
    """The same names, a number in those that a system without capitals would take for one before."""
    used = {name.casefold() for name in taken}
    free: list[str] = []
    for name in names:
        stem, dot, ending = name.rpartition(".") if name.rpartition(".")[0] else (name, "", "")
        number, own = 1, name
        while own.casefold() in used:
            number += 1
            own = f"{stem}-{number}{dot}{ending}"
        used.add(own.casefold())
        free.append(own)
    return free
