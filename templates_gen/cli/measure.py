"""The command `measure`."""

from __future__ import annotations

import os
from pathlib import Path

import click

from templates_gen.base.words import counted
from templates_gen.cli import arguments as takes
from templates_gen.cli.given import about
from templates_gen.cli.results import check_one, check_results, place_beside, write_pages


@click.command()
@takes.job_argument
@takes.pdf_option()
@click.option(
    "--csv", type=takes.FILE, metavar="FILE.csv", callback=takes.file_only,
    help="Also write the blanks as a spreadsheet.",
)  # fmt: skip
@takes.paper_option()
@takes.font_option
@takes.force_option
def measure(
    job: Path, output: Path | None, csv: Path | None, paper: str | None, fonts: tuple[Path, ...], force: bool
) -> None:
    """Write a measuring sheet: every frame from the back, and blanks to fill in.

    Fill in the sheet or the spreadsheet. The job reads the spreadsheet by
    measured = "FILE.csv" under [job].

    \b
    Example:
      templates-gen measure samples/fern-prints.toml -o fern-measuring.pdf
    """
    import templates_gen as tg
    from templates_gen.base.toml import toml
    from templates_gen.documents.measuring.fields import to_fill_in
    from templates_gen.documents.measuring.sheet import measuring_sheet
    from templates_gen.drawing.lettering import job_lettering
    from templates_gen.job.paper_sizes import own_paper

    with about(job):
        read = tg.read_job(job)
        place = output or place_beside(job, None, "measuring")
        check_results(job, read, [place, csv], force)
        if csv is not None:
            check_one(place, "the spreadsheet is another")
        lettering, own = job_lettering(read, fonts), own_paper(read, paper)
        sheet = measuring_sheet(read, own, lettering)
        also = {} if csv is None else {csv: to_fill_in(read).encode("utf-8-sig")}
        write_pages(place, sheet, lettering, counted(len(read.frames), "frame"), own.name, force, also)
    if csv is not None:
        beside = toml(_from(csv, job.parent))
        click.echo(f"{csv}: fill it in, and put  measured = {beside}  under [job]")


def _from(path: Path, folder: Path) -> str:
    """A path as a job file in that folder names it, with the slashes that every system reads."""
    try:
        return Path(os.path.relpath(path, folder)).as_posix()
    except ValueError:  # on another drive
        return path.absolute().as_posix()
