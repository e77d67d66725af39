"""What the command `template` is asked for, and where its results go."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

import click

from templates_gen.base.file_names import quoted
from templates_gen.base.words import counted
from templates_gen.cli.results import place_beside, show_made, write_report
from templates_gen.cli.showing import show_finding

if TYPE_CHECKING:
    from templates_gen.documents.making import Made
    from templates_gen.documents.same_paper import SamePaper
    from templates_gen.job.model import Job
    from templates_gen.printer.profile import Printer
    from templates_gen.tiling.sheet import SheetPlan


class Asked(NamedTuple):
    """What the options ask for."""

    output: Path | None
    wall: Path | None
    paper: str | None
    cover: str | None
    fonts: tuple[Path, ...]
    one_piece: bool
    trim: str | None
    photo: bool
    most: int | None
    all_sheets: bool
    since: Path | None
    only: str | None
    report: Path | None
    force: bool
    anonymous: bool
    printer: Printer | None

    @property
    def moved_to(self) -> Path | None:
        """The other wall, where nothing asks for new sheets."""
        new = self.all_sheets or self.one_piece or self.photo or self.since or self.only
        return None if new or any((self.paper, self.cover, self.trim, self.most, self.printer)) else self.wall

    @property
    def part(self) -> str:
        """What the name of a file ends in that has only some of the sheets."""
        return "update" if self.since else "sheets" if self.only else ""


class Places:
    """Where the template goes, and its first pages where they are a file of their own."""

    def __init__(self, path: Path, asked: Asked, job: Job) -> None:
        self.output = asked.output or place_beside(path, asked.wall, asked.part)
        self.paper, self.unit = job.paper, job.unit
        large = job.paper.kind != "sheets"
        self.first = self.output.parent / f"{self.output.stem}-first-pages.pdf" if large else None
        self.note = self.output.parent / f"{self.output.stem}-print-shop.txt" if large else None
        self.before: Path | None = None

    def write_page(self, page: SamePaper, asked: Asked) -> None:
        """Write the page that comes instead of sheets."""
        write_report(asked.report, page.report, asked.force, {self.output: page.pdf})

    def write(self, made: Made, plan: SheetPlan, asked: Asked) -> None:
        """Write all there is, and keep what it is written over."""
        from templates_gen.documents.print_shop import shop_note
        from templates_gen.documents.set_aside import set_aside

        kept = set_aside(self.output, made.pdf) if not asked.part else {}
        self.before = next(iter(kept), None)
        files = {self.output: made.pdf, **kept}
        if self.first is not None and made.first is not None:
            files[self.first] = made.first
        if self.note is not None:
            files[self.note] = shop_note(plan, self.unit, self.output.name).encode()
        write_report(asked.report, made.report, asked.force, files)

    def say(self, made: Made, plan: SheetPlan, asked: Asked) -> None:
        """Say what was written, the template last."""
        from templates_gen.base.units import show
        from templates_gen.documents.instructions.taping_steps import into_old_paper

        if made.lacking:
            show_finding("note", made.lacking)
        if asked.only is not None:
            show_finding("note", into_old_paper(plan))
        if self.before is not None:
            since = f" If its paper is printed already, --since {quoted(self.before)} prints only what has changed."
            show_finding("note", f"The template before this one is kept: {self.before}.{'' if self.first else since}")
        sheets = counted(made.sheets, "sheet")
        size = " × ".join(show(side, self.unit) for side in made.page)
        work = f", {made.effort.work}" if made.sheets > 1 or asked.since else ""
        if self.first is None or self.note is None:
            kept = len(plan.sheets) - made.sheets
            stay = "1 old one stays" if kept == 1 else f"{kept} old ones stay"
            old = f" ({stay})" if asked.since and kept else ""
            show_made(self.output, f"{sheets} of {self.paper.name} paper{old}{work}")
            return
        roll = f"off a roll of {show(self.paper.width, self.unit)}, " if self.paper.kind == "roll" else "of "
        click.echo(f"{self.first}: how to print, tape and nail, and the schedule; read it first")
        click.echo(f"{self.note}: the lines to send along to a print shop")
        click.echo(f"{self.output}: {sheets} {roll}{size}, for a print shop or plotter{work}")
