"""Small pictures of the wall for a phone, as SVG: where a frame's nails are, and where every sheet lies."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from html import escape
from itertools import chain

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import Rect
from templates_gen.documents.proof.features import outline
from templates_gen.drawing.items import Circle, Item, Line, Polygon, Text
from templates_gen.drawing.shapes import box
from templates_gen.drawing.svg import markup

WIDE = 100.0
"""mm of drawing for the longer side of what is shown.  Our own design, no source."""

THIN, THICK, NAIL, ARM = 0.3, 0.8, 1.2, 2.4
"""mm: lines of what is there, those of what it is about, and the circle and the arms of a nail.  Our own design."""

LIGHT, PALE = 0.55, (0.85, 0.6)
"""Greys of other frames about the one that is meant, and of frames under sheets: inside and edge.  Our own design."""

LINE, DASHES = 0.4, (3.0, 0.8, 0.5, 0.8)
"""The grey of the two lines, and the dashes of the centre line (mm).  Our own design, no source."""

LETTERS, AIR = 4.0, 2.0
"""mm: capitals of a name, and air around the drawing.  Our own design, no source."""

DIGIT = 1.1
"""How wide a bold digit is for its height, in the fonts of phones and with air beside it: from memory, they differ."""


def wall_of(plan: Plan, about: Hung) -> str:
    """The whole wall with one frame and its nails standing out."""
    wall = plan.job.wall.rect
    k = WIDE / max(wall.width, wall.height)
    frames = chain.from_iterable(_frame(hung, k, hung is about) for hung in plan.frames)
    features = chain.from_iterable(outline(one, _at(one.rect, k)) for one in plan.job.wall.features)
    nails = chain.from_iterable(_nail(nail.x * k, nail.y * k) for nail in about.nails)
    words = f"Where frame {about.frame.id} hangs on the wall"
    return _svg(wall, k, words, chain(_outline(plan, k), _lines(plan, k), features, frames, nails))


def map_of(plan: Plan, area: Rect, windows: Sequence[tuple[str, Rect]]) -> str:
    """The part of the wall that is on paper, with every sheet and its number over the frames."""
    k = WIDE / max(area.width, area.height)
    frames = chain.from_iterable(box(_at(hung.rect, k), THIN, *PALE) for hung in plan.frames)
    sheets = chain.from_iterable(_sheet(name, _at(rect, k)) for name, rect in windows)
    return _svg(area, k, "Where every sheet of paper lies", chain(frames, _lines(plan, k), sheets))


def _svg(area: Rect, k: float, words: str, items: Iterable[Item]) -> str:
    seen = _at(area, k).grown(AIR)
    place = f"{seen.x0:.2f} {-seen.y1:.2f} {seen.width:.2f} {seen.height:.2f}"
    return f'<svg viewBox="{place}" role="img"><title>{escape(words, quote=False)}</title>{markup(items)}</svg>'


def _at(rect: Rect, k: float) -> Rect:
    return Rect(rect.x0 * k, rect.y0 * k, rect.x1 * k, rect.y1 * k)


def _outline(plan: Plan, k: float) -> Iterator[Item]:
    wall = plan.job.wall
    yield Polygon(tuple((x * k, y * k) for x, y in wall.corners), THIN, False)


def _lines(plan: Plan, k: float) -> Iterator[Item]:
    """The two lines, as far as the wall goes."""
    wall, x, y = _at(plan.job.wall.rect, k), plan.centre_line * k, plan.level_line * k
    yield Line(x, wall.y0, x, wall.y1, THIN, DASHES, 0.0, LINE)
    yield Line(wall.x0, y, wall.x1, y, THIN, (), 0.0, LINE)


def _frame(hung: Hung, k: float, stands_out: bool) -> Iterator[Item]:
    rect = _at(hung.rect, k)
    yield from box(rect, THICK if stands_out else THIN, 1.0, 0.0 if stands_out else LIGHT)


def _nail(x: float, y: float) -> Iterator[Item]:
    yield Circle(x, y, NAIL, THIN)
    yield Line(x - ARM, y, x + ARM, y, THIN)
    yield Line(x, y - ARM, x, y + ARM, THIN)


def _sheet(name: str, rect: Rect) -> Iterator[Item]:
    yield Polygon(rect.corners, THIN, False)
    high = min(LETTERS, 0.5 * rect.height, rect.width / (DIGIT * len(name)))
    yield Text(rect.cx, rect.cy - high / 2, name, high, "middle", 0, True)
