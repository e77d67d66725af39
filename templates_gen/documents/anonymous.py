"""A job without what says whose it is, for papers that leave the house."""

from __future__ import annotations

import unicodedata
from pathlib import Path

from templates_gen.base.record import replace
from templates_gen.job.model import Job
from templates_gen.printer.profile import Printer

TITLE = "Hanging template"
"""In place of a title that was only the job file's name."""

PRINTER = "a measured one"
"""In place of a printer's name."""


def anonymous(job: Job) -> Job:
    """The same job without its client, its wall's name, its files and all paths to files; what is measured stays.

    The title stays, unless it is only the name of the job file, and so do the names that frames and features have.
    """
    stems = {unicodedata.normalize("NFC", Path(name).stem) for name, _ in job.sources[:1]}
    title = TITLE if unicodedata.normalize("NFC", job.title) in stems else job.title
    return replace(
        job,
        title=title,
        client="",
        wall=replace(job.wall, name=""),
        frames=tuple(replace(frame, image="", image_missing=False) for frame in job.frames),
        sources=(),
        moved_to="",
    )


def still_named(job: Job) -> list[str]:
    """Where the client or the wall is named all the same: in the title, or by a frame or a feature."""
    texts = {"the title": job.title}
    for frame in job.frames:
        texts |= {f"the id of frame {frame.id}": frame.id, f"the title of frame {frame.id}": frame.title}
    texts |= {f"the feature {feature.name}": feature.name for feature in job.wall.features}
    names = [name.casefold() for name in (job.client.strip(), job.wall.name.strip()) if name]
    return [where for where, text in texts.items() if any(name in text.casefold() for name in names)]


def anonymous_printer(printer: Printer | None) -> Printer | None:
    """The same printer without the name that its owner gave it."""
    return replace(printer, name=PRINTER) if printer else None
