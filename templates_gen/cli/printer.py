"""The commands `printer page`, `record`, `show` and `list`: measuring a printer once, so that paper measures true."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import click

from templates_gen.base.output import check_place
from templates_gen.cli import arguments as takes
from templates_gen.cli.completing import printer_names
from templates_gen.cli.given import kept_printers, show_doubts
from templates_gen.cli.results import write_pages
from templates_gen.cli.showing import as_json, show_finding

if TYPE_CHECKING:
    from templates_gen.printer.profile import Printer


@click.group()
def printer() -> None:
    """Measure a printer once, and print templates that measure true.

    \b
    Example:
      templates-gen printer list
    """


@printer.command(short_help="Write the scale page, to print and measure.")
@takes.pdf_option(default="scale-page.pdf", help="Where to write it; default: scale-page.pdf.")
@takes.paper_option(default="a4", help="a4 (default), letter, a3, tabloid, ...")
@takes.force_option
def page(output: Path, paper: str, force: bool) -> None:
    """Write the scale page: what to print and measure, and how to record it.

    \b
    Example:
      templates-gen printer page --paper letter -o scale-page.pdf
    """
    from templates_gen.documents.scale_page import scale_of, scale_page
    from templates_gen.drawing.lettering import Lettering

    check_place(output, force)
    lettering, scale = Lettering(), scale_of(paper)
    write_pages(output, scale_page(scale, lettering), lettering, "the scale page", scale.paper, force)


@printer.command()
@click.argument("name", metavar="NAME")
@takes.paper_option(required=True, help="The paper the scale page was printed on.")
@click.option("--across", metavar="L", required=True, help="The level ruler as measured, corner 1 to 2.")
@click.option("--along", metavar="L", required=True, help="The upright ruler as measured, corner 1 to 3.")
@click.option("--diagonals", metavar="D1 D2", nargs=2, help="Both diagonals as measured, 1 to 4 and 3 to 2.")
@click.option("--reading-error", metavar="L", help="Usual error of one reading; default: 0.2 mm.")
def record(
    name: str, paper: str, across: str, along: str, diagonals: tuple[str, str] | None, reading_error: str | None
) -> None:
    """Keep what was measured on the scale page.  A bare number is in mm.

    \b
    Example:
      templates-gen printer record study --paper a4 --across 179.4 --along 260.4
    """
    import datetime

    from templates_gen.documents.recorded import recorded
    from templates_gen.printer.profile import Printer
    from templates_gen.printer.store import every, save

    folder, (rising, falling) = kept_printers(), diagonals or ("", "")
    measures = {"across": across, "along": along, "rising": rising, "falling": falling, "reading": reading_error or ""}
    called = {
        "across": "--across", "along": "--along", "rising": "--diagonals", "falling": "--diagonals",
        "reading": "--reading-error",
    }  # fmt: skip
    known = recorded(name, paper, measures, called, datetime.date.today().isoformat())
    same = [one for one in every(folder) if isinstance(one, Printer) and one.name.casefold() == known.name.casefold()]
    save(folder, known)
    _show(known)
    for earlier in same:
        click.echo(f"in place of  {_in_a_line(earlier)}")


@printer.command()
@click.argument("name", metavar="NAME", shell_complete=printer_names)
@takes.format_option("json")
def show(name: str, shape: str) -> None:
    """Show what is known of a printer, and how surely.

    \b
    Example:
      templates-gen printer show study --format json
    """
    from templates_gen.printer.profile import printer_data
    from templates_gen.printer.store import load

    known = load(kept_printers(), name)
    if shape == "json":
        click.echo(as_json({"format": 1, "printer": printer_data(known)}))
    else:
        _show(known)


@printer.command(name="list")
@takes.format_option("json")
def list_printers(shape: str) -> None:
    """Show every printer that was recorded.

    \b
    Example:
      templates-gen printer list --format json
    """
    from templates_gen.printer.profile import Printer, printer_data
    from templates_gen.printer.store import every

    found = list(every(kept_printers()))
    printers = [one for one in found if isinstance(one, Printer)]
    for error in (one for one in found if not isinstance(one, Printer)):
        show_finding("warn", str(error))
    if shape == "json":
        click.echo(as_json({"format": 1, "printers": [printer_data(known) for known in printers]}))
        return
    for known in printers:
        click.echo(_in_a_line(known))
    if not printers:
        click.echo("no printer has been recorded yet")


def _in_a_line(known: Printer) -> str:
    return f"{known.name}: {known.paper}, {known.across:.2%} across, {known.along:.2%} along, {known.date}"


def _show(known: Printer) -> None:
    """Show a profile in plain words, and what is odd about it."""
    click.echo("\n".join(_shown(known)))
    show_doubts(known)


def _shown(known: Printer) -> Iterator[str]:
    """A profile in plain words; the sigma of a scale is shown doubled, as what 95 of 100 such readings keep within."""
    from templates_gen.printer.profile import lean_words, sureness

    readings, (across, along, skew) = known.readings, sureness(known.readings)
    yield f"{known.name}: {known.paper} paper, measured {known.date}"
    for way, found, asked, scale, sigma in (
        ("across", readings.across, readings.asked_across, known.across, across),
        ("along ", readings.along, readings.asked_along, known.along, along),
    ):
        yield f"  {way}     {found:.1f} mm for {asked:.1f} mm: {scale:.2%}, give or take {2 * sigma:.2%}"
    if readings.diagonals is None:
        yield "  diagonals  not measured: the printer is assumed to print square"
    else:
        one, two = readings.diagonals
        yield f"  diagonals  {one:.1f} mm and {two:.1f} mm: leans {lean_words(known)}, give or take {2 * skew:.2f}°"
