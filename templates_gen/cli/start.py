"""The command `start`: a first job file, by questions, from a sample, or out of a template."""

from __future__ import annotations

from pathlib import Path

import click

from templates_gen.base.file_names import quoted
from templates_gen.base.files import holds
from templates_gen.base.output import write_results
from templates_gen.base.words import counted, some
from templates_gen.cli import arguments as takes
from templates_gen.cli.completing import sample_names
from templates_gen.cli.showing import wrapped


@click.command()
@click.argument("job", type=takes.FILE, metavar="[JOB.toml]", required=False)
@click.option(
    "--sample", "sample_name", metavar="[NAME]", is_flag=False, flag_value="", shell_complete=sample_names,
    help="Write this sample; without NAME, list the samples.",
)  # fmt: skip
@click.option("--from", "pdf", type=takes.FILE, metavar="FILE.pdf", help="Take the job out of a template's file.")
@click.option("-o", "--output", "output", type=takes.FILE, metavar="JOB.toml", help="The same as to name JOB.toml.")
@takes.force_option
def start(job: Path | None, sample_name: str | None, pdf: Path | None, output: Path | None, force: bool) -> None:
    """Make a job file: by answering questions, from a sample, or out of a
    template.

    \b
    Example:
      templates-gen start --sample fern-prints my-ferns.toml
    """
    if job is not None and output is not None:
        raise click.UsageError("JOB.toml is named twice: name it once, with -o or without")
    job = job or output
    if job == Path("-"):
        raise click.UsageError("JOB is the name of a file: a job is kept, and other files come to lie beside it")
    if sample_name is not None and pdf is not None:
        raise click.UsageError("give --sample or --from, not both")
    if sample_name is not None:
        _from_sample(sample_name, job, force)
    elif pdf is not None:
        _from_template(pdf, job, force)
    else:
        _ask(job, force)


def _from_sample(name: str, job: Path | None, force: bool) -> None:
    from templates_gen.cli.interview.taken import sample, sample_lines

    if name:
        _write(sample(name, job or Path(f"{name}.toml")), force)
        return
    lines = sample_lines()
    width = max(map(len, lines))
    for known, line in lines.items():
        click.echo(wrapped(line, f"{known:{width}}  ", " " * (width + 2)))


def _from_template(pdf: Path, job: Path | None, force: bool) -> None:
    from templates_gen.cli.interview.taken_back import from_template
    from templates_gen.drawing.pdf.attached import Attached

    files, left = from_template(Attached.of(pdf), job)
    _write(files, force)
    if left:
        click.echo(f"{pdf}: {counted(len(left), 'attachment')} left inside, no part of a job", err=True)


def _write(files: dict[Path, bytes], force: bool) -> None:
    """Write a job file and what lies beside it, and say what to do with it."""
    from templates_gen.cli.interview.taken import missing_pictures

    job, *beside = files
    there = [path for path in beside if holds(path, files[path])]
    write_results({path: content for path, content in files.items() if path not in there}, force)
    walls = [path for path in beside if path.suffix.lower() == ".toml"]
    pictures = [path for path in beside if path.parent != job.parent]
    for path in beside:
        what = "the wall it was moved to" if path in walls else "a picture" if path in pictures else "its spreadsheet"
        click.echo(f"{path}: {what}")
    if missing := missing_pictures(job):
        click.echo(wrapped(f"missing pictures: {some(missing)}; the proof shows blanks until they are there"))
    moved = "".join(f" --wall {quoted(path)}" for path in walls)
    click.echo(f"{job}: a job; next  templates-gen check {quoted(job)}{moved}")


def _ask(job: Path | None, force: bool) -> None:
    """Ask for a job, question by question, and write it at the end."""
    from templates_gen.cli.asking import asked
    from templates_gen.cli.interview.job_text import job_text

    with asked(job, force) as state:
        _write({Path(state.tables["file"]): job_text(state.tables).encode()}, force)
