"""Where the results of a command go, and that they are written there."""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

import click

from templates_gen.base.errors import OutputError
from templates_gen.base.output import STDOUT, check_place, write_results
from templates_gen.base.words import counted
from templates_gen.cli.showing import as_json

if TYPE_CHECKING:
    from templates_gen.drawing.items import Template
    from templates_gen.drawing.lettering import Lettering
    from templates_gen.job.model import Job


def place_beside(job: Path, wall: Path | None, what: str = "", ending: str = ".pdf") -> Path:
    """Where a result goes of which nothing is said: beside the job file, as JOB-WALL-WHAT.pdf.

    Raises OutputError for a job out of a pipe or device.
    """
    folder = Path(os.path.realpath(job.parent))  # that of /dev/stdin, say, whatever stands behind it
    if not job.is_file() or folder == Path("/dev") or folder.is_relative_to("/proc"):
        raise OutputError(f"{job}: is not a file, so a result cannot go next to it\n  say where to write it: -o FILE")
    return job.with_name("-".join(filter(None, [job.stem, wall.stem if wall else "", what])) + ending)


def check_results(
    path: Path, job: Job | None, results: Sequence[Path | None], force: bool, given: Sequence[Path | None] = ()
) -> None:
    """Raises OutputError, before any work is done, when a result would replace what it may not.

    That is something not ours without `force`, and with or without it the job's own files, its pictures, what else was
    `given` to the command, or another result.
    """
    own = [path]
    if job is not None:
        own += [path.parent / name for name in job.named]
        own += [Path(name) for name in (*(frame.image for frame in job.frames), job.paper.font) if name]
    taken = {os.path.realpath(name): "the job's own file" for name in own}
    taken |= {os.path.realpath(file): "a file that this command reads" for file in filter(None, given)}
    for result in filter(None, results):
        real = os.path.realpath(result)
        if real in taken:
            raise OutputError(f"{result}: is {taken[real]}, expected another name for the result")
        taken[real] = "another result of this command"
        check_place(result, force)


def write_pages(
    place: Path, template: Template, lettering: Lettering, what: str, paper: str, force: bool,
    also: Mapping[Path, bytes] = MappingProxyType({}),
) -> None:  # fmt: skip
    """Write pages and what comes `also`, all or nothing, and say what is on them.  Raises InputError or OutputError."""
    from templates_gen.drawing.pdf.writing import write_pdf

    write_results({place: write_pdf(template, lettering), **also}, force)
    show_made(place, on_pages(template, what, paper))


def on_pages(template: Template, what: str, paper: str) -> str:
    """What is on how many pages of which paper."""
    return f"{what} on {counted(len(template.pages), 'page')} of {paper} paper"


def show_made(place: Path, what: str) -> None:
    """Say what is in a result; beside it where the result itself goes to standard output."""
    click.echo(f"standard output: {what}" if place == STDOUT else f"{place}: {what}", err=place == STDOUT)


def check_one(place: Path, also: str) -> None:
    """Raises OutputError where a result goes to standard output and this comes with it."""
    if place == STDOUT:
        raise OutputError(f"-o -: standard output takes one result, and {also}\n  give the name of a file: -o FILE")


def write_report(
    path: Path | None, data: dict[str, Any], force: bool, also: Mapping[Path, bytes] = MappingProxyType({})
) -> None:
    """Write what comes `also` and a report where one is asked for, all or nothing, and say so of the report.

    Raises OutputError.
    """
    report = {} if path is None else {path: (as_json(data) + "\n").encode()}
    write_results({**also, **report}, force)
    if path is not None:
        click.echo(f"{path}: the report", err=True)
