"""A small paper for every nail that moves: laid on its old hole by a pin and a spirit level, it shows the new one.

Limits and sizes without a source beside them are our own, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence, Set
from functools import partial

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.documents.correcting.holes import Cured
from templates_gen.documents.correcting.patches import Hole, Patch, patches
from templates_gen.documents.correcting.sentences import CAUTIONS
from templates_gen.documents.instructions.first_pages import area_beside_rulers
from templates_gen.documents.instructions.wording import PRINT_WORDS, ruler_words
from templates_gen.documents.of_job import numbered, of_job
from templates_gen.documents.schedule.distances import unmistakable
from templates_gen.documents.sheets.rulers import RULERS_FORM, rulers_form
from templates_gen.drawing.blocks import Block, block, wrapped
from templates_gen.drawing.flow import Flow
from templates_gen.drawing.items import Circle, Item, Line, Polygon, Template, Text, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.sizes import H5, H7, H18, H25, H35, HAIR, HEAVY, MEDIUM, NARROW, WIDE
from templates_gen.drawing.strokes import unbroken
from templates_gen.job.paper_sizes import first_paper
from templates_gen.printer.profile import Printer
from templates_gen.tiling.page import page_of
from templates_gen.tiling.rulers import rulers

# mm; our own design, no source
RING, CIRCLE, ARM = 2.5, 3.0, 7.0
"""Radius of the ring that goes on the old hole, of the circle about the new one, and half its hairlines' length."""
INSET = 3.0
"""What is free about a patch's words."""
UP, UP_WIDTH, UP_BAR, OVER_BAR, UNDER_UP, UP_ROOM = 11.0, 10.0, 1.4, 1.6, 1.5, 18.0
"""The triangle over a bar that says which side is up, for an arrow would be taken for the move: the height and width of
both, the bar's height, what is free over it; down to the words; all their width."""
CLEAR = 4.5
"""Level and plumb lines keep so far from the holes."""
CLEAR_OF, OFF, OFF_CROSS = 0.8, 1.2, 2.0
"""And words from what is drawn, from lines and marks that they are about, and up from a cross's level hairline."""
FAR = (OFF, 4.0, 8.0)
"""From the ring to its name, the first that is free."""
BREAK = 0.6
"""Lines break off so far from words."""
BEFORE_STEPS = 1.5
"""What is free between what the pages are and the steps."""
SEATS = (
    " A thick bar is the seat of another hook instead: hang the hook with its seat on the bar, and make the hole where "
    "its nail then is."
)
FILLED = ", or onto its middle where it was filled"
UP_WORDS = ("this side", "up")


def patch_pages(plan: Plan, done: Sequence[Cured], lettering: Lettering, printer: Printer | None = None) -> Template:
    """The patches on pages at full scale, as many as fit, with how to use them before the first.

    Raises InputError for a character that no font has.
    """
    job, paper = plan.job, plan.job.paper
    page = page_of(first_paper(paper, job.unit), False, printer)
    flow = Flow(area_beside_rulers(page, paper.overlap), lettering)
    found = patches(done, job.unit)
    filled = any(cure.way == "fill" for cured in done for cure in cured.cures)
    screws = {cured.hung.frame.fixing.kind == "screw" for cured in done if cured.correction.moves}
    _words(flow, plan, ruler_words(rulers(page, paper.overlap, job.unit), job.unit), found, screws, filled)
    _fill(flow, found)
    pages = numbered(([Use(RULERS_FORM, 0.0, 0.0), *items] for items in flow.pages), matrix=page.matrix)
    return of_job(job, "moved nails", page, pages, [rulers_form(page, paper.overlap, job.unit, lettering)])


