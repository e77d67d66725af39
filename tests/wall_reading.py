"""What the pages of a file show, brought back to the wall through the report alone: mm, x right, y up."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from typing import NamedTuple

from templates_gen.arranging.plan import Hung
from templates_gen.base.geometry import Rect
from tests.made import Everything, made
from tests.matrices import inverse
from tests.pdf_reading import Lettered, Matrix, Point, Round, Segment, moved, scale

CLOSE = 0.001
"""mm; a fortieth of a dot at 600 dpi.  Worked out by hand here: 25.4 / 600 / 0.001 = 42."""

HAIR, NARROW, MEDIUM, WIDE, STRONG, HEAVY, BROAD = 0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0
"""mm; line widths of ISO 128-2, from memory."""

HOLE = 9.0
"""mm on each side of a nail point that lines keep away.  Our own design, no source."""


class Cross(NamedTuple):
    """Where a level and an upright line cross, the middle of the circle around, and what all of it takes."""

    x: float
    y: float
    cx: float
    cy: float
    box: Rect


@dataclass(frozen=True)
class Shown:
    """A sheet as its page shows it, in wall mm; `areas` are filled."""

    page: int
    name: str
    window: Rect
    segments: list[Segment]
    circles: list[Round]
    texts: list[Lettered]
    areas: list[list[Point]]
    cell: Rect


@cache
def shown(name: str) -> tuple[Shown, ...]:
    """Every sheet of a job, read from the file and brought back to the wall."""
    return brought_back(made(name))


def brought_back(done: Everything) -> tuple[Shown, ...]:
    """Every sheet of a finished job, read from its file and brought back to the wall."""
    found = []
    for sheet in done.report["sheets"]:
        marks, back = done.marks[sheet["page"] - 1], inverse(sheet["to_page"])
        size = scale(back)
        found.append(
            Shown(
                sheet["page"], sheet["name"], Rect(*sheet["window"]),
                [_segment(back, s, size) for s in marks.segments],
                [Round(*moved(back, c.cx, c.cy), c.r * size, c.width * size) for c in marks.circles],
                [Lettered(*moved(back, t.x, t.y), t.size * size, t.text) for t in marks.texts],
                [[moved(back, *point) for point in area] for area in marks.areas],
                Rect(*sheet["cell"]),
            )
        )  # fmt: skip
    return tuple(found)


def _segment(back: Matrix, s: Segment, size: float) -> Segment:
    return Segment(*moved(back, s.x0, s.y0), *moved(back, s.x1, s.y1), s.width * size, s.dash)


def is_level(s: Segment) -> bool:
    return abs(s.y1 - s.y0) < CLOSE < abs(s.x1 - s.x0)


def is_upright(s: Segment) -> bool:
    return abs(s.x1 - s.x0) < CLOSE < abs(s.y1 - s.y0)


def wide(segments: list[Segment], width: float) -> list[Segment]:
    """The segments of this width (mm)."""
    return [s for s in segments if abs(s.width - width) < CLOSE]


def spines(sheet: Shown, hung: Hung) -> list[Segment]:
    """The lines of a frame's drop scales: narrow uprights that hang from its top edge.

    The line along which the sheet is cut is none of them.
    """
    rect, cut = hung.rect, sheet.cell.x0
    return [
        s
        for s in wide(sheet.segments, NARROW)
        if is_upright(s)
        and abs(max(s.y0, s.y1) - rect.y1) < CLOSE
        and rect.x0 < s.x0 < rect.x1
        and not s.dash[0]
        and abs(s.x0 - cut) > CLOSE
    ]


def circles(sheet: Shown, radius: float) -> list[Round]:
    """The open circles of this radius (mm)."""
    return [c for c in sheet.circles if c.width and abs(c.r - radius) < CLOSE]


def crosses(sheet: Shown, radius: float, width: float) -> Iterator[Cross]:
    """Every place where a level and an upright line of this width cross, with a circle of this radius about it."""
    lines = wide(sheet.segments, width)
    for ring in circles(sheet, radius):
        near = 0.5  # mm: far more than what is allowed, far less than to the next mark; no source
        level = [s for s in lines if is_level(s) and abs(s.y0 - ring.cy) < near and spans(s.x0, s.x1, ring.cx)]
        upright = [s for s in lines if is_upright(s) and abs(s.x0 - ring.cx) < near and spans(s.y0, s.y1, ring.cy)]
        pairs = [(one, other) for one in longest_first(level) for other in longest_first(upright)]
        for one, other in {(round(v.x0 / CLOSE), round(u.y0 / CLOSE)): (u, v) for u, v in pairs}.values():
            box = Rect(
                min(one.x0, one.x1, ring.cx - ring.r), min(other.y0, other.y1, ring.cy - ring.r),
                max(one.x0, one.x1, ring.cx + ring.r), max(other.y0, other.y1, ring.cy + ring.r),
            )  # fmt: skip
            yield Cross(other.x0, one.y0, ring.cx, ring.cy, box)


class Bars(NamedTuple):
    """The middle of a registration mark, what its four bars take, and whether they stand on an upright join."""

    x: float
    y: float
    box: Rect
    upright: bool


def bars(sheet: Shown) -> Iterator[Bars]:
    """Every registration mark: four slanting bars, drawn one after the other."""
    slanting = [area for area in sheet.areas if is_bar(area)]
    assert len(slanting) % 4 == 0
    for first in range(0, len(slanting), 4):
        points = [point for area in slanting[first : first + 4] for point in area]
        xs, ys = zip(*points, strict=True)
        box = Rect(min(xs), min(ys), max(xs), max(ys))
        yield Bars(box.cx, box.cy, box, box.height > box.width)


def is_bar(area: list[Point]) -> bool:
    """A parallelogram with two sides at 45° over 5 mm (our own design, no source)."""
    corners = [point for number, point in enumerate(area) if point not in area[:number]]
    sides = [(b[0] - a[0], b[1] - a[1]) for a, b in pairwise([*corners, corners[0]])]
    slanting = [side for side in sides if abs(abs(side[0]) - 5.0) < CLOSE and abs(abs(side[1]) - 5.0) < CLOSE]
    return len(corners) == 4 and len(slanting) == 2


def longest_first(segments: list[Segment]) -> list[Segment]:
    """The segments by length: where several lie in one line, the shortest is the last and so the one that counts."""
    return sorted(segments, key=lambda s: -abs(s.x1 - s.x0) - abs(s.y1 - s.y0))


def spans(start: float, end: float, at: float) -> bool:
    """True when `at` lies between the two ends, not near them."""
    return min(start, end) + CLOSE < at < max(start, end) - CLOSE


def covered(segments: list[Segment], x: float, y: float) -> bool:
    """True when one of the level or upright segments goes through the point."""
    return any(
        min(s.x0, s.x1) - CLOSE <= x <= max(s.x0, s.x1) + CLOSE
        and min(s.y0, s.y1) - CLOSE <= y <= max(s.y0, s.y1) + CLOSE
        for s in segments
    )


def in_hole(points: list[Point], x: float, y: float) -> bool:
    """True when a nail point is so near that lines are left out here."""
    return any(max(abs(x - nx), abs(y - ny)) < HOLE + CLOSE for nx, ny in points)


def distance(s: Segment, x: float, y: float) -> float:
    """The distance of a point from a segment."""
    dx, dy = s.x1 - s.x0, s.y1 - s.y0
    length = dx * dx + dy * dy
    part = min(1.0, max(0.0, ((x - s.x0) * dx + (y - s.y0) * dy) / length)) if length else 0.0
    return float(((s.x0 + part * dx - x) ** 2 + (s.y0 + part * dy - y) ** 2) ** 0.5)


def every(start: float, end: float, step: float) -> list[float]:
    """Places from `start` to `end` with this step, both ends included."""
    count = int((end - start) / step)
    return [start + number * step for number in range(count + 1)] + [end]


def tick_length(number: int, lengths: tuple[tuple[int, float], ...]) -> float:
    """The length of tick `number`, where `lengths` holds (every so many ticks, length), the rarest first."""
    return next(length for every_so_many, length in lengths if number % every_so_many == 0)
