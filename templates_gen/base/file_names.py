"""Names of files: how they are typed into a shell, what no name may be, and how names are kept apart."""

from __future__ import annotations

import os
import re
import shlex
from collections.abc import Iterable
from pathlib import Path

_DEVICE = re.compile(r"(con|prn|aux|nul|conin\$|conout\$|(com|lpt)[0-9¹²³])\s*(\..*)?", re.IGNORECASE)
"""What Windows keeps for its devices, with any ending (Microsoft, "Naming Files, Paths, and Namespaces"; from
memory)."""


def is_device(name: str) -> bool:
    """True for a name that Windows keeps for a device: a file of that name cannot be there."""
    return _DEVICE.fullmatch(name) is not None


def quoted(path: Path | str) -> str:
    """A path as it is typed into the system's own shell, which may see nothing but a path in it."""
    text = f".{os.sep}{path}" if str(path).startswith("-") else str(path)  # an option begins like that
    if os.name != "nt":
        return shlex.quote(text)
    return text if re.fullmatch(r"[\w.:\\/+-]+", text) else f'"{text}"'  # a name there has no quotation mark in it


def dashed(words: Iterable[str]) -> list[str]:
    """A sentence on each word that begins as an option does, and is the name of a file or ends like one."""
    begun = [word for word in words if word.startswith("-")]
    files = [word for word in begun if Path(word).suffix in (".toml", ".pdf") or Path(word).is_file()]
    return [f"A file whose name begins with a dash is given as  {quoted(word)}" for word in files]


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