def _words(flow: Flow, plan: Plan, measured: str, found: Sequence[Patch], screws: Set[bool], filled: bool) -> None:
    """How to use the papers; `screws` says of the old fixings whether they are, `filled` whether a hole is."""
    old = " or ".join(word for word, wanted in (("nail", False), ("screw", True)) if wanted in screws)
    seats = any(hole.seat for patch in found for hole in patch.holes)
    flow.paragraph(f"{plan.job.title}: moved nails", H7, bold=True)
    flow.paragraph(f"Print at actual size. {PRINT_WORDS[1]}")
    flow.paragraph(measured, bold=True)
    flow.paragraph("Left and right are as you face the wall.")
    flow.space(BEFORE_STEPS)
    flow.steps((
        f"Cut the papers apart. Take the frame down, and take out its old {old}.",
        f"Push a pin through the middle of the ring and into the old hole{FILLED if filled else ''}, the triangle up. "
        "Turn the paper until a spirit level along the level line is level, and tape it up.",
        f"Make the new hole through the cross.{SEATS if seats else ''}",
    ))  # fmt: skip
    flow.space(1.0)
    for words in CAUTIONS:
        flow.paragraph(words)
    flow.space(4.0)


def _fill(flow: Flow, found: Sequence[Patch]) -> None:
    """Rows of papers, each of one width and as many beside each other as fit, so that they are cut straight through.

    Where a nail moves so far that its paper is larger than the page, its moves are told instead.
    """
    area, small = flow.area, list[Patch]()
    for patch in found:
        head = _head(patch, patch.box.width, flow.lettering).height
        if patch.box.width <= area.width and patch.box.height + head + 2 * INSET <= area.height:
            small.append(patch)
        else:
            moves, name = "; ".join(patch.lines), ", ".join(filter(None, (patch.name, patch.nail)))
            flow.paragraph(f"{name}: {moves}. Too far for a paper: measure it from the old hole.", bold=True)
    for row, width in _rows(small, area.width):
        told = [(patch, _head(patch, width, flow.lettering)) for patch in row]
        head = max(words.height for _, words in told) + 2 * INSET
        height = head + max(patch.box.height for patch in row)
        flow.picture(height, partial(_row, row=told, width=width, head=head, lettering=flow.lettering))


def _rows(found: Sequence[Patch], room: float) -> Iterator[tuple[list[Patch], float]]:
    """The papers in rows, as many beside each other as go into so much room (mm), with the width of each."""
    row, width = list[Patch](), 0.0
    for patch in found:
        wider = max(width, patch.box.width)
        if row and wider * (len(row) + 1) > room + TOLERANCE:
            yield row, width
            row, wider = [], patch.box.width
        row, width = [*row, patch], wider
    if row:
        yield row, width


def _head(patch: Patch, width: float, lettering: Lettering) -> Block:
    """The frame's name and what to do, in lines beside the triangle: wrapped, so that no number is cut."""
    wide = width - UP_ROOM - 2 * INSET
    sizes = [
        (unmistakable(patch.name), H5, True),
        (patch.nail, H35, True),
        *((line, H25, False) for line in patch.lines),
    ]
    return block(
        [(line, size, bold) for text, size, bold in sizes for line in wrapped(text, size, bold, wide, lettering)],
        lettering,
    )


def _row(
    place: Rect, row: Sequence[tuple[Patch, Block]], width: float, head: float, lettering: Lettering
) -> Iterator[Item]:
    for number, (patch, words) in enumerate(row):
        cell = Rect.sized(place.x0 + number * width, place.y0, width, place.height)
        yield Polygon(cell.corners, NARROW, False)
        yield from words.at(cell.x0 + INSET, cell.y1 - INSET - words.height)
        yield from _this_side_up(cell.x1 - INSET - UP_ROOM / 2, cell.y1 - INSET, lettering)
        yield from _patch(Rect(cell.x0, cell.y0, cell.x1, cell.y1 - head), patch, lettering)


def _this_side_up(x: float, top: float, lettering: Lettering) -> Iterator[Item]:
    """A triangle over a bar, with the words under it, in the middle of x."""
    half, bar = UP_WIDTH / 2, Rect.sized(x - UP_WIDTH / 2, top - UP, UP_WIDTH, UP_BAR)
    base = bar.y1 + OVER_BAR
    yield Polygon(((x, top), (x - half, base), (x + half, base)))
    yield Polygon(bar.corners)
    words = block([(line, H25, True) for line in UP_WORDS], lettering)
    yield from words.at(x - words.width / 2, top - UP - UNDER_UP - words.height, "middle")


