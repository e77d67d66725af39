"""The commands `photo card`, `taped`, `wall` and `hung`: what a photograph tells."""

from __future__ import annotations

from pathlib import Path

import click

from templates_gen.cli.arguments import force_option, output_option, paper_option
from templates_gen.cli.results import write_pages


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
