"""The command `guide`."""

from __future__ import annotations

from pathlib import Path

import click

from templates_gen.base.output import STDOUT, ending_of, write_result
from templates_gen.base.words import counted
from templates_gen.cli import arguments as takes
from templates_gen.cli.given import about, job_on, printer_named
from templates_gen.cli.results import check_results, place_beside, show_made
from templates_gen.cli.showing import show_finding


@click.command()
@takes.job_argument
@takes.output_option(metavar="FILE.html", help="Where to write it; default: JOB-guide.html next to the job file.")
@takes.wall_option
@takes.printer_option(help="Without a template beside the job: its sheets are for this recorded printer.")
@takes.force_option
def guide(job: Path, output: Path | None, wall: Path | None, printer: str | None, force: bool) -> None:
    """Write a page to take along: the job on a phone at the wall.

    One file with the map of the sheets, the nails one after another with their
    distances, boxes that stay ticked, the proof and the cautions. It asks nobody
    for anything: send it to the phone, save it there and open it in its browser.

    \b
    Example:
      templates-gen guide samples/fern-prints.toml -o fern-guide.html
    """
    from templates_gen.cli.watching import planned
    from templates_gen.documents.take_along.page import make_guide, sheets_beside

    known = printer_named(printer)
    if output is not None and output != STDOUT:
        ending_of(output, ("html",))
    with about(job):
        read = job_on(job, wall)
        place = output or place_beside(job, wall, "guide", ".html")
        check_results(job, read, [place], force, [wall])
        plan, sheets, said = sheets_beside(job, planned(read), wall, known)
        if said is not None:
            show_finding(*said)
        page = make_guide(plan, sheets, known)
    write_result(place, page, force)
    show_made(place, f"{counted(len(plan.nails), 'nail')} of {counted(len(plan.frames), 'frame')}, for a phone")
