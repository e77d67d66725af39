"""Small line drawings of the hanging day, each in a field of 60 by 40 that is brought to its place on the page."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise

from templates_gen.arranging.plan import Hung
from templates_gen.base.geometry import Rect
from templates_gen.drawing.items import Circle, Item, Line, Polygon, Text
from templates_gen.drawing.sizes import H18, H25, H35, HAIR, MEDIUM, WIDE
from templates_gen.drawing.strokes import DASHED_DOTTED, DOTTED

FIELD = (60.0, 40.0)
"""Width and height that every drawing is thought in.  Our own design, no source."""

Point = tuple[float, float]


class Sketch:
    """A drawing at its place (page mm), put together stroke by stroke; later ones lie over earlier ones."""

    def __init__(self, place: Rect) -> None:
        self.scale = min(place.width / FIELD[0], place.height / FIELD[1])
        self.x, self.y = place.cx - self.scale * FIELD[0] / 2, place.cy - self.scale * FIELD[1] / 2
        self.items: list[Item] = []

    def at(self, x: float, y: float) -> Point:
        """The page's point of a point of the field."""
        return self.x + x * self.scale, self.y + y * self.scale

    def line(self, *points: Point, width: float = MEDIUM, dash: tuple[float, ...] = ()) -> None:
        """A line through these points."""
        for start, end in pairwise(points):
            self.items.append(Line(*self.at(*start), *self.at(*end), width, dash))

    def shape(self, *points: Point, grey: float = 1.0, width: float = MEDIUM) -> None:
        """An area that hides what is under it, with its outline."""
        corners = tuple(self.at(*point) for point in points)
        self.items += [Polygon(corners, 0.0, True, grey), Polygon(corners, width, False)]

    def box(self, x0: float, y0: float, x1: float, y1: float, grey: float = 1.0, width: float = MEDIUM) -> None:
        """An upright rectangle."""
        self.shape((x0, y0), (x1, y0), (x1, y1), (x0, y1), grey=grey, width=width)

    def circle(self, x: float, y: float, radius: float, filled: bool = False) -> None:
        """A circle, open or black."""
        self.items.append(Circle(*self.at(x, y), radius * self.scale, MEDIUM, filled))

    def arrow(self, start: Point, end: Point) -> None:
        """A line with a head at its end."""
        (x0, y0), (x1, y1) = start, end
        length = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5
        dx, dy = (x1 - x0) / length, (y1 - y0) / length
        self.line(start, end)
        back = x1 - 2.6 * dx, y1 - 2.6 * dy
        sides = ((back[0] - dy * way, back[1] + dx * way) for way in (1.0, -1.0))
        self.items.append(Polygon(tuple(self.at(*point) for point in (end, *sides))))

    def level(self, x: float, y: float) -> None:
        """A spirit level that stands on y, its bubble in the middle at x."""
        self.box(x - 9.0, y, x + 9.0, y + 3.6)
        self.box(x - 2.6, y + 0.9, x + 2.6, y + 2.7)
        self.circle(x, y + 1.8, 0.75)

    def nail_mark(self, x: float, y: float) -> None:
        """The cross and circle of a nail point."""
        self.line((x - 6.5, y), (x + 6.5, y), width=HAIR)
        self.line((x, y - 2.0), (x, y + 6.5), width=HAIR)
        self.circle(x, y, 4.0)

    def wall_from_the_side(self) -> None:
        """The wall cut through, its face at x = 16."""
        self.line((16.0, 1.0), (16.0, 39.0), width=WIDE)
        for y in range(1, 35, 4):
            self.line((10.0, y), (16.0, y + 4.0), width=HAIR)


def slits(pen: Sketch) -> None:
    """A knife in the slit under a nail mark, the paper on the table."""
    pen.box(6.0, 2.0, 46.0, 38.0)
    pen.nail_mark(26.0, 29.0)
    pen.line((26.0, 24.5), (26.0, 15.0), width=WIDE)
    pen.line((26.0, 15.0), (26.0, 5.0), dash=DOTTED)
    pen.shape((26.0, 15.0), (35.0, 20.4), (31.6, 24.6), (27.4, 20.4))
    pen.shape((35.6, 19.8), (53.0, 33.2), (54.0, 36.0), (51.6, 38.2), (48.6, 38.6), (31.0, 25.2), grey=0.8)


def pencil_cross(pen: Sketch) -> None:
    """A cross on the wall, and the two distances that it is measured by."""
    pen.line((4.0, 38.0), (4.0, 2.0), (58.0, 2.0), width=WIDE)
    pen.arrow((20.0, 22.0), (4.0, 22.0))
    pen.arrow((20.0, 22.0), (35.0, 22.0))
    pen.arrow((36.0, 12.0), (36.0, 2.0))
    pen.arrow((36.0, 12.0), (36.0, 21.0))
    pen.line((33.5, 22.0), (38.5, 22.0), width=WIDE)
    pen.line((36.0, 19.5), (36.0, 24.5), width=WIDE)
    pen.shape((36.6, 22.8), (40.4, 25.0), (38.8, 26.6))
    pen.shape((40.4, 25.0), (51.0, 35.0), (49.2, 37.0), (38.8, 26.6), grey=0.8)


