"""The command `labels`."""

from __future__ import annotations

from pathlib import Path

import click

from templates_gen.base.words import counted
from templates_gen.cli import arguments as takes
from templates_gen.cli.given import about, job_on
from templates_gen.cli.results import check_results, place_beside, write_pages

_Pair = tuple[str, str] | None


@click.command()
@takes.job_argument
@takes.pdf_option()
@takes.wall_option
@click.option("--label", "size", nargs=2, metavar="WIDTH HEIGHT", help="Size of a label; default: about 90 x 50 mm.")
@click.option("--pitch", nargs=2, metavar="ACROSS DOWN", help="From a label's edge to the same edge of the next.")
@click.option("--first", nargs=2, metavar="LEFT TOP", help="Where the first label begins, from the sheet's edges.")
@click.option(
    "--skip", type=click.IntRange(0), default=0, metavar="N", help="How many labels of the first sheet are used."
)
@takes.paper_option()
@takes.font_option
@takes.force_option
def labels(
    job: Path, output: Path | None, wall: Path | None, size: _Pair, pitch: _Pair, first: _Pair, skip: int,
    paper: str | None, fonts: tuple[Path, ...], force: bool,
) -> None:  # fmt: skip
    """Write a label for the back of every frame: which it is, which way is up,
    its drop, its height, and what hangs beside it.

    On plain paper to cut; with --pitch or --first on a sheet of labels.  A bare
    number is in the job's unit.

    \b
    Example:
      templates-gen labels samples/fern-prints.toml -o fern-labels.pdf
    """
    from templates_gen.cli.watching import planned
    from templates_gen.documents.labels.label_sheet import label_sheet
    from templates_gen.documents.labels.labels import labels as draw_labels
    from templates_gen.drawing.lettering import job_lettering
    from templates_gen.job.paper_sizes import own_paper
    from templates_gen.job.reading.typed import read_lengths

    with about(job):
        read = job_on(job, wall)
        place = output or place_beside(job, wall, "labels")
        check_results(job, read, [place], force, [wall])
        asked = (("--label", size), ("--pitch", pitch), ("--first", first))
        lengths = (read_lengths(pair, read.unit, name) if pair else None for name, pair in asked)
        own = own_paper(read, paper)
        sheet, lettering = label_sheet(own, read.unit, *lengths), job_lettering(read, fonts)
        drawn = draw_labels(planned(read), sheet, lettering, skip)
        write_pages(place, drawn, lettering, counted(len(read.frames), "label"), own.name, force)
