"""The commands `photo card`, `taped`, `wall` and `hung`: what a photograph tells."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from templates_gen.base.output import check_place, ending_of, write_result
from templates_gen.cli import arguments as takes
from templates_gen.cli.given import about, job_on, printer_named
from templates_gen.cli.next_time import show_moved
from templates_gen.cli.results import check_results, place_beside, write_pages
from templates_gen.cli.showing import as_json, show_finding

if TYPE_CHECKING:
    from templates_gen.documents.on_wall import OnWall


@click.group()
def photo() -> None:
    """Let a photograph show and measure what is on the wall.

    \b
    Example:
      templates-gen photo card -o photo-card.pdf
    """


@photo.command(short_help="Write the photo card, to tape to the wall.")
@takes.pdf_option(default="photo-card.pdf", help="Where to write it; default: photo-card.pdf.")
@takes.paper_option(default="a4", help="a4 (default), letter, a3, tabloid, ...")
@takes.force_option
def card(output: Path, paper: str, force: bool) -> None:
    """Write two photo cards: taped to the wall, one or both give a photograph
    its scale and its level.

    \b
    Example:
      templates-gen photo card --paper letter -o photo-card.pdf
    """
    from templates_gen.documents.photo_card import card_pages, cards_of
    from templates_gen.drawing.lettering import Lettering

    check_place(output, force)
    lettering, cards = Lettering(), cards_of(paper)
    write_pages(output, card_pages(cards, lettering), lettering, "two photo cards", cards[0].paper, force)


@photo.command(short_help="Read how taped sheets lie, before nailing.")
@click.argument("paper_of", type=takes.FILE, metavar="JOB|TEMPLATE.pdf")
@click.argument("photos", type=takes.FILE, metavar="PHOTO...", nargs=-1, required=True)
@takes.output_option(metavar="FILE.jpg", help="Also write the first photograph with the joins marked, as .jpg or .png.")
@takes.wall_option
@takes.paper_option(help="Without a PDF: the paper the template was printed on; default: the job's.")
@click.option("--cover", type=takes.COVERS, help="Without a PDF: what was on paper, as the template was made.")
@click.option("--trim", type=click.Choice(["cut", "none"]), help="Without a PDF: whether the sheets were cut.")
@takes.font_option
@takes.printer_option(help="Without a PDF: the recorded printer that the template was made for.")
@takes.format_option("json")
@takes.force_option
def taped(
    paper_of: Path, photos: tuple[Path, ...], output: Path | None, shape: str, force: bool, **printed: Any
) -> None:
    """Read from photographs of the taped paper how every sheet lies: which joins
    to tape anew, and how far every nail is from its place.

    Print the template with --photo-marks. Its PDF says where everything is on
    the paper, whatever the job says since: name it, or the job that it lies
    beside. Without it the sheets are laid anew from the job.

    \b
    Example:
      templates-gen photo taped job.toml taped.jpg -o taped-joins.jpg
    """
    from templates_gen.photo.picture import read_photo
    from templates_gen.photo.taped import read_taped
    from templates_gen.photo.taped_picture import marked
    from templates_gen.photo.taped_words import as_data, heading, sentences, table

    ending = ending_of(output, ("jpg", "png")) if output is not None else "jpg"
    there = _on_wall(paper_of, photos, output, force, **printed)
    if there.said is not None:
        level, text = there.said
        show_finding(level, f"{text} To go by another PDF, name it in place of {paper_of.name}.")
    pictures = [read_photo(path) for path in photos]
    found = read_taped(pictures, there.papers, there.name)
    if output is not None:
        write_result(output, marked(pictures[0], found, there.papers, ending), force)
        click.echo(f"{output}: the photograph with the joins marked", err=True)
    if shape == "json":
        click.echo(as_json({**as_data(found), "paper": there.name}))
    else:
        click.echo(f"{there.name}: {heading(found, there.papers)}")
        for line in table(found):
            click.echo(line)
        for said in sentences(found, there.papers.scaled, there.name):
            show_finding(said.level, said.text, err=False)


def _on_wall(
    path: Path, photos: tuple[Path, ...], output: Path | None, force: bool, wall: Path | None, paper: str | None,
    cover: str | None, trim: str | None, fonts: tuple[Path, ...], printer: str | None,
) -> OnWall:  # fmt: skip
    """The taped paper, by a template's PDF or by a job."""
    from templates_gen.documents.making import on_paper, template_marks
    from templates_gen.documents.on_wall import by_job, by_template

    if path.suffix.lower() == ".pdf":
        if any((wall, paper, cover, trim, fonts, printer)):
            raise click.UsageError(f"{path.name} says itself how it was printed: leave out the options for that")
        check_results(path, None, [output], force, photos)
        return by_template(path)
    known = printer_named(printer)
    with about(path):
        job = job_on(path, wall)
        check_results(path, job, [output], force, [wall, *photos])
        asked = {"name": paper, "cover": cover, "trim": trim, "printer": known.name if known else None}
        return by_job(
            path, job, wall, asked,
            lambda: template_marks(on_paper(job, paper, cover, trim, photo=True), fonts, known),
        )  # fmt: skip


