"""The measuring sheet: every frame from the back, to scale, with blanks to be filled in with a pencil."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templates_gen.base.adding import added
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.documents.instructions.wording import TO_WRITE
from templates_gen.documents.measuring.back_sizes import OVER, ROOM
from templates_gen.documents.measuring.back_view import Back, back_view, drawn_scale, lettered
from templates_gen.documents.measuring.fields import Measure, measures
from templates_gen.documents.of_job import numbered, of_job
from templates_gen.drawing.blocks import shortened, wrapped
from templates_gen.drawing.flow import Flow
from templates_gen.drawing.items import Item, Line, Template, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.sizes import H5, H7, H25, H35, HAIR, NARROW
from templates_gen.job.model import Frame, Job, Paper
from templates_gen.tiling.page import page_of

PITCHES = (11.5, 10.5)
"""mm from blank to blank, the second where it saves a page: a pencil writes figures 8 mm high in them.  Our own design,
no source."""

BLANK, UNIT, LETTER, WORDS = 38.0, 10.0, 6.0, 54.0
"""mm: width of a blank, of the unit behind it, of the letter and of the words before it.  Our own design, no source."""

LINE = 3.6
"""mm between the base lines of the words beside a blank.  Our own design, no source."""

LEAST_DRAWING = 45.0
"""mm across; in less, rings and dimensions of a frame run into each other.  Our own design, no source."""

HEAD, GAP = 11.0, 3.0
"""mm: a frame's heading, and what is free between two frames.  Our own design, no source."""

LOWEST, HIGHEST, STEP = 46, 110, 2
"""mm that a drawing with its dimensions may be high: the least, so that several frames share a page, and the most, to
fill it, in such steps.  Our own design, no source."""

MOST_ON_PAGE = 12
"""Frames on a page, even of the largest paper.  Our own design, no source."""

_FROM_BEHIND = (
    "Every frame is shown as seen from the back: left and right are as you see them when you have turned it over."
)
_WIRES = (
    "Pull the wire taut, straight up, where the hook will be, and measure from its highest point to the frame's top "
    "edge."
)
_STRAPS = (
    "Pull rings straight up, and measure from where their hook will bear to the frame's top edge.",
    "Pull rings up the same way.",
)
_EVERY = "Measure every frame, even if it has a twin: two of one make may differ by more than the eye forgives."

NUMBER, INDENT, UNDER_LINE, AFTER_ID, AFTER_BLANK = 25.0, 5.0, 2.5, 4.0, 1.5
"""mm: what the page's number takes, the directions' indent, from a frame's line to its id, from that to its title, and
from a blank to its unit.  Our own design, no source."""

LEAST_TITLE = 12
"""Letters of a title that say something where it is cut short.  Our own design, no source."""


class _Entry(Record, frozen=True):
    """A frame with what is measured on it, its height on the sheet, and from blank to blank (mm)."""

    frame: Frame
    wanted: tuple[Measure, ...]
    scale: int
    height: float
    pitch: float


def measuring_sheet(job: Job, paper: Paper, lettering: Lettering) -> Template:
    """The sheet, on as many pages as it takes.  Raises InputError for paper that is too small for it."""
    page = page_of(paper, turned=False)
    area = page.printable.grown(-2.0)
    drawing = area.width - LETTER - WORDS - BLANK - UNIT - GAP
    tops = [_top(job, area, lettering, first) for first in (True, False)]
    rooms = tuple(top.top - area.y0 for top in tops)
    ways = [_shared_out(job, drawing, pitch, rooms) for pitch in PITCHES] if drawing >= LEAST_DRAWING else []
    parted = min(filter(None, ways), key=len, default=None)
    if parted is None:
        raise InputError("--paper", f"{paper.name} is too small for a measuring sheet", "choose a4, letter or larger")
    pages = []
    for number, entries in enumerate(parted):
        top = tops[min(number, 1)]
        larger = _as_large(entries, job.unit, drawing, top.top - area.y0)
        items = list(top.pages[0])
        items += _page(larger, Rect(area.x0, area.y0, area.x1, top.top), drawing, job.unit, lettering)
        items.append(Text(area.x1, area.y1 - H35, f"page {number + 1} of {len(parted)}", H25, "right"))
        pages.append(items)
    return of_job(job, "measuring sheet", page, numbered(pages, {0: "Measuring sheet"}), attach=True)


def _entry(frame: Frame, unit: str, drawing: float, pitch: float, highest: float) -> _Entry:
    wanted = measures(frame, unit)
    blanks = len(wanted) * pitch
    scale = drawn_scale(frame, drawing, max(blanks, highest))
    return _Entry(frame, wanted, scale, HEAD + max(blanks, frame.height / scale + ROOM + OVER), pitch)


def _shared_out(job: Job, drawing: float, pitch: float, rooms: tuple[float, ...]) -> list[list[_Entry]] | None:
    """The frames on the fewest pages, about as many on each; None where one does not fit on a page.

    `rooms` are the heights (mm) that the first page and the others have.  Of so many pages those are taken whose
    empty parts have the least sum of squares.
    """
    entries = [_entry(frame, job.unit, drawing, pitch, LOWEST) for frame in job.frames]
    best: list[tuple[int, float, int] | None] = [(0, 0.0, 0)]
    for end in range(1, len(entries) + 1):
        ways = []
        for start in range(max(0, end - MOST_ON_PAGE), end):
            before = best[start]
            empty = rooms[0 if start == 0 else 1] - _high(entries[start:end])
            if before is not None and empty >= 0:
                ways.append((before[0] + 1, before[1] + empty**2, start))
        best.append(min(ways, default=None))
    pages, end = [], len(entries)
    while end and (last := best[end]):
        pages.append(entries[last[2] : end])
        end = last[2]
    return None if end else pages[::-1]


