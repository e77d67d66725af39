"""The commands `photo card`, `taped`, `wall` and `hung`: what a photograph tells."""

from __future__ import annotations

from pathlib import Path

import click

from templates_gen.cli.arguments import (
    COVERS,
    FILE,
    font_option,
    force_option,
    format_option,
    job_argument,
    output_option,
    paper_option,
    printer_option,
    wall_option,
)
from templates_gen.cli.given import about, job_on, printer_named
from templates_gen.cli.results import check_results, write_pages
from templates_gen.cli.showing import as_json, show_finding


@click.group()
def photo() -> None:
    """Let a photograph show and measure what is on the wall.

    \b
    Example:
      templates-gen photo card -o photo-card.pdf
    """


@photo.command(short_help="Write the photo card, to tape to the wall.")
@output_option(default="photo-card.pdf", help="Where to write it; default: photo-card.pdf.")
@paper_option(default="a4", help="a4 (default), letter, a3, tabloid, ...")
@force_option
def card(output: Path, paper: str, force: bool) -> None:
    """Write two photo cards: taped to the wall, one or both give a photograph
    its scale and its level.

    \b
    Example:
      templates-gen photo card --paper letter -o photo-card.pdf
    """
    from templates_gen.base.output import check_place
    from templates_gen.documents.photo_card import card_pages, cards_of
    from templates_gen.drawing.lettering import Lettering

    check_place(output, force)
    lettering, cards = Lettering(), cards_of(paper)
    write_pages(output, card_pages(cards, lettering), lettering, "two photo cards", cards[0].paper, force)


@photo.command(short_help="Read how taped sheets lie, before nailing.")
@job_argument
@click.argument("photos", type=FILE, metavar="PHOTO...", nargs=-1, required=True)
@output_option(metavar="FILE.jpg", help="Also write the first photograph with the joins marked, as .jpg or .png.")
@wall_option
@paper_option(help="The paper the template was printed on; default: the job's.")
@click.option("--cover", type=COVERS, help="What was on paper, as the template was made.")
@click.option("--trim", type=click.Choice(["cut", "none"]), help="Whether the sheets were cut.")
@font_option
@printer_option(help="The recorded printer that the template was made for.")
@format_option("json")
@force_option
def taped(
    job: Path, photos: tuple[Path, ...], output: Path | None, wall: Path | None,
    paper: str | None, cover: str | None, trim: str | None, fonts: tuple[Path, ...], printer: str | None, shape: str,
    force: bool,
) -> None:  # fmt: skip
    """Read from photographs of the taped paper how every sheet lies: which joins
    to tape anew, and how far every nail is from its place.

    Print the template with --photo-marks. Give the same paper and cover here.

    \b
    Example:
      templates-gen photo taped job.toml taped.jpg -o taped-joins.jpg
    """
    from templates_gen.base.output import ending_of, write_result
    from templates_gen.documents.making import on_paper, template_marks
    from templates_gen.photo.picture import read_photo
    from templates_gen.photo.taped import read_taped
    from templates_gen.photo.taped_picture import marked
    from templates_gen.photo.taped_words import as_data, bad_joins, sentences, table

    ending = ending_of(output, ("jpg", "png")) if output is not None else "jpg"
    known = printer_named(printer) if printer is not None else None
    with about(job):
        read = on_paper(job_on(job, wall), paper, cover, trim, photo=True)
        check_results(job, read, [output], force, [wall, *photos])
        on_sheets = template_marks(read, fonts, known)
    pictures = [read_photo(path) for path in photos]
    found = read_taped(pictures, on_sheets)
    if output is not None:
        write_result(output, marked(pictures[0], 0, found, on_sheets, ending), force)
        click.echo(f"{output}: the photograph with the joins marked", err=True)
    if shape == "json":
        click.echo(as_json(as_data(found)))
    else:
        sheets, of = len(found.sheets), len(on_sheets.cells)
        click.echo(
            f"{job}: {sheets} of {of} sheets read, {len(bad_joins(found))} of {len(found.joins)} joins to tape anew"
        )
        for line in table(found):
            click.echo(line)
        for said in sentences(found, on_sheets.scaled):
            show_finding(said.level, said.text, err=False)
