"""The same work for several job files, on all cores: what is said of each is shown together, in the order asked for."""

from __future__ import annotations

import contextlib
import io
import os
import signal
import sys
import time
from collections.abc import Callable, Sequence
from concurrent.futures import FIRST_COMPLETED, Future, ProcessPoolExecutor, wait
from concurrent.futures.process import BrokenProcessPool
from multiprocessing import active_children, get_context
from multiprocessing.context import BaseContext
from pathlib import Path
from typing import Any, NamedTuple

import click

from templates_gen.base.errors import TemplatesError
from templates_gen.cli.showing import show_error
from templates_gen.cli.watching import SLOW

Work = Callable[[Path], int]
"""Does one job file, says what it has to say, and gives the exit code."""

GRACE = 1.0
"""Seconds that a worker has to end by itself after an interrupt.  Our own design, no source."""

BAR = 30
"""Letters that a progress bar is long.  Our own design, no source."""


class _Outcome(NamedTuple):
    code: int
    out: str
    err: str


def each(paths: Sequence[Path], work: Work) -> list[int]:
    """The exit code of the work for every path; one that fails does not stop the others.

    `work` runs in processes of its own, so that it has to be a function that another process can find by its name.
    """
    workers = min(len(paths), _cores())
    if workers < 2:
        return [_show(path, _outcome(work, path)) for path in paths]
    # as copies of this process where that is sound, since they then have all it has imported
    processes: BaseContext = get_context("fork" if sys.platform == "linux" else None)
    with ProcessPoolExecutor(workers, processes, _Worker.begin) as pool:
        try:
            _hold_interrupts(True)  # until every worker knows what to do on one
            futures = [pool.submit(_Worker.outcome, work, path) for path in paths]
            _hold_interrupts(False)
            return _shown_in_order(paths, futures)
        except BaseException:
            pool.shutdown(wait=False, cancel_futures=True)
            for worker in active_children():
                worker.join(GRACE)
                worker.terminate()
            raise


def _cores() -> int:
    """The processors that this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _hold_interrupts(hold: bool) -> None:
    """Keep interrupts waiting, or let them come, where the system can; a process made meanwhile does the same."""
    if sys.platform != "win32":  # which has no such masks
        signal.pthread_sigmask(signal.SIG_BLOCK if hold else signal.SIG_UNBLOCK, {signal.SIGINT})


class _Worker:
    """What a process that works for the first one is at: an interrupt reaches every process of a terminal."""

    working = left = False

    @classmethod
    def begin(cls) -> None:
        """On an interrupt, end the job at hand and begin no other, without a word: the first process says so."""
        signal.signal(signal.SIGINT, cls._leave)
        for name in ("SIGTERM", "SIGHUP"):  # these end it at once; what the first process does on them is its own
            if hasattr(signal, name):
                signal.signal(getattr(signal, name), signal.SIG_DFL)
        _hold_interrupts(False)

    @classmethod
    def _leave(cls, *_: object) -> None:
        cls.left = True
        if cls.working:
            raise SystemExit

    @classmethod
    def outcome(cls, work: Work, path: Path) -> _Outcome:
        """The outcome of one job."""
        cls.working = True
        try:
            if cls.left:
                raise SystemExit
            return _outcome(work, path)
        finally:
            cls.working = False


def _outcome(work: Work, path: Path) -> _Outcome:
    """Do the work, and keep what it says: letters stay bold and coloured until it is known where they go."""
    out, err = io.StringIO(), io.StringIO()
    with (
        contextlib.redirect_stdout(out),
        contextlib.redirect_stderr(err),
        click.Context(click.Command("each"), color=True),
    ):
        try:
            code = work(path)
        except TemplatesError as error:
            show_error(error)
            code = error.exit_code
    return _Outcome(code, out.getvalue(), err.getvalue())


def _shown_in_order(paths: Sequence[Path], futures: Sequence[Future[_Outcome]]) -> list[int]:
    bar, codes = _Bar(len(paths)), list[int]()
    waiting: set[Future[Any]] = set(futures)
    while waiting:
        try:
            _, waiting = wait(waiting, timeout=SLOW, return_when=FIRST_COMPLETED)
        finally:  # an interrupt too is told on a line of its own
            bar.clear()
        while len(codes) < len(futures) and futures[len(codes)].done():
            codes.append(_show(paths[len(codes)], _result(futures[len(codes)], paths[len(codes)])))
        bar.draw(len(paths) - len(waiting))
    return codes


def _result(future: Future[_Outcome], path: Path) -> _Outcome:
    try:
        return future.result()
    except BrokenProcessPool:
        said = f"error: {path}: the process that was making it was killed\n"
        return _Outcome(TemplatesError.exit_code, "", said)


def _show(path: Path, outcome: _Outcome) -> int:
    if outcome.err:
        click.echo(f"{path}:\n{outcome.err}", nl=False, err=True)
    click.echo(outcome.out, nl=False)
    return outcome.code


class _Bar:
    """How far the work is, on a terminal, once it takes longer than a moment."""

    def __init__(self, total: int) -> None:
        self._total, self._start, self._shown = total, time.monotonic(), ""

    def draw(self, done: int) -> None:
        if done < self._total and sys.stderr.isatty() and time.monotonic() - self._start >= SLOW:
            full = BAR * done // self._total
            self._shown = f"[{'#' * full}{'.' * (BAR - full)}] {done} of {self._total}"
            click.echo(self._shown, nl=False, err=True)

    def clear(self) -> None:
        if self._shown:
            click.echo(f"\r{' ' * len(self._shown)}\r", nl=False, err=True)
            self._shown = ""
