"""The command `desk`: the whole job in the browser."""

from __future__ import annotations

import gc
import os
import signal
import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import click

from templates_gen.cli import arguments as takes
from templates_gen.cli.completing import job_files

if TYPE_CHECKING:
    from templates_gen.desk.desk import Desk, Doors

VALUES = 20_000
"""New values after which cycles of them are looked for while a desk is open.  100 changes and 20 papers left 61 MiB, at
a run's own million 122, which went on to 235 after 275 and 55 (measured; no longer day was)."""


@click.command()
@click.argument("job", type=takes.FILE, metavar="[JOB.toml | TEMPLATE.pdf]", required=False, shell_complete=job_files)
@click.option("--no-browser", is_flag=True, help="Print the address, and leave opening it to you.")
@click.option(
    "--port", type=click.IntRange(0, 65535), default=0, metavar="N", help="Listen on this port; default: any free one."
)
@click.option("--shortcut", is_flag=True, help="Put a starter on the desktop or into the menu, and end.")
def desk(job: Path | None, no_browser: bool, port: int, shortcut: bool) -> None:
    """Do the whole job in the browser: wall, frames, drops, paper, proof.

    Without a job it lists the jobs of this folder, with samples to play with.
    Every change is saved in the job file at once. The page is on this machine
    alone; nothing is sent anywhere. Ctrl-C ends it, and so does closing the page
    for a minute.

    \b
    Example:
      templates-gen desk samples/fern-prints.toml
    """
    if shortcut:
        _put_shortcut()
        return
    from templates_gen.desk.routes import answer, news
    from templates_gen.desk.serving import serve

    gc.set_threshold(VALUES)
    made, name = _desk(job)
    opener = _opener(name, not no_browser)
    try:
        serve(lambda asked: answer(made, asked), lambda wanted: news(made, wanted), port, opener)
    except KeyboardInterrupt as stopped:
        if stopped.args not in ((), (signal.SIGINT,)):
            raise  # ended from outside; Ctrl-C is how a desk is closed
    click.echo("The desk is closed. Everything is saved.", err=True)


def _desk(job: Path | None) -> tuple[Desk, str]:
    """The desk of a job's folder, and the name of the job; a template's job comes to lie beside the template."""
    from templates_gen.desk.desk import Desk

    folder = job.parent if job is not None else Path()
    made = Desk(folder, doors())
    if job is None:
        return made, ""
    if job.suffix.lower() == ".pdf":
        from templates_gen.drawing.pdf.attached import LARGEST_PDF
        from templates_gen.job.reading.files import read_bytes

        name = made.from_template(read_bytes(job, LARGEST_PDF, "a template"), job.name)
        click.echo(f"{folder / name}: the job of {job.name}", err=True)
        return made, name
    made.opened(job.name)
    return made, job.name


def doors() -> Doors:
    """What other parts of the program give the desk."""
    from templates_gen.cli.given import kept_printers
    from templates_gen.cli.interview.taken import sample, sample_lines
    from templates_gen.cli.interview.taken_back import from_template
    from templates_gen.desk.desk import Doors
    from templates_gen.drawing.pdf.attached import Attached

    def inside(content: bytes, name: str, place: Path) -> dict[Path, bytes]:
        return from_template(Attached(content, name), place).files

    return Doors(inside, sample_lines(), sample, kept_printers)


def _opener(name: str, browser: bool) -> Callable[[str], None]:
    """Prints the address, and opens it."""
    from urllib.parse import quote

    def ready(address: str) -> None:
        address += f"&job={quote(name)}" if name else ""
        click.echo(address)
        click.echo("Open this address in a browser on this machine. Ctrl-C ends the desk.", err=True)
        if browser and _has_screen():
            import threading
            import webbrowser

            # one that runs in the terminal would keep us from answering it
            threading.Thread(target=webbrowser.open, args=(address,), daemon=True).start()

    return ready


def _has_screen() -> bool:
    """False where only a browser in the terminal could be opened, which takes it away and shows nothing of the page.

    X11 and Wayland set the first two of these (freedesktop.org); BROWSER is the person's own choice."""
    own = any(os.environ.get(name) for name in ("DISPLAY", "WAYLAND_DISPLAY", "BROWSER"))
    return own or sys.platform in ("win32", "darwin")


def _put_shortcut() -> None:
    from templates_gen.desk.shortcut import put_shortcut

    click.echo(f"{put_shortcut(Path(), Path.home())}: opens the desk with the jobs of this folder")