def _high(entries: Sequence[_Entry]) -> float:
    """How high they are together (mm)."""
    return added(entry.height for entry in entries) + (len(entries) - 1) * GAP


def _as_large(entries: Sequence[_Entry], unit: str, drawing: float, room: float) -> list[_Entry]:
    """The frames of one page drawn as large as its height allows."""
    found = list(entries)
    for highest in range(LOWEST, HIGHEST + 1, STEP):
        larger = [_entry(entry.frame, unit, drawing, entry.pitch, highest) for entry in entries]
        if _high(larger) <= room:
            found = larger
    return found


_BEYOND = " Where a plate stands out beyond the side or the top edge, write a minus before the figure."


def _top(job: Job, area: Rect, lettering: Lettering, first: bool) -> Flow:
    """What stands at the top of a page: all there is to know on the first, a reminder on the others."""
    flow, name = Flow(area, lettering), ": measuring sheet"
    kinds = [frame.hanger.traits for frame in job.frames]
    wires, straps = any(kind.on_wire for kind in kinds), any(kind.gives and not kind.on_wire for kind in kinds)
    pulled = " ".join(filter(None, (wires * _WIRES, straps * _STRAPS[wires])))  # nothing else gives when it is pulled
    room = area.width - NUMBER - lettering.width(name, H5, True)  # the page's number stands in the corner
    flow.paragraph(shortened(job.title, H5, True, room, lettering) + name, H5, bold=True)
    if first:
        told = [words for words in (_FROM_BEHIND, pulled, _EVERY) if words]
        for number, words in enumerate(told, 1):
            flow.paragraph(words, indent=INDENT, lead=f"{number}")
        flow.paragraph(
            f"Write {TO_WRITE[job.unit]}. Each “was” is the value in the job so far: check it. A hanger that was not "
            f"measured yet is drawn where it usually sits.{_BEYOND if any(kind.shows for kind in kinds) else ''}",
            indent=INDENT,
            lead=f"{len(told) + 1}",
        )
    else:
        flow.paragraph(
            f"Seen from the back.{' Pull the wire taut.' * wires} Measure every frame, even if it has a twin."
        )
    flow.space(GAP)
    return flow


def _page(entries: Sequence[_Entry], place: Rect, drawing: float, unit: str, lettering: Lettering) -> Iterator[Item]:
    """The frames of one page from its top; what is left over is free between them."""
    gap = GAP + (place.height - _high(entries)) / len(entries)
    y = place.y1
    for entry in entries:
        yield from _frame_items(entry, Rect(place.x0, y - entry.height, place.x1, y), drawing, unit, lettering)
        y -= entry.height + gap


def _frame_items(entry: _Entry, place: Rect, drawing: float, unit: str, lettering: Lettering) -> Iterator[Item]:
    """A frame under a line of its own: heading, drawing to the left, blanks to the right."""
    frame, letters = entry.frame, lettered(entry.wanted)
    yield Line(place.x0, place.y1, place.x1, place.y1, NARROW)
    yield from _heading(entry, place, lettering)
    width, height = frame.width / entry.scale, frame.height / entry.scale
    rect = Rect.sized(place.x0 + (drawing - width) / 2, place.y1 - HEAD - OVER - height, width, height)
    yield from back_view(Back(frame, rect, entry.scale), letters)
    x, y = place.x0 + drawing + GAP, place.y1 - HEAD
    for one in entry.wanted:
        yield from _blank(one, letters.get(one.name, ""), x, y - entry.pitch, unit, lettering)
        y -= entry.pitch


def _heading(entry: _Entry, place: Rect, lettering: Lettering) -> Iterator[Item]:
    """Id and title, and how the frame is drawn."""
    frame, base = entry.frame, place.y1 - UNDER_LINE - H7
    told = f"{frame.hanger.kind} · seen from the back · 1 : {entry.scale}"
    right = lettering.width(told, H25)
    yield Text(place.x1, base, told, H25, "right")
    free = place.width - right - AFTER_ID
    large = next((size for size in (H7, H5, H35) if lettering.width(frame.id, size, True) <= free), H35)
    name = shortened(frame.id, large, True, free, lettering)  # rather small than cut: another may begin alike
    yield Text(place.x0, base, name, large, bold=True)
    x = place.x0 + lettering.width(name, large, True) + AFTER_ID
    title = shortened(frame.title, H35, False, place.x1 - right - AFTER_ID - x, lettering)
    if title == frame.title or len(title) > LEAST_TITLE:
        yield Text(x, base, title, H35)


def _blank(one: Measure, letter: str, x: float, y: float, unit: str, lettering: Lettering) -> Iterator[Item]:
    """A letter, what it stands for, what is known of it, and a blank with its unit, just above y."""
    base = y + 1.0
    if letter:
        yield Text(x + 2.0, base + 0.5, letter, H35, "middle", 0, True)
    lines = wrapped(one.words, H25, False, WORDS - 2.0, lettering)[:2]
    known = [f"was {one.shown(unit)}"] if one.known is not None else []
    for number, line in enumerate(reversed([*lines, *known])):
        yield Text(x + LETTER, base + 0.5 + LINE * number, line, H25)
    start = x + LETTER + WORDS
    yield Line(start, base, start + BLANK, base, HAIR)
    name = ("lb" if unit == "in" else "kg") if one.is_mass else unit
    yield Text(start + BLANK + AFTER_BLANK, base, name, H35)
