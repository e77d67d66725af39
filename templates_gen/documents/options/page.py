"""The options on one page: small pictures of the wall, all to one scale, with what there is to know of each."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Sequence

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.documents.of_job import of_job, whose
from templates_gen.documents.options.choices import Option, in_all, option_lines
from templates_gen.documents.proof.features import outline
from templates_gen.documents.proof.view import SCALES, Band, View, extent
from templates_gen.drawing.blocks import named_in, shortened, wrapped
from templates_gen.drawing.items import Item, Line, Page, Polygon, Template, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.shapes import box
from templates_gen.drawing.sizes import H5, H7, H18, H25, H35, HAIR, MEDIUM, NARROW, WIDE
from templates_gen.job.model import Paper
from templates_gen.tiling.page import Page as PaperPage
from templates_gen.tiling.page import page_of

HEAD, FOOT = 16.0, 8.0
"""mm for the title above, and for a line below the options.  Our own design, no source."""

BETWEEN = 7.0
"""mm between two options.  Our own design, no source."""

UNDER_TITLE, UNDER_WALL, AFTER_NUMBER = 5.5, 3.5, 3.0
"""mm from the title to the line under it, from a picture to the words under it, and from an option's number to its
words.  Our own design, no source."""

LINES = 6
"""Lines of words under each picture.  Our own design, no source."""

LINE = 3.6
"""mm from one of these to the next.  Our own design, no source."""

LEAST_WIDTH = 55.0
"""mm; a narrower option has no room for its words.  Our own design, no source."""

AIR = 0.7
"""mm of a frame that its id leaves free.  Our own design, no source."""

NAMES = ((H5, True), (H35, True), (H25, True), (H18, True), (H18, False))
"""Heights of a frame's id, and whether it is bold, the best first.  Our own design, no source."""

FRAME = 0.88
"""Grey that fills a frame.  Our own design, no source."""


WHICHEVER = "Each option has something to settle before it is hung:  templates-gen check NEW-JOB.toml"
"""What is said of findings that all options share, for they have no part in the choice."""

FOOT_LINE, UNDER_WORDS = 5.0, 1.5
"""mm from the foot of the page to its upper line, and under an option's words.  Our own design, no source."""

LARGE = 20
"""The scale, 1 to this, down to which frames have a wider line.  Our own design, no source."""


class Layout(Record, frozen=True):
    """How the options stand on the page: their cells (page mm), and the scale of the pictures, 1 to `scale`."""

    page: PaperPage
    cells: tuple[Rect, ...]
    scale: int


def options_page(options: Sequence[Option], paper: Paper, lettering: Lettering) -> Template:
    """One page with all options.  Raises InputError for paper too small for them."""
    plan, layout = options[0].plan, layout_of(options, paper)
    job, area = plan.job, layout.page.printable
    subtitle = " · ".join(filter(None, [whose(job), f"wall at 1:{layout.scale} when printed at 100 %"]))
    title = shortened(f"{job.title}: options", H7, True, area.width, lettering)
    common = in_all(options)
    items: list[Item] = [
        Text(area.x0, area.y1 - H7 - 0.5, title, H7, bold=True),
        Text(area.x0, area.y1 - H7 - UNDER_TITLE, subtitle, H25),
        Text(area.x0, area.y0 + 1.0, "Keep one:  templates-gen options JOB --pick N -o NEW-JOB.toml", H25),
        *(Text(area.x0, area.y0 + FOOT_LINE, words, H25) for words in ((WHICHEVER,) if common else ())),
    ]
    for option, cell in zip(options, layout.cells, strict=True):
        items += _option_items(option, common, cell, layout, lettering)
    page = Page(label="options", title=job.title, page_items=tuple(items))
    return of_job(job, "options", layout.page, [page])


def layout_of(options: Sequence[Option], paper: Paper) -> Layout:
    """The largest usual scale at which all pictures of the wall fit on one page, whichever way that lies."""
    whole = extent(options[0].plan)
    best: tuple[int, PaperPage, tuple[Rect, ...]] | None = None
    for turned in (True, False):
        page = page_of(paper, turned)
        for across in range(1, len(options) + 1):
            cells = _cells(page.printable, across, len(options))
            room = Rect(0.0, 0.0, cells[0].width, cells[0].height - LINES * LINE - UNDER_WORDS)
            scale = next((s for s in SCALES if whole.width / s <= room.width and whole.height / s <= room.height), None)
            if scale is not None and cells[0].width >= LEAST_WIDTH and (best is None or scale < best[0]):
                best = (scale, page, cells)
    if best is None:
        raise InputError("paper, size", f"{paper.name} is too small for {len(options)} options", "choose a4 or letter")
    return Layout(best[1], best[2], best[0])


def _cells(area: Rect, across: int, count: int) -> tuple[Rect, ...]:
    down = math.ceil(count / across)
    inside = Rect(area.x0, area.y0 + FOOT, area.x1, area.y1 - HEAD)
    width = (inside.width - (across - 1) * BETWEEN) / across
    height = (inside.height - (down - 1) * BETWEEN) / down
    return tuple(
        Rect.sized(inside.x0 + at % across * (width + BETWEEN),
                   inside.y1 - at // across * (height + BETWEEN) - height, width, height)
        for at in range(count)
    )  # fmt: skip


def _option_items(
    option: Option, common: Collection[str], cell: Rect, layout: Layout, lettering: Lettering
) -> Iterator[Item]:
    view = _view(option.plan, cell, layout)
    yield from _wall_items(option.plan, view)
    for hung in option.plan.frames:
        yield from _frame_items(hung, view, lettering)
    wall = view.rect(option.plan.job.wall.rect)
    indent = lettering.width(f"{option.number}", H7, True) + AFTER_NUMBER
    y = wall.y0 - UNDER_WALL - H7
    yield Text(cell.x0, y, f"{option.number}", H7, bold=True)
    width, texts = cell.width - indent, option_lines(option, common)
    told = [line for text in texts for line in wrapped(text, H18, False, width, lettering)]
    if len(told) > LINES:
        told[LINES - 1] += " …"
    for at, line in enumerate(told[:LINES]):
        yield Text(cell.x0 + indent, y + H7 - H18 - at * LINE, line, H18)


def _view(plan: Plan, cell: Rect, layout: Layout) -> View:
    """The wall in the upper part of a cell, at the left."""
    whole, scale = extent(plan), layout.scale
    x0, y0 = cell.x0 - whole.x0 / scale, cell.y1 - whole.y1 / scale
    return View(layout.page, scale, x0, y0, Band((), False), cell)


def _wall_items(plan: Plan, view: View) -> Iterator[Item]:
    wall = plan.job.wall
    rect = view.rect(wall.rect)
    yield Polygon(tuple(view.point(x, y) for x, y in wall.outline or wall.rect.corners), NARROW, False)
    yield Line(rect.x0, rect.y0, rect.x1, rect.y0, WIDE)
    for feature in wall.features:
        yield from outline(feature, view.rect(feature.rect))


def _frame_items(hung: Hung, view: View, lettering: Lettering) -> Iterator[Item]:
    """The frame in light grey, with its id: upright in a narrow one, and cut short where it must be."""
    rect = view.rect(hung.rect)
    yield from box(rect, MEDIUM if view.scale <= LARGE else HAIR, FRAME)
    if name := named_in(rect.grown(-AIR / 2), hung.frame.id, NAMES, lettering):
        yield name
