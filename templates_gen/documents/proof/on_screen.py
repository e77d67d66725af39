"""The wall for a screen: what a proof draws, in parts that can be taken by hand one by one."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import chain
from pathlib import Path

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.documents.proof.features import outline, stair_items
from templates_gen.documents.proof.figure import figure
from templates_gen.documents.proof.frames import MAT, frame_items, opening, window
from templates_gen.documents.proof.view import Band, View, extent, wall_items
from templates_gen.documents.proof.zones import zone_items
from templates_gen.drawing.items import Item, Polygon
from templates_gen.drawing.shapes import box
from templates_gen.drawing.sizes import HAIR
from templates_gen.drawing.svg import markup
from templates_gen.job.model import Job
from templates_gen.job.paper_sizes import first_paper
from templates_gen.tiling.page import page_of

WIDE = 260.0
"""mm of drawing for the wall's longer side: lines then look on a screen as they do on a page.  Our own design."""

AIR = 6.0
"""mm of drawing around it.  Our own design, no source."""


class Part(Record, frozen=True):
    """Something on the wall that can be taken: its name, its place (wall mm), how it is drawn, and for a frame where
    its picture goes (wall mm)."""

    name: str
    rect: Rect
    drawn: str
    window: Rect | None = None


class Screen(Record, frozen=True):
    """The wall as SVG: one mm of drawing is `scale` mm of wall, y turned down about the floor.

    `box` is what is seen: left, top, width and height of the drawing.  `wall` lies behind the features and the frames.
    """

    scale: float
    box: tuple[float, float, float, float]
    wall: str
    features: tuple[Part, ...]
    frames: tuple[Part, ...]


def zones_on_screen(plan: Plan) -> str:
    """Where cables may run, to be laid over the wall of `on_screen`."""
    return markup(zone_items(plan, _view(plan.job, extent(plan.job, plan))))


def on_screen(job: Job, plan: Plan | None) -> Screen:
    """The wall of a job with its frames, or bare where their places are not known yet."""
    wall, whole = job.wall, extent(job, plan)
    view = _view(job, whole)
    shown = view.rect(whole).grown(AIR)
    figured = figure(plan, view)[1] if plan else ()
    behind = chain(_wall(job, view), stair_items(wall, view), figured)
    # furniture stands before what is on the wall
    features = [Part(one.name, one.rect, markup(outline(one, view.rect(one.rect)))) for one in wall.features]
    frames = [_frame(hung, view) for hung in (plan.frames if plan else ())]
    return Screen(
        view.scale, (shown.x0, -shown.y1, shown.width, shown.height), markup(behind), tuple(features), tuple(frames),
    )  # fmt: skip


def _view(job: Job, whole: Rect) -> View:
    page, scale = page_of(first_paper(job.paper, job.unit), False), max(1, round(max(whole.width, whole.height) / WIDE))
    return View(page, scale, 0.0, 0.0, Band((), False), Rect(0.0, 0.0, 0.0, 0.0))


def _wall(job: Job, view: View) -> Iterable[Item]:
    wall = job.wall
    points = tuple(view.point(x, y) for x, y in wall.corners)
    yield Polygon(points, 0.0, True, 1.0)
    yield from wall_items(wall, view, AIR / 2)


def _frame(hung: Hung, view: View) -> Part:
    seen, inside = window(hung), opening(hung)
    items = [*frame_items(hung, view), *(box(view.rect(seen), HAIR, None, MAT) if seen != inside else ())]
    return Part(hung.frame.id, hung.rect, markup(items), seen)


def picture_bytes(path: Path, most: int) -> bytes:
    """A frame's picture as JPEG, no larger than so many pixels.  Raises InputError for one that cannot be read."""
    from templates_gen.drawing.images import read_picture

    return read_picture(path, (most, most), "image").jpeg
