"""Small line drawings of the hanging day, read from `sketches.txt` and brought to their places on a page.

Limits and sizes without a source beside them are our own, no source.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import TypeVar

from templates_gen.arranging.plan import Hung
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.drawing.items import Circle, Item, Line, Polygon, Text
from templates_gen.drawing.shapes import teeth
from templates_gen.drawing.sizes import H18, H25, H35, HAIR, MEDIUM, WIDE
from templates_gen.drawing.strokes import CENTRE_DASH

FIELD = (60.0, 40.0)
"""Width and height that every drawing is thought in.  Our own design, no source, as is all that follows."""

WIDTHS = {"hair": HAIR, "wide": WIDE, "bold": 2 * WIDE}
DASHES = {"centre": tuple(part / 2 for part in CENTRE_DASH), "sight": (1.5, 1.0)}
WHITE, GREY = 1.0, 0.8
GREYS = {"grey": GREY, "light": 0.85}

HEAD = 2.6, 1.0
"""How long the head of an arrow is, and half of how wide."""

STROKE = 1.1
"""Half of the stroke at either end of a distance."""

CUT_TEETH = 1.1, 0.9, 2.0
"""mm; the teeth of a line to cut, as `teeth` takes them."""

ROUND = 1.3
"""Heights of its letters that a number of one digit takes of its frame: with air around."""

ROUND_A_GROUP = 0.94
"""How much of the field a group fills: the rest is air around it."""

Point = tuple[float, float]
Placing = Callable[[Point], Point]
Said = TypeVar("Said")


@cache
def sketches() -> dict[str, tuple[str, ...]]:
    """The strokes of every drawing, by its name."""
    text = Path(__file__).with_name("sketches.txt").read_text(encoding="utf-8")
    blocks = [block.splitlines() for block in text.split("\n\n") if not block.startswith("#")]
    return {title.partition(":")[0]: tuple(strokes) for title, *strokes in blocks}


def sketch(name: str) -> Callable[[Sketch], None]:
    """What draws the sketch of this name."""
    strokes = sketches()[name]
    return lambda pen: pen.draw(strokes)


class Sketch:
    """A drawing at its place (page mm), put together stroke by stroke; later ones lie over earlier ones."""

    def __init__(self, place: Rect) -> None:
        self.scale = min(place.width / FIELD[0], place.height / FIELD[1])
        self.x, self.y = place.cx - self.scale * FIELD[0] / 2, place.cy - self.scale * FIELD[1] / 2
        self.items: list[Item] = []

    def at(self, x: float, y: float) -> Point:
        """The page's point of a point of the field."""
        return self.x + x * self.scale, self.y + y * self.scale

    def draw(self, strokes: tuple[str, ...], placed: Placing = lambda point: point) -> None:
        """All strokes of a drawing, as `sketches.txt` says how, each point brought to its place in the field."""
        for stroke in strokes:
            for part in stroke.split(" / "):
                self._draw(stroke.split(), [_point(word) for word in part.split() if "," in word], placed)

    def _draw(self, words: list[str], points: list[Point], placed: Placing) -> None:
        """One stroke, or all those of another drawing."""
        match words[0]:
            case "use":
                (x, y), strokes = points[0], sketches()[words[1]]
                return self.draw(strokes, lambda point: placed((x + point[0], y + point[1])))
            case "mirrored":
                return self.draw(sketches()[words[1]], lambda point: placed((FIELD[0] - point[0], point[1])))
        points = [placed(point) for point in points]
        width, grey = _said(WIDTHS, words, MEDIUM), _said(GREYS, words, WHITE)
        match words[0]:
            case "line":
                self.line(*points, width=width, dash=_said(DASHES, words, ()))
            case "arrow":
                self.arrow(*points)
            case "measure":
                self.measure(*points)
            case "toothed":
                self.line(*points)
                self.items += teeth(self.at(*points[0]), self.at(*points[-1]), CUT_TEETH, both=True)
            case "shape":
                self.shape(*points, grey=grey, width=width)
            case "box":
                self.box(*points, grey=grey, width=width)
            case "circle":
                self.items.append(Circle(*self.at(*points[0]), float(words[-1]) * self.scale, width))

    def line(self, *points: Point, width: float = MEDIUM, dash: tuple[float, ...] = ()) -> None:
        """A line through these points."""
        for start, end in pairwise(points):
            self.items.append(Line(*self.at(*start), *self.at(*end), width, dash))

    def shape(self, *points: Point, grey: float = WHITE, width: float = MEDIUM) -> None:
        """An area that hides what is under it, with its outline."""
        corners = tuple(self.at(*point) for point in points)
        self.items += [Polygon(corners, 0.0, True, grey), Polygon(corners, width, False)]

    def box(self, *corners: Point, grey: float = WHITE, width: float = MEDIUM) -> None:
        """An upright rectangle between its lower left and its upper right corner."""
        (x0, y0), (x1, y1) = corners
        self.shape((x0, y0), (x1, y0), (x1, y1), (x0, y1), grey=grey, width=width)

    def measure(self, start: Point, end: Point) -> None:
        """A distance that is measured: a line with a stroke across either end."""
        self.line(start, end)
        length = math.dist(start, end)
        dx, dy = (end[0] - start[0]) / length * STROKE, (end[1] - start[1]) / length * STROKE
        for x, y in (start, end):
            self.line((x - dy, y + dx), (x + dy, y - dx))

    def arrow(self, start: Point, end: Point) -> None:
        """A line with a head at its end."""
        (x0, y0), (x1, y1) = start, end
        length = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5
        dx, dy = (x1 - x0) / length, (y1 - y0) / length
        self.line(start, end)
        long, half = HEAD
        back = x1 - long * dx, y1 - long * dy
        sides = ((back[0] - dy * way, back[1] + dx * way) for way in (half, -half))
        self.items.append(Polygon(tuple(self.at(*point) for point in (end, *sides))))


class DayStep(Record, frozen=True):
    """A step of the day: its name, what to do, and what draws it."""

    name: str
    words: str
    draw: Callable[[Sketch], None]


def _said(table: Mapping[str, Said], words: list[str], otherwise: Said) -> Said:
    """What the first word means that is in the table."""
    return next((table[word] for word in words if word in table), otherwise)


def _point(word: str) -> Point:
    x, y = word.split(",")
    return float(x), float(y)


def hung_in_order(pen: Sketch, frames: tuple[Hung, ...], group: Rect) -> None:
    """The group as it will hang, its frames numbered in the order they are hung, the first one grey."""
    scale = min(FIELD[0] / group.width, FIELD[1] / group.height) * ROUND_A_GROUP

    def at(x: float, y: float) -> Point:
        return FIELD[0] / 2 + (x - group.cx) * scale, FIELD[1] / 2 + (y - group.cy) * scale

    for number, hung in enumerate(frames, 1):
        lower, upper = at(hung.rect.x0, hung.rect.y0), at(hung.rect.x1, hung.rect.y1)
        pen.box(lower, upper, grey=GREY if number == 1 else WHITE)
        side, digits = min(upper[0] - lower[0], upper[1] - lower[1]) * pen.scale, len(str(number))
        height = next((height for height in (H35, H25, H18) if max(digits, ROUND) * height < side), None)
        if height is not None:
            x, y = pen.at((lower[0] + upper[0]) / 2, (lower[1] + upper[1]) / 2)
            pen.items.append(Text(x, y - height / 2, f"{number}", height, "middle", 0, True))
