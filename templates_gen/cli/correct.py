"""The command `correct`: after hanging."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from templates_gen.base.output import STDOUT, ending_of, write_result
from templates_gen.base.words import counted
from templates_gen.cli import arguments as takes
from templates_gen.cli.given import about, job_on, printer_named
from templates_gen.cli.next_time import show_moved
from templates_gen.cli.results import check_one, check_results, on_pages, place_beside, write_pages, write_report
from templates_gen.cli.showing import as_json, show_finding

if TYPE_CHECKING:
    from templates_gen.arranging.plan import Plan
    from templates_gen.documents.correcting.holes import Cured
    from templates_gen.printer.profile import Printer


@click.command()
@takes.job_argument
@click.argument("readings", type=takes.FILE, metavar="[READINGS.csv]", required=False)
@click.option("--form", is_flag=True, help="Write a blank form for the readings, as .pdf or .csv.")
@click.option("--template", "patches", is_flag=True, help="Write a small template for every nail that moves.")
@takes.output_option(metavar="FILE", help="Where to write the form or templates; default: next to the job file.")
@takes.wall_option
@takes.paper_option()
@takes.font_option
@takes.printer_option(help="Correct the templates for this recorded printer.")
@takes.format_option("csv", "json")
@takes.report_option
@takes.force_option
def correct(
    job: Path, readings: Path | None, form: bool, patches: bool, output: Path | None, wall: Path | None,
    paper: str | None, fonts: tuple[Path, ...], printer: str | None, shape: str, report: Path | None, force: bool,
) -> None:  # fmt: skip
    """Say what to do about frames that hang out of place, from what was
    measured after hanging: the wire's length, which nails move, and how far.

    Level the frame, then measure.

    \b
    Example:
      templates-gen correct samples/fern-prints.toml samples/fern-prints-hung.csv
    """
    import templates_gen as tg
    from templates_gen.base.record import replace
    from templates_gen.cli.watching import planned
    from templates_gen.documents.correcting.table import as_data
    from templates_gen.job.paper_sizes import own_paper

    _check_use(form, patches, readings, output, report, printer)
    known = printer_named(printer)
    with about(job):
        read = job_on(job, wall)
        place = output or place_beside(job, wall, "readings" if form else "patches")
        read = replace(read, paper=own_paper(read, paper))
        written = [place if form or patches else None, report]
        check_results(job, read, written, force, [readings, wall])
        plan = planned(read)
        show_moved(job, wall, plan)
    if patches:
        check_one(place, "the table of what to move is another")
    if readings is None:
        _write_form(plan, place, fonts, force)
        return
    done = tg.correct(plan, readings)
    papers, said = _patches(plan, done, fonts, known) if patches else (b"", "")
    write_report(report, as_data(plan, done), force, {place: papers} if papers else {})
    _show(plan, done, shape)
    if patches:  # beside the table, which is the result
        click.echo(f"{place}: {said}", err=True)


def _check_use(
    form: bool, patches: bool, readings: Path | None, output: Path | None, report: Path | None, printer: str | None
) -> None:
    if form == (readings is not None):
        raise click.UsageError("give READINGS.csv, or --form for a blank form")
    if (form and (patches or report)) or (output is not None and not (form or patches)):
        raise click.UsageError("-o goes with --form or --template; --template and --report with READINGS.csv")
    if printer is not None and not patches:
        raise click.UsageError("--printer goes with --template")


def _show(plan: Plan, done: tuple[Cured, ...], shape: str) -> None:
    from templates_gen.documents.correcting.table import as_csv, as_data, as_text

    if shape == "json":
        click.echo(as_json(as_data(plan, done)))
    else:
        click.echo(as_csv(plan, done) if shape == "csv" else as_text(plan, done), nl=shape == "text")


def _write_form(plan: Plan, place: Path, fonts: tuple[Path, ...], force: bool) -> None:
    """The blank form, as a spreadsheet where the file's ending says so."""
    from templates_gen.documents.correcting.form import form_csv, form_pages
    from templates_gen.drawing.lettering import job_lettering

    frames = counted(len(plan.frames), "frame")
    if place != STDOUT and ending_of(place, ("pdf", "csv")) == "csv":
        write_result(place, form_csv(plan).encode(), force)
        click.echo(f"{place}: {frames} to fill in")
        return
    lettering = job_lettering(plan.job, fonts)
    write_pages(place, form_pages(plan, lettering), lettering, frames, plan.job.paper.name, force)


def _patches(plan: Plan, done: tuple[Cured, ...], fonts: tuple[Path, ...], known: Printer | None) -> tuple[bytes, str]:
    """The papers for the nails that move, none where no nail does, and what is on them."""
    from templates_gen.documents.correcting.patch_pages import patch_pages
    from templates_gen.drawing.lettering import job_lettering
    from templates_gen.drawing.pdf.writing import write_pdf
    from templates_gen.printer.correction import paper_doubt

    if known is not None and (doubt := paper_doubt(known, plan.job.paper)):
        show_finding("warn", doubt)
    moves = [move for cured in done for move in cured.correction.moves]
    if not moves:
        return b"", "not written: no nail moves"
    lettering = job_lettering(plan.job, fonts)
    template = patch_pages(plan, done, lettering, known)
    nails = counted(len({move.old for move in moves}), "nail")
    return write_pdf(template, lettering), on_pages(template, nails, plan.job.paper.name)
