"""The command `options`."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from templates_gen.commands.common import (
    FILE,
    about,
    check_results,
    force_option,
    job_argument,
    place_beside,
    wrapped,
)

if TYPE_CHECKING:
    from templates_gen.choosing.options import Option
    from templates_gen.model import Job, Paper

MOST = 12
"""Options that one page has room for.  Our own design, no source."""


@click.command(short_help="Show different arrangements of the same frames on one page.")
@job_argument
@click.option("--count", type=click.IntRange(2, MOST), default=6, metavar="N", help="At most so many; 6 if not given.")
@click.option("--pick", type=click.IntRange(1, MOST), metavar="N", help="Keep this one as a job of placed frames.")
@click.option("-o", "--output", type=FILE, metavar="FILE", help="The page, JOB-options.pdf; the job, JOB-N.toml.")
@click.option("--paper", metavar="SIZE", help="a4, letter, a3, tabloid, ...; else as the job says.")
@force_option
def options(job: Path, count: int, pick: int | None, output: Path | None, paper: str | None, force: bool) -> None:
    """Find different arrangements of the same frames, and show them on one page.

    They are numbered from the best score down; the same job gives the same
    ones.  --pick writes the job file with that arrangement, frame by frame, to
    be adjusted by hand.

    \b
    Example:
      templates-gen options samples/paste-papers.toml --pick 2 -o paste-two.toml
    """
    import templates_gen as tg
    from templates_gen.choosing.options import option_lines
    from templates_gen.choosing.options import options as found_options
    from templates_gen.commands.watching import watching
    from templates_gen.papers.paper import own_paper

    with about(job):
        read = tg.read_job(job)
        target = output or place_beside(job, f"{job.stem}-{'options.pdf' if pick is None else f'{pick}.toml'}")
        check_results(job, read, [target], force)
        own = own_paper(read, paper)
        with watching() as watch:
            found = found_options(read, count, watch)
        if pick is not None:
            _keep(job, read, found, pick, target, force)
            return
        content = _page(found, read, own)
    from templates_gen.output import write_result

    write_result(target, content, force)
    for option in found:
        for at, line in enumerate(option_lines(option)):
            lead = f"{option.number:>2}  " if at == 0 else "    "
            click.echo(wrapped(line, lead, "    "))
    if watch.stopped:
        click.echo("stopped early: --pick knows only what a whole search finds", err=True)
    click.echo(f"{target}: {len(found)} options on one page of {own.name} paper")
    click.echo(f"to keep one:  templates-gen options {job} --pick N -o NEW-JOB.toml")


def _page(found: tuple[Option, ...], job: Job, paper: Paper) -> bytes:
    from templates_gen.choosing.page import options_page
    from templates_gen.making import job_lettering
    from templates_gen.pdf.writing import write_pdf

    lettering = job_lettering(job)
    return write_pdf(options_page(found, paper, lettering), lettering)


def _beside(job: Job) -> list[str]:
    """The files that a job names by where it lies itself."""
    named = [name for name, _ in job.sources[1:]] + [frame.image for frame in job.frames] + [job.paper.font]
    return [Path(name).name for name in named if name]


def _keep(path: Path, job: Job, found: tuple[Option, ...], pick: int, target: Path, force: bool) -> None:
    """Write the job file with the arrangement picked.  Raises InputError when there is none of that number."""
    from templates_gen.choosing.keeping import kept
    from templates_gen.errors import InputError
    from templates_gen.jobfile.reading import decoded
    from templates_gen.output import write_result

    if pick > len(found):
        raise InputError("--pick", f"found {pick}, expected 1 to {len(found)}, which is all there is")
    if target.resolve().parent != path.resolve().parent and (names := _beside(job)):
        problem = f"found {target}, expected a name in the job's folder"
        raise InputError("--output", problem, f"the job names files beside it: {', '.join(names[:3])}")
    option = found[pick - 1]
    comment = f"option {pick} of {path.name}: {option.kind}, scores {option.score:.0f} of 100"
    text = kept(decoded(job.sources[0][1], path.name), option.plan.job, comment)
    write_result(target, text.encode(), force)
    click.echo(f"{target}: {option.kind}, frame by frame under [group.place]; next  templates-gen check {target}")
