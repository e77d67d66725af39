"""How names of files are typed into a shell."""

from __future__ import annotations

import os
import re
import shlex
from pathlib import Path


def quoted(path: Path | str) -> str:
    """A path as it is typed into the system's own shell, which may see nothing but a path in it."""
    text = f".{os.sep}{path}" if str(path).startswith("-") else str(path)  # an option begins like that
    if os.name != "nt":
        return shlex.quote(text)
    return text if re.fullmatch(r"[\w.:\\/+-]+", text) else f'"{text}"'  # a name there has no quotation mark in it
