"""A nail on paper: the cross that is nailed through, the slit that lets the paper come off, and its label."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.base.units import show_both
from templates_gen.documents.schedule.distances import stood_on, unmistakable
from templates_gen.drawing.blocks import Block, block
from templates_gen.drawing.items import Circle, Form, Item, Line, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import AIR, Room
from templates_gen.drawing.shapes import SLIT_TEETH, teeth, wedge
from templates_gen.drawing.sizes import (
    BROAD,
    H5,
    H7,
    H18,
    H25,
    H35,
    HAIR,
    MEDIUM,
    NAIL_ARM,
    NAIL_CLEAR,
    NARROW,
    SCALE_FAR,
    SCALE_NEAR,
    SLIT_TO,
)
from templates_gen.hanging.bearings import Nail
from templates_gen.job.model import Fixing

NAIL_FORM = "nail"

LABEL_SIZES = ((H7, H35), (H5, H25), (H35, H25), (H35, H18))
"""Height of the nail's name and of its figures, largest first: smaller only where there is no room.  A long name gets
small before the figures do."""

TRIES = (
    *((True, size, parted) for size in LABEL_SIZES[:3] for parted in (False, True)),
    *((False, size, False) for size in LABEL_SIZES),
)
"""Whether lines must stay uncrossed, the size, and whether figures go in two lines each: a line through the label is
better than lettering too small for someone on a ladder."""

NAIL_FOOT = 2.5
"""mm that the upright hairline goes on below the nail point, before the release slit.  Our own design, no source."""

NAIL_CIRCLE = 6.5
"""mm; radius of the bold circle around a nail point.  Our own design, no source."""

WEDGE_FROM, WEDGE_HALF, DOT = 1.3, 1.1, 0.4
"""mm: how far from the nail point the bold wedges end that point to it, half of what they are wide on the outside, and
the radius of the dot on it.  Our own design, no source."""

SLIT_FROM = 3.0
"""The release slit starts here below the nail point (mm); its teeth where the circle is passed.  Our own design."""

TEETH_FROM = 8.0
"""mm below the nail point."""

SLIT_END, SLIT_WORDS = 1.5, (-1.9, 2.0)
"""mm: half of the bar where the slit ends, and where from its end the words at it begin.  Our own design."""

BESIDE, BESIDE_SCALE, BETWEEN = 1.5, 2.0, 4.0
"""mm between the nail's mark, or its drop scale, and its label, and between two places for a label one over the other.
Our own design, no source."""

ON_LINE = 0.05
"""mm: half of the least distance from the centre line that a label shows.  Our own design, no source."""


def nail_form() -> Form:
    """The mark of a nail about its nail point at (0, 0)."""
    items: tuple[Item, ...] = (
        *ring_items(),
        Line(0, -SLIT_FROM, 0, -SLIT_TO, MEDIUM),
        *teeth((0, -TEETH_FROM), (0, -SLIT_TO), SLIT_TEETH, both=True),
        Line(-SLIT_END, -SLIT_TO, SLIT_END, -SLIT_TO, NARROW),
        Text(SLIT_WORDS[0], SLIT_WORDS[1] - SLIT_TO, "slit: cut first", H18, "left", 90),
    )
    return Form(NAIL_FORM, Rect(-NAIL_CLEAR, -SLIT_TO - 1, NAIL_CLEAR, NAIL_CLEAR), items)


def ring_items() -> tuple[Item, ...]:
    """The same without its slit."""
    return (
        Line(-NAIL_ARM, 0, NAIL_ARM, 0, HAIR),
        Line(0, -NAIL_FOOT, 0, NAIL_ARM, HAIR),
        Circle(0, 0, NAIL_CIRCLE, BROAD),
        Circle(0, 0, DOT, 0.0, True),
        wedge(-WEDGE_FROM, 0, WEDGE_FROM - NAIL_ARM, 0, WEDGE_HALF),
        wedge(WEDGE_FROM, 0, NAIL_ARM - WEDGE_FROM, 0, WEDGE_HALF),
        wedge(0, WEDGE_FROM, 0, NAIL_ARM - WEDGE_FROM, WEDGE_HALF),
    )


def nail_lines(nail: Nail, fixing: Fixing, plan: Plan) -> tuple[str, ...]:
    """The lines of a nail's label: name, height above what one stands on, distance from the centre line.

    A hook of several nails, which all go in about the cross, is named before that.  Which line it is left or right of
    is said below, where there is room (of_centre.py).
    """
    unit, from_centre = plan.job.unit, nail.x - plan.centre_line
    side = "left" if from_centre < 0 else "right"
    centre = f"{show_both(abs(from_centre), unit)} {side}" if abs(from_centre) > ON_LINE else "on the centre line"
    several = (fixing.called,) if fixing.nails > 1 else ()
    under, height = stood_on(plan, nail.x)
    return unmistakable(nail.name), f"{under} {show_both(nail.y - height, unit)}", *several, centre


class Sides(Record, frozen=True):
    """On which side of a nail its label and its drop scale stand: -1 left, +1 right."""

    label: int
    scale: int


def place_label(nail: Nail, hung: Hung, plan: Plan, room: Room, lettering: Lettering) -> tuple[Sides, list[Item]]:
    """The label of a nail beside it, and the sides of label and drop scale.

    `hung` is its frame.  Label and scale stand on different sides where both have room; a pair's labels
    stand outside the pair.  The lines are left uncrossed as long as a smaller label can do that.
    """
    lines = nail_lines(nail, hung.frame.fixing, plan)
    ways = _ways(nail, hung.nails, plan, room)
    for uncrossed, (name, figures), parted in TRIES:
        under = _parted(lines) if parted else lines[1:]
        label = block([(lines[0], name, True), *((line, figures, False) for line in under)], lettering)
        for sides in ways:
            if box := room.first(_beside(nail, sides, label), uncrossed):
                room.take(box)
                return sides, list(label.at(box.x0, box.y0, "left" if sides.label > 0 else "right"))
    return ways[0], _led(nail, ways[0], lines, room, lettering)


def _ways(nail: Nail, pair: Sequence[Nail], plan: Plan, room: Room) -> list[Sides]:
    """The ways to place label and scale, best first, but none whose scale hides another nail or leaves the sheet."""
    out = 1 if nail.side == "right" else -1
    ways = [Sides(out, -out), Sides(-out, out), Sides(-out, -out), Sides(out, out)]
    others = [other.x for other in pair if other.name != nail.name]
    ways.sort(key=lambda way: _scale_on_line(nail.x, way.scale, plan.centre_line))  # stable: else as listed
    return [way for way in ways if _scale_free(nail.x, way.scale, others, room.region)] or ways


def _scale_on_line(x: float, side: int, line: float) -> bool:
    near, far = sorted((x + side * (SCALE_NEAR - 3.0), x + side * SCALE_FAR))
    return near < line < far


def _scale_free(x: float, side: int, others: list[float], region: Rect) -> bool:
    near, far = sorted((x + side * SCALE_NEAR, x + side * SCALE_FAR))
    return (
        region.x0 <= near and far <= region.x1 and not any(near - NAIL_CLEAR < at < far + NAIL_CLEAR for at in others)
    )


def _beside(nail: Nail, sides: Sides, label: Block) -> Iterator[Rect]:
    """Boxes beside the nail, and beyond its drop scale on the same side; level with it first, then higher and lower."""
    reach = SCALE_FAR + BESIDE_SCALE if sides.label == sides.scale else NAIL_CLEAR + BESIDE
    x0 = nail.x + reach if sides.label > 0 else nail.x - reach - label.width
    for up in (0.0, 0.5, -0.5, -1.0, 1.0):
        yield Rect.sized(x0, nail.y - label.height / 2 + up * (label.height + BETWEEN), label.width, label.height)


def _parted(lines: tuple[str, ...]) -> tuple[str, ...]:
    """A label's lines under the name, with the two systems one under the other."""
    return tuple(part for line in lines[1:] for part in line.split(" · "))


