"""A small paper for every nail that moves: laid on its old hole by a pin and a spirit level, it shows the new one."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import partial

from templates_gen.correcting.holes import Cure, Cured
from templates_gen.correcting.moves import Move
from templates_gen.correcting.words import CAUTIONS, aside_words, up_words
from templates_gen.geometry import Rect, bounds
from templates_gen.items import Circle, Item, Line, Polygon, Template, Text, Use
from templates_gen.lettering import Lettering
from templates_gen.marks.blocks import block, shortened
from templates_gen.marks.firstpages import area_beside_rules
from templates_gen.marks.flow import Flow
from templates_gen.marks.ofjob import numbered, of_job
from templates_gen.marks.rules import RULES_FORM, rules_form
from templates_gen.marks.strokes import unbroken
from templates_gen.marks.wording import PRINT_WORDS, rule_words
from templates_gen.marksizes import H5, H7, H18, H25, HAIR, HEAVY, MEDIUM, NARROW, WIDE
from templates_gen.model import Fixing
from templates_gen.papersizes import first_paper
from templates_gen.planning import Plan
from templates_gen.printing.profile import Printer
from templates_gen.record import Record
from templates_gen.sheets.rules import rules
from templates_gen.sheets.sheet import page_of
from templates_gen.spreadsheet import NOTHING

# mm; our own design, no source
RING, CIRCLE, ARM = 2.0, 3.0, 7.0
"""Radius of the ring that goes on the old hole, of the circle about the new one, and half its hairlines' length."""
AROUND, HEAD, LEAST = 20.0, 25.0, 80.0
"""Paper around the holes, the head with the name above it, and the least width of a patch."""
CLEAR = 4.5
"""Level and plumb lines keep so far from the holes."""


class Hole(Record, frozen=True):
    """Where to make a hole, or to hang a larger hook by its seat (`seat`): mm right of and above the old hole.

    `move` is how far what the frame bears on goes, `words` is what stands beside the mark.
    """

    words: str
    right: float
    up: float
    seat: bool
    move: Move


class Patch(Record, frozen=True):
    """One paper: its name, what is moved, and the new holes about the old one at (0, 0)."""

    name: str
    lines: tuple[str, ...]
    holes: tuple[Hole, ...]

    @property
    def box(self) -> Rect:
        """The paper about the old hole (mm)."""
        points = bounds([Rect(0, 0, 0, 0), *(Rect(hole.right, hole.up, hole.right, hole.up) for hole in self.holes)])
        more = max(0.0, LEAST - points.width - 2 * AROUND) / 2
        grown = points.grown(AROUND)
        return Rect(grown.x0 - more, grown.y0, grown.x1 + more, grown.y1 + HEAD)


def patches(done: Sequence[Cured], unit: str) -> tuple[Patch, ...]:
    """The papers of all nails that move, one for every old hole."""
    found = []
    for cured in done:
        fixing = cured.hung.frame.fixing
        pairs = list(zip(cured.correction.moves, cured.cures, strict=True))
        for old in dict.fromkeys(move.old for move, _ in pairs):
            own = [(move, cure) for move, cure in pairs if move.old == old]
            lines = (
                *_first(own[0][1]),
                *(line for move, _ in own for line in _lines(move, fixing.kind if len(own) > 1 else "", unit)),
            )
            holes = tuple(_hole(move, cure, fixing, len(own) > 1) for move, cure in own)
            found.append(Patch(old, lines, holes))
    return tuple(found)


def _first(cure: Cure) -> tuple[str, ...]:
    """What the holes are for, or what comes first, where it is not just a new hole."""
    told = {"hook": "a larger hook, its seat on the bar", "fill": "first fill the old hole, and let it set"}
    return (told[cure.way],) if cure.way in told else ()


def _lines(move: Move, kind: str, unit: str) -> Iterator[str]:
    """How far the hole moves, one of several with the `kind` of its fixing."""
    for words in (up_words(move, unit), aside_words(move, unit)):
        if words != NOTHING:
            yield f"{_side(move)} {kind} {words}" if kind else words


def _side(move: Move) -> str:
    return move.nail.rpartition(" ")[2]


def _hole(move: Move, cure: Cure, fixing: Fixing, several: bool) -> Hole:
    """The new hole; of a larger hook the seat, for its nail is where its maker put it."""
    words = _side(move) if several else ""
    if cure.way != "hook":
        return Hole(words, move.right, move.up, False, move)
    return Hole("seat", move.right, move.up - fixing.rise, True, move)


def patch_pages(plan: Plan, done: Sequence[Cured], lettering: Lettering, printer: Printer | None = None) -> Template:
    """The patches on pages at full scale, as many as fit, with how to use them before the first.

    Raises InputError for a character that no font has.
    """
    job, paper = plan.job, plan.job.paper
    page = page_of(first_paper(paper, job.unit), False, printer)
    flow = Flow(area_beside_rules(page, paper.overlap), lettering)
    _words(flow, plan, rule_words(rules(page, paper.overlap, job.unit), job.unit))
    _fill(flow, patches(done, job.unit))
    pages = numbered(([Use(RULES_FORM, 0.0, 0.0), *items] for items in flow.pages), matrix=page.matrix)
    return of_job(job, "moved nails", page, pages, [rules_form(page, paper.overlap, job.unit, lettering)])


