"""One job file that is open at the desk: its text, what it says, and every state of it since the desk was started."""

from __future__ import annotations

import contextlib
import hashlib
import os
import threading
from collections.abc import Callable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

import templates_gen as tg
from templates_gen.arranging.plan import found_key
from templates_gen.base.alone import alone_in
from templates_gen.base.errors import InputError, TemplatesError
from templates_gen.base.output import write_result
from templates_gen.base.record import Record, replace
from templates_gen.desk.finding_places import FoundPlaces
from templates_gen.desk.folder import check_named
from templates_gen.job.changes import Change
from templates_gen.job.editing import edited
from templates_gen.job.reading.building import build_job
from templates_gen.job.reading.files import decoded, parse_toml, read_bytes

MOST_KEPT = 2_000
"""Earlier states that are kept to go back to: a day's work.  Our own design, no source."""


GONE = (0, 0, 0)
"""What is told of a file that is not there: no file was written in 1970.  Our own design."""

NOT_THERE = (
    "is not there any more: it was renamed, moved or deleted",
    "write it again as it was, or open the other one",
)
"""What is wrong then, and what to do."""


class Read(Record, frozen=True):
    """What the text of the job file at `path` says: its tables as written, the job, and the plan once it is known."""

    path: Path
    text: str
    raw: Mapping[str, Any]
    job: tg.Job
    plan: tg.Plan | None


Changing = Callable[[Read], Sequence[Change]]


class Opened:
    """A job file that is open.  All its methods may be called from several threads."""

    def __init__(self, path: Path, folder: Path, keeping: Changing) -> None:
        """`keeping` gives the changes that keep the places shown, for those of a search that was stopped: no other run
        would find them again.

        Raises InputError for a file that is not there or is no text; what it says may still be no job."""
        self.path, self.folder, self._keeping = path, folder, keeping
        self.lock = threading.RLock()
        self.number = 1
        self.problem: InputError | None = None
        self.no_places: InputError | None = None
        self.read: Read | None = None
        self.found = FoundPlaces()
        self.shown: dict[str, bytes] = {}
        self._undo: list[str] = []
        self._redo: list[str] = []
        self._stamp = self._stamped()
        self.text = decoded(read_bytes(path), path.name)
        self._take_in(self.text)

    @property
    def can(self) -> dict[str, bool]:
        """Whether there is a state to go back to, and one to go forward to."""
        return {"undo": bool(self._undo), "redo": bool(self._redo)}

    def look(self) -> None:
        """Take in what another program has written since."""
        with self.lock:
            stamp = self._stamped()
            if stamp == self._stamp:
                return
            self._stamp = stamp
            if stamp == GONE:
                self.problem, self.number = InputError(self.path.name, *NOT_THERE), self.number + 1
                return
            try:
                text = decoded(read_bytes(self.path), self.path.name)
            except InputError as error:
                if str(error) != str(self.problem):
                    self.problem, self.number = error, self.number + 1
                return
            if text != self.text or self.problem is not None:
                if text != self.text:
                    self._keep(self._undo)
                    self._redo.clear()
                self.text, self.number = text, self.number + 1
                self._take_in(text)

    @contextlib.contextmanager
    def _alone(self) -> Iterator[None]:
        """The file for oneself, as it is now: a change of another desk comes before or after, and none is lost."""
        with self.lock, alone_in(Path(os.path.realpath(self.path)).parent):
            self.look()
            yield

    def change(self, make: Changing) -> None:
        """Change the text and save it.  Raises InputError, and nothing is changed, where that would be no job."""
        with self._alone():
            if self.read is None or self.problem is not None:
                if self.gone:
                    raise InputError(self.path.name, *NOT_THERE)
                hint = "undo, or put it right in a text editor"
                raise InputError(self.path.name, "cannot be read as it is, so nothing can be changed in it here", hint)
            text = edited(self.text, make(self.read))
            if text == self.text:
                return
            self._save(text, self._read(text))
            self._redo.clear()

    @property
    def gone(self) -> bool:
        """True where the file is not there any more."""
        return self._stamp == GONE

    def write_again(self) -> None:
        """Write the file as it was, where it is not there any more."""
        with self._alone():
            if self.gone:
                self._write(self.text)
                self.number += 1
                self._take_in(self.text)

    def undo(self) -> None:
        """Go back to the state before the last change, whoever made it."""
        self._step(self._undo, self._redo)

    def redo(self) -> None:
        """Go forward again."""
        self._step(self._redo, self._undo)

    def _step(self, there: list[str], back: list[str]) -> None:
        with self._alone():
            if not there:
                return
            text = there[-1]
            try:
                read = self._read(text)
            except InputError:
                read = None  # it was like that once, from another program
            self._write(text)
            there.pop()
            self._keep(back)
            self.text, self.number = text, self.number + 1
            self._set(read) if read else self._take_in(text)

    def _save(self, text: str, read: Read) -> None:
        self._write(text)
        self._keep(self._undo)
        self.text, self.number = text, self.number + 1
        self._set(read)

    def _write(self, text: str) -> None:
        write_result(self.path, text.encode(), force=True)
        self._stamp = self._stamped()

    def _keep(self, states: list[str]) -> None:
        states.append(self.text)
        del states[:-MOST_KEPT]

    def _take_in(self, text: str) -> None:
        """What the text says, or why it cannot be read; the last that could be stays to be looked at."""
        try:
            self._set(self._read(text))
        except InputError as error:
            self.problem = error

    def _set(self, read: Read) -> None:
        self.read, self.problem, self.no_places = read, None, None
        if read.plan is None:
            self.found.begin(read.job, self._found)

    def _read(self, text: str) -> Read:
        """Raises InputError where it is no job, or names a file outside the folder."""
        content = text.encode()
        raw = parse_toml(content, self.path.name)
        check_named(self.folder, raw)
        job = build_job(raw, self.path, content)
        check_named(self.folder, {"frame": [{"id": frame.id, "image": frame.image} for frame in job.frames]})
        return Read(self.path, text, raw, job, self.found.plan(job))

    def _found(self, job: tg.Job, plan: tg.Plan | InputError, stopped: bool) -> None:
        """Places were found, unless the job is another by now."""
        with self.lock:
            if self.read is None or found_key(self.read.job) != found_key(job):
                return
            if isinstance(plan, InputError):
                self.no_places = plan
            else:
                self.read = replace(self.read, plan=self.found.plan(self.read.job))
                if stopped:
                    self._keep_places()
            self.number += 1

    def _keep_places(self) -> None:
        try:
            self.change(self._keeping)
        except TemplatesError as error:  # it cannot be written now
            self.no_places = InputError("", str(error))

    def _stamped(self) -> tuple[int, int, int]:
        """What tells a file from what it was: when it was written, how long it is, and which it is."""
        try:
            told = self.path.stat()
        except OSError:
            return GONE
        return (told.st_mtime_ns, told.st_size, told.st_ino)


def hash_of(text: str) -> str:
    """A short name for a text: the same for the same text (SHA-256, FIPS 180-4, its first 64 bits)."""
    return hashlib.sha256(text.encode()).hexdigest()[:16]


def planned(opened: Opened) -> tg.Plan:
    """The plan of the job as its file is now.  Raises InputError."""
    return tg.plan_wall(tg.read_job(opened.path))
