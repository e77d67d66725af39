"""A template that another is written over is kept beside it: its paper may be printed, or on the wall, already."""

from __future__ import annotations

from pathlib import Path

from templates_gen.base.errors import InputError
from templates_gen.base.output import is_ours
from templates_gen.documents.old_paper import NAME
from templates_gen.drawing.pdf.attached import LARGEST_PDF
from templates_gen.job.reading.files import read_bytes

BEFORE = "-before"
"""What the name of a template ends in that another was written over."""


def set_aside(place: Path, content: bytes) -> dict[Path, bytes]:
    """The template that lies where this content is to be written, and the place where it is kept; nothing where it is
    the same, says nothing of its sheets, or somebody else's file has that place."""
    kept = place.with_name(f"{place.stem}{BEFORE}.pdf")
    try:
        old = read_bytes(place, LARGEST_PDF, "a template") if place.is_file() and is_ours(place) else b""
    except InputError:
        return {}
    free = not kept.exists() or is_ours(kept)
    return {kept: old} if free and old != content and NAME.encode() in old else {}
