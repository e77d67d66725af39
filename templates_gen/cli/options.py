"""The command `options`."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from templates_gen.base.errors import InputError
from templates_gen.base.file_names import quoted
from templates_gen.base.output import STDOUT, write_result
from templates_gen.base.words import counted
from templates_gen.cli import arguments as takes
from templates_gen.cli.given import about, job_on
from templates_gen.cli.results import check_one, check_results, place_beside, show_made
from templates_gen.cli.showing import wrapped

if TYPE_CHECKING:
    from templates_gen.documents.options.choices import Option
    from templates_gen.job.model import Job

MOST = 12
"""Options that one page has room for.  Our own design, no source."""


@click.command()
@takes.job_argument
@click.option("--count", type=click.IntRange(2, MOST), default=6, metavar="N", help="How many at most; default: 6.")
@click.option("--pick", type=int, metavar="N", help="Write option N as a job file.")
@takes.output_option(metavar="FILE", help="Default: JOB-options.pdf, or JOB-N.toml with --pick.")
@takes.wall_option
@takes.paper_option()
@takes.font_option
@takes.force_option
def options(
    job: Path, count: int, pick: int | None, output: Path | None, wall: Path | None, paper: str | None,
    fonts: tuple[Path, ...], force: bool,
) -> None:  # fmt: skip
    """Find different arrangements of the same frames, and show them on one page.

    The page is for whoever chooses.  The first is the arrangement as it is, then
    come others, the best score first; the same job gives the same ones.  Ctrl-C
    ends the search with what it has.  Wishes, such as frames that are to be
    neighbours, stand in the job file (help job group).  --pick writes the job
    file with that arrangement, frame by frame, to be adjusted by hand.

    \b
    Example:
      templates-gen options samples/paste-papers.toml --pick 2 -o paste-two.toml
    """
    from templates_gen.cli.watching import watching
    from templates_gen.documents.options.choices import options as found_options
    from templates_gen.documents.options.page import options_page
    from templates_gen.drawing.lettering import job_lettering
    from templates_gen.drawing.pdf.writing import write_pdf
    from templates_gen.job.paper_sizes import own_paper

    with about(job):
        read = job_on(job, wall)
        target = output or place_beside(job, wall, *(("options",) if pick is None else (f"{pick}", ".toml")))
        check_results(job, read, [target], force, [wall])
        if pick is None:
            check_one(target, "the table of options is another")
        own = own_paper(read, paper)
        with watching() as watch:
            found = found_options(read, 1 if pick == 1 else count, watch)
        if pick is not None:
            _keep(job, wall, found, pick, target, force)
            return
        lettering = job_lettering(read, fonts)
        write_result(target, write_pdf(options_page(found, own, lettering), lettering), force)
    for option in found:
        _show(option, err=False)
    if watch.stopped:
        click.echo("stopped early: --pick searches to the end, and may number its options otherwise", err=True)
    click.echo(f"{target}: {counted(len(found), 'option')} on 1 page of {own.name} paper")
    click.echo(f"to keep one:  templates-gen options {quoted(job)}{_on(wall)} --pick N -o NEW-JOB.toml")


def _show(option: Option, err: bool) -> None:
    from templates_gen.documents.options.choices import option_lines

    for at, line in enumerate(option_lines(option)):
        click.echo(wrapped(line, f"{option.number:>2}  " if at == 0 else "    ", "    "), err=err)


def _beside(job: Job) -> list[str]:
    """The files that a job names by where it lies itself."""
    named = [name for name, _ in job.sources[1:]] + [frame.image for frame in job.frames] + [job.paper.font]
    return [Path(name).name for name in named if name]


def _on(wall: Path | None) -> str:
    """What a command to be typed says of the wall."""
    return f" --wall {quoted(wall)}" if wall else ""


def _keep(path: Path, wall: Path | None, found: tuple[Option, ...], pick: int, target: Path, force: bool) -> None:
    """Write the job file with the arrangement picked; found for another wall, the group stays bound to its own as it
    was, for that wall's file says what it goes by there.  Raises InputError when there is none of that number."""
    import templates_gen as tg
    from templates_gen.base.record import replace
    from templates_gen.documents.options.keeping import kept
    from templates_gen.job.reading.files import decoded

    job = tg.read_job(path)
    if not 1 <= pick <= len(found):
        there = f"expected 1 to {len(found)}: the page shows {counted(len(found), 'option')}"
        raise InputError("--pick", f"found {pick}, {there}")
    if target.resolve().parent != path.resolve().parent and (names := _beside(job)):
        problem = f"found {target}, expected a name in the job's folder"
        raise InputError("--output", problem, f"the job names files in that folder: {', '.join(names[:3])}")
    option = found[pick - 1]
    comment = f"option {pick} of {path.name}: {option.kind}, scores {option.score:.0f} of 100"
    own = job.group
    group = replace(option.plan.job.group, centre_on=own.centre_on, anchor=own.anchor, height=own.height)
    text = kept(decoded(job.sources[0][1], path.name), replace(job, group=group), comment)
    write_result(target, text.encode(), force)
    _show(
        option, err=target == STDOUT
    )  # a job that changed since a page was printed may have another one under this number
    check = f"templates-gen check {quoted(target)}{_on(wall)}"
    show_made(target, f"{option.kind}, frame by frame under [group.place]; next  {check}")
