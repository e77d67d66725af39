"""For the installer: where cables may run behind the wall, lightly hatched, and where the nails go."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.checks.cables.wiring import zones
from templates_gen.documents.proof.view import View
from templates_gen.drawing.items import Item, Line, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.shapes import ground
from templates_gen.drawing.sizes import HAIR, MEDIUM
from templates_gen.drawing.strokes import inside

STEP = 2.5
"""mm between hatching lines on paper.  Our own design, no source."""

SMOOTH = 0.6
"""mm on paper that a zone's edge may be off: less than the eye follows in hatching.  Our own design, no source."""

HATCH, EDGE = 0.45, (1.5, 1.0)
"""Grey of the hatching, and the dashes of a zone's edge (mm).  Our own design, no source."""

ARM = 1.2
"""mm of a nail's cross on paper.  Our own design, no source."""

LOOK = (
    "Look with a detector before you nail{everywhere}: cables and pipes may run behind any spot. "
    "Where in doubt, ask a licensed electrician or plumber."
)

UNKNOWN = "The job does not say by whose rule this wall's cables were laid (wall.wiring), so no zones are drawn."
NO_BOXES = "The job gives no outlet, switch, light or thermostat on this wall, so no zones are drawn."


def zone_items(plan: Plan, view: View) -> Iterator[Item]:
    """The zones of the wall as hatching with a dashed edge, lines that meet across zones drawn once (page mm)."""
    found = zones(plan.job.wall)
    if not found:
        return
    from templates_gen.job.outline import hatched

    wall = plan.job.wall
    outline = wall.corners
    inside, edges = hatched([zone.rect for zone in found], outline, STEP * view.scale, SMOOTH * view.scale)
    for lines, dash in ((inside, ()), (edges, EDGE)):
        yield from (Line(*view.point(x0, y0), *view.point(x1, y1), HAIR, dash, grey=HATCH) for x0, y0, x1, y1 in lines)


def clear_of(hatching: Sequence[Item], texts: Sequence[Text], lettering: Lettering) -> Iterator[Item]:
    """White under texts that the hatching would run through."""
    lines = [item for item in hatching if isinstance(item, Line)]
    boxes = (lettering.box(text) for text in texts)
    return (ground(box) for box in boxes if any(any(inside(line, box)) for line in lines))


def nail_items(plan: Plan, view: View) -> Iterator[Item]:
    """A small cross at every nail point."""
    for nail in plan.nails:
        x, y = view.point(nail.x, nail.y)
        yield Line(x - ARM, y, x + ARM, y, MEDIUM)
        yield Line(x, y - ARM, x, y + ARM, MEDIUM)


def legend(plan: Plan) -> tuple[str, ...]:
    """What hatching and crosses mean, and the caution that goes with them."""
    sources = tuple(dict.fromkeys(zone.source for zone in zones(plan.job.wall)))
    if sources:
        hatching = f"Hatched: zones where cables may run ({'; '.join(sources)})."
    else:
        hatching = UNKNOWN if plan.job.wall.wiring in ("", "none") else NO_BOXES
    return f"Crosses: nails. {hatching}", LOOK.format(everywhere=", inside and outside the hatching" if sources else "")
