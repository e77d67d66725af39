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
    python, *more = _program()
    if system == "win32":
        command = " ".join([f'"{_in_batch(python)}"', *more])
        # 65001 is UTF-8: names of folders have letters that the console's own code page may lack
        lines = ["@echo off", "chcp 65001 >nul", f'cd /d "{_in_batch(folder)}"', command, "if errorlevel 1 pause", ""]
        return _desktop(home) / f"{NAME}.bat", "\r\n".join(lines)
    if system == "darwin":
        run = shlex.join([python, *more])
        return home / "Desktop" / f"{NAME}.command", f"#!/bin/sh\ncd {shlex.quote(str(folder))} && {run}\n"
    entry = (
        f"[Desktop Entry]\nType=Application\nName={NAME}\nComment=Hang a group of frames: wall, drops, paper\n"
        f"Exec={' '.join([_entry_quoted(python), *more])}\nPath={folder}\n"
        "Terminal=true\nCategories=Graphics;Office;\n"
    )
    return home / ".local" / "share" / "applications" / "templates-gen-desk.desktop", entry


def _program() -> tuple[str, ...]:
    """What starts the desk: this Python, or the program itself where Python is inside it."""
    own = () if getattr(sys, "frozen", False) else ("-m", "templates_gen")
    return sys.executable, *own, "desk"


def _desktop(home: Path) -> Path:
    """The desktop's folder on Windows, which OneDrive may have moved into its own (from memory)."""
    moved = Path(os.environ.get("OneDrive") or home / "OneDrive") / "Desktop"
    return moved if moved.is_dir() else home / "Desktop"


def _in_batch(path: Path | str) -> str:
    """A path as a batch file has it: % begins a name of something else."""
    return str(path).replace("%", "%%")


def _entry_quoted(path: str) -> str:
    """A program's path as a desktop entry has it: quoted, signs with a meaning behind a backslash, % doubled."""
    text = path.replace("\\", "\\\\\\\\")
    for sign in ('"', "`", "$"):
        text = text.replace(sign, f"\\\\{sign}")
    return f'"{text.replace("%", "%%")}"'
