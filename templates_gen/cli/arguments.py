"""Arguments and options that several commands take."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Any, TypeVar

import click

from templates_gen.cli.completing import job_files, paper_names, printer_names

Decorated = TypeVar("Decorated", bound=Callable[..., Any])

FILE = click.Path(path_type=Path, readable=False)  # whether it can be read is told by what reads it

COVERS = click.Choice(["all", "marks", "linked", "nails"])

job_argument = click.argument("job", type=FILE, metavar="JOB", shell_complete=job_files)


def _as_pdf(context: click.Context, parameter: click.Parameter, path: Path | None) -> Path | None:
    """Where a PDF goes; an ending that says otherwise is refused before any work is done."""
    if path is not None and path.suffix:
        from templates_gen.base.output import ending_of

        ending_of(path, ("pdf",))
    return path


output_option = partial(
    click.option,
    "-o",
    "--output",
    type=FILE,
    metavar="FILE.pdf",
    help="Where to write it; default: next to the job file.",
)

pdf_option = partial(output_option, callback=_as_pdf)

paper_option = partial(
    click.option, "--paper", metavar="SIZE", shell_complete=paper_names,
    help="a4, letter, a3, tabloid, ...; default: the job's.",
)  # fmt: skip

printer_option = partial(click.option, "--printer", metavar="NAME", shell_complete=printer_names)

wall_option = click.option(
    "--wall", type=FILE, metavar="OTHER.toml", shell_complete=job_files, help="Hang the same group on that file's wall."
)


def file_only(_: click.Context, parameter: click.Parameter, value: Path | None) -> Path | None:
    """The place of a result that comes beside another one.  Raises UsageError for standard output."""
    if value == Path("-"):
        raise click.UsageError(f"{parameter.opts[0]} takes the name of a file: standard output is for the main result")
    return value


report_option = click.option(
    "--report", type=FILE, metavar="FILE.json", callback=file_only, help="Also write a report for other programs."
)

force_option = click.option("--force", is_flag=True, help="Overwrite a file that templates-gen did not write.")

font_option = click.option(
    "--font",
    "fonts",
    type=FILE,
    multiple=True,
    metavar="FILE.ttf",
    help="A font for scripts that the usual fonts lack.",
)


def format_option(*kinds: str) -> Callable[[Decorated], Decorated]:
    """The option of how to show what is found: as text, or as one of these."""
    choice = click.Choice(["text", *kinds])
    return click.option("--format", "shape", type=choice, default="text", help="Format of what is shown.")
