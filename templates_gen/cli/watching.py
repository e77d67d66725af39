"""A search that takes its time: a progress bar on a terminal, and Ctrl-C for the best so far."""

from __future__ import annotations

import signal
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any

import click

if TYPE_CHECKING:
    from templates_gen.arranging.plan import Plan
    from templates_gen.job.model import Job

SLOW = 1.0
"""Seconds before a progress bar appears.  Common practice, no source."""


class Watching:
    """Is told how far a search is; `stopped` when the user wanted no more of it."""

    def __init__(self, label: str) -> None:
        self.stopped = False
        self._label = label
        self._start = time.monotonic()
        self._bar: Any = None
        self._steps = 0

    def __call__(self, done: float) -> bool:
        """Shows how much is done, from 0 to 1; False once the user has pressed Ctrl-C."""
        if self._bar is None and sys.stderr.isatty() and time.monotonic() - self._start > SLOW:
            self._bar = click.progressbar(length=100, label=self._label, file=sys.stderr)
        if self._bar is not None and int(100 * done) > self._steps:
            self._bar.update(int(100 * done) - self._steps)
            self._steps = int(100 * done)
        return not self.stopped

    def close(self) -> None:
        """Take the bar off."""
        if self._bar is not None:
            self._bar.render_finish()


def planned(job: Job) -> Plan:
    """The plan of a job; where it leaves places open, how far the search for them is gets shown.

    Raises InputError where a hanger cannot be as described, or frames find no room.
    """
    from templates_gen.arranging.plan import plan_wall

    watch = Watching("finding places for the frames")
    try:
        return plan_wall(job, watch)
    finally:
        watch.close()


@contextmanager
def watching() -> Iterator[Watching]:
    """Watch a search; Ctrl-C ends it with what it has, a second one ends the program."""
    watch = Watching("looking for arrangements (Ctrl-C shows the best so far)")

    def stop(*_: object) -> None:
        if watch.stopped:
            raise KeyboardInterrupt
        watch.stopped = True

    before = signal.signal(signal.SIGINT, stop)
    try:
        yield watch
    finally:
        signal.signal(signal.SIGINT, before)
        watch.close()