def cross_over_stairs(pen: Sketch, way: int) -> None:
    """A cross on the wall straight above a batten on the nosings; `way` is +1 where the stair climbs to the right."""
    at = _stairs(pen, way)
    pen.arrow(at(26.0, 23.0), at(26.0, 15.8))
    pen.arrow(at(26.0, 26.0), at(26.0, 33.0))
    pen.line(at(23.5, 34.0), at(28.5, 34.0), width=WIDE)
    pen.line(at(26.0, 31.5), at(26.0, 36.5), width=WIDE)
    pen.arrow((2.0, 34.0), (22.0 if way > 0 else 30.0, 34.0))


def pitch_checked(pen: Sketch, way: int) -> None:
    """The pitch line over the batten on a stair, measured near both its ends."""
    at = _stairs(pen, way)
    pen.line(at(4.0, 17.0), at(46.0, 35.7), dash=DASHED_DOTTED)
    for x, foot in ((8.0, 7.6), (42.0, 22.8)):
        pen.arrow(at(x, foot + 5.0), at(x, foot))
        pen.arrow(at(x, foot + 5.0), at(x, foot + 11.0))


def _stairs(pen: Sketch, way: int) -> Callable[[float, float], Point]:
    """A stair with a batten on its nosings, and what turns points over where it climbs to the left."""

    def at(x: float, y: float) -> Point:
        return (x if way > 0 else FIELD[0] - x), y

    steps = [at(4.0 + 9 * step + along, 2.0 + 4 * (step + up)) for step in range(5) for up, along in ((0, 0), (1, 0))]
    pen.line(*steps, at(52.0, 22.0), width=WIDE)
    pen.shape(at(2.0, 5.1), at(49.0, 26.0), at(48.3, 27.6), at(1.3, 6.7), grey=0.8)
    return at


def paper_up(pen: Sketch) -> None:
    """The paper with its target on the pencil cross, a spirit level on the level line, tape at its corners."""
    pen.box(8.0, 4.0, 52.0, 36.0)
    pen.line((30.0, 4.0), (30.0, 36.0), dash=DASHED_DOTTED)
    pen.line((8.0, 18.0), (52.0, 18.0))
    pen.circle(30.0, 18.0, 3.0)
    pen.level(42.0, 18.2)
    for x, y in ((8.0, 4.0), (52.0, 4.0), (8.0, 36.0), (52.0, 36.0)):
        way = 1.0 if (x < 30.0) == (y < 20.0) else -1.0
        ends = ((-3.0, 1.2 * way), (-1.2, 3.0 * way), (3.0, -1.2 * way), (1.2, -3.0 * way))
        pen.shape(*((x + dx, y + dy) for dx, dy in ends), grey=0.85, width=HAIR)


def pencil_lines(pen: Sketch) -> None:
    """A level and a plumb line on the wall, the level one drawn along a spirit level."""
    pen.line((4.0, 38.0), (4.0, 2.0), (58.0, 2.0), width=WIDE)
    pen.line((30.0, 4.0), (30.0, 38.0), dash=DASHED_DOTTED)
    pen.line((8.0, 22.0), (56.0, 22.0))
    pen.level(44.0, 18.2)
    pen.arrow((18.0, 12.0), (18.0, 2.0))
    pen.arrow((18.0, 12.0), (18.0, 22.0))
    pen.arrow((17.0, 30.0), (4.0, 30.0))
    pen.arrow((17.0, 30.0), (30.0, 30.0))


def piece_placed(pen: Sketch) -> None:
    """A sheet by itself, measured from both ends of its rules to the pencil lines."""
    pen.line((6.0, 3.0), (6.0, 38.0), dash=DASHED_DOTTED)
    pen.line((2.0, 8.0), (58.0, 8.0))
    pen.box(22.0, 15.0, 50.0, 38.0)
    pen.nail_mark(38.0, 29.0)
    pen.line((26.0, 18.0), (48.0, 18.0), width=WIDE)
    pen.line((25.0, 19.0), (25.0, 36.0), width=WIDE)
    for x in (27.0, 47.0):
        pen.arrow((x, 18.0), (x, 8.0))
    for y in (21.0, 34.0):
        pen.arrow((25.0, y), (6.0, y))