def _words(flow: Flow, plan: Plan, measured: str) -> None:
    flow.paragraph(f"{plan.job.title}: moved nails", H7, bold=True)
    flow.paragraph(f"Print at actual size. {PRINT_WORDS[1]}")
    flow.paragraph(measured, bold=True)
    flow.space(1.5)
    flow.steps((
        "Cut the papers apart. Take the frame down, and pull its old nail.",
        "Push a pin through the middle of the ring and into the old hole. Turn the paper until a spirit level along "
        "the level line is level, and tape it up.",
        "Make the new hole through the cross. A thick bar is the seat of a larger hook instead: hang the hook with its "
        "seat on the bar, and make the hole where its nail then is.",
    ))  # fmt: skip
    flow.space(1.0)
    for words in CAUTIONS:
        flow.paragraph(words)
    flow.space(4.0)


def _fill(flow: Flow, found: Sequence[Patch]) -> None:
    """Rows of papers of one width, as many beside each other as fit, so that they are cut straight through.

    Where a nail moves so far that its paper is larger than the page, its moves are told instead.
    """
    area = flow.area
    small = [patch for patch in found if patch.box.width <= area.width and patch.box.height <= area.height]
    for patch in found:
        if patch not in small:
            moves = ", ".join(patch.lines)
            flow.paragraph(f"{patch.name}: {moves}. Too far for a paper: measure it from the old hole.", bold=True)
    width = max((patch.box.width for patch in small), default=area.width)
    across = math.floor(area.width / width + 1e-9)
    for at in range(0, len(small), across):
        row = small[at : at + across]
        height = max(patch.box.height for patch in row)
        flow.picture(height, partial(_row, row=row, width=width, lettering=flow.lettering))


def _row(place: Rect, row: Sequence[Patch], width: float, lettering: Lettering) -> Iterator[Item]:
    for number, patch in enumerate(row):
        yield from _patch(Rect.sized(place.x0 + number * width, place.y0, width, place.height), patch, lettering)


def _patch(cell: Rect, patch: Patch, lettering: Lettering) -> Iterator[Item]:
    """One paper in its cell, its old hole as far from the middle as its new ones need."""
    yield Polygon(cell.corners, NARROW, False)
    x, y = cell.cx - patch.box.cx, cell.cy - patch.box.cy
    yield from _head(cell, patch, lettering)
    yield Circle(x, y, RING, WIDE)
    holes = [Rect.about(x, y, 2 * CLEAR, 2 * CLEAR)]
    for hole in patch.holes:
        at = x + hole.right, y + hole.up
        holes.append(Rect.about(*at, 2 * CLEAR, 2 * CLEAR))
        yield from _seat(*at) if hole.seat else _cross(*at)
        if hole.words:
            out = -1.0 if hole.right < 0 else 1.0  # away from the old hole
            beside = at[0] + out * ((ARM if hole.seat else CIRCLE) + 1.2)
            down = -1.2 if hole.seat else 2.0
            words = Text(beside, at[1] + down, hole.words, H25, "left" if out > 0 else "right")
            holes.append(lettering.box(words).grown(0.6))
            yield words
    top = cell.y1 - HEAD
    ends = Line(cell.x0 + 2, y, cell.x1 - 2, y, MEDIUM), Line(x, cell.y0 + 2, x, top, HAIR)
    yield from unbroken(ends, holes)
    yield Text(cell.x0 + 3, y + 1.2, "level", H25)
    legend = f"ring: old hole, {'bar: new seat' if all(hole.seat for hole in patch.holes) else 'cross: new'}"
    if x >= cell.cx:  # the legend goes where there is more room beside the plumb line
        yield Text(x + 1.2, cell.y0 + 3, "plumb", H18)
        yield Text(cell.x0 + 3, cell.y0 + 3, legend, H18)
    else:
        yield Text(x - 1.2, cell.y0 + 3, "plumb", H18, "right")
        yield Text(cell.x1 - 3, cell.y0 + 3, legend, H18, "right")


def _cross(x: float, y: float) -> Iterator[Item]:
    yield Line(x - ARM, y, x + ARM, y, HAIR)
    yield Line(x, y - ARM, x, y + ARM, HAIR)
    yield Circle(x, y, CIRCLE, WIDE)


def _seat(x: float, y: float) -> Iterator[Item]:
    """A bar where the frame bears."""
    yield Line(x - ARM, y, x + ARM, y, HEAVY)


def _head(cell: Rect, patch: Patch, lettering: Lettering) -> Iterator[Item]:
    """The frame's name, how far to move, and an arrow that points where to."""
    arrows = 14.0 * len(patch.holes)
    wide = cell.width - arrows - 6.0
    name = shortened(patch.name, H5, True, wide, lettering)
    lines = [(shortened(line, H25, False, wide, lettering), H25, False) for line in patch.lines]
    words = block([(name, H5, True), *lines], lettering)
    yield from words.at(cell.x0 + 3, cell.y1 - 2.5 - words.height)
    for number, hole in enumerate(patch.holes):
        yield from _arrow(cell.x1 - arrows + 14.0 * number + 6.0, cell.y1 - 8.5, hole.move.right, hole.move.up)


def _arrow(x: float, y: float, right: float, up: float) -> Iterator[Item]:
    """An arrow of 11 mm about (x, y) that points to where the hole moves."""
    length = math.hypot(right, up) or 1.0
    dx, dy = right / length, up / length

    def at(along: float, aside: float) -> tuple[float, float]:
        return x + along * dx - aside * dy, y + along * dy + aside * dx

    half = ((-5.5, 0.6), (1.0, 0.6), (1.0, 2.4), (5.5, 0.0))
    yield Polygon((*(at(*point) for point in half), *(at(along, -aside) for along, aside in half[-2::-1])))
