"""A standing figure beside the frames, so that anyone sees how large they are."""

from __future__ import annotations

from templates_gen.arranging.plan import Plan
from templates_gen.base.adding import added
from templates_gen.base.geometry import Rect
from templates_gen.checks.fitting import on_wall
from templates_gen.documents.proof.view import View
from templates_gen.drawing.items import Circle, Item, Polygon
from templates_gen.drawing.shapes import rounded

HEIGHT = 1700.0
"""mm: a grown person, in a round number.  Our own design, no source."""

WORDS = {"in": "5 ft 7 in", "cm": "1.7 m", "mm": "1.7 m"}
"""The figure's height as people say it; 1.7 m is 66.9 in."""

GREY = 0.84
"""Light enough to stand behind everything else.  Our own design, no source."""

TRIES = 100
"""So many places along the wall are tried.  Our own design, no source."""

HEAD_AT, HEAD = 0.936, 0.055
"""Middle and radius of the head in body heights: the eyes are at 0.936, chin to crown is 0.130 (Drillis and Contini,
1966, from memory), here a little less for a round head."""

HALF = (
    (0.000, 0.870), (0.030, 0.868), (0.036, 0.845), (0.100, 0.826), (0.124, 0.800), (0.134, 0.640), (0.138, 0.520),
    (0.134, 0.440), (0.110, 0.436), (0.106, 0.520), (0.094, 0.690), (0.082, 0.640), (0.092, 0.520), (0.080, 0.285),
    (0.060, 0.040), (0.074, 0.000), (0.016, 0.000), (0.016, 0.060), (0.012, 0.285), (0.004, 0.440), (0.000, 0.450),
)  # fmt: skip
"""The right half of the body in body heights, from the neck out and down: shoulders at 0.818, hips at 0.530 and knees
at 0.285 of it (Drillis and Contini, 1966, from memory); the outline is our own drawing."""

WIDTH = 0.4
"""In body heights, with air on both sides.  Our own design, no source."""


def figure(plan: Plan, view: View) -> tuple[Rect, list[Item]]:
    """The figure on floor or stair where it hides least, near the group; and the rectangle that it takes (page mm)."""
    place = view.rect(_place(plan))
    size = place.height
    body = (*HALF, *((-x, y) for x, y in reversed(HALF[1:-1])))
    outline = rounded([(place.cx + x * size, place.y0 + y * size) for x, y in body])
    head = Circle(place.cx, place.y0 + HEAD_AT * size, HEAD * size, 0.0, True, GREY)
    return place, [Polygon(outline, grey=GREY), head]


def _place(plan: Plan) -> Rect:
    """Where the figure stands (wall mm)."""
    wall, group = plan.job.wall, plan.group
    width = WIDTH * HEIGHT
    spare = max(0.0, wall.width - width)
    middles = [wall.rect.x0 + width / 2 + spare * number / TRIES for number in range(TRIES + 1)]
    floors = [wall.stairs.tread_at(x) if wall.stairs else 0.0 for x in middles]
    places = [Rect.sized(x - width / 2, floor, width, HEIGHT) for x, floor in zip(middles, floors, strict=True)]
    return min(places, key=lambda place: (_hidden(plan, place), abs(place.gap_to(group)), place))


def _hidden(plan: Plan, place: Rect) -> float:
    """How much of frames and features a figure there would stand before (mm²); out of the wall counts as much."""
    wall = plan.job.wall
    rects = [*(hung.rect for hung in plan.frames), *(feature.rect for feature in wall.features)]
    met = [part for rect in rects if (part := rect.meet(place))]
    hidden = added(part.width * part.height for part in met)
    return hidden if on_wall(plan, place) else hidden + place.width * place.height
