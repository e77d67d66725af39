"""The blank form for the readings: on paper for the wall, and as a spreadsheet with the same columns to fill in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from itertools import accumulate

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.csv_cells import as_csv, own_text
from templates_gen.base.geometry import Rect
from templates_gen.base.units import other_unit, show, show_both
from templates_gen.documents.correcting.readings import FORM, PRINTED
from templates_gen.documents.instructions.wording import TO_WRITE
from templates_gen.documents.of_job import numbered, of_job, text_area, whose
from templates_gen.documents.schedule.distances import above_floor, left_end, sideways, upward
from templates_gen.drawing.blocks import LineOfText, block, shortened
from templates_gen.drawing.flow import Flow
from templates_gen.drawing.items import Item, Line, Polygon, Template, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.sizes import H5, H7, H18, H25, H35, HAIR, NARROW
from templates_gen.job.paper_sizes import first_paper
from templates_gen.tiling.page import page_of

SHARES = (0.165, 0.125, 0.17, 0.125, 0.125, 0.16, 0.13)
"""Parts of the width that the form's columns take.  Our own design, no source."""

HEADER = (
    ("frame",), ("floor to top,", "should be"), ("line to top,", "should be"), ("top edge,", "left corner"),
    ("top edge,", "right corner"), ("left edge", "should be"), ("left edge",),
)  # fmt: skip

Lines = list[LineOfText]
"""The lines of text in one cell."""

ROW = 14.0
"""mm; a row to write in with a thick pencil.  Our own design, no source."""

HEAD, INSET = 9.0, 1.5
"""mm; the row of what the columns are, and between a cell's line and its words.  Our own design, no source."""

TICKS, BASE, TICK, TICK_AT, TICK_WORDS = 10.0, 3.0, 4.0, (70.0, 95.0), 6.0
"""mm; the height of the line of boxes to tick and of its letters' feet, a box, where the two are, and how far behind
the left of a box its words begin.  Our own design, no source."""


def form_csv(plan: Plan) -> str:
    """The spreadsheet to fill in, with what should be measured in the job's unit."""
    unit, blanks = plan.job.unit, [""] * (len(FORM) - len(PRINTED))
    return as_csv(
        FORM,
        (
            (
                own_text(hung.frame.id), own_text(hung.frame.title),
                show(hung.rect.y1, unit), *_from_lines(hung, plan, unit), *blanks,
            )
            for hung in plan.frames
        ),
    )  # fmt: skip


def _from_lines(hung: Hung, plan: Plan, unit: str) -> tuple[str, str]:
    """How far the top edge is to be from the level line, and the left edge from the centre line."""
    rect = hung.rect
    return upward(rect.y1 - plan.level_line, unit), sideways(rect.x0 - plan.centre_line, unit)


def form_pages(plan: Plan, lettering: Lettering) -> Template:
    """The form on the job's own paper, or a common one where that is a roll.  Raises InputError."""
    job = plan.job
    page = page_of(first_paper(job.paper, job.unit), turned=False)
    flow = Flow(text_area(page), lettering)
    flow.paragraph(f"{job.title}: as it hangs", H7, bold=True)
    flow.paragraph(whose(job) or "After hanging", H25)
    flow.space(2.0)
    flow.steps(_steps(plan))
    flow.picture(TICKS, _ticks)
    _rows(flow, plan)
    return of_job(job, "as it hangs", page, numbered(flow.pages))


def _steps(plan: Plan) -> Iterator[str]:
    unit = plan.job.unit
    yield (
        "Level the frame, then measure. On a wire or teeth: slide it until a spirit level on its top edge is level. A "
        "frame on a wire that was measured while it hung crooked is refused."
    )
    yield (
        f"Measure both top corners (left and right are as you face the wall): {above_floor(plan)}, or from the level "
        f"line ({show_both(plan.level_line, unit)} {above_floor(plan)}), drawn or stretched again with a level: write "
        f"above or below behind it. Write {TO_WRITE[unit]}. Floors are seldom level, so the line tells more."
    )
    yield (
        "Only where a frame looks out of place sideways: measure its left edge, at the top corner, from the centre "
        f"line ({show_both(plan.centre_line, unit)} from {left_end(plan)}), and write left or right behind it."
    )
    yield (
        "On the computer, write a table to fill in:  templates-gen correct JOB --form -o readings.csv.  "
        "Then ask what has to move:  templates-gen correct JOB readings.csv"
    )
    yield "On a ladder: not on the top steps, three points of contact, someone to hold it and to write this down."


def _ticks(place: Rect) -> Iterator[Item]:
    """What the heights were measured from, to be ticked."""
    y = place.y0 + BASE
    yield Text(place.x0, y, "Top edges measured from the", H35)
    for x, words in ((place.x0 + TICK_AT[0], "floor"), (place.x0 + TICK_AT[1], "level line")):
        yield Polygon(Rect.sized(x, y - 0.5, TICK, TICK).corners, NARROW, False)
        yield Text(x + TICK_WORDS, y, words, H35)


def _rows(flow: Flow, plan: Plan) -> None:
    """The header, again on every page, and a row for every frame."""
    page, header = 0, [[(line, H25, True) for line in lines] for lines in HEADER]
    for hung in plan.frames:
        flow.need(2 * ROW)
        if page < len(flow.pages):
            page = len(flow.pages)
            flow.picture(HEAD, partial(_row, cells=header, lettering=flow.lettering))
        flow.picture(ROW, partial(_row, cells=_cells(hung, plan), lettering=flow.lettering))


def _cells(hung: Hung, plan: Plan) -> list[Lines]:
    """What stands in a frame's row: the values it should have, and the blanks."""
    both = (plan.job.unit, other_unit(plan.job.unit))
    lines, edges = zip(*(_from_lines(hung, plan, unit) for unit in both), strict=True)
    tops = [show(hung.rect.y1, unit) for unit in both]
    return [
        [(hung.frame.id, H5, True), (hung.frame.title, H25, False)],
        [(text, H25, False) for text in tops], [(text, H25, False) for text in lines],
        [], [],
        [(text, H25, False) for text in edges],
        [],
    ]  # fmt: skip


def _row(place: Rect, cells: Sequence[Lines], lettering: Lettering) -> Iterator[Item]:
    """One row: texts in the middle of their cells' height, a line under it, and a line beside every cell."""
    sides = list(accumulate((share * place.width for share in SHARES), initial=place.x0))
    yield Line(place.x0, place.y0, place.x1, place.y0, NARROW)
    yield from (Line(x, place.y0, x, place.y1, HAIR) for x in sides[1:-1])
    for x, end, lines in zip(sides, sides[1:], cells, strict=False):
        words = block([_fitted(line, end - x - 2 * INSET, lettering) for line in lines], lettering)
        yield from words.at(x + INSET, place.cy - words.height / 2)


def _fitted(line: LineOfText, width: float, lettering: Lettering) -> LineOfText:
    """The line no wider than this: small where it has to be, and cut short where even that is too wide."""
    text, size, bold = line
    size = size if lettering.width(text, size, bold) <= width else H18
    return shortened(text, size, bold, width, lettering), size, bold
