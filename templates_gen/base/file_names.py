"""Names of files: how they are typed into a shell, and what no name may be."""

from __future__ import annotations

import os
import re
import shlex
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
