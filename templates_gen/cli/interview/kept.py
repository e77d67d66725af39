"""An interview that was left, or that a crash ended: its answers are kept, and offered when `start` is used again."""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any

from templates_gen.base.errors import OutputError
from templates_gen.base.output import write_result
from templates_gen.cli.interview.session import Interview, gone_on

NAME = "started.json"
"""The file of the answers, in the program's own folder."""

LARGEST = 1_000_000
"""Bytes.  An interview of a thousand frames has a tenth of that.  Our own design, no source."""


def keep(state: Interview, place: Path) -> None:
    """Keep the answers in this folder; nothing is said where that cannot be done, for it is only a help."""
    import json

    data = {"format": 1, "folder": _here(), "file": state.file, "answers": list(state.answers),
            "confirmed": [list(each) for each in state.confirmed]}  # fmt: skip
    with suppress(OSError, ValueError, OutputError):
        place.mkdir(parents=True, exist_ok=True)
        write_result(place / NAME, json.dumps(data, ensure_ascii=False).encode(), force=True)


def left(place: Path, file: str) -> Interview | None:
    """The interview that was left in this folder for this file, as far as it can be gone on with; None for none."""
    import json

    path = place / NAME
    try:
        if path.stat().st_size > LARGEST:
            return None
        data = json.loads(path.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return None
    return _state(data, file) if isinstance(data, Mapping) else None


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


def forget(place: Path) -> None:
    """Take the kept answers away: the job is written."""
    with suppress(OSError):
        (place / NAME).unlink(missing_ok=True)