@photo.command(short_help="Show the group on a photograph of the wall.")
@takes.job_argument
@click.argument("picture", type=takes.FILE, metavar="PHOTO")
@takes.output_option(metavar="FILE.jpg", help="Where to write it, as .jpg or .png; default: next to the job file.")
@takes.wall_option
@click.option("--card", "size", default="a4", metavar="SIZE", help="The paper of the photo card; default: a4.")
@click.option(
    "--card-at", nargs=2, metavar="X Y",
    help="Where the middle of the card's line is: from the wall's left end, and above the floor; default: where the "
    "centre line and the level line cross.",
)  # fmt: skip
@click.option("--feature", metavar="NAME", help="Read where something on the wall is, by --corners; no picture.")
@click.option("--corners", metavar='"X,Y X,Y X,Y X,Y"', help="Its four corners on the photograph, in pixels.")
@takes.format_option("json")
@takes.force_option
def wall(
    job: Path, picture: Path, output: Path | None, wall: Path | None, size: str, card_at: tuple[str, str] | None,
    feature: str | None, corners: str | None, shape: str, force: bool,
) -> None:  # fmt: skip
    """Draw the group on a photograph of the wall, in perspective, for the client.

    Tape a photo card to the wall before: its middle where the two lines will
    cross, or say with --card-at where it is.

    \b
    Example:
      templates-gen photo wall job.toml wall.jpg -o wall-hung.jpg
    """
    import templates_gen as tg
    from templates_gen.base.units import show_both
    from templates_gen.documents.photo_card import cards_of
    from templates_gen.documents.photographed import faces
    from templates_gen.job.reading.typed import read_lengths
    from templates_gen.photo.cards import see_wall
    from templates_gen.photo.on_wall import drawn, measured, placed, pointed_at, told_of
    from templates_gen.photo.picture import read_photo

    if (feature is None) != (corners is None):
        raise click.UsageError("--feature and --corners go together")
    with about(job):
        read = job_on(job, wall)
        place = output or place_beside(job, wall, "on-wall", ".jpg")
        ending = ending_of(place, ("jpg", "png"))
        check_results(job, read, [place if feature is None else None], force, [wall, picture])
        plan = tg.plan_wall(read)
        middle = read_lengths(card_at, read.unit, "--card-at") if card_at else (plan.centre_line, plan.level_line)
    seen = read_photo(picture)
    known = see_wall(seen, cards_of(size, "--card"))
    if feature is not None and corners is not None:
        rect, off = measured(known, pointed_at(corners), middle)
        told = {"left": rect.x0, "bottom": rect.y0, "width": rect.width, "height": rect.height}
        if shape == "json":
            click.echo(as_json({"format": 1, "feature": {"name": feature, **told, "sure": off}}))
        else:
            sizes = ", ".join(f"{name} {show_both(length, read.unit)}" for name, length in told.items())
            click.echo(f"{feature}: {sizes}; each within {max(1.0, off):.0f} mm, 19 times in 20")
        return
    fronts = faces(plan)
    write_result(place, drawn(seen.colours(), known, fronts, middle, ending), force)
    told_frames = list(placed(known, fronts, middle))
    if shape == "json":
        click.echo(as_json({"format": 1, "cards": list(known.cards), "frames": told_frames}))
        click.echo(f"{place}: the group on the wall", err=True)
        return
    click.echo(f"{place}: the group on the wall")
    for line in told_of(known, told_frames):
        show_finding("note", line, err=False)


@photo.command(short_help="Read how frames hang, for correct.")
@takes.job_argument
@click.argument("picture", type=takes.FILE, metavar="PHOTO")
@click.argument("corners", type=takes.FILE, metavar="CORNERS.csv")
@takes.output_option(metavar="READINGS.csv", help="Where to write the readings; default: next to the job file.")
@takes.wall_option
@click.option("--card", "size", default="a4", metavar="SIZE", help="The paper of the photo card; default: a4.")
@takes.format_option("json")
@takes.force_option
def hung(
    job: Path, picture: Path, corners: Path, output: Path | None, wall: Path | None, size: str, shape: str, force: bool
) -> None:
    """Read from a photograph how the frames hang to each other, as readings for
    correct. A photo card taped level beside them tells what is level.

    CORNERS.csv says where the outer corners of each frame's front are, to some
    8 pixels, as x y: frame,top_left,top_right,bottom_right,bottom_left. The
    edges are then looked for near there.

    \b
    Example:
      templates-gen photo hung job.toml hung.jpg corners.csv -o readings.csv
    """
    import templates_gen as tg
    from templates_gen.documents.correcting.pointed import read_pointed
    from templates_gen.documents.photo_card import cards_of
    from templates_gen.documents.photographed import depths, faces
    from templates_gen.photo.hung import RELATIVE, as_data, as_readings, not_read, read_hung, without_depth
    from templates_gen.photo.picture import read_photo
    from templates_gen.photo.vision import np

    with about(job):
        read = job_on(job, wall)
        place = output or place_beside(job, wall, "hung", ".csv")
        check_results(job, read, [place], force, [wall, picture, corners])
        plan = tg.plan_wall(read)
        show_moved(job, wall, plan)
    pointed = {name: np.array(points) for name, points in read_pointed(corners, plan).items()}
    known = depths(plan)
    found = read_hung(read_photo(picture), faces(plan), known, pointed, cards_of(size, "--card"))
    write_result(place, as_readings(found, plan.centre_line).encode(), force)
    if shape == "json":
        click.echo(as_json(as_data(found)))
        click.echo(f"{place}: the readings", err=True)
    else:
        click.echo(f"{place}: {len(found.frames)} of {len(pointed)} frames read, for templates-gen correct")
        for one in found.frames:
            click.echo(f"  frame {one.id}: within {one.sure:.1f} mm, 19 times in 20")
        for line in without_depth(pointed, known):
            show_finding("note", line, err=False)
        for line in not_read(found):
            show_finding("warn", line, err=False)
    show_finding("note", RELATIVE)
