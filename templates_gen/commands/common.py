"""What the commands share: the job argument, where results may go, and how findings are shown."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click

from templates_gen.commands.completing import job_files, paper_names, printer_names
from templates_gen.commands.kept import kept_printers

if TYPE_CHECKING:
    from collections.abc import Sequence

    from templates_gen.errors import TemplatesError
    from templates_gen.exactness.checking import Checked
    from templates_gen.findings import Finding
    from templates_gen.lettering import Lettering
    from templates_gen.marks.items import Template
    from templates_gen.model import Job
    from templates_gen.printing.profile import Printer

Decorated = TypeVar("Decorated", bound=Callable[..., Any])

STOPPED = 1
"""Exit code of a job with a stopping finding."""

COLOURS = {"stop": "red", "warn": "yellow", "note": "cyan", "no": "yellow"}

INDENT = " " * 6
"""Before what goes on below a finding's level."""

WIDEST = 100
"""Letters in a line, however wide the terminal is.  Common practice, no source."""

FILE = click.Path(path_type=Path)

job_argument = click.argument("job", type=FILE, metavar="JOB", shell_complete=job_files)

output_option = partial(
    click.option, "-o", "--output", type=FILE, metavar="FILE.pdf", help="Where to write it; else beside the job file."
)

paper_option = partial(
    click.option, "--paper", metavar="SIZE", shell_complete=paper_names,
    help="a4, letter, a3, tabloid, ...; else as the job says.",
)  # fmt: skip

printer_option = partial(click.option, "--printer", metavar="NAME", shell_complete=printer_names)

wall_option = click.option(
    "--wall", type=FILE, metavar="OTHER.toml", shell_complete=job_files, help="Hang the same group on that file's wall."
)

report_option = click.option("--report", type=FILE, metavar="FILE.json", help="Write a report for a machine.")

force_option = click.option("--force", is_flag=True, help="Replace a file that is not ours.")

font_option = click.option(
    "--font", "fonts", type=FILE, multiple=True, metavar="FILE.ttf", help="A font for more scripts."
)


def format_option(*kinds: str) -> Callable[[Decorated], Decorated]:
    """The option of how to show what is found: as text, or as one of these."""
    choice = click.Choice(["text", *kinds])
    return click.option("--format", "shape", type=choice, default="text", help="How to show it.")


@contextmanager
def about(path: Path) -> Iterator[None]:
    """Whatever input is wrong inside is said with the name of the job file."""
    from templates_gen.errors import InputError

    try:
        yield
    except InputError as error:
        if error.where.startswith((path.name, str(path), "--")):
            raise
        raise error.inside(path.name) from None


def job_on(path: Path, wall: Path | None) -> Job:
    """The job of a file, on the wall of another where one is given, places that it leaves open found.

    Raises InputError.
    """
    from templates_gen.commands.watching import find_places

    if wall is None:
        import templates_gen as tg

        job = tg.read_job(path)
    else:
        from templates_gen.jobfile.elsewhere import read_job_on

        job = read_job_on(path, wall)
    find_places(job)
    return job


def place_beside(job: Path, wall: Path | None, what: str = "", ending: str = ".pdf") -> Path:
    """Where a result goes of which nothing is said: beside the job file, as JOB-WALL-WHAT.pdf.

    Raises OutputError for a job out of a pipe or device.
    """
    from templates_gen.errors import OutputError

    folder = Path(os.path.realpath(job.parent))  # that of /dev/stdin, say, whatever stands behind it
    if not job.is_file() or folder == Path("/dev") or folder.is_relative_to("/proc"):
        raise OutputError(f"{job}: is no file that a result can stand beside\n  say where it goes with -o FILE")
    return job.with_name("-".join(filter(None, [job.stem, wall.stem if wall else "", what])) + ending)


