"""What is drawn on the wall itself: frames, the centre line, the level line and the target where they cross."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import pairwise

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.units import INCH
from templates_gen.documents.sheets.scales import Graduation, scales_to_mark, ticks_along
from templates_gen.drawing.items import Form, Item, Line, Polygon
from templates_gen.drawing.shapes import teeth, wedge
from templates_gen.drawing.sizes import (
    BROAD,
    HEAVY,
    INNER_EDGE,
    MEDIUM,
    NAIL_CLEAR,
    STRONG,
    TARGET,
    TARGET_WINDOW,
    WIDE,
)
from templates_gen.drawing.strokes import (
    CENTRE_DASH,
    EDGE_DASH,
    PITCH_DASH,
    inside,
    nail_holes,
    phased,
    slit_holes,
    unbroken,
)
from templates_gen.tiling.long_lines import centre_spans, level_spans, nosing_line, pitch_line, wall_edges

# Divisions as on a tape measure: common practice, no source.
LEVEL_GRADES = {
    "in": Graduation(INCH, ((12, 6.0), (6, 4.5), (1, 2.5)), 6, INCH),
    "mm": Graduation(10.0, ((10, 6.0), (5, 4.5), (1, 2.5)), 10, 1.0),
    "cm": Graduation(10.0, ((10, 6.0), (5, 4.5), (1, 2.5)), 10, 10.0),
}

WEDGE_HALF = 3.0
"""mm; half of what a wedge of the target is wide on the outside.  Our own design, no source."""

CORNER = 15.0
"""mm; length of the stronger lines at a frame's corners.  Our own design, no source."""


def frame_form(hung: Hung) -> Form:
    """The frame's outside edge and its stronger corners, about its lower left corner."""
    rect, origin = hung.rect, (hung.rect.x0, hung.rect.y0)
    width, height = rect.width, rect.height
    holes = nail_holes((nail.x - origin[0], nail.y - origin[1]) for nail in hung.nails)
    edges = frame_lines(Rect(0.0, 0.0, width, height))
    items = tuple(unbroken([*edges, *_corners(width, height)], holes))
    return Form(frame_name(hung), Rect(-1.0, -1.0, width + 1.0, height + 1.0), items)


@lru_cache(maxsize=2048)  # asked about on every sheet that a frame is on
def frame_lines(rect: Rect) -> tuple[Line, ...]:
    """The four edges of a frame, and the second line inside each: nothing else on paper is double."""
    inner = rect.grown(-INNER_EDGE)
    both = (STRONG, rect.corners), (WIDE, inner.corners)
    some = both if min(inner.width, inner.height) > 0 else both[:1]
    return tuple(Line(*one, *two, width) for width, at in some for one, two in pairwise((*at, at[0])))


def frame_name(hung: Hung) -> str:
    """The name of a frame's form."""
    return f"frame:{hung.frame.id}"


def _corners(width: float, height: float) -> Iterator[Line]:
    across, down = min(CORNER, width / 3), min(CORNER, height / 3)
    half = BROAD / 2
    for x, toward_x in ((0.0, across), (width, -across)):
        for y, toward_y in ((0.0, down), (height, -down)):
            out_x = -half if toward_x > 0 else half
            yield Line(x + out_x, y, x + toward_x, y, BROAD)
            yield Line(x, y, x, y + toward_y, BROAD)


def target(plan: Plan) -> Iterator[Item]:
    """The mark that goes on the pencil cross: a window to cut out, with a wedge at each of its four corners.

    The wedges point to where the lines cross.  There is no window where a nail is so near that it would be cut out.
    """
    x, y = plan.centre_line, plan.level_line
    near = [(nail.x, nail.y) for nail in plan.nails if math.dist((nail.x, nail.y), (x, y)) < 2 * TARGET]
    if has_window(plan):
        corners = [(x, y + TARGET_WINDOW), (x - TARGET_WINDOW, y), (x, y - TARGET_WINDOW), (x + TARGET_WINDOW, y)]
        yield Polygon(tuple(corners), grey=1.0)
        for one, two in pairwise([*corners, corners[0]]):
            yield Line(*one, *two, MEDIUM)
            yield from teeth(two, one)
    deep = TARGET - TARGET_WINDOW
    for across, up in ((1, 0), (0, 1), (-1, 0), (0, -1)):
        tip = x + across * TARGET_WINDOW, y + up * TARGET_WINDOW
        if all(_distance(nail, tip, (x + across * TARGET, y + up * TARGET)) > NAIL_CLEAR + WEDGE_HALF for nail in near):
            yield wedge(*tip, across * deep, up * deep, WEDGE_HALF)


def has_window(plan: Plan) -> bool:
    """Whether the target has a window: no nail mark is so near that a part of it would be cut out."""
    at = plan.centre_line, plan.level_line
    return all(math.dist((nail.x, nail.y), at) > TARGET_WINDOW + NAIL_CLEAR for nail in plan.nails)


def _distance(point: tuple[float, float], start: tuple[float, float], end: tuple[float, float]) -> float:
    """How far a point lies from a line between two others."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    along = ((point[0] - start[0]) * dx + (point[1] - start[1]) * dy) / (dx * dx + dy * dy)
    along = min(1.0, max(0.0, along))
    return math.dist(point, (start[0] + along * dx, start[1] + along * dy))


def long_lines(plan: Plan, window: Rect, nails: Sequence[tuple[float, float]]) -> Iterator[Item]:
    """What a window shows of the centre line, the level line, a stair's pitch line and the edges of the wall.

    Dashes count from the wall's origin.  Lines break off at nail points, and upright ones along release slits and on
    drop scales that stand where a nail is still to be marked: with their ticks a line looks like one to cut along.
    """
    holes = nail_holes(nails)
    for line in _dashed(plan, window):
        along = _along_upright(plan, line.x0, nails) if line.x0 == line.x1 else ()
        yield from map(phased, unbroken([line], [*holes, *along]))
    yield from unbroken(_level(plan, window), holes)


def _along_upright(plan: Plan, x: float, nails: Sequence[tuple[float, float]]) -> Iterator[Rect]:
    """Where an upright line at x breaks off: along release slits, and on drop scales on which to mark a nail."""
    yield from slit_holes(nails)
    for hung in plan.frames:  # looked at for the few sheets alone that show such a line
        if hung.rect.x0 <= x <= hung.rect.x1:
            yield from (scale.zone for scale in scales_to_mark(hung))


def _dashed(plan: Plan, window: Rect) -> Iterator[Line]:
    x = plan.centre_line
    for low, high in centre_spans(plan):
        yield from inside(Line(x, low, x, high, HEAVY, CENTRE_DASH), window)
    if ends := pitch_line(plan):
        yield from inside(Line(*ends, STRONG, PITCH_DASH), window)
    for edge in (*wall_edges(plan.job.wall), nosing_line(plan.job.wall)):
        if edge:
            yield from inside(Line(*edge, WIDE, EDGE_DASH), window)


def _level(plan: Plan, window: Rect) -> Iterator[Line]:
    """The level line, graduated both ways from the centre line."""
    y, grade = plan.level_line, LEVEL_GRADES[plan.job.unit]
    for low, high in level_spans(plan):
        for line in inside(Line(low, y, high, y, BROAD), window):
            yield line
            for x, number in ticks_along(line.x0, line.x1, plan.centre_line, grade):
                yield Line(x, y, x, y - grade.tick(number), WIDE)
