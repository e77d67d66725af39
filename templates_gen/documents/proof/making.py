"""A proof in one call: from a job to the bytes of a PDF, SVG or PNG file, all three from one drawing."""

from __future__ import annotations

import math
from collections.abc import Iterator
from pathlib import Path

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.geometry import Rect, bounds
from templates_gen.base.record import Record
from templates_gen.base.units import INCH
from templates_gen.documents.proof.frames import window
from templates_gen.documents.proof.layers import TITLE, Asked, draw_proof, view_of
from templates_gen.documents.proof.view import View
from templates_gen.drawing.grounds import box_about
from templates_gen.drawing.items import Line, Pixels, Template, Text
from templates_gen.drawing.lettering import Lettering, job_lettering
from templates_gen.drawing.pdf.writing import write_pdf
from templates_gen.job.model import Job

ENDINGS = ("pdf", "svg", "png")
"""Of the files that a proof can be."""

PICTURE_DOTS = 200.0
"""Dots per inch of a picture at the size it has on the proof: more than an eye makes out at arm's length.  Common
practice, no source."""

PNG_DOTS = 150.0
"""Dots per inch of a proof as PNG, when nothing else is asked for.  Common practice, no source."""

AROUND = 3.0
"""mm of page about a wall that is shown alone.  Our own design, no source."""


class Proof(Record, frozen=True):
    """A finished proof: the file's bytes, and the scale as 1 to `scale`."""

    content: bytes
    scale: int


def around_wall(template: Template, lettering: Lettering) -> Rect:
    """What the wall of a proof takes with its dimensions, and a little around (page mm)."""
    items = [item for form in template.forms if form.name != TITLE for item in form.items]
    lines = [box_about(item) for item in items if isinstance(item, Line)]
    return bounds([*lines, *(lettering.box(item) for item in items if isinstance(item, Text))]).grown(AROUND)


def make_proof(
    job: Job, ending: str = "pdf", asked: Asked | None = None, dots: float = PNG_DOTS, fonts: tuple[Path, ...] = ()
) -> Proof:
    """The proof of a job: `proof_of` its plan."""
    return proof_of(plan_wall(job), ending, asked, dots, fonts)


def proof_of(
    plan: Plan, ending: str = "pdf", asked: Asked | None = None, dots: float = PNG_DOTS, fonts: tuple[Path, ...] = (),
    bare: bool = False,
) -> Proof:  # fmt: skip
    """The proof of a plan as "pdf", "svg" or "png" (with so many dots to the inch); as "svg" it may be `bare`, the wall
    and its dimensions without the page around them.

    It is drawn whatever the findings say: it is there to be talked about.  Raises InputError for a picture, paper or
    font that cannot be used.
    """
    asked, lettering = asked or Asked(), job_lettering(plan.job, fonts)
    view = view_of(plan, asked, lettering)
    template = draw_proof(plan, view, dict(pictures_of(plan, view)), asked, lettering)
    if ending == "svg":
        from templates_gen.drawing.svg import write_svg

        return Proof(write_svg(template, lettering, around_wall(template, lettering) if bare else None), view.scale)
    pdf = write_pdf(template, lettering)
    if ending == "pdf":
        return Proof(pdf, view.scale)
    from templates_gen.drawing.images import as_png
    from templates_gen.drawing.png import page_pixels

    return Proof(as_png(*page_pixels(pdf, dots), dots), view.scale)


def pictures_of(plan: Plan, view: View) -> Iterator[tuple[str, Pixels]]:
    """The pictures that are there, each as fine as what is drawn needs it, by their frames' ids.

    Raises InputError for one that cannot be used.
    """
    for hung in plan.frames:
        frame = hung.frame
        if frame.image and not frame.image_missing:
            from templates_gen.drawing.images import read_picture

            place = view.rect(window(hung))
            across, down = (math.ceil(side / INCH * PICTURE_DOTS) for side in (place.width, place.height))
            yield frame.id, read_picture(Path(frame.image), (across, down), f"frame {frame.id}, image")
