"""The desk: the jobs of one folder, those that are open, and what answers each request."""

from __future__ import annotations

import threading
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from templates_gen.base.errors import InputError, OutputError
from templates_gen.base.files import holds
from templates_gen.base.output import check_folder, write_results
from templates_gen.base.record import Record
from templates_gen.base.toml import field
from templates_gen.desk.another_wall import as_agreed, bare, on_another_wall
from templates_gen.desk.arrange import keep_places
from templates_gen.desk.choosing import Choosing
from templates_gen.desk.fields import typed
from templates_gen.desk.folder import free_name, job_names, job_place
from templates_gen.desk.opened import Opened
from templates_gen.job.editing import edited
from templates_gen.job.reading.building import build_job
from templates_gen.job.reading.files import parse_toml

Files = Mapping[Path, bytes]


class Doors(Record, frozen=True):
    """What other parts of the program give the desk: the job inside a template, the samples, the folder of printers.

    `from_template` takes a template's bytes, its name and where the job is to go; `sample` a sample's name and where.
    """

    from_template: Callable[[bytes, str, Path], Files]
    samples: Mapping[str, str]
    sample: Callable[[str, Path], Files]
    printers: Callable[[], Path]


class Desk:
    """One folder's jobs at the desk."""

    def __init__(self, folder: Path, doors: Doors) -> None:
        self.folder, self.doors = folder.resolve(), doors
        self._lock = threading.Lock()
        self._open: dict[str, tuple[Opened, Choosing]] = {}

    def opened(self, name: str) -> Opened:
        """The job file of this name.  Raises InputError for one that is not in the folder."""
        return self._at(name)[0]

    def choosing(self, name: str) -> Choosing:
        """The search for arrangements of this job."""
        return self._at(name)[1]

    def _at(self, name: str) -> tuple[Opened, Choosing]:
        place = job_place(self.folder, name)
        with self._lock:
            if name not in self._open:
                self._open[name] = Opened(place, self.folder, keep_places), Choosing()
            return self._open[name]

    def jobs(self) -> dict[str, Any]:
        """What there is to open."""
        names = job_names(self.folder)
        return {
            "folder": str(self.folder),
            "blocked": _blocked(self.folder),
            "jobs": [{"name": name, "title": _title(self.folder / name)} for name in names],
            "samples": [{"name": name, "about": about} for name, about in self.doors.samples.items()],
        }

    def new(self, data: Mapping[str, Any]) -> str:
        """A new job file from what is needed at least, such as "wall.width"; its name.

        Raises InputError for what cannot be read."""
        tables: dict[str, dict[str, Any]] = {"job": {}, "wall": {}, "frame": {"id": "A"}, "paper": {}}
        for place, text in data.items():
            table, _, name = place.partition(".")
            if (value := typed((table, name), text)) is not None and table in tables:
                tables[table][name] = value
        lines: list[str] = []
        for table, values in tables.items():
            heading = "[[frame]]" if table == "frame" else f"[{table}]"
            lines += ["", heading, *(line for name, value in values.items() for line in field(name, value))]
        return self._new("\n".join([*lines[1:], ""]), str(data.get("job.title") or "wall"))

    def another_wall(self, job: str, data: Mapping[str, Any]) -> str:
        """A job for the same frames on another wall; its name.  Raises InputError for what cannot be read."""
        read = self.opened(job).read
        if read is None:
            raise InputError(job, "cannot be read as it is", "put it right first")
        text = edited(bare(read.text), on_another_wall(read, data))
        return self._new(as_agreed(text, read), str(data.get("title") or "wall"))

    def _new(self, text: str, stem: str) -> str:
        name, content = free_name(self.folder, stem), text.encode()
        build_job(parse_toml(content, name), self.folder / name, content)
        write_results({self.folder / name: content})
        return name

    def from_sample(self, sample: str) -> str:
        """A sample to play with, in files of its own; the name of its job."""
        name = free_name(self.folder, sample)
        self._write(self.doors.sample(sample, self.folder / name))
        return name

    def from_template(self, content: bytes, name: str) -> str:
        """The job inside a template's file; its name.  Raises InputError for a file that holds none."""
        job = free_name(self.folder, Path(name).stem)
        self._write(self.doors.from_template(content, Path(name).name, self.folder / job))
        return job

    def _write(self, files: Files) -> None:
        """Raises OutputError where another file has a name already; the same file may be there."""
        new = {place: content for place, content in files.items() if not holds(place, content)}
        for place in new:
            if not place.resolve().is_relative_to(self.folder):
                raise InputError(place.name, "would be written outside the folder")
        write_results(new)

    def search(self) -> Mapping[str, Any]:
        """What a page without a job is kept told of."""
        return {"jobs": job_names(self.folder)}


def _blocked(folder: Path) -> str:
    """Why nothing can be written in the folder; "" where it can."""
    try:
        check_folder(folder)
    except OutputError as error:
        return str(error).partition("\n")[0]
    return ""


def _title(path: Path) -> str:
    """The title of a job, "" where it has none or cannot be read."""
    try:
        job = parse_toml(path.read_bytes(), path.name).get("job", {})
        return str(job.get("title", ""))
    except (InputError, OSError, AttributeError):
        return ""
