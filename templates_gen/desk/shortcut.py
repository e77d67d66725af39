"""A starter for the desk in the person's menu or on the desktop, for the jobs of one folder."""

from __future__ import annotations

import os
import shlex
import sys
from pathlib import Path

from templates_gen.base.errors import OutputError
from templates_gen.base.output import write_result

_RUN = 0o755
"""What a .command must be allowed to be run by a double click: to be executed."""

NAME = "Templates desk"
"""What the starter is called.  Our own."""


def put_shortcut(folder: Path, home: Path, system: str = sys.platform) -> Path:
    """Put the starter where this kind of system looks for it; its place.  Raises OutputError where that cannot be."""
    place, text = _starter(folder.resolve(), home, system)
    try:
        place.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise OutputError(f"{place}: cannot be made: {error.strerror or error}") from None
    write_result(place, text.encode(), force=True)
    if system == "darwin":
        os.chmod(place, _RUN)
    return place


def _starter(folder: Path, home: Path, system: str) -> tuple[Path, str]:
    """Its place and its text: a desktop entry (freedesktop.org, Desktop Entry Specification 1.5), a shell script that
    macOS runs by its ending, or a batch file (from memory)."""
    python = Path(sys.executable)
    if system == "win32":
        text = f'@echo off\r\ncd /d "{folder}"\r\n"{python}" -m templates_gen desk\r\nif errorlevel 1 pause\r\n'
        return home / "Desktop" / f"{NAME}.bat", text
    run = f"{shlex.quote(str(python))} -m templates_gen desk"
    if system == "darwin":
        return home / "Desktop" / f"{NAME}.command", f"#!/bin/sh\ncd {shlex.quote(str(folder))} && {run}\n"
    entry = (
        f"[Desktop Entry]\nType=Application\nName={NAME}\nComment=Hang a group of frames: wall, drops, paper\n"
        f"Exec={_entry_quoted(python)} -m templates_gen desk\nPath={folder}\n"
        "Terminal=true\nCategories=Graphics;Office;\n"
    )
    return home / ".local" / "share" / "applications" / "templates-gen-desk.desktop", entry


def _entry_quoted(path: Path) -> str:
    """A program's path as a desktop entry has it: quoted, signs with a meaning behind a backslash, % doubled."""
    text = str(path).replace("\\", "\\\\\\\\")
    for sign in ('"', "`", "$"):
        text = text.replace(sign, f"\\\\{sign}")
    return f'"{text.replace("%", "%%")}"'
