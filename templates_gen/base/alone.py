"""Two runs of the program that change one file take turns, where the system has a lock for that."""

from __future__ import annotations

import contextlib
import os
import sys
import time
from collections.abc import Iterator
from pathlib import Path

LONGEST = 5.0
"""Seconds that the other run is waited for: far more than a change takes, and a stopped one holds nobody up for good.
Our own design, no source."""

_AGAIN = 0.01
"""Seconds between two tries.  Our own design, no source."""


@contextlib.contextmanager
def alone_in(folder: Path) -> Iterator[None]:
    """Keep other runs that ask for it out of a folder, while a file in it is read, changed and written.

    The folder itself is locked (flock): nothing is left behind, and a killed run lets go.  Where that cannot be had, as
    on Windows, and after LONGEST the work is done without.
    """
    handle = _held(folder)
    try:
        yield
    finally:
        if handle >= 0:
            os.close(handle)


def _held(folder: Path) -> int:
    """The folder, open and locked as far as that goes; -1 where it cannot be opened."""
    if sys.platform == "win32":
        return -1  # there a folder cannot be opened
    import fcntl

    try:
        handle = os.open(folder, os.O_RDONLY)
    except OSError:
        return -1
    until = time.monotonic() + LONGEST
    while time.monotonic() < until:
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
            break
        except BlockingIOError:
            time.sleep(_AGAIN)
        except OSError:  # a disk without locks
            break
    return handle
