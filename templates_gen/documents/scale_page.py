"""The scale page: a level and an upright ruler, and two diagonals between four corner marks, to measure a printer."""

from __future__ import annotations

import math
from collections.abc import Iterator

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.base.record import Record
from templates_gen.base.units import INCH, MM, inches
from templates_gen.documents.instructions.wording import PRINT_WORDS
from templates_gen.documents.sheets.rulers import RULER_GRADES
from templates_gen.documents.sheets.scales import Graduation, ticks_along
from templates_gen.drawing.flow import STEP_INDENT, STEP_SPACE, Flow
from templates_gen.drawing.items import Item, Line, Page, Template, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.sizes import H5, H7, H25, H35, HAIR, NARROW, WIDE
from templates_gen.job.paper_sizes import named_sheet
from templates_gen.tiling.page import page_of

EDGE = 7.5
"""mm at least from what a printer reaches to the corner marks: room for the ticks.  Our own design, no source."""

ARM = 6.0
"""mm; half the length of a corner mark's lines.  Our own design, no source."""

INDENT = 16.0
"""mm that the words keep from the upright ruler.  Our own design, no source."""

LEAST_COLUMN = 100.0
"""mm; in a narrower one the command to type would be cut.  Our own design, no source."""

ASIDE, AIR, OFF_LINE = 9.0, 2.5, 1.2
"""mm: what words keep from the right edge, what diagonals keep from words, figures from their ruler.  Our own, no
source."""

NUMBER_ASIDE, NUMBER_UP = 13.0, 4.0
"""mm inward and up from a corner to its number.  Our own design, no source."""

MARKS, SPACES = 6, (2.0, 1.5, 2.5)
"""Arms of corner marks that a page has to be higher than its words; mm under the heading, the steps and the table.  Our
own design, no source."""

SHARES = (0.26, 0.17, 0.37, 0.20)
"""Of the table's width: its columns.  Our own design, no source."""

_BEFORE = (
    "Print this page at actual size, on one side, with borderless printing off, on the paper and from the tray that "
    f"templates will be printed from. {PRINT_WORDS[1]}",
    "Let it rest for half an hour in the room of the wall, and lay it flat.",
    "Measure from the middle of one corner mark to the middle of the other, to 0.2 mm or 1/64 in if you can. Start "
    "from a mark on your ruler, such as 10 mm or 1 in, not from its worn end, and subtract that.",
)


class Scale(Record, frozen=True):
    """What is to be measured on one paper: the rectangle between the corner marks (page mm), in whole steps of `unit`.

    `size` is the page in whole points.
    """

    paper: str
    box: Rect
    unit: str
    size: tuple[int, int]


def scale_of(paper: str) -> Scale:
    """The corner marks on a paper by its name, as far apart as it allows: in whole centimetres, or half inches on
    paper of inches.  Raises InputError for an unknown paper.
    """
    sheet, unit = named_sheet(paper, "--paper")
    page = page_of(sheet, turned=False)
    step, area = {"in": INCH / 2, "mm": MM["cm"]}[unit], page.printable.grown(-EDGE)
    across, along = (max(1, math.floor(length / step)) * step for length in (area.width, area.height))
    return Scale(sheet.name, Rect.about(area.cx, area.cy, across, along), unit, (page.width, page.height))


def scale_page(scale: Scale, lettering: Lettering) -> Template:
    """The page itself.  Raises InputError for paper so small that the words do not fit between the corner marks."""
    block, words = _words(scale, lettering)
    items = (*_rulers(scale), *_corners(scale.box), *_diagonals(scale.box, block.grown(AIR)), *words)
    return Template("Scale page", "", "en", scale.size, (Page("1", "", tuple(items)),))


def _rulers(scale: Scale) -> Iterator[Item]:
    """Level ruler and upright ruler with their ticks outside, so that a steel rule can lie inside along them."""
    box, grade, unit = scale.box, RULER_GRADES[scale.unit], scale.unit
    yield Line(box.x0, box.y0, box.x1, box.y0, WIDE)
    yield Line(box.x0, box.y0, box.x0, box.y1, WIDE)
    for x, number in ticks_along(box.x0, box.x1, box.x0, grade):
        yield Line(x, box.y0, x, box.y0 - grade.tick(number), HAIR)
        if figure := _figure(number, x, box.x1, grade):
            yield Text(x, box.y0 + OFF_LINE, f"{figure} {unit}", H25, "middle")
    for y, number in ticks_along(box.y0, box.y1, box.y0, grade):
        yield Line(box.x0, y, box.x0 - grade.tick(number), y, HAIR)
        if figure := _figure(number, y, box.y1, grade):
            yield Text(box.x0 + OFF_LINE + H25, y, f"{figure} {unit}", H25, "middle", 90)


