"""Results are written beside their place and then moved there: whole, or not at all."""

from __future__ import annotations

import contextlib
import errno
import os
import re
import sys
import time
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from templates_gen.base.errors import InputError, OutputError, TakenError

MADE_BY = "templates-gen"
"""What a file of ours says it was created with; it stands in the file as these plain bytes."""

_BEGUN, _PART = ".templates-gen-", ".part"
"""How the name of a file begins and ends that is not yet in its place."""

STDOUT = Path("-")
"""The place that stands for standard output (POSIX.1-2017, utility syntax guideline 13)."""

LEFT_BEHIND = 3600.0
"""Seconds after which such a file is taken for one left by a run that was killed.  Our own design, no source."""

_CHANCE, _OF_US, _RIGHTS = 6, 64, 0o666
"""Bytes of chance in such a name; bytes at a file's beginning by which one of ours is known; and who may do what with a
new file, less what the system forbids.  Our own design, no source."""

_HELD = (5, 32)
"""What Windows says where a file cannot be replaced: access denied, and sharing violation, which is how it takes a file
that a viewer shows (Microsoft, System Error Codes; from memory).  Other systems replace such a file."""

_WAITS = (0.02, 0.05, 0.1)
"""Seconds that such a file is waited for, again and again: programs that look at every new file hold it for less.  Our
own design, no source."""

_HINTS = {
    errno.EACCES: "choose a folder that you may write in",
    errno.EPERM: "choose a folder that you may write in",
    errno.EROFS: "choose a folder on a disk that can be written",
    errno.ENOSPC: "make room on this disk, or choose another",
    errno.ENAMETOOLONG: "choose a shorter name",
}
"""What to do about what a system says."""

_ANYBODY = 0o222
"""The right to write, of anybody at all (POSIX.1-2017, sys/stat.h); on Windows, of a file that is not read-only."""

_OUR_JSON = re.compile(rb'\s*\{\s*"format":\s*1,')

OUR_TEXT = "To the print shop, from templates-gen,"
"""How a text of ours begins that goes beside a template."""

_PAGES = (b"%PDF-", b"<?xml", b"\x89PNG", b"\xff\xd8\xff", b"<!doctype html>")
"""How files of pages and pictures begin; in those of ours MADE_BY stands somewhere."""

_TYPED = (".toml", ".csv", ".md", ".txt")
"""The endings of plain text, which the program writes and people go on with."""


def is_ours(path: Path) -> bool:
    """True for a PDF, an SVG, PNG or JPEG picture, a JSON report, or lines for a print shop that this program wrote."""
    import mmap  # the file may be of any size

    try:
        with path.open("rb") as file:
            start = file.read(_OF_US)
            if not start.startswith(_PAGES):
                return bool(_OUR_JSON.match(start)) or start.startswith(OUR_TEXT.encode())
            with mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ) as content:
                return content.find(MADE_BY.encode()) >= 0
    except OSError:
        return False


def write_result(path: Path, content: bytes, force: bool = False) -> None:
    """Write a result under its final name in one step.

    What is there already is replaced when this program made it, or with `force`.  A link stays a link: the file that it
    leads to is replaced.  Raises OutputError when it may not or cannot be written; nothing half-written stays behind.
    """
    write_results({path: content}, force)


def write_results(files: Mapping[Path, bytes], force: bool = False) -> None:
    """Write several results, none of them when one may not or cannot be written.  Raises OutputError.

    Those in a folder beside the first one may be the first in it: then it is made.
    """
    home = next(iter(files)).parent if files else Path()
    new = {path.parent for path in files if path.parent.parent == home and not os.path.lexists(path.parent)}
    for path in files:
        if path.parent not in new:
            check_place(path, force)
    parts = {path: _part_in(Path(os.path.realpath(path)).parent) for path in files if path != STDOUT}
    try:
        for folder in new:
            with _told(folder, "made"):
                folder.mkdir()
        for path, part in parts.items():
            _clear(part.parent)
            with _told(path, "written"):
                _write(part, files[path])
        if STDOUT in files:
            sys.stdout.flush()
            sys.stdout.buffer.write(files[STDOUT])
            sys.stdout.buffer.flush()
        for path in files:
            check_place(path, force)  # somebody else may have made it meanwhile
        for path, part in parts.items():
            with _told(path, "written"):
                _replace(part, Path(os.path.realpath(path)))
    finally:
        for part in parts.values():
            with contextlib.suppress(OSError):
                part.unlink()
        for folder in new:
            with contextlib.suppress(OSError):
                folder.rmdir()  # where nothing came into it


