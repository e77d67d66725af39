"""The command `correct`: after hanging."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from templates_gen.commands.common import (
    FILE,
    about,
    as_json,
    check_results,
    force_option,
    job_argument,
    job_on,
    paper_beside,
    printer_named,
    printer_option,
    report_option,
    show_finding,
    wall_option,
    write_json,
)

if TYPE_CHECKING:
    from collections.abc import Callable

    from templates_gen.correcting.holes import Cured
    from templates_gen.lettering import Lettering
    from templates_gen.marks.items import Template
    from templates_gen.planning import Plan
    from templates_gen.printing.profile import Printer


@click.command(short_help="Say which nails move, from what was measured on the wall.")
@job_argument
@click.argument("readings", type=FILE, metavar="[READINGS.csv]", required=False)
@click.option("--form", is_flag=True, help="Write a blank form for the readings: FILE.pdf, or FILE.csv to fill in.")
@click.option("--template", "patches", is_flag=True, help="Write a small paper for every nail that moves.")
@click.option("-o", "--output", type=FILE, metavar="FILE", help="Where the form or the papers go.")
@wall_option
@printer_option(help="Draw the papers so that this recorded printer prints them true.")
@click.option("--format", "shape", type=click.Choice(["text", "csv", "json"]), default="text", help="How to show it.")
@report_option
@force_option
def correct(
    job: Path, readings: Path | None, form: bool, patches: bool, output: Path | None, wall: Path | None,
    printer: str | None, shape: str, report: Path | None, force: bool,
) -> None:  # fmt: skip
    """Say which nails move, where to and how far, from what was measured after
    hanging.

    \b
    Example:
      templates-gen correct samples/fern-prints.toml samples/fern-prints-hung.csv
    """
    import templates_gen as tg

    if form == (readings is not None):
        raise click.UsageError("give READINGS.csv, or else --form for a blank one")
    if (form and (patches or report)) or (output is not None and not (form or patches)):
        raise click.UsageError("-o goes with --form or --template; --template and --report with READINGS.csv")
    if printer is not None and not patches:
        raise click.UsageError("--printer goes with --template")
    known = printer_named(printer) if printer is not None else None
    with about(job):
        read = job_on(job, wall)
        place = output or paper_beside(job, wall, "readings" if form else "patches")
        written = [place if form or patches else None, report]
        check_results(job, read, written, force, [readings, wall])
        plan = tg.plan_wall(read)
    if readings is None:
        _write_form(plan, place, force)
        return
    done = tg.correct(plan, readings)
    _show(plan, done, shape, report, force)
    if patches:
        _write_patches(plan, done, place, known, force)


def _show(plan: Plan, done: tuple[Cured, ...], shape: str, report: Path | None, force: bool) -> None:
    from templates_gen.correcting.table import as_csv, as_data, as_text

    if report is not None:
        write_json(report, as_data(plan, done), force)
    if shape == "json":
        click.echo(as_json(as_data(plan, done)))
    else:
        click.echo(as_csv(plan, done) if shape == "csv" else as_text(plan, done), nl=shape == "text")


def _write_form(plan: Plan, place: Path, force: bool) -> None:
    """The blank form, as a spreadsheet where the file's ending says so."""
    from templates_gen.correcting.form import form_csv, form_pages

    if place.suffix.lower() == ".csv":
        from templates_gen.output import write_result

        write_result(place, form_csv(plan).encode(), force)
        click.echo(f"{place}: a row for every frame, to fill in")
        return
    _write_pages(plan, place, force, lambda lettering: form_pages(plan, lettering), err=False)


def _write_patches(plan: Plan, done: tuple[Cured, ...], place: Path, known: Printer | None, force: bool) -> None:
    from templates_gen.correcting.patches import patch_pages
    from templates_gen.printing.correction import paper_doubt

    if known is not None and (doubt := paper_doubt(known, plan.job.paper)):
        show_finding("warn", doubt)
    if not any(cured.correction.moves for cured in done):
        click.echo(f"{place}: not written, for no nail moves", err=True)
        return
    _write_pages(plan, place, force, lambda lettering: patch_pages(plan, done, lettering, known))


def _write_pages(plan: Plan, place: Path, force: bool, draw: Callable[[Lettering], Template], err: bool = True) -> None:
    """Draw the pages and write them; what was written goes to stderr (`err`) where a table is the result."""
    from templates_gen.lettering import Lettering
    from templates_gen.output import write_result
    from templates_gen.pdf.writing import write_pdf
    from templates_gen.words import counted

    font = plan.job.paper.font
    lettering = Lettering((Path(font),) if font else ())
    template = draw(lettering)
    write_result(place, write_pdf(template, lettering), force)
    click.echo(f"{place}: {counted(len(template.pages), 'page')}", err=err)