def _led(nail: Nail, sides: Sides, lines: tuple[str, ...], room: Room, lettering: Lettering) -> list[Item]:
    """The smallest label at the nearest free place to which a line can lead from the nail.

    Where there is none, its figures go in two lines each; and where there is none for that either, its name is alone.
    """
    name, figures = LABEL_SIZES[-1]
    near, far = sorted((nail.x + sides.scale * SCALE_NEAR, nail.x + sides.scale * SCALE_FAR))
    room.lines.append(Rect(near, room.region.y0, far, room.region.y1))  # the drop scale will stand there
    for size, under in ((name, lines[1:]), (name, _parted(lines)), (figures, ())):
        label = block([(lines[0], size, True), *((line, figures, False) for line in under)], lettering)
        for box in room.free(label.width, label.height, nail.x, nail.y, room.region):
            if lead := _lead(nail, box, room):
                room.take(lead, box)
                drawn = [Line(lead.x0, lead.y0, lead.x1, lead.y1, NARROW)] if max(lead.width, lead.height) > AIR else []
                return [*drawn, *label.at(box.x0, box.y0)]
    return []


def _lead(nail: Nail, box: Rect, room: Room) -> Rect | None:
    """The shortest level or upright line (as a rectangle without area) to the box from where a hairline of the nail
    ends, that crosses nothing; None where there is none."""
    reach, found = NAIL_CLEAR, []
    for x, y in ((nail.x - reach, nail.y), (nail.x + reach, nail.y), (nail.x, nail.y + reach)):
        end_x, end_y = min(max(x, box.x0), box.x1), min(max(y, box.y0), box.y1)
        line = Rect(min(x, end_x), min(y, end_y), max(x, end_x), max(y, end_y))
        if min(line.width, line.height) == 0.0 and room.clear(line):
            found.append(line)
    return min(found, key=lambda line: line.width + line.height, default=None)