def drop_mark(pen: Sketch) -> None:
    """A drop rule down from a frame's top edge, with a pencil mark at the length that was measured."""
    pen.line((6.0, 3.0), (6.0, 35.0), (54.0, 35.0), (54.0, 3.0), width=WIDE)
    pen.line((30.0, 35.0), (30.0, 5.0))
    for tick in range(16):
        pen.line((30.0, 35.0 - 2 * tick), (30.0 + (4.0 if tick % 5 == 0 else 2.0), 35.0 - 2 * tick), width=HAIR)
    pen.arrow((20.0, 25.0), (20.0, 35.0))
    pen.arrow((20.0, 25.0), (20.0, 15.0))
    pen.line((18.0, 15.0), (33.0, 15.0), width=WIDE)
    pen.shape((33.6, 15.4), (37.4, 17.0), (36.0, 18.8))
    pen.shape((37.4, 17.0), (48.6, 26.0), (47.2, 28.0), (36.0, 18.8), grey=0.8)


def nail_home(pen: Sketch) -> None:
    """A nail through the paper into the wall, seen from the side, and the hammer."""
    pen.wall_from_the_side()
    pen.line((17.0, 3.0), (17.0, 37.0))
    pen.line((11.5, 22.0), (26.0, 23.0), width=2 * WIDE)
    pen.line((26.2, 20.6), (25.8, 25.4), width=2 * WIDE)
    pen.shape((33.0, 20.0), (42.0, 20.6), (41.6, 26.6), (32.6, 26.0), grey=0.8)
    pen.shape((36.2, 20.2), (38.4, 2.0), (41.0, 2.2), (39.0, 20.4))
    pen.arrow((51.0, 24.4), (44.0, 23.9))


def paper_off(pen: Sketch) -> None:
    """The paper comes off over two nail heads, seen from the side: its slits are open."""
    pen.wall_from_the_side()
    for y in (29.0, 12.0):
        pen.line((11.5, y - 0.6), (22.0, y), width=2 * WIDE)
        pen.line((22.2, y - 1.8), (21.8, y + 1.8), width=2 * WIDE)
    pen.line((36.0, 38.0), (30.0, 31.0), width=WIDE)
    pen.line((30.0, 31.0), (27.0, 26.0), dash=DOTTED)
    pen.line((27.0, 26.0), (20.6, 15.0), width=WIDE)
    pen.line((20.6, 15.0), (18.3, 9.0), dash=DOTTED)
    pen.line((18.3, 9.0), (17.2, 2.0), width=WIDE)
    pen.arrow((34.0, 28.0), (46.0, 31.0))
    pen.arrow((27.0, 14.0), (38.0, 16.0))


def levelled(pen: Sketch) -> None:
    """A spirit level on a frame's top edge, the frame turned until it is level."""
    pen.box(10.0, 6.0, 50.0, 30.0, width=WIDE)
    pen.box(14.0, 10.0, 46.0, 26.0, width=HAIR)
    pen.level(30.0, 30.2)
    pen.arrow((30.0, 3.0), (20.0, 3.0))
    pen.arrow((30.0, 3.0), (40.0, 3.0))


def stepped_back(pen: Sketch) -> None:
    """Someone who looks at the frame from well away."""
    pen.line((2.0, 2.0), (56.0, 2.0), (56.0, 39.0), width=WIDE)
    pen.box(53.6, 17.0, 56.0, 30.0, grey=0.8)
    pen.circle(14.0, 28.0, 2.6)
    pen.line((14.0, 25.4), (14.0, 13.0), width=WIDE)
    pen.line((10.0, 2.0), (14.0, 13.0), (18.0, 2.0), width=WIDE)
    pen.line((10.0, 15.0), (14.0, 23.0), (18.5, 16.0), width=WIDE)
    pen.line((17.2, 28.2), (53.0, 24.0), width=HAIR, dash=(1.5, 1.0))
    pen.arrow((40.0, 6.0), (24.0, 6.0))


def hung_in_order(pen: Sketch, frames: tuple[Hung, ...], group: Rect) -> None:
    """The group as it will hang, its frames numbered in the order they are hung, the first one grey."""
    scale = min(FIELD[0] / group.width, FIELD[1] / group.height) * 0.94

    def at(x: float, y: float) -> Point:
        return FIELD[0] / 2 + (x - group.cx) * scale, FIELD[1] / 2 + (y - group.cy) * scale

    for number, hung in enumerate(frames, 1):
        (x0, y0), (x1, y1) = at(hung.rect.x0, hung.rect.y0), at(hung.rect.x1, hung.rect.y1)
        pen.box(x0, y0, x1, y1, grey=0.8 if number == 1 else 1.0)
        side, digits = min(x1 - x0, y1 - y0) * pen.scale, len(str(number))
        height = next((height for height in (H35, H25, H18) if max(digits, 1.3) * height < side), None)
        if height is not None:
            x, y = pen.at((x0 + x1) / 2, (y0 + y1) / 2)
            pen.items.append(Text(x, y - height / 2, f"{number}", height, "middle", 0, True))
