"""The hanging guide, on one page to have at the wall: the tools to tick off and the day in pictures."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from templates_gen.arranging.plan import Plan
from templates_gen.base.adding import added
from templates_gen.base.geometry import Rect
from templates_gen.documents.instructions.hanging_day import hanging_steps
from templates_gen.documents.instructions.sketches import FIELD, DayStep, Sketch
from templates_gen.documents.instructions.wording import TOOLS, own_tools
from templates_gen.drawing.blocks import ink_of, wrapped
from templates_gen.drawing.flow import LEADING, LINE_SPACE, Flow
from templates_gen.drawing.items import Item, Polygon, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.sizes import H5, H25, H35, NARROW
from templates_gen.tiling.sheet import SheetPlan

GUTTER, LEAST_WIDTH, LEAST_HEIGHT = 5.0, 33.9, 18.0
"""mm between two pictures; how wide one has to be for its words, and how high.  Our own design, no source."""

GOOD_HEIGHT = 18.5
"""mm; how high the pictures must come out for the guide to stand under something else on its page.  Our own design, no
source."""

TICK = 3.2
"""mm; side of a box to tick off.  Our own design, no source."""

AFTER_TICK, BETWEEN_TOOLS, UNDER_TOOLS = 1.5, 5.0, 3.0
"""mm after such a box, after its words, and under all of them.  Our own design, no source."""

SPARE = 0.1
"""mm of the free height that no picture takes, so that rounding puts none on the next page.  Our own design."""

NAME_AIR = 2.0
"""mm from a step's number to its name.  Our own design, no source."""

UNDER_PICTURE, UNDER_ROW = 2.5, 4.0
"""mm from a picture to its number, and from its words to the next picture.  Our own design, no source."""


def guide(flow: Flow, plan: Plan, sheets: SheetPlan) -> int:
    """The guide, all on one page; the number (from 0) of that page."""
    steps = list(enumerate(hanging_steps(plan, sheets), 1))
    trial = Flow(Rect(flow.area.x0, flow.area.y0, flow.area.x1, flow.top), flow.lettering)
    _head(trial, plan)
    if _laid_out(steps, flow, trial.top - flow.area.y0 - H35)[0][1] < GOOD_HEIGHT:
        flow.need(flow.area.height)
    begins = len(flow.pages) - 1
    _head(flow, plan)
    size, rows = _laid_out(steps, flow, flow.top - flow.area.y0)
    for row in rows:
        height = size[1] + _below(row, size[0], flow.lettering)
        flow.picture(height, partial(_row, row, size, flow.lettering))
    return begins


def _head(flow: Flow, plan: Plan) -> None:
    """What stands over the pictures: what to have ready, each with a box to tick off."""
    flow.heading("The hanging day")
    x, line = flow.area.x0, H25 * LEADING + 1.0
    for words in (*TOOLS, *own_tools(plan)):
        width = TICK + AFTER_TICK + flow.lettering.width(words, H25) + BETWEEN_TOOLS
        if x > flow.area.x0 and x + width - BETWEEN_TOOLS > flow.area.x1:
            x, flow.top = flow.area.x0, flow.top - line
        y = flow.top - TICK
        flow.pages[-1] += [
            Polygon(Rect.sized(x, y, TICK, TICK).corners, NARROW, False),
            Text(x + TICK + AFTER_TICK, y + (TICK - H25) / 2, words, H25),
        ]
        x += width
    flow.top -= line
    flow.space(UNDER_TOOLS)


Rows = list[list[tuple[int, DayStep]]]


def _laid_out(steps: Sequence[tuple[int, DayStep]], flow: Flow, free: float) -> tuple[tuple[float, float], Rows]:
    """Width and height of every picture (mm), as large as the `free` height allows, and the steps row by row."""
    names = (flow.lettering.width(f"{at}", H5, True) + flow.lettering.width(step.name, H35, True) for at, step in steps)
    least, best = max(LEAST_WIDTH, NAME_AIR + max(names)), ((0.0, 0.0), Rows())
    for columns in range(1, max(1, int((flow.area.width + GUTTER) // (least + GUTTER))) + 1):
        width = (flow.area.width - GUTTER * (columns - 1)) / columns
        rows = [list(steps[first : first + columns]) for first in range(0, len(steps), columns)]
        words = added(_below(row, width, flow.lettering) for row in rows)
        high = max(LEAST_HEIGHT, min(width * FIELD[1] / FIELD[0], (free - words - SPARE) / len(rows)))
        if high >= best[0][1]:
            best = (width, high), rows
    return best


def _below(row: Sequence[tuple[int, DayStep]], width: float, lettering: Lettering) -> float:
    """The height of what stands under a row of pictures, and a little air (mm)."""
    lines = max(len(wrapped(step.words, H25, False, width, lettering)) for _, step in row)
    return UNDER_PICTURE + H5 + lines * H25 * LEADING + UNDER_ROW


def _row(
    row: Sequence[tuple[int, DayStep]], size: tuple[float, float], lettering: Lettering, place: Rect
) -> Iterator[Item]:
    """Pictures side by side, each over its number, its name and its words."""
    width, high = size
    for column, (number, step) in enumerate(row):
        x = place.x0 + column * (width + GUTTER)
        pen = Sketch(Rect(x, place.y1 - high, x + width, place.y1))
        step.draw(pen)
        yield from pen.items
        base = place.y1 - high - UNDER_PICTURE - H5
        yield Text(x, base, f"{number}", H5, bold=True)
        yield Text(x + lettering.width(f"{number}", H5, True) + NAME_AIR, base, step.name, H35, bold=True)
        for line in wrapped(step.words, H25, False, width, lettering):
            base -= max(H25 * LEADING, ink_of((line, H25, False), lettering).height + LINE_SPACE * H25)
            yield Text(x, base, line, H25)