def _figure(number: int, at: float, end: float, grade: Graduation) -> str:
    """The figure of a tick, none where a corner mark is near."""
    return grade.figure(number) if number and end - at > 2 * ARM else ""


def _corners(box: Rect) -> Iterator[Item]:
    """A cross at every corner, numbered from the lower left one by rows."""
    for number, (x, y) in enumerate(((x, y) for y in (box.y0, box.y1) for x in (box.x0, box.x1)), 1):
        yield Line(x - ARM, y, x + ARM, y, NARROW)
        yield Line(x, y - ARM, x, y + ARM, NARROW)
        aside, up = NUMBER_ASIDE if x < box.cx else -NUMBER_ASIDE, NUMBER_UP if y < box.cy else -NUMBER_UP - H5
        yield Text(x + aside, y + up, str(number), H5, "middle", bold=True)


def _diagonals(box: Rect, block: Rect) -> Iterator[Item]:
    """Both diagonals, left out where the words are."""
    for x0, x1 in ((box.x0, box.x1), (box.x1, box.x0)):
        for start, end in ((box.y0, block.y0), (block.y1, box.y1)):
            at, to = ((y - box.y0) / box.height for y in (start, end))
            yield Line(x0 + at * (x1 - x0), start, x0 + to * (x1 - x0), end, HAIR)


def _words(scale: Scale, lettering: Lettering) -> tuple[Rect, list[Item]]:
    """What to measure, where to write it down and what to do with it, in the middle of the page; and what that takes.

    It has to leave room for the corners' numbers above and below.
    """
    box = scale.box
    column = Rect(box.x0 + INDENT, box.y0, box.x1 - ASIDE, box.y1)
    trial = Flow(column, lettering)
    _say(trial, scale)
    used = column.y1 - trial.top
    if len(trial.pages) > 1 or used > box.height - MARKS * ARM or column.width < LEAST_COLUMN:
        raise InputError("--paper", f"{scale.paper} is too small for a scale page", "choose a4, letter or larger")
    block = Rect(column.x0, box.cy - used / 2, column.x1, box.cy + used / 2)
    flow = Flow(block.grown(TOLERANCE), lettering)
    _say(flow, scale)
    return block, flow.pages[0]


def _say(flow: Flow, scale: Scale) -> None:
    flow.paragraph("Scale page", H7, bold=True)
    flow.paragraph(f"for {scale.paper} paper: measure this once, and templates are corrected for your printer")
    flow.space(SPACES[0])
    flow.steps(_BEFORE)
    flow.space(SPACES[1])
    columns = [share * flow.area.width for share in SHARES]
    flow.table(("", "corners", "should be", "is"), _rows(scale), columns, H35)
    flow.space(SPACES[2])
    paper = f'"{scale.paper}"' if " " in scale.paper else scale.paper
    after = (
        'Record it on the computer under a name you choose. A number without a unit is mm, others as in "7 1/32 in"; '
        "without diagonals the printer is assumed to print square.",
        f"templates-gen printer record NAME --paper {paper} --across L1 --along L2 --diagonals D1 D2",
        "From then on, templates for this printer:",
        "templates-gen template JOB --printer NAME",
    )
    for number, words in enumerate(after):
        step = "" if number % 2 else str(len(_BEFORE) + 1 + number // 2)
        flow.paragraph(words, indent=STEP_INDENT, lead=step, bold=not step)
        flow.space(STEP_SPACE)


def _rows(scale: Scale) -> list[tuple[str, str, str, str]]:
    across, along = scale.box.width, scale.box.height
    lengths = (across, along, math.hypot(across, along), math.hypot(across, along))
    names = (("L1, across", "1 to 2"), ("L2, along", "1 to 3"), ("D1, diagonal", "1 to 4"), ("D2, diagonal", "3 to 2"))
    return [(*name, _told(length, scale.unit), "") for name, length in zip(names, lengths, strict=True)]


def _told(length: float, unit: str) -> str:
    """A length as it should be: in mm to a tenth, and in inches first on paper of inches."""
    return f"{inches(length)} in · {length:.1f} mm" if unit == "in" else f"{length:.1f} mm"
