"""The options on one page: small pictures of the wall, all to one scale, with what there is to know of each."""

from __future__ import annotations

import math
import string
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from itertools import chain, count, product

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.documents.of_job import of_job, whose
from templates_gen.documents.options.choices import Option, client_lines, in_all
from templates_gen.documents.proof.features import outline
from templates_gen.documents.proof.frames import frame_items, picture_items, window
from templates_gen.documents.proof.making import pictures_of
from templates_gen.documents.proof.view import Band, View, extent, scales, to_the_foot
from templates_gen.drawing.blocks import named_in, shortened, wrapped
from templates_gen.drawing.items import Item, Line, Page, Pixels, Polygon, Template, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.sizes import H5, H7, H18, H25, H35, HAIR, MEDIUM, NARROW, WIDE
from templates_gen.job.model import Paper
from templates_gen.tiling.page import Page as PaperPage
from templates_gen.tiling.page import page_of

HEAD = 16.0
"""mm for the title above.  Our own design, no source."""

BETWEEN = 7.0
"""mm between two options.  Our own design, no source."""

UNDER_TITLE, UNDER_WALL, AFTER_NUMBER = 5.5, 3.5, 3.0
"""mm from the title to the line under it, from a picture to the words under it, and from an option's number to its
words.  Our own design, no source."""

LINES = 6
"""Lines of words under each picture at most.  Our own design, no source."""

LINE = 3.6
"""mm from one of these to the next.  Our own design, no source."""

LEAST_WIDTH = 55.0
"""mm; a narrower option has no room for its words.  Our own design, no source."""

WHICHEVER = "Each option has something to settle before it is hung."
"""What is said of findings that all options share, for they have no part in the choice."""

FOOT_LINE, UNDER_WORDS = 1.0, 1.5
"""mm from the foot of the page to its last line, and under an option's words.  Our own design, no source."""


class Layout(Record, frozen=True):
    """How the options stand on the page: their cells (page mm), and the scale of the pictures, 1 to `scale`."""

    page: PaperPage
    cells: tuple[Rect, ...]
    scale: int


def options_page(options: Sequence[Option], paper: Paper, lettering: Lettering) -> Template:
    """One page with all options, for whoever chooses.

    Raises InputError for paper too small for them, or for a picture that cannot be used.
    """
    job, common = options[0].plan.job, in_all(options)
    layout, shown, foot = laid_out(options, paper, lettering)
    area, feet = layout.page.printable, to_the_foot(layout.scale, job.unit)
    scale = f"wall at 1:{layout.scale}{f', {feet},' if feet else ''} when printed at 100 %"
    subtitle = " · ".join(filter(None, [whose(job), scale]))
    title = shortened(f"{job.title}: options", H7, True, area.width, lettering)
    items: list[Item] = [
        Text(area.x0, area.y1 - H7 - 0.5, title, H7, bold=True),
        Text(area.x0, area.y1 - H7 - UNDER_TITLE, subtitle, H25),
        *(Text(area.x0, area.y0 + FOOT_LINE + at * LINE, words, H18) for at, words in enumerate(reversed(foot))),
    ]
    for option, cell in zip(options, layout.cells, strict=True):
        items += _option_items(option, common, cell, layout, shown, lettering)
    page = Page(label="options", title=job.title, page_items=tuple(items))
    return of_job(job, "options", layout.page, [page])


def laid_out(options: Sequence[Option], paper: Paper, lettering: Lettering) -> tuple[Layout, Shown, tuple[str, ...]]:
    """Where the options stand, what is in their frames, and the lines at the page's foot.

    The key to signs takes room there, and so may take room from the pictures.  Raises InputError as the page does.
    """
    last = (WHICHEVER,) if in_all(options) else ()
    layout = layout_of(options, paper, lettering, len(last))
    shown = _shown(options, layout, lettering)
    if shown.key:
        layout = layout_of(options, paper, lettering, len(last) + len(_key(shown, layout, lettering)))
        shown = _shown(options, layout, lettering)
    return layout, shown, (*_key(shown, layout, lettering), *last)


def _key(shown: Shown, layout: Layout, lettering: Lettering) -> list[str]:
    return wrapped(shown.key, H18, False, layout.page.printable.width, lettering)


def _shown(options: Sequence[Option], layout: Layout, lettering: Lettering) -> Shown:
    plans = [(each.plan, _view(each.plan, cell, layout)) for each, cell in zip(options, layout.cells, strict=True)]
    return shown_in(plans, dict(pictures_of(*plans[0])), lettering)


def layout_of(options: Sequence[Option], paper: Paper, lettering: Lettering, foot: int = 0) -> Layout:
    """The largest usual scale at which all pictures of the wall fit on one page over so many lines at its foot,
    whichever way it lies."""
    whole, usual = extent(options[0].plan.job, options[0].plan), scales(options[0].plan.job.unit)
    best: tuple[int, PaperPage, tuple[Rect, ...]] | None = None
    for turned in (True, False):
        page = page_of(paper, turned)
        for across in range(1, len(options) + 1):
            cells = _cells(page.printable, across, len(options), foot)
            words = max(len(_words(each, in_all(options), cells[0].width, lettering)) for each in options)
            room = Rect(0.0, 0.0, cells[0].width, cells[0].height - _under(words))
            fitting = (s for s in usual if whole.width / s <= room.width and whole.height / s <= room.height)
            scale = next(fitting, None)
            if scale is not None and cells[0].width >= LEAST_WIDTH and (best is None or scale < best[0]):
                best = (scale, page, cells)
    if best is None:
        raise InputError("paper, size", f"{paper.name} is too small for {len(options)} options", "choose a4 or letter")
    return Layout(best[1], best[2], best[0])


