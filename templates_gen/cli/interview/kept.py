"""An interview that was left, or that a crash ended: its answers are kept, and offered when `start` is used again."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any

from templates_gen.base.errors import OutputError
from templates_gen.base.output import write_result
from templates_gen.cli.interview.session import Interview, gone_on

NAMES = "started-*.json"
"""The files of answers in the program's own folder, one for each job that was begun."""

MOST = 20
"""Interviews that are kept; of more the oldest goes.  Our own design, no source."""

LARGEST = 1_000_000
"""Bytes.  An interview of a thousand frames has a tenth of that.  Our own design, no source."""


def keep(state: Interview, place: Path) -> bool:
    """Keep the answers in this folder; False where that cannot be done, for it is only a help."""
    import json

    data = {"format": 1, "folder": _here(), "file": state.file, "answers": list(state.answers),
            "confirmed": [list(each) for each in state.confirmed]}  # fmt: skip
    try:
        place.mkdir(parents=True, exist_ok=True)
        write_result(_path(place, state.file), json.dumps(data, ensure_ascii=False).encode(), force=True)
        for old in _newest(place)[MOST:]:
            old.unlink()
    except (OSError, ValueError, OutputError):
        return False
    return True


def left(place: Path, file: str) -> Interview | None:
    """The interview that was left in this folder for this file, the newest where none is named, as far as it can be
    gone on with; None for none."""
    import json

    for path in _newest(place):
        try:
            data = json.loads(path.read_text(encoding="utf-8")) if path.stat().st_size <= LARGEST else None
        except (OSError, ValueError):
            continue
        if isinstance(data, Mapping) and (state := _state(data, file)):
            return state
    return None


def _path(place: Path, file: str) -> Path:
    """Where the answers for this file in the folder that one is in are kept."""
    return place / NAMES.replace("*", hashlib.sha256(f"{_here()}\n{file}".encode("utf-8", "replace")).hexdigest()[:16])


def _newest(place: Path) -> list[Path]:
    """All that is kept, what was left last before the others."""
    with suppress(OSError):
        return sorted(place.glob(NAMES), key=lambda path: path.stat().st_mtime_ns, reverse=True)
    return []


def _state(data: Mapping[str, Any], file: str) -> Interview | None:
    """The interview of what was kept; None for one of another file or folder, or in a form that is not known."""
    if data.get("format") != 1 or data.get("folder") != _here() or file not in ("", data.get("file")):
        return None
    answers, sure = data.get("answers"), data.get("confirmed")
    if not (isinstance(answers, list) and isinstance(sure, list) and all(isinstance(each, str) for each in answers)):
        return None
    pairs = [(each[0], each[1]) for each in sure if isinstance(each, list) and len(each) == 2]
    known = [(at, text) for at, text in pairs if isinstance(at, int) and isinstance(text, str)]
    state = gone_on(answers, known, str(data.get("file") or ""))
    return state if state.answers else None


def _here() -> str:
    """The folder that one is in; "" where it is gone."""
    try:
        return str(Path.cwd())
    except OSError:
        return ""


def forget(state: Interview, place: Path) -> None:
    """Take the kept answers away: the job is written."""
    with suppress(OSError):
        _path(place, state.file).unlink(missing_ok=True)
