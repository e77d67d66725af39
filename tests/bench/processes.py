"""Whole commands as processes of their own: the processor time that each takes."""

from __future__ import annotations

import compileall
import os
import sys
from collections.abc import Sequence
from pathlib import Path
from statistics import median

import templates_gen

Command = Sequence[str | Path]


def seconds(command: Command) -> float:
    """The processor time of the command and what it starts, not the time on the clock; it must succeed."""
    clean = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    quiet = [(os.POSIX_SPAWN_OPEN, stream, os.devnull, os.O_WRONLY, 0) for stream in (1, 2)]
    words = [str(word) for word in command]
    process = os.posix_spawn(words[0], words, clean, file_actions=quiet)
    _, status, used = os.wait4(process, 0)
    assert status == 0, words
    return used.ru_utime + used.ru_stime


def medians(commands: Sequence[Command], runs: int) -> list[float]:
    """The median time (s) of every command over interleaved runs, after one that does not count."""
    compileall.compile_dir(Path(templates_gen.__file__).parent, quiet=1)
    times = [[seconds(command) for command in commands] for _ in range(runs + 1)][1:]
    return [median(column) for column in zip(*times, strict=True)]


def importing(modules: str) -> Command:
    """A Python that only imports these."""
    return [sys.executable, "-c", f"import {modules}"]
