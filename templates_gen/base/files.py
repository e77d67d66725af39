"""Files as they lie on the disk: what is one and what is not, read without waiting for anybody."""

from __future__ import annotations

import os
import stat
from pathlib import Path

_KINDS = (
    (stat.S_ISDIR, "a folder"),
    (stat.S_ISFIFO, "a pipe"),
    (stat.S_ISCHR, "a device"),
    (stat.S_ISBLK, "a device"),
    (stat.S_ISSOCK, "a socket"),
)

MB = 1_000_000
"""Bytes (IEC 80000-13)."""


def odd_kind(path: Path) -> str:
    """What a path leads to, such as "a pipe"; "" for a file, and for nothing at all."""
    try:
        return _kind(os.stat(path).st_mode)
    except (OSError, ValueError):
        return ""


def holds(path: Path, content: bytes) -> bool:
    """True for a file that is there already, byte for byte."""
    try:
        return path.is_file() and path.read_bytes() == content
    except OSError:
        return False


def read_at_most(path: Path, most: int) -> bytes:
    """The first bytes of a file, so many at most.  Raises OSError, ValueError for a path that cannot be one.

    A pipe or a device is never waited for: NotAFileError says what was found.
    """
    if kind := odd_kind(path):
        raise NotAFileError(kind)
    # to open a pipe waits for whoever writes to it
    without_waiting = getattr(os, "O_NONBLOCK", 0)
    with open(path, "rb", opener=lambda name, flags: os.open(name, flags | without_waiting)) as file:
        if kind := _kind(os.fstat(file.fileno()).st_mode):  # it came between
            raise NotAFileError(kind)
        return file.read(most)


class NotAFileError(OSError):
    """A path leads to something that is no file; the text says what it is."""


def _kind(mode: int) -> str:
    if stat.S_ISREG(mode):
        return ""
    return next((name for is_one, name in _KINDS if is_one(mode)), "something else")
