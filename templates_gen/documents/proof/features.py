"""What is on or in front of the wall, each kind by a plain outline, with its name."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence

from templates_gen.base.geometry import Rect
from templates_gen.documents.proof.view import View
from templates_gen.drawing.blocks import shortened
from templates_gen.drawing.items import Circle, Item, Line, Polygon, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room, placed_near
from templates_gen.drawing.shapes import Points, box, level, upright
from templates_gen.drawing.sizes import H18, H25, HAIR, NARROW
from templates_gen.job.model import Feature, Wall
from templates_gen.job.stairs import Stairs

FILL, LINE = 0.92, 0.35
"""Grey of what stands before the wall, and of its lines.  Our own design, no source."""

AROUND = 0.6
"""mm about a name, so that two of them are never read as one.  Our own design, no source."""

REACH, LONGEST = 10.0, 60.0
"""mm that a name may reach beyond its feature, and that it may be long.  Our own design, no source."""

CASING, STILE, LOWER_PANEL, UPPER_PANEL, SASH = 0.07, 0.17, (0.07, 0.42), (0.48, 0.90), 0.05
"""Of a door's width: its casing and what is beside its panels; of its height, where these begin and end; of a window's
shorter side, what is around its panes.  Our own design, no source."""

OUTLET, SWITCH, LIGHT, THERMOSTAT = 0.3, (0.4, 0.5), 0.4, 0.33
"""Of the shorter side, the radius of a circle; of width and height, a switch's rocker.  Our own design, no source."""

SLATS, FINS = 5, 10
"""Parts that a vent and a radiator are divided into.  Our own design, no source."""

INSET = 0.8
"""mm; a name stays this far inside its feature.  Our own design, no source."""


def outline(feature: Feature, rect: Rect) -> Iterator[Item]:
    """The feature as it is drawn in this rectangle of the page (mm)."""
    fill = FILL if feature.kind in ("furniture", "pipe", "radiator") else 1.0
    yield from box(rect, NARROW, fill, LINE)
    if inside := _INSIDE.get(feature.kind):
        yield from inside(rect)


def _door(rect: Rect) -> Iterator[Item]:
    """A door: the line of its casing at both sides and the head, and two panels."""
    inset = CASING * rect.width
    yield from box(Rect(rect.x0 + inset, rect.y0, rect.x1 - inset, rect.y1 - inset), HAIR, None, LINE)
    yield from box(_panel(rect, *LOWER_PANEL), HAIR, None, LINE)
    yield from box(_panel(rect, *UPPER_PANEL), HAIR, None, LINE)


def _panel(door: Rect, low: float, high: float) -> Rect:
    inset = STILE * door.width
    return Rect(door.x0 + inset, door.y0 + low * door.height, door.x1 - inset, door.y0 + high * door.height)


def _window(rect: Rect) -> Iterator[Item]:
    """A window: its casing, and a cross of glazing bars."""
    pane = _glass(rect)
    yield from box(pane, HAIR, None, LINE)
    yield upright(pane, 0.5, HAIR, LINE)
    yield level(pane, 0.5, HAIR, LINE)


def _glass(window: Rect) -> Rect:
    return window.grown(-SASH * min(window.width, window.height))


def _left_pane(window: Rect) -> Rect:
    glass = _glass(window)
    return Rect(glass.x0, glass.cy, glass.cx, glass.y1)


def _outlet(rect: Rect) -> Iterator[Item]:
    yield Circle(rect.cx, rect.cy, OUTLET * min(rect.width, rect.height), HAIR, grey=LINE)


def _switch(rect: Rect) -> Iterator[Item]:
    yield from box(Rect.about(rect.cx, rect.cy, SWITCH[0] * rect.width, SWITCH[1] * rect.height), HAIR, None, LINE)


def _light(rect: Rect) -> Iterator[Item]:
    """A light: the crossed circle of IEC 60617 (from memory)."""
    radius = LIGHT * min(rect.width, rect.height)
    reach = radius / 2**0.5
    yield Circle(rect.cx, rect.cy, radius, HAIR, grey=LINE)
    for way in (1, -1):
        yield Line(rect.cx - reach, rect.cy - way * reach, rect.cx + reach, rect.cy + way * reach, HAIR, grey=LINE)


