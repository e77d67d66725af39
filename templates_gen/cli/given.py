"""What a command is given to work with: a job, perhaps on another wall, and a printer that was measured."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

import click

from templates_gen.base.errors import InputError
from templates_gen.cli.showing import show_finding

if TYPE_CHECKING:
    from templates_gen.job.model import Job
    from templates_gen.printer.profile import Printer


@contextmanager
def about(path: Path) -> Iterator[None]:
    """Whatever input is wrong inside is said with the name of the job file."""
    try:
        yield
    except InputError as error:
        if error.where.startswith((path.name, str(path), "--")):
            raise
        raise error.inside(path.name) from None


def job_on(path: Path, wall: Path | None) -> Job:
    """The job of a file, on the wall of another where one is given.  Raises InputError."""
    if wall is None:
        import templates_gen as tg

        return tg.read_job(path)
    from templates_gen.job.reading.other_wall import read_job_on

    there = read_job_on(path, wall)
    return _kept(path, there) if there.group.arrangement == "salon" else there


def _kept(path: Path, there: Job) -> Job:
    """The job on another wall with its frames as they were found for its own wall: a client knows them so."""
    import templates_gen as tg
    from templates_gen.arranging.plan import as_found
    from templates_gen.cli.watching import planned

    try:
        return as_found(planned(tg.read_job(path)), there)
    except InputError:  # on its own wall they find no room
        return there


def kept_printers() -> Path:
    """The folder that printers' profiles are kept in.  Raises OutputError when the user has no home folder."""
    from templates_gen.printer.store import profile_folder

    return profile_folder(Path(click.get_app_dir("templates-gen")))


def printer_named(name: str | None) -> Printer | None:
    """The profile of this printer, with what is odd about it shown; None without a name.  Raises InputError."""
    if name is None:
        return None
    from templates_gen.printer.store import load

    known = load(kept_printers(), name)
    show_doubts(known)
    return known


def show_doubts(known: Printer) -> None:
    """What is odd about a printer's profile."""
    from templates_gen.printer.profile import doubts

    for doubt in doubts(known):
        show_finding("warn", doubt)