def check_results(
    path: Path, job: Job, results: Sequence[Path | None], force: bool, given: Sequence[Path | None] = ()
) -> None:
    """Raises OutputError, before any work is done, when a result would replace what it may not.

    That is something not ours without `force`, and with or without it the job's own files, its pictures, what else was
    `given` to the command, or another result.
    """
    from templates_gen.errors import OutputError
    from templates_gen.output import check_place

    own = [path.parent / name for name, _ in job.sources]
    own += [Path(frame.image) for frame in job.frames if frame.image]
    taken = {os.path.realpath(name): "the job's own file" for name in own}
    taken |= {os.path.realpath(file): "a file that is read" for file in filter(None, given)}
    for result in filter(None, results):
        real = os.path.realpath(result)
        if real in taken:
            raise OutputError(f"{result}: is {taken[real]}, expected another name for the result")
        taken[real] = "another result of this command"
        check_place(result, force)


def show_findings(findings: Sequence[Finding], err: bool = True) -> None:
    """Findings in plain words, wrapped to the terminal; in colour only on a terminal."""
    for finding in findings:
        show_finding(finding.level, finding.sourced, err)


def show_finding(level: str, text: str, err: bool = True) -> None:
    """One finding of this level, likewise."""
    words = wrapped(text, INDENT, INDENT)
    styled = click.style(level, fg=COLOURS[level], bold=True)
    click.echo(f"{styled}{words[len(level) :]}", err=err, color=no_colour())


def wrapped(text: str, first: str = "", later: str = "") -> str:
    """The text in lines for the terminal, with these before the first and the others."""
    import shutil

    from templates_gen.words import lines_of

    return "\n".join(lines_of(text, min(WIDEST, shutil.get_terminal_size().columns), first, later))


def no_colour() -> bool | None:
    """False where the user wants no colour and no bold letters, else None: click then asks the terminal."""
    return False if os.environ.get("NO_COLOR") else None


def show_checked(checked: Checked, unit: str, err: bool = False) -> None:
    """Everything there is to say about a job before paper is used."""
    from templates_gen.arranging.words import score_words
    from templates_gen.exactness.checking import TOO_MANY
    from templates_gen.exactness.words import check_words

    show_findings(checked.findings, err)
    scored = [score_words(checked.score)] if checked.score else []
    lines = check_words(checked.expected, unit) if checked.expected else ()
    for line in (*scored, *((TOO_MANY,) if checked.many else lines)):
        click.echo(wrapped(line, later=INDENT), err=err)
    levels = [finding.level for finding in checked.findings]
    counts = [f"{levels.count(level)} {level}" for level in ("stop", "warn", "note") if level in levels]
    click.echo(f"found: {', '.join(counts)}" if counts else "nothing found", err=err)


def show_error(error: TemplatesError) -> None:
    """What is wrong in one line on stderr, and what to do below it."""
    problem, *hints = str(error).split("\n")
    click.echo(f"error: {problem}", err=True)
    for hint in hints:
        click.echo(wrapped(hint.strip(), "  ", "  "), err=True)


def printer_named(name: str) -> Printer:
    """The profile of this printer, with what is odd about it shown.  Raises InputError."""
    from templates_gen.printing.profile import doubts
    from templates_gen.printing.store import load

    known = load(kept_printers(), name)
    for doubt in doubts(known):
        show_finding("warn", doubt)
    return known


def write_pages(
    place: Path, template: Template, lettering: Lettering, what: str, paper: str, force: bool, err: bool = False
) -> None:
    """Write pages, and say what is on how many of which paper.  Raises InputError or OutputError."""
    from templates_gen.output import write_result
    from templates_gen.pdf.writing import write_pdf
    from templates_gen.words import counted

    write_result(place, write_pdf(template, lettering), force)
    click.echo(f"{place}: {what} on {counted(len(template.pages), 'page')} of {paper} paper", err=err)


def write_report(path: Path | None, data: dict[str, Any], force: bool) -> None:
    """Write a report where one is asked for, and say so beside the results.  Raises OutputError."""
    from templates_gen.output import write_result

    if path is not None:
        write_result(path, (as_json(data) + "\n").encode(), force)
        click.echo(f"{path}: a report for a machine", err=True)


def as_json(data: dict[str, Any]) -> str:
    """Data as readable JSON, its keys in the order given."""
    import json

    return json.dumps(data, indent=1, ensure_ascii=False)