def _thermostat(rect: Rect) -> Iterator[Item]:
    radius = THERMOSTAT * min(rect.width, rect.height)
    yield Circle(rect.cx, rect.cy, radius, HAIR, grey=LINE)
    yield Line(rect.cx, rect.cy, rect.cx, rect.cy + radius, HAIR, grey=LINE)


def _vent(rect: Rect) -> Iterator[Item]:
    yield from (level(rect, number / SLATS, HAIR, LINE) for number in range(1, SLATS))


def _radiator(rect: Rect) -> Iterator[Item]:
    yield from (upright(rect, number / FINS, HAIR, LINE) for number in range(1, FINS))


_INSIDE: Mapping[str, Callable[[Rect], Iterator[Item]]] = {
    "door": _door,
    "window": _window,
    "outlet": _outlet,
    "switch": _switch,
    "light": _light,
    "thermostat": _thermostat,
    "vent": _vent,
    "radiator": _radiator,
}

_PLACES: Mapping[str, Callable[[Rect], Rect]] = {
    "furniture": lambda rect: rect,
    "other": lambda rect: rect,
    "door": lambda rect: _panel(rect, *UPPER_PANEL),
    "window": _left_pane,
}
"""Where in a feature its name stands if there is room."""


def names(features: Sequence[tuple[Feature, Rect]], room: Room, lettering: Lettering) -> Iterator[Item]:
    """The names of features (with their rectangles on the page) that find room: in furniture, beside the others."""
    large = [(feature, rect) for feature, rect in features if feature.kind in _PLACES]
    beside = [(feature, rect) for feature, rect in features if feature.kind not in _PLACES]
    room.take(*(rect for _, rect in beside))
    for feature, rect in large:
        label = _name(feature.name, _PLACES[feature.kind](rect).grown(-INSET), room, lettering)
        if label is None:
            beside.append((feature, rect))
        else:
            yield label
    room.take(*(rect for _, rect in large))
    for feature, rect in beside:
        label = _name(feature.name, rect.grown(REACH), room, lettering)
        if label is not None:
            yield label


def _name(name: str, place: Rect, room: Room, lettering: Lettering) -> Text | None:
    """The name as near to the middle of the place as there is room."""
    for height in (H25, H18):
        text = shortened(name, height, False, LONGEST, lettering)
        if found := placed_near(Text(0.0, 0.0, text, height), place.cx, place.cy, place, room, lettering, AROUND):
            return found
    return None


def stair_items(wall: Wall, view: View) -> Iterator[Item]:
    """The stair down to the floor, in the greys of furniture; nothing where there is none."""
    if wall.stairs is not None:
        points = tuple(view.point(*point) for point in outline_of(wall.stairs, wall.rect))
        yield Polygon(points, grey=FILL)
        yield Polygon(points, NARROW, False, LINE)


def outline_of(stairs: Stairs, wall: Rect) -> Points:
    """The corners of a stair along a wall, from the foot of its lowest riser up and back along the floor."""
    way = math.copysign(1.0, stairs.slope)
    end = wall.x1 if way > 0 else wall.x0
    upper = list(_steps(stairs, way, end)) if stairs.run and stairs.rise else _slope(stairs, wall, end)
    return ((stairs.x, 0.0), *upper, (end, 0.0))


def _steps(stairs: Stairs, way: float, end: float) -> Iterator[tuple[float, float]]:
    """Both ends of every tread; the landing, or the last tread, goes on to the wall's end."""
    run, rise = stairs.run or 0.0, stairs.rise or 0.0
    count = max(0, math.floor((end - stairs.x) * way / run))
    if stairs.top is not None:
        count = min(count, round((stairs.top - stairs.y) / rise))
    for number in range(count + 1):
        x, y = stairs.x + way * number * run, stairs.y + number * rise
        yield x, y
        yield end if number == count else x + way * run, y


def _slope(stairs: Stairs, wall: Rect, end: float) -> list[tuple[float, float]]:
    if stairs.top is None:
        return [(stairs.x, stairs.y), (end, stairs.line_at(end))]
    return [(stairs.x, stairs.y), (stairs.end(wall), stairs.top), (end, stairs.top)]
