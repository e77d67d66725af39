"""Results are written beside their place and then moved there: whole, or not at all."""

from __future__ import annotations

import contextlib
import os
import re
from collections.abc import Mapping
from pathlib import Path

from templates_gen.errors import OutputError
from templates_gen.pdf import MADE_BY

_OUR_JSON = re.compile(rb'\s*\{\s*"format":\s*1,')

_PAGES = (b"%PDF-", b"<?xml", b"\x89PNG")
"""How files of pages and pictures begin; in those of ours MADE_BY stands somewhere."""


def is_ours(path: Path) -> bool:
    """True for a PDF, an SVG or PNG picture, or a JSON report that this program wrote."""
    try:
        content = path.read_bytes()
    except OSError:
        return False
    if content.startswith(_PAGES):
        return MADE_BY.encode() in content
    return bool(_OUR_JSON.match(content))


def write_result(path: Path, content: bytes, force: bool = False) -> None:
    """Write a result under its final name in one step.

    What is there already is replaced when this program made it, or with `force`.  Raises OutputError when it may not
    or cannot be written; nothing half-written stays behind.
    """
    check_place(path, force)
    target = Path(os.path.realpath(path))
    beside = target.with_name(f".{target.name[:100]}.{os.getpid()}.part")
    try:
        _write(beside, content)
        os.replace(beside, target)
    except OSError as error:
        raise OutputError(f"{path}: cannot be written: {error.strerror or error}") from None
    finally:
        with contextlib.suppress(OSError):
            beside.unlink()


def write_results(files: Mapping[Path, bytes], force: bool = False) -> None:
    """Write several results, none of them when one may not be written.  Raises OutputError."""
    for path in files:
        check_place(path, force)
    for path, content in files.items():
        write_result(path, content, force)


def check_place(path: Path, force: bool = False) -> None:
    """Raises OutputError when a result may not go there, so that this can be known before the work is done."""
    if path.is_dir():
        raise OutputError(f"{path}: is a folder, expected the name of a file")
    folder = Path(os.path.realpath(path)).parent
    if not folder.is_dir():
        raise OutputError(f"{path}: there is no folder {folder}")
    if path.exists() and not force and not is_ours(path):
        raise OutputError(f"{path}: is there already and was not made by this program; give --force to replace it")


def _write(path: Path, content: bytes) -> None:
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666)
    with open(handle, "wb") as file:
        file.write(content)
        file.flush()
        os.fsync(handle)