@contextlib.contextmanager
def _told(path: Path, done: str) -> Iterator[None]:
    """Raises OutputError for what the system says when a file cannot be written, or a folder cannot be made."""
    try:
        yield
    except OSError as error:
        raise OutputError(f"{path}: cannot be {done}: {_why(error)}") from None


def _part_in(folder: Path) -> Path:
    """A name for what is not yet in its place."""
    return folder / f"{_BEGUN}{os.urandom(_CHANCE).hex()}{_PART}"


def _clear(folder: Path) -> None:
    """Remove what runs left behind that were killed while they wrote; a run that still writes is younger than that."""
    with contextlib.suppress(OSError):
        for left in folder.glob(f"{_BEGUN}*{_PART}"):
            if time.time() - left.lstat().st_mtime > LEFT_BEHIND:
                left.unlink()


def ending_of(path: Path, known: Sequence[str]) -> str:
    """What kind of file a name asks for by its ending, one of the `known`.  Raises InputError for any other."""
    ending = path.suffix.lower().removeprefix(".")
    if ending not in known:
        *others, last = (f".{one}" for one in known)
        expected = f"{', '.join(others)} or {last}" if others else last
        raise InputError(str(path), f"found the ending {path.suffix!r}, expected {expected}")
    return ending


def check_place(path: Path, force: bool = False) -> None:
    """Raises OutputError when a result may not go there, so that this can be known before the work is done."""
    if path == STDOUT:
        if sys.stdout.isatty():
            hint = "send it into a file or to a program: -o - > FILE"
            raise OutputError(f"-: a terminal cannot show what is written\n  {hint}")
        return
    try:
        _check_kind(path)
        if path.exists() and not force and not is_ours(path):
            # of plain text nobody can tell whether this program wrote all of it
            typed = path.suffix.lower() in _TYPED
            whose = ", and may hold what somebody typed" if typed else " and was not made by this program"
            raise TakenError(path, f"already exists{whose}")
    except OSError as error:  # a name too long, a folder that may not be searched
        raise OutputError(f"{path}: cannot be written: {_why(error)}") from None


def _replace(beside: Path, target: Path) -> None:
    """Move the file to its place, with the rights of what was there; one that is held there for a moment, as by what
    looks for viruses, is waited for."""
    with contextlib.suppress(OSError):
        beside.chmod(target.stat().st_mode & 0o777)
    for wait in (*_WAITS, None):
        try:
            os.replace(beside, target)
            return
        except OSError as error:
            if wait is None or getattr(error, "winerror", None) not in _HELD:
                raise
            time.sleep(wait)


def check_folder(folder: Path) -> None:
    """Raises OutputError for a folder in which no file can be made: that is tried, for systems tell it in many ways."""
    beside = _part_in(folder)
    try:
        _write(beside, b"")
        beside.unlink()
    except OSError as error:
        raise OutputError(f"{folder.resolve()}: nothing can be written in this folder: {_why(error)}") from None


def _check_kind(path: Path) -> None:
    """Raises OutputError for the place of anything but a file; whatever a link leads to counts, not the link."""
    if path.is_dir():
        raise OutputError(f"{path}: is a folder, expected the name of a file")
    target = Path(os.path.realpath(path))
    if not target.parent.is_dir():
        raise OutputError(f"{path}: there is no folder {target.parent}")
    if target.is_symlink():
        raise OutputError(f"{path}: is a link that leads back to itself, expected the name of a file")
    if path.exists() and not path.is_file():
        raise OutputError(f"{path}: is a device or a pipe, expected the name of a file")
    if path.is_file() and not path.stat().st_mode & _ANYBODY:
        raise OutputError(f"{path}: is write-protected\n  choose another name, or take the protection off")


def _why(error: OSError) -> str:
    """What went wrong, in the system's words where they help, and what to do."""
    if getattr(error, "winerror", None) in _HELD:
        return (
            "another program has it open, or it is write-protected\n"
            "  close the file there, or give another name with -o FILE"
        )
    hint = _HINTS.get(error.errno or 0, "")
    return f"{error.strerror or error}" + (f"\n  {hint}" if hint else "")


def _write(path: Path, content: bytes) -> None:
    # O_BINARY, where a system has it: no line end is turned into two characters
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), _RIGHTS)
    with open(handle, "wb") as file:
        file.write(content)
        file.flush()
        os.fsync(handle)