def _patch(cell: Rect, patch: Patch, lettering: Lettering) -> Iterator[Item]:
    """The holes on a paper, below its words: the old one as far from the middle as the new ones need."""
    x, y = cell.cx - patch.box.cx, cell.cy - patch.box.cy
    yield Circle(x, y, RING, WIDE)
    taken = [Rect.about(x, y, 2 * RING, 2 * RING)]
    holes = [Rect.about(x, y, 2 * CLEAR, 2 * CLEAR)]
    for hole in patch.holes:
        at = x + hole.right, y + hole.up
        yield from _seat(*at) if hole.seat else _cross(*at)
        words = _beside_mark(hole, *at)
        yield words
        taken += [*_arms(*at, hole.seat), lettering.box(words)]
        holes += [Rect.about(*at, 2 * CLEAR, 2 * CLEAR), lettering.box(words).grown(BREAK)]
    old = _clear_of(taken, _old(x, y), lettering)
    yield old
    holes.append(lettering.box(old).grown(BREAK))
    ends = Line(cell.x0 + 2, y, cell.x1 - 2, y, MEDIUM), Line(x, cell.y0 + 2, x, cell.y1, HAIR)
    yield from (line for line in unbroken(ends, holes) if max(line.x1 - line.x0, line.y1 - line.y0) > CLEAR)
    taken.append(lettering.box(old))
    sides = (cell.x0 + INSET, "left"), (cell.x1 - INSET, "right")
    yield _clear_of(taken, [Text(at, y + OFF, "level", H25, align) for at, align in sides], lettering)
    out = OFF if x >= cell.cx else -OFF
    yield Text(x + out, cell.y0 + 3, "plumb", H18, "left" if out > 0 else "right")


def _arms(x: float, y: float, seat: bool) -> tuple[Rect, ...]:
    """What is drawn of a new hole, as rectangles."""
    level = Rect.about(x, y, 2 * ARM, HEAVY)
    return (level,) if seat else (level, Rect.about(x, y, HEAVY, 2 * ARM), Rect.about(x, y, 2 * CIRCLE, 2 * CIRCLE))


def _beside_mark(hole: Hole, x: float, y: float) -> Text:
    """What a new hole is called, on the side of it away from the old one."""
    out = -1.0 if hole.right < 0 else 1.0
    far = (ARM if hole.seat else CIRCLE) + OFF
    down = -OFF if hole.seat else OFF_CROSS
    return Text(x + out * far, y + down, hole.words, H25, "left" if out > 0 else "right")


def _old(x: float, y: float) -> list[Text]:
    """What the ring is called: beside it, under or over the level line."""
    return [
        Text(x + way * (RING + far), y + up, "old", H25, "left" if way > 0 else "right")
        for far in FAR
        for up in (-H25 - OFF, OFF)
        for way in (-1.0, 1.0)
    ]


def _clear_of(taken: Sequence[Rect], places: Sequence[Text], lettering: Lettering) -> Text:
    """The first of the places that is well clear of what is taken, or else the one that is farthest from it."""
    free = [min(lettering.box(text).gap_to(rect) for rect in taken) for text in places]
    return next((text for text, gap in zip(places, free, strict=True) if gap > CLEAR_OF), places[free.index(max(free))])


def _cross(x: float, y: float) -> Iterator[Item]:
    yield Line(x - ARM, y, x + ARM, y, HAIR)
    yield Line(x, y - ARM, x, y + ARM, HAIR)
    yield Circle(x, y, CIRCLE, WIDE)


def _seat(x: float, y: float) -> Iterator[Item]:
    """A bar where the frame bears."""
    yield Line(x - ARM, y, x + ARM, y, HEAVY)