def _cells(area: Rect, across: int, count: int, foot: int) -> tuple[Rect, ...]:
    down = math.ceil(count / across)
    below = FOOT_LINE + foot * LINE if foot else 0.0
    inside = Rect(area.x0, area.y0 + below, area.x1, area.y1 - HEAD)
    width = (inside.width - (across - 1) * BETWEEN) / across
    height = (inside.height - (down - 1) * BETWEEN) / down
    return tuple(
        Rect.sized(inside.x0 + at % across * (width + BETWEEN),
                   inside.y1 - at // across * (height + BETWEEN) - height, width, height)
        for at in range(count)
    )  # fmt: skip


def _option_items(
    option: Option, common: Collection[str], cell: Rect, layout: Layout, shown: Shown, lettering: Lettering
) -> Iterator[Item]:
    view = _view(option.plan, cell, layout)
    yield from _wall_items(option.plan, view)
    for hung in option.plan.frames:
        yield from small_frame(hung, view, shown, lettering)
    wall = view.rect(option.plan.job.wall.rect)
    indent = _indent(option, lettering)
    y = wall.y0 - UNDER_WALL - H7
    yield Text(cell.x0, y, f"{option.number}", H7, bold=True)
    for at, line in enumerate(_words(option, common, cell.width, lettering)):
        yield Text(cell.x0 + indent, y + H7 - H18 - at * LINE, line, H18, bold=at == 0)


def _indent(option: Option, lettering: Lettering) -> float:
    return lettering.width(f"{option.number}", H7, True) + AFTER_NUMBER


def _words(option: Option, common: Collection[str], width: float, lettering: Lettering) -> list[str]:
    """The lines under a picture in a cell this wide (mm)."""
    wide = width - _indent(option, lettering)
    told = [line for text in client_lines(option, common) for line in wrapped(text, H18, False, wide, lettering)]
    return told if len(told) <= LINES else [*told[: LINES - 1], f"{told[LINES - 1]} …"]


def _under(lines: int) -> float:
    """mm that so many lines of words take under a picture, or the option's number beside them."""
    return UNDER_WALL + max(H7, H18 + (lines - 1) * LINE) + UNDER_WORDS


def _view(plan: Plan, cell: Rect, layout: Layout) -> View:
    """The wall in the upper part of a cell, at the left."""
    whole, scale = extent(plan.job, plan), layout.scale
    x0, y0 = cell.x0 - whole.x0 / scale, cell.y1 - whole.y1 / scale
    return View(layout.page, scale, x0, y0, Band((), False), cell)


def _wall_items(plan: Plan, view: View) -> Iterator[Item]:
    wall = plan.job.wall
    rect = view.rect(wall.rect)
    yield Polygon(tuple(view.point(x, y) for x, y in wall.corners), NARROW, False)
    yield Line(rect.x0, rect.y0, rect.x1, rect.y0, WIDE)
    for feature in wall.features:
        yield from outline(feature, view.rect(feature.rect))


AIR = 0.7
"""mm of a frame that its name leaves free.  Our own design, no source."""

NAMES = ((H5, True), (H35, True), (H25, True), (H18, True), (H18, False))
"""Heights of a frame's name, and whether it is bold, the best first.  Our own design, no source."""

LARGE = 20
"""The scale, 1 to this, down to which frames have a wider line.  Our own design, no source."""


class Shown(Record, frozen=True):
    """What is in the frames, by their ids: pictures, and of those without one the name or the sign that stands for it;
    and the key to these signs."""

    pictures: Mapping[str, Pixels]
    names: Mapping[str, str]

    @property
    def key(self) -> str:
        """What every sign stands for, in one line; "" where every name is in its frame."""
        return " · ".join(f"{sign}: {name}" for name, sign in self.names.items() if sign != name)


def shown_in(plans: Sequence[tuple[Plan, View]], pictures: Mapping[str, Pixels], lettering: Lettering) -> Shown:
    """What is in the frames of all these options: a name is whole, or there is a sign for it in every option."""
    blank = [hung.frame.id for hung in plans[0][0].frames if hung.frame.id not in pictures]
    whole = {hung.frame.id: True for hung in plans[0][0].frames}
    for plan, view in plans:
        for hung in plan.frames:
            name = _named(hung, hung.frame.id, view, lettering)
            whole[hung.frame.id] &= name is not None and name.text == hung.frame.id
    signs = _signs(whole)
    return Shown(pictures, {name: name if whole[name] else next(signs) for name in blank})


def _signs(taken: Iterable[str]) -> Iterator[str]:
    """Short signs that no frame's name begins with: a, b, … then aa, ab, … then numbers."""
    ids = [name.casefold() for name in taken]
    letters = string.ascii_lowercase
    pairs = (one + two for one, two in product(letters, letters))
    numbers = map(str, count(1))
    every = chain(letters, pairs, numbers)
    return (sign for sign in every if not any(name.startswith(sign) for name in ids))


def small_frame(hung: Hung, view: View, shown: Shown, lettering: Lettering) -> Iterator[Item]:
    """A frame with its picture, or with its name or sign."""
    pixels = shown.pictures.get(hung.frame.id)
    yield from frame_items(hung, view, MEDIUM if view.scale <= LARGE else HAIR)
    yield from picture_items(hung, view, pixels)
    if pixels is None and (name := _named(hung, shown.names[hung.frame.id], view, lettering)):
        yield name


def _named(hung: Hung, name: str, view: View, lettering: Lettering) -> Text | None:
    return named_in(view.rect(window(hung)).grown(-AIR / 2), name, NAMES, lettering)
